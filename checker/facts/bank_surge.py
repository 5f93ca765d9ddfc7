"""A surge or an in-rush against the battery itself: how far a lead bank sags, whether a management trips."""

from __future__ import annotations

from math import pi, sqrt
from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.facts.bank import home, of_unit, series_parallel, summed
from checker.facts.bank_limits import lowest_voltage
from checker.facts.battery_body import LEAD
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.physics.storage import lead_acid_cell_voltage
from checker.quantities import Number, Range, Unknown, Window, corners, divide, greatest, multiply, subtract
from checker.quantities.values import between

HALF = 0.5
"""Charge at which a lead bank must still give a surge, which is how far it is used: common practice, no source."""
DECAYS = 3.0
"""Time constants after which a twentieth of an in-rush is left."""


@fact(
    "bank",
    "inverter_stop",
    unit="V",
    says="Highest voltage below which an inverter on its bus does not work even for a moment; none without one.",
    method="lower end of the voltages each works at, else its low stop; what hangs on it by a relay or combiner alone "
    "is left out",
)
def inverter_stop(s: Subject) -> Any:
    found = [_works_down_to(s, one) for one in _inverters(s)]
    return greatest(found) if found else None


def _inverters(s: Subject) -> list[Equipment]:
    """The inverters on the bus of a bank, not those that another battery reaches it by."""
    network = s.facts.network

    def passes(edge: Edge) -> bool:
        return not (isinstance(edge, Link) and edge.equipment.kind in ("relay", "combiner"))

    near = (node for node in joined(network, [home(s.facts, s.item)], passes) if node.endswith("dc+"))
    items = (item for node in near for item in network.sinks.get(node, ()))
    return [item for item in items if item.kind in ("inverter", "inverter-charger")]


def _works_down_to(s: Subject, item: Equipment) -> Number:
    """A low stop waits for seconds; what a surge must not fall below is the end of the range it works in."""
    window = s.read(item, "dc.voltage")
    if isinstance(window, Window):
        return window.low
    stop = lowest_voltage(s, item)
    top = stop.high if isinstance(stop, Range) else stop
    return between(0.0, top) if isinstance(top, float) and item.has("dc.voltage") else stop


@fact(
    "bank",
    "voltage_at_surge",
    unit="V",
    says="Voltage that it holds, half charged, while everything on it surges; for lead-acid.",
    method="rested voltage of its cells at half charge less the resistance times bank.peak_sum, which grows as the "
    "voltage falls; the resistance from the highest voltage over the short-circuit current",
    source="battery as electromotive force behind a resistance (circuit theory); rested voltage from memory",
)
def voltage_at_surge(s: Subject) -> Any:
    if not isinstance(s.chemistry, str) or s.chemistry not in LEAD:
        return Unknown(f"the rested voltage of {s.id} is not known")
    least_v, most_v = lead_acid_cell_voltage(HALF)
    series = series_parallel(s, s.item)[0]
    rested = multiply(multiply(s.cells, series), between(least_v, most_v))
    grown = [divide(lowest_voltage(s, one), _works_down_to(s, one)) for one in _inverters(s)]
    asked = multiply(s.peak_sum, greatest([1.0, *grown]))
    return subtract(rested, multiply(divide(s.highest_voltage, s.short_circuit_current), asked))


@fact("bank", "short_trip_current", unit="A", says="Current at which its management takes a short circuit for given.",
      method="unit limits, the strings in parallel summed")  # fmt: skip
def short_trip_current(s: Subject) -> Any:
    return summed(s, "bms.short circuit.current")


@fact("bank", "short_trip_time", unit="s", says="How long such a current must last until its management opens.")
def short_trip_time(s: Subject) -> Any:
    return of_unit(s, s.item, "bms.short circuit.time")


def _closing_onto(s: Subject) -> list[Subject] | Unknown:
    """The switches that close this bank onto capacitors with no pre-charge, or with one the fitter gives."""
    here, found = home(s.facts, s.item), []
    for switch in s.facts.subjects("switch"):
        behind = switch.capacitors_behind
        if isinstance(behind, Unknown):
            return behind
        nodes = s.facts.network.nodes_of(switch.id) if behind else []
        if here not in joined(s.facts.network, nodes):
            continue
        told = True if switch.precharge is None else switch.precharge_is_told
        if isinstance(told, Unknown):
            return told
        if told:
            found.append(switch)
    return found


@fact(
    "bank",
    "inrush_peak",
    unit="A",
    says="Greatest in-rush when a switch closes it onto the capacitors of an inverter; none where every pre-charge is "
    "built in.",
    method="switch.making_current of the switches between",
)
def inrush_peak(s: Subject) -> Any:
    found = _closing_onto(s)
    if isinstance(found, Unknown):
        return found
    return greatest([one.making_current for one in found]) if found else None


@fact(
    "bank",
    "inrush_time",
    unit="ms",
    says="When such an in-rush is over, a twentieth of it left; none where there is none.",
    method="3 R C or half a swing, whichever lasts longer",
    source="resistance, inductance and capacitance in series (circuit theory)",
)
def inrush_time(s: Subject) -> Any:
    found = _closing_onto(s)
    if isinstance(found, Unknown):
        return found
    times = [
        corners(
            lambda ohms, henry, farad: max(DECAYS * ohms * farad, pi * sqrt(henry * farad)),
            one.path_resistance,
            one.path_inductance,
            one.capacitance_behind,
        )
        for one in found
    ]
    return greatest(times) if times else None
