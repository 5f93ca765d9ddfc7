"""Whether a mode holds: steady voltages for whatever the uncertain numbers are, and nothing that the voltage stops.

Asked of every mode in every review, so one corner is solved, and the cases of the operating point only where it
leaves it open.
"""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, between

METHOD = (
    "operating point with every uncertain number at the end that lowers the voltage and each conductor as hot as its "
    "insulation endures; where that leaves it open, the cases of mode.has_operating_point"
)
SOURCE = "Kirchhoff's laws; what is assumed is noted, common practice, no source"


def _lowest(s: Subject) -> Any:
    """The lowest corner, solved once; None where something that counts is not known at all."""
    from checker.facts.operating_point import lowest_corner

    kept: dict[str, Any] = s.facts.store.setdefault("lowest corners", {})
    if s.id not in kept:
        kept[s.id] = lowest_corner(s, s.item)
    return kept[s.id]


@fact(
    "mode",
    "holds",
    type="yes/no",
    says="Steady voltages exist for what runs in it, whatever its uncertain numbers are.",
    method=METHOD,
    source=SOURCE,
)
def holds(s: Subject) -> Truth:
    from checker.circuit.dc_solution import NoSolution, Solution
    from checker.facts.operating_point import operating_point, solve_case

    if s.facts.recorder is not None:
        _ = s.has_operating_point  # reads and notes all that it rests on
    lowest = _lowest(s)
    if isinstance(lowest, Solution) and not lowest.off:
        return True
    point = operating_point(s, s.item)
    if point.missing:
        return Unknown(f"hangs on what is not known: {'; '.join(point.missing)}")
    failed = [case for case, found in point.cases.items() if isinstance(found, NoSolution)]
    if "likely" in failed and isinstance(solve_case(point.plan, "high"), NoSolution):
        return False  # not even with every uncertain number at its best
    return Unknown(f"there is none in the {failed[0]} case") if failed else True


@fact(
    "mode",
    "trouble",
    type="text",
    says="Why there is no operating point; empty where there is one.",
    method=METHOD,
    source=SOURCE,
)
def trouble(s: Subject) -> str:
    from checker.facts.operating_point import operating_point

    return "" if s.holds is True else operating_point(s, s.item).reason


@fact(
    "mode",
    "stopped",
    unit="each",
    says="Inverters and converters that a low voltage stops: from the least to the most over the uncertain numbers.",
    method=METHOD,
    source=SOURCE,
)
def stopped(s: Subject) -> Any:
    from checker.facts.operating_point import as_number, operating_point

    if s.holds is not True:
        return s.holds if isinstance(s.holds, Unknown) else Unknown(f"{s.id} has no operating point")
    lowest = _lowest(s)
    if lowest is not None and not lowest.off:
        return 0.0
    found = as_number(operating_point(s, s.item).value(lambda one: float(len(one.off)), current=True))
    if isinstance(found, Unknown) or lowest is None:
        return found
    low, high = (found, found) if isinstance(found, float) else (found.low, found.high)
    return between(low, max(high, float(len(lowest.off))))


@fact(
    "mode",
    "stopped_names",
    type="text",
    says="What the voltage stops in the likely case, by name; empty for nothing.",
    method=METHOD,
    source=SOURCE,
)
def stopped_names(s: Subject) -> str:
    from checker.facts.operating_point import operating_point

    found = operating_point(s, s.item)
    names = set() if found.likely is None else set(found.likely.off)
    names.update(getattr(_lowest(s), "off", ()))
    return ", ".join(sorted(names))
