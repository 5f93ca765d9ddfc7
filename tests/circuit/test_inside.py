"""Connections inside equipment."""

from __future__ import annotations

from checker.circuit.build import build
from checker.circuit.elements import RETURN
from checker.circuit.feeding import residual_path, residual_works
from tests.circuit.mains_designs import changed_at, named, states_of

RCBO = (
    "{kind: rcbo, family: C curve, voltage: 230 V AC, breaking capacity: 6 kA, poles: 1, trips at: 30 mA, type: A, "
    "rating: 10 A}"
)
WAYS = {
    "equipment.board.ways": f"{{kitchen: {RCBO}, heater: {{part: mcb, rating: 10 A}}}}",
    "circuits.board-feed.run": "[0.3 m via locker, S1]",
}
INVERTING = "shore absent, inverter inverting, K2 inverter"


def test_the_neutral_of_a_one_pole_residual_way_passes_its_sensor() -> None:
    network = build(changed_at("mains-coach", WAYS))
    (neutral,) = [one for one in network.links if one.equipment.name == "board.kitchen" and one.pole == RETURN]
    assert (neutral.a, neutral.b) == ("board:N", "board.kitchen:N")
    conductor = network.conductor("kitchen", RETURN)
    assert conductor is not None
    assert conductor.start == "board.kitchen:N"


def test_the_neutral_of_a_one_pole_breaker_way_stays_on_the_bar() -> None:
    mcb = {"equipment.board.ways.heater": "{part: mcb, rating: 10 A, poles: 1}"}
    network = build(changed_at("mains-coach", mcb))
    conductor = network.conductor("heating", RETURN)
    assert conductor is not None
    assert conductor.start == "board:N"


def test_neutral_joined_to_earth_behind_a_one_pole_residual_way_blinds_it() -> None:
    wire = "{from: kitchen-outlets.N, to: main-earth, run: [1 m via cabin], cable: green-6, duty: bonding}"
    behind = {"circuits.fault": wire}
    states = states_of("mains-coach", WAYS | behind)
    state = named(states, INVERTING)
    (feed,) = state.feeding
    assert residual_path(state, feed, "kitchen-outlets:L").protected is True
    assert residual_works(state, feed, "kitchen-outlets:N") is False
    sound = named(states_of("mains-coach", WAYS), INVERTING)
    (feed,) = sound.feeding
    assert residual_works(sound, feed, "kitchen-outlets:N") is True
