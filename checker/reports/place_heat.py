"""Heat by place in one mode, from the currents that were solved: plain data, and lines of text."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, TypedDict

from checker.reports.paragraphs import paragraph

if TYPE_CHECKING:
    from checker.facts.operating_point import OperatingPoint
    from checker.facts.subject import Subject

LEAST_W = 1.0
MOST_NAMED = 5


class PlaceHeat(TypedDict):
    """Heat in one place, W; `by` is what makes it in the likely case, `air` how hot it gets on the hottest day, °C.

    `air` is null where the heat warms the place by more than can be said, or it is open.
    """

    place: str
    likely: float | None
    lowest: float | None
    highest: float | None
    by: dict[str, float]
    air: float | None
    unknown: str


def heat_by_place(point: OperatingPoint, mode: Subject) -> Iterator[PlaceHeat]:
    """Places in which a watt or more arises, in file order."""
    from checker.facts.solved_heat import air_with, by_name, heat_of_parts, parts
    from checker.facts.space import upper
    from checker.quantities import Range, Unknown

    if point.likely is None:
        return
    for place in mode.facts.subjects("place"):
        made = parts(point, place.id)
        by = by_name(point, made)
        whole = sum(by.values())
        if whole < LEAST_W:
            continue
        heat = heat_of_parts(point, made)
        known = isinstance(heat, float | Range)
        air = air_with(place, place.item, heat) if place.enclosed is True else None
        hottest = upper(air) if isinstance(air, float | Range) else None
        yield {
            "place": place.id,
            "likely": _digits(whole) if known else None,
            "lowest": _digits(heat.low if isinstance(heat, Range) else whole) if known else None,
            "highest": _digits(heat.high if isinstance(heat, Range) else whole) if known else None,
            "by": {name: _digits(watts) for name, watts in by.items() if watts >= 0.05 * whole},
            "air": None if hottest is None or hottest == float("inf") else _digits(hottest),
            "unknown": heat.reason if isinstance(heat, Unknown) else "",
        }


def _digits(value: float) -> float:
    """Three significant digits: more would claim more than is known."""
    return float(f"{value:.3g}")


def heat_lines(found: list[PlaceHeat]) -> Iterator[str]:
    """As lines of text."""
    if found:
        yield "  Heat by place, from these currents (power of loads and mains side left out):"
    for one in found:
        named = [f"{name} {watts:g} W" for name, watts in list(one["by"].items())[:MOST_NAMED]]
        words = f"{one['place']}: "
        if one["unknown"]:
            words += f"unknown: {one['unknown']}"
        else:
            words += f"{one['likely']:g} W ({one['lowest']:g} to {one['highest']:g}): {', '.join(named)}"
        if one["air"] is not None:
            words += f"; on the hottest day its air gets up to {one['air']:g} °C if it lasts"
        yield from paragraph(words, "    - ", "      ")
