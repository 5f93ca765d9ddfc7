"""The clean designs of this folder, and the faults that are put into them."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import yaml

HERE = Path(__file__).parent
NAMES = tuple(sorted(path.name.removesuffix(".fitout.yaml") for path in HERE.glob("*.fitout.yaml")))

Edits = tuple[tuple[str, str], ...]


class Fault(NamedTuple):
    """A fault put into a clean design, and the breach that it must bring."""

    design: str
    says: str
    edits: Edits
    rule: str
    about: str


@cache
def text_of(name: str) -> str:
    """A clean design as it stands."""
    return (HERE / f"{name}.fitout.yaml").read_text("utf-8")


@cache
def faults() -> tuple[Fault, ...]:
    """All faults, design by design."""
    told: dict[str, list[dict[str, Any]]] = yaml.safe_load((HERE / "faults.yaml").read_text("utf-8"))
    return tuple(
        Fault(name, one["says"], tuple((at, str(text)) for at, text in one["edits"].items()), one["rule"], one["about"])
        for name, found in told.items()
        for one in found
    )


def all_faults(name: str) -> Edits:
    """The edits that make every fault of a design at once."""
    return tuple(edit for fault in faults() if fault.design == name for edit in fault.edits)
