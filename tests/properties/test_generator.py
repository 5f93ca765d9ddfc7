"""The made-up coaches are designs, the same ones every time, and as large as asked."""

from __future__ import annotations

from collections import Counter

import pytest

from checker.facts.subject import Facts
from checker.reading import read_text
from checker.review import review
from checker.rulebook import load_rulebook
from tests.benchmarks.generator import SMALLEST, coach


@pytest.mark.parametrize("circuits", [SMALLEST, 20, 23, 37, 50, 61, 200])
def test_a_coach_has_as_many_circuits_as_asked_and_can_be_read(circuits: int) -> None:
    assert len(read_text(coach(circuits, seed=circuits)).circuits) == circuits


def test_the_same_arguments_give_the_same_text_and_another_seed_another() -> None:
    assert coach(60, 5) == coach(60, 5)
    assert coach(60, 5) != coach(60, 6)
    assert "code: eu\n" in coach(SMALLEST, code="eu")


def test_a_coach_holds_a_mix_of_equipment_and_every_circuit_is_fed() -> None:
    design = read_text(coach(300))
    kinds = {item.kind for item in design.equipment.values()}
    assert {"bank", "bar", "board", "dc converter", "inverter-charger", "motor", "outlet", "solar array"} <= kinds
    facts = Facts(design)
    assert all(one.is_ever_fed is True for one in facts.subjects("circuit") if one.system == "ac" and one.is_final)


def test_a_coach_has_as_few_findings_as_a_finished_job() -> None:
    """Findings cost time, so that a benchmark of coaches full of them would measure what real files do not ask.

    There are none when the backbone tells all that the rules ask for; where a new rule asks for more, tell it in
    `tests/benchmarks/backbone.yaml` before there are many.
    """
    found = review(read_text(coach(60)), load_rulebook())
    assert found.counts["met"] > 1000
    assert 100 * len(found.findings) < found.counts["met"], Counter(one.rule for one in found.findings)


def test_less_than_the_backbone_is_refused() -> None:
    with pytest.raises(ValueError, match="at least 19"):
        coach(SMALLEST - 1)
