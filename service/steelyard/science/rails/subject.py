"""What the guard rails read of a person, what a rail does, and a refusal, which is all that are due at once."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

import msgspec

from ..body import FAT_UPKEEP, LEAN_UPKEEP
from ..numbers import FLOATS, Elementwise, Number, inlined, new_tuple
from ..person import Screening, Sex, TrainingStatus
from ..register import Message
from .protein import protein_reference_kg
from .table import (
    AVAILABILITY_FADE,
    BREASTFEEDING_KCAL,
    LIGHTER_SHARE,
    NEED_RATIO_LEAST,
    NEED_SHARE,
)


class RailAction(msgspec.Struct, frozen=True):
    """What a rail did: ``capped``, ``warned`` or ``refused``, with its limit and what it saw."""

    id: str
    action: str
    limit: float | None
    observed: float | None
    unit: str
    message: Message


class Refused(Exception):  # noqa: N818 - a refusal is an answer, not a fault
    """Rails refuse. ``field`` names the input that the first reads (``register/errors.py``), ``all`` has every one.

    ``doubts`` ask about what was sent: a slip of units may be why.
    """

    def __init__(
        self, action: RailAction, field: str, *more: tuple[RailAction, str], doubts: tuple[Message, ...] = ()
    ) -> None:
        self.all = ((action, field), *more)
        self.doubts = doubts
        super().__init__(", ".join(one.message.code for one, _ in self.all))
        self.action = action
        self.field = field

    def doubting(self, doubts: tuple[Message, ...]) -> "Refused":
        """The same refusal, asking about what was sent as well."""
        return Refused(*self.all[0], *self.all[1:], doubts=doubts)

    @property
    def actions(self) -> list[RailAction]:
        """What each rail did."""
        return [action for action, _ in self.all]

    @property
    def messages(self) -> list[Message]:
        """What each of them says."""
        return [action.message for action, _ in self.all]

    @property
    def ids(self) -> frozenset[str]:
        """The rules that refuse."""
        return frozenset(action.id for action, _ in self.all)


class Scale(NamedTuple):
    """Logged over eaten energy: its mean, and the upper end of its 80 % interval, 1 at most.

    What is told is on the scale of the log; rails on the body hold for what is eaten. 1 where no log was read.
    """

    ratio: float = 1.0
    most: float = 1.0

    @property
    def is_learnt(self) -> bool:
        """Whether a log tells it."""
        return self != Scale()


class Logged(NamedTuple):
    """What a log says as it stands: what is eaten, how fast weight falls, and where it stands.

    ``eaten_kcal`` is on the logging scale, None with less than a week of full days; ``loss_share`` is the slower of the
    two halves of four weeks, of body mass a week, 0 where there are not enough weights; ``weight_kg`` None likewise.
    """

    eaten_kcal: float | None = None
    loss_share: float = 0.0
    weight_kg: float | None = None

    def lighter_kg(self, weight_kg: float) -> float | None:
        """Its weight, where that is clearly under the one told; None where not, or where it is in another unit."""
        found = self.weight_kg
        return found if found is not None and 0.5 < found / weight_kg < 1.0 - LIGHTER_SHARE else None


class Subject(NamedTuple):
    """What the rails read of a person on a day. ``maintenance_kcal`` is on the logging scale, as what is told is.

    ``fat_below`` is the lower half of the interval of measured body fat [fraction]; ``physical_kcal`` the higher of the
    means of the equations and of the log, 0 where neither is known. ``is_plant_based``: whether all
    protein is of plants. ``weight_field``: what was told that has the weight. ``resting_kcal`` is that of a body of
    ``rested_fat_kg`` and ``rested_lean_kg``, which the equations were asked about; rails read ``resting_now_kcal``.
    ``carried_kg`` is what is carried by what is eaten, ``water_kg`` what is known to be carried besides: it is no body
    mass, but may be tissue, so that floors at rest count it.
    """

    sex: Sex
    age_years: float
    height_cm: float
    weight_kg: float
    fat_kg: float
    maintenance_kcal: float
    resting_kcal: float
    rested_fat_kg: float
    rested_lean_kg: float
    exercise_kcal: float
    training_status: TrainingStatus
    screening: Screening | None
    scale: Scale = Scale()
    is_fat_measured: bool = True
    fat_below: float = 0.0
    physical_kcal: float = 0.0
    logged: Logged = Logged()
    is_plant_based: bool = False
    weight_field: str = "weight_kg"
    water_kg: float = 0.0
    carried_kg: float = 0.0

    def with_body(self, weight_kg: float, fat_kg: float, maintenance_kcal: float, carried_kg: float) -> "Subject":
        """The same person in the body of another day: ``_replace``, but faster, as rails are read on each of them."""
        return new_tuple(Subject, (*self[:3], weight_kg, fat_kg, maintenance_kcal, *self[6:-1], carried_kg))

    def with_bodies(self, bodies: Iterable[tuple[float, float, float, float]]) -> Iterator["Subject"]:
        """``with_body`` of each of the bodies."""
        who, rest = self[:3], self[6:-1]
        for weight_kg, fat_kg, maintenance_kcal, carried_kg in bodies:
            yield new_tuple(Subject, (*who, weight_kg, fat_kg, maintenance_kcal, *rest, carried_kg))

    def rested_with(self, carried_kg: float) -> "Subject":
        """The same person, whose present body is the one that rests so, with so much carried in it by what is eaten.

        That is no lean tissue, and part of what was known to be carried.
        """
        rested_lean_kg = self.weight_kg - carried_kg - self.fat_kg
        water_kg = max(0.0, self.water_kg - carried_kg) if self.water_kg else 0.0
        return new_tuple(Subject, (*self[:8], rested_lean_kg, *self[9:-2], water_kg, self.carried_kg))

    @property
    def resting_now_kcal(self) -> float:
        """Resting energy of this body [kcal/d], as the floors at rest read it (``resting_now``)."""
        return resting_of(self)

    @property
    def settled_kg(self) -> float:
        """Tissue and what is usually carried [kg]."""
        return self.weight_kg - self.carried_kg - self.water_kg

    @property
    def height_squared(self) -> float:
        """By which a body mass index is divided [m2]."""
        return (self.height_cm / 100.0) ** 2

    @property
    def bmi(self) -> float:
        """Body mass index of tissue and what is usually carried [kg/m2]: a week's water changes nothing."""
        return bmi_of(self, self.height_squared)

    @property
    def is_pregnant(self) -> bool:
        """As told."""
        return self.screening is not None and self.screening.is_pregnant

    @property
    def is_breastfeeding(self) -> bool:
        """As told."""
        return self.screening is not None and self.screening.is_breastfeeding

    @property
    def fat_fraction(self) -> float:
        """Fat mass over body mass."""
        return fat_fraction_of(self)

    @property
    def protein_kg(self) -> float:
        """The body mass that protein is shared out for [kg]."""
        return protein_reference_kg(self.sex, self.height_cm, self.weight_kg, self.fat_kg)

    @property
    def fat_free_kg(self) -> float:
        """Fat-free mass [kg]."""
        return self.weight_kg - self.fat_kg

    @property
    def availability_fade(self) -> tuple[float, float]:
        """Body fat from and to which limits on energy availability fade; out of reach where it was not measured."""
        if not self.is_fat_measured:
            return 2.0, 3.0
        return AVAILABILITY_FADE[Sex.MALE if self.sex is Sex.MALE else Sex.FEMALE]

    @property
    def availability_left(self) -> float:
        """What is left of the limits on energy availability at this body fat: 1 for the lean, 0 where they only warn.

        Fat from height and weight never exempts. Where neither sex fits, the fade that begins later.
        """
        return availability_left(*self.availability_fade, self.fat_fraction - self.fat_below)

    def availability(self, eaten_kcal: float) -> float:
        """Energy that exercise leaves the body of what is eaten [kcal/d per kg of fat-free mass]."""
        return (eaten_kcal - self.exercise_kcal) / self.fat_free_kg

    @property
    def need_kcal(self) -> float:
        """The least to be told, on the logging scale, to somebody whose intake may not be lowered [kcal/d]."""
        share = 1.0 if self.is_pregnant else NEED_SHARE
        need = self.physical_kcal + (BREASTFEEDING_KCAL if self.is_breastfeeding else 0.0)
        return share * need * max(self.scale.ratio, NEED_RATIO_LEAST)


@inlined
def bmi_of(now: Subject, height_squared: Number) -> Number:
    """``Subject.bmi``, of somebody of a squared height [m2]."""
    return (now.weight_kg - now.carried_kg - now.water_kg) / height_squared


@inlined
def resting_of(now: Subject, ops: Elementwise = FLOATS) -> Number:
    """``Subject.resting_now_kcal``."""
    lean_kg = now.weight_kg - now.carried_kg - now.fat_kg - now.rested_lean_kg
    return resting_now(now.resting_kcal, now.fat_kg - now.rested_fat_kg, lean_kg, ops)


@inlined
def resting_now(resting_kcal: Number, fat_kg: Number, lean_kg: Number, ops: Elementwise = FLOATS) -> Number:
    """Resting energy of a body that has gained so much fat and lean tissue since it rested so [kcal/d].

    What was gained rests too, and has its floors. What was lost is left in: the equations' own figure, of the body they
    were asked about, protects more.
    """
    return resting_kcal + ops.maximum(0.0, FAT_UPKEEP * fat_kg + LEAN_UPKEEP * lean_kg)


@inlined
def fat_fraction_of(now: Subject) -> Number:
    """``Subject.fat_fraction``."""
    return now.fat_kg / now.weight_kg


@inlined
def availability_left(first: Number, last: Number, fat_fraction: Number, ops: Elementwise = FLOATS) -> Number:
    """What a fade from ``first`` to ``last`` leaves of the limits on energy availability at a body fat."""
    return ops.minimum(1.0, ops.maximum(0.0, (last - fat_fraction) / (last - first)))


def each_once(actions: Iterable[RailAction], *, is_least: bool = False) -> list[RailAction]:
    """What rails did, once for each rule and kind of message; a warning once whichever of its rules is near.

    Told is where it was done first, or where ``is_least`` where the least was observed.
    """
    found: dict[tuple[str, str], RailAction] = {}
    for action in actions:
        kind = ("" if action.action == "warned" else action.id, action.message.code)
        told = found.setdefault(kind, action)
        if is_least and (action.observed or 0.0) < (told.observed or 0.0):
            found[kind] = action
    return list(found.values())


def without_echoes(actions: list[RailAction]) -> list[RailAction]:
    """What rails did, each warning once, and none in the very words of what a rail has held."""
    held = [action.message for action in actions if action.action != "warned"]
    return each_once(action for action in actions if action.action != "warned" or action.message not in held)


def stricter(table: dict[Sex, float], sex: Sex) -> float:
    """The limit for a sex; the stricter (higher) one where neither set fits."""
    return max(table.values()) if sex is Sex.UNSPECIFIED else table[sex]


def as_under(value: float) -> float:
    """A figure that lies under a limit, to the hundredth that a text tells: rounded down, so as not to read as it."""
    return (100.0 * value + 1e-9) // 1.0 / 100.0


def refusing(
    id: str, field: str, message: Message, limit: float | None = None, observed: float | None = None, unit: str = ""
) -> tuple[RailAction, str]:
    """One rule's refusal and the field that it reads."""
    return RailAction(id, "refused", limit, observed, unit, message), field


def warning(
    id: str, message: Message, limit: float | None = None, observed: float | None = None, unit: str = ""
) -> RailAction:
    """One rule's warning."""
    return RailAction(id, "warned", limit, observed, unit, message)


def capping(id: str, message: Message, limit: float, observed: float, unit: str) -> RailAction:
    """One rule's cap."""
    return RailAction(id, "capped", limit, observed, unit, message)
