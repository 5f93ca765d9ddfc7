"""Ratings against lasting loads and heat: blade fuses in hot places, loads that run for hours, transformers."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE
from checker.circuit.sources import LOADS
from checker.circuit.supply import supplied
from checker.facts.catalogue import fact
from checker.facts.least_fault import sides, zones_of
from checker.facts.levels import level_at
from checker.facts.loads import rated_current
from checker.facts.subject import Subject
from checker.facts.unseen import where_it_stands
from checker.facts.zone_loads import fed_zones, hanging, supplying
from checker.physics.interpolation import linear
from checker.physics.tables import table
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
    greater_equal,
    least,
    multiply,
)

LASTING_S = 3.0 * 3600.0  # NFPA 70 article 100, continuous load (from memory)
RERATED = "large blade"


@fact(
    "device",
    "ambient",
    unit="°C",
    says="Air temperature where it stands.",
    method="upper temperature of its place, else of the hottest air the vehicle is used in",
)
def ambient(s: Subject) -> Any:
    name = s.read(s.item, "place") if s.item.allows("place") else UNKNOWN
    place = s.facts.design.places.get(name) if isinstance(name, str) else None
    if place is not None:
        stated = s.read(place, "temperature") if place.allows("temperature") else UNKNOWN
        if isinstance(stated, Window):
            return stated.high
        if place.says("kind", "engine space"):
            return Unknown(f"the air temperature in {place.name} is not stated")
    return s.read(s.facts.design.vehicle, "ambient.high")


def _rerated(ambient_c: float) -> float:
    published = table("fuse_temperature_rerating")
    points = tuple((float(row["ambient_c"]), float(row["fraction"])) for row in published.rows
                   if row["family"] == RERATED)  # fmt: skip
    if ambient_c <= points[0][0]:
        return points[0][1]
    return linear("ambient temperature, °C,", ambient_c, points, published.source)


@fact(
    "device",
    "hot_rating",
    unit="A",
    says="Current a blade fuse carries for ever at the temperature of its place.",
    method="rating times the published share, straight lines between its rows; held for large blades alone",
    source="table fuse_temperature_rerating (seen)",
)
def hot_rating(s: Subject) -> Any:
    family = s.family
    if not isinstance(family, str) or family != RERATED:
        return Unknown(f"how heat lowers the rating of {s.id} is not published for its family")
    return multiply(s.rating, corners(_rerated, s.ambient))


@fact(
    "device",
    "lasting_current",
    unit="A",
    says="Part of its load that runs for three hours or more.",
    method="the loads that are said to run three hours or more, at least; all that it carries but the loads that are "
    "said to run less, at most",
    source="NFPA 70 article 100, continuous load (from memory)",
)
@where_it_stands
def lasting_current(s: Subject) -> Any:
    whole = s.load_current
    sure: Number = 0.0
    at_most: Number = 0.0
    spared = False
    zones, nodes = zones_of(s.facts), _fed_nodes(s)
    behind = [pair for zone in dict.fromkeys(zones.of(node) for node in nodes) for pair in hanging(s.facts, zone)]
    for item, node in behind:
        level = level_at(s.facts, node)
        current = rated_current(item, UNKNOWN if level is None else level.nominal)
        lasts = greater_equal(s.read(item, "run time"), LASTING_S) if item.allows("run time") else UNKNOWN
        sure = add(sure, current) if lasts is True and not isinstance(current, Unknown) else sure
        spared = spared or lasts is False
        at_most = at_most if lasts is False else add(at_most, current)
    if isinstance(whole, Unknown):
        return whole
    counted = spared and not isinstance(at_most, Unknown) and not _others_behind(s, nodes)
    most = least(whole, at_most) if counted else whole
    low, high = _bottom(sure), _top(most)
    return most if low is None or high is None else between(min(low, high), high)


def _fed_nodes(s: Subject) -> list[str]:
    """The nodes of a device on the side that it feeds; of the mains the one that no source reaches without it."""
    if equal(s.system, "ac") is not True:
        return [node for _, node in fed_zones(s)]
    network = s.facts.network
    starts = [one.live for one in network.sources if one.system == "ac"]
    reached = supplied(network, starts, None, {s.id})
    return [node for _, node in sides(s) if node not in reached]


def _others_behind(s: Subject, nodes: list[str]) -> bool:
    """Whether something else than loads draws behind a device: on further devices, a converter, a battery."""
    zones = zones_of(s.facts)
    fed = {zones.of(node) for node in nodes}
    feeding = {one.link.equipment.name for zone in fed for one in supplying(s.facts, zone)} | {s.id}
    if any(one.link.equipment.name not in feeding for zone in fed for one in zones.borders(zone)):
        return True
    return not fed or any(
        zones.of(node) in fed and item.kind not in LOADS
        for node, items in s.facts.network.sinks.items()
        for item in items
        if node in s.facts.network.near
    )


def _bottom(value: Number) -> float | None:
    return value.low if isinstance(value, Range) else value if isinstance(value, float) else None


def _top(value: Number) -> float | None:
    return value.high if isinstance(value, Range) else value if isinstance(value, float) else None


@fact(
    "equipment",
    "primary_current",
    unit="A",
    says="Rated primary current of a transformer; none for other equipment.",
    method="given, else rated power over the primary voltage",
)
def primary_current(s: Subject) -> Any:
    if s.item.kind != "transformer":
        return None
    stated = s.read(s.item, "primary.current")
    if isinstance(stated, float | Range):
        return stated
    rated = s.read(s.item, "primary.voltage")
    volts = getattr(rated, "volts", UNKNOWN)
    return divide(s.read(s.item, "power"), volts)


@fact("equipment", "secondary_voltage", unit="V",
      says="Rated secondary voltage of a transformer; none for other equipment.")  # fmt: skip
def secondary_voltage(s: Subject) -> Any:
    if s.item.kind != "transformer":
        return None
    rated = s.read(s.item, "secondary.voltage")
    return getattr(rated, "volts", rated)


@fact("equipment", "windings", words=("separate", "auto"), says="Windings of a transformer; none for other equipment.")
def windings(s: Subject) -> Any:
    return s.read(s.item, "windings") if s.item.kind == "transformer" else None


@fact(
    "equipment",
    "primary_device",
    of="device",
    type="subject",
    says="The device that protects the primary of a transformer and nothing else; none when it has none of its own.",
    method="the circuit that ends at its primary: its own device",
)
def primary_device(s: Subject) -> Any:
    if s.item.kind != "transformer":
        return None
    for circuit in s.facts.subjects("circuit"):
        live = s.facts.network.conductor(circuit.id, LIVE)
        if live is not None and f"{s.id}:primaryL" in (live.start, live.end):
            return circuit.own_device
    return Unknown(f"nothing is connected to the primary of {s.id}")


@fact(
    "equipment",
    "primary_device_rating",
    unit="A",
    says="Rating of the device of its own before the primary of a transformer; none when it has none.",
)
def primary_device_rating(s: Subject) -> Any:
    if s.item.kind != "transformer":
        return None
    device = s.primary_device
    return device if device is None or isinstance(device, Unknown) else device.rating
