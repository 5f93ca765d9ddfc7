"""What an instrument should read, and where: names of the design file turned into nodes and elements of the network."""

from __future__ import annotations

from typing import NamedTuple

from checker.circuit.dc_solution import Flow, Solution
from checker.circuit.elements import CHASSIS, LIVE, RETURN
from checker.circuit.sources import LOADS
from checker.facts.bank import home
from checker.facts.levels import level_at
from checker.facts.operating_point import Measure, OperatingPoint, Predicted, Value
from checker.quantities import UNKNOWN, Number, Unknown

VOLTAGE, CURRENT, POWER, LOSS = "voltage", "current", "power", "voltage lost"
UNITS = {VOLTAGE: "V", CURRENT: "A", POWER: "W", LOSS: "V"}
# What the instruments themselves may be off: a share of the value, and as much besides. Common practice, no source.
INSTRUMENT = {VOLTAGE: (0.005, 0.05), LOSS: (0.005, 0.05), CURRENT: (0.02, 0.5), POWER: (0.03, 10.0)}
INSTRUMENT_SAYS = (
    "instruments: a voltmeter within 0.5 % and 0.05 V, a clamp meter within 2 % and 0.5 A; common practice, no source"
)
BUSES = ("bar", "board")
INVERTERS = ("inverter", "inverter-charger")
PORTS = {"solar controller": "battery", "charger": "dc", "inverter": "dc", "inverter-charger": "dc"}


class Spot(NamedTuple):
    """One place where something can be read: `ask` puts the question to a solution, `between` says where to touch.

    `node` is the live node that is touched, empty where a clamp goes round something.
    """

    at: str
    quantity: str
    ask: Measure
    between: str
    node: str = ""


def tolerance(quantity: str, size: float) -> float:
    """What the instrument may be off at a value, in the unit of the quantity."""
    share, besides = INSTRUMENT[quantity]
    return share * abs(size) + besides


def spot(point: OperatingPoint, at: str, quantity: str) -> Spot | Unknown:
    """Where `at` (equipment, a port of it, a circuit) is read; unknown with the reason where it cannot be."""
    found = spots_at(point, at)
    for one in found:
        if one.quantity == quantity:
            return one
    if found:
        others = " and ".join(dict.fromkeys(one.quantity for one in found))
        return Unknown(f"{at} has no one {quantity}; its {others} can be predicted")
    return Unknown(f"{at} is not on the direct-current side that is solved, or does not work in {point.mode.name}")


def predicted(point: OperatingPoint, one: Spot, *, usual: bool = False) -> Value:
    """The value to be read; all but a voltage count without their direction. `usual` asks the usual cases alone."""
    found = point.value(one.ask, current=one.quantity in (CURRENT, POWER), usual=usual)
    if isinstance(found, Unknown) or one.quantity == VOLTAGE:
        return found
    low, high = sorted((abs(found.low), abs(found.high)))
    if found.low < 0.0 < found.high:
        low = 0.0
    return Predicted(abs(found.likely), low, high)


def spots_at(point: OperatingPoint, at: str) -> list[Spot]:
    """Everything that can be read at one name."""
    network = point.plan.facts.network
    name, _, port = at.partition(".")
    if at in network.by_circuit and at not in network.equipment:
        return _circuit(point, at)
    item = network.equipment.get(at) or network.equipment.get(name)
    if item is None:
        return []
    port = port if network.equipment.get(at) is None else ""
    if item.kind in BUSES:
        return [_volts(at, f"{item.name}:+", f"{item.name}:-")]
    if item.name in point.plan.units:
        live = home(point.plan.facts, item)
        return [_volts(at, live, live.replace("+", "-")), *_sum(at, point.plan.units[item.name])]
    if item.kind == "dc converter":
        return _converter(point, at, item.name, port) if port in ("low", "high") else []
    if item.name in point.plan.links:
        return _device(point, at)
    if item.kind in PORTS:
        side = PORTS[item.kind]
        element = f"{item.name}.dc" if f"{item.name}.dc" in point.plan.sources else item.name
        return [_volts(at, f"{item.name}:{side}+", f"{item.name}:{side}-"), *_element(point, at, element)]
    known = item.name in point.plan.sources or item.name in point.plan.loads
    if known or (item.kind in LOADS and f"{item.name}:+" in network.near):
        return [_volts(at, f"{item.name}:+", f"{item.name}:-"), *_element(point, at, item.name)]
    if item.kind == "alternator":
        return [_volts(at, f"{item.name}:+", f"{item.name}:-")]
    return []


def _volts(at: str, plus: str, minus: str) -> Spot:
    return Spot(at, VOLTAGE, lambda found: found.between(plus, minus), f"{plus} and {minus}", plus)


def _flow(at: str, quantity: str, name: str, where: str, *, out: bool = False) -> Spot:
    def ask(found: Solution) -> float | None:
        if name in found.off:
            return 0.0
        flow = found.flows.get(name)
        if flow is None:
            return None
        return _read(flow, quantity, out)

    return Spot(at, quantity, ask, where)


def _read(flow: Flow, quantity: str, out: bool) -> float | None:
    amps, volts = (flow.amps_out, flow.volts_out) if out else (flow.amps, flow.volts)
    if amps is None or volts is None:
        return None
    return amps if quantity == CURRENT else amps * volts


def _element(point: OperatingPoint, at: str, name: str) -> list[Spot]:
    if name not in point.plan.names:
        return []
    where = f"round one lead of {at}"
    return [_flow(at, CURRENT, name, where), _flow(at, POWER, name, where)]


def _sum(at: str, names: tuple[str, ...]) -> list[Spot]:
    def amps(found: Solution) -> float | None:
        flows = [found.flows.get(name) for name in names]
        return sum(flow.amps or 0.0 for flow in flows if flow is not None) if any(flows) else None

    def watts(found: Solution) -> float | None:
        flows = [found.flows.get(name) for name in names]
        return sum(flow.watts or 0.0 for flow in flows if flow is not None) if any(flows) else None

    where = f"round all leads of {at} together"
    return [Spot(at, CURRENT, amps, where), Spot(at, POWER, watts, where)]


def _converter(point: OperatingPoint, at: str, name: str, side: str) -> list[Spot]:
    out = point.plan.gives_at.get(name) == side
    where = f"round the lead of {at}"

    def ask(quantity: str) -> Measure:
        def measure(found: Solution) -> float | None:
            if name in found.off:
                return 0.0
            flow = found.flows.get(name)
            return None if flow is None else _read(flow, quantity, out)

        return measure

    return [
        _volts(at, f"{name}:{side}+", f"{name}:{side}-"),
        Spot(at, CURRENT, ask(CURRENT), where),
        Spot(at, POWER, ask(POWER), where),
    ]


def _device(point: OperatingPoint, at: str) -> list[Spot]:
    names = point.plan.links[at]
    network = point.plan.facts.network
    link = next(one for one in network.links if one.equipment.name == at and one.pole == LIVE)
    return [
        Spot(at, VOLTAGE, lambda found: found.between(link.b, CHASSIS), f"{link.b} and the chassis", link.b),
        _flow(at, CURRENT, names[0], f"round a lead of {at}"),
    ]


def _circuit(point: OperatingPoint, at: str) -> list[Spot]:
    network = point.plan.facts.network
    live = network.conductor(at, LIVE) or next(iter(network.by_circuit[at]))
    names = point.plan.wires.get(live.id)
    if not names:
        return []
    found = [_flow(at, CURRENT, names[0], f"round the conductor {at}")]
    if live.end.endswith("+"):
        found.insert(0, _volts(at, live.end, live.end[:-1] + "-"))
    return found


def side_of(point: OperatingPoint, at: str) -> Number:
    """Nominal voltage, V, of the side that a name belongs to; unknown where nothing tells, as of a return conductor."""
    network = point.plan.facts.network
    live = network.conductor(at, LIVE) if at in network.by_circuit else None
    nodes = [live.end] if live is not None else [one.node for one in spots_at(point, at) if one.node]
    level = level_at(point.plan.facts, nodes[0]) if nodes else None
    return level.nominal if level is not None else UNKNOWN


def drop_spot(point: OperatingPoint, circuit: str) -> Spot | None:
    """The voltage lost along a circuit, out and back, all its devices included; negative where current flows home."""
    network = point.plan.facts.network
    legs = []
    for role in (LIVE, RETURN):
        conductor = network.conductor(circuit, role)
        if conductor is not None and conductor.id in point.plan.wires:
            legs.append((conductor.start, conductor.end, 1.0 if role == LIVE else -1.0))
    if not legs:
        return None

    def lost(found: Solution) -> float | None:
        total = 0.0
        for start, end, sign in legs:
            drop = found.between(start, end)
            if drop is None:
                return None
            total += sign * drop
        return total

    where = " and ".join(f"from {start} to {end}" for start, end, _ in legs)
    return Spot(circuit, LOSS, lost, where)


def names_on(point: OperatingPoint) -> list[str]:
    """Everything of the direct-current side that can be named, in file order: equipment, sides, circuits."""
    network = point.plan.facts.network
    found: list[str] = []
    inner = {unit for units in point.plan.units.values() for unit in units}
    for name, item in network.equipment.items():
        if name in inner:
            continue
        if item.kind == "dc converter":
            found += [f"{name}.low", f"{name}.high"]
        else:
            found.append(name)
    found += [name for name in network.by_circuit if network.systems[name] == "dc"]
    return [name for name in dict.fromkeys(found) if spots_at(point, name)]
