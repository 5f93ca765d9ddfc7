"""Published worked examples, each answer within the tolerance of its own rounding.

The examples lie in worked-examples.yaml with their sources; ``--worked-examples FILE`` reads
another file of the same form. What our formulas do not answer is listed by name, never counted
as agreeing.
"""

from __future__ import annotations

from pathlib import Path

from tests.reference.worked.example import read_examples
from tests.reference.worked.run import Outcome, outcome, summary

# Example and the answers for which there is no formula here, with the reason.
NOT_COVERED = {
    "WE-RT-14": ("t",),  # two metals of equal resistance: nothing in a fit-out asks for it
    "WE-FU-04": ("t",),  # needs the wiring of a circuit told in words
    "WE-FU-08": ("Iup",),  # the 1.6 rule between gG fuses is a rule of selection, not a formula here
    "WE-SC-12": ("tau",),  # a plain division
    "WE-VE-03": ("hw",),  # chimneys
    "WE-VE-05": ("H",),
    "WE-SO-06": ("t",),  # money
}


def test_published_answers_are_reproduced(covered_example: Outcome) -> None:
    assert not covered_example.differing, f"{covered_example.example.source}: {'; '.join(covered_example.differing)}"


def test_every_answer_agrees_differs_or_is_listed_as_not_covered(worked: tuple[Outcome, ...]) -> None:
    assert worked
    for one in worked:
        refused = any(text.startswith("refused") for text in one.differing)
        counted = len(one.agreeing) + len(one.differing) + len(one.uncovered)
        assert refused or counted == len(one.example.answers)


def test_the_examples_without_a_formula_are_exactly_those_listed(shipped_worked: tuple[Outcome, ...]) -> None:
    uncovered = {one.example.id: one.uncovered for one in shipped_worked if one.uncovered}
    assert uncovered == NOT_COVERED


def test_the_summary_names_what_is_not_covered(shipped_worked: tuple[Outcome, ...]) -> None:
    text = summary(shipped_worked, Path("worked-examples.yaml"))
    assert text.startswith("worked examples in worked-examples.yaml: 104; ")
    for name in NOT_COVERED:
        assert name in text


def test_the_id_of_an_example_does_not_matter(shipped_worked: tuple[Outcome, ...]) -> None:
    for one in shipped_worked:
        renamed = outcome(one.example._replace(id="another"))
        assert (renamed.agreeing, renamed.uncovered) == (one.agreeing, one.uncovered)


def test_a_wrong_published_value_is_found(shipped_worked: tuple[Outcome, ...]) -> None:
    for one in shipped_worked:
        if not one.agreeing:
            continue
        moved = tuple(answer._replace(value=answer.value + 3 * answer.tolerance) for answer in one.example.answers)
        assert outcome(one.example._replace(answers=moved)).differing


def test_the_corrected_value_counts_where_the_print_is_wrong(tmp_path: Path) -> None:
    path = tmp_path / "one.yaml"
    path.write_text(
        """
examples:
- id: X
  calculation: dc_voltage_drop
  problem: total wire run
  inputs: {r: {value: 0.5, unit: ohm/km}, L: {value: 10, unit: m}, I: {value: 20, unit: A}}
  answers: [{name: Vd, value: 9, unit: V, tol_abs: 0.1, corrected: 0.1, corrected_tol_abs: 0.001}]
  source: {title: made up}
""",
        encoding="utf-8",
    )
    [example] = read_examples(path)
    assert outcome(example).agreeing == ("Vd",)


def test_the_words_of_the_problem_tell_one_wire_from_two_and_silence_fits_neither(
    shipped_worked: tuple[Outcome, ...],
) -> None:
    run = next(one.example for one in shipped_worked if one.agreeing == ("Vd",))
    [answer] = run.answers
    assert outcome(run).agreeing == ("Vd",)
    doubled = answer._replace(value=2 * answer.value)
    assert outcome(run._replace(problem="two-wire circuit", answers=(doubled,))).agreeing == ("Vd",)
    assert outcome(run._replace(problem="a feeder")).uncovered == ("Vd",)


def test_other_names_are_taken_only_where_every_dimension_occurs_once(shipped_worked: tuple[Outcome, ...]) -> None:
    fault = next(
        one.example
        for one in shipped_worked
        if one.example.calculation == "adiabatic_conductor" and set(one.example.inputs) == {"I", "t", "k"}
    )
    renamed = fault._replace(inputs={name + "_x": given for name, given in fault.inputs.items()})
    assert outcome(renamed).agreeing == ("S",)
    doubled = renamed._replace(inputs={**renamed.inputs, "again": fault.inputs["I"]})
    assert outcome(doubled).uncovered == ("S",)


def test_a_formula_that_refuses_its_input_is_told_as_a_difference(shipped_worked: tuple[Outcome, ...]) -> None:
    fault = next(
        one.example
        for one in shipped_worked
        if one.example.calculation == "adiabatic_conductor" and set(one.example.inputs) == {"I", "t", "k"}
    )
    longer = fault._replace(inputs={**fault.inputs, "t": fault.inputs["t"]._replace(value=6.0)})
    [text] = outcome(longer).differing
    assert text.startswith("refused: time, s, 6 is outside 0 to 5")


def test_an_unknown_unit_is_not_covered_rather_than_an_error(tmp_path: Path) -> None:
    path = tmp_path / "one.yaml"
    path.write_text(
        """
examples:
- id: X
  calculation: dc_voltage_drop
  problem: total wire run
  inputs: {r: {value: 0.5, unit: ohm/furlong}, L: {value: 10, unit: m}, I: {value: 20, unit: A}}
  answers: [{name: Vd, value: 9, unit: V, tol_abs: 0.1}]
  source: {title: made up}
""",
        encoding="utf-8",
    )
    [example] = read_examples(path)
    assert outcome(example).uncovered == ("Vd",)
