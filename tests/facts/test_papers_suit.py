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


@pytest.mark.parametrize(
    ("editions", "built", "superseded"),
    [
        ("[BS 7671 of 2018]", "2026-01", ""),
        ("[BS 7671 of 2008]", "2026-01", "BS 7671 of 2018"),
        ("[BS 7671 of 2008]", "2018-12", ""),
        ("[BS 7671 of 2001]", "2026-01", "BS 7671 of 2008, BS 7671 of 2018"),
        ("[EN 1648-2 of 2012, AS/NZS 3000 of 2007]", "2026-01", "AS/NZS 3000 of 2018, EN 1648 of 2018"),
        ("[some house rules of 1990]", "2026-01", ""),
        ("none", "2026-01", ""),
    ],
)
def test_an_edition_is_superseded_once_a_later_one_was_in_force_at_the_build(
    editions: str, built: str, superseded: str
) -> None:
    found = ask("design", "design", "superseded_edition", ("papers.editions", editions), ("vehicle.built", built))
    assert found == superseded


def test_a_year_of_build_or_an_edition_without_one_leaves_it_open() -> None:
    month = ("papers.editions", "[EN 1648-2 of 2012]"), ("vehicle.built", "2018")
    assert isinstance(ask("design", "design", "superseded_edition", *month), Unknown)
    bare = ("papers.editions", "[BS 7671]"), ("vehicle.built", "2026-01")
    assert isinstance(ask("design", "design", "editions_current", *bare), Unknown)


@pytest.mark.parametrize(
    ("editions", "answer"),
    [("[AS/NZS 5033 of 2021]", True), ("[BS 7671 of 2018]", True), ("[EN 1648-2 of 2018]", False), ("none", False)],
)
def test_the_rules_of_fixed_solar_installations_are_among_the_editions(editions: str, answer: bool) -> None:
    assert ask("design", "design", "solar_rules_applied", ("papers.editions", editions)) is answer


def test_editions_that_nobody_told_leave_the_rules_of_solar_open() -> None:
    assert isinstance(ask("design", "design", "solar_rules_applied"), Unknown)
