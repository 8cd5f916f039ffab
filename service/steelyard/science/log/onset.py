"""Where a reading goes on: what was read of a log before its first entry, in a form that can be handed on.

A log that begins with an ``Onset`` is read from there as if all that came before stood in front of it. The bank of
explanations (``witnesses.py``) is Markov: given their means, covariances and odds on one day, earlier weights say
nothing more. What is laid out from intake (carried mass, adaptation, habit) remembers some weeks of intake, so that
these are kept as they were logged. The body is the one that the first reading took, so that nothing drifts by being
handed on.
"""

import math
from array import array
from collections.abc import Sequence
from types import ModuleType

import msgspec

from ..numbers import FLOATS, Column, Elementwise, Estimate, Number, Row, compiled
from ..register import Basis, OutOfDomain, constant
from .cycle import RISE_BEFORE, CycleRise
from .entries import DailyLog
from .kernels import CYCLIC, PLAIN
from .steps import StepsRead

WARM_DAYS = int(
    constant(
        "onset_intake_days", 70, unit="d", basis=Basis.JUDGEMENT,
        summary="Days of intake kept before a reading that goes on: five time constants of adaptation and of the "
        "running habit (14 days), after which under one per cent of what came before acts",
    )
)  # fmt: skip
# Bounds that no reading of a living body leaves; a state from outside is held against them.
_FAR = 1e6
_LEAST_PIVOT = -1e-9


class Account(msgspec.Struct, frozen=True, kw_only=True, gc=False):
    """One explanation on the onset's day, its weighing taken in: ``mean`` of the hidden quantities of ``kernel.py``,
    eight, or ten where a cycle is told, and the lower triangle of their covariance row by row; ``log_odds`` up to a
    constant; when water last moved in it, to which side; how noisy the scale is against the usual, and how many
    weighings say so."""

    log_odds: float
    mean: tuple[float, ...]
    spread: tuple[float, ...]
    water_days_ago: float = 1000.0
    water_side: float = 0.0
    noise: float = 1.0
    noise_weighings: float = 3.0


class BodyRead(msgspec.Struct, frozen=True, kw_only=True, gc=False):
    """The body that a reading took: maintenance by the equations [kcal/d, physical], the constants of
    ``tissue_model.TissueModel``, and what it weighed when the log began, at which it was settled."""

    prior_kcal: float
    prior_sd_kcal: float
    rho_kcal_per_kg: float
    rho_sd: float
    expenditure_slope_kcal_per_kg_day: float
    growth_kg_per_day: float
    growth_sd: float
    adaptation_gain: float
    carried_per_kcal: float
    usual_kcal: float
    is_usual_known: bool
    settled_kg: float | None = None

    @property
    def prior(self) -> Estimate:
        """Maintenance by the equations, physical scale."""
        return Estimate(self.prior_kcal, self.prior_sd_kcal)


class Onset(msgspec.Struct, frozen=True, kw_only=True, gc=False):
    """What was read before ``day``, whose weighing is counted and whose intake is not.

    Without ``accounts`` nothing was read before, and only the body counts. ``intakes`` are those of the days just
    before ``day``, oldest first, None where none was logged, and ``carbohydrate_kcal`` likewise.
    ``days`` were read so far, of which ``days_logged`` had an intake; ``steps``: what was counted by then, if anything.
    """

    body: BodyRead
    day: int = 0
    noise_variance: float = 0.0
    days: int = 0
    days_logged: int = 0
    intakes: tuple[float | None, ...] = ()
    carbohydrate_kcal: tuple[float | None, ...] = ()
    accounts: tuple[Account, ...] = ()
    steps: StepsRead | None = None

    @property
    def goes_on(self) -> bool:
        """Whether something was read before."""
        return bool(self.accounts)

    @property
    def knows_cycle(self) -> bool:
        """Whether a cycle was told by then."""
        return any(len(each.mean) > PLAIN.STATES for each in self.accounts)


def gone_on_from(onset: Onset | None) -> Onset | None:
    """What a reading goes on from; None where nothing was read before."""
    return onset if onset is not None and onset.goes_on else None


def warmed(onset: Onset | None, log: DailyLog) -> tuple[DailyLog, int]:
    """A log with the days of intake before it, on which nothing was weighed, and how many those are."""
    onset = gone_on_from(onset)
    if onset is None:
        return log, 0
    before = len(onset.intakes)
    none = [0.0] * before
    carbohydrate = (*onset.carbohydrate_kcal, *(None,) * before)[:before]
    cycle = log.cycle_rise
    return log._replace(
        first_day=log.first_day - before,
        weight_kg=[*none, *log.weight_kg],
        is_weighed=[*none, *log.is_weighed],
        noise_scale=[*[1.0] * before, *log.noise_scale],
        intake_kcal=[*[intake or 0.0 for intake in onset.intakes], *log.intake_kcal],
        is_logged=[*[0.0 if intake is None else 1.0 for intake in onset.intakes], *log.is_logged],
        carbohydrate_kcal=[*[grams or 0.0 for grams in carbohydrate], *log.carbohydrate_kcal],
        has_carbohydrate=[*[0.0 if grams is None else 1.0 for grams in carbohydrate], *log.has_carbohydrate],
        cycle_rise=None if cycle is None else CycleRise(*([*none, *column] for column in cycle)),
        water_kg=None if log.water_kg is None else [*none, *log.water_kg],
        water_variance=None if log.water_variance is None else [*none, *log.water_variance],
    ), before


def account_of(record: Row, day: int, k: ModuleType) -> Account:
    """An explanation as it stands in a record of a kernel on a day of the log."""
    return Account(
        log_odds=record[k.WEIGHT],
        mean=tuple(record[k.MEAN : k.MEAN + k.STATES]),
        spread=tuple(_lower_half(record[k.SPREAD : k.GAIN], k.STATES)),
        water_days_ago=min(1000.0, day - record[k.SHOCK_DAY]),
        water_side=record[k.SHOCK_SIGN],
        noise=record[k.NOISE],
        noise_weighings=record[k.NOISE_WORTH],
    )


@compiled
def _lower_half(spread: Sequence[Number], size: int, *, ops: Elementwise = FLOATS) -> Column:
    """The lower triangle of a covariance matrix, both written row by row."""
    found: Column = []
    for i in range(size):
        for j in range(i + 1):
            found.append(0.5 * (spread[i * size + j] + spread[j * size + i]))
    return found


def records_of(accounts: Sequence[Account], k: ModuleType) -> Row:
    """The records of a kernel for a morning that begins with these explanations. Of a cycle that they were made
    without, what is known is what is known before any log."""
    found = array("d", bytes(8 * k.RECORD * len(accounts)))
    for slot, account in enumerate(accounts):
        at = slot * k.RECORD
        for i in range(len(account.mean), k.STATES):
            known = RISE_BEFORE[i - k.LEAST_STATES]
            found[at + k.MEAN + i], found[at + k.SPREAD + i * (k.STATES + 1)] = known.mean, known.sd**2
        for i in range(len(account.mean)):
            found[at + k.MEAN + i] = account.mean[i]
            for j in range(i + 1):
                value = account.spread[i * (i + 1) // 2 + j]
                found[at + k.SPREAD + i * k.STATES + j] = found[at + k.SPREAD + j * k.STATES + i] = value
        found[at + k.WEIGHT] = account.log_odds
        found[at + k.SHOCK_DAY] = -account.water_days_ago
        found[at + k.SHOCK_SIGN] = account.water_side
        found[at + k.NOISE] = account.noise
        found[at + k.NOISE_WORTH] = account.noise_weighings
    return found


def is_of_a_body(account: Account, body: BodyRead) -> bool:
    """Whether an explanation has a mass and a pace that a body can have: any other makes no forecast."""
    tissue, alpha, beta = account.mean[:3]
    return 20.0 < tissue < 400.0 and alpha > 0.0 and beta > 0.0 and 0.2 < 1000.0 * beta / alpha / body.prior_kcal < 5.0


def check_onset(onset: Onset, field: str) -> None:
    """Refuse what no reading leaves behind: an onset comes from outside. Raises ``OutOfDomain`` naming ``field``."""
    for i, account in enumerate(onset.accounts):
        name = f"{field}.accounts[{i}]"
        n = len(account.mean)
        if n not in (PLAIN.STATES, CYCLIC.STATES) or len(account.spread) != n * (n + 1) // 2:
            raise OutOfDomain("STATE_NOT_READABLE", name, _NOT_READABLE)
        if not all(abs(value) < _FAR for value in (*account.mean, *account.spread, account.log_odds)):
            raise OutOfDomain("STATE_NOT_READABLE", name, _NOT_READABLE)
        if not is_of_a_body(account, onset.body) or not _is_covariance(account.spread):
            raise OutOfDomain("STATE_NOT_READABLE", name, _NOT_READABLE)
    if onset.goes_on and onset.noise_variance <= 0.0:
        raise OutOfDomain("STATE_NOT_READABLE", f"{field}.noise_variance", _NOT_READABLE)


_NOT_READABLE = "This is not what a reading leaves: send the state as an answer gave it, or none."


def _is_covariance(spread: Sequence[float]) -> bool:
    """Whether a lower triangle is that of a matrix without a negative variance (Cholesky)."""
    n = int((2 * len(spread)) ** 0.5)
    lower = [[0.0] * n for _ in range(n)]
    for i in range(n):
        for j in range(i + 1):
            value = spread[i * (i + 1) // 2 + j] - sum(lower[i][m] * lower[j][m] for m in range(j))
            scale = spread[i * (i + 1) // 2 + i]
            if i == j:
                if value < _LEAST_PIVOT * max(1.0, abs(scale)):
                    return False
                lower[i][i] = math.sqrt(max(value, 0.0))
            elif lower[j][j] > 0.0:
                lower[i][j] = value / lower[j][j]
            elif abs(value) > 1e-6 * max(1.0, math.sqrt(abs(scale))):
                return False
    return True
