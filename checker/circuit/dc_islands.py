"""What a direct-current network falls into: the parts that have a source, the parts that are dead, and the reference
node of each part."""

from __future__ import annotations

from collections.abc import Sequence

from checker.circuit.dc_elements import Branch, Capacitor, Converter, Diode, Element, Emf, Inductor, TwoPole
from checker.circuit.dc_nodes import pairs, terminals
from checker.circuit.groups import Groups

GROUND = "gnd"


class Islands:
    """The elements that are alive, those that are dead, and the nodes taken as 0 V.

    An element is alive when both its terminals are joined by conductors to some source. A converter gives only when its
    input is alive; its output counts as a source then.
    """

    __slots__ = ("alive", "dead", "references")

    def __init__(self, elements: Sequence[Element], ground: str = GROUND) -> None:
        conductors = Groups()
        for element in elements:
            if isinstance(element, Branch | Inductor | Diode):
                a, b = terminals(element)
                conductors.join(a, b)
        fed = _fed(elements, conductors)
        self.alive: list[Element] = []
        self.dead: list[Element] = []
        for element in elements:
            ends = element.into if isinstance(element, Converter) else terminals(element)
            is_alive = all(conductors.find(end) in fed for end in ends)
            (self.alive if is_alive else self.dead).append(element)
        self.references = _references(self.alive, ground)


def _fed(elements: Sequence[Element], conductors: Groups) -> set[str]:
    """Groups of conductors that a source touches; converters are added as their inputs come alive."""
    fed: set[str] = set()
    waiting: list[Converter] = []
    for element in elements:
        if isinstance(element, Converter):
            waiting.append(element)
        elif isinstance(element, TwoPole) and (element.gives or isinstance(element, Capacitor)):
            fed.update(conductors.find(end) for end in terminals(element))
    while True:
        ready = [one for one in waiting if all(conductors.find(end) in fed for end in one.into)]
        if not ready:
            return fed
        for one in ready:
            waiting.remove(one)
            fed.update(conductors.find(end) for end in one.out)


def _references(alive: Sequence[Element], ground: str) -> list[str]:
    """One node for each part: the ground where the part has it, else the minus of its first source."""
    parts = Groups()
    for element in alive:
        for a, b in pairs(element):
            parts.join(a, b)
    found: dict[str, str] = {}
    ranked: list[tuple[int, str]] = []
    for element in alive:
        if isinstance(element, Emf):
            ranked.append((1, element.minus))
        elif isinstance(element, Converter):
            ranked += [(3, element.into.minus), (3, element.out.minus)]
        elif isinstance(element, TwoPole):
            ranked.append((2 if element.gives else 4, element.minus))
        else:
            ranked.append((5, element.a))
        ranked += [(0, node) for node in terminals(element) if node == ground]
    for _, node in sorted(ranked, key=lambda one: one[0]):
        found.setdefault(parts.find(node), node)
    return list(found.values())
