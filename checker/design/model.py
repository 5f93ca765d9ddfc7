"""One vehicle's fit-out as the file tells it: typed, immutable, every value with its place."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from checker.design.given import STATED, Given, Where
from checker.design.item import Item
from checker.design.run import Path, Port, Step
from checker.design.vocabulary.key import Kind


class Equipment(Item):
    """Sources, converters, devices, switches, loads, bars, and joints (nodes with no body of their own).

    `terminals` maps a terminal (`+`, `dc+`, `a`) to its keys. `ways` of a board are protective devices of their
    own, named `board.way`. `inline_of` names the circuit in whose run a device was written in place. `base` is
    what `of` names: the part or battery a bank is made of. `section` is equipment or joints.
    """

    __slots__ = ("base", "inline_of", "part", "section", "terminals", "ways")

    def __init__(
        self,
        name: str,
        vocabulary: Kind,
        where: Where,
        path: str,
        given: Mapping[str, Given],
        *,
        terminals: Mapping[str, Item],
        ways: tuple[Equipment, ...] = (),
        base: Equipment | None = None,
        part: str | None = None,
        inline_of: str | None = None,
        section: str = "equipment",
    ) -> None:
        super().__init__(name, vocabulary, where, path, given)
        self.terminals = terminals
        self.ways = ways
        self.base = base
        self.part = part
        self.inline_of = inline_of
        self.section = section


class Circuit(Item):
    """A walked run from one port to one or more others, with its cable, return and earth."""

    __slots__ = ("cable", "cable_where", "cores", "earth", "ends", "returns", "run", "start", "terminations")

    def __init__(
        self,
        name: str,
        vocabulary: Kind,
        where: Where,
        path: str,
        given: Mapping[str, Given],
        *,
        start: Port,
        ends: tuple[Port, ...],
        run: tuple[Step, ...],
        cable: Item | None,
        cable_where: Where,
        cores: tuple[int, ...] | None,
        returns: Path,
        earth: Path,
        terminations: Mapping[str, Item],
    ) -> None:
        super().__init__(name, vocabulary, where, path, given)
        self.start = start
        self.ends = ends
        self.run = run
        self.cable = cable  # None: not known
        self.cable_where = cable_where
        self.cores = cores
        self.returns = returns
        self.earth = earth
        self.terminations = terminations  # 'from' and 'to' to lug, crimp, torque


class Design:
    """The whole file. Every mapping is read-only and in file order; `joints` stand among `equipment`."""

    __slots__ = (
        "cables", "circuits", "code", "date", "day", "departures", "equipment", "essential", "file", "labels", "looms",
        "modes", "moving", "papers", "parts", "passes", "people", "places", "purpose", "readings", "scope", "seen",
        "services", "sha256", "title", "usual", "vehicle",
    )  # fmt: skip

    file: str
    sha256: str
    title: Given
    code: Given
    date: Given
    purpose: Given  # design or survey
    vehicle: Item
    scope: Item
    seen: Item
    people: Mapping[str, Item]  # class of work -> licence, class
    usual: Mapping[str, Given]  # what holds of every cable and circuit that does not say otherwise
    cables: Mapping[str, Item]
    parts: Mapping[str, Equipment]
    places: Mapping[str, Item]
    passes: Mapping[str, Item]
    moving: Mapping[str, Item]
    equipment: Mapping[str, Equipment]  # joints and devices written in place (`circuit#1`) included, ways not
    circuits: Mapping[str, Circuit]
    looms: Mapping[str, Item]
    services: Mapping[str, Item]  # lines of gas, diesel, water
    modes: Mapping[str, Item]
    day: Item
    essential: Given  # names of loads, or unknown
    papers: Item
    labels: Item
    readings: tuple[Item, ...]
    departures: tuple[Item, ...]

    def __init__(self, **parts: Any) -> None:
        missing = set(self.__slots__) - set(parts)
        if missing or set(parts) - set(self.__slots__):
            raise TypeError(f"a design is made of all its parts and no other; missing: {sorted(missing)}")
        for name, value in parts.items():
            object.__setattr__(self, name, value)

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError(f"a design does not change: {name}")

    def under(self, code: str | None) -> Design:
        """The same design under another code of practice, as if its file named that; itself for None."""
        if code is None:
            return self
        parts = {name: getattr(self, name) for name in self.__slots__}
        return Design(**{**parts, "code": Given(code, self.code.where, STATED, code)})
