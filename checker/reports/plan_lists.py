"""The sheets after a drawing: its findings, equipment, places, moving parts and routes in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, NamedTuple

from checker.reports.plain import one_line
from checker.reports.plan_scene import travels
from checker.reports.plan_sheet import MARGIN, TALL, WIDE
from checker.reports.svg import group, lines, number, text

if TYPE_CHECKING:
    from checker.reports.document import Document
    from checker.reports.plan_boxes import Shape
    from checker.reports.plan_marks import Mark
    from checker.reports.plan_scene import Placed, Scene

TYPE, PITCH, HEAD = 2.3, 3.5, 5.5
COLUMNS, GAP = 2, 8.0
ROOM = (WIDE - 2 * MARGIN - GAP * (COLUMNS - 1)) / COLUMNS
TOP, END = MARGIN + 3.0, TALL - 11.0


class Entry(NamedTuple):
    """A line of a list: a heading, or text with how far it is set in."""

    words: str
    head: bool = False
    strong: bool = False
    inset: float = 0.0


def list_sheets(found: Scene, report: Document) -> list[str]:
    """The lists, broken into columns and sheets."""
    entries = [*_findings(found, report), *_equipment(found), *_places(found), *_moving(found), *_routes(found)]
    sheets: list[list[str]] = [[]]
    column, y = 0, TOP
    for entry in entries:
        for index, line in enumerate(_broken(entry)):
            room = HEAD + PITCH if entry.head else PITCH
            if y + room > END:
                column, y = column + 1, TOP
                if column == COLUMNS:
                    sheets.append([])
                    column = 0
            if entry.head and y > TOP:
                y += HEAD - PITCH
            x = MARGIN + column * (ROOM + GAP) + entry.inset + (3.0 if index else 0.0)
            sheets[-1].append(text(x, y, line, "head" if entry.head else "strong" if entry.strong else "small"))
            y += PITCH
    return [group(pieces) for pieces in sheets]


def _broken(entry: Entry) -> list[str]:
    bold = entry.head or entry.strong
    return lines(one_line(entry.words), 3.2 if entry.head else TYPE, ROOM - entry.inset - 3.0, bold)


def _findings(found: Scene, report: Document) -> Iterator[Entry]:
    yield Entry("Findings, by the number of their flag", head=True)
    pointed = [mark for mark in found.marks if mark.point is not None]
    if not found.marks:
        yield Entry("No breach was found. That does not mean there is none: see what is unproven and not checked.")
    for index, mark in enumerate(pointed, 1):
        yield Entry(f"{index} {mark.signal}: {mark.name}", strong=True)
        yield from _each(mark)
    for mark in found.marks[len(pointed) :]:
        yield Entry(f"not on the drawing, {mark.signal}: {mark.name}", strong=True)
        yield from _each(mark)
    open_ = report["counts"]["unproven"]
    yield Entry(f"{open_} unproven: the file does not say enough; they carry no flag. `fitout review` lists them.")


def _each(mark: Mark) -> Iterator[Entry]:
    for finding in mark.findings:
        aside = ", set aside" if finding["verdict"] == "set aside" else ""
        subject = finding["about"]["id"]
        yield Entry(
            f"{finding['signal']}{aside}, {subject}: {finding['title']} (line {finding['where']['line']})", inset=3.0
        )


def _equipment(found: Scene) -> Iterator[Entry]:
    yield Entry("Equipment", head=True)
    boxes = {shape.name: shape for shape in found.equipment}
    for name, members in _by_place(found):
        yield Entry(f"in {name}" if name != "not told" else "place not told", strong=True)
        for item in members:
            if item.told in ("box", "point"):
                where = _where(boxes[item.name])
            else:
                where = "no box: not drawn" if item.told == "nothing" else "no box of its own: somewhere in the place"
            yield Entry(f"{item.name}, {item.kind}: {where}", inset=3.0)


def _by_place(found: Scene) -> Iterable[tuple[str, list[Placed]]]:
    grouped: dict[str, list[Placed]] = {}
    for item in found.listed:
        grouped.setdefault(item.place, []).append(item)
    return grouped.items()


def _where(shape: Shape) -> str:
    at = ", ".join(number(one) for one in shape.low)
    size = [high - low for low, high in zip(shape.low, shape.high, strict=True)]
    sure = "within the outermost box " if shape.doubtful else ""
    if not any(size):
        return f"{sure}at ({at}) m"
    return f"{sure}at ({at}) m, {' × '.join(number(one) for one in size)} m"


def _places(found: Scene) -> Iterator[Entry]:
    yield Entry("Places with a box", head=True)
    for shape in found.places:
        yield Entry(f"{shape.name}, {shape.kind}: {_where(shape)}")


def _moving(found: Scene) -> Iterator[Entry]:
    if found.moving:
        yield Entry("Moving parts", head=True)
    for part in found.moving:
        yield Entry(f"{part.name}: {travels(part, found)}; stowed {_where(part.stowed)}; sweeps {_where(part.way)}")


def _routes(found: Scene) -> Iterator[Entry]:
    if found.routes or found.undrawn:
        yield Entry("Circuits", head=True)
    by_band: dict[str, list[str]] = {}
    for line in found.routes:
        by_band.setdefault(line.band, []).append(line.name)
    for band, names in by_band.items():
        yield Entry(f"{band}: {', '.join(dict.fromkeys(names))}")
    if found.undrawn:
        yield Entry(f"not drawn, all in one place or without a box: {', '.join(dict.fromkeys(found.undrawn))}")
    for line in found.services:
        yield Entry(f"{line.name} carries {line.band}")
