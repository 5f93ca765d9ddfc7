"""What may explain readings that lie outside of what was to be expected.

Each likely fault is put into the network of the likely case, one at a time and in a few sizes; the network is solved
again and set beside *all* readings of that mode, those that agreed as well. A fault ranks by how little is left
unexplained. What tells two faults apart is looked for among everything that could be read besides.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from math import inf
from typing import NamedTuple

from checker.circuit.dc_elements import Branch, Converter, CurrentLoad, Element, PowerLoad, Storage, Supply
from checker.circuit.dc_solution import NoSolution, Solution
from checker.circuit.dc_solve import solve
from checker.circuit.elements import CHASSIS, LIVE
from checker.facts.dc_corners import heat_of
from checker.facts.instruments import UNITS, VOLTAGE, Spot, drop_spot, names_on, spots_at, tolerance
from checker.facts.operating_point import OperatingPoint
from checker.facts.subject import Subject
from checker.quantities import Range, Unknown

WORTH = 0.7  # a cause must leave less than this share of the misfit
MOST_SHOWN = 5
ALIKE = 0.05  # of the misfit: closer than that, two faults explain alike
DROPS_V = (0.15, 0.3, 0.6, 1.2, 2.0)  # for a 12 V system; in proportion for others
JOINT_LOAD_A = 1.0
CHARGE_SHARES = (-0.08, -0.04, -0.02, 0.02)  # of the rested voltage: nearly empty to full
TWICE = 2.0  # how clearly another reading must differ to tell two causes apart, in tolerances

Change = Callable[[Element], Element | None]


class Read(NamedTuple):
    """One reading: where, what was shown, what is allowed as error of the instrument and of the likely numbers."""

    spot: Spot
    shown: float
    allowed: float


class Fault(NamedTuple):
    """One fault in one size: its sort and where; what it is, in words; how it is found; its effect on each element."""

    sort: str
    where: str
    what: str
    tell: str
    change: Change


class Cause(NamedTuple):
    """A fault that would explain readings: how much of the misfit is left (0: nothing), and what would show it.

    `also` names other places where a fault of the same sort explains the readings as well.
    """

    fault: Fault
    left: float
    signs: tuple[str, ...]
    also: tuple[str, ...]


class Tried(NamedTuple):
    """A fault with its solution: what it leaves of the misfit, and its turn."""

    left: float
    turn: int
    fault: Fault
    found: Solution


def reads_of(readings: Sequence[Subject], point: OperatingPoint) -> list[Read]:
    """The readings of one mode that can be compared."""
    from checker.facts.instruments import predicted, spot

    found = []
    for s in readings:
        at = s.item.item.value("at")
        one = spot(point, at, s.item.quantity) if isinstance(at, str) else at
        shown = s.item.item.value(s.item.quantity)
        if not isinstance(one, Spot) or isinstance(shown, Range) or not isinstance(shown, float):
            continue
        value = predicted(point, one)
        if isinstance(value, Unknown):
            continue
        allowed = tolerance(one.quantity, value.likely) + 0.25 * (value.high - value.low)
        found.append(Read(one, shown, allowed))
    return found


def misfit(reads: Sequence[Read], found: Solution) -> float:
    """Sum of squares of the deviations beyond nothing, in what is allowed; a reading of the dead counts as far off."""
    total = 0.0
    for read in reads:
        value = read.spot.ask(found)
        if value is None:
            value = 0.0
        shown = read.shown
        if read.spot.quantity != "voltage":
            value, shown = abs(value), abs(shown)
        total += min(100.0, ((shown - value) / read.allowed) ** 2)
    return total


def causes(point: OperatingPoint, reads: Sequence[Read]) -> list[Cause]:
    """The faults that would explain the readings of a mode, the likeliest first."""
    sound = point.likely
    if sound is None or not reads:
        return []
    ranked = _ranked(_tried(point, reads, sound))
    spots = _further(point, reads)
    found = []
    for tried, also in ranked:
        others = [one.found for one, _ in ranked if one is not tried]
        signs = tuple(_signs(spots, tried.found, sound, others))
        found.append(Cause(tried.fault, tried.left, signs, also))
    return found


def _tried(point: OperatingPoint, reads: Sequence[Read], sound: Solution) -> list[Tried]:
    """The best size of every fault that explains something."""
    before = misfit(reads, sound)
    elements = point.plan.elements("likely", heat_of(point.plan.wires, sound))
    best: dict[tuple[str, str], Tried] = {}
    for turn, fault in enumerate(faults(point, sound)):
        changed = [new for element in elements if (new := fault.change(element)) is not None]
        found = solve(changed, ground=CHASSIS, start=sound.volts)
        if isinstance(found, NoSolution) or before <= 0.0:
            continue
        left = misfit(reads, found) / before
        key = fault.sort, fault.where
        if left < WORTH and (key not in best or left < best[key].left):
            best[key] = Tried(left, turn, fault, found)
    return sorted(best.values(), key=lambda one: (round(one.left, 2), one.turn))


def _ranked(tried: Sequence[Tried]) -> list[tuple[Tried, tuple[str, ...]]]:
    """The best of each sort with the places where another of its sort does as well; then the second best."""
    first: list[Tried] = []
    also: dict[str, list[str]] = {}
    for one in tried:
        head = next((other for other in first if other.fault.sort == one.fault.sort), None)
        like = sum(other.fault.sort == one.fault.sort for other in first)
        if head is None or (head.left + ALIKE < one.left and like < 2):
            first.append(one)
        elif one.left <= head.left + ALIKE:
            also.setdefault(one.fault.sort, []).append(one.fault.where)
    seen: set[str] = set()
    found = []
    for one in first[:MOST_SHOWN]:
        places = () if one.fault.sort in seen else tuple(also.get(one.fault.sort, ()))
        seen.add(one.fault.sort)
        found.append((one, places))
    return found


def faults(point: OperatingPoint, sound: Solution) -> Iterator[Fault]:
    """Every fault that is tried, in the order in which they are the likelier where all explain alike."""
    yield from _joints(point, sound)
    yield from _loads(point)
    yield from _charges(point)
    yield from _sources(point)
    yield from _converters(point)
    yield from _open(point, sound)


def _joints(point: OperatingPoint, sound: Solution) -> Iterator[Fault]:
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
            "warm to an infrared thermometer"
        )
        for drop in DROPS_V:
            ohm = drop * scale / abs(flow.amps)
            much = f"{words}: {ohm * 1e3:.2g} mΩ too much"
            yield Fault("joint", conductor, much, tell, _more_ohm(names[0], ohm))


def _more_ohm(name: str, ohm: float) -> Change:
    def change(element: Element) -> Element:
        if element.name == name and isinstance(element, Branch):
            return Branch(name, element.a, element.b, element.ohm + ohm)
        return element

    return change


def _loads(point: OperatingPoint) -> Iterator[Fault]:
    for name in point.plan.loads:
        for factor in (0.0, 0.5, 0.75, 1.25, 1.5, 2.0, 4.0, 8.0):
            words = f"{name} does not draw" if factor == 0.0 else f"{name} draws {factor:g} times what is stated"
            tell = f"clamp its own lead, then switch {name} off: the other readings must move by what it draws"
            yield Fault("load", name, words, tell, _scaled(name, factor))


def _scaled(name: str, factor: float) -> Change:
    def change(element: Element) -> Element | None:
        if element.name != name:
            return element
        if isinstance(element, PowerLoad):
            return PowerLoad(name, element.plus, element.minus, element.watts * factor, lowest_v=element.lowest_v)
        if isinstance(element, CurrentLoad):
            return CurrentLoad(name, element.plus, element.minus, element.amps * factor)
        return element

    return change


def _charges(point: OperatingPoint) -> Iterator[Fault]:
    units = point.plan.units
    groups = [*units.items(), *((name, (name,)) for name in point.plan.sources)]
    inner = {name for names in units.values() for name in names}
    made = {e.name: e for e in point.plan.elements("likely", {})}
    for bank, names in groups:
        emfs = {name: e.emf_v for name in names if isinstance(e := made.get(name), Storage)}
        if bank in inner or not emfs:
            continue
        tell = f"rest {bank} for some hours with nothing connected and measure its voltage; ask its management"
        for share in CHARGE_SHARES:
            word = "less" if share < 0.0 else "more"
            rested = next(iter(emfs.values())) * (1.0 + share)
            words = f"{bank} is {word} charged than taken: {rested:.4g} V at rest"
            changed = {name: emf * (1.0 + share) for name, emf in emfs.items()}
            yield Fault("charge", bank, words, tell, _at_rest(changed))


def _at_rest(emfs: dict[str, float]) -> Change:
    def change(element: Element) -> Element:
        if isinstance(element, Storage) and element.name in emfs:
            emf = emfs[element.name]
            return Storage(element.name, element.plus, element.minus, emf, element.ohm, element.charge_ohm)
        return element

    return change


def _of_sort(point: OperatingPoint, sort: type) -> list[str]:
    made = {element.name for element in point.plan.elements("likely", {}) if isinstance(element, sort)}
    return [name for name in point.plan.sources if name in made]


def _sources(point: OperatingPoint) -> Iterator[Fault]:
    for name in _of_sort(point, Supply):
        tell = f"measure voltage and current at the terminals of {name} itself, cold and again hot"
        for factor in (0.0, 0.4, 0.7, 0.85):
            words = f"{name} gives nothing" if factor == 0.0 else f"{name} is weak: {factor:.0%} of its output"
            yield Fault("output", name, words, tell, _weaker(name, factor, 0.0))
        for volts in (-0.03, 0.03):
            word = "lower" if volts < 0 else "higher"
            words = f"{name} holds a voltage {abs(volts):.0%} {word} than stated"
            tell_set = f"read the setting of {name}, and the voltage at its terminals when little is drawn"
            yield Fault("setting", name, words, tell_set, _weaker(name, 1.0, volts))


def _weaker(name: str, factor: float, share: float) -> Change:
    def change(element: Element) -> Element:
        if element.name != name or not isinstance(element, Supply):
            return element
        set_v = element.set_v * (1.0 + share)
        limit, watts = element.limit_a * factor, element.watts * factor if element.watts < inf else inf
        return Supply(name, element.plus, element.minus, set_v, limit, droop_ohm=element.droop_ohm, watts=watts)

    return change


def _converters(point: OperatingPoint) -> Iterator[Fault]:
    for name in _of_sort(point, Converter):
        tell = f"read the display or settings of {name}; compare the power at its two sides"
        sizes = ((0.0, "does not work"), (0.5, "gives half of its limits"), (0.75, "gives three quarters of them"))
        for factor, words in sizes:
            yield Fault("converter", name, f"{name} {words}", tell, _limited(name, factor))
        words = f"{name} loses more than stated: 10 % worse"
        yield Fault("efficiency", name, words, tell, _limited(name, 1.0))


def _limited(name: str, factor: float) -> Change:
    def change(element: Element) -> Element | None:
        if element.name != name or not isinstance(element, Converter):
            return element
        return Converter(
            name, element.into, element.out,
            element.efficiency if factor < 1.0 else 0.9 * element.efficiency,
            set_v=element.set_v, limit_in_a=element.limit_in_a * max(factor, 1e-6),
            limit_out_a=element.limit_out_a * factor, hold_v=element.hold_v, hold_ohm=element.hold_ohm,
            idle_w=element.idle_w, droop_ohm=element.droop_ohm, lowest_v=element.lowest_v,
        )  # fmt: skip

    return change


def _open(point: OperatingPoint, sound: Solution) -> Iterator[Fault]:
    for item, names in point.plan.links.items():
        if any((flow := sound.flows.get(name)) is not None and abs(flow.amps or 0.0) > JOINT_LOAD_A for name in names):
            tell = f"measure across {item}: the full voltage stands across an open one, next to none across a sound one"
            yield Fault("open", item, f"{item} is open", tell, _without(frozenset(names)))


def _without(names: frozenset[str]) -> Change:
    return lambda element: None if element.name in names else element


def _further(point: OperatingPoint, reads: Sequence[Read]) -> list[tuple[str, Spot]]:
    """What else could be read, each with the words for it."""
    taken = {(read.spot.at, read.spot.quantity) for read in reads}
    found = []
    for name in names_on(point):
        for one in spots_at(point, name):
            if (name, one.quantity) not in taken and one.quantity != "power":
                found.append((f"{one.quantity} at {name}", one))
    for circuit in point.plan.facts.network.by_circuit:
        drop = drop_spot(point, circuit)
        if drop is not None:
            found.append((f"loss along {circuit}", drop))
    return found


def _signs(
    spots: Sequence[tuple[str, Spot]], here: Solution, sound: Solution, others: Sequence[Solution]
) -> Iterator[str]:
    """Up to two further readings that this fault moves and the others leave, the clearest first."""
    ranked = []
    for at, (words, one) in enumerate(spots):
        value, usual = one.ask(here), one.ask(sound)
        if value is None or usual is None:
            continue
        allowed = tolerance(one.quantity, usual)
        rest = [found for other in (sound, *others) if (found := one.ask(other)) is not None]
        apart = min((abs(value - other) / allowed for other in rest), default=0.0)
        if apart > TWICE:
            now, before = (_said(number, one.quantity) for number in (value, usual))
            text = f"{words} ({one.between}): {now} with this fault, {before} without"
            ranked.append((-apart, at, text))
    for _, _, text in sorted(ranked)[:2]:
        yield text


def _said(value: float, quantity: str) -> str:
    return f"{value if quantity == VOLTAGE else abs(value):.4g} {UNITS[quantity]}"
