"""What is kept between runs: texts under a hash of all that they were made from, and nothing that is run."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from checker.rulebook import Rulebook, RuleErrors, judge_example, load, load_rulebook
from tests.rulebook.small import rule_text, small_catalogue, write_rules


@pytest.fixture
def kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "kept"
    monkeypatch.setenv("FITOUT_CACHE", str(folder))
    return folder


@pytest.fixture
def base(tmp_path: Path) -> Path:
    return write_rules(tmp_path / "rules", rule_text())


def read(base: Path) -> Rulebook:
    return load_rulebook(catalogue=small_catalogue(), base=base)


def only(folder: Path) -> Path:
    (file,) = folder.iterdir()
    return file


def refuse_to_read(*args: Any) -> Any:
    raise AssertionError("the files were read again")


def test_a_second_run_reads_what_was_kept_and_finds_the_same(
    kept: Path, base: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = read(base)
    monkeypatch.setattr("checker.rulebook.load._Reader", refuse_to_read)
    second = read(base)
    assert second.sha256 == first.sha256
    assert [rule.text for rule in second.rules] == [rule.text for rule in first.rules]
    assert second.codes == first.codes
    assert second.limits == first.limits


def test_rules_from_what_was_kept_judge_alike(kept: Path, base: Path) -> None:
    for book in (read(base), read(base)):
        rule = book.rules[0]
        limits = book.limits_for("intl")
        assert [judge_example(rule, one, limits) for one in rule.examples] == [one.verdict for one in rule.examples]


def test_a_changed_file_is_read_again(kept: Path, base: Path) -> None:
    read(base)
    file = base / "overcurrent" / "device-protects-conductor.yaml"
    file.write_text(file.read_text().replace("signal: danger", "signal: notice"))
    assert read(base).rules[0].signal == "notice"


def test_a_changed_catalogue_has_the_files_checked_again(kept: Path, base: Path) -> None:
    read(base)
    catalogue = small_catalogue()
    del catalogue._facts["device"]["rating"]
    with pytest.raises(RuleErrors, match="no fact `rating`"):
        load_rulebook(catalogue=catalogue, base=base)


def test_it_is_data_and_holds_no_code(kept: Path, base: Path) -> None:
    read(base)
    content = json.loads(only(kept).read_text())
    assert set(content) == {"key", "content"}
    assert set(content["content"]) == {"sha256", "limits", "codes", "rules"}


@pytest.mark.parametrize("damage", [b"", b"{", b"[]", b'{"key": 1}', b"\xff", b"[" * 100_000])
def test_a_damaged_file_is_passed_over(kept: Path, base: Path, damage: bytes) -> None:
    read(base)
    only(kept).write_bytes(damage)
    assert len(read(base).rules) == 1


@pytest.mark.parametrize("part", ["limits", "codes", "rules"])
def test_content_of_another_shape_is_passed_over(kept: Path, base: Path, part: str) -> None:
    read(base)
    file = only(kept)
    content = json.loads(file.read_text())
    content["content"][part] = [[1, 2, {"a": 3}]]
    file.write_text(json.dumps(content))
    assert len(read(base).rules) == 1


def test_a_condition_put_into_it_is_checked_like_any_other(kept: Path, base: Path) -> None:
    read(base)
    file = only(kept)
    file.write_text(file.read_text().replace("conductor.is_live", "().__class__.mro() == 1"))
    with pytest.raises(RuleErrors):
        _ = read(base).rules[0].given_tree


def test_it_can_be_turned_off(base: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("FITOUT_CACHE", "none")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "xdg"))
    read(base)
    assert not (tmp_path / "xdg").exists()


def test_a_folder_that_cannot_be_written_to_is_no_hindrance(
    base: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("FITOUT_CACHE", str(tmp_path / "file" / "below"))
    assert len(read(base).rules) == 1


def test_a_user_without_a_home_has_none(base: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("FITOUT_CACHE", "XDG_CACHE_HOME", "HOME", "USERPROFILE"):
        monkeypatch.delenv(name, raising=False)
    assert len(read(base).rules) == 1


def test_the_key_covers_every_file(kept: Path, base: Path) -> None:
    from checker.rulebook.folders import rule_files

    files = rule_files(base, "rules")
    keys = {load._key(files[:at], small_catalogue()) for at in range(len(files) + 1)}
    assert len(keys) == len(files) + 1
