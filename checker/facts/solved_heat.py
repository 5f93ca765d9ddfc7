"""Heat that the currents of an operating point make in a place: cables, contacts, converters, batteries.

Solving the network of every mode takes long, so no shipped rule asks for it; `fitout predict` does, a house rule may.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING, Any, NamedTuple

from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.place_heat import INVERTERS, warmed
from checker.facts.space import place_of
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Unknown, equal, greatest, show

if TYPE_CHECKING:
    from checker.circuit.dc_solution import Flow, Solution
    from checker.facts.operating_point import OperatingPoint

METHOD = (
    "for each mode: I²R of the stretches of cable in it by their length, loss of contacts, converters, chargers and "
    "inverters, I²R of batteries; the power of loads and the mains side left out"
)
SOURCE = "Kirchhoff's laws; Joule's law"


class Part(NamedTuple):
    """What makes heat in a place: its name, the element of the network, and its heat from the flow, W."""

    name: str
    element: str
    watts: Callable[[Flow], float]


def parts(point: OperatingPoint, place: str) -> list[Part]:
    """All that makes heat in a place on the direct-current side."""
    return [*_cables(point, place), *_equipment(point, place)]


def _cables(point: OperatingPoint, place: str) -> Iterator[Part]:
    network = point.plan.facts.network
    for conductor in network.conductors:
        names = point.plan.wires.get(conductor.id, ())
        for wire, name in zip(conductor.wires, names, strict=False):
            here = sum(_metres(step.length.value) for step in wire.lengths if step.place == place)
            whole = sum(_metres(step.length.value) for step in wire.lengths)
            if here > 0.0:
                yield Part(conductor.id, name, _share(here / whole))


def _metres(value: Any) -> float:
    """A length as it is likely: the middle of a range; one that is not known has no share."""
    if isinstance(value, Range):
        return 0.5 * (value.low + value.high)
    return value if isinstance(value, float) else 0.0


def _share(of: float) -> Callable[[Flow], float]:
    return lambda flow: of * abs(flow.watts or 0.0)


def _equipment(point: OperatingPoint, place: str) -> Iterator[Part]:
    plan = point.plan
    for item in plan.facts.design.equipment.values():
        if equal(place_of(plan.s, item), place) is not True:
            continue
        for name in plan.links.get(item.name, ()):
            yield Part(item.name, name, _share(1.0))
        if item.kind == "dc converter":
            yield Part(item.name, item.name, _share(1.0))
        elif item.kind in ("battery", "bank"):
            yield from _batteries(point, item)
        else:
            yield from _converting(point, item)


def _converting(point: OperatingPoint, item: Equipment) -> Iterator[Part]:
    """Inverters by what they take, chargers and solar controllers by what they give."""
    plan = point.plan
    efficiency = _likely(plan.read(item, "efficiency"))
    if not efficiency:  # not known, or none: then there is no telling what it loses
        return
    if item.kind in INVERTERS:
        waiting = _likely(plan.read(item, "no load")) or 0.0

        def taken(flow: Flow) -> float:
            power = max(0.0, flow.watts or 0.0)
            return power * (1.0 - efficiency) + min(power, waiting) * efficiency

        yield Part(item.name, item.name, taken)
    if item.kind in ("charger", "inverter-charger", "solar controller"):
        name = f"{item.name}.dc" if item.kind == "inverter-charger" else item.name
        yield Part(item.name, name, lambda flow: max(0.0, -(flow.watts or 0.0)) * (1.0 / efficiency - 1.0))


def _batteries(point: OperatingPoint, item: Equipment) -> Iterator[Part]:
    plan = point.plan
    one = item.base if item.kind == "bank" and item.base is not None else item
    ohm = _likely(plan.read(one, "internal resistance"))
    for name in plan.units.get(item.name, (item.name,)):
        if ohm is not None:
            yield Part(item.name, name, lambda flow, ohm=ohm: (flow.amps or 0.0) ** 2 * ohm)  # type: ignore[misc]


def _likely(value: Any) -> float | None:
    if isinstance(value, Range):
        return 0.5 * (value.low + value.high)
    return value if isinstance(value, float) else None


def heat_of_parts(point: OperatingPoint, made: list[Part]) -> Number:
    """Heat of these parts in a mode, W, from the lowest to the highest of its cases."""
    from checker.circuit.dc_moves import Total
    from checker.facts.operating_point import as_number

    return as_number(point.value(Total([_measured(part) for part in made]), current=True))


def _measured(part: Part) -> Callable[[Solution], float | None]:
    def measure(found: Solution) -> float | None:
        flow = None if part.element in found.off else found.flows.get(part.element)
        return None if flow is None else part.watts(flow)

    return measure


def by_name(point: OperatingPoint, made: list[Part]) -> dict[str, float]:
    """Heat of each thing in the likely case, W, the greatest first."""
    found: dict[str, float] = {}
    likely = point.likely
    for part in made if likely is not None else ():
        flow = likely.flows.get(part.element) if likely is not None and part.element not in likely.off else None
        if flow is not None:
            found[part.name] = found.get(part.name, 0.0) + part.watts(flow)
    return dict(sorted(found.items(), key=lambda one: (-one[1], one[0])))


@fact("place", "heat_solved", unit="W", says="Heat that the solved currents make in it in the worst mode.",
      method=METHOD, source=SOURCE)  # fmt: skip
def heat_solved(s: Subject) -> Any:
    from checker.facts.operating_point import points

    sums: list[Number] = []
    for mode, point in points(s.facts).items():
        heat = heat_of_parts(point, parts(point, s.item.name))
        s.note(_said(mode, heat))
        sums.append(heat)
    return greatest(sums) if sums else Unknown("the file tells no mode")


def _said(mode: str, heat: Number) -> Any:
    return lambda: f"{mode}: {show(heat, 'W')}"


@fact("place", "temperature_solved", unit="°C",
      says="Air temperature that the solved currents make in it on the hottest day, in the worst mode.",
      method="the steady balance of the computed temperature, with this heat", source=SOURCE)  # fmt: skip
def temperature_solved(s: Subject) -> Any:
    return air_with(s, s.item, s.heat_solved)


def air_with(s: Subject, place: Item, heat: Number) -> Number:
    """Air of a place with so much heat in it on the hottest day, °C."""
    return warmed(s, place, heat, s.read(s.facts.design.vehicle, "ambient.high"))
