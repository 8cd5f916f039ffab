"""How much of a body is fat, by whatever was measured?"""

from typing import NamedTuple

from steelyard.science.measures import Composition, MeasuredPerson, Measurement
from steelyard.science.measures import estimate_composition as composition_of

from .answered import Answered


class CompositionAsked(NamedTuple):
    """Whose body, and what was measured of it: at least one measurement."""

    person: MeasuredPerson
    measurements: tuple[Measurement, ...]


def estimate_composition(asked: CompositionAsked) -> Answered[Composition]:
    """Estimate body fat and fat-free mass from all measurements. Raises ``OutOfDomain`` naming one."""
    found = composition_of(asked.person, asked.measurements)
    methods = {*_METHODS, *(id for row in found.rows for id in row.methods)}
    if found.position is not None:
        methods.add("healthy_body_fat")
    return Answered(found, reasons=[], cautions=list(found.cautions), methods=tuple(sorted(methods)))


_METHODS = ("body_fat_combination", "ffmi", "ffmi_normalised")
