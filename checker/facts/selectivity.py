"""Devices in series: whether the one next to a fault opens before the one that also feeds what people depend on."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.circuit.elements import Edge, Wire
from checker.circuit.limits import live_forest
from checker.circuit.sources import LOADS
from checker.circuit.supply import joined, storage_nodes
from checker.circuit.sweep import Arrivals, Rules
from checker.circuit.zones import Border
from checker.design.given import MISSING
from checker.facts.catalogue import fact
from checker.facts.clearing import SOURCE, characteristics
from checker.facts.device import faults_of
from checker.facts.least_fault import least_faults_of, sides, zones_of
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import where_it_stands
from checker.physics.clearing import Characteristic, energy_at, is_published, opening
from checker.quantities import Number, Range, Truth, Unknown, every, show

MELTING_SHARE = 0.25
"""Energy that melts an element in a very short time, over that at the last published point of its lower edge; common
practice, no source."""


NOTHING_A = 1e-9
"""A current at which nothing opens, in place of none, which no band knows."""


class Pair:
    """A device, the devices upstream of it towards the batteries, and the node on the fault side."""

    __slots__ = ("borders", "inside", "link")

    def __init__(self, link: Any, inside: str, borders: list[Border]) -> None:
        self.link = link
        self.inside = inside
        self.borders = borders


def pairs(s: Subject) -> list[Pair]:
    """Each direction in which a battery feeds a device through other devices."""
    zones, held = zones_of(s.facts), least_faults_of(s.facts)
    found = []
    for link, inside in sides(s):
        behind = zones.of(link.other(inside))
        if held.weakest(link, inside) is None or zones.batteries(behind) or zones.batteries(zones.of(inside)):
            continue
        borders = [
            one for one in zones.borders(behind)
            if one.link is not link and held.weakest(one.link, one.inside) is not None
        ]  # fmt: skip
        if borders:
            found.append(Pair(link, inside, borders))
    return found


@fact(
    "device",
    "upstream",
    of="device",
    type="list",
    says="The next devices towards the batteries, in series with it.",
    method="graph: the devices at the edge of the zone behind it through which a battery feeds",
)
@where_it_stands
def upstream(s: Subject) -> tuple[Any, ...]:
    names = dict.fromkeys(one.link.equipment.name for pair in pairs(s) for one in pair.borders)
    found = (s.facts.subject("device", name) for name in names)
    return tuple(one for one in found if one is not None)


@fact(
    "device",
    "shares_with_essentials",
    type="yes/no",
    says="A device upstream of it also feeds loads that people depend on and that have no cell of their own.",
    method="graph: essential loads behind the upstream device and not behind this one, which no battery feeds once all "
    "devices upstream have opened",
)
@where_it_stands
def shares_with_essentials(s: Subject) -> Truth:
    if _beside_essentials(s, perhaps=False):
        return True
    if _beside_essentials(s, perhaps=True):
        return Unknown("which loads people depend on is not fully told")
    unseen = _unseen_upstream(s)
    return unseen if unseen is not None and _essential_nodes(s.facts, perhaps=True) else False


def _unseen_upstream(s: Subject) -> Unknown | None:
    """Why a device upstream may be missing from what is known; None when all before it was seen."""
    zones = zones_of(s.facts)
    if any(zones.hides(zones.of(link.other(inside))) for link, inside in sides(s)):
        return Unknown(f"part of what lies before {s.id} was not seen and may hide a device")
    return None


def _beside_essentials(s: Subject, *, perhaps: bool) -> bool:
    counted = _essentials(s.facts, perhaps=perhaps)
    for pair in pairs(s):
        mine = counted.get((id(pair.link), pair.link.other(pair.inside)), 0)
        for border in pair.borders:
            if counted.get((id(border.link), border.outside), 0) > mine and _goes_dark(s, pair, perhaps=perhaps):
                return True
    return False


def _goes_dark(s: Subject, pair: Pair, *, perhaps: bool) -> bool:
    """Whether some essential load has no battery for certain once all devices upstream have opened."""
    cut = {border.link.equipment.name for border in pair.borders}

    def stays(edge: Edge) -> bool:
        if isinstance(edge, Wire):
            return edge.gap is None
        left_closed = edge.when == "always" or (edge.when == "hand" and not edge.equipment.says("rest", "open"))
        return left_closed and edge.equipment.name not in cut

    fed = joined(s.facts.network, storage_nodes(s.facts.network), stays)
    return any(node not in fed for node in _essential_nodes(s.facts, perhaps=perhaps))


def _essentials(facts: Facts, *, perhaps: bool) -> Arrivals[int]:
    """How many essential loads each side of a live edge holds; those behind a converter count at its input."""
    key = f"essentials by edge, {'perhaps' if perhaps else 'surely'}"
    found: Arrivals[int] | None = facts.shared.get(key)
    if found is None:
        at: dict[str, int] = {}
        essential = _essential_nodes(facts, perhaps=perhaps)
        stores = {source.live for source in facts.network.sources if source.storage}
        for node in essential:
            at[node] = at.get(node, 0) + 1
        for source in facts.network.sources:
            item = source.equipment
            enters = {"inverter": "dc+", "inverter-charger": "dc+", "dc converter": _other_side(source.port)}
            if item.kind in enters and source.port != "dc":
                reached = joined(facts.network, [source.live])
                if stores.intersection(reached):
                    continue  # a battery of its own keeps that side up
                count = sum(1 for node in essential if node in reached)
                if count:
                    enter = f"{item.name}:{enters[item.kind]}"
                    at[enter] = at.get(enter, 0) + count
        nothing = -1
        rules = Rules(nothing, lambda node: at.get(node, nothing), _sum, lambda edge, node, flow: flow)
        found = facts.shared[key] = live_forest(facts.network, None).sweep(rules)
    return found


def _other_side(port: str) -> str:
    return "high+" if port == "low" else "low+"


def _sum(a: int, b: int) -> int:
    return max(a, 0) + max(b, 0)


def _essential_nodes(facts: Facts, *, perhaps: bool) -> list[str]:
    """Where the loads draw that people depend on; with `perhaps` those too of which the file leaves it open."""
    essential = facts.design.essential
    listed = essential.value if isinstance(essential.value, tuple) else ()
    names = {one for one in listed if isinstance(one, str)}
    told = not any(isinstance(one, Unknown) for one in listed)
    told = told and not (isinstance(essential.value, Unknown) and essential.basis != MISSING)
    found = []
    for node, items in facts.network.sinks.items():
        for item in items:
            if item.kind not in LOADS:
                continue
            mark = item.value("essential") if item.has("essential") else False
            marked = item.name in names or mark is True
            open_mark = not told or isinstance(mark, Unknown)
            cell = item.value("own cell") if item.allows("own cell") else None
            without = not isinstance(cell, float | Range)
            open_cell = isinstance(cell, Unknown) and item.has("own cell")
            if (marked and without and not open_cell) or (perhaps and (marked or open_mark) and without):
                found.append(node)
    return found


@fact(
    "device",
    "opens_before_upstream",
    type="yes/no",
    says="On every short circuit behind it, it has surely opened before a device upstream does.",
    method="upper edge of its band below the lower edge of the other from the least to the greatest current; beyond "
    "the points of a fuse, its energy below a quarter of that of the other at its last point",
    source=f"{SOURCE}; the quarter: common practice, no source",
)
@where_it_stands
def opens_before_upstream(s: Subject) -> Truth:
    answers = [opens_first(s, pair, border) for pair in pairs(s) for border in pair.borders]
    return every([*answers, unseen] if (unseen := _unseen_upstream(s)) is not None else answers)


@fact(
    "device",
    "selective_with",
    of="device",
    type="list",
    says="Those upstream of it that surely stay closed while it clears a short circuit.",
    method="as device.opens_before_upstream, one by one",
    source=SOURCE,
)
@where_it_stands
def selective_with(s: Subject) -> tuple[Any, ...]:
    names: dict[str, None] = {}
    for pair in pairs(s):
        for border in pair.borders:
            if opens_first(s, pair, border) is True:
                names.setdefault(border.link.equipment.name)
    found = (s.facts.subject("device", name) for name in names)
    return tuple(one for one in found if one is not None)


def opens_first(s: Subject, pair: Pair, border: Border) -> Truth:
    """Whether a device surely opens before one upstream on every short circuit behind it."""
    other = s.facts.subject("device", border.link.equipment.name)
    if other is None:
        return Unknown("the device upstream is not known")
    mine, theirs = characteristics(s), characteristics(other)
    if isinstance(mine, Unknown):
        return mine
    if isinstance(theirs, Unknown):
        return theirs
    faults = faults_of(s.facts)
    least, most = _ends(s.prospective_min), _ends(faults.arriving(pair.link, pair.inside))
    flows = [_ends(faults.arriving(one.link, one.inside)) for one in pair.borders]
    ours = _ends(faults.arriving(border.link, border.inside))
    if least is None or most is None or ours is None or any(flow is None for flow in flows):
        return Unknown("the short-circuit currents are not known")
    answers: list[Truth] = []
    for share in _shares(ours, [flow for flow in flows if flow is not None]):
        scale = 1.0 / share if len(flows) > 1 else 1.0
        span = Span(max(min(least[0] * scale, most[1]), NOTHING_A), least[1] * scale, most[0], most[1])
        answers.extend(_compare(a, b, span, share) for a in mine for b in theirs)
        line = f"with {other.id}, {show(span.low, 'A')} to {show(span.high, 'A')}, of which {share:.2g} through it"
        s.note(line.__str__)
    return _agreed(answers)


class Span(NamedTuple):
    """Short-circuit currents that may flow, `low` to `high`, and that surely can, `sure_low` to `sure_high`, A."""

    low: float
    sure_low: float
    sure_high: float
    high: float


def _shares(ours: tuple[float, float], flows: list[tuple[float, float]]) -> list[float]:
    """Least and greatest part of a current that passes one of several devices in parallel."""
    lows, highs = sum(low for low, _ in flows), sum(high for _, high in flows)
    return sorted({ours[0] / (ours[0] + highs - ours[1]), ours[1] / (ours[1] + lows - ours[0])})


def _agreed(answers: list[Truth]) -> Truth:
    """Yes or no only where every way of reading the file says so."""
    for answer in answers:
        if isinstance(answer, Unknown):
            return answer
    if all(answer is True for answer in answers):
        return True
    mixed = Unknown("it depends on values that are not known exactly")
    return False if all(answer is False for answer in answers) else mixed


def _ends(value: Number) -> tuple[float, float] | None:
    if isinstance(value, Range):
        return value.low, value.high
    return (value, value) if isinstance(value, float) else None


def _compare(mine: Characteristic, theirs: Characteristic, span: Span, share: float) -> Truth:
    """Three answers: surely first at every current; an overlap or worse where both bands are published; cannot tell."""
    answer: Truth = True
    for current in _grid(mine, theirs, span, share):
        a, b = opening(mine, current), opening(theirs, max(current * share, NOTHING_A))
        if a.max_s < b.min_s:
            continue
        needed = b.min_s * (current * share) ** 2 if b.min_s > 0.0 else melting_energy(theirs)
        if energy_at(mine, current) * share**2 < needed:
            continue
        occurs = span.sure_low <= current <= span.sure_high
        known = is_published(mine, current) and is_published(theirs, current * share)
        if occurs and (b.max_s < a.min_s or known):
            return False
        answer = Unknown("beyond the published points the bands say nothing")
    return answer


def melting_energy(held: Characteristic) -> float:
    """Least energy that opens a fuse beyond its last published point, A2 s; 0 for a breaker or an unknown edge."""
    last = [one.least[-1] for one in held.series if one.least]
    if held.mechanical or len(last) < len(held.series):
        return 0.0
    return MELTING_SHARE * min((multiple * held.unit_a) ** 2 * time for multiple, time in last)


def _grid(mine: Characteristic, theirs: Characteristic, span: Span, share: float) -> list[float]:
    """The ends, and every published point of either between them: in between both are straight lines."""
    points = {span.low, span.sure_low, span.sure_high, span.high}
    for held, scale in ((mine, 1.0), (theirs, 1.0 / share)):
        for one in held.series:
            points.update(multiple * held.unit_a * scale for edge in (one.least, one.greatest) for multiple, _ in edge)
    return sorted(point for point in points if span.low <= point <= span.high)
