"""Conductors as they are laid: covered, supported, under the body, through gas lockers, marked."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import BONDING, EARTH, RETURN
from checker.design.item import Item
from checker.design.run import Hole, Length, Through
from checker.facts.catalogue import fact
from checker.facts.conductor_given import cable_value, no_cable, place_items, unseen_place
from checker.facts.space import chain, is_kind, told_around
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, add, both, either, equal, every, negate, some

PLASTIC = ("conduit", "gas-tight conduit", "split tube")
FINE = ("stranded", "flexible", "extra flexible")
LIMP = ("split tube", "sleeve")
"""Coverings that are no conduit: they bend with what is in them."""
JOINTS = ("bar", "earth bar", "terminal block", "joint", "connector")


@fact("conductor", "sheathed", type="yes/no", says="Its cable has a sheath over the cores.",
      method="the sheath told; two cores side by side may have none, so silence leaves it open")  # fmt: skip
def sheathed(s: Subject) -> Truth:
    cable: Item | None = s.item.circuit.cable
    if cable is None:
        return no_cable(s)
    sheath = s.read(cable, "sheath")
    if not isinstance(sheath, Unknown):
        return sheath is not None
    if cable.has("sheath"):
        return Unknown(f"the sheath of {cable.name} is not known")
    return Unknown(f"the sheath of {cable.name} is not told")


@fact("conductor", "out_of_sheath", unit="m", says="Greatest length of a core outside the sheath of its cable.")
def out_of_sheath(s: Subject) -> Any:
    return s.read(s.item.circuit, "out of sheath")


@fact("conductor", "at_battery", type="yes/no", says="It ends at a battery.", method="graph")
def at_battery(s: Subject) -> bool:
    ends = (s.facts.network.equipment.get(node.partition(":")[0]) for node in (s.item.start, s.item.end))
    return any(item is not None and item.kind in ("battery", "bank") for item in ends)


@fact("conductor", "covered", type="yes/no", says="Conduit, tube, duct or sleeve covers it.")
def covered(s: Subject) -> Truth:
    found = s.covering
    return found if isinstance(found, Unknown) else found is not None


@fact("conductor", "stranded_copper", type="yes/no", says="It is of copper and of strands, not one solid wire.")
def stranded_copper(s: Subject) -> Truth:
    metal, strands = s.material, s.strands
    if isinstance(metal, str) and metal == "aluminium":
        return False
    if isinstance(strands, str) and strands not in FINE:
        return False
    return next((one for one in (metal, strands) if isinstance(one, Unknown)), True)


def passes(s: Subject, kind: str, *, around: bool = False) -> Truth:
    """Whether it passes a place of a kind, or with `around` one inside of such; perhaps where it was not seen."""
    places = [one for place in place_items(s) for one in (chain(s, place.name) if around else (place,))]
    unseen = unseen_place(s)
    there = unseen is not None and any(is_kind(s, place, kind) is not False for place in s.facts.design.places.values())
    return some([*(is_kind(s, place, kind) for place in places), unseen if unseen is not None and there else False])


ENCLOSING = ("duct", "locker", "battery locker", "battery box", "gas locker")
"""Kinds of place with walls of their own, which keep off what strikes the body from below; a frame channel is none."""


@fact(
    "conductor",
    "under_body",
    type="yes/no",
    says="Part of it lies under the body, in no duct, locker or box there.",
    method="places of the run and the places around them; a cavity of which nobody tells where it is may be there",
)
def under_body(s: Subject) -> Truth:
    unseen = unseen_place(s)
    there = unseen is not None and any(_under(s, place) is not False for place in s.facts.design.places.values())
    found = [_under(s, place) for place in place_items(s)]
    return some([*found, unseen if unseen is not None and there else False])


def _under(s: Subject, place: Item) -> Truth:
    """Whether a cable in a place is one under the body: the place is, or lies there and does not enclose it."""
    around = told_around(s, place)
    outermost = around[-1]
    open_there: Truth = False
    if is_kind(s, outermost, "cavity") is not False and isinstance(s.read(outermost, "inside"), Unknown):
        open_there = Unknown(f"where the cavity {outermost.name} is, is not told")
    below = some([*(is_kind(s, one, "under body") for one in around), open_there])
    return both(below, negate(is_kind(s, place, *ENCLOSING)))


@fact("conductor", "bare", type="yes/no", says="It is a bare strap or braid, without insulation that could be damaged.",
      method="the colour told of its cable")  # fmt: skip
def bare(s: Subject) -> Truth:
    cable = s.item.circuit.cable
    return cable is not None and cable.has("colour") and equal(s.read(cable, "colour"), "bare")


@fact(
    "conductor",
    "enclosed",
    type="yes/no",
    says="Conduit or a duct around it keeps its heat in.",
    method="its covering, and the places of its run; a sleeve and a tube that is slit along breathe",
)
def enclosed(s: Subject) -> Truth:
    covering = s.covering
    if not isinstance(covering, Unknown):
        covering = covering not in (None, "sleeve", "split tube")
    return either(covering, passes(s, "duct"))


@fact("conductor", "outside", type="yes/no", says="Part of it lies outside, on the roof or the skin.",
      method="places of the run")  # fmt: skip
def outside(s: Subject) -> Truth:
    return passes(s, "outside")


@fact("conductor", "in_gas_locker", type="yes/no", says="Part of it lies in a locker of gas cylinders.",
      method="places of the run and the places around them")  # fmt: skip
def in_gas_locker(s: Subject) -> Truth:
    return passes(s, "gas locker", around=True)


@fact("conductor", "joint_in_gas_locker", type="yes/no", says="It is joined within a locker of gas cylinders.",
      method="a device in the run between two stretches in the locker; a joint in its run or at its ends that stands "
      "there")  # fmt: skip
def joint_in_gas_locker(s: Subject) -> Truth:
    return either(_device_between(s), some(one.in_gas_locker for one in _joints(s)))


def _joints(s: Subject) -> list[Subject]:
    """What joins a conductor in its run and at its ends."""
    names = [node.partition(":")[0] for node in (s.item.start, s.item.end)]
    names += [link.equipment.name for link in s.item.links]
    found = (s.facts.subject("equipment", name) for name in dict.fromkeys(names))
    return [one for one in found if one is not None and one.item.kind in JOINTS]


def _device_between(s: Subject) -> Truth:
    kinds = {place.name: is_kind(s, place, "gas locker") for place in place_items(s)}
    if _joined_within(s, {name for name, kind in kinds.items() if kind is True}):
        return True
    unseen = unseen_place(s)
    if unseen is not None and s.in_gas_locker is not False:
        return unseen
    doubt = next((kind for kind in kinds.values() if isinstance(kind, Unknown)), None)
    perhaps = _joined_within(s, {name for name, kind in kinds.items() if kind is not False})
    return doubt if perhaps and doubt is not None else False


def _joined_within(s: Subject, places: set[str]) -> bool:
    """Whether a device stands in the run between two stretches in these places."""
    run = s.item.circuit.run
    inside = [isinstance(step, Length) and step.place in places for step in run]
    if True not in inside:
        return False
    first, last = inside.index(True), len(inside) - 1 - inside[::-1].index(True)
    return any(isinstance(step, Through) for step in run[first:last])


@fact("conductor", "above_cylinder_base", unit="mm", says="Height above the base of the gas cylinders.")
def above_cylinder_base(s: Subject) -> Any:
    return s.read(s.item.circuit, "above cylinder base")


@fact("conductor", "duty_is_bonding", type="yes/no", says="It bonds parts or earths them; no load current runs in it.")
def duty_is_bonding(s: Subject) -> bool:
    return s.item.role in (BONDING, EARTH)


@fact("conductor", "bonds_metal", type="yes/no",
      says="It joins metal alone; what brings the negative of a battery or bar to the chassis carries current.",
      method="its role, and the poles at its ends")  # fmt: skip
def bonds_metal(s: Subject) -> bool:
    return s.item.role in (BONDING, EARTH) and not any(end.endswith("-") for end in (s.item.start, s.item.end))


@fact(
    "conductor",
    "free_run",
    unit="m",
    says="Length of it outside conduit, duct and enclosures, where supports have to hold it.",
    method="stretches of the run, those in ducts, loops, lockers and battery boxes left out; none in conduit or duct, "
    "nor for a core that lies along another of its circuit; a split tube or a sleeve hangs as its cable does",
)
def free_run(s: Subject) -> Any:
    covering = s.covering
    if isinstance(covering, Unknown):
        return covering
    found = covering not in (None, *LIMP)
    circuit = s.item.circuit
    path = {RETURN: circuit.returns, EARTH: circuit.earth}.get(s.item.role)
    if found or (path is not None and path.how not in ("run", "unknown")):
        return 0.0
    length: Number = 0.0
    for wire in s.item.wires:
        if wire.gap is not None:
            return Unknown(f"part of the run of {s.item.circuit.name} was not seen")
        for stretch in wire.lengths:
            if stretch.place is not None and _boxed(s, s.facts.design.places[stretch.place]):
                continue
            length = add(length, s.use(f"{s.item.circuit.path}.run via {stretch.place}", stretch.length, "m"))
    return length


def _boxed(s: Subject, place: Item) -> bool:
    boxed = ("duct", "flexible loop", "battery box", "battery locker", "locker")
    cupboard = place.has("box") and place.has("inside") and is_kind(s, place, "living space") is True
    return cupboard or is_kind(s, place, *boxed) is True


RECOGNISED = (
    "ISO 6722", "ISO 19642", "SAE J378", "SAE J1127", "SAE J1128", "SAE J1292", "SAE J1560", "UL 44", "UL 62", "UL 83",
    "UL 1426", "UL 4703", "EN 50306", "EN 50525", "EN 50618", "IEC 60227", "IEC 60245", "IEC 60502", "IEC 62930",
    "AS/NZS 3191", "AS/NZS 3808", "AS/NZS 5000", "BS 6004", "BS 6500", "BS 7211",
)  # fmt: skip
"""Standards of cables for road vehicles, craft, arrays and wiring rules, by how their names begin."""


@fact(
    "conductor",
    "type_recognised",
    type="yes/no",
    says="A standard told for its cable is one of cables for road vehicles, craft, arrays or wiring rules.",
    method="how the name begins, against a list",
    source="common practice, no source",
)
def type_recognised(s: Subject) -> Truth:
    found = cable_value(s, "standard")
    if isinstance(found, Unknown):
        return found
    return any(_begins(text, name) for text in found or () for name in RECOGNISED)


def _begins(text: str, name: str) -> bool:
    return text.startswith(name) and not text[len(name) :][:1].isdigit()


@fact("conductor", "class_told", type="yes/no", says="The temperature its insulation endures is told, not assumed.",
      method="an entry with the cable, or with what is usual")  # fmt: skip
def class_told(s: Subject) -> Truth:
    cable = s.item.circuit.cable
    if cable is None:
        return no_cable(s)
    limit = s.read(cable, "insulation")
    if isinstance(limit, Unknown):
        return limit
    if limit is not None and not cable.has("insulation"):
        return Unknown(f"the temperature class of the cable of {s.item.circuit.name} is not told")
    return limit is not None


@fact("conductor", "marked_every", unit="m", says="Interval at which it is marked along its length.")
def marked_every(s: Subject) -> Any:
    return s.read(s.item.circuit, "marked every")


@fact("conductor", "ends_marked", type="yes/no",
      says="Both its ends carry the name of the circuit; none for the leads of a bank written short.")  # fmt: skip
def ends_marked(s: Subject) -> Truth | None:
    if s.item.circuit.name not in s.facts.design.circuits:
        return None
    ends = s.item.circuit.terminations
    missing = Unknown("whether both ends are marked is not told")
    return every(s.read(ends[end], "marked") if end in ends else missing for end in ("from", "to"))


@fact(
    "design",
    "conduits_mixed",
    type="yes/no",
    says="Mains runs in metal conduit or duct here, in plastic there, or metal conduit ends at an insulating box.",
    method="what covers each mains conductor, the ducts that it passes, and the boxes at the ends of metal conduit",
)
def conduits_mixed(s: Subject) -> Truth:
    mains = [one for one in s.facts.subjects("conductor") if one.system == "ac" and one.is_live]
    found = [one.covering for one in mains]
    ducts = [
        (one, s.read(place, "material"))
        for one in mains
        for place in place_items(one)
        if is_kind(s, place, "duct") is True and one.sheathed is not True
    ]
    known = [(one, made) for one, made in ducts if not isinstance(made, Unknown)]
    metal, plastic = some(_are(found, ("metal conduit",))), some(_are(found, PLASTIC))
    pairs = [
        both(metal, plastic),
        both(metal, some(_bare_in(one, made, ("plastic",)) for one, made in ducts)),
        both(plastic, some(_bare_in(one, made, METALS) for one, made in ducts)),
        both(*(some(_bare_in(one, made, kinds) for one, made in known) for kinds in (METALS, ("plastic",)))),
    ]
    return some([*pairs, *(_insulating_box(s, one) for one in mains)])


def _bare_in(one: Subject, made: Any, kinds: tuple[str, ...]) -> Truth:
    """Whether plain cores lie in a duct of such material; a cable with a sheath asks nothing of its duct."""
    return both(negate(one.sheathed), made if isinstance(made, Unknown) else made in kinds)


METALS = ("steel", "aluminium")


def _are(coverings: list[Any], kinds: tuple[str, ...]) -> list[Truth]:
    return [one if isinstance(one, Unknown) else one in kinds for one in coverings]


def _insulating_box(s: Subject, one: Subject) -> Truth:
    """Whether a mains conductor in metal conduit ends at an insulating box, which parts the metal from the earth."""
    if one.covering != "metal conduit" if isinstance(one.covering, str) else True:
        return False
    names = {node.partition(":")[0] for wire in one.item.wires for node in (wire.a, wire.b)}
    items = [s.facts.network.equipment[name] for name in sorted(names) if name in s.facts.network.equipment]
    return some(equal(s.read(item, "enclosure"), "insulating") for item in items if item.allows("enclosure"))


@fact("conductor", "holes", of="hole", type="list", says="The holes it goes through.", method="run")
def holes(s: Subject) -> tuple[Any, ...]:
    names = dict.fromkeys(step.name for step in s.item.circuit.run if isinstance(step, Hole))
    found = (s.facts.subject("hole", name) for name in names)
    return tuple(one for one in found if one is not None)


@fact("conductor", "endures_sun", type="yes/no", says="Cable or covering endures sunlight.",
      method="told of the cable, or covered by conduit")  # fmt: skip
def endures_sun(s: Subject) -> Truth:
    return either(s.ultraviolet, s.covered)
