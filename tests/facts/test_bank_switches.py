"""The switches of a bank: each branch, what stands in series, what works it from afar."""

from __future__ import annotations

from typing import Any

from checker.quantities import Unknown, greater
from tests.facts import house

BAR = (
    ("equipment.first", "{kind: bar, poles: [+, -], rating: 300 A, place: locker}"),
    ("circuits.main.from", "first"),
    ("circuits.trunk", "{from: bar-bank, to: first, run: [0.3 m via locker], cable: red-70, return: same}"),
    ("equipment.fan", "{kind: load, current: 5 A, voltage: 40..60 V}"),
    ("circuits.fan", "{from: first, to: fan, run: [0.1 m, off, 1 m], cable: pair-4}"),
)


def ask(kind: str, name: str, fact: str, *edits: tuple[str, str]) -> Any:
    """One fact of one subject of the house with changes."""
    return house.ask(kind, name, fact, dict(edits))


def off(keys: str) -> tuple[str, str]:
    """A second switch of these keys."""
    return "equipment.off", f"{{kind: switch, rating: 60 A, voltage: 80 V DC{keys}}}"


def series(keys: str, kind: str = "relay") -> tuple[tuple[str, str], ...]:
    """A relay in place of the isolator."""
    return (
        ("circuits.main.run", "[0.15 m, F1, 0.2 m, off, 0.5 m]"),
        ("equipment.off", f"{{kind: {kind}, rating: 200 A, voltage: 80 V DC{keys}}}"),
    )


def bank(kind: str, name: str, fact: str, *edits: tuple[str, str]) -> Any:
    """The name of the subject that a fact gives."""
    found = ask(kind, name, fact, *edits)
    return found if found is None or isinstance(found, Unknown) else found.id


def test_a_switch_on_each_branch_isolates_and_opens_what_its_branch_draws() -> None:
    assert bank("switch", "off", "isolates_bank", *BAR, off("")) == "bank"
    assert bank("switch", "isolator", "isolates_bank", *BAR, off("")) == "bank"
    assert ask("switch", "off", "current_to_break", *BAR, off("")) == 5.0
    assert greater(ask("switch", "isolator", "current_to_break", *BAR, off("")), 30.0) is True


def test_what_a_float_works_is_no_battery_switch() -> None:
    assert bank("switch", "off", "isolates_bank", *BAR, off(", operated: float")) is None
    assert ask("bank", "bank", "has_isolator", *BAR, off(", operated: float")) is False
    assert isinstance(ask("bank", "bank", "has_isolator", *BAR, off(", operated: unknown")), Unknown)


def test_a_relay_counts_where_a_hand_works_it() -> None:
    knob = ("equipment.knob", "{kind: switch, operated: by hand, rating: 1 A, access: in the open}")
    said = ("equipment.say", "{kind: signal, from: knob.b}")
    assert ask("bank", "bank", "has_isolator", *series(", operated: remote")) is True
    assert ask("bank", "bank", "has_isolator", *series(", driven by: engine-run")) is False
    assert ask("bank", "bank", "has_isolator", *series(", driven by: say"), knob, said) is True
    assert ask("switch", "off", "control_access", *series(", driven by: say"), knob, said) == "in the open"
    line = ("circuits.coil", "{from: bar-48, to: off.coil, run: [1 m, knob, 1 m], cable: pair-4}")
    assert ask("switch", "off", "control_access", *series(", operated: coil"), knob, line) == "in the open"
    assert isinstance(ask("switch", "off", "control_access", *series(", operated: coil")), Unknown)
    assert isinstance(ask("bank", "bank", "has_isolator", *series("")), Unknown)
    assert isinstance(bank("switch", "off", "opens_bank", *series("")), Unknown)


def test_a_switch_in_series_behind_the_first_opens_the_bank_too() -> None:
    run = ("circuits.main.run", "[0.15 m, F1, 0.2 m, isolator, 0.1 m, off, 0.5 m]")
    assert bank("switch", "off", "isolates_bank", run, off("")) is None
    assert bank("switch", "off", "opens_bank", run, off("")) == "bank"
    assert bank("switch", "sun-switch", "opens_bank", run, off("")) is None


def test_a_breaker_in_place_of_the_switch_isolates_and_darkens() -> None:
    def told(keys: str) -> tuple[tuple[str, str], ...]:
        return series(f", family: thermal{keys}", "breaker")

    assert bank("device", "off", "isolates_bank", *told(", isolates: true")) == "bank"
    assert bank("device", "off", "isolates_bank", *told(", isolates: false")) is None
    assert isinstance(bank("device", "off", "isolates_bank", *told("")), Unknown)
    assert bank("device", "F1", "isolates_bank") is None
    dark = ask("load", "lights", "dark_by_breaker", *told(", isolates: true"))
    assert [one.id for one in dark] == ["off"]
    assert ask("load", "lights", "dark_by_breaker") == ()
