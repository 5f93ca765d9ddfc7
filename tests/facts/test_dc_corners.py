"""Lowest and highest of a prediction against values drawn at random: in the example coach, and in random networks."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache
from random import Random

import pytest

from checker.circuit.dc_elements import (
    Branch,
    Converter,
    CurrentLoad,
    Element,
    PowerLoad,
    Side,
    Storage,
    Supply,
)
from checker.circuit.dc_solution import NoSolution, Solution
from checker.circuit.dc_solve import solve
from checker.circuit.elements import CHASSIS
from checker.facts.dc_amounts import Amount, Case, exactly
from checker.facts.dc_corners import Corners
from checker.facts.dc_plan import Heat, Maker
from checker.facts.instruments import VOLTAGE, Spot, drop_spot, names_on, predicted, spots_at
from checker.facts.operating_point import OperatingPoint, Predicted, solve_case
from tests.facts.dc_designs import point_of as point_in
from tests.facts.dc_designs import van
from tests.facts.drawn import Drawn
from tests.facts.test_operating_point import coach, point_of

DRAWS = 100
SLACK = 1e-6  # of the value: rounding of the solver


def every_spot(point: OperatingPoint) -> list[Spot]:
    found = []
    for name in names_on(point):
        found += spots_at(point, name)
        loss = drop_spot(point, name) if name in point.plan.facts.network.by_circuit else None
        found += [loss] if loss is not None else []
    return found


def outside(point: OperatingPoint, draws: int, seed: int) -> tuple[int, list[str]]:
    """How many drawn values were compared, and those that lie outside of what is predicted."""
    told = [(one, found) for one in every_spot(point) if isinstance(found := predicted(point, one), Predicted)]
    random, compared, wrong = Random(seed), 0, []
    for draw in range(draws):
        solved = solve_case(point.plan, Drawn(random, ends=bool(draw % 2)))
        if isinstance(solved, NoSolution):
            continue
        for one, found in told:
            value = one.ask(solved)
            if value is None:
                continue
            value = value if one.quantity == VOLTAGE else abs(value)
            slack = SLACK * max(1.0, abs(value))
            compared += 1
            if not found.low - slack <= value <= found.high + slack:
                wrong.append(f"{one.quantity} at {one.at}: {value:g} outside {found.low:g} to {found.high:g}")
    return compared, wrong


@pytest.mark.parametrize("mode", ["driving", "idling", "shore", "free-camp", "bypass", "slide-out", "stored"])
def test_nothing_drawn_in_the_coach_reads_lower_or_higher_than_predicted(mode: str) -> None:
    s = coach().subject("mode", mode)
    assert s is not None
    compared, wrong = outside(point_of(s), DRAWS, seed=len(mode))
    assert compared > DRAWS * 50
    assert wrong == []


def test_every_mode_of_the_coach_is_drawn() -> None:
    assert {s.id for s in coach().subjects("mode")} == {
        "driving", "idling", "shore", "free-camp", "bypass", "slide-out", "stored",
    }  # fmt: skip


@pytest.mark.parametrize("mode", ["driving", "idle", "boiling", "sunny", "shore", "off"])
def test_nothing_drawn_in_a_van_reads_lower_or_higher_than_predicted(mode: str) -> None:
    compared, wrong = outside(point_in(van(), mode), DRAWS, seed=7)
    assert compared >= DRAWS * 15
    assert wrong == []


# --- random small networks


def wide(random: Random, low: float, high: float) -> Amount:
    a, b = sorted(random.uniform(low, high) for _ in range(2))
    return Amount(0.5 * (a + b), a, b)


def branch(name: str, a: str, b: str, ohm: Amount) -> Maker:
    return lambda case, heat: Branch(name, a, b, ohm.of(case, raises=False))


def battery(name: str, node: str, emf: Amount, ohm: Amount, up: Amount) -> Maker:
    def make(case: Case, heat: Heat) -> Element:
        inner = ohm.of(case, raises=False)
        return Storage(name, node, CHASSIS, emf.of(case, raises=True), inner, inner + up.of(case, raises=True))

    return make


def load(name: str, node: str, much: Amount, *, power: bool) -> Maker:
    def make(case: Case, heat: Heat) -> Element:
        drawn = much.of(case, raises=False)
        return PowerLoad(name, node, CHASSIS, drawn) if power else CurrentLoad(name, node, CHASSIS, drawn)

    return make


def supply(name: str, node: str, set_v: Amount, limit: Amount) -> Maker:
    def make(case: Case, heat: Heat) -> Element:
        volts, amps = set_v.of(case, raises=True), limit.of(case, raises=True)
        return Supply(name, node, CHASSIS, volts, amps, droop_ohm=0.1 / limit.likely)

    return make


def converter(low: str, high: str, share: Amount, set_v: Amount, limit: Amount) -> Maker:
    def make(case: Case, heat: Heat) -> Element:
        efficiency, volts = share.of(case, raises=True), set_v.of(case, raises=True)
        return Converter(
            "converter", Side(low, CHASSIS), Side(high, CHASSIS), efficiency, set_v=volts,
            limit_out_a=limit.of(case, raises=True), idle_w=5.0, droop_ohm=0.1 / limit.likely,
        )  # fmt: skip

    return make


def network(random: Random) -> list[Maker]:
    """A 12 V net with a link across, two batteries and an alternator, and a converter to a bank with a load at 48 V."""
    makers = [
        battery("start", "n0", wide(random, 12.2, 12.9), wide(random, 4e-3, 2e-2), wide(random, 0.0, 0.05)),
        supply("alternator", "n1", wide(random, 13.8, 14.6), wide(random, 40.0, 150.0)),
    ]
    count = random.randint(3, 7)
    for i in range(1, count):
        makers.append(branch(f"w{i}", f"n{random.randrange(i)}", f"n{i}", wide(random, 5e-4, 1e-2)))
    makers.append(branch("across", "n0", f"n{count - 1}", wide(random, 1e-3, 2e-2)))
    for i in range(random.randint(1, 3)):
        power = random.random() < 0.7
        much = wide(random, 10.0, 200.0) if power else wide(random, 1.0, 15.0)
        makers.append(load(f"load{i}", f"n{random.randrange(count)}", much, power=power))
    if random.random() < 0.5:
        node = f"n{random.randrange(count)}"
        makers.append(battery("house", node, wide(random, 12.6, 13.3), exactly(5e-3), wide(random, 0.0, 0.02)))
    if random.random() < 0.7:
        makers.append(converter(f"n{count - 1}", "h0", wide(random, 0.85, 0.95), wide(random, 52, 56), exactly(20.0)))
        makers.append(battery("bank", "h1", wide(random, 50.0, 53.0), wide(random, 5e-3, 2e-2), wide(random, 0.0, 0.1)))
        makers.append(branch("h", "h0", "h1", wide(random, 1e-3, 1e-2)))
        makers.append(load("inverter", "h1", wide(random, 100.0, 900.0), power=True))
    return makers


def solved(makers: Sequence[Maker], case: Case) -> Solution | NoSolution:
    return solve([one for maker in makers if (one := maker(case, {})) is not None], ground=CHASSIS)


Readings = dict[str, Callable[[Solution], float | None]]


@cache
def made(seed: int) -> tuple[list[Maker], Corners, Readings]:
    makers = network(Random(seed))
    likely, low, high = (solved(makers, case) for case in ("likely", "low", "high"))
    assert isinstance(likely, Solution)
    assert isinstance(low, Solution)
    assert isinstance(high, Solution)

    def volts(node: str) -> Callable[[Solution], float | None]:
        return lambda found: found.between(node, CHASSIS)

    def amps(name: str) -> Callable[[Solution], float | None]:
        return lambda found: found.flows[name].amps

    readings = {f"volts at {node}": volts(node) for node in likely.volts if node != CHASSIS}
    readings |= {f"amps of {name}": amps(name) for name in likely.flows}
    return makers, Corners(makers, {}, likely, (low, high)), readings


def test_next_to_nothing_drawn_in_random_networks_reads_lower_or_higher() -> None:
    """Sources that come on to their limits by turns can hide a corner: at most one end in a hundred is missed."""
    ends = 0
    missed: dict[tuple[int, str], float] = {}
    for seed in range(16):
        makers, corners, readings = made(seed)
        ranges = {name: corners.range_of(ask, frozenset(), 1e-3) for name, ask in readings.items()}
        random = Random(seed)
        ends += 2 * len(ranges)
        for draw in range(2 * DRAWS):
            found = solved(makers, Drawn(random, ends=bool(draw % 2)))
            assert isinstance(found, Solution)
            for name, ask in readings.items():
                value, told = ask(found), ranges[name]
                assert told is not None
                assert not isinstance(told, NoSolution)
                assert value is not None
                beyond = max(told[0] - value, value - told[1])
                if beyond > SLACK * max(1.0, abs(value)):
                    share = beyond / (told[1] - told[0])
                    missed[seed, name] = max(share, missed.get((seed, name), 0.0))
    assert ends > 400
    assert len(missed) <= 0.01 * ends, missed


def test_a_range_does_not_hang_on_what_was_asked_before() -> None:
    makers, corners, readings = made(3)
    for ask in readings.values():
        corners.range_of(ask, frozenset(), 1e-3)
    likely, low, high = (solved(makers, case) for case in ("likely", "low", "high"))
    assert isinstance(likely, Solution)
    assert isinstance(low, Solution)
    assert isinstance(high, Solution)
    for ask in list(readings.values())[-3:]:
        fresh = Corners(makers, {}, likely, (low, high)).range_of(ask, frozenset(), 1e-3)
        assert fresh == pytest.approx(corners.range_of(ask, frozenset(), 1e-3), rel=1e-6)


def test_the_ends_of_a_range_are_not_wider_than_drawn_corners_call_for() -> None:
    """What is printed would be worthless if it were safe by being wide: half of it at least is really reached."""
    s = coach().subject("mode", "idling")
    assert s is not None
    point = point_of(s)
    for at in ("bar-48", "converter.low", "alternator"):
        one = spots_at(point, at)[0]
        told = predicted(point, one)
        assert isinstance(told, Predicted)
        corners = [solve_case(point.plan, Drawn(Random(seed), ends=True)) for seed in range(150)]
        values = [value for found in corners if isinstance(found, Solution) and (value := one.ask(found)) is not None]
        assert max(values) - min(values) > 0.5 * (told.high - told.low)
