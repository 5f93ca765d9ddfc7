"""The list of facts: what can be asked of each kind of subject, in which unit, how found and from which source.

A fact is a function of one subject. It is registered with the decorator `fact`; `subjects` registers how the
subjects of a kind are listed. Rules call facts by name only, so this catalogue is all they know of the program.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

TYPES = ("number", "yes/no", "word", "words", "window", "list", "subject", "text")


class FactSpec:
    """One fact: `kind.name`, its type, and for people one sentence, the method and the source.

    `unit` is set for number and window, `words` (a closed list) for word and words, `of` (a kind of subject) for list
    and subject. `function` computes it.
    """

    __slots__ = ("function", "kind", "method", "name", "of", "says", "source", "type", "unit", "words")

    def __init__(
        self,
        kind: str,
        name: str,
        type: str,
        unit: str,
        words: tuple[str, ...],
        of: str,
        says: str,
        method: str,
        source: str,
        function: Callable[[Any], Any],
    ) -> None:
        self.kind = kind
        self.name = name
        self.type = type
        self.unit = unit
        self.words = words
        self.of = of
        self.says = says
        self.method = method
        self.source = source
        self.function = function

    def __repr__(self) -> str:
        return f"<fact {self.kind}.{self.name}>"


Lister = Callable[[Any], Iterable[tuple[str, Any, Any]]]


class Catalogue:
    """Facts by kind and name, in the order they were registered."""

    __slots__ = ("_facts", "listers", "sentences")

    def __init__(self) -> None:
        self._facts: dict[str, dict[str, FactSpec]] = {}
        self.listers: dict[str, Lister] = {}
        self.sentences: dict[str, str] = {}

    def add(self, spec: FactSpec) -> None:
        """Register a fact; a name twice is a programming error (ValueError)."""
        of_kind = self._facts.setdefault(spec.kind, {})
        if spec.name in of_kind:
            raise ValueError(f"the fact {spec.kind}.{spec.name} is registered twice")
        of_kind[spec.name] = spec

    def find(self, kind: str, name: str) -> FactSpec | None:
        """The fact, or None when there is none of that name."""
        of_kind = self._facts.get(kind)
        return None if of_kind is None else of_kind.get(name)

    @property
    def kinds(self) -> tuple[str, ...]:
        """The kinds of subject."""
        return tuple(self.listers)

    def facts(self, kind: str) -> tuple[FactSpec, ...]:
        """All facts of a kind, in registered order."""
        return tuple(self._facts.get(kind, {}).values())

    def names(self, kind: str) -> tuple[str, ...]:
        """Their names."""
        return tuple(self._facts.get(kind, {}))


CATALOGUE = Catalogue()


def fact(
    kind: str,
    name: str,
    *,
    says: str,
    unit: str = "",
    type: str = "",
    words: tuple[str, ...] = (),
    of: str = "",
    method: str = "given in the design file",
    source: str = "",
) -> Callable[[Callable[[Any], Any]], Callable[[Any], Any]]:
    """Register a function of one subject as the fact `kind.name`.

    The type follows from `unit` (number) or `words` (word) unless said. Raises ValueError for an impossible pair.
    """
    found = type or ("word" if words else "number" if unit else "")
    if found not in TYPES or (found in ("word", "words")) != bool(words) or (found in ("list", "subject")) != bool(of):
        raise ValueError(f"{kind}.{name}: the type does not go with unit, words or of")

    def register(function: Callable[[Any], Any]) -> Callable[[Any], Any]:
        CATALOGUE.add(FactSpec(kind, name, found, unit, words, of, says, method, source, function))
        return function

    return register


def subjects(kind: str, says: str) -> Callable[[Lister], Lister]:
    """Register how the subjects of a kind are listed: the function yields (id, where, item) in file order."""

    def register(lister: Lister) -> Lister:
        if kind in CATALOGUE.listers:
            raise ValueError(f"the subjects {kind} are listed twice")
        CATALOGUE.listers[kind] = lister
        CATALOGUE.sentences[kind] = says
        return lister

    return register
