"""Recorded departures: what they set aside, what they cannot, and that none goes unnoticed."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.quantities import Range
from checker.review import Departure
from checker.review.departures import RULE, missing_for
from tests.review.small import CAPACITY, CURRENT, DepartureItem, Made, conductor, device, put

OVER = "device-protects-conductor:conductor:feed"
MORE = "current-within-capacity:conductor:feed"
WHOLE = {"reason": "tested by the maker", "reference": "licence 4711", "date": "2026-11-02"}


def feed(rating: object = 40.0) -> list[Made]:
    fuse = device("F1", rating)
    return [conductor("feed", 10, fuse, capacity=30.0, current=35.0), fuse]


def test_a_breach_with_a_departure_is_set_aside_and_stays_visible(tmp_path: Path) -> None:
    item = DepartureItem(rule="current-within-capacity", about="feed", reason="short duty")
    done, found = put(tmp_path, [CURRENT], feed(), item)
    assert found[MORE].verdict == "set aside"
    assert found[MORE].departure == Departure("short duty", "fitter", "", "")
    assert done.counts["set aside"] == 1
    assert done.counts["breach"] == 0
    assert found[MORE].says.startswith("Current of feed is 35 A")


def test_a_danger_is_set_aside_with_reference_reason_and_date(tmp_path: Path) -> None:
    item = DepartureItem(rule="device-protects-conductor", about="feed", **WHOLE)
    _, found = put(tmp_path, [CAPACITY], feed(), item)
    assert found[OVER].verdict == "set aside"
    assert found[OVER].signal == "danger"


@pytest.mark.parametrize("missing", ["reason", "reference", "date"])
@pytest.mark.parametrize("blank", ["", "  ", "none", "unknown", "-"])
def test_a_danger_is_not_set_aside_when_one_of_them_is_missing(tmp_path: Path, missing: str, blank: str) -> None:
    item = DepartureItem(rule="device-protects-conductor", about="feed", **{**WHOLE, missing: blank})
    done, found = put(tmp_path, [CAPACITY], feed(), item)
    assert found[OVER].verdict == "breach"
    assert done.counts["set aside"] == 0
    name = "licence reference" if missing == "reference" else missing
    assert f"a departure is recorded, but without the {name} it sets nothing aside" in found[OVER].working


def test_something_undecided_is_never_set_aside(tmp_path: Path) -> None:
    item = DepartureItem(rule="device-protects-conductor", about="feed", **WHOLE)
    done, found = put(tmp_path, [CAPACITY], feed(rating=Range(20.0, 40.0)), item)
    assert found[OVER].verdict == "unproven"
    assert done.counts["unproven"] == 1
    assert any("this is undecided" in line for line in found[OVER].working)
    assert len(found) == 1


@pytest.mark.parametrize(
    ("rule", "about", "says"),
    [
        ("device-protects-conductor", "other", "finds no breach on other"),
        ("no-such-rule", "feed", "no rule is called no-such-rule"),
        ("current-within-capacity", "feed", "finds no breach on feed"),
    ],
)
def test_a_departure_that_meets_nothing_is_a_notice_of_its_own(
    tmp_path: Path, rule: str, about: str, says: str
) -> None:
    made = feed()
    made[0].values["current"] = 5.0
    done, found = put(tmp_path, [CAPACITY, CURRENT], made, DepartureItem(77, rule=rule, about=about, **WHOLE))
    finding = found[f"{RULE}:departure:{rule} on {about}"]
    assert (finding.signal, finding.verdict, finding.where.line) == ("notice", "breach", 77)
    assert says in finding.says
    assert found[OVER].verdict == "breach"
    assert done.counts["breach"] == 2


def test_a_lesser_signal_asks_for_a_reason_only() -> None:
    assert missing_for(Departure("why", "", "", ""), "warning") == []
    assert missing_for(Departure("", "", "", ""), "notice") == ["reason"]
    assert missing_for(Departure("", "", "", ""), "danger") == ["licence reference", "reason", "date"]
