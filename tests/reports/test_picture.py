"""A drawing in dots: what it shows, what it tells of itself, and that it needs nothing of the system."""

from __future__ import annotations

import re
import struct
import sys
import zlib
from collections.abc import Iterator

import pytest

from checker.reports.picture import DOTS_PER_INCH, CannotPicture, png, still
from checker.reports.plan_drawing import VIEWS, plan_drawing, plan_style
from checker.reports.plan_sheet import TALL
from tests.reports.test_plan_drawing import breach, coach, report

RED, CLEAR = (155, 36, 35), (0, 0, 0)


def small(inside: str, style: str = ".danger { fill: #9b2423; }", tall: str = "4mm") -> list[str]:
    return [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="8mm" height="{tall}" viewBox="0 0 8 4">'
        f"<title>A title</title><desc>What it shows: 10 Ω</desc><style>{style}</style>{inside}</svg>"
    ]


def chunks(picture: bytes) -> Iterator[tuple[bytes, bytes]]:
    assert picture.startswith(b"\x89PNG\r\n\x1a\n")
    at = 8
    while at < len(picture):
        (length,) = struct.unpack(">I", picture[at : at + 4])
        kind, data = picture[at + 4 : at + 8], picture[at + 8 : at + 8 + length]
        assert struct.unpack(">I", picture[at + 8 + length : at + 12 + length])[0] == zlib.crc32(kind + data)
        yield kind, data
        at += 12 + length


def pixels(picture: bytes) -> tuple[int, int, list[tuple[int, int, int]]]:
    """Width, height and colours of a PNG of eight bits a channel, by the specification's five filters."""
    parts = list(chunks(picture))
    wide, tall, depth, colour, *_ = struct.unpack(">IIBBBBB", dict(parts)[b"IHDR"])
    assert (depth, colour) == (8, 6)
    raw = zlib.decompress(b"".join(data for kind, data in parts if kind == b"IDAT"))
    step, row, found = 4, bytearray(4 * wide), []
    for y in range(tall):
        start = y * (4 * wide + 1)
        filtered, above, row = raw[start], row, bytearray(raw[start + 1 : start + 1 + 4 * wide])
        for i in range(4 * wide):
            a = row[i - step] if i >= step else 0
            b, c = above[i], above[i - step] if i >= step else 0
            nearest = min((a, b, c), key=lambda one, p=a + b - c: abs(p - one))
            row[i] = (row[i] + (0, a, b, (a + b) // 2, nearest)[filtered]) % 256
        found += [(row[i], row[i + 1], row[i + 2]) for i in range(0, 4 * wide, 4)]
    return wide, tall, found


def test_dots_lie_where_the_drawing_says_in_the_colours_it_says() -> None:
    wide, tall, found = pixels(png(small('<rect class="danger" width="4" height="4"/>'), 4.0))
    assert (wide, tall) == (round(8 * DOTS_PER_INCH / 25.4), round(4 * DOTS_PER_INCH / 25.4))
    rows = [found[y * wide : (y + 1) * wide] for y in range(tall)]
    assert {row[wide // 4] for row in rows} == {RED} and {row[wide * 3 // 4] for row in rows} == {CLEAR}


def test_letters_are_drawn_although_no_typeface_of_the_system_is_asked() -> None:
    words = ('<text class="danger" x="1" y="3" font-size="3">' + word + "</text>" for word in ("", "8", "Ω"))
    shown = [pixels(png(small(one), 4.0))[2] for one in words]
    inked = [sum(one != shown[0][i] for i, one in enumerate(other)) for other in shown]
    assert inked[0] == 0 and inked[1] > 50 and inked[2] > 50 and shown[1] != shown[2]


def test_the_style_for_dots_has_no_variables_and_the_light_colours() -> None:
    plain = still(plan_style())
    assert "var(" not in plain and "--" not in plain and "@" not in plain
    assert plain.count("{") == plain.count("}")
    assert ".sheet { fill: #fdfcf8; }" in plain and "#191a1b" not in plain and "#9b2423" in plain
    assert set(re.findall(r"\.[a-z-]+", plain)) == set(re.findall(r"\.[a-z-]+", plan_style()))


def test_a_block_within_a_block_is_left_out_as_a_whole() -> None:
    left = still("a { fill: red; } @media print { b { fill: blue; } c { } } d { x: y; }")
    assert " ".join(left.split()) == "a { fill: red; } d { x: y; }"


@pytest.mark.parametrize("view", VIEWS)
def test_a_whole_drawing_tells_its_size_title_and_description_and_is_the_same_twice(view: str) -> None:
    document = report(breach("equipment", "inverter", "DANGER"))
    one, two = (png(plan_drawing(coach(), document, view, still(plan_style())), TALL) for _ in range(2))
    assert one == two
    parts = list(chunks(one))
    assert [kind for kind, _ in parts][:4] == [b"IHDR", b"pHYs", b"iTXt", b"iTXt"] and parts[-1][0] == b"IEND"
    wide, tall = struct.unpack(">II", parts[0][1][:8])
    assert wide == round(297.0 / 25.4 * DOTS_PER_INCH) and tall > wide * 210 / 297
    assert struct.unpack(">IIB", parts[1][1]) == (7874, 7874, 1)
    title, described = (data.split(b"\0\0\0en\0\0")[1].decode() for kind, data in parts if kind == b"iTXt")
    assert title.endswith(document["design"]["title"]) and document["caution"] in described


def test_without_the_extra_it_is_said_how_to_have_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "resvg_py", None)
    with pytest.raises(CannotPicture, match=r"extra `picture`.*pip install resvg-py ttf-opensans.*--format svg"):
        png(small(""), 4.0)


def test_more_sheets_than_memory_should_hold_are_refused() -> None:
    with pytest.raises(CannotPicture, match=r"100 sheets.*holds 24"):
        png(small("", tall="400mm"), 4.0)
