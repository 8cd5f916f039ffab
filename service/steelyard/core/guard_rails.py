"""The guard rails: one table of rules, applied to every phase on every endpoint.

Each rule has an id, a limit, a basis and an action. A refusal raises ``Refused``; a cap or a warning is a
``RailAction`` that the answer lists. Nothing silently exceeds a rail.
"""

from typing import NamedTuple

import msgspec

from . import bibliography  # noqa: F401 - registers the sources named below
from .energy_balance import FAT_SUPPLY_LIMIT, KJ_PER_KCAL
from .evidence import Basis, Entry, Kind, constant, register
from .message import Message, say, template
from .person import Sex, TrainingStatus
from .screening import Condition, EatingDisorder, Medicine, Screening


class RailAction(msgspec.Struct, frozen=True):
    """What a rail did: ``capped``, ``warned`` or ``refused``, with its limit and what it saw."""

    id: str
    action: str
    limit: float | None
    observed: float | None
    unit: str
    message: Message


class Refused(Exception):  # noqa: N818 - a refusal is an answer, not a fault
    """A rail refuses. ``field`` is the JSON pointer of the request field that it reads."""

    def __init__(self, action: RailAction, field: str) -> None:
        super().__init__(action.message.text)
        self.action = action
        self.field = field


def _rule(
    id: str, summary: str, formula: str, *, sources: tuple[str, ...] = (), basis: Basis = Basis.JUDGEMENT
) -> str:
    return register(
        Entry(id=id, kind=Kind.RULE, summary=summary, formula=formula, basis=basis, source_ids=sources)
    )


_GUIDELINES = ("mountjoy_2023", "thomas_2016", "jensen_2014")

ADULT_YEARS = constant("adult_age", 18.0, unit="y", summary="Least age for a deficit", basis=Basis.JUDGEMENT)
YOUNG_ADULT_YEARS = constant(
    "young_adult_age", 20.0, unit="y", summary="Below this age a deficit carries a warning", basis=Basis.JUDGEMENT
)
OLDER_YEARS = constant(
    "older_age", 65.0, unit="y", summary="From this age a deficit needs clearance", basis=Basis.JUDGEMENT
)
BMI_FLOOR = constant(
    "bmi_floor", 18.5, unit="kg/m2", summary="Least body mass index for a deficit (underweight below)",
    sources=("who_bmi_2000",),
)  # fmt: skip
BMI_WARN = constant(
    "bmi_warn", 20.0, unit="kg/m2", summary="Body mass index below which a deficit carries a warning",
    basis=Basis.JUDGEMENT,
)  # fmt: skip
FAT_FRACTION_FLOOR = {
    Sex.MALE: constant(
        "fat_fraction_floor_male", 0.06, unit="1", summary="Least body fat after a deficit, men",
        basis=Basis.JUDGEMENT,
    ),
    Sex.FEMALE: constant(
        "fat_fraction_floor_female", 0.14, unit="1", summary="Least body fat after a deficit, women",
        basis=Basis.JUDGEMENT,
    ),
}  # fmt: skip
FAT_FRACTION_WARN = {
    Sex.MALE: constant(
        "fat_fraction_warn_male", 0.08, unit="1", summary="Body fat below which a target is warned of, men",
        basis=Basis.JUDGEMENT,
    ),
    Sex.FEMALE: constant(
        "fat_fraction_warn_female", 0.18, unit="1", summary="Body fat below which a target is warned of, women",
        basis=Basis.JUDGEMENT,
    ),
}  # fmt: skip
DEFICIT_SHARE_LIMIT = constant(
    "deficit_share_limit", 0.30, unit="of maintenance", summary="Largest deficit", basis=Basis.JUDGEMENT
)
DEFICIT_SHARE_WARN = constant(
    "deficit_share_warn", 0.25, unit="of maintenance", summary="Deficit above which a warning is given",
    basis=Basis.JUDGEMENT,
)  # fmt: skip
FAT_SUPPLY_WARN = constant(
    "fat_supply_warn", 203.0 / KJ_PER_KCAL, unit="kcal/kg/d",
    summary="The cautious, later figure for the energy fat mass can release (203 kJ/kg/d)",
    basis=Basis.FROM_MEMORY, sources=("alpert_2005",),
)  # fmt: skip
LOSS_LIMIT = constant(
    "tissue_loss_limit", 0.010, unit="of body mass a week", summary="Fastest planned tissue loss, phase mean",
    sources=("helms_2014", "garthe_2011"),
)  # fmt: skip
LOSS_WARN = constant(
    "tissue_loss_warn", 0.008, unit="of body mass a week", summary="Planned tissue loss above which to warn",
    basis=Basis.JUDGEMENT, sources=("garthe_2011",),
)  # fmt: skip
AVAILABILITY_LIMIT = constant(
    "energy_availability_limit", 25.0, unit="kcal/kg fat-free mass/d", summary="Least energy availability planned",
    basis=Basis.JUDGEMENT, sources=("mountjoy_2023", "loucks_2003"),
)  # fmt: skip
AVAILABILITY_WARN = constant(
    "energy_availability_warn", 30.0, unit="kcal/kg fat-free mass/d", basis=Basis.FROM_MEMORY,
    summary="Energy availability below which it is called low", sources=("mountjoy_2023", "loucks_2003"),
)  # fmt: skip
INTAKE_FLOOR = {
    Sex.FEMALE: constant(
        "intake_floor_female", 1200.0, unit="kcal/d", summary="Least daily intake planned, women",
        sources=("jensen_2014",),
    ),
    Sex.MALE: constant(
        "intake_floor_male", 1500.0, unit="kcal/d", summary="Least daily intake planned, men",
        sources=("jensen_2014",),
    ),
}  # fmt: skip
CARBOHYDRATE_WARN_G = constant(
    "carbohydrate_warn", 130.0, unit="g/d", summary="Recommended dietary allowance of carbohydrate",
    basis=Basis.FROM_MEMORY, sources=("iom_2005",),
)  # fmt: skip
FAT_SHARE_WARN = constant(
    "fat_share_warn", 0.20, unit="of energy", summary="Dietary fat below which a warning is given",
    basis=Basis.FROM_MEMORY, sources=("iom_2005",),
)  # fmt: skip
DEFAULT_DEFICIT = constant(
    "deficit_default", 500.0, unit="kcal/d", summary="Deficit of a mini-cut unless asked otherwise",
    basis=Basis.COMMON_PRACTICE,
)  # fmt: skip
BRISK_DEFICIT = constant(
    "deficit_brisk", 750.0, unit="kcal/d", summary="Upper end of the usual deficit of a mini-cut",
    basis=Basis.COMMON_PRACTICE,
)  # fmt: skip
CUTS_A_YEAR_WARN = constant(
    "cuts_a_year", 3.0, unit="cuts", summary="Cuts in twelve months above which to warn", basis=Basis.JUDGEMENT
)
WEEKS_BETWEEN_CUTS = constant(
    "weeks_between_cuts", 8.0, unit="weeks", summary="Time since the last cut below which to warn",
    basis=Basis.JUDGEMENT,
)  # fmt: skip
GAIN_RATE_LIMIT = {
    TrainingStatus.UNTRAINED: constant(
        "gain_rate_untrained", 0.005, unit="of body mass a week", summary="Fastest planned gain, untrained",
        sources=("iraki_2019",),
    ),
    TrainingStatus.NOVICE: constant(
        "gain_rate_novice", 0.005, unit="of body mass a week", summary="Fastest planned gain, novice",
        sources=("iraki_2019",),
    ),
    TrainingStatus.INTERMEDIATE: constant(
        "gain_rate_intermediate", 0.0025, unit="of body mass a week", summary="Fastest planned gain, intermediate",
        sources=("iraki_2019",),
    ),
    TrainingStatus.ADVANCED: constant(
        "gain_rate_advanced", 0.0015, unit="of body mass a week", summary="Fastest planned gain, advanced",
        basis=Basis.JUDGEMENT,
    ),
}  # fmt: skip
GAIN_RATE_WARN_SHARE = constant(
    "gain_rate_warn_share", 0.75, unit="1", basis=Basis.JUDGEMENT,
    summary="Share of the ceiling above which a gain is warned of: half above the recommended rate, which is "
    "taken as half the ceiling",
)  # fmt: skip

AGE = _rule("age", "Age and deficits", "under 18 refused; 18-19 warned; 65 and over needs clearance",
            sources=_GUIDELINES)  # fmt: skip
PREGNANCY = _rule("pregnancy_lactation", "Pregnancy and breastfeeding", "no deficit", sources=_GUIDELINES)
EATING_DISORDER = _rule("eating_disorder", "Eating disorder, current or past",
                        "no deficit and no body-fat target; any doubt warned", sources=("morgan_1999", *_GUIDELINES))  # fmt: skip
MEDICAL = _rule("medical", "Listed conditions and medicines", "no deficit without clinical clearance",
                sources=_GUIDELINES)  # fmt: skip
UNANSWERED = _rule("screening_unanswered", "Screening not answered", "no deficit: unknown is never clear")
BMI = _rule("bmi", "Body mass index and deficits", f"under {BMI_FLOOR:g} refused; under {BMI_WARN:g} warned",
            sources=("who_bmi_2000",))  # fmt: skip
BODY_FAT = _rule("body_fat", "Body fat and deficits",
                 "no deficit at, and none that ends under, 6 % (men) or 14 % (women); under 8 / 18 % warned")  # fmt: skip
DEFICIT = _rule("deficit_share", "Size of a deficit",
                f"at most {DEFICIT_SHARE_LIMIT:.0%} of maintenance; over {DEFICIT_SHARE_WARN:.0%} warned")  # fmt: skip
FAT_SUPPLY = _rule("fat_supply", "Energy that fat mass can release",
                   f"deficit at most {FAT_SUPPLY_LIMIT:.1f} kcal per kg fat mass; over {FAT_SUPPLY_WARN:.1f} warned",
                   basis=Basis.PUBLISHED, sources=("alpert_2005",))  # fmt: skip
LOSS = _rule("tissue_loss", "Rate of planned tissue loss",
             f"phase mean at most {LOSS_LIMIT:.1%} of body mass a week; over {LOSS_WARN:.1%} warned",
             basis=Basis.PUBLISHED, sources=("helms_2014", "garthe_2011"))  # fmt: skip
AVAILABILITY = _rule("energy_availability", "Energy availability: (intake - exercise) / fat-free mass",
                     f"at least {AVAILABILITY_LIMIT:g} kcal/kg/d; under {AVAILABILITY_WARN:g} warned, six weeks at most",
                     basis=Basis.FROM_MEMORY, sources=("mountjoy_2023", "loucks_2003"))  # fmt: skip
FLOOR = _rule("intake_floor", "Least daily intake", "1,200 (women), 1,500 (men) kcal/d; under resting energy warned",
              basis=Basis.PUBLISHED, sources=("jensen_2014",))  # fmt: skip
PROTEIN = _rule("protein", "Protein in a deficit", "at least 1.6 g/kg/d", basis=Basis.PUBLISHED,
                sources=("morton_2018",))  # fmt: skip
DIETARY_FAT = _rule("dietary_fat", "Dietary fat", "at least 0.5 g/kg and 15 % of energy; under 20 % warned",
                    sources=("iraki_2019", "helms_2014", "whittaker_2021"))  # fmt: skip
CARBOHYDRATE = _rule("carbohydrate", "Carbohydrate", f"under {CARBOHYDRATE_WARN_G:g} g/d warned",
                     basis=Basis.FROM_MEMORY, sources=("iom_2005",))  # fmt: skip
GAIN_RATE = _rule("gain_rate", "Rate of planned gain",
                  "at most 0.5 % of body mass a week untrained or novice, 0.25 % intermediate, 0.15 % advanced",
                  sources=("iraki_2019",))  # fmt: skip
CUT_HISTORY = _rule("cut_history", "Cuts already done",
                    "more than three a year or within eight weeks of the last warned; unknown keeps to the default "
                    "deficit")  # fmt: skip

RAIL_IDS = (
    AGE, PREGNANCY, EATING_DISORDER, MEDICAL, UNANSWERED, BMI, BODY_FAT, DEFICIT, FAT_SUPPLY, LOSS, AVAILABILITY,
    FLOOR, PROTEIN, DIETARY_FAT, CARBOHYDRATE, GAIN_RATE, CUT_HISTORY,
)  # fmt: skip

_REFER = (
    "Please speak to a physician or a registered dietitian before any energy deficit; maintenance and trends remain "
    "available."
)
template("REFUSED_UNDER_AGE", "No deficit is planned under {limit_years:g} years of age. " + _REFER)
template("REFUSED_OLDER_WITHOUT_CLEARANCE", "From {limit_years:g} years of age a deficit needs a clinician's "
         "clearance (loss of muscle and bone). " + _REFER)  # fmt: skip
template("WARNED_YOUNG_ADULT", "At 18 or 19 the body may still be maturing: keep the deficit small and short.")
template("REFUSED_PREGNANCY", "No deficit is planned during pregnancy. " + _REFER)
template("REFUSED_BREASTFEEDING", "No deficit is planned while breastfeeding. " + _REFER)
template("REFUSED_EATING_DISORDER", "No deficit and no body-fat target are planned with an eating disorder, now or "
         "before. " + _REFER + " Local eating-disorder services can be reached without a referral in many places.")  # fmt: skip
template("WARNED_EATING_DISORDER_DOUBT", "You were unsure about an eating disorder. If eating or weight worries you, "
         "talk to a clinician first, and stop the phase if it makes them worse.")  # fmt: skip
template("REFUSED_MEDICAL", "No deficit is planned with {listed} without a clinician's clearance. " + _REFER)
template("WARNED_CLEARED", "A deficit is planned on the clearance given by: {given_by}. Reason given: {reason}")
template("REFUSED_UNANSWERED", "No deficit is planned until the screening questions are answered: send `screening`. "
         "Unknown is never taken as clear.")  # fmt: skip
template("REFUSED_BMI", "At a body mass index of {bmi:.1f} kg/m2 (under {limit:g}: underweight) no deficit is "
         "planned. " + _REFER)  # fmt: skip
template("WARNED_BMI", "A body mass index of {bmi:.1f} kg/m2 is near the underweight range: keep the phase short.")
template("REFUSED_BODY_FAT", "At {fat_percent:.1f} % body fat (least {limit_percent:g} %) no deficit is planned.")
template("CAPPED_BODY_FAT", "The phase is kept from ending under {limit_percent:g} % body fat.")
template(
    "WARNED_BODY_FAT", "The phase ends at {fat_percent:.1f} % body fat, leaner than most people can hold well."
)
template("CAPPED_DEFICIT", "The deficit is capped at {deficit_kcal:.0f} kcal/d by the rule `{rule}` ({why}).")
template("WARNED_DEFICIT_SHARE", "The deficit is {share_percent:.0f} % of maintenance: expect hunger and fatigue.")
template("WARNED_FAT_SUPPLY", "The deficit of {observed:.0f} kcal per kg fat mass is above the cautious {limit:.0f}: "
         "more of the loss may be lean.")  # fmt: skip
template("WARNED_LOSS", "Tissue is planned to fall by {percent:.2f} % of body mass a week: fast; watch strength.")
template("WARNED_AVAILABILITY", "Energy availability is {observed:.0f} kcal per kg fat-free mass a day, under "
         "{limit:g}: tolerable for some weeks only. Watch sleep, mood, libido and, for women, the cycle; stop if "
         "they change.")  # fmt: skip
template("WARNED_UNDER_RESTING", "The intake of {intake_kcal:.0f} kcal/d is under resting energy "
         "({resting_kcal:.0f}): acceptable for a mini-cut only.")  # fmt: skip
template("CAPPED_PROTEIN", "Protein is raised to {limit:g} g/kg/d, the least in a deficit.")
template("WARNED_KIDNEY_PROTEIN", "High protein with kidney disease needs a clinician's agreement.")
template("WARNED_DIETARY_FAT", "Dietary fat is {share_percent:.0f} % of energy, low for long stretches.")
template("WARNED_CARBOHYDRATE", "Carbohydrate is {carbohydrate_g:.0f} g/d, under the allowance of {limit_g:g} g: "
         "training may feel harder.")  # fmt: skip
template("CAPPED_GAIN_RATE", "The surplus is capped at {surplus_kcal:.0f} kcal/d: gaining faster than {percent:.2f} % "
         "of body mass a week adds mostly fat at this training experience.")  # fmt: skip
template("WARNED_GAIN_RATE", "A gain of {percent:.2f} % of body mass a week is fast for this training experience: "
         "more of it will be fat.")  # fmt: skip
template("CAPPED_HISTORY_UNKNOWN", "Past cuts are unknown, so the deficit stays at the default {deficit_kcal:.0f} "
         "kcal/d; send `cut_history` to ask for more.")  # fmt: skip
template("WARNED_CUTS_A_YEAR", "This would be cut number {cuts:g} in twelve months. Repeated cutting costs training "
         "time: gaining more slowly would need fewer.")  # fmt: skip
template("WARNED_RECENT_CUT", "The last cut ended {weeks:g} weeks ago, less than {limit_weeks:g}: a longer stretch at "
         "maintenance or in a small surplus is usually the better trade.")  # fmt: skip


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


def _refuse(id: str, field: str, message: Message, limit: float | None = None, observed: float | None = None,
            unit: str = "") -> Refused:  # fmt: skip
    return Refused(RailAction(id, "refused", limit, observed, unit, message), field)


def _warn(id: str, message: Message, limit: float | None = None, observed: float | None = None, unit: str = ""
          ) -> RailAction:  # fmt: skip
    return RailAction(id, "warned", limit, observed, unit, message)


def check_person(subject: Subject) -> list[RailAction]:
    """May this person run a deficit at all? Warnings; raises ``Refused`` on the first rule that says no."""
    warnings: list[RailAction] = []
    screening = subject.screening
    age = subject.age_years
    if age < ADULT_YEARS:
        raise _refuse(AGE, "/profile/age_years", say("REFUSED_UNDER_AGE", limit_years=ADULT_YEARS), ADULT_YEARS, age,
                      "y")  # fmt: skip
    if screening is None:
        raise _refuse(UNANSWERED, "/screening", say("REFUSED_UNANSWERED"))
    if screening.is_pregnant:
        raise _refuse(PREGNANCY, "/screening/is_pregnant", say("REFUSED_PREGNANCY"))
    if screening.is_breastfeeding:
        raise _refuse(PREGNANCY, "/screening/is_breastfeeding", say("REFUSED_BREASTFEEDING"))
    if screening.eating_disorder in (EatingDisorder.CURRENT, EatingDisorder.PAST):
        raise _refuse(EATING_DISORDER, "/screening/eating_disorder", say("REFUSED_EATING_DISORDER"))
    if screening.eating_disorder is EatingDisorder.UNSURE:
        warnings.append(_warn(EATING_DISORDER, say("WARNED_EATING_DISORDER_DOUBT")))
    listed: list[Condition | Medicine] = [*screening.conditions, *screening.medicines]
    if listed and screening.clearance is None:
        field = "/screening/conditions" if screening.conditions else "/screening/medicines"
        raise _refuse(
            MEDICAL, field, say("REFUSED_MEDICAL", listed=", ".join(x.replace("_", " ") for x in listed))
        )
    if age >= OLDER_YEARS and screening.clearance is None:
        raise _refuse(AGE, "/profile/age_years", say("REFUSED_OLDER_WITHOUT_CLEARANCE", limit_years=OLDER_YEARS),
                      OLDER_YEARS, age, "y")  # fmt: skip
    if screening.clearance is not None and (listed or age >= OLDER_YEARS):
        cleared = say("WARNED_CLEARED", given_by=screening.clearance.given_by, reason=screening.clearance.reason)
        warnings.append(_warn(MEDICAL if listed else AGE, cleared))
    if age < YOUNG_ADULT_YEARS:
        warnings.append(_warn(AGE, say("WARNED_YOUNG_ADULT"), YOUNG_ADULT_YEARS, age, "y"))
    bmi = subject.bmi
    if bmi < BMI_FLOOR:
        raise _refuse(
            BMI, "/profile/weight_kg", say("REFUSED_BMI", bmi=bmi, limit=BMI_FLOOR), BMI_FLOOR, bmi, "kg/m2"
        )
    if bmi < BMI_WARN:
        warnings.append(_warn(BMI, say("WARNED_BMI", bmi=bmi), BMI_WARN, bmi, "kg/m2"))
    floor = stricter(FAT_FRACTION_FLOOR, subject.sex)
    if subject.fat_fraction <= floor:
        message = say("REFUSED_BODY_FAT", fat_percent=100 * subject.fat_fraction, limit_percent=100 * floor)
        raise _refuse(BODY_FAT, "/profile/body_fat", message, floor, subject.fat_fraction, "1")
    return warnings


class DeficitLimit(NamedTuple):
    """The largest deficit one rule allows [kcal/d], and why in words."""

    rule: str
    deficit_kcal: float
    why: str


def deficit_limits(subject: Subject) -> list[DeficitLimit]:
    """The largest deficit that each rule allows at the start, strictest first."""
    fat_free = subject.weight_kg - subject.fat_kg
    least_available = AVAILABILITY_LIMIT * fat_free + subject.exercise_kcal
    floor = stricter(INTAKE_FLOOR, subject.sex)
    limits = [
        DeficitLimit(DEFICIT, DEFICIT_SHARE_LIMIT * subject.maintenance_kcal, f"{DEFICIT_SHARE_LIMIT:.0%} of "
                     "maintenance"),
        DeficitLimit(FAT_SUPPLY, FAT_SUPPLY_LIMIT * subject.fat_kg, "what fat mass can release"),
        DeficitLimit(AVAILABILITY, subject.maintenance_kcal - least_available,
                     f"energy availability of {AVAILABILITY_LIMIT:g} kcal per kg fat-free mass"),
        DeficitLimit(FLOOR, subject.maintenance_kcal - floor, f"least intake of {floor:.0f} kcal/d"),
    ]  # fmt: skip
    return sorted(limits, key=lambda limit: limit.deficit_kcal)


def capped(limit: DeficitLimit, asked_kcal: float) -> RailAction:
    """The report of a deficit held at a limit."""
    message = say("CAPPED_DEFICIT", deficit_kcal=limit.deficit_kcal, rule=limit.rule, why=limit.why)
    return RailAction(limit.rule, "capped", limit.deficit_kcal, asked_kcal, "kcal/d", message)


def warn_deficit(
    subject: Subject, intake_kcal: float, loss_share_per_week: float, end_fat_fraction: float
) -> list[RailAction]:
    """Warnings on a deficit that every limit allows."""
    warnings: list[RailAction] = []
    deficit = subject.maintenance_kcal - intake_kcal
    share = deficit / subject.maintenance_kcal
    if share > DEFICIT_SHARE_WARN:
        warnings.append(_warn(DEFICIT, say("WARNED_DEFICIT_SHARE", share_percent=100 * share), DEFICIT_SHARE_WARN,
                              share, "of maintenance"))  # fmt: skip
    per_fat = deficit / subject.fat_kg
    if per_fat > FAT_SUPPLY_WARN:
        warnings.append(_warn(FAT_SUPPLY, say("WARNED_FAT_SUPPLY", observed=per_fat, limit=FAT_SUPPLY_WARN),
                              FAT_SUPPLY_WARN, per_fat, "kcal/kg/d"))  # fmt: skip
    if loss_share_per_week > LOSS_WARN:
        warnings.append(_warn(LOSS, say("WARNED_LOSS", percent=100 * loss_share_per_week), LOSS_WARN,
                              loss_share_per_week, "of body mass a week"))  # fmt: skip
    available = (intake_kcal - subject.exercise_kcal) / (subject.weight_kg - subject.fat_kg)
    if available < AVAILABILITY_WARN:
        message = say("WARNED_AVAILABILITY", observed=available, limit=AVAILABILITY_WARN)
        warnings.append(_warn(AVAILABILITY, message, AVAILABILITY_WARN, available, "kcal/kg fat-free mass/d"))
    if intake_kcal < subject.resting_kcal:
        message = say("WARNED_UNDER_RESTING", intake_kcal=intake_kcal, resting_kcal=subject.resting_kcal)
        warnings.append(_warn(FLOOR, message, subject.resting_kcal, intake_kcal, "kcal/d"))
    lean_warn = stricter(FAT_FRACTION_WARN, subject.sex)
    if end_fat_fraction < lean_warn:
        warnings.append(_warn(BODY_FAT, say("WARNED_BODY_FAT", fat_percent=100 * end_fat_fraction), lean_warn,
                              end_fat_fraction, "1"))  # fmt: skip
    return warnings


def warn_macronutrients(intake_kcal: float, fat_kcal: float, carbohydrate_g: float) -> list[RailAction]:
    """Warnings on a day's split."""
    warnings = []
    share = fat_kcal / intake_kcal
    if share < FAT_SHARE_WARN:
        warnings.append(_warn(DIETARY_FAT, say("WARNED_DIETARY_FAT", share_percent=100 * share), FAT_SHARE_WARN,
                              share, "of energy"))  # fmt: skip
    if carbohydrate_g < CARBOHYDRATE_WARN_G:
        message = say("WARNED_CARBOHYDRATE", carbohydrate_g=carbohydrate_g, limit_g=CARBOHYDRATE_WARN_G)
        warnings.append(_warn(CARBOHYDRATE, message, CARBOHYDRATE_WARN_G, carbohydrate_g, "g/d"))
    return warnings


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
