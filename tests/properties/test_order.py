"""The order of keys says nothing: sections, entries and keys in any order give the same findings.

Where a sentence lists several things it lists them in file order, so sentences are not compared.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.reading import read_text
from checker.review import review
from checker.source.problems import Problems
from checker.source.tree import Mapping, Node, Scalar, Sequence, parse_tree
from tests.properties.designs import texts, verdicts_of
from tests.properties.verdicts import rulebook, verdicts


def shuffled(node: Node, chance: Random) -> str:
    """`node` as YAML in flow style, the keys of each mapping in any order."""
    if isinstance(node, Mapping):
        entries = [f"{json.dumps(key)}: {shuffled(value, chance)}" for key, (_, value) in node.entries.items()]
        chance.shuffle(entries)
        return "{" + ",\n ".join(entries) + "}"
    if isinstance(node, Sequence):
        return "[" + ",\n ".join(shuffled(item, chance) for item in node.items) + "]"
    assert isinstance(node, Scalar)
    return json.dumps(node.text)


def in_any_order(name: str, chance: Random) -> str:
    """The design with all its keys shuffled."""
    tree = parse_tree(texts()[name], Problems(name))
    assert tree is not None
    return shuffled(tree, chance)


def told(text: str) -> list[Any]:
    """What the findings are about, and what those undecided need to know."""
    found: Iterable[Any] = review(read_text(text), rulebook()).findings
    return sorted(
        (one.rule, one.verdict, tuple(one.about), one.signal, sorted(need.path for need in one.needs)) for one in found
    )


@pytest.mark.parametrize("name", texts())
@given(chance=st.randoms(use_true_random=False))
@settings(max_examples=3)
def test_any_order_of_keys_gives_the_same_verdicts(name: str, chance: Random) -> None:
    assert verdicts(read_text(in_any_order(name, chance))) == verdicts_of(name)


@pytest.mark.parametrize("name", list(texts())[:4])
@given(chance=st.randoms(use_true_random=False))
@settings(max_examples=2)
def test_any_order_of_keys_gives_the_same_findings(name: str, chance: Random) -> None:
    assert told(in_any_order(name, chance)) == told(texts()[name])
