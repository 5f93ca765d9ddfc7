"""Papers and labels held against the country of sale and the date of build."""

from __future__ import annotations

import pytest

from checker.facts.papers_suit import LANGUAGES
from checker.quantities import Unknown
from tests.facts.van import ask


@pytest.mark.parametrize(
    ("sold", "language", "answer"),
    [("at", "de", True), ("at", "en", False), ("be", "en, nl", True), ("ca", "fr", True), ("us", "fr", False)],
)
def test_warnings_are_in_a_language_of_the_country_of_first_sale(sold: str, language: str, answer: bool) -> None:
    edits = (("labels.sold in", sold), ("labels.language", language))
    assert ask("design", "design", "label_language_suits", *edits) is answer


def test_without_a_country_of_sale_that_of_the_register_counts() -> None:
    edits = (("labels.sold in", "(remove)"), ("vehicle.registered", "nz"))
    assert ask("design", "design", "label_language_suits", *edits[1:], ("labels.language", "en")) is True
    assert ask("design", "design", "label_language_suits", *edits[1:], ("labels.language", "de")) is False


@pytest.mark.parametrize(
    "edits", [("labels.sold in", "xx"), ("labels.sold in", "unknown"), ("labels.language", "unknown")]
)
def test_a_country_or_language_that_is_not_known_is_not_decided(edits: tuple[str, str]) -> None:
    assert isinstance(ask("design", "design", "label_language_suits", edits), Unknown)


def test_every_language_is_two_letters_and_every_country_too() -> None:
    assert all(len(country) == 2 and all(len(one) == 2 for one in held) for country, held in LANGUAGES.items())
    assert len(LANGUAGES) > 35


@pytest.mark.parametrize(
    ("editions", "answer"),
    [("[EN 1648-2 of 2018]", False), ("[EN 1648-2:2027]", True), ("[IEC 60364-7-721 of 2027]", False), ("none", False)],
)
def test_a_later_edition_of_the_battery_side_standard_is_told_by_its_year(editions: str, answer: bool) -> None:
    assert ask("design", "design", "newer_battery_side_edition", ("papers.editions", editions)) is answer
