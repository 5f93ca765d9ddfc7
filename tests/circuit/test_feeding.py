"""What a supply state means for neutral, inlet pins and residual-current protection."""

from __future__ import annotations

from checker.circuit.feeding import (
    bonded_on_shore,
    earth_path,
    neutral_links,
    reaches_pins,
    residual_path,
    residual_works,
)
from checker.circuit.states import MAYBE, States
from tests.circuit.mains_designs import feed, named, states_of

INVERTING = "shore absent, inverter inverting, K2 inverter"
PASSING = "shore present, inverter passing, K2 inverter"


def links(states: States, name: str, source: str) -> tuple[int, int]:
    return neutral_links(named(states, name), feed(states, source))


def test_the_shore_brings_one_link_and_the_inverter_its_own() -> None:
    states = states_of("mains-coach")
    assert links(states, PASSING, "inlet") == (1, 1)
    assert links(states, INVERTING, "inverter") == (1, 1)


def test_a_bond_that_stays_closed_makes_two_links_on_shore() -> None:
    states = states_of("mains-coach", {"equipment.inverter.bond.when": "always"})
    assert links(states, PASSING, "inlet") == (2, 2)
    assert bonded_on_shore(named(states, PASSING), states.mains.bonds[0]) is True


def test_a_bond_behind_an_open_transfer_is_not_counted_on_shore() -> None:
    states = states_of("mains-coach", {"equipment.inverter.bond.when": "always"})
    assert links(states, "shore present, inverter resting, K2 shore", "inlet") == (1, 1)


def test_a_changeover_of_one_pole_brings_that_bond_back() -> None:
    states = states_of("mains-coach", {"equipment.inverter.bond.when": "always", "equipment.K2.poles": "1"})
    assert links(states, "shore present, inverter resting, K2 shore", "inlet") == (2, 2)


def test_an_insulated_site_brings_no_link_and_an_unknown_one_perhaps() -> None:
    assert links(states_of("mains-coach", {"vehicle.supply.earthing": "IT"}), PASSING, "inlet") == (0, 0)
    assert links(states_of("mains-coach", {"vehicle.supply.earthing": "unknown"}), PASSING, "inlet") == (0, 1)


def test_a_wire_from_neutral_to_earth_is_a_bond() -> None:
    wire = "{from: board.N, to: main-earth, run: [0.2 m via locker], cable: green-6, duty: bonding}"
    states = states_of("mains-coach", {"circuits.old-link": wire})
    assert [bond.name for bond in states.mains.bonds] == ["old-link", "inverter"]
    assert links(states, PASSING, "inlet") == (2, 2)


def test_a_neutral_that_lands_on_the_earth_bar_is_a_bond() -> None:
    wire = "{from: board.N, to: main-earth, run: [0.2 m via locker], cable: green-6}"
    states = states_of("mains-coach", {"circuits.wrong-bar": wire})
    assert "wrong-bar" in [bond.name for bond in states.mains.bonds]


def test_a_board_whose_bar_nobody_saw_is_perhaps_a_bond() -> None:
    states = states_of("mains-coach", {"equipment.board.neutral bar": "unknown"})
    assert links(states, PASSING, "inlet") == (1, 2)


def test_feeding_back_reaches_the_pins() -> None:
    for word, reached in (("blocked", False), ("possible", True), ("unknown", MAYBE)):
        states = states_of("mains-coach", {"equipment.inverter.transfer.backfeed": word})
        inverting = named(states, "shore absent, inverter inverting, K2 open")
        assert reaches_pins(inverting, feed(states, "inverter"), feed(states, "inlet")) is reached


def test_the_device_in_every_way_is_found() -> None:
    states = states_of("mains-coach")
    path = residual_path(named(states, INVERTING), feed(states, "inverter"), "heater:L")
    assert path.protected is True
    assert [device.name for device in path.devices] == ["R1"]


def test_a_second_way_past_the_device_counts() -> None:
    states = states_of("mains-coach", {"circuits.normal.to": "board"})
    assert residual_path(named(states, "shore absent, inverter inverting, K2 open"), feed(states, "inverter"),
                         "heater:L").protected is False  # fmt: skip


def test_a_stretch_that_nobody_saw_may_hide_the_device() -> None:
    states = states_of("mains-coach", {"circuits.board-feed.run": "[unknown, S1]"})
    path = residual_path(named(states, INVERTING), feed(states, "inverter"), "heater:L")
    assert path.protected is MAYBE


def test_the_device_works_with_the_bond_before_it_and_not_with_the_bond_behind_it() -> None:
    before = states_of("mains-coach")
    assert residual_works(named(before, INVERTING), feed(before, "inverter"), "heater:N") is True
    behind = states_of(
        "mains-coach", {"equipment.inverter.bond.when": "never", "equipment.board.neutral bar": "bonded"}
    )
    assert residual_works(named(behind, INVERTING), feed(behind, "inverter"), "heater:N") is False


def test_the_earth_of_a_load_is_followed_to_the_source() -> None:
    states = states_of("mains-coach")
    assert earth_path(states.mains, feed(states, "inverter"), "heater:PE") is True
    cut = states_of("mains-coach", {"circuits.heating.earth": "none"})
    assert earth_path(cut.mains, feed(cut, "inverter"), "heater:PE") is False
    unseen = states_of("mains-coach", {"circuits.heating.cable": "unknown"})
    assert earth_path(unseen.mains, feed(unseen, "inverter"), "heater:PE") is MAYBE


def test_a_bonded_generator_behind_an_inverter_that_stays_bonded_makes_two_links() -> None:
    edits = {
        "equipment.genset": "{kind: generator, power: 3 kW, bond: {when: running}, place: locker}",
        "equipment.KG": "{kind: changeover, poles: 2, throws: [shore, genset], rating: 20 A, operated: by hand}",
        "circuits.shore-in.to": "KG.shore",
        "circuits.generator": "{from: genset, to: KG.genset, run: [1 m via locker], cable: flex-2.5}",
        "circuits.common": "{from: KG, to: shore-joint, run: [1 m via locker], cable: flex-2.5}",
        "equipment.inverter.bond.when": "always",
    }
    states = states_of("mains-coach", edits)
    name = "shore absent, inverter passing, genset running, K2 inverter, KG genset"
    assert links(states, name, "genset") == (2, 2)


def test_a_separating_transformer_sets_up_a_neutral_of_its_own() -> None:
    edits = {
        "equipment.T1": "{kind: transformer, windings: separate, power: 3 kW, place: locker}",
        "circuits.shore": "{from: inlet, to: T1.primary, run: [0.3 m via locker], cable: flex-2.5}",
        "circuits.behind": "{from: T1.secondary, to: KG.shore, run: [0.3 m via locker], cable: flex-2.5}",
        "circuits.bonding": "{from: T1.secondaryN, to: earth, run: [0.3 m via locker], cable: green-6, duty: bonding}",
    }
    states = states_of("generator-van", edits)
    state = named(states, "shore present, genset stopped, inverter resting, KG shore")
    assert neutral_links(state, feed(states, "T1")) == (1, 1)
    assert neutral_links(state, feed(states, "inlet")) == (1, 1)
    bonding = next(bond for bond in states.mains.bonds if bond.name == "bonding")
    assert bonded_on_shore(state, bonding) is False
    assert residual_works(state, feed(states, "T1"), "sockets:N") is True
