"""What a log says: the trend of weight, its split into tissue and carried mass, and maintenance over time."""

import math
from array import array
from collections.abc import Sequence

import msgspec

from ..measures import EXPENDITURE_BELIEVED
from ..numbers import Estimate, kernel_in_use, told_percent
from ..register import HALL_CHOW_2011, Basis, Kind, Message, constant, equation, say
from . import kernel as k
from .change_split import Change, WaterEvent, change_of, logging_change, water_events, water_lately, wrong_weighings
from .entries import DailyLog, iso_date
from .explanations import EXPLAINED_DAYS, Explained, explain
from .intake_slips import INTAKE_SLIP, INTAKE_TWICE
from .maintenance import LogMaintenance, as_believed, maintenance_from_fit
from .onset import Onset, gone_on_from, warmed
from .steps import LatelyWalked
from .view import View
from .weight_slips import DECIMAL_SLIP, GAP, SET_ASIDE, UNIT_MIX_UP
from .witness_errors import RATIO_BREAK_CHANCE, SHIFT_FROM
from .witnesses import LogFit, mixed

RATE_DAYS = constant(
    "rate_window", 7.0, unit="d", basis=Basis.COMMON_PRACTICE,
    summary="The weekly rate is that of the mean intake over this many days",
)  # fmt: skip
PLATEAU_RATE_KG = constant(
    "plateau_rate", 0.175, unit="kg/week", basis=Basis.JUDGEMENT,
    summary="Tissue counts as steady within this weekly rate: half of a slow cut of 0.35 kg a week",
)  # fmt: skip
CLEAR_RATE_SD_KG = constant(
    "clear_rate_sd", 0.13, unit="kg/week", basis=Basis.JUDGEMENT,
    summary="Above this SD of the weekly rate it is too early to tell, unless the rate surely lies on one side of "
    "nothing: the plateau band is then 1.3 SD wide to each side (three to four weeks of daily entries at a noise of "
    "0.5 kg)",
)  # fmt: skip
LEAST_DAYS = int(
    constant(
        "trend_least_days", 14, unit="d", basis=Basis.JUDGEMENT,
        summary="So many days after the first weighing, or a shift of intake, it is too early to tell a direction",
    )
)  # fmt: skip
LEAST_WEIGHINGS = int(
    constant(
        "trend_least_weighings", 7, unit="weighings", basis=Basis.JUDGEMENT,
        summary="With fewer weighings it is too early to tell a direction",
    )
)  # fmt: skip
SHIFT_CLEAR_SD = constant(
    "intake_shift_clear", 2.0, unit="SD", basis=Basis.JUDGEMENT,
    summary="A shift of intake keeps a direction from being told while it still lies further off than so many standard "
    "errors of such means: food differs by a fifth from day to day, so that five days lie a sixth off by chance in "
    "most fortnights",
)  # fmt: skip
WRONG_FLAGGED = constant(
    "wrong_weighing_flagged", 0.6, unit="1", basis=Basis.JUDGEMENT,
    summary="A weighing is pointed out from this probability that it is wrong",
)  # fmt: skip
WATER_NAMED = constant(
    "water_event_named", 0.6, unit="1", basis=Basis.JUDGEMENT,
    summary="A change of water is named from this probability",
)  # fmt: skip
LOGGING_CHANGE_NAMED = constant(
    "logging_change_named", 0.6, unit="1", basis=Basis.JUDGEMENT,
    summary="A change of what is logged is named from this probability",
)  # fmt: skip
LOSS_MEANT_INTAKE = constant(
    "loss_meant_intake", 0.92, unit="1", basis=Basis.JUDGEMENT,
    summary="A loss is meant where a fortnight's log lies under this share of maintenance, or of an earlier fortnight",
)  # fmt: skip
LOSS_MEANT_SHARE = constant(
    "loss_meant_tissue", 0.012, unit="1", basis=Basis.JUDGEMENT,
    summary="A loss was meant where tissue has fallen by more than this share",
)  # fmt: skip
CHANGE_WINDOWS = (7, 14, 28)
LASTING_DAYS = 14
_LOOK_AHEAD_DAYS = 56
# So far under nothing what is left of a normal is an exponential, to a third of a percent; further out its odds are 0.
_TAIL_FROM_SD = -30.0

TOO_EARLY = "TREND_TOO_EARLY"
TOO_SPARSE = "TREND_TOO_SPARSE"
OUTLIER = "TREND_OUTLIER"
WATER_JUMP = "TREND_WATER_JUMP"
LOGGING_CHANGED = "TREND_LOGGING_CHANGED"
STALE = "TREND_STALE"
UNDER_LOGGED = "TREND_UNDER_LOGGED"
ABOUT_DIRECTION = frozenset((TOO_EARLY, TOO_SPARSE))
ABOUT_LOGGING = frozenset((LOGGING_CHANGED, UNDER_LOGGED))
ABOUT_ONE_DAY = frozenset((OUTLIER, WATER_JUMP, UNIT_MIX_UP, DECIMAL_SLIP, SET_ASIDE, INTAKE_TWICE, INTAKE_SLIP, GAP))


class Trend(msgspec.Struct, frozen=True):
    """A log as read on its last day.

    ``causal`` holds what was known on each day, ``smoothed`` what each day looks like today; on the last day they
    agree. ``weekly_rate`` is of tissue at the last week's intake, ``lasting_rate`` [kg a week] over the last fortnight;
    ``cycle`` is the rise of weight around menstruation, which the views leave out. ``plateau_probability``: that the
    lasting rate lies within the plateau band; ``stall_probability``: that it is not below that band, where a loss is
    meant.
    """

    first_day: int
    days: int
    causal: View
    smoothed: View
    outliers: frozenset[int]  # days from the first; of one person
    water: tuple[WaterEvent, ...]
    water_probability: float  # of a change of water within the last four weeks that intake does not explain
    explained: Explained | None
    cycle: Estimate | None
    changes: tuple[Change, ...]
    weekly_rate: Estimate
    lasting_rate: Estimate
    plateau_probability: float
    stall_probability: float | None
    maintenance: LogMaintenance
    noise_sd_kg: float
    more_days_needed: int
    notes: tuple[Message, ...]
    steps: LatelyWalked | None = None


@equation(
    "trend_reading",
    summary="Trend of a log: rate of tissue, split of a change, probability of a plateau",
    formula=(
        f"weekly rate = 7 (mean intake of {RATE_DAYS:g} days / ratio - maintenance) / energy of a kilogram; carried "
        "change = amplitude x expected change + water that fades; plateau = probability that the rate lies within "
        f"{PLATEAU_RATE_KG:g} kg a week"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    sources=(HALL_CHOW_2011,),
    valid_range="adults with dated weighings",
)
def trend_from_fit(
    log: DailyLog,
    fit: LogFit,
    is_loss_meant: bool | None = None,
    wait_days: int = 0,
    resting_kcal: float | None = None,
    onset: Onset | None = None,
) -> Trend:
    """The trend of a cleaned log over which the bank was run, with views; ``onset``: what was read before it.

    ``is_loss_meant``: whether the person means to lose; None reads it from the log. No direction is told for
    ``wait_days``. ``resting_kcal``: of the person, against which maintenance is believed or not.
    """
    count = len(log.weight_kg)
    windows = [days for days in CHANGE_WINDOWS if days < count]
    if count > 1 and count - 1 not in windows:
        windows.append(count - 1)
    causal, smoothed = View(fit, in_hindsight=False), View(fit, in_hindsight=True)
    of_log = maintenance = maintenance_from_fit(fit)
    least_spent = 0.0
    if resting_kcal is not None:
        maintenance = as_believed(of_log, fit.physical_prior, resting_kcal)
        least_spent = EXPENDITURE_BELIEVED * resting_kcal
    changes = tuple(change_of(fit, days) for days in windows)
    rate = _weekly_rate(fit)
    lasting = _lasting_rate(rate, changes)
    weighed = [day for day, seen in enumerate(log.is_weighed) if seen]
    more_days = max(wait_days, _more_days_needed(log, fit, rate, weighed))
    outliers = wrong_weighings(fit, WRONG_FLAGGED)
    water = tuple(water_events(fit, WATER_NAMED))
    explained = explain(fit, of_log, least_spent)
    if is_loss_meant is None:
        is_loss_meant = _means_to_lose(log, fit, onset)
    return Trend(
        first_day=log.first_day,
        days=count,
        causal=causal,
        smoothed=smoothed,
        outliers=outliers,
        water=water,
        water_probability=water_lately(fit, EXPLAINED_DAYS),
        explained=explained,
        cycle=_cycle(log, fit),
        changes=changes,
        weekly_rate=rate,
        lasting_rate=lasting,
        plateau_probability=lasting.probability_under(PLATEAU_RATE_KG) - lasting.probability_under(-PLATEAU_RATE_KG),
        stall_probability=lasting.probability_over(-PLATEAU_RATE_KG) if is_loss_meant else None,
        maintenance=maintenance,
        noise_sd_kg=math.sqrt(fit.noise_variance),
        more_days_needed=more_days,
        notes=(*log.notes, *_notes(log, fit, smoothed, outliers, water, more_days, maintenance, weighed[-1])),
    )


def _weekly_rate(fit: LogFit) -> Estimate:
    """Of tissue at the last week's intake, on the last day."""
    at = fit.days - 1
    return Estimate(fit.row(fit.then, 2)[at], math.sqrt(max(fit.row(fit.then, 3)[at], 0.0)))


def _cycle(log: DailyLog, fit: LogFit) -> Estimate | None:
    """Rise of weight around menstruation [kg], explanations mixed: of what they say the part that is a rise."""
    if log.cycle_rise is None:
        return None
    found = mixed([(one.probability, *one.rise) for one in fit.told])
    return found if found.sd <= 0.0 else not_negative(found)


def not_negative(found: Estimate) -> Estimate:
    """Mean and SD of a normal quantity of which it is known that it is not negative (a truncated normal)."""
    at = found.mean / found.sd
    if at < _TAIL_FROM_SD:
        return Estimate(-found.sd / at, -found.sd / at)
    beyond = math.sqrt(2.0 / math.pi) * math.exp(-0.5 * at * at) / math.erfc(-at / math.sqrt(2.0))
    return Estimate(found.mean + found.sd * beyond, found.sd * math.sqrt(max(1.0 - beyond * (at + beyond), 0.0)))


def _lasting_rate(weekly: Estimate, changes: tuple[Change, ...]) -> Estimate:
    """Weekly rate of tissue over the last fortnight, so that one week's eating is no plateau."""
    for change in changes:
        if change.days == LASTING_DAYS:
            weeks = LASTING_DAYS / 7.0
            return Estimate(change.tissue.mean / weeks, change.tissue.sd / weeks)
    return weekly


def _means_to_lose(log: DailyLog, fit: LogFit, onset: Onset | None) -> bool:
    """Whether the log looks like a diet: it tells less than is spent, less than before, or tissue has fallen.

    Of someone who logs no food, whether tissue has fallen. What was read before counts: a cut that has stalled for
    longer than the entries that were handed on is still one.
    """
    tissue = fit.row(fit.now, 6)
    begun = tissue[0] if gone_on_from(onset) is None else fit.settings[k.SETTLED]
    if min(tissue) - begun < -LOSS_MEANT_SHARE * begun:
        return True
    log, _ = warmed(onset, log)
    count = len(log.weight_kg)
    logged = [(day, kcal) for day, (kcal, has) in enumerate(zip(log.intake_kcal, log.is_logged, strict=True)) if has]
    recent = [kcal for day, kcal in logged if day >= count - 1 - LASTING_DAYS]
    if not recent:
        return False
    mean = sum(recent) / len(recent)
    earlier = [kcal for day, kcal in logged if day < count - 1 - LASTING_DAYS]
    most, running = 0.0, sum(earlier[: LASTING_DAYS - 1])
    for after, before in zip(earlier[LASTING_DAYS - 1 :], [0.0, *earlier], strict=False):
        running += after - before
        most = max(most, running / LASTING_DAYS)
    return bool(mean < LOSS_MEANT_INTAKE * max(fit.prior.mean, most))


def _more_days_needed(log: DailyLog, fit: LogFit, rate: Estimate, weighed: Sequence[int]) -> int:
    """Days of full logging until the weekly rate is clear; 0 when it is, one beyond the horizon when never.

    It is clear when it is known well enough to tell that tissue is steady, or surely falls or rises.
    """
    days = fit.days
    least = max(0, LEAST_DAYS - (days - 1 - weighed[0]), LEAST_WEIGHINGS - len(weighed))
    # Where intake has just shifted, what comes of it is not seen yet.
    least = max(least, LEAST_DAYS - _days_since_shift(log, fit))
    if days - 1 - weighed[-1] >= LASTING_DAYS:
        # What is said of the last fortnight is then the model's alone, however sure it is of itself.
        least = max(least, int(RATE_DAYS))
    if rate.sd <= CLEAR_RATE_SD_KG or rate.upper < 0.0 or rate.lower > 0.0:
        return least
    week, width = int(RATE_DAYS), k.COLUMNS
    columns = fit.columns[(days - 1) * width :] * week
    recent = columns[k.RECENT]
    for at in range(0, week * width, width):
        columns[at + k.SEEN], columns[at + k.SCALE], columns[at + k.WEIGHED] = 1.0, 1.0, log.weight_kg[weighed[-1]]
        columns[at + k.BREAKS], columns[at + k.INTAKE], columns[at + k.RECENT] = 0.0, recent, recent
        columns[at + k.ACTIVITY] = columns[at + k.ACTIVITY_VARIANCE] = columns[at + k.BALANCE_VARIANCE] = 0.0
    settings = fit.settings[:]
    # Only variances are read, and those do not depend on the weights to come.
    settings[k.SPLITS_FROM], settings[k.NOISE_VARIANCE], settings[k.NOISE_PRIOR] = math.inf, fit.noise_variance, 1e9
    start = fit.told[0].mean + fit.told[0].spread
    run, held = kernel_in_use(k), 0
    alpha, beta, both = k.ALPHA_ALPHA, k.BETA_BETA, k.ALPHA_BETA
    steps, work = array("d", bytes(8 * week * k.SLOTS * k.RECORD)), array("d", bytes(8 * k.WORK))
    # Week by week, since it is rarely long.
    for gone in range(0, _LOOK_AHEAD_DAYS, week):
        if gone:
            held = run.walk_on(columns, settings, steps, work, held, week)
        else:
            held = run.walk_forward(columns, settings, start, steps, work, week)
        for day in range(week):
            at = day * k.SLOTS * k.RECORD + k.SPREAD
            variance = recent * recent * steps[at + alpha] + steps[at + beta] - 2.0 * recent * steps[at + both]
            if gone + day and 7.0 * math.sqrt(max(variance, 0.0)) <= CLEAR_RATE_SD_KG:
                return max(least, gone + day)
    return _LOOK_AHEAD_DAYS + 1


def _days_since_shift(log: DailyLog, fit: LogFit) -> int:
    """Days since a phase began, or since intake shifted and has stayed where it went; a fortnight where neither did."""
    last = fit.days - 1
    breaks = fit.columns[k.BREAKS :: k.COLUMNS]
    for day in range(last, max(last - LEAST_DAYS, -1), -1):
        if breaks[day] >= RATIO_BREAK_CHANCE or (breaks[day] > 0.0 and _lasts(log, day)):
            return last - day
    return LEAST_DAYS


def _lasts(log: DailyLog, day: int) -> bool:
    """Whether intake since a shift that was seen on ``day`` still lies off the habit before it, by more than chance.

    Days differ, and so do means of some. Where too little was logged to tell, it does.
    """
    first = day - k.SHIFT_DAYS + 1
    days = list(zip(log.intake_kcal, log.is_logged, strict=True))
    before = [kcal for kcal, has in days[max(0, first - k.HABIT_DAYS) : first] if has]
    since = [kcal for kcal, has in days[first:] if has]
    if len(before) < k.HABIT_LEAST or not since:
        return True
    habit = sum(before) / len(before)
    variance = sum((kcal - habit) ** 2 for kcal in before) / (len(before) - 1)
    by_chance = SHIFT_CLEAR_SD * math.sqrt(variance * (1.0 / len(before) + 1.0 / len(since)))
    return abs(sum(since) / len(since) - habit) > max(SHIFT_FROM * habit, by_chance)


def _notes(
    log: DailyLog,
    fit: LogFit,
    smoothed: View,
    outliers: frozenset[int],
    water: Sequence[WaterEvent],
    more_days: int,
    maintenance: LogMaintenance,
    last_weighed: int,
) -> list[Message]:
    notes = []
    if more_days > _LOOK_AHEAD_DAYS:
        notes.append(say(TOO_SPARSE, more_days=_LOOK_AHEAD_DAYS))
    elif more_days:
        notes.append(say(TOO_EARLY, more_days=more_days))
    for day in sorted(outliers):
        deviation = log.weight_kg[day] - smoothed.weight_kg[day]
        side = "over" if deviation > 0.0 else "under"
        on = iso_date(log.first_day + day)
        notes.append(say(OUTLIER, date=on, deviation_kg=deviation, off_kg=abs(deviation), side=side))
    for event in water:
        notes.append(say(WATER_JUMP, date=iso_date(log.first_day + event.day), jump_kg=event.size_kg))
    changed = logging_change(fit)
    if changed is not None and changed[1] > LOGGING_CHANGE_NAMED:
        notes.append(say(LOGGING_CHANGED, date=iso_date(log.first_day + changed[0]), percent=told_percent(changed[1])))
    since = fit.days - 1 - last_weighed
    if since > RATE_DAYS:
        notes.append(say(STALE, days=since))
    ratio = maintenance.logging_ratio
    # While it is too early to tell anything of the log, its share is what was expected of any log.
    if not more_days and ratio.upper < 1.0 and maintenance.log_share > 0.5:
        notes.append(say(UNDER_LOGGED, percent=100.0 * (1.0 - ratio.mean)))
    return notes
