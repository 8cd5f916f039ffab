"""How wide a text is, so that it is wrapped or shortened before it runs into anything.

Widths are those of Helvetica in Adobe's Core 14 font metrics, which Arial and Liberation Sans share. The renderer
brings Liberation Sans along, so that they hold on a machine without any font.
"""

from unicodedata import normalize

FONT = "Liberation Sans, Arimo, Arial, Helvetica, Nimbus Sans, sans-serif"

_PER_MILLE = dict(
    zip(
        " !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~",
        (
            278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
            556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278,
            500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469,
            556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500,
            278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
        ),
        strict=True,
    )
) | {"ß": 611, "¿": 611, "¡": 333, "\u00a0": 278, "−": 584, "“": 333, "”": 333, "…": 1000}  # fmt: skip
_OTHER_PER_MILLE = 1000  # an em: wide enough for what the table does not know
_BOLD = 1.12  # the bold face is wider by this much at most, over a text


def width_px(text: str, size_px: float, *, is_bold: bool = False) -> float:
    """The width of one line of ``text``, a little too wide rather than too narrow."""
    width = sum(_width(character) for character in text) * size_px / 1000
    return width * _BOLD if is_bold else width


def is_known(text: str) -> bool:
    """Whether the width of each character of ``text`` is known, rather than taken for an em."""
    return all(_base(character) in _PER_MILLE for character in text)


def _width(character: str) -> int:
    found = _PER_MILLE.get(character)
    return _PER_MILLE.get(_base(character), _OTHER_PER_MILLE) if found is None else found


def _base(character: str) -> str:
    """A letter without its accent, which is as wide."""
    return normalize("NFD", character)[0]


def wrapped(text: str, size_px: float, width: float, *, is_bold: bool = False) -> list[str]:
    """``text`` in lines of at most ``width`` pixels, parted at spaces that may break; a longer word is broken."""
    lines: list[str] = []
    line = ""
    for word in text.split(" "):
        longer = f"{line} {word}" if line else word
        if width_px(longer, size_px, is_bold=is_bold) <= width:
            line = longer
            continue
        if line:
            lines.append(line)
        while width_px(word, size_px, is_bold=is_bold) > width:
            fitting = _fitting(word, size_px, width, is_bold)
            lines.append(word[:fitting])
            word = word[fitting:]
        line = word
    return [*lines, line] if line else lines


def shortened(text: str, size_px: float, width: float) -> str:
    """``text``, or its beginning and an ellipsis where it is wider than ``width`` pixels."""
    if width_px(text, size_px) <= width:
        return text
    return text[: _fitting(text, size_px, width - width_px("…", size_px), False)].rstrip() + "…"


def _fitting(text: str, size_px: float, width: float, is_bold: bool) -> int:
    """How many characters of ``text`` fit, one at least."""
    count = 1
    while count < len(text) and width_px(text[: count + 1], size_px, is_bold=is_bold) <= width:
        count += 1
    return count
