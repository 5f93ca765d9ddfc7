"""Values of limits and of examples: text of a rule file as a value of a given type."""

from __future__ import annotations

from typing import Any

from checker.quantities import UNKNOWN, QuantityError, UnitError, parse, parse_window
from checker.rulebook.problems import Problems, listed, meant
from checker.rulebook.source import Items, Node, Text
from checker.rulebook.types import NUMBER, WINDOW, WORD, WORDS, YES_NO, Type


def read_value(node: Node, kind: Type, problems: Problems) -> Any:
    """The value of a number, window, yes/no, word, list of words or text; UNKNOWN with a problem when it is none."""
    if isinstance(node, Items) and kind.name == WORDS:
        return tuple(_word(item, kind, problems) for item in node.items)
    if not isinstance(node, Text):
        problems.add(node, f"a list or mapping stands where {kind} belongs", f"write {kind}")
        return UNKNOWN
    text = node.text.strip()
    if text == "unknown":
        return UNKNOWN
    if text == "none":
        return None
    if kind.name in (NUMBER, WINDOW):
        return _quantity(node, text, kind, problems)
    if kind.name == YES_NO:
        if text not in ("true", "false"):
            problems.add(node, f"`{text}` is no yes/no", "write `true`, `false`, `unknown` or `none`")
            return UNKNOWN
        return text == "true"
    if kind.name == WORD:
        return _word(node, kind, problems)
    if kind.name == WORDS:
        problems.add(node, "one word stands where a list belongs", f"write `[{text}]`")
        return UNKNOWN
    return text


def _quantity(node: Text, text: str, kind: Type, problems: Problems) -> Any:
    try:
        return parse_window(text, kind.unit) if kind.name == WINDOW else parse(text, kind.unit)
    except (QuantityError, UnitError, ValueError) as error:
        problems.add(node, str(error), f"write {kind}")
        return UNKNOWN


def _word(node: Node, kind: Type, problems: Problems) -> Any:
    text = node.text.strip() if isinstance(node, Text) else ""
    if text not in kind.words:
        problems.add(node, f"`{text}` is not one of its words", meant(text, kind.words, f"write {listed(kind.words)}"))
        return UNKNOWN
    return text
