"""A device that another upstream helps to break a short; what the table for small banks asks."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.house import ask


def backed(by: str, to: str = "20 kA") -> object:
    return ask("device", "F6", "backed_capacity", {"equipment.F6.backed up": f"{{by: {by}, to: {to}}}"})


def test_only_the_one_device_upstream_counts() -> None:
    assert ask("device", "F6", "backed_capacity") is None
    assert backed("F1") == 20_000
    assert backed("F1", "6 kA") == 6_000
    assert backed("FE") is None
    assert isinstance(backed("unknown"), Unknown)


def test_it_is_at_most_what_the_other_breaks() -> None:
    edits = {"equipment.F6.backed up": "{by: F1, to: 50 kA}", "equipment.F1.breaking capacity": "10 kA"}
    assert ask("device", "F6", "backed_capacity", edits) == 10_000


@pytest.mark.parametrize(("cranking", "asks"), [("300 A", 1500), ("325 A", 1500), ("326 A", 3000), ("560 A", 5000)])
def test_the_row_is_that_of_the_cranking_current_of_all_strings(cranking: str, asks: float) -> None:
    edits = {"parts.module.cranking current": cranking}
    assert ask("approach", "main from bank", "small_bank_asks", edits) == asks


def test_without_a_cranking_current_it_lies_between_the_first_and_the_last_row() -> None:
    assert ask("approach", "main from bank", "small_bank_asks") == Range(1500, 5000)


def test_a_large_bank_has_no_row() -> None:
    assert ask("approach", "main from bank", "small_bank_asks", {"parts.module.capacity": "251 Ah"}) is None
    assert ask("approach", "main from bank", "small_bank_asks", {"parts.module.cranking current": "1101 A"}) is None
    unknown = ask("approach", "main from bank", "small_bank_asks", {"parts.module.capacity": "unknown"})
    assert isinstance(unknown, Unknown)
