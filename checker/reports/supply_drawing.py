"""A small drawing of the mains: each source, what it can feed, and the residual-current devices on the way.

It takes the colour of the text around it, and says the same in words for who cannot see it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from checker.reports import supply_words as words
from checker.reports.svg import element, escaped, group, shortened, text, width

if TYPE_CHECKING:
    from checker.reports.supply_states import SupplyStates

WIDE: Final = 720.0
BOX: Final = 190.0
FAR: Final = 250.0
HIGH: Final = 46.0
STEP: Final = 62.0
SIZE: Final = 13.0
SMALL: Final = 11.0
EDGE: Final = 4.0
TITLE: Final = "What each source of mains can feed"
UNPROTECTED: Final = "no residual-current device"
IDS: Final = ("supply-drawing-title", "supply-drawing-says")


class Way(NamedTuple):
    """A source, the loads it feeds alike, and the words on the line between them."""

    source: str
    loads: tuple[str, ...]
    by: str

    @property
    def bare(self) -> bool:
        """Whether no residual-current device stands on it."""
        return self.by == UNPROTECTED


def supply_drawing(table: SupplyStates) -> str:
    """The drawing as an SVG element; an empty text when nothing is fed in any state."""
    found = _ways(table)
    if not found:
        return ""
    sources = list(dict.fromkeys(way.source for way in found))
    loads = list(dict.fromkeys(way.loads for way in found))
    high = EDGE * 2 + max(len(sources), len(loads)) * STEP - (STEP - HIGH)
    left = {name: _level(number, len(sources), high) for number, name in enumerate(sources)}
    right = {names: _level(number, len(loads), high) for number, names in enumerate(loads)}
    counts = _counts(table)
    pieces = [_line(way, left[way.source], right[way.loads]) for way in found]
    pieces += [_label(way, left[way.source], right[way.loads]) for way in found]
    pieces += [_box(EDGE, left[name], BOX, name, f"neutral to earth: {counts[name]}") for name in sources]
    pieces += [_box(WIDE - FAR - EDGE, right[names], FAR, *_two_lines(names)) for names in loads]
    told = element("title", escaped(TITLE), id=IDS[0]) + element("desc", escaped(_says(found, counts)), id=IDS[1])
    font = {"font_family": "Liberation Sans, DejaVu Sans, Arial, Helvetica, sans-serif"}
    return element(
        "svg",
        told + group(pieces, fill="currentColor", stroke="none", **font),
        viewBox=f"0 0 {WIDE:g} {high:g}",
        class_="supply",
        role="img",
        aria_labelledby=" ".join(IDS),
    )


def _ways(table: SupplyStates) -> list[Way]:
    found: dict[tuple[str, str], dict[str, None]] = {}
    for state in table["states"]:
        for path in state["residual"]:
            by = words.residual(path).rpartition(": ")[2]
            found.setdefault((path["source"], by), {}).update(dict.fromkeys(path["loads"]))
    return [Way(source, tuple(loads), by) for (source, by), loads in found.items()]


def _counts(table: SupplyStates) -> dict[str, str]:
    """For each source the numbers of links of neutral and earth over all states in which it feeds."""
    found: dict[str, dict[str, None]] = {}
    for state in table["states"]:
        for island in state["neutral"]:
            count = words.links(island).split(": ", 1)[1].split(" (")[0]
            for name in island["sources"]:
                found.setdefault(name, {})[count] = None
    return {name: " or ".join(counts) for name, counts in found.items()}


def _level(number: int, count: int, high: float) -> float:
    """The middle of a box."""
    return EDGE + HIGH / 2 + (high - 2 * EDGE - HIGH) * (number / (count - 1) if count > 1 else 0.5)


def _line(way: Way, start: float, end: float) -> str:
    dashes: dict[str, str | float] = {"stroke_dasharray": "6 4"} if way.bare else {}
    ends = {"x1": BOX + EDGE, "y1": start, "x2": WIDE - FAR - EDGE, "y2": end}
    return element("line", None, stroke="currentColor", stroke_width=1.5, **ends, **dashes)


def _label(way: Way, start: float, end: float) -> str:
    """The words stand where lines to the same loads have not met yet, and lines from the same source have parted."""
    left, right = BOX + EDGE, WIDE - FAR - EDGE
    words_ = shortened(way.by, SMALL, right - left - 12)
    middle = min(left + 0.7 * (right - left), right - 8 - width(words_, SMALL) / 2)
    share = (middle - left) / (right - left)
    level = start + (end - start) * share
    wide = width(words_, SMALL) + 6
    ground = element("rect", None, x=middle - wide / 2, y=level - 9, width=wide, height=16, class_="ground")
    return ground + text(middle, level + 4, words_, font_size=SMALL, text_anchor="middle")


def _box(x: float, middle: float, wide: float, first: str, second: str) -> str:
    frame = element(
        "rect", None, x=x, y=middle - HIGH / 2, width=wide, height=HIGH, stroke="currentColor", stroke_width=1.5,
        class_="ground",
    )  # fmt: skip
    upper = middle + (4 if not second else -4)
    name = text(x + 8, upper, shortened(first, SIZE, wide - 16), font_size=SIZE)
    below = text(x + 8, middle + 14, shortened(second, SMALL, wide - 16), font_size=SMALL) if second else ""
    return frame + name + below


def _two_lines(names: tuple[str, ...]) -> tuple[str, str]:
    half = (len(names) + 1) // 2
    return (", ".join(names), "") if len(names) == 1 else (", ".join(names[:half]) + ",", ", ".join(names[half:]))


def _says(found: list[Way], counts: dict[str, str]) -> str:
    ways = "; ".join(f"{way.source} feeds {', '.join(way.loads)}, with {way.by}" for way in found)
    links = "; ".join(f"{name}: {count}" for name, count in counts.items())
    return f"{ways}. Links of neutral and earth while it feeds: {links}."
