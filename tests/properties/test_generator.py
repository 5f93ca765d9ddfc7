"""The made-up coaches are designs, the same ones every time, and as large as asked."""

from __future__ import annotations

import pytest

from checker.facts.subject import Facts
from checker.reading import read_text
from tests.benchmarks.generator import coach


@pytest.mark.parametrize("circuits", [10, 11, 23, 37, 50, 61, 200])
def test_a_coach_has_as_many_circuits_as_asked_and_can_be_read(circuits: int) -> None:
    assert len(read_text(coach(circuits, seed=circuits)).circuits) == circuits


def test_the_same_arguments_give_the_same_text_and_another_seed_another() -> None:
    assert coach(60, 5) == coach(60, 5)
    assert coach(60, 5) != coach(60, 6)
    assert "code: eu\n" in coach(10, code="eu")


def test_a_coach_holds_a_mix_of_equipment_and_every_circuit_is_fed() -> None:
    design = read_text(coach(300))
    kinds = {item.kind for item in design.equipment.values()}
    assert {"bank", "bar", "board", "dc converter", "inverter-charger", "motor", "outlet", "solar array"} <= kinds
    facts = Facts(design)
    assert all(one.is_ever_fed is True for one in facts.subjects("circuit") if one.system == "ac" and one.is_final)


def test_less_than_the_backbone_is_refused() -> None:
    with pytest.raises(ValueError, match="at least 10"):
        coach(9)
