"""Equipment of which one property decides about shock: galvanic isolators, plug connections, traction outlets."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.supply import is_live, joined
from checker.design.given import RatedVoltage
from checker.design.vocabulary.words import ISOLATION
from checker.facts.catalogue import fact
from checker.facts.equipment import told
from checker.facts.subject import Subject
from checker.facts.unseen import may_be_hidden
from checker.quantities import Unknown, between, divide, either, equal, multiply, negate


@fact("equipment", "fails_to", words=("open", "short"), says="What a protective device becomes at the end of its life.")
def fails_to(s: Subject) -> Any:
    return told(s, "fails to")


@fact("equipment", "carries_fault", unit="A", says="Earth-fault current that it carries until a device opens.")
def carries_fault(s: Subject) -> Any:
    return told(s, "fault current")


@fact(
    "equipment",
    "site_earth_fault",
    unit="A",
    says="Greatest earth-fault current that a site can drive through it.",
    method="mains voltage over the impedance of the earth-fault loop at the site, else its greatest short-circuit "
    "current; where that is not told, that of a usual site or more",
    source="Ohm's law",
)
def site_earth_fault(s: Subject) -> Any:
    vehicle = s.facts.design.vehicle
    if vehicle.has("supply.loop impedance"):
        return divide(s.read(vehicle, "supply.voltage"), s.read(vehicle, "supply.loop impedance"))
    current = s.read(vehicle, "supply.fault current")
    told = vehicle.has("supply.fault current") or isinstance(current, Unknown)
    return current if told else between(current, float("inf"))  # a usual site; some other may give more


@fact(
    "equipment",
    "line_current",
    unit="A",
    says="Greatest lasting current of the run it stands in; none for what stands in none.",
    method="conductor.design_current",
)
def line_current(s: Subject) -> Any:
    for link in s.facts.network.links:
        run = s.facts.network.by_link.get(id(link)) if link.equipment is s.item else None
        conductor = s.facts.of("conductor", run) if run is not None else None
        if conductor is not None:
            return conductor.design_current
    return may_be_hidden(s.facts, s.id)


@fact("equipment", "rated_current", unit="A", says="Its rated current.")
def rated_current(s: Subject) -> Any:
    return told(s, "rating")


@fact(
    "equipment",
    "live_half_covered",
    type="yes/no",
    says="On a plug connection each half that can stay live is the socket, or its contacts cannot be touched.",
    method="its live side and its contacts; the graph without it: where both halves reach a source only contacts that "
    "cannot be touched serve; the plug to a towing vehicle by what keeps it live when parted; none for other equipment",
)
def live_half_covered(s: Subject) -> Any:
    if s.item.kind == "vehicle coupling":
        return either(negate(s.plug_stays_live), told(s, "recessed contacts"))
    if s.item.kind != "connector":
        return None
    if _both_halves_live(s):
        s.note(lambda: f"without {s.id} each of its halves still reaches a source")
        return told(s, "recessed contacts")
    return either(equal(told(s, "live side"), "socket"), told(s, "recessed contacts"))


def _both_halves_live(s: Subject) -> bool:
    """Whether, parted, a source is left on either side of a plug connection."""
    network = s.facts.network
    lives = {source.live for source in network.sources}

    def parted(edge: Edge) -> bool:
        return not (isinstance(edge, Link) and edge.equipment is s.item)

    links = [one for one in network.links if one.equipment is s.item and is_live(one)]
    return any(all(not lives.isdisjoint(joined(network, [node], parted)) for node in (one.a, one.b)) for one in links)


@fact("equipment", "boxed_in", words=("insulating", "metal"), says="The box around a joint; none when it is bare.")
def boxed_in(s: Subject) -> Any:
    return told(s, "enclosure")


@fact("equipment", "maker_permits", type="yes/no", says="The maker of the vehicle permits its use.")
def maker_permits(s: Subject) -> Any:
    return told(s, "maker permits")


@fact("equipment", "isolation_monitored", type="yes/no", says="The vehicle watches its isolation all along.")
def isolation_monitored(s: Subject) -> Any:
    return told(s, "isolation monitored")


@fact("equipment", "isolation_of_sides", words=ISOLATION, says="Isolation between its sides; none when joined.")
def isolation_of_sides(s: Subject) -> Any:
    return told(s, "isolation")


OHMS_PER_VOLT = {"dc": 100.0, "ac": 500.0}
"""Isolation of a traction side from the body: UN Regulation 100, 03 series, from memory."""


@fact("equipment", "isolation_resistance", unit="Ω", says="Resistance of the traction side to the body, with all that "
      "was added connected; none for what is no traction outlet.")  # fmt: skip
def isolation_resistance(s: Subject) -> Any:
    return s.read(s.item, "isolation resistance") if s.item.kind == "traction outlet" else None


@fact(
    "equipment",
    "isolation_needed",
    unit="Ω",
    says="Resistance that the isolation of the traction side must keep; none for what is no traction outlet.",
    method="100 Ω for each volt of direct, 500 Ω for each volt of alternating voltage",
    source="UN Regulation 100, electric power train safety, 03 series (from memory)",
)
def isolation_needed(s: Subject) -> Any:
    if s.item.kind != "traction outlet":
        return None
    rated = s.read(s.item, "traction voltage")
    if not isinstance(rated, RatedVoltage):
        return rated
    if rated.system is None:
        return Unknown(f"whether the traction side of {s.id} is direct or alternating is not told")
    return multiply(OHMS_PER_VOLT[rated.system], rated.volts)
