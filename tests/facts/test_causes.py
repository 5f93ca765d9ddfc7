"""Faults put into a network on purpose are named when its readings are proved."""

from __future__ import annotations

import pytest

from checker.circuit.dc_elements import Branch, CurrentLoad, Element, Storage, Supply
from checker.circuit.dc_solution import Solution
from checker.circuit.dc_solve import solve
from checker.circuit.elements import CHASSIS
from checker.facts.causes import Cause, Judge, Read, causes
from checker.facts.dc_corners import heat_of
from checker.facts.instruments import predicted, spot, tolerance
from checker.quantities import Unknown
from tests.facts.dc_designs import point_of, van

PLACES = (
    ("bus", "voltage"), ("house", "voltage"), ("house", "current"), ("pump", "current"), ("pump", "voltage"),
    ("sun", "current"),
)  # fmt: skip


def spoilt(mode: str, name: str, change: object) -> list[Cause]:
    """Spoil one element of the likely case, read the instruments, and ask what may explain it."""
    assert callable(change)
    point = point_of(van(), mode)
    sound = point.likely
    assert sound is not None
    elements: list[Element] = point.plan.elements("likely", heat_of(point.plan.wires, sound))
    broken = solve([change(one) if one.name == name else one for one in elements], ground=CHASSIS)
    assert isinstance(broken, Solution)
    reads = []
    for at, quantity in PLACES:
        one = spot(point, at, quantity)
        if isinstance(one, Unknown):
            continue
        shown, value = one.ask(broken), predicted(point, one)
        if shown is not None and not isinstance(value, Unknown):
            reads.append(Read(one, shown, tolerance(quantity, value.likely)))
    judge = Judge(point, reads, sound)
    assert judge.misfit(sound) > 3.0
    assert judge.misfit(broken) == pytest.approx(0.0, abs=1e-9)
    return causes(point, reads)


def test_a_bad_joint_is_found_where_it_is() -> None:
    def worse(one: Branch) -> Branch:
        return Branch(one.name, one.a, one.b, one.ohm + 0.1)

    found = spoilt("sunny", "pump-feed 0", worse)
    assert found[0].fault.sort == "joint"
    assert "pump-feed" in (found[0].fault.where, *found[0].also)
    assert found[0].left < 0.1
    assert "stud to stud" in found[0].fault.tell


def test_a_load_that_draws_twice_as_much_is_found() -> None:
    found = spoilt("sunny", "pump", lambda one: CurrentLoad("pump", one.plus, one.minus, 12.0))
    assert (found[0].fault.sort, found[0].fault.where) == ("load", "pump")
    assert found[0].left < 0.01


def test_a_source_that_gives_nothing_is_found() -> None:
    def dead(one: Supply) -> Supply:
        return Supply(one.name, one.plus, one.minus, one.set_v, 0.0, droop_ohm=one.droop_ohm)

    found = spoilt("sunny", "sun", dead)
    assert (found[0].fault.sort, found[0].fault.where) == ("output", "sun")


def test_a_battery_that_is_nearly_empty_is_found() -> None:
    def empty(one: Storage) -> Storage:
        return Storage(one.name, one.plus, one.minus, one.emf_v - 0.6, one.ohm, one.charge_ohm)

    found = spoilt("boiling", "house", empty)
    assert (found[0].fault.sort, found[0].fault.where) == ("charge", "house")


def test_causes_carry_signs_that_would_tell_them_apart() -> None:
    found = spoilt("sunny", "pump", lambda one: CurrentLoad("pump", one.plus, one.minus, 12.0))
    assert any("with this fault" in sign for cause in found for sign in cause.signs)


def test_without_readings_there_is_nothing_to_explain() -> None:
    assert causes(point_of(van(), "sunny"), []) == []


def test_a_reading_that_agrees_asks_for_no_cause() -> None:
    point = point_of(van(), "sunny")
    one = spot(point, "pump", "current")
    assert not isinstance(one, Unknown)
    assert causes(point, [Read(one, 6.0, 0.5)]) == []
