"""A band of body fat to stay in, and a cut from one body fat to another: neither may be narrower than makes sense."""

from steelyard.science.phase import Band
from steelyard.science.register import Contradiction

# A narrower band has no room for the lines inside it; judgement.
_LEAST_BAND = 0.02
# A cut that ends nearer to where it starts is over before water has settled; judgement.
_LEAST_DROP = 0.01
_ROUNDING = 1e-9  # 0.1 + 0.02 is a little more than 0.12


def check_band(band: Band | None, name: str) -> None:
    """Raises ``Contradiction`` naming the upper end of a band, called ``name``, that is inverted or too narrow."""
    if band is not None and band.upper < band.lower + _LEAST_BAND - _ROUNDING:
        detail = "The band is inverted or under two points wide: set its upper end above its lower end."
        raise Contradiction("BAND_INVERTED", f"{name}.upper_fat_fraction", detail)


def check_drop(cut_at: float, cut_to: float, name: str) -> None:
    """Raises ``Contradiction`` naming the end of a cut, of the strategy called ``name``, that is too near its start."""
    if cut_to > cut_at - _LEAST_DROP + _ROUNDING:
        detail = "Set `cut_to_fat_fraction` at least one point (0.01) under `cut_at_fat_fraction`."
        raise Contradiction("CUT_ENDS_ABOVE_START", f"{name}.cut_to_fat_fraction", detail)
