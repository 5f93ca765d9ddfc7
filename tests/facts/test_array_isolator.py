"""The isolator of an array."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask


def first(*order: str, **edits: str) -> object:
    papers = {"papers": f"{{shut down: [{', '.join(order)}]}}"}
    return ask(
        "converter", "sun", "array_opened_first", papers | {key.replace("__", "."): text for key, text in edits.items()}
    )


def test_the_array_is_opened_before_the_switch_that_parts_its_controller_from_the_battery() -> None:
    assert first("sun-switch", "isolator") is True
    assert first("isolator", "sun-switch") is False
    assert first("isolator") is False


def test_without_a_switch_between_controller_and_battery_the_order_is_free() -> None:
    assert ask("converter", "sun", "array_opened_first", {"circuits.sun-out.to": "bar-bank"}) is True


def test_an_order_that_nobody_told_stays_open() -> None:
    assert isinstance(ask("converter", "sun", "array_opened_first"), Unknown)


def test_daylight_may_be_told_at_isolator_or_controller() -> None:
    assert isinstance(ask("array", "panels", "daylight_told"), Unknown)
    assert ask("array", "panels", "daylight_told", {"equipment.sun.labels": "[live in daylight]"}) is True
    silent = {f"equipment.{name}.labels": "none" for name in ("sun", "panels", "sun-switch")}
    assert ask("array", "panels", "daylight_told", silent) is False
    assert ask("array", "panels", "isolator_access", {"equipment.sun-switch.access": "from inside"}) == "from inside"


def test_the_isolator_in_the_run_of_a_neighbour_is_not_its_own() -> None:
    more = "{kind: solar array, modules: 1, arrangement: 1s1p, open voltage: 24.3 V, short current: 10 A}"
    run = "{from: more, to: sun.pv, run: [3 m via roof], cable: sun-4, return: same, duty: charge}"
    edits = {"equipment.more": more, "circuits.more": run}
    assert ask("array", "more", "has_isolator", edits) is False
    assert ask("array", "panels", "has_isolator", edits) is True
