"""The first moments: closing onto capacitors, opening under load, a start without a battery, load dump."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Conductor
from checker.facts.catalogue import fact
from checker.facts.converter_bus import alone
from checker.facts.device import faults_of
from checker.facts.least_fault import live_links
from checker.facts.subject import Subject
from checker.facts.unseen import where_it_stands
from checker.physics.arc import arc_energy, loop_inductance
from checker.physics.capacitor import stored_energy
from checker.physics.inrush import inrush_energy, left_after_precharge, peak_current, resistor_power
from checker.physics.load_dump import clamp_current, clamp_energy, inner_resistance, pulse
from checker.physics.motor import voltage_at_limit
from checker.quantities import UNKNOWN, Number, Range, Unknown, Window, corners, divide, greatest, total

INDUCTANCE_PER_M = Range(0.5e-6, 1.2e-6)
"""Inductance of a run there and back for each metre, henry; common practice, no source."""
CIRCUIT = "resistance, inductance and capacitance in series (circuit theory)"


@fact(
    "switch",
    "capacitance_behind",
    unit="F",
    says="Empty capacitors that it closes onto a battery, together; none when there are none.",
    method="sum of the input capacitance of the inverters behind it",
)
@where_it_stands
def capacitance_behind(s: Subject) -> Any:
    behind = s.capacitors_behind
    if isinstance(behind, Unknown):
        return behind
    found = [one.input_capacitance for one in behind]
    return total(found) if found else None


@fact(
    "switch",
    "path_resistance",
    unit="mΩ",
    says="Least resistance of batteries and leads before it: highest voltage over the greatest short-circuit current.",
    method="as device.prospective_max, at its contact",
)
@where_it_stands
def path_resistance(s: Subject) -> Any:
    faults = faults_of(s.facts)
    found = [faults.through(link) for link in live_links(s)]
    currents = [one for one in found if not isinstance(one, Unknown)]
    if not currents:
        return Unknown(f"the short-circuit current at {s.id} is not known")
    return divide(s.circuit_voltage, greatest(currents))


def _run(s: Subject) -> Number:
    """Length of the conductor it stands in, the shortest credible way between battery and capacitors, m."""
    lengths: list[Number] = []
    for link in live_links(s):
        owner: Conductor | None = s.facts.network.by_link.get(id(link))
        twin = None if owner is None else s.facts.of("conductor", owner)
        if twin is not None:
            lengths.append(twin.length)
    return greatest(lengths) if lengths else Unknown(f"{s.id} stands in no run")


@fact(
    "switch",
    "path_inductance",
    unit="µH",
    says="Inductance of the run it stands in, there and back.",
    method="length of the run times 0.5 to 1.2 µH/m",
    source="common practice, no source",
)
@where_it_stands
def path_inductance(s: Subject) -> Any:
    return corners(loop_inductance, _run(s), INDUCTANCE_PER_M)


@fact(
    "switch",
    "closing_current",
    unit="A",
    says="Peak current through it when it closes onto the empty capacitors without pre-charge; none without them.",
    method="closed form of resistance, inductance and capacitance in series, from the highest voltage",
    source=CIRCUIT,
)
def closing_current(s: Subject) -> Any:
    if s.capacitance_behind is None:
        return None
    return corners(peak_current, s.circuit_voltage, s.path_resistance, s.path_inductance, s.capacitance_behind)


@fact(
    "switch",
    "closing_let_through",
    unit="A2s",
    says="I² t of that in-rush, whatever the inductance; none without capacitors.",
    method="C V² / 2R",
    source=CIRCUIT,
)
def closing_let_through(s: Subject) -> Any:
    if s.capacitance_behind is None:
        return None
    return corners(inrush_energy, s.circuit_voltage, s.path_resistance, s.capacitance_behind)


@fact(
    "switch",
    "closing_energy",
    unit="J",
    says="Energy the capacitors store, and that charging them turns into heat; none without capacitors.",
    method="C V² / 2",
    source="energy of a capacitor (circuit theory)",
)
def closing_energy(s: Subject) -> Any:
    return corners(stored_energy, s.capacitance_behind, s.circuit_voltage)


def _precharge(s: Subject, key: str) -> Any:
    return s.read(s.item, key) if s.item.allows(key) else None


@fact("switch", "precharge_resistance", unit="Ω", says="The resistor of its pre-charge.")
def precharge_resistance(s: Subject) -> Any:
    return _precharge(s, "precharge resistance")


@fact("switch", "precharge_time", unit="s", says="How long its pre-charge lasts.")
def precharge_time(s: Subject) -> Any:
    return _precharge(s, "precharge time")


@fact(
    "switch",
    "precharge_gap",
    unit="V",
    says="Voltage left across its contact when the pre-charge ends; none without capacitors.",
    method="V e^(-t/RC)",
    source=CIRCUIT,
)
def precharge_gap(s: Subject) -> Any:
    if s.capacitance_behind is None:
        return None
    return corners(
        left_after_precharge, s.circuit_voltage, s.precharge_resistance, s.capacitance_behind, s.precharge_time
    )


@fact(
    "switch",
    "precharged_current",
    unit="A",
    says="Peak current through its contact when it closes after the pre-charge; none without capacitors.",
    method="as switch.closing_current, from the voltage left",
    source=CIRCUIT,
)
def precharged_current(s: Subject) -> Any:
    if s.capacitance_behind is None:
        return None
    return corners(peak_current, s.precharge_gap, s.path_resistance, s.path_inductance, s.capacitance_behind)


@fact(
    "switch",
    "precharge_power",
    unit="W",
    says="Power of its pre-charge resistor at the first moment.",
    method="V² / R",
    source="Ohm's law",
)
def precharge_power(s: Subject) -> Any:
    return corners(resistor_power, s.circuit_voltage, s.precharge_resistance)


@fact(
    "switch",
    "opening_arc",
    unit="J",
    says="Energy of the arc when it opens its greatest current, at the arc voltage its rating promises.",
    method="L I² / 2 · U_a / (U_a - U), U_a its rated direct voltage; unknown where that is not above the supply",
    source="arc of constant voltage (circuit theory)",
)
def opening_arc(s: Subject) -> Any:
    return corners(arc_energy, s.contact_voltage_dc, s.circuit_voltage, s.greatest_current, s.path_inductance)


@fact(
    "converter",
    "voltage_at_start",
    unit="V",
    says="Voltage on the bus it holds up alone while all loads start together; none where it holds none up.",
    method="its setting up to its peak; beyond, for one that limits, setting times peak over asked: a motor is a "
    "resistance until it turns",
    source="Ohm's law",
)
def voltage_at_start(s: Subject) -> Any:
    if not alone(s.facts, s.item):
        return None
    setting = s.read(s.item, "settings.feed voltage")
    if isinstance(setting, Unknown):
        setting = s.read(s.item, "settings.charge voltage")
    asked, peak = s.peak_bus_current, s.peak_output
    left = corners(voltage_at_limit, setting, peak, asked)
    word = s.read(s.item, "at fault") if s.item.allows("at fault") else UNKNOWN
    if word == "limits" or _holds(left, setting):
        return left
    return Unknown(f"beyond its peak {s.id} may shut down" if isinstance(word, str) else f"{s.id} at fault: not told")


def _holds(left: Number, setting: Any) -> bool:
    return isinstance(left, float) and isinstance(setting, float) and left >= setting


@fact(
    "converter",
    "load_dump_resistance",
    unit="Ω",
    says="Inner resistance of an alternator at its rated speed when its battery is lost.",
    method="10 U n / (0.8 I 12000) at 6000 rev/min",
    source="ISO 16750-2, load dump (seen in a public quotation)",
)
def load_dump_resistance(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    return corners(inner_resistance, s.read(s.item, "nominal"), s.read(s.item, "rating"))


@fact(
    "converter",
    "load_dump_energy",
    unit="J",
    says="Energy that a clamp on the bus of an alternator must swallow at most when the battery is lost.",
    method="falling pulse of ISO 16750-2 through the inner resistance into the clamp at its stated level",
    source="ISO 16750-2, load dump (seen in public quotations); closed form of a falling exponential",
)
def load_dump_energy(s: Subject) -> Any:
    shape = _pulse(s)
    if not isinstance(shape, tuple):
        return shape
    peak, base, lasts = shape
    return corners(clamp_energy, peak, base, s.load_dump_level, s.load_dump_resistance, lasts)


@fact(
    "converter",
    "load_dump_current",
    unit="A",
    says="Greatest current into such a clamp.",
    method="peak of the pulse less the level of the clamp over the inner resistance",
    source="ISO 16750-2, load dump (seen in public quotations)",
)
def load_dump_current(s: Subject) -> Any:
    shape = _pulse(s)
    if not isinstance(shape, tuple):
        return shape
    return corners(clamp_current, shape[0], s.load_dump_level, s.load_dump_resistance)


def _pulse(s: Subject) -> tuple[float, Number, float] | Number:
    """Peak (V), voltage of the running system (V) and duration (s) of the worst published pulse."""
    if s.item.kind != "alternator":
        return None
    nominal = s.read(s.item, "nominal")
    if not isinstance(nominal, float) or nominal not in (12.0, 24.0):
        return Unknown("pulses are published for 12 V and 24 V systems")
    worst = pulse(nominal)
    window = s.read(s.item, "set voltage")
    base = window.high if isinstance(window, Window) else worst.base_v
    return worst.peak_v[1], base, worst.duration_s[1]
