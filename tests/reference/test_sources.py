"""Batteries, gassing, alternators and bending radii against published values."""

from __future__ import annotations

import pytest

from checker.physics import alternator, battery, bend, ventilation
from tests.reference.published import published

HOUR_S = 3600.0


@pytest.mark.parametrize(
    "row", published("peukert_worked_cases"), ids=lambda row: f"{row['current_a']} A, k {row['exponent']}"
)
def test_peukert_times_are_reproduced(row: dict[str, str]) -> None:
    current = float(row["current_a"])
    time = battery.peukert_time(
        float(row["capacity_ah_at_rated_hours"]) * HOUR_S,
        float(row["rated_hours"]) * HOUR_S,
        current,
        float(row["exponent"]),
    )
    assert time / HOUR_S == pytest.approx(float(row["hours"]), abs=5.1e-5)
    assert battery.delivered_capacity(time, current) / HOUR_S == pytest.approx(float(row["delivered_ah"]), abs=5.1e-4)


@pytest.mark.parametrize("row", published("battery_bolted_fault_worked_cases"), ids=lambda row: row["case"])
def test_bolted_faults_are_reproduced(row: dict[str, str]) -> None:
    ours = battery.fault_current(float(row["open_circuit_v"]), float(row["total_mohm"]) * 1e-3)
    assert ours == pytest.approx(float(row["bolted_fault_a"]), abs=0.51)


def test_a_bank_of_cells_and_links_gives_its_bolted_fault() -> None:
    bank = battery.series_parallel(battery.Source(3.3, 0.3e-3), 16, 1, link_ohm=3e-3)
    assert battery.fault_current(*bank) == pytest.approx(6769, abs=0.51)


@pytest.mark.parametrize("row", published("lfp_cell_ocv"), ids=lambda row: f"{row['soc_percent']} %")
def test_rested_cell_voltages_are_reproduced(row: dict[str, str]) -> None:
    low, high = battery.lfp_cell_voltage(float(row["soc_percent"]) / 100)
    middle, spread = float(row["rested_cell_v_25c"]), float(row["plus_minus_v"])
    assert (low, high) == pytest.approx((middle - spread, middle + spread))


@pytest.mark.parametrize(
    "row",
    [row for row in published("battery_gassing_current") if " to " not in row["igas_ma_per_ah"]],
    ids=lambda row: f"{row['standard']} {row['cell_type']} {row['charge_mode']}",
)
def test_gassing_currents_are_reproduced(row: dict[str, str]) -> None:
    ours = ventilation.gassing_current(row["standard"], row["cell_type"], row["charge_mode"], 100 * HOUR_S)
    assert ours == pytest.approx(float(row["igas_ma_per_ah"]) * 100e-3)


@pytest.mark.parametrize("row", published("battery_ventilation_worked_cases"), ids=lambda row: row["case"])
def test_ventilation_of_battery_rooms_is_reproduced(row: dict[str, str]) -> None:
    gassing = float(row["igas_ma_per_ah"]) * 1e-3 * float(row["capacity_ah"])
    flow = ventilation.hydrogen_airflow(int(row["cells"]), gassing)
    assert flow * HOUR_S == pytest.approx(float(row["airflow_m3_per_h"]))
    assert ventilation.hydrogen_vent_area(flow) * 1e4 == pytest.approx(float(row["each_opening_cm2"]))
    assert ventilation.hydrogen_free_volume(flow) == pytest.approx(float(row["least_free_volume_m3"]))
    distance = ventilation.hydrogen_close_range(gassing) * 1e3
    assert distance == pytest.approx(float(row["close_range_distance_mm_from_28.8_formula"]), abs=0.06)


@pytest.mark.parametrize(
    "row", published("alternator_typical_output_curve"), ids=lambda row: row["alternator_rev_per_min"]
)
def test_the_typical_alternator_curve_is_reproduced(row: dict[str, str]) -> None:
    low, high = alternator.cold_output(100.0, float(row["alternator_rev_per_min"]))
    assert low == pytest.approx(100 * float(row["fraction_of_rated_cold_low"]))
    assert high == pytest.approx(100 * float(row["fraction_of_rated_cold_high"]))


@pytest.mark.parametrize(
    "row",
    published("cable_bend_radius"),
    ids=lambda row: f"{row['rule']} {row['cable']} {row['use']} {row['outer_diameter_up_to_mm']}",
)
def test_bending_radii_are_reproduced_at_the_ends_of_each_row(row: dict[str, str]) -> None:
    factor = float(row["radius_over_diameter"])
    for diameter_mm in (float(row["outer_diameter_above_mm"]) + 0.01, float(row["outer_diameter_up_to_mm"] or 60)):
        assert bend.bend_factor(diameter_mm * 1e-3, row["rule"], row["cable"], row["use"]) == factor
