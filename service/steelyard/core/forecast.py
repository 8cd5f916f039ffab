"""Forecasts with intervals: the nominal path, and how far each source of uncertainty moves it.

The propagation is linearised: the model is run once as expected and once more for each source, moved by one
standard deviation; sources are independent, so their squared effects add. Why this and not an ensemble is
recorded in DEVELOPERS.md. Works on floats (one person) and on arrays (many people at once).
"""

from collections.abc import Sequence
from enum import StrEnum
from typing import NamedTuple

from .body_constants import (
    ADAPTATION_SHARE,
    BASELINE_CARBOHYDRATE_SHARE,
    BASELINE_GLYCOGEN_KG,
    CARRIED_SPREAD,
    FAT_ENERGY,
    FULL_DOSE_SESSIONS,
    GLYCOGEN_ENERGY,
    LEAN_ENERGY,
    TRAINING_GAIN,
)
from .body_state import (
    BodyModel,
    BodyState,
    Diet,
    balance,
    calibrate,
    current_maintenance_kcal,
    maintenance_of,
    scale_weight,
)
from .compiled import compiled
from .elementwise import FLOATS, Elementwise, Number
from .energy_balance import settle, walk
from .estimate import Estimate
from .evidence import Basis, Kind, constant, equation
from .person import Training, TrainingStatus
from .weight_noise import prior_noise


class UncertaintySource(StrEnum):
    """What makes a forecast uncertain."""

    MAINTENANCE = "maintenance"
    BODY_FAT = "body_fat"
    PARTITION = "partition"
    TRAINING_RESPONSE = "training_response"
    ADAPTATION = "adaptation"
    ADHERENCE = "adherence"
    CARRIED_MASS = "carried_mass"
    DAILY_NOISE = "daily_noise"


ALL_SOURCES = frozenset(UncertaintySource)

PARTITION_SPREAD = constant(
    "partition_spread",
    0.35,
    unit="1",
    summary="Between-person SD of the logarithm of the lean share",
    basis=Basis.JUDGEMENT,
    sources=("campbell_2020",),
)
TRAINING_GAIN_SPREAD = constant(
    "training_gain_spread",
    0.5,
    unit="1",
    summary="Between-person SD of the training-driven lean gain, as a share of its mean",
    basis=Basis.JUDGEMENT,
)
ADAPTATION_SPREAD = constant(
    "adaptation_spread",
    0.10,
    unit="kcal/kcal",
    summary="Between-person SD of the adaptive share of a deficit, spontaneous activity included",
    basis=Basis.JUDGEMENT,
)
# The range of a normal sample of 16 spans 3.53 SD on average (Tippett 1925, the control-chart constant d2).
OVERFEEDING_SPREAD = constant(
    "adaptation_spread_overfeeding",
    round((692.0 + 98.0) / 1000.0 / 3.53, 2),
    unit="kcal/kcal",
    summary="Between-person SD of the adaptive share of a surplus: spontaneous activity moved by -98 to +692 kcal/d "
    "in 16 people overfed by 1000 kcal/d, and a normal sample of 16 spans 3.53 SD. Who saves much in a deficit burns "
    "little of a surplus (correlated in 37 people): taken as fully opposed, which errs to the wide side after a cut",
    basis=Basis.FROM_MEMORY,
    sources=("levine_1999", "schlogl_2015"),
)
ADHERENCE_SPREAD = constant(
    "adherence_spread",
    0.04,
    unit="1",
    summary="SD of mean eaten over planned intake through a phase",
    basis=Basis.JUDGEMENT,
)
_YEARS = {
    TrainingStatus.UNTRAINED: constant(
        "experience_untrained", 0.0, unit="y", summary="Years of training counted", basis=Basis.JUDGEMENT
    ),
    TrainingStatus.NOVICE: constant(
        "experience_novice", 0.5, unit="y", summary="Years of training counted", basis=Basis.JUDGEMENT
    ),
    TrainingStatus.INTERMEDIATE: constant(
        "experience_intermediate", 2.5, unit="y", summary="Years of training counted", basis=Basis.JUDGEMENT
    ),
    TrainingStatus.ADVANCED: constant(
        "experience_advanced", 7.0, unit="y", summary="Years of training counted", basis=Basis.JUDGEMENT
    ),
}
NEW_PROGRAMME_SHARE = constant(
    "new_programme_experience",
    0.5,
    unit="1",
    summary="Share of the years counted when a programme is new or clearly increased",
    basis=Basis.JUDGEMENT,
)

FORECAST_IDS = (
    "forecast_interval",
    "partition_spread",
    "adaptation_spread",
    "adaptation_spread_overfeeding",
    "adherence_spread",
)


def experience_years(training: Training) -> float:
    """Years of training the lean terms count for this person."""
    years = _YEARS[training.status]
    return years * NEW_PROGRAMME_SHARE if training.is_new_programme else years


def training_dose(training: Training) -> float:
    """Share of the training effect that the weekly sessions earn, 0-1."""
    return min(1.0, training.resistance_sessions_per_week / FULL_DOSE_SESSIONS)


class Body(NamedTuple):
    """What is known of a body at the start. Estimates hold floats, or arrays for many people."""

    weight_kg: Number
    fat_kg: Estimate
    maintenance_kcal: Estimate
    resting_kcal: Number
    experience_years: Number = 0.0
    training_dose: Number = 0.0
    new_training: Number = 0.0  # 1 where training started or clearly increased within the last weeks
    carbohydrate_share: Number = BASELINE_CARBOHYDRATE_SHARE  # of the usual intake
    usual_intake_kcal: Number | None = None  # what was eaten until now; maintenance when None


class Stretch(NamedTuple):
    """A diet held for consecutive steps of ``lengths`` days; one forecast point at the end of each."""

    diet: Diet
    lengths: tuple[float, ...]


class Spread(NamedTuple):
    """Standard deviations at a point [kg, kcal/d, 1], daily noise left out."""

    weight_kg: Number
    fat_kg: Number
    lean_kg: Number
    carried_kg: Number
    maintenance_kcal: Number
    fat_fraction: Number


def _between(low: Spread, high: Spread, share: Number) -> Spread:
    weight, fat, lean, carried, maintenance, fraction = low
    return Spread(
        weight + share * (high.weight_kg - weight),
        fat + share * (high.fat_kg - fat),
        lean + share * (high.lean_kg - lean),
        carried + share * (high.carried_kg - carried),
        maintenance + share * (high.maintenance_kcal - maintenance),
        fraction + share * (high.fat_fraction - fraction),
    )


# Fat, lean and carried mass [kg], maintenance [kcal/d] and fat fraction of a state.
_Values = tuple[Number, Number, Number, Number, Number]


class Moved(NamedTuple):
    """A run with one source moved by one SD: its states at the nodes, and what is told of each."""

    source: UncertaintySource
    model: BodyModel
    states: list[BodyState]
    values: list[_Values]


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

    def energy_balance_kcal(self, i: int) -> Number:
        """Mean energy stored a day in the step that ends at point ``i`` [kcal/d]."""
        before, after = self.states[i - 1], self.states[i]
        return stored_kcal(before, after) / (after.day - before.day)

    def maintenance_kcal(self, i: int) -> Number:
        """Maintenance of the body at point ``i`` [kcal/d]."""
        return current_maintenance_kcal(self.model, self.states[i])

    def spreads(self) -> list[Spread]:
        """SDs of the values at every point."""
        at_nodes = [self._spread_at(n, None) for n in range(len(self.nodes))]
        spreads = [at_nodes[0]]
        for n in range(1, len(self.nodes)):
            low, high = at_nodes[n - 1], at_nodes[n]
            first, last = self.states[self.nodes[n - 1]].day, self.states[self.nodes[n]].day
            for i in range(self.nodes[n - 1] + 1, self.nodes[n]):
                spreads.append(_between(low, high, (self.states[i].day - first) / (last - first)))
            spreads.append(high)
        return spreads

    def scale_weight_sd(self, i: int, spread: Spread) -> Number:
        """SD of a single weighing at point ``i``, whose ``spread`` is given [kg].

        The starting weight was itself a noisy reading, so its noise counts as well as that day's.
        """
        if not self.has_noise:
            return spread.weight_kg
        noise = prior_noise(self.states[i].weight_kg, self.ops).variance
        return self.ops.sqrt(spread.weight_kg * spread.weight_kg + 2.0 * noise)

    def spread_of_change(self, since: int, until: int) -> Spread:
        """SDs of the change between two points that are nodes (the start, or ends of stretches)."""
        return self._spread_at(self.nodes.index(until), self.nodes.index(since))

    def _spread_at(self, node: int, since: int | None) -> Spread:
        point = self.nodes[node]
        weight, fat, lean, carried, maintenance, fraction = _squared_moves(
            self.values, [run.values for run in self.moved], node, since, ops=self.ops
        )
        origin = self.states[self.nodes[since] if since is not None else 0].carried_kg
        response = self.carried_spread * (self.states[point].carried_kg - origin)
        response = response * response
        sqrt = self.ops.sqrt
        return Spread(
            sqrt(weight + response), sqrt(fat), sqrt(lean), sqrt(carried + response), sqrt(maintenance),
            sqrt(fraction),
        )  # fmt: skip

    def fat_effects(self, until: int) -> dict[UncertaintySource, Number]:
        """How far each source, moved by one SD, moves the change of fat mass up to a node [kg]."""
        node = self.nodes.index(until)
        change = self.states[until].fat_kg - self.states[0].fat_kg
        return {run.source: run.states[node].fat_kg - run.states[0].fat_kg - change for run in self.moved}

    def dominant_source(self, until: int) -> UncertaintySource | None:
        """The source that moves the change of fat mass up to a node most (one person)."""
        effects = self.fat_effects(until)
        return max(effects, key=lambda source: abs(float(effects[source]))) if effects else None


@compiled
def _values_of(model: BodyModel, states: Sequence[BodyState], *, ops: Elementwise = FLOATS) -> list[_Values]:
    found: list[_Values] = []
    for fat, lean, glycogen, water, gut, adaptation, _ in states:
        weight = scale_weight(fat, lean, glycogen, water, gut)
        carried = weight - fat - lean - BASELINE_GLYCOGEN_KG
        found.append((fat, lean, carried, maintenance_of(model, fat, lean, weight, adaptation), fat / weight))
    return found


@compiled
def _squared_moves(
    expected: Sequence[_Values],
    moved: Sequence[Sequence[_Values]],
    node: int,
    since: int | None,
    *,
    ops: Elementwise = FLOATS,
) -> tuple[Number, ...]:
    """How far the runs in ``moved`` lie from the expected one at a node (less at ``since``), squared and added up.

    Of weight, fat, lean and carried mass, maintenance and fat fraction.
    """
    fat_here, lean_here, carried_here, maintenance_here, fraction_here = expected[node]
    weight = fat = lean = carried = maintenance = fraction = 0.0
    for run in moved:
        # Never in place: on arrays the values are the states themselves.
        fat_, lean_, carried_, maintenance_, fraction_ = run[node]
        fat_ = fat_ - fat_here
        lean_ = lean_ - lean_here
        carried_ = carried_ - carried_here
        maintenance_ = maintenance_ - maintenance_here
        fraction_ = fraction_ - fraction_here
        if since is not None:
            before, start = run[since], expected[since]
            fat_ = fat_ - (before[0] - start[0])
            lean_ = lean_ - (before[1] - start[1])
            carried_ = carried_ - (before[2] - start[2])
            maintenance_ = maintenance_ - (before[3] - start[3])
            fraction_ = fraction_ - (before[4] - start[4])
        change = fat_ + lean_ + carried_
        weight = weight + change * change
        fat = fat + fat_ * fat_
        lean = lean + lean_ * lean_
        carried = carried + carried_ * carried_
        maintenance = maintenance + maintenance_ * maintenance_
        fraction = fraction + fraction_ * fraction_
    return weight, fat, lean, carried, maintenance, fraction


def start_body(
    body: Body, source: UncertaintySource | None = None, ops: Elementwise = FLOATS
) -> tuple[BodyModel, BodyState]:
    """The calibrated model and state of a body, moved by one SD of ``source``."""
    fat = body.fat_kg.mean
    maintenance = body.maintenance_kcal.mean
    if source is UncertaintySource.BODY_FAT:
        fat = fat + body.fat_kg.sd
    if source is UncertaintySource.MAINTENANCE:
        maintenance = maintenance + body.maintenance_kcal.sd
    model, state = calibrate(
        weight_kg=body.weight_kg,
        fat_kg=fat,
        maintenance_kcal=maintenance,
        resting_kcal=body.resting_kcal,
        experience_years=body.experience_years,
        training_dose=body.training_dose,
        new_training=body.new_training,
        carbohydrate_share=body.carbohydrate_share,
        ops=ops,
    )
    model = _responding(model, source, ops)
    if body.usual_intake_kcal is not None:
        if source is UncertaintySource.ADAPTATION:
            model = adapting(model, body.usual_intake_kcal, 1.0, ops)
        model, state = settle_at(model, state, body.usual_intake_kcal, ops)
    return model, state


def _responding(model: BodyModel, source: UncertaintySource | None, ops: Elementwise) -> BodyModel:
    """The model of someone whose tissues respond one SD of ``source`` otherwise; its balance and rest stay."""
    if source is UncertaintySource.PARTITION:
        return model._replace(partition_scale=ops.exp(PARTITION_SPREAD))
    if source is UncertaintySource.TRAINING_RESPONSE:
        return model._replace(training_gain=TRAINING_GAIN * (1.0 + TRAINING_GAIN_SPREAD))
    return model


def adapting(model: BodyModel, intake_kcal: Number, score: Number, ops: Elementwise = FLOATS) -> BodyModel:
    """The model of someone whose adaptation is ``score`` SDs from the mean, while eating ``intake_kcal`` [kcal/d].

    A positive score saves more in a deficit and burns less of a surplus.
    """
    spread = ops.where(intake_kcal > model.maintenance_kcal, -OVERFEEDING_SPREAD, ADAPTATION_SPREAD)
    return model._replace(adaptation_share=ADAPTATION_SHARE + spread * score)


def settle_at(
    model: BodyModel, state: BodyState, usual_intake_kcal: Number, ops: Elementwise = FLOATS
) -> tuple[BodyModel, BodyState]:
    """Model and state of someone who has been eating ``usual_intake_kcal`` [kcal/d], at the same scale weight.

    Someone leaving a surplus is fuller of glycogen and water than at balance, so the scale holds less lean tissue.
    """
    usual = Diet(
        usual_intake_kcal,
        usual_intake_kcal * model.baseline_carbohydrate_kcal / model.maintenance_kcal,
        protein_g_per_kg=0.0,
    )
    settled = settle(model, state, usual, ops)
    state = settled._replace(lean_kg=state.lean_kg - (settled.carried_kg - state.carried_kg))
    # The constant holds for the adapted state: maintenance is what the tissues need unadapted.
    return balance(model, state), state


def _path(
    model: BodyModel,
    state: BodyState,
    plan: list[Stretch],
    ops: Elementwise,
    source: UncertaintySource | None = None,
    carried_of: list[BodyState] | None = None,
) -> list[BodyState]:
    """The states at the start and after each step of ``plan``; ``carried_of`` as in ``walk``, start included."""
    states = [state]
    for diet, lengths in plan:
        if source is UncertaintySource.ADHERENCE:
            scale = 1.0 + ADHERENCE_SPREAD
            intake, carbohydrate, *others = diet
            diet = Diet(intake * scale, carbohydrate * scale, *others)
        elif source is UncertaintySource.ADAPTATION:
            model = adapting(model, diet.intake_kcal, 1.0, ops)
        done = len(states)
        like = None if carried_of is None else carried_of[done : done + len(lengths)]
        states += walk(model, states[-1], diet, lengths, carried_of=like, ops=ops)
    return states


_FIRST_NODE_DAYS = 7.0  # after a change of diet, when carried mass moves
_NODE_DAYS = 28.0


def _coarse(plan: list[Stretch]) -> tuple[list[Stretch], list[int]]:
    """The plan in longer steps, and the indices of the fine points at which they end."""
    coarse, nodes, point = [], [0], 0
    for diet, lengths in plan:
        steps: list[float] = []
        open_days = 0.0
        for k, days in enumerate(lengths):
            open_days += days
            limit = _NODE_DAYS if steps else _FIRST_NODE_DAYS
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
# Those that move the body at the start.
_START_SOURCES = frozenset({UncertaintySource.MAINTENANCE, UncertaintySource.BODY_FAT})


@equation(
    "forecast_interval",
    summary="80 % interval of every forecast value",
    formula="mean +- 1.2816 x SD; the SD adds the squared effects of one-SD moves of each source of uncertainty",
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
    start: tuple[BodyModel, BodyState] | None = None,
    ops: Elementwise = FLOATS,
) -> Forecast:
    """The path of ``body`` through ``plan``, with one moved run for each source.

    Args: ``plan`` stretches in order, steps of 0.25-14 days. ``sources`` carried into the intervals. ``path`` the
        expected states, start included, where a caller has walked the plan already; ``start`` likewise the calibrated
        body.
    Returns: a state at the start and after each step; ``Forecast.spreads`` gives standard deviations.
    """
    model, state = start_body(body, None, ops) if start is None else start
    states = _path(model, state, plan, ops) if path is None else path
    coarse, nodes = _coarse(plan)
    at_nodes = [states[i] for i in nodes]
    moved = []
    for source in _RUN_SOURCES:
        if source in sources:
            is_start_moved = source in _START_SOURCES or body.usual_intake_kcal is not None
            other_model, other = (
                start_body(body, source, ops) if is_start_moved else (_responding(model, source, ops), state)
            )
            carried_of = None if source in _CARRIED_SOURCES else at_nodes
            run = _path(other_model, other, coarse, ops, source, carried_of)
            moved.append(moved_run(source, other_model, run, ops))
    carried_spread = CARRIED_SPREAD if UncertaintySource.CARRIED_MASS in sources else 0.0
    has_noise = UncertaintySource.DAILY_NOISE in sources
    return assemble(model, states, nodes, moved, carried_spread, has_noise, ops)


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


def stored_kcal(before: BodyState, after: BodyState) -> Number:
    """Energy stored in fat, lean tissue and glycogen between two states [kcal]."""
    return (
        FAT_ENERGY * (after.fat_kg - before.fat_kg)
        + LEAN_ENERGY * (after.lean_kg - before.lean_kg)
        + GLYCOGEN_ENERGY * (after.glycogen_kg - before.glycogen_kg)
    )
