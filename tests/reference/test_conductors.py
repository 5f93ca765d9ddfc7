"""Resistance, drop, carrying capacity and short-time heating against published values."""

from __future__ import annotations

import math

import pytest

from checker.outofrange import OutOfRange
from checker.physics import adiabatic, carrying_capacity, conductor_resistance, installed_capacity, voltage_drop
from tests.reference.published import published

FOOT_M = 0.3048
CIRCULAR_MIL_M2 = math.pi / 4 * (0.0254e-3) ** 2


@pytest.mark.parametrize("row", published("iec60228_max_resistance_copper"), ids=lambda row: row["nominal_mm2"])
def test_greatest_resistance_of_iec_60228_is_reproduced(row: dict[str, str]) -> None:
    area = float(row["nominal_mm2"]) * 1e-6
    for kind, column in (
        ("class 2", "class2_plain"),
        ("class 2 tinned", "class2_tinned"),
        ("class 5", "class5_plain"),
        ("class 5 tinned", "class5_tinned"),
    ):
        ours = conductor_resistance.table_resistance_per_metre(area, kind, 20.0)
        assert ours * 1e3 == pytest.approx(float(row[f"{column}_ohm_per_km_20c_max"]), rel=1e-12)
        assert ours > conductor_resistance.copper_resistance_per_metre(area, 20.0)


@pytest.mark.parametrize("row", published("iso6722_automotive_max_resistance"), ids=lambda row: row["nominal_mm2"])
def test_greatest_resistance_of_iso_6722_is_reproduced_and_lies_below_class_5(row: dict[str, str]) -> None:
    area = float(row["nominal_mm2"]) * 1e-6
    ours = conductor_resistance.table_resistance_per_metre(area, "road vehicle", 20.0)
    assert ours * 1e3 == pytest.approx(float(row["bare_copper_max_ohm_per_km_20c"]), rel=1e-12)
    if row["iec60228_class5_ohm_per_km"]:
        class_5 = conductor_resistance.table_resistance_per_metre(area, "class 5", 20.0)
        assert ours / class_5 == pytest.approx(float(row["ratio_iso_to_class5"]), abs=6e-4)


@pytest.mark.parametrize("row", published("awg_solid_copper"), ids=lambda row: row["awg"])
def test_solid_gauge_wires_follow_the_pure_formula(row: dict[str, str]) -> None:
    area = float(row["area_mm2_computed"]) * 1e-6
    ours = conductor_resistance.copper_resistance_per_metre(area, 20.0) * 1000 * FOOT_M
    # 0.09 % is the rounding of the print; the area column is rounded to a ten-thousandth of a mm2
    tolerance = 9e-4 + 5e-5 / float(row["area_mm2_computed"])
    assert ours == pytest.approx(float(row["ohm_per_1000ft_20c_published"]), rel=tolerance)


def test_constants_are_those_of_the_wire_tables() -> None:
    values = {row["quantity"]: row["value"] for row in published("constants_copper")}
    resistivity = float(values["resistivity of annealed copper at 20 C"])
    assert resistivity == conductor_resistance.COPPER_RESISTIVITY_20C_OHM_M
    assert float(values["temperature coefficient at 20 C"]) == conductor_resistance.COPPER_PER_K_AT_20C
    # the law's K is copper somewhat warmer than 20 °C
    k_ohm_m = float(values["K in circular-mil formula"]) * CIRCULAR_MIL_M2 / FOOT_M
    assert conductor_resistance.copper_resistivity(29.3) == pytest.approx(k_ohm_m, rel=1e-3)


@pytest.mark.parametrize("row", published("copper_temperature_correction"), ids=lambda row: row["conductor_c"])
def test_temperature_factor_agrees_with_the_published_correction(row: dict[str, str]) -> None:
    ours = conductor_resistance.copper_temperature_factor(float(row["conductor_c"]))
    column = "multiply_R20_by_1+0.00393(T-20)_to_get_R_at_T"
    assert ours == pytest.approx(float(row[column]), abs=5.1e-5)
    # the printed table uses 0.004 per K: half a per cent apart at 100 °C
    assert 1 / ours == pytest.approx(float(row["published_factor_to_bring_R_back_to_20c"]), rel=5e-3)


@pytest.mark.parametrize("row", published("us_faa_ac43_13_1b_table11_9"), ids=lambda row: row["wire_size"])
def test_aircraft_wire_has_a_sixth_more_resistance_than_its_copper(row: dict[str, str]) -> None:
    area = float(row["nominal_circular_mils"]) * CIRCULAR_MIL_M2
    ideal = conductor_resistance.copper_resistance_per_metre(area, 20.0) * 1000 * FOOT_M
    assert ideal == pytest.approx(float(row["ideal_ohm_per_1000ft_at_listed_area"]), rel=1e-3)
    assert float(row["max_ohm_per_1000ft_20c_tinned"]) > 1.1 * ideal


@pytest.mark.parametrize("row", published("voltage_drop_worked_cases"), ids=lambda row: row["case"])
def test_worked_drops_are_reproduced(row: dict[str, str]) -> None:
    area = float(row["mm2"]) * 1e-6
    per_metre = conductor_resistance.table_resistance_per_metre(area, "class 5", float(row["conductor_c"]))
    drop = voltage_drop.dc_voltage_drop(float(row["current_a"]), float(row["one_way_m"]), per_metre)
    assert drop == pytest.approx(float(row["drop_v_both_wires"]), abs=5.1e-5)
    assert 100 * voltage_drop.drop_share(drop, float(row["system_v"])) == pytest.approx(
        float(row["drop_percent"]), abs=5.1e-3
    )


@pytest.mark.parametrize(
    "row",
    published("us_46cfr183_340p_voltage_drop_table"),
    ids=lambda row: f"{row['current_a']} A {row['one_way_length_ft']} ft",
)
def test_gauge_of_the_passenger_vessel_law_is_reproduced(row: dict[str, str]) -> None:
    k_ohm_m = 10.75 * CIRCULAR_MIL_M2 / FOOT_M
    area = voltage_drop.area_for_drop(
        float(row["current_a"]),
        float(row["one_way_length_ft"]) * FOOT_M,
        k_ohm_m,
        float(row["system_v"]) * float(row["limit_percent"]) / 100,
    )
    assert area / CIRCULAR_MIL_M2 == pytest.approx(float(row["circular_mils_needed_K10.75_both_wires"]), abs=0.6)
    gauges = [
        (int(solid["awg"]), float(solid["circular_mils_published"]))
        for solid in published("awg_solid_copper")
        if "/" not in solid["awg"] and int(solid["awg"]) <= 14 and int(solid["awg"]) % 2 == 0
    ]
    smallest = max(gauge for gauge, mils in gauges if mils >= area / CIRCULAR_MIL_M2)
    assert smallest == int(row["awg_from_formula"])
    # the law is never smaller than its formula, in two cells one gauge larger
    assert int(row["awg_in_law"]) in (smallest, smallest - 2)


@pytest.mark.parametrize(
    "row", published("us_33cfr183_425_table5_ampacity"), ids=lambda row: f"{row['awg']} {row['insulation_rating_c']} °C"
)
def test_capacity_of_the_boat_law_is_reproduced_and_never_exceeded(row: dict[str, str]) -> None:
    area, rating = float(row["solid_area_mm2_from_awg_formula"]) * 1e-6, float(row["insulation_rating_c"])
    cell = float(row["allowed_current_a_30c_ambient"])
    assert carrying_capacity.free_air_capacity(area, rating) == cell
    used = carrying_capacity.dc_carrying_capacity(area, rating, 30.0, 2, in_insulation="none")
    assert used.current_a <= cell
    engine_space = carrying_capacity.dc_carrying_capacity(area, rating, 50.0, 2, in_insulation="none")
    assert engine_space.current_a <= float(row["engine_space_current_a_50c_ambient"]) + 1e-9


def test_heat_balance_lies_near_the_boat_law_where_that_follows_physics() -> None:
    # 105 °C and 10 AWG up: an independent check of the heat balance, which knows nothing of the table
    for row in published("us_33cfr183_425_table5_ampacity"):
        area = float(row["solid_area_mm2_from_awg_formula"]) * 1e-6
        if row["insulation_rating_c"] == "105" and area > 5e-6:
            used = carrying_capacity.dc_carrying_capacity(area, 105.0, 30.0, 1, in_insulation="none")
            assert used.heat_balance_a == pytest.approx(float(row["allowed_current_a_30c_ambient"]), rel=0.07)


@pytest.mark.parametrize(
    "row", published("us_33cfr183_425_engine_space_factor"), ids=lambda row: row["insulation_rating_c"]
)
def test_engine_space_factor_is_reproduced(row: dict[str, str]) -> None:
    rating = float(row["insulation_rating_c"])
    assert carrying_capacity.engine_space_factor(rating) == float(row["factor_in_law"])
    formula = carrying_capacity.square_root_factor(rating, 50.0, 30.0)
    assert formula == pytest.approx(float(row["factor_from_sqrt_((T-50)/(T-30))"]), abs=5.1e-5)
    assert carrying_capacity.ambient_factor(rating, 50.0) == min(formula, float(row["factor_in_law"]))


@pytest.mark.parametrize(
    ("name", "ours"),
    [
        ("us_33cfr183_425_bundle_factor", carrying_capacity.bunch_factor),
        ("nec_310_15_conductor_count_factor", carrying_capacity.conductor_count_factor),
    ],
)
def test_factors_by_count_hold_from_first_to_last_of_each_row(name: str, ours) -> None:
    for row in published(name):
        factor = float(row["factor"]) if "factor" in row else float(row["percent"]) / 100
        assert ours(int(row["live_conductors_from"])) == factor
        assert ours(int(row["live_conductors_to"] or 400)) == factor


def test_free_air_values_of_another_code_equal_the_boat_law_from_6_awg_up() -> None:
    areas = {
        row["awg"]: float(row["solid_area_mm2_from_awg_formula"]) * 1e-6
        for row in published("us_33cfr183_425_table5_ampacity")
    }
    compared = 0
    for row in published("nec_310_copper_ampacity_30c"):
        if areas[row["awg"]] > 13e-6:
            for rating in (60, 75):
                ours = carrying_capacity.free_air_capacity(areas[row["awg"]], rating)
                assert ours == float(row[f"free_air_{rating}c"])
                compared += 1
    assert compared == 18


@pytest.mark.parametrize(
    "row",
    [
        row
        for row in published("iec60364_5_52_copper_ampacity")
        if row["reference_method"] in installed_capacity.METHODS
    ],
    ids=lambda row: "{insulation} {loaded_conductors}x{mm2} {reference_method}".format_map(row),
)
def test_capacity_as_installed_is_reproduced_and_never_exceeded(row: dict[str, str]) -> None:
    area, rating = float(row["mm2"]) * 1e-6, {"PVC_70C": 70.0, "XLPE_90C": 90.0}[row["insulation"]]
    method, loaded, cell = row["reference_method"], int(row["loaded_conductors"]), float(row["current_a"])
    assert installed_capacity.table_capacity(area, rating, method, loaded) == cell
    used = installed_capacity.installed_capacity(area, rating, method, loaded, 10.0, 1)
    assert used.current_a == cell


def test_another_national_table_agrees_within_two_amperes_for_single_cores_in_conduit() -> None:
    for row in published("bs7671_4e1a_single_core_90c"):
        if 1.5 <= float(row["mm2"]) <= 120:
            ours = installed_capacity.table_capacity(float(row["mm2"]) * 1e-6, 90.0, "B1", 2)
            assert ours == pytest.approx(float(row["B_2"]), abs=2.0)


@pytest.mark.parametrize("row", published("iec60364_5_52_ambient_factor"), ids=lambda row: row["ambient_c"])
def test_ambient_factor_as_installed_is_reproduced(row: dict[str, str]) -> None:
    ambient = float(row["ambient_c"])
    for rating, column in ((70.0, "pvc_70c_factor_table_B52_14"), (90.0, "xlpe_90c_factor_table_B52_14")):
        if not row[column]:
            with pytest.raises(OutOfRange):
                installed_capacity.ambient_factor(rating, ambient)
            continue
        assert installed_capacity.ambient_factor(rating, ambient) == float(row[column])
        formula = carrying_capacity.square_root_factor(rating, ambient, 30.0)
        assert formula == pytest.approx(float(row[column]), abs=8e-3)


def test_square_root_rule_reproduces_the_ambient_factors_of_another_code() -> None:
    for row in published("nec_310_15_ambient_factor_base30c"):
        for rating in (60, 75, 90):
            if row[f"rating_{rating}c"]:
                ours = carrying_capacity.square_root_factor(rating, float(row["ambient_band_upper_c"]), 30.0)
                assert ours == pytest.approx(float(row[f"rating_{rating}c"]), abs=0.01)


@pytest.mark.parametrize("row", published("adiabatic_k_copper"), ids=lambda row: f"{row['use']}, {row['insulation']}")
def test_k_of_copper_is_reproduced_by_table_and_by_formula(row: dict[str, str]) -> None:
    k = adiabatic.k_constant(row["use"], row["insulation"])
    assert k * 1e-6 == pytest.approx(float(row["k_published"]), rel=1e-12)
    formula = adiabatic.k_from_temperatures("copper", float(row["start_c"]), float(row["final_c"]))
    assert formula * 1e-6 == pytest.approx(float(row["k_from_formula"]), abs=0.011)
    assert formula == pytest.approx(k, abs=0.6e6)


@pytest.mark.parametrize("row", published("adiabatic_worked_cases"), ids=lambda row: f"{row['mm2']} mm2")
def test_longest_fault_times_are_reproduced(row: dict[str, str]) -> None:
    area, k, fault = float(row["mm2"]) * 1e-6, float(row["k"]) * 1e6, float(row["fault_a"])
    assert adiabatic.withstand_time(area, k, fault) == pytest.approx(float(row["longest_time_s"]), abs=5.1e-6)
    assert adiabatic.withstand_energy(area, k) == pytest.approx(float(row["k2S2_a2s"]), abs=0.6)
    assert adiabatic.least_area(fault, float(row["longest_time_s"]), k) == pytest.approx(area, rel=1e-4)
