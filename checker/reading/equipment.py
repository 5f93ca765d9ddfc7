"""Equipment, joints and parts: kind, keys, terminals, what a part gives, what a bank is made of."""

from __future__ import annotations

from functools import cache
from types import MappingProxyType
from typing import Any

from checker.design.given import Given
from checker.design.item import Item
from checker.design.model import Equipment
from checker.design.vocabulary import KINDS, kind
from checker.design.vocabulary.key import Kind
from checker.quantities import Unknown
from checker.reading.context import Context, form, kind_in, where
from checker.reading.references import find_equipment
from checker.reading.values import Entries, check_required, read_keys
from checker.source.nearest import nearest
from checker.source.problems import article, listed, shown
from checker.source.tree import Mapping, Node, Scalar

STRUCTURE = ("kind", "part", "terminals", "ways", "of")
"""Keys of equipment that are not values; ways belong to boards, `of` to banks."""

MOST_THROWS = 50

_UNKNOWN = frozenset(("unknown", "?"))


def read_parts(ctx: Context) -> None:
    """All of `parts`, which equipment builds on."""
    node = ctx.tree.get("parts")
    if type(node) is Mapping:
        for name, (key, value) in node.entries.items():
            part = read_equipment(ctx, name, key, value, "parts", f"parts.{name}")
            if part is not None:
                ctx.parts[name] = part


def read_all_equipment(ctx: Context) -> None:
    """All of `equipment` and `joints`."""
    for section in ("equipment", "joints"):
        node = ctx.tree.get(section)
        if type(node) is not Mapping:
            continue
        for name, (key, value) in node.entries.items():
            equipment = read_equipment(ctx, name, key, value, section, f"{section}.{name}")
            if equipment is not None:
                ctx.equipment.setdefault(name, equipment)


def read_equipment(
    ctx: Context, name: str, key: Node, node: Node, section: str, path: str, *, usual_kind: str | None = None,
    inherited: dict[str, Given] | None = None, inline_of: str | None = None,
) -> Equipment | None:  # fmt: skip
    """One piece of equipment; None when its kind cannot be told (a problem is noted).

    `usual_kind` stands where the entry says neither kind nor part. `inherited` holds values that stand where neither
    the entry nor its part says anything, as a board gives them to its ways.
    """
    entry = ctx.mapping(node, "the entry", name)
    if entry is None:
        return None
    part = _part(ctx, entry, section)
    vocabulary = _kind(ctx, key, entry, part, section, usual_kind)
    if vocabulary is None:
        return None
    skip = _structure(vocabulary)
    own = read_keys(ctx, entry.entries, vocabulary, article(vocabulary.name), skip)
    given = own if part is None else over_part(dict(part.written()), own)
    if inherited:
        for each, value in inherited.items():
            if each in vocabulary.keys and _fits(vocabulary, each, value):
                given.setdefault(each, value)
    _fill_nested_part(ctx, vocabulary, given)
    check_required(ctx, key, vocabulary, given, name)
    equipment = Equipment(
        name, vocabulary, where(key), path, given, terminals={}, part=None if part is None else part.name,
        inline_of=inline_of, section="joints" if section == "joints" else "equipment",
    )  # fmt: skip
    _check_throws(ctx, entry, equipment)
    if "ways" in skip:
        from checker.reading.ways import read_ways

        if section == "parts" and "ways" in entry.entries:
            ctx.problems.add(entry.entries["ways"][0], "a part has ways", "say the ways where the board stands")
        else:
            equipment.ways = read_ways(ctx, equipment, entry.get("ways"), path)
    if "of" in skip:
        _read_base(ctx, equipment, key, entry, part)
    equipment.terminals = MappingProxyType(_terminals(ctx, equipment, entry.get("terminals"), part, path))
    return equipment


def over_part(given: dict[str, Given], own: dict[str, Given]) -> dict[str, Given]:
    """`given` of a part with `own` values put over it: a record that is written again replaces the whole record."""
    tops = {name.split(".", 1)[0] for name in own}
    kept = {name: value for name, value in given.items() if name.split(".", 1)[0] not in tops}
    kept.update(own)
    return kept


def _structure(vocabulary: Kind) -> tuple[str, ...]:
    if vocabulary.more_ports == "ways":
        return ("kind", "part", "terminals", "ways")
    return STRUCTURE[:3] + (("of",) if vocabulary.name == "bank" else ())


def _part(ctx: Context, entry: Mapping, section: str) -> Equipment | None:
    node = entry.get("part")
    if node is None:
        return None
    scalar = ctx.expect_scalar(node, "`part`")
    if scalar is None:
        return None
    if section == "parts":
        ctx.problems.add(scalar, "a part builds on another part", "write its values out: parts go one level deep")
        return None
    ctx.check_name("parts", scalar, scalar.text)
    return ctx.parts.get(scalar.text)


def _kind(
    ctx: Context, key: Node, entry: Mapping, part: Equipment | None, section: str, usual: str | None
) -> Kind | None:
    node = entry.get("kind")
    if node is None:
        if part is not None:
            if kind(part.kind, section) is None:
                ctx.problems.add(key, f"{article(part.kind)} cannot stand in {section}", "put it under `equipment:`")
            return part.vocabulary
        if usual is not None:
            return kind(usual, section)
        if "part" not in entry.entries or section == "parts":
            _refuse_kindless(ctx, key, entry)
        return None
    scalar = ctx.expect_scalar(node, "`kind`")
    if scalar is None:
        return None
    found = kind(scalar.text, section)
    if found is None:
        _refuse_kind(ctx, scalar, section)
    elif part is not None and part.kind != found.name:
        ctx.problems.add(
            scalar, f"the part {shown(part.name)} is {article(part.kind)}, not {article(found.name)}", "say one kind"
        )
    return found


def _refuse_kindless(ctx: Context, key: Node, entry: Mapping) -> None:
    """No kind, so no other key can be judged; only a key spelt nearly so is worth a word of its own."""
    for written in entry.entries.values():
        if (meant := nearest(written[0].text, ("kind", "part"))) is not None:
            ctx.problems.add(written[0], f"there is no key {shown(written[0].text)}", f"did you mean {shown(meant)}?")
            return
    ctx.problems.add(key, "this says neither `kind` nor `part`", "write `kind: fuse` or what it is")


def _refuse_kind(ctx: Context, scalar: Scalar, section: str) -> None:
    kinds = [name for place, name in KINDS if place == section]
    if kind(scalar.text, "equipment") is not None:
        ctx.problems.add(scalar, f"{article(scalar.text)} cannot stand in {section}", "put it under `equipment:`")
        return
    right = ctx.problems.meant(scalar.text, kinds, f"the kinds are {listed(kinds, 80)}")
    ctx.problems.add(scalar, f"there is no kind {shown(scalar.text)}", right)


def _fits(vocabulary: Kind, name: str, given: Given) -> bool:
    """Whether a word given to all of a board is a word of this kind too."""
    words = vocabulary.keys[name].words
    return not words or not isinstance(given.value, str) or given.value in words


def _fill_nested_part(ctx: Context, vocabulary: Kind, given: dict[str, Given]) -> None:
    """`unit fuses: {part: bolt-fuse}` takes over what the part says of the keys below `unit fuses`."""
    for name in [name for name in given if name.endswith(".part")]:
        part: Any = given[name].value
        if not isinstance(part, str) or part not in ctx.parts:
            continue
        record = name.removesuffix("part")
        for key, value in ctx.parts[part].written():
            if record + key in vocabulary.keys:
                given.setdefault(record + key, value)


@cache
def _throw_keys(vocabulary: Kind) -> tuple[str, ...]:
    return tuple(name for name, key in vocabulary.keys.items() if key.section == "throws")


def _check_throws(ctx: Context, entry: Mapping, equipment: Equipment) -> None:
    if not equipment.allows("throws"):
        return
    throws = equipment.value("throws")
    if isinstance(throws, tuple) and len(throws) > MOST_THROWS:
        ctx.problems.add(entry, f"{shown(equipment.name)} has {len(throws)} throws", f"write at most {MOST_THROWS}")
    for name in _throw_keys(equipment.vocabulary):
        if not equipment.has(name):
            continue
        value, node = equipment.value(name), entry.get(name)
        if isinstance(value, str) and isinstance(throws, tuple) and value not in throws and node is not None:
            right = ctx.problems.meant(value, throws, f"the throws are {listed(throws)}")
            ctx.problems.add(node, f"{shown(equipment.name)} has no throw {shown(value)}", right)


def _read_base(ctx: Context, bank: Equipment, key: Node, entry: Mapping, part: Equipment | None) -> None:
    """What a bank is made of: a part, or a battery that stands under equipment."""
    node = entry.get("of")
    if node is None:
        if part is None or part.base is None:
            ctx.problems.add(key, f"bank {shown(bank.name)} lacks `of`", "name the battery or the part, or `unknown`")
        bank.base = None if part is None else part.base
        return
    scalar = ctx.expect_scalar(node, "`of`")
    if scalar is None or scalar.text in _UNKNOWN:
        return
    ctx.later.append(lambda: _set_base(ctx, bank, scalar))


def _set_base(ctx: Context, bank: Equipment, scalar: Scalar) -> None:
    base = ctx.parts.get(scalar.text)
    if base is None and scalar.text in ctx.names["equipment"]:
        base = find_equipment(ctx, scalar, scalar.text)
    elif base is None and scalar.text not in ctx.names["parts"]:
        batteries = [part.name for part in (*ctx.parts.values(), *ctx.equipment.values()) if part.kind == "battery"]
        otherwise = f"name one of {listed(batteries)}" if batteries else "describe the battery under `parts:`"
        right = ctx.problems.meant(scalar.text, batteries, otherwise)
        ctx.problems.add(scalar, f"there is no part or battery {shown(scalar.text)}", right)
    if base is not None and base.kind != "battery":
        ctx.problems.add(scalar, f"{shown(base.name)} is {article(base.kind)}", "a bank is made of batteries")
    bank.base = base


def _terminals(
    ctx: Context, equipment: Equipment, node: Node | None, part: Equipment | None, path: str
) -> dict[str, Item]:
    terminals = {} if part is None else dict(part.terminals)
    if node is None or (type(node) is Scalar and node.text in _UNKNOWN):
        return terminals
    if type(node) is not Mapping:
        ctx.problems.add(node, f"`terminals` is {form(node)}", "write `{+: {stud: M8, torque: 12 N m}}`")
        return terminals
    vocabulary = kind_in("terminals", "terminal")
    known = _terminal_names(equipment)
    for name, (key, value) in node.entries.items():
        if name not in known and name not in terminals:
            right = ctx.problems.meant(name, known, f"{article(equipment.kind)} has {listed(known) or 'none'}")
            ctx.problems.add(key, f"{shown(equipment.name)} has no terminal {shown(name)}", right)
            continue
        own = _terminal_keys(ctx, value, vocabulary)
        before = terminals.get(name)
        given = own if before is None else {**dict(before.written()), **own}
        terminals[name] = Item(name, vocabulary, where(key), f"{path}.terminals.{name}", given)
    return terminals


def _terminal_keys(ctx: Context, node: Node, vocabulary: Kind) -> dict[str, Given]:
    if type(node) is Scalar and node.text in _UNKNOWN:
        return {}
    entry = ctx.mapping(node, "a terminal")
    entries: Entries = {} if entry is None else entry.entries
    return read_keys(ctx, entries, vocabulary, "a terminal")


def _terminal_names(equipment: Equipment) -> tuple[str, ...]:
    """Terminals of its own ports, and one for each way or throw."""
    more: tuple[str, ...] = tuple(way.name[len(equipment.name) + 1 :] for way in equipment.ways)
    throws = equipment.value("throws") if equipment.vocabulary.more_ports == "throws" else ()
    if not isinstance(throws, Unknown) and throws is not None:
        more += tuple(throws)
    return equipment.vocabulary.terminals() + more
