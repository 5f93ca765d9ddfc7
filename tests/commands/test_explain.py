"""`fitout explain` shows the whole working."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.commands import run

HERE = Path(__file__).parent
VAN = HERE / "gravel-van.fitout.yaml"
HOUSE = HERE / "house"

pytestmark = pytest.mark.usefixtures("no_shipped_rules")


def explain(*arguments: str) -> int:
    return run(["explain", str(VAN), *arguments, "--rules", str(HOUSE)])


def said(capsys: pytest.CaptureFixture[str]) -> str:
    return " ".join(capsys.readouterr().out.split())


def test_a_breach_is_followed_down_to_the_line_of_the_file(capsys: pytest.CaptureFixture[str]) -> None:
    assert explain("house-rating", "F1") == 0
    text = said(capsys)
    assert "Verdict: breach (the design breaks the rule)" in text
    assert "device.rating (150 A) <= '100 A': no" in text
    lines = VAN.read_text("utf-8").splitlines()
    line = next(number for number, each in enumerate(lines, 1) if "F1: " in each)
    column = lines[line - 1].index("150 A") + 1
    assert f"equipment.F1.rating = 150 A, {VAN}:{line}:{column}" in text


def test_a_computed_number_shows_its_formula_and_its_source(capsys: pytest.CaptureFixture[str]) -> None:
    assert explain("house-capacity", "F1") == 0
    text = said(capsys)
    assert "conductor.carrying_capacity of main = " in text
    assert "heat balance" in text
    assert "source: 33 CFR 183.425 Table 5" in text
    assert "cables.red-16.size = 16 mm2" in text


def test_an_undecided_verdict_says_what_to_look_at(capsys: pytest.CaptureFixture[str]) -> None:
    assert explain("house-rating", "F3") == 0
    text = said(capsys)
    assert "Verdict: unproven (the file does not say enough)" in text
    assert "To settle it, look at, measure or look up" in text
    assert "equipment.F3.rating (unknown, line 15)" in text


def test_what_is_met_can_be_explained_too_and_claims_no_more(capsys: pytest.CaptureFixture[str]) -> None:
    assert explain("house-rating", "F2") == 0
    text = said(capsys)
    assert "Verdict: met (this rule found nothing against it)" in text
    assert "device.rating (10 A) <= '100 A': yes" in text


def test_a_departure_is_shown_with_its_record(capsys: pytest.CaptureFixture[str]) -> None:
    assert explain("house-thinnest", "lamp-feed") == 0
    text = said(capsys)
    assert "Verdict: set aside" in text
    assert "short and inside the seat base workshop, note 7, 2026-11-02" in text


def test_a_rule_that_does_not_apply_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    assert explain("house-thinnest", "main") == 0
    text = said(capsys)
    assert "Verdict: not applicable" in text
    assert "given: circuit.is_final" in text


def test_an_assumed_value_is_called_assumed(capsys: pytest.CaptureFixture[str]) -> None:
    assert explain("house-capacity", "F1") == 0
    assert "cables.red-16.material = copper (assumed: not written" in said(capsys)


def test_without_a_subject_all_are_listed_with_verdict_and_line(capsys: pytest.CaptureFixture[str]) -> None:
    assert explain("house-rating") == 0
    text = capsys.readouterr().out
    order = [text.index(f"{verdict:<16}{name}, {VAN}:") for verdict, name in
             (("breach", "F1"), ("unproven", "F3"), ("met", "F2"))]  # fmt: skip
    assert order == sorted(order)


@pytest.mark.parametrize(
    ("arguments", "expected"),
    [
        (["house-ratign", "F1"], "there is no rule 'house-ratign'; did you mean house-rating"),
        (["zzz", "F1"], "there is no rule 'zzz'; `fitout rules` lists them"),
        (["house-rating", "F11"], "about no device 'F11' in"),
        (["house-rating", "F11"], "did you mean F1"),
        (["house-rating", "seat"], "lists them"),
    ],
)
def test_a_misspelt_name_is_told_the_nearest(
    arguments: list[str], expected: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert explain(*arguments) == 2
    assert expected in capsys.readouterr().err


@pytest.mark.parametrize("arguments", [["house-rating"], ["house-rating", "F1"], ["house-rating", "F3"]])
def test_an_explanation_carries_the_caution_and_defers(
    arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert explain(*arguments) == 0
    text = said(capsys)
    assert "does not certify" in text[:300]
    assert text.endswith("or a licensed electrician say otherwise, they are right.")


def test_the_lines_are_no_wider_than_80_columns_unless_they_are_one_word(capsys: pytest.CaptureFixture[str]) -> None:
    assert explain("house-capacity", "F1") == 0
    for line in capsys.readouterr().out.splitlines():
        assert len(line) <= 80 or len(line.split()) == 1, line


def test_a_fact_that_breaks_is_told_and_the_others_are_still_shown(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    import checker.facts  # noqa: F401 - fills the catalogue
    from checker.facts.catalogue import CATALOGUE

    def broken(_: object) -> float:
        raise ZeroDivisionError("division by zero")

    spec = CATALOGUE.find("device", "rating")
    assert spec is not None
    monkeypatch.setattr(spec, "function", broken)
    assert explain("house-rating", "F1") == 0
    text = said(capsys)
    assert "Verdict: unproven" in text
    assert "device.rating of F1 could not be computed: ZeroDivisionError: division by zero" in text
    assert "device.opens_on_overcurrent of F1 = yes" in text
