"""How far each witness may be wrong, and how the filters that weigh them are set by it."""

import math
from array import array
from functools import cache

from ..numbers import Row
from ..register import Basis, constant
from . import kernel as written
from .events import WATER_DAYS
from .tissue_model import TissueModel

RATIO_DRIFT = constant(
    "logging_ratio_drift", 0.0025, unit="1 per root day", basis=Basis.JUDGEMENT,
    summary="How a logging ratio drifts, as a fraction of itself (1.3 % over four weeks, 5 % over a year)",
)  # fmt: skip
RATIO_BREAK = constant(
    "logging_ratio_break", 0.25, unit="1", basis=Basis.JUDGEMENT,
    summary="SD of a change of the logging ratio where one happens as a phase begins, as a fraction of itself: an "
    "unlogged 250-500 kcal/d",
)  # fmt: skip
RATIO_BREAK_CHANCE = constant(
    "logging_ratio_break_chance", 0.3, unit="1", basis=Basis.JUDGEMENT,
    summary="Chance that logging changes as a phase begins: people on a diet keep half to two thirds of what was "
    "prescribed on average, at what they log as all of it",
)  # fmt: skip
SHIFT_BREAK_CHANCE = constant(
    "intake_shift_break_chance", 0.04, unit="1", basis=Basis.JUDGEMENT,
    summary="The same where only the log says that a phase may have begun (set in-sample, on the study's worlds)",
)  # fmt: skip
SHIFT_FROM = constant(
    "intake_shift", 0.15, unit="1", basis=Basis.JUDGEMENT,
    summary="A phase may have begun where five days' mean intake lies further than this from the fortnight before",
)  # fmt: skip
SHIFT_APART_DAYS = constant(
    "intake_shifts_apart", 10.0, unit="d", basis=Basis.JUDGEMENT, summary="Least days between two such shifts"
)
DEFICIT = constant(
    "logged_deficit", 0.03, unit="1", basis=Basis.JUDGEMENT,
    summary="What people who keep a log eat under what they spend, as a fraction of it, before their weight says "
    "otherwise: more of them diet than gain (set in-sample, on the study's worlds)",
)  # fmt: skip
DEFICIT_SD = constant(
    "logged_deficit_sd", 0.17, unit="1", basis=Basis.JUDGEMENT,
    summary="SD of it between people: two of them reach from cuts of a third to gains of a third (set in-sample)",
)  # fmt: skip
DEFICIT_DAYS = constant(
    "logged_deficit_days", 14.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Logged days that tell it together, each its share; those of a phase that is known tell nothing, since "
    "its deficit is meant",
)  # fmt: skip
DEFICIT_AGAIN_DAYS = constant(
    "logged_deficit_again", 56.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Logged days within which a shift of intake lets as many tell it anew: a phase of one's own choice lies "
    "near what is spent like the one before, on its own side. After that weight has told (set in-sample)",
)  # fmt: skip
DAY_ERROR = constant(
    "logging_day_error", 0.045, unit="1", basis=Basis.JUDGEMENT,
    summary="Random error of a logged day, as a fraction of intake, beside the ratio",
)  # fmt: skip
UNLOGGED_DAY_ERROR = constant(
    "unlogged_day_error", 0.18, unit="1", basis=Basis.FROM_MEMORY,
    summary="Day-to-day coefficient of variation of one person's intake, for days without a log",
)  # fmt: skip
SILENT_ERROR = constant(
    "unlogged_spell_error", 0.15, unit="1", basis=Basis.JUDGEMENT,
    summary="The part of that which the days of a week without a log share: who is away eats otherwise than usual for "
    "all of it",
)  # fmt: skip
MAINTENANCE_DRIFT = constant(
    "maintenance_drift", 8.0, unit="kcal/d per root day", basis=Basis.JUDGEMENT,
    summary="Random drift of maintenance beside its change with tissue (42 kcal/d over four weeks)",
)  # fmt: skip
WATER_SD_KG = constant(
    "unexplained_water", 0.30, unit="kg", basis=Basis.JUDGEMENT,
    summary="SD of carried mass that neither intake nor a dated event explains",
)  # fmt: skip
WATER_STAYS_KG = constant(
    "lasting_water", 0.36, unit="kg per year", basis=Basis.JUDGEMENT,
    summary="What of carried mass changes for good without a cause that is told (creatine, more muscle glycogen): no "
    "log tells it from tissue, so that changes over long windows are surer by neither. It comes slowly, since what "
    "comes at once is seen: its SD grows with time, beyond a year with the root of it",
)  # fmt: skip
HABIT_UNTOLD = constant(
    "habit_untold_spread", 0.08, unit="1", basis=Basis.JUDGEMENT,
    summary="SD of what was eaten before a log began around what was spent, as a share of it, where nobody tells it: "
    "most are near balance, who comes from a gain ate a tenth to a fifth over it, who comes from a cut as much under",
)  # fmt: skip
WATER_EVENT_KG = constant(
    "water_event", 1.0, unit="kg", basis=Basis.JUDGEMENT,
    summary="SD of a sudden change of water (salt, travel, illness, creatine: 0.3-1.5 kg)",
)  # fmt: skip
WATER_EVENT_CHANCE = constant(
    "water_event_chance", 0.02, unit="1/d", basis=Basis.JUDGEMENT,
    summary="Chance of one on a weighing that nothing else explains",
)  # fmt: skip
WATER_AGAIN_DAYS = constant(
    "water_event_again_days", 21.0, unit="d", basis=Basis.JUDGEMENT,
    summary="A second change of water to the same side within so many days is less likely: it is eating rather",
)  # fmt: skip
WATER_AGAIN = constant(
    "water_event_again", 0.2, unit="1", basis=Basis.JUDGEMENT, summary="How much less likely that is"
)
WATER_STAYS = constant(
    "water_event_stays", 0.4, unit="1", basis=Basis.JUDGEMENT,
    summary="Share of such changes that stay (creatine, another scale or hour of the day)",
)  # fmt: skip
WRONG_CHANCE = constant(
    "wrong_weighing_chance", 0.03, unit="1", basis=Basis.JUDGEMENT,
    summary="Chance that a weighing is wrong or out of the ordinary (other clothes, hour, person or floor)",
)  # fmt: skip
WRONG_KG = constant("wrong_weighing", 2.0, unit="kg", basis=Basis.JUDGEMENT, summary="SD of such a weighing")
LINGERS = constant(
    "noise_lingering", 0.35, unit="1", basis=Basis.JUDGEMENT,
    summary="Share of the variance of daily noise that lingers to the next day",
)  # fmt: skip
LINGERS_KEPT = constant(
    "noise_lingering_kept", 0.5, unit="1/d", basis=Basis.JUDGEMENT, summary="How much of it is left a day later"
)
NOISE_PRIOR_WEIGHINGS = constant(
    "weight_noise_prior_weighings", 3.0, unit="weighings", basis=Basis.JUDGEMENT,
    summary="How many weighings the prior variance of the noise is worth",
)  # fmt: skip
CARRIED_PER_KCAL = constant(
    "carried_per_intake", 0.0017, unit="kg per kcal/d eaten", basis=Basis.JUDGEMENT,
    summary="Carried mass that a lasting change of intake moves, before the log says otherwise: 0.9 kg per 1,000 "
    "kcal/d where carbohydrate is spared, 1.9 where it is what changes, and 0.3-0.6 of gut content",
)  # fmt: skip
CARRIED_RELATIVE_SD = constant(
    "carried_per_intake_sd", 0.4, unit="1", basis=Basis.JUDGEMENT,
    summary="SD of it between people, as a fraction (0.5-0.7 kg around first weeks)",
)  # fmt: skip
CARRIED_SLOW_SHARE = constant(
    "carried_slow_share", 0.3, unit="1", basis=Basis.JUDGEMENT,
    summary="Share of carried mass that follows intake slowly",
)  # fmt: skip
CARRIED_SLOW_DAYS = constant(
    "carried_slow_days", 8.0, unit="d", basis=Basis.JUDGEMENT, summary="Time constant of that share (7-10 days)"
)
UNLOGGED_BIAS = constant(
    "unlogged_intake_bias", 0.12, unit="1", basis=Basis.JUDGEMENT,
    summary="SD of the lasting difference between intake on days without a log and the running habit, as a "
    "fraction of intake",
)  # fmt: skip
SPLITS_FROM_SD = constant(
    "weighing_questioned", 2.0, unit="SD", basis=Basis.JUDGEMENT,
    summary="A weighing further than this from what an explanation expects opens two more: it is wrong, or water moved",
)  # fmt: skip
START_SD_KG = constant(
    "tissue_start_sd", 5.0, unit="kg", basis=Basis.JUDGEMENT,
    summary="SD of tissue around the first weighing: wide, so that the log alone sets the level",
)  # fmt: skip
_DROPPED = 4.6  # explanations e^-4.6 (one per cent) as likely as the likeliest are no longer held (judgement)


def settings_of(tissue: TissueModel, noise_variance: float) -> Row:
    """What ``kernel.walk_forward`` is set by, for a body and the variance of the daily noise [kg2]."""
    k, found = written, _settings_of_anyone()[:]
    found[k.PULL] = 1.0 / tissue.rho_kcal_per_kg * tissue.expenditure_slope_kcal_per_kg_day
    found[k.GROWTH] = tissue.growth_kg_per_day
    found[k.NOISE_VARIANCE] = noise_variance
    return found


@cache
def _settings_of_anyone() -> Row:
    """Those that are the same for everybody."""
    k = written
    found = array("d", bytes(8 * k.SETTINGS))
    kept = math.exp(-1.0 / WATER_DAYS)
    for at, value in (
        (k.BETA_DRIFT, (0.001 * MAINTENANCE_DRIFT) ** 2),
        (k.ALPHA_DRIFT, RATIO_DRIFT**2),
        (k.WATER_KEPT, kept),
        (k.WATER_FRESH, WATER_SD_KG**2 * (1.0 - kept * kept)),
        (k.LINGER_KEPT, LINGERS_KEPT),
        (k.LINGER_SHARE, LINGERS),
        (k.ODDS_WRONG, WRONG_CHANCE),
        (k.WRONG_VARIANCE, WRONG_KG**2),
        (k.ODDS_SHOCK, WATER_EVENT_CHANCE),
        (k.SHOCK_VARIANCE, WATER_EVENT_KG**2),
        (k.SPLITS_FROM, SPLITS_FROM_SD**2),
        (k.AGAIN_DAYS, WATER_AGAIN_DAYS),
        (k.AGAIN_ODDS, WATER_AGAIN),
        (k.DROPPED, _DROPPED),
        (k.BREAK_VARIANCE, RATIO_BREAK**2),
        (k.NOISE_PRIOR, NOISE_PRIOR_WEIGHINGS),
        (k.STAYS, WATER_STAYS),
    ):
        found[at] = value
    return found
