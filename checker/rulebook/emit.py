"""From the checked tree to Python source: a quick form for exact values and a careful one for everything else.

The quick form uses Python's own comparisons, which raise `Undecided` on a range or an unknown and TypeError on none;
only the subject that raised is then put to the careful form, which works with three answers. Where many subjects
raise, the rest goes straight to the careful form. Both see no name but those handed to them. Nothing of the text of a
rule gets into the source: names have been looked up in the catalogue, and fixed values are written out anew.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from types import CodeType
from typing import Any

from checker.quantities import (
    Unknown,
    add,
    between,
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
    ABOUT_SLOT,
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
    walk,
)
from checker.rulebook.types import WINDOW

ARITHMETIC = {"+": "add", "-": "subtract", "*": "multiply", "/": "divide"}
COMPARE = {"<": "less", "<=": "less_equal", ">": "greater", ">=": "greater_equal", "==": "equal", "!=": "not_equal"}

NAMES: dict[str, Any] = {
    "__builtins__": {}, "Unknown": Unknown, "type": type, "tuple": tuple, "len": len,
    "float": float, "between": between, "within": within, "add": add, "subtract": subtract,
    "multiply": multiply, "divide": divide, "less": less, "less_equal": less_equal, "greater": greater,
    "greater_equal": greater_equal, "equal": equal, "not_equal": not_equal, "ask": logic.ask, "member": logic.member,
    "minus": logic.minus, "sum_in": logic.sum_in, "min_in": logic.min_in, "max_in": logic.max_in,
}  # fmt: skip
"""All that the compiled form of a rule can name."""

Crashed = Callable[[Any, Exception], str]
Slow = Callable[[Iterable[Any]], list[str]]
Batch = Callable[..., list[str]]
Through = Callable[[Iterator[Any], Any, Mapping[str, Any], Callable[[str], None]], None]
"""Adds a verdict for each subject that is left; where one raises, the next call goes on behind it."""


class Writer:
    """Lines of source, fixed values without a written form, and the limits that are looked up once at the start.

    `value` gives an expression for a node and, where that takes statements, writes those first.
    """

    def __init__(self, depth: int) -> None:
        self.lines: list[str] = []
        self.depth = depth
        self.values: list[Any] = []
        self.limits: list[str] = []
        self.names = 0

    def say(self, line: str) -> None:
        """Write one statement."""
        self.lines.append("    " * self.depth + line)

    def keep(self, value: str) -> str:
        """A name that holds the value of the expression."""
        self.names += 1
        name = f"t{self.names}"
        self.say(f"{name} = {value}")
        return name

    def value(self, node: Node) -> str:
        """An expression for the node."""
        return getattr(self, _METHODS[type(node)])(node)  # type: ignore[no-any-return]

    def variable(self, node: Variable) -> str:
        return f"v{node.slot}"

    def limit(self, node: Limit) -> str:
        if node.name not in self.limits:
            self.limits.append(node.name)
        return f"l{self.limits.index(node.name)}"

    def const(self, node: Const) -> str:
        if node.type.name == WINDOW:
            self.values.append(node.value)
            return f"k{len(self.values) - 1}"
        return repr(node.value)

    def negative(self, node: Negative) -> str:
        return f"minus({self.value(node.part)})"

    def arithmetic(self, node: Arithmetic) -> str:
        return f"{ARITHMETIC[node.op]}({self.value(node.left)}, {self.value(node.right)})"

    def through(self, label: str) -> Through:
        """Compile what was written as the body of a loop over subjects; the little that is compiled starts fastest."""
        head = "def through(rest, v1, limits, add_verdict):"
        prelude = [f"    l{at} = limits[{name!r}]" for at, name in enumerate(self.limits)]
        text = "\n".join([head, *prelude, f"    for v{ABOUT_SLOT} in rest:", *self.lines])
        code: CodeType = compile(text, f"<rule {label}>", "exec")
        names = {**NAMES, **{f"k{at}": value for at, value in enumerate(self.values)}}
        exec(code, names)  # noqa: S102 - source written by this module alone, from a checked tree, without builtins
        return names["through"]  # type: ignore[no-any-return]


_METHODS: dict[type[Node], str] = {
    Const: "const", Variable: "variable", Fact: "fact", Limit: "limit", Logic: "logic", Not: "negation",
    Negative: "negative", Arithmetic: "arithmetic", Comparison: "comparison", Member: "member", Gather: "gather",
}  # fmt: skip


def _loops(node: Node) -> bool:
    """Whether the node takes statements."""
    return any(isinstance(part, Gather) and part.variable is not None for part in walk(node))


class Quick(Writer):
    """The form for exact values: Python's own truth, and an exception for whatever is not exact."""

    def fact(self, node: Fact) -> str:
        if hasattr(Unknown, node.name):  # an unknown subject must not answer with an attribute of its own
            return f"ask({self.value(node.base)}, {node.name!r})"
        return f"{self.value(node.base)}.{node.name}"

    def logic(self, node: Logic) -> str:
        if not _loops(node):
            return "(" + f" {node.op} ".join(self.value(part) for part in node.parts) + ")"
        result = self.keep(self.value(node.parts[0]))
        for part in node.parts[1:]:
            self.say(f"if {result}:" if node.op == "and" else f"if not {result}:")
            self.depth += 1
            self.say(f"{result} = {self.value(part)}")
            self.depth -= 1
        return result

    def negation(self, node: Not) -> str:
        return f"(not {self.value(node.part)})"

    def comparison(self, node: Comparison) -> str:
        left, right = self.value(node.left), self.value(node.right)
        # Two ranges written alike are equal to Python, though the numbers behind them may differ.
        if node.op in ("==", "!=") and not isinstance(node.left, Const) and not isinstance(node.right, Const):
            return f"{COMPARE[node.op]}({left}, {right})"
        return f"({left} {node.op} {right})"

    def member(self, node: Member) -> str:
        item, group = self.value(node.item), self.value(node.group)
        if node.group.type.name == WINDOW:
            return f"within({item}, {group})"
        if isinstance(node.group, Const) or isinstance(node.item, Const):
            return f"({item} in {group})"
        return f"member({item}, {group})"

    def gather(self, node: Gather) -> str:
        items = self.value(node.items)
        if node.variable is None:
            return f"float(len({items}))"
        result = self.keep({"every": "True", "none": "True", "some": "False", "count": "0.0"}.get(node.function, "[]"))
        self.say(f"for {self.variable(node.variable)} in {items}:")
        self.depth += 1
        if node.condition is not None:
            self.say(f"if {self.value(node.condition)}:")
            self.depth += 1
        self._element(node, result)
        self.depth -= 1 if node.condition is None else 2
        return result if node.type.name == "yes/no" or node.function == "count" else f"{node.function}_in({result}, [])"

    def _element(self, node: Gather, result: str) -> None:
        if node.element is None:
            self.say(f"{result} += 1.0")
            return
        element = self.value(node.element)
        if node.function in ("sum", "min", "max"):
            self.say(f"{result}.append({element})")
            return
        self.say(f"if not {element}:" if node.function == "every" else f"if {element}:")
        self.depth += 1
        if node.function == "count":
            self.say(f"{result} += 1.0")
        else:
            self.say(f"{result} = {node.function == 'some'}")
            self.say("break")
        self.depth -= 1


class Careful(Writer):
    """The three-valued form. A yes/no is True, False, Unknown, or None, which is no."""

    def fact(self, node: Fact) -> str:
        if isinstance(node.base, Variable):
            return f"{self.value(node.base)}.{node.name}"
        return f"ask({self.value(node.base)}, {node.name!r})"

    def logic(self, node: Logic) -> str:
        result = self.keep(self.value(node.parts[0]))
        for part in node.parts[1:]:
            if node.op == "and":
                self.say(f"if {result} is not False and {result} is not None:")
                self.depth += 1
                other = self.keep(self.value(part))
                self.say(f"if {other} is not True: {result} = {other}")
            else:
                self.say(f"if {result} is not True:")
                self.depth += 1
                other = self.keep(self.value(part))
                self.say(f"if {other} is not False and {other} is not None: {result} = {other}")
            self.depth -= 1
        return result

    def negation(self, node: Not) -> str:
        part = self.keep(self.value(node.part))
        return f"({part} if type({part}) is Unknown else not {part})"

    def comparison(self, node: Comparison) -> str:
        return f"{COMPARE[node.op]}({self.value(node.left)}, {self.value(node.right)})"

    def member(self, node: Member) -> str:
        name = "within" if node.group.type.name == WINDOW else "member"
        return f"{name}({self.value(node.item)}, {self.value(node.group)})"

    def gather(self, node: Gather) -> str:
        items = self.keep(self.value(node.items))
        result = self.keep(items)
        self.say(f"if type({items}) is tuple:")
        self.depth += 1
        if node.variable is None:
            self.say(f"{result} = float(len({items}))")
        elif node.type.name == "yes/no":
            self._answers(node, items, result)
        elif node.function == "count":
            self._count(node, items, result)
        else:
            self._numbers(node, items, result)
        self.depth -= 1
        if node.type.name == "yes/no":
            self.say(f"elif {items} is None: {result} = False")
        return result

    def _loop(self, node: Gather, items: str) -> str:
        """Begin the loop; the name of whether the subject is kept, `True` when all are."""
        assert node.variable is not None
        self.say(f"for {self.variable(node.variable)} in {items}:")
        self.depth += 1
        if node.condition is None:
            return "True"
        kept = self.keep(self.value(node.condition))
        self.say(f"if {kept} is False or {kept} is None: continue")
        return kept

    def _answers(self, node: Gather, items: str, result: str) -> None:
        """`every`, `some`, `none`: an answer that settles the whole ends the loop, an undecided one is remembered."""
        assert node.element is not None
        every = node.function == "every"
        self.say(f"{result} = {node.function != 'some'}")
        kept = self._loop(node, items)
        element = self.keep(self.value(node.element))
        settles = f"{element} is False or {element} is None" if every else f"{element} is True"
        self.say(f"if {settles}:")
        self.depth += 1
        if kept != "True":
            self.say(f"if {kept} is not True:")
            self.say(f"    {result} = {kept}")
            self.say("    continue")
        self.say(f"{result} = {node.function == 'some'}")
        self.say("break")
        self.depth -= 1
        other = f"{element} is not True" if every else f"{element} is not False and {element} is not None"
        self.say(f"if {other}: {result} = {element}")
        self.depth -= 1

    def _count(self, node: Gather, items: str, result: str) -> None:
        sure, perhaps = self.keep("0.0"), self.keep("0.0")
        kept = self._loop(node, items)
        if node.element is not None:
            element = self.keep(self.value(node.element))
            self.say(f"if {element} is False or {element} is None: continue")
            self.say(f"if {kept} is True and {element} is True: {sure} += 1.0")
        else:
            self.say(f"if {kept} is True: {sure} += 1.0")
        self.say(f"{perhaps} += 1.0")
        self.depth -= 1
        self.say(f"{result} = between({sure}, {perhaps})")

    def _numbers(self, node: Gather, items: str, result: str) -> None:
        assert node.element is not None
        sure, perhaps = self.keep("[]"), self.keep("[]")
        kept = self._loop(node, items)
        self.say(f"({sure} if {kept} is True else {perhaps}).append({self.value(node.element)})")
        self.depth -= 1
        self.say(f"{result} = {node.function}_in({sure}, {perhaps})")


def quick_batch(given: Node, require: Node, label: str) -> Batch:
    """`batch(subjects, design, limits, slow)`: a verdict for each subject.

    `slow(subjects)` gives the verdicts of those that are not exact; once more than one in ten was not, of all the rest.
    """
    writer = Quick(depth=2)
    writer.say(f"if {writer.value(given)}:")
    writer.depth += 1
    writer.say(f"add_verdict('met' if {writer.value(require)} else 'breach')")
    writer.depth -= 1
    writer.say("else:")
    writer.say("    add_verdict('not applicable')")
    through = writer.through(label)

    def batch(subjects: Iterable[Any], design: Any, limits: Mapping[str, Any], slow: Slow) -> list[str]:
        subjects = tuple(subjects)
        found: list[str] = []
        rest = iter(subjects)
        raised = 0
        while True:
            try:
                through(rest, design, limits, found.append)
                return found
            except Exception:  # noqa: BLE001 - whatever it is, the careful form meets it again and tells
                found += slow((subjects[len(found)],))
                raised += 1
                if raised > 2 and 10 * raised > len(found):
                    found += slow(rest)

    return batch


def careful_batch(given: Node, require: Node, label: str) -> Batch:
    """`batch(subjects, design, limits, crashed)`: a verdict for each subject, whatever its facts are.

    `crashed(subject, error)` gives the verdict where a fact raises.
    """
    writer = Careful(depth=2)
    writer.say(f"given = {writer.value(given)}")
    writer.say("if given is False or given is None:")
    writer.say("    add_verdict('not applicable')")
    writer.say("    continue")
    writer.say(f"require = {writer.value(require)}")
    writer.say("if require is True: add_verdict('met')")
    writer.say("elif given is True and (require is False or require is None): add_verdict('breach')")
    writer.say("else: add_verdict('unproven')")
    through = writer.through(label)

    def batch(subjects: Iterable[Any], design: Any, limits: Mapping[str, Any], crashed: Crashed) -> list[str]:
        subjects = tuple(subjects)
        found: list[str] = []
        rest = iter(subjects)
        while True:
            try:
                through(rest, design, limits, found.append)
                return found
            except Exception as error:  # noqa: BLE001 - whatever a fact raises, the pair is unproven and told
                found.append(crashed(subjects[len(found)], error))

    return batch
