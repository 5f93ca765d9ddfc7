"""Socket outlets of either system."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.design.given import RatedVoltage, Where
from checker.design.vocabulary.words import SHAPES
from checker.facts.catalogue import fact, subjects
from checker.facts.degree import objects_in, water_in
from checker.facts.mains import tell_state
from checker.facts.subject import Facts, Subject
from checker.facts.supply import supplies_by_load
from checker.quantities import Unknown, either, greatest

BAYS = frozenset({"locker", "battery locker", "gas locker"})
"""Places that may open to the outside though the file does not tell where they open."""
USES = ("inside", "outside", "counter", "wet room", "bay")


@subjects("outlet", "A socket outlet, or several alike on one circuit.")
def outlets(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for item in facts.network.equipment.values():
        if item.kind == "outlet":
            yield item.name, item.where, item


@fact("outlet", "is_mains", type="yes/no", says="It gives mains.", method="its circuit, else its rated voltage")
def is_mains(s: Subject) -> Any:
    near = s.facts.network.near
    if f"{s.id}:L" in near or f"{s.id}:+" in near:
        return f"{s.id}:L" in near
    volts = s.read(s.item, "voltage")
    if isinstance(volts, RatedVoltage) and volts.system is not None:
        return volts.system == "ac"
    return Unknown(f"what {s.id} gives is not known")


@fact("outlet", "rating", unit="A", says="Rated current.")
def rating(s: Subject) -> Any:
    return s.read(s.item, "rating")


@fact("outlet", "has_earth_contact", type="yes/no", says="It has an earth contact.")
def has_earth_contact(s: Subject) -> Any:
    return s.read(s.item, "earth contact")


@fact("outlet", "is_polarised", type="yes/no", says="Its plug fits one way only.")
def is_polarised(s: Subject) -> Any:
    return s.read(s.item, "polarised")


@fact("outlet", "polarity_marked", type="yes/no", says="Plus and minus are shown at it.")
def polarity_marked(s: Subject) -> Any:
    return s.read(s.item, "polarity marked")


@fact("outlet", "switched_poles", unit="count", says="Poles its switch opens; none without a switch.")
def switched_poles(s: Subject) -> Any:
    return s.read(s.item, "switched poles")


@fact("outlet", "has_switch", type="yes/no", says="It has a switch of its own.", method="its switched poles")
def has_switch(s: Subject) -> Any:
    poles = s.read(s.item, "switched poles")
    return poles if isinstance(poles, Unknown) else poles is not None


@fact("outlet", "supply_is_polarised", type="yes/no", says="Live and neutral of the sites cannot be swapped.")
def supply_is_polarised(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "supply.polarised")


@fact("outlet", "used_where", words=USES, says="Where its plugs are used.")
def used_where(s: Subject) -> Any:
    return s.read(s.item, "use")


@fact(
    "outlet",
    "is_in_the_open",
    type="yes/no",
    says="It stands outside, or its plugs are used outside.",
    method="its use, and the kind of the place where it stands",
)
def is_in_the_open(s: Subject) -> Any:
    used = s.read(s.item, "use")
    if isinstance(used, str) and used == "outside":
        return True
    place = _place(s)
    if isinstance(place, Unknown):
        return place
    kind = s.read(place, "kind")
    if not isinstance(kind, str):
        return Unknown(f"what kind of place {place.name} is, is not known")
    rain = s.read(place, "wet") if place.has("wet") else "dry"
    return either(kind in OPEN, rain if isinstance(rain, Unknown) else rain in ("rain", "jets"))


OPEN = ("outside", "under body")


def _place(s: Subject) -> Any:
    name = s.read(s.item, "place")
    if not isinstance(name, str):
        return Unknown(f"where {s.id} stands is not known")
    found = s.facts.design.places.get(name)
    return Unknown(f"what kind of place {name} is, is not known") if found is None else found


@fact(
    "outlet",
    "used_in_rain",
    type="yes/no",
    says="Plugs may be used at it in rain: it stands in the open and its place is not told to be dry or damp at most.",
    method="the water that its place sees, as told; an outlet elsewhere counts as used in rain",
)
def used_in_rain(s: Subject) -> Any:
    place = _place(s)
    if isinstance(place, Unknown):
        return place
    kind = s.read(place, "kind")
    if not place.has("wet"):
        return True
    if not isinstance(kind, str):
        return Unknown(f"what kind of place {place.name} is, is not known")
    if kind not in OPEN:
        return True
    water = s.read(place, "wet")
    return water if isinstance(water, Unknown) else water not in ("dry", "damp")


@fact("outlet", "is_in_a_bay", type="yes/no", says="It stands in a locker that opens to the outside.",
      method="the place where it stands")  # fmt: skip
def is_in_a_bay(s: Subject) -> Any:
    place = s.read(s.item, "place")
    if not isinstance(place, str):
        return Unknown(f"where {s.id} stands is not known")
    known = s.facts.design.places.get(place)
    if known is None:
        return Unknown(f"what kind of place {place} is, is not known")
    if not known.has("opens") and known.value("kind") not in BAYS:
        return False
    opens = s.read(known, "opens")
    return opens if isinstance(opens, Unknown) else opens == "outside"


@fact("outlet", "objects_open", unit="count", says="First digit of its degree of protection with nothing plugged in.",
      source="IEC 60529 (from memory)")  # fmt: skip
def objects_open(s: Subject) -> Any:
    return objects_in(s, "open")


@fact("outlet", "objects_mated", unit="count", says="First digit of its degree of protection with a plug in.",
      source="IEC 60529 (from memory)")  # fmt: skip
def objects_mated(s: Subject) -> Any:
    return objects_in(s, "mated")


@fact(
    "outlet",
    "water_open",
    unit="count",
    says="Second digit of its degree of protection with nothing plugged in.",
    source="IEC 60529 (from memory)",
)
def water_open(s: Subject) -> Any:
    return water_in(s, "open")


@fact(
    "outlet",
    "water_mated",
    unit="count",
    says="Second digit of its degree of protection with a plug in.",
    source="IEC 60529 (from memory)",
)
def water_mated(s: Subject) -> Any:
    return water_in(s, "mated")


@fact("outlet", "own_residual_current", unit="mA", says="Rated residual current of a device within it; none without.")
def own_residual_current(s: Subject) -> Any:
    return s.read(s.item, "own rcd")


@fact("outlet", "shape", words=SHAPES, says="The shape of the socket.")
def shape(s: Subject) -> Any:
    return s.read(s.item, "shape")


@fact(
    "outlet",
    "residual_current",
    unit="mA",
    says="Highest rated residual current that protects it in any supply state; none when one state has no protection.",
    method="for each source that reaches it, the devices that every way passes, or one within the outlet; separated "
    "windings that feed it alone need none",
)
def residual_current(s: Subject) -> Any:
    value: Any = 0.0
    doubt: Unknown | None = None
    for supply in supplies_by_load(s.facts).get(s.id, ()):
        if supply.is_separated is True:
            continue
        one = supply.residual_current
        if isinstance(one, Unknown) or (one is None and supply.is_certain is not True):
            doubt = one if isinstance(one, Unknown) else Unknown("whether this source feeds it is not known")
        elif one is None:
            tell_state(s, supply.first_state)
            return None
        else:
            value = greatest(value, one)
    return value if doubt is None else doubt


@fact("outlet", "is_ever_fed", type="yes/no", says="Some source of mains reaches it.", method="every supply state")
def is_ever_fed(s: Subject) -> bool:
    return bool(supplies_by_load(s.facts).get(s.id))


@fact("outlet", "is_marked", type="yes/no", says="It is marked with its voltage and the largest load allowed.",
      method="`marked`; where its labels are told, voltage and current or greatest power among them")  # fmt: skip
def is_marked(s: Subject) -> Any:
    marked = s.read(s.item, "marked")
    if not s.item.has("labels") or marked is False:
        return marked
    labels = s.read(s.item, "labels")
    if not isinstance(labels, tuple):
        return labels if isinstance(labels, Unknown) else False
    return "voltage" in labels and ("current" in labels or "greatest power" in labels)
