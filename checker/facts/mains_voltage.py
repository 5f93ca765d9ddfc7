"""Which voltage reaches an appliance of the mains, and whether sources that run side by side are alike and listed."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from checker.circuit.elements import LIVE
from checker.circuit.feeding import joined_with
from checker.circuit.mains import Feed
from checker.design.given import RatedVoltage
from checker.design.model import Equipment
from checker.facts.ac_source import beside_within, partners_of
from checker.facts.catalogue import fact
from checker.facts.levels import LINE_TO_NEUTRAL_V, LINES_OVER_LINE
from checker.facts.mains import TOO_MANY, read_switching, shown_states, states_of
from checker.facts.state import METHOD
from checker.facts.subject import Subject
from checker.facts.supply import supplies_by_load
from checker.quantities import (
    Number,
    Truth,
    Unknown,
    both,
    divide,
    equal,
    every,
    greater,
    greatest,
    least,
    less_equal,
    multiply,
)

KEYS = {"transformer": "secondary.voltage", "inverter": "ac.voltage"}
PARALLEL = ("IEC 62116", "EN 50549", "UL 1741", "IEEE 1547", "AS/NZS 4777")
"""Standards that try whether a source parts when the one beside it is lost; titles from memory."""


def given_voltage(s: Subject, feed: Feed) -> Any:
    """Voltage that a source gives, V; the sites for an inlet."""
    item = feed.equipment
    if not feed.aboard:
        return site_voltage(s, s.read(s.item.load, "phases") if _asks_lines(s) else 1.0)
    if item.kind == "generator":
        return generator_voltage(s, item, s.read(s.item.load, "phases") if _asks_lines(s) else 1.0)
    rated = s.read(item, KEYS.get(item.kind, "ac.voltage"))
    return rated.volts if isinstance(rated, RatedVoltage) else rated


def _asks_lines(s: Subject) -> bool:
    return s.kind == "supply" and bool(s.item.load.allows("phases"))


def line_voltage(s: Subject, feed: Feed) -> Number:
    """Voltage of one line of a source against its neutral, V; unknown where a tap may stand between."""
    changed = tapped(s)
    if changed is not None:
        return changed
    item = feed.equipment
    if not feed.aboard:
        return site_voltage(s, 1.0)
    return generator_voltage(s, item, 1.0) if item.kind == "generator" else given_voltage(s, feed)


def site_voltage(s: Subject, lines: Number) -> Number:
    """Voltage of the sites between the conductors that a load hangs on, V: of three lines, else of line and neutral."""
    vehicle = s.facts.design.vehicle
    return _between(s.read(vehicle, "supply.voltage"), lambda: s.read(vehicle, "supply.phases"), lines)


def generator_voltage(s: Subject, item: Equipment, lines: Number) -> Number:
    """The same of a generator, V."""
    rated = s.read(item, "voltage")
    volts = rated.volts if isinstance(rated, RatedVoltage) else rated
    return _between(volts, lambda: s.read(item, "phases"), lines)


def _between(volts: Number, phases: Callable[[], Any], lines: Number) -> Number:
    """Voltage on a load of so many lines, V. What is told of a source of three lines is the voltage between them; one
    of up to 250 V is taken as that of line and neutral."""
    high, three = greater(volts, LINE_TO_NEUTRAL_V), equal(lines, 3.0)
    if high is False:
        return (
            multiply(volts, LINES_OVER_LINE) if three is True else Unknown("its lines") if three is not False else volts
        )
    there = equal(phases(), 3.0)
    if high is True and there is False:
        return volts
    if high is True and there is True and not isinstance(three, Unknown):
        return volts if three else divide(volts, LINES_OVER_LINE)
    return Unknown("the lines of a source and the voltage between them are not told")


def tapped(s: Subject, but: str = "") -> Unknown | None:
    """Why the voltage of a source may not be that of the load: a transformer that perhaps joins its sides."""
    for item in s.facts.network.equipment.values():
        if item.kind == "transformer" and item.name != but and equal(s.read(item, "windings"), "separate") is not True:
            return Unknown(f"{item.name} may change the voltage without a winding of its own")
    return None


@fact(
    "supply",
    "voltage",
    unit="V",
    says="Voltage that reaches the load: of the sites, a generator, an inverter, or the secondary of a transformer.",
    method="nominal voltage of its source; not known where a transformer with a tap may stand between",
)
def voltage(s: Subject) -> Any:
    changed = tapped(s)
    return given_voltage(s, s.item.feed) if changed is None else changed


def _voltages(s: Subject) -> list[Any]:
    """The voltages of all supplies of a load, those of the sites where none reaches it."""
    if isinstance(s.system, Unknown):
        return [s.system]
    if s.system != "ac":
        return []
    if not states_of(s.facts).complete:
        return [TOO_MANY]
    found = supplies_by_load(s.facts).get(s.id, [])
    sure = [one.voltage for one in found if one.item.certain]
    perhaps = [one.voltage for one in found if not one.item.certain]
    doubts = [
        Unknown(f"whether another source with another voltage reaches {s.id} is not known")
        for value in perhaps
        if isinstance(value, Unknown) or not any(equal(value, one) is True for one in sure)
    ]
    return [*sure, *doubts] or [s.read(s.facts.design.vehicle, "supply.voltage")]


@fact("load", "phases", unit="count", says="Lines of the mains that it needs; none for what has none to need.")
def phases(s: Subject) -> Any:
    return s.read(s.item, "phases") if s.item.allows("phases") else None


@fact(
    "load",
    "source_phases",
    unit="count",
    says="Fewest lines of a source of mains that surely reaches it.",
    method="of the sites and of a generator as told; a transformer or an inverter gives one",
)
def source_phases(s: Subject) -> Any:
    found = supplies_by_load(s.facts).get(s.id, [])
    ashore = s.read(s.facts.design.vehicle, "supply.phases")
    given = [one.item.feed.equipment for one in found]
    return least([_lines_of(s, item, ashore) for item in given]) if given else None


def _lines_of(s: Subject, item: Equipment, ashore: Number) -> Number:
    if item.kind == "generator":
        return s.read(item, "phases")  # type: ignore[no-any-return]
    return ashore if item.kind == "shore inlet" else 1.0


@fact(
    "load",
    "least_mains_voltage",
    unit="V",
    says="Lowest voltage of the sources of mains that reach it; none for a load of the battery side.",
    method="supply.voltage of each; that of the sites where none reaches it",
)
def least_mains_voltage(s: Subject) -> Number:
    found = _voltages(s)
    return least(found) if found else None


@fact(
    "load",
    "most_mains_voltage",
    unit="V",
    says="Highest voltage of the sources of mains that reach it; none for a load of the battery side.",
    method="supply.voltage of each; that of the sites where none reaches it",
)
def most_mains_voltage(s: Subject) -> Number:
    found = _voltages(s)
    return greatest(found) if found else None


@fact(
    "ac_source",
    "like_those_beside",
    type="yes/no",
    says="Every source that it runs beside gives the same voltage, within 10 %, and the same frequency.",
    method=METHOD,
    source="IEC 60038, 10 % about the nominal, 2009 (from memory)",
)
def like_those_beside(s: Subject) -> Truth:
    read_switching(s)
    if not states_of(s.facts).complete:
        return TOO_MANY
    partners = partners_of(s, s.item)
    beside: dict[str, Feed] = {}
    for state in shown_states(s):
        within, perhaps = beside_within(s, state, s.item)
        beside.update({one.name: one for one in (*within, *perhaps)})
        if s.item in state.feeding:
            sure, may = joined_with(state, s.item, LIVE)
            for other in (*sure, *may):
                if other.name in partners or s.item.name in partners_of(s, other):
                    beside[other.name] = other
    return every(_alike(s, other) for other in beside.values())


def _alike(s: Subject, other: Feed) -> Truth:
    ratio = divide(given_voltage(s, s.item), given_voltage(s, other))
    near = both(less_equal(0.9, ratio), less_equal(ratio, 1.1))
    return both(near, equal(_frequency(s, s.item), _frequency(s, other)))


def _frequency(s: Subject, feed: Feed) -> Any:
    if not feed.aboard or feed.equipment.kind == "transformer":
        return s.read(s.facts.design.vehicle, "supply.frequency")
    return s.read(feed.equipment, "frequency" if feed.equipment.kind == "generator" else "ac.frequency")


@fact(
    "ac_source",
    "listed_to_run_beside",
    type="yes/no",
    says="A standard is told by which it was tried to part when the source beside it is lost; none for the shore.",
    method="IEC 62116, EN 50549, UL 1741, IEEE 1547 or AS/NZS 4777 among its standards and approvals",
    source="titles of these standards (from memory)",
)
def listed_to_run_beside(s: Subject) -> Any:
    item = s.item.equipment
    if not s.item.aboard:
        return None
    told = [s.read(item, key) for key in ("standard", "approval")]
    texts = [text for one in told if isinstance(one, tuple) for text in one if isinstance(text, str)]
    if any(name in text for text in texts for name in PARALLEL):
        return True
    return next((one for one in told if isinstance(one, Unknown)), False)
