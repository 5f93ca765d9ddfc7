"""The text of a prediction: a line for each place, by side, and what all modes assume once."""

from __future__ import annotations

import re

import pytest

from checker.commands.loading import load_design
from checker.commands.prediction import solved_facts
from checker.reports.prediction import Expected, Prediction, prediction
from checker.reports.prediction_text import prediction_text


@pytest.fixture(scope="module")
def coach() -> Prediction:
    design = load_design("examples/estuary-coach.fitout.yaml")
    return prediction(design, solved_facts(design), ["driving", "shore"], [])


def reading(at: str, quantity: str, likely: float | None, side: str = "12 V", unknown: str = "") -> Expected:
    unit = "A" if quantity == "current" else "V"
    return {
        "at": at, "side": side, "quantity": quantity, "unit": unit, "likely": likely, "lowest": likely,
        "highest": likely, "touch": f"{at}:+ and {at}:-", "state": "", "unknown": unknown,
    }  # fmt: skip


def text_of(coach: Prediction, readings: list[Expected], *, whole: bool = False) -> str:
    modes = [{**coach["modes"][0], "readings": readings, "heat": [], "assumed": []}]
    return "".join(prediction_text({**coach, "modes": modes}, whole=whole))  # type: ignore[typeddict-item]


def test_each_place_stands_on_one_line_under_its_side(coach: Prediction) -> None:
    text = "".join(prediction_text(coach)).partition("Mode shore")[0]
    low, high = text.index("at, 12 V side"), text.index("at, 48 V side")
    assert low < text.index("    start-battery ") < high < text.index("    house-bank ")
    assert len(re.findall(r"^    start-battery ", text, re.MULTILINE)) == 1


def test_what_all_modes_assume_stands_once_and_what_one_assumes_with_it(coach: Prediction) -> None:
    first, second = (mode["assumed"] for mode in coach["modes"])
    text = " ".join("".join(prediction_text(coach)).split())
    shared, own = first[0], next(each for each in first if each not in second)
    assert shared in second
    assert text.count(shared) == 1
    assert text.index(shared) > text.index("Assumed in every mode")
    assert text.count(own) == 1
    assert text.index(own) < text.index("Mode shore")


def test_one_mode_alone_keeps_its_assumptions(coach: Prediction) -> None:
    alone: Prediction = {**coach, "modes": coach["modes"][:1]}
    assert "Assumed in every mode" not in "".join(prediction_text(alone))
    assert "  Assumed:\n" in "".join(prediction_text(alone))


def test_places_unknown_for_one_reason_share_a_sentence(coach: Prediction) -> None:
    readings = [
        reading("pump", "voltage", None, unknown="the cable is not known"),
        reading("pump", "current", None, unknown="the cable is not known"),
        reading("lamp", "voltage", 12.3),
        reading("lamp", "current", None, unknown="the cable is not known"),
    ]
    text = " ".join(text_of(coach, readings).split())
    assert "unknown at pump, lamp (current): the cable is not known" in text


def test_a_reading_is_shown_as_finely_as_an_instrument_shows_it(coach: Prediction) -> None:
    text = text_of(coach, [reading("lamp", "voltage", 12.3456), reading("lamp", "current", 0.26)])
    assert re.search(r"^    lamp +12\.35 \(12\.35 to 12\.35\) +0\.3 \(0\.3 to 0\.3\)$", text, re.MULTILINE)


def test_a_name_too_long_for_its_column_stands_on_a_line_of_its_own(coach: Prediction) -> None:
    name = "a-very-long-name-of-equipment-behind-the-seat"
    assert re.search(rf"^    {name}\n +12\.00 \(", text_of(coach, [reading(name, "voltage", 12.0)]), re.MULTILINE)


def test_asked_for_places_it_says_where_to_touch(coach: Prediction) -> None:
    assert "      lamp:+ and lamp:-\n" in text_of(coach, [reading("lamp", "voltage", 12.0)], whole=True)
