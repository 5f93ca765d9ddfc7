"""A worked example as read from its file: inputs in SI with their remarks, answers with tolerance."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from tests.reference.worked.units import Dimension, Unit, unit


class Input(NamedTuple):
    """One input: SI value, dimension, and the remark that stood after the unit."""

    value: float
    dimension: Dimension
    remark: str


class Answer(NamedTuple):
    """One published answer in its own unit; ``factor`` brings SI to that unit by division."""

    name: str
    value: float
    tolerance: float
    factor: float
    dimension: Dimension
    unit_text: str


class Example(NamedTuple):
    """A worked example; ``answers`` already hold the corrected value where the printed one is an erratum."""

    id: str
    calculation: str
    problem: str
    inputs: dict[str, Input]
    answers: tuple[Answer, ...]
    source: str

    def values(self) -> dict[str, float]:
        """Inputs by name, SI."""
        return {name: given.value for name, given in self.inputs.items()}

    def says(self, words: str) -> bool:
        """Whether the problem or the remark of any input says these words."""
        return words in self.problem or any(words in given.remark for given in self.inputs.values())


def read_examples(path: Path) -> tuple[Example, ...]:
    """Examples of a file, in its order; KeyError or ValueError where the file has another form."""
    document = yaml.safe_load(path.read_text(encoding="utf-8"))
    return tuple(_example(entry) for entry in document["examples"])


def _example(entry: dict[str, Any]) -> Example:
    source = entry["source"]
    return Example(
        str(entry["id"]),
        entry["calculation"],
        str(entry["problem"]),
        {str(name): _input(given) for name, given in entry["inputs"].items()},
        tuple(_answer(answer) for answer in entry["answers"]),
        f"{source['title']}, {source.get('locator', '')}",
    )


def _input(given: dict[str, Any]) -> Input:
    read = _unit(str(given["unit"]))
    number = given["value"]
    if not isinstance(number, (int, float)):
        return Input(math.nan, _foreign(repr(number)), read.remark)
    return Input(number * read.factor, read.dimension, read.remark)


def _answer(entry: dict[str, Any]) -> Answer:
    corrected = entry.get("corrected") is not None
    number = entry["corrected"] if corrected else entry["value"]
    tolerance = entry.get("corrected_tol_abs") if corrected else None
    if tolerance is None:
        tolerance = entry["tol_abs"]
    text = str(entry["unit"])
    read = _unit(text)
    if not isinstance(number, (int, float)):
        return Answer(str(entry["name"]), math.nan, math.nan, 1.0, _foreign(repr(number)), text)
    return Answer(str(entry["name"]), float(number), float(tolerance), read.factor, read.dimension, text)


def _unit(text: str) -> Unit:
    """The unit, or a dimension of its own for a text we do not know, which then fits no recipe."""
    try:
        return unit(text)
    except ValueError:
        return Unit(1.0, _foreign(text), "")


def _foreign(text: str) -> Dimension:
    return ((f"not known: {text}", 1.0),)


def is_foreign(dimension: Dimension) -> bool:
    """Whether a unit or a value could not be read."""
    return any(name.startswith("not known: ") for name, _ in dimension)
