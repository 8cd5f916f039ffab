"""What is at least eaten: the floors of a deficit, and those of a hold or a gain."""

from collections.abc import Callable, Sequence
from typing import NamedTuple, Protocol, TypeVar

from ..body import FAT_SUPPLY_LIMIT
from ..numbers import FLOATS, Elementwise, Number, compiled, inlined
from ..person import Sex
from .person_rails import is_underweight, may_not_diet
from .subject import (
    Subject,
    availability_left,
    bmi_of,
    fat_fraction_of,
    resting_of,
    stricter,
)
from .table import (
    AVAILABILITY,
    AVAILABILITY_LIMIT,
    AVAILABILITY_WARN,
    BMI,
    BMI_FLOOR,
    BODY_FAT,
    FAT_FRACTION_FLOOR,
    FAT_SUPPLY,
    FLOOR,
    FLOOR_TOLD,
    INTAKE_FLOOR,
    LONG_PHASE_WEEKS,
    RESTING_TOLD,
)
from .why import Why

# What an intake told in whole kilocalories may be off.
WITHIN_KCAL = 0.5
STEP_KCAL = 10.0


class LeastDay(NamedTuple):
    """The least food of a day [kcal], the rule that says so, and why."""

    kcal: float
    rule: str
    why: Why


class DeficitFloors(NamedTuple):
    """What a person has to eat on each day of a deficit, whatever becomes of the body.

    ``anyhow_kcal`` is the least told by the floors of intake: as eaten, and whatever a log says; ``resting_share`` the
    same of resting energy. ``leanest`` is the least body fat, ``fade`` the body fat over which energy availability
    fades, ``is_long`` whether the deficit counts as an ordinary cut.
    """

    anyhow_kcal: float
    resting_share: float
    leanest: float
    fade: tuple[float, float]
    is_long: bool

    def told_kcal(self, now: Subject) -> float:
        """The least told to the body ``now`` by the floors of intake [kcal/d]."""
        return max(self.anyhow_kcal, self.resting_share * now.resting_now_kcal)

    def available_kcal(self, now: Subject) -> float:
        """The least intake told for the energy availability of the body ``now`` [kcal/d].

        It fades where measured body fat is high, since the limits come from lean athletes, down to what exercise takes:
        of less than that nothing would be left for the body at all.
        """
        return _available_kcal(now, *self.fade, self.is_long, *now.scale, ops=FLOATS)

    def least_kcal(self, now: Subject) -> tuple[float, str]:
        """The least intake told for the body ``now`` [kcal/d], and its rule."""
        return max(
            (self.told_kcal(now), FLOOR),
            (self.available_kcal(now), AVAILABILITY),
            (_unsupplied_kcal(now, now.scale.ratio), FAT_SUPPLY),
        )

    def are_kept(self, bodies: Sequence[Subject], eaten_kcal: Sequence[float], within_kcal: float) -> bool:
        """Whether each of the bodies of one person may be in a deficit and eat so much, as told [kcal/d]."""
        first = bodies[0]
        return _are_kept(
            bodies,
            eaten_kcal,
            within_kcal,
            self.anyhow_kcal,
            self.resting_share,
            self.leanest,
            *self.fade,
            self.is_long,
            *first.scale,
            first.height_squared,
        )


@inlined
def _available_kcal(
    now: Subject,
    fade_first: Number,
    fade_last: Number,
    is_long: bool,
    ratio: Number,
    most: Number,
    ops: Elementwise,
) -> Number:
    left = availability_left(fade_first, fade_last, now.fat_kg / now.weight_kg - now.fat_below, ops)
    fat_free_kg = now.weight_kg - now.fat_kg
    least = (left * AVAILABILITY_LIMIT * fat_free_kg + now.exercise_kcal) * most
    if is_long:
        least = ops.maximum(least, (left * AVAILABILITY_WARN * fat_free_kg + now.exercise_kcal) * ratio)
    return least


@inlined
def _unsupplied_kcal(now: Subject, ratio: Number) -> Number:
    """What body fat cannot supply of maintenance [kcal/d]."""
    return now.maintenance_kcal - ratio * FAT_SUPPLY_LIMIT * now.fat_kg


@compiled
def _are_kept(
    bodies: Sequence[Subject],
    eaten_kcal: Sequence[Number],
    within_kcal: Number,
    anyhow_kcal: Number,
    resting_share: Number,
    leanest: Number,
    fade_first: Number,
    fade_last: Number,
    is_long: bool,
    ratio: Number,
    most: Number,
    height_squared: Number,
    *,
    ops: Elementwise = FLOATS,
) -> bool:
    """``DeficitFloors.are_kept``: no body is too light or too lean, and none eats less than its least."""
    for i, now in enumerate(bodies):
        if bmi_of(now, height_squared) < BMI_FLOOR or fat_fraction_of(now) < leanest:
            return False
        least = ops.maximum(anyhow_kcal, resting_share * resting_of(now, ops))
        least = ops.maximum(least, _unsupplied_kcal(now, ratio))
        least = ops.maximum(least, _available_kcal(now, fade_first, fade_last, is_long, ratio, most, ops))
        if eaten_kcal[i] < least - within_kcal:
            return False
    return True


def deficit_floors(subject: Subject, weeks: float) -> DeficitFloors:
    """The floors of a deficit of ``weeks``."""
    most, is_long = subject.scale.most, weeks > LONG_PHASE_WEEKS
    anyhow = max(stricter(INTAKE_FLOOR, subject.sex) * most, _floor_told_kcal(subject.sex))
    resting_share = max(most, RESTING_TOLD) if is_long else RESTING_TOLD
    leanest = stricter(FAT_FRACTION_FLOOR, subject.sex)
    return DeficitFloors(anyhow, resting_share, leanest, subject.availability_fade, is_long)


def least_on_day_kcal(now: Subject, weeks: float) -> tuple[float, str]:
    """The least intake told for the body ``now`` on a day of a deficit of ``weeks`` [kcal/d], and its rule."""
    return deficit_floors(now, weeks).least_kcal(now)


def broken_on_day(now: Subject, intake_kcal: float, floors: DeficitFloors) -> str | None:
    """The rule that the body ``now`` breaks on a day of a deficit with these floors, eating ``intake_kcal`` as told."""
    if now.bmi < BMI_FLOOR:
        return BMI
    if now.fat_fraction < floors.leanest:
        return BODY_FAT
    least, rule = floors.least_kcal(now)
    return rule if intake_kcal < least - WITHIN_KCAL else None


def broken_on_days(bodies: Sequence[Subject], eaten_kcal: Sequence[float], floors: DeficitFloors) -> str | None:
    """The first rule that is broken by one of the bodies (``broken_on_day``)."""
    if floors.are_kept(bodies, eaten_kcal, WITHIN_KCAL):
        return None
    broken = (broken_on_day(now, kcal, floors) for now, kcal in zip(bodies, eaten_kcal, strict=True))
    return next(rule for rule in broken if rule is not None)


def _floor_told_kcal(sex: Sex) -> float:
    """The least intake told to anyone, whoever they are and whatever a log says [kcal/d]."""
    return FLOOR_TOLD[Sex.MALE if sex is Sex.MALE else Sex.FEMALE]


class DaysLived(Protocol):
    """Days lived on an intake, and what the rails read of the body after them."""

    @property
    def then(self) -> Subject: ...


Days = TypeVar("Days", bound=DaysLived)


class HeldFloors(NamedTuple):
    """The least told to a person on a hold or a gain [kcal/d]: anyhow, and where maintenance lies over a limit.

    ``resting_share`` of resting energy is told anyhow.
    """

    anyhow_kcal: float
    limit_kcal: float
    over_limit_kcal: float
    resting_share: float

    def least_kcal(self, resting_kcal: Number, maintenance_kcal: Number, *, ops: Elementwise = FLOATS) -> Number:
        """The least told to a body that rests and needs so much."""
        least = ops.where(maintenance_kcal > self.limit_kcal, self.over_limit_kcal, self.anyhow_kcal)
        return ops.maximum(least, self.resting_share * resting_kcal)

    def are_kept(self, bodies: Sequence[Subject], told_kcal: Sequence[float], within_kcal: float) -> bool:
        """Whether each of the bodies of one person is told its least, and none is underweight."""
        return _are_held(bodies, told_kcal, within_kcal, *self, bodies[0].height_squared)

    def held_kcal(self, now: Subject, wanted_kcal: float) -> float:
        """What is told to the body ``now``: what is wanted, and no less than the floors, up to the next 10."""
        return max(wanted_kcal, up_to_step(self.least_kcal(now.resting_now_kcal, now.maintenance_kcal)))

    def held_through(self, told_kcal: float, live: Callable[[float], Days]) -> tuple[float, Days]:
        """What is told, or as much more as the body that ``live`` makes of it needs to be told by then; lived so."""
        while True:
            lived = live(told_kcal)
            least = self.least_kcal(lived.then.resting_now_kcal, lived.then.maintenance_kcal)
            if least <= told_kcal:
                return told_kcal, lived
            told_kcal = up_to_step(least)


@compiled
def _are_held(
    bodies: Sequence[Subject],
    told_kcal: Sequence[Number],
    within_kcal: Number,
    anyhow_kcal: Number,
    limit_kcal: Number,
    over_limit_kcal: Number,
    resting_share: Number,
    height_squared: Number,
    *,
    ops: Elementwise = FLOATS,
) -> bool:
    """``HeldFloors.are_kept``."""
    for i, now in enumerate(bodies):
        if bmi_of(now, height_squared) < BMI_FLOOR:
            return False
        least = ops.where(now.maintenance_kcal > limit_kcal, over_limit_kcal, anyhow_kcal)
        least = ops.maximum(least, resting_share * resting_of(now, ops))
        if told_kcal[i] < least - within_kcal:
            return False
    return True


def held_floors(subject: Subject) -> HeldFloors:
    """The floors of a hold or a gain, whatever becomes of the body: rest, the least intake, and need.

    Who is underweight holds at maintenance, to the step that an intake is told in, and not under it.
    """
    scale = subject.scale
    least = _floor_told_kcal(subject.sex)
    if may_not_diet(subject):
        least = max(least, subject.need_kcal)
    if is_underweight(subject):
        least = max(least, subject.maintenance_kcal - STEP_KCAL)
    floor = stricter(INTAKE_FLOOR, subject.sex)
    over = max(least, floor * scale.most)
    return HeldFloors(least, floor * scale.ratio, over, max(scale.most, RESTING_TOLD))


def least_held_kcal(subject: Subject) -> float:
    """The least intake told on a hold or a gain [kcal/d]: rest, the floor where maintenance lies above it, and need."""
    return held_floors(subject).least_kcal(subject.resting_now_kcal, subject.maintenance_kcal)


def held_kcal(now: Subject, wanted_kcal: float) -> float:
    """What is told on a day of a hold or a gain: what is wanted, and no less than the floors, up to the next 10."""
    return held_floors(now).held_kcal(now, wanted_kcal)


def held_through(
    now: Subject, wanted_kcal: float, live: Callable[[float], Days], *, start: Subject | None = None
) -> tuple[float, Days]:
    """``held_kcal`` of days that ``live`` lives on an intake, whose last body has to have its floors as well.

    ``start`` is the body that all that is told starts from, where that is another.
    """
    floors = held_floors(now if start is None else start)
    return floors.held_through(floors.held_kcal(now, wanted_kcal), live)


def up_to_step(kcal: Number) -> Number:
    """The next 10 kcal up from what is at least told, a hair apart."""
    return -(-(kcal / STEP_KCAL - 1e-9) // 1.0) * STEP_KCAL
