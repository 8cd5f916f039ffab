"""Simulated people: what a forecast is told of them, and what happens to them.

Three generators of the truth. ``PRIOR`` draws each person from what the forecast itself assumes: every source of
uncertainty independent, at its registered spread. ``MISSPECIFIED`` is a world that the forecast has not been told
of: fat holds 10 % less energy, a quarter more of an imbalance is lean, water moves further, adaptation is stronger
and slower, noise is larger, heavier-tailed and correlated, errors of reading and maintenance go together, and
eating, logging and activity drift. ``MIRRORED`` is the same with every constant off in the other direction.

People are the last axis of every array, horizons the first.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from enum import StrEnum
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtr, ndtri
from steelyard.science.body import constants as body_constants
from steelyard.science.body import energy_balance
from steelyard.science.body import state as body_state
from steelyard.science.body.daily_noise import home_noise_variance
from steelyard.science.body.energy_balance import walk
from steelyard.science.body.forecasting import Stretch
from steelyard.science.body.state import BodyModel, BodyState, Diet, calibrate
from steelyard.science.body.uncertainty import (
    ADHERENCE_SPREAD,
    ALL_SOURCES,
    PARTITION_SPREAD,
    SPARING_SPREAD,
    TRAINING_GAIN_SPREAD,
    Body,
    UncertaintySource,
    adapting,
    experience_years,
    settle_at,
    training_dose,
)
from steelyard.science.measures.linear_equations import LinearEquation, weighted_sums
from steelyard.science.measures.resting_equations import CUNNINGHAM_1980_EQUATION, MIFFLIN
from steelyard.science.numbers.elementwise import Number, arrays
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.person.person import Training, TrainingStatus

Array = NDArray[np.float64]
OPS = arrays()
HORIZON_WEEKS = (2, 6, 12, 26)
_FINAL_DAY = 7.0 * HORIZON_WEEKS[-1]
SEXES = ("female", "male")
STATUSES = tuple(TrainingStatus)
PLANS = ("deficit", "maintenance", "surplus")
# Bodies are not drawn beneath these fractions: essential fat, with a margin (women, men).
_LEAST_FAT_FRACTION = np.array([0.10, 0.04])


class Generator(StrEnum):
    """Where the truth is drawn from."""

    PRIOR = "prior"
    MISSPECIFIED = "misspecified"
    MIRRORED = "mirrored"


class Quantity(StrEnum):
    """What is checked. Weight is one reading of the scale, noise included; masses in kg, fat level 0-1."""

    WEIGHT = "weight"
    FAT_CHANGE = "fat change"
    LEAN_CHANGE = "lean change"
    FAT_FRACTION = "fat level"


class People(NamedTuple):
    """What a forecast is told: the body, its reading errors, training, and one fixed diet for half a year."""

    body: Body
    diet: Diet
    male: NDArray[np.int64]
    status: NDArray[np.int64]  # index into STATUSES
    plan: NDArray[np.int64]  # index into PLANS

    def take(self, which: NDArray[np.int64]) -> "People":
        """The people of these indices, repeats allowed."""
        return _map_arrays(self, lambda a: a[which])

    def person(self, i: int) -> "People":
        """One of them, in plain floats."""
        return _map_arrays(self, lambda a: a[i].item())

    def stretches(self, ends: tuple[int, ...] = HORIZON_WEEKS) -> list[Stretch]:
        """The diet as a plan in weekly steps, in stretches that end after these weeks."""
        starts = (0, *ends[:-1])
        return [Stretch(self.diet, (7.0,) * (end - start)) for start, end in zip(starts, ends, strict=True)]


def _map_arrays(value: Any, change: Callable[[Array], Any]) -> Any:
    if isinstance(value, np.ndarray):
        return change(value)
    if isinstance(value, Estimate):
        return Estimate(change(value.mean), change(value.sd))
    if isinstance(value, tuple):
        return type(value)(*(_map_arrays(v, change) for v in value))
    return value


def draw_people(rng: np.random.Generator, per_cell: int) -> People:
    """``per_cell`` people for each sex and training status, with a plan that such a person might hold.

    Heights, fat-free mass indices (17.97 +- 1.64 in female and 21.64 +- 2.06 kg/m2 in male athletes of the
    Australian Institute of Sport set, less in the untrained) and body fat are spread as in active adults. Half
    the maintenances rest on equations (SD 10 %), half on a log (SD 3-5 %).
    """
    male, status = (a.ravel() for a in np.mgrid[0:2, 0 : len(STATUSES)])
    male, status = np.repeat(male, per_cell), np.repeat(status, per_cell)
    n = len(male)

    def normal() -> Array:
        return np.clip(rng.standard_normal(n), -2.5, 2.5)

    height = np.where(male == 1, 1.78, 1.65) + 0.065 * normal()
    fat_free_index = np.where(male == 1, 18.8, 15.2) + 0.75 * status + np.where(male == 1, 1.5, 1.2) * normal()
    leanness = rng.beta(2.0, 2.5, n)
    fat_fraction = np.where(male == 1, 0.09 + 0.24 * leanness, 0.17 + 0.26 * leanness)
    fat_free = fat_free_index * height**2
    weight = fat_free / (1.0 - fat_fraction)
    # DXA, skinfolds, bioimpedance, body-mass index; the lean are taken to have been measured well.
    least = _LEAST_FAT_FRACTION[male]
    fat_sd = np.minimum(rng.choice([0.025, 0.035, 0.05, 0.07], n), (fat_fraction - least) / 2.0)

    age = rng.uniform(19.0, 60.0, n)
    general, trained = (
        np.where(male == 1, *(_resting(each, is_male, weight, height, age, fat_free) for is_male in (True, False)))
        for each in (MIFFLIN, CUNNINGHAM_1980_EQUATION)
    )
    resting = np.where(status == 0, general, trained)
    maintenance = resting * rng.uniform(1.4, 2.0, n)
    from_log = rng.random(n) < 0.5
    maintenance_sd = maintenance * np.where(from_log, rng.uniform(0.03, 0.05, n), 0.10)

    # A quarter of the untrained take up lifting with the plan; the trained lift once to four times a week.
    sessions = np.where(status == 0, np.where(rng.random(n) < 0.25, 3, 0), rng.integers(1, 5, n))
    doses = [training_dose(Training(status=STATUSES[0], resistance_sessions_per_week=k)) for k in range(5)]
    years = np.array([experience_years(Training(status=s)) for s in STATUSES])[status]

    plan = rng.choice(len(PLANS), n, p=[0.45, 0.15, 0.40])
    # No one holds a deficit for half a year that would take most of the fat there is to lose.
    spare = weight * (fat_fraction - 1.28 * fat_sd - least)
    deficit = np.minimum(maintenance * rng.uniform(0.08, 0.30, n), 0.6 * body_constants.FAT_ENERGY * spare / _FINAL_DAY)
    change = np.choose(plan, [-deficit, 0.0, maintenance * rng.uniform(0.04, 0.20, n)])
    intake = np.round((maintenance + change) / 10.0) * 10.0
    usual = maintenance * rng.choice([1.0, 1.0, 1.1, 0.85], n)
    carbohydrate = intake * rng.uniform(0.35, 0.55, n)
    protein = rng.uniform(1.0, 2.2, n)
    body = Body(
        weight_kg=weight,
        fat_kg=Estimate(weight * fat_fraction, weight * fat_sd),  # type: ignore[arg-type]
        maintenance_kcal=Estimate(maintenance, maintenance_sd),  # type: ignore[arg-type]
        resting_kcal=resting,
        experience_years=years,
        training_dose=np.array(doses)[sessions],
        usual_intake_kcal=usual,
    )
    return People(body, Diet(intake, carbohydrate, protein), male, status, plan)


class _Life(NamedTuple):
    """A person as they are and live, whatever was told of them."""

    weight_kg: Array  # without the noise of the reading
    fat_kg: Array
    maintenance_kcal: Array
    partition_scale: Array
    training_gain: Array
    unspared: Array
    adaptation_score: Array  # standard normal
    carried_scale: Array
    recovery_scale: Array
    eaten: Array  # eaten over planned, by week
    drift_kcal: Array  # change of expenditure, by week
    noise_kg: Array  # of the reading at each horizon


_WEEKS = np.arange(1.0, HORIZON_WEEKS[-1] + 1)[:, None]


def _resting(
    equation: LinearEquation, is_male: bool, weight_kg: Array, height_m: Array, age_years: Array, fat_free_kg: Array
) -> Number:
    """Resting energy by an equation without bands of age, as if all were of one sex [kcal/d]."""
    coefficients = equation.coefficients(is_male, 30.0)
    assert coefficients is not None
    return weighted_sums((coefficients,), weight_kg, 100.0 * height_m, age_years, fat_free_kg, 0.0, ops=OPS)[0]


def draw_outcomes(
    people: People,
    generator: Generator,
    rng: np.random.Generator,
    sources: frozenset[UncertaintySource] = ALL_SOURCES,
) -> dict[Quantity, Array]:
    """What happens to each person: every quantity at every horizon, (horizons, people).

    ``sources`` left out stay at their mean, for ``PRIOR``; the other worlds always have them all.
    """
    if generator is Generator.PRIOR:
        return _live(people, _from_prior(people, rng, sources), 1.0, 1.0)
    world = _WORLDS[generator]
    life = _misspecified(people, rng, world)
    with _physics_of(world):
        return _live(people, life, world.adaptation, world.salt_water)


def draw_given(people: People, rng: np.random.Generator) -> dict[Quantity, Array]:
    """The same of ``PRIOR``, of people who are given a deficit and follow it by themselves: 85 % of it in the first six
    weeks and 65 % up to half a year, each by so much more or less (SD 30 points, gathered from trials)."""
    share = np.where(_WEEKS <= 6, 0.85, 0.65) + 0.3 * rng.standard_normal(len(people.male))
    gap = people.body.maintenance_kcal.mean - people.diet.intake_kcal
    life = _from_prior(people, rng, ALL_SOURCES)
    return _live(people, life._replace(eaten=1.0 + (1.0 - share) * gap / people.diet.intake_kcal), 1.0, 1.0)


def _fat(people: People, score: Array) -> Array:
    """Fat mass at a standard normal score of the reading's error, cut off where no one lives."""
    fat = people.body.fat_kg
    least = _LEAST_FAT_FRACTION[people.male] * people.body.weight_kg
    bound = ndtr((least - fat.mean) / fat.sd)
    return np.asarray(fat.mean + fat.sd * ndtri(bound + (1.0 - bound) * ndtr(score)))


def _from_prior(people: People, rng: np.random.Generator, sources: frozenset[UncertaintySource]) -> _Life:
    body, n = people.body, len(people.male)

    def score(source: UncertaintySource) -> Array:
        return rng.standard_normal(n) * (1.0 if source in sources else 0.0)

    is_noisy = UncertaintySource.DAILY_NOISE in sources
    noise = np.sqrt(home_noise_variance(body.weight_kg, OPS)) * (1.0 if is_noisy else 0.0)
    response = score(UncertaintySource.TRAINING_RESPONSE)
    # The correlation of readings two weeks apart is nil.
    weight = body.weight_kg - noise * rng.standard_normal(n)
    is_fat_known = UncertaintySource.BODY_FAT not in sources
    fat = body.fat_kg.mean if is_fat_known else _fat(people, score(UncertaintySource.BODY_FAT))
    return _Life(
        weight_kg=weight,
        fat_kg=fat,
        maintenance_kcal=body.maintenance_kcal.mean + body.maintenance_kcal.sd * score(UncertaintySource.MAINTENANCE),
        partition_scale=np.exp(PARTITION_SPREAD * score(UncertaintySource.PARTITION)),
        training_gain=body_constants.TRAINING_GAIN * (1.0 + TRAINING_GAIN_SPREAD * response),
        unspared=-SPARING_SPREAD * response,
        adaptation_score=score(UncertaintySource.ADAPTATION),
        carried_scale=1.0 + body_constants.CARRIED_SPREAD * score(UncertaintySource.CARRIED_MASS),
        eaten=1.0 + ADHERENCE_SPREAD * score(UncertaintySource.ADHERENCE) + 0.0 * _WEEKS,
        drift_kcal=np.zeros((HORIZON_WEEKS[-1], n)),
        noise_kg=noise * rng.standard_normal((len(HORIZON_WEEKS), n)),
        recovery_scale=1.0 + body_constants.CARRIED_SPREAD * score(UncertaintySource.CARRIED_MASS),
    )


class _World(NamedTuple):
    """Constants of a world the forecast does not know, as factors on the model's."""

    fat_energy: float
    lean_energy: float
    lean_share: float
    glycogen_water: float
    salt_water: float
    adaptation: float
    adaptation_days: float
    training_gain: float
    drift_towards_more: float  # mean change of eaten over planned by the end, a difference


_WORLDS = {
    Generator.MISSPECIFIED: _World(0.9, 1.1, 1.25, 1.3, 1.25, 1.25, 1.5, 0.85, 0.02),
    Generator.MIRRORED: _World(1.1, 0.9, 0.75, 0.7, 0.75, 0.75, 0.7, 1.15, -0.02),
}


@contextmanager
def _physics_of(world: _World) -> Iterator[None]:
    """The core's equations with other constants: a forecast is never made inside."""
    water = world.glycogen_water * body_constants.GLYCOGEN_WATER
    other = {
        "FAT_ENERGY": world.fat_energy * body_constants.FAT_ENERGY,
        "LEAN_ENERGY": world.lean_energy * body_constants.LEAN_ENERGY,
        "PARTITION_KG": world.lean_share * body_constants.PARTITION_KG,
        "GLYCOGEN_WATER": water,
        "BASELINE_GLYCOGEN_KG": body_constants.GLYCOGEN_KG * (1.0 + water),
        "ADAPTATION_DAYS": world.adaptation_days * body_constants.ADAPTATION_DAYS,
    }
    # Each module of the model holds its own name for a constant.
    patched = [(module, name) for module in (body_state, energy_balance) for name in other if hasattr(module, name)]
    kept = [getattr(module, name) for module, name in patched]
    for module, name in patched:
        setattr(module, name, other[name])
    try:
        yield
    finally:
        for (module, name), value in zip(patched, kept, strict=True):
            setattr(module, name, value)


def _misspecified(people: People, rng: np.random.Generator, world: _World) -> _Life:
    body, n = people.body, len(people.male)

    def heavy(df: float = 5.0, shape: tuple[int, ...] = (n,)) -> Array:
        """Student-t scaled to unit variance, cut at five SDs to keep bodies alive."""
        return np.clip(rng.standard_t(df, shape) * np.sqrt((df - 2.0) / df), -5.0, 5.0)

    # Daily noise a fifth larger, with four degrees of freedom and a lag-1 correlation of 0.45, and in half the
    # women a wave of 28 days. Terms beyond the tenth day before are under a thousandth.
    lag = 0.45
    weights = lag ** np.arange(10) * np.sqrt(1.0 - lag * lag)
    sd = 1.2 * np.sqrt(home_noise_variance(body.weight_kg, OPS))
    readings = [sd * np.tensordot(weights, heavy(4.0, (10, n)), 1) for _ in range(1 + len(HORIZON_WEEKS))]
    amplitude = np.where((people.male == 0) & (rng.random(n) < 0.5), 0.25, 0.0)
    phase = rng.uniform(0.0, 2.0 * np.pi, n)
    for k, day in enumerate((0, *(7 * weeks for weeks in HORIZON_WEEKS))):
        readings[k] = readings[k] + amplitude * np.sin(phase + 2.0 * np.pi * day / 28.0)

    # Who is leaner than read needs more than was said: the errors of reading and maintenance are correlated.
    fat_score = rng.standard_normal(n)
    maintenance_score = -0.3 * fat_score + np.sqrt(1.0 - 0.09) * heavy()
    # Eating (or its logging) starts as assumed and drifts, and so does activity.
    share = _WEEKS / HORIZON_WEEKS[-1]
    eaten = 1.0 + ADHERENCE_SPREAD * heavy() + (world.drift_towards_more + 0.05 * rng.standard_normal(n)) * share
    maintenance = body.maintenance_kcal.mean + body.maintenance_kcal.sd * maintenance_score
    return _Life(
        weight_kg=body.weight_kg - readings[0],
        fat_kg=_fat(people, fat_score),
        maintenance_kcal=maintenance,
        partition_scale=np.exp(PARTITION_SPREAD * heavy()),
        training_gain=body_constants.TRAINING_GAIN
        * np.maximum(world.training_gain * (1.0 + TRAINING_GAIN_SPREAD * heavy()), 0.0),
        unspared=SPARING_SPREAD * heavy(),
        adaptation_score=heavy(),
        carried_scale=1.0 + body_constants.CARRIED_SPREAD * heavy(),
        eaten=eaten,
        drift_kcal=0.03 * rng.standard_normal(n) * maintenance * share,
        noise_kg=np.array(readings[1:]),
        recovery_scale=1.0 + body_constants.CARRIED_SPREAD * heavy(),
    )


def _live(people: People, life: _Life, adaptation_factor: float, salt_factor: float) -> dict[Quantity, Array]:
    """Walk every body through half a year of its diet, a week at a time."""
    body, diet = people.body, people.diet
    model, state = calibrate(
        weight_kg=life.weight_kg,
        fat_kg=life.fat_kg,
        maintenance_kcal=life.maintenance_kcal,
        resting_kcal=body.resting_kcal,
        experience_years=body.experience_years,
        training_dose=body.training_dose,
        ops=OPS,
    )
    model = model._replace(
        partition_scale=life.partition_scale,
        training_gain=life.training_gain,
        unspared=life.unspared,
        salt_water_kg=salt_factor * model.salt_water_kg,
        sodium_by_carbohydrate_mg=salt_factor * model.sodium_by_carbohydrate_mg,
        surplus_activity_share=adaptation_factor * model.surplus_activity_share,
    )

    def adapted(intake: Array) -> BodyModel:
        moved = adapting(model, intake, life.adaptation_score, OPS)
        return moved._replace(adaptation_share=adaptation_factor * moved.adaptation_share)

    usual = body.usual_intake_kcal
    balanced, state = settle_at(adapted(usual), state, usual, ops=OPS)
    model = balanced
    start = state
    outcomes: dict[Quantity, list[Array]] = {quantity: [] for quantity in Quantity}
    for week in range(HORIZON_WEEKS[-1]):
        eaten = Diet(
            diet.intake_kcal * life.eaten[week],
            diet.carbohydrate_kcal * life.eaten[week],
            diet.protein_g_per_kg,
            thermic_shift_kcal=life.drift_kcal[week],
        )
        state = walk(adapted(eaten.intake_kcal), state, eaten, (7.0,), ops=OPS)[0]
        if week + 1 in HORIZON_WEEKS:
            _record(outcomes, start, state, life, life.noise_kg[HORIZON_WEEKS.index(week + 1)])
    return {quantity: np.array(values) for quantity, values in outcomes.items()}


def _record(
    outcomes: dict[Quantity, list[Array]], start: BodyState, state: BodyState, life: _Life, noise: Array
) -> None:
    # How far carried mass answers to a change of diet differs between people, and how much of it is taken back.
    weight = state.weight_kg + (life.carried_scale - 1.0) * (state.carried_kg - start.carried_kg)
    weight = weight - (life.recovery_scale - 1.0) * (state.recovered_kg - start.recovered_kg)
    outcomes[Quantity.WEIGHT].append(weight + noise)
    outcomes[Quantity.FAT_CHANGE].append(state.fat_kg - start.fat_kg)
    outcomes[Quantity.LEAN_CHANGE].append(state.lean_kg - start.lean_kg)
    outcomes[Quantity.FAT_FRACTION].append(state.fat_kg / weight)
