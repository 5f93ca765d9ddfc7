"""What a code of practice asks of the whole: declared scopes, working space, spacing from mains, vents by power."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import RETURN
from checker.design.model import Circuit
from checker.design.run import Length
from checker.facts.catalogue import fact
from checker.facts.chamber import ELV, MAINS, bands, bands_by_place, shared_loom
from checker.facts.charging import charge_current, highest_setting, outputs
from checker.facts.place import batteries
from checker.facts.subject import Subject
from checker.quantities import (
    Number,
    Truth,
    Unknown,
    add,
    either,
    equal,
    greatest,
    least,
    multiply,
    perhaps,
    some,
    total,
)


@fact("design", "scopes_told", type="yes/no", says="Every circuit says whether it is habitation or automotive.",
      method="`scope` written with the circuit or under `usual`")  # fmt: skip
def scopes_told(s: Subject) -> Truth:
    silent = [name for name, circuit in s.item.circuits.items() if not circuit.has("scope")]
    s.note(lambda: f"without a scope: {', '.join(silent) or 'none'}")
    for name in silent:
        s.read(s.item.circuits[name], "scope")
    unknown = [s.read(one, "scope") for one in s.item.circuits.values() if one.has("scope")]
    if silent:
        return False
    return next((Unknown("the scope of a circuit is not known") for one in unknown if isinstance(one, Unknown)), True)


@fact("equipment", "working_width", unit="mm", says="Width of the free space in front of a board.")
def working_width(s: Subject) -> Any:
    return s.read(s.item, "working space.width") if s.item.allows("working space.width") else None


@fact("equipment", "working_depth", unit="mm", says="Depth of the free space in front of a board.")
def working_depth(s: Subject) -> Any:
    return s.read(s.item, "working space.depth") if s.item.allows("working space.depth") else None


@fact("equipment", "shielded", type="yes/no", says="Its place has a shield against stones and water.")
def shielded(s: Subject) -> Truth:
    where = s.place
    if where is None or isinstance(where, Unknown):
        return Unknown(f"where {s.id} stands is not told")
    value = s.read(where.item, "shield")
    return False if value is None else value


# --- mains beside extra-low voltage


@fact("conductor", "beside_mains", type="yes/no", says="It passes a place that mains cables pass too, in one part.",
      method="places of the run, of a return those of its own; places with a part for each band left out")  # fmt: skip
def beside_mains(s: Subject) -> Truth:
    found: Truth = False
    for place in _places(s):
        if MAINS in bands(place).values():
            found = either(found, _undivided(place))
    return found


def _places(s: Subject) -> list[Subject]:
    """The places of its run, in order; a return in the cable of its live conductor has no run of its own."""
    circuit = s.item.circuit
    run = circuit.returns.run if s.item.role == RETURN else circuit.run
    names = dict.fromkeys(step.place for step in run if isinstance(step, Length) and step.place is not None)
    return [place for name in names if (place := s.facts.subject("place", name)) is not None]


def _undivided(place: Subject) -> Truth:
    """In a chambered place it matters whether bands are mixed; in an open one they lie side by side."""
    chambered = place.chambered
    if chambered is False:
        return True
    return chambered if isinstance(chambered, Unknown) else place.chamber_mixed


@fact("conductor", "apart", unit="mm", says="Least distance it keeps from cables of the other voltage band.",
      method="as told for it, and for mains circuits that pass a place of its run; nothing where a loom carries it "
      "with mains")  # fmt: skip
def apart(s: Subject) -> Any:
    others = [s.read(one, "apart") for one in _mains_beside(s) if one.has("apart")]
    told = least([s.read(s.item.circuit, "apart"), *others])
    tied = some(shared_loom(place, s.item.circuit.name) for place in _places(s))
    return told if tied is False else perhaps(told) if isinstance(tied, Unknown) else 0.0


def _mains_beside(s: Subject) -> list[Circuit]:
    """Mains circuits that pass a place of the run of a circuit of the other band."""
    here = bands_by_place(s.facts)
    names: dict[str, None] = {}
    for step in (*s.item.circuit.run, *s.item.circuit.returns.run):
        passing = here.get(step.place or "", {}) if isinstance(step, Length) else {}
        if passing.get(s.item.circuit.name) == ELV:
            names.update(dict.fromkeys(name for name, band in passing.items() if band == MAINS))
    return [one for one in s.facts.network.circuits if one.name in names]


# --- power of chargers on a battery place


@fact("place", "charger_power", unit="W", says="Power that chargers can put into the batteries in it.",
      method="for each battery the outputs that reach it: current times highest voltage, added up")  # fmt: skip
def charger_power(s: Subject) -> Any:
    found: Number = 0.0
    for item in batteries(s):
        watts = [
            multiply(charge_current(s, one), highest_setting(s, one)) for one in outputs(s.facts) if item in one.banks
        ]
        found = add(found, total(watts))
    return found


@fact("place", "well_aired", type="yes/no", says="It has openings low and high that lead outside, or lies outside.")
def well_aired(s: Subject) -> Truth:
    open_ = s.open_to_air
    if open_ is True:
        return True
    low, high, to = s.vent_low, s.vent_high, s.vent_to
    if any(area is None or (isinstance(area, float) and area == 0.0) for area in (low, high)):
        return False
    if isinstance(low, Unknown) or isinstance(high, Unknown):
        return Unknown(f"the openings of {s.id} are not told")
    return to if isinstance(to, Unknown) else equal(to, "outside") is True


@fact("design", "lithium_energy", unit="Wh", says="Rated energy of the lithium batteries aboard, the largest bank.",
      method="capacity times nominal voltage")  # fmt: skip
def lithium_energy(s: Subject) -> Any:
    banks = s.facts.subjects("bank")
    found: list[Number] = []
    for one in banks:
        kind = one.chemistry
        if isinstance(kind, Unknown):
            return Unknown(f"the chemistry of {one.id} is not told")
        if isinstance(kind, str) and kind.startswith("lithium"):
            found.append(multiply(one.capacity, one.nominal_voltage))
    return greatest(found) if found else None
