"""Tables are data with a pedigree."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from checker.physics import tables

HEAD = "# title: t\n# document: d\n# units: A\n# mark: seen\n"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(tables, "FOLDER", tmp_path)
    tables.table.cache_clear()
    yield tmp_path
    tables.table.cache_clear()


@pytest.mark.parametrize("name", tables.names())
def test_each_shipped_table_names_document_units_and_mark_and_has_rows(name: str) -> None:
    table = tables.table(name)
    assert all(table.head[key] for key in tables.NEEDED_HEAD_KEYS)
    assert table.rows
    assert table.head["title"]


@pytest.mark.parametrize("name", [name for name in tables.names() if tables.table(name).head["mark"] == "by row"])
def test_a_table_marked_by_row_has_a_known_mark_in_each_row(name: str) -> None:
    assert {row["mark"] for row in tables.table(name).rows} <= {"seen", "memory", "practice"}


def test_a_table_is_read_once() -> None:
    assert tables.table("bundle_factor") is tables.table("bundle_factor")


def test_the_source_says_document_clause_edition_and_mark() -> None:
    assert tables.table("carrying_capacity_free_air").source == "33 CFR 183.425 Table 5 (2015) [seen]"
    assert tables.table("ambient_factor_installed").source.endswith("(2009) [from memory]")


def test_keys_are_scaled_exactly() -> None:
    assert tables.table("conductor_resistance_iec60228").pairs("area_mm2", "class5_plain", -6)[0][0] == 0.5e-6


def test_blank_cells_are_left_out() -> None:
    assert len(tables.table("ambient_factor_installed").numbers("pvc_70")) == 11


def test_an_unknown_name_lists_the_tables_there_are() -> None:
    with pytest.raises(LookupError, match=r"no table named 'no such'; there are .*bundle_factor"):
        tables.table("no such")


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("# title: t\na\n1\n", "head lacks document, units, mark"),
        (HEAD.replace("seen", "certain") + "a\n1\n", "mark 'certain' is none of seen, memory, practice, by row"),
        ("# titel: t\n" + HEAD + "a\n1\n", "head line '# titel: t' is not one of"),
        ("# nothing\n" + HEAD + "a\n1\n", "head line '# nothing' is not one of"),
    ],
)
def test_a_head_that_lacks_something_is_refused(folder: Path, text: str, message: str) -> None:
    (folder / "bad.csv").write_text(text, encoding="utf-8")
    with pytest.raises(ValueError, match=message):
        tables.table("bad")


def test_importing_the_formulas_reads_no_table() -> None:
    code = (
        "import checker.physics.carrying_capacity, checker.physics.fuse_curves, checker.physics.tables as t, sys;"
        "sys.exit(t.table.cache_info().currsize)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
