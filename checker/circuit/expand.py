"""A bank written short becomes the batteries, leads and fuses it stands for, so that both forms give one graph."""

from __future__ import annotations

from checker.design.given import Given
from checker.design.model import Circuit, Design, Equipment
from checker.design.run import Gap, Length, Path, Port, Step, Through
from checker.design.vocabulary import kind
from checker.design.vocabulary.key import Kind
from checker.quantities import Range, Unknown


class Expansion:
    """The equipment and circuits a design stands for: its own, then those of its banks.

    `units` maps the name of a bank to the names of its strings (each string of units in series is one battery here).
    """

    __slots__ = ("circuits", "design", "equipment", "units")

    def __init__(self, design: Design) -> None:
        self.design = design
        self.equipment: dict[str, Equipment] = dict(design.equipment)
        self.circuits: list[Circuit] = list(design.circuits.values())
        self.units: dict[str, tuple[str, ...]] = {}


def expand(design: Design) -> Expansion:
    """All equipment and circuits with every bank that is joined by a bar written out."""
    found = Expansion(design)
    for item in design.equipment.values():
        if item.kind == "bank":
            bar = item.value("joined by")
            if isinstance(bar, str) and bar in design.equipment:
                _bank(found, item, bar)
    return found


def _bank(found: Expansion, bank: Equipment, bar: str) -> None:
    strings = _strings(bank)
    lengths = bank.get("unit leads.length")
    names = []
    for number in range(strings):
        name = f"{bank.name}.unit-{number + 1}"
        names.append(name)
        base = bank.base if bank.base is not None else bank
        given = dict(base.written())
        given["place"] = bank.get("place")
        found.equipment[name] = Equipment(
            name, base.vocabulary, bank.where, bank.path, given, terminals=base.terminals, base=bank
        )
        found.circuits.append(_lead(found, bank, bar, name, _one_of(lengths, number), number + 1))
    found.units[bank.name] = tuple(names)


def _strings(bank: Equipment) -> int:
    arrangement = bank.value("arrangement")
    if isinstance(arrangement, tuple):
        return int(arrangement[1])
    units = bank.value("units")
    return int(units) if isinstance(units, float) else 1


def _one_of(lengths: Given, number: int) -> Given:
    value = lengths.value
    if isinstance(value, tuple):
        value = value[number] if number < len(value) else value[-1]
    return Given(value, lengths.where, lengths.basis, lengths.text)


def _lead(found: Expansion, bank: Equipment, bar: str, unit: str, length: Given, number: int) -> Circuit:
    name = f"{bank.name}.lead-{number}"
    place = bank.value("place")
    place = place if isinstance(place, str) else None
    run: list[Step] = []
    fuses = bank.get("unit fuses")
    if fuses.value is True:
        fuse = f"{bank.name}.fuse-{number}"
        found.equipment[fuse] = _fuse(bank, fuse)
        run.append(Length(_before_fuse(bank, length), place, bank.where))
        run.append(Through(fuse, None, None, bank.where))
        if _sits(bank) == "bar":
            length = Given(0.0, length.where, length.basis, "0 m")
    elif isinstance(fuses.value, Unknown):
        run.append(Gap(bank.where))
    run.append(Length(length, place, bank.where))
    reel = bank.value("unit leads.cable")
    vocabulary = kind_of("circuit", "circuits")
    usual = {key: value for key, value in found.design.usual.items() if key in vocabulary.keys}
    return Circuit(
        name,
        vocabulary,
        bank.where,
        bank.path,
        {**usual, "duty": Given("charge", bank.where), "own": bank.get("own")},
        start=Port(unit, None, bank.where),
        ends=(Port(bar, None, bank.where),),
        run=tuple(run),
        cable=found.design.cables.get(reel) if isinstance(reel, str) else None,
        cable_where=bank.get("unit leads.cable").where,
        cores=None,
        returns=Path("same", (), None, None, bank.where),
        earth=Path("none", (), None, None, bank.where),
        terminations={},
    )


def _before_fuse(bank: Equipment, length: Given) -> Given:
    """How much lead lies between the unit and its fuse: none when it sits on the unit, all when on the bar."""
    at = _sits(bank)
    if at == "battery":
        return Given(0.0, length.where, length.basis, "0 m")
    if at == "bar":
        return length
    value = length.value
    top = value.high if isinstance(value, Range) else value
    between = Range(0.0, top) if isinstance(top, float) and top > 0 else value
    return Given(between, length.where, "assumed", f"0 m..{length.text}")


def _sits(bank: Equipment) -> str:
    """The end of its lead at which a unit fuse sits; empty where that is not told."""
    at = bank.value("unit fuses.at")
    return at if isinstance(at, str) else ""


def _fuse(bank: Equipment, name: str) -> Equipment:
    prefix = "unit fuses."
    given = {key[len(prefix) :]: value for key, value in bank.written() if key.startswith(prefix)}
    given["place"] = bank.get("place")
    return Equipment(name, kind_of("fuse", "equipment"), bank.where, bank.path, given, terminals={})


def kind_of(name: str, section: str) -> Kind:
    """The vocabulary of a kind that is known to exist."""
    found = kind(name, section)
    if found is None:
        raise LookupError(f"{section} has no kind {name}")
    return found
