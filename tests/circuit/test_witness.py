"""The shortest sequence of operations to a supply state."""

from __future__ import annotations

from checker.circuit.states import States
from checker.circuit.witness import at_rest
from tests.circuit.mains_designs import named, states_of

COIL = {
    "equipment.K2.operated": "coil",
    "equipment.K2.coil on": "bypass",
    "equipment.K2.throws": "[shore, inverter]",
    "equipment.K2.rest": "inverter",
}
HELD = {  # a coil fed from behind its own contact: once pulled in it holds itself, but nothing pulls it in
    "equipment.K2.operated": "coil",
    "equipment.K2.coil on": "kitchen",
    "equipment.K2.throws": "[shore, inverter]",
    "equipment.K2.rest": "inverter",
    "equipment.inverter.transfer.when": "never",
}


def witness(states: States, name: str) -> tuple[str, ...] | None:
    return states.witness(named(states, name))


def test_everything_at_rest_needs_no_operation() -> None:
    states = states_of("mains-coach")
    assert witness(states, "shore absent, inverter resting, K2 open") == ()


def test_operations_come_in_the_order_of_the_file_each_followed_by_what_moves_by_itself() -> None:
    states = states_of("mains-coach")
    assert witness(states, "shore present, inverter passing, K2 inverter") == (
        "plug in the shore lead",
        "switch inverter on",
        "inverter passes its input through",
        "set K2 to inverter",
    )


def test_a_coil_changeover_moves_by_itself() -> None:
    assert witness(states_of("mains-coach", COIL), "shore present, inverter resting") == (
        "plug in the shore lead",
        "K2 moves to shore",
    )


def test_the_bond_relay_is_told_when_it_closes() -> None:
    assert witness(states_of("mains-coach"), "shore absent, inverter inverting, K2 open") == (
        "switch inverter on",
        "inverter joins neutral to earth",
    )


def test_each_operation_changes_one_position_so_the_count_is_the_number_of_positions_that_differ() -> None:
    states = states_of("generator-van")
    rest = at_rest(states.free)
    operations = ("plug in", "unplug", "start", "stop", "switch", "set")
    for state in states.states:
        steps = states.witness(state)
        assert steps is not None
        differ = sum(a != b for a, b in zip(rest, state.choice, strict=True))
        assert sum(step.startswith(operations) for step in steps) == differ


def test_a_rest_that_is_written_is_where_a_changeover_starts() -> None:
    states = states_of("generator-van", {"equipment.KG.rest": "inverter"})
    assert witness(states, "shore absent, genset stopped, inverter resting, KG inverter") == ()


def test_two_inlets_are_told_apart() -> None:
    edits = {
        "equipment.rear": "{kind: shore inlet, voltage: 230 V AC, rating: 16 A, place: skirt}",
        "circuits.rear": "{from: rear, to: shore-joint, run: [1 m via locker], cable: flex-2.5}",
    }
    states = states_of("mains-coach", edits)
    state = next(state for state in states.states if state.present == {"inlet": False, "rear": True})
    assert "plug in the shore lead at rear" in (states.witness(state) or ())


def test_interlocked_switches_start_open() -> None:
    switch = "{{kind: switch, poles: 2, rating: 20 A, operated: by hand, interlocked with: [{other}], place: locker}}"
    edits = {
        "equipment.KG": switch.format(other="S2"),
        "equipment.S2": switch.format(other="KG"),
        "circuits.shore": "{from: inlet, to: out, run: [0.5 m via locker, KG], cable: flex-2.5}",
        "circuits.generator": "{from: genset, to: out, run: [0.5 m via locker, S2], cable: flex-2.5}",
        "circuits.inverting": "(remove)",
        "circuits.common": "(remove)",
    }
    states = states_of("generator-van", edits)
    wanted = "shore absent, genset stopped, KG open, S2 closed"
    state = named(states, wanted)
    assert states.witness(state) == ("close S2",)


def test_a_position_that_holds_itself_is_reached_through_what_pulls_it_in_first() -> None:
    # The inverter makes the board live, the coil pulls over to the shore, and from there it feeds itself.
    states = states_of("mains-coach", HELD)
    state = next(one for one in states.states if one.present["inlet"] and one.positions["K2"] == "shore")
    steps = states.witness(state)
    assert steps is not None
    assert "K2 moves to shore" in steps
    assert steps.index("switch inverter on") < steps.index("K2 moves to shore")


def test_a_self_held_position_that_no_operation_reaches_is_not_certain() -> None:
    states = states_of("mains-coach", HELD | {"circuits.normal": "(remove)"})
    held = [state for state in states.states if state.positions["K2"] == "shore"]
    assert held
    assert all(states.witness(state) is None and not state.certain for state in held)
    assert all(state.certain for state in states.states if state not in held)


def test_the_nearest_states_come_first() -> None:
    states = states_of("mains-coach")
    far = [states.ways.distance(state) for state in states.nearest]
    assert far == sorted(far) == [0, 1, 1, 1, 1, 2, 2, 2, 2, 2, 3, 3]
    assert set(states.nearest) == set(states.states)
