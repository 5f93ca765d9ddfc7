"""From the text of a scalar to the value of its key."""

from __future__ import annotations

from math import inf
from typing import Any

import pytest

from checker.design.given import RatedVoltage
from checker.design.shapes import ShapeError, default_value, not_negative, parse_shape
from checker.design.vocabulary import KINDS
from checker.design.vocabulary.key import Key
from checker.quantities import UNKNOWN, Range, Window


def key(shape: str, **more: Any) -> Key:
    return Key("thing", shape, "A thing.", **more)


AMPERES = key("quantity", unit="A")


@pytest.mark.parametrize(
    ("spec", "text", "value"),
    [
        (AMPERES, "300 mA", 0.3),
        (AMPERES, "25..35 A", Range(25.0, 35.0)),
        (AMPERES, "0 A", 0.0),
        (AMPERES, "at most 5 A", Range(0.0, 5.0)),
        (key("quantity", unit="°C"), "-5..0 °C", Range(-5.0, 0.0)),
        (key("quantity", unit="%/K"), "-0.28 %/K", -0.0028),
        (key("quantity", unit=("W", "A")), "7 A", 7.0),
        (key("quantity", unit="rpm", words=("idle",)), "idle", "idle"),
        (key("quantities", unit="m"), "0.35 m each", (0.35,)),
        (key("count"), "3", 3.0),
        (key("count"), "2..4", Range(2.0, 4.0)),
        (key("ratio"), "0.94", 0.94),
        (key("ratio"), "94 %", 0.94),
        (key("window", unit="V"), "10..15 V", Window(10.0, 15.0)),
        (key("window", unit="V"), "at most 15 V", Window(-inf, 15.0)),
        (key("rated voltage"), "80 V DC", RatedVoltage(80.0, "dc")),
        (key("word", words=("a", "b")), "b", "b"),
        (key("words", words=("a", "b")), "b", ("b",)),
        (key("yes/no"), "true", True),
        (key("yes/no"), "false", False),
        (key("text"), "12:30", "12:30"),
        (key("texts"), "x", ("x",)),
        (key("name"), "F1", "F1"),
        (key("names"), "F1", ("F1",)),
        (key("date"), "2024-02-29", "2024-02-29"),
        (key("date"), "2019-06", "2019-06"),
        (key("date"), "2008..2012", "2008..2012"),
        (key("arrangement"), "1s3p", (1, 3)),
        (key("degree"), "IP44", "IP44"),
        (key("degree"), "IPX4", "IPX4"),
        (key("degree"), "IP6K9K", "IP6K9K"),
    ],
)
def test_each_shape_reads_its_text(spec: Key, text: str, value: Any) -> None:
    assert parse_shape(spec, text) == value


@pytest.mark.parametrize(
    ("spec", "text", "said"),
    [
        (AMPERES, "300", "300 A"),
        (AMPERES, "12 V", "a voltage"),
        (AMPERES, "-5 A", "below zero"),
        (AMPERES, "-5..5 A", "below zero"),
        (AMPERES, "nan A", "nan"),
        (AMPERES, "inf", "inf"),
        (AMPERES, "1e999 A", "1e999"),
        (key("quantity", unit="mm2"), "6 mm", "6 mm auto"),
        (key("quantity", unit=("W", "A")), "12 V", "W or A"),
        (key("count"), "2.5", "whole number"),
        (key("count"), "-1", "below zero"),
        (key("ratio"), "-0.1", "below zero"),
        (key("window", unit="V"), "-5..10 V", "below zero"),
        (key("rated voltage"), "80 A", "voltage"),
        (key("word", words=("a", "b")), "c", "`a` or `b`"),
        (key("yes/no"), "yes", "`true`"),
        (key("yes/no"), "on", "`true`"),
        (key("date"), "2023-02-29", "no date"),
        (key("date"), "30/10/2026", "2026-10-30"),
        (key("date"), "2012..2008", "no date"),
        (key("date"), "1900-02-29", "no date"),
        (key("arrangement"), "3p", "4s1p"),
        (key("arrangement"), "0s1p", "4s1p"),
        (key("degree"), "44", "IP44"),
        (key("degree"), "IP4", "IP44"),
        (key("degree"), "IP6K", "IP44"),
        (key("box"), "big", "size"),
        (key("point"), "1 m", "three lengths"),
    ],
)
def test_what_does_not_fit_says_what_would(spec: Key, text: str, said: str) -> None:
    with pytest.raises(ShapeError) as caught:
        parse_shape(spec, text)
    assert caught.value.message and caught.value.right
    assert said in str(caught.value)


@pytest.mark.parametrize("shape", ["quantity", "words", "box", "yes/no", "name", "records", "window"])
def test_unknown_and_none_fit_every_shape(shape: str) -> None:
    spec = key(shape, unit="V", words=("a",) if shape == "words" else ())
    assert parse_shape(spec, "unknown") is UNKNOWN and parse_shape(spec, "?") is UNKNOWN
    assert parse_shape(spec, "none") is None


@pytest.mark.parametrize("text", ["1001", "1000000000", "2..5000"])
def test_counts_beyond_any_vehicle_are_refused(text: str) -> None:
    with pytest.raises(ShapeError, match="more than any vehicle holds"):
        parse_shape(key("count"), text)
    with pytest.raises(ShapeError):
        parse_shape(key("arrangement"), f"{text}s1p")


def test_a_reading_may_lie_below_zero() -> None:
    assert parse_shape(AMPERES, "-5 A", signed=True) == -5.0


def test_a_distance_of_travel_has_a_direction() -> None:
    assert parse_shape(Key("travel.distance", "quantity", "How far.", unit="m"), "-0.9 m") == -0.9


def test_an_open_lower_end_counts_from_zero() -> None:
    assert not_negative(Range(-inf, 4.0), "at most 4 m") == Range(0.0, 4.0)
    with pytest.raises(ShapeError):
        not_negative(Range(-1.0, 4.0), "-1..4 m")


def test_long_texts_are_read_too() -> None:
    assert parse_shape(key("text"), "x" * 5000) == "x" * 5000


def test_a_missing_default_is_unknown() -> None:
    assert default_value(AMPERES) is UNKNOWN


def test_a_default_is_read_as_if_it_had_been_written() -> None:
    assert default_value(key("quantity", unit="°C", default="-20 °C")) == -20.0
    assert default_value(key("words", words=("a", "b"), default="a, b")) == ("a", "b")
    assert default_value(key("word", words=("a",), default="none")) is None
    with pytest.raises(ShapeError):
        default_value(key("quantity", unit="A", default="5 V"))


@pytest.mark.parametrize("section, name", KINDS)
def test_every_default_of_the_vocabulary_reads(section: str, name: str) -> None:
    for spec in KINDS[section, name].keys.values():
        if spec.default is not None:
            value = default_value(spec)
            assert value is None or value is not UNKNOWN, spec.name
