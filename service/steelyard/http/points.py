"""A point of a forecast as the wire shows it."""

from datetime import date

from steelyard.science.body import PathPoint

from .mapping import FRACTION, KCAL, KG, spread
from .schemas.plans import ForecastPoint


def forecast_point(day: date, at: PathPoint) -> ForecastPoint:
    """The body at a point with 80 % intervals."""
    weight, fat, lean, carried, maintenance, fraction, sd, weighing_sd = at
    _, fat_sd, lean_sd, carried_sd, maintenance_sd, fraction_sd = sd
    return ForecastPoint(
        date=day,
        weight_kg=spread(weight, weighing_sd, KG),
        fat_kg=spread(fat, fat_sd, KG),
        lean_kg=spread(lean, lean_sd, KG),
        carried_kg=spread(carried, carried_sd, KG),
        fat_fraction=spread(fraction, fraction_sd, FRACTION),
        maintenance_kcal=spread(maintenance, maintenance_sd, KCAL),
    )
