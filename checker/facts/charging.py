"""Which chargers reach which batteries: every output of direct current, followed without being converted again."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.circuit.elements import Source
from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.facts.bank import KINDS, home
from checker.facts.subject import Facts, Subject
from checker.quantities import UNKNOWN, Number, Range, Unknown, Window, least, multiply

CHARGERS = ("alternator", "dc converter", "charger", "inverter-charger", "solar controller")


class Output(NamedTuple):
    """One output of a charger (`source`) and the batteries it reaches with every contact closed."""

    source: Source
    banks: tuple[Equipment, ...]


def outputs(facts: Facts) -> list[Output]:
    """Every charging output, in file order."""
    found: list[Output] | None = facts.store.get("charging outputs")
    if found is None:
        found = facts.store["charging outputs"] = _outputs(facts)
    return found


def _outputs(facts: Facts) -> list[Output]:
    network = facts.network
    stores = [item for item in facts.design.equipment.values() if item.kind in KINDS]
    homes = [(item, home(facts, item)) for item in stores]
    found = []
    for source in network.sources:
        if source.equipment.kind in CHARGERS and source.system == "dc" and not source.storage:
            near = joined(network, [source.live])
            found.append(Output(source, tuple(item for item, node in homes if node in near)))
    return found


def outputs_to(facts: Facts, bank: Equipment) -> list[Output]:
    """The charging outputs that reach a bank."""
    return [one for one in outputs(facts) if bank in one.banks]


def towing_contacts(facts: Facts, bank: Equipment) -> list[Source]:
    """The contacts of a towing vehicle's plug that reach a bank with no converter between, every contact closed."""
    plugs = (one for one in facts.network.sources if one.equipment.kind == "vehicle coupling")
    return [one for one in plugs if home(facts, bank) in joined(facts.network, [one.live])]


def perhaps_charges(facts: Facts, bank: Equipment) -> Unknown | None:
    """Why something besides `outputs_to` may charge a bank: a converter at it of which nobody knows both directions."""
    near = joined(facts.network, [home(facts, bank)])
    for item in facts.network.equipment.values():
        if item.kind != "dc converter" or not isinstance(item.value("both ways"), Unknown):
            continue
        gives = {one.source.port for one in outputs_of(facts, item)}
        if any(f"{item.name}:{side}+" in near for side in ("low", "high") if side not in gives):
            return Unknown(f"whether {item.name} also charges {bank.name} is not told")
    return None


def outputs_of(facts: Facts, item: Equipment) -> list[Output]:
    """The charging outputs of a piece of equipment."""
    return [one for one in outputs(facts) if one.source.equipment is item]


def is_both_ways(facts: Facts, item: Equipment) -> bool:
    """Whether both sides of a converter give."""
    return len(outputs_of(facts, item)) > 1


def charge_current(s: Subject, output: Output) -> Number:
    """Greatest current an output charges with (A): its setting, never above its rating."""
    item = output.source.equipment
    if item.kind == "alternator":
        return _number(s.read(item, "rating"))
    rated = _number(s.read(item, rating_key(output.source)))
    if item.kind == "dc converter" and is_both_ways(s.facts, item) and output.source.port == "low":
        return rated  # the setting limits the way up
    setting = s.read(item, "settings.charge current")
    if not isinstance(setting, float | Range):
        called_unknown = isinstance(setting, Unknown) and item.has("settings.charge current")
        return multiply(rated, Range(0.0, 1.0)) if called_unknown else rated
    if isinstance(rated, Unknown):
        return multiply(setting, Range(0.0, 1.0)) if item.has(rating_key(output.source)) else setting
    return least(rated, setting)


def rating_key(source: Source) -> str:
    """The key of the rated current of an output."""
    return {
        "charger": "dc.current",
        "inverter-charger": "charger.current",
        "solar controller": "output.current",
    }.get(source.equipment.kind, f"sides.{source.port}.current")


def _number(value: Any) -> Number:
    return value if isinstance(value, float | Range | Unknown) else UNKNOWN


def charge_voltages(s: Subject, output: Output) -> tuple[tuple[str, Any], ...]:
    """The voltages an output is set to, each with its key: a number, a window, none or unknown."""
    item = output.source.equipment
    if item.kind == "alternator":
        return (("set voltage", s.read(item, "set voltage")),)
    if item.kind == "dc converter" and is_both_ways(s.facts, item) and output.source.port == "low":
        return (("settings.feed voltage", s.read(item, "settings.feed voltage")),)
    found = [("settings.charge voltage", s.read(item, "settings.charge voltage"))]
    if item.has("settings.float"):
        found.append(("settings.float", s.read(item, "settings.float")))
    return tuple(found)


def highest_setting(s: Subject, output: Output) -> Number:
    """The highest voltage an output is set to, V."""
    value = charge_voltages(s, output)[0][1]
    if isinstance(value, Window):
        return value.high
    return value  # type: ignore[no-any-return]
