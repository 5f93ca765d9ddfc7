"""When devices open on a short circuit, what they let through, and whether the conductors stand it."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product
from typing import Any

from checker.circuit.elements import LIVE, RETURN, Wire
from checker.circuit.zones import Border
from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact
from checker.facts.conductor_given import wire_length
from checker.facts.converter_bus import peak_key
from checker.facts.device import faults_of
from checker.facts.least_fault import least_faults_of, limiting, zones_of
from checker.facts.subject import Subject
from checker.facts.unseen import where_it_stands
from checker.outofrange import OutOfRange
from checker.physics.clearing import Characteristic, at_once, let_through, of_family, of_points, opening, promised
from checker.physics.fuse_curves import Band
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    between,
    divide,
    greatest,
    less_equal,
    multiply,
    rounded,
    show,
)

MECHANICAL = ("breaker", "rcbo")
LEAST_A, MOST_A = 1e-9, 1e9  # stand for nothing and for no limit
TAP_M = 3.0  # IEC 60364-4-43 434.2.1 (from memory)
SOURCE = "time-current limits by family, row by row in tables/fuse_time_current.csv; or the curve of the device"


def characteristics(s: Subject) -> list[Characteristic] | Unknown:
    """Curves of a device: its own where written, else those of its family at each end of its rating."""
    if s.item.allows("curve"):
        points = s.read(s.item, "curve")
        if isinstance(points, tuple):
            return _own_curve(s, points)
    family, rating = s.family, s.rating
    if not isinstance(family, str):
        return Unknown(f"the family of {s.id} is not known")
    if not isinstance(rating, float | Range):
        return Unknown(f"the rating of {s.id} is not known")
    try:
        held = [of_family(family, one) for one in _ends(rating)]
        return _at_once(s, held) if s.item.allows("instant.within") and s.item.has("instant.within") else held
    except OutOfRange as problem:
        return Unknown(str(problem))


def _at_once(s: Subject, held: list[Characteristic]) -> list[Characteristic] | Unknown:
    """Families with what the maker promises of opening at once, at each end of what is told of that."""
    within = _ends(s.read(s.item, "instant.within"))
    told = s.item.has("instant.above")
    above: tuple[float | None, ...] = _ends(s.read(s.item, "instant.above")) if told else (None,)
    if not within or not above:
        return Unknown(f"when {s.id} opens at once is not known")
    return [at_once(one, current, time) for one, current, time in product(held, above, within)]


def _own_curve(s: Subject, points: tuple[Any, ...]) -> list[Characteristic] | Unknown:
    found = []
    for current, time in points:
        if not isinstance(current, float) or not isinstance(time, float | Range):
            return Unknown(f"the curve of {s.id} has a point that is not known")
        low, high = (time.low, time.high) if isinstance(time, Range) else (time, time)
        found.append((current, low, high))
    try:
        return [of_points(found, mechanical=s.item.kind in MECHANICAL)]
    except OutOfRange as problem:
        return Unknown(str(problem))


def _ends(value: Number) -> tuple[float, ...]:
    if isinstance(value, Range):
        return (value.low, value.high)
    return (value,) if isinstance(value, float) else ()


def over(s: Subject, current: Number, ask: Callable[[Characteristic, float], Band]) -> Band | Unknown:
    """Least and greatest answer over the ends of the rating and of the current."""
    held = characteristics(s)
    if isinstance(held, Unknown):
        return held
    if not isinstance(current, float | Range):
        return current if isinstance(current, Unknown) else Unknown("no current")
    s.note(lambda: f"band: {held[0].source}")
    try:
        answers = [ask(one, min(max(amps, LEAST_A), MOST_A)) for one, amps in product(held, _ends(current))]
    except OutOfRange as problem:
        return Unknown(str(problem))
    return Band(min(one.min_s for one in answers), max(one.max_s for one in answers))


def as_number(band: Band | Unknown) -> Number:
    """A band as a number: a range, one value, or unknown."""
    if isinstance(band, Unknown):
        return band
    low, high = rounded(band.min_s), rounded(band.max_s)
    return low if low == high else between(low, high)


def slowest(times: list[Number]) -> Number:
    """The longest of some times, no limit among them allowed; unknown when one is."""
    lows, highs = [0.0], [0.0]
    for one in times:
        if isinstance(one, Unknown) or one is None:
            return UNKNOWN if one is None else one
        lows.append(one.low if isinstance(one, Range) else one)
        highs.append(one.high if isinstance(one, Range) else one)
    return as_number(Band(max(lows), max(highs)))


@fact(
    "device",
    "clearing_time",
    unit="s",
    says="Time until it has opened on its least short-circuit current: from the quickest to the slowest of its family.",
    method="time-current band at device.prospective_min, straight on log-log paper between its points",
    source=SOURCE,
)
@where_it_stands
def clearing_time(s: Subject) -> Any:
    current = s.prospective_min
    return None if current is None else as_number(over(s, current, opening))


@fact(
    "device",
    "clears_by",
    unit="s",
    says="Time by which it is promised to have opened on its least short-circuit current.",
    method="upper edge of the time-current band at device.prospective_min; a range where its series is not known",
    source=SOURCE,
)
@where_it_stands
def clears_by(s: Subject) -> Any:
    current = s.prospective_min
    if current is None:
        return None
    found = as_number(over(s, current, promised))
    s.note(lambda: f"at {show(current, 'A')}, {show(divide(current, s.rating), 'ratio')} times its rating")
    return found


@fact(
    "device",
    "limited_clears_by",
    unit="s",
    says="Time by which it is promised to have opened on what the converter behind it keeps giving.",
    method="upper edge of the time-current band at the limit of the converter; its peak where it lasts long enough",
    source=SOURCE,
)
@where_it_stands
def limited_clears_by(s: Subject) -> Any:
    source = limiting(s)
    if source is None:
        return None
    key = peak_key(source, "current")
    if source.equipment.allows(key):
        peak, time = s.read(source.equipment, key), s.read(source.equipment, peak_key(source, "time"))
        if isinstance(peak, float | Range) and isinstance(time, float | Range):
            found = as_number(over(s, peak, promised))
            if less_equal(found, time) is True:
                s.note(lambda: f"opened by the peak of {source.name}")
                return found
    current = s.limited_current
    if isinstance(current, Range) and current.low <= 0:
        return Unknown(f"{source.name} may give too little to open anything")
    return as_number(over(s, current, promised))


@fact(
    "device",
    "let_through",
    unit="A2s",
    says="Energy of a short circuit that passes it before it has opened: the bounds of its family, up to 5 s.",
    method="greatest I² t of the band over all currents up to device.prospective_max",
    source=SOURCE,
)
@where_it_stands
def let_through_of(s: Subject) -> Any:
    return _let_through(s, s.prospective_max)


def _let_through(s: Subject, current: Number) -> Number:
    if isinstance(current, float) and current <= 0.0:
        return 0.0
    return as_number(over(s, current, let_through))


def clearing_borders(s: Subject) -> list[tuple[Wire, list[Border]]]:
    """Each stretch of a conductor that only devices feed, with those of its zone behind which a battery stands.

    A stretch that a battery reaches without a device is left to the rules on distance.
    """
    kept: dict[str, list[tuple[Wire, list[Border]]]] = s.facts.store.setdefault("clearing borders", {})
    found = kept.get(s.id)
    if found is not None:
        return found
    zones = zones_of(s.facts)
    found = kept[s.id] = []
    for wire in s.item.wires:
        zone = zones.of_wire(wire)
        if not zones.batteries(zone):
            borders = _feeding(s, zone)
            if borders:
                found.append((wire, borders))
    return found


def _feeding(s: Subject, zone: str) -> list[Border]:
    """The devices of a zone behind which a battery stands; kept, since its conductors share them."""
    kept: dict[str, list[Border]] = s.facts.store.setdefault("feeding borders", {})
    if zone not in kept:
        held = least_faults_of(s.facts)
        borders = zones_of(s.facts).borders(zone)
        kept[zone] = [one for one in borders if held.weakest(one.link, one.inside) is not None]
    return kept[zone]


def _live_of(s: Subject) -> Subject | None:
    """The live conductor of a return: what a short lets into the one comes back through the other."""
    live = s.facts.network.conductor(s.item.circuit.name, LIVE) if s.item.role == RETURN else None
    return None if live is None else s.facts.of("conductor", live)


@fact(
    "conductor",
    "is_cleared_by_device",
    type="yes/no",
    says="A short circuit in it is fed by batteries through devices, which must clear it.",
    method="graph: the devices at the edge of its zone behind which a battery stands",
)
def is_cleared_by_device(s: Subject) -> Truth:
    if s.item.role != LIVE:
        twin = _live_of(s)
        return False if twin is None else twin.is_cleared_by_device
    if clearing_borders(s):
        return True
    zones = zones_of(s.facts)
    around = {zones.of_wire(wire) for wire in s.item.wires}
    if any(zones.hides(zone) and zones.batteries(zone) for zone in around):
        return Unknown(f"part of what lies around {s.id} was not seen and may hide a device")
    loose = loose_bank(s.facts)
    return False if loose is None else loose


@fact(
    "conductor",
    "cleared_by",
    of="device",
    type="list",
    says="The devices that must clear a short circuit in it.",
    method="graph: the devices at the edge of its zone behind which a battery stands",
)
def cleared_by(s: Subject) -> tuple[Any, ...]:
    names = dict.fromkeys(one.link.equipment.name for _, borders in clearing_borders(s) for one in borders)
    found = (s.facts.subject("device", name) for name in names)
    return tuple(one for one in found if one is not None)


@fact(
    "conductor",
    "let_through",
    unit="A2s",
    says="Energy of a short circuit in it before the devices have opened; none where no device must clear one.",
    method="I² t of the devices that feed a stretch from one side, added as currents that flow together: (Σ √E)²; "
    "the stretch of up to 3 m between a branch and the device of the branch left out",
    source=f"{SOURCE}; the sum by the inequality of Minkowski; 3 m by IEC 60364-4-43 434.2.1 (from memory)",
)
def conductor_let_through(s: Subject) -> Any:
    twin = _live_of(s)
    if twin is not None:
        return twin.let_through
    worst: Number = None
    zones = zones_of(s.facts)
    for wire, borders in clearing_borders(s):
        for side in _from_each_side(s, wire, borders):
            one = energy_of(s, side)
            if isinstance(one, Unknown):
                return one
            if zones.hides(zones.of_wire(wire)):  # a device that was not seen may let less through
                one = between(0.0, one.high if isinstance(one, Range) else one or 0.0)
            worst = one if worst is None else greatest(worst, one)
    return worst


def _from_each_side(s: Subject, wire: Wire, borders: list[Border]) -> list[list[Border]]:
    """The devices that feed a stretch, one list for each end from which they do."""
    ends = [part for part in s.item.links if part.is_protective and {part.a, part.b} & {wire.a, wire.b}]
    rest = [one for one in borders if one.inside not in (wire.a, wire.b)]
    at_ends = [[one for one in borders if one.inside == end] for end in (wire.a, wire.b)]
    found = [group for group in at_ends if group]
    if rest and not (ends and less_equal(wire_length(s, wire), TAP_M) is True):
        found.append(rest)
    return found


def energy_of(s: Subject, borders: list[Border]) -> Number:
    """Bounds of the energy that several devices let through into one point together."""
    low, root = 0.0, 0.0
    for border in borders:
        device = s.facts.subject("device", border.link.equipment.name)
        energy = UNKNOWN if device is None else _arriving_energy(s, device, border)
        if isinstance(energy, Unknown) or energy is None:
            return Unknown(f"what {border.link.equipment.name} lets through is not known")
        bottom, top = (energy.low, energy.high) if isinstance(energy, Range) else (energy, energy)
        low, root = max(low, bottom), root + top**0.5
        line = f"{border.link.equipment.name} lets {show(energy, 'A2s')} through"
        s.note(line.__str__)
    return as_number(Band(min(low, root**2), root**2))


def _arriving_energy(s: Subject, device: Subject, border: Border) -> Number:
    """Bounds of what a device lets through into one side; kept, since many conductors ask."""
    kept: dict[int, Number] = s.facts.store.setdefault("energy by border", {})
    key = id(border)
    if s.facts.recorder is not None:
        _ = device.prospective_max  # notes what the current rests on
    elif key in kept:
        return kept[key]
    current = faults_of(s.facts).arriving(border.link, border.inside)
    kept[key] = current if isinstance(current, Unknown) else _let_through(device, current)
    return kept[key]


@fact(
    "conductor",
    "withstands_fault",
    type="yes/no",
    says="It stands every short circuit until the devices have opened; none is asked where no device must clear one.",
    method="energy let through at most k² S², heating taken without loss up to 5 s",
    source="IEC 60364-4-43 434.5.2 (from memory)",
)
def withstands_fault(s: Subject) -> Any:
    return less_equal(s.let_through, s.short_time_limit)


@fact(
    "conductor",
    "leg_short_time_limit",
    unit="A2s",
    says="Energy of a short circuit that one of like cables side by side stands alone.",
    method="k² S² of one cable",
    source="IEC 60364-4-43 434.5.2 (from memory)",
)
def leg_short_time_limit(s: Subject) -> Any:
    return divide(s.short_time_limit, multiply(s.parallel_legs, s.parallel_legs))
