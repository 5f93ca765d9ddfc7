from __future__ import annotations

import pytest

from checker.outofrange import OutOfRange
from checker.physics.storage import lead_acid_acceptance, lead_acid_cell_voltage


def test_a_full_and_a_half_charged_battery_have_their_usual_voltages() -> None:
    # 12.6 to 12.85 V full, 12.0 to 12.25 V half charged, six cells: usual data, from memory.
    assert [6 * one for one in lead_acid_cell_voltage(1.0)] == pytest.approx([12.6, 12.85], abs=0.01)
    assert [6 * one for one in lead_acid_cell_voltage(0.5)] == pytest.approx([12.0, 12.25], abs=0.01)


def test_more_charge_means_more_voltage_and_less_acceptance() -> None:
    assert lead_acid_cell_voltage(0.9)[0] > lead_acid_cell_voltage(0.6)[1] - 0.042
    assert lead_acid_acceptance(360_000.0, 1.0) == pytest.approx(1.0)
    assert lead_acid_acceptance(360_000.0, 0.5) == pytest.approx(13.5)


@pytest.mark.parametrize("soc", [-0.01, 1.01])
def test_a_state_of_charge_outside_nothing_and_full_is_refused(soc: float) -> None:
    with pytest.raises(OutOfRange):
        lead_acid_cell_voltage(soc)
    with pytest.raises(OutOfRange):
        lead_acid_acceptance(360_000.0, soc)
