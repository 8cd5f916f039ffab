"""What a caller tells of a member."""

from typing import NamedTuple

from ..body import Adherence
from ..log import Log
from ..measures import FatEstimate
from ..numbers import Estimate
from ..person import BodyFatMethod, Person, Screening, Sex
from ..register import Message


class FatRead(NamedTuple):
    """A reading of body fat on a day (fraction), its error and method."""

    day: int
    fat_fraction: float
    sd: float
    method: BodyFatMethod


class Steered(NamedTuple):
    """Maintenance as told [kcal/d] that the scale showed by a day in reviews of somebody who hardly logs food."""

    day: int
    maintenance: Estimate


class StartingBody(NamedTuple):
    """The body on the first morning of a phase [kg]."""

    weight: Estimate
    fat_kg: Estimate
    method: BodyFatMethod
    is_measured: bool


class ToldBefore(NamedTuple):
    """What an earlier answer told: logged over eaten energy, and physical maintenance [kcal/d]."""

    ratio: float
    physical_kcal: float


class Known(NamedTuple):
    """What a state tells of a member on ``day``."""

    day: int
    sex: Sex
    height_cm: float
    body: StartingBody
    maintenance: Estimate | None = None  # where the caller told it
    usual_intake_kcal: float | None = None
    readings: tuple[FatRead, ...] = ()
    log: Log | None = None  # so far
    adherence: Adherence | None = None  # how well deficits were kept to
    told_before: ToldBefore | None = None  # what was told of their log
    steered: Steered | None = None  # what weight taught of the maintenance of who hardly logs food
    weighed_before: tuple[float, ...] = ()  # weights known of the phases so far [kg]
    carried_kg: float = 0.0  # of its weight, beyond what is usually carried


class Told(NamedTuple):
    """What a caller tells of a member.

    ``maintenance`` [kcal/d] where it is known, else it comes from ``log`` read on ``as_of_day`` (its last day when
    None), else from the equations; ``current_intake_kcal`` is eaten a day now, maintenance when None. ``fat``
    is body fat where more is known of it than one reading; ``notes`` say what of all that does not agree.
    ``is_plant_based``: whether all protein is of plants. ``carried_kg`` of the person's weight is known to be carried
    beyond the usual.
    ``known`` comes from an earlier answer; once ``is_settled`` it has taken the place of what it knows.
    """

    person: Person
    screening: Screening | None = None
    maintenance: Estimate | None = None
    log: Log | None = None
    as_of_day: int | None = None
    current_intake_kcal: float | None = None
    fat: FatEstimate | None = None
    notes: tuple[Message, ...] = ()
    known: Known | None = None
    is_settled: bool = False
    is_plant_based: bool = False
    carried_kg: float = 0.0
