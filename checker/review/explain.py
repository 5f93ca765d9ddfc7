"""Why a pair of rule and subject has its verdict: the working down to the file, what would decide it, what is assumed.

This costs some sixty times as much as the verdict itself and is made for findings that are shown.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

from checker.design.given import Box
from checker.facts.subject import Input, Step, trace
from checker.quantities import Range, UnitError, Unknown, Window, show
from checker.review.decisive import Atom, Leaf, atoms, leaves, limits_in, subjects_in
from checker.review.finding import Need
from checker.review.say import answer, plain_name, value_text, with_values
from checker.rulebook.judge import cause_of
from checker.rulebook.limits import Limits
from checker.rulebook.logic import truth
from checker.rulebook.nodes import Node
from checker.rulebook.rule import Rule
from checker.rulebook.types import type_of
from checker.rulebook.walk import Scene, evaluate

MOST_COMPARISONS = 8
MOST_FACTS = 12
DEEPEST = 3
"""Facts below facts that the working shows; a single one can be followed to its end by asking for it."""

Tracer = Callable[[Any, str], Step]


class Explanation(NamedTuple):
    """All that a finding says beyond its verdict.

    `inputs` are the entries of the file it rests on, `reasons` why a value is unknown where more can be said than that.
    """

    found: list[Atom]
    working: tuple[str, ...]
    needs: tuple[Need, ...]
    assumes: tuple[str, ...]
    inputs: frozenset[str]
    limits: tuple[str, ...]
    subjects: frozenset[tuple[str, str]]
    reasons: tuple[str, ...]


def explain(rule: Rule, scene: Scene, limits: Limits, tracer: Tracer = trace) -> Explanation:
    """The explanation of the verdict of `rule` in `scene`; `tracer` is asked how a fact came about."""
    found, lines = _parts(rule, scene)
    known: dict[tuple[str, str, str], Leaf] = {}
    for atom in found:
        for leaf in leaves(atom):
            known.setdefault((leaf.subject.kind, leaf.subject.id, leaf.name), leaf)
    used = tuple(dict.fromkeys(name for atom in found for name in limits_in(atom)))
    lines += [_limit_line(name, limits) for name in used]
    steps = _traced(list(known.values()), tracer, lines)
    rests_on = [(step.leaves(), open_) for step, open_ in steps]
    inputs = {given.path: given for found_there, _ in rests_on for given in found_there}
    doubtful = {
        given.path: given for found_there, open_ in rests_on if open_ for given in found_there if _open(given.value)
    }
    needs = [_need(given) for given in doubtful.values()]
    needs += [_limit_need(name, limits) for name in used if type(limits[name]) is Unknown]
    return Explanation(
        found,
        tuple(lines),
        tuple(needs),
        tuple(sorted(path for path, given in inputs.items() if given.basis in ("assumed", "default"))),
        frozenset(inputs),
        used,
        frozenset(subjects_in(found)),
        tuple(dict.fromkeys(reason for step, open_ in steps if open_ for reason in _reasons(step))),
    )


def _parts(rule: Rule, scene: Scene) -> tuple[list[Atom], list[str]]:
    """The decisive comparisons of the conditions, and the first lines of working."""
    found: list[Atom] = []
    lines: list[str] = []
    applies = truth(evaluate(rule.given_tree, scene))
    holds = truth(evaluate(rule.require_tree, scene)) if applies is not False else None
    asked: list[tuple[str, str, Node, Any]] = []
    if type(applies) is Unknown or applies is False:
        asked.append(("given", rule.given, rule.given_tree, applies))
    if applies is True or (type(applies) is Unknown and type(holds) is Unknown):
        asked.append(("require", rule.require, rule.require_tree, holds))
    for key, text, tree, value in asked:
        lines.append(f"{key}: {text} ({answer(value)})")
        parts = atoms(tree, scene, text)
        found += parts
        for atom in parts[:MOST_COMPARISONS]:
            lines.append(f"  {with_values(atom.node, atom.scene, text)}: {_verdict(atom)}")
        if len(parts) > MOST_COMPARISONS:
            lines.append(f"  and {len(parts) - MOST_COMPARISONS} more comparisons")
    return found, lines


def _verdict(atom: Atom) -> str:
    if atom.node.type.name == "yes/no":
        return answer(truth(atom.value))
    return value_text(atom.value, atom.node.type)


def _limit_line(name: str, limits: Limits) -> str:
    taken = limits.taken.get(name)
    said = f"limit for {plain_name(name)} = "
    if taken is None:
        return f"{said}unknown: neither {limits.code} nor the international code gives it{limits.elsewhere(name)}"
    code, limit = taken
    whose = code if code == limits.code else f"{code}, because {limits.code} gives none"
    return f"{said}{limit.text} ({whose}; {limit.source}){limits.elsewhere(name)}"


def _limit_need(name: str, limits: Limits) -> Need:
    what = f"no code gives a value; put one into codes/{limits.code}.yaml of your own rules"
    return Need(f"limits.{name}", what, 1, 1)


def _traced(found: list[Leaf], tracer: Tracer, lines: list[str]) -> list[tuple[Step, bool]]:
    """How each fact came about, with whether its value is still open; the lines that tell it are added."""
    steps: list[tuple[Step, bool]] = []
    told: set[tuple[str, str, str]] = set()
    for at, leaf in enumerate(found):
        try:
            step = tracer(leaf.subject, leaf.name)
        except Exception as error:  # noqa: BLE001 - the fact itself broke; the finding says so and stays unproven
            lines.append(f"{plain_name(leaf.name)} of {leaf.subject.id} could not be computed: {cause_of(error)}")
            continue
        steps.append((step, _open(leaf.value)))
        if at < MOST_FACTS:
            _tell(step, 0, told, lines)
    if len(found) > MOST_FACTS:
        lines.append(f"and {len(found) - MOST_FACTS} more facts")
    return steps


def _tell(step: Step, depth: int, told: set[tuple[str, str, str]], lines: list[str]) -> None:
    key = (step.subject_kind, step.subject_id, step.spec.name)
    if key in told:
        return
    told.add(key)
    indent = "  " * depth
    reason = _reason(step.value)
    value = value_text(step.value, type_of(step.spec)) + (f": {reason}" if reason else "")
    origin = "; ".join(part for part in (step.spec.method, step.spec.source) if part)
    lines.append(f"{indent}{plain_name(step.spec.name)} of {step.subject_id} = {value} ({origin})")
    lines += [f"{indent}  {note}" for note in step.notes]
    lines += [f"{indent}  {input_line(given)}" for given in dict.fromkeys(step.inputs)]
    if depth + 1 < DEEPEST:
        for below in step.steps:
            _tell(below, depth + 1, told, lines)


def _reason(value: Any) -> str:
    """Why a value is unknown, where more can be said than that."""
    return value.reason if type(value) is Unknown and value.reason != "unknown" else ""


def _reasons(step: Step) -> list[str]:
    """Why the value of a fact is unknown: its own reason, else those of the facts below it."""
    found: dict[str, None] = {}
    seen: set[int] = set()  # facts rest on the same facts by many ways
    todo = [step]
    while todo:
        below = todo.pop()
        if id(below) in seen or type(below.value) is not Unknown:
            continue
        seen.add(id(below))
        own = _reason(below.value)
        if own:
            found[own] = None
        else:
            todo.extend(reversed(below.steps))
    return list(found)


def input_line(given: Input) -> str:
    """An entry of the file: its path, what it says, where, and what it rests on."""
    basis = {"default": "assumed, not written", "missing": "not written", "stated": ""}.get(given.basis, given.basis)
    place = f"line {given.where.line}" + (f", {basis}" if basis else "")
    return f"{given.path}: {input_text(given)} ({place})"


def input_text(given: Input) -> str:
    """What an entry says, as written where it was."""
    if given.basis == "missing":
        return "unknown"
    if given.text:
        return given.text
    value = given.value
    if type(value) is Unknown:
        return "unknown"
    if value is None:
        return "none"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, (float, Range, Window)) and given.unit:
        try:
            return show(value, given.unit)
        except UnitError:
            return str(value)
    if isinstance(value, Box):
        return f"at {_items(value.at, 'm')}, size {_items(value.size, 'm')}"
    if isinstance(value, tuple):
        return _items(value, given.unit)[1:-1] or "none"
    return str(value)


def _items(values: tuple[Any, ...], unit: str) -> str:
    """A list as the file writes one: numbers with their unit, ranges as `low..high`."""
    return f"[{', '.join(_item(each, unit) for each in values)}]"


def _item(value: Any, unit: str) -> str:
    if isinstance(value, tuple):
        return _items(value, unit)
    if unit and isinstance(value, (Range, float)):
        return show(value, unit)
    if isinstance(value, Range):
        return f"{value.low:.4g}..{value.high:.4g}"
    return str(value)


def _need(given: Input) -> Need:
    return Need(given.path, input_text(given), given.where.line, given.where.column)


def _open(value: Any) -> bool:
    """Whether more could be known of the value."""
    if type(value) in (Unknown, Range):
        return True
    if type(value) is Window:
        return _open(value.low) or _open(value.high)
    return isinstance(value, tuple) and any(_open(item) for item in value)
