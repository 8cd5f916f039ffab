"""The table of guard rails: every limit and every rule, with its source. The modules beside it apply them."""

from ..body import FAT_SUPPLY_LIMIT, KJ_PER_KCAL
from ..person import Sex, TrainingStatus
from ..register import (
    ALPERT_2005,
    ARETA_2021,
    FAGERBERG_2018,
    GARTHE_2011,
    HELMS_2014,
    IOM_2005,
    IRAKI_2019,
    JENSEN_2014,
    LOUCKS_2003,
    MORGAN_1999,
    MORTON_2018,
    MOUNTJOY_2023,
    NASEM_2023,
    NICE_2006,
    THOMAS_2016,
    WHITTAKER_2021,
    WHO_BMI_2000,
    Basis,
    Entry,
    Kind,
    Source,
    constant,
    register,
)
from .macronutrients import FAT_FLOOR_G_PER_KG, FAT_FLOOR_SHARE
from .protein import PROTEIN_FLOOR_DEFICIT


def _rule(
    id: str, summary: str, formula: str, *, sources: tuple[Source, ...] = (), basis: Basis = Basis.JUDGEMENT
) -> str:
    return register(Entry(id=id, kind=Kind.RULE, summary=summary, formula=formula, basis=basis, sources=sources))


# A longer deficit counts as an ordinary cut, with a higher floor and no low energy availability (our judgement).
LONG_PHASE_WEEKS = 6
_GUIDELINES = (MOUNTJOY_2023, THOMAS_2016, JENSEN_2014)

ADULT_YEARS = constant("adult_age", 18.0, unit="y", summary="Least age for a deficit", basis=Basis.JUDGEMENT)
YOUNG_ADULT_YEARS = constant(
    "young_adult_age", 20.0, unit="y", summary="Below this age a deficit carries a warning", basis=Basis.JUDGEMENT
)
OLDER_YEARS = constant(
    "older_age", 65.0, unit="y", summary="From this age a deficit needs clearance", basis=Basis.JUDGEMENT
)
BMI_FLOOR = constant(
    "bmi_floor",
    18.5,
    unit="kg/m2",
    summary="Least body mass index for a deficit (underweight below)",
    sources=(WHO_BMI_2000,),
)
BMI_LEEWAY = constant(
    "bmi_leeway",
    0.02,
    unit="kg/m2",
    summary="How far over the least body mass index a deficit is planned to end: some grams more go in the first weeks "
    "at maintenance",
    basis=Basis.JUDGEMENT,
)
BMI_LEEWAY_CLOSE = constant(
    "bmi_leeway_close",
    0.1,
    unit="kg/m2",
    summary="The same of a deficit soon after another: the weight it starts from lacks water that the last one took",
    basis=Basis.JUDGEMENT,
)
BMI_WARN = constant(
    "bmi_warn",
    20.0,
    unit="kg/m2",
    summary="Body mass index below which a deficit carries a warning",
    basis=Basis.JUDGEMENT,
)
FAT_FRACTION_FLOOR = {
    Sex.MALE: constant(
        "fat_fraction_floor_male",
        0.06,
        unit="1",
        summary="Least body fat after a deficit, men",
        basis=Basis.JUDGEMENT,
    ),
    Sex.FEMALE: constant(
        "fat_fraction_floor_female",
        0.14,
        unit="1",
        summary="Least body fat after a deficit, women",
        basis=Basis.JUDGEMENT,
    ),
}
FAT_FRACTION_WARN = {
    Sex.MALE: constant(
        "fat_fraction_warn_male",
        0.08,
        unit="1",
        summary="Body fat below which a target is warned of, men",
        basis=Basis.JUDGEMENT,
    ),
    Sex.FEMALE: constant(
        "fat_fraction_warn_female",
        0.18,
        unit="1",
        summary="Body fat below which a target is warned of, women",
        basis=Basis.JUDGEMENT,
    ),
}
DEFICIT_SHARE_LIMIT = constant(
    "deficit_share_limit", 0.30, unit="of maintenance", summary="Largest deficit", basis=Basis.JUDGEMENT
)
DEFICIT_SHARE_WARN = constant(
    "deficit_share_warn",
    0.25,
    unit="of maintenance",
    summary="Deficit above which a warning is given",
    basis=Basis.JUDGEMENT,
)
FAT_SUPPLY_WARN = constant(
    "fat_supply_warn",
    203.0 / KJ_PER_KCAL,
    unit="kcal/kg/d",
    summary="Deficit per kilogram of fat mass from which a warning is given (203 kJ/kg/d, seven tenths of the limit): "
    "handed down in the trade as the author's own correction of his limit (22 kcal/lb/d), which he never published",
    basis=Basis.COMMON_PRACTICE,
)
LOSS_LIMIT = constant(
    "tissue_loss_limit",
    0.010,
    unit="of body mass a week",
    summary="Fastest planned tissue loss, phase mean",
    sources=(HELMS_2014, GARTHE_2011),
)
LOSS_WARN = constant(
    "tissue_loss_warn",
    0.008,
    unit="of body mass a week",
    summary="Planned tissue loss above which to warn",
    basis=Basis.JUDGEMENT,
    sources=(GARTHE_2011,),
)
AVAILABILITY_LIMIT = constant(
    "energy_availability_limit",
    25.0,
    unit="kcal/kg fat-free mass/d",
    summary="Least energy availability planned",
    basis=Basis.JUDGEMENT,
    sources=(MOUNTJOY_2023, LOUCKS_2003),
)
AVAILABILITY_WARN = constant(
    "energy_availability_warn",
    30.0,
    unit="kcal/kg fat-free mass/d",
    summary="Energy availability below which it is called low",
    sources=(ARETA_2021, FAGERBERG_2018),
)
INTAKE_FLOOR = {
    Sex.FEMALE: constant(
        "intake_floor_female",
        1200.0,
        unit="kcal/d",
        summary="Least daily intake planned, women",
        sources=(JENSEN_2014,),
    ),
    Sex.MALE: constant(
        "intake_floor_male",
        1500.0,
        unit="kcal/d",
        summary="Least daily intake planned, men",
        sources=(JENSEN_2014,),
    ),
}
CARBOHYDRATE_WARN_G = constant(
    "carbohydrate_warn",
    130.0,
    unit="g/d",
    summary="Recommended dietary allowance of carbohydrate",
    sources=(IOM_2005,),
)
FAT_SHARE_WARN = constant(
    "fat_share_warn",
    0.20,
    unit="of energy",
    summary="Dietary fat below which a warning is given: the least of the acceptable range of 20-35 %",
    sources=(IOM_2005,),
)
DEFAULT_DEFICIT = constant(
    "deficit_default",
    500.0,
    unit="kcal/d",
    summary="Deficit of a mini-cut unless asked otherwise",
    basis=Basis.COMMON_PRACTICE,
)
BRISK_DEFICIT = constant(
    "deficit_brisk",
    750.0,
    unit="kcal/d",
    summary="Upper end of the usual deficit of a mini-cut",
    basis=Basis.COMMON_PRACTICE,
)
CUTS_A_YEAR_WARN = constant(
    "cuts_a_year", 3.0, unit="cuts", summary="Cuts in twelve months above which to warn", basis=Basis.JUDGEMENT
)
WEEKS_BETWEEN_CUTS = constant(
    "weeks_between_cuts",
    8.0,
    unit="weeks",
    summary="Time since the last cut below which to warn",
    basis=Basis.JUDGEMENT,
)
GAIN_RATE_LIMIT = {
    TrainingStatus.UNTRAINED: constant(
        "gain_rate_untrained",
        0.005,
        unit="of body mass a week",
        summary="Fastest planned gain, untrained",
        sources=(IRAKI_2019,),
    ),
    TrainingStatus.NOVICE: constant(
        "gain_rate_novice",
        0.005,
        unit="of body mass a week",
        summary="Fastest planned gain, novice",
        sources=(IRAKI_2019,),
    ),
    TrainingStatus.INTERMEDIATE: constant(
        "gain_rate_intermediate",
        0.0025,
        unit="of body mass a week",
        summary="Fastest planned gain, intermediate",
        sources=(IRAKI_2019,),
    ),
    TrainingStatus.ADVANCED: constant(
        "gain_rate_advanced",
        0.0015,
        unit="of body mass a week",
        summary="Fastest planned gain, advanced",
        basis=Basis.JUDGEMENT,
    ),
}
_GAIN_RATE_RECOMMENDED = constant(
    "gain_rate_recommended",
    0.0025,
    unit="of body mass a week",
    summary="Rate of gain recommended to all but the advanced: the lower end of 0.25-0.5 %",
    sources=(IRAKI_2019,),
)
_RECOMMENDED_GAIN = {
    TrainingStatus.UNTRAINED: _GAIN_RATE_RECOMMENDED,
    TrainingStatus.NOVICE: _GAIN_RATE_RECOMMENDED,
    TrainingStatus.INTERMEDIATE: _GAIN_RATE_RECOMMENDED,
    TrainingStatus.ADVANCED: constant(
        "gain_rate_recommended_advanced",
        0.001,
        unit="of body mass a week",
        summary="Rate of gain recommended to the advanced: the lower end of 0.1-0.15 %",
        basis=Basis.JUDGEMENT,
    ),
}
_GAIN_RATE_WARN_FACTOR = constant(
    "gain_rate_warn_factor",
    1.5,
    unit="1",
    basis=Basis.JUDGEMENT,
    summary="Rate of gain above which it is warned of, of the recommended one, where that is under the ceiling",
)
GAIN_RATE_WARN = {
    status: min(GAIN_RATE_LIMIT[status], _GAIN_RATE_WARN_FACTOR * recommended)
    for status, recommended in _RECOMMENDED_GAIN.items()
}

REFEEDING_BMI = constant(
    "refeeding_bmi",
    16.0,
    unit="kg/m2",
    summary="Body mass index under which no intake is told: a doctor must see the person now",
    sources=(NICE_2006,),
)
REFEEDING_SHARE = constant(
    "refeeding_intake",
    0.5,
    unit="of resting energy",
    summary="Logged intake under which an underweight person must see a doctor now",
    basis=Basis.JUDGEMENT,
    sources=(NICE_2006,),
)
REFEEDING_LOSS = constant(
    "refeeding_loss",
    0.02,
    unit="of body mass a week",
    summary="Logged loss over which an underweight person must see a doctor now",
    basis=Basis.JUDGEMENT,
    sources=(NICE_2006,),
)
LIGHTER_SHARE = constant(
    "logged_lighter_share",
    0.02,
    unit="1",
    summary="A log whose newest weights are further than this fraction under the weight that was sent is believed: a "
    "week's water is less",
    basis=Basis.JUDGEMENT,
)
LOGGED_LOSS_LIMIT = constant(
    "logged_loss_limit",
    0.015,
    unit="of body mass a week",
    summary="Logged loss of weight over which no deficit is planned on top and intake is to be raised: half above the "
    "most that is recommended (1 %)",
    basis=Basis.JUDGEMENT,
    sources=(HELMS_2014,),
)
LOGGED_LOSS_WARN = constant(
    "logged_loss_warn",
    0.010,
    unit="of body mass a week",
    summary="Logged loss of weight over which to warn",
    sources=(HELMS_2014,),
)
FLOOR_TOLD = {
    Sex.FEMALE: constant(
        "intake_floor_told_female",
        1000.0,
        unit="kcal/d",
        summary="Least intake told to women, whatever a log says",
        basis=Basis.JUDGEMENT,
    ),
    Sex.MALE: constant(
        "intake_floor_told_male",
        1200.0,
        unit="kcal/d",
        summary="Least intake told to men, whatever a log says",
        basis=Basis.JUDGEMENT,
    ),
}
RESTING_TOLD = constant(
    "resting_told",
    0.8,
    unit="of resting energy",
    summary="Least intake told, whatever a log says",
    basis=Basis.JUDGEMENT,
)
AVAILABILITY_FADE = {
    Sex.MALE: (
        constant(
            "availability_fade_from_male",
            0.18,
            unit="1",
            basis=Basis.JUDGEMENT,
            summary="Measured body fat from which limits on energy availability fade, men",
        ),
        constant(
            "availability_fade_to_male",
            0.25,
            unit="1",
            basis=Basis.JUDGEMENT,
            summary="Measured body fat from which energy availability only warns, men",
        ),
    ),
    Sex.FEMALE: (
        constant(
            "availability_fade_from_female",
            0.27,
            unit="1",
            basis=Basis.JUDGEMENT,
            summary="Measured body fat from which limits on energy availability fade, women",
        ),
        constant(
            "availability_fade_to_female",
            0.35,
            unit="1",
            basis=Basis.JUDGEMENT,
            summary="Measured body fat from which energy availability only warns, women",
        ),
    ),
}
NEED_SHARE = constant(
    "need_share",
    0.90,
    unit="of maintenance",
    summary="Least that is told to those whose intake may not be lowered",
    basis=Basis.JUDGEMENT,
)
NEED_RATIO_LEAST = constant(
    "need_logging_ratio",
    0.8,
    unit="1",
    summary="Least logging ratio believed of those whose intake may not be lowered",
    basis=Basis.JUDGEMENT,
)
BREASTFEEDING_KCAL = constant(
    "breastfeeding_energy",
    400.0,
    unit="kcal/d",
    summary="Energy that breastfeeding adds: in months 0-6 540 less 140 from stores (380 in months 7-12); the report "
    "before had 500 less 170, and 400 in months 7-12",
    sources=(NASEM_2023, IOM_2005),
)
APART_WEEKS = constant(
    "deficits_apart",
    4.0,
    unit="weeks",
    summary="Weeks between two deficits under which they count as one",
    basis=Basis.JUDGEMENT,
)

REFEEDING = _rule(
    "refeeding",
    "Who needs a doctor now",
    f"no intake told at a body mass index under {REFEEDING_BMI:g}, or under {BMI_FLOOR:g} with a log under half of "
    f"resting energy or of a loss over {100.0 * REFEEDING_LOSS:g} % of body mass a week (what a log must show is our "
    "judgement)",
    basis=Basis.PUBLISHED,
    sources=(NICE_2006,),
)
AGE = _rule(
    "age",
    "Age and deficits",
    f"under {ADULT_YEARS:g} refused; {ADULT_YEARS:g}-{YOUNG_ADULT_YEARS - 1:g} warned; {OLDER_YEARS:g} and over needs "
    "clearance",
    sources=_GUIDELINES,
)
PREGNANCY = _rule("pregnancy_lactation", "Pregnancy and breastfeeding", "no deficit", sources=_GUIDELINES)
EATING_DISORDER = _rule(
    "eating_disorder",
    "Eating disorder, current or past",
    "no deficit and no body-fat target; any doubt warned",
    sources=(MORGAN_1999, *_GUIDELINES),
)
MEDICAL = _rule(
    "medical", "Listed conditions and medicines", "no deficit without clinical clearance", sources=_GUIDELINES
)
UNANSWERED = _rule("screening_unanswered", "Screening not answered", "maintenance only: unknown is never clear")
BMI = _rule(
    "bmi",
    "Body mass index and deficits",
    f"under {BMI_FLOOR:g} refused; under {BMI_WARN:g} warned",
    sources=(WHO_BMI_2000,),
)
BODY_FAT = _rule(
    "body_fat",
    "Body fat and deficits",
    f"no deficit at, and none that ends under, {100.0 * FAT_FRACTION_FLOOR[Sex.MALE]:g} % (men) or "
    f"{100.0 * FAT_FRACTION_FLOOR[Sex.FEMALE]:g} % (women); under {100.0 * FAT_FRACTION_WARN[Sex.MALE]:g} / "
    f"{100.0 * FAT_FRACTION_WARN[Sex.FEMALE]:g} % warned",
)
DEFICIT = _rule(
    "deficit_share",
    "Size of a deficit",
    f"at most {DEFICIT_SHARE_LIMIT:.0%} of maintenance; over {DEFICIT_SHARE_WARN:.0%} warned",
)
FAT_SUPPLY = _rule(
    "fat_supply",
    "Energy that fat mass can release",
    f"deficit at most {FAT_SUPPLY_LIMIT:.1f} kcal per kg fat mass; over {FAT_SUPPLY_WARN:.1f} warned (common practice)",
    basis=Basis.PUBLISHED,
    sources=(ALPERT_2005,),
)
LOSS = _rule(
    "tissue_loss",
    "Rate of planned tissue loss",
    f"phase mean at most {LOSS_LIMIT:.1%} of body mass a week; over {LOSS_WARN:.1%} warned (our judgement)",
    basis=Basis.PUBLISHED,
    sources=(HELMS_2014, GARTHE_2011),
)
AVAILABILITY = _rule(
    "energy_availability",
    "Energy availability: (intake - exercise) / fat-free mass",
    f"at least {AVAILABILITY_LIMIT:g} kcal/kg/d, in deficits of over six weeks {AVAILABILITY_WARN:g}, under which "
    "shorter ones are warned; where measured body fat is high both fade to a warning (25, the weeks and the fade are "
    "our judgement)",
    basis=Basis.PUBLISHED,
    sources=(ARETA_2021, FAGERBERG_2018),
)
FLOOR = _rule(
    "intake_floor",
    "Least daily intake",
    f"{INTAKE_FLOOR[Sex.FEMALE]:,.0f} (women), {INTAKE_FLOOR[Sex.MALE]:,.0f} (men) kcal/d, in "
    "a cut of over six weeks resting energy too, under which a shorter one is warned (resting energy is our judgement)",
    basis=Basis.PUBLISHED,
    sources=(JENSEN_2014,),
)
PROTEIN = _rule(
    "protein",
    "Protein in a deficit",
    f"at least {PROTEIN_FLOOR_DEFICIT:g} g/kg/d, of protein_reference_mass; any with kidney disease warned",
    basis=Basis.PUBLISHED,
    sources=(MORTON_2018,),
)
DIETARY_FAT = _rule(
    "dietary_fat",
    "Dietary fat",
    f"at least {FAT_FLOOR_G_PER_KG:g} g/kg and {100.0 * FAT_FLOOR_SHARE:g} % of energy; under "
    f"{100.0 * FAT_SHARE_WARN:g} % warned",
    sources=(IRAKI_2019, HELMS_2014, WHITTAKER_2021),
)
CARBOHYDRATE = _rule(
    "carbohydrate",
    "Carbohydrate",
    f"under {CARBOHYDRATE_WARN_G:g} g/d warned",
    basis=Basis.PUBLISHED,
    sources=(IOM_2005,),
)
GAIN_RATE = _rule(
    "gain_rate",
    "Rate of planned gain",
    f"at most {100.0 * GAIN_RATE_LIMIT[TrainingStatus.NOVICE]:g} % of body mass a week untrained or novice, "
    f"{100.0 * GAIN_RATE_LIMIT[TrainingStatus.INTERMEDIATE]:g} % intermediate, "
    f"{100.0 * GAIN_RATE_LIMIT[TrainingStatus.ADVANCED]:g} % advanced; "
    f"over {100.0 * GAIN_RATE_WARN[TrainingStatus.NOVICE]:g} % warned",
    sources=(IRAKI_2019,),
)
CUT_HISTORY = _rule(
    "cut_history",
    "Cuts already done",
    "more than three a year or within eight weeks of the last warned; unknown keeps to the default deficit",
)
