"""The checker's supply states agree with those of brute force, on circuits made at random."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from checker.circuit.build import build
from checker.circuit.elements import LIVE
from checker.circuit.feeding import joined_with, neutral_links
from checker.circuit.state import State
from checker.circuit.states import States
from checker.reading import read_text
from tests.circuit.brute import Changeover, Plan, Positions, Seen, design_text, enumerate_states

WORDS = {"present": "on", "absent": "off", "running": "on", "stopped": "off"}


@st.composite
def plans(draw: st.DrawFn, coils: bool) -> Plan:
    names = draw(st.lists(st.sampled_from(["inlet", "genset", "inverter"]), min_size=1, max_size=3, unique=True))
    sources = {name: name != "inlet" and draw(st.booleans()) for name in names}
    blocks = tuple(f"B{number}" for number in range(1, draw(st.integers(1, 3)) + 1))
    count = draw(st.integers(0, 2))
    points = [*blocks, *(f"C{number}.{end}" for number in range(1, count + 1) for end in ("a", "b", "common"))]
    wires = [(name, draw(st.sampled_from(points))) for name in names]
    for number in range(1, count + 1):
        for end in ("a", "b", "common"):
            own = f"C{number}.{end}"
            wires.append((own, draw(st.sampled_from([point for point in points if point != own]))))
    changeovers = []
    for number in range(1, count + 1):
        coil = draw(st.sampled_from([start for start, _ in wires])) if coils and draw(st.booleans()) else None
        changeovers.append(Changeover(f"C{number}", draw(st.sampled_from([1, 2])), coil))
    earthed = tuple(block for block in blocks if draw(st.booleans()))
    return Plan(sources, blocks, tuple(changeovers), tuple(wires), earthed)


def states_of(plan: Plan) -> States:
    return States(build(read_text(design_text(plan))))


def chosen(plan: Plan, state: State, states: States) -> Positions:
    at = dict(zip((one.item.name for one in states.free), state.choice, strict=True))
    by_hand = [one.name for one in plan.changeovers if one.coil is None]
    return tuple((name, WORDS.get(at[name], at[name])) for name in (*plan.sources, *by_hand))


def seen(plan: Plan, state: State) -> Seen:
    links: list[tuple[str, int]] = []
    joined: set[tuple[str, str]] = set()
    by_name = {feed.name: feed for feed in state.feeding}
    for name in plan.sources:
        if name in by_name:
            least, most = neutral_links(state, by_name[name])
            assert least == most
            links.append((name, least))
            joined.update((name, other.name) for other in joined_with(state, by_name[name], LIVE)[0])
    live = frozenset(block for block in plan.blocks if state.is_live(f"{block}:L") is True)
    return Seen(live, tuple(links), frozenset(joined))


COMMON = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@COMMON
@given(plans(coils=False))
def test_without_coils_every_state_is_the_same(plan: Plan) -> None:
    states = states_of(plan)
    expected = enumerate_states(plan)
    found = {chosen(plan, state, states): [seen(plan, state)] for state in states.states}
    assert found == expected


@COMMON
@given(plans(coils=True))
def test_with_coils_what_is_certain_agrees_with_itself_and_what_cannot_settle_is_not_certain(plan: Plan) -> None:
    states = states_of(plan)
    expected = enumerate_states(plan)
    assert {chosen(plan, state, states) for state in states.states} == set(expected)
    for state in states.states:
        agreeing = expected[chosen(plan, state, states)]
        if state.stable:
            assert seen(plan, state) in agreeing
        if not agreeing:
            assert not state.stable


@COMMON
@given(plans(coils=False))
def test_the_witness_counts_the_positions_that_differ_from_rest(plan: Plan) -> None:
    states = states_of(plan)
    assert states.ways.start is not None
    rest = states.ways.start.choice
    operations = ("plug", "unplug", "start", "stop", "switch", "set")
    for state in states.states:
        steps = states.witness(state)
        assert steps is not None
        differ = sum(one != other for one, other in zip(rest, state.choice, strict=True))
        assert sum(step.startswith(operations) for step in steps) == differ


def test_the_oracle_can_fail() -> None:
    plan = Plan({"inlet": False}, ("B1",), (), (("inlet", "B1"),), ("B1",))
    ((_, (state,)), *_rest) = enumerate_states(plan).items()
    assert state.links == (("inlet", 2),)
    moved = plan._replace(earthed=())
    states = states_of(moved)
    assert seen(moved, states.states[0]) != state
