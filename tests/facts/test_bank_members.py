"""The batteries that are joined with one another, in parallel or in series."""

from __future__ import annotations

from checker.quantities import Range, Unknown
from tests.facts.van import ask

SECOND = (
    "{kind: battery, chemistry: lithium iron phosphate, nominal: 12 V, cells: 4, capacity: %s, made: 2026-01, "
    "place: bay%s}"
)
LINK = "{from: second.-, to: house.+, run: [0.3 m via bay], cable: red-16, return: none}"
MADE = ("equipment.house.made", "2026-01")


def in_series(fact: str, about: str = "house", capacity: str = "100 Ah", link: str = LINK) -> object:
    second = SECOND % (capacity, ", bms: {low temperature: inhibits charge}")
    return ask("bank", about, fact, MADE, ("equipment.second", second), ("circuits.second", link))


def test_batteries_written_out_in_series_count_from_either_end() -> None:
    assert in_series("in_series") == in_series("in_series", "second") == 2.0
    assert ask("bank", "house", "in_series") == 1.0


def test_batteries_in_series_are_compared_from_either_end() -> None:
    assert in_series("members_alike") is in_series("members_alike", "second") is True
    assert in_series("members_alike", capacity="60 Ah") is in_series("members_alike", "second", "60 Ah") is False
    assert isinstance(in_series("members_alike", capacity="unknown"), Unknown)


def test_what_is_perhaps_in_series_leaves_a_question() -> None:
    bonded = LINK.replace("house.+", "house").replace("none}", "none, duty: bonding}")
    assert in_series("in_series", link=bonded) == Range(1.0, 2.0)
    assert isinstance(in_series("members_alike", capacity="60 Ah", link=bonded), Unknown)


def test_managements_differ_in_a_limit_that_both_tell() -> None:
    across = ("circuits.second", "{from: second, to: house, run: [0.3 m via bay], cable: red-16, return: same}")
    own = ("equipment.house.bms", "{charge limit: 50 A}")
    for theirs, alike in (("charge limit: 80 A", False), ("charge limit: 50 A", True), ("over voltage: 14 V", True)):
        second = ("equipment.second", SECOND % ("100 Ah", f", bms: {{{theirs}}}"))
        assert ask("bank", "house", "members_alike", MADE, own, second, across) is alike
