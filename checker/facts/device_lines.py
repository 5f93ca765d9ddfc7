"""How many live conductors a residual-current device has to open."""

from __future__ import annotations

from checker.facts.catalogue import fact
from checker.facts.mains_device import fed_through
from checker.facts.subject import Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import Number, add, every, greater, greatest

NEUTRAL = 1.0


@fact(
    "device",
    "live_conductors",
    unit="count",
    says="Live conductors of what a residual-current device guards: line and neutral, or the lines of a load of three.",
    method="most lines of a load behind it, and the neutral where one of them hangs on a single line",
    source="IEC 60364-1, live conductors, 2005 (from memory)",
)
@where_it_stands
def live_conductors(s: Subject) -> Number:
    lines: list[Number] = [s.read(one, "phases") if one.allows("phases") else 1.0 for one in fed_through(s).values()]
    most = greatest([1.0, *lines])
    # Three lines may do without a neutral; whoever hangs on one line takes it along.
    return most if lines and every(greater(one, 2.0) for one in lines) is True else add(most, NEUTRAL)
