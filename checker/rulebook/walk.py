"""The value of any part of a checked expression, found by walking the tree.

Much slower than the compiled forms and used where one finding is explained; it is also what they are tested against.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from checker.quantities import (
    add,
    divide,
    equal,
    greater,
    greater_equal,
    less,
    less_equal,
    multiply,
    not_equal,
    subtract,
    within,
)
from checker.rulebook import logic
from checker.rulebook.nodes import (
    Arithmetic,
    Comparison,
    Const,
    Fact,
    Gather,
    Limit,
    Logic,
    Member,
    Negative,
    Node,
    Not,
    Variable,
)
from checker.rulebook.types import WINDOW

_ARITHMETIC = {"+": add, "-": subtract, "*": multiply, "/": divide}
_COMPARE = {"<": less, "<=": less_equal, ">": greater, ">=": greater_equal, "==": equal, "!=": not_equal}
_GATHER: dict[str, Any] = {
    "every": logic.every_of, "some": logic.some_of, "none": logic.none_of, "count": logic.count_of,
    "sum": logic.sum_of, "min": logic.min_of, "max": logic.max_of,
}  # fmt: skip


class Scene:
    """What the variables of an expression stand for at one moment, and the limits."""

    __slots__ = ("limits", "subjects")

    def __init__(self, subjects: tuple[Any, ...], limits: Mapping[str, Any]) -> None:
        self.subjects = subjects
        self.limits = limits

    def at(self, slot: int, subject: Any) -> Scene:
        """The same scene with the loop of that slot at `subject`."""
        kept = self.subjects[:slot]
        return Scene((*kept, *(None,) * (slot - len(kept)), subject), self.limits)


def evaluate(node: Node, scene: Scene) -> Any:
    """The value of the node: Number, Truth, word, subject, tuple, window, None or Unknown."""
    if isinstance(node, Const):
        return node.value
    if isinstance(node, Variable):
        return scene.subjects[node.slot]
    if isinstance(node, Fact):
        return logic.ask(evaluate(node.base, scene), node.name)
    if isinstance(node, Limit):
        return scene.limits[node.name]
    if isinstance(node, Logic):
        return _logic(node, scene)
    if isinstance(node, Not):
        return logic.opposite(evaluate(node.part, scene))
    if isinstance(node, Negative):
        return logic.minus(evaluate(node.part, scene))
    if isinstance(node, Arithmetic):
        return _ARITHMETIC[node.op](evaluate(node.left, scene), evaluate(node.right, scene))
    if isinstance(node, Comparison):
        return _COMPARE[node.op](evaluate(node.left, scene), evaluate(node.right, scene))
    if isinstance(node, Member):
        test = within if node.group.type.name == WINDOW else logic.member
        return test(evaluate(node.item, scene), evaluate(node.group, scene))
    assert isinstance(node, Gather)
    return _gather(node, scene)


def _logic(node: Logic, scene: Scene) -> Any:
    combine, stop = (logic.both_of, False) if node.op == "and" else (logic.either_of, True)
    result = logic.truth(evaluate(node.parts[0], scene))
    for part in node.parts[1:]:
        if result is stop:
            break
        result = combine(result, evaluate(part, scene))
    return result


def _gather(node: Gather, scene: Scene) -> Any:
    items = evaluate(node.items, scene)
    if node.variable is None:
        return logic.count_of(items)
    slot = node.variable.slot

    def at(part: Node | None) -> Any:
        return None if part is None else lambda item: evaluate(part, scene.at(slot, item))

    return _GATHER[node.function](items, at(node.element), at(node.condition))


def decide(given: Node, require: Node, scene: Scene) -> str:
    """The verdict the two conditions give; the same as that of the compiled forms."""
    condition = logic.truth(evaluate(given, scene))
    if condition is False:
        return "not applicable"
    answer = logic.truth(evaluate(require, scene))
    if answer is True:
        return "met"
    return "breach" if answer is False and condition is True else "unproven"
