"""The page of kinds and keys is the vocabulary's."""

from __future__ import annotations

import re
from pathlib import Path

from checker.design.keys_page import keys_page
from checker.design.vocabulary import KINDS, SECTIONS
from checker.design.vocabulary.table import EQUIPMENT

DOCS = Path(__file__).parents[2] / "docs"
PAGE = keys_page()


def test_the_committed_page_is_the_one_the_vocabulary_makes() -> None:
    committed = (DOCS / "design-file-keys.md").read_text("utf-8")
    assert committed == PAGE, "write it again: python docs/generate.py"


def test_every_section_and_every_kind_of_equipment_is_on_it() -> None:
    assert [name for name in (section.name for section in SECTIONS) if f"| `{name}` |" not in PAGE] == []
    assert [kind.name for kind in EQUIPMENT if f"\n### {kind.name}\n" not in PAGE] == []


def test_every_key_is_on_it() -> None:
    written = set(re.findall(r"^\| `([^`]+)`\*? \|", PAGE, re.MULTILINE))
    assert {key for kind in KINDS.values() for key in kind.keys} <= written


def test_every_row_of_a_table_has_the_columns_of_its_head() -> None:
    columns = 0
    for line in PAGE.splitlines():
        if not line.startswith("|"):
            columns = 0
            continue
        columns = columns or line.count("|")
        assert line.count("|") == columns, line


def test_the_guide_and_the_page_name_each_other() -> None:
    guide = (DOCS / "design-file.md").read_text("utf-8")
    assert "(design-file-keys.md)" in guide
    assert "(design-file.md)" in PAGE
