"""Fuses, disconnection and residual-current devices against published limits."""

from __future__ import annotations

import math

import pytest

from checker.outofrange import OutOfRange
from checker.physics import ac, fuse_curves, rcd
from tests.reference.published import published

FAMILIES = {
    "blade_medium_type_C": "blade",
    "blade_small_type_F": "micro blade",
    "blade_large_type_E": "large blade",
    "strip_bolt_in_SF51_51mm": "bolt-down high voltage strip",
    "supplementary_cartridge": "cylindrical 10x38",
    "class_T_J_R_power_fuse": "class T",
}
LIMITS = [row for row in published("fuse_operating_time_limits") if row["family"] in FAMILIES]


def _top_rating(row: dict[str, str]) -> float:
    words = row["applies_to_rating"].replace(" A", "").replace(" and ", " to ").split(" to ")
    return float(words[1])


@pytest.mark.parametrize(
    "row", LIMITS, ids=lambda row: f"{row['family']} {row['applies_to_rating']} {row['percent_of_rating']} %"
)
def test_published_fuse_limits_are_the_points_of_our_bands(row: dict[str, str]) -> None:
    rating = _top_rating(row)
    band = fuse_curves.operating_time(FAMILIES[row["family"]], rating, rating * float(row["percent_of_rating"]) / 100)
    if row["min_s"]:
        assert band.min_s == pytest.approx(float(row["min_s"]), rel=1e-9)
    if row["max_s"]:
        assert band.max_s == pytest.approx(float(row["max_s"]), rel=1e-9)


@pytest.mark.parametrize(
    "row",
    [row for row in published("fuse_operating_time_limits") if row["family"].startswith("strip_bolt_in_SF30")],
    ids=lambda row: f"{row['percent_of_rating']} %",
)
def test_short_strips_are_within_the_band_of_the_family(row: dict[str, str]) -> None:
    # up to 200 A the family holds two lengths of strip: its band is the envelope of both
    band = fuse_curves.time_bounds("bolt-down strip", 150.0, 1.5 * float(row["percent_of_rating"]))
    assert band.min_s <= float(row["min_s"])
    if row["max_s"]:
        assert band.max_s >= float(row["max_s"]) * (1 - 1e-12)


@pytest.mark.parametrize("row", published("iec60269_gg_gates"), ids=lambda row: f"{row['rated_a']} A")
def test_gates_of_cartridge_fuses_are_reproduced(row: dict[str, str]) -> None:
    rating = float(row["rated_a"])

    def band(column: str) -> fuse_curves.Band:
        return fuse_curves.operating_time("cartridge gG", rating, float(row[column]))

    assert band("carries_at_least_10s_a").min_s == pytest.approx(10.0, rel=1e-9)
    assert band("melts_within_5s_a").max_s == pytest.approx(5.0, rel=1e-9)
    assert band("carries_at_least_0.1s_a").min_s == pytest.approx(0.1, rel=1e-9)
    assert band("melts_within_0.1s_a").max_s == pytest.approx(0.1, rel=1e-9)
    fusing = fuse_curves.conventional_current("cartridge gG", rating)
    assert fusing == pytest.approx(float(row["conventional_fusing_a"]))


@pytest.mark.parametrize("row", published("iec60269_gg_conventional_currents"), ids=lambda row: row["rated_up_to_a"])
def test_conventional_currents_of_cartridge_fuses_are_reproduced(row: dict[str, str]) -> None:
    ratings = {"4": 2.0, "15.99": 10.0, "63": 32.0, "160": 100.0, "400": 250.0, "1250": 630.0}
    rating = ratings[row["rated_up_to_a"]]
    assert fuse_curves.conventional_factor("cartridge gG", rating) == float(row["fusing_multiple"])
    holds = fuse_curves.time_bounds("cartridge gG", rating, rating * float(row["non_fusing_multiple"]))
    assert holds.min_s == pytest.approx(3600 * float(row["conventional_time_h"]))
    assert math.isinf(holds.max_s)


@pytest.mark.parametrize(
    "row",
    [row for row in published("iec60364_4_41_disconnection_times") if row["voltage_to_earth_above_v"]],
    ids=lambda row: f"{row['system']} {row['kind']} above {row['voltage_to_earth_above_v']} V",
)
def test_disconnection_times_are_reproduced(row: dict[str, str]) -> None:
    upper = float(row["voltage_to_earth_up_to_v"] or 600)
    if not row["max_s"]:
        with pytest.raises(OutOfRange):
            ac.disconnection_time(row["system"], upper, row["kind"])
        return
    limit = float(row["max_s"])
    assert ac.disconnection_time(row["system"], upper, row["kind"]) == limit
    assert ac.disconnection_time(row["system"], float(row["voltage_to_earth_above_v"]) + 0.1, row["kind"]) == limit


@pytest.mark.parametrize(
    "row",
    [row for row in published("rcd_trip_limits") if row["standard"] != "UL 943"],
    ids=lambda row: f"{row['device']} x{row['multiple_of_rated_residual']}",
)
def test_trip_limits_are_reproduced(row: dict[str, str]) -> None:
    limits = rcd.trip_limits(row["device"], row["standard"], float(row["multiple_of_rated_residual"]))
    assert limits.min_s == (float(row["min_s"]) if row["min_s"] else None)
    assert limits.max_s == (float(row["max_s"]) if row["max_s"] else None)


def test_the_curve_of_a_ground_fault_interrupter_meets_its_printed_point() -> None:
    [row] = [row for row in published("rcd_trip_limits") if row["standard"] == "UL 943"]
    assert rcd.ground_fault_interrupter_time(0.006) == pytest.approx(float(row["max_s"]), abs=0.01)
