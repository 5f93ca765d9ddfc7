"""An entry that says where something comes from: title, clause, edition, and whether it was seen."""

from __future__ import annotations

from typing import NamedTuple

from checker.rulebook.keys import BASES, SOURCE_KEYS
from checker.rulebook.problems import Problems, listed, meant
from checker.rulebook.source import Map, Node, Text


class Source(NamedTuple):
    """`clause` and `edition` may be empty; `basis` is seen, memory or practice."""

    title: str
    clause: str
    edition: str
    basis: str

    def __str__(self) -> str:
        if self.basis == "practice":
            return f"{self.title} (no published source)"
        parts = [self.title, *(part for part in (self.clause, self.edition) if part)]
        return ", ".join(parts) + ("" if self.basis == "seen" else " (from memory)")


def read_source(node: Node, problems: Problems) -> Source:
    """The source that stands at `node`; what is wrong with it goes to `problems`."""
    if not isinstance(node, Map):
        problems.add(node, "this is no source", "write `{title: …, clause: …, edition: …, basis: memory}`")
        return Source("", "", "", "memory")
    found = dict.fromkeys(SOURCE_KEYS, "")
    for name, (key, value) in node.entries.items():
        if name not in SOURCE_KEYS:
            right = meant(name, SOURCE_KEYS, f"it has {listed(SOURCE_KEYS)}")
            problems.add(key, f"a source has no key `{name}`", right)
        elif not isinstance(value, Text):
            problems.add(value, f"`{name}` is not a text", "write one line of text")
        else:
            found[name] = value.text.strip()
    if not found["title"]:
        problems.add(node, "the source has no title", "write `title:`")
    if found["basis"] not in BASES:
        problems.add(node, f"the source does not say its basis, one of {listed(BASES)}", "write `basis: memory`")
    elif found["basis"] == "seen" and not found["edition"]:
        problems.add(node, "a source that was seen has no edition", "write `edition:`, `current` where it has none")
    return Source(**found)
