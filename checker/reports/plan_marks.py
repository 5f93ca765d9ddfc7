"""Findings by where they are on a drawing."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from checker.facts.space import chain, extent, place_of, stands, swept_extent
from checker.reports.plan_boxes import Line, Point, middle, room_of, shape_of, through
from checker.reports.words import BREACH, SET_ASIDE, rank

if TYPE_CHECKING:
    from checker.design.model import Design, Equipment
    from checker.facts.subject import Subject
    from checker.reports.document import Document, FindingData

RUNS = ("conductor", "circuit", "approach")
"""Kinds of subject that lie along a route."""


class Mark(NamedTuple):
    """Findings at one place of the drawing. `point` is None where the file does not tell where that is."""

    name: str
    point: Point | None
    findings: tuple[FindingData, ...]

    @property
    def signal(self) -> str:
        """The worst signal word among its findings."""
        return min((one["signal"] for one in self.findings), key=rank)


def marks(s: Subject, design: Design, report: Document, routes: tuple[Line, ...]) -> Iterable[Mark]:
    """Breaches and departures by where they are, in the order of the report; those without a place last."""
    found: dict[tuple[str, Point | None], list[FindingData]] = {}
    for finding in report["findings"]:
        if finding["verdict"] in (BREACH, SET_ASIDE):
            found.setdefault(_where(s, design, finding, routes), []).append(finding)
    every = [Mark(name, point, tuple(findings)) for (name, point), findings in found.items()]
    yield from (mark for mark in every if mark.point is not None)
    yield from (mark for mark in every if mark.point is None)


def _where(s: Subject, design: Design, finding: FindingData, routes: tuple[Line, ...]) -> tuple[str, Point | None]:
    kind, name = finding["about"]["kind"], finding["about"]["id"]
    first = name.split(" ")[0] if kind in (*RUNS, "supply") else name
    if kind in RUNS:
        return _on_route(s, design, first, routes)
    if kind == "moving":
        part = design.moving.get(name)
        way = shape_of(part, swept_extent(s, part)) if part is not None else None
        return f"moving part {name}", None if way is None else way.middle
    if kind in ("place", "loop"):
        return f"place {name}", middle(room_of(s, name))
    if kind == "hole":
        return f"hole {name}", _hole(s, design, name)
    for candidate in (first, first.partition(".")[0], first.partition("#")[0]):
        item = design.equipment.get(candidate)
        if item is not None:
            return _body(s, item)
    return ("the whole design" if kind == "design" else f"{kind} {name}"), None


def _body(s: Subject, item: Equipment) -> tuple[str, Point | None]:
    """Equipment with a box of its own, else the nearest place around it that has one."""
    at = stands(s, item)
    spot = middle(shape_of(item, at))
    if at is None or at.exact:
        return item.name, spot
    room = next(one for one in chain(s, place_of(s, item)) if extent(s, one) is not None)
    return f"place {room.name}", spot


def _on_route(s: Subject, design: Design, name: str, routes: tuple[Line, ...]) -> tuple[str, Point | None]:
    """The middle of the longest stretch of a circuit; of one that stays within one place, that place."""
    points = next((line.points for line in routes if line.name == name and len(line.points) > 1), ())
    if not points:
        circuit = design.circuits.get(name)
        rooms = [getattr(step, "place", None) for step in circuit.run] if circuit is not None else []
        known = [room for room in rooms if room is not None and room_of(s, room) is not None]
        return (f"place {known[0]}", middle(room_of(s, known[0]))) if known else (f"circuit {name}", None)
    stretches = list(pairwise(points))
    a, b = max(stretches, key=lambda pair: sum((p - q) ** 2 for p, q in zip(*pair, strict=True)))
    # A stretch is drawn along the vehicle first, from its end at the left of the sheet, then across.
    leftmost = max if design.vehicle.says("axes.x", "forward") else min
    first = leftmost(a, b, key=lambda point: point[0])
    if abs(a[0] - b[0]) < 0.01:
        return f"circuit {name}", ((a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0, (a[2] + b[2]) / 2.0)
    return f"circuit {name}", ((a[0] + b[0]) / 2.0, first[1], first[2])


def _hole(s: Subject, design: Design, name: str) -> Point | None:
    """Between the boxes of the two places it joins; the file does not tell more."""
    item = design.passes.get(name)
    names = item.value("between") if item is not None else None
    rooms = [room_of(s, one) for one in names] if isinstance(names, tuple) else []
    known = [room for room in rooms if room is not None]
    return through([*known])[-1] if known else None
