"""A point of a forecast as the wire shows it."""

from datetime import date

from steelyard.science.body import PathPoint

from .mapping import FRACTION, KCAL, KG, spread
from .schemas.plans import ForecastPoint


def forecast_point(day: date, at: PathPoint) -> ForecastPoint:
    """The body at a point with 80 % intervals."""
    weight, fat, lean, carried, maintenance, fraction, sd = at
    return ForecastPoint(
        date=day,
        weight_kg=spread(weight, sd.weight_kg, KG),
        fat_kg=spread(fat, sd.fat_kg, KG),
        lean_kg=spread(lean, sd.lean_kg, KG),
        carried_kg=spread(carried, sd.carried_kg, KG),
        fat_fraction=spread(fraction, sd.fat_fraction, FRACTION),
        maintenance_kcal=spread(maintenance, sd.maintenance_kcal, KCAL),
    )
