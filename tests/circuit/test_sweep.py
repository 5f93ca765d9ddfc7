"""Two passes over the graph against a slow, independent count, on random trees and on rings."""

from __future__ import annotations

from typing import Any

import networkx
from hypothesis import given
from hypothesis import strategies as st

from checker.circuit.sweep import Forest, Rules


class Edge:
    def __init__(self, a: str, b: str, cap: float) -> None:
        self.a, self.b, self.cap = a, b, cap


def near_of(edges: list[Edge]) -> dict[str, list[tuple[Any, str]]]:
    near: dict[str, list[tuple[Any, str]]] = {}
    for edge in edges:
        near.setdefault(edge.a, []).append((edge, edge.b))
        near.setdefault(edge.b, []).append((edge, edge.a))
    return near


def rules(gives: dict[str, float]) -> Rules[float]:
    return Rules(
        0.0,
        lambda node: gives.get(node, 0.0),
        lambda a, b: a + b,
        lambda edge, node, flow: min(flow, edge.cap),  # type: ignore[union-attr]
    )


def slow(edges: list[Edge], gives: dict[str, float], edge: Edge, node: str) -> float:
    """What arrives at `node` through `edge`: walk away from it, without the edge."""

    def gathered(at: str, via: Edge) -> float:
        total = gives.get(at, 0.0)
        for other in edges:
            if other is not via and at in (other.a, other.b):
                total += min(gathered(other.b if at == other.a else other.a, other), other.cap)
        return total

    far = edge.b if node == edge.a else edge.a
    return min(gathered(far, edge), edge.cap)


trees = st.integers(2, 12).flatmap(
    lambda count: st.tuples(
        st.tuples(*(st.integers(0, node - 1) for node in range(1, count))),
        st.tuples(*(st.integers(1, 9) for _ in range(1, count))),
        st.tuples(*(st.integers(0, 9) for _ in range(count))),
    )
)


@given(trees)
def test_on_a_tree_every_edge_sees_what_a_walk_over_the_far_side_finds(tree: Any) -> None:
    parents, caps, values = tree
    edges = [Edge(str(node + 1), str(parent), float(caps[node])) for node, parent in enumerate(parents)]
    gives = {str(node): float(value) for node, value in enumerate(values)}
    arrives = Forest(near_of(edges)).sweep(rules(gives))
    for edge in edges:
        for node in (edge.a, edge.b):
            assert arrives[(id(edge), node)] == slow(edges, gives, edge, node)


@given(st.lists(st.tuples(st.integers(0, 7), st.integers(0, 7)), min_size=1, max_size=14))
def test_the_edges_taken_as_rings_are_exactly_those_that_are_no_bridge(pairs: list[tuple[int, int]]) -> None:
    edges = [Edge(str(a), str(b), 1.0) for a, b in pairs if a != b]
    if not edges:
        return
    graph = networkx.MultiGraph()
    for edge in edges:
        graph.add_edge(edge.a, edge.b, key=id(edge))
    simple = networkx.Graph(graph)
    bridges = {frozenset(pair) for pair in networkx.bridges(simple) if graph.number_of_edges(*pair) == 1}
    forest = Forest(near_of(edges))
    for edge in edges:
        assert (id(edge) in forest.ring_edges) == (frozenset((edge.a, edge.b)) not in bridges)


def test_a_ring_gathers_all_that_hangs_on_it() -> None:
    ring = [Edge("a", "b", 5.0), Edge("b", "c", 5.0), Edge("c", "a", 5.0)]
    tail = Edge("c", "d", 3.0)
    arrives = Forest(near_of([*ring, tail])).sweep(rules({"a": 2.0, "b": 2.0}))
    assert arrives[(id(tail), "d")] == 3.0
    assert arrives[(id(tail), "c")] == 0.0
    assert arrives[(id(ring[0]), "a")] == 4.0
