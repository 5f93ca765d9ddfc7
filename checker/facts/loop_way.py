"""Flexible loops over the whole way of the part they serve: the clamps between their two ends, and runs without one."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE
from checker.design.item import Item
from checker.design.model import Circuit
from checker.design.run import Gap, Length, Step, Through
from checker.facts.catalogue import fact
from checker.facts.loop import passing
from checker.facts.mains_circuit import device_upstream
from checker.facts.space import carried, chain, is_kind, place_of
from checker.facts.subject import Subject
from checker.physics.geometry import widest_on_swing, widest_on_travel
from checker.quantities import Number, Range, Truth, Unknown, both, corners, either, equal, every, greatest, show, some


@fact(
    "loop",
    "widest_span",
    unit="m",
    says="Widest distance of its clamps anywhere on the way of the part, not at its ends alone.",
    method="the greatest of the spans told and of that between the clamps told; on a straight travel it is widest at "
    "an end; on a hinge the clamps are taken to come opposite each other, which no swing exceeds",
    source="geometry of points",
)
def widest_span(s: Subject) -> Any:
    from_clamps = _between_clamps(s)
    found: list[Number] = [] if from_clamps is None else [from_clamps]
    if from_clamps is not None:
        s.note(lambda: f"between the clamps at most {show(from_clamps, 'm')} on the way")
    ends = greatest(s.read(s.item, "span out"), s.read(s.item, "span in"))
    if s.item.has("span widest"):
        return greatest(ends, s.read(s.item, "span widest"), *found)
    straight = _straight(s)
    if straight is not True:
        if isinstance(from_clamps, float | Range) and not isinstance(ends, Unknown):
            return greatest(ends, from_clamps)
        if isinstance(straight, Unknown) or isinstance(from_clamps, Unknown):
            return straight if isinstance(straight, Unknown) else from_clamps
        return Unknown(f"the part that {s.id} follows turns: its clamps may be furthest apart between the two ends")
    return greatest(ends, *found) if not isinstance(ends, Unknown) or not found else found[0]


def _straight(s: Subject) -> Truth:
    part = s.moving
    if part is None or isinstance(part, Unknown):
        return Unknown(f"the part that {s.id} bridges is not told")
    return not (part.item.has("hinge.at") or part.item.has("hinge.along") or part.item.has("sweeps"))


def _between_clamps(s: Subject) -> Number:
    """Widest distance of the clamps told, m; none where they are not."""
    if not s.item.has("clamps"):
        return None
    points = s.read(s.item, "clamps")
    if not isinstance(points, tuple) or len(points) != 2:
        return Unknown(f"`clamps` of {s.id} needs two points")
    numbers = [one for point in points for one in (point if isinstance(point, tuple) else (Unknown(),))]
    part = s.moving
    if part is None or isinstance(part, Unknown) or len(numbers) != 6:
        return Unknown(f"the clamps of {s.id} or the part it follows are not told")
    if _straight(s) is True:
        along = s.read(part.item, "travel.along")
        if not isinstance(along, str):
            return Unknown(f"the axis along which {part.id} moves is not told")
        return corners(
            lambda a, b, c, d, e, f, way: widest_on_travel((a, b, c), (d, e, f), along, way),
            *numbers,
            s.read(part.item, "travel.distance"),
        )
    at, axis = s.read(part.item, "hinge.at"), s.read(part.item, "hinge.along")
    if not isinstance(at, tuple) or not isinstance(axis, str) or any(isinstance(one, Range) for one in numbers):
        return Unknown(f"the hinge of {part.id} is not told")
    return corners(
        lambda x, y, z: widest_on_swing(tuple(numbers[:3]), tuple(numbers[3:]), (x, y, z), axis),
        *at,
    )


@fact("loop", "clamped", type="yes/no", says="Its cables are held at both ends, so that no pull reaches a terminal.")
def clamped(s: Subject) -> Truth:
    held = s.read(s.item, "clamped")
    return False if held is None else held


@fact("loop", "cables_sheathed", type="yes/no", says="Every cable in it has a sheath over its cores.")
def cables_sheathed(s: Subject) -> Truth:
    return every(_sheathed(s, circuit) for circuit in passing(s))


def _sheathed(s: Subject, circuit: Circuit) -> Truth:
    if circuit.cable is None:
        return Unknown(f"the cable of {circuit.name} is not known")
    sheath = s.read(circuit.cable, "sheath")
    if isinstance(sheath, Unknown):
        return Unknown(f"the sheath of {circuit.cable.name} is not told")
    return sheath is not None


@fact("loop", "devices_on_fixed_side", type="yes/no",
      says="The device in the run of each circuit that passes it stands on the side that does not move.",
      method="devices in the run before its first stretch through the loop, after its last one where the circuit "
      "starts on the part; a circuit without one in its run is left to circuit.own_device")  # fmt: skip
def devices_on_fixed_side(s: Subject) -> Truth:
    return every(_guarded(s, circuit) for circuit in passing(s))


def _guarded(s: Subject, circuit: Circuit) -> Truth:
    live = s.facts.network.conductor(circuit.name, LIVE)
    names = {link.equipment.name for link in live.links if link.is_protective} if live is not None else set()
    if not names:
        return True
    inside = [n for n, step in enumerate(circuit.run) if isinstance(step, Length) and step.place == s.item.name]
    before, behind = circuit.run[: inside[0]], circuit.run[inside[-1] :]
    upstream = live is not None and device_upstream(s, live) is not None
    fixed, riding = either(upstream, _device_in(circuit, before, names)), _device_in(circuit, behind, names)
    rides = _starts_on_part(s, circuit)
    if isinstance(rides, Unknown):
        return fixed if fixed is riding else rides
    return riding if rides else fixed


def _device_in(circuit: Circuit, steps: tuple[Step, ...], names: set[str]) -> Truth:
    if any(isinstance(step, Through) and step.equipment in names for step in steps):
        return True
    if any(isinstance(step, Gap) for step in steps):
        return Unknown(f"part of the run of {circuit.name} was not seen and may hide a device")
    return False


def _starts_on_part(s: Subject, circuit: Circuit) -> Truth:
    """Whether the source of a circuit rides on the part, as an array on a lifting roof does."""
    part, source = s.moving, s.facts.design.equipment.get(circuit.start.equipment)
    if source is None or not source.has("place"):
        return False
    if not isinstance(part, Subject):
        return Unknown(f"the part that {s.id} bridges is not told")
    place = place_of(s, source)
    return carried(s, part.item, chain(s, place)) if isinstance(place, str) else place


# --- runs that follow a moving part


@fact(
    "circuit",
    "follows_moving",
    of="moving",
    type="list",
    says="Moving parts that carry one part of its run and not the other.",
    method="the places of its ends, devices and stretches, by what carries them",
)
def follows_moving(s: Subject) -> Any:
    found = []
    for part in s.facts.subjects("moving"):
        rides = [_rides(s, part.item, place) for place in _places(s)]
        answer = both(some(rides), some(not one if isinstance(one, bool) else one for one in rides))
        if isinstance(answer, Unknown):
            return answer
        if answer:
            found.append(part)
    return tuple(found)


def _rides(s: Subject, part: Any, place: str | Unknown) -> Truth:
    return place if isinstance(place, Unknown) else carried(s, part, chain(s, place))


def _places(s: Subject) -> list[str | Unknown]:
    """Names of the places along its run and at its ends; flexible loops belong to both sides and are left out."""
    item: Circuit = s.item
    names = [item.start.equipment, *(end.equipment for end in item.ends)]
    steps: tuple[Step, ...] = (*item.run, *item.returns.run)
    names += [step.equipment for step in steps if isinstance(step, Through)]
    found: list[str | Unknown] = []
    for name in dict.fromkeys(names):
        equipment = s.facts.design.equipment.get(name)
        if equipment is None:
            continue
        place = place_of(s, equipment)
        # A place left out says nothing; one that is written as not known may lie on either side.
        if isinstance(place, str) or (equipment.allows("place") and equipment.has("place")):
            found.append(place)
    found += [step.place for step in steps if isinstance(step, Length) and step.place is not None]
    places = s.facts.design.places
    return [one for one in dict.fromkeys(found) if isinstance(one, Unknown) or not _loop(s, places, one)]


def _loop(s: Subject, places: Any, name: str) -> bool:
    return name in places and is_kind(s, places[name], "flexible loop") is True


@fact(
    "circuit",
    "loop_at_each_moving",
    type="yes/no",
    says="Where it follows a moving part, it passes a flexible loop across that part.",
    method="the stretches of its run, and of a return that goes a way of its own across the part, against the loops "
    "across each part that it follows",
)
def loop_at_each_moving(s: Subject) -> Truth:
    parts = s.follows_moving
    if isinstance(parts, Unknown):
        return parts
    runs = [s.item.run] if s.item.returns.how != "run" else [s.item.run, s.item.returns.run]
    return every(_bridged(s, part.id, run) for part in parts for run in runs if _crosses(s, part.item, run))


def _crosses(s: Subject, part: Item, run: tuple[Step, ...]) -> bool:
    """Whether a return goes from one side of a part to the other; the run of a circuit that follows it does."""
    if run is s.item.run:
        return True
    far = s.item.returns.to or s.item.start
    met = [s.item.ends[0].equipment, *(step.equipment for step in run if isinstance(step, Through)), far.equipment]
    items = [one for name in met if (one := s.facts.design.equipment.get(name)) is not None]
    names = [*(place_of(s, one) for one in items), *(step.place for step in run if isinstance(step, Length))]
    rides = [carried(s, part, chain(s, name)) for name in names if isinstance(name, str)]
    loops = any(isinstance(name, str) and _loop(s, s.facts.design.places, name) for name in names)
    return loops or (True in rides and False in rides)


def _bridged(s: Subject, part: str, steps: tuple[Step, ...]) -> Truth:
    passed = {step.place for step in steps if isinstance(step, Length)}
    answers: list[Truth] = []
    for place in s.facts.design.places.values():
        if place.name in passed:
            answers.append(both(is_kind(s, place, "flexible loop"), equal(s.read(place, "across"), part)))
    bridged = some(answers)
    if bridged is True or not any(isinstance(step, Gap) for step in steps):
        return bridged
    return either(bridged, Unknown(f"part of the run of {s.id} was not seen"))
