"""The voltage of each part of the graph: nominal, highest, lowest, and whether it is direct or alternating.

A part is a set of live nodes joined by wires and links. Its voltages come from the equipment that stands on it.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

from checker.circuit.elements import LIVE, Wire
from checker.circuit.network import Network
from checker.circuit.sources import LOADS
from checker.design.given import RatedVoltage
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.stacked import BATTERIES, below
from checker.facts.subject import Facts, Subject
from checker.physics.solar import voltage_at
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Unknown,
    Window,
    add,
    between,
    corners,
    divide,
    equal,
    greater,
    greatest,
    multiply,
    perhaps,
)

LINES_OVER_LINE = 400.0 / 230.0
"""Nominal voltage between lines over that of line and neutral, √3 rounded as in 230/400 V: IEC 60038 (from memory)."""
LINE_TO_NEUTRAL_V = 250.0
"""Highest nominal voltage of line and neutral of sites anywhere, V: IEC 60038 (from memory)."""
LITHIUM_IRON_CELL_FULL_V = 3.65  # common practice, no source
LEAD_ACID_FULL_PER_NOMINAL = 14.8 / 12.0  # common practice, no source
CREDIBLE_OVER_NOMINAL = 1.5  # no charger of a nominal voltage holds more; common practice, no source


Of = Callable[[Network, Equipment, str], Number]


class Level(NamedTuple):
    """Voltages of one part, V, each with the equipment that tells it."""

    nominal: Number
    nominal_from: Equipment | None
    highest: Number
    highest_from: Equipment | None
    system: str
    told_by: tuple[tuple[Equipment, str], ...] = ()  # equipment on the part with the port that stands there


def levels(facts: Facts) -> dict[str, Level]:
    """Live node -> the level of its part."""
    found: dict[str, Level] | None = facts.shared.get("levels")
    if found is None:
        found = facts.shared["levels"] = _levels(facts.network)
    return found


def level_at(facts: Facts, node: str) -> Level | None:
    """The level of a live node, None where the node is on no live wire."""
    return levels(facts).get(node)


def parts(network: Network) -> list[list[str]]:
    """Live nodes in groups joined by live wires and links, in the order built."""
    seen: set[str] = set()
    found = []
    for start in network.near:
        if start in seen:
            continue
        group, todo = [], [start]
        while todo:
            node = todo.pop()
            if node in seen:
                continue
            seen.add(node)
            group.append(node)
            for edge, far in network.near.get(node, ()):
                live = edge.conductor.role == LIVE if isinstance(edge, Wire) else edge.pole == LIVE
                if live and far not in seen:
                    todo.append(far)
        found.append(group)
    return found


def _levels(network: Network) -> dict[str, Level]:
    telling: dict[str, list[tuple[Equipment, str]]] = {}
    for item in network.equipment.values():
        if item.name in network.units:
            continue
        for node, port in _terminals(item):
            telling.setdefault(node, []).append((item, port))
    found: dict[str, Level] = {}
    for group in parts(network):
        told = [pair for node in group for pair in telling.get(node, ())]
        level = _level(network, told, group)
        for node in group:
            found[node] = level
    return found


def _terminals(item: Equipment) -> list[tuple[str, str]]:
    ports = PORTS_OF.get(item.kind, ())
    return [(f"{item.name}:{port}{pole}", port) for port, pole in ports]


PORTS_OF: dict[str, tuple[tuple[str, str], ...]] = {
    "battery": (("", "+"),),
    "bank": (("", "+"),),
    "alternator": (("", "+"),),
    "dc converter": (("low", "+"), ("high", "+")),
    "charger": (("dc", "+"), ("ac", "L")),
    "inverter": (("dc", "+"), ("ac", "L")),
    "inverter-charger": (("dc", "+"), ("ac-in", "L"), ("ac-out", "L")),
    "solar controller": (("battery", "+"),),
    "solar array": (("", "+"),),
    "shore inlet": (("", "L"),),
    "generator": (("", "L"),),
    "traction outlet": (("", "+"), ("", "L")),
    "transformer": (("secondary", "L"),),
    "vehicle coupling": (("charge", "+"), ("brakes", "+"), ("lamps", "+"), ("fridge", "+")),
}


def _level(network: Network, told: list[tuple[Equipment, str]], group: list[str]) -> Level:
    nominal: Number = UNKNOWN
    nominal_from = None
    highest: Number = UNKNOWN
    highest_from = None
    ac = any(node.endswith("L") for node in group) or any(port.startswith("ac") for _, port in told)
    doubtful = False
    for item, port in told:
        volts = _with_below(network, item, nominal_of(network, item, port), nominal_of)
        if nominal_from is None and not isinstance(volts, Unknown) and volts is not None:
            nominal, nominal_from = volts, item
        top = _with_below(network, item, highest_of(network, item, port), highest_of)
        if isinstance(top, Unknown) or top is None:
            doubtful = doubtful or (top is not None and _feeds(network, item, port))
            continue
        if highest_from is None or _above(top, highest):
            highest, highest_from = top, item
    if highest_from is None:
        highest, highest_from = nominal, nominal_from
    if doubtful:
        highest = _up_to_credible(highest, nominal)
    return Level(nominal, nominal_from, highest, highest_from, "ac" if ac else "dc", tuple(told))


def read_level(s: Subject, level: Level | None) -> None:
    """Note what the voltages of a part rest on, for whoever asks how they came about."""
    if level is None or s.facts.recorder is None:
        return
    for item, port in level.told_by:
        for holder, key in told_keys(s.facts.network, item, port):
            s.read(holder, key)


def told_keys(network: Network, item: Equipment, port: str) -> list[tuple[Item, str]]:
    """The entries of the design that tell the voltages of equipment at a port."""
    if port.startswith("ac") or item.kind in ("shore inlet", "generator"):
        return [(network.design.vehicle, "supply.voltage")]
    one = item.base if item.kind == "bank" and item.base is not None else item
    keys = {
        "battery": ("nominal", "bms.over voltage", "chemistry", "cells"),
        "bank": ("nominal", "bms.over voltage", "chemistry", "cells"),
        "alternator": ("nominal", "set voltage"),
        "solar array": ("best voltage", "open voltage", "voltage coefficient"),
        "transformer": ("secondary.voltage",),
        "traction outlet": ("voltage",),
        "vehicle coupling": (f"supplies.{port}.nominal", "source end.voltage"),
        "charger": ("dc.nominal", "settings.charge voltage"),
        "inverter": ("dc.nominal",),
        "inverter-charger": ("dc.nominal", "settings.charge voltage"),
        "solar controller": ("output.nominal", "settings.charge voltage"),
        "dc converter": (
            f"sides.{port}.nominal",
            "settings.feed voltage" if port == "low" else "settings.charge voltage",
        ),
    }.get(item.kind, ())
    return [(one, key) for key in keys if one.allows(key)]


def _feeds(network: Network, item: Equipment, port: str) -> bool:
    return any(source.equipment is item and source.port == port for source in network.sources)


def _up_to_credible(highest: Number, nominal: Number) -> Number:
    """Where a source does not say how high it goes: from what the others reach to what none is known to exceed."""
    if not isinstance(nominal, float | Range) or not isinstance(highest, float | Range):
        return highest
    low = highest.low if isinstance(highest, Range) else highest
    top = nominal.high if isinstance(nominal, Range) else nominal
    return between(low, max(low, top * CREDIBLE_OVER_NOMINAL))


def _above(a: Number, b: Number) -> bool:
    def top(value: Number) -> float:
        return value.high if isinstance(value, Range) else value if isinstance(value, float) else 0.0

    return top(a) > top(b)


def _series(item: Equipment) -> Number:
    arrangement = item.value("arrangement") if item.allows("arrangement") else (1, 1)
    return float(arrangement[0]) if isinstance(arrangement, tuple) else UNKNOWN


def _told(item: Equipment, key: str) -> Any:
    """A key, unknown where equipment of that kind has none: a bank of which nobody knows what it is made."""
    return item.value(key) if item.allows(key) else UNKNOWN


def nominal_of(network: Network, item: Equipment, port: str) -> Number:
    """Nominal voltage of equipment at a port, V."""
    if port.startswith("ac") or item.kind in ("shore inlet", "generator"):
        return _of_sites(network)
    if item.kind in ("transformer", "traction outlet"):
        rated = item.value("secondary.voltage" if item.kind == "transformer" else "voltage")
        return rated.volts if isinstance(rated, RatedVoltage) else UNKNOWN
    if item.kind == "bank":
        unit = _told(item.base, "nominal") if item.base is not None else UNKNOWN
        return multiply(unit, _series(item))
    if item.kind == "battery":
        held = item.base
        return multiply(_told(item, "nominal"), _series(held) if held is not None and held.kind == "bank" else 1.0)
    if item.kind == "solar array":
        return multiply(item.value("best voltage"), _series(item))
    if item.kind == "vehicle coupling":
        return item.value(f"supplies.{port}.nominal")  # type: ignore[no-any-return]
    key = {
        "alternator": "nominal",
        "charger": "dc.nominal",
        "inverter": "dc.nominal",
        "inverter-charger": "dc.nominal",
        "solar controller": "output.nominal",
    }.get(item.kind, f"sides.{port}.nominal")
    return item.value(key)  # type: ignore[no-any-return]


def _of_sites(network: Network) -> Number:
    """Voltage of the sites on a circuit, V: of line and neutral, where three lines are told by that between them.

    Where an appliance needs more than one line, nobody knows which circuits carry them all.
    """
    vehicle = network.design.vehicle
    volts = vehicle.value("supply.voltage")
    if not isinstance(volts, float | Range):
        return UNKNOWN
    three = equal(vehicle.value("supply.phases"), 3.0)
    if three is False or greater(volts, LINE_TO_NEUTRAL_V) is not True:
        return volts
    line = divide(volts, LINES_OVER_LINE)
    lines = (one.value("phases") for one in network.equipment.values() if one.kind in LOADS and one.allows("phases"))
    if three is True and all(equal(one, 1.0) is True for one in lines):
        return line
    low, high = line.low if isinstance(line, Range) else line, volts.high if isinstance(volts, Range) else volts
    return between(low, high) if isinstance(low, float) else UNKNOWN


def highest_of(network: Network, item: Equipment, port: str) -> Number:
    """The highest voltage equipment puts on a port in use, V."""
    if port.startswith("ac") or item.kind in ("shore inlet", "generator", "transformer", "traction outlet"):
        return nominal_of(network, item, port)
    if item.kind in ("battery", "bank"):
        return _full(network, item)
    if item.kind == "alternator":
        window = item.value("set voltage")
        return window.high if isinstance(window, Window) else UNKNOWN
    if item.kind == "solar array":
        return cold_open_voltage(network, item)
    if item.kind == "vehicle coupling":
        window = item.value("source end.voltage")
        return window.high if isinstance(window, Window) else UNKNOWN
    if item.kind == "dc converter" and port == "low":
        return item.value("settings.feed voltage")  # type: ignore[no-any-return]
    charge = item.value("settings.charge voltage")
    equalise = item.value("settings.equalise")
    if isinstance(equalise, Unknown) and item.has("settings.equalise"):
        return equalise
    return greatest(charge, equalise) if isinstance(equalise, float | Range) else charge


def _full(network: Network, item: Equipment) -> Number:
    """Voltage of a full battery: where its management stops, else by chemistry."""
    one = item.base if item.kind == "bank" and item.base is not None else item
    series: Number = _series(item) if item.kind == "bank" else 1.0
    if item.kind == "battery" and item.base is not None and item.base.kind == "bank":
        series = _series(item.base)
    stop = one.value("bms.over voltage") if one.allows("bms.over voltage") else UNKNOWN
    if isinstance(stop, float | Range):
        return multiply(stop, series)
    if isinstance(stop, Unknown) and one.allows("bms.over voltage") and one.has("bms.over voltage"):
        return stop  # it has a stop that nobody could read: perhaps above what its cells are usually charged to
    chemistry = _told(one, "chemistry")
    if isinstance(chemistry, str) and chemistry == "lithium iron phosphate":
        cells = one.value("cells")
        volts = multiply(cells, LITHIUM_IRON_CELL_FULL_V) if isinstance(cells, float) else UNKNOWN
        if isinstance(volts, Unknown):
            volts = multiply(one.value("nominal"), LITHIUM_IRON_CELL_FULL_V / 3.0)
        return multiply(volts, series)
    if isinstance(chemistry, str) and "lead" in chemistry:
        return multiply(multiply(one.value("nominal"), LEAD_ACID_FULL_PER_NOMINAL), series)
    return UNKNOWN


def stacked_voltage(network: Network, item: Equipment) -> Number:
    """The highest voltage at the positive of a battery, with those in series below it, V."""
    return _with_below(network, item, highest_of(network, item, ""), highest_of)


def standing_voltage(network: Network, item: Equipment) -> Number:
    """The nominal voltage at the positive of a battery, with those in series below it, V."""
    return _with_below(network, item, nominal_of(network, item, ""), nominal_of)


def _with_below(network: Network, item: Equipment, volts: Number, of: Of) -> Number:
    """The voltage of equipment and, for a battery, of the batteries it stands on."""
    if item.kind not in BATTERIES or not isinstance(volts, float | Range):
        return volts
    for under, surely in below(network, item):
        one = of(network, under, "")
        volts = add(volts, one if surely is True else perhaps(one))
    return volts


def cold_open_voltage(network: Network, array: Equipment) -> Number:
    """Open-circuit voltage of the strings at the lowest ambient temperature, V."""
    low = network.design.vehicle.value("ambient.low")
    module = corners(voltage_at, array.value("open voltage"), array.value("voltage coefficient"), low)
    return multiply(module, _series(array))
