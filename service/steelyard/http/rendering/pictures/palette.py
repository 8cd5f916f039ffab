"""Colours, dashes and shapes of pictures, for light and dark pages.

The hues are those of Okabe & Ito (2008), "Color Universal Design: How to make figures and presentations that are
friendly to colorblind people" (values from memory), which stay apart for people with any common kind of colour
vision. What stands side by side differs in lightness as well, and in dash or shape, so that a picture survives a
copier.
"""

from collections.abc import Callable, Mapping
from enum import StrEnum
from functools import partial
from typing import NamedTuple

from steelyard.science.phase import PhaseKind

from ..wording import Words

OKABE_ITO = {
    "black": "#000000",
    "orange": "#E69F00",
    "sky blue": "#56B4E9",
    "bluish green": "#009E73",
    "yellow": "#F0E442",
    "blue": "#0072B2",
    "vermillion": "#D55E00",
    "reddish purple": "#CC79A7",
}


class Theme(StrEnum):
    """The page a picture is for."""

    LIGHT = "light"
    DARK = "dark"


class PictureWidth(StrEnum):
    """What a picture is to fit."""

    PAGE = "page"
    PHONE = "phone"


# Of the panels: what is left beside the axis and the margins of 780 and 390 pixels.
_PANEL_PX = {PictureWidth.PAGE: 700, PictureWidth.PHONE: 306}


class Look(NamedTuple):
    """The colours of a theme, the width of its panels, and its words.

    Lines and symbols have a contrast of 3:1 and more, texts of 4.5:1 and more.
    """

    background: str
    ink: str  # texts, and the first line of a panel
    muted: str  # texts of less weight
    grid: str
    tissue: str
    fat: str
    lean: str
    carried: str
    fat_loss_shade: str  # behind phases
    hold_shade: str
    gain_shade: str
    band_opacity: float
    width: int  # of every panel, pixels
    words: Words


_LOOKS: Mapping[Theme, Callable[..., Look]] = {
    Theme.LIGHT: partial(
        Look,
        background="#FFFFFF",
        ink=OKABE_ITO["black"],
        muted="#4A4F55",
        grid="#C9CED3",
        tissue=OKABE_ITO["blue"],
        fat=OKABE_ITO["vermillion"],
        lean=OKABE_ITO["blue"],
        carried=OKABE_ITO["bluish green"],
        fat_loss_shade="#F9E8CF",
        hold_shade="#FFFFFF",
        gain_shade="#EAF5FC",
        band_opacity=0.13,
    ),
    Theme.DARK: partial(
        Look,
        background="#15191D",
        ink="#FFFFFF",
        muted="#C3C8CD",
        grid="#4B5259",
        tissue=OKABE_ITO["sky blue"],
        fat=OKABE_ITO["orange"],
        lean=OKABE_ITO["sky blue"],
        carried=OKABE_ITO["bluish green"],
        fat_loss_shade="#392D14",
        hold_shade="#15191D",
        gain_shade="#17293A",
        band_opacity=0.17,
    ),
}

SOLID: list[int] = []
DASHED = [7, 4]
DOTTED = [2, 3]

# Symbols of what changes, by Vega-Lite's names.
SHAPES = {"weight": "circle", "tissue": "diamond", "fat": "triangle-up", "lean": "square", "carried": "cross"}


def look_of(theme: Theme, width: PictureWidth, words: Words) -> Look:
    """What a picture is drawn with."""
    return _LOOKS[theme](width=_PANEL_PX[width], words=words)


def shade_of(look: Look, kind: str) -> str:
    """The colour behind a phase of ``kind``."""
    if PhaseKind(kind).is_deficit:
        return look.fat_loss_shade
    return look.gain_shade if kind == "gain" else look.hold_shade
