"""Names, types and units of an expression: Python's syntax tree in, the checked tree out.

Everything a rule says is looked up in the catalogue of facts and the list of limits; whatever is not found there, or
does not go together, is refused with its place and the nearest right name.
"""

from __future__ import annotations

import ast
from collections.abc import Callable, Mapping
from typing import Any, NoReturn

from checker.quantities import UnitError, add_dimensions, divide_dimensions, multiply_dimensions, subtract_dimensions
from checker.rulebook.literals import as_quantity, as_window, as_word, resolve
from checker.rulebook.nodes import (
    ABOUT_SLOT,
    DESIGN_SLOT,
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
    SpanOf,
    Variable,
)
from checker.rulebook.problems import fact_meant, listed, meant
from checker.rulebook.syntax import ExpressionError, Source, parse_expression
from checker.rulebook.types import (
    LIST,
    LITERAL,
    NONE,
    NUMBER,
    PLAIN,
    SUBJECT,
    TRUTH,
    WINDOW,
    WORD,
    WORDS,
    YES_NO,
    Type,
    number,
    type_of,
)

FUNCTIONS = ("every", "some", "none", "count", "sum", "min", "max")
DEEPEST_LOOP = 2
"""Loops may stand in loops so deep: a third would be a walk over the graph, which is a fact."""

_ORDER = {ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">="}
_EQUAL = {ast.Eq: "==", ast.NotEq: "!="}
_SIGNS = {ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/"}
_DIMENSIONS: dict[str, Callable[[Any, Any], Any]] = {
    "+": add_dimensions, "-": subtract_dimensions, "*": multiply_dimensions, "/": divide_dimensions,
}  # fmt: skip


def check_expression(text: str, about: str, catalogue: Any, limits: Mapping[str, Any]) -> Node:
    """The checked tree of the condition `text` of a rule about subjects of kind `about`.

    `catalogue` gives `kinds`, `find(kind, name)` and `names(kind)`; `limits` maps a limit to its specification.
    Raises ExpressionError.
    """
    tree, source = parse_expression(text)
    checker = Checker(source, about, catalogue, limits)
    node = checker.visit(tree)
    if node.type.name != YES_NO:
        raise ExpressionError(
            node.span[0], f"the whole is {checker.said(node)}, not a yes/no", "compare it with something"
        )
    return node


class Checker:
    """Visits the parser's tree; `scope` holds the subjects that can be named."""

    def __init__(self, source: Source, about: str, catalogue: Any, limits: Mapping[str, Any]) -> None:
        self.source = source
        self.about = about
        self.catalogue = catalogue
        self.limits = limits
        subject = Type(SUBJECT, of=about)
        self.scope: dict[str, Variable] = {
            "design": Variable((0, 0), Type(SUBJECT, of="design"), "design", DESIGN_SLOT),
            about: Variable((0, 0), subject, about, ABOUT_SLOT),
        }
        self.loops = 0
        self.visitors: dict[type, Callable[[Any], Node]] = {
            ast.BoolOp: self.logic, ast.UnaryOp: self.unary, ast.BinOp: self.arithmetic, ast.Compare: self.compare,
            ast.Name: self.name, ast.Attribute: self.attribute, ast.Constant: self.constant, ast.Call: self.call,
        }  # fmt: skip

    def visit(self, node: ast.expr) -> Node:
        visitor = self.visitors.get(type(node))
        if visitor is None:
            what = "a loop" if isinstance(node, ast.GeneratorExp) else "a list of words in brackets"
            self.fail(node, f"{what} stands where it has no meaning", "loops stand in every(), words behind `in`")
        return visitor(node)

    # --- messages

    def fail(self, at: ast.AST | Node, what: str, right: str) -> NoReturn:
        start = at.span[0] if isinstance(at, Node) else self.source.span(at)[0]
        raise ExpressionError(start, what, right)

    def text(self, span: SpanOf) -> str:
        return self.source.text[span[0] : span[1]]

    def said(self, node: Node) -> str:
        """What stands there and what it is, for a message."""
        return f"`{self.text(node.span)}`, {node.type}"

    # --- logic

    def truth(self, node: ast.expr) -> Node:
        found = self.visit(node)
        if found.type.name != YES_NO:
            self.fail(found, f"{self.said(found)}, stands where a yes/no belongs", "compare it with something")
        return found

    def logic(self, node: ast.BoolOp) -> Node:
        op = "and" if isinstance(node.op, ast.And) else "or"
        return Logic(self.source.span(node), op, tuple(self.truth(part) for part in node.values))

    def unary(self, node: ast.UnaryOp) -> Node:
        span = self.source.span(node)
        if isinstance(node.op, ast.Not):
            return Not(span, self.truth(node.operand))
        part = self.settled(self.visit(node.operand))
        if part.type.name != NUMBER or part.type.dimension[5]:
            self.fail(part, f"{self.said(part)}, cannot be negated", "put a minus before a number")
        return Negative(span, part.type, part)

    # --- numbers

    def settled(self, node: Node) -> Node:
        """A quantity in quotes as the number it says."""
        if node.type.name == LITERAL:
            assert isinstance(node, Const)
            return as_quantity(node.value, node.span[0], node.span)
        return node

    def arithmetic(self, node: ast.BinOp) -> Node:
        op = _SIGNS[type(node.op)]
        left, right = self.settled(self.visit(node.left)), self.settled(self.visit(node.right))
        for side in (left, right):
            if side.type.name != NUMBER:
                self.fail(side, f"{self.said(side)}, is no number", f"`{op}` takes two numbers")
        try:
            dimension = _DIMENSIONS[op](left.type.dimension, right.type.dimension)
        except UnitError as error:
            self.fail(left, str(error), f"`{op}` takes {self.said(left)} and something that goes with it")
        unit = left.type.unit if dimension == left.type.dimension else None
        return Arithmetic(self.source.span(node), number(dimension, unit), op, left, right)

    # --- comparisons

    def compare(self, node: ast.Compare) -> Node:
        nodes = [self.visit_operand(part) for part in (node.left, *node.comparators)]
        pairs = [
            self.pair(op, left, right, self.source.span(node))
            for op, left, right in zip(node.ops, nodes, nodes[1:], strict=False)
        ]
        return pairs[0] if len(pairs) == 1 else Logic(self.source.span(node), "and", tuple(pairs))

    def visit_operand(self, node: ast.expr) -> Node | ast.Tuple:
        return node if isinstance(node, ast.Tuple) else self.visit(node)

    def pair(self, op: ast.cmpop, left: Node | ast.Tuple, right: Node | ast.Tuple, whole: SpanOf) -> Node:
        if isinstance(left, ast.Tuple) or (isinstance(right, ast.Tuple) and not isinstance(op, (ast.In, ast.NotIn))):
            words = left if isinstance(left, ast.Tuple) else right
            assert isinstance(words, ast.Tuple)
            self.fail(words, "a list of words stands where it has no meaning", "write `fact in ('a', 'b')`")
        if isinstance(op, (ast.In, ast.NotIn)):
            found = self.membership(left, right, whole)
            return Not(whole, found) if isinstance(op, ast.NotIn) else found
        assert isinstance(right, Node)
        span = (left.span[0], right.span[1])
        left, right = self.alike(left, right)
        if type(op) in _ORDER:
            for side in (left, right):
                if side.type.name != NUMBER:
                    self.fail(side, f"{self.said(side)}, has no order", "compare two numbers, or use `==`")
            return Comparison(span, _ORDER[type(op)], left, right)
        return Comparison(span, _EQUAL[type(op)], left, right)

    def alike(self, left: Node, right: Node) -> tuple[Node, Node]:
        """Both sides with literals resolved; refuses sides that cannot be compared."""
        if left.type.name == LITERAL and right.type.name == LITERAL:
            self.fail(left, "two fixed values are compared", "compare a fact with a value")
        if isinstance(left, Const) and left.type.name == LITERAL:
            left = resolve(left.value, left.span[0], left.span, right.type)
        elif isinstance(right, Const) and right.type.name == LITERAL:
            right = resolve(right.value, right.span[0], right.span, left.type)
        a, b = left.type, right.type
        if NONE in (a.name, b.name):
            if a.name == b.name:
                self.fail(left, "two fixed values are compared", "compare a fact with `none`")
            return left, right
        if a.name != b.name or a.name in (WORDS, LIST):
            self.fail(left, f"{self.said(left)}, is compared with {self.said(right)}", "compare things of one type")
        if a.name in (NUMBER, WINDOW) and a.dimension != b.dimension:
            unit = "give the number its unit, in quotes: `'30 A'`, `'300 mm'`"
            bare = any(isinstance(side, Const) and not any(side.type.dimension) for side in (left, right))
            advice = unit if bare else "compare quantities of one dimension"
            self.fail(left, f"{self.said(left)}, is compared with {self.said(right)}", advice)
        if a.name == WORD and not set(a.words) & set(b.words):
            self.fail(left, f"{self.said(left)}, and {self.said(right)}, have no word in common", "compare two alike")
        if a.name == SUBJECT and a.of != b.of:
            self.fail(left, f"{self.said(left)}, is compared with {self.said(right)}", "compare two of one kind")
        return left, right

    def membership(self, item: Node, group: Node | ast.Tuple, span: SpanOf) -> Node:
        if isinstance(group, ast.Tuple):
            return Member(span, item, self.choice(item, group))
        kind = group.type.name
        if kind == LITERAL:
            assert isinstance(group, Const)
            if item.type.name not in (NUMBER, WINDOW):
                self.fail(
                    group, f"`{group.text}` is no list", f"write `== {group.text}`, `in ('a', 'b')` or `in '10..15 V'`"
                )
            group = as_window(group.value, group.span[0], group.span, item.type)
            kind = WINDOW
        if item.type.name == LITERAL:
            assert isinstance(item, Const)
            beside = number(group.type.dimension, group.type.unit) if kind == WINDOW else group.type
            item = resolve(item.value, item.span[0], item.span, beside)
        fits = {
            WINDOW: item.type.name in (NUMBER, WINDOW) and item.type.dimension == group.type.dimension,
            WORDS: item.type.name == WORD and bool(set(item.type.words) & set(group.type.words)),
            LIST: item.type.name == SUBJECT and item.type.of == group.type.of,
        }
        if not fits.get(kind, False):
            self.fail(
                item, f"{self.said(item)}, cannot be in {self.said(group)}",
                "write a number in a window, a word in a list of words or a subject in a list of its kind",
            )  # fmt: skip
        return Member(span, item, group)

    def choice(self, item: Node, group: ast.Tuple) -> Node:
        """The words in brackets behind `in`."""
        if item.type.name != WORD:
            self.fail(item, f"{self.said(item)}, is no word", "write `fact in ('a', 'b')` for a fact that is a word")
        words = []
        for entry in group.elts:
            if not isinstance(entry, ast.Constant) or not isinstance(entry.value, str):
                self.fail(entry, "this is no word in quotes", f"write words such as {listed(item.type.words, 4)}")
            span = self.source.span(entry)
            words.append(as_word(entry.value, span[0], span, item.type).value)
        return Const(self.source.span(group), Type(WORDS, words=item.type.words), tuple(words), "")

    # --- names

    def constant(self, node: ast.Constant) -> Node:
        span = self.source.span(node)
        if isinstance(node.value, str):
            return Const(span, Type(LITERAL), node.value, f"'{node.value}'")
        assert isinstance(node.value, (int, float))
        return Const(span, PLAIN, float(node.value), self.text(span))

    def name(self, node: ast.Name) -> Node:
        span = self.source.span(node)
        if node.id in ("true", "false"):
            return Const(span, TRUTH, node.id == "true", node.id)
        if node.id == "none":
            return Const(span, Type(NONE), None, "none")
        variable = self.scope.get(node.id)
        if variable is not None:
            return Variable(span, variable.type, variable.name, variable.slot)
        if node.id in self.catalogue.names(self.about):
            self.fail(node, f"`{node.id}` is a fact and stands alone", f"write `{self.about}.{node.id}`")
        if node.id in self.catalogue.kinds:
            self.fail(
                node, f"`{node.id}` is not at hand: the rule is about `{self.about}`",
                f"reach it with a loop such as `some(… for {node.id} in {self.about}.…)`",
            )  # fmt: skip
        names = (*self.scope, "limits", "true", "false", "none")
        right = meant(node.id, names, f"there are {listed(names)}")
        raise ExpressionError(span[0], f"nothing is called `{node.id}` here", right)

    def attribute(self, node: ast.Attribute) -> Node:
        span = self.source.span(node)
        if isinstance(node.value, ast.Name) and node.value.id == "limits":
            return self.limit(node, span)
        if not isinstance(node.value, (ast.Name, ast.Attribute)):
            self.fail(node, "a dot follows something that has no facts", "write `subject.fact`")
        base = self.visit(node.value)
        if base.type.name != SUBJECT:
            right = "loop over it: `some(… for x in list)`" if base.type.name == LIST else "it has no facts of its own"
            self.fail(base, f"{self.said(base)}, is no subject", right)
        spec = self.catalogue.find(base.type.of, node.attr)
        if spec is None or node.attr.startswith("_"):
            names = self.catalogue.names(base.type.of)
            near = fact_meant(node.attr, names)
            raise ExpressionError(span[1] - len(node.attr), f"a {base.type.of} has no fact `{node.attr}`", near)
        return Fact(span, type_of(spec), base, node.attr)

    def limit(self, node: ast.Attribute, span: SpanOf) -> Node:
        spec = self.limits.get(node.attr)
        if spec is None:
            near = meant(node.attr, self.limits, "declare it in `codes/limits.yaml`")
            raise ExpressionError(span[1] - len(node.attr), f"there is no limit `{node.attr}`", near)
        return Limit(span, type_of(spec), node.attr)

    # --- loops

    def call(self, node: ast.Call) -> Node:
        span = self.source.span(node)
        if not isinstance(node.func, ast.Name) or node.func.id not in FUNCTIONS:
            said = node.func.id if isinstance(node.func, ast.Name) else "this"
            self.fail(node, f"`{said}` cannot be called", meant(said, FUNCTIONS, f"there are {listed(FUNCTIONS)}"))
        function = node.func.id
        if len(node.args) != 1 or node.keywords:
            self.fail(node, f"`{function}` takes one loop", f"write `{function}(… for x in list)`")
        argument = node.args[0]
        if isinstance(argument, ast.GeneratorExp):
            return self.loop(function, argument, span)
        if function != "count":
            self.fail(argument, f"`{function}` takes a loop", f"write `{function}(… for x in list)`")
        items = self.visit(argument)
        if items.type.name not in (LIST, WORDS):
            self.fail(items, f"{self.said(items)}, is no list", "count a list, or the items of a loop")
        return Gather(span, PLAIN, "count", None, None, items, None)

    def loop(self, function: str, loop: ast.GeneratorExp, span: SpanOf) -> Node:
        if len(loop.generators) != 1:
            self.fail(loop, "two `for` stand in one loop", f"put `{function}(…)` into another loop")
        if self.loops >= DEEPEST_LOOP:
            self.fail(loop, f"loops stand more than {DEEPEST_LOOP} deep", "make the inner one a fact")
        part = loop.generators[0]
        items = self.visit(part.iter)
        if items.type.name != LIST:
            self.fail(items, f"{self.said(items)}, is no list of subjects", "loop over a list of subjects")
        kind = items.type.of
        if not isinstance(part.target, ast.Name) or part.target.id != kind:
            self.fail(part.target, f"the items are called by their kind, `{kind}`", f"write `for {kind} in …`")
        variable = Variable(self.source.span(part.target), Type(SUBJECT, of=kind), kind, DESIGN_SLOT + 1 + self.loops)
        outer, self.scope = self.scope, {**self.scope, kind: variable}
        self.loops += 1
        try:
            condition = self.condition(part.ifs)
            element = self.element(function, loop.elt)
        finally:
            self.loops -= 1
            self.scope = outer
        result = TRUTH if function in ("every", "some", "none") else PLAIN
        if element is not None and function in ("sum", "min", "max"):
            result = element.type
        return Gather(span, result, function, element, variable, items, condition)

    def condition(self, tests: list[ast.expr]) -> Node | None:
        if not tests:
            return None
        parts = tuple(self.truth(test) for test in tests)
        return parts[0] if len(parts) == 1 else Logic((parts[0].span[0], parts[-1].span[1]), "and", parts)

    def element(self, function: str, node: ast.expr) -> Node | None:
        found = self.settled(self.visit(node))
        if function == "count" and found.type.name == SUBJECT:
            return None
        if function in ("sum", "min", "max"):
            if found.type.name != NUMBER or (function == "sum" and found.type.dimension[5]):
                self.fail(found, f"{self.said(found)}, cannot go into `{function}`", "write a number for each item")
        elif found.type.name != YES_NO:
            self.fail(found, f"{self.said(found)}, stands where a yes/no belongs", "compare it with something")
        return found
