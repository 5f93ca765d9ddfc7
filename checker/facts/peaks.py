"""Short peaks against the heat that a conductor takes up before it can shed any."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.motor import Start, starts
from checker.facts.subject import Subject
from checker.physics.adiabatic import k_from_temperatures, withstand_energy
from checker.physics.heat_balance import estimated_conductor_temperature
from checker.quantities import Number, Truth, Unknown, corners, either, every, less_equal, multiply, show, some

IN_A_ROW = 2.0
"""Starts one after the other before the conductor has cooled: common practice, no source."""


@fact(
    "conductor",
    "peak_limit",
    unit="A2s",
    says="Energy of a short peak that brings it from its running temperature to what its insulation endures for ever.",
    method="adiabatic equation from the temperature at the design current; all parallel cables together",
    source="IEC 60364-5-54 annex A, equation and constants (seen); temperature by FAA AC 43.13-1B 11-66d (from memory)",
)
def peak_limit(s: Subject) -> Any:
    def energy(area_m2: float, ambient_c: float, limit_c: float, current_a: float, capacity_a: float) -> float:
        if ambient_c >= limit_c or capacity_a <= 0.0 or current_a >= capacity_a:
            return 0.0  # it runs at its limit already
        start_c = estimated_conductor_temperature(ambient_c, limit_c, current_a, capacity_a)
        return withstand_energy(area_m2, k_from_temperatures("copper", start_c, limit_c))

    return corners(energy, s.area_in_parallel, s.ambient, s.insulation_limit, s.design_current, s.carrying_capacity)


@fact(
    "conductor",
    "has_starts",
    type="yes/no",
    says="Motors, compressors or inverters draw through a device that protects it.",
    method="device.has_starts of each device that protects it",
)
def has_starts(s: Subject) -> Any:
    devices = s.protected_by
    if isinstance(devices, Unknown):
        return devices
    return some([device.has_starts for device in devices if _behind(s, device)])


@fact(
    "conductor",
    "stands_starts",
    type="yes/no",
    says="No start behind the devices that protect it heats it above what its insulation endures.",
    method="a start within its carrying capacity, or two in a row within conductor.peak_limit, all heat kept",
    source="two in a row: common practice, no source",
)
def stands_starts(s: Subject) -> Any:
    devices = s.protected_by
    if isinstance(devices, Unknown):
        return devices
    answers: list[Truth] = []
    for device in devices:
        for one in _behind(s, device):
            energy = multiply(multiply(one.current, one.current), multiply(one.time, IN_A_ROW))
            s.note(_said(one.item.name, one.current, one.time))
            answers.append(either(less_equal(one.current, s.carrying_capacity), less_equal(energy, s.peak_limit)))
    return every(answers)


def _behind(s: Subject, device: Subject) -> list[Start]:
    """The starts behind a device that draw through the conductor: of a branch, those of the loads it ends in."""
    ends = _loads_at_its_end(s)
    return [one for one in starts(device) if not ends or one.item.name in ends]


def _loads_at_its_end(s: Subject) -> set[str]:
    """Names of the loads in which it ends; none where more hangs behind."""
    near = {node.split(":", 1)[0] for node in (s.item.start, s.item.end)}
    sinks = {item.name for node in (s.item.start, s.item.end) for item in s.facts.network.sinks.get(node, ())}
    return near & sinks


def _said(name: str, current: Number, time: Number) -> Any:
    return lambda: f"{name} starts: {show(current, 'A')} for {show(time, 's')} through its device, twice"
