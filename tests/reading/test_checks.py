"""What is checked when all sections have been read."""

from __future__ import annotations

import pytest

from tests.reading.small import only, problems

DEPARTURE = "[{rule: some-rule, about: ABOUT, reason: r, by: b, reference: n, date: 2026-11-02}]"


@pytest.mark.parametrize(
    "position", ["{K1: inverter}", "{K1: open}", "{F1: open}", "{Q1: closed}", "{K1: unknown}", "{board.lights: open}"]
)
def test_switches_stand_where_they_can(position: str) -> None:
    assert not problems(("modes.parked.set", position))


@pytest.mark.parametrize(
    ("position", "what", "right"),
    [
        ("{K1: invertr}", "no position `invertr`", "did you mean `inverter`?"),
        ("{F1: shut}", "no position `shut`", "`open` or `closed`"),
        ("{lamp: open}", "a lamp, which has no positions", "name a switch"),
        ("{tee: open}", "a joint, which has no positions", "switch"),
        ("{F7: open}", "no `F7` in equipment", "did you mean `F1`?"),
        ("{board.lights: half}", "no position `half`", "`open`"),
    ],
)
def test_a_wrong_position_says_what_is_right(position: str, what: str, right: str) -> None:
    problem = only(("modes.parked.set", position))
    assert what in problem.what and right in problem.right


@pytest.mark.parametrize(
    "about",
    [
        "F1",
        "main",
        "cabin",
        "one",
        "strip",
        "parked",
        "board.lights",
        "vehicle",
        "main from house",
        "bar.+",
        "main:house",
    ],
)
def test_a_departure_is_about_something_in_the_file(about: str) -> None:
    assert not problems(("departures", DEPARTURE.replace("ABOUT", f"'{about}'")))


def test_a_departure_about_nothing_is_noted() -> None:
    problem = only(("departures", DEPARTURE.replace("ABOUT", "F7")))
    assert "there is no `F7` in this file" in problem.what and "did you mean `F1`?" in problem.right


def test_a_place_inside_itself_is_noted() -> None:
    assert "`cabin` is inside itself" in only(("places.cabin.inside", "cabin")).what
    assert "`cabin` is inside itself" in only(("places.cabin.inside", "bench")).what
    assert (
        "`a` is inside itself"
        in only(("places", "{cabin: {inside: bench}, bench: {inside: a}, a: {inside: b}, b: {inside: a}}")).what
    )


def test_places_may_lie_deep_in_each_other() -> None:
    chain = ", ".join(f"p{number}: {{inside: p{number + 1}}}" for number in range(2000))
    assert not problems(("places", f"{{cabin: {{}}, bench: {{}}, {chain}, p2000: {{inside: outer skin}}}}"))
