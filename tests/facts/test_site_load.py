"""What the modes ask of the shore."""

from __future__ import annotations

import pytest

from checker.facts.subject import trace
from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, subject

# Coach on shore: heater 800 W / 230 V = 3.478 A; charger 30 A x 48 V / (0.85 x 230 V) = 7.366 A; together 10.844 A.


@pytest.mark.parametrize(("site", "over"), [("10.8 A", True), ("10.9 A", False)])
def test_loads_and_charger_are_summed(site: str, over: bool) -> None:
    edits = {"modes.shore.shore": site, "equipment.inverter.settings.shore limit": "16 A"}
    assert subject(COACH, "inlet", "inlet", edits).is_overdrawn is over


def test_a_limit_that_nobody_told_may_hold_the_charger_back() -> None:
    assert isinstance(subject(COACH, "inlet", "inlet", {"modes.shore.shore": "10.8 A"}).is_overdrawn, Unknown)


def test_the_site_outlet_counts_where_a_mode_says_more() -> None:
    edits = {"vehicle.site outlet": "10 A", "equipment.inverter.settings.shore limit": "16 A"}
    assert subject(COACH, "inlet", "inlet", edits).is_overdrawn is True


def test_a_shore_limit_makes_the_charger_give_way_but_not_the_loads() -> None:
    limited = {"equipment.inverter.settings.shore limit": "6 A"}
    assert subject(COACH, "inlet", "inlet", {**limited, "modes.shore.shore": "6 A"}).is_overdrawn is False
    assert subject(COACH, "inlet", "inlet", {**limited, "modes.shore.shore": "5 A"}).is_overdrawn is True
    hot = {**limited, "modes.shore.shore": "6 A", "modes.shore.running": "{heater: 1600 W}"}
    assert subject(COACH, "inlet", "inlet", hot).is_overdrawn is True


def test_the_working_shows_both_sums() -> None:
    edits = {"modes.shore.shore": "6 A", "equipment.inverter.settings.shore limit": "16 A"}
    found = subject(COACH, "inlet", "inlet", edits)
    assert trace(found, "is_overdrawn").notes == ("in the mode shore: 10.84 A asked, 6 A given",)


def test_a_charger_of_unknown_input_leaves_it_open() -> None:
    # sockets 500 W / 230 V = 2.2 A and 20 A x 12 V / (0.85 x 230 V) = 1.2 A
    assert subject(VAN, "inlet", "inlet").is_overdrawn is False
    assert isinstance(subject(VAN, "inlet", "inlet", {"equipment.charger.dc.current": "unknown"}).is_overdrawn, Unknown)


def test_without_a_mode_on_the_shore_nobody_knows_what_is_asked_of_it() -> None:
    assert isinstance(subject(COACH, "inlet", "inlet", {"modes.shore": "(remove)"}).is_overdrawn, Unknown)
