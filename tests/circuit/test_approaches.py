"""How far each source reaches before the first device."""

from __future__ import annotations

from checker.circuit.approaches import Approach, approaches
from checker.quantities import Range, Unknown
from tests.circuit.designs import battery, fuse, lamp, network


def found(equipment: list[str], circuits: str) -> dict[str, Approach]:
    graph = network("\n".join(equipment), circuits)
    return {f"{one.conductor.id} from {one.source_name}": one for one in approaches(graph)}


def test_the_length_to_the_first_device_is_summed_along_the_run() -> None:
    reach = found(
        [battery("bank"), fuse("F1", 50), lamp("light")],
        "  feed: {from: bank, to: light, run: [0.2 m, 0.3 m via cabin, F1, 3 m via cabin], cable: red, return: same}",
    )["feed from bank"].reach
    assert reach.has_device is True
    assert reach.length == 0.5
    assert [device.name for device in reach.devices] == ["F1"]


def test_a_run_without_a_device_says_so() -> None:
    reach = found(
        [battery("bank"), lamp("light")],
        "  feed: {from: bank, to: light, run: [3 m via cabin], cable: red, return: same}",
    )["feed from bank"].reach
    assert reach.has_device is False


def test_an_unseen_stretch_may_hide_the_device() -> None:
    reach = found(
        [battery("bank"), lamp("light")],
        "  feed: {from: bank, to: light, run: [unknown, 1 m via cabin], cable: red, return: same}",
    )["feed from bank"].reach
    assert isinstance(reach.has_device, Unknown)


def test_through_a_bar_the_farthest_device_counts_and_every_branch_needs_one() -> None:
    circuits = (
        "  main: {from: bank, to: bar, run: [0.1 m via cabin], cable: red, return: same}\n"
        "  a: {from: bar, to: light, run: [0.2 m via cabin, F1, 1 m via cabin], cable: red, return: same}\n"
        "  b: {from: bar, to: glow, run: [0.6 m via cabin, F2, 1 m via cabin], cable: red, return: same}"
    )
    equipment = [battery("bank"), fuse("F1", 50), fuse("F2", 50), lamp("light"), lamp("glow"), "  bar: {kind: bar}"]
    reach = found(equipment, circuits)["main from bank"].reach
    assert reach.has_device is True
    assert reach.length == 0.7
    reach = found(equipment, circuits.replace(", F2", ""))["main from bank"].reach
    assert reach.has_device is False


def test_each_end_of_a_link_between_two_batteries_is_an_approach() -> None:
    both = found(
        [battery("front"), battery("rear"), fuse("F1", 50)],
        "  link: {from: front, to: rear, run: [0.1 m via cabin, F1, 4 m via cabin], cable: red, return: same}",
    )
    assert both["link from front"].reach.length == 0.1
    assert both["link from rear"].reach.length == 4.0


def test_where_fused_batteries_meet_the_bar_is_a_source_of_its_own() -> None:
    reach = found(
        [
            battery("one"),
            battery("two"),
            fuse("F1", 100),
            fuse("F2", 100),
            fuse("F3", 150),
            lamp("light"),
            "  bar: {kind: bar}",
        ],
        "  a: {from: one, to: bar, run: [0.1 m via cabin, F1, 0.3 m via cabin], cable: red, return: same}\n"
        "  b: {from: two, to: bar, run: [0.1 m via cabin, F2, 0.3 m via cabin], cable: red, return: same}\n"
        "  out: {from: bar, to: light, run: [0.4 m via cabin, F3, 2 m via cabin], cable: red, return: same}",
    )["out from bar"].reach
    assert reach.length == 0.4
    assert [device.name for device in reach.devices] == ["F3"]


def test_a_switch_is_no_protection() -> None:
    reach = found(
        [battery("bank"), "  S: {kind: switch, rating: 100 A}", lamp("light")],
        "  feed: {from: bank, to: light, run: [0.1 m via cabin, S, 3 m via cabin], cable: red, return: same}",
    )["feed from bank"].reach
    assert reach.has_device is False


def test_past_an_unseen_stretch_the_length_is_anything_from_where_it_began() -> None:
    reach = found(
        [battery("bank"), fuse("F1", 50), lamp("light")],
        "  feed: {from: bank, to: light, run: [0.1 m, unknown, 2 m, F1, 1 m via cabin], cable: red, return: same}",
    )["feed from bank"].reach
    assert reach.has_device is True
    assert isinstance(reach.length, Range)
    assert reach.length.low <= 0.1
