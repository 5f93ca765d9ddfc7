"""The types of the rule language: what a fact, a limit or a part of an expression can be."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.quantities import Dimension, dimension_of, say_dimension, unit_for

NUMBER, YES_NO, WORD, WORDS, TEXT, WINDOW, LIST, SUBJECT, NONE, LITERAL = (
    "number", "yes/no", "word", "words", "text", "window", "list", "subject", "none", "literal",
)  # fmt: skip


class Type(NamedTuple):
    """`name` is one of the constants above.

    A number or window has a `dimension` and the `unit` in which it is shown and literals beside it are read; a word
    or list of words its closed list of `words`; a list or subject the kind of subject `of`.
    """

    name: str
    dimension: Dimension = (0, 0, 0, 0, 0, 0)
    unit: str = ""
    words: tuple[str, ...] = ()
    of: str = ""

    def __str__(self) -> str:
        if self.name == NUMBER:
            return say_dimension(self.dimension)
        if self.name == WINDOW:
            return f"a window of {say_dimension(self.dimension).removeprefix('a ').removeprefix('an ')}"
        if self.name in (LIST, SUBJECT):
            return f"a list of {self.of}" if self.name == LIST else f"a {self.of}"
        return {"yes/no": "a yes/no", "word": "a word", "words": "a list of words", "none": "`none`"}.get(
            self.name, f"a {self.name}"
        )


def number(dimension: Dimension, unit: str | None = None) -> Type:
    """The type of a number of that dimension."""
    return Type(NUMBER, dimension, unit or unit_for(dimension) or "")


PLAIN = number(dimension_of("count"), "count")
TRUTH = Type(YES_NO)


def type_of(spec: Any) -> Type:
    """The type of a fact or limit from its specification (`type`, `unit`, `words`, `of`)."""
    name = spec.type
    if name in (NUMBER, WINDOW):
        return Type(name, dimension_of(spec.unit), spec.unit)
    if name in (WORD, WORDS):
        return Type(name, words=tuple(spec.words))
    if name in (LIST, SUBJECT):
        return Type(name, of=spec.of)
    if name in (YES_NO, TEXT):
        return Type(name)
    raise ValueError(f"{spec.name}: rules know no type {name!r}")
