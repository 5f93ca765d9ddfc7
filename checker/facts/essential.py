"""What goes dark: alarms behind a switch, essential loads when a management opens its bank, all lamps by one fault."""

from __future__ import annotations

from typing import Any

from checker.design.model import Circuit, Equipment
from checker.facts.bank import loose_bank, parallel
from checker.facts.catalogue import fact
from checker.facts.contacts import engine_runs
from checker.facts.darkness import darkeners, goes_dark, live_node, reaches
from checker.facts.starter_drain import cut_without_engine
from checker.facts.subject import Facts, Subject
from checker.quantities import UNKNOWN, Truth, Unknown, both, either, equal, every, greater, greater_equal, negate

ALARMS = ("alarm", "detector")
LEAST_CELL_S = 3600.0
"""A cell of its own shorter than an hour is no second source: the time asked of escape lighting (EN 1838, memory)."""
SWITCHING = ("switch", "relay", "combiner", "changeover")


@fact(
    "circuit",
    "feeds_alarm",
    type="yes/no",
    says="A gas, smoke or carbon-monoxide alarm or detector stands at its end.",
    method="graph",
)
def feeds_alarm(s: Subject) -> bool:
    return any(_is_alarm(s.facts, port.equipment) for port in s.item.ends)


def _is_alarm(facts: Facts, name: str) -> bool:
    item = facts.network.equipment.get(name)
    return item is not None and item.kind in ALARMS


@fact(
    "circuit",
    "dark_by_switch",
    of="switch",
    type="list",
    says="Switches and relays that take every battery away from its end for certain, in some mode.",
    method="each taken out in turn; walk from every battery through converters, contacts as in each mode",
)
def dark_by_switch(s: Subject) -> Any:
    found: dict[str, Subject] = {}
    for port in s.item.ends:
        item = s.facts.network.equipment.get(port.equipment)
        node = live_node(s.facts, item) if item is not None else None
        if node is not None:
            switches = _switches_that_darken(s.facts, node, port.equipment, whole=False)
            if isinstance(switches, Unknown):
                return switches
            found.update({switch.id: switch for switch in switches})
    return tuple(found.values())


def _switches_that_darken(facts: Facts, node: str, name: str, *, whole: bool) -> Any:
    """The switches that do so for certain; with `whole` unknown as soon as one more may, else when none is certain."""
    loose = loose_bank(facts)
    if loose is not None:
        return loose
    if node not in reaches(facts, 0, most=True):  # every contact closed
        return Unknown(f"no battery is found to supply {name}")
    switching = [item.name for item in facts.network.equipment.values() if item.kind in SWITCHING]
    found, perhaps = darkeners(facts, node, switching)
    hidden = perhaps or node not in reaches(facts, 0, most=False)
    if hidden and (whole or not found):
        return Unknown("part of its supply was not seen, or a contact on it is not known")
    return tuple(switch for one in found if (switch := facts.subject("switch", one)) is not None)


@fact(
    "load",
    "dark_by_switch",
    of="switch",
    type="list",
    says="Switches and relays that take every battery away from it, in some mode.",
    method="as circuit.dark_by_switch",
)
def load_dark_by_switch(s: Subject) -> Any:
    node = live_node(s.facts, s.item)
    if node is None:
        return Unknown(f"{s.id} is not connected")
    return _switches_that_darken(s.facts, node, s.id, whole=True)


@fact(
    "load",
    "survives_bank_loss",
    type="yes/no",
    says="It keeps a supply when the management of a bank opens: another battery, or a cell of its own that lasts an "
    "hour.",
    method="each bank that is lithium or has a management taken out in turn; walk from the other batteries, "
    "contacts as in each mode",
    source="an hour: EN 1838, escape lighting (from memory)",
)
def survives_bank_loss(s: Subject) -> Truth:
    node = live_node(s.facts, s.item)
    if node is None:
        return Unknown(f"{s.id} is not connected")
    loose = loose_bank(s.facts)
    answers: list[Truth] = [True if loose is None else loose]
    for bank in s.facts.subjects("bank"):
        opens = bank.is_managed
        if opens is not False:
            answers.append(either(_kept(s.facts, node, bank.item), _or_unknown(opens)))
    return either(every(answers), own_cell_lasts(s))


def _or_unknown(opens: Truth) -> Truth:
    """A bank whose chemistry is not known may be one whose management opens."""
    return opens if isinstance(opens, Unknown) else False


def own_cell_lasts(s: Subject) -> Truth:
    """Whether a cell of its own carries it for an hour."""
    return greater_equal(s.own_cell, LEAST_CELL_S)


def _kept(facts: Facts, node: str, bank: Equipment) -> Truth:
    """Whether it outlives a bank and all lithium always in parallel with it: one cause makes them open together."""
    names = [bank.name, *facts.network.units.get(bank.name, ())]
    for item in parallel(facts, bank):
        twin = facts.subject("bank", item.name)
        if twin is not None and twin.is_managed is not False and item is not bank:
            names.append(item.name)
    return negate(goes_dark(facts, node, tuple(names)))


@fact("design", "essential_loads_told", type="yes/no", says="The loads that people depend on are named.",
      method="the list of essential loads, or loads marked essential")  # fmt: skip
def essential_loads_told(s: Subject) -> Truth:
    listed = s.use("essential", s.item.essential)
    if isinstance(listed, tuple) or listed is None:
        return True
    marks = [load.item.value("essential") for load in s.facts.subjects("load") if load.item.allows("essential")]
    return True if any(mark is True for mark in marks) else UNKNOWN


ROAD = ("road lamps", "steering", "service brake", "breakaway", "engine")


@fact("load", "is_road_load", type="yes/no",
      says="Engine, road lamps, brakes or steering: what the vehicle needs to drive.",
      method="its purpose; untold it is open for what the factory fitted, what stands at the engine, and what an "
      "automotive circuit or the lamp contact of a towing vehicle feeds")  # fmt: skip
def is_road_load(s: Subject) -> Truth:
    if s.item.kind == "brake":
        return True
    purpose = s.read(s.item, "purpose") if s.item.allows("purpose") else None
    if isinstance(purpose, Unknown):
        # Silence on the purpose of a lamp or motor is the rule; of the base vehicle nobody may take it for the house.
        return purpose if s.item.has("purpose") or _of_base_vehicle(s) else False
    return isinstance(purpose, str) and purpose in ROAD


def _of_base_vehicle(s: Subject) -> bool:
    """Whether a load may belong to the road vehicle by what is told beside its purpose."""
    if s.item.says("own", "factory") or _at_engine(s):
        return True
    return any(one.says("scope", "automotive") or _on_lamp_contact(s, one) for one in ending_at(s.facts, s.id))


def _on_lamp_contact(s: Subject, circuit: Circuit) -> bool:
    """Whether a circuit starts at the contact through which a towing vehicle feeds the road lamps."""
    item = s.facts.network.equipment.get(circuit.start.equipment)
    return item is not None and item.kind == "vehicle coupling" and circuit.start.port == "lamps"


def ending_at(facts: Facts, name: str) -> list[Circuit]:
    """The circuits that end at a piece of equipment, in file order; sorted once for all who ask."""
    held: dict[str, list[Circuit]] | None = facts.shared.get("circuits by their ends")
    if held is None:
        held = facts.shared["circuits by their ends"] = {}
        for circuit in facts.network.circuits:
            for other in dict.fromkeys(port.equipment for port in circuit.ends):
                held.setdefault(other, []).append(circuit)
    return held.get(name, [])


def _at_engine(s: Subject) -> bool:
    """Whether a load stands in an engine space for certain."""
    body = s.facts.subject("equipment", s.id)
    return body is not None and equal(body.place_kind, "engine space") is True


@fact("load", "is_absorption_fridge", type="yes/no", says="A refrigerator that cools by absorption, fed with dc.",
      method="how it works, and the supply it is connected to")  # fmt: skip
def is_absorption_fridge(s: Subject) -> Truth:
    if s.item.kind != "fridge":
        return False
    works = s.read(s.item, "works by")
    if isinstance(works, Unknown):
        return works
    return bool(works == "absorption" and f"{s.id}:+" in s.facts.network.near)


@fact("load", "only_when_driven", type="yes/no", says="Its low-voltage element works only while the engine runs.",
      method="given, or every way from a battery to it passes a contact that a running engine closes; a mode in which "
      "it draws with the engine stopped says otherwise")  # fmt: skip
def only_when_driven(s: Subject) -> Any:
    if s.item.kind != "fridge":
        return None
    told = either(s.read(s.item, "driven only"), cut_without_engine(s, f"{s.id}:+"))
    return both(told, negate(_draws_parked(s)))


def _draws_parked(s: Subject) -> bool:
    """Whether some mode tells that it draws from the battery with the engine stopped; one also on mains may not."""
    if f"{s.id}:L" in s.facts.network.near:
        return False
    for mode in s.facts.design.modes.values():
        running = s.read(mode, "running")
        amounts = dict(running) if isinstance(running, tuple) else {}
        if engine_runs(mode) is False and s.id in amounts and greater(amounts[s.id].value, 0.0) is True:
            s.note(lambda mode=mode: f"in {mode.name} it draws with the engine stopped")  # type: ignore[misc]
            return True
    return False
