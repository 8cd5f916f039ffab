"""How does a phase stand against its plan, and what is to be done about it?"""

from datetime import date
from typing import NamedTuple

import msgspec

from steelyard.science.body import PathPoint
from steelyard.science.log import day_of, tail_of
from steelyard.science.measures import doubts_about_expenditure
from steelyard.science.member import Member, StartingBody, Steered, Told, body_at
from steelyard.science.numbers import Estimate
from steelyard.science.phase import DeficitBefore, FollowedPhase, FollowedWeek
from steelyard.science.rails import (
    CARBOHYDRATE_KCAL_PER_G,
    PROTEIN_KCAL_PER_G,
    RailAction,
    check_urgent,
    rest_kcal,
    warn_macronutrients,
    way_from_underweight,
    weeks_that_count,
    with_ratio,
    without_echoes,
)
from steelyard.science.register import Message, OutOfDomain
from steelyard.science.review import Before, Review, Settled, log_up_to
from steelyard.science.review import review_phase as review

from .answered import Answered, answering
from .dates import check_as_of, check_dates, last_day_of
from .member import what_grows
from .state import StateNow, known_again, not_before, state_now, state_of, weighed_once

_ROUNDING_KCAL = 20.0  # by which grams rounded to the next five may exceed their energy


class ReviewAsked(NamedTuple):
    """Which phase of whose, told as they were at its start, with the log that ``told`` holds; on which day, the last
    of the log when None. ``is_finished``: it was ended on that day; ``settled`` answers the question of an earlier
    review; ``start`` is the body on its first morning, where that is not the one told; ``before`` is what the reviews
    before told, ``deficit_before`` the one that this may be a part of."""

    told: Told
    phase: FollowedPhase
    as_of: date | None = None
    is_finished: bool = False
    settled: Settled | None = None
    start: StartingBody | None = None
    before: Before | None = None
    deficit_before: DeficitBefore = DeficitBefore()


class WeekAhead(NamedTuple):
    """Days to come on one diet, as corrected; ``at_end`` the body on their last evening."""

    start: date
    last_day: date
    days: int
    diet: FollowedWeek
    at_end: PathPoint


class WeeksAfter(NamedTuple):
    """The first weeks at maintenance after the phase: what to eat (logging scale), the mass that returns [kg],
    and the body on the evening of some days."""

    intake_kcal: int
    rebound: Estimate
    points: list[tuple[date, PathPoint]]


class PhaseReviewed(NamedTuple):
    """A phase reviewed on a day, with the last day that it is to have; ``start`` is the body on its first morning,
    ``body`` that of the day reviewed.

    ``review`` tells what to eat, which has passed the gate; the bodies at the end of its days to come, and after it.
    """

    as_of: date
    review: Review
    last_date: date
    ends: list[PathPoint]
    ends_after: list[PathPoint]
    start: StartingBody
    body: StartingBody

    @property
    def weeks(self) -> list[WeekAhead]:
        """The days to come, week by week."""
        found = self.review
        return [
            WeekAhead(
                start=date.fromordinal(found.day + stint.end - stint.days),
                last_day=date.fromordinal(found.day + stint.end - 1),
                days=stint.days,
                diet=stint.week,
                at_end=at,
            )
            for stint, at in zip(found.stints, self.ends, strict=True)
        ]

    @property
    def after(self) -> WeeksAfter | None:
        """The first weeks after the phase, where it ends."""
        after = self.review.aftermath
        if after is None:
            return None
        evenings = [date.fromordinal(self.review.day + round(state.day) - 1) for state in after.path.states[1:]]
        points = list(zip(evenings, self.ends_after, strict=True))
        return WeeksAfter(after.intake_kcal, after.rebound, points)


@answering
def review_phase(asked: ReviewAsked) -> Answered[PhaseReviewed]:
    """Review a phase. Raises ``OutOfDomain``, and ``Refused`` where a deficit runs and screening was not answered."""
    whole = Member(asked.told)
    check_urgent(whole.seen)
    phase = _with_deficit_before(asked)
    start = date.fromordinal(phase.start_day)
    check_dates({"phase.start_date": start})
    check_as_of(asked.told, asked.as_of)
    log = whole.told.log
    if log is None:
        raise OutOfDomain("LOG_MISSING", "log", "Send a log, or a state that carries one.")
    told = _at_start(asked, whole.told)
    # Its maintenance at the start is that of the equations: what log and scale say of it is part of the review.
    logged = whole.told_otherwise(_untaught(told))
    member = logged.told_otherwise(_untaught(told)._replace(log=None))
    assessed = member.assessed
    day = last_day_of(log, asked.as_of)
    _check_nutrients(phase)
    found = review(
        member,
        phase,
        log,
        day,
        is_finished=asked.is_finished,
        settled=asked.settled,
        before=asked.before,
        after=lambda: whole.told_otherwise(whole.told._replace(as_of_day=day)).learnt,
    )
    last_day = found.day + found.advice.days_ahead - 1
    # Who hardly logs food is taken to eat what is told, by the next answer as by this one.
    eaten = told.current_intake_kcal if found.told_lately_kcal is None else found.told_lately_kcal
    now = state_now(
        told._replace(log=log_up_to(log, found.day, day)[0], current_intake_kcal=eaten),
        assessed,
        found.day,
        fat=found.fat_fraction,
        maintenance=found.maintenance.maintenance,
        learnt=found.maintenance,
        reading=found.reading,
        seen=whole.seen,
        adherence=found.adherence,
        steered=_taught(found),
    )
    return Answered(
        PhaseReviewed(
            as_of=date.fromordinal(day),
            review=found,
            last_date=max(date.fromordinal(last_day), start),
            ends=[] if found.path is None else found.points_of(found.path),
            ends_after=[] if found.aftermath is None else found.points_of(found.aftermath.path),
            start=_starting_body(member) if asked.start is None else asked.start,
            body=now.body,
        ),
        reasons=[assessed.resting.reason, *found.reasons],
        cautions=[*_cautions(logged, found), *what_grows(whole)],
        actions=with_ratio(found.now, without_echoes([*found.actions, *_of_grams(found)])),
        state=not_before(whole.told.known, _counted_up_to(day, now, whole.told)),
    )


def _of_grams(found: Review) -> list[RailAction]:
    """What warns of the grams of the days to come, where carbohydrate is told."""
    diets = [(stint.week, stint.week.carbohydrate_g) for stint in found.stints]
    return [
        action
        for diet, grams in diets
        if grams is not None
        for action in warn_macronutrients(diet.intake_kcal, rest_kcal(diet.intake_kcal, diet.protein_g, grams), grams)
    ]


def _counted_up_to(day: int, now: StateNow, told: Told) -> StateNow:
    """What is known on ``day``, where a phase was over before it and there are entries since: they have no part in its
    review, but no caller sends them a second time."""
    log = told.log
    since = None if log is None or day <= now.day else log.only(lambda entry: now.day < day_of(entry) <= day)
    if since is None or not since.entries:
        return now
    then = msgspec.structs.replace(since, onset=None)
    known = known_again(now, None if told.known is None else told.known.maintenance)
    return state_of(Member(told._replace(log=then, known=known, is_settled=False, as_of_day=day), tail_of), day)


def _untaught(told: Told) -> Told:
    """What was told of a member, without what the scale taught before."""
    return told if told.known is None else told._replace(known=told.known._replace(steered=None))


def _taught(found: Review) -> Steered | None:
    """What the scale taught of who hardly logs food in the phase; None where nothing new."""
    return Steered(found.day, found.maintenance.maintenance) if found.eaten.is_hardly_logged else None


def _cautions(member: Member, found: Review) -> list[Message]:
    """The member's, and what is to be asked about the maintenance that the review tells."""
    member = member.with_log_read(found.maintenance)
    cautions = member.cautions
    doubts = doubts_about_expenditure(found.maintenance.physical.mean, member.assessed.resting.mean)
    # By the body of the day reviewed, and not by that of the phase's start.
    before, now = way_from_underweight(member.subject), way_from_underweight(found.now, found.then)
    cautions = [*(caution for caution in cautions if caution not in [*before, *now]), *now]
    known = {caution.code for caution in cautions}
    return [*cautions, *(doubt for doubt in doubts if doubt.code not in known), *found.returns]


def _with_deficit_before(asked: ReviewAsked) -> FollowedPhase:
    """The phase, with the deficit before it that a phase put together by hand may not tell."""
    phase, before = asked.phase, asked.deficit_before
    if not phase.kind.is_deficit:
        return phase
    known = weeks_that_count(before.weeks, before.weeks_since)
    return msgspec.structs.replace(phase, weeks_before=max(phase.weeks_before, known))


def _at_start(asked: ReviewAsked, told: Told) -> Told:
    """The member as at the phase's start: as the phase tells it, else as a state from then or before knows it, else as
    told."""
    known = told.known
    if asked.start is not None:
        person, fat = body_at(told.person, asked.start, "phase.start_body")
        return told._replace(person=person, fat=fat)
    if known is not None and known.day <= asked.phase.start_day:
        person, fat = body_at(told.person, known.body)
        return told._replace(person=person, fat=fat)
    if known is not None:
        return told._replace(person=asked.told.person, fat=asked.told.fat)
    return told


def _starting_body(member: Member) -> StartingBody:
    weight, fat = member.person.weight_kg, member.assessed.fat
    return StartingBody(weighed_once(weight), Estimate(fat.mean * weight, fat.sd * weight), fat.method, fat.is_measured)


def _check_nutrients(phase: FollowedPhase) -> None:
    """Raises ``OutOfDomain`` naming the first week whose protein and carbohydrate are more than its energy."""
    for i, week in enumerate(phase.weeks):
        of_protein = PROTEIN_KCAL_PER_G * week.protein_g
        if of_protein + CARBOHYDRATE_KCAL_PER_G * (week.carbohydrate_g or 0.0) > week.intake_kcal + _ROUNDING_KCAL:
            detail = "Protein and carbohydrate of this week are more energy than its intake."
            raise OutOfDomain("NUTRIENTS_EXCEED_INTAKE", f"phase.weeks[{i}].intake_kcal", detail)
