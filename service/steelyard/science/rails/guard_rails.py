"""The guard rails: one table of rules, applied to every phase on every endpoint.

Each rule has an id, a limit, a basis and an action. A refusal raises ``Refused``; a cap or a warning is a
``RailAction`` that the answer lists. Nothing silently exceeds a rail.
"""

from typing import NamedTuple

import msgspec

from ..body import FAT_SUPPLY_LIMIT
from ..person import Condition, EatingDisorder, Medicine, Screening, Sex, TrainingStatus
from ..register import Message, say, traced
from .macronutrients import PROTEIN_DEFAULT_DEFICIT, PROTEIN_FLOOR_DEFICIT, least_intake_kcal
from .table import (
    ADULT_YEARS,
    AGE,
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
    EATING_DISORDER,
    FAT_FRACTION_FLOOR,
    FAT_FRACTION_WARN,
    FAT_SHARE_WARN,
    FAT_SUPPLY,
    FAT_SUPPLY_WARN,
    FLOOR,
    GAIN_RATE,
    GAIN_RATE_LIMIT,
    GAIN_RATE_WARN_SHARE,
    INTAKE_FLOOR,
    LOSS,
    LOSS_LIMIT,
    LOSS_WARN,
    MEDICAL,
    OLDER_YEARS,
    PREGNANCY,
    PROTEIN,
    UNANSWERED,
    WEEKS_BETWEEN_CUTS,
    YOUNG_ADULT_YEARS,
)


class RailAction(msgspec.Struct, frozen=True):
    """What a rail did: ``capped``, ``warned`` or ``refused``, with its limit and what it saw."""

    id: str
    action: str
    limit: float | None
    observed: float | None
    unit: str
    message: Message


class Refused(Exception):  # noqa: N818 - a refusal is an answer, not a fault
    """A rail refuses. ``field`` names the input that it reads (``register/errors.py``)."""

    def __init__(self, action: RailAction, field: str) -> None:
        super().__init__(action.message.text)
        self.action = action
        self.field = field


class Subject(NamedTuple):
    """What the rails read of a person at the start of a phase."""

    sex: Sex
    age_years: float
    height_cm: float
    weight_kg: float
    fat_kg: float
    maintenance_kcal: float
    resting_kcal: float
    exercise_kcal: float
    training_status: TrainingStatus
    screening: Screening | None

    @property
    def bmi(self) -> float:
        """Body mass index [kg/m2]."""
        return self.weight_kg / (self.height_cm / 100.0) ** 2

    @property
    def fat_fraction(self) -> float:
        """Fat mass over body mass."""
        return self.fat_kg / self.weight_kg


def stricter(table: dict[Sex, float], sex: Sex) -> float:
    """The limit for a sex; the stricter (higher) one where neither set fits."""
    return max(table.values()) if sex is Sex.UNSPECIFIED else table[sex]


def _refuse(
    id: str, field: str, message: Message, limit: float | None = None, observed: float | None = None, unit: str = ""
) -> Refused:
    return Refused(RailAction(id, "refused", limit, observed, unit, message), field)


def _warn(
    id: str, message: Message, limit: float | None = None, observed: float | None = None, unit: str = ""
) -> RailAction:
    return RailAction(id, "warned", limit, observed, unit, message)


def _cap(id: str, message: Message, limit: float, observed: float, unit: str) -> RailAction:
    return RailAction(id, "capped", limit, observed, unit, message)


def check_answered(subject: Subject) -> None:
    """Raises ``Refused`` where screening was not answered: then nothing but maintenance is planned, not even a gain."""
    if subject.screening is None:
        raise _refuse(UNANSWERED, "screening", say("REFUSED_UNANSWERED"))


@traced
def check_person(subject: Subject) -> list[RailAction]:
    """May this person run a deficit at all? Warnings; raises ``Refused`` on the first rule that says no."""
    warnings: list[RailAction] = []
    screening = subject.screening
    age = subject.age_years
    if age < ADULT_YEARS:
        raise _refuse(AGE, "age_years", say("REFUSED_UNDER_AGE", limit_years=ADULT_YEARS), ADULT_YEARS, age, "y")
    check_answered(subject)
    assert screening is not None
    if screening.is_pregnant:
        raise _refuse(PREGNANCY, "screening.is_pregnant", say("REFUSED_PREGNANCY"))
    if screening.is_breastfeeding:
        raise _refuse(PREGNANCY, "screening.is_breastfeeding", say("REFUSED_BREASTFEEDING"))
    if screening.eating_disorder in (EatingDisorder.CURRENT, EatingDisorder.PAST):
        raise _refuse(EATING_DISORDER, "screening.eating_disorder", say("REFUSED_EATING_DISORDER"))
    if screening.eating_disorder is EatingDisorder.UNSURE:
        warnings.append(_warn(EATING_DISORDER, say("WARNED_EATING_DISORDER_DOUBT")))
    listed: list[Condition | Medicine] = [*screening.conditions, *screening.medicines]
    if listed and screening.clearance is None:
        field = "screening.conditions" if screening.conditions else "screening.medicines"
        raise _refuse(MEDICAL, field, say("REFUSED_MEDICAL", listed=", ".join(x.replace("_", " ") for x in listed)))
    if age >= OLDER_YEARS and screening.clearance is None:
        raise _refuse(
            AGE,
            "age_years",
            say("REFUSED_OLDER_WITHOUT_CLEARANCE", limit_years=OLDER_YEARS),
            OLDER_YEARS,
            age,
            "y",
        )
    if screening.clearance is not None and (listed or age >= OLDER_YEARS):
        cleared = say("WARNED_CLEARED", given_by=screening.clearance.given_by, reason=screening.clearance.reason)
        warnings.append(_warn(MEDICAL if listed else AGE, cleared))
    if age < YOUNG_ADULT_YEARS:
        warnings.append(_warn(AGE, say("WARNED_YOUNG_ADULT"), YOUNG_ADULT_YEARS, age, "y"))
    bmi = subject.bmi
    if bmi < BMI_FLOOR:
        raise _refuse(BMI, "weight_kg", say("REFUSED_BMI", bmi=bmi, limit=BMI_FLOOR), BMI_FLOOR, bmi, "kg/m2")
    if bmi < BMI_WARN:
        warnings.append(_warn(BMI, say("WARNED_BMI", bmi=bmi), BMI_WARN, bmi, "kg/m2"))
    floor = stricter(FAT_FRACTION_FLOOR, subject.sex)
    if subject.fat_fraction <= floor:
        message = say("REFUSED_BODY_FAT", fat_percent=100 * subject.fat_fraction, limit_percent=100 * floor)
        raise _refuse(BODY_FAT, "body_fat", message, floor, subject.fat_fraction, "1")
    return warnings


def forbids_fat_target(subject: Subject) -> str | None:
    """The rule that forbids a body-fat target, for a deficit or a gain; None where none does."""
    if subject.age_years < ADULT_YEARS:
        return AGE
    screening = subject.screening
    if screening is not None and screening.eating_disorder in (EatingDisorder.CURRENT, EatingDisorder.PAST):
        return EATING_DISORDER
    return None


@traced
def refuse_fat_target(subject: Subject, field: str) -> None:
    """Raise ``Refused`` where a body-fat target is asked for and a rule forbids any."""
    rule = forbids_fat_target(subject)
    if rule is not None:
        raise _refuse(rule, field, say("REFUSED_FAT_TARGET"))


class DeficitLimit(NamedTuple):
    """The largest deficit one rule allows [kcal/d], and why in words."""

    rule: str
    deficit_kcal: float
    why: str


# A longer deficit counts as an ordinary cut, with a higher floor and no low energy availability.
LONG_PHASE_WEEKS = 6


def deficit_limits(
    subject: Subject, weeks: float = LONG_PHASE_WEEKS, *, fed_for_kg: float | None = None
) -> list[DeficitLimit]:
    """The largest deficit that each rule allows at the start of a phase of ``weeks``, strictest first.

    ``fed_for_kg`` is the body mass that protein and fat are shared out for, where that was another, at the start.
    """
    fed_kg = subject.weight_kg if fed_for_kg is None else max(subject.weight_kg, fed_for_kg)
    fat_free = subject.weight_kg - subject.fat_kg
    is_long = weeks > LONG_PHASE_WEEKS
    least_available = AVAILABILITY_WARN if is_long else AVAILABILITY_LIMIT
    floor = stricter(INTAKE_FLOOR, subject.sex)
    if is_long:
        floor = max(floor, subject.resting_kcal)
    limits = [
        DeficitLimit(
            DEFICIT, DEFICIT_SHARE_LIMIT * subject.maintenance_kcal, f"{DEFICIT_SHARE_LIMIT:.0%} of maintenance"
        ),
        DeficitLimit(FAT_SUPPLY, FAT_SUPPLY_LIMIT * subject.fat_kg, "what fat mass can release"),
        DeficitLimit(
            AVAILABILITY,
            subject.maintenance_kcal - least_available * fat_free - subject.exercise_kcal,
            f"energy availability of {least_available:g} kcal per kg fat-free mass",
        ),
        DeficitLimit(
            PROTEIN,
            subject.maintenance_kcal - least_intake_kcal(fed_kg),
            "room for the least protein and fat",
        ),
        DeficitLimit(FLOOR, subject.maintenance_kcal - floor, f"least intake of {floor:.0f} kcal/d"),
    ]
    return sorted(limits, key=lambda limit: limit.deficit_kcal)


# Of a person whose past cuts are not known.
HISTORY_LIMIT = DeficitLimit(CUT_HISTORY, DEFAULT_DEFICIT, "cut history unknown")


class LossPath(NamedTuple):
    """What a deficit does by its end: tissue lost a week over the starting body mass, the body then, the deficit then.

    ``drawn_kcal`` is what the last intake leaves to be drawn from the body [kcal/d].
    """

    loss_share_per_week: float
    fat_kg: float
    weight_kg: float
    drawn_kcal: float

    def broken_rule(self, sex: Sex) -> str | None:
        """The rule that the phase as a whole breaks."""
        if self.fat_kg / self.weight_kg < stricter(FAT_FRACTION_FLOOR, sex):
            return BODY_FAT
        if self.loss_share_per_week > LOSS_LIMIT:
            return LOSS
        return FAT_SUPPLY if self.drawn_kcal > FAT_SUPPLY_LIMIT * self.fat_kg else None


def path_limit(rule: str, deficit_kcal: float) -> DeficitLimit:
    """The largest deficit [kcal/d] with which a phase as a whole keeps a rule of ``LossPath``."""
    why = {
        BODY_FAT: "end body fat",
        LOSS: f"tissue loss of {LOSS_LIMIT:.0%} a week",
        FAT_SUPPLY: "what fat mass can release",
    }[rule]
    return DeficitLimit(rule, deficit_kcal, why)


@traced
def refuse_deficit(subject: Subject, intake_kcal: float, weeks: float, field: str) -> None:
    """Raise ``Refused`` where an intake asked for is a larger deficit than a rule allows."""
    strictest = deficit_limits(subject, weeks)[0]
    deficit = subject.maintenance_kcal - intake_kcal
    # Half a rounding step of the intake is no breach.
    if deficit > strictest.deficit_kcal + 5.0:
        message = say(
            "REFUSED_DEFICIT",
            deficit_kcal=deficit,
            limit_kcal=strictest.deficit_kcal,
            rule=strictest.rule,
            why=strictest.why,
            least_intake_kcal=subject.maintenance_kcal - strictest.deficit_kcal,
        )
        raise _refuse(strictest.rule, field, message, strictest.deficit_kcal, deficit, "kcal/d")


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
    percent = 100 * tissue_share_per_week
    if rule == LOSS:
        message = say("REFUSED_LOSS", percent=-percent, limit_percent=100 * LOSS_LIMIT)
        raise _refuse(LOSS, field, message, LOSS_LIMIT, -tissue_share_per_week, "of body mass a week")
    if rule == BODY_FAT:
        floor = stricter(FAT_FRACTION_FLOOR, subject.sex)
        message = say("REFUSED_END_BODY_FAT", fat_percent=100 * end_fat_fraction, limit_percent=100 * floor)
        raise _refuse(BODY_FAT, field, message, floor, end_fat_fraction, "1")
    if rule == GAIN_RATE:
        limit = GAIN_RATE_LIMIT[subject.training_status]
        message = say("REFUSED_GAIN_RATE", percent=percent, limit_percent=100 * limit)
        raise _refuse(GAIN_RATE, field, message, limit, tissue_share_per_week, "of body mass a week")


@traced
def refuse_target(subject: Subject, target_fat_fraction: float, field: str) -> None:
    """Raise ``Refused`` for a body-fat target under the least that is planned."""
    floor = stricter(FAT_FRACTION_FLOOR, subject.sex)
    if target_fat_fraction < floor:
        message = say("REFUSED_TARGET", fat_percent=100 * target_fat_fraction, limit_percent=100 * floor)
        raise _refuse(BODY_FAT, field, message, floor, target_fat_fraction, "1")


def capped(limit: DeficitLimit, asked_kcal: float) -> RailAction:
    """The report of a deficit held at a limit."""
    if limit.rule == CUT_HISTORY:
        message = say("CAPPED_HISTORY_UNKNOWN", deficit_kcal=limit.deficit_kcal)
    else:
        message = say("CAPPED_DEFICIT", deficit_kcal=limit.deficit_kcal, rule=limit.rule, why=limit.why)
    return _cap(limit.rule, message, limit.deficit_kcal, asked_kcal, "kcal/d")


def without_room(limit: DeficitLimit, asked_kcal: float) -> RailAction:
    """The report of a limit that leaves no useful deficit. It is an answer, so that nothing is raised."""
    message = say("NO_SAFE_DEFICIT", rule=limit.rule, why=limit.why)
    return RailAction(limit.rule, "refused", max(0.0, limit.deficit_kcal), asked_kcal, "kcal/d", message)


@traced
def protein_in_deficit(subject: Subject, asked_g_per_kg: float | None) -> tuple[float, list[RailAction]]:
    """Protein to plan in a deficit [g/kg/d]: as asked, else the usual, and no less than its floor."""
    protein = PROTEIN_DEFAULT_DEFICIT if asked_g_per_kg is None else asked_g_per_kg
    actions = []
    if protein < PROTEIN_FLOOR_DEFICIT:
        message = say("CAPPED_PROTEIN", limit=PROTEIN_FLOOR_DEFICIT)
        actions.append(_cap(PROTEIN, message, PROTEIN_FLOOR_DEFICIT, protein, "g/kg/d"))
        protein = PROTEIN_FLOOR_DEFICIT
    screening = subject.screening
    if screening is not None and Condition.KIDNEY_DISEASE in screening.conditions:
        actions.append(_warn(PROTEIN, say("WARNED_KIDNEY_PROTEIN"), None, protein, "g/kg/d"))
    return protein, actions


@traced
def cap_protein_to_room(given_g_per_kg: float, asked_g_per_kg: float) -> list[RailAction]:
    """The report of protein for which an intake has no room beside the least fat."""
    if given_g_per_kg >= asked_g_per_kg - 0.05:
        return []
    message = say("CAPPED_PROTEIN_ROOM", given=given_g_per_kg, asked=asked_g_per_kg)
    return [_cap(DIETARY_FAT, message, given_g_per_kg, asked_g_per_kg, "g/kg/d")]


@traced
def gain_weeks_allowed(subject: Subject, asked_weeks: int) -> tuple[int, list[RailAction]]:
    """The weeks of gain that may follow a hold: none where screening was not answered."""
    if not asked_weeks or subject.screening is not None:
        return asked_weeks, []
    return 0, [_cap(UNANSWERED, say("CAPPED_UNANSWERED"), 0, asked_weeks, "weeks of gain")]


@traced
def capped_gain(status: TrainingStatus, surplus_kcal: float, asked_share_per_week: float) -> RailAction:
    """The report of a surplus held under the ceiling on the rate of gain; ``asked_share_per_week`` is without it."""
    limit = GAIN_RATE_LIMIT[status]
    message = say("CAPPED_GAIN_RATE", surplus_kcal=surplus_kcal, percent=100 * limit)
    return _cap(GAIN_RATE, message, limit, asked_share_per_week, "of body mass a week")


@traced
def warn_gain(status: TrainingStatus, share_per_week: float) -> list[RailAction]:
    """Warnings on a surplus asked for that the ceiling allows."""
    warn_at = GAIN_RATE_WARN_SHARE * GAIN_RATE_LIMIT[status]
    if share_per_week <= warn_at:
        return []
    message = say("WARNED_GAIN_RATE", percent=100 * share_per_week)
    return [_warn(GAIN_RATE, message, warn_at, share_per_week, "of body mass a week")]


@traced
def warn_deficit(
    subject: Subject, intake_kcal: float, loss_share_per_week: float, end_fat_fraction: float
) -> list[RailAction]:
    """Warnings on a deficit that every limit allows."""
    warnings: list[RailAction] = []
    deficit = subject.maintenance_kcal - intake_kcal
    share = deficit / subject.maintenance_kcal
    if share > DEFICIT_SHARE_WARN:
        warnings.append(
            _warn(
                DEFICIT,
                say("WARNED_DEFICIT_SHARE", share_percent=100 * share),
                DEFICIT_SHARE_WARN,
                share,
                "of maintenance",
            )
        )
    per_fat = deficit / subject.fat_kg
    if per_fat > FAT_SUPPLY_WARN:
        warnings.append(
            _warn(
                FAT_SUPPLY,
                say("WARNED_FAT_SUPPLY", observed=per_fat, limit=FAT_SUPPLY_WARN),
                FAT_SUPPLY_WARN,
                per_fat,
                "kcal/kg/d",
            )
        )
    if loss_share_per_week > LOSS_WARN:
        warnings.append(
            _warn(
                LOSS,
                say("WARNED_LOSS", percent=100 * loss_share_per_week),
                LOSS_WARN,
                loss_share_per_week,
                "of body mass a week",
            )
        )
    available = (intake_kcal - subject.exercise_kcal) / (subject.weight_kg - subject.fat_kg)
    if available < AVAILABILITY_WARN:
        message = say("WARNED_AVAILABILITY", observed=available, limit=AVAILABILITY_WARN)
        warnings.append(_warn(AVAILABILITY, message, AVAILABILITY_WARN, available, "kcal/kg fat-free mass/d"))
    if intake_kcal < subject.resting_kcal:
        message = say("WARNED_UNDER_RESTING", intake_kcal=intake_kcal, resting_kcal=subject.resting_kcal)
        warnings.append(_warn(FLOOR, message, subject.resting_kcal, intake_kcal, "kcal/d"))
    lean_warn = stricter(FAT_FRACTION_WARN, subject.sex)
    if end_fat_fraction < lean_warn:
        warnings.append(
            _warn(
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
            _warn(DIETARY_FAT, say("WARNED_DIETARY_FAT", share_percent=100 * share), FAT_SHARE_WARN, share, "of energy")
        )
    if carbohydrate_g < CARBOHYDRATE_WARN_G:
        message = say("WARNED_CARBOHYDRATE", carbohydrate_g=carbohydrate_g, limit_g=CARBOHYDRATE_WARN_G)
        warnings.append(_warn(CARBOHYDRATE, message, CARBOHYDRATE_WARN_G, carbohydrate_g, "g/d"))
    return warnings


@traced
def warn_history(cuts_last_12_months: int | None, weeks_since_last_cut: int | None) -> list[RailAction]:
    """Warnings on how often this person cuts."""
    warnings = []
    if cuts_last_12_months is not None and cuts_last_12_months + 1 > CUTS_A_YEAR_WARN:
        message = say("WARNED_CUTS_A_YEAR", cuts=cuts_last_12_months + 1)
        warnings.append(_warn(CUT_HISTORY, message, CUTS_A_YEAR_WARN, cuts_last_12_months + 1.0, "cuts"))
    if weeks_since_last_cut is not None and weeks_since_last_cut < WEEKS_BETWEEN_CUTS:
        message = say("WARNED_RECENT_CUT", weeks=weeks_since_last_cut, limit_weeks=WEEKS_BETWEEN_CUTS)
        warnings.append(_warn(CUT_HISTORY, message, WEEKS_BETWEEN_CUTS, float(weeks_since_last_cut), "weeks"))
    return warnings
