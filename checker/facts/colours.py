"""Colours of cores: which a conductor has, and which others could be taken for it."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import BONDING, EARTH, LIVE, RETURN, Conductor
from checker.design.item import Item
from checker.design.vocabulary.cables import COLOURS
from checker.facts.catalogue import fact
from checker.facts.conductor_given import cable_value
from checker.facts.subject import Facts, Subject
from checker.quantities import Truth, Unknown, equal

CORE = {LIVE: 0, RETURN: 1}
"""Place of a core among the colours of its cable: live first, then the return; the earth is the last."""


def _cores(cable: Item) -> float:
    cores = cable.value("cores")
    return cores if isinstance(cores, float) else 0.0


def _colour(facts: Facts, conductor: Conductor) -> Any:
    """The colour of a conductor as told of its cable, or None where the file says nothing."""
    cable = conductor.circuit.cable
    if cable is None or (conductor.role == EARTH and conductor.circuit.earth.how == "run" and _cores(cable) < 3):
        return None  # an earth with a run of its own is no core of a cable of two
    if cable.has("colour"):
        # A return laid `same` is a like cable beside the live one: its colour is not told. A negative with a circuit
        # of its own is of that reel.
        beside = conductor.role == RETURN and facts.network.conductor(conductor.circuit.name, LIVE) is not None
        return None if beside else cable.value("colour")
    cores = cable.value("core colours") if cable.has("core colours") else None
    if not isinstance(cores, tuple):
        return cores
    at = len(cores) - 1 if conductor.role == EARTH else CORE.get(conductor.role)
    return cores[at] if at is not None and at < len(cores) else None


@fact("conductor", "core_colour", words=COLOURS, says="Colour of its core; none where the file names none.",
      method="the single core, or its place among the cores: live, return, earth last")  # fmt: skip
def core_colour(s: Subject) -> Any:
    found = _colour(s.facts, s.item)
    if found is not None:
        cable_value(s, "colour" if s.item.circuit.cable.has("colour") else "core colours")  # for the working
    return found


@fact(
    "design",
    "colours_settled",
    type="yes/no",
    says="Every conductor of the fitter tells its colour, and each pole of each voltage of the battery side keeps to "
    "one.",
    method="colours of cores as told, unless they were looked at and found wrong; circuits of the factory left out",
)
def colours_settled(s: Subject) -> Truth:
    wrong = s.read(s.item.papers, "found wrong")
    if isinstance(wrong, tuple) and "colours" in wrong:
        return False
    for conductor in s.facts.network.conductors:
        subject = s.facts.of("conductor", conductor)
        if equal(conductor.circuit.value("own"), "factory") is True:
            continue
        if conductor.role == BONDING and subject is not None and not subject.is_protective_earth:
            continue
        colour = None if subject is None else subject.core_colour
        if subject is None or not isinstance(colour, str):
            return colour if isinstance(colour, Unknown) else False
    return not s.colours_at_odds


@fact(
    "design",
    "colours_at_odds",
    type="yes/no",
    says="Two colours are told for one pole of one voltage of the battery side.",
    method="colours of cores as told; circuits of the factory left out",
)
def colours_at_odds(s: Subject) -> bool:
    return any(len(colours) > 1 for colours in _pole_colours(s).values())


def _pole_colours(s: Subject) -> dict[tuple[str, Any], set[str]]:
    """The colours told of each pole of each voltage of the battery side."""
    network = s.facts.network
    found: dict[tuple[str, Any], set[str]] = {}
    for conductor in network.conductors:
        if conductor.role not in (LIVE, RETURN) or network.systems[conductor.circuit.name] != "dc":
            continue
        subject = s.facts.of("conductor", conductor)
        if subject is None or equal(conductor.circuit.value("own"), "factory") is True:
            continue
        colour, volts = subject.core_colour, subject.voltage
        if isinstance(colour, str):
            found.setdefault((conductor.role, volts if isinstance(volts, float) else None), set()).add(colour)
    return found


@fact("conductor", "is_protective_earth", type="yes/no",
      says="It is the earth of a circuit, or bonds metal to an earth bar, an earth pole or the case of equipment.",
      method="its role, and the poles at its ends")  # fmt: skip
def is_protective_earth(s: Subject) -> bool:
    if s.item.role == EARTH:
        return True
    ends = (s.item.start, s.item.end)
    return bool(s.bonds_metal) and any(end.rpartition(":")[2] in ("PE", "case", "earth") for end in ends)


@fact("conductor", "role", words=("live", "return", "earth", "bonding"), says="What it is in its circuit.",
      method="graph")  # fmt: skip
def role(s: Subject) -> Any:
    return s.item.role


@fact(
    "conductor",
    "taken_for",
    of="conductor",
    type="list",
    says="Conductors of the other pole of the same system that have its colour.",
    method="the colours told, live against return, battery side and mains apart",
)
def taken_for(s: Subject) -> Any:
    colour = _colour(s.facts, s.item)
    if isinstance(colour, Unknown):
        return colour
    other = {LIVE: RETURN, RETURN: LIVE}.get(s.item.role)
    system = s.facts.network.systems[s.item.circuit.name]
    found = _by_colour(s.facts).get((system, other, colour), ()) if colour is not None else ()
    subjects = (s.facts.of("conductor", one) for one in found)
    return tuple(one for one in subjects if one is not None)


def _by_colour(facts: Facts) -> dict[tuple[str, str | None, str], list[Conductor]]:
    """The conductors of each system, role and colour; found once."""
    found: dict[tuple[str, str | None, str], list[Conductor]] | None = facts.shared.get("conductors by colour")
    if found is None:
        found = facts.shared["conductors by colour"] = {}
        for conductor in facts.network.conductors:
            colour = _colour(facts, conductor)
            if isinstance(colour, str):
                key = (facts.network.systems[conductor.circuit.name], conductor.role, colour)
                found.setdefault(key, []).append(conductor)
    return found
