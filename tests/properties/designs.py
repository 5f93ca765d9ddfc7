"""The designs over which the properties are tried: shipped examples, base designs of rules, made-up coaches."""

from __future__ import annotations

from functools import cache

from checker.reading import read_text
from checker.shipped import shipped
from tests.benchmarks.generator import coach
from tests.properties.verdicts import Leaf, Pair, leaves, verdicts

GENERATED = {"coach of 14 circuits": (14, 1), "coach of 40 circuits": (40, 7)}


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
def verdicts_of(name: str) -> dict[Pair, str]:
    """The verdicts of a design as it stands."""
    return verdicts(read_text(texts()[name]))


@cache
def leaves_of(name: str) -> list[Leaf]:
    """The values written in a design."""
    return leaves(texts()[name])
