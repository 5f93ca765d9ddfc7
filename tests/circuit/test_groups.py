"""Joined nodes, and groups laid over others, against a plain search."""

from __future__ import annotations

import networkx
from hypothesis import given
from hypothesis import strategies as st

from checker.circuit.groups import Groups, Over

PAIRS = st.lists(st.tuples(st.sampled_from("abcdefgh"), st.sampled_from("abcdefgh")), max_size=12)


def test_a_node_that_was_never_joined_is_a_group_of_its_own() -> None:
    groups = Groups()
    assert groups.find("a") == "a"
    assert not groups.joined("a", "b")


@given(below=PAIRS, above=PAIRS)
def test_groups_over_groups_join_what_a_graph_of_both_joins(
    below: list[tuple[str, str]], above: list[tuple[str, str]]
) -> None:
    base = Groups()
    for a, b in below:
        base.join(a, b)
    over = Over(base, above)
    graph = networkx.Graph([*below, *above])
    graph.add_nodes_from("abcdefgh")
    for a in "abcdefgh":
        for b in "abcdefgh":
            assert over.joined(a, b) == networkx.has_path(graph, a, b)


@given(below=PAIRS, above=PAIRS)
def test_what_is_laid_over_leaves_the_base_as_it_was(
    below: list[tuple[str, str]], above: list[tuple[str, str]]
) -> None:
    base = Groups()
    for a, b in below:
        base.join(a, b)
    before = {(a, b): base.joined(a, b) for a in "abcdefgh" for b in "abcdefgh"}
    Over(base, above)
    assert before == {(a, b): base.joined(a, b) for a in "abcdefgh" for b in "abcdefgh"}
