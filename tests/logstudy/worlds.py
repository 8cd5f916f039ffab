"""Simulated people who keep a log, from four worlds that differ, vectorised over people.

``OWN`` follows the service's own body model, spread as its registered spreads say. The other three are foreign: one
tissue with an energy per kilogram of its own for loss and gain (7,000-12,000 kcal), carried mass of 1-3 kg per
1,000 kcal, a logging ratio of 0.75-1 that drifts, noise of 0.3-0.8 kg. They differ in what else happens: ``PLAIN``
has only drifting habits, ``WATER`` a cycle, creatine, lasting steps of either sign and spikes that fade, ``LAPSES``
days that are not logged or weighed because more was eaten, holidays, and a ratio that falls when a diet begins. Their
constants are invented within the ranges that the literature on carried mass, energy per kilogram and under-reporting
spans.
"""

from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray
from steelyard.science.body import BodyModel, BodyState, Diet, advance, calibrate
from steelyard.science.body.constants import (
    ADAPTATION_SHARE,
    CARRIED_SPREAD,
    FAT_UPKEEP,
    LEAN_UPKEEP,
    THERMIC_SHARE,
    TRAINING_GAIN,
)
from steelyard.science.body.uncertainty import ADAPTATION_SPREAD, PARTITION_SPREAD, SPARING_SPREAD, TRAINING_GAIN_SPREAD
from steelyard.science.numbers import arrays

Array = NDArray[np.float64]
OPS = arrays()
OWN, PLAIN, WATER, LAPSES = WORLDS = ("own", "plain", "water", "lapses")
CUT, HOLD, GAIN, TURNS = PLANS = ("cut", "hold", "gain", "turns")
PRIOR_SD = 0.11  # of maintenance by the equations, as a fraction
OWN_DRIFT, LOGGED_ERROR = 0.004, 0.04  # of a ratio, a root week; of a logged day beside it
NOISE_KG, LAG = (0.3, 0.8), (0.0, 0.4)  # of scales, and how much of it lingers: from, to


class Truth(NamedTuple):
    """What happened, by day (rows) and person (columns); maintenance is physical, at the day's body, adaptation
    settled."""

    tissue_kg: Array
    fat_kg: Array
    carried_kg: Array
    maintenance_kcal: Array
    ratio: Array
    eaten_kcal: Array


class Logs(NamedTuple):
    """What is sent: columns as in ``DailyLog``, and what the service is told of the person."""

    weight_kg: Array
    is_weighed: Array
    intake_kcal: Array
    is_logged: Array
    cycle_day: Array | None  # first day of the last cycle that began before the log
    body_kg: Array
    fat_kg: Array
    prior_kcal: Array
    phase_day: Array  # on which the last phase began
    noise_sd_kg: Array
    aim_kcal: Array  # what they take for maintenance, as they log it
    truth: Truth


def planned(plan: str, days: int, people: int, rng: np.random.Generator) -> tuple[Array, Array]:
    """Energy balance meant on each day, as a fraction of what each takes for maintenance, and when phases begin.

    A single phase follows up to a week of ordinary eating; mixtures change at a random day (or a few of them).
    """
    balance = np.zeros((days, people))
    starts = np.zeros(people)
    size = {CUT: -1.0, HOLD: 0.0, GAIN: 1.0}
    for person in range(people):
        if plan == TURNS:
            kinds = list(rng.permutation([CUT, HOLD, GAIN]))
            count = 2 if days <= 90 else max(3, days // 70)
            kinds = [kinds[i % 3] for i in range(count)]
            cuts = (
                np.sort(rng.uniform(0.25, 0.85, 1))
                if count == 2
                else (np.arange(1, count) + rng.uniform(-0.3, 0.3)) / count
            )
            bounds = [0, *(int(c * days) for c in cuts), days]
        else:
            lead = int(rng.integers(0, 8))
            kinds, bounds = [HOLD, plan], [0, lead, days]
        for kind, first, end in zip(kinds, bounds[:-1], bounds[1:], strict=True):
            share = size[kind] * (rng.uniform(0.12, 0.27) if kind == CUT else rng.uniform(0.04, 0.14))
            balance[first:end, person] = share
            starts[person] = first
    return balance, starts


def resting_kcal(weight: Any, fat: Any) -> Any:
    """Resting energy [kcal/d] of a body [kg], as the worlds and those who read them take it."""
    return 500.0 + 22.0 * (weight - fat)


def maintenance_of(told: Any, rng: np.random.Generator, people: int) -> Array:
    """Maintenance of people to whom the equations tell ``told`` [kcal/d]."""
    return np.asarray(told * np.exp(PRIOR_SD * np.clip(rng.standard_normal(people), -2.5, 2.5)))


def fat_read(fat: Any, weight: Any, rng: np.random.Generator, people: int) -> Array:
    """Fat as it is measured [kg]; as it errs alike both ways, also what it may be where that was measured."""
    return np.clip(fat + weight * 0.035 * rng.standard_normal(people), 0.05 * weight, 0.5 * weight)


def own_ratio(rng: np.random.Generator, people: int) -> Array:
    """Logging ratios of ``OWN`` as a log begins."""
    return np.clip(0.86 + 0.08 * rng.standard_normal(people), 0.6, 1.05)


class Lives:
    """People of a world who live day by day on what they are told. ``given`` replaces what is drawn, by name.

    What is drawn does not depend on what is told: two runs of a seed are the same people in the same weather.
    """

    def __init__(self, world: str, plan: str, days: int, people: int, seed: int, **given: Any) -> None:
        self.world, self.days, self.people, self.given = world, days, people, given
        self._rng = rng = np.random.default_rng([seed, WORLDS.index(world), PLANS.index(plan), days])
        normal, uniform = rng.standard_normal, rng.uniform
        weight = given.get("body_kg", uniform(55.0, 105.0, people))
        fat = given.get("fat_share", uniform(0.12, 0.32, people)) * weight
        resting = resting_kcal(weight, fat)
        told = given.get("prior_kcal", resting * uniform(1.45, 1.85, people))
        maintenance = maintenance_of(told, rng, people)
        self.body_kg, self.prior_kcal = weight, told
        self.fat_kg = fat_read(fat, weight, rng, people)
        self.balance, self.starts = planned(plan, days, people, rng)
        if "balance" in given:
            self.balance, self.starts = given["balance"], given["starts"]
        ratio0 = own_ratio(rng, people) if world == OWN else uniform(0.75, 1.0, people)
        self._ratio0 = ratio0
        self._drift = {OWN: OWN_DRIFT, PLAIN: 0.006, WATER: 0.006, LAPSES: 0.006}[world]  # a root week
        self._drop = np.zeros(people)
        if world == LAPSES:
            self._drop = 0.06 * rng.random(people)
        self.noise_sd_kg, self._lag = uniform(*NOISE_KG, people), uniform(*LAG, people)
        # What they aim at is on their own scale: they believe maintenance is what the scale says it is, within 8 %.
        self.aim_kcal = maintenance * ratio0 * (1.0 + 0.08 * np.clip(normal(people), -2, 2))
        self._body: Any = (
            _Own(weight, fat, maintenance, resting, rng)
            if world == OWN
            else _Foreign(weight, fat, maintenance, rng, world)
        )
        self._extra = _Water(days, people, rng) if world == WATER else None
        self.cycle_day = None
        if world == WATER:
            self.cycle_day = np.where(rng.random(people) < 0.4, -rng.integers(1, 29, people).astype(float), np.nan)
        self._over = given.get("over_kcal", np.zeros(people))
        # Eaten besides and not logged, by day, as a fraction of maintenance.
        self._more = given.get("over_share", np.zeros((days, people))) * maintenance
        self._rows: dict[str, list[Array]] = {k: [] for k in ("w", "s", "i", "l", "t", "f", "c", "m", "r", "e")}
        self._error = self.noise_sd_kg * normal(people)
        self._walk = np.zeros(people)
        self._weekday0 = rng.integers(0, 7, people)
        away = world == LAPSES and days >= 28
        self._holiday = rng.integers(0, max(days, 1), people) if away else np.full(people, 10**6)
        self._slip = uniform(0.0, 0.25, people) if world == LAPSES else np.zeros(people)
        self._day_sd = uniform(0.06, 0.16, people)

    @property
    def day(self) -> int:
        """How many days have been lived."""
        return len(self._rows["w"])

    def live(self, told_kcal: Array, dieting: NDArray[np.bool_], *, by_log: bool = False) -> None:
        """A day on what they are told to eat, as they log it [kcal/d]; ``dieting``: who takes it for a deficit.

        They go by their plate, which they logged so when the log began; ``by_log`` by what the log shows now.
        """
        rng, day, people, world, rows = self._rng, self.day, self.people, self.world, self._rows
        normal = rng.standard_normal
        body = self._body
        self._walk += self._drift / 7**0.5 * normal(people)
        ratio = np.clip(self._ratio0 + self._walk - self._drop * dieting, 0.4, 1.1)
        weekend = (self._weekday0 + day) % 7 >= 5
        away = (day >= self._holiday) & (day < self._holiday + 8)
        meant = told_kcal / (ratio if by_log else self._ratio0)
        wobble = self._day_sd * normal(people) + np.where(weekend, 0.08, -0.032) * (world != OWN)
        lapsed = (
            (rng.random(people) < self._slip * np.where(weekend, 0.6, 0.15))
            if world == LAPSES
            else np.zeros(people, bool)
        )
        beside = self._over * (day >= self.starts) + self._more[day]
        told_share = meant * np.exp(wobble) * np.where(away, 1.2, 1.0) * np.where(lapsed, 1.35, 1.0)
        eaten = told_share + beside
        logged = ratio * told_share * (1.0 + LOGGED_ERROR * normal(people))
        misses_log = (rng.random(people) < np.where(lapsed, 0.7, 0.05)) | (away & (rng.random(people) < 0.7))
        heavy = world in (WATER, LAPSES)
        draw = rng.standard_t(4.0, people) / 2**0.5 if heavy else normal(people)
        lag = self._lag
        self._error = lag * self._error + np.sqrt(1 - lag**2) * self.noise_sd_kg * draw
        sway = 0.15 * np.sin(2 * np.pi * ((self._weekday0 + day) % 7) / 7) if world == PLAIN else 0.0
        on_day = self._error + sway
        water = np.zeros(people)
        lasting = np.zeros(people)
        if self._extra is not None:
            lasting = self._extra.on(day)
            since = (day - self.cycle_day) % 28.0
            rise = np.clip(np.maximum(1 - (since - 2) / 4, 1 - (28 - since) / 7), 0, 1)
            water = np.where(np.isnan(self.cycle_day), 0.0, self._extra.cycle_kg * rise)
        if "water_kg" in self.given:
            lasting = lasting + self.given["water_kg"][day]
        carried = body.carried() + lasting
        scale = self.body_kg - body.start + body.tissue() + carried + water + on_day
        hides = (rng.random(people) < 0.5) & (on_day + carried > 0.7) if world == LAPSES else np.zeros(people, bool)
        seen = (rng.random(people) >= 0.2) & ~hides & ~(away & (rng.random(people) < 0.8))
        if day == 0:
            seen = np.ones(people, bool)
        rows["w"].append(np.where(seen, scale, 0.0))
        rows["s"].append(seen.astype(float))
        rows["i"].append(np.where(misses_log, 0.0, np.round(logged, -1)))
        rows["l"].append((~misses_log).astype(float))
        rows["t"].append(body.tissue())
        rows["f"].append(body.fat())
        rows["c"].append(carried)
        rows["m"].append(body.settled())
        rows["r"].append(np.clip(ratio * told_share / eaten, 0.2, 1.2))
        rows["e"].append(eaten)
        body.next_day(eaten)

    def logs(self) -> Logs:
        """What they have sent until now, and what happened."""
        rows = self._rows
        truth = Truth(*(np.array(rows[k]) for k in ("t", "f", "c", "m", "r", "e")))
        return Logs(
            np.array(rows["w"]), np.array(rows["s"]), np.array(rows["i"]), np.array(rows["l"]), self.cycle_day,
            self.body_kg, self.fat_kg, self.prior_kcal, self.starts, self.noise_sd_kg, self.aim_kcal, truth,
        )  # fmt: skip


def simulate(world: str, plan: str, days: int, people: int, seed: int, **given: Any) -> Logs:
    """People of a world with a plan. ``given`` replaces what is drawn, by name."""
    lives = Lives(world, plan, days, people, seed, **given)
    for day in range(days):
        balance = lives.balance[day]
        lives.live(lives.aim_kcal * (1.0 + balance), balance < -0.03)
    return lives.logs()


class _Own:
    """The service's body."""

    def __init__(
        self, weight: Array, fat: Array, maintenance: Array, resting: Array, rng: np.random.Generator,
        carries: Array | None = None,
    ) -> None:  # fmt: skip
        people = len(weight)
        draws = rng.standard_normal((4, people))
        self._model: BodyModel
        self._state: BodyState
        model, self._state = calibrate(
            weight_kg=weight, fat_kg=fat, maintenance_kcal=maintenance, resting_kcal=resting,
            experience_years=rng.uniform(1.0, 6.0, people), training_dose=1.0, ops=OPS,
        )  # fmt: skip
        self._model = model._replace(
            partition_scale=np.exp(PARTITION_SPREAD * draws[0]),
            adaptation_share=np.clip(ADAPTATION_SHARE + ADAPTATION_SPREAD * draws[1], 0.0, 0.4),
            training_gain=TRAINING_GAIN * np.clip(1.0 + TRAINING_GAIN_SPREAD * draws[2], 0.0, 2.5),
            unspared=-SPARING_SPREAD * draws[2],
        )
        self._carries = np.clip(1.0 + CARRIED_SPREAD * draws[3], 0.0, 2.5) if carries is None else carries
        self.start = np.asarray(self._state.tissue_kg)

    def tissue(self) -> Array:
        return np.asarray(self._state.tissue_kg)

    def fat(self) -> Array:
        return np.asarray(self._state.fat_kg)

    def carried(self) -> Array:
        return np.asarray(self._carries * self._state.carried_kg)

    def settled(self) -> Array:
        model, state = self._model, self._state
        share = THERMIC_SHARE + model.adaptation_share
        fixed = (
            model.offset_kcal + FAT_UPKEEP * state.fat_kg + LEAN_UPKEEP * state.lean_kg
            + model.activity_kcal_per_kg * state.weight_kg
        )  # fmt: skip
        return np.asarray((fixed - share * model.maintenance_kcal) / (1.0 - share))

    def next_day(self, eaten: Array) -> None:
        self._state = advance(self._model, self._state, Diet(eaten, 0.5 * eaten, 1.8), 1.0, ops=OPS)


def life_of_own_body(
    weight: Array, fat: Array, maintenance: Array, carries: Array, seed: int, eaten: Array
) -> tuple[Array, Array, Array]:
    """Tissue and carried mass on each morning, and maintenance on the last, of bodies of the service's kind, all but
    what is given drawn as ``OWN`` draws it; ``eaten`` has a row by body."""
    body = _Own(weight, fat, maintenance, resting_kcal(weight, fat), np.random.default_rng(seed), carries)
    tissue, carried = [], []
    for day in range(eaten.shape[1]):
        tissue.append(body.tissue())
        carried.append(body.carried())
        if day < eaten.shape[1] - 1:
            body.next_day(eaten[:, day])
    return np.array(tissue), np.array(carried), body.settled()


class _Foreign:
    """One tissue with its own energy for loss and gain, carried mass in two pools, expenditure that drifts."""

    def __init__(self, weight: Array, fat: Array, maintenance: Array, rng: np.random.Generator, world: str) -> None:
        people = len(weight)
        uniform = rng.uniform
        self._rng = np.random.default_rng(rng.integers(2**32))
        self._m0, self._shift = maintenance, np.zeros(people)
        self._loss, self._gain = uniform(7000.0, 12000.0, people), uniform(7000.0, 12000.0, people)
        self._upkeep = uniform(14.0, 26.0, people)
        self._responds = uniform(0.05, 0.25, people)  # expenditure that answers intake, on average after ten days
        self._carries = uniform(1.0, 3.0, people) / 1000.0  # kg per kcal/d
        self._fast, self._slow = uniform(1.0, 3.0, people), uniform(6.0, 11.0, people)
        self._share = uniform(0.5, 0.9, people)
        self._tissue, self._fat = weight.copy(), fat.copy()
        self._pools = np.zeros((2, people))
        self._answered = np.zeros(people)
        self._fat_loss, self._fat_gain = uniform(0.6, 1.0, people), uniform(0.45, 0.9, people)
        self.start = weight.copy()
        self._drift = 7.0 if world != PLAIN else 4.0

    def tissue(self) -> Array:
        return self._tissue.copy()

    def fat(self) -> Array:
        return self._fat.copy()

    def carried(self) -> Array:
        return np.asarray(self._pools.sum(axis=0))

    def settled(self) -> Array:
        return np.asarray(self._m0 + (self._upkeep * (self._tissue - self.start) + self._shift) / (1 - self._responds))

    def next_day(self, eaten: Array) -> None:
        excess = eaten - self._m0
        self._answered += (self._responds * excess - self._answered) / 10.0
        spent = self._m0 + self._answered + self._upkeep * (self._tissue - self.start) + self._shift
        balance = eaten - spent
        moved = balance / np.where(balance < 0.0, self._loss, self._gain)
        self._fat += moved * np.where(balance < 0.0, self._fat_loss, self._fat_gain)
        self._tissue += moved
        rest = np.clip(self._carries * excess, -3.0, 3.0)
        for row, (share, days) in enumerate(((self._share, self._fast), (1 - self._share, self._slow))):
            self._pools[row] += (share * rest - self._pools[row]) / np.maximum(days, 1.0)
        self._shift += self._drift * self._rng.standard_normal(len(eaten))


class _Water:
    """Water that eating does not explain: creatine, lasting steps, spikes that fade."""

    def __init__(self, days: int, people: int, rng: np.random.Generator) -> None:
        self._creatine = np.where(rng.random(people) < 0.25, rng.integers(0, days, people), 10**6)
        self._creatine_kg = rng.uniform(0.6, 1.4, people)
        self._ramp = np.where(rng.random(people) < 0.5, 6.0, 24.0)
        self._step = np.where(
            rng.random(people) < min(0.5, 0.3 * days / 28), rng.integers(1, max(days, 2), people), 10**6
        )
        self._step_kg = rng.normal(0.0, 0.9, people)
        self._lasts = rng.choice([14.0, 30.0, 1000.0], people)
        self._spike = rng.random((days, people)) < 0.02
        self._spike_kg = rng.normal(0.3, 0.9, (days, people))
        self._fades = rng.uniform(1.0, 4.0, people)
        self._spiked = np.zeros(people)
        self.cycle_kg = np.clip(0.45 + 0.5 * rng.standard_normal(people), 0.0, 2.0)

    def on(self, day: int) -> Array:
        self._spiked = self._spiked * np.exp(-1.0 / self._fades) + np.where(self._spike[day], self._spike_kg[day], 0.0)
        creatine = self._creatine_kg * np.clip((day - self._creatine) / self._ramp, 0.0, 1.0)
        since = day - self._step
        step = np.where(since >= 0, self._step_kg * np.exp(-np.maximum(since, 0) / self._lasts), 0.0)
        return np.asarray(creatine + step + self._spiked)
