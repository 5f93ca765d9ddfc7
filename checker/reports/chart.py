"""Line charts as inline SVG that a reader without sight can use as well: title, description and a table of the numbers.

Lines differ by their dashes and marks, not by colour alone, and carry their name at their end; text and axes take the
colour of the page, and a page may give each line (`.series-1` and on) a colour of its own for a dark ground.
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
MARKS = (
    ((1.0, 0.4), (0.4, 1.0), (-0.4, 1.0), (-1.0, 0.4), (-1.0, -0.4), (-0.4, -1.0), (0.4, -1.0), (1.0, -0.4)),
    ((0.9, 0.9), (-0.9, 0.9), (-0.9, -0.9), (0.9, -0.9)),
    ((0.0, -1.2), (1.1, 0.8), (-1.1, 0.8)),
    ((0.0, -1.3), (1.3, 0.0), (0.0, 1.3), (-1.3, 0.0)),
    ((0.0, 1.2), (1.1, -0.8), (-1.1, -0.8)),
    ((-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0)),
)
"""Corners of the mark of each line over its size: round, square, triangle, diamond, triangle downwards, hourglass."""
MARK = 4.0
MARKED = 8
"""Marks on one line, about; those of one line stand beside those of the next."""
TICKS = 6
APART = SIZE + 2.0


class Line(NamedTuple):
    """One line: its name and its values, one for each place on the lower axis."""

    name: str
    values: tuple[float, ...]


class Axis(NamedTuple):
    """What an axis shows: its name with the unit, the digits of its numbers, where it has marks if not at round
    numbers, and whether its numbers are hours told as a clock does (the last two for the lower axis alone)."""

    name: str
    digits: int = 0
    marks: tuple[float, ...] = ()
    clock: bool = False


class Chart(NamedTuple):
    """A chart as `svg` and the same numbers as an HTML `table`; what it is called and what it says, in plain text."""

    svg: str
    table: str
    title: str
    says: str


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
        *_series(scale, places, lines),
    ]
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(WIDE)} {number(HIGH)}" role="img" '
        f'aria-labelledby="{escaped(name)}-title {escaped(name)}-desc" font-family="sans-serif">'
    )
    return Chart(f"{head}{''.join(pieces)}</svg>", _table(title, x, y, places, lines), title, says)


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
        yield text(left - 6.0, at + SIZE / 3.0, _told(level, y), text_anchor="end")
    for value in x.marks or _round_marks(scale.first, scale.last):
        yield text(scale.x(value), foot + SIZE + 4.0, _short(value, x), text_anchor="middle")
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


def _short(value: float, axis: Axis) -> str:
    """A mark without zeros behind its point."""
    told = _told(value, axis)
    return told.rstrip("0").rstrip(".") if "." in told else told


def _told(value: float, axis: Axis) -> str:
    if axis.clock:
        minutes = round(value * 60.0)
        return f"{minutes // 60:02d}:{minutes % 60:02d}"
    told = f"{value:.{axis.digits}f}"
    return told.lstrip("-") if float(told) == 0.0 else told


def _series(scale: _Scale, places: Sequence[float], lines: Sequence[Line]) -> Iterator[str]:
    """Each line with its marks and its name, in a colour of its own."""
    heights = _heights(scale, lines)
    for n, line in enumerate(lines):
        points = [(scale.x(place), scale.y(value)) for place, value in zip(places, line.values, strict=True)]
        every = max(1, len(points) // MARKED)
        first = n * every // len(lines)
        start, y, middle = WIDE - RIGHT + 6.0, heights[n], heights[n] - SIZE / 3.0
        pieces = (
            path(points, **_stroke(n)),
            *(_mark(n, point) for point in points[first::every]),
            element("line", None, x1=start, x2=start + 28.0, y1=middle, y2=middle, **_stroke(n)),
            _mark(n, (start + 14.0, middle)),
            text(start + 32.0, y, _fitting(line.name, RIGHT - 40.0), fill="currentColor", font_size=SIZE),
        )
        yield group(pieces, class_=f"series-{n % len(COLOURS) + 1}", color=COLOURS[n % len(COLOURS)])


def _stroke(n: int) -> dict[str, str | float]:
    dashes = DASHES[n % len(DASHES)]
    more: dict[str, str | float] = {"stroke_dasharray": dashes} if dashes else {}
    return {"fill": "none", "stroke": "currentColor", "stroke_width": 2.0, **more}


def _mark(n: int, at: tuple[float, float]) -> str:
    corners = " ".join(f"{number(at[0] + MARK * x)},{number(at[1] + MARK * y)}" for x, y in MARKS[n % len(MARKS)])
    return element("polygon", None, points=corners, fill="currentColor", stroke="none")


def _heights(scale: _Scale, lines: Sequence[Line]) -> list[float]:
    """Where the name of each line stands: at its end, moved apart where they would cover each other."""
    order = sorted(range(len(lines)), key=lambda n: scale.y(lines[n].values[-1]))
    at = [0.0] * len(lines)
    above = -math.inf
    for n in order:
        above = max(scale.y(lines[n].values[-1]) + SIZE / 3.0, above + APART)
        at[n] = above
    over = max(0.0, above - (HIGH - BOTTOM + 4.0))  # clear of the numbers on the lower axis
    return [y - over for y in at]


def _fitting(words: str, room: float) -> str:
    kept = words
    while kept and width(kept, SIZE) > room:
        kept = kept[:-1]
    return kept if kept == words else kept[:-1].rstrip() + "…"


def _table(title: str, x: Axis, y: Axis, places: Sequence[float], lines: Sequence[Line]) -> str:
    heads = "".join(f'<th scope="col">{escaped(name)}</th>' for name in (x.name, *(line.name for line in lines)))
    rows = "".join(
        f'<tr><th scope="row">{_told(place, x)}</th>'
        + "".join(f"<td>{_told(line.values[n], y)}</td>" for line in lines)
        + "</tr>"
        for n, place in enumerate(places)
    )
    caption = f"<caption>{escaped(title)}, {escaped(y.name)}</caption>"
    return f"<table>{caption}<thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>"
