"""Whether what feeds a battery with no converter between is of its voltage."""

from __future__ import annotations

from checker.circuit.elements import Edge, Wire
from checker.circuit.supply import joined
from checker.facts.bank import home, loose_bank
from checker.facts.catalogue import fact
from checker.facts.levels import PORTS_OF, level_at, nominal_of, standing_voltage
from checker.facts.mains import tell
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, divide, every, greater_equal, less_equal, show

FEEDING = ("alternator", "charger", "dc converter", "inverter-charger", "solar controller", "vehicle coupling")
LOW, HIGH = 0.8, 1.25
"""Between these shares two nominal voltages are of one system, as 12.8 V and 13.8 V; common practice, no source."""


@fact(
    "bank",
    "fed_at_its_voltage",
    type="yes/no",
    says="All that feeds it with no converter between is of its nominal voltage, or of the batteries it stands on.",
    method="nominal voltage of each alternator, charger, converter, controller and contact of a towing vehicle joined "
    "to it, every contact closed, from 0.8 to 1.25 of that of the battery",
    source="common practice, no source",
)
def fed_at_its_voltage(s: Subject) -> Truth:
    level = level_at(s.facts, home(s.facts, s.item))
    loose = loose_bank(s.facts)
    if level is None:
        return Unknown(f"what {s.id} is joined to is not told") if loose is None else loose
    own = standing_voltage(s.facts.network, s.item)
    seen = joined(s.facts.network, [home(s.facts, s.item)], _seen)
    answers: list[Truth] = [True if loose is None else loose]
    for item, port in level.told_by:
        if item.kind not in FEEDING:
            continue
        share = divide(nominal_of(s.facts.network, item, port), own)
        alike = both(greater_equal(share, LOW), less_equal(share, HIGH))
        there = any(f"{item.name}:{one}{pole}" in seen for one, pole in PORTS_OF[item.kind] if one == port)
        if alike is False and there:
            tell(s, f"{item.name} gives {show(share, 'ratio')} of the voltage of {s.id}")
        answers.append(alike if there or alike is True else Unknown("part of the way between was not seen"))
    return every(answers)


def _seen(edge: Edge) -> bool:
    return not (isinstance(edge, Wire) and edge.gap is not None)
