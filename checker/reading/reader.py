"""A design file as the typed model: `read_design` for a path, `read_text` for a text."""

from __future__ import annotations

import hashlib
import os
from types import MappingProxyType
from typing import Any

from checker.design.model import Design
from checker.design.vocabulary import SECTIONS
from checker.reading.boxes import check_boxes
from checker.reading.cables import read_reels
from checker.reading.checks import check_departure, check_later, check_nesting, check_positions
from checker.reading.circuits import read_circuits, read_devices_in_place
from checker.reading.context import Context
from checker.reading.edits import Edits, apply_edits
from checker.reading.equipment import read_all_equipment, read_parts
from checker.reading.names import check_names
from checker.reading.sections import check_sections, known_format, read_item, read_items, read_list, read_values
from checker.reading.source import LARGEST, decode, load_bytes, refuse_size
from checker.source.problems import Problems, SourceErrors
from checker.source.tree import Manner, Mapping, parse_tree

DESIGN = Manner(
    starts="a design starts with `fitout: 1` and a `title:`",
    one_file="one file is one vehicle; split it",
    elsewhere="say it in `parts:` and name the part",
)


def read_design(path: str | os.PathLike[str]) -> Design:
    """The design in the file at `path`. Raises `SourceErrors` with everything that is wrong with it."""
    data = load_bytes(path)
    file = os.fspath(path)
    return _read(decode(data, file), file, hashlib.sha256(data).hexdigest(), ())


def read_text(text: str, file: str = "<text>", edits: Edits = ()) -> Design:
    """The design that `text` says, `edits` applied to its tree first (see `apply_edits`).

    `sha256` is that of the text in UTF-8, without the edits. Raises `SourceErrors`, and `ValueError` for an edit
    that cannot be made.
    """
    data = text.encode("utf-8", errors="surrogatepass")
    if len(data) > LARGEST:
        refuse_size(file, len(data))
    return _read(text.removeprefix("\ufeff"), file, hashlib.sha256(data).hexdigest(), edits)


def _read(text: str, file: str, sha256: str, edits: Edits) -> Design:
    problems = Problems(file)
    tree = parse_tree(text, problems, DESIGN)
    if tree is None:
        raise SourceErrors(problems.found)
    apply_edits(tree, edits)
    return _design(tree, file, sha256, problems)


def _design(tree: Mapping, file: str, sha256: str, problems: Problems) -> Design:
    ctx = Context(file, tree, problems)
    if not known_format(ctx):
        raise SourceErrors(problems.found)
    check_sections(ctx)
    check_names(ctx)
    sections = {section.name: section for section in SECTIONS}
    found: dict[str, Any] = read_values(ctx)
    for name in ("usual", "scope", "seen", "vehicle", "day", "papers", "labels"):
        found[name] = read_item(ctx, sections[name])
    usual = dict(found["usual"].written())
    found["usual"] = MappingProxyType(usual)
    for name in ("people", "places", "passes", "moving", "services", "looms", "modes"):
        found[name] = MappingProxyType(read_items(ctx, sections[name]))
    read_reels(ctx, usual)
    read_parts(ctx)
    read_all_equipment(ctx)
    read_devices_in_place(ctx)
    found["circuits"] = MappingProxyType(read_circuits(ctx, usual))
    found["readings"] = read_list(ctx, sections["readings"])
    found["departures"] = read_list(ctx, sections["departures"])
    check_later(ctx)
    check_nesting(ctx, found["places"])
    bodies = (*found["places"].values(), *found["moving"].values(), *ctx.parts.values(), *ctx.equipment.values())
    check_boxes(problems, found["vehicle"], bodies)
    for mode in found["modes"].values():
        check_positions(ctx, mode)
    for departure in found["departures"]:
        check_departure(ctx, departure)
    problems.raise_any()
    del found["fitout"]
    return Design(
        file=file, sha256=sha256, cables=MappingProxyType(ctx.cables), parts=MappingProxyType(ctx.parts),
        equipment=MappingProxyType(ctx.equipment), **found,
    )  # fmt: skip
