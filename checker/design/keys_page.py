"""The page of all kinds and keys, `docs/design-file-keys.md`, made from the vocabulary."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from checker.design.samples import sample
from checker.design.vocabulary import KINDS, SECTIONS
from checker.design.vocabulary.common import COMMON
from checker.design.vocabulary.key import Key, Kind
from checker.design.vocabulary.nodes import CHASSIS
from checker.design.vocabulary.structure import EQUIPMENT_STRUCTURE, Structural, structure_of
from checker.design.vocabulary.table import FAMILIES

HEAD = """# Kinds and keys of the design file

Made from the vocabulary of the reader by `python docs/generate.py`; do not edit.
The guide is [design-file.md](design-file.md).

A key with dots stands inside its first word: `bms.charge limit` is `bms: {charge limit: 50 A}`.
Every value may be `unknown`, or `none` where there is no such thing.
It may carry its basis: `{is: 70 mm2, basis: measured}`.
*Default* is what is taken when the key is left out; a finding that rests on one says *assumed*.
A key without a default is unknown when it is left out.
"""
TABLE = "| key | what it says | takes | example | default |\n| --- | --- | --- | --- | --- |"
STRUCTURE = "| key | what it says | example |\n| --- | --- | --- |"
SHAPES = {
    "count": "whole number", "ratio": "number or %", "rated voltage": "voltage with DC or AC",
    "yes/no": "true or false", "text": "text", "texts": "list of texts", "date": "date",
    "signal": "signal or port", "port": "port", "box": "box",
    "point": "point", "points": "list of points", "arrangement": "series and parallel",
    "degree": "degree of protection",
}  # fmt: skip


def keys_page() -> str:
    """The whole page in Markdown."""
    parts = [HEAD, *_top(), *_equipment(), *_others()]
    return "\n\n".join(part.strip() for part in parts) + "\n"


def _top() -> list[str]:
    rows = [f"| `{one.name}` | {one.says} | {'yes' if one.required else ''} |" for one in SECTIONS]
    table = "\n".join(["| section | holds | needed |", "| --- | --- | --- |", *rows])
    return ["## The file", table, _table(KINDS["", "fit-out"].keys.values())]


def _equipment() -> list[str]:
    names = {key.name for key in COMMON}
    common = [
        "## Equipment",
        "Each entry names its `kind` or a `part`, and takes the keys of its kind. These keys are common to all kinds;\n"
        "a `signal` has only place, labels, marked, standard, fitted, own and doubt of them.",
        _structure(EQUIPMENT_STRUCTURE),
        _table(COMMON),
    ]
    for family, kinds in FAMILIES:
        common.append(f"## {family}")
        for kind in kinds:
            own = [key for key in kind.keys.values() if key.name not in names]
            more = structure_of(kind.name, "equipment")[len(EQUIPMENT_STRUCTURE) :] if kind is not CHASSIS else ()
            common += [f"### {kind.name}", f"{kind.says} {_ports(kind)}".strip()]
            if more:
                common.append(_structure(more))
            if own:
                common.append(_table(own))
    return common


def _others() -> list[str]:
    found = ["## Other sections"]
    for (section, name), kind in KINDS.items():
        if section in ("", "equipment", "joints", "parts", "built in"):
            continue
        found += [f"### {section}", f"{kind.says} Names are {_listed(kind.names)}." if kind.names else kind.says]
        structure = structure_of(name, section)
        if structure:
            found.append(_structure(structure))
        found.append(_table(kind.keys.values()))
    return found


def _ports(kind: Kind) -> str:
    told = [_port(port.name, port.poles, port.says) for port in kind.ports]
    told += {"ways": ["one per way"], "throws": ["one per throw"], "any": ["any name"]}.get(kind.more_ports, [])
    says = f"Ports: {'; '.join(told)}." if told else "No ports."
    joints = " May stand under `joints`." if "joints" in kind.sections else ""
    if kind.through is None:
        return says + joints
    if kind.through == ("", ""):
        return f"{says} A run names both terminals.{joints}"
    return f"{says} A run enters at `{kind.through[0]}` and leaves at `{kind.through[1]}`.{joints}"


def _port(name: str, poles: tuple[str, ...], says: str) -> str:
    text = f"`{name}`" if name else "the equipment itself"
    if poles != ("",):
        text += f" ({' '.join(poles)})"
    return f"{text}, {says}" if says else text


def _structure(rows: Iterable[Structural]) -> str:
    lines = [f"| `{row.name}`{'*' if row.required else ''} | {row.says} | `{row.example}` |" for row in rows]
    return "\n".join([STRUCTURE, *lines])


def _table(keys: Iterable[Key]) -> str:
    rows = [
        f"| `{key.name}`{'*' if key.required else ''} | {key.says} | {takes(key)} | `{sample(key)}` "
        f"| {f'`{key.default}`' if key.default else ''} |"
        for key in keys
    ]
    return "\n".join([TABLE, *rows])


def takes(key: Key) -> str:
    """What may be written for a key, in words."""
    shape: Callable[[Key], str] | None = _TAKES.get(key.shape)
    text = shape(key) if shape else SHAPES.get(key.shape, key.shape)
    if key.words and key.shape not in ("word", "words"):
        text += f"; or {_listed(key.words)}"
    return text


def _listed(words: Iterable[str]) -> str:
    return ", ".join(f"`{word}`" for word in words)


_TAKES: dict[str, Callable[[Key], str]] = {
    "quantity": lambda key: f"quantity in {key.unit}",
    "quantities": lambda key: f"quantity in {key.unit}, or a list of them",
    "window": lambda key: f"interval in {key.unit}",
    "word": lambda key: _listed(key.words),
    "words": lambda key: f"a list of {_listed(key.words)}",
    "curve": lambda key: f"{key.unit[1]} by {key.unit[0]}",
    "name": lambda key: f"a name from `{key.section}`",
    "names": lambda key: f"a list of names from `{key.section}`",
    "map": lambda key: f"names from `{key.section}` with quantities in {' or '.join(key.unit)}",
    "choices": lambda key: f"names from `{key.section}` with positions",
}


if __name__ == "__main__":
    import sys

    sys.stdout.write(keys_page())
