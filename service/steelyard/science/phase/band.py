"""The band of body fat that a person wants to stay in, and the usual one."""

from typing import NamedTuple

from ..person import Sex
from ..register import Basis, constant
from .defaults import FAT_CEILING

_BAND_LOWER = {
    Sex.MALE: constant(
        "band_lower_male", 0.10, unit="1", basis=Basis.COMMON_PRACTICE,
        summary="Lower end of the body-fat band of men aiming to look lean all year: 10-15 %, a cut from 15-17 %",
    ),
    Sex.FEMALE: constant(
        "band_lower_female", 0.18, unit="1", basis=Basis.JUDGEMENT,
        summary="Lower end of the body-fat band of women aiming to look lean all year, by analogy: 18-24 %",
    ),
}  # fmt: skip


class Band(NamedTuple):
    """The body-fat fractions between which a person wants to stay."""

    lower: float
    upper: float


def usual_band(sex: Sex) -> Band:
    """The band where none was chosen. Where neither set fits, the one that asks for less leanness."""
    if sex is Sex.UNSPECIFIED:
        return Band(max(_BAND_LOWER.values()), max(FAT_CEILING.values()))
    return Band(_BAND_LOWER[sex], FAT_CEILING[sex])


def usual_ceiling(sex: Sex) -> float:
    """The body fat at which a gain ends where no other was chosen: the upper end of the band, as of a season's."""
    return usual_band(sex).upper
