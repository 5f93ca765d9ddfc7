"""From the text of an expression to Python's own syntax tree: bounded in every direction, nothing executed.

Only the grammar is Python's. Of its nodes those listed here are let through; what they mean is decided in `check`.
"""

from __future__ import annotations

import ast
import re

LONGEST = 1_000
"""Characters of the longest expression."""
MOST_NODES = 300
DEEPEST = 24
MOST_BRACKETS = 20
MOST_DIGITS = 15

_MARKS = frozenset((
    ast.And, ast.Or, ast.Not, ast.USub, ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Lt, ast.LtE, ast.Gt, ast.GtE, ast.Eq,
    ast.NotEq, ast.In, ast.NotIn, ast.Load, ast.Store,
))  # fmt: skip
"""Operators and marks, which hold nothing."""

ALLOWED = frozenset((
    ast.Expression, ast.BoolOp, ast.UnaryOp, ast.BinOp, ast.Compare, ast.Name, ast.Attribute, ast.Constant, ast.Call,
    ast.GeneratorExp, ast.comprehension, ast.Tuple,
))  # fmt: skip

FORBIDDEN_WORDS = {
    ast.Lambda: "a lambda", ast.IfExp: "`if … else`", ast.ListComp: "a list in square brackets",
    ast.SetComp: "a set", ast.DictComp: "a dictionary", ast.List: "a list in square brackets", ast.Dict: "a dictionary",
    ast.Set: "a set", ast.Subscript: "an index in square brackets", ast.Starred: "a star", ast.JoinedStr: "an f-string",
    ast.NamedExpr: "`:=`", ast.Await: "`await`", ast.Yield: "`yield`", ast.YieldFrom: "`yield`", ast.Pow: "`**`",
    ast.Mod: "`%` outside quotes", ast.FloorDiv: "`//`", ast.MatMult: "`@`", ast.BitAnd: "`&`", ast.BitOr: "`|`",
    ast.BitXor: "`^`", ast.LShift: "`<<`", ast.RShift: "`>>`", ast.Invert: "`~`", ast.UAdd: "a leading `+`",
    ast.Is: "`is`", ast.IsNot: "`is not`", ast.keyword: "a named argument",
}  # fmt: skip

KEYWORDS = ("and", "or", "not", "in", "if", "for")

RIGHT = (
    "an expression is made of facts, limits, quantities in quotes, + - * /, comparisons, `in`, and, or, not, and "
    "every some none count sum min max"
)


class ExpressionError(Exception):
    """`what` is wrong at character `offset` of the expression, and what is `right`."""

    def __init__(self, offset: int, what: str, right: str = RIGHT) -> None:
        super().__init__(what)
        self.offset = offset
        self.what = what
        self.right = right


class Source:
    """The text of an expression on one line, and the way from the parser's byte columns to its characters."""

    __slots__ = ("_bytes", "lead", "text")

    def __init__(self, text: str) -> None:
        self.text = text.replace("\n", " ")
        self.lead = len(self.text) - len(self.text.lstrip())
        stripped = self.text[self.lead :]
        self._bytes = None if stripped.isascii() else stripped.encode()

    @property
    def code(self) -> str:
        """What the parser gets to see."""
        return self.text.strip()

    def _characters(self, column: int) -> int:
        if self._bytes is None:
            return column + self.lead
        return len(self._bytes[:column].decode(errors="ignore")) + self.lead

    def span(self, node: ast.AST) -> tuple[int, int]:
        """First character of the node and the one behind its last."""
        start, end = getattr(node, "col_offset", 0), getattr(node, "end_col_offset", None)
        if self._bytes is None and end is not None:  # nearly always: bytes are characters
            return start + self.lead, end + self.lead
        return self._characters(start), self._characters(len(self.text.encode()) if end is None else end)


def parse_expression(text: str) -> tuple[ast.expr, Source]:
    """The syntax tree of `text`, every node of it among `ALLOWED`. Raises ExpressionError."""
    if len(text) > LONGEST:
        what = f"the expression has {len(text):,} characters, more than {LONGEST:,}"
        raise ExpressionError(0, what, "make a part of it a fact")
    source = Source(text)
    _look_over(source.text)
    try:
        tree = ast.parse(source.code, mode="eval")
    except SyntaxError as error:
        offset = min((error.offset or 1) - 1 + source.lead, len(text) - 1)
        raise ExpressionError(max(offset, 0), f"this cannot be read: {error.msg}", _slip(source.code)) from None
    except (ValueError, RecursionError, MemoryError):
        raise ExpressionError(0, "this is nested too deep to be read", "make it a fact") from None
    _bound(tree, source)
    return tree.body, source


def _slip(text: str) -> str:
    """What is right instead of the slips that are made most: a quantity without quotes, `=`, and words in capitals."""
    bare = re.sub(r"'[^']*'|\"[^\"]*\"", "''", text)
    quantity = re.search(r"(?<![\w.])\d+(\.\d+)? *(%|[A-Za-zµΩ°]+\d?)", bare)
    if quantity and quantity[2] not in KEYWORDS:
        return f"a quantity stands in quotes: `'{quantity[0]}'`"
    if re.search(r"(?<![<>=!:])=(?!=)", bare):
        return "what is equal is asked with `==`"
    if capital := re.search(r"\b(AND|OR|NOT|IN|And|Or|Not|In)\b", bare):
        return f"write `{capital[0].lower()}` in small letters"
    return RIGHT


def _look_over(text: str) -> None:
    """Refuse what should not even reach the parser."""
    if not text.strip():
        raise ExpressionError(0, "there is no expression", "write a condition, or `true`")
    if text.isprintable() and "\\" not in text and sum(map(text.count, "([{")) <= MOST_BRACKETS:
        return
    depth = 0
    for offset, letter in enumerate(text):
        if letter == "\\" or not letter.isprintable():
            raise ExpressionError(offset, f"the character {letter!r} does not belong in an expression")
        if letter in "([{":
            depth += 1
            if depth > MOST_BRACKETS:
                raise ExpressionError(offset, f"brackets are nested more than {MOST_BRACKETS} deep", "make it a fact")
        elif letter in ")]}":
            depth -= 1


def _bound(tree: ast.AST, source: Source) -> None:
    """Refuse nodes that the language does not have, and trees too deep or too large to be read aloud."""
    waiting: list[tuple[ast.AST, int, ast.AST]] = [(tree, 0, tree)]
    seen = 0
    while waiting:
        node, depth, near = waiting.pop()
        kind = type(node)
        if kind in _MARKS:
            continue
        if kind is not ast.comprehension and kind is not ast.Expression:
            near = node if hasattr(node, "col_offset") else near
        seen += 1
        if seen > MOST_NODES or depth > DEEPEST:
            raise ExpressionError(
                source.span(near)[0], "the expression is too long or nested too deep", "make a part of it a fact"
            )
        if kind not in ALLOWED:
            said = FORBIDDEN_WORDS.get(kind, kind.__name__)
            raise ExpressionError(source.span(near)[0], f"{said} does not belong to the language of rules")
        if isinstance(node, ast.comprehension) and node.is_async:
            raise ExpressionError(source.span(near)[0], "`async` does not belong to the language of rules")
        if isinstance(node, ast.Constant):
            _constant(node, source.span(near)[0])
        for field in node._fields:
            value = getattr(node, field)
            if isinstance(value, ast.AST):
                waiting.append((value, depth + 1, near))
            elif type(value) is list:
                waiting.extend((child, depth + 1, near) for child in value)


def _constant(node: ast.Constant, offset: int) -> None:
    value = node.value
    if isinstance(value, bool) or value is None:
        raise ExpressionError(offset, f"`{value}` is written small here", "write `true`, `false` or `none`")
    if isinstance(value, str):
        if node.kind:
            raise ExpressionError(offset, "a letter stands before the quote", "write the quotes alone")
        return
    if not isinstance(value, (int, float)):
        raise ExpressionError(offset, "this is neither a number nor a quantity", "write a number, or `'300 mm'`")
    if not abs(value) < 10**MOST_DIGITS:
        raise ExpressionError(offset, f"the number has more than {MOST_DIGITS} digits", "write a smaller number")
