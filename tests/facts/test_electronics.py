"""Electronic loads: reversal and approval."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask


def test_what_names_a_transient_is_electronic_and_a_plain_motor_is_not() -> None:
    assert ask("load", "lights", "is_electronic") is True
    assert ask("load", "gas-alarm", "is_electronic") is True
    assert isinstance(ask("load", "lights", "is_electronic", {"equipment.lights.transient level": "(remove)"}), Unknown)
    assert ask("load", "pump", "is_electronic", {"equipment.pump.transient level": "(remove)"}) is False
    assert ask("load", "lights", "is_electronic", {"equipment.lights.transient level": "none"}) is False


@pytest.mark.parametrize(("keyed", "survives"), [("true", True), ("false", False)])
def test_keyed_batteries_spare_all_that_hangs_on_them(keyed: str, survives: bool) -> None:
    edits = {
        "equipment.lights.keyed": "false",
        "equipment.lights.reverse protection": "false",
        "equipment.start-battery.keyed": keyed,
    }
    assert ask("load", "lights", "survives_reversal", edits) is survives
    assert isinstance(ask("load", "lights", "survives_reversal"), Unknown)


def test_an_exemption_is_an_approval_and_a_household_mark_is_none() -> None:
    key = "equipment.lights.approval"
    assert ask("load", "lights", "approved_for_vehicles", {key: "[exempt from UN R10 3.2.9]"}) is True
    assert ask("load", "lights", "approved_for_vehicles", {key: "[household mark]"}) is False
    assert isinstance(ask("load", "lights", "approved_for_vehicles"), Unknown)
    assert ask("load", "lights", "goes_on_the_road", {"vehicle.kind": "boat"}) is False
