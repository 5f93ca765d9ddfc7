"""The sheet of a drawing, mm: view and scale, and where names and marks go so that they do not cover each other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, NamedTuple

from checker.reports.svg import width

if TYPE_CHECKING:
    from checker.reports.plan_boxes import Point, Shape
    from checker.reports.plan_marks import Mark
    from checker.reports.plan_scene import Scene

WIDE, TALL, MARGIN = 297.0, 210.0, 10.0
"""A4 across."""
SCALES = (5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 150, 200, 500)
FLAG_TALL, FLAG_TYPE, FLAG_GAP = 4.4, 2.6, 1.6
ROW = FLAG_TALL + 2.0
RULER = 5.6
"""Room for the metres between the drawing and the flags under it."""

Spot = tuple[float, float]


class Frame(NamedTuple):
    """A rectangle on the sheet."""

    x: float
    y: float
    wide: float
    tall: float

    @property
    def middle(self) -> Spot:
        """Its middle."""
        return self.x + self.wide / 2.0, self.y + self.tall / 2.0

    def shares(self, other: Frame) -> float:
        """Area that two rectangles have in common."""
        across = min(self.x + self.wide, other.x + other.wide) - max(self.x, other.x)
        down = min(self.y + self.tall, other.y + other.tall) - max(self.y, other.y)
        return max(0.0, across) * max(0.0, down)


class Flag(NamedTuple):
    """The flag of a mark: its number, where it points and where it stands."""

    number: int
    mark: Mark
    foot: Spot
    frame: Frame


class Sheet(NamedTuple):
    """View, scale and origin: metres of the vehicle to millimetres of the sheet."""

    view: str
    scale: int
    forward: float
    rightward: float
    upward: float
    left: float
    top: float

    def flat(self, point: Point) -> Spot:
        """A point of the vehicle on the sheet; the nose lies at the left, the right side or the roof at the top."""
        u, v = _flat(self.view, point, self.forward, self.rightward, self.upward)
        return self.left + u * 1000.0 / self.scale, self.top + v * 1000.0 / self.scale

    def frame(self, shape: Shape) -> Frame:
        """The outline of a box."""
        (x1, y1), (x2, y2) = self.flat(shape.low), self.flat(shape.high)
        return Frame(min(x1, x2), min(y1, y2), abs(x2 - x1), abs(y2 - y1))


def _flat(view: str, point: Point, forward: float, rightward: float, upward: float) -> Spot:
    return -forward * point[0], (-rightward * point[1] if view == "plan" else -upward * point[2])


def sheet(scene: Scene, view: str, area: Frame) -> Sheet | None:
    """The largest of the usual scales at which everything fits the area; None when nothing has a place."""
    spots = [
        _flat(view, point, scene.forward, scene.rightward, scene.upward)
        for shape in _all(scene)
        for point in (shape.low, shape.high)
    ] + [
        _flat(view, point, scene.forward, scene.rightward, scene.upward)
        for line in scene.services
        for point in line.points
    ]
    if not spots:
        return None
    low = min(one[0] for one in spots), min(one[1] for one in spots)
    span = max(one[0] for one in spots) - low[0], max(one[1] for one in spots) - low[1]
    fits = (one for one in SCALES if all(span[i] * 1000.0 / one <= (area.wide, area.tall)[i] for i in range(2)))
    scale = next(fits, None)
    if scale is None:
        scale = int(max(span[0] / area.wide, span[1] / area.tall) * 1000.0) + 1
    drawn = span[0] * 1000.0 / scale, span[1] * 1000.0 / scale
    left = area.x + (area.wide - drawn[0]) / 2.0 - low[0] * 1000.0 / scale
    top = area.y + (area.tall - drawn[1]) / 2.0 - low[1] * 1000.0 / scale
    return Sheet(view, scale, scene.forward, scene.rightward, scene.upward, left, top)


def _all(scene: Scene) -> Iterable[Shape]:
    if scene.envelope is not None:
        yield scene.envelope
    yield from scene.places
    yield from scene.equipment
    for part in scene.moving:
        yield part.stowed
        yield part.way


# --- names


Candidate = tuple[Frame, float]


def beside(words: str, size: float, around: Frame, bold: bool = False) -> list[Candidate]:
    """Where the name of a box may stand, best first, each with what it costs: within, over, under, right, left."""
    wide, tall = width(words, size, bold), size * 1.15
    x, y = around.x, around.y
    spots = [(x + 0.7, y + 0.5), (x, y - tall - 0.3), (x, y + around.tall + 0.2),
             (x + around.wide + 0.6, y), (x - wide - 0.6, y), (x + around.wide - wide, y - tall - 0.3),
             (x + around.wide - wide - 0.7, y + around.tall - tall - 0.4), (x + 0.7, y + around.tall - tall - 0.4),
             (x + around.wide - wide - 0.7, y + 0.5)]  # fmt: skip
    found = []
    for index, (at_x, at_y) in enumerate(spots):
        frame = Frame(at_x, at_y, wide, tall)
        inside = index in (0, 6, 7, 8)
        fits = wide + 1.4 <= around.wide and tall + 1.0 <= around.tall
        if not inside or fits:
            found.append((frame, 0.1 * index))
    return found


def settle(candidates: Sequence[Candidate], taken: Sequence[Frame], soft: Sequence[Frame], area: Frame) -> Frame:
    """The candidate that covers least of what stands already; `soft` may be covered sooner than `taken`."""
    left = min(frame.x for frame, _ in candidates)
    right = max(frame.x + frame.wide for frame, _ in candidates)
    # What lies left or right of every candidate is covered by none.
    taken = [one for one in taken if one.x < right and one.x + one.wide > left]
    soft = [one for one in soft if one.x < right and one.x + one.wide > left]

    def cost(candidate: Candidate) -> float:
        frame, base = candidate
        outside = frame.wide * frame.tall - frame.shares(area)
        hard = sum(frame.shares(one) for one in taken)
        return base + 20.0 * outside + 10.0 * hard + 1.0 * sum(frame.shares(one) for one in soft)

    return min(candidates, key=cost)[0]


# --- marks


def flag_wide(number: int, signal: str) -> float:
    """Width of a flag with its number and signal word."""
    return width(f"{number} {signal}", FLAG_TYPE, bold=True) + 1.6


def rows_needed(marks: Sequence[Mark], feet: Sequence[Spot], middle: float, room: float) -> tuple[int, int]:
    """Rows of flags over and under the drawing."""
    over, under = halves(feet, middle)
    return tuple(len(_rows([flag_wide(i + 1, marks[i].signal) for i in half], room)) for half in (over, under))  # type: ignore[return-value]


def halves(feet: Sequence[Spot], middle: float) -> tuple[list[int], list[int]]:
    """Marks over and under the drawing, each from left to right; the longer half gives what lies nearest the middle."""
    over = [i for i, foot in enumerate(feet) if foot[1] <= middle]
    under = [i for i, foot in enumerate(feet) if foot[1] > middle]
    while abs(len(over) - len(under)) > 1:
        long, short = (over, under) if len(over) > len(under) else (under, over)
        moved = min(long, key=lambda i: (abs(feet[i][1] - middle), i))
        long.remove(moved)
        short.append(moved)
    return sorted(over, key=lambda i: (feet[i][0], i)), sorted(under, key=lambda i: (feet[i][0], i))


def _rows(wides: Sequence[float], room: float) -> list[list[int]]:
    """Flags dealt to as few rows as hold them, taking turns, so that each row stays in order from left to right."""
    if not wides:
        return []
    count = 1
    while True:
        rows = [list(range(first, len(wides), count)) for first in range(count)]
        if all(sum(wides[i] + FLAG_GAP for i in row) <= room + FLAG_GAP for row in rows) or count >= len(wides):
            return rows
        count += 1


def flags(marks: Sequence[Mark], feet: Sequence[Spot], area: Frame) -> list[Flag]:
    """Every mark with its flag, over and under the area, numbered in the order given."""
    over, under = halves(feet, area.middle[1])
    found = []
    for half, up in ((over, True), (under, False)):
        wides = [flag_wide(i + 1, marks[i].signal) for i in half]
        for row, members in enumerate(_rows(wides, area.wide)):
            away = (row + 1) * ROW
            y = area.y - away if up else area.y + area.tall + RULER + away - FLAG_TALL - 2.0
            starts = _spread([feet[half[k]][0] - wides[k] / 2.0 for k in members], [wides[k] for k in members],
                             area.x, area.x + area.wide)  # fmt: skip
            for k, x in zip(members, starts, strict=True):
                i = half[k]
                found.append(Flag(i + 1, marks[i], feet[i], Frame(x, y, wides[k], FLAG_TALL)))
    return sorted(found, key=lambda flag: flag.number)


def _spread(wanted: Sequence[float], wides: Sequence[float], low: float, high: float) -> list[float]:
    """Starts as near to those wanted as they come without touching, within low and high."""
    starts: list[float] = []
    after = low
    for at, wide in zip(wanted, wides, strict=True):
        starts.append(max(at, after))
        after = starts[-1] + wide + FLAG_GAP
    limit = high
    for index in range(len(starts) - 1, -1, -1):
        starts[index] = min(starts[index], limit - wides[index])
        limit = starts[index] - FLAG_GAP
    return starts
