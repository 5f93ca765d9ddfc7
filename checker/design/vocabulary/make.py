"""Short ways to write keys, so that a table of kinds reads as a table."""

from __future__ import annotations

from checker.design.vocabulary.key import Key


def quantity(name: str, unit: str, says: str, *, default: str | None = None, words: tuple[str, ...] = ()) -> Key:
    """One number with a unit; `words` may stand in its place."""
    return Key(name, "quantity", says, unit=unit, default=default, words=words)


def window(name: str, unit: str, says: str) -> Key:
    """A true interval: all of it counts, not one unknown value within it."""
    return Key(name, "window", says, unit=unit)


def rated(name: str, says: str) -> Key:
    """A voltage rating with its system: `80 V DC`."""
    return Key(name, "rated voltage", says, unit="V")


def count(name: str, says: str, *, default: str | None = None) -> Key:
    """A bare whole number."""
    return Key(name, "count", says, default=default)


def ratio(name: str, says: str, *, default: str | None = None) -> Key:
    """A bare number or a percentage."""
    return Key(name, "ratio", says, unit="ratio", default=default)


def word(name: str, words: tuple[str, ...], says: str, *, default: str | None = None, required: bool = False) -> Key:
    """One of a closed list of words."""
    return Key(name, "word", says, words=words, default=default, required=required)


def words(name: str, allowed: tuple[str, ...], says: str) -> Key:
    """Any number of a closed list of words."""
    return Key(name, "words", says, words=allowed)


def yes(name: str, says: str, *, default: str | None = None) -> Key:
    """True or false."""
    return Key(name, "yes/no", says, default=default)


def text(name: str, says: str, *, required: bool = False) -> Key:
    """Any text."""
    return Key(name, "text", says, required=required)


def texts(name: str, says: str) -> Key:
    """A list of texts."""
    return Key(name, "texts", says)


def named(name: str, section: str, says: str, *, words: tuple[str, ...] = ()) -> Key:
    """The name of something in a section; `words` may stand in its place."""
    return Key(name, "name", says, section=section, words=words)


def names(name: str, section: str, says: str) -> Key:
    """Names of things in a section."""
    return Key(name, "names", says, section=section)


def signal(name: str, says: str, *, words: tuple[str, ...] = ()) -> Key:
    """The name of a signal, or a port; `words` may stand in its place."""
    return Key(name, "signal", says, words=words)


def under(prefix: str, keys: tuple[Key, ...]) -> tuple[Key, ...]:
    """The same keys one level down, without their defaults: `rating` becomes `unit fuses.rating`."""
    return tuple(
        Key(f"{prefix}.{key.name}", key.shape, key.says, unit=key.unit, words=key.words, section=key.section)
        for key in keys
    )
