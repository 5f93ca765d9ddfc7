"""What the modes ask of a generator."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, subject


def _mode(watts: str, more: str = "", where: str = "generator") -> dict[str, str]:
    return {"modes.gen": f"{{generator: running, set: {{KG: {where}}}, running: {{sockets: {watts}}}{more}}}"}


@pytest.mark.parametrize(("watts", "over"), [("2000 W", False), ("2010 W", True), ("8.6 A", False), ("9 A", True)])
def test_loads_are_held_against_its_power(watts: str, over: bool) -> None:
    assert subject(VAN, "ac_source", "genset", _mode(watts)).is_overdrawn is over


def test_what_hangs_on_another_throw_is_not_asked_of_it() -> None:
    inverting = _mode("3 kW", ", inverter: inverting", "inverter")
    assert subject(VAN, "ac_source", "genset", inverting).is_overdrawn is False


def test_a_charger_counts_where_it_runs_without_the_shore() -> None:
    own = _mode("1.9 kW") | {"equipment.charger.ac.current": "2 A"}
    assert subject(VAN, "ac_source", "genset", own).is_overdrawn is False
    assert subject(VAN, "ac_source", "genset", own | {"equipment.charger.enabled by": "none"}).is_overdrawn is True


def test_other_sources_and_silent_modes() -> None:
    assert subject(COACH, "ac_source", "inverter").is_overdrawn is None
    assert isinstance(subject(VAN, "ac_source", "genset").is_overdrawn, Unknown)
