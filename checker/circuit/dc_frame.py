"""One layout of a direct-current network, to be solved for many sets of numbers.

What hangs on the layout alone is worked out once: which parts are alive, which nodes are one, the reference of each
part, the order of elimination. Elements with other numbers between the same terminals are then put in their places.
"""

from __future__ import annotations

from collections.abc import Sequence

from checker.circuit.dc_elements import Element
from checker.circuit.dc_islands import GROUND, Islands
from checker.circuit.dc_newton import Equations
from checker.circuit.dc_nodes import Nodes


class Frame:
    """The layout of `elements`, with their equations.

    `alive` are the elements whose currents count, `dead` the names of those that reach no source.
    """

    __slots__ = ("_living", "alive", "dead", "equations", "nodes", "references")

    def __init__(self, elements: Sequence[Element], ground: str = GROUND) -> None:
        """Raises Contradiction when ideal sources round a loop do not add up to nothing."""
        islands = Islands(elements, ground)
        self.alive = islands.alive
        self.dead = tuple(element.name for element in islands.dead)
        self.references = islands.references
        self.nodes = Nodes(islands.alive)
        self.equations = Equations(islands.alive, self.nodes, dict.fromkeys(islands.references, 0.0))
        dead = set(self.dead)
        self._living = [i for i, element in enumerate(elements) if element.name not in dead]

    def put(self, elements: Sequence[Element]) -> None:
        """Take other numbers: the same elements, in the same order, between the same terminals."""
        self.alive = [elements[i] for i in self._living]
        self.equations.take(self.alive)
