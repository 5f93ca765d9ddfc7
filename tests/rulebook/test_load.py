"""Folders of rules: shipped ones and those of the user, the same checks, one list, one hash."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.rulebook import Rulebook, RuleErrors, load_rulebook
from tests.rulebook.small import INTL, rule_text, small_catalogue, write_rules


@pytest.fixture(autouse=True)
def _no_cache(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("FITOUT_CACHE", "none")


def load(base: Path, *folders: Path) -> Rulebook:
    return load_rulebook(folders, catalogue=small_catalogue(), base=base)


def test_the_shipped_rules_load() -> None:
    import checker.facts  # noqa: F401 - fills the catalogue

    book = load_rulebook()
    assert {"intl", "eu", "uk", "au-nz", "us-rv", "us-boat", "intl-boat", "ca"} == set(book.codes)


def test_rules_of_a_further_folder_join_the_shipped_ones(tmp_path: Path) -> None:
    base = write_rules(tmp_path / "base", rule_text())
    own = write_rules(tmp_path / "own", rule_text(id="house-rule", title="Another"), codes=False)
    book = load(base, own)
    assert [rule.id for rule in book.rules] == ["device-protects-conductor", "house-rule"]
    assert book.by_id["house-rule"].file == f"{own}/overcurrent/house-rule.yaml"


@pytest.mark.parametrize("ending", [".yaml", ".yml"])
def test_a_rule_beside_the_folders_of_topics_is_refused_and_not_passed_over(tmp_path: Path, ending: str) -> None:
    base = write_rules(tmp_path / "base", rule_text())
    own = write_rules(tmp_path / "own", rule_text(id="house-rule", title="Another"), codes=False)
    (own / f"stray{ending}").write_text("id: stray\n")
    with pytest.raises(RuleErrors, match=f"stray{ending}:1:1: the rule lies in no folder of a topic; move it to"):
        load(base, own)


def test_a_rule_too_deep_is_refused_as_well(tmp_path: Path) -> None:
    base = write_rules(tmp_path / "base", rule_text())
    own = tmp_path / "own"
    write_rules(own / "rules", rule_text(id="house-rule", title="Another"), codes=False)
    with pytest.raises(RuleErrors) as caught:
        load(base, own)
    right = f"move it to `{own}/overcurrent/house-rule.yaml`"
    assert str(caught.value) == (
        f"{own}/rules/overcurrent/house-rule.yaml:1:1: the rule lies in no folder of a topic; {right}"
    )


def test_designs_and_notes_may_lie_beside_the_folders_of_topics(tmp_path: Path) -> None:
    base = write_rules(tmp_path / "base", rule_text())
    own = write_rules(tmp_path / "own", rule_text(id="house-rule", title="Another"), codes=False)
    for name in ("van.fitout.yaml", "notes.txt", ".hidden.yaml"):
        (own / name).write_text("fitout: 1\n")
    assert [rule.id for rule in load(base, own).rules] == ["device-protects-conductor", "house-rule"]


def test_a_rule_of_a_name_that_stands_already_is_refused_with_both_places(tmp_path: Path) -> None:
    base = write_rules(tmp_path / "base", rule_text())
    own = write_rules(tmp_path / "own", rule_text(), codes=False)
    with pytest.raises(RuleErrors) as caught:
        load(base, own)
    (problem,) = caught.value.problems
    assert problem.file == f"{own}/overcurrent/device-protects-conductor.yaml"
    assert "stands in rules/overcurrent/device-protects-conductor.yaml already" in problem.what


def test_a_further_folder_overrides_single_limits_and_adds_its_own(tmp_path: Path) -> None:
    base = write_rules(tmp_path / "base", rule_text())
    own = tmp_path / "own" / "codes"
    own.mkdir(parents=True)
    (own / "limits.yaml").write_text("house_gap: {unit: mm, says: Gap}\n")
    gap = "  house_gap: {value: 5 mm, source: {title: House, basis: practice}}\n"
    (own / "intl.yaml").write_text(INTL.replace("5 %", "2 %") + gap)
    limits = load(base, tmp_path / "own").limits_for("eu")
    assert (limits["drop"], limits["reach"], limits["house_gap"]) == (0.02, 0.3, 0.005)


def test_a_limit_that_is_declared_already_is_refused(tmp_path: Path) -> None:
    base = write_rules(tmp_path / "base")
    own = tmp_path / "own" / "codes"
    own.mkdir(parents=True)
    (own / "limits.yaml").write_text("drop: {unit: '%', says: Again}\n")
    with pytest.raises(RuleErrors, match="declared already"):
        load(base, tmp_path / "own")


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(RuleErrors, match="no folder of rules"):
        load(write_rules(tmp_path / "base"), tmp_path / "nowhere")


def test_a_file_with_another_ending_is_told_not_passed_over(tmp_path: Path) -> None:
    base = write_rules(tmp_path / "base", rule_text())
    (base / "overcurrent" / "forgotten.yml").write_text(rule_text())
    with pytest.raises(RuleErrors, match=r"name it `\.yaml`"):
        load(base)


def test_the_hash_follows_what_rules_say_and_not_how_they_lie(tmp_path: Path) -> None:
    first = load(write_rules(tmp_path / "a", rule_text())).sha256
    wider = rule_text(require="some(device.rating  <=  conductor.capacity for device in conductor.protected_by)")
    assert load(write_rules(tmp_path / "c", wider)).sha256 == first
    assert load(write_rules(tmp_path / "d", rule_text(signal="warning"))).sha256 != first


def test_the_hash_follows_the_limits(tmp_path: Path) -> None:
    first = load(write_rules(tmp_path / "a", rule_text())).sha256
    base = write_rules(tmp_path / "b", rule_text())
    (base / "codes" / "intl.yaml").write_text(INTL.replace("5 %", "6 %"))
    assert load(base).sha256 != first


def test_a_code_that_is_not_there_is_told_with_the_nearest() -> None:
    book = Rulebook([], {}, {"au-nz": None}, "")  # type: ignore[dict-item]
    with pytest.raises(ValueError, match="did you mean `au-nz`"):
        book.limits_for("aunz")
