"""Protective measures against shock: which is declared for a circuit, and for each supply of a transportable unit."""

from __future__ import annotations

from typing import Any

from checker.circuit.state import Truth
from checker.design.vocabulary.words import MEASURES
from checker.facts.catalogue import fact
from checker.facts.mains import answer, ever, states_of
from checker.facts.mains_circuit import mains_loads
from checker.facts.subject import Subject
from checker.facts.supply import Supply, supplies_by_load, supplies_of
from checker.quantities import Truth as Answer
from checker.quantities import Unknown, both, either, equal, every, greater_equal, less_equal, negate, some, total

CONTINUOUS_EARTH = ("in cable", "same", "run")


@fact(
    "circuit",
    "shock_protection",
    words=MEASURES,
    says="The protective measure of a mains circuit.",
    method="as declared; not declared: disconnection with a protective conductor, insulated where all loads are of "
    "class II",
    source="IEC 60364-4-41, 410.3, 2005 (from memory)",
)
def shock_protection(s: Subject) -> Any:
    if s.item.has("shock protection"):
        return s.read(s.item, "shock protection")
    if s.item.earth.how in CONTINUOUS_EARTH:
        return "disconnection"
    loads = mains_loads(s)
    doubled = every([equal(s.read(item, "class"), "II") if item.allows("class") else False for item in loads])
    if loads and doubled is True:
        return "insulated"
    return s.use(f"{s.item.path}.shock protection", s.item.get("shock protection"))


@fact("circuit", "measure_told", type="yes/no", says="The file tells its protective measure.", method="its entry")
def measure_told(s: Subject) -> bool:
    return bool(s.item.has("shock protection"))


@fact(
    "circuit",
    "needs_no_earth",
    type="yes/no",
    says="It is declared insulated or separated, and nothing that it feeds relies on an earth.",
    method="declared measure; supply.needs_earth of each load at its ends",
    source="IEC 60364-4-41, 412 and 413, 2005 (from memory)",
)
def needs_no_earth(s: Subject) -> Answer:
    loads = mains_loads(s)
    if not loads or not s.item.has("shock protection"):
        return False
    measure = s.read(s.item, "shock protection")
    declared = some([equal(measure, "insulated"), equal(measure, "separated")])
    supplies = [one for item in loads for one in supplies_by_load(s.facts).get(item.name, ())]
    return both(declared, every(negate(one.needs_earth) for one in supplies))


@fact(
    "supply",
    "is_separated",
    type="yes/no",
    says="A separated winding aboard feeds it alone, so that a fault to earth drives no current.",
    method="declared separation, a winding of its own, no link of neutral and earth, one load on the source",
    source="IEC 60364-4-41, 413, 2005 (from memory)",
)
def is_separated(s: Subject) -> Answer:
    supply: Supply = s.item
    source = s.facts.subject("ac_source", supply.feed.name)
    if not supply.feed.aboard or source is None:
        return False
    fed = {one.load.name for one in supplies_of(s.facts) if one.feed.name == supply.feed.name}
    if len(fed) > 1 or source.is_separated is False:
        return False
    item, load = supply.feed.equipment, supply.load
    winding = equal(s.read(item, "windings"), "separate") if item.kind == "transformer" else True
    single = less_equal(s.read(load, "count"), 1.0) if load.allows("count") else True
    return every([source.is_separated, equal(source.most_links, 0.0), winding, single])


@fact(
    "supply",
    "source_is_separated",
    type="yes/no",
    says="The circuits of what feeds it are declared separated, and its neutral meets no earth.",
    method="ac_source.is_separated, ac_source.most_links",
)
def source_is_separated(s: Subject) -> Answer:
    source = s.facts.subject("ac_source", s.item.feed.name)
    return False if source is None else both(source.is_separated, less_equal(source.most_links, 0.0))


@fact("outlet", "is_separated", type="yes/no", says="Every source that reaches it is a separated winding of its own.",
      method="supply.is_separated")  # fmt: skip
def outlet_is_separated(s: Subject) -> Answer:
    found = supplies_by_load(s.facts).get(s.id, ())
    perhaps = Unknown(f"whether this source feeds {s.id} is not known")
    # A supply that perhaps does not come about can show a doubt, never that it is not separated.
    answers = [either(one.is_separated, False if one.is_certain is True else perhaps) for one in found]
    return every(answers) if answers else False


@fact(
    "ac_source",
    "feeds_one_load",
    type="yes/no",
    says="It feeds one appliance or one outlet and nothing else.",
    method="supplies of the mains side; an outlet counts as often as there are of it",
    source="IEC 60364-4-41, 413, 2005 (from memory)",
)
def feeds_one_load(s: Subject) -> Answer:
    fed = {one.load.name: one.load for one in supplies_of(s.facts) if one.feed.name == s.item.name}
    counts = [s.read(load, "count") if load.allows("count") else 1.0 for load in fed.values()]
    return less_equal(total(counts), 1.0) if counts else True


@fact("ac_source", "in_unit", type="yes/no", says="The vehicle is a transportable unit.", method="kind of the vehicle")
def in_unit(s: Subject) -> Answer:
    return equal(s.read(s.facts.design.vehicle, "kind"), "unit")


@fact(
    "ac_source",
    "is_monitored",
    type="yes/no",
    says="An insulation monitor watches the supply it brings.",
    method="a monitor whose live terminal is live from it in some supply state",
)
def is_monitored(s: Subject) -> Any:
    monitors = [item for item in s.facts.network.equipment.values() if item.kind == "insulation monitor"]

    def watched(state: Any) -> Truth:
        seen: Truth = False
        for item in monitors:
            sure, may = state.feeds_of(f"{item.name}:L")
            if s.item in sure:
                return True
            seen = None if s.item in may else seen
        return seen

    return answer(ever(states_of(s.facts).states, watched)[0], "whether the monitor is reached is not known")


def _all_guarded(s: Subject) -> Answer:
    """Whether a residual-current device stands in each supply that comes about from a source; of those that perhaps do,
    one without leaves it open."""
    found = (one for supplies in supplies_by_load(s.facts).values() for one in supplies)
    mine = (one for one in found if one.item.feed.name == s.item.name)
    return every(either(negate(one.is_certain), one.has_residual_device) for one in mine)


@fact(
    "ac_source",
    "earthing_is_declared",
    type="yes/no",
    says="Its neutral is earthed ahead of residual-current devices, or it is a source aboard whose circuits are "
    "separated or watched by an insulation monitor.",
    method="links of neutral and earth while it feeds, with supply.has_residual_device; aboard, a transformer among "
    "them: declared separation, an insulation monitor",
    source="IEC 60364-7-717, 717.411 and 717.413, 2009 (from memory)",
)
def earthing_is_declared(s: Subject) -> Answer:
    # A link alone disconnects nothing: what relies on it stands behind a residual-current device.
    linked = both(greater_equal(s.least_links, 1.0), _all_guarded(s))
    # An insulated system begins at a winding aboard: of a transformer, a generator or an inverter. What else hangs on
    # an insulated site, and whether a first fault there is found, nobody aboard knows.
    insulated = either(s.is_separated, s.is_monitored) if s.item.aboard else False
    return either(linked, insulated)
