"""A point of a forecast as the wire shows it."""

from datetime import date

from steelyard.science.body import NOISE_FLOOR_KG, NOISE_FRACTION, Forecast, Spread

from .mapping import FRACTION, KCAL, KG, spread
from .schemas.plans import ForecastPoint


def forecast_point(day: date, path: Forecast, i: int, sd: Spread, with_noise: bool) -> ForecastPoint:
    """The body at point ``i`` with 80 % intervals; scale weight with the noise of a single weighing."""
    state = path.states[i]
    fat, lean = state.fat_kg, state.lean_kg
    weight = float(state.weight_kg)
    weight_sd, fat_sd, lean_sd, carried_sd, maintenance_sd, fraction_sd = sd
    # The starting weight was itself a noisy reading, so its noise counts as well as that day's.
    noise = max(NOISE_FRACTION * weight, NOISE_FLOOR_KG) if with_noise else 0.0
    return ForecastPoint(
        date=day,
        weight_kg=spread(weight, (weight_sd**2 + 2.0 * noise**2) ** 0.5, KG),
        fat_kg=spread(fat, fat_sd, KG),
        lean_kg=spread(lean, lean_sd, KG),
        carried_kg=spread(state.carried_kg, carried_sd, KG),
        fat_fraction=spread(fat / weight, fraction_sd, FRACTION),
        maintenance_kcal=spread(path.maintenance_kcal(i), maintenance_sd, KCAL),
    )
