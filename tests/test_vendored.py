"""The published schemas that tests rely on are the ones whose origin is written down."""

from __future__ import annotations

import hashlib
import json
import re
from pathlib import Path

import jsonschema
import pytest
from lxml import etree

VENDORED = Path(__file__).parent / "vendored"
ORIGINS = (VENDORED / "README.md").read_text("utf-8")
RECORDED = dict(re.findall(r"^\| `([^`]+)` \|.*\| `([0-9a-f]{64})` \|$", ORIGINS, flags=re.MULTILINE))


def test_every_vendored_file_has_its_origin_written_down() -> None:
    assert set(RECORDED) == {file.name for file in VENDORED.iterdir() if file.name != "README.md"}


@pytest.mark.parametrize("name", sorted(RECORDED))
def test_a_vendored_file_is_unchanged(name: str) -> None:
    assert hashlib.sha256((VENDORED / name).read_bytes()).hexdigest() == RECORDED[name]


def test_the_sarif_schema_takes_a_log_and_refuses_a_run_without_its_tool() -> None:
    schema = json.loads((VENDORED / "sarif-2.1.0.json").read_text("utf-8"))
    validator = jsonschema.Draft4Validator(schema)
    validator.check_schema(schema)
    assert validator.is_valid({"version": "2.1.0", "runs": [{"tool": {"driver": {"name": "a"}}, "results": []}]})
    assert not validator.is_valid({"version": "2.1.0", "runs": [{"results": []}]})


def test_the_junit_schema_takes_a_suite_and_refuses_an_unknown_element() -> None:
    schema = etree.XMLSchema(etree.parse(VENDORED / "junit.xsd"))
    suite = '<testsuite name="a" tests="1" failures="0" errors="0">{}</testsuite>'
    assert schema.validate(etree.fromstring(suite.format('<testcase name="b" classname="c"/>')))
    assert not schema.validate(etree.fromstring(suite.format("<finding/>")))
