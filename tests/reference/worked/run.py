"""Every example of a file against our formulas, and the counts to print."""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

from checker.outofrange import OutOfRange
from tests.reference.worked import conductors, sources, vehicle
from tests.reference.worked.example import Example, is_foreign, read_examples
from tests.reference.worked.recipe import evaluate, off_by

RECIPE_MODULES = (conductors, sources, vehicle)  # importing them registers their recipes


class Outcome(NamedTuple):
    """What became of one example: answers that agree, that differ (in words), that we have no formula for."""

    example: Example
    agreeing: tuple[str, ...]
    differing: tuple[str, ...]
    uncovered: tuple[str, ...]


def outcomes(path: Path) -> tuple[Outcome, ...]:
    """Outcome of each example of a file, in its order."""
    return tuple(outcome(example) for example in read_examples(path))


def outcome(example: Example) -> Outcome:
    """Our answers against the published ones, each within its tolerance."""
    try:
        ours = evaluate(example)
    except (OutOfRange, ArithmeticError) as refusal:
        return Outcome(example, (), (f"refused: {refusal}",), ())
    agreeing, differing, uncovered = [], [], []
    for answer in example.answers:
        if answer.name not in ours or is_foreign(answer.dimension):
            uncovered.append(answer.name)
        elif off_by(answer, ours[answer.name]) <= 1.0 + 1e-9:
            agreeing.append(answer.name)
        else:
            got = ours[answer.name] / answer.factor
            differing.append(
                f"{answer.name}: {got:.6g} {answer.unit_text} here, {answer.value:.6g} published, "
                f"tolerance {answer.tolerance:g}"
            )
    return Outcome(example, tuple(agreeing), tuple(differing), tuple(uncovered))


def summary(found: tuple[Outcome, ...], path: Path) -> str:
    """Counts of examples and answers, and each example not wholly covered by name."""
    whole = [one for one in found if not one.uncovered]
    partly = [one for one in found if one.uncovered and (one.agreeing or one.differing)]
    never = [one for one in found if not (one.agreeing or one.differing)]
    agree = sum(len(one.agreeing) for one in found)
    differ = sum(len(one.differing) for one in found)
    open_answers = sum(len(one.uncovered) for one in found)
    agreeing_examples = sum(1 for one in whole if not one.differing)
    lines = [
        f"worked examples in {path.name}: {len(found)}; wholly covered {len(whole)}, of these agreeing "
        f"{agreeing_examples}; partly covered {len(partly)}; not covered {len(never)}",
        f"answers: {agree} agree, {differ} differ, {open_answers} not covered",
    ]
    lines += [
        f"  differs: {one.example.id} {one.example.calculation}: {text}" for one in found for text in one.differing
    ]
    lines += [
        f"  partly covered: {one.example.id} {one.example.calculation}: no formula for {', '.join(one.uncovered)}"
        for one in partly
    ]
    lines += [f"  not covered: {one.example.id} {one.example.calculation}: {one.example.problem}" for one in never]
    return "\n".join(lines)
