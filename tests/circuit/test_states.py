"""The reachable supply states: which there are, what feeds in each, what is certain."""

from __future__ import annotations

from checker.circuit.build import build
from checker.circuit.feeding import neutral_links
from checker.circuit.states import MOST_STATES, States
from tests.circuit.designs import design
from tests.circuit.mains_designs import changed_at, feed, named, states_of


def feeding(states: States, name: str) -> list[str]:
    return [one.name for one in named(states, name).feeding]


def test_every_combination_of_shore_inverter_and_changeover_is_a_state() -> None:
    # shore 2, inverter 2, K2 3
    assert len(states_of("mains-coach").states) == 12


def test_a_generator_doubles_the_states() -> None:
    # shore 2, generator 2, inverter 2, KG 3
    assert len(states_of("generator-van").states) == 24


def test_an_inverter_charger_passes_the_shore_and_inverts_without_it() -> None:
    states = states_of("mains-coach")
    assert feeding(states, "shore present, inverter passing, K2 inverter") == ["inlet"]
    assert feeding(states, "shore absent, inverter inverting, K2 inverter") == ["inverter"]
    assert feeding(states, "shore absent, inverter resting, K2 inverter") == []


def test_the_bond_relay_closes_only_while_inverting() -> None:
    closed = {state.name: list(state.bonds.values()) for state in states_of("mains-coach").states}
    assert closed["shore present, inverter passing, K2 shore"] == [False]
    assert closed["shore absent, inverter inverting, K2 shore"] == [True]


def test_a_coil_changeover_follows_the_supply_of_its_coil() -> None:
    edits = {
        "equipment.K2.operated": "coil",
        "equipment.K2.coil on": "bypass",
        "equipment.K2.throws": "[shore, inverter]",
        "equipment.K2.rest": "inverter",
    }
    states = states_of("mains-coach", edits)
    assert {state.name: state.positions["K2"] for state in states.states} == {
        "shore present, inverter passing": "shore",
        "shore present, inverter resting": "shore",
        "shore absent, inverter inverting": "inverter",
        "shore absent, inverter resting": "inverter",
    }
    assert all(state.certain and state.stable for state in states.states)


def test_a_coil_that_cuts_off_its_own_supply_has_no_certain_position() -> None:
    edits = {
        "equipment.K2.operated": "coil",
        "equipment.K2.coil on": "kitchen",
        "equipment.K2.throws": "[shore, inverter]",
        "equipment.K2.rest": "shore",
        "equipment.inverter.transfer.when": "never",
    }
    state = named(states_of("mains-coach", edits), "shore present, inverter resting")
    # The board is live from the shore throw, which pulls the coil off it; dead again, it falls back: it never settles.
    assert not state.stable
    assert state.positions["K2"] is None
    assert {link.equipment.name for link in state.perhaps} >= {"K2"}


def test_a_coil_of_which_nothing_is_known_makes_every_position_possible_and_none_certain() -> None:
    states = states_of("mains-coach", {"equipment.K2.operated": "unknown"})
    assert len(states.states) == 12
    assert not any(state.certain for state in states.states)


def test_an_unknown_transfer_leaves_open_what_feeds() -> None:
    states = states_of("mains-coach", {"equipment.inverter.transfer.when": "unknown"})
    state = named(states, "shore present, inverter inverting or passing, K2 open")
    assert state.feeding == {feed(states, "inlet"): True, feed(states, "inverter"): None}
    assert {link.equipment.name for link in state.perhaps} == {"inverter"}


def test_interlocked_switches_are_never_closed_together() -> None:
    switch = "{{kind: switch, poles: 2, rating: 20 A, operated: by hand, interlocked with: [{other}], place: locker}}"
    edits = {
        "equipment.KG": switch.format(other="S2"),
        "equipment.S2": switch.format(other="KG"),
        "circuits.shore": "{from: inlet, to: out, run: [0.5 m via locker, KG], cable: flex-2.5}",
        "circuits.generator": "{from: genset, to: out, run: [0.5 m via locker, S2], cable: flex-2.5}",
        "circuits.inverting": "{from: inverter.ac, to: genset, run: [0.5 m via locker], cable: flex-2.5}",
        "circuits.common": "{from: out, to: earth, run: [0.5 m via locker], cable: green-6, duty: bonding}",
    }
    states = states_of("generator-van", edits)
    assert states.states
    assert not any("KG closed" in state.name and "S2 closed" in state.name for state in states.states)


def test_interlocked_inlets_are_never_both_plugged_in() -> None:
    edits = {
        "equipment.inlet.interlocked with": "[rear]",
        "equipment.rear": "{kind: shore inlet, voltage: 230 V AC, rating: 16 A, place: skirt}",
        "circuits.rear": "{from: rear, to: shore-joint, run: [1 m via locker], cable: flex-2.5}",
    }
    states = states_of("mains-coach", edits)
    both = [state for state in states.states if all(state.present.values())]
    assert both == []
    assert {name for state in states.states for name, on in state.present.items() if on} == {"inlet", "rear"}


def test_a_transformer_with_separate_windings_feeds_while_its_primary_is_live() -> None:
    edits = {
        "equipment.T1": "{kind: transformer, windings: separate, power: 3 kW, place: locker}",
        "circuits.common": "{from: KG, to: T1.primary, run: [0.3 m via locker], cable: flex-2.5}",
        "circuits.behind": "{from: T1.secondary, to: out, run: [0.3 m via locker], cable: flex-2.5}",
    }
    states = states_of("generator-van", edits)
    assert feeding(states, "shore present, genset stopped, inverter resting, KG shore") == ["inlet", "T1"]
    assert feeding(states, "shore absent, genset stopped, inverter resting, KG shore") == []


def test_a_design_without_mains_has_no_states() -> None:
    lamp = "  lamp: {kind: lamp, power: 5 W, voltage: 10..15 V}"
    bank = "  bank: {kind: battery, nominal: 12 V}"
    feeder = "  feed: {from: bank, to: lamp, run: [1 m via cabin], cable: red, return: same}"
    assert States(build(design(f"{bank}\n{lamp}", feeder))).states == ()


def many(circuits: str, start: str) -> dict[str, str]:
    """Edits that add changeovers by hand until there are more combinations than the bound."""
    edits = {
        "parts.more": "{kind: changeover, poles: 2, throws: [one, two, open], rating: 20 A, operated: by hand}",
    }
    count = 0
    while 3**count * 24 <= MOST_STATES:
        count += 1
        edits[f"equipment.C{count}"] = "{part: more, place: locker}"
        text = circuits.format(before=start if count == 1 else f"C{count - 1}", name=f"C{count}")
        edits[f"circuits.c{count}"] = f"{{{text}, run: [1 m via locker], cable: flex-2.5}}"
    return edits


def test_more_combinations_than_the_bound_are_not_worked_through() -> None:
    chain = many("from: {before}, to: {name}.one", "out")
    states = States(build(changed_at("generator-van", chain)))
    assert not states.complete
    assert states.states == ()


def test_changeovers_with_only_loads_behind_are_varied_one_at_a_time_when_there_are_too_many() -> None:
    star = many("from: out, to: {name}.one", "out")
    states = States(build(changed_at("generator-van", star)))
    added = len(star) // 2
    assert states.complete and states.merged
    assert len(states.states) == 24 * (1 + 2 * added)


def test_a_written_unknown_interlock_leaves_open_whether_both_are_closed() -> None:
    switch = "{{kind: switch, poles: 2, rating: 20 A, operated: by hand, interlocked with: {other}, place: locker}}"
    edits = {
        "equipment.KG": switch.format(other="unknown"),
        "equipment.S2": switch.format(other="unknown"),
        "circuits.shore": "{from: inlet, to: out, run: [0.5 m via locker, KG], cable: flex-2.5}",
        "circuits.generator": "{from: genset, to: out, run: [0.5 m via locker, S2], cable: flex-2.5}",
        "circuits.inverting": "(remove)",
        "circuits.common": "(remove)",
    }
    states = states_of("generator-van", edits)
    both = [state for state in states.states if "KG closed" in state.name and "S2 closed" in state.name]
    assert both
    assert not any(state.certain for state in both)
    assert all(state.certain for state in states.states if state not in both)


PARTING = {  # a bonded board behind a two-pole switch, and an outlet of the generator ahead of it
    "equipment.genset.bond": "{when: never}",
    "equipment.S1": "{kind: switch, poles: 2, rating: 20 A, operated: by hand, place: locker}",
    "equipment.board": "{kind: board, system: mains, neutral bar: bonded, place: locker, ways: {a: {part: rcbo}}}",
    "circuits.generator": "{from: genset, to: KG.generator, run: [0.5 m via locker], cable: flex-2.5}",
    "circuits.ahead": "{from: genset, to: sockets, run: [1 m via locker], cable: flex-2.5}",
    "circuits.common": "{from: KG, to: board, run: [0.3 m via locker, S1], cable: flex-2.5}",
    "circuits.sockets": "{from: board.a, to: charger.ac, run: [1 m via locker], cable: flex-2.5}",
    "circuits.charging": "(remove)",
    "circuits.joint-earth": "{from: board.PE, to: earth, run: [0.3 m via locker], cable: green-6, duty: bonding}",
}


def test_a_hand_switch_that_parts_a_source_from_its_earthing_is_looked_at_open_and_closed() -> None:
    states = states_of("generator-van", PARTING)
    assert states.mains.by_hand == {"S1"}
    wanted = "shore absent, genset running, inverter resting, S1 {}, KG generator"
    genset = feed(states, "genset")
    assert neutral_links(named(states, wanted.format("closed")), genset) == (1, 1)
    assert neutral_links(named(states, wanted.format("open")), genset) == (0, 0)


def test_a_hand_switch_that_only_takes_supply_away_counts_as_closed() -> None:
    without_outlet = {path: text for path, text in PARTING.items() if path != "circuits.ahead"}
    assert states_of("generator-van", without_outlet).mains.by_hand == frozenset()
    assert states_of("mains-coach").mains.by_hand == frozenset()
