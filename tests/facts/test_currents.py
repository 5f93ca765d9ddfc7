"""Greatest lasting currents, mode by mode, against sums by hand."""

from __future__ import annotations

import pytest

from checker.facts.subject import Facts
from checker.quantities import Number, Range
from tests.circuit.designs import battery, design, fuse, lamp

EQUIPMENT = "\n".join(
    [
        battery("bank"),
        fuse("F1", 50),
        "  board: {kind: board, family: blade, voltage: 32 V DC, breaking capacity: 5 kA, ways: {a: 10 A, b: 10 A}}",
        lamp("light", 24),
        lamp("glow", 36),
    ]
)
CIRCUITS = """
  main: {from: bank, to: board, run: [0.1 m via cabin, F1, 1 m via cabin], cable: red, return: same}
  first: {from: board.a, to: light, run: [3 m via cabin], cable: red, return: same}
  second: {from: board.b, to: glow, run: [3 m via cabin], cable: red, return: same}
"""


def current(circuit: str, modes: str, equipment: str = EQUIPMENT, circuits: str = CIRCUITS) -> Number:
    text = design(equipment, circuits)
    from checker.reading import read_text
    from tests.circuit.designs import HEAD

    head = HEAD.replace("modes: {rest: {engine: stopped}}", f"modes: {modes}")
    text = read_text(f"{head}\nequipment:\n{equipment}\ncircuits:\n{circuits}\n")
    found = Facts(text).subject("conductor", circuit)
    assert found is not None
    return found.design_current  # type: ignore[no-any-return]


def test_a_feeder_carries_the_loads_of_its_worst_mode_together() -> None:
    # 24 W and 36 W at 12 V: 2 A and 3 A.
    both = "{day: {running: {light: 24 W}}, night: {running: {light: 24 W, glow: 36 W}}}"
    assert current("main", both) == pytest.approx(5.0)
    assert current("first", both) == pytest.approx(2.0)


def test_a_load_that_no_mode_runs_still_counts_alone() -> None:
    assert current("second", "{day: {running: {light: 24 W}}}") == pytest.approx(3.0)
    assert current("main", "{day: {running: {light: 24 W}}}") == pytest.approx(3.0)


def test_a_charger_drives_its_whole_current_into_the_battery() -> None:
    equipment = EQUIPMENT + "\n  charger: {kind: charger, dc: {nominal: 12 V, current: 20 A}}"
    circuits = CIRCUITS + "  charge: {from: charger.dc, to: bank, run: [1 m], cable: red, return: same, duty: charge}"
    assert current("charge", "{camp: {shore: 10 A}}", equipment, circuits) == pytest.approx(20.0)


def test_where_two_batteries_share_a_load_nobody_knows_how() -> None:
    equipment = EQUIPMENT + "\n" + battery("spare")
    circuits = CIRCUITS + "  join: {from: spare, to: board, run: [1 m via cabin], cable: red, return: same}"
    found = current("main", "{night: {running: {light: 24 W, glow: 36 W}}}", equipment, circuits)
    assert isinstance(found, Range)
    assert (found.low, found.high) == (0.0, 5.0)
