"""The error for a value outside a valid range."""

from __future__ import annotations

import math
import pickle

import pytest

from checker.outofrange import OutOfRange, require, require_positive


def test_it_says_name_value_range_and_source_and_keeps_them() -> None:
    error = OutOfRange("ambient temperature, °C,", 95.0, (-40.0, 90.0), "a table")
    assert str(error) == "ambient temperature, °C, 95 is outside -40 to 90 (a table)"
    assert (error.name, error.value, error.valid, error.source) == (
        "ambient temperature, °C,",
        95.0,
        (-40.0, 90.0),
        "a table",
    )


def test_words_have_choices_instead_of_a_range() -> None:
    assert str(OutOfRange("metal", "tin", "copper, steel", "s")) == "metal tin is outside copper, steel (s)"


def test_it_is_a_value_error_and_survives_pickling() -> None:
    error = pickle.loads(pickle.dumps(OutOfRange("x", 1.0, (2.0, 3.0), "s")))
    assert isinstance(error, ValueError)
    assert str(error) == "x 1 is outside 2 to 3 (s)"


@pytest.mark.parametrize("value", [2.0, 2.5, 3.0])
def test_on_and_within_the_bounds_the_value_comes_back(value: float) -> None:
    assert require("x", value, 2.0, 3.0, "s") == value


@pytest.mark.parametrize("value", [math.nextafter(2.0, 0), math.nextafter(3.0, 4), math.nan, math.inf, -math.inf])
def test_just_outside_and_not_a_number_are_refused(value: float) -> None:
    with pytest.raises(OutOfRange):
        require("x", value, 2.0, 3.0, "s")


@pytest.mark.parametrize("value", [0.0, -1.0, math.nan, math.inf])
def test_what_is_not_a_positive_number_is_refused(value: float) -> None:
    with pytest.raises(OutOfRange):
        require_positive("x", value, "s")
