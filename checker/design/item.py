"""Anything in a design file that has a name and keys."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from checker.design.given import DEFAULT, MISSING, Given, Where
from checker.design.vocabulary.key import Key, Kind
from checker.quantities import UNKNOWN

Defaults = dict[int, Any]


class Item:
    """A named thing of one kind; `path` is its dotted place in the file, such as `equipment.F1`.

    `get` answers for every key of the kind: what was written, else the default (basis `default`), else unknown
    (basis `missing`). Asking for a key outside the vocabulary is a programming error and raises `KeyError`.
    """

    __slots__ = ("_given", "kind", "name", "path", "vocabulary", "where")

    def __init__(self, name: str, vocabulary: Kind, where: Where, path: str, given: Mapping[str, Given]) -> None:
        self.name = name
        self.kind = vocabulary.name
        self.vocabulary = vocabulary
        self.where = where
        self.path = path
        self._given = given

    def get(self, key: str) -> Given:
        """The value of `key` with its place and basis."""
        found = self._given.get(key)
        if found is not None:
            return found
        spec: Key = self.vocabulary.keys[key]
        if spec.default is None:
            return Given(UNKNOWN, self.where, MISSING)
        from checker.design.shapes import default_value  # the parsers load only when a default is asked for

        return Given(default_value(spec), self.where, DEFAULT, spec.default)

    def value(self, key: str) -> Any:
        """The bare value of `key`."""
        return self.get(key).value

    def says(self, key: str, *words: str) -> bool:
        """Whether the value of `key` is known to be one of `words`; no when it is unknown."""
        value = self.get(key).value
        return isinstance(value, str) and value in words

    def has(self, key: str) -> bool:
        """Whether the writer wrote `key` (or something below it)."""
        return key in self._given

    def allows(self, key: str) -> bool:
        """Whether `key` belongs to this kind."""
        return key in self.vocabulary.keys

    def written(self) -> tuple[tuple[str, Given], ...]:
        """What the writer wrote, in file order."""
        return tuple(self._given.items())

    def __repr__(self) -> str:
        return f"<{self.kind} {self.name}>"
