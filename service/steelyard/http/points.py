"""A point of a forecast as the wire shows it."""

from datetime import date

from steelyard.core.forecast import Forecast, Spread
from steelyard.core.weight_noise import NOISE_FLOOR_KG, NOISE_FRACTION

from .mapping import FRACTION, KCAL, KG, spread
from .schemas.plans import ForecastPoint


def forecast_point(day: date, path: Forecast, i: int, sd: Spread, with_noise: bool) -> ForecastPoint:
    """The body at point ``i`` with 80 % intervals; scale weight with the noise of a single weighing."""
    state = path.states[i]
    weight = float(state.weight_kg)
    # The starting weight was itself a noisy reading, so its noise counts as well as that day's.
    noise = max(NOISE_FRACTION * weight, NOISE_FLOOR_KG) if with_noise else 0.0
    return ForecastPoint(
        date=day,
        weight_kg=spread(weight, (sd.weight_kg**2 + 2.0 * noise**2) ** 0.5, KG),
        fat_kg=spread(state.fat_kg, sd.fat_kg, KG),
        lean_kg=spread(state.lean_kg, sd.lean_kg, KG),
        carried_kg=spread(state.carried_kg, sd.carried_kg, KG),
        fat_fraction=spread(state.fat_kg / weight, sd.fat_fraction, FRACTION),
        maintenance_kcal=spread(path.maintenance_kcal(i), sd.maintenance_kcal, KCAL),
    )
