"""Solar arrays: what a string gives cold, what the strings push into each other, what their controller takes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.elements import Edge, Link, Wire
from checker.circuit.supply import is_live, joined
from checker.design.given import RatedVoltage, Where
from checker.design.model import Equipment
from checker.facts.catalogue import fact, subjects
from checker.facts.levels import cold_open_voltage
from checker.facts.subject import Facts, Subject
from checker.facts.work import ELV_WORK, MAINS_WORK
from checker.physics.solar import reverse_string_current as reverse_current
from checker.quantities import (
    UNKNOWN,
    Number,
    Truth,
    Unknown,
    corners,
    divide,
    equal,
    every,
    greatest,
    least,
    less_equal,
    multiply,
    some,
    total,
)

BRIGHT = 1.25
"""Current of a string under the brightest sky over its short-circuit current: IEC 62548 6.3.5, from memory."""

STC = "standard test conditions, straight line in cell temperature (definition, IEC 61215, from memory)"


@subjects("array", "A solar array.")
def arrays(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for item in facts.design.equipment.values():
        if item.kind == "solar array":
            yield item.name, item.where, item


@fact("array", "modules", unit="each", says="How many modules.")
def modules(s: Subject) -> Any:
    return s.read(s.item, "modules")


def _arrangement(s: Subject, index: int) -> Number:
    value = s.read(s.item, "arrangement")
    return float(value[index]) if isinstance(value, tuple) else UNKNOWN


@fact("array", "in_series", unit="each", says="Modules in one string.")
def in_series(s: Subject) -> Any:
    return _arrangement(s, 0)


@fact("array", "strings", unit="each", says="Strings in parallel.")
def strings(s: Subject) -> Any:
    return _arrangement(s, 1)


@fact("array", "arrangement_fits_modules", type="yes/no", says="Series times parallel is the number of modules.")
def arrangement_fits_modules(s: Subject) -> Any:
    return equal(multiply(s.in_series, s.strings), s.modules)


@fact("array", "power", unit="W", says="Rated power of all modules.", method="power of a module times modules")
def power(s: Subject) -> Any:
    return multiply(s.read(s.item, "power"), s.modules)


@fact("array", "open_voltage", unit="V", says="Open-circuit voltage at 25 °C.", method="module times modules in series")
def open_voltage(s: Subject) -> Any:
    return multiply(s.read(s.item, "open voltage"), s.in_series)


@fact(
    "array",
    "open_voltage_cold",
    unit="V",
    says="Open-circuit voltage at the lowest ambient temperature.",
    method="U = n U25 (1 + b (T - 25 °C)); at sunrise a cell is as cold as the air",
    source=STC,
)
def open_voltage_cold(s: Subject) -> Any:
    for key in ("open voltage", "voltage coefficient", "arrangement"):
        s.read(s.item, key)
    s.read(s.facts.design.vehicle, "ambient.low")
    if isinstance(s.in_series, Unknown):
        return s.in_series
    s.note(lambda: "U = modules in series × open voltage × (1 + coefficient × (lowest ambient - 25 °C))")
    return cold_open_voltage(s.facts.network, s.item)


@fact("array", "short_current", unit="A", says="Short-circuit current of all strings.", method="module times strings")
def short_current(s: Subject) -> Any:
    return multiply(s.read(s.item, "short current"), s.strings)


def _beside(s: Subject) -> list[Any]:
    """The other arrays at the input of its controller."""
    item = controller_of(s.facts, s.item)
    controller = None if item is None else s.facts.of("converter", item)
    return [] if controller is None else [one for one in arrays_of(controller) if one.id != s.id]


@fact("array", "parallel_strings", unit="each", says="Strings in parallel, those of its neighbours counted.",
      method="graph")  # fmt: skip
def parallel_strings(s: Subject) -> Any:
    return total([s.strings, *(one.strings for one in _beside(s))])


@fact(
    "array",
    "reverse_string_current",
    unit="A",
    says="Current that the other strings can push into a faulted one.",
    method="1.25 × short-circuit current of its other strings and of the other arrays on its controller",
    source="IEC 62548 6.3.5 (from memory)",
)
def reverse_string_current(s: Subject) -> Any:
    own = corners(lambda n, one: reverse_current(int(n), one), s.strings, s.read(s.item, "short current"))
    return total([own, *(multiply(BRIGHT, one.short_current) for one in _beside(s))])


@fact("array", "series_fuse", unit="A", says="Largest fuse that its modules may have in series.")
def series_fuse(s: Subject) -> Any:
    return s.read(s.item, "series fuse")


@fact(
    "array",
    "has_string_fuses",
    type="yes/no",
    says="Each string has a fuse of its own, no larger than its modules permit.",
    method="for several strings as told, since a device in the run stands behind all of them; for one, the graph",
)
def has_string_fuses(s: Subject) -> Any:
    number = s.strings
    if isinstance(number, float) and number <= 1:
        ratings = [s.read(link.equipment, "rating") for link in _run(s) if link.is_protective]
        found = some([less_equal(one, s.series_fuse) for one in ratings])
        unseen = Unknown(f"part of the run of {s.id} was not seen and may hide a fuse")
        return unseen if found is False and hidden_run(s) else found
    fuse = s.read(s.item, "string fuse")
    if isinstance(fuse, Unknown):
        return Unknown(f"whether each string of {s.id} has a fuse is not told")
    return False if fuse is None else less_equal(fuse, s.series_fuse)


@fact("array", "string_current", unit="A", says="Short-circuit current of one string.")
def string_current(s: Subject) -> Any:
    return s.read(s.item, "short current")


@fact("array", "string_fuse", unit="A",
      says="Rating of the fuse that each of several strings has; none without one, or for one string.")  # fmt: skip
def string_fuse(s: Subject) -> Any:
    single = less_equal(s.strings, 1.0)
    if isinstance(single, Unknown):
        return single
    return None if single else s.read(s.item, "string fuse")


@fact("array", "on_a_battery", type="yes/no", says="It is joined to a battery with no controller between.",
      method="graph, every contact closed")  # fmt: skip
def on_a_battery(s: Subject) -> Truth:
    near = joined(s.facts.network, [f"{s.id}:+"])
    if any(source.storage and source.live in near for source in s.facts.network.sources):
        return True
    return Unknown(f"part of the run of {s.id} was not seen and may lead to a battery") if hidden_run(s) else False


@fact("array", "frame_bonded", type="yes/no", says="The frames of its modules are bonded.")
def frame_bonded(s: Subject) -> Any:
    stated = s.read(s.item, "frame bonded")
    return False if stated is None else stated


@fact("array", "controller", of="converter", type="subject", says="The solar controller it feeds; none without one.",
      method="graph")  # fmt: skip
def controller(s: Subject) -> Any:
    item = controller_of(s.facts, s.item)
    return None if item is None else s.facts.of("converter", item)


def controller_of(facts: Facts, array: Equipment) -> Equipment | None:
    """The solar controller at whose input an array arrives."""
    near = joined(facts.network, [f"{array.name}:+"])
    for item in facts.design.equipment.values():
        if item.kind == "solar controller" and f"{item.name}:pv+" in near:
            return item
    return None


def _run(s: Subject) -> list[Link]:
    """The links that supply from the array passes on its way to its controller."""
    found: list[Link] = []
    for node in joined(s.facts.network, [f"{s.id}:+"]):
        for edge, _ in s.facts.network.near.get(node, ()):
            if isinstance(edge, Link) and is_live(edge) and edge not in found:
                found.append(edge)
    return found


def hidden_run(s: Subject) -> bool:
    """Whether part of the run to its controller was not seen."""
    near = joined(s.facts.network, [f"{s.id}:+"])
    return any(
        isinstance(edge, Wire) and edge.gap is not None
        for node in near
        for edge, _ in s.facts.network.near.get(node, ())
    )


@fact(
    "array",
    "has_isolator",
    type="yes/no",
    says="A switch or isolating breaker stands between it and its controller.",
    method="graph",
)
def has_isolator(s: Subject) -> Truth:
    if isolators_of(s):
        return True
    perhaps = perhaps_isolated(s)
    return False if perhaps is None else perhaps


def perhaps_isolated(s: Subject) -> Unknown | None:
    """Why a switch may stand between an array and its controller though none is known to; None when none may."""
    if hidden_run(s):
        return Unknown("part of its run was not seen and may hide a switch")
    for link in _run(s):
        if link.equipment.kind in ("breaker", "rcbo") and isinstance(s.read(link.equipment, "isolates"), Unknown):
            return Unknown(f"whether {link.equipment.name} isolates is not told")
    return None


def isolators_of(s: Subject) -> list[Equipment]:
    """The switches and isolating breakers without which an array reaches its controller no more."""
    found = []
    for link in _run(s):
        item = link.equipment
        isolates = item.value("isolates") if item.allows("isolates") else None
        if isolates is True if item.kind in ("breaker", "rcbo") else item.kind == "switch" and isolates is not False:
            found.append(item)
    return [item for item in found if _parts(s, item)]


def _parts(s: Subject, item: Equipment) -> bool:
    """Whether an array is parted from every controller by a switch that is opened: one of a neighbour does not."""
    network = s.facts.network

    def opened(edge: Edge) -> bool:
        return not (isinstance(edge, Link) and edge.equipment is item)

    start = f"{s.id}:+"
    inputs = {f"{one.name}:pv+" for one in network.equipment.values() if one.kind == "solar controller"}
    goals = inputs.intersection(joined(network, [start]))
    return goals.isdisjoint(joined(network, [start], opened)) if goals else True


@fact("array", "isolator_breaks_load", type="yes/no", says="Its isolator may be opened under load.")
def isolator_breaks_load(s: Subject) -> Any:
    found = isolators_of(s)
    if not found:
        return perhaps_isolated(s)
    return every(True if item.kind != "switch" else s.read(item, "breaks load") for item in found)


@fact("array", "isolator_poles", unit="each", says="Conductors that its isolator opens together.")
def isolator_poles(s: Subject) -> Any:
    found = [s.read(item, "poles") for item in isolators_of(s)]
    return greatest(found) if found else perhaps_isolated(s)


@fact("array", "isolator_voltage", unit="V", says="Rated direct voltage of its isolator; none when rated for ac alone.")
def isolator_voltage(s: Subject) -> Any:
    found: list[Number] = []
    for item in isolators_of(s):
        rated = s.read(item, "voltage")
        if not isinstance(rated, RatedVoltage):
            found.append(UNKNOWN)
        elif rated.system is None:
            found.append(Unknown(f"the rating of {item.name} does not say whether it holds for dc"))
        else:
            found.append(rated.volts if rated.system == "dc" else None)
    return least(found) if found else perhaps_isolated(s)


@fact("array", "isolator_current", unit="A", says="Rated current of its isolator.")
def isolator_current(s: Subject) -> Any:
    found = [s.read(item, "rating") for item in isolators_of(s)]
    return least(found) if found else perhaps_isolated(s)


@fact("array", "isolator_marked", type="yes/no", says="Its isolator is marked.")
def isolator_marked(s: Subject) -> Any:
    found = isolators_of(s)
    if not found:
        return perhaps_isolated(s)
    return every(False if (told := s.read(item, "marked")) is None else told for item in found)


# --- the same from the side of the controller


def arrays_of(s: Subject) -> list[Any]:
    """The arrays at the input of a solar controller."""
    if s.item.kind != "solar controller":
        return []
    return [array for array in s.facts.subjects("array") if controller_of(s.facts, array.item) is s.item]


@fact(
    "converter",
    "arrays",
    of="array",
    type="list",
    says="The arrays at the input of a solar controller.",
    method="graph",
)
def arrays_at(s: Subject) -> tuple[Any, ...]:
    return tuple(arrays_of(s))


@fact("converter", "controller_input_limit", unit="V", says="Highest input voltage that a solar controller survives.")
def controller_input_limit(s: Subject) -> Any:
    return s.read(s.item, "input.voltage") if s.item.kind == "solar controller" else None


@fact("converter", "controller_current_limit", unit="A", says="Array short-circuit current that a controller accepts.")
def controller_current_limit(s: Subject) -> Any:
    return s.read(s.item, "input.short current") if s.item.kind == "solar controller" else None


@fact("converter", "open_voltage_cold", unit="V", says="Open-circuit voltage of its array at the lowest ambient.",
      method="the highest of its arrays")  # fmt: skip
def controller_open_voltage_cold(s: Subject) -> Any:
    found = [array.open_voltage_cold for array in arrays_of(s)]
    return greatest(found) if found else None


@fact("converter", "array_short_current", unit="A", says="Short-circuit current of its arrays together.")
def array_short_current(s: Subject) -> Any:
    found = [array.short_current for array in arrays_of(s)]
    return total(found) if found else None


@fact("converter", "array_power", unit="W", says="Rated power of its arrays together.")
def array_power(s: Subject) -> Any:
    found = [array.power for array in arrays_of(s)]
    return total(found) if found else None


@fact(
    "converter",
    "array_power_ratio",
    unit="%",
    says="Power of its arrays over what a solar controller can put into its battery.",
    method="array power over output current times charging voltage, nominal voltage where that is not set",
)
def array_power_ratio(s: Subject) -> Any:
    if not arrays_of(s):
        return None
    volts = s.read(s.item, "settings.charge voltage")
    if isinstance(volts, Unknown):
        volts = s.read(s.item, "output.nominal")
    return divide(s.array_power, multiply(s.read(s.item, "output.current"), volts))


@fact(
    "array",
    "licensed",
    type="yes/no",
    says="A licence is named for the mains work or the battery work, which solar above the limit needs.",
    method="as work.has_licence, of either class that is written under `people`",
)
def licensed(s: Subject) -> Truth:
    asked = [one for one in s.facts.subjects("work") if one.id in (MAINS_WORK, ELV_WORK)]
    written = [one for one in asked if one.item is not None]
    return some(one.has_licence for one in written or asked) if asked else UNKNOWN
