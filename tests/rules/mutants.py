"""How well do the examples hold the rules? Each rule is spoilt in every small way; an example must notice.

    python -m tests.rules.mutants [RULE…]

Spoilt are: each comparison (turned round, and moved onto or off its limit), each number and each limit (by 1 % and by
20 %, both ways; a whole number by one), each clause of an `and` or `or` and each `if` of a loop (left out), each
`not` (left out), and the `given` (left out). A mutant is caught when some example of its rule gets another verdict.
What cannot be checked any more, such as a condition that has lost its type, is no mutant.
The figures of `rules/codes` themselves are held by `tests/reference/code-limits.yaml`, not by examples.

Run by hand: it takes minutes, and a rate is no verdict on one rule. Prints the rate and the survivors.
"""

from __future__ import annotations

import ast
import copy
import re
import sys
from collections.abc import Callable, Iterator
from typing import Any, NamedTuple

import checker.facts  # noqa: F401 - fills the catalogue
from checker.review.examples import ExampleError, example_verdict
from checker.rulebook import Rule, Rulebook, RuleErrors, load_rulebook

TURNED = {
    ast.LtE: (ast.Gt, ast.Lt), ast.Lt: (ast.GtE, ast.LtE), ast.GtE: (ast.Lt, ast.Gt), ast.Gt: (ast.LtE, ast.GtE),
    ast.Eq: (ast.NotEq,), ast.NotEq: (ast.Eq,), ast.In: (ast.NotIn,), ast.NotIn: (ast.In,),
}  # fmt: skip
FACTORS = (0.99, 1.01, 0.8, 1.2)
QUANTITY = re.compile(r"(-?\d+(?:\.\d+)?)(\s*\D.*)")


class Mutant(NamedTuple):
    """A rule with one condition spoilt: which key, how, and the whole text."""

    key: str
    how: str
    text: str


class Tally(NamedTuple):
    """Mutants of one rule: how many there are, and those that no example notices."""

    rule: str
    made: int
    survivors: tuple[Mutant, ...]


def mutants_of(rule: Rule) -> Iterator[Mutant]:
    """Every spoilt form of the conditions of a rule, each once."""
    seen: set[tuple[str, str]] = set()
    for key in ("given", "require"):
        text = getattr(rule, key)
        for how, spoilt in spoil(text, rule.limits):
            if (key, spoilt) not in seen:
                seen.add((key, spoilt))
                yield Mutant(key, how, spoilt)
    if rule.given != "true" and ("given", "true") not in seen:
        yield Mutant("given", "left out", "true")


def spoil(text: str, limits: Any) -> Iterator[tuple[str, str]]:
    """How, and the text of the condition then."""
    tree = ast.parse(text.replace("\n", " ").strip(), mode="eval")
    same = _beside_zero(tree)
    for at, node in enumerate(ast.walk(tree)):
        if node in same:
            continue
        for how, change in _changes(node, limits):
            other = copy.deepcopy(tree)
            target = list(ast.walk(other))[at]
            replaced = change(target)
            if replaced is not target:
                _replace(other, target, replaced)
            yield how, ast.unparse(other)


def _beside_zero(tree: ast.AST) -> set[ast.AST]:
    """What is compared with zero alone: a limit of which a share is above zero just when all of it is."""
    found: set[ast.AST] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Compare):
            sides = [node.left, *node.comparators]
            if any(isinstance(side, ast.Constant) and _is_zero(side.value) for side in sides):
                found.update(side for side in sides if isinstance(side, ast.Attribute))
    return found


def _is_zero(value: object) -> bool:
    return isinstance(value, str) and (quantity := QUANTITY.fullmatch(value)) is not None and not float(quantity[1])


Change = Callable[[Any], ast.AST]


def _changes(node: ast.AST, limits: Any) -> Iterator[tuple[str, Change]]:
    if isinstance(node, ast.Compare):
        for at, operator in enumerate(node.ops):
            for turned in TURNED[type(operator)]:
                yield f"{ast.unparse(node)}: {turned.__name__}", _operator(at, turned)
    elif isinstance(node, ast.BoolOp):
        for at, clause in enumerate(node.values):
            yield f"without {ast.unparse(clause)}", _clause(at)
    elif isinstance(node, ast.comprehension):
        for at, clause in enumerate(node.ifs):
            yield f"without if {ast.unparse(clause)}", _filter(at)
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
        yield f"without not before {ast.unparse(node.operand)}", lambda target: target.operand
    elif isinstance(node, ast.Constant):
        yield from _numbers(node)
    elif isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "limits":
        spec = limits.get(node.attr)
        if spec is not None and spec.unit == "count":
            for step in (-1, 1):
                yield f"limits.{node.attr} plus {step}", _moved(step)
        elif spec is not None and spec.type == "number":
            for factor in FACTORS:
                yield f"limits.{node.attr} times {factor}", _scaled(factor)


def _operator(at: int, turned: type[ast.cmpop]) -> Change:
    def change(target: Any) -> ast.AST:
        target.ops[at] = turned()
        return target  # type: ignore[no-any-return]

    return change


def _clause(at: int) -> Change:
    def change(target: Any) -> ast.AST:
        rest = [*target.values[:at], *target.values[at + 1 :]]
        if len(rest) == 1:
            return rest[0]  # type: ignore[no-any-return]
        target.values = rest
        return target  # type: ignore[no-any-return]

    return change


def _filter(at: int) -> Change:
    def change(target: Any) -> ast.AST:
        del target.ifs[at]
        return target  # type: ignore[no-any-return]

    return change


def _scaled(factor: float) -> Change:
    return lambda target: ast.BinOp(target, ast.Mult(), ast.Constant(factor))


def _moved(step: int) -> Change:
    return lambda target: ast.BinOp(target, ast.Add(), ast.Constant(step))


def _numbers(node: ast.Constant) -> Iterator[tuple[str, Change]]:
    value = node.value
    if isinstance(value, bool) or value in (0, 0.0):
        return
    if isinstance(value, int):
        for step in (-1, 1):
            yield f"{value} becomes {value + step}", _constant(value + step)
    elif isinstance(value, float):
        for factor in FACTORS:
            yield f"{value} times {factor}", _constant(float(f"{value * factor:.12g}"))
    elif isinstance(value, str) and (found := QUANTITY.fullmatch(value)) and float(found[1]):
        for factor in FACTORS:
            text = f"{float(found[1]) * factor:.12g}{found[2]}"
            yield f"'{value}' becomes '{text}'", _constant(text)


def _constant(value: Any) -> Change:
    return lambda target: ast.Constant(value)


def _replace(tree: ast.AST, old: ast.AST, new: ast.AST) -> None:
    for parent in ast.walk(tree):
        for name, value in ast.iter_fields(parent):
            if value is old:
                setattr(parent, name, new)
            elif isinstance(value, list) and any(one is old for one in value):
                setattr(parent, name, [new if one is old else one for one in value])


def tally(rule: Rule, rulebook: Rulebook) -> Tally:
    """All mutants of a rule that can be checked, put to its examples."""
    count, survivors = 0, []
    for mutant in mutants_of(rule):
        held = {"given": rule.given, "require": rule.require, mutant.key: mutant.text}
        text = rule.text._replace(given=held["given"], require=held["require"])
        spoilt = Rule(text, rule.catalogue, rule.limits, rule.data)
        try:
            _ = spoilt.given_tree, spoilt.require_tree
        except RuleErrors:
            continue
        count += 1
        if not _noticed(spoilt, rule, rulebook):
            survivors.append(mutant)
    return Tally(rule.id, count, tuple(survivors))


def _noticed(spoilt: Rule, rule: Rule, rulebook: Rulebook) -> bool:
    for example in sorted(rule.examples, key=lambda one: one.subject is None):  # made-up facts are quicker than designs
        try:
            if example_verdict(spoilt, example, rulebook) != example.verdict:
                return True
        except ExampleError:
            return True
    return False


def main(wanted: list[str]) -> None:
    """Print the survivors by rule, and the rate."""
    rulebook = load_rulebook()
    unknown = set(wanted) - rulebook.by_id.keys()
    if unknown:
        sys.exit(f"there is no rule {', '.join(sorted(unknown))}")
    rules = [rule for rule in rulebook.rules if not wanted or rule.id in wanted]
    count = alive = 0
    for rule in rules:
        found = tally(rule, rulebook)
        count += found.made
        alive += len(found.survivors)
        if found.survivors:
            sys.stdout.write(f"{found.rule}: {len(found.survivors)} of {found.made} survive\n")
            sys.stdout.writelines(f"  {one.key}: {one.how}\n" for one in found.survivors)
    rate = 100 * (count - alive) / count if count else 100.0
    sys.stdout.write(f"{len(rules)} rules, {count} mutants, {count - alive} caught: {rate:.1f} %\n")


if __name__ == "__main__":
    main(sys.argv[1:])
