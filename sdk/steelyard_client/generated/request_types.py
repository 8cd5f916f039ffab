"""Generated from the contract by regenerate.py: do not edit."""

import datetime
from collections.abc import Sequence
from typing import Literal, NotRequired, TypedDict

from . import models

__all__ = [
    "ActivityByLevelDict",
    "ActivityByWeekDict",
    "BatchLineDict",
    "BlockedDatesDict",
    "BmiMeasurementDict",
    "BodyCompositionRequestDict",
    "BodyFatDict",
    "BodyFatBandDict",
    "ChosenBandDict",
    "ClinicalClearanceDict",
    "ComparisonRequestDict",
    "CutDict",
    "CutHistoryDict",
    "DateQuestionDict",
    "DatedMeasurementDict",
    "DaySplitDict",
    "DecisionRequestDict",
    "ForecastRequestDict",
    "GainDict",
    "GirthMeasurementDict",
    "HoldDict",
    "IntakeEntryDict",
    "IntakeQuestionDict",
    "IntakeStretchDict",
    "KnownMaintenanceDict",
    "LogDict",
    "MaintenanceRequestDict",
    "MiniCutDict",
    "OptimumRequestDict",
    "OwnStrategyDict",
    "PastPhaseDict",
    "PathQuestionDict",
    "PauseDict",
    "PhaseFollowedDict",
    "PlanRequestDict",
    "PresentPhaseDict",
    "ProfileDict",
    "ReadingMeasurementDict",
    "ReadyMadeStrategyDict",
    "ReturnToGainDict",
    "ReviewRequestDict",
    "ScreeningDict",
    "SeasonEventDict",
    "SeasonLimitsDict",
    "SeasonRequestDict",
    "SkinfoldMeasurementDict",
    "TargetDict",
    "TrainingDict",
    "TrainingSessionDict",
    "TrendRequestDict",
    "WeekFollowedDict",
    "WeightEntryDict",
]


class ActivityByLevelDict(TypedDict):
    """Whole-day activity as a band of the physical activity level (PAL). Training is included: do not add it
    again.

    kind: Always `level`.
    level: `sedentary` (PAL 1.40-1.55; a quarter of adults by labelled water): seated nearly all day, hardly any
        walking, no training. `light` (1.55-1.70; the next quarter): an ordinary seated day with some walking, or
        desk work and three to five hours of lifting a week. `moderate` (1.70-1.85): on the feet for much of the
        day, or an ordinary day and training on most days. `active` (1.85-2.00; the most active quarter): physical
        work, or hard training of a competing athlete. `very_active` (2.00-2.40): heavy physical work or many
        hours of training.
    """

    kind: "Literal['level']"
    level: "models.ActivityLevel | Literal['active', 'light', 'moderate', 'sedentary', 'very_active']"


class ActivityByWeekDict(TypedDict):
    """Activity composed of steps and sessions. Steps exclude those made in sessions.

    kind: Always `week`.
    sessions: All training of the week. `[]` if absent.
    steps_per_day: Steps a day outside the sessions. 0 to 60000.
    """

    kind: "Literal['week']"
    sessions: "NotRequired[Sequence[models.TrainingSession | TrainingSessionDict]]"
    steps_per_day: "float"


class BatchLineDict(TypedDict):
    """One line in: an operation and its body, under a reference of the caller's choosing.

    body: The body that the operation takes when it is called by itself.
    operation: Id of the operation.
    reference: Comes back with the answer.
    """

    body: "models.BodyCompositionRequest | BodyCompositionRequestDict | models.MaintenanceRequest | MaintenanceRequestDict | models.ForecastRequest | ForecastRequestDict | models.PlanRequest | PlanRequestDict | models.TrendRequest | TrendRequestDict | models.ReviewRequest | ReviewRequestDict"
    operation: "models.BatchOperation | Literal['estimate_body_composition', 'estimate_maintenance', 'forecast_intake', 'plan_phases', 'read_trend', 'review_phase']"
    reference: "str"


class BlockedDatesDict(TypedDict):
    """Days on which no cut may run: travel, exams, a competition. A week touched by them is blocked.

    first_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    last_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    """

    first_date: "datetime.date | str"
    last_date: "datetime.date | str"


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


class BodyFatBandDict(TypedDict):
    """The body fat a person wants to stay between.

    lower_fat_fraction: Body fat as a fraction of body mass, 0 to 1. 0.03 to 0.6.
    upper_fat_fraction: Body fat as a fraction of body mass, 0 to 1. 0.03 to 0.6.
    """

    lower_fat_fraction: "float"
    upper_fat_fraction: "float"


class ChosenBandDict(TypedDict):
    """The body fat between which the person wants to stay.

    lower_fat_fraction: Body fat as a fraction of body mass, 0 to 1. 0.03 to 0.6.
    upper_fat_fraction: Body fat as a fraction of body mass, 0 to 1. 0.03 to 0.6.
    """

    lower_fat_fraction: "float"
    upper_fat_fraction: "float"


class ClinicalClearanceDict(TypedDict):
    """A supervising professional's clearance. Echoed in the answer.

    given_by: The professional's role.
    reason: Why a deficit is acceptable here.
    """

    given_by: "str"
    reason: "str"


class ComparisonRequestDict(TypedDict):
    """A person, a horizon, limits and the strategies to compare.

    current_intake_kcal: What is eaten a day at present; maintenance by default. 800 to 8000.
    cut_history: Cuts already done.
    horizon_weeks: Length of the season in weeks. 12 to 156.
    limits: Where absent, its own defaults hold.
    log: Dated weights and intakes to estimate maintenance from.
    maintenance: A known maintenance; else it is estimated from profile and log.
    profile: See `ProfileDict`.
    screening: Safety questions; without them no cut is planned.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    strategies: The strategies.
    """

    current_intake_kcal: "NotRequired[float | None]"
    cut_history: "NotRequired[models.CutHistory | CutHistoryDict | None]"
    horizon_weeks: "int"
    limits: "NotRequired[models.SeasonLimits | SeasonLimitsDict]"
    log: "NotRequired[models.Log | LogDict | None]"
    maintenance: "NotRequired[models.KnownMaintenance | KnownMaintenanceDict | None]"
    profile: "models.Profile | ProfileDict"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"
    start_date: "datetime.date | str"
    strategies: "Sequence[models.ReadyMadeStrategy | ReadyMadeStrategyDict | models.OwnStrategy | OwnStrategyDict]"


class CutDict(TypedDict):
    """A longer fat-loss phase of 7 to 26 weeks, its intake set anew every few weeks, with breaks where wanted.

    break_every_weeks: A break at maintenance after this many weeks. 2 to 16.
    break_weeks: Length of a break. `1` if absent. 1 to 2.
    carbohydrate_preference: Lower, balanced or higher carbohydrate. `"balanced"` if absent.
    deficit_kcal: Daily deficit at the start; 500 where neither it nor both a goal and a time are given. 100 to
        1500.
    easing_in_weeks: How many of the first weeks run at half the deficit, to limit hunger; none by default. `0` if
        absent. 0 to 2.
    event_date: A day to be ready for: the phase and the maintenance that lets carried mass settle end before it,
        as late as will do. Instead of `weeks`.
    fat_loss_kg: Fat to lose, kilograms. 0.2 to 30.
    kind: Always `cut`.
    protein_g_per_kg: Protein, grams per kilogram; 2.0 by default. 1.2 to 3.5.
    target_fat_fraction: Body fat as a fraction of body mass, 0 to 1. 0.03 to 0.6.
    target_weight_kg: Weight to reach once carried mass has settled, kilograms. 30 to 300.
    weeks: Length in weeks, 7 or more unless some are done. 1 to 26.
    weeks_done: Weeks of this phase already done, to plan its rest from the body as it is now. `0` if absent. 0 to
        52.
    """

    break_every_weeks: "NotRequired[int | None]"
    break_weeks: "NotRequired[int]"
    carbohydrate_preference: "NotRequired[models.CarbohydratePreference | Literal['balanced', 'higher', 'lower']]"
    deficit_kcal: "NotRequired[float | None]"
    easing_in_weeks: "NotRequired[int]"
    event_date: "NotRequired[datetime.date | str | None]"
    fat_loss_kg: "NotRequired[float | None]"
    kind: "Literal['cut']"
    protein_g_per_kg: "NotRequired[float | None]"
    target_fat_fraction: "NotRequired[float | None]"
    target_weight_kg: "NotRequired[float | None]"
    weeks: "NotRequired[int | None]"
    weeks_done: "NotRequired[int]"


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
    protein_g_per_kg: Protein, grams per kilogram of body mass. `1.6` if absent. 0.3 to 5.
    target: See `TargetDict`.
    """

    intake_kcal: "float"
    kind: "Literal['date_for_target']"
    protein_g_per_kg: "NotRequired[float]"
    target: "models.Target | TargetDict"


class DatedMeasurementDict(TypedDict):
    """A measurement of body fat on a day of the log.

    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    measurement:
    """

    date: "datetime.date | str"
    measurement: "models.GirthMeasurement | GirthMeasurementDict | models.SkinfoldMeasurement | SkinfoldMeasurementDict | models.ReadingMeasurement | ReadingMeasurementDict"


class DaySplitDict(TypedDict):
    """Eat more carbohydrate on some days of the week and less on the others; the weekly total stays the same.

    carbohydrate_shift: How much more on those days, as a share of the mean. `0.2` if absent. 0.05 to 0.6.
    higher_days_per_week: Days with more carbohydrate: training days, for example. 1 to 6.
    """

    carbohydrate_shift: "NotRequired[float]"
    higher_days_per_week: "int"


class DecisionRequestDict(TypedDict):
    """A person, what they want, and what they have done so far.

    as_of_date: The day of the decision.
    band: The chosen band; by default 10-17 % for men, 18-27 % for women, as is common practice.
    current_intake_kcal: What is eaten a day at present; maintenance by default. 800 to 8000.
    event_date: A day to be lean on.
    event_fat_fraction: Most body fat wanted on that day; set by the band by default. 0.03 to 0.6.
    feeling: How the person feels about their leanness. A reason of its own. `"content"` if absent.
    goal: `muscle`: gain over the next months. `leanness`: be leaner. `event`: be lean on a day (`event_date`).
        `hold`: stay as I am. `"muscle"` if absent.
    log: Dated weights and intakes to estimate maintenance from.
    maintenance: A known maintenance; else it is estimated from the profile and log.
    phase_history: Phases that are over, oldest first; empty for none. Unknown by default.
    present_phase: The phase under way, where there is one.
    profile: See `ProfileDict`.
    screening: Safety questions; without them no deficit and no gain is recommended.
    """

    as_of_date: "datetime.date | str"
    band: "NotRequired[models.ChosenBand | ChosenBandDict | None]"
    current_intake_kcal: "NotRequired[float | None]"
    event_date: "NotRequired[datetime.date | str | None]"
    event_fat_fraction: "NotRequired[float | None]"
    feeling: "NotRequired[models.Feeling | Literal['content', 'unhappy', 'would_like_leaner']]"
    goal: "NotRequired[models.Goal | Literal['event', 'hold', 'leanness', 'muscle']]"
    log: "NotRequired[models.Log | LogDict | None]"
    maintenance: "NotRequired[models.KnownMaintenance | KnownMaintenanceDict | None]"
    phase_history: "NotRequired[Sequence[models.PastPhase | PastPhaseDict] | None]"
    present_phase: "NotRequired[models.PresentPhase | PresentPhaseDict | None]"
    profile: "models.Profile | ProfileDict"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"


class ForecastRequestDict(TypedDict):
    """A person and a question about what an intake does.

    current_intake_kcal: What is eaten a day at present; maintenance by default. 800 to 8000.
    log: Dated weights and intakes to estimate maintenance from.
    maintenance: A known maintenance; else it is estimated from profile and log.
    profile: See `ProfileDict`.
    question: What to forecast or to solve for.
    screening: Safety questions; without them no deficit and no gain is forecast.
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


class GainDict(TypedDict):
    """A measured surplus: for some weeks (12 by default), or until a settled weight is reached.

    carbohydrate_preference: Lower, balanced or higher carbohydrate. `"balanced"` if absent.
    fat_ceiling_fraction: Body fat at which to stop and consider a cut. 0.08 to 0.4.
    kind: Always `gain`.
    surplus_kcal: Daily surplus; set by training status by default. 50 to 1000.
    target_weight_kg: Weight to reach once carried mass has settled, kilograms. 30 to 300.
    weeks: Length in weeks. 1 to 52.
    """

    carbohydrate_preference: "NotRequired[models.CarbohydratePreference | Literal['balanced', 'higher', 'lower']]"
    fat_ceiling_fraction: "NotRequired[float | None]"
    kind: "Literal['gain']"
    surplus_kcal: "NotRequired[float | None]"
    target_weight_kg: "NotRequired[float | None]"
    weeks: "NotRequired[int | None]"


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


class HoldDict(TypedDict):
    """Weeks at maintenance, as a bridge or a rest; a gain follows as `return_to_gain` says.

    carbohydrate_preference: Lower, balanced or higher carbohydrate. `"balanced"` if absent.
    kind: Always `maintenance`.
    weeks: Length in weeks. 1 to 26.
    """

    carbohydrate_preference: "NotRequired[models.CarbohydratePreference | Literal['balanced', 'higher', 'lower']]"
    kind: "Literal['maintenance']"
    weeks: "int"


class IntakeEntryDict(TypedDict):
    """What was eaten on a day. A missing day is an absent entry, not a zero.

    carbohydrate_g: Carbohydrate eaten, grams. 0 to 2000.
    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    intake_kcal: Energy eaten in a day, kilocalories. One that cannot be meant so is set aside and named. 0 to
        100000.
    is_partial: Whether the day was logged only in part. `false` if absent.
    """

    carbohydrate_g: "NotRequired[float | None]"
    date: "datetime.date | str"
    intake_kcal: "float"
    is_partial: "NotRequired[bool]"


class IntakeQuestionDict(TypedDict):
    """Which constant intake reaches a target by a date?

    by_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    kind: Always `intake_for_target`.
    protein_g_per_kg: Protein, grams per kilogram of body mass. `1.6` if absent. 0.3 to 5.
    target: See `TargetDict`.
    """

    by_date: "datetime.date | str"
    kind: "Literal['intake_for_target']"
    protein_g_per_kg: "NotRequired[float]"
    target: "models.Target | TargetDict"


class IntakeStretchDict(TypedDict):
    """An intake held for some weeks. What is not given stays as usual.

    added_sessions: Training added to the usual; it raises expenditure. `[]` if absent.
    carbohydrate_g: Carbohydrate a day; half of the energy by default. 0 to 1500.
    intake_kcal: Energy a day. 800 to 8000.
    protein_g_per_kg: Protein, grams per kilogram of body mass. `1.6` if absent. 0.3 to 5.
    sodium_change_mg: Sodium a day against the usual. `0.0` if absent. -5000 to 10000.
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

    cycle: First days of menstruation, also the last before the log: the rise of weight around them then does not
        read as a change of tissue. `[]` if absent.
    intakes: Daily intakes. `[]` if absent.
    weights: Weighings.
    """

    cycle: "NotRequired[Sequence[datetime.date | str]]"
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
    """A short, brisk fat-loss phase of 2 to 6 weeks at one fixed intake. Give a goal (one of `fat_loss_kg`,
    `target_fat_fraction`, `target_weight_kg`), a time (`weeks` or `event_date`), or both; the rest is solved.

    carbohydrate_preference: Lower, balanced or higher carbohydrate. `"balanced"` if absent.
    deficit_kcal: Daily deficit at the start; 500 where neither it nor both a goal and a time are given. 100 to
        1500.
    easing_in_weeks: How many of the first weeks run at half the deficit, to limit hunger; none by default. `0` if
        absent. 0 to 2.
    event_date: A day to be ready for: the phase and the maintenance that lets carried mass settle end before it,
        as late as will do. Instead of `weeks`.
    fat_loss_kg: Fat to lose, kilograms. 0.2 to 30.
    kind: Always `mini_cut`.
    protein_g_per_kg: Protein, grams per kilogram; 2.0 by default. 1.2 to 3.5.
    target_fat_fraction: Body fat as a fraction of body mass, 0 to 1. 0.03 to 0.6.
    target_weight_kg: Weight to reach once carried mass has settled, kilograms. 30 to 300.
    weeks: Length in weeks, 2 or more unless some are done. 1 to 6.
    weeks_done: Weeks of this phase already done, to plan its rest from the body as it is now. `0` if absent. 0 to
        6.
    """

    carbohydrate_preference: "NotRequired[models.CarbohydratePreference | Literal['balanced', 'higher', 'lower']]"
    deficit_kcal: "NotRequired[float | None]"
    easing_in_weeks: "NotRequired[int]"
    event_date: "NotRequired[datetime.date | str | None]"
    fat_loss_kg: "NotRequired[float | None]"
    kind: "Literal['mini_cut']"
    protein_g_per_kg: "NotRequired[float | None]"
    target_fat_fraction: "NotRequired[float | None]"
    target_weight_kg: "NotRequired[float | None]"
    weeks: "NotRequired[int | None]"
    weeks_done: "NotRequired[int]"


class OptimumRequestDict(TypedDict):
    """A person, a horizon and limits: which strategy gains most lean tissue inside them?

    caution: Standard deviations of lean gained that are taken off its mean: above 0, a surer season is preferred
        to one that gains more on average. `0.0` if absent. 0 to 2.
    current_intake_kcal: What is eaten a day at present; maintenance by default. 800 to 8000.
    cut_history: Cuts already done.
    horizon_weeks: Length of the season in weeks. 12 to 156.
    limits: Where absent, its own defaults hold.
    log: Dated weights and intakes to estimate maintenance from.
    maintenance: A known maintenance; else it is estimated from profile and log.
    profile: See `ProfileDict`.
    screening: Safety questions; without them no cut is planned.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    strategies_searched: About how many strategies to search. Times `horizon_weeks` it may be 1,000,000 at most.
        `6000` if absent. 500 to 100000.
    """

    caution: "NotRequired[float]"
    current_intake_kcal: "NotRequired[float | None]"
    cut_history: "NotRequired[models.CutHistory | CutHistoryDict | None]"
    horizon_weeks: "int"
    limits: "NotRequired[models.SeasonLimits | SeasonLimitsDict]"
    log: "NotRequired[models.Log | LogDict | None]"
    maintenance: "NotRequired[models.KnownMaintenance | KnownMaintenanceDict | None]"
    profile: "models.Profile | ProfileDict"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"
    start_date: "datetime.date | str"
    strategies_searched: "NotRequired[int]"


class OwnStrategyDict(TypedDict):
    """A strategy in numbers. Rails cap what is too much of any.

    cut_at_fat_fraction: Body fat at which a gain ends and a cut starts, where one may; never by default. 0.03 to
        0.6.
    cut_to_fat_fraction: Body fat at which a cut ends. Without it a gain stops at `cut_at_fat_fraction`, uncut.
        0.03 to 0.6.
    deficit_kcal: Daily deficit at the start of a cut. `500.0` if absent. 100 to 1500.
    kind: Always `own`.
    label: A name for the answer. `"own"` if absent.
    longest_cut_weeks: Longest cut; up to 6 is a mini-cut. `6` if absent. 2 to 26.
    maintenance_weeks: Maintenance after each cut. `1` if absent. 1 to 12.
    surplus_kcal: Daily surplus of a gain; 0 for none. 0 to 1000.
    """

    cut_at_fat_fraction: "NotRequired[float | None]"
    cut_to_fat_fraction: "NotRequired[float | None]"
    deficit_kcal: "NotRequired[float]"
    kind: "Literal['own']"
    label: "NotRequired[str]"
    longest_cut_weeks: "NotRequired[int]"
    maintenance_weeks: "NotRequired[int]"
    surplus_kcal: "float"


class PastPhaseDict(TypedDict):
    """A phase that is over. Weights, or else body fat, at both ends say how fast it was.

    end_fat_fraction: Body fat as a fraction of body mass, 0 to 1. 0.03 to 0.6.
    end_weight_kg: Body mass in kilograms. 30 to 300.
    kind: Kind of the phase.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    start_fat_fraction: Body fat as a fraction of body mass, 0 to 1. 0.03 to 0.6.
    start_weight_kg: Body mass in kilograms. 30 to 300.
    weeks: Length in weeks. 1 to 104.
    """

    end_fat_fraction: "NotRequired[float | None]"
    end_weight_kg: "NotRequired[float | None]"
    kind: "models.PhaseKind | Literal['cut', 'gain', 'maintenance', 'mini_cut']"
    start_date: "datetime.date | str"
    start_fat_fraction: "NotRequired[float | None]"
    start_weight_kg: "NotRequired[float | None]"
    weeks: "int"


class PathQuestionDict(TypedDict):
    """Where does this schedule of intakes lead?

    kind: Always `path`.
    schedule: Stretches in order, 156 weeks in all.
    """

    kind: "Literal['path']"
    schedule: "Sequence[models.IntakeStretch | IntakeStretchDict]"


class PauseDict(TypedDict):
    """Weeks at maintenance before the phase starts or resumes.

    reason: Why. `"other"` if absent.
    weeks: Length of the pause in weeks. 1 to 12.
    """

    reason: "NotRequired[models.PauseReason | Literal['illness', 'injury', 'other', 'travel']]"
    weeks: "int"


class PhaseFollowedDict(TypedDict):
    """The phase that is being followed, or was.

    fat_ceiling_fraction: Body fat that ends a gain. 0.08 to 0.4.
    fat_loss_kg: Fat that the phase is to lose, kilograms; where absent, its length is the target. 0.2 to 40.
    kind: What the phase is for.
    maintenance: What the plan started from, on the scale of its intakes.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    usual_intake_kcal: What was eaten a day before the phase; maintenance by default. 800 to 8000.
    weeks: The planned weeks, in order.
    """

    fat_ceiling_fraction: "NotRequired[float | None]"
    fat_loss_kg: "NotRequired[float | None]"
    kind: "models.PhaseKind | Literal['cut', 'gain', 'maintenance', 'mini_cut']"
    maintenance: "models.KnownMaintenance | KnownMaintenanceDict"
    start_date: "datetime.date | str"
    usual_intake_kcal: "NotRequired[float | None]"
    weeks: "Sequence[models.WeekFollowed | WeekFollowedDict]"


class PlanRequestDict(TypedDict):
    """A person, their screening answers, and the phase to plan.

    current_intake_kcal: What is eaten a day at present; maintenance by default. 800 to 8000.
    cut_history: Cuts already done.
    day_split: Higher- and lower-carbohydrate days with the same weekly total.
    log: Dated weights and intakes to estimate maintenance from.
    maintenance: A known maintenance; else it is estimated from the profile and log.
    pause: Weeks at maintenance first: travel, illness, injury.
    phase: The phase to plan.
    profile: See `ProfileDict`.
    return_to_gain: Where absent, its own defaults hold.
    screening: Safety questions; without them no deficit and no gain is planned.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    uncertainty_sources: Which sources of uncertainty the intervals carry; all by default.
    """

    current_intake_kcal: "NotRequired[float | None]"
    cut_history: "NotRequired[models.CutHistory | CutHistoryDict | None]"
    day_split: "NotRequired[models.DaySplit | DaySplitDict | None]"
    log: "NotRequired[models.Log | LogDict | None]"
    maintenance: "NotRequired[models.KnownMaintenance | KnownMaintenanceDict | None]"
    pause: "NotRequired[models.Pause | PauseDict | None]"
    phase: "models.MiniCut | MiniCutDict | models.Cut | CutDict | models.Gain | GainDict | models.Hold | HoldDict"
    profile: "models.Profile | ProfileDict"
    return_to_gain: "NotRequired[models.ReturnToGain | ReturnToGainDict]"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"
    start_date: "datetime.date | str"
    uncertainty_sources: "NotRequired[Sequence[models.UncertaintySource | Literal['adaptation', 'adherence', 'body_fat', 'carried_mass', 'daily_noise', 'maintenance', 'partition', 'training_response']] | None]"


class PresentPhaseDict(TypedDict):
    """The phase under way.

    kind: Kind of the phase.
    weeks_done: Whole weeks done of it. 0 to 156.
    """

    kind: "models.PhaseKind | Literal['cut', 'gain', 'maintenance', 'mini_cut']"
    weeks_done: "int"


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


class ReadyMadeStrategyDict(TypedDict):
    """A ready-made strategy, sized to the person.

    kind: Always `ready_made`.
    name: `slow_gain_rare_mini_cuts`: half the fastest gain, a mini-cut only at the upper end of the band.
        `fast_gain_long_cut`: the fastest gain, past the band, then one long cut. `fast_gain_repeated_mini_cuts`:
        the fastest gain, brisk mini-cuts as soon as possible. `slow_gain_no_cut`: half the fastest gain and never
        a cut.
    """

    kind: "Literal['ready_made']"
    name: "models.ReadyMade | Literal['fast_gain_long_cut', 'fast_gain_repeated_mini_cuts', 'slow_gain_no_cut', 'slow_gain_rare_mini_cuts']"


class ReturnToGainDict(TypedDict):
    """What follows a fat-loss phase or a hold: maintenance, then a measured surplus.

    fat_ceiling_fraction: Body fat at which to stop the gain and consider a cut; a common value by default. 0.08
        to 0.4.
    gain_weeks: Weeks of gain to forecast. `12` if absent. 0 to 26.
    maintenance_weeks: Weeks at the new maintenance. `1` if absent. 1 to 4.
    surplus_kcal: Daily surplus; set by training status by default. 50 to 1000.
    """

    fat_ceiling_fraction: "NotRequired[float | None]"
    gain_weeks: "NotRequired[int]"
    maintenance_weeks: "NotRequired[int]"
    surplus_kcal: "NotRequired[float | None]"


class ReviewRequestDict(TypedDict):
    """A person as at the phase's start, the plan, and the log so far. A log that begins some weeks before the
    phase tells more: it shows what is usual.

    as_of_date: The day to review on; the last day of the log by default.
    is_finished: Whether the phase ended on that day, before its last. `false` if absent.
    log: See `LogDict`.
    phase: See `PhaseFollowedDict`.
    profile: See `ProfileDict`.
    screening: Safety questions; without them a deficit is not reviewed any further.
    """

    as_of_date: "NotRequired[datetime.date | str | None]"
    is_finished: "NotRequired[bool]"
    log: "models.Log | LogDict"
    phase: "models.PhaseFollowed | PhaseFollowedDict"
    profile: "models.Profile | ProfileDict"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"


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


class SeasonEventDict(TypedDict):
    """A day to arrive at with the last cut ended and carried mass settled.

    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    most_fat_fraction: Body fat wanted at the event, or less; none by default. 0.03 to 0.6.
    """

    date: "datetime.date | str"
    most_fat_fraction: "NotRequired[float | None]"


class SeasonLimitsDict(TypedDict):
    """What the season must keep to.

    band: The chosen band of body fat; a usual one by default.
    blocked_dates: When no cut may run. `[]` if absent.
    events: Days to arrive at settled. `[]` if absent.
    least_weeks_between_cuts: From a cut's end to the next. Under eight is warned of. `8` if absent. 2 to 104.
    most_cuts: Most cuts in the whole season; open by default. 0 to 20.
    most_cuts_a_year: Most cuts in any 52 weeks. More than three are warned of. `3` if absent. 0 to 6.
    most_weeks_above_band: Most weeks that may end above the band. By default a season only counts them, and an
        optimum keeps to at most a quarter more than the fewest possible. 0 to 156.
    most_weeks_dieting: Most weeks in a deficit; any by default. 0 to 156.
    """

    band: "NotRequired[models.BodyFatBand | BodyFatBandDict | None]"
    blocked_dates: "NotRequired[Sequence[models.BlockedDates | BlockedDatesDict]]"
    events: "NotRequired[Sequence[models.SeasonEvent | SeasonEventDict]]"
    least_weeks_between_cuts: "NotRequired[int]"
    most_cuts: "NotRequired[int | None]"
    most_cuts_a_year: "NotRequired[int]"
    most_weeks_above_band: "NotRequired[int | None]"
    most_weeks_dieting: "NotRequired[int | None]"


class SeasonRequestDict(TypedDict):
    """A person, a horizon, limits and a strategy.

    current_intake_kcal: What is eaten a day at present; maintenance by default. 800 to 8000.
    cut_history: Cuts already done.
    horizon_weeks: Length of the season in weeks. 12 to 156.
    limits: Where absent, its own defaults hold.
    log: Dated weights and intakes to estimate maintenance from.
    maintenance: A known maintenance; else it is estimated from profile and log.
    profile: See `ProfileDict`.
    screening: Safety questions; without them no cut is planned.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    strategy: Ready-made, or in numbers.
    """

    current_intake_kcal: "NotRequired[float | None]"
    cut_history: "NotRequired[models.CutHistory | CutHistoryDict | None]"
    horizon_weeks: "int"
    limits: "NotRequired[models.SeasonLimits | SeasonLimitsDict]"
    log: "NotRequired[models.Log | LogDict | None]"
    maintenance: "NotRequired[models.KnownMaintenance | KnownMaintenanceDict | None]"
    profile: "models.Profile | ProfileDict"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"
    start_date: "datetime.date | str"
    strategy: "models.ReadyMadeStrategy | ReadyMadeStrategyDict | models.OwnStrategy | OwnStrategyDict"


class SkinfoldMeasurementDict(TypedDict):
    """Skinfolds by caliper at the sites that the equation needs. `jackson_pollock_3`: chest, abdomen, thigh
    (men), triceps, suprailiac, thigh (women). `jackson_pollock_7`: chest, midaxillary, triceps, subscapular,
    abdomen, suprailiac, thigh. `durnin_womersley_4`: biceps, triceps, subscapular, suprailiac.

    abdomen_mm: Skinfold at this site, millimetres. 1 to 100.
    biceps_mm: Skinfold at this site, millimetres. 1 to 100.
    chest_mm: Skinfold at this site, millimetres. 1 to 100.
    conversion: How body density becomes body fat. `"siri"` if absent.
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

    is_new_programme: Whether training started or clearly increased in the last weeks. `false` if absent.
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

    aim: What weight is meant to do; by default it is read from the log. A stall is told only where it is meant to
        fall.
    as_of_date: The day to read the log at; its last day by default.
    log: See `LogDict`.
    measurements: Body-fat readings, girths or skinfolds during the log. `[]` if absent.
    profile: See `ProfileDict`.
    usual_intake_kcal: What was eaten a day before the log began; maintenance by default. 800 to 8000.
    """

    aim: "NotRequired[models.Aim | Literal['gain', 'hold', 'lose'] | None]"
    as_of_date: "NotRequired[datetime.date | str | None]"
    log: "models.Log | LogDict"
    measurements: (
        "NotRequired[Sequence[models.DatedMeasurement | DatedMeasurementDict]]"
    )
    profile: "models.Profile | ProfileDict"
    usual_intake_kcal: "NotRequired[float | None]"


class WeekFollowedDict(TypedDict):
    """A week as planned; copy it from the plan's answer.

    carbohydrate_g: Carbohydrate a day; half of the energy by default. 0 to 1500.
    intake_kcal: Energy per day, kilocalories. 800 to 8000.
    is_break: Whether the week is a break at maintenance, which is never corrected. `false` if absent.
    protein_g: Protein a day, grams. 20 to 600.
    """

    carbohydrate_g: "NotRequired[float | None]"
    intake_kcal: "float"
    is_break: "NotRequired[bool]"
    protein_g: "float"


class WeightEntryDict(TypedDict):
    """A weighing. Several a day are allowed; `order` tells them apart.

    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    order: Order within the day, for several weighings. `0` if absent. 0 to 50.
    weight_kg: Body mass in kilograms. One that does not go with those around it is set aside and named.
    """

    date: "datetime.date | str"
    order: "NotRequired[int]"
    weight_kg: "float"


class BodyCompositionLine(TypedDict):
    """A line of a batch that asks what ``estimate_body_composition`` asks."""

    reference: str
    operation: Literal["estimate_body_composition"]
    body: "models.BodyCompositionRequest | BodyCompositionRequestDict"


class ForecastLine(TypedDict):
    """A line of a batch that asks what ``forecast_intake`` asks."""

    reference: str
    operation: Literal["forecast_intake"]
    body: "models.ForecastRequest | ForecastRequestDict"


class MaintenanceLine(TypedDict):
    """A line of a batch that asks what ``estimate_maintenance`` asks."""

    reference: str
    operation: Literal["estimate_maintenance"]
    body: "models.MaintenanceRequest | MaintenanceRequestDict"


class PlanLine(TypedDict):
    """A line of a batch that asks what ``plan_phases`` asks."""

    reference: str
    operation: Literal["plan_phases"]
    body: "models.PlanRequest | PlanRequestDict"


class ReviewLine(TypedDict):
    """A line of a batch that asks what ``review_phase`` asks."""

    reference: str
    operation: Literal["review_phase"]
    body: "models.ReviewRequest | ReviewRequestDict"


class TrendLine(TypedDict):
    """A line of a batch that asks what ``read_trend`` asks."""

    reference: str
    operation: Literal["read_trend"]
    body: "models.TrendRequest | TrendRequestDict"


# Any line of a batch.
Line = (
    BodyCompositionLine
    | ForecastLine
    | MaintenanceLine
    | PlanLine
    | ReviewLine
    | TrendLine
)
