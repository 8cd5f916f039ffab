"""Generated from the contract by regenerate.py: do not edit."""

import datetime
from collections.abc import Sequence
from typing import Literal, NotRequired, TypedDict

from . import models

__all__ = [
    "ActivityByLevelDict",
    "ActivityByWeekDict",
    "BmiMeasurementDict",
    "BodyCompositionRequestDict",
    "BodyFatDict",
    "ClinicalClearanceDict",
    "CutHistoryDict",
    "DateQuestionDict",
    "ForecastRequestDict",
    "GirthMeasurementDict",
    "IntakeEntryDict",
    "IntakeQuestionDict",
    "IntakeStretchDict",
    "KnownMaintenanceDict",
    "LogDict",
    "MaintenanceRequestDict",
    "MiniCutDict",
    "PathQuestionDict",
    "PlanRequestDict",
    "ProfileDict",
    "ReadingMeasurementDict",
    "ReturnToGainDict",
    "ScreeningDict",
    "SkinfoldMeasurementDict",
    "TargetDict",
    "TrainingDict",
    "TrainingSessionDict",
    "TrendRequestDict",
    "WeightEntryDict",
]


class ActivityByLevelDict(TypedDict):
    """Whole-day activity as a band of the physical activity level (PAL). Training is included: do not add it
    again.

    kind: Always `level`.
    level: `sedentary` (PAL 1.40-1.55): seated work, little walking, little training. `light` (1.55-1.70): seated
        work with daily walking or training a few times a week. `moderate` (1.70-1.85): on the feet for much of
        the day, or hard training most days. `active` (1.85-2.00): physical work, or both. `very_active`
        (2.00-2.40): heavy physical work or many hours of training.
    """

    kind: "Literal['level']"
    level: "models.ActivityLevel | Literal['active', 'light', 'moderate', 'sedentary', 'very_active']"


class ActivityByWeekDict(TypedDict):
    """Activity composed of steps and sessions. Steps exclude those made in sessions.

    kind: Always `week`.
    sessions: All training of the week.
    steps_per_day: Steps a day outside the sessions. 0 to 60000.
    """

    kind: "Literal['week']"
    sessions: "NotRequired[Sequence[models.TrainingSession | TrainingSessionDict]]"
    steps_per_day: "float"


class BmiMeasurementDict(TypedDict):
    """Body fat from the height and weight of the request: the last resort.

    kind: Always `bmi`.
    """

    kind: "Literal['bmi']"


class BodyCompositionRequestDict(TypedDict):
    """A person and what was measured. Repeats of a kind are welcome: they average out the day-to-day error.

    age_years: Age in years. 13 to 100.
    height_cm: Height in centimetres. 120 to 230.
    measurements: What was measured, in any order.
    sex: Which equations apply. `unspecified` gives both as a range.
    training_status: Experience in resistance training. Body fat from BMI has a larger error in those who train.
    weight_kg: Body mass in kilograms. 30 to 300.
    """

    age_years: "float"
    height_cm: "float"
    measurements: "Sequence[models.GirthMeasurement | GirthMeasurementDict | models.SkinfoldMeasurement | SkinfoldMeasurementDict | models.ReadingMeasurement | ReadingMeasurementDict | models.BmiMeasurement | BmiMeasurementDict]"
    sex: "models.Sex | Literal['female', 'male', 'unspecified']"
    training_status: "models.TrainingStatus | Literal['advanced', 'intermediate', 'novice', 'untrained']"
    weight_kg: "float"


class BodyFatDict(TypedDict):
    """A body-fat reading and how it was taken (the method sets its error).

    fat_fraction: Body fat as a fraction of body mass, 0 to 1. 0.03 to 0.6.
    method: How the reading was taken.
    """

    fat_fraction: "float"
    method: "models.BodyFatMethod | Literal['air_displacement', 'bioimpedance', 'bmi_equation', 'dxa', 'four_compartment', 'girths', 'hydrostatic', 'skinfolds', 'visual']"


class ClinicalClearanceDict(TypedDict):
    """A supervising professional's clearance. Echoed in the answer.

    given_by: The professional's role.
    reason: Why a deficit is acceptable here.
    """

    given_by: "str"
    reason: "str"


class CutHistoryDict(TypedDict):
    """Cuts already done. Unknown history keeps the plan to the default deficit.

    cuts_last_12_months: Fat-loss phases in the last twelve months. 0 to 12.
    weeks_since_last_cut: Weeks since the last one ended. 0 to 520.
    """

    cuts_last_12_months: "int"
    weeks_since_last_cut: "NotRequired[int | None]"


class DateQuestionDict(TypedDict):
    """When does a constant intake reach a target?

    intake_kcal: Energy per day, kilocalories. 800 to 8000.
    kind: Always `date_for_target`.
    protein_g_per_kg: Protein, grams per kilogram of body mass. 0.3 to 5.
    target: See `TargetDict`.
    """

    intake_kcal: "float"
    kind: "Literal['date_for_target']"
    protein_g_per_kg: "NotRequired[float]"
    target: "models.Target | TargetDict"


class ForecastRequestDict(TypedDict):
    """A person and a question about what an intake does.

    current_intake_kcal: What is eaten a day at present; maintenance by default. 800 to 8000.
    log: Dated weights and intakes to estimate maintenance from.
    maintenance: A known maintenance; else it is estimated from profile and log.
    profile: See `ProfileDict`.
    question: What to forecast or to solve for.
    screening: Safety questions; without them no deficit is forecast.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    uncertainty_sources: Which sources of uncertainty the intervals carry; all by default.
    """

    current_intake_kcal: "NotRequired[float | None]"
    log: "NotRequired[models.Log | LogDict | None]"
    maintenance: "NotRequired[models.KnownMaintenance | KnownMaintenanceDict | None]"
    profile: "models.Profile | ProfileDict"
    question: "models.PathQuestion | PathQuestionDict | models.IntakeQuestion | IntakeQuestionDict | models.DateQuestion | DateQuestionDict"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"
    start_date: "datetime.date | str"
    uncertainty_sources: "NotRequired[Sequence[models.UncertaintySource | Literal['adaptation', 'adherence', 'body_fat', 'carried_mass', 'daily_noise', 'maintenance', 'partition', 'training_response']] | None]"


class GirthMeasurementDict(TypedDict):
    """Girths by tape. Men: neck and abdomen. Women: neck, waist and hip. Unspecified sex: all four.

    abdomen_cm: Abdomen at the navel, centimetres; for men. 40 to 250.
    hip_cm: Hip at its widest, centimetres; for women. 40 to 250.
    kind: Always `girths`.
    neck_cm: Neck just under the larynx, centimetres. 20 to 80.
    waist_cm: Waist at its narrowest, centimetres; for women. 40 to 250.
    """

    abdomen_cm: "NotRequired[float | None]"
    hip_cm: "NotRequired[float | None]"
    kind: "Literal['girths']"
    neck_cm: "float"
    waist_cm: "NotRequired[float | None]"


class IntakeEntryDict(TypedDict):
    """What was eaten on a day. A missing day is an absent entry, not a zero.

    carbohydrate_g: Carbohydrate eaten, grams. 0 to 2000.
    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    intake_kcal: Energy eaten in a day, kilocalories. 0 to 15000.
    is_partial: Whether the day was logged only in part.
    """

    carbohydrate_g: "NotRequired[float | None]"
    date: "datetime.date | str"
    intake_kcal: "float"
    is_partial: "NotRequired[bool]"


class IntakeQuestionDict(TypedDict):
    """Which constant intake reaches a target by a date?

    by_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    kind: Always `intake_for_target`.
    protein_g_per_kg: Protein, grams per kilogram of body mass. 0.3 to 5.
    target: See `TargetDict`.
    """

    by_date: "datetime.date | str"
    kind: "Literal['intake_for_target']"
    protein_g_per_kg: "NotRequired[float]"
    target: "models.Target | TargetDict"


class IntakeStretchDict(TypedDict):
    """An intake held for some weeks. What is not given stays as usual.

    added_sessions: Training added to the usual; it raises expenditure.
    carbohydrate_g: Carbohydrate a day; half of the energy by default. 0 to 1500.
    intake_kcal: Energy a day. 800 to 8000.
    protein_g_per_kg: Protein, grams per kilogram of body mass. 0.3 to 5.
    sodium_change_mg: Sodium a day against the usual. -5000 to 10000.
    weeks: How long, in weeks. 1 to 156.
    """

    added_sessions: (
        "NotRequired[Sequence[models.TrainingSession | TrainingSessionDict]]"
    )
    carbohydrate_g: "NotRequired[float | None]"
    intake_kcal: "float"
    protein_g_per_kg: "NotRequired[float]"
    sodium_change_mg: "NotRequired[float]"
    weeks: "int"


class KnownMaintenanceDict(TypedDict):
    """A maintenance estimate to plan from, such as an earlier answer of `/v1/maintenance`.

    kcal_per_day: Energy per day, kilocalories. 800 to 8000.
    standard_deviation_kcal: Its standard deviation, kilocalories a day. 20 to 600.
    """

    kcal_per_day: "float"
    standard_deviation_kcal: "float"


class LogDict(TypedDict):
    """Weights and intakes in any order; gaps are fine.

    intakes: Daily intakes.
    weights: Weighings.
    """

    intakes: "NotRequired[Sequence[models.IntakeEntry | IntakeEntryDict]]"
    weights: "Sequence[models.WeightEntry | WeightEntryDict]"


class MaintenanceRequestDict(TypedDict):
    """Whose maintenance to estimate, and the log to learn from, where there is one.

    as_of_date: The day the estimate is for; the last day of the log by default.
    log: Dated weights and intakes.
    profile: See `ProfileDict`.
    """

    as_of_date: "NotRequired[datetime.date | str | None]"
    log: "NotRequired[models.Log | LogDict | None]"
    profile: "models.Profile | ProfileDict"


class MiniCutDict(TypedDict):
    """A short, brisk fat-loss phase of 2 to 6 weeks. Give fat, weeks or both; the rest is solved.

    carbohydrate_preference: Lower, balanced or higher carbohydrate.
    deficit_kcal: Daily deficit against maintenance at the start; 500 where neither it nor both fat and weeks are
        given. 100 to 1500.
    easing_in_weeks: How many of the first weeks run at half the deficit, to limit hunger; none by default. 0 to
        2.
    fat_loss_kg: Fat to lose, kilograms. 0.2 to 15.
    kind: Always `mini_cut`.
    protein_g_per_kg: Protein, grams per kilogram; 2.0 by default. 1.2 to 3.5.
    weeks: Length in weeks. 2 to 6.
    """

    carbohydrate_preference: "NotRequired[models.CarbohydratePreference | Literal['balanced', 'higher', 'lower']]"
    deficit_kcal: "NotRequired[float | None]"
    easing_in_weeks: "NotRequired[int]"
    fat_loss_kg: "NotRequired[float | None]"
    kind: "Literal['mini_cut']"
    protein_g_per_kg: "NotRequired[float | None]"
    weeks: "NotRequired[int | None]"


class PathQuestionDict(TypedDict):
    """Where does this schedule of intakes lead?

    kind: Always `path`.
    schedule: Stretches in order, 156 weeks in all.
    """

    kind: "Literal['path']"
    schedule: "Sequence[models.IntakeStretch | IntakeStretchDict]"


class PlanRequestDict(TypedDict):
    """A person, their screening answers, and the phase to plan.

    current_intake_kcal: What is eaten a day at present; maintenance by default. 800 to 8000.
    cut_history: Cuts already done.
    log: Dated weights and intakes to estimate maintenance from.
    maintenance: A known maintenance; else it is estimated from the profile and log.
    phase: The phase to plan.
    profile: See `ProfileDict`.
    return_to_gain: See `ReturnToGainDict`.
    screening: Safety questions; without them no deficit is planned.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    uncertainty_sources: Which sources of uncertainty the intervals carry; all by default.
    """

    current_intake_kcal: "NotRequired[float | None]"
    cut_history: "NotRequired[models.CutHistory | CutHistoryDict | None]"
    log: "NotRequired[models.Log | LogDict | None]"
    maintenance: "NotRequired[models.KnownMaintenance | KnownMaintenanceDict | None]"
    phase: "models.MiniCut | MiniCutDict"
    profile: "models.Profile | ProfileDict"
    return_to_gain: "NotRequired[models.ReturnToGain | ReturnToGainDict]"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"
    start_date: "datetime.date | str"
    uncertainty_sources: "NotRequired[Sequence[models.UncertaintySource | Literal['adaptation', 'adherence', 'body_fat', 'carried_mass', 'daily_noise', 'maintenance', 'partition', 'training_response']] | None]"


class ProfileDict(TypedDict):
    """The person. Nothing of it is kept.

    activity: A whole-day level, or a week of steps and sessions.
    age_years: Age in years. 13 to 100.
    body_fat: A body-fat reading, where there is one.
    height_cm: Height in centimetres. 120 to 230.
    sex: Which equations apply. `unspecified` gives both as a wider range, and the stricter rails.
    training: See `TrainingDict`.
    weight_kg: Body mass in kilograms. 30 to 300.
    """

    activity: "models.ActivityByLevel | ActivityByLevelDict | models.ActivityByWeek | ActivityByWeekDict"
    age_years: "float"
    body_fat: "NotRequired[models.BodyFat | BodyFatDict | None]"
    height_cm: "float"
    sex: "models.Sex | Literal['female', 'male', 'unspecified']"
    training: "models.Training | TrainingDict"
    weight_kg: "float"


class ReadingMeasurementDict(TypedDict):
    """Body fat as a device or a person gave it, and how (the method sets its error).

    fat_fraction: Body fat as a fraction of body mass, 0 to 1. 0.03 to 0.6.
    kind: Always `reading`.
    method: How the reading was taken.
    """

    fat_fraction: "float"
    kind: "Literal['reading']"
    method: "models.BodyFatMethod | Literal['air_displacement', 'bioimpedance', 'bmi_equation', 'dxa', 'four_compartment', 'girths', 'hydrostatic', 'skinfolds', 'visual']"


class ReturnToGainDict(TypedDict):
    """What follows the mini-cut: maintenance, then a measured surplus.

    fat_ceiling_fraction: Body fat at which to stop the gain and consider a cut; a common value by default. 0.08
        to 0.4.
    gain_weeks: Weeks of gain to forecast. 0 to 26.
    maintenance_weeks: Weeks at the new maintenance. 1 to 4.
    surplus_kcal: Daily surplus; set by training status by default. 50 to 1000.
    """

    fat_ceiling_fraction: "NotRequired[float | None]"
    gain_weeks: "NotRequired[int]"
    maintenance_weeks: "NotRequired[int]"
    surplus_kcal: "NotRequired[float | None]"


class ScreeningDict(TypedDict):
    """Safety questions. A deficit is planned only when they are answered: unknown is never clear.

    clinical_clearance: A professional's clearance, where one was given.
    conditions: Conditions that apply; empty for none.
    eating_disorder: Eating disorder, now or before.
    is_breastfeeding: Breastfeeding now.
    is_pregnant: Pregnant now.
    medicines: Medicines taken; empty for none.
    """

    clinical_clearance: (
        "NotRequired[models.ClinicalClearance | ClinicalClearanceDict | None]"
    )
    conditions: "Sequence[models.Condition | Literal['absent_periods', 'bariatric_surgery', 'cancer', 'diabetes_treated', 'gallstones', 'gout', 'heart_disease', 'kidney_disease', 'liver_disease', 'low_testosterone_symptoms', 'phenylketonuria', 'recent_surgery_or_injury', 'stress_fracture', 'thyroid_uncontrolled', 'unexplained_weight_loss']]"
    eating_disorder: (
        "models.EatingDisorder | Literal['current', 'none', 'past', 'unsure']"
    )
    is_breastfeeding: "bool"
    is_pregnant: "bool"
    medicines: "Sequence[models.Medicine | Literal['diuretic', 'glp1_agonist', 'insulin_or_secretagogue', 'lithium', 'sglt2_inhibitor', 'warfarin']]"


class SkinfoldMeasurementDict(TypedDict):
    """Skinfolds by caliper at the sites that the equation needs. `jackson_pollock_3`: chest, abdomen, thigh
    (men), triceps, suprailiac, thigh (women). `jackson_pollock_7`: chest, midaxillary, triceps, subscapular,
    abdomen, suprailiac, thigh. `durnin_womersley_4`: biceps, triceps, subscapular, suprailiac.

    abdomen_mm: Skinfold at this site, millimetres. 1 to 100.
    biceps_mm: Skinfold at this site, millimetres. 1 to 100.
    chest_mm: Skinfold at this site, millimetres. 1 to 100.
    conversion: How body density becomes body fat.
    equation: Which equation, hence which sites.
    kind: Always `skinfolds`.
    midaxillary_mm: Skinfold at this site, millimetres. 1 to 100.
    subscapular_mm: Skinfold at this site, millimetres. 1 to 100.
    suprailiac_mm: Skinfold at this site, millimetres. 1 to 100.
    thigh_mm: Skinfold at this site, millimetres. 1 to 100.
    triceps_mm: Skinfold at this site, millimetres. 1 to 100.
    """

    abdomen_mm: "NotRequired[float | None]"
    biceps_mm: "NotRequired[float | None]"
    chest_mm: "NotRequired[float | None]"
    conversion: "NotRequired[models.DensityConversion | Literal['brozek', 'siri']]"
    equation: "models.SkinfoldMethod | Literal['durnin_womersley_4', 'jackson_pollock_3', 'jackson_pollock_7']"
    kind: "Literal['skinfolds']"
    midaxillary_mm: "NotRequired[float | None]"
    subscapular_mm: "NotRequired[float | None]"
    suprailiac_mm: "NotRequired[float | None]"
    thigh_mm: "NotRequired[float | None]"
    triceps_mm: "NotRequired[float | None]"


class TargetDict(TypedDict):
    """A value to reach.

    quantity: What the target is set in.
    value: Its value, in the unit of the quantity.
    """

    quantity: "models.TargetQuantity | Literal['fat_fraction', 'fat_kg', 'weight_kg']"
    value: "float"


class TrainingDict(TypedDict):
    """Resistance training.

    is_new_programme: Whether training started or clearly increased in the last weeks.
    resistance_sessions_per_week: Resistance sessions a week. 0 to 14.
    status: Experience: untrained, novice (under a year), intermediate (one to four), advanced.
    """

    is_new_programme: "NotRequired[bool]"
    resistance_sessions_per_week: "float"
    status: "models.TrainingStatus | Literal['advanced', 'intermediate', 'novice', 'untrained']"


class TrainingSessionDict(TypedDict):
    """A bout repeated every week.

    met: Intensity in METs (vigorous resistance training is 6). 1 to 20.
    minutes: Minutes a bout. 1 to 600.
    times_per_week: Bouts a week.
    """

    met: "float"
    minutes: "float"
    times_per_week: "float"


class TrendRequestDict(TypedDict):
    """A log to read, and whose it is.

    as_of_date: The day to read the log at; its last day by default.
    log: See `LogDict`.
    profile: See `ProfileDict`.
    usual_intake_kcal: What was eaten a day before the log began; maintenance by default. 800 to 8000.
    """

    as_of_date: "NotRequired[datetime.date | str | None]"
    log: "models.Log | LogDict"
    profile: "models.Profile | ProfileDict"
    usual_intake_kcal: "NotRequired[float | None]"


class WeightEntryDict(TypedDict):
    """A weighing. Several a day are allowed; `order` tells them apart.

    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    order: Order within the day, for several weighings. 0 to 50.
    weight_kg: Body mass in kilograms. 30 to 300.
    """

    date: "datetime.date | str"
    order: "NotRequired[int]"
    weight_kg: "float"
