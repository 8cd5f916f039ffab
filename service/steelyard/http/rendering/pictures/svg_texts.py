"""The texts of a drawn SVG: its title and description, and the room that its lines keep to."""

import re
from html import escape, unescape

from .text_width import is_known, width_px

_TAG = re.compile(r"<[^<>]*>")
_MARK_ROLES = re.compile(r' (?:role|aria-[a-z]+)="[^"]*"')
_TEXT = re.compile(r"<text(?P<attributes>[^<>]*)(?<!/)>(?P<content>.*?)</text>")
_SPAN = re.compile(r"<tspan(?P<attributes>[^<>]*)>(?P<line>[^<>]*)</tspan>")
_SIZE = re.compile(r'font-size="([\d.]+)px"')
_LONG_PX = 60  # what is shorter has room beside it


def described(svg: str, id_: str, title: str, description: str, language: str) -> str:
    """``svg`` as one image with a title and a description, in place of a role and a name for each of its marks.

    ``id_`` keeps ids apart where a page holds several pictures.
    """
    plain = _TAG.sub(lambda tag: _MARK_ROLES.sub("", tag[0]), svg)
    opening, rest = _TEXT.sub(_fitted, plain).split(">", 1)
    texts = ""
    for name, said in (("title", title), ("desc", description)):
        texts += f'<{name} id="{name}-{id_}">{escape(said, quote=False)}</{name}>'
    spoken = f'lang="{language}" xml:lang="{language}" role="img" aria-labelledby="title-{id_} desc-{id_}"'
    return f"{opening} {spoken}>{texts}{rest}\n"


def _fitted(text: re.Match[str]) -> str:
    """A text whose lines keep their length where a viewer's font is wider than the one that was measured."""
    attributes, content = text["attributes"], text["content"]
    size = _SIZE.search(attributes)
    if size is None or "bold" in attributes:
        return text[0]
    size_px = float(size[1])
    if "<tspan" not in content:
        return f"<text{attributes}{_length(content, size_px)}>{content}</text>"
    spans = _SPAN.sub(
        lambda span: f"<tspan{span['attributes']}{_length(span['line'], size_px)}>{span['line']}</tspan>", content
    )
    return f"<text{attributes}>{spans}</text>"


def _length(line: str, size_px: float) -> str:
    said = unescape(line)
    width = width_px(said, size_px)
    if width < _LONG_PX or not is_known(said):
        return ""
    return f' textLength="{width:.1f}" lengthAdjust="spacingAndGlyphs"'
