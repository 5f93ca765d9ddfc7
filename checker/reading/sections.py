"""The sections that hold plain things: one mapping, named mappings, a list, or a single value."""

from __future__ import annotations

from checker.design.given import MISSING, NOWHERE, STATED, Given
from checker.design.item import Item
from checker.design.shapes import default_value
from checker.design.vocabulary import SECTIONS
from checker.design.vocabulary.key import Kind, Section
from checker.quantities import UNKNOWN
from checker.reading.context import Context, form, kind_in, where
from checker.reading.values import KeyReader, all_of, check_required, read_keys, stands_for_all
from checker.source.problems import SourceErrors, article, listed, shown
from checker.source.tree import Mapping, Node, Scalar, Sequence

FORMATS = ("1",)
"""The numbers of the file format that this program reads."""

MOST_ENTRIES = 5000
"""Entries of one section: far above any vehicle, low enough that nothing grows out of hand."""

_UNKNOWN = frozenset(("unknown", "?"))


def known_format(ctx: Context) -> bool:
    """Whether the file is written in a format that this program reads; else a problem is noted."""
    node = ctx.tree.get("fitout")
    known = listed(f"fitout: {number}" for number in FORMATS)
    if node is None:
        ctx.problems.add(ctx.tree, "the file does not say its format", f"start it with {known}")
        return True  # read on: most likely it is only that line
    text = node.text if type(node) is Scalar else form(node)
    if text in FORMATS:
        return True
    ctx.problems.add(node, f"this is format {shown(text)}", f"this program reads {known}")
    return False


def check_sections(ctx: Context) -> None:
    """Note sections that do not exist, that lack, and that do not hold what they should."""
    sections = {section.name: section for section in SECTIONS}
    for name, (key, node) in ctx.tree.entries.items():
        section = sections.get(name)
        if section is None:
            right = ctx.problems.meant(name, sections, f"the sections are {listed(sections, 30)}")
            ctx.problems.add(key, f"there is no section {shown(name)}", right)
        elif section.holds == "items" and type(node) is not Mapping:
            _refuse_form(ctx, node, section, "names with their values: `name: {key: value}`")
        elif section.holds == "list" and type(node) is not Sequence:
            _refuse_form(ctx, node, section, "a list: a line with `- {key: value}` for each")
        elif section.holds in ("items", "list") and _entries_in(node) > MOST_ENTRIES:
            ctx.problems.add(key, f"`{name}` holds {_entries_in(node):,} entries", f"write at most {MOST_ENTRIES:,}")
            raise SourceErrors(ctx.problems.found)
        elif section.required and section.holds == "items" and type(node) is Mapping and not node.entries:
            ctx.problems.add(node, f"`{name}` is empty", f"write at least one: {section.says}")
    for section in SECTIONS:
        if section.required and section.name not in ctx.tree.entries and section.name != "fitout":
            ctx.problems.add(ctx.tree, f"the file lacks `{section.name}:`", f"add it: {section.says}")


def _entries_in(node: Node) -> int:
    if type(node) is Mapping:
        return len(node.entries)
    return len(node.items) if type(node) is Sequence else 0


def _refuse_form(ctx: Context, node: Node, section: Section, right: str) -> None:
    if type(node) is Scalar and node.text in (*_UNKNOWN, "none") and not section.required:
        return
    ctx.problems.add(node, f"`{section.name}` is {form(node)}", f"write {right}")


def read_values(ctx: Context) -> dict[str, Given]:
    """The single values at the top of the file, what was left out included."""
    vocabulary = kind_in("", "fit-out")
    reader = KeyReader(ctx, vocabulary, "the file")
    for name, spec in vocabulary.keys.items():
        node = ctx.tree.get(name)
        if node is not None:
            reader.given[name] = reader.value(spec, node, STATED)
        elif spec.default is None:
            reader.given[name] = Given(UNKNOWN, NOWHERE, MISSING)
        else:
            reader.given[name] = Given(default_value(spec), NOWHERE, "default", spec.default)
    return reader.given


def read_item(ctx: Context, section: Section) -> Item:
    """A section that is one mapping; an empty thing when it was left out."""
    vocabulary = kind_in(section.name, section.kind)
    entry = ctx.tree.entries.get(section.name)
    if entry is None:
        return Item(section.name, vocabulary, NOWHERE, section.name, {})
    key, node = entry
    given = _keys(ctx, key, node, vocabulary, section.name)
    return Item(section.name, vocabulary, where(key), section.name, given)


def read_items(ctx: Context, section: Section) -> dict[str, Item]:
    """A section of named things of one kind."""
    vocabulary = kind_in(section.name, section.kind)
    node = ctx.tree.get(section.name)
    if type(node) is not Mapping:
        return {}
    items = {}
    for name, (key, value) in node.entries.items():
        if vocabulary.names and name not in vocabulary.names:
            right = ctx.problems.meant(name, vocabulary.names, f"the names are {listed(vocabulary.names)}")
            ctx.problems.add(key, f"{shown(name)} is no name in {section.name}", right)
            continue
        given = _keys(ctx, key, value, vocabulary, name)
        items[name] = Item(name, vocabulary, where(key), f"{section.name}.{name}", given)
    return items


def read_list(ctx: Context, section: Section) -> tuple[Item, ...]:
    """A section that is a list of mappings; each is named by its number from 1."""
    vocabulary = kind_in(section.name, section.kind)
    node = ctx.tree.get(section.name)
    if type(node) is not Sequence:
        return ()
    items = []
    for position, value in enumerate(node.items):
        entry = ctx.mapping(value, f"an entry of `{section.name}`")
        if entry is not None:
            given = _keys(ctx, entry, entry, vocabulary, str(position + 1))
            items.append(Item(str(position + 1), vocabulary, where(entry), f"{section.name}.{position}", given))
    return tuple(items)


def _keys(ctx: Context, at: Node, node: Node, vocabulary: Kind, name: str) -> dict[str, Given]:
    """The keys of one thing, which may also be `unknown` or `none` as a whole."""
    given: dict[str, Given] = {}
    if type(node) is Scalar and stands_for_all(node):
        given = all_of(vocabulary, node)
    else:
        entry = ctx.mapping(node, "" if name == vocabulary.name else vocabulary.name, name)
        if entry is not None:
            given = read_keys(ctx, entry.entries, vocabulary, article(vocabulary.name))
    check_required(ctx, at, vocabulary, given, name)
    return given
