"""Draws pictures in a process of its own, which ``renderer`` starts by this file's path.

It imports nothing of the service and loads the drawing library, a JavaScript engine, that holds the interpreter's lock
while it draws. Jobs come on standard input and pictures go out on standard output, each with its length before it. The
process ends with its input.
"""

import json
import struct
import sys
import zlib
from collections.abc import Iterator
from typing import Any

FRAME = struct.Struct(">cI")  # what follows, and its length
DONE, FAILED = b"D", b"F"
VEGA_LITE_VERSION = "6.4"
SCALE = 2  # pixels of a PNG to a pixel of the SVG, for screens of high resolution

_PNG_SIGNATURE = b"\x89PNG\r\n\x1a\n"
_COMPRESSION_LEVEL = 6


def main() -> None:
    """Draw until the input ends."""
    source, sink = sys.stdin.buffer, sys.stdout.buffer
    while header := source.read(FRAME.size):
        _, length = FRAME.unpack(header)
        status = DONE
        try:
            picture = draw(json.loads(source.read(length)))
        except Exception as error:
            status, picture = FAILED, type(error).__name__.encode()  # its text may quote a person
        sink.write(FRAME.pack(status, len(picture)) + picture)
        sink.flush()


def draw(job: dict[str, Any]) -> bytes:
    """The picture of a job: ``form`` (``svg`` or ``png``), ``specification``, ``title``, ``description``
    and their ``language``.

    A PNG carries title and description; an SVG is as the library draws it.
    """
    import vl_convert

    svg = vl_convert.vegalite_to_svg(job["specification"], vl_version=VEGA_LITE_VERSION, allowed_base_urls=[])
    if job["form"] == "svg":
        return svg.encode()
    return described_png(vl_convert.svg_to_png(svg, scale=SCALE), job["title"], job["description"], job["language"])


def described_png(png: bytes, title: str, description: str, language: str) -> bytes:
    """``png`` with its texts (as `iTXt` chunks), and its pixels packed to about a third of what they came in."""
    chunks = list(_chunks(png))
    pixels = zlib.decompress(b"".join(data for kind, data in chunks if kind == b"IDAT"))
    packed = zlib.compress(pixels, _COMPRESSION_LEVEL)
    before = [(kind, data) for kind, data in chunks if kind not in (b"IDAT", b"IEND")]
    texts = [(b"iTXt", _text(b"Title", title, language)), (b"iTXt", _text(b"Description", description, language))]
    out = [_PNG_SIGNATURE]
    for kind, data in [*before, *texts, (b"IDAT", packed), (b"IEND", b"")]:
        out.append(struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data)))
    return b"".join(out)


def _text(keyword: bytes, said: str, language: str) -> bytes:
    return keyword + b"\0\0\0" + language.encode() + b"\0\0" + said.encode()  # not compressed, keyword as it is


def _chunks(png: bytes) -> Iterator[tuple[bytes, bytes]]:
    place = len(_PNG_SIGNATURE)
    while place < len(png):
        (length,) = struct.unpack_from(">I", png, place)
        yield png[place + 4 : place + 8], png[place + 8 : place + 8 + length]
        place += 12 + length


if __name__ == "__main__":
    main()
