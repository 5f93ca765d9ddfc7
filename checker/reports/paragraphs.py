"""Wrapped text for the terminal, 80 columns wide, with or without colour."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator

from checker.reports.plain import one_line

WIDTH = 80
LABEL = 9
"""Width of the column of signal words and labels."""

_RESET = "\x1b[0m"
_STRONG = "\x1b[1m"
# Nearest to the safety colours of ISO 3864-4 that every terminal has in its 256: red, orange, yellow, blue.
_SIGNAL_STYLE = {
    "DANGER": "\x1b[1;38;5;231;48;5;124m",
    "WARNING": "\x1b[1;38;5;16;48;5;208m",
    "CAUTION": "\x1b[1;38;5;16;48;5;220m",
    "NOTICE": "\x1b[1;38;5;231;48;5;25m",
}


class Painter:
    """Colours text, or leaves it alone."""

    __slots__ = ("_colour",)

    def __init__(self, colour: bool) -> None:
        self._colour = colour

    def signal(self, word: str) -> str:
        """A signal word in its safety colour."""
        return f"{_SIGNAL_STYLE[word]}{word}{_RESET}" if self._colour else word

    def strong(self, line: str) -> str:
        """A line that should catch the eye."""
        return f"{_STRONG}{line}{_RESET}" if self._colour and line else line


def paragraph(words: str, indent: str = "", hanging: str | None = None) -> list[str]:
    """`words` wrapped to the width; a word longer than a line (a path, a hash) is left whole, to be copied."""
    if not words:
        return []
    return textwrap.wrap(
        _kept_lead(words),
        WIDTH,
        initial_indent=indent,
        subsequent_indent=indent if hanging is None else hanging,
        break_long_words=False,
        break_on_hyphens=False,
    )


def _kept_lead(words: str) -> str:
    """White space goes to one blank each, except a lead of blanks, which marks a level of the working."""
    stripped = words.lstrip(" ")
    return " " * (len(words) - len(stripped)) + one_line(stripped)


def labelled(label: str, entries: Iterable[str]) -> Iterator[str]:
    """`Label    first entry`, the further ones below it; nothing when there is nothing to say."""
    said = [entry for entry in entries if entry.strip()]
    lead = f"{label:<{LABEL}}"
    hang = 2 if len(said) > 1 else 0  # so that a second line is not taken for a second entry
    for entry in said:
        depth = len(entry) - len(entry.lstrip(" "))
        yield from paragraph(entry, " " * LABEL + lead, " " * (2 * LABEL + depth + hang))
        lead = " " * LABEL


def heading(title: str, paint: Painter) -> Iterator[str]:
    """A section's title, underlined."""
    yield paint.strong(title)
    yield "-" * min(len(title), WIDTH)
