"""The way home from each circuit against the fewest circuits found by trying every way."""

from __future__ import annotations

from itertools import permutations

from checker.circuit.elements import LIVE
from checker.circuit.homeward import homes, way_home
from checker.circuit.network import Network
from tests.benchmarks.generator import coach
from tests.circuit.designs import battery, fuse, lamp, network

BAR = "  {name}: {{kind: bar, poles: [+, -], rating: 200 A}}"
CONVERTER = (
    "  con: {kind: dc converter, both ways: true, "
    "sides: {low: {nominal: 12 V, current: 50 A}, high: {nominal: 48 V, current: 20 A}}}"
)


def wire(name: str, start: str, end: str, *devices: str) -> str:
    run = ", ".join(["1 m via cabin", *devices, "1 m via cabin"])
    return f"  {name}: {{from: {start}, to: {end}, run: [{run}], cable: red, return: same}}"


def home_of(graph: Network, circuit: str) -> list[str]:
    conductor = graph.conductor(circuit, LIVE)
    assert conductor is not None
    return way_home(graph, homes(graph), conductor)


def test_feeders_are_named_nearest_first() -> None:
    graph = network(
        "\n".join([battery("b"), BAR.format(name="x"), BAR.format(name="y"), fuse("f", 50), lamp("l")]),
        "\n".join([wire("one", "b", "x", "f"), wire("two", "x", "y"), wire("three", "y", "l")]),
    )
    assert home_of(graph, "one") == []
    assert home_of(graph, "two") == ["one"]
    assert home_of(graph, "three") == ["two", "one"]


def test_the_way_with_fewer_circuits_is_taken_however_many_devices_stand_in_it() -> None:
    fuses = [f"f{number}" for number in range(5)]
    graph = network(
        "\n".join(
            [
                battery("b"),
                *(BAR.format(name=name) for name in ("x", "y", "z")),
                *(fuse(name, 50) for name in fuses),
                lamp("l"),
            ]
        ),
        "\n".join(
            [
                wire("p", "b", "x"),
                wire("q", "x", "y"),
                wire("r", "y", "z"),
                wire("direct", "b", "z", *fuses),
                wire("end", "z", "l"),
            ]
        ),
    )
    assert home_of(graph, "end") == ["direct"]


def test_a_circuit_is_not_its_own_feeder_when_a_source_stands_at_its_far_end() -> None:
    graph = network(
        "\n".join([battery("b"), BAR.format(name="x"), CONVERTER]),
        "\n".join([wire("main", "b", "x"), wire("low", "x", "con.low")]),
    )
    assert home_of(graph, "low") == ["main"]


def test_an_inverter_that_passes_shore_power_on_is_no_way_back_to_it() -> None:
    inverter = (
        "  inv: {kind: inverter-charger, power: 3 kVA, dc: {nominal: 12 V}, ac: {voltage: 230 V}, "
        "transfer: {backfeed: possible}}"
    )
    inlet = "  inlet: {kind: shore inlet, voltage: 230 V AC, rating: 15 A}"
    heater = "  heater: {kind: load, power: 800 W, voltage: 207..253 V}"
    joint = "  joint: {kind: terminal block, system: mains}"
    graph = network(
        "\n".join([inverter, heater, joint, inlet]),
        "\n".join(
            f"  {name}: {{from: {start}, to: {end}, run: [1 m via cabin], cable: flex}}"
            for name, start, end in (
                ("to-inverter", "joint", "inv.ac-in"),
                ("shore", "inlet", "joint"),
                ("heating", "joint", "heater"),
            )
        ),
    )
    assert home_of(graph, "heating") == ["shore"]


def test_no_way_is_shorter_than_the_one_taken() -> None:
    """Every order of up to three feeders is tried by hand on a made-up coach."""
    from checker.circuit.build import build
    from checker.reading import read_text

    graph = build(read_text(coach(40)))
    at_home = {node for node, home in homes(graph).items() if home is None}
    ends = {
        conductor.circuit.name: {conductor.start, conductor.end}
        for conductor in graph.conductors
        if conductor.role == LIVE
    }
    for name in list(ends)[:12]:
        found = home_of(graph, name)
        conductor = graph.conductor(name, LIVE)
        assert conductor is not None
        others = [one for one in ends if one != name]
        for length in range(min(len(found), 3)):
            for way in permutations(others, length):
                assert not _leads_home(way, conductor.start, ends, at_home), (name, way)


def _leads_home(way: tuple[str, ...], start: str, ends: dict[str, set[str]], at_home: set[str]) -> bool:
    """Whether following the circuits end to end, with nothing but the circuits, gets to a source."""
    node = start
    for name in way:
        if node not in ends[name]:
            return False
        (node,) = ends[name] - {node}
    return node in at_home
