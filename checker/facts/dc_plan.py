"""The direct-current side of a design in one mode, as elements that can be made for each case of their numbers."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from checker.circuit.dc_elements import Element
from checker.design.item import Item
from checker.facts.dc_amounts import Amount, Book, Case
from checker.facts.subject import Facts, Subject

Heat = Mapping[str, float]
"""Id of a conductor -> the current it carries (A), for its temperature."""
Maker = Callable[[Case, Heat], Element | None]
"""Makes an element in a case, with conductors as hot as their currents make them; None: it is open in that case."""


class Plan:
    """What is on the direct-current side in a mode, and under which name.

    `wires` maps a conductor's id to the names of its stretches in order, `links` a piece of equipment to the names of
    its contacts in the live conductor, `units` a bank to the names of its strings, `settled` a bank to the rested
    voltage of one of its units, `gives_at` a converter to the side that gives.
    """

    __slots__ = (
        "book", "gives_at", "links", "loads", "makers", "mode", "names", "s", "settled", "sources", "units", "wires",
    )  # fmt: skip

    def __init__(self, s: Subject, mode: Item) -> None:
        self.s = s
        self.mode = mode
        self.book = Book()
        self.makers: list[Maker] = []
        self.names: dict[str, None] = {}
        self.wires: dict[str, list[str]] = {}
        self.links: dict[str, list[str]] = {}
        self.loads: list[str] = []
        self.sources: list[str] = []
        self.gives_at: dict[str, str] = {}
        self.settled: dict[str, Amount] = {}
        self.units: dict[str, tuple[str, ...]] = {}

    @property
    def facts(self) -> Facts:
        """The facts of the design."""
        return self.s.facts

    def read(self, item: Item, key: str) -> Any:
        """A value of the design, noted as an input; unknown keys of a kind count as not told."""
        from checker.quantities import UNKNOWN

        return self.s.read(item, key) if item.allows(key) else UNKNOWN

    def name(self, wanted: str) -> str:
        """A name that no other element has."""
        found, count = wanted, 2
        while found in self.names:
            found, count = f"{wanted} ({count})", count + 1
        self.names[found] = None
        return found

    def add(self, maker: Maker) -> None:
        """Put an element in."""
        self.makers.append(maker)

    def elements(self, case: Case, heat: Heat) -> list[Element]:
        """All elements of a case."""
        return [element for maker in self.makers if (element := maker(case, heat)) is not None]
