"""`fitout rules` lists what there is."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from checker.commands import run

HOUSE = Path(__file__).parent / "house"
pytestmark = pytest.mark.usefixtures("no_shipped_rules")
HOUSE_RULE = (HOUSE / "house-habits" / "house-rating.yaml").read_text("utf-8")


@pytest.fixture
def house(tmp_path: Path) -> Path:
    """A folder of rules with one rule in it."""
    (tmp_path / "house" / "house-habits").mkdir(parents=True)
    (tmp_path / "house" / "house-habits" / "house-rating.yaml").write_text(HOUSE_RULE)
    return tmp_path / "house"


def test_a_folder_of_rules_joins_the_shipped_ones(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["rules", "--rules", str(house)]) == 0
    text = capsys.readouterr().out
    assert "house-habits\n------------\nDANGER   house-rating\n" in text
    assert "Coverage" in text


def test_the_list_as_json(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["rules", "--rules", str(house), "--topic", "house-habits", "--format", "json"]) == 0
    listed = json.loads(capsys.readouterr().out)
    assert listed["rules"] == [
        {
            "id": "house-rating",
            "topic": "house-habits",
            "signal": "DANGER",
            "title": "A fuse is larger than our workshop uses in a van",
            "about": "device",
            "covers": [],
        }
    ]
    assert 0 <= listed["coverage"]["decidable_covered"] <= listed["coverage"]["decidable"]
    assert listed["coverage"]["decidable"] < listed["coverage"]["total"]


def test_a_misspelt_topic_is_told_the_nearest(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["rules", "--rules", str(house), "--topic", "house-habit"]) == 2
    assert "there is no topic 'house-habit'; did you mean house-habits?" in capsys.readouterr().err


def test_a_missing_folder_of_rules_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["rules", "--rules", str(tmp_path / "missing")]) == 2
    assert "missing: no such folder; --rules takes a folder of rule files" in capsys.readouterr().err


def test_a_file_is_no_folder_of_rules(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["rules", "--rules", str(house / "house-habits" / "house-rating.yaml")]) == 2
    assert "is a file, not a folder" in capsys.readouterr().err


def test_a_broken_rule_is_told_with_its_line(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = house / "house-habits" / "house-rating.yaml"
    file.write_text(HOUSE_RULE.replace("device.rating <=", "device.ratting <="))
    assert run(["rules", "--rules", str(house)]) == 2
    said = capsys.readouterr().err
    assert "house-rating.yaml:" in said
    assert "rating" in said


def test_the_list_never_replaces_a_rule(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = house / "house-habits" / "house-rating.yaml"
    assert run(["rules", "--rules", str(house), "--output", str(file)]) == 2
    assert file.read_text() == HOUSE_RULE
    assert "is an input" in capsys.readouterr().err


def test_one_rule_is_told_in_full(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = str(house)
    assert run(["rules", "house-rating", "--rules", folder]) == 0
    assert "house-habits: house-rating" in capsys.readouterr().out
    assert run(["rules", "house-rating", "--rules", folder, "--format", "json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert (found["id"], found["topic"]) == ("house-rating", "house-habits")
    assert found["facts"]


def test_a_misspelt_rule_is_told_the_nearest(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["rules", "house-ratin", "--rules", str(house)]) == 2
    assert "did you mean house-rating" in capsys.readouterr().err


def test_the_examples_of_a_rule_are_put_to_it(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["rules", "house-rating", "--examples", "--rules", str(house)]) == 0
    assert capsys.readouterr().out.endswith("Examples: 3 of 1 rule; each gets the verdict it stands under.\n")


def test_an_example_that_disagrees_is_told_with_its_line(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = house / "house-habits" / "house-rating.yaml"
    file.write_text(HOUSE_RULE.replace("150 A", "50 A"))
    assert run(["rules", "--topic", "house-habits", "--examples", "--rules", str(house)]) == 1
    out = capsys.readouterr().out
    assert "house-rating.yaml:16: the example `large` stands under `breach` and gets `met`\n" in out
    assert out.endswith("Examples: 3 of 1 rule; 1 disagrees.\n")


def test_an_example_that_cannot_be_put_is_told_with_its_line(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = house / "house-habits" / "house-rating.yaml"
    file.write_text(HOUSE_RULE + "    - {name: walked, design: no-such-van, about: F1}\n")
    assert run(["rules", "house-rating", "--examples", "--rules", str(house)]) == 1
    assert "house-rating.yaml:19: the example `walked`: there is no base design" in capsys.readouterr().out


def test_examples_are_told_in_words_alone(house: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["rules", "--examples", "--format", "json", "--rules", str(house)]) == 2
    assert "--examples writes text alone" in capsys.readouterr().err
