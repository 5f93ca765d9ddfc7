"""The design as papers and people: what was handed over, tested, licensed; and which places it has at all."""

from __future__ import annotations

from typing import Any

from checker.circuit.ports import IN_LINE
from checker.design.given import MISSING, Given
from checker.design.item import Item
from checker.design.model import Equipment
from checker.design.vocabulary.vehicle import CODES, COUNTRIES, PURPOSES
from checker.design.vocabulary.words import LABELS
from checker.facts.catalogue import fact
from checker.facts.space import is_kind
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, equal, every, some
from checker.quantities.values import between

MANUAL = (
    "charging", "isolating", "fuses", "lithium handling", "testing", "inspection interval", "lead use", "shut down",
    "battery space", "residual devices",
)  # fmt: skip
RISKS = ("containing", "venting", "detecting", "disconnecting")
NO_LICENCE = ("none", "none needed", "no", "-")


@fact("design", "code", words=CODES, says="The code of practice whose limits apply.")
def code(s: Subject) -> Any:
    return s.use("code", s.item.code)


@fact("design", "purpose", words=PURPOSES, says="A design, or a survey of somebody else's work.")
def purpose(s: Subject) -> Any:
    return s.use("purpose", s.item.purpose)


@fact("design", "country", words=COUNTRIES, says="Where the vehicle is registered.")
def country(s: Subject) -> Any:
    return s.read(s.item.vehicle, "registered")


@fact(
    "design",
    "kind_of_vehicle",
    words=("motorhome", "campervan", "caravan", "trailer", "boat", "unit"),
    says="What the vehicle is.",
)
def kind_of_vehicle(s: Subject) -> Any:
    return s.read(s.item.vehicle, "kind")


@fact("design", "hull", words=("sailing monohull", "other"), says="Of a boat: whether it sails heeled on one hull.")
def hull(s: Subject) -> Any:
    return s.read(s.item.vehicle, "hull")


@fact("design", "ambient_low", unit="°C", says="Coldest air it is used in.")
def ambient_low(s: Subject) -> Any:
    return s.read(s.item.vehicle, "ambient.low")


@fact("design", "ambient_high", unit="°C", says="Hottest air it is used in.")
def ambient_high(s: Subject) -> Any:
    return s.read(s.item.vehicle, "ambient.high")


# --- which parts it has


def _places(s: Subject, *kinds: str) -> Any:
    """Places of these kinds; one whose kind is not told counts, since it may be."""
    return tuple(one for one in s.facts.subjects("place") if is_kind(s, one.item, *kinds) is not False)


@fact("design", "gas_lockers", of="place", type="list", says="Places that are, or may be, lockers of gas cylinders.")
def gas_lockers(s: Subject) -> Any:
    return _places(s, "gas locker")


@fact("design", "fuel_places", of="place", type="list", says="Places that are, or may be, fuel tanks or fittings.")
def fuel_places(s: Subject) -> Any:
    return _places(s, "fuel")


@fact("design", "moving_parts", of="moving", type="list", says="Slide-outs and other parts that move.")
def moving_parts(s: Subject) -> Any:
    return s.facts.subjects("moving")


@fact("design", "has_mains", type="yes/no", says="Some circuit carries mains voltage.", method="graph")
def has_mains(s: Subject) -> bool:
    return "ac" in s.facts.network.systems.values()


@fact("design", "has_inlet", type="yes/no", says="A shore inlet is aboard.")
def has_inlet(s: Subject) -> bool:
    return bool(s.facts.subjects("inlet"))


@fact("design", "has_outlets", type="yes/no", says="A socket outlet is aboard.",
      method="equipment of that kind; a survey may have missed one")  # fmt: skip
def has_outlets(s: Subject) -> Truth:
    if s.facts.subjects("outlet"):
        return True
    surveyed = equal(s.item.purpose.value, "survey")
    return Unknown("whether there is an outlet was perhaps not seen") if surveyed is not False else False


@fact("design", "has_lithium", type="yes/no", says="A lithium battery is aboard.")
def has_lithium(s: Subject) -> Truth:
    return some(one.is_lithium for one in s.facts.subjects("equipment") if one.item.kind in ("battery", "bank"))


@fact("design", "carries_gas", type="yes/no", says="Gas is aboard.",
      method="a gas locker, a line of gas, or equipment that belongs to the gas system")  # fmt: skip
def carries_gas(s: Subject) -> Truth:
    lines = [equal(s.read(line, "carries"), "gas") for line in s.item.services.values()]
    return some([bool(s.gas_lockers), *lines, *(one.serves_gas for one in s.facts.subjects("equipment"))])


@fact("design", "carries_fuel", type="yes/no", says="Liquid fuel is aboard.",
      method="a vehicle with an engine of its own, a place or a line of fuel, or a generator")  # fmt: skip
def carries_fuel(s: Subject) -> Truth:
    kind = s.kind_of_vehicle
    driven = kind if isinstance(kind, Unknown) else kind in ("motorhome", "campervan", "boat")
    lines = [s.read(line, "carries") for line in s.item.services.values()]
    fuels = [one if isinstance(one, Unknown) else one in ("diesel", "petrol") for one in lines]
    generators = any(item.kind == "generator" for item in s.item.equipment.values())
    return some([driven, bool(s.fuel_places), generators, *fuels])


@fact("design", "mains_cover_opens_by_hand", type="yes/no", says="The cover of a mains board is said to open by hand.",
      method="boards on mains that tell what opens them; silence is left to the look at the covers")  # fmt: skip
def mains_cover_opens_by_hand(s: Subject) -> Truth:
    boards = [one for one in s.facts.subjects("equipment") if one.item.kind == "board" and one.item.has("opens with")]
    return some(both(equal(one.system, "ac"), equal(s.read(one.item, "opens with"), "hand")) for one in boards)


@fact("design", "has_flooded", type="yes/no", says="A house battery with liquid acid is aboard.")
def has_flooded(s: Subject) -> Truth:
    batteries = [one for one in s.facts.subjects("equipment") if one.item.kind in ("battery", "bank")]
    return some(one.is_flooded for one in batteries if equal(one.item.value("purpose"), "starting") is not True)


@fact("design", "has_house_battery", type="yes/no", says="A battery that is not for starting is aboard.")
def has_house_battery(s: Subject) -> bool:
    found = [one.item for one in s.facts.subjects("equipment") if one.item.kind in ("battery", "bank")]
    return any(equal(item.value("purpose"), "starting") is not True for item in found)


@fact("design", "battery_put_in", type="yes/no",
      says="A battery is aboard that is not for starting, or that did not come with the vehicle.")  # fmt: skip
def battery_put_in(s: Subject) -> bool:
    found = [one.item for one in s.facts.subjects("equipment") if one.item.kind in ("battery", "bank")]
    return s.has_house_battery is True or any(equal(s.read(item, "own"), "factory") is not True for item in found)


@fact("design", "keeps_old_wiring", type="yes/no", says="Wiring of the factory or of an earlier owner is kept in use.",
      method="circuits that are not the fitter's own work, and what the scope says is kept")  # fmt: skip
def keeps_old_wiring(s: Subject) -> Truth:
    kept = s.item.scope.value("kept")
    if isinstance(kept, tuple) and kept:
        return True
    owners = [s.read(circuit, "own") for circuit in s.item.circuits.values()]
    return some(own if isinstance(own, Unknown) else own != "fitter" for own in owners)


# --- papers


def paper(s: Subject, key: str) -> Any:
    """A key of the papers."""
    return s.read(s.item.papers, key)


def _held(value: Any) -> Truth:
    """A document that is named is held; `none` is decided, silence is not."""
    return value if isinstance(value, Unknown) else value is not None and value is not False


@fact("design", "diagram_held", type="yes/no", says="A wiring diagram goes with the vehicle.")
def diagram_held(s: Subject) -> Truth:
    return _held(paper(s, "diagram"))


@fact("design", "certificate_held", type="yes/no", says="An electrical certificate with a number was given.")
def certificate_held(s: Subject) -> Truth:
    if paper(s, "certificate") is None:
        return False
    return _held(paper(s, "certificate.electrical"))


@fact("design", "manual", words=MANUAL, type="words", says="What the user book tells.")
def manual(s: Subject) -> Any:
    return paper(s, "manual")


@fact("design", "risk_assessed", type="yes/no", says="A risk assessment of the battery place is named.")
def risk_assessed(s: Subject) -> Truth:
    return _held(paper(s, "risk assessment"))


@fact("design", "risk_told", words=RISKS, type="words", says="What the risk assessment says of a failing cell.")
def risk_told(s: Subject) -> Any:
    return paper(s, "risk assessment tells")


@fact("design", "inspection_stated", type="yes/no", says="The date of the next inspection is stated.")
def inspection_stated(s: Subject) -> Truth:
    return _held(paper(s, "next inspection"))


@fact("design", "years_to_inspection", unit="year", says="Time from the date of the design to the next inspection.",
      method="years and months of the two dates")  # fmt: skip
def years_to_inspection(s: Subject) -> Any:
    due, made = paper(s, "next inspection"), s.use("date", s.item.date)
    if due is None:
        return None
    first, last = months(made), months(due)
    if first is None or last is None:
        return Unknown("the date of the design or of the next inspection is not told")
    return between((last[0] - first[1]) / 12.0 * YEAR_S, (last[1] - first[0]) / 12.0 * YEAR_S)


YEAR_S = 31_557_600.0  # the Julian year of 365.25 days, as the unit `year` is counted


def months(date: Any) -> tuple[int, int] | None:
    """A date as the months since year 0 it may lie in: the whole year where no month is given."""
    if not isinstance(date, str):
        return None
    ends = [[int(part) for part in end.split("-")] for end in (date.split("..")[0], date.split("..")[-1])]
    first, last = ends[0], ends[1]
    return first[0] * 12 + (first[1] if len(first) > 1 else 1), last[0] * 12 + (last[1] if len(last) > 1 else 12)


@fact("design", "editions_stated", type="yes/no", says="The editions of the standards applied are listed.")
def editions_stated(s: Subject) -> Truth:
    return _held(paper(s, "editions"))


@fact("design", "build_date_known", type="yes/no", says="The date the vehicle was built is told.")
def build_date_known(s: Subject) -> Truth:
    return _held(s.read(s.item.vehicle, "built"))


# --- labels


@fact("design", "label_material", words=("engraved", "stamped", "printed", "handwritten"), says="How labels are made.")
def label_material(s: Subject) -> Any:
    return s.read(s.item.labels, "material")


@fact("design", "label_language_told", type="yes/no", says="The language of the labels is told.")
def label_language_told(s: Subject) -> Truth:
    return _held(s.read(s.item.labels, "language"))


@fact("design", "signal_words", type="yes/no", says="Labels use the standard signal words and symbols.")
def signal_words(s: Subject) -> Any:
    return s.read(s.item.labels, "signal words")


@fact("design", "main_switch_labels", words=LABELS, type="words", says="What the label at the main switch says.")
def main_switch_labels(s: Subject) -> Any:
    return s.read(s.item.labels, "main switch")


MARKED_KINDS = ("fuse", "breaker", "rcbo", "rcd")


@fact("design", "devices_marked", type="yes/no",
      says="Every fuse, breaker and residual-current device of the fitter is marked with its circuit.",
      method="each device: marked, or a label that names circuit, function or rating")  # fmt: skip
def devices_marked(s: Subject) -> Truth:
    missing = []
    for one in s.facts.subjects("equipment"):
        if one.item.kind not in MARKED_KINDS or one.item.kind not in IN_LINE or _factory(s, one.item):
            continue
        answer = _marked(s, one.item)
        if answer is False:
            return False
        if isinstance(answer, Unknown):
            missing.append(one.id)
    return Unknown(f"whether these are marked is not told: {', '.join(missing)}") if missing else True


def _factory(s: Subject, item: Equipment) -> bool:
    """Whether the vehicle maker put it in: as it says, else as the circuit says in whose run it is written."""
    circuit = s.item.circuits.get(item.inline_of) if item.inline_of is not None else None
    told = circuit if circuit is not None and not item.has("own") else item
    return equal(s.read(told, "own"), "factory") is True


def _marked(s: Subject, item: Item) -> Truth:
    labels = s.read(item, "labels")
    if isinstance(labels, tuple) and any(word in labels for word in ("circuit", "function", "rating")):
        return True
    stated = s.read(item, "marked")
    return False if stated is None else stated


# --- people


@fact("design", "mains_licence_held", type="yes/no", says="Who does the mains work is named with a licence.")
def mains_licence_held(s: Subject) -> Truth:
    person = s.item.people.get("mains work")
    if person is None:
        return Unknown("who does the mains work is not told")
    licence = s.read(person, "licence")
    if isinstance(licence, Unknown):
        return Unknown("the licence for the mains work is not told")
    return licence is not None and licence.strip().lower() not in NO_LICENCE


@fact("design", "essential_told", type="yes/no", says="The loads that people depend on are listed or marked.")
def essential_told(s: Subject) -> Truth:
    listed = s.use("essential", s.item.essential)
    marked = [item for item in s.item.equipment.values() if item.allows("essential") and item.has("essential")]
    if isinstance(listed, tuple) or marked:
        return True
    return Unknown("no load is listed or marked as one that people depend on, nor is the list said to be empty")


OPEN_TO_SEE = ("living space", "outside", "under body", "engine space", "gas locker")


@fact("design", "opened_all", type="yes/no", says="Nothing was left unopened in a survey.",
      method="`not opened` is none, or every place that has a cover is among `covers off`")  # fmt: skip
def opened_all(s: Subject) -> Truth:
    closed = s.item.seen.value("not opened")
    if isinstance(closed, tuple) and closed:
        return _not_opened(s, f"not opened: {', '.join(closed)}")
    if not isinstance(s.read(s.item.seen, "not opened"), Unknown):
        return True
    off = s.read(s.item.seen, "covers off") if not s.item.seen.has("not opened") else closed
    if isinstance(off, Unknown):
        return Unknown("what was not opened is not told")
    hidden = [name for name, one in s.item.places.items() if is_kind(s, one, *OPEN_TO_SEE) is not True]
    left = [name for name in hidden if name not in (off or ())]
    return _not_opened(s, f"nobody wrote that these were opened: {', '.join(left)}") if left else True


def _not_opened(s: Subject, reason: str) -> Unknown:
    """What is still closed, as the entry that settles it once it was opened."""
    closed = Unknown(reason)
    s.use("seen.not opened", Given(closed, s.item.seen.where, MISSING))
    return closed


@fact("design", "battery_reserved", type="yes/no", says="A place is kept for a battery that is not fitted yet.")
def battery_reserved(s: Subject) -> bool:
    batteries = (item for item in s.facts.whole.equipment.values() if item.kind in ("battery", "bank"))
    return any(equal(s.read(item, "fitted"), "later") is True for item in batteries)


@fact("design", "reserved_place_labelled", type="yes/no",
      says="A label at each place kept for a battery says so, and for which type.",
      method="`battery space reserved` and `type` among the labels of each battery that is fitted later")  # fmt: skip
def reserved_place_labelled(s: Subject) -> Truth:
    batteries = (item for item in s.facts.whole.equipment.values() if item.kind in ("battery", "bank"))
    later = [item for item in batteries if equal(s.read(item, "fitted"), "later") is True]
    return every(_says_reserved(s.read(item, "labels")) for item in later)


def _says_reserved(labels: Any) -> Truth:
    return labels if isinstance(labels, Unknown) else {"battery space reserved", "type"} <= set(labels or ())


def _unlisted(s: Subject) -> Unknown | None:
    """Banks of which nobody knows where their batteries are joined: their terminals cannot be listed."""
    names = [bank.id for bank in s.facts.subjects("bank") if _joint_unknown(bank.item)]
    return Unknown(f"how the batteries of {', '.join(names)} are joined is not known") if names else None


def _joint_unknown(item: Item) -> bool:
    if item.kind != "bank":
        return False
    if getattr(item, "base", None) is None:
        return True  # without knowing its batteries nobody knows their terminals
    return item.has("joined by") and isinstance(item.value("joined by"), Unknown)


@fact("design", "torque_recorded", type="yes/no", says="The torque of every described high-current stud is kept.",
      method="each described terminal with a torque against the ends made on it")  # fmt: skip
def torque_recorded(s: Subject) -> Truth:
    asked = [one for one in s.facts.subjects("terminal") if one.high_energy and one.described]
    if any(one.torqued is None for one in asked):
        return False
    missing = [one for one in asked if not one.torque_told]
    banks = _unlisted(s)
    if not missing:
        return True if banks is None else banks
    reason = Unknown(f"no torque is recorded for: {', '.join(one.id for one in missing)}")
    for one in missing:
        s.use(f"torqued at {one.id}", Given(reason, one.where, MISSING), "N m")
    return reason
