"""What can only be checked when all sections have been read: positions of switches, subjects of departures."""

from __future__ import annotations

import re
from collections.abc import Mapping

from checker.design.given import Given
from checker.design.item import Item
from checker.reading.context import Context
from checker.source.problems import article, listed, shown
from checker.source.tree import Node

_CONTACT_POSITIONS = ("open", "closed")
_BUILT_IN = ("chassis", "vehicle", "design", "day", "papers", "labels")
_PIECES = re.compile(r"[ /@>:#.]")
_SUBJECT_SECTIONS = (
    "circuits",
    "places",
    "moving",
    "passes",
    "looms",
    "modes",
    "services",
    "cables",
    "parts",
    "people",
)


def check_positions(ctx: Context, mode: Item) -> None:
    """Note positions under `set` that the switch does not have."""
    if not mode.has("set"):
        return
    pairs = mode.value("set")
    for name, position in pairs if isinstance(pairs, tuple) else ():
        board, _, way = name.partition(".")
        at = _At(position)
        equipment = ctx.equipment.get(board) if not way else None
        positions = _positions(ctx, name)
        if positions is None:
            if equipment is not None:
                ctx.problems.add(
                    at, f"{shown(name)} is {article(equipment.kind)}, which has no positions", "name a switch"
                )
        elif isinstance(position.value, str) and position.value not in positions:
            right = ctx.problems.meant(position.value, positions, f"write {listed(positions)}")
            ctx.problems.add(at, f"{shown(name)} has no position {shown(position.value)}", right)


def _positions(ctx: Context, name: str) -> tuple[str, ...] | None:
    """The positions of a switch, relay or protective device; None for what has none or could not be read."""
    board, _, way = name.partition(".")
    equipment = ctx.equipment.get(board)
    if way and equipment is not None:
        return _CONTACT_POSITIONS if name in ctx.ways else None
    if equipment is None:
        return None
    if equipment.vocabulary.more_ports == "throws":
        throws = equipment.value("throws")
        return (*throws, "open") if isinstance(throws, tuple) else None
    through, opens = equipment.vocabulary.through, ("joint", "connector", "shunt", "diode", "galvanic isolator")
    return _CONTACT_POSITIONS if through is not None and equipment.kind not in opens else None


def check_departure(ctx: Context, departure: Item) -> None:
    """Note a departure about something that this file does not hold."""
    if not departure.has("about"):
        return
    about: Given = departure.get("about")
    name = about.value
    if not isinstance(name, str):
        return
    sections = (_BUILT_IN, ctx.equipment, ctx.ways, *(ctx.names[section] for section in _SUBJECT_SECTIONS))
    # Some subjects are named by several things: what stands first must exist.
    first = _PIECES.split(name)[0]
    if any(name in section or first in section for section in sections):
        return
    known = [each for section in sections for each in section]
    right = ctx.problems.meant(name, known, "name what the departure is about as in this file")
    ctx.problems.add(_At(about), f"there is no {shown(name)} in this file", right)


def check_nesting(ctx: Context, places: Mapping[str, Item]) -> None:
    """Note places that are inside themselves, however far round."""
    settled: set[str] = set()
    for first in places:
        way: dict[str, None] = {}
        name = first
        while name in places and name not in settled and name not in way:
            way[name] = None
            outer = places[name].value("inside")
            name = outer if isinstance(outer, str) else ""
        if name in way:
            inside = places[name].get("inside")
            ctx.problems.add(_At(inside), f"{shown(name)} is inside itself", "name the place that is around it")
        settled.update(way)


def check_later(ctx: Context) -> None:
    """The checks that waited until all equipment was known."""
    for check in ctx.later:
        check()


class _At(Node):
    """The place of a value that has been read."""

    __slots__ = ()

    def __init__(self, given: Given) -> None:
        super().__init__(given.where.line, given.where.column)
