"""Networks that no fitter should build, as a user meets them: a finding or a clear error, never a hang or nonsense."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from math import isfinite
from pathlib import Path
from typing import Any

import pytest

from checker.commands import run
from tests.benchmarks.generator import coach

HEAD = """fitout: 1
title: odd
code: intl
vehicle: {kind: campervan, ambient: {low: 0 °C, high: 40 °C}, chassis: {resistance: 2 mΩ}}
cables: {red: {size: 25 mm2, cores: 1, strands: flexible, insulation: 90 °C}}
equipment:
  bat: {kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 100 Ah, internal resistance: 5 mΩ,
        purpose: house}
  lamp: {kind: lamp, power: 24 W, voltage: 10..15 V}
  bus: {kind: bar, poles: [+, -]}
"""
RUNS = """circuits:
  a: {from: bat, to: bus, run: [1 m], cable: red, return: same}
  b: {from: bus, to: lamp, run: [1 m], cable: red, return: same}
"""
ON = "modes: {on: {running: {lamp: 24 W}}}\n"
ISLAND = (
    "  far: {kind: lamp, power: 10 W, voltage: 10..15 V}\n  far-bus: {kind: bar, poles: [+, -]}\n",
    "  c: {from: far-bus, to: far, run: [1 m], cable: red, return: same}\n",
    "modes: {on: {running: {lamp: 24 W, far: 10 W}}}\n",
)
RING = (
    "  b2: {kind: bar, poles: [+, -]}\n  b3: {kind: bar, poles: [+, -]}\n",
    "".join(f"  r{i}: {{from: {one}, to: {other}, run: [0 m], cable: red, return: same}}\n"
            for i, (one, other) in enumerate((("bus", "b2"), ("b2", "b3"), ("b3", "bus")))),
    ON,
)  # fmt: skip
UNEQUAL = (
    "  bat48: {kind: battery, chemistry: AGM lead acid, nominal: 48 V, capacity: 100 Ah, internal resistance: 5 mΩ,\n"
    "          purpose: house}\n",
    "  a48: {from: bat48, to: bus, run: [1 m], cable: red, return: same}\n",
    ON,
)
DEAD_BUS = (
    "  con: {kind: dc converter, both ways: false, isolated: true, efficiency: 0.9, settings: {charge voltage: 54 V},\n"
    "        sides: {low: {nominal: 12 V, current: 20 A}, high: {nominal: 48 V, current: 5 A}}}\n"
    "  heater: {kind: load, power: 100 W, voltage: 40..60 V}\n",
    "  c: {from: bus, to: con.low, run: [1 m], cable: red, return: same}\n"
    "  d: {from: con.high, to: heater, run: [1 m], cable: red, return: same}\n",
    "modes: {on: {running: {heater: 100 W}}, more: {running: {heater: 900 W}}}\n",
)
BEYOND = (
    "  winch: {kind: load, power: 5 kW, voltage: 10..15 V}\n",
    "  c: {from: bus, to: winch, run: [20 m], cable: red, return: same}\n",
    "modes: {on: {running: {winch: 5 kW}}}\n",
)
FROM_CHASSIS = (
    "",
    "  frame: {from: chassis, to: chassis, run: [1 m]}\n"
    "  lost: {from: chassis, to: lamp, run: [1 m], cable: unknown}\n",
    ON,
)
ODD = {
    "island": ISLAND, "ring": RING, "unequal": UNEQUAL, "dead-bus": DEAD_BUS, "beyond": BEYOND, "chassis": FROM_CHASSIS,
}  # fmt: skip
ACCEPTED = ("1e-300 m", "0 m", "1e300 m", "0.000001 mm")
POWERS = ("0 W", "1e-300 W", "1e300 W", "1e18 A", "0 A")
OHMS = ("0 mΩ", "1e-300 mΩ", "1e300 Ω")
Write = Callable[[str], str]


def design(parts: tuple[str, str, str]) -> str:
    equipment, circuits, modes = parts
    return f"{HEAD}{equipment}{RUNS}{circuits}{modes}"


PLAIN = design(("", "", ON))
CHANGED = {
    **{f"length {value}": PLAIN.replace("[1 m]", f"[{value}]") for value in ACCEPTED},
    **{f"drawn {value}": PLAIN.replace("{lamp: 24 W}", f"{{lamp: {value}}}") for value in POWERS},
    **{f"inside {value}": PLAIN.replace("5 mΩ", value) for value in OHMS},
}


@pytest.fixture
def write(tmp_path: Path) -> Write:
    def written(text: str) -> str:
        file = tmp_path / "odd.fitout.yaml"
        file.write_text(text, "utf-8")
        return str(file)

    return written


def told(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, Any]:
    status = run([*arguments, "--format", "json"])
    caught = capsys.readouterr()
    assert "should not have happened" not in caught.err
    return status, json.loads(caught.out)


def numbers(value: Any) -> list[float]:
    if isinstance(value, dict):
        return [one for entry in value.values() for one in numbers(entry)]
    if isinstance(value, list):
        return [one for entry in value for one in numbers(entry)]
    return [value] if isinstance(value, float) else []


def reading(found: Any, at: str, quantity: str, mode: int = 0) -> dict[str, Any]:
    return next(one for one in found["modes"][mode]["readings"] if (one["at"], one["quantity"]) == (at, quantity))


@pytest.mark.parametrize("name", ODD)
def test_an_odd_network_is_reviewed_and_predicted_in_finite_numbers(
    name: str, write: Write, capsys: pytest.CaptureFixture[str]
) -> None:
    file = write(design(ODD[name]))
    for command in ("predict", "review"):
        status, found = told(capsys, command, file)
        assert status in (0, 1)
        assert all(map(isfinite, numbers(found)))
        assert not re.search(r"\b(nan|inf)\b", json.dumps(found), re.IGNORECASE)


@pytest.mark.parametrize("name", CHANGED)
def test_extreme_values_give_finite_numbers_or_a_reason(
    name: str, write: Write, capsys: pytest.CaptureFixture[str]
) -> None:
    file = write(CHANGED[name])
    status, found = told(capsys, "predict", file)
    assert all(map(isfinite, numbers(found)))
    (mode,) = found["modes"]
    assert bool(mode["reason"]) == (status == 1)
    for one in mode["readings"]:
        assert one["likely"] is None or one["lowest"] <= one["likely"] <= one["highest"]
    status, found = told(capsys, "review", file)
    assert status in (0, 1)
    assert not re.search(r"\b(nan|inf)\b", json.dumps(found["findings"]), re.IGNORECASE)


@pytest.mark.parametrize(
    ("good", "bad", "words"),
    [
        ("[1 m]", "[-1 m]", "below zero"),
        ("[1 m]", "[nan m]", "nothing a run can pass"),
        ("5 mΩ", "-5 mΩ", "below zero"),
        ("5 mΩ", "1e400 mΩ", "too large"),
        ("5 mΩ", "inf mΩ", "finite"),
        ("{lamp: 24 W}", "{lamp: -24 W}", "below zero"),
        ("{lamp: 24 W}", "{lamp: nan W}", "no quantity"),
    ],
)
@pytest.mark.parametrize("command", ["predict", "review"])
def test_values_that_cannot_be_are_refused_at_their_place(
    command: str, good: str, bad: str, words: str, write: Write, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run([command, write(PLAIN.replace(good, bad))]) == 2
    assert re.search(rf"odd\.fitout\.yaml:\d+:\d+: .*{words}", capsys.readouterr().err)


def test_what_no_source_reaches_is_named_by_both(write: Write, capsys: pytest.CaptureFixture[str]) -> None:
    file = write(design(ISLAND))
    status, found = told(capsys, "predict", file)
    assert (status, found["modes"][0]["unsupplied"]) == (0, ["far"])
    _, review = told(capsys, "review", file)
    broken = [one for one in review["findings"] if one["rule"] == "what-runs-has-a-source"]
    assert [(one["verdict"], one["about"]["id"]) for one in broken] == [("breach", "far")]


def test_a_ring_shares_the_current_by_its_resistances(write: Write, capsys: pytest.CaptureFixture[str]) -> None:
    text = design(RING).replace("b: {from: bus,", "b: {from: b3,")
    _, found = told(capsys, "predict", write(text), "--at", "r0", "--at", "r2", "--at", "b")
    whole, straight, round_ = (reading(found, at, "current")["likely"] for at in ("b", "r2", "r0"))
    assert straight == pytest.approx(whole * 2.0 / 3.0, rel=2e-3)  # three like joints in a ring: two against one
    assert round_ == pytest.approx(whole / 3.0, rel=2e-3)


def test_two_batteries_of_different_voltage_drive_what_ohm_says(
    write: Write, capsys: pytest.CaptureFixture[str]
) -> None:
    file = write(design(UNEQUAL))
    _, found = told(capsys, "predict", file, "--at", "bat48", "--at", "bat")
    assert reading(found, "bat48", "current")["likely"] > 100.0
    assert reading(found, "bat48", "voltage")["state"] == "discharging"
    assert reading(found, "bat", "voltage")["state"] == "charging"
    _, review = told(capsys, "review", file)
    broken = {one["rule"] for one in review["findings"] if one["verdict"] == "breach"}
    assert "load-sees-its-voltage" in broken


def test_a_converter_holds_a_dead_bus_up_to_its_limit(write: Write, capsys: pytest.CaptureFixture[str]) -> None:
    status, found = told(capsys, "predict", write(design(DEAD_BUS)), "--at", "heater")
    assert status == 1
    assert reading(found, "heater", "voltage")["likely"] == pytest.approx(54.0, abs=0.1)
    assert reading(found, "heater", "current")["likely"] == pytest.approx(100.0 / 54.0, rel=2e-3)
    assert "heater" in found["modes"][1]["reason"]


def test_a_power_beyond_its_source_is_a_reason_and_a_breach(write: Write, capsys: pytest.CaptureFixture[str]) -> None:
    file = write(design(BEYOND))
    status, found = told(capsys, "predict", file)
    assert status == 1
    assert "winch" in found["modes"][0]["reason"]
    assert found["modes"][0]["readings"] == []
    _, review = told(capsys, "review", file)
    broken = {one["rule"]: one for one in review["findings"] if one["verdict"] == "breach"}
    assert "drop-within-limit" in broken
    assert "winch sees 0 V to" in broken["load-sees-its-voltage"]["says"]


def test_a_coach_of_five_hundred_circuits_is_predicted(write: Write, capsys: pytest.CaptureFixture[str]) -> None:
    status, found = told(capsys, "predict", write(coach(500)))
    assert status == 0
    assert all(one["readings"] for one in found["modes"])
