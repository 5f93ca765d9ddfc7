"""How a number came about, as an indented list: each fact with its formula, its source and the lines of the file."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Any

from checker.design.given import Given
from checker.quantities import Range, UnitError, Unknown, Window, show
from checker.reports.plain import one_line

if TYPE_CHECKING:
    from checker.facts.subject import Input, Step

INDENT = "  "
BASIS_SAYS = {
    "stated": "",
    "measured": "measured",
    "read off": "read off",
    "datasheet": "from the datasheet",
    "assumed": "assumed by whoever wrote the file",
    "default": "assumed: not written, the generic value of its kind",
    "missing": "not written",
}
MOST_LISTED = 12
"""Of a longer list of subjects only so many are named."""


def step_lines(steps: Iterable[Step], file: str) -> Iterator[str]:
    """The steps with all that they rest on, two blanks further in for each level; a fact met again is not repeated."""
    seen: set[tuple[str, str]] = set()
    for step in steps:
        yield from _step(step, file, "", seen)


def _step(step: Step, file: str, indent: str, seen: set[tuple[str, str]]) -> Iterator[str]:
    line = f"{indent}{step.name} of {one_line(step.subject_id)} = {value_text(step.value, step.spec.unit)}"
    key = (step.name, step.subject_id)
    if key in seen:
        yield f"{line} (as above)" if step.steps or step.inputs or step.notes else line
        return
    seen.add(key)
    yield line
    inner = indent + INDENT
    for note in step.notes:
        yield inner + one_line(note)
    if step.notes or step.steps:
        yield from _labelled(inner, "how", step.spec.method)
    yield from _labelled(inner, "source", step.spec.source)
    for given in step.inputs:
        yield inner + input_line(given, file)
    for below in step.steps:
        yield from _step(below, file, inner, seen)


def _labelled(indent: str, label: str, words: str) -> Iterator[str]:
    if words:
        yield f"{indent}{label}: {one_line(words)}"


def input_line(given: Input, file: str) -> str:
    """`equipment.F1.rating = 80 A (datasheet), coach.fitout.yaml:131:20`."""
    written = one_line(given.text) if given.text else value_text(given.value, given.unit)
    basis = BASIS_SAYS.get(given.basis, given.basis)
    remark = f" ({basis})" if basis else ""
    return f"{one_line(given.path)} = {written}{remark}, {one_line(file)}:{given.where.line}:{given.where.column}"


def value_text(value: Any, unit: str = "") -> str:
    """A value of any type as a person writes it."""
    if value is None:
        return "none"
    if value is True or value is False:
        return "yes" if value else "no"
    if isinstance(value, Unknown):
        return f"unknown ({one_line(value.reason)})" if value.reason else "unknown"
    if isinstance(value, float | int | Range | Window):
        return _number(value, unit)
    if isinstance(value, str):
        return one_line(value)
    if isinstance(value, Given):
        return one_line(value.text) if value.text else value_text(value.value, unit)
    if isinstance(value, tuple):
        return _listed(value, unit)
    return (
        f"{value.kind} {one_line(value.id)}"
        if hasattr(value, "kind") and hasattr(value, "id")
        else one_line(str(value))
    )


def _number(value: Any, unit: str) -> str:
    try:
        return show(value, unit)
    except UnitError:
        return str(value)


def _listed(values: tuple[Any, ...], unit: str) -> str:
    if not values:
        return "none"
    said = [value_text(value, unit) for value in values[:MOST_LISTED]]
    more = len(values) - MOST_LISTED
    return ", ".join(said) + (f" and {more} more" if more > 0 else "")
