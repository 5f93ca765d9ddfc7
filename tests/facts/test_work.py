"""Who may do the work."""

from __future__ import annotations

import pytest

from checker.facts.subject import trace
from checker.quantities import Unknown
from tests.facts.house import ask as house_ask
from tests.facts.mains_subjects import COACH, VAN, ids, subject


def test_mains_circuits_make_mains_work_even_when_nobody_is_named() -> None:
    assert ids(VAN, "work") == ["mains work", "elv work"]
    found = subject(VAN, "work", "mains work")
    assert isinstance(found.has_licence, Unknown)
    assert [given.path for given in trace(found, "has_licence").leaves()] == ["people.mains work.licence"]


@pytest.mark.parametrize("words", ["none", "none needed", "owner", "unlicensed"])
def test_words_that_deny_a_licence_are_no_licence(words: str) -> None:
    people = f"{{mains work: {{licence: {words}}}}}"
    assert subject(COACH, "work", "mains work", {"people": people}).has_licence is False


def test_a_number_is_a_licence() -> None:
    assert subject(COACH, "work", "mains work").has_licence is True


@pytest.mark.parametrize("words", ["applied for", "pending"])
def test_words_without_a_number_prove_no_licence(words: str) -> None:
    people = f"{{mains work: {{licence: {words}}}}}"
    assert isinstance(subject(COACH, "work", "mains work", {"people": people}).has_licence, Unknown)


def test_a_licence_for_either_class_covers_an_array() -> None:
    def licensed(people: str) -> object:
        return house_ask("array", "panels", "licensed", {"people": people})

    assert licensed("{mains work: {licence: none needed}}") is False
    assert licensed("{elv work: {licence: none needed}, mains work: {licence: EW-00000}}") is True
    assert isinstance(licensed("{elv work: {licence: applied for}}"), Unknown)
    assert isinstance(house_ask("array", "panels", "licensed"), Unknown)


@pytest.mark.parametrize(
    ("trade", "answer"), [("auto-electrician", False), ("gas fitter", False), ("electrician", True)]
)
def test_the_licence_of_another_trade_is_none_for_mains_work(trade: str, answer: bool) -> None:
    people = f"{{mains work: {{licence: AE-00000, class: {trade}}}}}"
    assert subject(COACH, "work", "mains work", {"people": people}).has_licence is answer


def test_a_class_that_nobody_read_leaves_the_licence_open() -> None:
    people = "{mains work: {licence: AE-00000, class: unknown}}"
    assert isinstance(subject(COACH, "work", "mains work", {"people": people}).has_licence, Unknown)
