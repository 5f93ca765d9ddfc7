"""Which formula answers which kind of worked example, found by calculation, input names and dimensions.

A recipe never looks at the id of an example. It fits when the names of the inputs and their
dimensions are exactly its own; one marked ``by_dimension`` also fits when every dimension occurs
once, so that nothing can be taken for something else. A free recipe decides by itself.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from tests.reference.worked.example import Answer, Example
from tests.reference.worked.units import Dimension, dimension

Evaluate = Callable[..., dict[str, float]]
Free = Callable[[Example], "dict[str, float] | None"]


class Recipe(NamedTuple):
    """A way to compute the answers of one calculation from inputs of given names and dimensions."""

    calculation: str
    inputs: dict[str, Dimension]
    answers: dict[str, Dimension]
    evaluate: Evaluate
    when: Callable[[Example], bool]
    by_dimension: bool


RECIPES: list[Recipe] = []
FREE: list[tuple[str, Free]] = []


def _always(_: Example) -> bool:
    return True


def recipe(
    calculation: str, inputs: str, answers: str, when: Callable[[Example], bool] = _always, by_dimension: bool = False
) -> Callable[[Evaluate], Evaluate]:
    """Register a recipe; ``inputs`` and ``answers`` are lists such as ``"I: A; t: h"``."""

    def register(evaluate: Evaluate) -> Evaluate:
        RECIPES.append(Recipe(calculation, _named(inputs), _named(answers), evaluate, when, by_dimension))
        return evaluate

    return register


def free_recipe(calculation: str) -> Callable[[Free], Free]:
    """Register a recipe that gives the answers by name in SI, or None if the example is not its own."""

    def register(evaluate: Free) -> Free:
        FREE.append((calculation, evaluate))
        return evaluate

    return register


def evaluate(example: Example) -> dict[str, float]:
    """Answers of an example that our formulas give, by name and in SI; empty if none does."""
    for one in RECIPES:
        if one.calculation == example.calculation and one.when(example):
            found = _by_name(one, example)
            if found:
                return found
    for calculation, free in FREE:
        if calculation == example.calculation:
            found = free(example)
            if found:
                return found
    for one in RECIPES:
        if one.by_dimension and one.calculation == example.calculation and one.when(example):
            found = _by_dimension(one, example)
            if found:
                return found
    return {}


def off_by(answer: Answer, ours_si: float) -> float:
    """Distance between our answer and the published one over the tolerance; 1 or less agrees."""
    return abs(ours_si / answer.factor - answer.value) / answer.tolerance


def _named(text: str) -> dict[str, Dimension]:
    pairs = (item.split(":") for item in text.split(";"))
    return {name.strip(): dimension(unit_text.strip()) for name, unit_text in pairs}


def _by_name(one: Recipe, example: Example) -> dict[str, float]:
    if one.inputs != {name: given.dimension for name, given in example.inputs.items()}:
        return {}
    ours = one.evaluate(**example.values())
    return {
        answer.name: ours[answer.name]
        for answer in example.answers
        if answer.name in ours and one.answers[answer.name] == answer.dimension
    }


def _by_dimension(one: Recipe, example: Example) -> dict[str, float]:
    inputs = _unique({name: given.dimension for name, given in example.inputs.items()})
    wanted = _unique(one.inputs)
    if inputs is None or wanted is None or set(inputs) != set(wanted):
        return {}
    answers = _unique({answer.name: answer.dimension for answer in example.answers})
    offered = _unique(one.answers)
    if answers is None or offered is None or not set(answers) <= set(offered):
        return {}
    values = example.values()
    ours = one.evaluate(**{wanted[dim]: values[inputs[dim]] for dim in wanted})
    return {answers[dim]: ours[offered[dim]] for dim in answers}


def _unique(dimensions: dict[str, Dimension]) -> dict[Dimension, str] | None:
    turned = {dim: name for name, dim in dimensions.items()}
    return turned if len(turned) == len(dimensions) else None
