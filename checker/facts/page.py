"""The page of all facts, `docs/facts.md`, made from the catalogue."""

from __future__ import annotations

from collections.abc import Iterable

from checker.facts.catalogue import Catalogue, FactSpec

HEAD = """# Facts

Made from the catalogue of facts by `python docs/generate.py`; do not edit.

A rule is about one kind of subject and speaks of its facts: `conductor.carrying_capacity`.
A fact about which the design file does not say enough is unknown, or a range; it never stands in for a value.
*None* is a value of its own: there is no such thing.
`fitout explain` shows how each fact of a subject came about, down to the lines of the file.

*Source* says where the method or its figures come from; a fact without one reads the file or walks the graph.
"""
TABLE = "| fact | gives | what it says | how it is found | source |\n| --- | --- | --- | --- | --- |"


def facts_page(catalogue: Catalogue) -> str:
    """The whole page in Markdown, kinds in alphabetical order."""
    kinds = sorted(catalogue.kinds)
    facts = sum(len(catalogue.facts(kind)) for kind in kinds)
    parts = [HEAD.strip(), f"{facts} facts about {len(kinds)} kinds of subject: {', '.join(map(_link, kinds))}."]
    for kind in kinds:
        parts += [f"## {kind}", catalogue.sentences[kind], _table(catalogue.facts(kind))]
    return "\n\n".join(parts) + "\n"


def _link(kind: str) -> str:
    return f"[{kind}](#{kind})"


def _table(specs: Iterable[FactSpec]) -> str:
    rows = [
        f"| `{spec.name}` | {gives(spec)} | {_cell(spec.says)} | {_cell(spec.method)} | {_cell(spec.source)} |"
        for spec in sorted(specs, key=lambda one: one.name)
    ]
    return "\n".join([TABLE, *rows])


def gives(spec: FactSpec) -> str:
    """What a fact gives, in words."""
    if spec.type == "number":
        return "number" if spec.unit == "count" else spec.unit
    if spec.type == "window":
        return f"window, {spec.unit}"
    if spec.type in ("word", "words"):
        words = ", ".join(f"`{word}`" for word in spec.words)
        return words if spec.type == "word" else f"any of {words}"
    if spec.type in ("list", "subject"):
        return f"list of {_link(spec.of)}" if spec.type == "list" else _link(spec.of)
    return spec.type


def _cell(text: str) -> str:
    return text.replace("|", "\\|").replace("\n", " ")
