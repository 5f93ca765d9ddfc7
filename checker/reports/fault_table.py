"""Short-circuit currents at the end of each circuit, mode by mode: as plain data and as lines of text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, TypedDict

from checker.reports.paragraphs import paragraph
from checker.reports.plain import one_line

if TYPE_CHECKING:
    from checker.facts.subject import Facts
    from checker.quantities import Number


class Short(TypedDict):
    """A dead short at the far end of a circuit; null where nothing can be told, and `unknown` says why. Amperes."""

    at: str
    least: float | None
    least_at_most: float | None
    greatest_at_least: float | None
    greatest: float | None
    weakest: str
    unknown: str


def shorts(facts: Facts, mode: str, at: Sequence[str]) -> list[Short]:
    """The ends of all battery-side circuits in a mode; only of those in `at` where there are any."""
    found: list[Short] = []
    for s in facts.subjects("fault"):
        if s.item.mode.name != mode or (at and s.item.conductor.circuit.name not in at):
            continue
        least, greatest = _ends(s.least), _ends(s.greatest)
        unknown = "" if least and greatest else str(getattr(s.greatest, "reason", ""))
        found.append(
            {
                "at": s.item.conductor.circuit.name,
                "least": least[0] if least else None,
                "least_at_most": least[1] if least else None,
                "greatest_at_least": greatest[0] if greatest else None,
                "greatest": greatest[1] if greatest else None,
                "weakest": s.weakest_source or "",
                "unknown": unknown,
            }
        )
    return found


def _ends(value: Number) -> tuple[float, float] | None:
    from checker.quantities import Range

    if isinstance(value, Range):
        return _digits(value.low), _digits(value.high)
    return (_digits(value), _digits(value)) if isinstance(value, float) else None


def _digits(value: float) -> float:
    return float(f"{value:.3g}")


def short_lines(found: Sequence[Short]) -> Iterator[str]:
    """A table, and below it what cannot be told."""
    if not found:
        return
    yield "  Short circuit at the far end, A:"
    width = min(26, max(len(one["at"]) for one in found))
    yield f"  {'':<{width}} {'least':>15} {'greatest':>15}  weakest source"
    for one in found:
        if one["unknown"]:
            yield from paragraph(f"{one['at']}: unknown: {one['unknown']}", "  ", "      ")
            continue
        row = f"  {one_line(one['at']):<{width}} {_span(one['least'], one['least_at_most']):>15} "
        yield f"{row}{_span(one['greatest_at_least'], one['greatest']):>15}  {one_line(one['weakest'])}".rstrip()


def _span(low: float | None, high: float | None) -> str:
    if low is None or high is None:
        return ""
    return f"{high:g}" if low == high else f"{low:g}..{high:g}"
