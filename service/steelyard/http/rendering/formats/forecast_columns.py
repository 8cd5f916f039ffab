"""The columns of a forecast in a table (RFC 4180), units in their names."""

from ...schemas.phases import ForecastPoint

_COLUMNS = (
    ("weight", "weight_kg", "kg"),
    ("fat", "fat_kg", "kg"),
    ("lean", "lean_kg", "kg"),
    ("carried", "carried_kg", "kg"),
    ("body_fat", "fat_fraction", "fraction"),
    ("maintenance", "maintenance_kcal", "kcal_per_day"),
)
HEADER = (
    *(f"{name}_{end}_{unit}" for name, _, unit in _COLUMNS for end in ("lower", "mean", "upper")),
    "interval_coverage_fraction",
)


def cells(point: ForecastPoint) -> list[float]:
    """The cells of one point."""
    values = [getattr(point, field) for _, field, _ in _COLUMNS]
    return [*(end for value in values for end in (value.lower, value.mean, value.upper)), values[0].coverage]
