"""Questions about an intake, answered inside the guard rails: a path, an intake for a target, a date for one."""

from collections.abc import Callable
from itertools import groupby
from typing import NamedTuple

import msgspec

from .. import rails
from ..body import (
    BASELINE_CARBOHYDRATE_SHARE,
    BASELINE_GLYCOGEN_KG,
    BodyModel,
    BodyState,
    BodyTarget,
    Diet,
    Forecast,
    Starts,
    Stretch,
    TargetQuantity,
    UncertaintySource,
    advance,
    as_followed,
    bodies_of,
    crossing,
    days_for_target,
    forecast,
    intake_for_target,
    nearest_day_for_target,
    walk,
)
from ..measures import session_kcal
from ..member import Member
from ..person import Session
from ..rails import (
    CARBOHYDRATE_KCAL_PER_G,
    Broken,
    Cleared,
    Purpose,
    RailAction,
    Subject,
    ToldWeek,
    clear,
    each_once,
    first_broken,
    purpose_of,
)
from ..register import Message, say, traced
from .history import NO_DEFICIT_BEFORE, DeficitBefore, History, warn_of_cuts

# A difference from maintenance smaller than this is no deficit: it is within rounding (judgement).
_NO_DEFICIT_KCAL = 25.0
LEAST_TARGET_DAYS = 14  # before a fortnight water hides all else; judgement


class ScheduledIntake(msgspec.Struct, frozen=True, kw_only=True):
    """An intake held for some weeks."""

    weeks: int
    intake_kcal: float
    protein_g_per_kg: float = 1.6
    carbohydrate_g: float | None = None
    sodium_change_mg: float = 0.0
    added_sessions: tuple[Session, ...] = ()


class CutsBefore(NamedTuple):
    """What was before a question: the deficit that one to come may be a part of, and the cuts already done."""

    deficit: DeficitBefore = NO_DEFICIT_BEFORE
    cuts: History = History()


NOTHING_BEFORE = CutsBefore()


class IntakeAnswer(NamedTuple):
    """The path, what was found, and how near a safe intake comes where the target is out of reach.

    ``told`` are its weeks as the gate reads them, which have passed it. ``is_found_intake``: whether their one intake
    is what was asked for; ``is_nearest_intake``: whether it is what comes nearest.
    """

    path: Forecast
    told: Cleared[list[ToldWeek]]
    actions: list[RailAction]
    reasons: list[Message]
    reached_day: int | None = None
    nearest_value: float | None = None
    nearest_day: int | None = None
    is_feasible: bool = True
    is_found_intake: bool = False
    is_nearest_intake: bool = False


def diet_of(scheduled: ScheduledIntake, subject: Subject) -> Diet:
    """The model's diet for a scheduled intake; added training raises expenditure."""
    weight_kg, resting_kcal = subject.weight_kg, subject.resting_kcal
    carbohydrate = scheduled.carbohydrate_g
    added = sum(session_kcal(s.met, s.minutes, s.times_per_week, resting_kcal) for s in scheduled.added_sessions)
    return Diet(
        scheduled.intake_kcal,
        BASELINE_CARBOHYDRATE_SHARE * scheduled.intake_kcal
        if carbohydrate is None
        else CARBOHYDRATE_KCAL_PER_G * carbohydrate,
        _protein_per_kg(subject, scheduled.protein_g_per_kg),
        sodium_change_mg=scheduled.sodium_change_mg,
        activity_change_kcal_per_kg=added / weight_kg,
    )


def _cuts_in(weeks: list[ToldWeek]) -> list[tuple[float, float]]:
    """The deficits of a path as weeks from its first day to the day after the last: two with less than four weeks
    between them are one."""
    cuts, at = list[tuple[float, float]](), 0.0
    for week in weeks:
        end = at + week.days / 7.0
        if week.purpose is Purpose.DEFICIT:
            goes_on = bool(cuts) and rails.weeks_that_count(1.0, at - cuts[-1][1]) > 0.0
            begin = cuts.pop()[0] if goes_on else at
            cuts.append((begin, end))
        at = end
    return cuts


class _Asked:
    """A member and the state from which questions are asked, and what was ``before``."""

    def __init__(self, member: Member, sources: frozenset[UncertaintySource], before: CutsBefore) -> None:
        self.body, self.sources = member.body, sources
        self.before, self.history = before
        self.start = Starts(self.body)
        self.model, self.state = self.start.expected
        self.subject = member.subject.rested_with(float(self.state.carried_kg))

    def check(self, diet: Diet, weeks: float, subject: Subject, field: str) -> list[RailAction]:
        """Rails on an intake for ``weeks``, from a body as it is then. Raises ``Refused``."""
        # As the gate reads it, so that a hold is one here as it is in the plan that tells it.
        purpose = purpose_of(diet.intake_kcal, subject.maintenance_kcal)
        if purpose is Purpose.GAIN:
            rails.check_answered(subject)
        if purpose is not Purpose.DEFICIT:
            return []
        actions = rails.check_person(self.subject)
        rails.refuse_protein(diet.protein_g_per_kg, field)
        rails.refuse_deficit(subject, diet.intake_kcal, weeks, field)
        return actions

    def subject_at(self, state: BodyState, diet: Diet) -> Subject:
        """What the rails read of the body at ``state``; added training counts as exercise and as maintenance."""
        return self._subject_in(*bodies_of(self.model, [state])[0], state.day, diet)

    def _subject_in(
        self, weight_kg: float, fat_kg: float, maintenance_kcal: float, carried_kg: float, day: float, diet: Diet
    ) -> Subject:
        if day <= self.state.day:
            # At the start a deficit is counted from settled maintenance, whatever is eaten now.
            maintenance_kcal = max(maintenance_kcal, self.subject.maintenance_kcal)
        added = diet.activity_change_kcal_per_kg * weight_kg
        there = self.subject.with_body(weight_kg, fat_kg, maintenance_kcal + added, carried_kg)
        return there._replace(exercise_kcal=there.exercise_kcal + added) if added else there

    def weeks_of(self, states: list[BodyState], diets: list[Diet]) -> list[ToldWeek]:
        """The weeks between states as the gate reads them; protein by body mass is by that at the start of weeks in a
        row for one purpose, as its floor is."""
        weeks: list[ToldWeek] = []
        then, eaten, fed = None, None, self.subject
        bodies = bodies_of(self.model, states)
        for i, (before, after, diet) in enumerate(zip(states, states[1:], diets, strict=False)):
            there = self._subject_in(*bodies[i], before.day, diet) if then is None or diet is not eaten else then
            then, eaten = self._subject_in(*bodies[i + 1], after.day, diet), diet
            purpose = purpose_of(diet.intake_kcal, there.maintenance_kcal)
            if not weeks or purpose is not weeks[-1].purpose:
                fed = there
            protein_g = diet.protein_g_per_kg * fed.protein_kg
            weeks.append(ToldWeek(diet.intake_kcal, there, then, purpose, float(after.day - before.day), protein_g))
        return weeks

    def check_deficits(self, weeks: list[ToldWeek], *, is_ours: bool = False) -> list[RailAction]:
        """Rails on the person, and on the first day, where an intake turns into a deficit; ``is_ours``: nobody chose
        its size, which is the default one at most where past cuts are not known. Raises ``Refused``."""
        deficit = [week for week in weeks if week.purpose is Purpose.DEFICIT]
        if not deficit:
            return []
        first, end = deficit[0], weeks[-1].after
        protein = [week.protein_g / self.subject.protein_kg for week in deficit if week.protein_g is not None]
        long = self.before.weeks + sum(week.days for week in deficit) / 7.0
        return [
            *rails.check_person(self.subject),
            *rails.warn_deficit(first.before, first.intake_kcal, 0.0, end.fat_fraction, end.bmi, weeks=long),
            *rails.warn_kidneys(self.subject, max(protein, default=0.0)),
            *warn_of_cuts(self.history, _cuts_in(weeks), is_held_to_default=is_ours),
        ]

    def broken_by(self, diet: Diet, days: float) -> Broken | None:
        """The first rule that a constant diet breaks."""
        weeks = self.constant_weeks(diet, days)
        return first_broken(weeks, weeks_before=self.before.weeks, weeks_since=self.before.weeks_since)

    def constant_weeks(self, diet: Diet, days: float) -> list[ToldWeek]:
        """The weeks of a constant diet."""
        whole, rest = divmod(days, 7.0)
        lengths = (7.0,) * int(whole) + ((rest,) if rest else ())
        states = [self.state, *walk(self.model, self.state, diet, lengths)]
        return self.weeks_of(states, [diet] * len(lengths))

    def run(self, stretches: list[Stretch], path: list[BodyState] | None = None) -> Forecast:
        path = path if self.body.kept is None else None  # which is what is told, followed in full
        return forecast(self.body, stretches, sources=self.sources, path=path, start=self.start)

    def expected(self, diet: Diet) -> Diet:
        """What is expected to be eaten of a diet from the start."""
        kept = self.body.kept
        return diet if kept is None else as_followed(self.model, self.state, diet, kept)

    def clear(
        self, path: Forecast, told: list[ToldWeek], diets: list[Diet], field: str | list[str]
    ) -> Cleared[list[ToldWeek]]:
        """What is told, for the body of whoever follows it in full, and for that on the ``path`` that is expected."""
        also = () if path.in_full is None else (self.weeks_of(path.states, diets),)
        before = self.before
        return clear(told, told, field, weeks_before=before.weeks, weeks_since=before.weeks_since, also=also)


@traced
def answer_path(
    member: Member, schedule: list[ScheduledIntake], sources: frozenset[UncertaintySource],
    before: CutsBefore = NOTHING_BEFORE,
) -> IntakeAnswer:  # fmt: skip
    """Forecast a schedule. Raises ``Refused`` for a deficit or a gain that a rail forbids."""
    asked, subject = _Asked(member, sources, before), member.subject
    path, stretches = [asked.state], []
    actions: list[RailAction] = []
    diets: list[Diet] = []
    fields: list[str] = []
    lived: list[_Change] = []
    for i, scheduled in enumerate(schedule):
        diet, began = diet_of(scheduled, subject), path[-1]
        stretches.append(Stretch(diet, (7.0,) * scheduled.weeks))
        path += walk(asked.model, began, *stretches[-1])
        lived.append(_Change(asked.subject_at(began, diet), began, path[-1], scheduled.weeks, diet))
        diets += [diet] * scheduled.weeks
        fields += [f"question.schedule[{i}].intake_kcal"] * scheduled.weeks
    for i, (change, weeks) in enumerate(zip(lived, _deficit_weeks(lived), strict=True)):
        actions += asked.check(change.diet, weeks, change.subject, f"question.schedule[{i}].intake_kcal")
        # How fast the body changes the gate judges, over stretches in a row: a plan sets its intake anew in them.
        actions += change.warnings()
        actions += _of_grams(schedule[i], subject)
    weeks_told = asked.weeks_of(path, diets)
    actions += asked.check_deficits(weeks_told)
    forecast_path = asked.run(stretches, path)
    told = asked.clear(forecast_path, weeks_told, diets, fields)
    return IntakeAnswer(forecast_path, told, each_once(actions), [])


def _of_grams(scheduled: ScheduledIntake, subject: Subject) -> list[RailAction]:
    """Warnings of macronutrients, where carbohydrate is told: the rest beside it and protein is fat."""
    grams = scheduled.carbohydrate_g
    if grams is None:
        return []
    protein_g = scheduled.protein_g_per_kg * subject.weight_kg
    return rails.warn_macronutrients(
        scheduled.intake_kcal, rails.rest_kcal(scheduled.intake_kcal, protein_g, grams), grams
    )


def _protein_per_kg(subject: Subject, asked_g_per_kg: float) -> float:
    """Protein told by body mass, by the mass that plans share it out for, which is less where body fat is high."""
    return asked_g_per_kg * subject.weight_kg / subject.protein_kg


class _Change(NamedTuple):
    """What an intake does to the body over some weeks."""

    subject: Subject
    before: BodyState
    after: BodyState
    weeks: float
    diet: Diet

    @property
    def is_deficit(self) -> bool:
        """Whether less is eaten than maintenance."""
        return self.diet.intake_kcal < self.subject.maintenance_kcal - _NO_DEFICIT_KCAL

    @property
    def share_per_week(self) -> float:
        """Change of tissue a week, of the body mass before."""
        return float((self.after.tissue_kg - self.before.tissue_kg) / self.weeks / self.before.weight_kg)

    @property
    def end_fraction(self) -> float:
        """Body fat after it."""
        return float(self.after.fat_kg / self.after.weight_kg)

    def check(self, field: str) -> list[RailAction]:
        """Rails on what a constant intake does: rate of loss, end body fat, rate of gain. Raises ``Refused``."""
        rails.refuse_change(self.subject, self.share_per_week, self.end_fraction, field, is_deficit=self.is_deficit)
        return self.warnings()

    def warnings(self) -> list[RailAction]:
        """Warnings of what an intake does over a stretch."""
        if not self.is_deficit:
            is_gain = self.diet.intake_kcal > self.subject.maintenance_kcal + _NO_DEFICIT_KCAL
            # What grows in pregnancy is no gain that is too fast.
            is_judged = is_gain and not self.subject.is_pregnant
            return rails.warn_gain(self.subject.training_status, self.share_per_week) if is_judged else []
        bmi = (float(self.after.tissue_kg) + BASELINE_GLYCOGEN_KG) / self.subject.height_squared
        kcal = self.diet.intake_kcal
        return rails.warn_deficit(self.subject, kcal, -self.share_per_week, self.end_fraction, bmi, weeks=self.weeks)


def _deficit_weeks(lived: list[_Change]) -> list[float]:
    """Of each stretch the weeks of the deficit that it is a part of: those in a row count as one long one.

    Each is one for the body that lives it: whoever has got lighter is held by less than before.
    """
    weeks: list[float] = []
    for is_deficit, run in groupby(lived, key=lambda change: change.is_deficit):
        found = [change.weeks for change in run]
        weeks += [sum(found)] * len(found) if is_deficit else found
    return weeks


@traced
def answer_intake(
    member: Member, target: BodyTarget, days: int, protein_g_per_kg: float,
    sources: frozenset[UncertaintySource], before: CutsBefore = NOTHING_BEFORE,
) -> IntakeAnswer:  # fmt: skip
    """The constant intake for a target by a date; the nearest safe one where rails forbid it."""
    asked, subject = _Asked(member, sources, before), member.subject
    protein = _protein_per_kg(subject, protein_g_per_kg)
    _check_target(target, subject)

    def diet(intake_kcal: float) -> Diet:
        return Diet(intake_kcal, BASELINE_CARBOHYDRATE_SHARE * intake_kcal, protein)

    wanted = intake_for_target(asked.model, asked.state, target, float(days), diet)
    if wanted is None:
        is_less = target.value < target.of(asked.state)
    else:
        is_less = wanted < subject.maintenance_kcal - _NO_DEFICIT_KCAL
    if is_less:
        rails.check_person(subject)
    least, most, why = _safe_intakes(asked, days / 7.0, diet)
    reasons: list[Message] = []
    if wanted is None:
        reasons.append(say("TARGET_UNREACHABLE"))
        wanted = 0.0 if target.value < target.of(asked.state) else 1e9
    if wanted > subject.maintenance_kcal + _NO_DEFICIT_KCAL:
        rails.check_answered(subject)
    intake = min(max(wanted, least), most)
    if intake > subject.maintenance_kcal and asked.broken_by(diet(intake), float(days)) is not None:
        # Of a gain that fades the weeks that still are one may be too fast.
        intake = most = _most_unbroken(asked, diet, float(days), intake)
    is_feasible = abs(intake - wanted) <= 5.0
    if is_feasible:
        # What nobody may eat is not told as what it would take.
        reasons.append(say("TARGET_NEEDS_INTAKE", intake_kcal=wanted))
    if wanted < least - 5.0 and why is not None:
        reasons.append(say("TARGET_BEYOND_RAIL", rule=why.rule, why=why.why, least_intake_kcal=least))
    elif wanted > most + 5.0:
        limit = rails.GAIN_RATE_LIMIT[subject.training_status]
        reasons.append(say("TARGET_TOO_FAST_GAIN", percent=100 * limit))
    chosen = diet(intake)
    change = _Change(subject, asked.state, advance(asked.model, asked.state, chosen, float(days)), days / 7.0, chosen)
    actions = change.warnings()
    if intake < subject.maintenance_kcal - _NO_DEFICIT_KCAL:
        actions = rails.check_person(subject)
        actions += change.check("question.target.value")
        rails.refuse_protein(chosen.protein_g_per_kg, "question.protein_g_per_kg")
    path = _constant(asked, chosen, days)
    warned, told = _refuse_broken(asked, path, chosen, float(days), "question.target.value", is_ours=True)
    actions += warned
    expected = asked.expected(chosen)
    answer = IntakeAnswer(path, told, each_once(actions), reasons)
    if is_feasible:
        # Followed in full it gets there by the date, as a plan of so many weeks does; as far as it is kept to, later.
        day = days if expected == chosen else days_for_target(asked.model, asked.state, target, expected)
        return answer._replace(reached_day=day, is_found_intake=True)
    nearest = target.of(path.states[-1])
    day = nearest_day_for_target(asked.model, asked.state, target, expected, days, LEAST_TARGET_DAYS)
    return answer._replace(nearest_value=nearest, nearest_day=day, is_feasible=False, is_nearest_intake=True)


@traced
def answer_date(
    member: Member, target: BodyTarget, intake_kcal: float, protein_g_per_kg: float,
    sources: frozenset[UncertaintySource], before: CutsBefore = NOTHING_BEFORE,
) -> IntakeAnswer:  # fmt: skip
    """The date on which a constant intake reaches a target. Raises ``Refused`` for an intake that rails forbid."""
    asked, subject = _Asked(member, sources, before), member.subject
    _check_target(target, subject)
    protein = _protein_per_kg(subject, protein_g_per_kg)
    chosen = Diet(intake_kcal, BASELINE_CARBOHYDRATE_SHARE * intake_kcal, protein)
    day = days_for_target(asked.model, asked.state, target, asked.expected(chosen))
    horizon = day if day is not None else 26 * 7
    weeks = max(1.0, horizon / 7.0)
    field = "question.intake_kcal"
    actions = asked.check(chosen, weeks, subject, field)
    after = advance(asked.model, asked.state, chosen, 7.0 * weeks)
    actions += _Change(subject, asked.state, after, weeks, chosen).check(field)
    path = _constant(asked, chosen, max(7, horizon))
    warned, told = _refuse_broken(asked, path, chosen, float(max(7, horizon)), field)
    actions += warned
    answer = IntakeAnswer(path, told, each_once(actions), [], reached_day=day, is_found_intake=True)
    if day is not None:
        return answer
    reasons = [say("TARGET_WRONG_SIDE")]
    return answer._replace(nearest_value=target.of(path.states[-1]), is_feasible=False, reasons=reasons)


def _check_target(target: BodyTarget, subject: Subject) -> None:
    """Raises ``Refused`` for a target of body fat where none may be spoken of, or one that is too low; of less than
    there is with every rule that refuses the person any deficit."""
    try:
        _refuse_target(target, subject)
    except rails.Refused as refused:
        now = {
            TargetQuantity.WEIGHT_KG: subject.weight_kg,
            TargetQuantity.FAT_KG: subject.fat_kg,
            TargetQuantity.FAT_FRACTION: subject.fat_fraction,
        }
        if target.value < now[target.quantity]:
            raise rails.with_person(refused, subject) from refused
        raise


def _refuse_target(target: BodyTarget, subject: Subject) -> None:
    if target.quantity is not TargetQuantity.WEIGHT_KG:
        rails.refuse_fat_target(subject, "question.target.quantity")
    if target.quantity is TargetQuantity.FAT_FRACTION:
        rails.refuse_target(subject.sex, target.value, "question.target.value")
    if target.quantity is TargetQuantity.WEIGHT_KG and target.value <= subject.weight_kg:
        rails.refuse_weight_target(subject, target.value, "question.target.value")


def _refuse_broken(
    asked: _Asked, path: Forecast, diet: Diet, days: float, field: str, *, is_ours: bool = False
) -> tuple[list[RailAction], Cleared[list[ToldWeek]]]:
    """Warnings, and the weeks as the gate reads them; raises ``Refused`` where one of them breaks a rule."""
    weeks = asked.constant_weeks(diet, days)
    actions = asked.check_deficits(weeks, is_ours=is_ours)
    return actions, asked.clear(path, weeks, [diet] * len(weeks), field)


def _constant(asked: _Asked, diet: Diet, days: int) -> Forecast:
    weeks, rest = divmod(days, 7)
    lengths = (7.0,) * weeks + ((float(rest),) if rest else ())
    return asked.run([Stretch(diet, lengths)])


class _Lived(NamedTuple):
    """What the rails read after all the weeks."""

    then: Subject


def _safe_intakes(
    asked: _Asked, weeks: float, diet: Callable[[float], Diet]
) -> tuple[float, float, rails.DeficitLimit | None]:
    """The least and the most intake inside the rails for this long, and the rule that sets the least."""
    subject, state, model = asked.subject, asked.state, asked.model
    try:
        rails.check_person(subject)
    except rails.Refused as refusal:
        why = rails.DeficitLimit(refusal.action.id, 0.0, rails.Why.THIS_PERSON)

        def live(kcal: float) -> _Lived:
            end = advance(model, state, diet(kcal), 7.0 * weeks, step_days=14.0)
            return _Lived(asked.subject_at(end, diet(kcal)))

        least, _ = rails.held_through(subject, subject.maintenance_kcal, live)
        return least, max(least, _most_intake(model, state, subject, weeks, diet)), why
    strictest = rails.measured_limits(subject, weeks)[0]
    if not asked.history.is_known:
        strictest = min(strictest, rails.HISTORY_LIMIT, key=lambda limit: limit.deficit_kcal)
    least = subject.maintenance_kcal - max(0.0, strictest.deficit_kcal)
    days = 7.0 * weeks

    def breaks(intake_kcal: float) -> str | None:
        end = advance(model, state, diet(intake_kcal), days, step_days=14.0)
        share = float((end.tissue_kg - state.tissue_kg) / weeks / state.weight_kg)
        is_deficit = intake_kcal < subject.maintenance_kcal - _NO_DEFICIT_KCAL
        found = rails.breaks_change(subject, share, float(end.fat_kg / end.weight_kg), is_deficit=is_deficit)
        if found is not None:
            return found
        broken = asked.broken_by(diet(intake_kcal), days)
        return None if broken is None else broken.rule

    if breaks(least):
        low, high = least, subject.maintenance_kcal
        while high - low > 2.0:
            middle = 0.5 * (low + high)
            low, high = (middle, high) if breaks(middle) else (low, middle)
        rule = breaks(low) or rails.LOSS
        strictest = rails.DeficitLimit(rule, subject.maintenance_kcal - high, rails.Why.WHOLE_PHASE)
        least = high
    return least, _most_intake(model, state, subject, weeks, diet), strictest


def _most_unbroken(asked: _Asked, diet: Callable[[float], Diet], days: float, most: float) -> float:
    """The largest intake over maintenance that breaks no rule, under one that does [kcal/d]."""
    low, high = asked.subject.maintenance_kcal, most
    while high - low > 2.0:
        middle = 0.5 * (low + high)
        low, high = (middle, high) if asked.broken_by(diet(middle), days) is None else (low, middle)
    return low


def _most_intake(
    model: BodyModel, state: BodyState, subject: Subject, weeks: float, diet: Callable[[float], Diet]
) -> float:
    limit = rails.GAIN_RATE_LIMIT[subject.training_status]

    def excess(intake_kcal: float) -> float:
        end = advance(model, state, diet(intake_kcal), 7.0 * weeks, step_days=14.0)
        return float((end.tissue_kg - state.tissue_kg) / weeks / state.weight_kg) - limit

    return crossing(excess, subject.maintenance_kcal, 3.0 * subject.maintenance_kcal) - 2.0
