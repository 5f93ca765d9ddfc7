"""From a design to the graph: which nodes a run joins, where devices stand, how currents return."""

from __future__ import annotations

from checker.circuit.elements import LIVE, RETURN, Link
from tests.circuit.designs import battery, fuse, lamp, network


def test_a_run_is_wires_with_its_devices_between_in_order() -> None:
    graph = network(
        "\n".join([battery("bank"), fuse("F1", 50), lamp("light")]),
        "  feed: {from: bank, to: light, run: [0.2 m via cabin, F1, 3 m via cabin], cable: red, return: same}",
    )
    live = graph.conductor("feed", LIVE)
    assert live is not None
    assert [part.equipment.name if isinstance(part, Link) else (part.a, part.b) for part in live.parts] == [
        ("bank:+", "F1:a"),
        "F1",
        ("F1:b", "light:+"),
    ]
    assert [wire.lengths[0].length.value for wire in live.wires] == [0.2, 3.0]


def test_a_single_pole_device_does_not_stand_in_the_return() -> None:
    graph = network(
        "\n".join([battery("bank"), fuse("F1", 50), lamp("light")]),
        "  feed: {from: bank, to: light, run: [0.2 m via cabin, F1, 3 m via cabin], cable: red, return: same}",
    )
    back = graph.conductor("feed", RETURN)
    assert back is not None
    assert back.links == ()
    assert (back.start, back.end) == ("bank:-", "light:-")


def test_a_two_pole_device_opens_the_return_at_the_same_spot() -> None:
    graph = network(
        "\n".join(
            [
                battery("bank"),
                "  Q: {kind: breaker, family: dc hydraulic-magnetic, rating: 20 A, voltage: 60 V DC, poles: 2}",
                lamp("light"),
            ]
        ),
        "  feed: {from: bank, to: light, run: [0.2 m via cabin, Q, 3 m via cabin], cable: red, return: same}",
    )
    back = graph.conductor("feed", RETURN)
    assert back is not None
    assert [link.equipment.name for link in back.links] == ["Q"]
    assert [wire.lengths[0].length.value for wire in back.wires] == [0.2, 3.0]


def test_a_run_that_enters_the_load_side_meets_that_terminal_first() -> None:
    graph = network(
        "\n".join(
            [battery("bank"), "  Q: {kind: breaker, family: thermal, rating: 20 A, voltage: 60 V DC}", lamp("light")]
        ),
        "  feed: {from: bank, to: light, run: [1 m via cabin, Q.load, 1 m via cabin], cable: red, return: same}",
    )
    live = graph.conductor("feed", LIVE)
    assert live is not None
    assert (live.wires[0].b, live.wires[1].a) == ("Q:load", "Q:line")


def test_a_chassis_return_joins_the_load_to_the_chassis() -> None:
    graph = network(
        "\n".join([battery("bank"), lamp("light")]),
        "  feed: {from: bank, to: light, run: [3 m via cabin], cable: red, return: chassis}\n"
        "  ground: {from: bank.-, to: chassis, run: [0.4 m via cabin], cable: red, duty: bonding}",
    )
    back = graph.conductor("feed", RETURN)
    assert back is not None
    assert (back.start, back.end) == ("chassis", "light:-")
    assert {edge.conductor.id for edge, _ in graph.near["chassis"] if not isinstance(edge, Link)} == {
        "feed return",
        "ground",
    }


def test_a_three_core_mains_cable_gives_live_neutral_and_earth() -> None:
    graph = network(
        "  inlet: {kind: shore inlet, voltage: 230 V AC, rating: 16 A}\n"
        "  sockets: {kind: outlet, voltage: 230 V AC, rating: 10 A}",
        "  shore: {from: inlet, to: sockets, run: [2 m via cabin], cable: flex}",
    )
    assert [(one.role, one.start, one.end) for one in graph.by_circuit["shore"]] == [
        ("live", "inlet:L", "sockets:L"),
        ("return", "inlet:N", "sockets:N"),
        ("earth", "inlet:PE", "sockets:PE"),
    ]


def test_a_stretch_that_was_not_seen_leaves_a_gap() -> None:
    graph = network(
        "\n".join([battery("bank"), lamp("light")]),
        "  feed: {from: bank, to: light, run: [unknown, 3 m via cabin], cable: red, return: same}",
    )
    live = graph.conductor("feed", LIVE)
    assert live is not None
    assert live.wires[0].gap is not None


def test_the_ways_of_a_board_are_devices_between_its_feed_and_their_circuits() -> None:
    graph = network(
        "\n".join(
            [
                battery("bank"),
                "  board: {kind: board, family: blade, voltage: 32 V DC, ways: {a: 5 A, b: 10 A}}",
                lamp("light"),
            ]
        ),
        "  feed: {from: bank, to: board, run: [1 m via cabin], cable: red, return: same}\n"
        "  out: {from: board.a, to: light, run: [1 m via cabin], cable: red, return: same}",
    )
    assert [(link.a, link.b) for link in graph.links if link.equipment.name == "board.a"] == [("board:+", "board.a:+")]
    live = graph.conductor("out", LIVE)
    assert live is not None
    assert live.start == "board.a:+"


def test_a_circuit_takes_its_system_from_its_neighbours() -> None:
    graph = network(
        "  inlet: {kind: shore inlet, voltage: 230 V AC, rating: 16 A}\n"
        "  K: {kind: changeover, throws: [shore, inverter], poles: 2}\n"
        "  sockets: {kind: outlet, rating: 10 A}",
        "  first: {from: inlet, to: K.shore, run: [1 m via cabin], cable: flex}\n"
        "  second: {from: K, to: sockets, run: [2 m via cabin], cable: flex}",
    )
    assert graph.systems == {"first": "ac", "second": "ac"}


def test_the_chassis_contact_of_the_plug_bonds_whatever_its_line_is_said_to_be_for() -> None:
    coupling = "  plug: {kind: vehicle coupling}"
    for duty in ("bonding", "unknown"):
        line = f"  bond: {{from: plug.chassis, to: chassis.drawbar, run: [0.5 m via cabin], cable: red, duty: {duty}}}"
        bond = network(coupling, line).conductor("bond", "bonding")
        assert bond is not None, duty
        assert (bond.start, bond.end) == ("plug:chassis", "chassis")
