"""Limits that differ by code of practice: the list of their names, and the values each code gives them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from checker.quantities import UnitError, Unknown, dimension_of, exact
from checker.rulebook.keys import FACT_NAME, FALLBACK, NAME
from checker.rulebook.problems import Problems, listed, meant
from checker.rulebook.source import Items, Map, Node, Place, Text
from checker.rulebook.source_entry import Source, read_source
from checker.rulebook.types import NUMBER, WINDOW, WORD, WORDS, YES_NO, type_of
from checker.rulebook.values import read_value

_SPEC_KEYS = ("type", "unit", "words", "says")
_CODE_KEYS = ("code", "title", "says", "limits")


class LimitSpec(NamedTuple):
    """A limit: its `type` (number, window, yes/no, word, words), unit or words, and one sentence."""

    name: str
    type: str
    unit: str
    words: tuple[str, ...]
    says: str
    of: str = ""


class LimitValue(NamedTuple):
    """What one code says of a limit; `text` as it was written."""

    value: Any
    text: str
    source: Source


class Code(NamedTuple):
    """A code of practice with the limits it gives."""

    name: str
    title: str
    says: str
    limits: Mapping[str, LimitValue]


class Limits(Mapping[str, Any]):
    """The limits that hold under one code: its own, else those of the international one, else unknown."""

    __slots__ = ("code", "codes", "specs", "taken")

    def __init__(self, code: str, specs: Mapping[str, LimitSpec], codes: Mapping[str, Code]) -> None:
        self.code = code
        self.codes = codes
        self.specs = specs
        self.taken: dict[str, tuple[str, LimitValue]] = {}
        for name in specs:
            for one in (code, FALLBACK):
                found = codes[one].limits.get(name) if one in codes else None
                if found is not None:
                    self.taken[name] = (one, found)
                    break

    def __getitem__(self, name: str) -> Any:
        taken = self.taken.get(name)
        if taken is not None:
            return taken[1].value
        if name in self.specs:
            return Unknown(f"the code {self.code} gives no {name.replace('_', ' ')}")
        raise KeyError(name)

    def elsewhere(self, name: str) -> str:
        """`; elsewhere: eu 300 mm, uk 8 AWG` for codes that give another value than the one taken; else nothing."""
        taken = self.taken.get(name)
        mine = None if taken is None else taken[1].value
        given = ((code, self.codes[code].limits.get(name)) for code in sorted(self.codes))
        said = [f"{code} {limit.text}" for code, limit in given if limit is not None and limit.value != mine]
        return f"; elsewhere: {', '.join(said)}" if said else ""

    def __iter__(self) -> Iterator[str]:
        return iter(self.specs)

    def __len__(self) -> int:
        return len(self.specs)


def read_limit_names(tree: Map, known: Mapping[str, LimitSpec], problems: Problems) -> dict[str, LimitSpec]:
    """The limits that a `limits.yaml` declares; one declared already is a problem."""
    found: dict[str, LimitSpec] = {}
    for name, (key, value) in tree.entries.items():
        if not re.fullmatch(FACT_NAME, name):
            problems.add(key, f"`{name}` is no name of a limit", "write small letters, digits and single underscores")
        elif name in known:
            problems.add(key, f"the limit `{name}` is declared already", "a code file gives it another value")
        else:
            spec = _spec(name, key, value, problems)
            if spec is not None:
                found[name] = spec
    return found


def _spec(name: str, key: Text, node: Node, problems: Problems) -> LimitSpec | None:
    if not isinstance(node, Map):
        problems.add(key, f"`{name}` says nothing", "write `{unit: …, says: …}`, with `words:` or `type: yes/no`")
        return None
    unknown = [entry for entry in node.entries if entry not in _SPEC_KEYS]
    for entry in unknown:
        problems.add(node.entries[entry][0], f"a limit has no key `{entry}`", meant(entry, _SPEC_KEYS, "drop it"))
    unit, says, kind = (_line(node, part, problems) for part in ("unit", "says", "type"))
    words = node.get("words")
    choice = tuple(item.text for item in words.items if isinstance(item, Text)) if isinstance(words, Items) else ()
    kind = kind or (WORD if choice else NUMBER if unit else "")
    said, chosen = bool(unit), bool(choice)
    fits = {NUMBER: said, WINDOW: said, YES_NO: not said and not chosen, WORD: chosen, WORDS: chosen}
    if not fits.get(kind, False):
        problems.add(node, f"`{name}` has no type", "give it a `unit:`, `words: [...]` or `type: yes/no`")
        return None
    if not says:
        problems.add(node, f"`{name}` has no sentence", "write `says:`, what is limited, measured where")
    if unit and not _is_unit(unit):
        problems.add(node, f"there is no unit `{unit}`", "write a unit such as `V`, `%`, `mm2`")
        return None
    return LimitSpec(name, kind, unit, choice, says)


def _is_unit(unit: str) -> bool:
    try:
        dimension_of(unit)
    except UnitError:
        return False
    return True


def _line(node: Map, key: str, problems: Problems) -> str:
    value = node.get(key)
    if value is None:
        return ""
    if not isinstance(value, Text):
        problems.add(value, f"`{key}` is not a text", "write one line")
        return ""
    return " ".join(value.text.split())


def read_code(tree: Map, name: str, specs: Mapping[str, LimitSpec], problems: Problems) -> Code:
    """The code of practice in a file `codes/NAME.yaml`."""
    for entry, (key, _) in tree.entries.items():
        if entry not in _CODE_KEYS:
            problems.add(key, f"a code has no key `{entry}`", meant(entry, _CODE_KEYS, f"it has {listed(_CODE_KEYS)}"))
    said = _line(tree, "code", problems)
    if said != name or not re.fullmatch(NAME, name):
        at = tree.get("code") or Place(1, 1)
        problems.add(at, f"the code is called `{said}`, its file `{name}`", f"write `code: {name}`")
    for part in ("title", "says"):
        if not _line(tree, part, problems):
            problems.add(tree, f"the code has no `{part}`", f"write `{part}:`")
    limits = tree.get("limits")
    found: dict[str, LimitValue] = {}
    if isinstance(limits, Map):
        for limit, (key, value) in limits.entries.items():
            if limit not in specs:
                near = meant(limit, specs, "declare it in `codes/limits.yaml`")
                problems.add(key, f"there is no limit `{limit}`", near)
                continue
            one = _value(value, specs[limit], problems)
            if one is not None:
                found[limit] = one
    else:
        problems.add(tree, "the code gives no limits", "write `limits:` with a value and a source each")
    return Code(name, _line(tree, "title", problems), _line(tree, "says", problems), found)


def _value(node: Node, spec: LimitSpec, problems: Problems) -> LimitValue | None:
    value, source = (node.get("value"), node.get("source")) if isinstance(node, Map) else (None, None)
    if not isinstance(node, Map) or value is None or source is None or len(node.entries) != 2:
        problems.add(node, f"`{spec.name}` needs a value and a source, nothing else", "write `{value: …, source: {…}}`")
        return None
    before = len(problems.found)
    read = read_value(value, type_of(spec), problems)
    fixed = exact(read) if spec.type == NUMBER else read is not None and type(read) is not Unknown
    if len(problems.found) == before and not fixed:
        problems.add(value, "a limit is one exact value", "leave it out where the code gives none")
    return LimitValue(read, _said(value), read_source(source, problems))


def _said(node: Node) -> str:
    if isinstance(node, Text):
        return node.text.strip()
    return ", ".join(item.text for item in node.items if isinstance(item, Text)) if isinstance(node, Items) else ""
