"""What a review says: why its verdict is what it is, what was eaten, what an answer settled and what else to know."""

from datetime import date

from ..numbers import told_percent
from ..phase import FollowedPhase, Verdict
from ..rails import Subject, may_not_diet
from ..register import Message, say, yes_or_no
from . import texts
from .next_step import Advice, NextStep
from .pregnancy import expected_in_pregnancy
from .question import AGAIN, FOUND_AS_LOGGED, FOUND_MORE, FOUND_WATER, Finding, OpenQuestion, Settled
from .reading import Now
from .verdict import Judged, up_of


def why_judged(phase: FollowedPhase, now: Now, judged: Judged, subject: Subject, advice: Advice) -> list[Message]:
    """Why the verdict is what it is, and what was eaten; ``subject`` as at the phase's start. Nobody is told to keep to
    a plan that the ``advice`` ends or changes."""
    observed, is_pregnant = now.window.tissue.mean, subject.is_pregnant
    verdict, planned = judged.verdict, judged.planned
    found: list[Message] = []
    if verdict is Verdict.TOO_EARLY:
        found.append(_why_early(now, judged.more_days, advice))
    elif is_pregnant:
        found += [say(texts.IN_PREGNANCY, observed_kg=observed), *expected_in_pregnancy(subject.bmi, now)]
    elif verdict is Verdict.CONTRADICTED:
        found.append(say(texts.CONTRADICTED, weight_kg=now.window.weight.mean, planned_kg=judged.moved_kg))
    elif verdict is Verdict.WITHIN_INTERVAL:
        # By the tenths that are told: nobody reads that 0.7 kg is near 0.1 to 0.7 kg.
        is_inside = round(planned.lower, 1) <= round(observed, 1) <= round(planned.upper, 1)
        code = texts.WITHIN if is_inside else texts.NEAR
        found.append(say(code, observed_kg=observed, lower_kg=planned.lower, upper_kg=planned.upper))
    elif verdict is not judged.acted_on:
        # It only stays: today's own odds would not call it so, and are nothing to be sure by.
        figures = {"observed_kg": observed, "lower_kg": planned.lower, "upper_kg": planned.upper}
        found.append(say(texts.STILL_OUTSIDE, **figures))
    else:
        chance = judged.likely.faster if verdict is Verdict.FASTER else judged.likely.slower
        found.append(
            say(
                texts.OUTSIDE,
                observed_kg=observed,
                lower_kg=planned.lower,
                upper_kg=planned.upper,
                probability_percent=told_percent(chance),
            )
        )
    if judged.event_water is not None and not is_pregnant:
        kind, water_kg, explains = judged.event_water
        found.append(say(texts.EVENT_WATER, event=kind.value, water_kg=water_kg, explains=yes_or_no(explains)))
    difference = now.eaten.difference
    if is_pregnant:
        return found  # what is eaten is for those to judge who follow it
    if now.eaten.is_hardly_logged and not now.is_unseen:
        found.append(say(texts.AS_TOLD, maintenance_kcal=now.maintenance.maintenance.mean))
    elif difference is None:
        if now.days:
            found.append(say(texts.NO_INTAKE))
    elif difference.lower > 0.0 and difference.mean > texts.NOTABLE_KCAL:
        # Who is told to eat still less has the new plan to keep to.
        goes_on = advice.decision is not NextStep.END and advice.correction_kcal <= 0
        is_kept = now.eaten.is_kept_lately
        how = yes_or_no(goes_on and not is_kept)
        if goes_on and not is_kept and now.days >= texts.STEADY_DAYS and not may_not_diet(subject):
            # Told to keep to the plan every week, nobody does so sooner. A day with more is paid for by lower ones.
            how = "steadily"
        found.append(say(texts.ATE_MORE, difference_kcal=difference.mean, goes_on=how))
        if goes_on and is_kept:
            found.append(say(texts.KEPT_LATELY))
    elif difference.upper < 0.0 and difference.mean < -texts.NOTABLE_KCAL:
        found.append(say(texts.ATE_LESS, difference_kcal=-difference.mean))
    elif verdict in (Verdict.FASTER, Verdict.SLOWER):
        maintenance, before = now.maintenance.maintenance.mean, phase.maintenance.mean
        code = texts.NEEDS_LESS if observed > planned.mean else texts.NEEDS_MORE
        # Where maintenance looks no other way than that, as after a change of intake, it explains nothing.
        if (maintenance < before) == (observed > planned.mean):
            found.append(say(code, maintenance_kcal=maintenance, planned_kcal=before))
    return found


def _why_early(now: Now, more_days: int, advice: Advice) -> Message:
    """Why nothing can be said of a phase yet: no recent weighing, too few of them, or days too few for water to go."""
    if advice.decision is NextStep.END:
        return say(texts.TOO_LITTLE)  # no day to come tells more of a phase that ends
    keep = yes_or_no(advice.is_as_planned)
    if now.is_unseen:
        return say(texts.NOT_WEIGHED, days=now.unseen_days, more_days=more_days, goes_on=keep)
    if now.window_days >= texts.LEAST_DAYS and 0 < now.weighings < texts.LEAST_WEIGHINGS:
        return say(texts.FEW_WEIGHINGS, weighings=now.weighings, more_days=more_days, goes_on=keep)
    return say(texts.TOO_EARLY, more_days=more_days, goes_on=keep)


def settling(settled: Settled | None, question: OpenQuestion | None) -> list[Message]:
    """What the answer to the last question means, and the next one."""
    found = []
    if settled is not None:
        on = date.fromordinal(settled.day).isoformat()
        if settled.found is Finding.MORE_THAN_LOGGED:
            found.append(say(FOUND_MORE, date=on))
        elif settled.found is Finding.AS_LOGGED:
            found.append(say(FOUND_AS_LOGGED))
        elif settled.found is Finding.WATER:
            found.append(say(FOUND_WATER, date=on))
    if question is not None:
        found += [say(AGAIN), question.ask] if question.asked.times > 1 else [question.ask]
    return found


def with_advice(
    phase: FollowedPhase, now: Now, verdict: Verdict, advice: Advice, *, is_by_log: bool, is_asked: bool
) -> list[Message]:
    """Why the advice is what it is, and what it says of itself: that a plan stands which is off since more was logged
    than it told, as it is to be kept first; or why a change does not wait for a verdict, for the reading that has to
    agree, or for the answer to what ``is_asked``. Who is told to change something is not told to keep to the plan."""
    if advice.decision is NextStep.END:
        return advice.reasons
    if advice.correction_kcal:
        told = [reason for reason in advice.reasons if reason.code != texts.WAITS]
        # Without a verdict or a second reading only a rail asks for a change.
        is_by_rail = verdict is Verdict.TOO_EARLY or len(told) < len(advice.reasons)
        is_by_rail = is_by_rail or (is_asked and any(reason.code in texts.BY_RAIL for reason in told))
        if advice.correction_kcal > 0:
            told = [reason for reason in told if reason.code != texts.MAY_STOP_EARLY]  # it says to eat no more
        if is_by_log and (is_by_rail or is_asked):
            return [*told, say(texts.CANNOT_WAIT if is_by_rail else texts.STEP_MEANWHILE)]
        return told
    if advice.decision is not NextStep.CONTINUE:
        return advice.reasons
    if now.eaten.is_over and verdict is up_of(phase) and not now.eaten.is_kept_lately:
        return [*advice.reasons, say(texts.PLAN_STANDS)]
    is_low = now.eaten.is_under and not phase.kind.is_deficit and verdict is Verdict.SLOWER
    return [*advice.reasons, say(texts.EAT_THE_PLAN)] if is_low else advice.reasons
