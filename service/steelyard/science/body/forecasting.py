"""Forecasts with intervals: the nominal path, and how far each source of uncertainty moves it.

The propagation is linearised: the model is run once as expected and once more for each source, moved by one
standard deviation; sources are independent, so their squared effects add. Why this and not an ensemble is
recorded in `service/decisions`. Works on floats (one person) and on arrays (many people at once).
"""

from collections.abc import Sequence
from typing import NamedTuple

from ..numbers import FLOATS, Z80, Elementwise, Estimate, Number, Reaching, compiled, inlined, new_tuple
from ..register import Basis, Kind, equation, traced
from .adherence import DEFICIT_FROM, OF_ANYBODY, as_followed, followed_days, unfollowed_share
from .constants import BASELINE_GLYCOGEN_KG, CARRIED_SPREAD, FAT_ENERGY, GLYCOGEN_ENERGY, LEAN_ENERGY
from .daily_noise import home_noise_variance
from .energy_balance import walk
from .state import BodyModel, BodyState, Diet, carried_mass, current_maintenance_kcal, maintenance_of, scale_weight
from .uncertainty import ADHERENCE_SPREAD, ALL_SOURCES, Body, UncertaintySource, adapting, responding, start_body


class Stretch(NamedTuple):
    """A diet held for consecutive steps of ``lengths`` days; one forecast point at the end of each."""

    diet: Diet
    lengths: tuple[float, ...]


class Figures(NamedTuple):
    """One figure for each quantity of a point [kg, kcal/d, 1], daily noise left out: its SD (a ``spread``), or how far
    somebody lies from what is expected (a ``slip``)."""

    weight_kg: Number
    fat_kg: Number
    lean_kg: Number
    carried_kg: Number
    maintenance_kcal: Number
    fat_fraction: Number


class ApartFrom(NamedTuple):
    """Where people lie on the mean who are given a plan, against a body that eats it, and their SDs."""

    slip: Figures
    spread: Figures


class OfPeople(NamedTuple):
    """What comes at a point of people who are given the plan: where they lie on the mean, with SDs as of the point."""

    slip: Figures
    spread: Figures
    weighing_sd_kg: Number


class PathPoint(NamedTuple):
    """The body expected at a point [kg, kcal/d, 1] with its SDs, and the SD of a single weighing there [kg]; ``people``
    where there is more to it than the plan being eaten."""

    weight_kg: Number
    fat_kg: Number
    lean_kg: Number
    carried_kg: Number
    maintenance_kcal: Number
    fat_fraction: Number
    spread: Figures
    weighing_sd_kg: Number
    people: OfPeople | None = None

    def logged(self, ratio: Number, weighing_variance: Number, water: Estimate, moves: Estimate) -> "PathPoint":
        """The point as a log tells it.

        Args: ``ratio``: logged over eaten energy, on whose scale maintenance is told; ``weighing_variance`` of a single
            weighing [kg²]; ``water`` that the log finds and no intake explains [kg]: in weight it stays, as carried
            mass and not as lean tissue; ``moves``: what carried mass changes by until then beyond the model [kg], and
            weight with it.
        """
        weight, fat, lean, carried, maintenance, fraction, sd, _, people = self
        found, moved = water.sd**2, moves.sd**2

        def as_logged(sd: Figures) -> tuple[Figures, Number]:
            of_weight, of_fat, of_lean, of_carried, of_maintenance, of_fraction = sd
            of_lean, of_carried = (of_lean**2 + found) ** 0.5, (of_carried**2 + found + moved) ** 0.5
            of_weight = (of_weight**2 + moved) ** 0.5
            spread = Figures(of_weight, of_fat, of_lean, of_carried, ratio * of_maintenance, of_fraction)
            return spread, (of_weight**2 + weighing_variance) ** 0.5

        spread, noisy = as_logged(sd)
        if people is not None:
            slip = people.slip._replace(maintenance_kcal=ratio * people.slip.maintenance_kcal)
            people = OfPeople(slip, *as_logged(people.spread))
        lean, carried = lean - water.mean, carried + water.mean + moves.mean
        fraction = fraction * weight / (weight + moves.mean)
        weight = weight + moves.mean
        return PathPoint(weight, fat, lean, carried, ratio * maintenance, fraction, spread, noisy, people)


class PathChange(NamedTuple):
    """What changes between two points of a path [kg], daily noise left out."""

    weight_kg: Estimate
    fat_kg: Estimate
    lean_kg: Estimate
    carried_kg: Estimate


# Fat, lean and carried mass [kg], maintenance [kcal/d] and fat fraction of a state.
_Values = tuple[Number, Number, Number, Number, Number]


class Moved(NamedTuple):
    """A run with one source moved by one SD: its states at the nodes, and what is told of each."""

    source: UncertaintySource
    model: BodyModel
    states: list[BodyState]
    values: list[_Values]


class PeopleRuns(NamedTuple):
    """What comes of people who are given a plan, at its nodes: on the mean, and where one SD less of it is followed."""

    usual: list[_Values]
    less: list[_Values]


class Forecast(NamedTuple):
    """The expected path (``states[0]`` is the start), and the moved ones beside it at the ``nodes``.

    Nodes are the indices of the start, of the end of every stretch, and of some points between: what a source
    does changes slowly, so that the moved runs take longer steps, and SDs between nodes are interpolated.
    """

    model: BodyModel
    states: list[BodyState]
    nodes: list[int]
    moved: list[Moved]
    values: list[_Values]  # of the expected path, at the nodes
    carried_spread: float
    has_noise: bool = True
    ops: Elementwise = FLOATS
    in_full: list[BodyState] | None = None  # the path, were all that is told followed, where that is not expected
    people: PeopleRuns | None = None  # where what they follow is another matter than the plan being eaten

    def energy_balance_kcal(self, i: int) -> Number:
        """Mean energy stored a day in the step that ends at point ``i`` [kcal/d]."""
        return _balances(self.states[i - 1 : i + 1], ops=self.ops)[0]

    def energy_balances_kcal(self) -> list[Number]:
        """``energy_balance_kcal`` of each point but the first."""
        return _balances(self.states, ops=self.ops)

    def maintenance_kcal(self, i: int) -> Number:
        """Maintenance of the body at point ``i`` [kcal/d]."""
        return current_maintenance_kcal(self.model, self.states[i])

    def spreads(self) -> list[Figures]:
        """SDs of the values at every point."""
        return _spreads(self.states, self.nodes, self.values, self._moved_values, self.carried_spread, ops=self.ops)

    def points(self) -> list[PathPoint]:
        """What is expected at every point, the start included."""
        spreads = self.spreads()
        people = None
        if self.people is not None:
            usual, less = self.people
            people = _peoples(self.states, self.nodes, self.values, self._eaten, usual, less, spreads, ops=self.ops)
        return _points(self.model, self.states, spreads, people, self.has_noise, ops=self.ops)

    def point_at(self, i: int) -> PathPoint:
        """What is expected at one of the nodes."""
        node = self.nodes.index(i)
        spread, people = self._spread_at(node, None), self._people_at(node, None)
        found = None if people is None else [people]
        return _points(self.model, [self.states[i]], [spread], found, self.has_noise, ops=self.ops)[0]

    def _people_at(self, node: int, since: int | None) -> ApartFrom | None:
        """What comes of people at a node, or changes between two, against what is expected; with its SDs."""
        if self.people is None:
            return None
        usual, less = self.people
        told = self._spread_at(node, since)
        return _people(self.values, self._eaten, usual, less, told, node, since, ops=self.ops)

    @property
    def _eaten(self) -> list[_Values]:
        """At the nodes, what comes of eating one SD more than the plan."""
        return next(run.values for run in self.moved if run.source is UncertaintySource.ADHERENCE)

    def spread_of_change(self, since: int, until: int) -> Figures:
        """SDs of the change between two points that are nodes (the start, or ends of stretches)."""
        return self._spread_at(self.nodes.index(until), self.nodes.index(since))

    def change(self, since: int, until: int) -> PathChange:
        """The change between two points that are nodes, of one person."""
        first, end = self.states[since], self.states[until]
        means = (
            end.weight_kg - first.weight_kg,
            end.fat_kg - first.fat_kg,
            end.lean_kg - first.lean_kg,
            end.carried_kg - first.carried_kg,
        )
        sds = self.spread_of_change(since, until)
        people = self.change_of_people(since, until)
        if people is None:
            return PathChange(*(Estimate(float(mean), float(sd)) for mean, sd in zip(means, sds, strict=False)))
        return PathChange(
            *(
                Reaching(float(mean), float(sd), float(off), float(people_sd))
                for mean, sd, off, people_sd in zip(means, sds, *people, strict=False)
            )
        )

    def change_of_people(self, since: int, until: int) -> ApartFrom | None:
        """What a change between two points that are nodes is of people, against what is expected, with its SDs."""
        return self._people_at(self.nodes.index(until), self.nodes.index(since))

    @property
    def _moved_values(self) -> list[list[_Values]]:
        return [run.values for run in self.moved]

    def _spread_at(self, node: int, since: int | None) -> Figures:
        return _spread(
            self.states, self.nodes, self.values, self._moved_values, self.carried_spread, node, since, ops=self.ops
        )

    def fat_effects(self, until: int) -> dict[UncertaintySource, Number]:
        """How far each source, moved by one SD, moves the change of fat mass up to a node [kg]; adherence, that of
        people who are given the plan."""
        node = self.nodes.index(until)
        change = self.states[until].fat_kg - self.states[0].fat_kg
        found = {run.source: run.states[node].fat_kg - run.states[0].fat_kg - change for run in self.moved}
        if self.people is not None:
            found[UncertaintySource.ADHERENCE] = self.people.less[node][0] - self.people.usual[node][0]
        return found

    def dominant_source(self, until: int) -> UncertaintySource | None:
        """The source that moves the change of fat mass up to a node most (one person)."""
        effects = self.fat_effects(until)
        return max(effects, key=lambda source: abs(float(effects[source]))) if effects else None


@compiled
def _values_of(model: BodyModel, states: Sequence[BodyState], *, ops: Elementwise = FLOATS) -> list[_Values]:
    found: list[_Values] = []
    for fat, lean, glycogen, water, gut, adaptation, _, _ in states:
        weight = scale_weight(fat, lean, glycogen, water, gut)
        carried = weight - fat - lean - BASELINE_GLYCOGEN_KG
        found.append((fat, lean, carried, maintenance_of(model, fat, lean, weight, adaptation), fat / weight))
    return found


@compiled
def _spread(
    states: Sequence[BodyState],
    nodes: Sequence[int],
    expected: Sequence[_Values],
    moved: Sequence[Sequence[_Values]],
    carried_spread: Number,
    node: int,
    since: int | None,
    *,
    ops: Elementwise = FLOATS,
) -> Figures:
    """How far the runs in ``moved`` lie from the expected one at a node (less at ``since``): their root sum of squares.

    People differ in how far carried mass answers a change of diet, and in how much of it is taken back while a deficit
    lasts: each by the same share of what the expected run has of it. In weight that counts from the start (or
    ``since``), which was weighed; what is carried there was not, so that of it all counts but in a change.
    """
    weight = fat = lean = carried = maintenance = fraction = 0.0
    for run in moved:
        # Never in place: on arrays the values are the states themselves.
        fat_, lean_, carried_, maintenance_, fraction_ = _apart(run, expected, node, since)
        change = fat_ + lean_ + carried_
        weight = weight + change * change
        fat = fat + fat_ * fat_
        lean = lean + lean_ * lean_
        carried = carried + carried_ * carried_
        maintenance = maintenance + maintenance_ * maintenance_
        fraction = fraction + fraction_ * fraction_
    now, origin = states[nodes[node]], states[nodes[since] if since is not None else nodes[0]]
    response = _response(carried_spread, _carried(now) - _carried(origin), now.recovered_kg - origin.recovered_kg)
    of_carried = response
    if since is None:
        of_carried = _response(carried_spread, _carried(now), now.recovered_kg)
    return new_tuple(
        Figures,
        (
            ops.sqrt(weight + response), ops.sqrt(fat), ops.sqrt(lean), ops.sqrt(carried + of_carried),
            ops.sqrt(maintenance), ops.sqrt(fraction),
        ),
    )  # fmt: skip


@inlined
def _response(spread: Number, carried_kg: Number, recovered_kg: Number) -> Number:
    """Variance [kg2] of what is carried, and of what of it is taken back, by how far people answer a diet."""
    return spread * spread * (carried_kg * carried_kg + recovered_kg * recovered_kg)


@inlined
def _carried(state: BodyState) -> Number:
    return carried_mass(state.glycogen_kg, state.water_kg, state.gut_kg)


@compiled
def _spreads(
    states: Sequence[BodyState],
    nodes: Sequence[int],
    expected: Sequence[_Values],
    moved: Sequence[Sequence[_Values]],
    carried_spread: Number,
    *,
    ops: Elementwise = FLOATS,
) -> list[Figures]:
    """SDs at every point, between nodes by the day."""
    at_nodes = []
    for n in range(len(nodes)):
        at_nodes.append(_spread(states, nodes, expected, moved, carried_spread, n, None, ops=ops))
    return _by_day(states, nodes, at_nodes)


@inlined
def _by_day(states: Sequence[BodyState], nodes: Sequence[int], at_nodes: Sequence[Figures]) -> list[Figures]:
    """Figures at every point from those at the nodes: between two of them by the day."""
    found: list[Figures] = []
    for n in range(len(nodes)):
        high = at_nodes[n]
        if found:
            low = found[-1]
            first, last = states[len(found) - 1].day, states[nodes[n]].day
            while len(found) < nodes[n]:
                day = states[len(found)].day
                found.append(_between(low, high, (day - first) / (last - first)))
        found.append(high)
    return found


@inlined
def _between(low: Figures, high: Figures, share: Number) -> Figures:
    weight, fat, lean, carried, maintenance, fraction = low
    return new_tuple(
        Figures,
        (
            weight + share * (high.weight_kg - weight),
            fat + share * (high.fat_kg - fat),
            lean + share * (high.lean_kg - lean),
            carried + share * (high.carried_kg - carried),
            maintenance + share * (high.maintenance_kcal - maintenance),
            fraction + share * (high.fat_fraction - fraction),
        ),
    )


@inlined
def _apart(
    one: Sequence[_Values], other: Sequence[_Values], node: int, since: int | None
) -> tuple[Number, Number, Number, Number, Number]:
    """One run less another at a node, or between two: fat, lean, carried mass, maintenance and fat fraction."""
    fat, lean, carried, maintenance, fraction = one[node]
    fat_, lean_, carried_, maintenance_, fraction_ = other[node]
    fat = fat - fat_
    lean = lean - lean_
    carried = carried - carried_
    maintenance = maintenance - maintenance_
    fraction = fraction - fraction_
    if since is not None:
        before, start = one[since], other[since]
        fat = fat - (before[0] - start[0])
        lean = lean - (before[1] - start[1])
        carried = carried - (before[2] - start[2])
        maintenance = maintenance - (before[3] - start[3])
        fraction = fraction - (before[4] - start[4])
    return fat, lean, carried, maintenance, fraction


@inlined
def _in_place_of(sd: Number, without: Number, instead: Number, ops: Elementwise) -> Number:
    """An SD with the effect of one of its sources replaced."""
    return ops.sqrt(ops.maximum(sd * sd - without * without, 0.0) + instead * instead)


@compiled
def _people(
    expected: Sequence[_Values],
    eaten: Sequence[_Values],
    usual: Sequence[_Values],
    less: Sequence[_Values],
    told: Figures,
    node: int,
    since: int | None,
    *,
    ops: Elementwise = FLOATS,
) -> ApartFrom:
    """What comes of people at a node, or between two, and its SDs: as ``told``, but that in place of what somebody errs
    by who has ``eaten`` the plan, ``less`` of a deficit is followed than is ``usual``."""
    fat, lean, carried, maintenance, fraction = _apart(usual, expected, node, since)
    fat_, lean_, carried_, maintenance_, fraction_ = _apart(eaten, expected, node, since)
    fat__, lean__, carried__, maintenance__, fraction__ = _apart(less, usual, node, since)
    slip = new_tuple(Figures, (fat + lean + carried, fat, lean, carried, maintenance, fraction))
    spread = new_tuple(
        Figures,
        (
            _in_place_of(told.weight_kg, fat_ + lean_ + carried_, fat__ + lean__ + carried__, ops),
            _in_place_of(told.fat_kg, fat_, fat__, ops),
            _in_place_of(told.lean_kg, lean_, lean__, ops),
            _in_place_of(told.carried_kg, carried_, carried__, ops),
            _in_place_of(told.maintenance_kcal, maintenance_, maintenance__, ops),
            _in_place_of(told.fat_fraction, fraction_, fraction__, ops),
        ),
    )
    return new_tuple(ApartFrom, (slip, spread))


@compiled
def _peoples(
    states: Sequence[BodyState],
    nodes: Sequence[int],
    expected: Sequence[_Values],
    eaten: Sequence[_Values],
    usual: Sequence[_Values],
    less: Sequence[_Values],
    spreads: Sequence[Figures],
    *,
    ops: Elementwise = FLOATS,
) -> list[ApartFrom]:
    """``_people`` at every point, between nodes by the day."""
    slips, wider = [], []
    for n in range(len(nodes)):
        slip, spread = _people(expected, eaten, usual, less, spreads[nodes[n]], n, None, ops=ops)
        slips.append(slip)
        wider.append(spread)
    slips = _by_day(states, nodes, slips)
    wider = _by_day(states, nodes, wider)
    found = []
    for i in range(len(slips)):
        found.append(new_tuple(ApartFrom, (slips[i], wider[i])))
    return found


@compiled
def _points(
    model: BodyModel,
    states: Sequence[BodyState],
    spreads: Sequence[Figures],
    people: Sequence[ApartFrom] | None,
    has_noise: bool,
    *,
    ops: Elementwise = FLOATS,
) -> list[PathPoint]:
    """What is expected at each of the states."""
    found = []
    for i, spread in enumerate(spreads):
        fat, lean, glycogen, water, gut, adaptation, _, _ = states[i]
        weight = scale_weight(fat, lean, glycogen, water, gut)
        maintenance = maintenance_of(model, fat, lean, weight, adaptation)
        carried = carried_mass(glycogen, water, gut)
        noisy = _weighing_sd(weight, spread.weight_kg, has_noise, ops)
        of_people = None
        if people is not None:
            slip, wider = people[i]
            of_people = new_tuple(OfPeople, (slip, wider, _weighing_sd(weight, wider.weight_kg, has_noise, ops)))
        values = (weight, fat, lean, carried, maintenance, fat / weight, spread, noisy, of_people)
        found.append(new_tuple(PathPoint, values))
    return found


@inlined
def _weighing_sd(weight_kg: Number, sd_kg: Number, has_noise: bool, ops: Elementwise) -> Number:
    """SD of a single weighing where ``weight_kg`` is expected with ``sd_kg`` [kg].

    The starting weight was itself a noisy reading, so its noise counts as well as that day's.
    """
    return ops.sqrt(sd_kg * sd_kg + 2.0 * home_noise_variance(weight_kg, ops)) if has_noise else sd_kg


@compiled
def _path(
    model: BodyModel,
    state: BodyState,
    plan: list[Stretch],
    source: UncertaintySource | None = None,
    carried_of: list[BodyState] | None = None,
    *,
    ops: Elementwise = FLOATS,
) -> list[BodyState]:
    """The states at the start and after each step of ``plan``; ``carried_of`` as in ``walk``, start included."""
    states = [state]
    for diet, lengths in plan:
        if source is UncertaintySource.ADHERENCE:
            scale = 1.0 + ADHERENCE_SPREAD
            intake, carbohydrate, *others = diet
            diet = new_tuple(Diet, (intake * scale, carbohydrate * scale, *others))
        elif source is UncertaintySource.ADAPTATION:
            model = adapting(model, diet.intake_kcal, 1.0, ops)
        done = len(states)
        like = None if carried_of is None else carried_of[done : done + len(lengths)]
        states.extend(walk(model, states[-1], diet, lengths, carried_of=like, ops=ops))
    return states


@compiled
def _run_of(
    source: UncertaintySource,
    model: BodyModel,
    state: BodyState,
    plan: list[Stretch],
    carried_of: list[BodyState] | None,
    *,
    ops: Elementwise = FLOATS,
) -> Moved:
    """The run of a body moved by one SD of a source."""
    states = _path(model, state, plan, source, carried_of, ops=ops)
    return new_tuple(Moved, (source, model, states, _values_of(model, states, ops=ops)))


@traced
def path_kept(
    model: BodyModel,
    state: BodyState,
    plan: list[Stretch],
    kept: Estimate,
    source: UncertaintySource | None = None,
    carried_of: list[BodyState] | None = None,
    ops: Elementwise = FLOATS,
) -> list[BodyState]:
    """The states at the start and after each step of ``plan``, as somebody is expected to follow it who keeps to a
    share of deficits. ``source`` moves it by one SD; ``carried_of`` as in ``walk``, start included."""
    is_adherence = source is UncertaintySource.ADHERENCE
    states = [state]
    for diet, lengths in plan:
        eaten = as_followed(model, states[-1], diet, kept, 1.0 if is_adherence else 0.0)
        done = len(states)
        like = None if carried_of is None else carried_of[done - 1 : done + len(lengths)]
        part = [Stretch(eaten, lengths)]
        states.extend(_path(model, states[-1], part, None if is_adherence else source, like, ops=ops)[1:])
    return states


def _as_people(
    body: Body, plan: list[Stretch], gaps: list[Number], ops: Elementwise
) -> tuple[list[Stretch], list[Stretch]]:
    """What is eaten of a plan, step by step, by people who follow as much of a deficit as is usual, and ``body.apart``
    more; and by those who follow one SD less. ``gaps`` of the diets [kcal/d]."""
    apart = OF_ANYBODY if body.apart is None else body.apart
    days = body.deficit_days
    followed = followed_days(days, ops)
    usual: list[Stretch] = []
    less: list[Stretch] = []
    for (diet, lengths), gap in zip(plan, gaps, strict=True):
        intake, carbohydrate, *others = diet
        for step in lengths:
            by_then = followed_days(days + step, ops)
            share = (by_then - followed) / step + apart.mean
            for eaten, score in ((usual, 0.0), (less, 1.0)):
                scale = 1.0 + unfollowed_share(intake, gap, share, apart.sd, score, ops)
                eaten.append(Stretch(Diet(scale * intake, scale * carbohydrate, *others), (step,)))
            is_deficit = gap > DEFICIT_FROM
            days = ops.where(is_deficit, days + step, days)
            followed = ops.where(is_deficit, by_then, followed)
    return usual, less


def _gaps(body: Body, model: BodyModel, states: list[BodyState], plan: list[Stretch], ops: Elementwise) -> list[Number]:
    """Deficits that are to be kept to: how far each diet of a plan lies under the maintenance of the body that begins
    with it [kcal/d]; of one that goes on, as it began. What is eaten already is none."""
    gaps: list[Number] = []
    at, before = 0, None
    for diet, lengths in plan:
        if diet is before or (ops is FLOATS and diet == before):
            gaps.append(gaps[-1])
            at += len(lengths)
            continue
        before = diet
        needed = current_maintenance_kcal(model, states[at]) + diet.activity_change_kcal_per_kg * states[at].weight_kg
        gap = needed - diet.intake_kcal
        if body.eaten_kcal is not None:
            gap = ops.where(body.eaten_kcal <= diet.intake_kcal + DEFICIT_FROM, 0.0, gap)
        gaps.append(gap)
        at += len(lengths)
    return gaps


# Steps after a change of diet, while carried mass goes and in part comes back; then longer ones.
_FIRST_NODES_DAYS = (7.0, 7.0, 14.0)
_NODE_DAYS = 28.0


def _coarse(plan: list[Stretch]) -> tuple[list[Stretch], list[int]]:
    """The plan in longer steps, and the indices of the fine points at which they end."""
    coarse, nodes, point = [], [0], 0
    for diet, lengths in plan:
        steps: list[float] = []
        open_days = 0.0
        for k, days in enumerate(lengths):
            open_days += days
            limit = _FIRST_NODES_DAYS[len(steps)] if len(steps) < len(_FIRST_NODES_DAYS) else _NODE_DAYS
            is_last = k == len(lengths) - 1
            if is_last or open_days + lengths[k + 1] > limit:
                steps.append(open_days)
                nodes.append(point + k + 1)
                open_days = 0.0
        point += len(lengths)
        coarse.append(Stretch(diet, tuple(steps)))
    return coarse, nodes


# Sources that need a run of their own; carried mass is a multiple of the nominal path, noise is added last.
_RUN_SOURCES = (
    UncertaintySource.MAINTENANCE,
    UncertaintySource.BODY_FAT,
    UncertaintySource.PARTITION,
    UncertaintySource.TRAINING_RESPONSE,
    UncertaintySource.ADAPTATION,
    UncertaintySource.ADHERENCE,
)
# Those that move glycogen, water or gut content. The others share them with the expected path.
_CARRIED_SOURCES = frozenset({UncertaintySource.MAINTENANCE, UncertaintySource.ADHERENCE})
# Those that move the body at the start; adaptation does where it is settled at another intake than maintenance.
_START_SOURCES = frozenset({UncertaintySource.MAINTENANCE, UncertaintySource.BODY_FAT})


class Starts:
    """A calibrated body and what each source makes of it, worked out once for all the forecasts that start from it."""

    def __init__(self, body: Body, ops: Elementwise = FLOATS) -> None:
        self._body, self._ops = body, ops
        self.expected = start_body(body, None, ops)
        self._moved: dict[UncertaintySource, tuple[BodyModel, BodyState]] = {}

    def moved(self, source: UncertaintySource) -> tuple[BodyModel, BodyState]:
        """The body moved by one SD of a source."""
        found = self._moved.get(source)
        if found is None:
            is_settled = source is UncertaintySource.ADAPTATION and self._body.usual_intake_kcal is not None
            if source in _START_SOURCES or is_settled:
                found = start_body(self._body, source, self._ops)
            else:
                model, state = self.expected
                found = responding(model, source, self._ops), state
            self._moved[source] = found
        return found


@equation(
    "forecast_interval",
    summary="80 % interval of every forecast value",
    formula=f"mean +- {Z80:.4f} x SD; the SD adds the squared effects of one-SD moves of each source of uncertainty. "
    "Of a deficit it reaches as far as the same does for people who follow as much of it as adherence_usual and "
    "adherence_apart say, while the central value stays that of the plan as it is told",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="moves small enough for the model to be near linear; coverage is back-tested",
)
def forecast(
    body: Body,
    plan: list[Stretch],
    *,
    sources: frozenset[UncertaintySource] = ALL_SOURCES,
    path: list[BodyState] | None = None,
    start: Starts | None = None,
    is_eaten: bool = False,
    ops: Elementwise = FLOATS,
) -> Forecast:
    """The path of ``body`` through ``plan``, with one moved run for each source.

    Args: ``plan`` stretches in order, steps of 0.25-14 days, as told; what ``body.kept`` says of deficits is what is
        expected to be eaten, else all of it. Intervals hold what comes of people who are given the plan as well, or,
        where it ``is_eaten``, of whoever eats it alone, which is what a phase is judged by. ``sources`` carried into
        the intervals. ``path`` the expected states, start included, where a caller has walked what is eaten already;
        ``start`` likewise the body as it was calibrated.
    Returns: a state at the start and after each step; ``Forecast.spreads`` gives standard deviations.
    """
    start = Starts(body, ops) if start is None else start
    model, state = start.expected
    kept = body.kept
    states = path
    if states is None:
        states = _path(model, state, plan, ops=ops) if kept is None else path_kept(model, state, plan, kept, ops=ops)
    coarse, nodes = _coarse(plan)
    at_nodes = [states[i] for i in nodes]
    moved = []
    for source in _RUN_SOURCES:
        if source in sources:
            other_model, other = start.moved(source)
            carried_of = None if source in _CARRIED_SOURCES else at_nodes
            if kept is None:
                moved.append(_run_of(source, other_model, other, coarse, carried_of, ops=ops))
            else:
                run = path_kept(other_model, other, coarse, kept, source, carried_of, ops)
                moved.append(moved_run(source, other_model, run, ops))
    carried_spread = CARRIED_SPREAD if UncertaintySource.CARRIED_MASS in sources else 0.0
    has_noise = UncertaintySource.DAILY_NOISE in sources
    in_full = None if kept is None else _path(model, state, plan, ops=ops)
    found = assemble(model, states, nodes, moved, carried_spread, has_noise, ops)._replace(in_full=in_full)
    if is_eaten or kept is not None or UncertaintySource.ADHERENCE not in sources:
        return found
    gaps = _gaps(body, model, states, plan, ops)
    if ops is FLOATS and not any(gap > DEFICIT_FROM for gap in gaps):
        return found
    usual, less = (_path(model, state, eaten, ops=ops) for eaten in _as_people(body, coarse, gaps, ops))
    return found._replace(people=PeopleRuns(_values_of(model, usual, ops=ops), _values_of(model, less, ops=ops)))


def moved_run(source: UncertaintySource, model: BodyModel, states: list[BodyState], ops: Elementwise = FLOATS) -> Moved:
    """A run moved by one SD of ``source``, from its states at the nodes."""
    return Moved(source, model, states, _values_of(model, states, ops=ops))


def assemble(
    model: BodyModel,
    states: list[BodyState],
    nodes: list[int],
    moved: list[Moved],
    carried_spread: float,
    has_noise: bool,
    ops: Elementwise = FLOATS,
) -> Forecast:
    """A forecast from its expected states and the runs moved at its nodes."""
    values = _values_of(model, [states[i] for i in nodes], ops=ops)
    return Forecast(model, states, nodes, moved, values, carried_spread, has_noise, ops)


@compiled
def _balances(states: Sequence[BodyState], *, ops: Elementwise = FLOATS) -> list[Number]:
    """Mean energy stored a day in each step between states [kcal/d]."""
    found = []
    for i in range(len(states) - 1):
        before, after = states[i], states[i + 1]
        found.append(_balance(before, after))
    return found


@inlined
def _balance(before: BodyState, after: BodyState) -> Number:
    return stored_kcal(before, after) / (after.day - before.day)


@inlined
def stored_kcal(before: BodyState, after: BodyState) -> Number:
    """Energy stored in fat, lean tissue and glycogen between two states [kcal]."""
    return (
        FAT_ENERGY * (after.fat_kg - before.fat_kg)
        + LEAN_ENERGY * (after.lean_kg - before.lean_kg)
        + GLYCOGEN_ENERGY * (after.glycogen_kg - before.glycogen_kg)
    )
