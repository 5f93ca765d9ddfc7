"""Whole files: the examples, any order of keys, any text."""

from __future__ import annotations

import hashlib
import json
import random
from collections.abc import Mapping as ReadOnly
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.design.given import Given
from checker.design.item import Item
from checker.design.model import Circuit, Design, Equipment
from checker.reading import ReadingErrors, read_design, read_text
from checker.shipped import shipped
from checker.source.problems import Problems
from checker.source.tree import Mapping, Node, Scalar, Sequence, parse_tree
from tests.reading.small import SMALL

EXAMPLES = sorted(entry.name for entry in shipped("examples").iterdir() if entry.name.endswith(".fitout.yaml"))


def example(name: str) -> str:
    return shipped("examples").joinpath(name).read_text(encoding="utf-8")


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_example_reads(name: str) -> None:
    design = read_text(example(name), name)
    assert design.file == name and design.title.value and design.modes
    tree = parse_tree(example(name), Problems(name))
    assert tree is not None

    def written(section: str) -> list[str]:
        node = tree.get(section)
        return list(node.entries) if isinstance(node, Mapping) else []

    assert list(design.circuits) == written("circuits")
    assert [name for name, item in design.equipment.items() if item.inline_of is None] == [
        *written("equipment"),
        *written("joints"),
    ]


def test_the_examples_are_there() -> None:
    assert {"estuary-coach.fitout.yaml", "heron-camper.fitout.yaml", "saltbush-survey.fitout.yaml"} <= set(EXAMPLES)


def test_a_file_reads_as_its_text_and_carries_the_hash_of_its_bytes(tmp_path: Path) -> None:
    file = tmp_path / "small.fitout.yaml"
    file.write_bytes(b"\xef\xbb\xbf" + SMALL.encode())
    design = read_design(file)
    assert design.file == str(file) and design.sha256 == hashlib.sha256(file.read_bytes()).hexdigest()
    assert content(design) == content(read_text(SMALL))
    assert read_text(SMALL).sha256 == hashlib.sha256(SMALL.encode()).hexdigest()


def test_windows_line_ends_change_nothing_but_the_hash() -> None:
    design, other = read_text(SMALL), read_text(SMALL.replace("\n", "\r\n"))
    assert content(design) == content(other)
    assert [item.where for item in design.equipment.values()] == [item.where for item in other.equipment.values()]


def test_a_design_cannot_be_changed() -> None:
    design = read_text(SMALL)
    with pytest.raises(TypeError):
        design.equipment["x"] = design.equipment["F1"]  # type: ignore[index]
    with pytest.raises(AttributeError):
        design.title = design.code


def content(design: Design) -> Any:
    """Everything that a design says, without places and without order of names."""
    return {name: plain(getattr(design, name)) for name in design.__slots__ if name not in ("file", "sha256")}


def plain(value: Any) -> Any:
    if isinstance(value, Given):
        found = plain(value.value)
        return found, value.basis
    if isinstance(value, Item):
        said: dict[str, Any] = {
            "kind": value.kind,
            "path": value.path,
            **{f"={k}": plain(v) for k, v in value.written()},
        }
        if isinstance(value, Equipment):
            said |= {
                "terminals": plain(value.terminals),
                "ways": sorted(map(plain, value.ways), key=repr),
                "part": value.part,
                "base": value.base and value.base.name,
                "inline": value.inline_of,
                "section": value.section,
            }
        if isinstance(value, Circuit):
            said |= {
                name: plain(getattr(value, name))
                for name in ("start", "ends", "run", "cable", "cores", "returns", "earth", "terminations")
            }
        return said
    if isinstance(value, ReadOnly):
        return {name: plain(item) for name, item in value.items()}
    if isinstance(value, tuple) and hasattr(value, "_fields"):
        return type(value).__name__, *(
            plain(part) for name, part in zip(value._fields, value, strict=True) if name != "where"
        )
    if isinstance(value, tuple):
        parts = [plain(part) for part in value]
        named = all(isinstance(part, tuple) and len(part) == 2 and isinstance(part[1], Given) for part in value)
        return sorted(parts, key=repr) if named else parts
    return repr(value)


def shuffled(node: Node, chance: random.Random) -> str:
    """`node` as YAML in flow style, the keys of each mapping in any order."""
    if isinstance(node, Mapping):
        entries = [
            f"{json.dumps(key, ensure_ascii=False)}: {shuffled(value, chance)}"
            for key, (_, value) in node.entries.items()
        ]
        chance.shuffle(entries)
        return "{" + ",\n ".join(entries) + "}"
    if isinstance(node, Sequence):
        return "[" + ",\n ".join(shuffled(item, chance) for item in node.items) + "]"
    assert isinstance(node, Scalar)
    return json.dumps(node.text, ensure_ascii=False)


@pytest.mark.parametrize("name", EXAMPLES)
@given(chance=st.randoms(use_true_random=False))
@settings(max_examples=8, deadline=None)
def test_any_order_of_keys_says_the_same(name: str, chance: random.Random) -> None:
    tree = parse_tree(example(name), Problems(name))
    assert tree is not None
    assert content(read_text(shuffled(tree, chance))) == content(read_text(example(name)))


@given(st.text(max_size=400))
@settings(max_examples=300, deadline=None)
def test_any_text_is_read_or_refused(text: str) -> None:
    read_or_refused(text)


@given(st.text(alphabet="ab1?:-[]{},'\"&*!|>%@`# \n\t.~<", max_size=60))
@settings(max_examples=400, deadline=None)
def test_any_marks_are_read_or_refused(text: str) -> None:
    read_or_refused(text)


PIECES = (
    "unknown",
    "none",
    "?",
    "[]",
    "{}",
    "[1, 2]",
    "{is: 3 A, basis: measured}",
    "{is: x}",
    "-5 A",
    "~",
    "true",
    "F1",
    "chassis",
    "a.b",
    "3 m via cabin",
    "same",
    "",
    "{a: b}",
    "[[1 m, 2 m, 3 m]]",
    "K1.shore>common",
    "nan",
    "1e999 A",
    "{part: strip}",
    "{kind: fuse}",
    "1..2",
    "\n",
    "\t",
    ": ",
    "- ",
    "#",
    "&x ",
    "*x",
    "}",
    "]",
    "'",
)


@given(st.data())
@settings(max_examples=300, deadline=None)
def test_any_spoilt_design_is_read_or_refused(data: st.DataObject) -> None:
    text = SMALL
    for _ in range(data.draw(st.integers(1, 3))):
        start = data.draw(st.integers(0, len(text)))
        text = text[:start] + data.draw(st.sampled_from(PIECES)) + text[start + data.draw(st.integers(0, 30)) :]
    read_or_refused(text)


@given(st.binary(max_size=300))
@settings(max_examples=100, deadline=None)
def test_any_bytes_are_read_or_refused(tmp_path_factory: pytest.TempPathFactory, data: bytes) -> None:
    file = tmp_path_factory.getbasetemp() / "bytes.fitout.yaml"
    file.write_bytes(data)
    try:
        read_design(file)
    except ReadingErrors as errors:
        assert errors.problems


def read_or_refused(text: str) -> None:
    """Nothing but `ReadingErrors` may come of a text, each with a place inside it."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    try:
        read_text(text)
    except ReadingErrors as errors:
        assert errors.problems
        for problem in errors.problems:
            assert problem.what and problem.right and "\n" not in str(problem)
            assert 1 <= problem.line <= len(lines)
            assert 1 <= problem.column <= len(lines[problem.line - 1]) + 1
