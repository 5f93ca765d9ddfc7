"""Gauges and trade sizes against published figures."""

from __future__ import annotations

import pytest

from checker.quantities import Range, parse
from checker.quantities.gauges import AUTO_SIZES, awg_area, awg_number

# AWG: circular mils and ohm per 1000 ft at 20 °C, from a university physics reference table with the
# figures of NBS Circular 31 and Handbook 100 (seen). One circular mil is pi/4 * (25.4e-6 m)**2; copper of
# 1.7241e-8 ohm m, 304.8 m to 1000 ft.
PUBLISHED_AWG = [
    ("4/0", 211600, 0.049),
    ("3/0", 167810, 0.0618),
    ("2/0", 133080, 0.078),
    ("1/0", 105530, 0.0983),
    ("1", 83694, 0.124),
    ("2", 66373, 0.1563),
    ("4", 41742, 0.2485),
    ("6", 26250, 0.3951),
    ("8", 16509, 0.6282),
    ("10", 10381, 0.9989),
    ("12", 6529, 1.588),
    ("14", 4106.8, 2.525),
    ("16", 2582.9, 4.016),
    ("18", 1624.3, 6.385),
    ("22", 642.4, 16.14),
    ("30", 100.5, 103.2),
]
CIRCULAR_MIL = 5.0670748e-10


@pytest.mark.parametrize(("size", "mils", "ohms"), PUBLISHED_AWG)
def test_awg_areas_agree_with_the_published_table(size: str, mils: float, ohms: float) -> None:
    area = parse(f"{size} AWG", "mm2")
    assert isinstance(area, float)
    assert area == pytest.approx(mils * CIRCULAR_MIL, rel=3e-4)
    assert 1.7241e-8 * 304.8 / area == pytest.approx(ohms, rel=1e-3)


def test_noughts_are_written_in_two_ways() -> None:
    for one, other in (("0", "1/0"), ("00", "2/0"), ("000", "3/0"), ("0000", "4/0")):
        assert parse(f"{one} AWG", "mm2") == parse(f"{other} AWG", "mm2")
        assert parse(f"{one} B&S", "mm2") == parse(f"{other} B&S", "mm2")


def test_a_smaller_gauge_number_is_a_larger_conductor() -> None:
    areas = [awg_area(number) for number in range(-3, 41)]
    assert areas == sorted(areas, reverse=True)
    for number in (-4, 41):
        with pytest.raises(ValueError, match="there is no AWG"):
            awg_area(number)


def test_what_is_no_gauge_has_no_number() -> None:
    for size in ("", "5/0", "0/0", "-1", "41", "08", "00000", "1.5", "2/1", "٣", "9" * 5000):
        assert awg_number(size) is None
    assert awg_number("40") == 40


@pytest.mark.parametrize("size", ["8", "4", "2", "0", "00"])
def test_b_and_s_is_a_range_from_eight_per_cent_under_the_formula(size: str) -> None:
    formula, found = parse(f"{size} AWG", "mm2"), parse(f"{size} B&S", "mm2")
    assert isinstance(found, Range)
    assert isinstance(formula, float)
    assert found.high == formula
    assert found.low == pytest.approx(0.92 * formula, rel=1e-11)


# Areas commonly sold under the number in mm2 (trade practice, memory).
@pytest.mark.parametrize(
    ("size", "sold"), [("8", 7.71), ("4", 20.28), ("3", 25.68), ("2", 32.15), ("0", 49.2), ("00", 64.15)]
)
def test_b_and_s_holds_the_areas_commonly_sold(size: str, sold: float) -> None:
    found = parse(f"{size} B&S", "mm2")
    assert isinstance(found, Range)
    assert found.low <= sold * 1e-6 <= found.high


# Trade size, strands and their diameter in mm, published copper in mm2: public cable-trade pages (seen).
@pytest.mark.parametrize(
    ("size", "strands", "diameter", "published"),
    [
        ("2.5", 8, 0.32, 0.64),
        ("3", 14, 0.32, 1.13),
        ("3", 16, 0.30, 1.13),
        ("4", 26, 0.30, 1.84),
        ("5", 41, 0.30, 2.9),
        ("5", 36, 0.32, 2.9),
        ("6", 65, 0.30, 4.59),
    ],
)
def test_automotive_trade_sizes_are_the_published_copper(
    size: str, strands: int, diameter: float, published: float
) -> None:
    area = parse(f"{size} mm auto", "mm2")
    assert isinstance(area, float)
    assert area == pytest.approx(published * 1e-6, rel=1e-12)
    assert area == pytest.approx(strands * 0.7853981634 * (diameter * 1e-3) ** 2, rel=6e-3)


def test_a_trade_size_is_less_copper_than_its_figure_says() -> None:
    for size in AUTO_SIZES:
        area = parse(f"{size} mm auto", "mm2")
        assert isinstance(area, float)
        assert area < float(size) * 1e-6 * 0.77
    assert parse("6 mm auto", "mm2") == pytest.approx(4.6e-6, rel=5e-3)


def test_gauges_make_ranges_in_either_order() -> None:
    wide = parse("8..6 AWG", "mm2")
    assert wide == parse("6..8 AWG", "mm2") == parse("8 AWG..6 AWG", "mm2")
    assert wide == Range(awg_area(8), awg_area(6))
    assert parse("2/0..4/0 AWG", "mm2") == Range(awg_area(-1), awg_area(-3))
    assert parse("4..5 mm auto", "mm2") == Range(1.84e-6, 2.9e-6)
    sold = parse("6..4 B&S", "mm2")
    assert isinstance(sold, Range)
    assert sold.high == awg_area(4)
    assert sold.low == pytest.approx(0.92 * awg_area(6))
    assert parse("8..8 AWG", "mm2") == awg_area(8)
