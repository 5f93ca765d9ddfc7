"""The faults that are tried when readings lie outside: each sort at each place, in a few sizes."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import inf
from typing import NamedTuple

from checker.circuit.dc_elements import Branch, Converter, CurrentLoad, Element, PowerLoad, Storage, Supply
from checker.circuit.dc_solution import Solution
from checker.circuit.elements import CHASSIS, LIVE
from checker.facts.operating_point import OperatingPoint

CHARGE_SHARES = (-0.08, -0.04, -0.02, 0.02)  # of the rested voltage: nearly empty to full
DROPS_V = (0.15, 0.6, 2.0)  # for a 12 V system; in proportion for others
JOINT_LOAD_A = 1.0
LOAD_FACTORS = (0.0, 0.5, 1.5, 2.0, 4.0, 8.0)
OUTPUT_SHARES = (0.0, 0.4, 0.7, 0.85)
SETTING_SHARES = (-0.06, -0.03, 0.03)
LIMIT_SHARES = (0.0, 0.25, 0.5, 0.75)
WORSE_SHARES = (0.8, 0.9)  # of the efficiency
AGED = (1.5, 2.0, 4.0)

Change = Callable[[Element], Element | None]


class Kind(NamedTuple):
    """One sort of fault at one place.

    `sizes` are tried, and what lies between two of them or between one and `sound`, the size of no fault at all; where
    that is None the fault is there or not. `what` says a size in words, `change` is its effect on each element.
    """

    sort: str
    where: str
    tell: str
    sizes: tuple[float, ...]
    sound: float | None
    what: Callable[[float], str]
    change: Callable[[float], Change]


def kinds(point: OperatingPoint, sound: Solution) -> Iterator[Kind]:
    """Every fault that is tried, in the order in which they are the likelier where all explain alike."""
    yield from _joints(point, sound)
    yield from _loads(point)
    yield from _charges(point)
    yield from _sources(point)
    yield from _converters(point)
    yield from _aged(point)
    yield from _open(point, sound)


def _joints(point: OperatingPoint, sound: Solution) -> Iterator[Kind]:
    network = point.plan.facts.network
    for conductor, names in point.plan.wires.items():
        flow = sound.flows.get(names[0])
        if flow is None or flow.amps is None or abs(flow.amps) < JOINT_LOAD_A:
            continue
        told = next(one for one in network.conductors if one.id == conductor)
        inside = [link.equipment.name for link in told.links]
        volts = abs(sound.volts.get(told.start if told.role == LIVE else CHASSIS, 12.0))
        scale = max(1.0, volts / 12.0) if told.role == LIVE else 1.0
        words = f"a bad joint or contact in {conductor}" + (f" ({', '.join(inside)} stand in it)" if inside else "")
        tell = (
            f"under this load, measure from stud to stud along {conductor}: the bad joint shows most of the loss; "
            "warm to an infrared thermometer; where it is spread along the cable, that is thinner or longer than told"
        )
        sizes = tuple(drop * scale / abs(flow.amps) for drop in DROPS_V)
        yield Kind("joint", conductor, tell, sizes, 0.0, _ohm_words(words), _more_ohm(names[0]))


def _ohm_words(words: str) -> Callable[[float], str]:
    return lambda ohm: f"{words}: {ohm * 1e3:.2g} mΩ too much"


def _more_ohm(name: str) -> Callable[[float], Change]:
    def sized(ohm: float) -> Change:
        def change(element: Element) -> Element:
            if element.name == name and isinstance(element, Branch):
                return Branch(name, element.a, element.b, element.ohm + ohm)
            return element

        return change

    return sized


def _loads(point: OperatingPoint) -> Iterator[Kind]:
    for name in point.plan.loads:
        tell = f"clamp its own lead, then switch {name} off: the other readings must move by what it draws"
        yield Kind("load", name, tell, LOAD_FACTORS, 1.0, _load_words(name), _scaled(name))


def _load_words(name: str) -> Callable[[float], str]:
    return lambda size: f"{name} does not draw" if size < 0.005 else f"{name} draws {size:.2g} times what is stated"


def _scaled(name: str) -> Callable[[float], Change]:
    def sized(factor: float) -> Change:
        def change(element: Element) -> Element | None:
            if element.name != name:
                return element
            if isinstance(element, PowerLoad):
                watts, lowest = element.watts * factor, element.lowest_v
                return PowerLoad(name, element.plus, element.minus, watts, lowest_v=lowest)
            if isinstance(element, CurrentLoad):
                return CurrentLoad(name, element.plus, element.minus, element.amps * factor)
            return element

        return change

    return sized


def _batteries(point: OperatingPoint) -> Iterator[tuple[str, dict[str, Storage]]]:
    """Each battery and bank with its units."""
    units = point.plan.units
    inner = {name for names in units.values() for name in names}
    made = {e.name: e for e in point.plan.elements("likely", {})}
    for bank, names in (*units.items(), *((name, (name,)) for name in point.plan.sources if name not in inner)):
        found = {name: e for name in names if isinstance(e := made.get(name), Storage)}
        if found:
            yield bank, found


def _charges(point: OperatingPoint) -> Iterator[Kind]:
    for bank, units in _batteries(point):
        tell = f"rest {bank} for some hours with nothing connected and measure its voltage; ask its management"
        rested = next(iter(units.values())).emf_v
        words = _charge_words(bank, rested)
        yield Kind("charge", bank, tell, CHARGE_SHARES, 0.0, words, _stored(frozenset(units), charge=True))


def _charge_words(bank: str, rested: float) -> Callable[[float], str]:
    def words(share: float) -> str:
        return f"{bank} is {'less' if share < 0.0 else 'more'} charged than taken: {rested * (1 + share):.4g} V at rest"

    return words


def _aged(point: OperatingPoint) -> Iterator[Kind]:
    for bank, units in _batteries(point):
        tell = f"note voltage and current of {bank}, switch a large load on, note both again: the two steps divided"
        words = _aged_words(bank)
        yield Kind("aged", bank, tell, AGED, 1.0, words, _stored(frozenset(units), charge=False))


def _aged_words(bank: str) -> Callable[[float], str]:
    return lambda factor: f"{bank} is worn or cold: {factor:.2g} times its internal resistance"


def _stored(names: frozenset[str], *, charge: bool) -> Callable[[float], Change]:
    """Batteries otherwise charged (a share of the rested voltage more), or of so many times their resistance."""

    def sized(size: float) -> Change:
        more, times = (1.0 + size, 1.0) if charge else (1.0, size)

        def change(element: Element) -> Element:
            if isinstance(element, Storage) and element.name in names:
                ohms = element.ohm * times, element.charge_ohm * times
                return Storage(element.name, element.plus, element.minus, element.emf_v * more, *ohms)
            return element

        return change

    return sized


def _of_sort(point: OperatingPoint, sort: type) -> list[str]:
    made = {element.name for element in point.plan.elements("likely", {}) if isinstance(element, sort)}
    return [name for name in point.plan.sources if name in made]


def _sources(point: OperatingPoint) -> Iterator[Kind]:
    for name in _of_sort(point, Supply):
        tell = f"measure voltage and current at the terminals of {name} itself, cold and again hot"
        yield Kind("output", name, tell, OUTPUT_SHARES, 1.0, _output_words(name), _weaker(name))
        tell = f"read the setting of {name}, and the voltage at its terminals when little is drawn"
        yield Kind("setting", name, tell, SETTING_SHARES, 0.0, _setting_words(name), _set_to(name))


def _output_words(name: str) -> Callable[[float], str]:
    return lambda size: f"{name} gives nothing" if size < 0.005 else f"{name} is weak: {size:.0%} of its output"


def _setting_words(name: str) -> Callable[[float], str]:
    return lambda share: f"{name} holds a voltage {abs(share):.1%} {'lower' if share < 0 else 'higher'} than stated"


def _weaker(name: str) -> Callable[[float], Change]:
    def sized(factor: float) -> Change:
        def change(element: Element) -> Element:
            if element.name != name or not isinstance(element, Supply):
                return element
            watts = element.watts * factor if element.watts < inf else inf
            limit, droop = element.limit_a * factor, element.droop_ohm
            return Supply(name, element.plus, element.minus, element.set_v, limit, droop_ohm=droop, watts=watts)

        return change

    return sized


def _set_to(name: str) -> Callable[[float], Change]:
    def sized(share: float) -> Change:
        def change(element: Element) -> Element:
            if element.name != name:
                return element
            if isinstance(element, Converter) and element.set_v is not None:
                return _converter(element, set_v=element.set_v * (1.0 + share))
            if isinstance(element, Supply):
                set_v, limit, droop = element.set_v * (1.0 + share), element.limit_a, element.droop_ohm
                return Supply(name, element.plus, element.minus, set_v, limit, droop_ohm=droop, watts=element.watts)
            return element

        return change

    return sized


def _converters(point: OperatingPoint) -> Iterator[Kind]:
    for name in _of_sort(point, Converter):
        tell = f"read the display or settings of {name}; compare the power at its two sides"
        yield Kind("converter", name, tell, LIMIT_SHARES, 1.0, _limit_words(name), _limited(name))
        yield Kind("setting", name, tell, SETTING_SHARES, 0.0, _setting_words(name), _set_to(name))
        yield Kind("efficiency", name, tell, WORSE_SHARES, 1.0, _worse_words(name), _lossy(name))


def _limit_words(name: str) -> Callable[[float], str]:
    return lambda size: f"{name} does not work" if size < 0.005 else f"{name} gives {size:.0%} of its limits"


def _worse_words(name: str) -> Callable[[float], str]:
    return lambda size: f"{name} loses more than stated: {1.0 - size:.0%} worse"


def _limited(name: str) -> Callable[[float], Change]:
    def sized(factor: float) -> Change:
        return lambda one: _converter(one, share=factor) if one.name == name and isinstance(one, Converter) else one

    return sized


def _lossy(name: str) -> Callable[[float], Change]:
    def sized(size: float) -> Change:
        return lambda one: _converter(one, worse=size) if one.name == name and isinstance(one, Converter) else one

    return sized


def _converter(one: Converter, *, set_v: float | None = None, share: float = 1.0, worse: float = 1.0) -> Converter:
    return Converter(
        one.name, one.into, one.out, one.efficiency * worse, set_v=one.set_v if set_v is None else set_v,
        limit_in_a=one.limit_in_a * max(share, 1e-6), limit_out_a=one.limit_out_a * share, hold_v=one.hold_v,
        hold_ohm=one.hold_ohm, idle_w=one.idle_w, droop_ohm=one.droop_ohm, lowest_v=one.lowest_v,
    )  # fmt: skip


def _open(point: OperatingPoint, sound: Solution) -> Iterator[Kind]:
    for item, names in point.plan.links.items():
        if any((flow := sound.flows.get(name)) is not None and abs(flow.amps or 0.0) > JOINT_LOAD_A for name in names):
            tell = f"measure across {item}: the full voltage stands across an open one, next to none across a sound one"
            yield Kind("open", item, tell, (1.0,), None, _open_words(item), _without(frozenset(names)))


def _open_words(item: str) -> Callable[[float], str]:
    return lambda _: f"{item} is open"


def _without(names: frozenset[str]) -> Callable[[float], Change]:
    return lambda _: lambda element: None if element.name in names else element
