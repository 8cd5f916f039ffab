"""How much of a body is fat, by whatever was measured?"""

from typing import NamedTuple

from steelyard.science.measures import Composition, MeasuredPerson, Measurement
from steelyard.science.measures import estimate_composition as composition_of

from .answered import Answered, answering


class CompositionAsked(NamedTuple):
    """Whose body, and what was measured of it: at least one measurement."""

    person: MeasuredPerson
    measurements: tuple[Measurement, ...]


@answering
def estimate_composition(asked: CompositionAsked) -> Answered[Composition]:
    """Estimate body fat and fat-free mass from all measurements. Raises ``OutOfDomain`` naming one."""
    found = composition_of(asked.person, asked.measurements)
    return Answered(found, reasons=[], cautions=list(found.cautions))
