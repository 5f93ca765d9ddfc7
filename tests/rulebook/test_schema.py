"""The schema of a rule file is made from the keys, and takes what the reader takes."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest
import yaml

from checker.rulebook.keys import ORDER
from checker.rulebook.schema import rule_schema, schema_text
from checker.shipped import shipped
from tests.rulebook.small import rule_text

ROOT = Path(__file__).parents[2]
VALIDATOR = jsonschema.Draft202012Validator(rule_schema())
FILES = sorted(Path(str(shipped("rules"))).glob("*/*.yaml"))
RULES = [file for file in FILES if file.parent.name not in ("codes", "designs")]


def test_the_committed_schema_is_the_one_the_keys_make() -> None:
    committed = (ROOT / "schemas" / "rule.schema.json").read_text("utf-8")
    assert committed == schema_text(), "write it again: python -m checker.rulebook.schema > schemas/rule.schema.json"
    assert list(json.loads(committed)["properties"]) == list(ORDER)


def test_it_is_a_schema_of_its_draft() -> None:
    jsonschema.Draft202012Validator.check_schema(rule_schema())


def test_every_shipped_rule_fits_it() -> None:
    for file in RULES:
        found = [error.message for error in VALIDATOR.iter_errors(yaml.safe_load(file.read_text("utf-8")))]
        assert not found, f"{file.name}: {found}"


def test_a_good_rule_fits_it() -> None:
    VALIDATOR.validate(yaml.safe_load(rule_text()))


@pytest.mark.parametrize(
    "text",
    [
        rule_text(drop=["why"]),
        rule_text(signal="terrible"),
        rule_text(colour="red"),
        rule_text(id="Not_An_Id"),
        rule_text(sources="[{title: A standard, basis: hearsay}]"),
        rule_text(examples="{met: [{name: a, facts: {}}]}"),
    ],
)
def test_what_the_reader_refuses_does_not_fit_it(text: str) -> None:
    assert list(VALIDATOR.iter_errors(yaml.safe_load(text)))
