"""Parts of the vehicle that move: what they sweep, what stops them, what moves them without power."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.design.given import Where
from checker.design.item import Item
from checker.design.run import Length
from checker.design.vocabulary.words import TRAVEL_AXES
from checker.facts.catalogue import fact, subjects
from checker.facts.equipment import is_swept
from checker.facts.services import line_gap
from checker.facts.space import apart, carried, chain, extent, is_kind, overlaps, place_of, stands, swept_extent
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    Number,
    Range,
    Truth,
    Unknown,
    both,
    either,
    equal,
    every,
    least,
    less_equal,
    negate,
    show,
    some,
)

FIXED_PLACES = ("fuel", "gas locker", "battery locker", "battery box", "exit")
"""Kinds of place that stand still with hard walls or must stay free. Rooms and beds may be what a slide stows in; the
engine lies ahead of the body."""
WALLED = ("duct", "locker", "wet room", "cavity")
"""Kinds of place with walls of their own, asked about where their box is told."""
LANES = ("living space", "outside", "under body")
"""Kinds of place without walls between them and what moves: cables that run through one of which the box is told lie in
it, as in a cupboard or along the skin."""
NEAR = tuple(kind for kind in (*FIXED_PLACES, *WALLED) if kind != "exit")
"""Those that a part must keep clear of; a step belongs to its door."""
FURNITURE = ("bed", "seat")
"""What a slide may stow in: in its way where it lies in what the part sweeps and not in where it rests."""


@subjects("moving", "A part of the vehicle that moves: slide-out, lifting bed, lifting roof.")
def moving(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for item in facts.design.moving.values():
        yield item.name, item.where, item


@fact("moving", "travel", unit="m", says="How far it moves.")
def travel(s: Subject) -> Any:
    return s.read(s.item, "travel.distance")


@fact("moving", "direction", words=TRAVEL_AXES, says="The axis it moves along when it opens.")
def direction(s: Subject) -> Any:
    return s.read(s.item, "travel.along")


@fact(
    "moving",
    "sweep_hits",
    of="equipment",
    type="list",
    says="Equipment in its way that it does not carry.",
    method="boxes that share space with the space it sweeps over its whole travel",
)
def sweep_hits(s: Subject) -> Any:
    found = []
    doubtful = []
    for one in s.facts.subjects("equipment"):
        hit = is_swept(s, s.item, one.item)
        if hit is True:
            found.append(one)
        elif isinstance(hit, Unknown):
            doubtful.append(one.id)
    if doubtful and not found:
        return Unknown(f"where these stand is not told: {', '.join(doubtful)}")
    return tuple(found)


@fact(
    "moving",
    "places_hit",
    of="place",
    type="list",
    says="Fixed places in its way: fuel, gas, battery, exit; bed or seat that it does not stow in; duct, cavity, "
    "locker or wet room of which the box is told, or through which cables run that nobody watched; another place with "
    "a box and such cables, in which the part does not rest, open until somebody watched.",
    method="boxes that share space with the space it sweeps",
)
def places_hit(s: Subject) -> Any:
    way, rest = swept_extent(s, s.item), extent(s, s.item)
    found = []
    for one in s.facts.subjects("place"):
        if _stays(s, one.item) is False:
            continue
        hit = both(_stays(s, one.item), overlaps(way, extent(s, one.item)))
        if is_kind(s, one.item, *FURNITURE, *LANES) is True:
            hit = both(hit, negate(overlaps(rest, extent(s, one.item))))
        if isinstance(hit, Unknown):
            return Unknown(f"the box of {one.id} or the travel of {s.id} is not told")
        if hit:
            found.append(one)
    return tuple(found)


def _stays(s: Subject, place: Item) -> Truth:
    """Whether a place stands still with walls of its own, or must stay free."""
    if carried(s, s.item, chain(s, place.name)) is True:
        return False
    if is_kind(s, place, *FIXED_PLACES, *FURNITURE) is not False:
        return is_kind(s, place, *FIXED_PLACES, *FURNITURE)
    walled = is_kind(s, place, *WALLED)
    if place.has("box") and walled is not False:
        return walled
    # Without a box nobody knows where its cables lie; who watched the part over its whole way has seen them.
    watched = s.facts.subjects("design")[0].moving_cables_inspected
    if watched is True or place.name not in _with_cables(s.facts):
        return False
    return both(is_kind(s, place, *LANES), negate(watched)) if place.has("box") else walled


def _with_cables(facts: Facts) -> frozenset[str]:
    """The places that runs name."""
    runs = (circuit.run for circuit in facts.design.circuits.values())
    return frozenset(step.place for run in runs for step in run if isinstance(step, Length) and step.place is not None)


@fact(
    "moving",
    "service_in_way",
    type="yes/no",
    says="A line of gas, fuel, water, hot air or exhaust lies in its way.",
    method="from the space it sweeps to the straight stretches of each line, less half the outer diameter",
    source="geometry of boxes",
)
def service_in_way(s: Subject) -> Truth:
    way = swept_extent(s, s.item)
    found: list[Truth] = []
    for line in s.facts.design.services.values():
        points = s.read(line, "along")
        if way is None or not isinstance(points, tuple) or len(points) < 2:
            found.append(Unknown(f"where {line.name} runs, or the travel of {s.id}, is not told"))
            continue
        gap = line_gap(way, points, s.read(line, "outer") if line.has("outer") else 0.0)
        s.note(_said(line.name, gap))
        found.append(less_equal(gap, 0.0))
    return some(found)


def _said(name: str, gap: Number) -> Any:
    return lambda: f"{name}: {show(gap, 'mm')} from its way"


@fact(
    "moving",
    "sweep_clearance",
    unit="mm",
    says="Least distance over the whole travel to equipment and walled places with a known box that it does not carry.",
    method="distance between the space it sweeps and each box; none when no box is told; a place it meets, doors, "
    "beds and seats are left out",
)
def sweep_clearance(s: Subject) -> Any:
    way = swept_extent(s, s.item)
    found: Number = None
    for one in s.facts.subjects("equipment"):
        here = stands(s, one.item)
        if here is None or not here.exact or carried(s, s.item, chain(s, place_of(s, one.item))) is True:
            continue
        distance = apart(way, here)
        if isinstance(distance, Unknown):
            return Unknown(f"the box or the travel of {s.id} is not told")
        found = distance if found is None else least(found, distance)
    for one in s.facts.subjects("place"):
        here = extent(s, one.item)
        if here is None or is_kind(s, one.item, *NEAR) is not True or _stays(s, one.item) is False:
            continue
        distance = apart(way, here)
        if isinstance(distance, float | Range) and overlaps(way, here) is not True:
            found = distance if found is None else least(found, distance)
    return found


@fact("moving", "clearance", unit="mm", says="Clearance it needs around it.")
def clearance(s: Subject) -> Any:
    return s.read(s.item, "clearance")


@fact("moving", "interlock", type="yes/no", says="Something keeps it from moving while it must not.")
def interlock(s: Subject) -> Any:
    stated = s.read(s.item, "interlock")
    return False if stated is None else stated


@fact("moving", "interlock_acts_on", words=("power", "logic"),
      says="What the interlock cuts: the power of the motor or an input of its control; none without.")  # fmt: skip
def interlock_acts_on(s: Subject) -> Any:
    return None if s.read(s.item, "interlock") is None else s.read(s.item, "interlock.acts on")


@fact(
    "moving",
    "interlock_when",
    words=("engine running", "ignition on", "parking brake released", "road speed"),
    says="When the interlock stops it.",
)
def interlock_when(s: Subject) -> Any:
    return None if s.read(s.item, "interlock") is None else s.read(s.item, "interlock.inhibits when")


@fact("moving", "hand_drive", type="yes/no", says="It can be moved by hand when the supply is lost.")
def hand_drive(s: Subject) -> Any:
    return s.read(s.item, "hand drive")


@fact("moving", "backup_drive", type="yes/no", says="A second drive brings it in when the main supply is lost.")
def backup_drive(s: Subject) -> Any:
    return s.read(s.item, "backup drive")


@fact("moving", "drive_away_alarm", type="yes/no", says="An alarm sounds when it is out and the vehicle starts off.")
def drive_away_alarm(s: Subject) -> Any:
    return s.read(s.item, "drive-away alarm")


@fact("moving", "powered", type="yes/no", says="A motor moves it.")
def powered(s: Subject) -> Any:
    motor = s.read(s.item, "moved by")
    return motor if isinstance(motor, Unknown) else motor is not None


@fact("moving", "motor", of="equipment", type="subject", says="The motor that moves it.")
def motor(s: Subject) -> Any:
    name = s.read(s.item, "moved by")
    return s.facts.subject("equipment", name) if isinstance(name, str) else name


@fact("moving", "blocks_leaving", type="yes/no", says="Out, it keeps the vehicle from driving off.",
      method="all but what moves up and down and carries beds alone")  # fmt: skip
def blocks_leaving(s: Subject) -> Truth:
    if isinstance(s.direction, str) and s.direction in ("x", "y", "-x", "-y"):
        return True
    rooms = s.read(s.item, "carries")
    names = [name for name in rooms if isinstance(name, str)] if isinstance(rooms, tuple) else []
    places = [s.facts.design.places[name] for name in names if name in s.facts.design.places]
    beds = every(is_kind(s, place, "bed") for place in places)
    if not places or beds is False:
        return True
    return s.direction if isinstance(s.direction, Unknown) else negate(beds)


@fact("moving", "motor_stops_itself", type="yes/no",
      says="The motor has a thermal cut-out of its own, or its stall current is told for its device.")  # fmt: skip
def motor_stops_itself(s: Subject) -> Any:
    one = s.motor
    if one is None or isinstance(one, Unknown):
        return one
    item = one.item
    cut_out = s.read(item, "thermal cut-out") if item.allows("thermal cut-out") else False
    stall = s.read(item, "stall") if item.allows("stall") else Unknown()
    told = isinstance(stall, float | Range)
    return either(cut_out, told or Unknown(f"the stall current of {one.id} is not told"))


@fact("load", "drives_a_part", type="yes/no",
      says="A motor, or another load, that moves a part of the vehicle: slide-out, step, roof, bed, support leg.",
      method="its purpose; open for a motor of which nobody told the purpose")  # fmt: skip
def drives_a_part(s: Subject) -> Truth:
    if not s.item.allows("purpose") or (s.item.kind != "motor" and not s.item.has("purpose")):
        return False
    purpose = s.read(s.item, "purpose")
    return purpose if isinstance(purpose, Unknown) else purpose == "moving part"


@fact("load", "moves_a_told_part", type="yes/no", says="A part under `moving` names it as its motor.",
      method="moved by")  # fmt: skip
def moves_a_told_part(s: Subject) -> Truth:
    answers: list[Truth] = []
    for part in s.facts.design.moving.values():
        motor = s.read(part, "moved by")
        told = not isinstance(motor, Unknown) or part.has("moved by")
        answers.append(equal(motor, s.id) if told else False)
    return some(answers)
