"""The designs over which the properties are tried: shipped examples, base designs of rules, made-up coaches."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import NamedTuple

from checker.design.model import Design
from checker.reading import read_text
from checker.shipped import shipped
from tests.benchmarks.generator import coach
from tests.clean import designs as clean
from tests.properties.verdicts import Leaf, Pair, leaves, verdicts


class Written(NamedTuple):
    """A text, and what is written otherwise in it."""

    text: str
    edits: tuple[tuple[str, str], ...] = ()


GENERATED = {"coach of 20 circuits": (20, 1), "coach of 40 circuits": (40, 7)}


@cache
def texts() -> dict[str, str]:
    """Name -> text, small designs first."""
    found = {
        entry.name: entry.read_text(encoding="utf-8")
        for folder in (shipped("rules").joinpath("designs"), shipped("examples"))
        for entry in sorted(folder.iterdir(), key=lambda one: one.name)
        if entry.name.endswith(".fitout.yaml")
    }
    found |= {name: coach(*given) for name, given in GENERATED.items()}
    return dict(sorted(found.items(), key=lambda one: (len(one[1]), one[0])))


@cache
def everything() -> dict[str, Written]:
    """Those, and the clean designs: as they stand, and with all their faults at once; for the long sweep by hand."""
    found = {name: Written(text) for name, text in texts().items()}
    for name in clean.NAMES:
        found[name] = Written(clean.text_of(name))
        found[f"{name}, spoilt"] = Written(clean.text_of(name), clean.all_faults(name))
    return found


def design_with(name: str, edits: Iterable[tuple[str, str]] = ()) -> Design:
    """A design with values written otherwise; raises ReadingErrors where the file may not say that."""
    written = everything()[name]
    return read_text(written.text, edits=[*written.edits, *edits])


@cache
def verdicts_of(name: str) -> dict[Pair, str]:
    """The verdicts of a design as it stands."""
    return verdicts(design_with(name))


@cache
def leaves_of(name: str) -> list[Leaf]:
    """The values written in a design, those left out that are written otherwise."""
    written = everything()[name]
    changed = tuple(path for path, _ in written.edits)
    return [leaf for leaf in leaves(written.text) if not any(f"{leaf.path}.".startswith(f"{one}.") for one in changed)]
