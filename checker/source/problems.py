"""What is wrong with a file: where, what, and what would be right."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple, Protocol

from checker.source.nearest import nearest

SHOWN = 100
"""At most so many problems of one file are printed; the rest are counted."""

MOST = 1000
"""After so many problems reading stops: a file of quite another sort is not read to its end."""

MOST_COMPARED = 50_000
"""Past so many comparisons in one file no nearest name is looked for: nobody reads that far."""


class Placed(Protocol):
    """Anything that knows its line and column."""

    @property
    def line(self) -> int: ...

    @property
    def column(self) -> int: ...


class Problem(NamedTuple):
    """One thing that is wrong. `line` and `column` count from 1, columns in characters."""

    file: str
    line: int
    column: int
    what: str
    right: str

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}: {self.what}; {self.right}"


class SourceErrors(Exception):
    """Everything that is wrong with one file, in the order of the file."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = tuple(sorted(set(problems)))
        super().__init__(str(self))

    def __str__(self) -> str:
        lines = [str(problem) for problem in self.problems[:SHOWN]]
        more = len(self.problems) - SHOWN
        if more > 0:
            lines.append(f"{self.problems[0].file}: {more} more problems, not shown; mend these first")
        return "\n".join(lines)


class Problems:
    """Collects the problems of one file while it is read on; `errors` is what it raises."""

    errors: type[SourceErrors] = SourceErrors

    def __init__(self, file: str) -> None:
        self.file = file
        self.found: list[Problem] = []
        self._compared = 0

    def add(self, at: Placed, what: str, right: str) -> None:
        """Note that `what` is wrong at `at`; `right` says what would be right.

        Raises `errors` when there are too many of them.
        """
        self.found.append(Problem(self.file, at.line, at.column, _one_line(what), _one_line(right)))
        if len(self.found) >= MOST:
            raise self.errors(self.found)

    def meant(self, name: str, options: Iterable[str], otherwise: str) -> str:
        """`did you mean ...?` when a right name lies near, else `otherwise`."""
        options = tuple(options)
        self._compared += len(options)
        near = nearest(name, options) if self._compared <= MOST_COMPARED else None
        return otherwise if near is None else f"did you mean `{near}`?"

    def raise_any(self) -> None:
        """Raise `errors` when anything was found."""
        if self.found:
            raise self.errors(self.found)


def _one_line(text: str, most: int = 2000) -> str:
    """`text` cut when long, with unprintable characters escaped."""
    line = text[: most + 1]
    if not line.isprintable():
        line = "".join(letter if letter.isprintable() else repr(letter)[1:-1] for letter in line)
    return f"{line[:most]}…" if len(line) > most else line


def shown(text: str, most: int = 60) -> str:
    """`text` on one line between backticks, cut when long, unprintable characters escaped."""
    return f"`{_one_line(text, most)}`"


def article(name: str) -> str:
    """`name` of a kind with its article: `a fuse`, `an inverter`, `an rcd`."""
    return f"an {name}" if name[:1] in "aeio" or name.startswith(("rcd", "rcbo")) else f"a {name}"


def listed(names: Iterable[str], most: int = 24) -> str:
    """Names in a sentence: `a`, `b` or `c`; a long list is cut."""
    some = list(names)
    if len(some) > most:
        return ", ".join(f"`{name}`" for name in some[:most]) + f" and {len(some) - most} more"
    if len(some) < 2:
        return "".join(f"`{name}`" for name in some)
    return ", ".join(f"`{name}`" for name in some[:-1]) + f" or `{some[-1]}`"
