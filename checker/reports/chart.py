"""Line charts as inline SVG that a reader without sight can use as well: title, description and a table of the numbers.

Lines differ by their dashes, not by colour alone, and carry their name at their end; text and axes take the colour
of the page, so that the chart reads on light, dark and paper.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from checker.reports.svg import element, escaped, group, number, path, text, width

WIDE, HIGH = 720.0, 300.0
LEFT, RIGHT, TOP, BOTTOM = 56.0, 120.0, 24.0, 44.0
SIZE = 12.0
DASHES = ("", "8 4", "2 3", "10 3 2 3", "1 5", "14 4")
COLOURS = ("#0b5394", "#b45309", "#166534", "#9d174d", "#4c1d95", "#374151")
"""Each at least 4.5 to 1 on white, told apart by their dashes where colours are not."""
TICKS = 6
APART = SIZE + 2.0


class Line(NamedTuple):
    """One line: its name and its values, one for each place on the lower axis."""

    name: str
    values: tuple[float, ...]


class Axis(NamedTuple):
    """What an axis shows: its name with the unit, the digits of its numbers, and where it has marks if not at round
    numbers (the lower axis alone)."""

    name: str
    digits: int = 0
    marks: tuple[float, ...] = ()


class Chart(NamedTuple):
    """A chart as `svg` and the same numbers as an HTML `table`."""

    svg: str
    table: str


def chart(name: str, title: str, says: str, x: Axis, y: Axis, places: Sequence[float], lines: Sequence[Line]) -> Chart:
    """Draw lines over places on one axis.

    Parameters
    ----------
    name : word that makes the ids in the page its own: letters, digits, hyphens.
    title : what the chart is called.
    says : one or two sentences that say what a look at the chart would: what rises, what is lowest and when.
    places : values on the lower axis, rising.

    Raises
    ------
    ValueError : no line, fewer than two places, places that do not rise, a line of another length, or a value that is
        not finite.
    """
    _check(places, lines)
    scale = _Scale((*places, *x.marks), lines)
    pieces = [
        element("title", escaped(title), id=f"{name}-title"),
        element("desc", escaped(says), id=f"{name}-desc"),
        group(_axes(scale, x, y), fill="currentColor", stroke="none", font_size=SIZE),
        group(_drawn(scale, places, lines), fill="none", stroke_width=2.0),
        group(_names(scale, lines), font_size=SIZE, stroke="none"),
    ]
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(WIDE)} {number(HIGH)}" role="img" '
        f'aria-labelledby="{escaped(name)}-title {escaped(name)}-desc" font-family="sans-serif">'
    )
    return Chart(f"{head}{''.join(pieces)}</svg>", _table(title, x, y, places, lines))


def _check(places: Sequence[float], lines: Sequence[Line]) -> None:
    if not lines or len(places) < 2:
        raise ValueError("a chart needs a line and two places")
    if any(b <= a for a, b in pairwise(places)):
        raise ValueError("the places of a chart must rise")
    for line in lines:
        if len(line.values) != len(places):
            raise ValueError(f"the line {line.name} has {len(line.values)} values for {len(places)} places")
        if not all(math.isfinite(value) for value in line.values):
            raise ValueError(f"the line {line.name} has a value that is not finite")


class _Scale:
    """From values to points on the paper."""

    def __init__(self, places: Sequence[float], lines: Sequence[Line]) -> None:
        self.first, self.last = min(places), max(places)
        low = min(0.0, *(min(line.values) for line in lines))
        high = max(max(line.values) for line in lines)
        self.step = _round_step((high - low or 1.0) / TICKS)
        self.low = math.floor(low / self.step) * self.step
        self.high = max(math.ceil(high / self.step - 1e-9), round(self.low / self.step) + 1) * self.step

    def x(self, value: float) -> float:
        """Across."""
        return LEFT + (value - self.first) / (self.last - self.first) * (WIDE - LEFT - RIGHT)

    def y(self, value: float) -> float:
        """Down."""
        return HIGH - BOTTOM - (value - self.low) / (self.high - self.low) * (HIGH - TOP - BOTTOM)

    def levels(self) -> Iterator[float]:
        """Values at which the upright axis has a mark."""
        for n in range(round((self.high - self.low) / self.step) + 1):
            yield self.low + n * self.step


def _round_step(rough: float) -> float:
    """The next 1, 2 or 5 with zeros."""
    power = 10.0 ** math.floor(math.log10(rough))
    return next(power * lead for lead in (1.0, 2.0, 5.0, 10.0) if power * lead >= rough * (1 - 1e-9))


def _axes(scale: _Scale, x: Axis, y: Axis) -> Iterator[str]:
    foot, left, right = HIGH - BOTTOM, LEFT, WIDE - RIGHT
    for level in scale.levels():
        at = scale.y(level)
        yield element("line", None, x1=left, x2=right, y1=at, y2=at, stroke="currentColor", stroke_opacity="0.25")
        yield text(left - 6.0, at + SIZE / 3.0, _told(level, y.digits), text_anchor="end")
    for value in x.marks or _round_marks(scale.first, scale.last):
        yield text(scale.x(value), foot + SIZE + 4.0, _short(value, x.digits), text_anchor="middle")
    yield element("line", None, x1=left, x2=right, y1=foot, y2=foot, stroke="currentColor")
    yield text((left + right) / 2.0, HIGH - 6.0, x.name, text_anchor="middle")
    yield text(6.0, SIZE + 2.0, y.name)


def _round_marks(first: float, last: float) -> Iterator[float]:
    """Round numbers between two values."""
    step = _round_step((last - first) / 8.0)
    n = math.ceil(first / step - 1e-9)
    while n * step <= last + 1e-9 * step:
        yield n * step
        n += 1


def _short(value: float, digits: int) -> str:
    """A mark without zeros behind its point."""
    told = _told(value, digits)
    return told.rstrip("0").rstrip(".") if "." in told else told


def _told(value: float, digits: int) -> str:
    told = f"{value:.{digits}f}"
    return told.lstrip("-") if float(told) == 0.0 else told


def _drawn(scale: _Scale, places: Sequence[float], lines: Sequence[Line]) -> Iterator[str]:
    for n, line in enumerate(lines):
        dashes = DASHES[n % len(DASHES)]
        more: dict[str, str | float] = {"stroke_dasharray": dashes} if dashes else {}
        points = [(scale.x(place), scale.y(value)) for place, value in zip(places, line.values, strict=True)]
        yield path(points, stroke=COLOURS[n % len(COLOURS)], **more)


def _names(scale: _Scale, lines: Sequence[Line]) -> Iterator[str]:
    """The name of each line at its end, moved apart where they would cover each other."""
    order = sorted(range(len(lines)), key=lambda n: scale.y(lines[n].values[-1]))
    at: dict[int, float] = {}
    above = -math.inf
    for n in order:
        above = max(scale.y(lines[n].values[-1]) + SIZE / 3.0, above + APART)
        at[n] = above
    over = max(0.0, above - (HIGH - 4.0))
    for n, line in enumerate(lines):
        dashes = DASHES[n % len(DASHES)]
        more: dict[str, str | float] = {"stroke_dasharray": dashes} if dashes else {}
        y = at[n] - over
        start = WIDE - RIGHT + 6.0
        colour = COLOURS[n % len(COLOURS)]
        yield element("line", None, x1=start, x2=start + 22.0, y1=y - SIZE / 3.0, y2=y - SIZE / 3.0, stroke=colour,
                      stroke_width=2.0, **more)  # fmt: skip
        yield text(start + 26.0, y, _fitting(line.name, RIGHT - 34.0), fill=colour)


def _fitting(words: str, room: float) -> str:
    kept = words
    while kept and width(kept, SIZE) > room:
        kept = kept[:-1]
    return kept if kept == words else kept[:-1].rstrip() + "…"


def _table(title: str, x: Axis, y: Axis, places: Sequence[float], lines: Sequence[Line]) -> str:
    heads = "".join(f'<th scope="col">{escaped(name)}</th>' for name in (x.name, *(line.name for line in lines)))
    rows = "".join(
        f'<tr><th scope="row">{_told(place, x.digits)}</th>'
        + "".join(f"<td>{_told(line.values[n], y.digits)}</td>" for line in lines)
        + "</tr>"
        for n, place in enumerate(places)
    )
    caption = f"<caption>{escaped(title)}, {escaped(y.name)}</caption>"
    return f"<table>{caption}<thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>"
