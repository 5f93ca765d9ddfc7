"""The copied published values carry their pedigree."""

from __future__ import annotations

import pytest

from tests.reference.published import DATA, HEAD, head, published

FILES = sorted(path.stem for path in DATA.glob("*.csv"))


def test_there_are_published_values() -> None:
    assert len(FILES) >= 30


@pytest.mark.parametrize("name", FILES)
def test_each_file_names_source_mark_licence_and_tolerance_and_has_rows(name: str) -> None:
    assert tuple(head(name)) == HEAD
    assert all(head(name).values())
    assert published(name)
