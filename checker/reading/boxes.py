"""Boxes and points that lie nowhere near the vehicle."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from checker.design.given import Box, Given
from checker.design.item import Item
from checker.quantities import Range, show
from checker.source.tree import Node

if TYPE_CHECKING:
    from checker.source.problems import Problems

REACH_M = 1.0
"""What is fixed to a vehicle may stand out of the envelope, on its roof or drawbar, but not by more than this."""
AXES = ("x", "y", "z")

Span = tuple[float, float]


def check_boxes(problems: Problems, vehicle: Item, items: Iterable[Item]) -> None:
    """Note boxes and points that lie wholly away from `vehicle.envelope`."""
    envelope = _spans(vehicle.value("envelope"))
    if envelope is None:
        return
    for item in items:
        for key in ("box", "sweeps", "tray"):
            if item.has(key):
                _near(problems, item.get(key), _spans(item.value(key)), envelope)
        if item.has("at"):
            _near(problems, item.get("at"), _point(item.value("at")), envelope)


def _near(problems: Problems, given: Given, spans: list[Span] | None, envelope: list[Span]) -> None:
    """Note what lies wholly further from the envelope than `REACH_M` along some axis."""
    if spans is None:
        return
    for axis, (low, high), (least, most) in zip(AXES, spans, envelope, strict=True):
        gap = max(low - most, least - high)
        if gap > REACH_M:
            problems.add(
                _At(given),
                f"this lies {show(round(gap, 3), 'm')} beyond the vehicle along {axis}, whose envelope goes from "
                f"{show(least, 'm')} to {show(most, 'm')}",
                "give lengths from the origin that `vehicle.axes` tells, or mend `vehicle.envelope`",
            )
            return


def _spans(value: Any) -> list[Span] | None:
    """From where to where it may reach along each axis; None where that is not known."""
    if not isinstance(value, Box):
        return None
    if not all(isinstance(one, float | Range) for one in (*value.at, *value.size)):
        return None
    return [(_least(at), _most(at) + _most(size)) for at, size in zip(value.at, value.size, strict=True)]


def _point(value: Any) -> list[Span] | None:
    if not isinstance(value, tuple) or not all(isinstance(one, float | Range) for one in value):
        return None
    return [(_least(one), _most(one)) for one in value]


def _least(value: Any) -> float:
    return value.low if isinstance(value, Range) else value if isinstance(value, float) else 0.0


def _most(value: Any) -> float:
    return value.high if isinstance(value, Range) else value if isinstance(value, float) else 0.0


class _At(Node):
    """The place of a value that has been read."""

    __slots__ = ()

    def __init__(self, given: Given) -> None:
        super().__init__(given.where.line, given.where.column)
