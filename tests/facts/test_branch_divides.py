"""Whether a branch divides before its own device."""

from __future__ import annotations

from math import inf

from checker.facts.subject import Facts
from checker.quantities import Range, Unknown
from checker.reading import read_text
from tests.clean.designs import text_of

LARGE_WAY = ("equipment.ways.ways.lamps", "40 A")


def divides(*edits: tuple[str, str]) -> object:
    found = Facts(read_text(text_of("plover-van"), edits=(LARGE_WAY, *edits))).subject("conductor", "lamps")
    assert found is not None
    return found.divides_before_device


def test_two_lamps_on_one_way_divide_it() -> None:
    assert divides() is True


def test_where_nobody_knows_what_feeds_it_nobody_knows_whether_it_divides() -> None:
    assert isinstance(divides(("equipment.house.joined by", "unknown")), Unknown)


def test_what_a_bank_of_which_nobody_knows_the_joining_may_push_has_no_upper_bound() -> None:
    edits = (("equipment.F1.rating", "400 A"), ("equipment.bank.joined by", "unknown"))
    found = Facts(read_text(text_of("drover-truck"), edits=edits)).subject("conductor", "bank-main")
    assert found is not None
    current = found.overload_current
    assert isinstance(current, Range)
    assert current.high == inf
