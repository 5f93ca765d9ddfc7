"""The voltages that an inverter or a dc converter works at, against what the bus at each of its sides is charged to."""

from __future__ import annotations

from typing import Any

from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact
from checker.facts.charging import outputs_of
from checker.facts.converter_bus import alone
from checker.facts.levels import highest_of, level_at, read_level
from checker.facts.load_voltage import held_in_modes, tell
from checker.facts.low_end import with_monitor
from checker.facts.subject import Subject
from checker.quantities import Number, Unknown, Window, greatest, least, subtract
from checker.quantities.values import or_more, perhaps

STORAGE = ("battery", "bank")
SIDES = {
    "inverter": (("dc", "dc.voltage"),),
    "inverter-charger": (("dc", "dc.voltage"),),
    "dc converter": (("low", "sides.low.voltage"), ("high", "sides.high.voltage")),
}


@fact(
    "converter",
    "bus_margin",
    unit="V",
    says="Voltage that an inverter or dc converter works up to, less what the bus there is charged to; the least of "
    "its sides. None for other converters.",
    method="upper end of the voltages as told, less the highest setting of what charges that bus, else the full "
    "battery; a side that only gives and of which no voltages are told is left out",
)
def bus_margin(s: Subject) -> Any:
    margins = [margin for port, key in SIDES.get(s.item.kind, ()) if (margin := _margin(s, port, key)) is not None]
    return least(margins) if margins else None


def _margin(s: Subject, port: str, key: str) -> Number:
    node = f"{s.id}:{port}+"
    if node not in s.facts.network.near:
        return None
    window = s.read(s.item, key)
    if not isinstance(window, Window):
        only_gives = not s.item.has(key) and {one.source.port for one in outputs_of(s.facts, s.item)} == {port}
        return None if only_gives else Unknown(f"the voltages that {s.id} works at are not told ({port})")
    return subtract(window.high, _charged_to(s, node))


def _charged_to(s: Subject, node: str) -> Number:
    """The highest that a charger is set to on a bus; without one, what it can be; unsure, anything up to that."""
    level = level_at(s.facts, node)
    read_level(s, level)
    if level is None:
        return Unknown(f"{node} is on no battery-side circuit")
    network = s.facts.network
    feeding = [
        (item, port)
        for item, port in level.told_by
        if item.kind not in STORAGE
        and any(source.equipment is item and source.port == port for source in network.sources)
    ]
    for item, port in level.told_by:
        if item.kind == "dc converter" and (item, port) not in feeding and isinstance(item.value("both ways"), Unknown):
            return Unknown(f"whether {item.name} feeds its {port} side is not told")
    settings = [highest_of(network, item, port) for item, port in feeding]
    if not settings:
        return level.highest
    if any(one is None or isinstance(one, Unknown) for one in settings):
        # Somebody set it lower than the bus can be, or not: below the highest nothing is certain.
        return perhaps(level.highest)
    return greatest(settings)


@fact(
    "converter",
    "supply_margin",
    unit="V",
    says="Lowest voltage that the bus at the input of a dc converter falls to, less what it works down to, where it "
    "holds up loads on a bus without a battery; none for other converters.",
    method="what holds its input up in each mode, the battery where its management stops or 10 % charged, not below "
    "where a monitor opens, less the drop of its circuit, less the lower end of the voltages as told",
)
def supply_margin(s: Subject) -> Any:
    if s.item.kind != "dc converter":
        return None
    margins = []
    for port in dict.fromkeys(one.source.port for one in alone(s.facts, s.item)):
        margin = _low_margin(s, "high" if port == "low" else "low")
        if margin is not None:
            surely = any(one.sure for one in alone(s.facts, s.item) if one.source.port == port)
            margins.append(margin if surely else or_more(margin))
    return least(margins) if margins else None


def _low_margin(s: Subject, port: str) -> Number | None:
    node = f"{s.id}:{port}+"
    held = [one for one in held_in_modes(s.facts, node) if one.by_others(s.item)]
    if node not in s.facts.network.near or not held:
        return None
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    for one in held:
        tell(s, one)
    window = s.read(s.item, f"sides.{port}.voltage")
    if not isinstance(window, Window):
        return Unknown(f"the voltages that {s.id} works at are not told ({port})")
    bus = with_monitor(s, node, least([one.volts for one in held]))
    return subtract(subtract(bus, greatest(_drops(s, port))), window.low)


def _drops(s: Subject, port: str) -> list[Number]:
    """What the circuits that end at one side lose on the way there, V."""
    ends = (one for one in s.facts.subjects("circuit") if one.system == "dc")
    return [0.0, *(one.drop for one in ends if any((p.equipment, p.port) == (s.id, port) for p in one.item.ends))]
