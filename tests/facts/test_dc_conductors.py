"""Conductors and contacts as resistances of an operating point."""

from __future__ import annotations

import pytest

from checker.circuit.dc_elements import Branch
from tests.facts.dc_designs import point_of, van


def branch(mode: str, name: str, case: str = "likely", heat: dict[str, float] | None = None) -> Branch | None:
    placed = (
        "out: {from: charger.high, to: bus, run: [1 m]",
        "out: {from: charger.high, to: bus, run: [1 m via cabin]",
    )
    elements = point_of(van((placed,)), mode).plan.elements(case, heat or {})
    found = next((one for one in elements if one.name == name), None)
    assert found is None or isinstance(found, Branch)
    return found


def ohms(name: str, case: str = "likely", heat: dict[str, float] | None = None) -> float:
    found = branch("sunny", name, case, heat)
    assert found is not None
    return found.ohm


def test_a_stretch_is_its_metal_at_its_temperature_and_two_joints() -> None:
    # 1 m of 35 mm2: 0.554 mΩ at 20 °C (IEC 60228 table 3, seen), at 15 °C half-way between 0 and 30 °C.
    metal = 0.554e-3 * (1 - 0.00393 * 5)
    assert ohms("out 0") == pytest.approx(metal + 2 * 2.5e-9 / 35e-6, rel=1e-6)


def test_the_low_case_has_hot_conductors_and_worse_joints() -> None:
    assert ohms("out 0", "low") > ohms("out 0") > ohms("out 0", "high")


def test_a_conductor_is_warmed_by_its_current_up_to_its_limit() -> None:
    cool, warm, hot = (ohms("out 0", "likely", {"out": amps}) for amps in (0.0, 100.0, 1e4))
    assert cool < warm < hot
    metal = 0.554e-3 * (1 + 0.00393 * (105 - 20))
    assert hot == pytest.approx(metal + 2 * 2.5e-9 / 35e-6, rel=1e-6)


def test_a_fuse_is_its_drop_at_its_rating() -> None:
    assert ohms("F1") == pytest.approx(0.08 / 100)


def test_an_open_switch_is_left_out() -> None:
    assert branch("off", "S1") is None
    assert branch("sunny", "S1") is not None


def test_mains_conductors_are_no_part_of_it() -> None:
    assert branch("sunny", "wall-in 0") is None
    assert "wall-in" not in point_of(van(), "sunny").plan.wires


def test_the_chassis_is_assumed_where_it_carries_and_its_resistance_is_not_told() -> None:
    point = point_of(van(), "sunny")
    assert any("the chassis is taken as 1.5 mΩ" in text for text in point.assumed)
    assert ohms("gen-cable return 0") == pytest.approx(1.5e-3)


def test_a_return_that_is_not_told_is_noted_as_missing() -> None:
    facts = van((("  pump-feed: {from: bus, to: pump, run: [4 m], cable: red, return: same}",
                  "  pump-feed: {from: bus, to: pump, run: [4 m], cable: red, return: unknown}"),))  # fmt: skip
    assert "the return of pump-feed" in point_of(facts, "sunny").missing
