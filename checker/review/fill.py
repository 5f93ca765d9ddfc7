"""The sentences of a finding: templates filled in, and the sentence made from a comparison when there is none."""

from __future__ import annotations

from math import isfinite
from typing import Any

from checker.quantities import Range, Truth, Unknown
from checker.review.decisive import Atom
from checker.review.say import MOST_LISTED, plain_name, spoken, value_text
from checker.rulebook.logic import truth
from checker.rulebook.nodes import Comparison, Const, Fact, Gather, Limit, Member, Node, Variable
from checker.rulebook.template import Slot, Template
from checker.rulebook.types import NONE, YES_NO
from checker.rulebook.walk import Scene, evaluate

# What is wrong when the comparison does not hold.
_FAILS = {
    "<": "not less than", "<=": "more than", ">": "not more than", ">=": "less than", "==": "not", "!=": "the same as",
}  # fmt: skip


def fill(template: Template, scene: Scene) -> str:
    """The text with every placeholder replaced by its value."""
    return "".join(part if isinstance(part, str) else _slot(part, scene) for part in template)


def advise(template: Template, scene: Scene) -> str:
    """As `fill`, for a mend: of a range behind `at least` the upper end is told, behind `at most` or `within` the
    lower, since only that surely suffices.
    """
    said = ""
    for part in template:
        said += part if isinstance(part, str) else _slot(part, scene, _end_behind(said))
    return said


def _end_behind(said: str) -> str:
    """Which end of a range suffices behind these words: `high`, `low`, or nothing where they do not tell."""
    return "high" if said.endswith("at least ") else "low" if said.endswith(("at most ", "within ")) else ""


def _slot(slot: Slot, scene: Scene, end: str = "") -> str:
    said: dict[str, None] = {}
    for inner in _scenes(slot.loop, scene):
        value = evaluate(slot.node, inner)
        if type(value) is Range and end and isfinite(sure := value.high if end == "high" else value.low):
            value = sure
        said.setdefault(value_text(value, slot.node.type))
    names = list(said)
    if not names:
        return "none"
    if len(names) > MOST_LISTED:
        return ", ".join(names[:MOST_LISTED]) + f" and {len(names) - MOST_LISTED} more"
    return names[0] if len(names) == 1 else ", ".join(names[:-1]) + " and " + names[-1]


def _scenes(loop: tuple[Gather, ...], scene: Scene) -> list[Scene]:
    """The scenes of the subjects a loop speaks of: where it fails for some only, of those."""
    scenes = [scene]
    for gather in loop:
        assert gather.variable is not None
        found: list[Scene] = []
        failing: list[Scene] = []
        for outer in scenes:
            items = evaluate(gather.items, outer)
            for item in items if isinstance(items, tuple) else ():
                inner = outer.at(gather.variable.slot, item)
                if gather.condition is not None and truth(evaluate(gather.condition, inner)) is False:
                    continue
                found.append(inner)
                if gather.element is not None and gather.element.type.name == YES_NO:
                    holds = truth(evaluate(gather.element, inner))
                    if holds is (gather.function == "none") or (gather.function != "none" and holds is False):
                        failing.append(inner)
        scenes = failing or found
    return scenes


MOST_SAID = 4


def sentence(found: list[Atom]) -> str:
    """What the decisive parts say, in words: `drop of galley is 3.05 %, more than the limit for drop, 3 %`.

    Where one comparison fails for several subjects, they are told together.
    """
    said: dict[tuple[str, str], dict[str, None]] = {}
    for atom in found:
        head, tail = _atom(atom)
        said.setdefault((type(atom.node).__name__ + atom.text + str(atom.node.span), tail), {}).setdefault(head)
    parts = []
    for (_, tail), heads in list(said.items())[:MOST_SAID]:
        more = f" and {len(heads) - MOST_SAID} more" if len(heads) > MOST_SAID else ""
        joint = ": " if len(heads) > 1 else ", "
        parts.append(", ".join(list(heads)[:MOST_SAID]) + more + (joint + tail if tail else ""))
    more = f"; and {len(said) - MOST_SAID} more" if len(said) > MOST_SAID else ""
    return "; ".join(parts) + more


def _atom(atom: Atom) -> tuple[str, str]:
    """The subject's side of an atom, and what it is held against."""
    node, scene, text = atom.node, atom.scene, atom.text
    if isinstance(node, Comparison):
        return _comparison(node, scene, atom.value, text)
    if isinstance(node, Member) and isinstance(node.item, Const):
        return _holds(node, scene, truth(atom.value), text)
    if isinstance(node, Member):
        item, group = evaluate(node.item, scene), evaluate(node.group, scene)
        if truth(atom.value) is False and item is not None and group is not None:
            return _is(node.item, item, scene, text), f"not in {value_text(group, node.group.type)}"
        return _is(node.item, item, scene, text), f"compared with {value_text(group, node.group.type)}"
    return _is(node, atom.value, scene, text), ""


def _holds(node: Member, scene: Scene, value: Truth, text: str) -> tuple[str, str]:
    """A word looked for in a list: `labels of bank is type, without replacement`."""
    word = value_text(evaluate(node.item, scene), node.item.type)
    head = _is(node.group, evaluate(node.group, scene), scene, text)
    return (head, f"without {word}") if value is False else (head, f"with {word}") if value is True else (head, "")


def _comparison(node: Comparison, scene: Scene, value: Any, text: str) -> tuple[str, str]:
    left, right = evaluate(node.left, scene), evaluate(node.right, scene)
    if node.right.type.name == NONE:
        return _is(node.left, left, scene, text), ""
    if truth(value) is not False or left is None or right is None:
        if right is None and left is not None:
            return _is(node.right, right, scene, text), ""
        beside = "" if left is None else f"compared with {_named(node.right, right, scene, text)}"
        return _is(node.left, left, scene, text), beside
    return _is(node.left, left, scene, text), f"{_FAILS[node.op]} {_named(node.right, right, scene, text)}"


def _named(node: Node, value: Any, scene: Scene, text: str) -> str:
    """A value with its name, where it has one."""
    words = value_text(value, node.type)
    if isinstance(node, (Fact, Limit)):
        return f"the {spoken(node, scene, text)}, {words}"
    return words if isinstance(node, (Const, Variable)) else f"{words} ({spoken(node, scene, text)})"


def _is(node: Node, value: Any, scene: Scene, text: str) -> str:
    """`reset of F5 is by itself`; for a missing subject, which one is missing."""
    if isinstance(node, Fact):
        base = evaluate(node.base, scene)
        if (base is None or type(base) is Unknown) and isinstance(node.base, Fact):
            return _is(node.base, base, scene, text)
        if node.type.name == YES_NO:
            return f"{plain_name(node.name)} of {value_text(base, node.base.type)}: {value_text(value, node.type)}"
    return f"{spoken(node, scene, text)} is {value_text(value, node.type)}"
