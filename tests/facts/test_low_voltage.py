"""How high a voltage may be that protects by being low."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.house import ask
from tests.facts.mains_subjects import COACH, subject


def test_bare_parts_may_have_half_as_much_in_the_wet() -> None:
    assert ask("conductor", "high", "touch_voltage") == 60.0
    assert ask("conductor", "sun-in", "touch_voltage") == 30.0
    assert ask("conductor", "high", "touch_voltage", {"places.cabin.kind": "unknown"}) == Range(30.0, 60.0)


def test_mains_relies_on_low_voltage_only_where_it_says_so() -> None:
    said = {"circuits.heating.shock protection": "extra-low voltage"}
    assert subject(COACH, "conductor", "heating").relies_on_low_voltage is False
    assert subject(COACH, "conductor", "heating", said).relies_on_low_voltage is True
    assert subject(COACH, "conductor", "heating", said).low_voltage_limit == 50.0
    high = {"equipment.panels.arrangement": "6s1p", "equipment.panels.modules": "6"}
    assert ask("conductor", "sun-in", "relies_on_low_voltage", high) is False


@pytest.mark.parametrize(("volts", "low"), [("24 V AC", True), ("120 V AC", False)])
def test_a_transformer_is_one_for_low_voltage_by_its_secondary(volts: str, low: bool) -> None:
    made = {
        "equipment.T": f"{{kind: transformer, secondary: {{voltage: {volts}}}, windings: separate}}",
        "circuits.heating": "{from: T.secondary, to: heater, run: [3 m via duct], cable: flex-2.5}",
        "circuits.stepping": "{from: board.heater, to: T.primary, run: [0.5 m via locker], cable: flex-2.5}",
    }
    assert subject(COACH, "ac_source", "T", made).is_low_voltage is low
    assert isinstance(subject(COACH, "ac_source", "T", made).isolation, Unknown)
    assert subject(COACH, "ac_source", "inlet", made).isolation is None


def test_a_circuit_of_a_low_winding_alone_carries_no_mains_and_an_untold_voltage_leaves_it_open() -> None:
    low = {
        "equipment.T": "{kind: transformer, primary: {voltage: 230 V AC}, secondary: {voltage: 42 V AC}, "
        "windings: separate, isolation: reinforced, place: locker}",
        "circuits.heating": "{from: T.secondary, to: heater, run: [3 m via duct], cable: pair-4}",
        "circuits.stepping": "{from: board.heater, to: T.primary, run: [0.5 m via locker], cable: flex-2.5}",
    }
    found = subject(COACH, "circuit", "heating", low)
    assert (found.is_low_alternating, found.carries_mains, found.feeds_mains_loads) == (True, False, False)
    assert subject(COACH, "circuit", "stepping", low).carries_mains is True
    untold = low | {"equipment.T.secondary.voltage": "unknown"}
    assert isinstance(subject(COACH, "circuit", "heating", untold).carries_mains, Unknown)
    one_winding = low | {"equipment.T.windings": "auto"}
    assert subject(COACH, "circuit", "heating", one_winding).carries_mains is True
    assert subject(COACH, "circuit", "kitchen").is_low_alternating is False
