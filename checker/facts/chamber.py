"""Mains and extra-low-voltage cables in one chamber of a duct, a divided locker or a moving loop."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import BONDING, LIVE
from checker.design.item import Item
from checker.design.run import Length
from checker.facts.catalogue import fact
from checker.facts.levels import level_at
from checker.facts.mains import tell
from checker.facts.subject import Facts, Subject
from checker.quantities import Truth, Unknown, both, either, equal, less_equal, some

MAINS, ELV = "mains", "elv"
ELV_AC = 50.0
"""Alternating voltage up to which a circuit is extra-low voltage, V: IEC 61140 (from memory)."""
WORDS = (ELV, MAINS)
METHOD = "circuits that run through it, by the looms of the place and the chamber each runs in"


def bands(s: Subject) -> dict[str, str]:
    """Circuits that pass the place -> mains or elv, in file order; bonding conductors belong to neither."""
    return bands_by_place(s.facts).get(s.item.name, {})


def bands_by_place(facts: Facts) -> dict[str, dict[str, str]]:
    """Place -> circuits that pass it -> mains or elv; found once."""
    found: dict[str, dict[str, str]] | None = facts.shared.get("bands by place")
    if found is None:
        found = facts.shared["bands by place"] = _bands(facts)
    return found


def band_of(facts: Facts, name: str) -> str:
    """The voltage band of a circuit; alternating current counts as mains unless its voltage is surely lower."""
    if facts.network.systems[name] != "ac":
        return ELV
    live = facts.network.conductor(name, LIVE)
    level = None if live is None else level_at(facts, live.start)
    return ELV if level is not None and less_equal(level.nominal, ELV_AC) is True else MAINS


def _negative(facts: Facts, name: str) -> bool:
    """Whether a bonding conductor brings the negative of a battery or bar to the chassis."""
    bond = facts.network.conductor(name, BONDING)
    return bond is not None and any(end.endswith("-") for end in (bond.start, bond.end))


def _bands(facts: Facts) -> dict[str, dict[str, str]]:
    found: dict[str, dict[str, str]] = {}
    for circuit in facts.network.circuits:
        if equal(circuit.value("duty"), "bonding") is True and not _negative(facts, circuit.name):
            continue
        band = band_of(facts, circuit.name)
        for step in (*circuit.run, *circuit.returns.run):
            if isinstance(step, Length) and step.place is not None:
                found.setdefault(step.place, {})[circuit.name] = band
    return found


def unplaced(facts: Facts) -> tuple[str, ...]:
    """Circuits of which nobody knows where part of the run lies."""
    found: tuple[str, ...] | None = facts.shared.get("circuits not placed")
    if found is None:
        wires = (wire for wire in facts.network.wires() if wire.conductor.role != BONDING)
        lost = (wire.conductor.circuit.name for wire in wires if not wire.gap_measured)
        found = facts.shared["circuits not placed"] = tuple(dict.fromkeys(lost))
    return found


def bands_perhaps(facts: Facts) -> set[str]:
    """Voltage bands of the circuits that may pass any place, since nobody knows where they lie."""
    return {band_of(facts, name) for name in unplaced(facts)}


@fact("place", "bands", type="words", words=WORDS, says="Voltage bands of the circuits that pass it.",
      method="alternating current above 50 V is mains; runs of returns count as those of circuits do")  # fmt: skip
def bands_words(s: Subject) -> tuple[str, ...]:
    present = set(bands(s).values())
    return tuple(word for word in WORDS if word in present)


@fact("place", "carries_both", type="yes/no", says="Mains and extra-low-voltage circuits both pass it.")
def carries_both(s: Subject) -> Truth:
    found = set(s.bands)
    if len(found) == 2:
        return True
    perhaps = {band for band in bands_perhaps(s.facts) if band not in found}
    if len(found | perhaps) < 2:
        return False
    return Unknown(f"stretches that were not seen may pass {s.id}: {', '.join(unplaced(s.facts))}")


@fact("place", "chambered", type="yes/no", says="Cables lie close together in it: duct, moving loop, divided box.",
      method="its kind, or chambers or dividers that are told")  # fmt: skip
def chambered(s: Subject) -> Truth:
    kind = s.read(s.item, "kind")
    if s.item.has("chambers.elv") or s.item.has("chambers.mains") or s.item.has("dividers"):
        return True
    return kind if isinstance(kind, Unknown) else kind in ("duct", "flexible loop")


@fact("place", "chamber_mixed", type="yes/no", says="Mains and extra-low-voltage cables lie in one chamber of it.",
      method=METHOD)  # fmt: skip
def chamber_mixed(s: Subject) -> Truth:
    circuits = bands(s)
    if len(set(circuits.values())) < 2:
        return False
    looms = [loom for loom in s.facts.design.looms.values() if equal(s.read(loom, "place"), s.item.name) is True]
    for loom in looms:
        mixed = _loom_mixed(s, loom, circuits)
        if mixed is not False:
            return mixed
    untold = _untold(s, circuits)
    if untold is not None:
        return untold
    undivided = _undivided(s)
    # Chambers are told by the band that runs in them; the parts of a divided box only have names.
    if undivided is not False or s.item.has("chambers.elv"):
        return undivided
    return either(_part_mixed(s, looms, circuits), _all_placed(s, circuits, looms))


def _part_mixed(s: Subject, looms: list[Item], circuits: dict[str, str]) -> Truth:
    """Whether looms of both bands lie in one part of a divided place, or in one that the place does not name."""
    parts: dict[str, set[str]] = {}
    named = s.read(s.item, "dividers")
    doubt: Truth = False
    for loom in looms:
        held = _bands_in(s, loom, circuits)
        if not loom.has("divider") or not held:
            continue
        part = s.read(loom, "divider")
        if not isinstance(part, str) or (isinstance(named, tuple) and part not in named):
            doubt = Unknown(f"in which part of {s.id} the loom {loom.name} lies is not told")
            continue
        parts.setdefault(part, set()).update(held)
        if len(parts[part]) > 1:
            tell(s, f"looms of both bands lie in the part {part}")
            return True
    return doubt


def _untold(s: Subject, circuits: dict[str, str]) -> Unknown | None:
    """Why a loom may hold both bands, or lie in the wrong chamber, for all that is told."""
    for loom in s.facts.design.looms.values():
        here = equal(s.read(loom, "place"), s.item.name)
        if here is False:
            continue
        names = s.read(loom, "carries")
        if loom.has("carries") and (isinstance(names, Unknown) or any(isinstance(one, Unknown) for one in names or ())):
            return Unknown(f"which circuits the loom {loom.name} carries is not told")
        if isinstance(here, Unknown) and loom.has("place") and _loom_mixed(s, loom, circuits) is not False:
            return Unknown(f"where the loom {loom.name} lies is not told")
    for name in circuits:
        item = s.facts.design.circuits.get(name)
        if item is not None and item.has("loom") and isinstance(s.read(item, "loom"), Unknown):
            return Unknown(f"in which loom {name} runs is not told")
    return None


def _all_placed(s: Subject, circuits: dict[str, str], looms: list[Item]) -> Truth:
    """Not mixed when a loom puts every circuit in a part of its own; which part a cable takes is not guessed."""
    placed: set[str] = set()
    for loom in looms:
        if loom.has("chamber") or loom.has("divider"):
            names = s.read(loom, "carries")
            placed.update(names if isinstance(names, tuple) else ())
            placed.update(name for name in circuits if _says_loom(s, name, loom))
    lost = [name for name in circuits if name not in placed]
    return Unknown(f"in which part of {s.id} these lie is not told: {', '.join(lost)}") if lost else False


def _bands_in(s: Subject, loom: Item, circuits: dict[str, str]) -> set[str]:
    names = s.read(loom, "carries")
    named = names if isinstance(names, tuple) else ()
    return {band for name, band in circuits.items() if name in named or _says_loom(s, name, loom)}


def _loom_mixed(s: Subject, loom: Item, circuits: dict[str, str]) -> Truth:
    """Whether a loom holds both bands, or lies in the chamber of the other band."""
    found = _bands_in(s, loom, circuits)
    if len(found) > 1:
        s.note(lambda: f"loom {loom.name} carries both bands")
        return True
    chamber = s.read(loom, "chamber") if loom.has("chamber") else None
    if isinstance(chamber, Unknown):
        return Unknown(f"the chamber of the loom {loom.name} is not told")
    if chamber is None or not found or found == {chamber}:
        return False
    other = chamber in circuits.values()
    s.note(lambda: f"loom {loom.name} of {', '.join(sorted(found))} circuits lies in the chamber for {chamber}")
    return other


def shared_loom(s: Subject, circuit: str | None = None) -> Truth:
    """Whether a loom that lies in the place carries mains and extra-low voltage; with a circuit, it among them.

    A loom whose place is not told lies wherever its circuits run.
    """
    circuits = bands(s)
    found: list[Truth] = []
    for loom in s.facts.design.looms.values():
        here = equal(s.read(loom, "place"), s.item.name) if loom.has("place") else True
        if here is not False:
            found.append(both(here, _carries_both(s, loom, circuits, circuit)))
    return some(found) if found else False


def _carries_both(s: Subject, loom: Item, circuits: dict[str, str], circuit: str | None) -> Truth:
    names = s.read(loom, "carries")
    named = names if isinstance(names, tuple) else ()
    own = {name: _own_loom(s, name, loom) for name in circuits}
    sure = {name: band for name, band in circuits.items() if name in named or own[name] is True}
    if len(set(sure.values())) > 1 and (circuit is None or circuit in sure):
        s.note(lambda: f"loom {loom.name} carries both bands")
        return True
    untold = loom.has("carries") and (isinstance(names, Unknown) or any(isinstance(one, Unknown) for one in named))
    if untold or any(isinstance(one, Unknown) for one in own.values()):
        return Unknown(f"which circuits run in the loom {loom.name} is not told")
    return False


def _own_loom(s: Subject, circuit: str, loom: Item) -> Truth:
    """Whether the entry of a circuit names the loom; one that names none runs in none by its own word."""
    item = s.facts.design.circuits.get(circuit)
    return equal(s.read(item, "loom"), loom.name) if item is not None and item.has("loom") else False


def _says_loom(s: Subject, circuit: str, loom: Item) -> bool:
    item = s.facts.design.circuits.get(circuit)
    return item is not None and equal(item.value("loom"), loom.name) is True


def _undivided(s: Subject) -> Truth:
    """Whether the place has no separate parts for the two bands."""
    dividers = s.read(s.item, "dividers") if s.item.has("dividers") else None
    if isinstance(dividers, tuple) and len(dividers) >= 2:
        return False
    counts: list[Any] = [s.read(s.item, f"chambers.{band}") for band in WORDS]
    if any(isinstance(count, Unknown) for count in counts):
        return Unknown(f"whether {s.id} has a chamber for each band is not told")
    return not all(isinstance(count, float) and count >= 1 for count in counts)
