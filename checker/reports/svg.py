"""SVG written by hand: elements with their text made harmless, numbers of fixed form, the width of a text."""

from __future__ import annotations

from collections.abc import Iterable

from checker.reports.plain import plain

_NARROW = frozenset(" .,:;'|!iljft()[]/-")
_WIDE = frozenset("mwMW%@—…")
_MEAN, _THIN, _CAPITAL, _FAT = 0.61, 0.36, 0.72, 0.96
_BOLD = 1.12
"""Widths of letters over the size of the type, and how much wider bold ones are: those of a wide typeface, so that
text in the narrower ones fits too; common practice, no source."""


def escaped(text: str) -> str:
    """Text as it may stand between tags or in an attribute; what XML cannot hold is written as an escape."""
    return plain(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;")


def number(value: float) -> str:
    """At most two decimals, no exponent, no minus before nothing."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def element(name: str, inside: str | None = None, **attributes: str | float) -> str:
    """One element. An underscore in an attribute's name stands for a hyphen; one at its end is dropped.

    `inside` is already SVG; without it the element is closed at once.
    """
    parts = [name]
    for key, value in attributes.items():
        told = number(value) if isinstance(value, float | int) else escaped(value)
        parts.append(f'{key.rstrip("_").replace("_", "-")}="{told}"')
    opening = " ".join(parts)
    return f"<{opening}/>" if inside is None else f"<{opening}>{inside}</{name}>"


def text(x: float, y: float, words: str, class_: str = "", **attributes: str | float) -> str:
    """One line of text with its base line at (x, y)."""
    more: dict[str, str | float] = {"class_": class_} if class_ else {}
    return element("text", escaped(words), x=x, y=y, **more, **attributes)


def group(pieces: Iterable[str], **attributes: str | float) -> str:
    """Elements held together."""
    return element("g", "".join(pieces), **attributes)


def path(points: Iterable[tuple[float, float]], **attributes: str | float) -> str:
    """Straight lines from point to point."""
    turns = " ".join(f"{number(x)},{number(y)}" for x, y in points)
    return element("polyline", None, points=turns, **attributes)


def width(words: str, size: float, bold: bool = False) -> float:
    """About how wide a text is at most, in the unit of its size."""
    return size * (_BOLD if bold else 1.0) * sum(_wide(one) for one in words)


def _wide(letter: str) -> float:
    if letter in _NARROW:
        return _THIN
    if letter in _WIDE or letter > "\u2e80":
        return _FAT
    return _CAPITAL if letter.isupper() else _MEAN


def shortened(words: str, size: float, room: float, bold: bool = False) -> str:
    """The text, cut with an ellipsis where it is wider than its room."""
    if width(words, size, bold) <= room:
        return words
    kept, wide = 0, 0.0
    for letter in words:  # from the front, so that a text of any length costs no more than its room
        wide += _wide(letter)
        if size * (_BOLD if bold else 1.0) * (wide + _wide("…")) > room:
            break
        kept += 1
    return words[:kept].rstrip() + "…"


def lines(words: str, size: float, room: float, bold: bool = False) -> list[str]:
    """The text broken between words so that each line fits its room; a word too long for it is cut."""
    found: list[str] = []
    line = ""
    for word in words.split():
        longer = f"{line} {word}".strip()
        if line and width(longer, size, bold) > room:
            found.append(line)
            longer = word
        line = shortened(longer, size, room, bold)
    return [*found, line] if line else found
