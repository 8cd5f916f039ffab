"""The guard rails on what is eaten: the largest deficit of each rule, and what is refused, capped or warned of.

Each rule has an id, a limit, a basis and an action. A refusal raises ``Refused``; a cap or a warning is a
``RailAction`` that the answer lists. Nothing silently exceeds a rail.
"""

import math
from collections.abc import Callable, Sequence
from typing import NamedTuple, Protocol, TypeVar

from ..body import FAT_SUPPLY_LIMIT
from ..numbers import FLOATS, Elementwise, Number, compiled, inlined
from ..person import Condition, Sex, TrainingStatus
from ..register import Message, say, traced
from .broken_rules import too_fast_a_gain, too_fast_a_loss, too_lean, too_little_protein, underweight
from .macronutrients import PROTEIN_DEFAULT_DEFICIT, PROTEIN_FLOOR_DEFICIT, least_intake_kcal
from .person_rails import forbids_fat_target, may_not_diet
from .portions import usual_protein
from .subject import (
    RailAction,
    Refused,
    Subject,
    availability_left,
    bmi_of,
    capping,
    fat_fraction_of,
    refusing,
    resting_of,
    stricter,
    warning,
)
from .table import (
    APART_WEEKS,
    AVAILABILITY,
    AVAILABILITY_LIMIT,
    AVAILABILITY_WARN,
    BMI,
    BMI_FLOOR,
    BMI_WARN,
    BODY_FAT,
    CARBOHYDRATE,
    CARBOHYDRATE_WARN_G,
    CUT_HISTORY,
    CUTS_A_YEAR_WARN,
    DEFAULT_DEFICIT,
    DEFICIT,
    DEFICIT_SHARE_LIMIT,
    DEFICIT_SHARE_WARN,
    DIETARY_FAT,
    FAT_FRACTION_FLOOR,
    FAT_FRACTION_WARN,
    FAT_SHARE_WARN,
    FAT_SUPPLY,
    FAT_SUPPLY_WARN,
    FLOOR,
    FLOOR_TOLD,
    GAIN_RATE,
    GAIN_RATE_LIMIT,
    GAIN_RATE_WARN_SHARE,
    INTAKE_FLOOR,
    LOSS,
    LOSS_LIMIT,
    LOSS_WARN,
    PROTEIN,
    RESTING_TOLD,
    UNANSWERED,
    WEEKS_BETWEEN_CUTS,
)
from .why import Why


class DeficitLimit(NamedTuple):
    """The largest deficit one rule allows [kcal/d], and why."""

    rule: str
    deficit_kcal: float
    why: Why


class LeastDay(NamedTuple):
    """The least food of a day [kcal], the rule that says so, and why."""

    kcal: float
    rule: str
    why: Why


# A longer deficit counts as an ordinary cut, with a higher floor and no low energy availability.
LONG_PHASE_WEEKS = 6


def deficit_limits(
    subject: Subject, weeks: float = LONG_PHASE_WEEKS, *, fed: Subject | None = None
) -> list[DeficitLimit]:
    """The largest deficit that each rule allows at the start of a phase of ``weeks``, strictest first.

    ``fed`` is the body that protein and fat are shared out for, where that was another, at the start.
    """
    fed = subject if fed is None or fed.weight_kg < subject.weight_kg else fed
    maintenance, scale = subject.maintenance_kcal, subject.scale
    floors = deficit_floors(subject, weeks)
    least_food = least_intake_kcal(fed.weight_kg, protein_for_kg=fed.protein_kg)
    limits = [
        DeficitLimit(DEFICIT, DEFICIT_SHARE_LIMIT * maintenance, Why.SHARE_OF_MAINTENANCE),
        DeficitLimit(FAT_SUPPLY, scale.ratio * FAT_SUPPLY_LIMIT * subject.fat_kg, Why.FAT_RELEASE),
        DeficitLimit(AVAILABILITY, maintenance - floors.available_kcal(subject), Why.ENERGY_AVAILABILITY),
        DeficitLimit(PROTEIN, maintenance - least_food, Why.PROTEIN_AND_FAT),
        DeficitLimit(FLOOR, maintenance - floors.told_kcal(subject), Why.LEAST_INTAKE),
    ]
    return sorted(limits, key=lambda limit: limit.deficit_kcal)


def measured_limits(subject: Subject, weeks: float) -> list[DeficitLimit]:
    """``deficit_limits``, the default one being the largest where body fat was not measured."""
    limits = deficit_limits(subject, weeks)
    if not subject.is_fat_measured:
        limits.append(MEASURE_LIMIT)
    return sorted(limits, key=lambda limit: limit.deficit_kcal)


def weeks_that_count(weeks: Number, weeks_since: Number, ops: Elementwise = FLOATS) -> Number:
    """Weeks of a deficit that count as of one ``weeks_since`` its end: with those between, if under four."""
    return ops.where((weeks > 0.0) & (weeks_since < APART_WEEKS), weeks + weeks_since, 0.0)


class DeficitFloors(NamedTuple):
    """What a person has to eat on each day of a deficit, whatever becomes of the body.

    ``anyhow_kcal`` is the least told by the floors of intake: as eaten, and whatever a log says; ``resting_share`` the
    same of resting energy. ``leanest`` is the least body fat, ``fade`` the body fat over which energy availability
    fades, ``is_long`` whether the deficit counts as an ordinary cut.
    """

    anyhow_kcal: float
    resting_share: float
    leanest: float
    fade: tuple[float, float]
    is_long: bool

    def told_kcal(self, now: Subject) -> float:
        """The least told to the body ``now`` by the floors of intake [kcal/d]."""
        return max(self.anyhow_kcal, self.resting_share * now.resting_now_kcal)

    def available_kcal(self, now: Subject) -> float:
        """The least intake told for the energy availability of the body ``now`` [kcal/d].

        It fades where measured body fat is high, since the limits come from lean athletes, down to what exercise takes:
        of less than that nothing would be left for the body at all.
        """
        return _available_kcal(now, *self.fade, self.is_long, *now.scale, ops=FLOATS)

    def least_kcal(self, now: Subject) -> tuple[float, str]:
        """The least intake told for the body ``now`` [kcal/d], and its rule."""
        return max(
            (self.told_kcal(now), FLOOR),
            (self.available_kcal(now), AVAILABILITY),
            (_unsupplied_kcal(now, now.scale.ratio), FAT_SUPPLY),
        )

    def are_kept(self, bodies: Sequence[Subject], eaten_kcal: Sequence[float], within_kcal: float) -> bool:
        """Whether each of the bodies of one person may be in a deficit and eat so much, as told [kcal/d]."""
        first = bodies[0]
        return _are_kept(
            bodies,
            eaten_kcal,
            within_kcal,
            self.anyhow_kcal,
            self.resting_share,
            self.leanest,
            *self.fade,
            self.is_long,
            *first.scale,
            first.height_squared,
        )


@inlined
def _available_kcal(
    now: Subject,
    fade_first: Number,
    fade_last: Number,
    is_long: bool,
    ratio: Number,
    most: Number,
    ops: Elementwise,
) -> Number:
    left = availability_left(fade_first, fade_last, now.fat_kg / now.weight_kg - now.fat_below, ops)
    fat_free_kg = now.weight_kg - now.fat_kg
    least = (left * AVAILABILITY_LIMIT * fat_free_kg + now.exercise_kcal) * most
    if is_long:
        least = ops.maximum(least, (left * AVAILABILITY_WARN * fat_free_kg + now.exercise_kcal) * ratio)
    return least


@inlined
def _unsupplied_kcal(now: Subject, ratio: Number) -> Number:
    """What body fat cannot supply of maintenance [kcal/d]."""
    return now.maintenance_kcal - ratio * FAT_SUPPLY_LIMIT * now.fat_kg


@compiled
def _are_kept(
    bodies: Sequence[Subject],
    eaten_kcal: Sequence[Number],
    within_kcal: Number,
    anyhow_kcal: Number,
    resting_share: Number,
    leanest: Number,
    fade_first: Number,
    fade_last: Number,
    is_long: bool,
    ratio: Number,
    most: Number,
    height_squared: Number,
    *,
    ops: Elementwise = FLOATS,
) -> bool:
    """``DeficitFloors.are_kept``: no body is too light or too lean, and none eats less than its least."""
    for i, now in enumerate(bodies):
        if bmi_of(now, height_squared) < BMI_FLOOR or fat_fraction_of(now) < leanest:
            return False
        least = ops.maximum(anyhow_kcal, resting_share * resting_of(now, ops))
        least = ops.maximum(least, _unsupplied_kcal(now, ratio))
        least = ops.maximum(least, _available_kcal(now, fade_first, fade_last, is_long, ratio, most, ops))
        if eaten_kcal[i] < least - within_kcal:
            return False
    return True


def deficit_floors(subject: Subject, weeks: float) -> DeficitFloors:
    """The floors of a deficit of ``weeks``."""
    most, is_long = subject.scale.most, weeks > LONG_PHASE_WEEKS
    anyhow = max(stricter(INTAKE_FLOOR, subject.sex) * most, _floor_told_kcal(subject.sex))
    resting_share = max(most, RESTING_TOLD) if is_long else RESTING_TOLD
    leanest = stricter(FAT_FRACTION_FLOOR, subject.sex)
    return DeficitFloors(anyhow, resting_share, leanest, subject.availability_fade, is_long)


def _floor_told_kcal(sex: Sex) -> float:
    """The least intake told to anyone, whoever they are and whatever a log says [kcal/d]."""
    return FLOOR_TOLD[Sex.MALE if sex is Sex.MALE else Sex.FEMALE]


class DaysLived(Protocol):
    """Days lived on an intake, and what the rails read of the body after them."""

    @property
    def then(self) -> Subject: ...


Days = TypeVar("Days", bound=DaysLived)


class HeldFloors(NamedTuple):
    """The least told to a person on a hold or a gain [kcal/d]: anyhow, and where maintenance lies over a limit.

    ``resting_share`` of resting energy is told anyhow.
    """

    anyhow_kcal: float
    limit_kcal: float
    over_limit_kcal: float
    resting_share: float

    def least_kcal(self, resting_kcal: Number, maintenance_kcal: Number, *, ops: Elementwise = FLOATS) -> Number:
        """The least told to a body that rests and needs so much."""
        least = ops.where(maintenance_kcal > self.limit_kcal, self.over_limit_kcal, self.anyhow_kcal)
        return ops.maximum(least, self.resting_share * resting_kcal)

    def are_kept(self, bodies: Sequence[Subject], told_kcal: Sequence[float], within_kcal: float) -> bool:
        """Whether each of the bodies of one person is told its least, and none is underweight."""
        return _are_held(bodies, told_kcal, within_kcal, *self, bodies[0].height_squared)

    def held_kcal(self, now: Subject, wanted_kcal: float) -> float:
        """What is told to the body ``now``: what is wanted, and no less than the floors, up to the next 10."""
        return max(wanted_kcal, up_to_step(self.least_kcal(now.resting_now_kcal, now.maintenance_kcal)))

    def held_through(self, told_kcal: float, live: Callable[[float], Days]) -> tuple[float, Days]:
        """What is told, or as much more as the body that ``live`` makes of it needs to be told by then; lived so."""
        while True:
            lived = live(told_kcal)
            least = self.least_kcal(lived.then.resting_now_kcal, lived.then.maintenance_kcal)
            if least <= told_kcal:
                return told_kcal, lived
            told_kcal = up_to_step(least)


@compiled
def _are_held(
    bodies: Sequence[Subject],
    told_kcal: Sequence[Number],
    within_kcal: Number,
    anyhow_kcal: Number,
    limit_kcal: Number,
    over_limit_kcal: Number,
    resting_share: Number,
    height_squared: Number,
    *,
    ops: Elementwise = FLOATS,
) -> bool:
    """``HeldFloors.are_kept``."""
    for i, now in enumerate(bodies):
        if bmi_of(now, height_squared) < BMI_FLOOR:
            return False
        least = ops.where(now.maintenance_kcal > limit_kcal, over_limit_kcal, anyhow_kcal)
        least = ops.maximum(least, resting_share * resting_of(now, ops))
        if told_kcal[i] < least - within_kcal:
            return False
    return True


def up_to_step(kcal: Number) -> Number:
    """The next 10 kcal up from what is at least told, a hair apart."""
    return -(-(kcal / _STEP_KCAL - 1e-9) // 1.0) * _STEP_KCAL


def held_floors(subject: Subject) -> HeldFloors:
    """The floors of a hold or a gain, whatever becomes of the body: rest, the least intake, and need."""
    scale = subject.scale
    least = _floor_told_kcal(subject.sex)
    if may_not_diet(subject):
        least = max(least, subject.need_kcal)
    floor = stricter(INTAKE_FLOOR, subject.sex)
    over = max(least, floor * scale.most)
    return HeldFloors(least, floor * scale.ratio, over, max(scale.most, RESTING_TOLD))


def least_held_kcal(subject: Subject) -> float:
    """The least intake told on a hold or a gain [kcal/d]: rest, the floor where maintenance lies above it, and need."""
    return held_floors(subject).least_kcal(subject.resting_now_kcal, subject.maintenance_kcal)


# Of a person whose past cuts are not known.
HISTORY_LIMIT = DeficitLimit(CUT_HISTORY, DEFAULT_DEFICIT, Why.HISTORY_UNKNOWN)
# Of a person whose body fat was not measured.
MEASURE_LIMIT = DeficitLimit(BODY_FAT, DEFAULT_DEFICIT, Why.FAT_UNMEASURED)
# Half a step of what an intake is rounded to, and a hair.
_WITHIN_KCAL = 0.5
_STEP_KCAL = 10.0


def deficit_of(subject: Subject, intake_kcal: float) -> float:
    """Maintenance less what is told [kcal/d]."""
    return subject.maintenance_kcal - intake_kcal


def resting_limit(subject: Subject) -> DeficitLimit:
    """The largest deficit over resting energy; near the underweight range nobody is planned more who asks for none."""
    least = subject.resting_now_kcal * subject.scale.most
    return DeficitLimit(FLOOR, subject.maintenance_kcal - least, Why.RESTING_ENERGY)


def least_on_day_kcal(now: Subject, weeks: float) -> tuple[float, str]:
    """The least intake told for the body ``now`` on a day of a deficit of ``weeks`` [kcal/d], and its rule."""
    return deficit_floors(now, weeks).least_kcal(now)


def broken_on_day(now: Subject, intake_kcal: float, floors: DeficitFloors) -> str | None:
    """The rule that the body ``now`` breaks on a day of a deficit with these floors, eating ``intake_kcal`` as told."""
    if now.bmi < BMI_FLOOR:
        return BMI
    if now.fat_fraction < floors.leanest:
        return BODY_FAT
    least, rule = floors.least_kcal(now)
    return rule if intake_kcal < least - _WITHIN_KCAL else None


def broken_on_days(bodies: Sequence[Subject], eaten_kcal: Sequence[float], floors: DeficitFloors) -> str | None:
    """The first rule that is broken by one of the bodies (``broken_on_day``)."""
    if floors.are_kept(bodies, eaten_kcal, _WITHIN_KCAL):
        return None
    broken = (broken_on_day(now, kcal, floors) for now, kcal in zip(bodies, eaten_kcal, strict=True))
    return next(rule for rule in broken if rule is not None)


def path_limit(rule: str, deficit_kcal: float) -> DeficitLimit:
    """The largest deficit [kcal/d] with which a phase keeps a rule on each of its days."""
    why = {
        DEFICIT: Why.SHARE_OF_MAINTENANCE,
        PROTEIN: Why.PROTEIN_AND_FAT,
        BODY_FAT: Why.FAT_AT_END,
        BMI: Why.BODY_MASS_INDEX_AT_END,
        LOSS: Why.WEEKLY_LOSS,
        FAT_SUPPLY: Why.FAT_RELEASE_LATER,
        AVAILABILITY: Why.AVAILABILITY_AT_END,
        FLOOR: Why.LEAST_INTAKE_AT_END,
    }[rule]
    return DeficitLimit(rule, deficit_kcal, why)


def path_limit_of(limit: DeficitLimit) -> DeficitLimit:
    """A limit of a later body, as a limit of the phase: the reason says that it binds later."""
    return limit._replace(why=Why.FAT_RELEASE_LATER) if limit.why is Why.FAT_RELEASE else limit


@traced
def refuse_deficit(subject: Subject, intake_kcal: float, weeks: float, field: str) -> None:
    """Raise ``Refused`` where an intake asked for is a larger deficit than a rule allows."""
    strictest = measured_limits(subject, weeks)[0]
    deficit = subject.maintenance_kcal - intake_kcal
    if deficit > strictest.deficit_kcal + _WITHIN_KCAL:
        message = say(
            "REFUSED_DEFICIT",
            deficit_kcal=deficit,
            limit_kcal=strictest.deficit_kcal,
            rule=strictest.rule,
            why=strictest.why,
            least_intake_kcal=subject.maintenance_kcal - strictest.deficit_kcal,
        )
        raise Refused(*refusing(strictest.rule, field, message, strictest.deficit_kcal, deficit, "kcal/d"))


def breaks_change(
    subject: Subject, tissue_share_per_week: float, end_fat_fraction: float, *, is_deficit: bool = False
) -> str | None:
    """The rule that a phase as a whole breaks, given its mean change of tissue and its end.

    ``is_deficit``: whether less is eaten than maintenance. It need not show in tissue: a beginner's lean tissue may
    rise by what fat falls.
    """
    if tissue_share_per_week < -LOSS_LIMIT:
        return LOSS
    if (is_deficit or tissue_share_per_week < 0.0) and end_fat_fraction < stricter(FAT_FRACTION_FLOOR, subject.sex):
        return BODY_FAT
    if tissue_share_per_week > GAIN_RATE_LIMIT[subject.training_status] + 1e-9:
        return GAIN_RATE
    return None


@traced
def refuse_change(
    subject: Subject, tissue_share_per_week: float, end_fat_fraction: float, field: str, *, is_deficit: bool
) -> None:
    """Raise ``Refused`` where an intake asked for changes the body faster or further than a rule allows."""
    rule = breaks_change(subject, tissue_share_per_week, end_fat_fraction, is_deficit=is_deficit)
    if rule == LOSS:
        raise Refused(too_fast_a_loss(tissue_share_per_week), field)
    if rule == BODY_FAT:
        raise Refused(too_lean(subject.sex, end_fat_fraction, speaks=forbids_fat_target(subject) is None), field)
    if rule == GAIN_RATE:
        raise Refused(too_fast_a_gain(subject.training_status, tissue_share_per_week), field)


@traced
def refuse_target(subject: Subject, target_fat_fraction: float, field: str) -> None:
    """Raise ``Refused`` for a body-fat target under the least that is planned."""
    floor = stricter(FAT_FRACTION_FLOOR, subject.sex)
    if target_fat_fraction < floor:
        message = say("REFUSED_TARGET", fat_percent=100 * target_fat_fraction, limit_percent=100 * floor)
        raise Refused(*refusing(BODY_FAT, field, message, floor, target_fat_fraction, "1"))


def refuse_weight_target(subject: Subject, target_kg: float, field: str) -> None:
    """Raise ``Refused`` for a weight to reach that is underweight."""
    bmi = target_kg / (subject.height_cm / 100.0) ** 2
    if bmi < BMI_FLOOR:
        raise Refused(underweight(bmi), field)


def refuse_protein(asked_g_per_kg: float, field: str) -> None:
    """Raise ``Refused`` where protein is less than a deficit needs."""
    if asked_g_per_kg < PROTEIN_FLOOR_DEFICIT - 1e-9:
        raise Refused(too_little_protein(asked_g_per_kg), field)


def capped(limit: DeficitLimit, asked_kcal: float) -> RailAction:
    """The report of a deficit held at a limit."""
    if limit is HISTORY_LIMIT:
        message = say("CAPPED_HISTORY_UNKNOWN", deficit_kcal=limit.deficit_kcal)
    elif limit is MEASURE_LIMIT:
        message = say("MEASURE_FIRST", deficit_kcal=limit.deficit_kcal)
    else:
        message = say("CAPPED_DEFICIT", deficit_kcal=limit.deficit_kcal, rule=limit.rule, why=limit.why)
    return capping(limit.rule, message, limit.deficit_kcal, asked_kcal, "kcal/d")


def flexible_capped(least: LeastDay, asked_kcal: float, fits_kcal: float) -> RailAction:
    """The report of flexible days of a week held at what its other days can pay for."""
    message = say(
        "CAPPED_FLEXIBLE_DAYS",
        asked_kcal=asked_kcal,
        fits_kcal=fits_kcal,
        least_intake_kcal=least.kcal,
        rule=least.rule,
        why=least.why,
    )
    return capping(least.rule, message, fits_kcal, asked_kcal, "kcal a week")


def capped_for_bmi(limit: DeficitLimit, asked_kcal: float, weeks: int, tissue_kg: float) -> RailAction:
    """The report of a deficit that body mass index limits, with the ``weeks`` that the one asked for would fit into."""
    message = say(
        "CAPPED_DEFICIT_FOR_BMI",
        deficit_kcal=limit.deficit_kcal,
        rule=limit.rule,
        why=limit.why,
        tissue_kg=tissue_kg,
        asked_kcal=asked_kcal,
        weeks=weeks,
    )
    return capping(limit.rule, message, limit.deficit_kcal, asked_kcal, "kcal/d")


def without_room(limit: DeficitLimit, asked_kcal: float) -> RailAction:
    """The report of a limit that leaves no useful deficit. It is an answer, so that nothing is raised."""
    message = say("NO_SAFE_DEFICIT", rule=limit.rule, why=limit.why)
    return RailAction(limit.rule, "refused", max(0.0, limit.deficit_kcal), asked_kcal, "kcal/d", message)


@traced
def ratio_decides(subject: Subject, rule: str) -> list[Message]:
    """What is said where a rule leaves no deficit by how much of what is eaten is logged: there is a way to know."""
    if not subject.scale.is_learnt or rule not in (FLOOR, AVAILABILITY, FAT_SUPPLY):
        return []
    return [say("RATIO_DECIDES", percent=100 * subject.scale.ratio)]


@traced
def protein_in_deficit(subject: Subject, asked_g_per_kg: float | None) -> tuple[float, list[RailAction]]:
    """Protein to plan in a deficit [g/kg/d]: as asked, else the usual, and no less than its floor."""
    protein = usual_protein(subject, PROTEIN_DEFAULT_DEFICIT) if asked_g_per_kg is None else asked_g_per_kg
    actions = []
    if protein < PROTEIN_FLOOR_DEFICIT:
        message = say("CAPPED_PROTEIN", limit=PROTEIN_FLOOR_DEFICIT)
        actions.append(capping(PROTEIN, message, PROTEIN_FLOOR_DEFICIT, protein, "g/kg/d"))
        protein = PROTEIN_FLOOR_DEFICIT
    screening = subject.screening
    if screening is not None and Condition.KIDNEY_DISEASE in screening.conditions:
        actions.append(warning(PROTEIN, say("WARNED_KIDNEY_PROTEIN"), None, protein, "g/kg/d"))
    return protein, actions


@traced
def cap_protein_to_room(given_g_per_kg: float, asked_g_per_kg: float) -> list[RailAction]:
    """The report of protein for which an intake has no room beside the least fat."""
    if given_g_per_kg >= asked_g_per_kg - 0.05:
        return []
    message = say("CAPPED_PROTEIN_ROOM", given=given_g_per_kg, asked=asked_g_per_kg)
    return [capping(DIETARY_FAT, message, given_g_per_kg, asked_g_per_kg, "g/kg/d")]


@traced
def gain_weeks_allowed(subject: Subject, asked_weeks: int) -> tuple[int, list[RailAction]]:
    """The weeks of gain that may follow a hold: none where screening was not answered."""
    if not asked_weeks or subject.screening is not None:
        return asked_weeks, []
    return 0, [capping(UNANSWERED, say("CAPPED_UNANSWERED"), 0, asked_weeks, "weeks of gain")]


@traced
def capped_gain(status: TrainingStatus, surplus_kcal: float, asked_share_per_week: float) -> RailAction:
    """The report of a surplus held under the ceiling on the rate of gain; ``asked_share_per_week`` is without it."""
    limit = GAIN_RATE_LIMIT[status]
    message = say("CAPPED_GAIN_RATE", surplus_kcal=surplus_kcal, percent=100 * limit)
    return capping(GAIN_RATE, message, limit, asked_share_per_week, "of body mass a week")


@traced
def warn_gain(status: TrainingStatus, share_per_week: float) -> list[RailAction]:
    """Warnings on a surplus asked for that the ceiling allows."""
    warn_at = GAIN_RATE_WARN_SHARE * GAIN_RATE_LIMIT[status]
    if share_per_week <= warn_at:
        return []
    message = say("WARNED_GAIN_RATE", percent=100 * share_per_week)
    return [warning(GAIN_RATE, message, warn_at, share_per_week, "of body mass a week")]


@traced
def warn_deficit(
    subject: Subject, intake_kcal: float, loss_share_per_week: float, end_fat_fraction: float, end_bmi: float = math.inf
) -> list[RailAction]:
    """Warnings on a deficit that every limit allows."""
    warnings: list[RailAction] = []
    if end_bmi < BMI_WARN:
        warnings.append(warning(BMI, say("WARNED_BMI", bmi=end_bmi), BMI_WARN, end_bmi, "kg/m2"))
    if not subject.is_fat_measured:
        message = say("MEASURE_FIRST", deficit_kcal=DEFAULT_DEFICIT)
        warnings.append(warning(BODY_FAT, message, DEFAULT_DEFICIT, deficit_of(subject, intake_kcal), "kcal/d"))
    if subject.scale.is_learnt:
        least, rule = least_on_day_kcal(subject, LONG_PHASE_WEEKS)
        if intake_kcal < least + 2 * _STEP_KCAL:
            message = say("RATIO_DECIDES", percent=100 * subject.scale.ratio)
            warnings.append(warning(rule, message, least, intake_kcal, "kcal/d"))
    deficit = subject.maintenance_kcal - intake_kcal
    eaten = intake_kcal / subject.scale.ratio
    share = deficit / subject.maintenance_kcal
    if share > DEFICIT_SHARE_WARN:
        message = say("WARNED_DEFICIT_SHARE", share_percent=100 * share)
        warnings.append(warning(DEFICIT, message, DEFICIT_SHARE_WARN, share, "of maintenance"))
    per_fat = deficit / subject.scale.ratio / subject.fat_kg
    if per_fat > FAT_SUPPLY_WARN:
        message = say("WARNED_FAT_SUPPLY", observed=per_fat, limit=FAT_SUPPLY_WARN)
        warnings.append(warning(FAT_SUPPLY, message, FAT_SUPPLY_WARN, per_fat, "kcal/kg/d"))
    if loss_share_per_week > LOSS_WARN:
        warnings.append(
            warning(
                LOSS,
                say("WARNED_LOSS", percent=100 * loss_share_per_week),
                LOSS_WARN,
                loss_share_per_week,
                "of body mass a week",
            )
        )
    available = (eaten - subject.exercise_kcal) / subject.fat_free_kg
    if available < AVAILABILITY_WARN:
        message = say("WARNED_AVAILABILITY", observed=available, limit=AVAILABILITY_WARN)
        warnings.append(warning(AVAILABILITY, message, AVAILABILITY_WARN, available, "kcal/kg fat-free mass/d"))
    resting = subject.resting_now_kcal
    if eaten < resting:
        message = say("WARNED_UNDER_RESTING", intake_kcal=eaten, resting_kcal=resting)
        warnings.append(warning(FLOOR, message, resting, eaten, "kcal/d"))
    lean_warn = stricter(FAT_FRACTION_WARN, subject.sex)
    if end_fat_fraction < lean_warn:
        warnings.append(
            warning(
                BODY_FAT, say("WARNED_BODY_FAT", fat_percent=100 * end_fat_fraction), lean_warn, end_fat_fraction, "1"
            )
        )
    return warnings


def warn_macronutrients(intake_kcal: float, fat_kcal: float, carbohydrate_g: float) -> list[RailAction]:
    """Warnings on a day's split."""
    warnings = []
    share = fat_kcal / intake_kcal
    if share < FAT_SHARE_WARN:
        warnings.append(
            warning(
                DIETARY_FAT, say("WARNED_DIETARY_FAT", share_percent=100 * share), FAT_SHARE_WARN, share, "of energy"
            )
        )
    if carbohydrate_g < CARBOHYDRATE_WARN_G:
        message = say("WARNED_CARBOHYDRATE", carbohydrate_g=carbohydrate_g, limit_g=CARBOHYDRATE_WARN_G)
        warnings.append(warning(CARBOHYDRATE, message, CARBOHYDRATE_WARN_G, carbohydrate_g, "g/d"))
    return warnings


@traced
def warn_history(cuts_last_12_months: int | None, weeks_since_last_cut: int | None) -> list[RailAction]:
    """Warnings on how often this person cuts, or that it is not known."""
    warnings = []
    if cuts_last_12_months is None:
        warnings.append(warning(CUT_HISTORY, say("WARNED_HISTORY_UNKNOWN"), DEFAULT_DEFICIT, None, "kcal/d"))
    if cuts_last_12_months is not None and cuts_last_12_months + 1 > CUTS_A_YEAR_WARN:
        message = say("WARNED_CUTS_A_YEAR", cuts=cuts_last_12_months + 1)
        warnings.append(warning(CUT_HISTORY, message, CUTS_A_YEAR_WARN, cuts_last_12_months + 1.0, "cuts"))
    if weeks_since_last_cut is not None and weeks_since_last_cut < WEEKS_BETWEEN_CUTS:
        message = say("WARNED_RECENT_CUT", weeks=weeks_since_last_cut, limit_weeks=WEEKS_BETWEEN_CUTS)
        warnings.append(warning(CUT_HISTORY, message, WEEKS_BETWEEN_CUTS, float(weeks_since_last_cut), "weeks"))
    return warnings


def held_kcal(now: Subject, wanted_kcal: float) -> float:
    """What is told on a day of a hold or a gain: what is wanted, and no less than the floors, up to the next 10."""
    return held_floors(now).held_kcal(now, wanted_kcal)


def held_through(now: Subject, wanted_kcal: float, live: Callable[[float], Days]) -> tuple[float, Days]:
    """``held_kcal`` of days that ``live`` lives on an intake, whose last body has to have its floors as well."""
    floors = held_floors(now)
    return floors.held_through(floors.held_kcal(now, wanted_kcal), live)


def raised_to_floor(told_kcal: float, wanted_kcal: float) -> list[RailAction]:
    """The report of a hold or a gain whose intake a floor raises."""
    if told_kcal <= wanted_kcal + _STEP_KCAL:
        return []
    return [capping(FLOOR, say("RAISED_TO_FLOOR", intake_kcal=told_kcal), told_kcal, wanted_kcal, "kcal/d")]
