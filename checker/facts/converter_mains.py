"""Converters between mains and battery: isolation between the sides, bond of the case, standards."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import BONDING, CHASSIS
from checker.circuit.supply import is_live
from checker.design.vocabulary.words import ISOLATION
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, greatest

STANDARDS = ("AS/NZS 4763", "UL 458", "IEC 62109")
"""Product standards of inverters that rules ask for; an `EN` of the same number is the same text."""

ON_MAINS = ("charger", "inverter", "inverter-charger")


@fact(
    "converter",
    "joins_mains_and_battery",
    type="yes/no",
    says="It stands between mains and a battery: charger, inverter or both in one.",
    method="kind of equipment",
)
def joins_mains_and_battery(s: Subject) -> bool:
    return s.item.kind in ON_MAINS


@fact("converter", "mains_isolation", words=ISOLATION, says="Isolation of mains from battery; none when joined.")
def mains_isolation(s: Subject) -> Any:
    return s.read(s.item, "isolation") if s.item.kind in ON_MAINS else None


@fact("converter", "makes_mains", type="yes/no", says="It makes mains from a battery.", method="kind of equipment")
def makes_mains(s: Subject) -> bool:
    return s.item.kind in ("inverter", "inverter-charger")


@fact("converter", "case_bond_is_asked", type="yes/no", says="Its maker asks for a bond of the case.")
def case_bond_is_asked(s: Subject) -> Any:
    if not s.item.allows("case bond"):
        return False
    asked = s.read(s.item, "case bond")
    return asked if isinstance(asked, Unknown) else asked == "required"


@fact(
    "converter",
    "case_bond_area",
    unit="mm2",
    says="Cross-section of the largest conductor that bonds its case; none without one.",
    method="bonding circuits between its case and the chassis, or the battery negative; one that leads nowhere is none",
)
def case_bond_area(s: Subject) -> Any:
    return _bond_of_case(s)


@fact(
    "load",
    "frame_bond_area",
    unit="mm2",
    says="Cross-section of the largest conductor that bonds the frame of a joined unit; none without one.",
    method="bonding circuits that end at its case",
)
def frame_bond_area(s: Subject) -> Any:
    return _bond_of_case(s)


def _bond_of_case(s: Subject) -> Any:
    value: Any = None
    case = f"{s.item.name}:case"
    for conductor in s.facts.network.conductors:
        if conductor.role != BONDING or case not in (conductor.start, conductor.end):
            continue
        leads = _leads_to_earth(s, case, conductor.end if conductor.start == case else conductor.start)
        subject = s.facts.of("conductor", conductor)
        area = Unknown("") if subject is None else subject.area
        if leads is not False:
            area = area if leads is True else leads
            value = area if value is None else greatest(value, area)
    return value


def _leads_to_earth(s: Subject, case: str, end: str) -> Truth:
    """Whether a bond goes on to the chassis or to the battery negative of the equipment, not through its own case."""
    goals = {CHASSIS, f"{s.item.name}:dc-"}
    seen, todo = {case, end}, [end]
    while todo:
        for edge, far in s.facts.network.near.get(todo.pop(), ()):
            if not is_live(edge) and far not in seen:
                seen.add(far)
                todo.append(far)
    if goals.intersection(seen):
        return True
    owners = {node.split(":", 1)[0] for node in seen} - {s.item.name}
    for circuit in s.facts.network.circuits:
        ends = (circuit.start, *circuit.ends)
        if circuit.earth.how == "unknown" and owners.intersection(port.equipment for port in ends):
            return Unknown(f"whether {circuit.name} has an earth conductor is not known")
    return False


@fact("converter", "case_insulated", type="yes/no", says="Insulation, not an earth, keeps its case from shock.",
      method="as told of a charger; the metal case of others is not")  # fmt: skip
def case_insulated(s: Subject) -> Any:
    if not s.item.allows("case"):
        return False
    case = s.read(s.item, "case")
    return case if isinstance(case, Unknown) else case == "insulated"


@fact(
    "converter",
    "standards",
    type="words",
    words=STANDARDS,
    says="Product standards it is said to meet, of those that rules know.",
    method="the names at the start of its list of standards",
)
def standards(s: Subject) -> Any:
    told = s.read(s.item, "standard")
    if not isinstance(told, tuple):
        return () if told is None else told
    plain = [f"I{one[:1]}C{one[2:]}" if one.startswith("EN ") else one for one in told]
    return tuple(name for name in STANDARDS if any(one.startswith(name) for one in plain))


@fact(
    "converter",
    "feeds_mains_wiring",
    type="yes/no",
    says="It feeds mains wiring of the vehicle, not only a plug at its own outlets.",
    method="a circuit starts at its mains output",
)
def feeds_mains_wiring(s: Subject) -> bool:
    ports = {"inverter": ("ac", "acL", None), "inverter-charger": ("ac-out", None)}.get(s.item.kind, ())
    return any(c.start.equipment == s.item.name and c.start.port in ports for c in s.facts.network.circuits)


DIRECT_SIDES = {
    "dc converter": ("sides.low.nominal", "sides.high.nominal"), "alternator": ("nominal",), "charger": ("dc.nominal",),
    "solar controller": ("output.nominal",), "inverter": ("dc.nominal",), "inverter-charger": ("dc.nominal",),
}  # fmt: skip


@fact(
    "converter",
    "highest_nominal_side",
    unit="V",
    says="Highest nominal voltage of its direct-current sides, that of an array left out; none without one.",
    method="sides as told",
)
def highest_nominal_side(s: Subject) -> Any:
    return greatest([s.read(s.item, key) for key in DIRECT_SIDES[s.item.kind]])
