"""What there is to draw of a fit-out: boxes, points, routes and findings, in vehicle axes and metres."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any, NamedTuple

from checker.facts.equipment import BODILESS
from checker.facts.space import extent, lower, place_of, stands, swept_extent
from checker.facts.subject import Facts, Subject
from checker.quantities import show
from checker.reports.plan_boxes import Line, Point, Shape, room_of, shape_of, through
from checker.reports.plan_marks import Mark, marks

if TYPE_CHECKING:
    from checker.design.item import Item
    from checker.design.model import Design, Equipment
    from checker.reports.document import Document


class Sweep(NamedTuple):
    """A moving part: its box as stowed, all the space it passes through, which way it goes and how far.

    `along` is empty for a part that turns.
    """

    name: str
    stowed: Shape
    way: Shape
    along: str
    travel: str


class Placed(NamedTuple):
    """A piece of equipment and what the file tells of where it is."""

    name: str
    kind: str
    place: str
    told: str  # box, point, place or nothing


class Scene(NamedTuple):
    """Everything a drawing shows; the same for every view."""

    forward: float  # -1 when x points rearward, the nose of the vehicle lies at small x; else 1
    rightward: float  # 1 when y points to the right, else -1
    upward: float  # 1 when z points up, else -1
    axes_told: bool
    envelope: Shape | None
    axles: tuple[float, ...]
    places: tuple[Shape, ...]
    moving: tuple[Sweep, ...]
    equipment: tuple[Shape, ...]
    routes: tuple[Line, ...]
    services: tuple[Line, ...]
    marks: tuple[Mark, ...]
    listed: tuple[Placed, ...]
    undrawn: tuple[str, ...]  # circuits whose ends have no place


def scene(design: Design, report: Document) -> Scene:
    """Collect what the drawing of a design shows, with the breaches of its report."""
    facts = Facts(design)
    s = facts.subjects("design")[0]
    places = tuple(_shapes(s, design.places.values()))
    equipment = tuple(_bodies(s, design))
    routes = tuple(_routes(s, design))
    drawn = tuple(line for line in routes if len(line.points) > 1)
    vehicle = design.vehicle
    told = vehicle.has("axes.x") and vehicle.has("axes.y")
    return Scene(
        forward=1.0 if vehicle.says("axes.x", "forward") else -1.0,
        rightward=-1.0 if vehicle.says("axes.y", "to the left") else 1.0,
        upward=-1.0 if vehicle.says("axes.z", "down") else 1.0,
        axes_told=told,
        envelope=_envelope(vehicle),
        axles=_axles(vehicle),
        places=places,
        moving=tuple(_sweeps(s, design)),
        equipment=equipment,
        routes=drawn,
        services=tuple(_services(design)),
        marks=tuple(marks(s, design, report, routes)),
        listed=tuple(_listed(s, design)),
        undrawn=tuple(line.name for line in routes if len(line.points) < 2),
    )


def travels(part: Sweep, found: Scene) -> str:
    """`travels 0.9 m to the right`."""
    if not part.along:
        return "turns; the box around its way"
    axis, sense = part.along.removeprefix("-"), -1.0 if part.along.startswith("-") else 1.0
    words = {"x": ("forward", "rearward"), "y": ("to the right", "to the left"), "z": ("up", "down")}[axis]
    along = {"x": found.forward, "y": found.rightward, "z": found.upward}[axis]
    return f"travels {part.travel} {words[0 if sense * along > 0 else 1]}"


def _shapes(s: Subject, items: Iterable[Item]) -> Iterable[Shape]:
    for item in items:
        found = shape_of(item, extent(s, item))
        if found is not None:
            kind = item.value("kind") if item.allows("kind") else item.kind
            yield found._replace(kind=kind if isinstance(kind, str) else "place")


def _bodied(design: Design) -> Iterable[Equipment]:
    return (item for item in design.equipment.values() if item.kind not in BODILESS)


def _bodies(s: Subject, design: Design) -> Iterable[Shape]:
    """Equipment whose own box or point is told."""
    for item in _bodied(design):
        at = stands(s, item)
        found = shape_of(item, at) if at is not None and at.exact else None
        if found is not None:
            yield found


def _listed(s: Subject, design: Design) -> Iterable[Placed]:
    for item in _bodied(design):
        name = place_of(s, item)
        at = stands(s, item)
        told = "nothing" if at is None else "place" if not at.exact else "box" if extent(s, item) else "point"
        yield Placed(item.name, item.kind, name if isinstance(name, str) else "not told", told)


def _envelope(vehicle: Item) -> Shape | None:
    from checker.design.given import Box

    box = vehicle.value("envelope")
    if not isinstance(box, Box) or not all(isinstance(one, float) for one in (*box.at, *box.size)):
        return None
    at = tuple(lower(one) for one in box.at)
    end = tuple(lower(a) + lower(b) for a, b in zip(box.at, box.size, strict=True))
    return Shape("envelope", "envelope", at, end)  # type: ignore[arg-type]


def _axles(vehicle: Item) -> tuple[float, ...]:
    """Where the axles stand, when the axes start at the front one."""
    origin, span = vehicle.value("axes.origin"), vehicle.value("masses.wheelbase")
    if not isinstance(origin, str) or "front axle" not in origin:
        return ()
    rear = span * (-1.0 if vehicle.says("axes.x", "forward") else 1.0) if isinstance(span, float) else None
    return (0.0,) if rear is None else (0.0, rear)


def _sweeps(s: Subject, design: Design) -> Iterable[Sweep]:
    for part in design.moving.values():
        stowed, way = shape_of(part, extent(s, part)), shape_of(part, swept_extent(s, part))
        if stowed is not None and way is not None:
            far, along = part.value("travel.distance"), part.value("travel.along")
            straight = isinstance(along, str) and not (part.has("sweeps") or part.has("hinge.at"))
            yield Sweep(part.name, stowed, way, along if straight else "", show(far, "m") if straight else "")


def _services(design: Design) -> Iterable[Line]:
    for item in design.services.values():
        points = item.value("along")
        if not isinstance(points, tuple):
            continue
        sure = [point for point in points if isinstance(point, tuple) and all(isinstance(one, float) for one in point)]
        carries = item.value("carries")
        if len(sure) == len(points) > 1:
            yield Line(item.name, carries if isinstance(carries, str) else "unknown", tuple(sure))


# --- routes


def _routes(s: Subject, design: Design) -> Iterable[Line]:
    from checker.design.run import Length, Through

    for circuit in design.circuits.values():
        band = _band(s, circuit.name)
        for end in circuit.ends:
            stops: list[Any] = [_point(s, design, circuit.start.equipment)]
            for step in circuit.run:
                if isinstance(step, Through):
                    stops.append(_point(s, design, step.equipment))
                elif isinstance(step, Length) and step.place is not None:
                    stops.append(room_of(s, step.place))
            stops.append(_point(s, design, end.equipment))
            yield Line(circuit.name, band, tuple(through(stops)))


def _point(s: Subject, design: Design, name: str) -> Point | None:
    item = design.equipment.get(name)
    at = stands(s, item) if item is not None else None
    found = shape_of(item, at) if item is not None else None
    return None if found is None else found.middle


def _band(s: Subject, name: str) -> str:
    """Voltage band of a circuit: mains, high elv, low elv, earth, unknown."""
    from checker.circuit.elements import LIVE
    from checker.facts.levels import level_at

    network = s.facts.network
    if s.facts.design.circuits[name].says("duty", "bonding"):
        return "earth"
    if network.systems.get(name) == "ac":
        return "mains"
    live = network.conductor(name, LIVE)
    level = level_at(s.facts, live.start) if live is not None else None
    if level is None or not isinstance(level.nominal, float):
        return "unknown"
    return "elv above 30 V" if level.nominal > HIGH_ELV_V else "elv up to 30 V"


HIGH_ELV_V = 30.0
"""Between the factory's 12 or 24 V and the 36 or 48 V of a house bank: tells them apart on paper, no limit of a
standard."""
