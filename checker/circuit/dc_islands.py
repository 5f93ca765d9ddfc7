"""What a direct-current network falls into: the parts that have a source, the parts that are dead, and the reference
node of each part."""

from __future__ import annotations

from collections.abc import Sequence

from checker.circuit.dc_elements import Branch, Capacitor, Converter, Element, Emf, TwoPole
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
            if element.conducts:
                conductors.join(element.ends[0], element.ends[1])
        fed = _fed(elements, conductors)
        self.alive: list[Element] = []
        self.dead: list[Element] = []
        find = conductors.find
        for element in elements:
            first, second = element.ends[:2]  # of a converter: its input
            (self.alive if find(first) in fed and find(second) in fed else self.dead).append(element)
        self.references = _references(self.alive, conductors, ground)


def _fed(elements: Sequence[Element], conductors: Groups) -> set[str]:
    """Groups of conductors that a source touches; converters are added as their inputs come alive."""
    fed: set[str] = set()
    waiting: list[Converter] = []
    for element in elements:
        if isinstance(element, Converter):
            waiting.append(element)
        elif isinstance(element, TwoPole) and (element.gives or isinstance(element, Capacitor)):
            fed.update(conductors.find(end) for end in element.ends)
    while True:
        ready = [one for one in waiting if all(conductors.find(end) in fed for end in one.into)]
        if not ready:
            return fed
        for one in ready:
            waiting.remove(one)
            fed.update(conductors.find(end) for end in one.out)


def _references(alive: Sequence[Element], parts: Groups, ground: str) -> list[str]:
    """One node for each part: the ground where the part has it, else the minus of its first source.

    `parts` holds what conductors join; the other elements are added to it.
    """
    grounded = False
    for element in alive:
        ends = element.ends
        if not element.conducts:
            parts.join(ends[0], ends[1])
            if len(ends) > 2:
                parts.join(ends[2], ends[3])
        grounded = grounded or ground in ends
    found: dict[str, str] = {parts.find(ground): ground} if grounded else {}
    floating = [element for element in alive if any(parts.find(node) not in found for node in element.ends[::2])]
    for element in sorted(floating, key=_rank):
        for node in element.ends[:1] if isinstance(element, Branch) else element.ends[1::2]:
            found.setdefault(parts.find(node), node)
    return list(found.values())


def _rank(element: Element) -> int:
    """Whose minus a part is measured from: that of a battery, of another source, of a converter, of a load."""
    if isinstance(element, Emf):
        return 1
    if isinstance(element, Converter):
        return 3
    if isinstance(element, TwoPole):
        return 2 if element.gives else 4
    return 5
