"""The optimiser: the season with the most lean tissue inside the limits, by exhaustive search and refinement.

A season's outcome jumps with every number of its strategy (a cut a week earlier, one cut more, an intake rounded to
10 kcal), so that no gradient and no smooth model of it exists. Thousands of strategies lived at once on arrays cost
less than a few hundred one after another: why this and no general optimiser is recorded in `service/decisions`.
"""

from typing import Any, NamedTuple

from .. import rails
from ..numbers import arrayed, arrays
from ..phase import CUT_WEEKS_MOST
from ..register import Basis, Kind, constant, equation, traced
from .asked import TARGET_TOLERANCE, Asked
from .draws import drawn_lives, live_draws, stack
from .policy import Policy
from .run import Outcome, live

# Strategies times weeks that one search may live: about a second of one core.
MOST_POLICY_WEEKS = 1_000_000
DEFAULT_POLICIES = 6000
_GRID_SHARE = 0.45
_LEVELS = (8, 8, 4, 3, 4)  # surplus, cut_at, drop, deficit, longest cut: their proportions in the grid
# Rounds of refinement: lines, or steps of the grid's divided by this.
_ROUNDS, _LINE = (None, 2.0, None, 4.0, 10.0), 24
_SHORTLIST, _SHORTLIST_DRAWS = 96, 32
_OVER_BAND = 0.04  # ceilings beyond the band are searched for the trade-off curve
_LEAST_DROP = 0.01
_OTHER_SURPLUS_KCAL, _OTHER_DIETING_WEEKS = 40.0, 3.0  # from which two strategies are told apart (judgement)
ABOVE_ALLOWANCE = constant(
    "weeks_above_allowance", 1.25, unit="1", basis=Basis.JUDGEMENT,
    summary="Weeks above the band that an optimum may have where no limit was given, over the fewest possible: who "
    "starts above it need not cut as hard as the rails allow. Where that is the whole season, the most that body fat "
    "can fall towards the band by its end over what it must",
)  # fmt: skip


class Found(NamedTuple):
    """One searched strategy and its expected outcome (floats)."""

    policy: Policy
    outcome: Outcome
    lean_sd_kg: float | None = None


class Allowance(NamedTuple):
    """How much of being above the band the best season may have.

    Where all weeks of a season may be above it, they tell nothing apart, and to eat at maintenance all year would gain
    the most lean tissue of all: then ``final_fat``, the body fat at the horizon, is limited as well (a fraction).
    """

    weeks_above: int
    final_fat: float | None = None


class SearchResult(NamedTuple):
    """The best strategy, another one unlike it, the trade-off curve, and how much was searched."""

    best: Found
    runner_up: Found | None
    curve: list[Found]
    allowed: Allowance
    is_feasible: bool
    policies: int
    kept: int


class _Space:
    """What is searched: the person, the calendar, the limits, and every strategy lived so far."""

    def __init__(self, asked: Asked) -> None:
        import numpy as np

        self.np = np
        self.life, self.person, self.calendar, self.limits = asked.life, asked.person(), asked.calendar, asked.limits
        limits = asked.limits
        floor = max(limits.band.lower, self.person.fat_floor)
        # Somewhat over the surplus at which the ceiling on the rate of gain is met.
        top = max(60.0, 1.3 * asked.surplus_kcal(1.0))
        # Surplus, cut_at, drop under it, deficit, longest cut: least and most of each.
        self.low = np.array([10.0, floor + 2 * _LEAST_DROP, _LEAST_DROP, 250.0, 2.0])
        self.high = np.array([top, max(limits.band.upper + _OVER_BAND, floor + 0.05), 0.08, rails.BRISK_DEFICIT, 0.0])
        self.high[4] = min(CUT_WEEKS_MOST, max(2.0, float(max(asked.calendar.open_weeks))), 20.0)
        self.floor = floor
        self.ceiling = asked.gain_ceiling
        if not self.person.may_cut:
            # What is gained past the ceiling is not lost again.
            self.high[1] = self.ceiling
        self.start_fat = float(self.life.state.fat_kg / self.life.state.weight_kg)
        self.points: Any = np.zeros((0, 6))
        self.outcome: Any = np.zeros((0, len(Outcome._fields)))

    def policy(self, points: Any) -> Policy:
        """Points (rows of the five numbers and whether cuts are allowed) as a policy of arrays."""
        np = self.np
        cuts = points[:, 5] > 0.0
        most = self.limits.most_cuts
        return Policy(
            surplus_kcal=np.round(points[:, 0], -1),
            cut_at=points[:, 1],
            cut_to=np.where(cuts, np.maximum(points[:, 1] - points[:, 2], self.floor), 0.0),
            deficit_kcal=np.round(points[:, 3], -1),
            longest_cut_weeks=np.round(points[:, 4]),
            maintenance_weeks=np.ones(len(points)),
            weeks_between_cuts=np.full(len(points), float(self.limits.weeks_between_cuts)),
            cuts_a_year=np.full(len(points), float(self.limits.cuts_a_year)),
            most_cuts=np.where(cuts, 1000.0 if most is None else float(most), 0.0),
        )

    def point(self, policy: Policy) -> list[float]:
        """A strategy as a point of the space."""
        return [
            policy.surplus_kcal, policy.cut_at, policy.cut_at - policy.cut_to if policy.has_cuts else _LEAST_DROP,
            policy.deficit_kcal, policy.longest_cut_weeks, 1.0 if policy.has_cuts else 0.0,
        ]  # fmt: skip

    def live(self, points: Any) -> None:
        """Live every point and remember it."""
        np = self.np
        if not len(points):
            return
        outcome = live(self.life, self.policy(points), self.person, self.calendar, self.limits.band.upper, ops=arrays())
        self.points = np.concatenate([self.points, points])
        self.outcome = np.concatenate([self.outcome, np.stack(outcome, axis=1)])

    def found(self, i: int, lean_sd_kg: float | None = None) -> Found:
        policy = self.policy(self.points[i : i + 1])
        outcome = Outcome(*[float(value) for value in self.outcome[i]])
        return Found(Policy(*[float(arrayed(column)[0]) for column in policy]), outcome, lean_sd_kg)

    def column(self, name: str) -> Any:
        return self.outcome[:, Outcome._fields.index(name)]

    def grid(self, size: int) -> Any:
        """About ``size`` points: the five numbers crossed, and gains without cuts that hold at a ceiling."""
        np = self.np
        scale = (size / np.prod(_LEVELS)) ** (1.0 / len(_LEVELS))
        counts = [max(2, round(scale * n)) for n in _LEVELS]
        axes = [np.linspace(a, b, n) for a, b, n in zip(self.low, self.high, counts, strict=True)]
        axes[4] = np.unique(np.round(np.geomspace(self.low[4], self.high[4], counts[4])))
        # The band's own end is where a careful strategy cuts: searched as it stands and a little under it.
        band_ends = np.array([self.limits.band.upper, self.limits.band.upper - 0.002])
        axes[1] = np.unique(np.concatenate([axes[1], band_ends[band_ends >= self.low[1]]]))
        surpluses = np.unique(np.round(np.linspace(self.low[0], self.high[0], 4 * counts[0]), -1))
        holds = np.append(axes[1], self.ceiling) if self.person.may_cut else np.array([self.ceiling])
        rest = [np.array([_LEAST_DROP]), self.low[3:4], self.low[4:5], np.array([0.0])]
        plain = _crossed(np, [surpluses, holds, *rest])
        if not self.person.may_cut or self.limits.most_cuts == 0:
            return plain
        return np.concatenate([plain, _crossed(np, [*axes, np.array([1.0])])])

    def around(self, centres: Any, steps: Any) -> Any:
        """One number, or two at once, a step up or down from each centre."""
        moves = _crossed(self.np, [self.np.array([-1.0, 0.0, 1.0])] * 5)
        moves = moves[(moves != 0).sum(axis=1) <= 2]
        return self._within(centres[:, None, :] + _padded(self.np, moves * steps)[None])

    def lines(self, centres: Any, count: int) -> Any:
        """Each number of each centre over its whole range: outcomes jump, so that far values count as well."""
        np = self.np
        parts = []
        for k in range(5):
            along = np.repeat(centres[:, None, :], count, axis=1)
            along[..., k] = np.linspace(self.low[k], self.high[k], count)
            parts.append(along)
        return self._within(np.concatenate(parts))

    def _within(self, points: Any) -> Any:
        """Points held in their ranges and rounded, each once; numbers of cuts mean nothing where none is made."""
        np = self.np
        points = points.reshape(-1, 6)
        points[:, :5] = np.clip(points[:, :5], self.low, self.high)
        points[points[:, 5] <= 0.0, 2:5] = self.low[2:5]
        points[:, [0, 3]] = np.round(points[:, [0, 3]], -1)
        points[:, 4] = np.round(points[:, 4])
        points[:, [1, 2]] = np.round(points[:, [1, 2]], 5)
        return np.unique(points, axis=0)

    def keeps_others(self) -> Any:
        """Which points keep every limit but that on weeks above the band."""
        dieting = self.limits.most_weeks_dieting
        kept = self.column("missed_target") <= TARGET_TOLERANCE
        return kept if dieting is None else kept & (self.column("weeks_dieting") <= dieting)

    def allowed(self) -> Allowance:
        """What is allowed above the band: as asked, or a little more than the least that any searched season has."""
        if self.limits.most_weeks_above_band is not None:
            return Allowance(self.limits.most_weeks_above_band)
        others, weeks = self.keeps_others(), self.column("weeks_above_band")
        ends = self.column("final_fat_fraction")
        if others.any():
            weeks, ends = weeks[others], ends[others]
        most = int(ABOVE_ALLOWANCE * float(weeks.min()))
        if most < self.calendar.weeks:
            return Allowance(most)
        start, least = self.start_fat, float(ends.min())
        if start <= self.limits.band.upper:
            return Allowance(self.calendar.weeks)
        way = start - max(least, self.limits.band.upper)
        return Allowance(self.calendar.weeks, max(start - way / ABOVE_ALLOWANCE, least))

    def named(self) -> tuple[Any, Any]:
        """By which of several numbers that live the same season it is named: the last key first, as ``lexsort`` has it.

        Those nearest to the band, since others would tell of a body fat that it never sees; and where there is fat to
        lose one that would have cut, which tells why none could start.
        """
        upper = self.limits.band.upper
        would_cut = self.points[:, 5] if self.start_fat <= upper else -self.points[:, 5]
        return self.np.abs(self.points[:, 1] - upper), would_cut

    def order(self, allowed: Allowance) -> tuple[Any, int]:
        """Indices of the points, best first, and how many keep all limits.

        Those that keep the limits by lean tissue (to a gram), then by fewer weeks above the band, fewer dieting and
        less fat carried; then the others by how far they are from keeping them, and how far from the band they end.
        """
        np = self.np
        others = self.keeps_others()
        above, ends = self.column("weeks_above_band"), self.column("final_fat_fraction")
        over = np.maximum(above - allowed.weeks_above, 0.0)
        kept = others & (over <= 0.0)
        if allowed.final_fat is not None:
            kept &= ends <= allowed.final_fat + TARGET_TOLERANCE
        dieting = self.column("weeks_dieting")
        most = self.limits.most_weeks_dieting
        # A point of body fat over a target weighs like ten weeks over a count.
        miss = over + 1000.0 * np.maximum(self.column("missed_target") - TARGET_TOLERANCE, 0.0)
        miss = miss + (0.0 if most is None else np.maximum(dieting - most, 0.0))
        # To a tenth of a point: of two that are above the band for as long, the one that ends nearer to it.
        far = np.where(over > 0.0, np.round(np.maximum(ends - self.limits.band.upper, 0.0), 3), 0.0)
        lean, fat = np.round(self.column("lean_gained_kg"), 3), np.round(self.column("mean_fat_kg"), 2)
        usual = np.abs(self.points[:, 1] - self.limits.band.upper)
        would_cut = self.points[:, 5] if self.start_fat <= self.limits.band.upper else -self.points[:, 5]
        keys = (
            usual,
            would_cut,
            fat,
            dieting,
            above,
            -lean,
            np.where(kept, 0.0, far),
            np.where(kept, 0.0, miss),
            ~kept,
        )
        return np.lexsort(keys), int(kept.sum())


def _crossed(np: Any, axes: list[Any]) -> Any:
    return np.stack([part.ravel() for part in np.meshgrid(*axes, indexing="ij")], axis=1)


def _padded(np: Any, moves: Any) -> Any:
    return np.concatenate([moves, np.zeros((len(moves), 1))], axis=1)


@traced
@equation(
    "season_optimum",
    summary="The strategy with the most lean tissue at the horizon, inside the limits",
    formula="grid over surplus, body fat at which to cut, drop, deficit and longest cut, then refined along lines "
    "through the best and the trade-off curve and in ever smaller steps around them; objective: expected lean gained "
    "(to a gram, then fewest weeks above the band, fewest dieting, least fat carried), "
    "or for the best 96 its mean less `caution` standard deviations over common draws",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
)
def search(
    asked: Asked,
    *,
    policies: int = DEFAULT_POLICIES,
    starts: tuple[Policy, ...] = (),
    caution: float = 0.0,
) -> SearchResult:
    """Search about ``policies`` strategies.

    Args: ``starts`` strategies that are lived as well; ``caution`` standard deviations of lean gained that are taken
        off its mean.
    """
    space = _Space(asked)
    np = space.np
    points = space.grid(int(_GRID_SHARE * policies))
    if starts:
        points = np.concatenate([points, np.array([space.point(p) for p in starts])])
    space.live(points)
    _refine(space, int((1.0 - _GRID_SHARE) * policies))

    allowed = space.allowed()
    order, kept = space.order(allowed)
    within = kept
    deviations: dict[int, float] = {}
    if caution > 0.0 and kept:
        short = _spread_out(space, list(order[:kept]), _SHORTLIST)
        drawn = live_draws(
            drawn_lives(asked.member.body, _SHORTLIST_DRAWS),
            stack([space.found(i).policy for i in short]), space.person, space.calendar, space.limits.band.upper,
        )  # fmt: skip
        lean = np.asarray(drawn.lean_gained_kg)
        sd = lean.std(axis=1)
        ranked = np.argsort(-np.round(lean.mean(axis=1) - caution * sd, 3), kind="stable")
        deviations = {short[i]: float(sd[i]) for i in range(len(short))}
        order = np.array([short[i] for i in ranked])
        kept = len(order)
    best = int(order[0])
    runner_up = next((int(i) for i in order[1 : max(kept, 1)] if _differs(space, best, int(i))), None)
    return SearchResult(
        best=space.found(best, deviations.get(best)),
        runner_up=None if runner_up is None else space.found(runner_up, deviations.get(runner_up)),
        curve=[space.found(i) for i in _thinned(_front(space), 24)],
        allowed=allowed,
        is_feasible=kept > 0,
        policies=len(space.points),
        kept=within,
    )


def _refine(space: _Space, size: int) -> None:
    """About ``size`` more points: lines through the best and the trade-off, then ever smaller steps around them."""
    np = space.np
    steps = (space.high - space.low) / np.maximum(np.array(_LEVELS) - 1.0, 1.0)
    for divisor in _ROUNDS:
        per_centre = 5 * _LINE if divisor is None else 51
        most = max(1, int(size / len(_ROUNDS) / per_centre))
        best = space.order(space.allowed())[0][: 8 * most]
        centres = space.points[_spread_out(space, [*best[:1], *_thinned(_front(space), most // 3), *best], most)]
        if divisor is None:
            new = space.lines(centres, _LINE)
        else:
            new = space.around(centres, np.maximum(steps / divisor, [10.0, 0.0005, 0.001, 10.0, 1.0]))
        space.live(new)


def _front(space: _Space) -> list[int]:
    """The trade-off: points of more lean tissue than any as near to the band, the nearest first.

    Near is what comes back into it after as few weeks; where those are no limit, what ends with as little body fat.
    """
    np = space.np
    lean = np.round(space.column("lean_gained_kg"), 3)
    above = space.column("weeks_above_band")
    if space.allowed().final_fat is not None:
        above = np.round(space.column("final_fat_fraction"), 3)
    kept = space.keeps_others()
    front, most = [], -np.inf
    for i in np.lexsort((*space.named(), space.column("weeks_dieting"), -lean, above)):
        if kept[i] and lean[i] > most:
            front.append(int(i))
            most = lean[i]
    return front


def _lived(space: _Space, i: int) -> tuple[float, ...]:
    """What a season comes to, by which it is known again: many strategies live the same one."""
    return tuple(space.np.round(space.outcome[i], 4))


def _spread_out(space: _Space, order: list[int], most: int) -> list[int]:
    """The first ``most`` of ``order`` whose seasons differ."""
    chosen, seen = [], set()
    for i in order:
        season = _lived(space, i)
        if season not in seen:
            seen.add(season)
            chosen.append(int(i))
        if len(chosen) == most:
            break
    return chosen


def _differs(space: _Space, one: int, other: int) -> bool:
    """Whether a person would call two strategies different: surplus, number of cuts, or weeks of them.

    Other numbers of one season are no other: a surplus that is never eaten, say.
    """
    if _lived(space, one) == _lived(space, other):
        return False
    return bool(
        abs(space.points[one, 0] - space.points[other, 0]) >= _OTHER_SURPLUS_KCAL
        or space.column("cuts")[one] != space.column("cuts")[other]
        or abs(space.column("weeks_dieting")[one] - space.column("weeks_dieting")[other]) >= _OTHER_DIETING_WEEKS
    )


def _thinned(indices: list[int], most: int) -> list[int]:
    """At most ``most`` of the indices, evenly spaced, the first and the last among them."""
    if len(indices) <= most:
        return indices
    step = (len(indices) - 1) / max(most - 1, 1)
    return [indices[round(k * step)] for k in range(most)]
