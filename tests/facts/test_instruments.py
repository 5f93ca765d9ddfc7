"""What an instrument should read at each name of a design."""

from __future__ import annotations

import pytest

from checker.facts.instruments import drop_spot, names_on, predicted, spot, tolerance
from checker.facts.operating_point import Predicted
from checker.quantities import Unknown
from tests.facts.dc_designs import point_of, read, van


def test_current_into_and_out_of_the_house_battery_adds_up_on_the_bus() -> None:
    facts = van()
    house, sun, pump = (read(facts, "sunny", at, "current").likely for at in ("house", "sun", "pump"))
    assert house == pytest.approx(abs(sun - pump), abs=1e-6)


def test_the_same_current_is_read_at_a_circuit_and_at_the_devices_in_it() -> None:
    facts = van()
    device = read(facts, "sunny", "S1", "current").likely
    assert read(facts, "sunny", "house-main", "current").likely == pytest.approx(device)


def test_the_voltage_of_a_circuit_is_read_at_its_far_end() -> None:
    facts = van()
    end = read(facts, "sunny", "pump", "voltage").likely
    assert read(facts, "sunny", "pump-feed", "voltage").likely == pytest.approx(end)


def test_the_loss_along_a_circuit_is_what_lies_between_its_ends() -> None:
    facts = van()
    point = point_of(facts, "sunny")
    loss = drop_spot(point, "pump-feed")
    assert loss is not None
    found = predicted(point, loss)
    assert isinstance(found, Predicted)
    both = read(facts, "sunny", "bus", "voltage").likely - read(facts, "sunny", "pump", "voltage").likely
    assert found.likely == pytest.approx(both, abs=1e-9)


def test_a_current_has_no_sign_and_may_be_nothing_where_it_can_turn() -> None:
    from tests.facts.test_operating_point import coach

    assert read(coach(), "idling", "house-bank", "current").low == 0.0


@pytest.mark.parametrize(
    ("at", "quantity", "words"),
    [
        ("bus", "current", "bus has no one current"),
        ("charger", "voltage", "not on the direct-current side"),
        ("kettle", "voltage", "not on the direct-current side"),
        ("nowhere", "voltage", "not on the direct-current side"),
    ],
)
def test_what_cannot_be_read_says_why(at: str, quantity: str, words: str) -> None:
    found = spot(point_of(van(), "sunny"), at, quantity)
    assert isinstance(found, Unknown)
    assert words in found.reason


def test_every_name_that_is_offered_can_be_read() -> None:
    point = point_of(van(), "driving")
    names = names_on(point)
    assert {"bus", "house", "charger.low", "charger.high", "S1", "pump-feed", "gen"} <= set(names)
    assert len(names) == len(set(names))
    for name in names:
        assert any(not isinstance(spot(point, name, quantity), Unknown) for quantity in ("voltage", "current"))


def test_the_tolerance_of_an_instrument_grows_with_what_it_reads() -> None:
    assert tolerance("voltage", 50.0) == pytest.approx(0.3)
    assert tolerance("current", -100.0) == pytest.approx(2.5)
