"""One day of the house: what is used, what sun and driving bring, how long the bank lasts."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from checker.circuit.supply import supplied
from checker.design.given import Given
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.bank import home
from checker.facts.catalogue import fact
from checker.facts.charging import charge_current, highest_setting, outputs_to
from checker.facts.darkness import live_node
from checker.facts.levels import level_at
from checker.facts.loads import rated_current
from checker.facts.subject import Subject
from checker.facts.unseen import half_standing, hiding_places
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    add,
    divide,
    least,
    multiply,
    show,
    subtract,
    total,
)
from checker.quantities.values import perhaps

DAY_S = 86_400.0
SOLAR_SHARE = 0.75
"""Part of the rated power of an array that reaches the battery, heat and dirt counted; common practice, no source."""
STANDING = ("dc converter", "inverter", "inverter-charger", "solar controller")


def _said(text: str) -> Callable[[], str]:
    return lambda: text


def house_banks(s: Subject) -> list[Any]:
    """The banks that are not for starting; those whose purpose is not known are among them."""
    found = []
    for bank in s.facts.subjects("bank"):
        word = bank.purpose
        if not (isinstance(word, str) and word != "house"):
            found.append(bank)
    return found


def _use(s: Subject, item: Equipment, given: Given) -> Number:
    """Energy of one entry of the day at the load (J): as it stands, or power times time times duty."""
    value: Number = s.use(f"day.uses.{item.name}", given, "Wh")
    if given.text.rstrip().endswith("Wh"):
        return value
    if item.kind == "outlet":
        return Unknown(f"the use of {item.name} is told in hours; an outlet needs its energy in Wh")
    duty: Number = s.read(item, "duty") if item.allows("duty") else 1.0
    return multiply(multiply(_power(s, item), value), duty)


def _power(s: Subject, item: Equipment) -> Number:
    power = s.read(item, "power") if item.allows("power") else UNKNOWN
    if isinstance(power, float | Range):
        return power
    node = live_node(s.facts, item)
    level = level_at(s.facts, node) if node is not None else None
    volts: Number = UNKNOWN if level is None else level.nominal
    return multiply(rated_current(item, volts), volts)


def _through_inverter(s: Subject, item: Equipment) -> Number:
    """Efficiency of the way from the bank: that of the inverter for mains loads, 1 otherwise."""
    node = live_node(s.facts, item)
    if node is None or not node.endswith("L"):
        return 1.0
    inverters = [one for one in s.facts.subjects("converter") if one.is_inverter]
    return inverters[0].efficiency if len(inverters) == 1 else UNKNOWN


def at_the_bank(s: Subject, item: Equipment, given: Given) -> tuple[Number, bool]:
    """Energy that one entry of the day takes from the bank (J), and whether it is a load of the mains side."""
    node = live_node(s.facts, item)
    return divide(_use(s, item, given), _through_inverter(s, item)), node is not None and node.endswith("L")


def untold_uses(s: Subject) -> list[str]:
    """Loads that run in a mode in which the bank alone feeds them, and of which the day tells no use; in file order."""
    uses = s.item.day.value("uses")
    told = {name for name, _ in uses} if isinstance(uses, tuple) else set()
    found: dict[str, None] = {}
    for mode in s.item.modes.values():
        running = s.read(mode, "running")
        if not isinstance(running, tuple) or any(_fed(s, mode, key, rest) for key, rest in RESTING.items()):
            continue
        names = (name for name, given in running if not isinstance(given.value, float) or given.value > 0.0)
        found.update(dict.fromkeys(name for name in names if name not in told))
    return list(found)


RESTING = {"engine": "stopped", "shore": "absent", "generator": "stopped"}
"""Where a mode names another source than this, that source surely feeds loads too."""


def _fed(s: Subject, mode: Item, key: str, rest: str) -> bool:
    if not mode.allows(key) or not mode.has(key):
        return False
    value = s.read(mode, key)
    return value is not None and not isinstance(value, Unknown) and value != rest


@fact(
    "design",
    "daily_use",
    unit="Wh",
    says="Energy that one day takes from the house bank.",
    method="uses of the day, mains loads over the efficiency of the inverter, and 24 h of what converters draw idle; "
    "a load that runs on the bank in some mode needs a use of its own",
)
def daily_use(s: Subject) -> Any:
    uses = s.read(s.item.day, "uses")
    if not isinstance(uses, tuple):
        return Unknown("what a day uses is not told")
    found: list[Number] = []
    for name, given in uses:
        item = s.facts.network.equipment.get(name)
        if item is None:
            continue
        energy, _ = at_the_bank(s, item, given)
        s.note(_said(f"{name}: {show(energy, 'Wh')}"))
        found.append(energy)
    found.append(s.standing_use)
    lost = untold_uses(s)
    if lost:
        found.append(Unknown(f"how much these use in a day is not told under `day.uses`: {', '.join(lost)}"))
    return total(found)


@fact(
    "design",
    "standing_use",
    unit="Wh",
    says="Energy that converters draw in a day while they only wait; what is switched off by a signal is left out.",
    method="idle power times 24 h",
)
def standing_use(s: Subject) -> Any:
    found: list[Number] = []
    for converter in s.facts.subjects("converter"):
        if converter.item.kind in STANDING:
            idle = converter.idle_power
            s.note(_said(f"{converter.id} idle: {show(idle, 'W')}"))
            found.append(multiply(idle, DAY_S))
    return total(found)


@fact(
    "design",
    "solar_yield",
    unit="Wh",
    says="Energy that sun brings in a day.",
    method="array power times sun hours times 75 %",
    source="common practice, no source",
)
def solar_yield(s: Subject) -> Any:
    arrays = s.facts.subjects("array")
    if not arrays:
        return 0.0
    power = total([array.power for array in arrays])
    return multiply(multiply(power, s.read(s.item.day, "sun hours")), SOLAR_SHARE)


@fact(
    "design",
    "driving_yield",
    unit="Wh",
    says="Energy that driving brings in a day.",
    method="charging current times voltage of what charges while the engine runs, times hours of driving",
)
def driving_yield(s: Subject) -> Any:
    return _yield(s, "driving", ("dc converter", "alternator"), _from_engine)


def _yield(s: Subject, key: str, kinds: tuple[str, ...], counts: Callable[[Subject, Equipment], bool]) -> Number:
    """What charges the house banks, for the hours of the day under a key (J)."""
    hours = s.read(s.item.day, key)
    outputs = [one for bank in house_banks(s) for one in outputs_to(s.facts, bank.item)]
    mine = [one for one in outputs if one.source.equipment.kind in kinds and counts(s, one.source.equipment)]
    reaching = {one.source.equipment.name for one in mine}
    others = [one.name for one in s.facts.network.equipment.values() if one.kind in kinds and one.name not in reaching]
    if others and hiding_places(s.facts) and half_standing(s.facts):
        return Unknown(f"whether {', '.join(others)} charges the house battery is not told; part of a run was not seen")
    return multiply(total([multiply(charge_current(s, one), highest_setting(s, one)) for one in mine]), hours)


def _from_engine(s: Subject, item: Equipment) -> bool:
    if item.kind == "alternator":
        return True
    engines = [source.live for source in s.facts.network.sources if source.equipment.kind == "alternator"]
    reached = supplied(s.facts.network, engines)
    return any(f"{item.name}:{side}+" in reached for side in ("low", "high"))


@fact(
    "design",
    "shore_yield",
    unit="Wh",
    says="Energy that shore power brings in a day.",
    method="charging current times voltage of what charges from the mains, times hours on the shore",
)
def shore_yield(s: Subject) -> Any:
    return _yield(s, "shore", ("charger", "inverter-charger"), lambda _s, _item: True)


@fact(
    "design",
    "energy_deficit",
    unit="Wh",
    says="Energy that a day uses beyond what sun, driving and shore bring; below zero when they bring more.",
    method="daily use less the three yields",
)
def energy_deficit(s: Subject) -> Any:
    brought = add(add(s.solar_yield, s.driving_yield), s.shore_yield)
    return subtract(s.daily_use, brought)


@fact(
    "design",
    "usable_energy",
    unit="Wh",
    says="Energy of all house banks that can be drawn every day.",
    method="sum over the house banks, times the share that age and cold leave (`day.capacity left`); no more than the "
    "state of charge to be kept leaves",
)
def usable_energy(s: Subject) -> Any:
    banks = house_banks(s)
    if not banks:
        return None
    seen: dict[str, Any] = {}
    for bank in banks:
        seen.setdefault(home(s.facts, bank.item), bank)
    keep = s.read(s.item.day, "keep")
    aged = s.read(s.item.day, "capacity left")
    found: list[Number] = []
    for bank in seen.values():
        usable = multiply(bank.usable_energy, aged)
        if isinstance(keep, Unknown) and s.item.day.has("keep"):
            usable = perhaps(usable)  # how much is to be kept nobody knows
        if isinstance(keep, float | Range):
            left = multiply(multiply(multiply(bank.capacity, bank.nominal_voltage), aged), subtract(1.0, keep))
            usable = UNKNOWN if isinstance(usable, Unknown) or isinstance(left, Unknown) else least(usable, left)
        found.append(perhaps(usable) if isinstance(bank.purpose, Unknown) else usable)
    return total(found)


@fact(
    "design",
    "autonomy",
    unit="h",
    says="How long the house banks last without sun, engine or shore.",
    method="usable energy over daily use",
)
def autonomy(s: Subject) -> Any:
    return multiply(divide(s.usable_energy, s.daily_use), DAY_S)


@fact("design", "autonomy_wanted", unit="h", says="How long they shall last: the nights wanted, 24 h each.")
def autonomy_wanted(s: Subject) -> Any:
    return multiply(s.read(s.item.day, "nights wanted"), DAY_S)


@fact("design", "charge_kept", unit="%", says="State of charge that shall be left at the lowest point of a day.")
def charge_kept(s: Subject) -> Any:
    return s.read(s.item.day, "keep")


@fact("design", "day_is_told", type="yes/no", says="The file tells what a day uses.")
def day_is_told(s: Subject) -> Truth:
    told = s.read(s.item.day, "uses")
    if isinstance(told, Unknown) and s.item.day.has("uses"):
        return told
    return isinstance(told, tuple) and bool(told)
