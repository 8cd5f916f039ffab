"""Generated from the contract by regenerate.py: do not edit."""

import datetime
from collections.abc import Sequence
from typing import Literal, NotRequired, TypedDict

from . import models

__all__ = [
    "AccountAsReadDict",
    "ActivityByLevelDict",
    "ActivityByWeekDict",
    "AdherenceFigureDict",
    "AttentionDict",
    "BatchLineDict",
    "BlockedDatesDict",
    "BmiMeasurementDict",
    "BodyAsReadDict",
    "BodyCompositionRequestDict",
    "BodyFatDict",
    "BodyFatBandDict",
    "CheckInDict",
    "ChosenBandDict",
    "ClinicalClearanceDict",
    "ComparisonRequestDict",
    "CutDict",
    "CutHistoryDict",
    "DateQuestionDict",
    "DatedEventDict",
    "DatedMeasurementDict",
    "DayKindPassedDict",
    "DayPassedDict",
    "DaySplitDict",
    "DecisionRequestDict",
    "EnergyFigureDict",
    "FlexibleDayAskedDict",
    "ForecastRequestDict",
    "GainDict",
    "GirthMeasurementDict",
    "HoldDict",
    "IntakeEntryDict",
    "IntakeQuestionDict",
    "IntakeStretchDict",
    "IntervalPassedDict",
    "KnownMaintenanceDict",
    "KnownReadingDict",
    "LogDict",
    "MaintenanceRequestDict",
    "MassFigureDict",
    "MiniCutDict",
    "OptimumRequestDict",
    "OwnStrategyDict",
    "PastPhaseDict",
    "PathQuestionDict",
    "PauseDict",
    "PhaseChangeDict",
    "PhaseFollowedDict",
    "PlanRequestDict",
    "PointPassedDict",
    "PresentPhaseDict",
    "ProfileDict",
    "QuestionAskedDict",
    "RatioFigureDict",
    "ReadSoFarDict",
    "ReadingMeasurementDict",
    "ReadyMadeStrategyDict",
    "ReturnToGainDict",
    "ReviewRequestDict",
    "RosterMemberDict",
    "RosterRequestDict",
    "SaidDict",
    "ScreeningDict",
    "SeasonEventDict",
    "SeasonLimitsDict",
    "SeasonRequestDict",
    "SettledQuestionDict",
    "SkinfoldMeasurementDict",
    "StartBodyDict",
    "StateDict",
    "SteeredFigureDict",
    "StepsAsReadDict",
    "StepsEntryDict",
    "TargetDict",
    "TrainingDict",
    "TrainingDayDict",
    "TrainingSessionDict",
    "TrendRequestDict",
    "WeekAskedDict",
    "WeekFollowedDict",
    "WeightEntryDict",
    "BodyCompositionLine",
    "DecisionLine",
    "ForecastLine",
    "MaintenanceLine",
    "PlanLine",
    "ReviewLine",
    "TrendLine",
    "Line",
]


class AccountAsReadDict(TypedDict):
    """One explanation of the log so far, with its odds.

    log_odds: Natural logarithm of its odds, up to a constant. -1000 to 1000.
    mean: Tissue [kg]; tissue made by 1,000 kcal as logged [kg]; tissue spent a day [kg]; error of the energy of a
        kilogram, on the log scale; amplitude of expected carried mass; water that fades [kg]; noise that lingers
        [kg]; water that stays [kg]; where a cycle is told, the rise around menstruation [kg] and that times the
        days by which it comes late [kg d].
    noise: Noise variance of the scale, a fraction of the usual. `1` if absent.
    noise_weighings: How many weighings say so. `3` if absent.
    spread: Their covariance, in the units of `mean`: its lower triangle, row by row.
    water_days_ago: Days since water moved in it. `1000` if absent. 0 to 1000.
    water_side: To which side it moved. `0` if absent. -1 to 1.
    """

    log_odds: "float"
    mean: "Sequence[float]"
    noise: "NotRequired[float]"
    noise_weighings: "NotRequired[float]"
    spread: "Sequence[float]"
    water_days_ago: "NotRequired[float]"
    water_side: "NotRequired[float]"


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


class AdherenceFigureDict(TypedDict):
    """How well deficits are kept to, learned from the log by reviews: the share of a planned deficit that is
    really followed, 1 for all of it.

    mean: The share, as a fraction. 0.2 to 1.5.
    standard_deviation: Its standard deviation. 0.01 to 1.
    weeks: Weeks in a deficit that showed it. 0 to 520.
    """

    mean: "float"
    standard_deviation: "float"
    weeks: "float"


class AttentionDict(TypedDict):
    """How much somebody needs to be looked at, why, what to do, and since when.

    action: See `SaidDict`.
    as_of_date: The day of the review.
    change_kcal: What the review changes of the daily intake. `0` if absent. -15000 to 15000.
    last_entry_date: The day of the last entry of the log.
    level: 0 nothing to do, 1 look at the log, 2 something to agree on, 3 a sign or a guard rail: today. 0 to 3.
    reason: See `SaidDict`.
    since_date: The review from which on it has been for this reason.
    verdict: The review's verdict.
    """

    action: "models.Said | SaidDict"
    as_of_date: "datetime.date | str"
    change_kcal: "NotRequired[float]"
    last_entry_date: "NotRequired[datetime.date | str | None]"
    level: "int"
    reason: "models.Said | SaidDict"
    since_date: "datetime.date | str"
    verdict: "str"


class BatchLineDict(TypedDict):
    """One line in: an operation and its body, under a reference of the caller's choosing.

    body: The body that the operation takes when it is called by itself.
    operation: Id of the operation.
    reference: Comes back with the answer.
    """

    body: "models.BodyCompositionRequest | BodyCompositionRequestDict | models.MaintenanceRequest | MaintenanceRequestDict | models.DecisionRequest | DecisionRequestDict | models.ForecastRequest | ForecastRequestDict | models.PlanRequest | PlanRequestDict | models.TrendRequest | TrendRequestDict | models.ReviewRequest | ReviewRequestDict"
    operation: "models.BatchOperation | Literal['decide_phase', 'estimate_body_composition', 'estimate_maintenance', 'forecast_intake', 'plan_phases', 'read_trend', 'review_phase']"
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


class BodyAsReadDict(TypedDict):
    """The body that the first reading of the log took, kept so that nothing drifts by being handed on.

    adaptation_gain: Lagging adaptation, as a share of a change of intake. -1 to 3.
    carried_per_kcal: Carried mass that a lasting kilocalorie a day moves, kilograms. 0.0001 to 0.01.
    expenditure_slope_kcal_per_kg_day: Expenditure that a kilogram of tissue adds, kilocalories a day. 0 to 500.
    growth_kg_per_day: Mass that training adds at balance. -0.05 to 0.05.
    growth_sd: Its standard deviation. -0.05 to 0.05.
    is_usual_known: Whether that was told.
    prior_kcal: Maintenance by the equations, kcal/d.
    prior_sd_kcal: Its standard deviation.
    rho_kcal_per_kg: Energy of a kilogram of tissue. 2000 to 14000.
    rho_sd: Its standard deviation. 0 to 6000.
    settled_kg: Weight when the log began; as tissue stands by default. 20 to 500.
    usual_kcal: Eaten a day before the log, logging scale. 300 to 25000.
    """

    adaptation_gain: "float"
    carried_per_kcal: "float"
    expenditure_slope_kcal_per_kg_day: "float"
    growth_kg_per_day: "float"
    growth_sd: "float"
    is_usual_known: "bool"
    prior_kcal: "float"
    prior_sd_kcal: "float"
    rho_kcal_per_kg: "float"
    rho_sd: "float"
    settled_kg: "NotRequired[float | None]"
    usual_kcal: "float"


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


class CheckInDict(TypedDict):
    """How somebody is, in five short answers; those left out say nothing.

    cycle: `regular`, `late` by more than a week, `missed`, or `none` to speak of (contraception, menopause, does
        not menstruate).
    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    hunger: 1 none to 5 all day long. 1 to 5.
    mood: 1 bad to 5 good. 1 to 5.
    sleep: 1 bad to 5 good. 1 to 5.
    strength: Main lifts against four weeks ago: `up`, `steady`, `down` (about 5 %), `down_much` (10 % or more).
    """

    cycle: "NotRequired[models.CycleSaid | Literal['late', 'missed', 'none', 'regular'] | None]"
    date: "datetime.date | str"
    hunger: "NotRequired[int | None]"
    mood: "NotRequired[int | None]"
    sleep: "NotRequired[int | None]"
    strength: "NotRequired[models.StrengthSaid | Literal['down', 'down_much', 'steady', 'up'] | None]"


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
    maintenance: A known maintenance; else it is estimated from the profile and log.
    profile: See `ProfileDict`.
    screening: Safety questions; without them no cut is planned.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    state: What an earlier answer knew, as it gave it. It takes the place of the profile's weight and body fat, of
        the log up to its date, and of the phase; `log` then holds what came since.
    strategies: The strategies to compare, each under a name or label of its own.
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
    state: "NotRequired[models.State | StateDict | None]"
    strategies: "Sequence[models.ReadyMadeStrategy | ReadyMadeStrategyDict | models.OwnStrategy | OwnStrategyDict]"


class CutDict(TypedDict):
    """A longer fat-loss phase of 7 to 26 weeks, its intake set anew every few weeks, with breaks where wanted.

    break_every_weeks: A break at maintenance after this many weeks. 2 to 16.
    break_weeks: Length of a break. `1` if absent. 1 to 2.
    carbohydrate_preference: Lower, balanced or higher carbohydrate. `"balanced"` if absent.
    deficit_kcal: Daily deficit at the start; chosen by body, history and `pace` where neither it nor both a goal
        and a time are given. 100 to 1500.
    easing_in_weeks: How many of the first weeks run at half the deficit, to limit hunger; none by default. `0` if
        absent. 0 to 2.
    event_date: A day to be ready for: the phase and the maintenance that lets carried mass settle end before it,
        as late as will do. Instead of `weeks`.
    fat_loss_kg: Fat to lose, kilograms. 0.2 to 30.
    kind: Always `cut`.
    pace: How fast to go where the size is left open: `gentle`, `steady` or `brisk`. `"steady"` if absent.
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
    pace: "NotRequired[models.Pace | Literal['brisk', 'gentle', 'steady']]"
    protein_g_per_kg: "NotRequired[float | None]"
    target_fat_fraction: "NotRequired[float | None]"
    target_weight_kg: "NotRequired[float | None]"
    weeks: "NotRequired[int | None]"
    weeks_done: "NotRequired[int]"


class CutHistoryDict(TypedDict):
    """Cuts already done. Unknown history keeps a plan to the default deficit, and a forecast says so.

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


class DatedEventDict(TypedDict):
    """Something that moves weight without moving tissue, or makes a verdict worthless for a while.

    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    kind: `creatine_start`, `creatine_stop`, `illness`, `travel`, `injury`, `new_programme` (training),
        `salty_days`, `festive_days`, `medicine` that moves water or appetite, `alcohol`.
    until_date: Its last day; that day where absent.
    """

    date: "datetime.date | str"
    kind: "models.EventKind | Literal['alcohol', 'creatine_start', 'creatine_stop', 'festive_days', 'illness', 'injury', 'medicine', 'new_programme', 'salty_days', 'travel']"
    until_date: "NotRequired[datetime.date | str | None]"


class DatedMeasurementDict(TypedDict):
    """A measurement of body fat on a day: girths, skinfolds, or a reading and its method, which sets the error.

    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    measurement:
    """

    date: "datetime.date | str"
    measurement: "models.GirthMeasurement | GirthMeasurementDict | models.SkinfoldMeasurement | SkinfoldMeasurementDict | models.ReadingMeasurement | ReadingMeasurementDict"


class DayKindPassedDict(TypedDict):
    """A kind of day of an answer, as it comes back.

    carbohydrate_g: As in a plan's week. 0 to 4000.
    days_per_week: As in a plan's week. 0 to 7.
    fat_g: As in a plan's week. 0 to 2000.
    intake_kcal: As in a plan's week. 0 to 15000.
    kind: As in a plan's week.
    protein_g: As in a plan's week. 0 to 1000.
    """

    carbohydrate_g: "float"
    days_per_week: "int"
    fat_g: "float"
    intake_kcal: "float"
    kind: "str"
    protein_g: "float"


class DayPassedDict(TypedDict):
    """A day of an answer, as it comes back.

    alcohol_g: As in a plan's week. 0 to 15000.
    carbohydrate_g: As in a plan's week. 0 to 15000.
    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    fat_g: As in a plan's week. 0 to 15000.
    flexible: As in a plan's week.
    intake_kcal: As in a plan's week. 0 to 15000.
    meals_protein_g: As in a plan's week. `[]` if absent.
    protein_g: As in a plan's week. 0 to 15000.
    training_kcal: As in a plan's week. 0 to 15000.
    training_minutes: As in a plan's week. 0 to 15000.
    weekday: As in a plan's week.
    """

    alcohol_g: "float"
    carbohydrate_g: "float"
    date: "datetime.date | str"
    fat_g: "float"
    flexible: "NotRequired[str | None]"
    intake_kcal: "float"
    meals_protein_g: "NotRequired[Sequence[float]]"
    protein_g: "float"
    training_kcal: "float"
    training_minutes: "float"
    weekday: "str"


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
    band: The chosen band; by default 10-17 % for men, else 18-27 %, as is common practice.
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
    state: What an earlier answer knew, as it gave it. It takes the place of the profile's weight and body fat, of
        the log up to its date, and of the phase; `log` then holds what came since.
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
    state: "NotRequired[models.State | StateDict | None]"


class EnergyFigureDict(TypedDict):
    """An energy a day with its error.

    mean: Kilocalories a day. -5000 to 30000.
    standard_deviation: Its standard deviation. 0 to 15000.
    """

    mean: "float"
    standard_deviation: "float"


class FlexibleDayAskedDict(TypedDict):
    """A day with more: a weekday of every week, or one date. The other days of its week pay for it.

    alcohol_g: Pure alcohol on top, grams, at 7.1 kcal a gram. Half a litre of beer has about 20. `0` if absent. 0
        to 150.
    date: One day; or set `weekday`.
    extra_kcal: Food beyond a usual day, kilocalories. `0` if absent. 0 to 3000.
    kind: Why it has more. `"other"` if absent.
    weekday: Day of every week; or set `date`.
    """

    alcohol_g: "NotRequired[float]"
    date: "NotRequired[datetime.date | str | None]"
    extra_kcal: "NotRequired[float]"
    kind: "NotRequired[models.FlexibleKind | Literal['eating_out', 'higher_day', 'other', 'party']]"
    weekday: "NotRequired[models.Weekday | Literal['friday', 'monday', 'saturday', 'sunday', 'thursday', 'tuesday', 'wednesday'] | None]"


class ForecastRequestDict(TypedDict):
    """A person and a question about what an intake does.

    current_intake_kcal: What is eaten a day at present; maintenance by default. 800 to 8000.
    cut_history: Cuts already done, for the rails that count them; else as the state knows them.
    log: Dated weights and intakes to estimate maintenance from.
    maintenance: A known maintenance; else it is estimated from the profile and log.
    profile: See `ProfileDict`.
    question: What to forecast or to solve for.
    screening: Safety questions; without them no deficit and no gain is forecast.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    state: What an earlier answer knew, as it gave it. It takes the place of the profile's weight and body fat, of
        the log up to its date, and of the phase; `log` then holds what came since.
    uncertainty_sources: Which sources of uncertainty the intervals carry; all by default.
    """

    current_intake_kcal: "NotRequired[float | None]"
    cut_history: "NotRequired[models.CutHistory | CutHistoryDict | None]"
    log: "NotRequired[models.Log | LogDict | None]"
    maintenance: "NotRequired[models.KnownMaintenance | KnownMaintenanceDict | None]"
    profile: "models.Profile | ProfileDict"
    question: "models.PathQuestion | PathQuestionDict | models.IntakeQuestion | IntakeQuestionDict | models.DateQuestion | DateQuestionDict"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"
    start_date: "datetime.date | str"
    state: "NotRequired[models.State | StateDict | None]"
    uncertainty_sources: "NotRequired[Sequence[models.UncertaintySource | Literal['adaptation', 'adherence', 'body_fat', 'carried_mass', 'daily_noise', 'maintenance', 'partition', 'training_response']] | None]"


class GainDict(TypedDict):
    """A measured surplus: for some weeks (12 by default), or until a settled weight is reached.

    carbohydrate_preference: Lower, balanced or higher carbohydrate. `"balanced"` if absent.
    fat_ceiling_fraction: Body fat at which to stop and consider a cut: the weeks left are a hold. A common value
        by default. 0.08 to 0.6.
    kind: Always `gain`.
    pace: How fast to go where the size is left open: `gentle`, `steady` or `brisk`. `"steady"` if absent.
    surplus_kcal: Daily surplus; set by training status, lean mass and `pace` by default. 50 to 1000.
    target_weight_kg: Weight to reach once carried mass has settled, kilograms. 30 to 300.
    weeks: Length in weeks. 1 to 52.
    """

    carbohydrate_preference: "NotRequired[models.CarbohydratePreference | Literal['balanced', 'higher', 'lower']]"
    fat_ceiling_fraction: "NotRequired[float | None]"
    kind: "Literal['gain']"
    pace: "NotRequired[models.Pace | Literal['brisk', 'gentle', 'steady']]"
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
    intake_kcal: Energy eaten in a day, kilocalories. One that cannot be meant so is set aside and named. 0 counts
        as a day that was not logged, and is named; of a whole day's fast send 1. 0 to 100000.
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


class IntervalPassedDict(TypedDict):
    """An interval of an answer, as it comes back.

    coverage: Probability it is meant to hold. `0.8` if absent. 0 to 1.
    lower: As in the interval of an answer. -100000 to 100000.
    mean: As in the interval of an answer. -100000 to 100000.
    upper: As in the interval of an answer. -100000 to 100000.
    """

    coverage: "NotRequired[float]"
    lower: "float"
    mean: "float"
    upper: "float"


class KnownMaintenanceDict(TypedDict):
    """A maintenance estimate to plan from, such as an earlier answer of `/v1/maintenance`.

    kcal_per_day: Energy per day, kilocalories. 800 to 8000.
    standard_deviation_kcal: Its standard deviation, kilocalories a day. 20 to 600.
    """

    kcal_per_day: "float"
    standard_deviation_kcal: "float"


class KnownReadingDict(TypedDict):
    """A reading of body fat with its error.

    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    fat_fraction: Body fat as a fraction of body mass, 0 to 1. 0.03 to 0.6.
    method: How it was taken.
    standard_deviation: Its error, 1 SD, as a fraction of body mass. 0 to 0.3.
    """

    date: "datetime.date | str"
    fat_fraction: "float"
    method: "models.BodyFatMethod | Literal['air_displacement', 'bioimpedance', 'bmi_equation', 'dxa', 'four_compartment', 'girths', 'hydrostatic', 'skinfolds', 'visual']"
    standard_deviation: "float"


class LogDict(TypedDict):
    """Weights, intakes and steps in any order; gaps are fine.

    check_ins: How the person is: what may end, shorten or raise a deficit. `[]` if absent.
    cycle: First days of menstruation, also the last before the log: the rise of weight around them then does not
        read as a change of tissue. One over a week after all else that was logged is kept for a later day where
        no `as_of_date` is asked for. `[]` if absent.
    events: What explains weight without tissue: creatine, illness, travel, salt. `[]` if absent.
    intakes: Daily intakes. `[]` if absent.
    measurements: Body-fat readings, girths or skinfolds, dated. `[]` if absent.
    steps: Steps a day, one entry each, always by the same counter; also those of the weeks before the log. What
        they change of expenditure is then known, not guessed. `[]` if absent.
    weights: Weighings.
    """

    check_ins: "NotRequired[Sequence[models.CheckIn | CheckInDict]]"
    cycle: "NotRequired[Sequence[datetime.date | str]]"
    events: "NotRequired[Sequence[models.DatedEvent | DatedEventDict]]"
    intakes: "NotRequired[Sequence[models.IntakeEntry | IntakeEntryDict]]"
    measurements: (
        "NotRequired[Sequence[models.DatedMeasurement | DatedMeasurementDict]]"
    )
    steps: "NotRequired[Sequence[models.StepsEntry | StepsEntryDict]]"
    weights: "Sequence[models.WeightEntry | WeightEntryDict]"


class MaintenanceRequestDict(TypedDict):
    """Whose maintenance to estimate, as on the day that the estimate is for, and the log to learn from, where
    there is one.

    as_of_date: The day the estimate is for; the last day of the log by default.
    log: Dated weights and intakes.
    profile: See `ProfileDict`.
    screening: Safety questions: who is pregnant or has an eating disorder is told nothing of leanness.
    state: What an earlier answer knew, as it gave it. It takes the place of the profile's weight and body fat, of
        the log up to its date, and of the phase; `log` then holds what came since.
    """

    as_of_date: "NotRequired[datetime.date | str | None]"
    log: "NotRequired[models.Log | LogDict | None]"
    profile: "models.Profile | ProfileDict"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"
    state: "NotRequired[models.State | StateDict | None]"


class MassFigureDict(TypedDict):
    """A mass with its error.

    mean: Mass, kg. -30 to 350.
    standard_deviation: Its standard deviation. 0 to 100.
    """

    mean: "float"
    standard_deviation: "float"


class MiniCutDict(TypedDict):
    """A short, brisk fat-loss phase of 2 to 6 weeks at one fixed intake. Give a goal (one of `fat_loss_kg`,
    `target_fat_fraction`, `target_weight_kg`), a time (`weeks` or `event_date`), or both; the rest is solved.

    carbohydrate_preference: Lower, balanced or higher carbohydrate. `"balanced"` if absent.
    deficit_kcal: Daily deficit at the start; chosen by body, history and `pace` where neither it nor both a goal
        and a time are given. 100 to 1500.
    easing_in_weeks: How many of the first weeks run at half the deficit, to limit hunger; none by default. `0` if
        absent. 0 to 2.
    event_date: A day to be ready for: the phase and the maintenance that lets carried mass settle end before it,
        as late as will do. Instead of `weeks`.
    fat_loss_kg: Fat to lose, kilograms. 0.2 to 30.
    kind: Always `mini_cut`.
    pace: How fast to go where the size is left open: `gentle`, `steady` or `brisk`. `"steady"` if absent.
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
    pace: "NotRequired[models.Pace | Literal['brisk', 'gentle', 'steady']]"
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
    maintenance: A known maintenance; else it is estimated from the profile and log.
    profile: See `ProfileDict`.
    screening: Safety questions; without them no cut is planned.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    state: What an earlier answer knew, as it gave it. It takes the place of the profile's weight and body fat, of
        the log up to its date, and of the phase; `log` then holds what came since.
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
    state: "NotRequired[models.State | StateDict | None]"
    strategies_searched: "NotRequired[int]"


class OwnStrategyDict(TypedDict):
    """A strategy in numbers. Rails cap what is too much of any.

    cut_at_fat_fraction: Body fat at which a gain ends and a cut starts, where one may. By default there is no
        cut, and a gain ends at the upper end of the band. 0.03 to 0.6.
    cut_to_fat_fraction: Body fat at which a cut ends. Without it a gain stops at `cut_at_fat_fraction`, uncut.
        0.03 to 0.6.
    deficit_kcal: Daily deficit at the start of a cut; as plans size it by default. 100 to 1500.
    kind: Always `own`.
    label: A name for the answer. `"own"` if absent.
    longest_cut_weeks: Longest cut; up to 6 is a mini-cut. `6` if absent. 2 to 26.
    maintenance_weeks: Maintenance after each cut. `1` if absent. 1 to 12.
    surplus_kcal: Daily surplus of a gain; 0 for none. 0 to 1000.
    """

    cut_at_fat_fraction: "NotRequired[float | None]"
    cut_to_fat_fraction: "NotRequired[float | None]"
    deficit_kcal: "NotRequired[float | None]"
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


class PhaseChangeDict(TypedDict):
    """A dated change of a phase: of its intake, a pause at maintenance, or another end.

    change_kcal: Change of the daily intake; changes add up. `0` if absent. -15000 to 15000.
    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    kind: `intake`: from `date` on, `change_kcal` more is eaten than planned until then. `pause`: at maintenance
        from `date` to `until_date`; the rest moves back by whole weeks, 52 at most in all. `end`: `date` is the
        last day.
    reason: Why, in a word.
    until_date: Last day of a pause.
    """

    change_kcal: "NotRequired[float]"
    date: "datetime.date | str"
    kind: "models.ChangeKind | Literal['end', 'intake', 'pause']"
    reason: "NotRequired[str | None]"
    until_date: "NotRequired[datetime.date | str | None]"


class PhaseFollowedDict(TypedDict):
    """The phase that is being followed, or was.

    adherence: How well deficits are kept to, as the plan knew it; absent where it did not.
    changes: What was changed since, in order of the dates. `[]` if absent.
    fat_ceiling_fraction: Body fat that ends a gain. 0.08 to 0.6.
    fat_loss_kg: Fat that the phase is to lose, kilograms; where absent, its length is the target. 0.2 to 40.
    kind: What the phase is for.
    logging_ratio: Logged over eaten energy as the plan knew it, where it did.
    maintenance: What the plan started from, on the scale of its intakes.
    start_body: The body on its first morning; the profile's where absent.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    usual_intake_kcal: What was eaten a day before the phase; maintenance by default. 800 to 8000.
    weeks: The weeks as first planned, in order: those of the plan, whatever was corrected since.
    weeks_before: Weeks of a deficit just before that count as of this one, the weeks between included; absent
        where there are none. 0 to 156.
    """

    adherence: "NotRequired[models.AdherenceFigure | AdherenceFigureDict]"
    changes: "NotRequired[Sequence[models.PhaseChange | PhaseChangeDict]]"
    fat_ceiling_fraction: "NotRequired[float | None]"
    fat_loss_kg: "NotRequired[float | None]"
    kind: "models.PhaseKind | Literal['cut', 'gain', 'maintenance', 'mini_cut']"
    logging_ratio: "NotRequired[models.RatioFigure | RatioFigureDict | None]"
    maintenance: "models.KnownMaintenance | KnownMaintenanceDict"
    start_body: "NotRequired[models.StartBody | StartBodyDict | None]"
    start_date: "datetime.date | str"
    usual_intake_kcal: "NotRequired[float | None]"
    weeks: "Sequence[models.WeekFollowed | WeekFollowedDict]"
    weeks_before: "NotRequired[float]"


class PlanRequestDict(TypedDict):
    """A person, their screening answers, and the phase to plan.

    current_intake_kcal: What is eaten a day at present; maintenance by default. 800 to 8000.
    cut_history: Cuts already done.
    day_split: Higher- and lower-carbohydrate days with the same weekly total.
    include: What to work out beside the plan, for somebody who may still choose: `sizes`, the phase at other
        sizes with the price of each; `levers`, what more steps or cycling would do for a fat loss. The two
        together take about as long to compute as the plan itself; none by default. `[]` if absent.
    log: Dated weights and intakes to estimate maintenance from.
    maintenance: A known maintenance; else it is estimated from the profile and log.
    pause: Weeks at maintenance first: travel, illness, injury.
    phase: The phase to plan.
    profile: See `ProfileDict`.
    return_to_gain: Where absent, its own defaults hold.
    screening: Safety questions; without them no deficit and no gain is planned.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    state: What an earlier answer knew, as it gave it. It takes the place of the profile's weight and body fat, of
        the log up to its date, and of the phase; `log` then holds what came since.
    uncertainty_sources: Which sources of uncertainty the intervals carry; all by default.
    week: How the week is lived, for what to eat on each day. Instead of `day_split`.
    """

    current_intake_kcal: "NotRequired[float | None]"
    cut_history: "NotRequired[models.CutHistory | CutHistoryDict | None]"
    day_split: "NotRequired[models.DaySplit | DaySplitDict | None]"
    include: "NotRequired[Sequence[models.PlanChoice | Literal['levers', 'sizes']]]"
    log: "NotRequired[models.Log | LogDict | None]"
    maintenance: "NotRequired[models.KnownMaintenance | KnownMaintenanceDict | None]"
    pause: "NotRequired[models.Pause | PauseDict | None]"
    phase: "models.MiniCut | MiniCutDict | models.Cut | CutDict | models.Gain | GainDict | models.Hold | HoldDict"
    profile: "models.Profile | ProfileDict"
    return_to_gain: "NotRequired[models.ReturnToGain | ReturnToGainDict]"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"
    start_date: "datetime.date | str"
    state: "NotRequired[models.State | StateDict | None]"
    uncertainty_sources: "NotRequired[Sequence[models.UncertaintySource | Literal['adaptation', 'adherence', 'body_fat', 'carried_mass', 'daily_noise', 'maintenance', 'partition', 'training_response']] | None]"
    week: "NotRequired[models.WeekAsked | WeekAskedDict | None]"


class PointPassedDict(TypedDict):
    """A forecast point of an answer, as it comes back.

    carried_kg: See `IntervalPassedDict`.
    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    fat_fraction: See `IntervalPassedDict`.
    fat_kg: See `IntervalPassedDict`.
    lean_kg: See `IntervalPassedDict`.
    maintenance_kcal: See `IntervalPassedDict`.
    weight_kg: See `IntervalPassedDict`.
    """

    carried_kg: "models.IntervalPassed | IntervalPassedDict"
    date: "datetime.date | str"
    fat_fraction: "models.IntervalPassed | IntervalPassedDict"
    fat_kg: "models.IntervalPassed | IntervalPassedDict"
    lean_kg: "models.IntervalPassed | IntervalPassedDict"
    maintenance_kcal: "models.IntervalPassed | IntervalPassedDict"
    weight_kg: "models.IntervalPassed | IntervalPassedDict"


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


class QuestionAskedDict(TypedDict):
    """The question that reviews last asked in the phase under way; one that is open is not asked anew every week.

    asked_count: How often it was asked by then. `1` if absent. 1 to 1000.
    date: The day on which it was asked.
    test: What settles it.
    """

    asked_count: "NotRequired[int]"
    date: "datetime.date | str"
    test: "models.SettlingTest | Literal['clinician', 'cycle', 'oil_and_alcohol', 'water', 'weigh_food']"


class RatioFigureDict(TypedDict):
    """A ratio with its error.

    mean: The ratio, as a fraction. 0.2 to 1.5.
    standard_deviation: Its standard deviation. 0 to 1.
    """

    mean: "float"
    standard_deviation: "float"


class ReadSoFarDict(TypedDict):
    """What was read of the log before its first entry here. Hand it on as it is; nothing in it is meant to be
    edited. Without `accounts` nothing was read before, and only the body counts.

    accounts: The explanations held. `[]` if absent.
    body: See `BodyAsReadDict`.
    carbohydrate_kcal: Energy of carbohydrate on the same days, where it was logged. `[]` if absent.
    date: The day up to which weights are counted.
    days: Days read before. `0` if absent. 0 to 40000.
    days_logged: Of them, days with an intake. `0` if absent. 0 to 40000.
    intakes: Intakes of the days before that day, oldest first; null where none. `[]` if absent.
    noise_variance: Noise variance of a weighing, kg squared. `0` if absent. 0 to 100.
    steps: Steps counted by then; null where none were.
    """

    accounts: "NotRequired[Sequence[models.AccountAsRead | AccountAsReadDict]]"
    body: "models.BodyAsRead | BodyAsReadDict"
    carbohydrate_kcal: "NotRequired[Sequence[float | None]]"
    date: "NotRequired[datetime.date | str | None]"
    days: "NotRequired[int]"
    days_logged: "NotRequired[int]"
    intakes: "NotRequired[Sequence[float | None]]"
    noise_variance: "NotRequired[float]"
    steps: "NotRequired[models.StepsAsRead | StepsAsReadDict | None]"


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
        the fastest gain, brisk mini-cuts as soon as possible. `slow_gain_no_cut`: half the fastest gain up to the
        band's upper end, and never a cut.
    """

    kind: "Literal['ready_made']"
    name: "models.ReadyMade | Literal['fast_gain_long_cut', 'fast_gain_repeated_mini_cuts', 'slow_gain_no_cut', 'slow_gain_rare_mini_cuts']"


class ReturnToGainDict(TypedDict):
    """What follows a fat-loss phase or a hold: maintenance, then a measured surplus.

    fat_ceiling_fraction: Body fat at which to stop the gain and consider a cut: the weeks left are a hold. A
        common value by default. 0.08 to 0.6.
    gain_weeks: Weeks of gain to forecast. `12` if absent. 0 to 26.
    maintenance_weeks: Weeks at the new maintenance. `1` if absent. 1 to 4.
    surplus_kcal: Daily surplus; set by training status and lean mass by default. 50 to 1000.
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
    log: Weights and intakes; with a state those since, and none where there are none.
    phase: The phase to review; that of the state by default.
    profile: See `ProfileDict`.
    screening: Safety questions; without them a deficit is not reviewed any further.
    settled: What came out of the `question` of an earlier review.
    state: What an earlier answer knew, as it gave it. It takes the place of the profile's weight and body fat, of
        the log up to its date, and of the phase; `log` then holds what came since.
    """

    as_of_date: "NotRequired[datetime.date | str | None]"
    is_finished: "NotRequired[bool]"
    log: "NotRequired[models.Log | LogDict | None]"
    phase: "NotRequired[models.PhaseFollowed | PhaseFollowedDict | None]"
    profile: "models.Profile | ProfileDict"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"
    settled: "NotRequired[models.SettledQuestion | SettledQuestionDict | None]"
    state: "NotRequired[models.State | StateDict | None]"


class RosterMemberDict(TypedDict):
    """Somebody on a roster: the `attention` of their last review, and of the one a week before.

    attention: See `AttentionDict`.
    before: That of last week, where there is one.
    reference: Comes back with the answer.
    """

    attention: "models.Attention | AttentionDict"
    before: "NotRequired[models.Attention | AttentionDict | None]"
    reference: "str"


class RosterRequestDict(TypedDict):
    """Up to 500 members; of more, make several rosters and merge them by `priority`.

    as_of_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    members: Whom to put in order.
    """

    as_of_date: "datetime.date | str"
    members: "Sequence[models.RosterMember | RosterMemberDict]"


class SaidDict(TypedDict):
    """A message: a stable code and its text.

    code: Stable code, as in `/v1/messages`.
    text: The message in English.
    """

    code: "str"
    text: "str"


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
    maintenance: A known maintenance; else it is estimated from the profile and log.
    profile: See `ProfileDict`.
    screening: Safety questions; without them no cut is planned.
    start_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    state: What an earlier answer knew, as it gave it. It takes the place of the profile's weight and body fat, of
        the log up to its date, and of the phase; `log` then holds what came since.
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
    state: "NotRequired[models.State | StateDict | None]"
    strategy: "models.ReadyMadeStrategy | ReadyMadeStrategyDict | models.OwnStrategy | OwnStrategyDict"


class SettledQuestionDict(TypedDict):
    """The answer to the question that an earlier review of this phase asked.

    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    found: `more_than_logged`: food was missing in the log, and is in it from that day on; `as_logged`: everything
        was weighed, and the log was complete; `water`: something moves water; `not_water`: nothing does;
        `not_done`: nobody looked into it.
    """

    date: "datetime.date | str"
    found: "models.Finding | Literal['as_logged', 'more_than_logged', 'not_done', 'not_water', 'water']"


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


class StartBodyDict(TypedDict):
    """The body on the phase's first morning.

    fat_is_measured: Whether a reading is behind it, rather than height and weight.
    fat_kg: See `MassFigureDict`.
    fat_method: The method that counts most.
    weight_kg: See `MassFigureDict`.
    """

    fat_is_measured: "bool"
    fat_kg: "models.MassFigure | MassFigureDict"
    fat_method: "models.BodyFatMethod | Literal['air_displacement', 'bioimpedance', 'bmi_equation', 'dxa', 'four_compartment', 'girths', 'hydrostatic', 'skinfolds', 'visual']"
    weight_kg: "models.MassFigure | MassFigureDict"


class StateDict(TypedDict):
    """What is known of a person on a day, each figure with its error. Send it with the next request, as it is,
    beside the same `profile`: it takes the place of the profile's weight and body fat, of the log so far and of
    the phase, so that only what was logged since need be sent. Nothing of it is kept by the service.

    adaptation_kcal: Adaptation present: what is spent less (negative) after eating less.
    adherence: How well deficits are kept to, as reviews of them have shown; absent where none has. Plans,
        forecasts, decisions and seasons expect of a deficit what it says.
    as_of_date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    attention: That of the last review.
    carried_kg: Glycogen, water and gut content against the usual.
    fat_is_measured: Whether a reading is behind it, rather than height and weight.
    fat_kg: Fat mass.
    fat_method: The method that counts most.
    height_cm: Height in centimetres. 120 to 230.
    lean_kg: Lean tissue, usual glycogen and water included.
    log: The last weeks of the log, as sent.
    logging_ratio: Logged over eaten energy.
    maintenance_basis: What maintenance rests on: `equations`, `told` by the caller, or a `log`.
    maintenance_kcal: Maintenance on the logging scale.
    phase: The phase under way and what changed of it.
    phase_history: Past phases, oldest first; null: not known.
    physical_maintenance_kcal: Maintenance in energy really eaten.
    question: The question last asked in the phase under way; absent where none was.
    reading: What was read of the log before those weeks.
    readings: Readings of body fat so far, oldest first. `[]` if absent.
    sex: See `SexDict`.
    steered: What weight taught of maintenance in phases with hardly any food logged, as reviews of them read it;
        absent where none did. Plans start from it, until food is logged.
    training: See `TrainingDict`.
    usual_intake_kcal: Eaten a day at present, logging scale; null where not known. 800 to 8000.
    version: Version of the state. `1` if absent. 1 to 1.
    weight_kg: Weight, noise left out.
    """

    adaptation_kcal: "models.EnergyFigure | EnergyFigureDict"
    adherence: "NotRequired[models.AdherenceFigure | AdherenceFigureDict]"
    as_of_date: "datetime.date | str"
    attention: "NotRequired[models.Attention | AttentionDict | None]"
    carried_kg: "models.MassFigure | MassFigureDict"
    fat_is_measured: "bool"
    fat_kg: "models.MassFigure | MassFigureDict"
    fat_method: "models.BodyFatMethod | Literal['air_displacement', 'bioimpedance', 'bmi_equation', 'dxa', 'four_compartment', 'girths', 'hydrostatic', 'skinfolds', 'visual']"
    height_cm: "float"
    lean_kg: "models.MassFigure | MassFigureDict"
    log: "NotRequired[models.Log | LogDict | None]"
    logging_ratio: "models.RatioFigure | RatioFigureDict"
    maintenance_basis: "models.MaintenanceBasis | Literal['equations', 'log', 'told']"
    maintenance_kcal: "models.EnergyFigure | EnergyFigureDict"
    phase: "NotRequired[models.PhaseFollowed | PhaseFollowedDict | None]"
    phase_history: "NotRequired[Sequence[models.PastPhase | PastPhaseDict] | None]"
    physical_maintenance_kcal: "models.EnergyFigure | EnergyFigureDict"
    question: "NotRequired[models.QuestionAsked | QuestionAskedDict]"
    reading: "NotRequired[models.ReadSoFar | ReadSoFarDict | None]"
    readings: "NotRequired[Sequence[models.KnownReading | KnownReadingDict]]"
    sex: "models.Sex | Literal['female', 'male', 'unspecified']"
    steered: "NotRequired[models.SteeredFigure | SteeredFigureDict]"
    training: "models.Training | TrainingDict"
    usual_intake_kcal: "NotRequired[float | None]"
    version: "NotRequired[int]"
    weight_kg: "models.MassFigure | MassFigureDict"


class SteeredFigureDict(TypedDict):
    """What weight taught of the maintenance of somebody who hardly logs food, as told, in the reviews by a day.

    date: The day of the review that showed it.
    mean_kcal: Kilocalories a day, as told.
    standard_deviation_kcal: Its standard deviation.
    """

    date: "datetime.date | str"
    mean_kcal: "float"
    standard_deviation_kcal: "float"


class StepsAsReadDict(TypedDict):
    """What was counted of steps so far.

    days: Days counted. 0 to 40000.
    first: Steps a day when their mean was first known. 0 to 60000.
    kcal_per_step: Energy of a step above rest, kilocalories. 0 to 0.08.
    mean: Running mean over a week. 0 to 60000.
    settled: Running mean over four weeks. 0 to 60000.
    """

    days: "int"
    first: "float"
    kcal_per_step: "float"
    mean: "float"
    settled: "float"


class StepsEntryDict(TypedDict):
    """Steps counted on a day, by phone or watch. A missing day is an absent entry, not a zero.

    date: A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    steps: Steps of the whole day. A number that nobody walks, or that says that the counter was not carried, is
        set aside and named. 0 to 100000.
    """

    date: "datetime.date | str"
    steps: "int"


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


class TrainingDayDict(TypedDict):
    """A bout of training on a weekday. It moves food to its day; it adds nothing to the maintenance, which counts
    the usual training already.

    kind: What is trained. `"resistance"` if absent.
    met: Intensity in METs; usual for its kind by default. 1 to 20.
    minutes: Its length. `60` if absent. 5 to 600.
    weekday: Day of the week.
    """

    kind: "NotRequired[models.TrainingKind | Literal['cycling', 'other', 'resistance', 'running', 'walking']]"
    met: "NotRequired[float | None]"
    minutes: "NotRequired[float]"
    weekday: "models.Weekday | Literal['friday', 'monday', 'saturday', 'sunday', 'thursday', 'tuesday', 'wednesday']"


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
    """A log to read, and whose it is: the person as on the day read at. Body fat that was measured on an earlier
    day goes into the log's `measurements`, with its date: in the profile it counts as that of the last day.

    aim: What weight is meant to do; by default what the phase of a state is for, else it is read from the log. A
        stall is told only where it is meant to fall.
    as_of_date: The day to read the log at; its last day by default.
    include: What to read beside the trend: `implied_intake`, mean intake from weight alone, also of someone who
        logs food; none by default. `[]` if absent.
    log: Weights and intakes; with a state those since.
    measurements: Body-fat readings, girths or skinfolds during the log. `[]` if absent.
    profile: See `ProfileDict`.
    screening: Safety questions: who is pregnant or has an eating disorder is told nothing of leanness.
    state: What an earlier answer knew, as it gave it. It takes the place of the profile's weight and body fat, of
        the log up to its date, and of the phase; `log` then holds what came since.
    usual_intake_kcal: What was eaten a day before the log began; maintenance by default. 800 to 8000.
    """

    aim: "NotRequired[models.Aim | Literal['gain', 'hold', 'lose'] | None]"
    as_of_date: "NotRequired[datetime.date | str | None]"
    include: "NotRequired[Sequence[Literal['implied_intake']]]"
    log: "NotRequired[models.Log | LogDict | None]"
    measurements: (
        "NotRequired[Sequence[models.DatedMeasurement | DatedMeasurementDict]]"
    )
    profile: "models.Profile | ProfileDict"
    screening: "NotRequired[models.Screening | ScreeningDict | None]"
    state: "NotRequired[models.State | StateDict | None]"
    usual_intake_kcal: "NotRequired[float | None]"


class WeekAskedDict(TypedDict):
    """How the member lives the week: then each week of the plan tells what to eat on each day. The week's total
    stays exactly as planned, and every day keeps the guard rails.

    flexible_days: Days with more food or with alcohol. `[]` if absent.
    is_plant_based: Whether all protein is of plants: where `protein_g_per_kg` is left open, a tenth more of it is
        planned. `false` if absent.
    meals_per_day: Meals that the protein is shared among. `4` if absent. 1 to 8.
    training: When training is: those days have what it burns more, the others less. `[]` if absent.
    """

    flexible_days: (
        "NotRequired[Sequence[models.FlexibleDayAsked | FlexibleDayAskedDict]]"
    )
    is_plant_based: "NotRequired[bool]"
    meals_per_day: "NotRequired[int]"
    training: "NotRequired[Sequence[models.TrainingDay | TrainingDayDict]]"


class WeekFollowedDict(TypedDict):
    """A week as planned. A week of a plan's answer, or of a review's, is taken as it is: what is not needed of it
    is passed over.

    at_end: Not read: a week of a plan may be sent back whole.
    by_day: Not read: a week of a plan may be sent back whole. `[]` if absent.
    carbohydrate_g: Carbohydrate a day; half of the energy by default. 0 to 4000.
    day_kinds: Not read: a week of a plan may be sent back whole. `[]` if absent.
    days: As in a plan's week. 1 to 7.
    element: As in a plan's week; `break` is a break.
    energy_balance_kcal: Not read: a week of a plan may be sent back whole. -15000 to 15000.
    fat_g: Not read: a week of a plan may be sent back whole. 0 to 1000.
    fibre_g: Not read: a week of a plan may be sent back whole. 0 to 500.
    intake_kcal: Energy per day, kilocalories. 300 to 25000.
    is_break: Whether the week is a break at maintenance, which is never corrected. `false` if absent.
    planned_intake_kcal: Energy a day as first planned, where `intake_kcal` is what a review made of it: the phase
        is held against this one, so that no correction counts as the plan. 300 to 25000.
    protein_g: Protein a day, grams. 5 to 1000.
    start_date: As in a plan's week; that of the first is the start of the phase.
    week: Number of the week; passed over. 1 to 400.
    """

    at_end: "NotRequired[models.PointPassed | PointPassedDict | None]"
    by_day: "NotRequired[Sequence[models.DayPassed | DayPassedDict]]"
    carbohydrate_g: "NotRequired[float | None]"
    day_kinds: "NotRequired[Sequence[models.DayKindPassed | DayKindPassedDict]]"
    days: "NotRequired[int | None]"
    element: "NotRequired[str | None]"
    energy_balance_kcal: "NotRequired[float | None]"
    fat_g: "NotRequired[float | None]"
    fibre_g: "NotRequired[float | None]"
    intake_kcal: "float"
    is_break: "NotRequired[bool]"
    planned_intake_kcal: "NotRequired[float | None]"
    protein_g: "float"
    start_date: "NotRequired[datetime.date | str | None]"
    week: "NotRequired[int | None]"


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


class DecisionLine(TypedDict):
    """A line of a batch that asks what ``decide_phase`` asks."""

    reference: str
    operation: Literal["decide_phase"]
    body: "models.DecisionRequest | DecisionRequestDict"


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
    | DecisionLine
    | ForecastLine
    | MaintenanceLine
    | PlanLine
    | ReviewLine
    | TrendLine
)
