"""What guards against the site: its voltage, the residual-current device ashore; where the lead enters the vehicle."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Link
from checker.design.given import Box
from checker.design.vocabulary.vehicle import CODES
from checker.facts.catalogue import fact
from checker.facts.mains import feed_named, tell
from checker.facts.subject import Subject
from checker.facts.supply import supplies_of
from checker.quantities import (
    Number,
    Truth,
    Unknown,
    add,
    either,
    every,
    greater_equal,
    less,
    less_equal,
    multiply,
    subtract,
)

ENTRIES = {"charger": "acL", "inverter-charger": "ac-inL", "transformer": "primaryL"}
"""Where equipment that is no load takes the shore in."""

LEAST_SHARE, MOST_SHARE = 0.7, 1.25
"""Shares of the nominal voltage beyond which a monitor would open too late: EN 50550 for the upper one, from memory."""

MOST_WAIT_S = 1.0
"""Longest wait of a monitor that still saves electronics: EN 50550 asks 0.75 s at 300 V, from memory."""


@fact(
    "inlet",
    "is_watched_for_voltage",
    type="yes/no",
    says="Every way from it to what draws passes a device that opens on too low and too high a voltage.",
    method="walk along live conductors from the inlet up to voltage monitors; their levels lie within 0.7 and 1.25 of "
    "the voltage of the sites, and they wait no longer than 1 s",
    source="EN 50550, devices against power-frequency overvoltage (from memory); the lower level common practice",
)
def is_watched_for_voltage(s: Subject) -> Truth:
    feed = feed_named(s.facts, s.id)
    if feed is None:
        return Unknown(f"{s.id} is connected to no circuit")
    network = s.facts.network
    ends = {f"{item.name}:{ENTRIES[item.kind]}" for item in network.equipment.values() if item.kind in ENTRIES}
    monitors: dict[str, Any] = {}
    hidden = False
    todo, seen = [feed.live], {feed.live}
    for node in todo:
        if node in ends or node in network.sinks:
            if hidden:
                return Unknown("part of the mains was not seen and may hide a voltage monitor")
            tell(s, f"{node.split(':', 1)[0]} is reached without one")
            return False
        for edge, far in network.near.get(node, ()):
            pole = edge.pole if isinstance(edge, Link) else edge.conductor.role
            if pole != LIVE or far in seen:
                continue
            if isinstance(edge, Link) and edge.equipment.kind == "voltage monitor":
                monitors[edge.equipment.name] = edge.equipment
                continue
            hidden = hidden or (not isinstance(edge, Link) and edge.gap is not None)
            seen.add(far)
            todo.append(far)
    nominal = s.read(s.facts.design.vehicle, "supply.voltage")
    answers: list[Truth] = []
    for item in monitors.values():
        answers.append(greater_equal(s.read(item, "trips below"), multiply(nominal, LEAST_SHARE)))
        answers.append(less_equal(s.read(item, "trips above"), multiply(nominal, MOST_SHARE)))
        answers.append(less_equal(s.read(item, "time"), MOST_WAIT_S))
    return every(answers) if monitors else False


@fact("inlet", "site_residual_current", unit="mA", says="Residual-current device at the site outlet; none without one.")
def site_residual_current(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "site rcd.trips at")


@fact(
    "inlet",
    "own_residual_current",
    unit="mA",
    says="Highest rated residual current of the devices aboard that protect what it feeds; none without one.",
    method="devices on the way of each supply from it",
)
def own_residual_current(s: Subject) -> Any:
    found: dict[str, Any] = {}
    for supply in supplies_of(s.facts):
        if supply.feed.name == s.id:
            found.update({device.name: device for device in supply.path.devices})
            if supply.path.protected is None:
                return Unknown("part of the mains was not seen and may hide a residual-current device")
    values = [s.read(device, "trips at") for device in found.values()]
    if not values:
        return None
    highest: Any = values[0]
    for one in values[1:]:
        smaller = less(highest, one)
        if isinstance(smaller, Unknown):
            return smaller
        highest = one if smaller else highest
    return highest


@fact(
    "inlet",
    "residual_devices_explained",
    type="yes/no",
    says="The user book tells which residual-current device is expected to clear.",
    method="`residual devices` among what the manual tells",
)
def residual_devices_explained(s: Subject) -> Truth:
    told = s.read(s.facts.design.papers, "manual")
    return told if isinstance(told, Unknown) else isinstance(told, tuple) and "residual devices" in told


@fact("inlet", "code", words=CODES, says="The code of practice whose limits apply.")
def code(s: Subject) -> Any:
    return s.use("code", s.facts.design.code)


@fact(
    "inlet",
    "place_is_free",
    type="yes/no",
    says="The class of the vehicle is excused from having its supply entry near the rear on the left.",
    method="vehicles for livestock; boats and transportable units are no recreational vehicles",
    source="NFPA 70 551.46(E), exceptions (from memory)",
)
def place_is_free(s: Subject) -> Truth:
    vehicle = s.facts.design.vehicle
    kind = s.read(vehicle, "kind")
    return either(s.read(vehicle, "livestock"), kind if isinstance(kind, Unknown) else kind in ("boat", "unit"))


@fact(
    "inlet",
    "distance_from_rear",
    unit="m",
    says="Length along the vehicle from its rear to the inlet.",
    method="envelope of the vehicle and the place of the inlet, in vehicle axes",
)
def distance_from_rear(s: Subject) -> Any:
    return _from(s, 0, "axes.x", "rearward")


@fact(
    "inlet",
    "distance_from_right",
    unit="m",
    says="Distance across the vehicle from its right side to the inlet.",
    method="envelope of the vehicle and the place of the inlet, in vehicle axes",
)
def distance_from_right(s: Subject) -> Any:
    return _from(s, 1, "axes.y", "to the right")


@fact("inlet", "half_width", unit="m", says="Half the width of the vehicle.", method="its envelope")
def half_width(s: Subject) -> Any:
    box = s.read(s.facts.design.vehicle, "envelope")
    return multiply(box.size[1], 0.5) if isinstance(box, Box) else Unknown("the envelope of the vehicle is not told")


def _from(s: Subject, axis: int, key: str, positive: str) -> Number:
    """Distance from the face at the end of an axis named `positive` when the axis points there."""
    vehicle = s.facts.design.vehicle
    box, point, way = s.read(vehicle, "envelope"), s.read(s.item, "at"), s.read(vehicle, key)
    if not isinstance(box, Box) or not isinstance(point, tuple) or not isinstance(way, str):
        return Unknown("the envelope, the axes or the place of the inlet is not told")
    start, end = box.at[axis], add(box.at[axis], box.size[axis])
    return subtract(end, point[axis]) if way == positive else subtract(point[axis], start)
