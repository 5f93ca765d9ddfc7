"""A drawing as a PNG: the same sheets below each other, in dots, with title and description inside.

The rasteriser and its typeface are the extra `picture`, loaded here alone. The system's own typefaces are never asked,
so that a machine without any draws the same letters.
"""

from __future__ import annotations

import re
import struct
import zlib
from pathlib import Path
from typing import TYPE_CHECKING
from xml.etree import ElementTree

if TYPE_CHECKING:
    from collections.abc import Iterable

DOTS_PER_INCH = 200
INCH_MM = 25.4
MOST_SHEETS = 24
"""Beyond this the dots of one picture would fill a gigabyte of memory."""
TYPEFACE = "Open Sans"
FACES = ("OpenSans-Regular.ttf", "OpenSans-Bold.ttf")
MISSING = (
    "a picture in dots needs the extra `picture`, which is not installed; "
    "`pip install resvg-py ttf-opensans` brings it, or write --format svg, which every browser shows"
)
_SVG = "{http://www.w3.org/2000/svg}"
_SIGNATURE = b"\x89PNG\r\n\x1a\n"
_HEADER_END = len(_SIGNATURE) + 4 + 4 + 13 + 4


class CannotPicture(Exception):
    """The drawing cannot be had in dots; the text says why and what to do."""


def still(css: str) -> str:
    """A style sheet for a reader that knows no variables and no media: on paper, in the light colours."""
    plain = _without_at_rules(css)
    root = re.search(r"svg \{(.*?)\}", plain, re.DOTALL)
    values = dict(re.findall(r"(--[\w-]+):\s*([^;]+);", root.group(1))) if root is not None else {}
    plain = re.sub(r"--[\w-]+:[^;]+;", "", plain)
    plain = re.sub(r"font-family:[^;]+;", f'font-family: "{TYPEFACE}";', plain)
    return re.sub(r"var\((--[\w-]+)\)", lambda found: values[found.group(1)], plain)


def _without_at_rules(css: str) -> str:
    """The sheet without `@page`, `@media` and their blocks."""
    kept, at = "", 0
    for found in re.finditer(r"@[^{]*\{", css):
        if found.start() < at:
            continue
        kept += css[at : found.start()]
        depth, at = 1, found.end()
        while depth:
            depth += {"{": 1, "}": -1}.get(css[at], 0)
            at += 1
    return kept + css[at:]


def png(pieces: Iterable[str], sheets_tall_mm: float) -> bytes:
    """The drawing as the bytes of a PNG, at 200 dots an inch.

    Parameters
    ----------
    pieces : an SVG whose style sheet went through `still`.
    sheets_tall_mm : height of one sheet, to tell how many there are.

    Raises
    ------
    CannotPicture: the extra is missing, or there are too many sheets.
    """
    try:
        import resvg_py
        import ttf_opensans
    except ImportError as error:
        raise CannotPicture(MISSING) from error
    drawing = "".join(pieces)
    root = ElementTree.fromstring(drawing)
    sheets = float(root.attrib["height"].removesuffix("mm")) / sheets_tall_mm
    if sheets > MOST_SHEETS:
        raise CannotPicture(
            f"this drawing has {sheets:.0f} sheets, and a picture in dots holds {MOST_SHEETS}; write --format svg"
        )
    faces = Path(ttf_opensans.__file__).parent / "ttf"
    dots = resvg_py.svg_to_bytes(
        svg_string=drawing,
        dpi=float(DOTS_PER_INCH),
        skip_system_fonts=True,
        font_files=[str(faces / name) for name in FACES],
        font_family=TYPEFACE,
    )
    told = {"Title": root.findtext(f"{_SVG}title", ""), "Description": root.findtext(f"{_SVG}desc", "")}
    return _told(bytes(dots), told)


def _told(dots: bytes, told: dict[str, str]) -> bytes:
    """The picture with its size on paper and its texts, right after its header."""
    per_metre = round(DOTS_PER_INCH / INCH_MM * 1000.0)
    more = [_chunk(b"pHYs", struct.pack(">IIB", per_metre, per_metre, 1))]
    for word, text in told.items():
        # Keyword, not compressed, English, keyword not translated: PNG specification, iTXt.
        more.append(_chunk(b"iTXt", word.encode("ascii") + b"\0\0\0en\0\0" + text.encode("utf-8")))
    return dots[:_HEADER_END] + b"".join(more) + dots[_HEADER_END:]


def _chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
