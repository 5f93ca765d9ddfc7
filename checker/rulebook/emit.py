"""From the checked tree to Python source: a quick form for exact values and a careful one for everything else.

The quick form uses Python's own comparisons, which raise `Undecided` on a range or an unknown and TypeError on none;
only the subject that raised is then put to the careful form, which calls the three-valued functions. Both see no name
but those handed to them. Nothing of the text of a rule gets into the source: names have been looked up in the
catalogue, and fixed values are written out anew.
"""

from __future__ import annotations

from collections.abc import Callable
from types import CodeType
from typing import Any

from checker.quantities import (
    Unknown,
    add,
    divide,
    equal,
    greater,
    greater_equal,
    greatest,
    least,
    less,
    less_equal,
    multiply,
    not_equal,
    subtract,
    total,
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
)
from checker.rulebook.types import WINDOW

_ARITHMETIC = {"+": "add", "-": "subtract", "*": "multiply", "/": "divide"}
_COMPARE = {
    "<": "less", "<=": "less_equal", ">": "greater", ">=": "greater_equal", "==": "equal", "!=": "not_equal",
}  # fmt: skip

NAMES: dict[str, Any] = {
    "__builtins__": {}, "Fault": Exception, "all": all, "any": any, "len": len, "float": float,
    "add": add, "subtract": subtract, "multiply": multiply, "divide": divide,
    "total": total, "least": least, "greatest": greatest,
    "less": less, "less_equal": less_equal, "greater": greater, "greater_equal": greater_equal,
    "equal": equal, "not_equal": not_equal, "within": within,
    **{name: getattr(logic, name) for name in logic.__all__},
}  # fmt: skip
"""All that the compiled form of a rule can name."""

_METHODS: dict[type[Node], str] = {
    Const: "const", Variable: "variable", Fact: "fact", Limit: "limit", Logic: "logic", Not: "negation",
    Negative: "negative", Arithmetic: "arithmetic", Comparison: "comparison", Member: "member", Gather: "gather",
}  # fmt: skip

Decide = Callable[[Any, Any, Any], str]


class _Writer:
    """What both forms share: variables, limits, and fixed values that have no written form."""

    def __init__(self) -> None:
        self.values: list[Any] = []
        self.limits: list[str] = []
        self.names = 0

    def write(self, node: Node) -> str:
        """A Python expression for the node."""
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
        return f"minus({self.write(node.part)})"

    def arithmetic(self, node: Arithmetic) -> str:
        return f"{_ARITHMETIC[node.op]}({self.write(node.left)}, {self.write(node.right)})"

    def prelude(self) -> list[str]:
        return [f"    l{at} = limits[{name!r}]" for at, name in enumerate(self.limits)]

    def make(self, lines: list[str], name: str, label: str) -> Any:
        """Compile the lines and return what they define."""
        code: CodeType = compile("\n".join(lines), f"<rule {label}>", "exec")
        names = {**NAMES, **{f"k{at}": value for at, value in enumerate(self.values)}}
        exec(code, names)  # noqa: S102 - source written by this module alone, from a checked tree, without builtins
        return names[name]


class Quick(_Writer):
    """The form for exact values."""

    def fact(self, node: Fact) -> str:
        if hasattr(Unknown, node.name):  # an unknown subject must not answer with an attribute of its own
            return f"ask({self.write(node.base)}, {node.name!r})"
        return f"{self.write(node.base)}.{node.name}"

    def logic(self, node: Logic) -> str:
        return "(" + f" {node.op} ".join(self.write(part) for part in node.parts) + ")"

    def negation(self, node: Not) -> str:
        return f"(not {self.write(node.part)})"

    def comparison(self, node: Comparison) -> str:
        left, right = self.write(node.left), self.write(node.right)
        # Two ranges written alike are equal to Python, though the numbers behind them may differ.
        if node.op in ("==", "!=") and not isinstance(node.left, Const) and not isinstance(node.right, Const):
            return f"{_COMPARE[node.op]}({left}, {right})"
        return f"({left} {node.op} {right})"

    def member(self, node: Member) -> str:
        if node.group.type.name == WINDOW:
            return f"within({self.write(node.item)}, {self.write(node.group)})"
        if isinstance(node.group, Const) or isinstance(node.item, Const):
            return f"({self.write(node.item)} in {self.write(node.group)})"
        return f"member({self.write(node.item)}, {self.write(node.group)})"

    def gather(self, node: Gather) -> str:
        items = self.write(node.items)
        if node.variable is None:
            return f"float(len({items}))"
        test = "" if node.condition is None else f" if {self.write(node.condition)}"
        loop = f"for {self.variable(node.variable)} in {items}{test}"
        if node.function == "count":
            if node.element is not None:
                test = f"{test} and {self.write(node.element)}" if test else f" if {self.write(node.element)}"
            return f"float(len([1 for {self.variable(node.variable)} in {items}{test}]))"
        assert node.element is not None
        element = self.write(node.element)
        pattern = {
            "every": "all({} {})", "some": "any({} {})", "none": "(not any({} {}))",
            "sum": "total([{} {}])", "min": "least([{} {}])", "max": "greatest([{} {}])",
        }[node.function]  # fmt: skip
        return pattern.format(element, loop)


class Careful(_Writer):
    """The three-valued form."""

    def fact(self, node: Fact) -> str:
        if isinstance(node.base, Variable):
            return f"{self.write(node.base)}.{node.name}"
        return f"ask({self.write(node.base)}, {node.name!r})"

    def logic(self, node: Logic) -> str:
        name, stop = ("both_of", "False") if node.op == "and" else ("either_of", "True")
        result = self.write(node.parts[0])
        for part in node.parts[1:]:
            kept = self.kept()
            result = f"({stop} if ({kept} := {result}) is {stop} else {name}({kept}, {self.write(part)}))"
        return result

    def kept(self) -> str:
        """A name for a value that is looked at twice."""
        self.names += 1
        return f"t{self.names}"

    def negation(self, node: Not) -> str:
        return f"opposite({self.write(node.part)})"

    def comparison(self, node: Comparison) -> str:
        return f"{_COMPARE[node.op]}({self.write(node.left)}, {self.write(node.right)})"

    def member(self, node: Member) -> str:
        name = "within" if node.group.type.name == WINDOW else "member"
        return f"{name}({self.write(node.item)}, {self.write(node.group)})"

    def gather(self, node: Gather) -> str:
        parts = [self.write(node.items)]
        if node.variable is not None:
            name = self.variable(node.variable)
            parts.append("None" if node.element is None else f"lambda {name}: {self.write(node.element)}")
            if node.condition is not None:
                parts.append(f"lambda {name}: {self.write(node.condition)}")
        return f"{node.function}_of({', '.join(parts)})"


def quick_batch(given: Node, require: Node, label: str) -> Callable[..., list[str]]:
    """`batch(subjects, design, limits, slow)`: a verdict for each subject, `slow(subject)` where it is not exact."""
    writer = Quick()
    wanted = f"('met' if {writer.write(require)} else 'breach')"
    if not (isinstance(given, Const) and given.value is True):
        wanted = f"({wanted} if {writer.write(given)} else 'not applicable')"
    lines = [
        "def batch(subjects, v1, limits, slow):",
        *writer.prelude(),
        "    found = []",
        "    add_verdict = found.append",
        f"    for v{ABOUT_SLOT} in subjects:",
        "        try:",
        f"            add_verdict({wanted})",
        "        except Fault:",
        f"            add_verdict(slow(v{ABOUT_SLOT}))",
        "    return found",
    ]
    return writer.make(lines, "batch", label)  # type: ignore[no-any-return]


def careful_one(given: Node, require: Node, label: str) -> Decide:
    """`decide(subject, design, limits)`: the verdict for one subject, whatever its facts are."""
    writer = Careful()
    given_text, require_text = writer.write(given), writer.write(require)
    lines = [
        f"def decide(v{ABOUT_SLOT}, v1, limits):",
        *writer.prelude(),
        f"    given = truth({given_text})",
        "    if given is False:",
        "        return 'not applicable'",
        f"    require = truth({require_text})",
        "    if require is True:",
        "        return 'met'",
        "    if require is False and given is True:",
        "        return 'breach'",
        "    return 'unproven'",
    ]
    return writer.make(lines, "decide", label)  # type: ignore[no-any-return]
