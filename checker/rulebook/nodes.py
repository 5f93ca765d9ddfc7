"""The checked tree of an expression. Every node knows its type and which characters of the text it came from."""

from __future__ import annotations

from typing import Any

from checker.rulebook.types import TRUTH, Type

SpanOf = tuple[int, int]

ABOUT_SLOT, DESIGN_SLOT = 0, 1
"""The subject a rule is about and the design have the first two places among the variables."""


class Node:
    """Base of all nodes: `span` are the first character and the one behind the last; `type` what it is."""

    __slots__ = ("span", "type")

    def __init__(self, span: SpanOf, kind: Type) -> None:
        self.span = span
        self.type = kind

    def children(self) -> tuple[Node, ...]:
        """The nodes directly below."""
        return ()


class Const(Node):
    """A fixed value: float, word, bool, None, Window or tuple of words; `text` as it was written."""

    __slots__ = ("text", "value")

    def __init__(self, span: SpanOf, kind: Type, value: Any, text: str) -> None:
        super().__init__(span, kind)
        self.value = value
        self.text = text


class Variable(Node):
    """A subject: what the rule is about, the design, or the one a loop is at."""

    __slots__ = ("name", "slot")

    def __init__(self, span: SpanOf, kind: Type, name: str, slot: int) -> None:
        super().__init__(span, kind)
        self.name = name
        self.slot = slot


class Fact(Node):
    """A fact of a subject."""

    __slots__ = ("base", "name")

    def __init__(self, span: SpanOf, kind: Type, base: Node, name: str) -> None:
        super().__init__(span, kind)
        self.base = base
        self.name = name

    def children(self) -> tuple[Node, ...]:
        return (self.base,)


class Limit(Node):
    """A limit of the code of practice."""

    __slots__ = ("name",)

    def __init__(self, span: SpanOf, kind: Type, name: str) -> None:
        super().__init__(span, kind)
        self.name = name


class Logic(Node):
    """`and` or `or` of two or more parts."""

    __slots__ = ("op", "parts")

    def __init__(self, span: SpanOf, op: str, parts: tuple[Node, ...]) -> None:
        super().__init__(span, TRUTH)
        self.op = op
        self.parts = parts

    def children(self) -> tuple[Node, ...]:
        return self.parts


class Not(Node):
    """`not` of one part."""

    __slots__ = ("part",)

    def __init__(self, span: SpanOf, part: Node) -> None:
        super().__init__(span, TRUTH)
        self.part = part

    def children(self) -> tuple[Node, ...]:
        return (self.part,)


class Negative(Node):
    """The number below zero that lies as far from it."""

    __slots__ = ("part",)

    def __init__(self, span: SpanOf, kind: Type, part: Node) -> None:
        super().__init__(span, kind)
        self.part = part

    def children(self) -> tuple[Node, ...]:
        return (self.part,)


class Arithmetic(Node):
    """`+`, `-`, `*` or `/` of two numbers."""

    __slots__ = ("left", "op", "right")

    def __init__(self, span: SpanOf, kind: Type, op: str, left: Node, right: Node) -> None:
        super().__init__(span, kind)
        self.op = op
        self.left = left
        self.right = right

    def children(self) -> tuple[Node, ...]:
        return (self.left, self.right)


class Comparison(Node):
    """`<`, `<=`, `>`, `>=`, `==` or `!=` of two values of one type."""

    __slots__ = ("left", "op", "right")

    def __init__(self, span: SpanOf, op: str, left: Node, right: Node) -> None:
        super().__init__(span, TRUTH)
        self.op = op
        self.left = left
        self.right = right

    def children(self) -> tuple[Node, ...]:
        return (self.left, self.right)


class Member(Node):
    """`item in group`: a number in a window, a word in a list of words, a subject in a list of subjects."""

    __slots__ = ("group", "item")

    def __init__(self, span: SpanOf, item: Node, group: Node) -> None:
        super().__init__(span, TRUTH)
        self.item = item
        self.group = group

    def children(self) -> tuple[Node, ...]:
        return (self.item, self.group)


class Gather(Node):
    """`every`, `some`, `none`, `count`, `sum`, `min` or `max` over a list of subjects.

    `element` is None when subjects are counted; `condition` when nothing is left out.
    """

    __slots__ = ("condition", "element", "function", "items", "variable")

    def __init__(
        self,
        span: SpanOf,
        kind: Type,
        function: str,
        element: Node | None,
        variable: Variable | None,
        items: Node,
        condition: Node | None,
    ) -> None:
        super().__init__(span, kind)
        self.function = function
        self.element = element
        self.variable = variable
        self.items = items
        self.condition = condition

    def children(self) -> tuple[Node, ...]:
        return tuple(node for node in (self.items, self.element, self.condition) if node is not None)


def walk(node: Node) -> list[Node]:
    """The node and everything below it, in reading order."""
    found = [node]
    for child in node.children():
        found.extend(walk(child))
    return found
