"""What is wrong with a rule file: where, what, and what would be right."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple, Protocol

SHOWN = 100
"""At most so many problems are printed; the rest are counted."""


class Placed(Protocol):
    """Anything that knows its line and column."""

    @property
    def line(self) -> int: ...

    @property
    def column(self) -> int: ...


class RuleProblem(NamedTuple):
    """One thing that is wrong. `line` and `column` count from 1, columns in characters."""

    file: str
    line: int
    column: int
    what: str
    right: str

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}: {self.what}; {self.right}"


class RuleErrors(Exception):
    """Everything that is wrong with the rule files, by file and place."""

    def __init__(self, problems: Iterable[RuleProblem]) -> None:
        self.problems: tuple[RuleProblem, ...] = tuple(sorted(set(problems)))
        super().__init__(str(self))

    def __str__(self) -> str:
        lines = [str(problem) for problem in self.problems[:SHOWN]]
        if len(self.problems) > SHOWN:
            lines.append(f"and {len(self.problems) - SHOWN} more problems, not shown; mend these first")
        return "\n".join(lines)


class Problems:
    """Collects the problems of one file while it is read on."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.found: list[RuleProblem] = []

    def add(self, at: Placed, what: str, right: str) -> None:
        """Note that `what` is wrong at `at`; `right` says what would be right."""
        self.found.append(RuleProblem(self.file, at.line, at.column, what, right))

    def raise_any(self) -> None:
        """Raise `RuleErrors` when anything was found."""
        if self.found:
            raise RuleErrors(self.found)


def meant(name: str, options: Iterable[str], otherwise: str) -> str:
    """`did you mean ...?` when a right name lies near, else `otherwise`."""
    from difflib import get_close_matches

    near = get_close_matches(name[:80], sorted(options), 1, 0.6)
    return f"did you mean `{near[0]}`?" if near else otherwise


def shown(text: str, most: int = 60) -> str:
    """`text` on one line between backticks, cut when long, unprintable characters escaped."""
    line = "".join(letter if letter.isprintable() else repr(letter)[1:-1] for letter in text[: most + 1])
    return f"`{line[:most]}…`" if len(line) > most else f"`{line}`"


def listed(names: Iterable[str], most: int = 24) -> str:
    """Names in a sentence: `a`, `b` or `c`; a long list is cut."""
    some = list(names)
    if len(some) > most:
        return ", ".join(f"`{name}`" for name in some[:most]) + f" and {len(some) - most} more"
    if len(some) < 2:
        return "".join(f"`{name}`" for name in some)
    return ", ".join(f"`{name}`" for name in some[:-1]) + f" or `{some[-1]}`"
