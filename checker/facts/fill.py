"""How full a duct or the guide of a moving loop is, and whether cables can climb over each other in it."""

from __future__ import annotations

from math import inf
from typing import Any

from checker.design.item import Item
from checker.design.model import Circuit
from checker.design.run import Length
from checker.facts.catalogue import fact
from checker.facts.chamber import ELV, MAINS, WORDS, band_of, unplaced
from checker.facts.space import lower, upper
from checker.facts.subject import Subject
from checker.physics.duct import fill, round_area, width_beside
from checker.quantities import (
    Number,
    Range,
    Truth,
    Unknown,
    add,
    between,
    both,
    corners,
    divide,
    equal,
    every,
    greater_equal,
    greatest,
    less_equal,
    multiply,
    negate,
    show,
    some,
    total,
)

PLAY = 0.1
"""Room of a tenth of its diameter around each cable that moves in a guide: common practice, no source."""


@fact("place", "inner_told", type="yes/no", says="The clear width and height of the duct are told, or its bore.")
def inner_told(s: Subject) -> Truth:
    item: Item = s.item
    return item.has("inner.diameter") or (item.has("inner.width") and item.has("inner.height"))


@fact("place", "clear_opening", unit="mm2", says="Clear opening of the duct, of one chamber when it has several.",
      method="width times height, or the circle of its diameter")  # fmt: skip
def clear_opening(s: Subject) -> Any:
    return opening(s, s.item)


def opening(s: Subject, place: Item) -> Number:
    """Clear opening of a duct or guide, m2."""
    if place.has("inner.diameter"):
        return corners(round_area, s.read(place, "inner.diameter"))
    return multiply(s.read(place, "inner.width"), s.read(place, "inner.height"))


@fact(
    "place",
    "fill",
    unit="%",
    says="Share of the clear opening of the duct that its cables fill, in its fullest chamber.",
    method="sum of the areas of the cables by their outer diameters over the opening; a second single core lies beside "
    "the first; earth and bonding counted; cables of unknown way may lie in it as well",
    source="geometry of round cables",
)
def fill_of(s: Subject) -> Any:
    shares = [_share(s, chamber) for chamber in _chambers(s)]
    found = greatest(shares)
    lost = unplaced(s.facts)
    if not lost or isinstance(found, Unknown):
        return found
    s.note(lambda: f"stretches that were not seen may pass {s.id}: {', '.join(lost)}")
    return between(found.low if isinstance(found, Range) else float(found or 0.0), inf)


def _chambers(s: Subject) -> list[tuple[str, list[Circuit], Number]]:
    """What lies in each chamber: its name, the circuits, and how many like chambers share them."""
    here = [one for one in s.facts.design.circuits.values() if stretches(one, s.item.name)]
    counts = [s.read(s.item, f"chambers.{band}") for band in WORDS]
    parted = all(isinstance(one, Unknown) or (one is not None and upper(one) >= 1.0) for one in counts)
    if not parted or not any(s.item.has(f"chambers.{band}") for band in WORDS):
        return [("", here, 1.0)]
    mains = [one for one in here if band_of(s.facts, one.name) == MAINS]
    rest = [one for one in here if one not in mains]
    return [(ELV, rest, counts[WORDS.index(ELV)]), (MAINS, mains, counts[WORDS.index(MAINS)])]


def stretches(circuit: Circuit, place: str) -> bool:
    """Whether part of a run, or of the way back, lies in a place."""
    return any(isinstance(step, Length) and step.place == place for step in (*circuit.run, *circuit.returns.run))


def _share(s: Subject, chamber: tuple[str, list[Circuit], Number]) -> Number:
    """Share of one chamber; of several alike the fullest holds a fair share at least, and all at most."""
    name, circuits, count = chamber
    area = opening(s, s.item)
    known: Number = 0.0
    open_ended = any(_earth_beside(circuit, s.item.name) for circuit in circuits)
    for circuit, pieces in cables_of(s, circuits, s.item.name):
        diameter = outer_of(s, circuit)
        share = multiply(pieces, corners(lambda d, a: fill([d], a), diameter, area))
        s.note(_said(circuit.name, pieces, diameter, share))
        if isinstance(share, Unknown):
            open_ended = True
        else:
            known = add(known, share)
    if isinstance(area, Unknown):
        return area
    s.note(lambda: f"{name or 'in all'}: {show(known, '%')}")
    one_alone = isinstance(count, float) and count <= 1.0
    if one_alone and not open_ended:
        return known
    least = known if one_alone else divide(known, Range(1.0, inf) if isinstance(count, Unknown) else count)
    low = least.low if isinstance(least, Range) else least if isinstance(least, float) else 0.0
    return between(low, inf if open_ended else upper(known))


def _earth_beside(circuit: Circuit, place: str) -> bool:
    """Whether an earth conductor of unknown thickness lies beside the cable in a place."""
    if circuit.earth.how == "same":
        return any(isinstance(step, Length) and step.place == place for step in circuit.run)
    return any(isinstance(step, Length) and step.place == place for step in circuit.earth.run)


def _said(name: str, pieces: Number, diameter: Number, share: Number) -> Any:
    return lambda: f"{name}: {show(pieces, 'count')} × {show(diameter, 'mm')} fill {show(share, '%')}"


def cables_of(s: Subject, circuits: list[Circuit], place: str) -> list[tuple[Circuit, Number]]:
    """One circuit for each cable that lies in a place, and how many like it; a shared cable counts once."""
    found: list[tuple[Circuit, Number]] = []
    shared: set[str] = set()
    for circuit in circuits:
        loom = _shared_cable(s, circuit)
        if loom is not None:
            if loom in shared:
                continue
            shared.add(loom)
        ahead = any(isinstance(step, Length) and step.place == place for step in circuit.run)
        back = any(isinstance(step, Length) and step.place == place for step in circuit.returns.run)
        how = circuit.returns.how
        with_return: Number = 2.0 if how == "same" else Range(1.0, 2.0) if how == "unknown" else 1.0
        beside = add(multiply(1.0 if ahead else 0.0, with_return), 1.0 if back else 0.0)
        found.append((circuit, multiply(beside, s.read(circuit, "in parallel"))))
    return found


def _shared_cable(s: Subject, circuit: Circuit) -> str | None:
    """The loom that is one multi-core cable to which a circuit belongs."""
    for loom in s.facts.design.looms.values():
        if not loom.has("cable"):
            continue
        names = s.read(loom, "carries")
        if circuit.says("loom", loom.name) or (isinstance(names, tuple) and circuit.name in names):
            return loom.name
    return None


def outer_of(s: Subject, circuit: Circuit) -> Number:
    """Outer diameter of the cable of a circuit, m."""
    if circuit.cable is None:
        return Unknown(f"the cable of {circuit.name} is not known")
    outer = s.read(circuit.cable, "outer")
    return Unknown(f"the outer diameter of {circuit.cable.name} is not told") if isinstance(outer, Unknown) else outer


# --- the guide of a moving loop


def _cables(s: Subject) -> list[tuple[Number, Number]]:
    """Outer diameter of each cable that passes the loop, and how many like it."""
    here = [one for one in s.facts.design.circuits.values() if stretches(one, s.item.name)]
    return [(outer_of(s, circuit), pieces) for circuit, pieces in cables_of(s, here, s.item.name)]


@fact(
    "loop",
    "width_needed",
    unit="mm",
    says="Clear width that its cables need in the guide to lie beside each other.",
    method="sum of the outer diameters, each with a tenth more to move; cables of unknown way may pass it as well",
    source="common practice, no source",
)
def width_needed(s: Subject) -> Any:
    found = total([multiply(pieces, corners(lambda d: width_beside([d], PLAY), outer)) for outer, pieces in _cables(s)])
    if not unplaced(s.facts) or isinstance(found, Unknown):
        return found
    return between(lower(found), inf)


@fact("loop", "clear_width", unit="mm", says="Clear width of its guide for its cables, all chambers together.",
      method="width of one chamber times the chambers told; the bore of a tube")  # fmt: skip
def clear_width(s: Subject) -> Any:
    if s.item.has("inner.diameter"):
        return s.read(s.item, "inner.diameter")
    count: Number = 0.0
    for band in WORDS:
        told = s.read(s.item, f"chambers.{band}") if s.item.has(f"chambers.{band}") else None
        count = count if told is None else add(count, told)
    chambers = count if isinstance(count, Unknown) or equal(count, 0.0) is False else 1.0
    return multiply(s.read(s.item, "inner.width"), chambers)


@fact(
    "loop",
    "cables_can_climb",
    type="yes/no",
    says="In its guide one cable can lie over another, where they saw through each other.",
    method="no separators, more than one cable in a chamber, and a clear height of two of the thinnest or more",
    source="common practice, no source",
)
def cables_can_climb(s: Subject) -> Truth:
    cables = _cables(s)
    count = total([pieces for _, pieces in cables])
    separators = s.read(s.item, "separators")
    kept = False if separators is None else separators
    height = s.read(s.item, "inner.diameter" if s.item.has("inner.diameter") else "inner.height")
    low = some(less_equal(multiply(2.0, outer), height) for outer, _ in cables)
    answer = every([greater_equal(count, 2.0), low, negate(_one_in_each_chamber(s, count))])
    lost = unplaced(s.facts)
    if answer is False and lost:
        answer = Unknown(f"stretches that were not seen may pass {s.id}: {', '.join(lost)}")
    return answer if kept is False else False if kept is True else both(answer, kept)


def _one_in_each_chamber(s: Subject, cables: Number) -> Truth:
    """Whether there are as many chambers as cables; a band whose chambers are left out has none."""
    counts = [s.read(s.item, key) if s.item.has(key) else None for key in (f"chambers.{band}" for band in WORDS)]
    return False if any(one is None for one in counts) else greater_equal(total(counts), cables)


__all__ = ["cables_of", "opening", "outer_of", "stretches"]
