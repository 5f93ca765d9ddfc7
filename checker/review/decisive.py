"""Which comparisons of a requirement decided it, and which facts stand in them.

Of an `and` that is false the false parts, of one that is undecided the undecided ones; of an `every` that is false the
subjects that fail. Only these are shown, traced and asked for.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, NamedTuple

from checker.quantities import Unknown
from checker.rulebook.logic import truth
from checker.rulebook.nodes import Fact, Gather, Limit, Logic, Node, Not, walk
from checker.rulebook.walk import Scene, evaluate

MOST = 60
"""At most so many comparisons are looked at: a list of hundreds that all fail is told by its first."""


class Atom(NamedTuple):
    """A part that answers for itself: a comparison, a yes/no, a list; the scene it stands in; its value.

    `text` is the whole expression it is a part of.
    """

    node: Node
    scene: Scene
    value: Any
    text: str


class Leaf(NamedTuple):
    """A fact of a subject."""

    subject: Any
    name: str
    node: Fact
    value: Any


def atoms(node: Node, scene: Scene, text: str) -> list[Atom]:
    """The parts that decided `node`, in reading order, at most `MOST`."""
    found: list[Atom] = []
    for part, at in _atoms(node, scene):
        found.append(Atom(part, at, evaluate(part, at), text))
        if len(found) >= MOST:
            break
    return found


def _atoms(node: Node, scene: Scene) -> Iterator[tuple[Node, Scene]]:
    if isinstance(node, Not):
        yield from _atoms(node.part, scene)
    elif isinstance(node, Logic):
        whole = truth(evaluate(node, scene))
        # What stopped it, or else everything: a true `and` and a false `or` rest on all their parts.
        all_count = whole is (node.op == "and")
        for part in node.parts:
            if all_count or _alike(truth(evaluate(part, scene)), whole):
                yield from _atoms(part, scene)
    elif isinstance(node, Gather) and node.function in ("every", "some", "none"):
        yield from _gather(node, scene)
    else:
        yield node, scene


def _alike(first: Any, second: Any) -> bool:
    return type(first) is type(second) and (type(first) is Unknown or first is second)


def _gather(node: Gather, scene: Scene) -> Iterator[tuple[Node, Scene]]:
    items = evaluate(node.items, scene)
    if not isinstance(items, tuple) or not items:
        yield node.items, scene
        return
    assert node.element is not None
    whole = truth(evaluate(node, scene))
    # The answer of a single subject that settles the whole: a no for every, a yes for some and none.
    settles = node.function != "every"
    stopped = whole is (node.function == "some") if node.function != "every" else whole is False
    kept = False
    for inner, keep, holds in _each(node, items, scene):
        both = keep is True and holds is settles
        open_ = type(keep) is Unknown or type(holds) is Unknown
        undecided = type(whole) is Unknown and open_ and holds is not (not settles)
        if (stopped and both) or undecided or (not stopped and type(whole) is not Unknown):
            kept = True
            if node.condition is not None and keep is not True:
                yield from _atoms(node.condition, inner)
            if keep is not False:
                yield from _atoms(node.element, inner)
    if not kept:
        yield node.items, scene


def _each(node: Gather, items: tuple[Any, ...], scene: Scene) -> Iterator[tuple[Scene, Any, Any]]:
    """Each subject's scene, whether it is kept, and what holds of it."""
    assert node.variable is not None and node.element is not None
    for item in items:
        inner = scene.at(node.variable.slot, item)
        keep = True if node.condition is None else truth(evaluate(node.condition, inner))
        yield inner, keep, False if keep is False else truth(evaluate(node.element, inner))


def leaves(atom: Atom) -> list[Leaf]:
    """The facts that stand in an atom; where a subject is missing or unknown, the fact that should have named it."""
    found: dict[tuple[str, str, str], Leaf] = {}
    for leaf in _leaves(atom.node, atom.scene):
        subject = leaf.subject
        found.setdefault((subject.kind, subject.id, leaf.name), leaf)
    return list(found.values())


def _leaves(node: Node, scene: Scene) -> Iterator[Leaf]:
    if isinstance(node, Fact):
        base = evaluate(node.base, scene)
        if base is None or type(base) is Unknown:
            yield from _leaves(node.base, scene)
        else:
            yield Leaf(base, node.name, node, evaluate(node, scene))
    elif isinstance(node, Gather):
        yield from _leaves(node.items, scene)
        items = evaluate(node.items, scene)
        if node.variable is not None and isinstance(items, tuple):
            for item in items:
                inner = scene.at(node.variable.slot, item)
                for part in (node.condition, node.element):
                    if part is not None:
                        yield from _leaves(part, inner)
    else:
        for child in node.children():
            yield from _leaves(child, scene)


def limits_in(atom: Atom) -> list[str]:
    """The limits that stand in an atom."""
    return [node.name for node in walk(atom.node) if isinstance(node, Limit)]


def subjects_in(found: list[Atom]) -> set[tuple[str, str]]:
    """Every subject an explanation speaks of: kind and id."""
    names: set[tuple[str, str]] = set()
    for atom in found:
        for subject in atom.scene.subjects:
            if subject is not None and hasattr(subject, "kind"):
                names.add((subject.kind, subject.id))
        for leaf in leaves(atom):
            names.add((leaf.subject.kind, leaf.subject.id))
            for item in leaf.value if isinstance(leaf.value, tuple) else (leaf.value,):
                if hasattr(item, "kind") and hasattr(item, "id"):
                    names.add((item.kind, item.id))
    return names
