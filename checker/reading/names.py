"""Which names things may have: no dots, nothing reserved, no name twice where runs would mix them up."""

from __future__ import annotations

from checker.reading.context import Context
from checker.source.problems import shown
from checker.source.tree import Mapping, Scalar

RESERVED = frozenset(("unknown", "none", "same", "chassis", "in cable", "?"))
_IN_RUNS = ("equipment", "joints", "passes", "places")
_WITHOUT_MARKS = (*_IN_RUNS, "circuits", "moving")
_NAMED = (*_WITHOUT_MARKS, "cables", "parts", "looms", "modes", "services")
_MARKS = (".", "#", ">", ",", " via ")


def check_names(ctx: Context) -> None:
    """Note names that are reserved, hold a mark with a meaning, or stand for two things."""
    first: dict[str, tuple[str, Scalar]] = {}
    for section in _NAMED:
        node = ctx.tree.get(section)
        if type(node) is not Mapping:
            continue
        marked = section in _WITHOUT_MARKS
        in_runs = section in _IN_RUNS
        for name, (key, _) in node.entries.items():
            if name in RESERVED:
                ctx.problems.add(key, f"{shown(name)} has a meaning of its own", "take another name")
            elif marked and any(mark in name for mark in _MARKS):
                _refuse_marks(ctx, key, name)
            if not in_runs:
                continue
            before = first.setdefault(name, (section, key))
            if before[1] is not key:
                ctx.problems.add(
                    key,
                    f"{shown(name)} stands in {before[0]} too, at {before[1].line}:{before[1].column}",
                    "names differ over equipment, joints, passes and places, for all of them stand in runs",
                )


def _refuse_marks(ctx: Context, key: Scalar, name: str) -> None:
    plain = name.replace(".", "-").replace("#", "-").replace(">", "-").replace(",", "-").replace(" via ", "-")
    mark = next(mark for mark in _MARKS if mark in name).strip()
    ctx.problems.add(
        key, f"the name {shown(name)} holds {shown(mark)}, which has a meaning in runs", f"write {shown(plain)}"
    )
