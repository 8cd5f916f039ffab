"""Numbers and dates as pictures say them. Their spaces do not break, so that a line never ends within a number."""

from datetime import date
from functools import cache

from ...languages import LANGUAGES, said_code
from ...schemas.quantities import Interval

_SPACE = "\u00a0"

READY_MADE_NAMES = {
    "slow_gain_rare_mini_cuts": "Slow gain, rare mini-cuts",
    "fast_gain_long_cut": "Fast gain, one long cut",
    "fast_gain_repeated_mini_cuts": "Fast gain, repeated mini-cuts",
    "slow_gain_no_cut": "Slow gain, no cut",
}


def day(value: date) -> str:
    """``2 March 2026``."""
    return f"{value.day} {value:%B} {value.year}".replace(" ", _SPACE)


def number(value: float, digits: int = 1, *, is_change: bool = False) -> str:
    """A number with a true minus sign, and never a minus zero; with its sign where it is a change."""
    rounded = round(value, digits) + 0.0
    text = f"{rounded:+,.{digits}f}" if is_change and rounded else f"{rounded:,.{digits}f}"
    return text.replace("-", "−")


def values(
    value: Interval,
    digits: int = 1,
    *,
    is_change: bool = False,
    scale: float = 1.0,
    unit: str = "",
    language: str = "en",
) -> str:
    """``81.9 kg (80.8 to 83.0)``."""
    ends = (value.mean, value.lower, value.upper)
    mean, lower, upper = (number(scale * end, digits, is_change=is_change) for end in ends)
    if language != "en":
        mean, lower, upper = (end.translate(_marks(language)) for end in (mean, lower, upper))
    to = said_code("picture-to", {}, language)
    return f"{mean}{f' {unit}' if unit else ''} ({lower} {to} {upper})".replace(" ", _SPACE)


@cache
def _marks(language: str) -> dict[int, str]:
    """What stands in a language for the marks of an English number."""
    from babel.numbers import get_decimal_symbol, get_group_symbol  # with the first picture in it

    locale = LANGUAGES[language].locale.replace("-", "_")
    return {ord("."): get_decimal_symbol(locale), ord(","): get_group_symbol(locale)}


def changes(value: Interval, unit: str = "kg") -> str:
    """``−2.1 kg (−2.6 to −1.6)``."""
    return values(value, is_change=True, unit=unit)


def percent(value: Interval) -> str:
    """A fraction as ``15.2 % (12.8 to 17.6)``."""
    return values(value, scale=100, unit="%")


def coverage(value: Interval) -> str:
    """``80 %``."""
    return f"{100 * value.coverage:.0f}{_SPACE}%"


def listed(parts: list[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"
