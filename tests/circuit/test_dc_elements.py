from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.circuit.dc_converter import LEAK_S
from checker.circuit.dc_elements import Converter, Emf, PowerLoad, ResistanceLoad, Side, Supply, TwoPole

BIT = 1e-6
POLES: list[TwoPole] = [
    Emf("e", "p", "m", 12.8, 0.01),
    ResistanceLoad("r", "p", "m", 2.0),
    PowerLoad("p", "p", "m", 300.0),
    Supply("s", "p", "m", 14.4, 60.0, droop_ohm=0.05),
    Supply("w", "p", "m", 14.4, 60.0, droop_ohm=0.05, watts=500.0),
]
VOLTS = st.floats(0.5, 60.0)


def converter(**keys: float | None) -> Converter:
    given_keys = {"set_v": 13.4, "limit_out_a": 80.0, "limit_in_a": 40.0, "idle_w": 6.0, **keys}
    return Converter("c", Side("a", "b"), Side("c", "d"), 0.94, droop_ohm=0.05, hold_ohm=0.05, **given_keys)  # type: ignore[arg-type]


CONVERTERS = [
    converter(),
    converter(hold_v=13.2),
    converter(watts=600.0),
    converter(watts=600.0, set_v=None),
    converter(hold_v=13.2, limit_in_a=10.0, set_v=56.0),
]


@pytest.mark.parametrize("pole", POLES, ids=lambda one: one.name)
@given(volts=VOLTS)
def test_the_slope_of_every_element_is_that_of_its_current(pole: TwoPole, volts: float) -> None:
    amps, slope = pole.flow(volts, 1.0)
    up, down = pole.flow(volts + BIT, 1.0)[0], pole.flow(volts - BIT, 1.0)[0]
    sides = ((up - amps) / BIT, (amps - down) / BIT)  # at a bend the slope is that of one side
    assert any(slope == pytest.approx(one, rel=1e-3, abs=1e-3) for one in sides)


@pytest.mark.parametrize("one", CONVERTERS)
@given(volts_in=VOLTS, volts_out=VOLTS)
def test_the_slopes_of_a_converter_are_those_of_its_currents(one: Converter, volts_in: float, volts_out: float) -> None:
    here = one.transfer(volts_in, volts_out, 1.0)
    for by_in, by_out in ((BIT, 0.0), (0.0, BIT)):
        up = one.transfer(volts_in + by_in, volts_out + by_out, 1.0)
        down = one.transfer(volts_in - by_in, volts_out - by_out, 1.0)
        for amps, more, less, slope in (
            (here.amps_in, up.amps_in, down.amps_in, here.in_by_in if by_in else here.in_by_out),
            (here.amps_out, up.amps_out, down.amps_out, here.out_by_in if by_in else here.out_by_out),
        ):
            sides = ((more - amps) / BIT, (amps - less) / BIT)
            assert any(slope == pytest.approx(side, rel=1e-3, abs=1e-2) for side in sides)


@pytest.mark.parametrize("one", CONVERTERS)
@given(volts_in=st.floats(5.0, 60.0), volts_out=st.floats(5.0, 60.0))
def test_a_converter_loses_power_and_never_makes_it(one: Converter, volts_in: float, volts_out: float) -> None:
    moved = one.transfer(volts_in, volts_out, 1.0)
    leak = LEAK_S * max(0.0, volts_out - (one.set_v or volts_out))  # at rest it lets that much back
    given = volts_out * (moved.amps_out + leak)
    assert given == pytest.approx(0.94 * (volts_in * moved.amps_in - 6.0), abs=1e-6)
    assert -1e-12 <= moved.amps_out + leak <= one.limit_out_a + 1e-9


def test_a_converter_names_the_limit_it_works_at() -> None:
    one = converter(hold_v=11.0, set_v=56.0)
    assert one.transfer(12.5, 52.0, 1.0).state == "held back so that its input keeps its voltage"
    assert one.transfer(14.0, 52.0, 1.0).state == "at its input current limit"
    assert one.transfer(50.0, 11.0, 1.0).state == "at its output current limit"
    assert one.transfer(14.0, 55.99, 1.0).state == "at its set voltage"
    assert one.transfer(14.0, 57.0, 1.0).state == "resting"
    assert converter(watts=100.0).transfer(50.0, 11.0, 1.0).state == "at its set power"


def test_a_load_of_constant_power_draws_nothing_at_no_voltage() -> None:
    assert PowerLoad("p", "p", "m", 300.0).flow(0.0, 1.0)[0] == 0.0
