from __future__ import annotations

import pytest

from checker.circuit.dc_elements import Branch, Diode, Emf, PowerLoad, ResistanceLoad, Storage
from checker.circuit.dc_solution import Solution
from checker.circuit.dc_solve import solve


def test_a_battery_takes_charge_through_another_resistance_than_it_gives_it() -> None:
    one = Storage("b", "p", "m", 12.6, 0.01, 0.5)
    assert one.flow(12.5, 1.0)[0] == pytest.approx(-10.0)
    assert one.flow(13.1, 1.0)[0] == pytest.approx(1.0)
    assert (one.state(13.0), one.state(12.0), one.state(12.6)) == ("charging", "discharging", "resting")


def test_a_diode_feeds_one_way_only() -> None:
    elements = [
        Emf("bank", "b", "gnd", 13.0, 0.01),
        Diode("diode", "b", "c", 0.5, 0.002),
        PowerLoad("lamp", "c", "gnd", 60.0),
        Storage("other", "x", "gnd", 11.0, 0.01, 0.01),
        Diode("back", "x", "c", 0.5, 0.002),
    ]
    found = solve(elements)
    assert isinstance(found, Solution)
    assert 12.3 < found.volts["c"] < 12.5
    assert abs(found.flows["back"].amps or 0.0) < 1e-3
    assert found.imbalance() < 1e-6


def test_a_dead_branch_behind_a_diode_is_alive_when_the_diode_points_to_it() -> None:
    elements = [
        Emf("bank", "b", "gnd", 13.0, 0.01),
        Diode("diode", "b", "c", 0.5, 0.002),
        Branch("lead", "c", "d", 0.01),
        ResistanceLoad("heater", "d", "gnd", 5.0),
    ]
    found = solve(elements)
    assert isinstance(found, Solution)
    assert found.flows["heater"].volts == pytest.approx(12.45, abs=0.05)


@pytest.mark.parametrize("ohms", [(0.0, 1.0), (1.0, 0.0), (-1.0, 1.0)])
def test_a_battery_without_resistance_is_no_storage(ohms: tuple[float, float]) -> None:
    with pytest.raises(ValueError):
        Storage("b", "p", "m", 12.0, *ohms)
