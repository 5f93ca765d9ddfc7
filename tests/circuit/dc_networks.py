"""Networks for the tests of the solver: hand-made ones, random ones, and a dense solution by numpy to compare with."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from hypothesis import strategies as st

from checker.circuit.dc_elements import (
    Branch,
    Converter,
    CurrentLoad,
    Diode,
    Element,
    Emf,
    PowerLoad,
    ResistanceLoad,
    Side,
    Storage,
    Supply,
)


def battery(volts: float = 13.0, ohm: float = 0.01, name: str = "bank", node: str = "b") -> Emf:
    """A battery between a node and the ground."""
    return Emf(name, node, "gnd", volts, ohm)


def dense(elements: Sequence[Element]) -> dict[str, float]:
    """Node voltages of a network of resistances, electromotive forces and constant currents, by dense equations."""
    names = sorted({node for element in elements for node in element.ends} - {"gnd"})
    at = {name: i for i, name in enumerate(names)}
    matrix, right = np.zeros((len(names), len(names))), np.zeros(len(names))
    for e in elements:
        if isinstance(e, Branch):
            plus, minus, siemens, amps = e.a, e.b, 1.0 / e.ohm, 0.0
        elif isinstance(e, Emf):
            plus, minus, siemens, amps = e.plus, e.minus, 1.0 / e.ohm, e.emf_v / e.ohm
        elif isinstance(e, ResistanceLoad):
            plus, minus, siemens, amps = e.plus, e.minus, 1.0 / e.ohm, 0.0
        else:
            assert isinstance(e, CurrentLoad)
            plus, minus, siemens, amps = e.plus, e.minus, 0.0, -e.amps
        for node, other, sign in ((plus, minus, 1.0), (minus, plus, -1.0)):
            if node != "gnd":
                matrix[at[node], at[node]] += siemens
                right[at[node]] += sign * amps
                if other != "gnd":
                    matrix[at[node], at[other]] -= siemens
    return dict(zip(names, np.linalg.solve(matrix, right), strict=True))


def _milliohm(low: int, high: int) -> st.SearchStrategy[float]:
    return st.integers(low, high).map(lambda one: one * 1e-3)


@st.composite
def linear_networks(draw: st.DrawFn) -> list[Element]:
    """A tree with some links across it, batteries, and loads of constant resistance and current."""
    count = draw(st.integers(2, 14))
    elements: list[Element] = [battery(draw(st.integers(100, 600)) / 10.0, draw(_milliohm(1, 50)), "bank", "n0")]
    for i in range(1, count):
        elements.append(Branch(f"tree{i}", f"n{draw(st.integers(0, i - 1))}", f"n{i}", draw(_milliohm(1, 200))))
    for i in range(draw(st.integers(0, 4))):
        a, b = draw(st.integers(0, count - 1)), draw(st.integers(0, count - 1))
        if a != b:
            elements.append(Branch(f"link{i}", f"n{a}", f"n{b}", draw(_milliohm(1, 200))))
    for i in range(draw(st.integers(0, 4))):
        node = f"n{draw(st.integers(0, count - 1))}"
        elements.append(ResistanceLoad(f"r{i}", node, "gnd", draw(st.integers(1, 50)) / 5.0))
        elements.append(CurrentLoad(f"i{i}", node, "gnd", draw(st.integers(0, 40)) / 4.0))
    return elements


@st.composite
def vehicles(draw: st.DrawFn) -> list[Element]:
    """A 12 V tree with battery and alternator, a 48 V tree with a bank, a converter between, loads of every kind."""
    elements: list[Element] = [
        battery(draw(st.integers(118, 128)) / 10.0, draw(_milliohm(3, 12)), "start", "l0"),
        battery(draw(st.integers(490, 540)) / 10.0, draw(_milliohm(2, 10)), "house", "h0"),
        Supply("alternator", "l1", "gnd", 14.4, draw(st.integers(0, 250)), droop_ohm=draw(_milliohm(1, 10))),
    ]
    for side, ohms in (("l", (1, 8)), ("h", (1, 30))):
        for i in range(1, draw(st.integers(2, 6)) + 1):
            before = f"{side}{draw(st.integers(0, i - 1))}"
            elements.append(Branch(f"{side}t{i}", before, f"{side}{i}", draw(_milliohm(*ohms))))
        last = i
        if draw(st.booleans()):
            elements.append(Branch(f"{side}x", f"{side}0", f"{side}{last}", 0.0 if draw(st.booleans()) else 0.01))
        watts = draw(st.integers(0, 300)) if side == "l" else draw(st.integers(0, 3000))
        elements.append(PowerLoad(f"{side}load", f"{side}{last}", "gnd", float(watts)))
        ohm = draw(st.integers(1, 40)) * (0.5 if side == "l" else 4.0)
        elements.append(ResistanceLoad(f"{side}heater", f"{side}1", "gnd", ohm))
    low, high = Side("l1", "gnd"), Side("h1", "gnd")
    if draw(st.booleans()):
        into, out, set_v, hold = low, high, 56.0, draw(st.sampled_from([None, 13.2]))
        limit_in, limit_out = 200.0, draw(st.integers(5, 55))
    else:
        into, out, set_v, hold = high, low, 13.4, None
        limit_in, limit_out = 55.0, draw(st.integers(5, 200))
    elements.append(
        Converter(
            "converter", into, out, 0.94, set_v=set_v, limit_in_a=limit_in, limit_out_a=float(limit_out), hold_v=hold,
            idle_w=6.0,
        )
    )  # fmt: skip
    return elements


@st.composite
def fitouts(draw: st.DrawFn) -> list[Element]:
    """Three voltages, each a tree with batteries of both ways, sources and loads of every kind; up to four converters
    between any two of them, in either direction and at whatever limit they come to."""
    elements: list[Element] = []
    nominal = {"l": 12.0, "m": 24.0, "h": 48.0}
    for side, volts in nominal.items():
        count = draw(st.integers(2, 5))
        for i in range(1, count):
            before = f"{side}{draw(st.integers(0, i - 1))}"
            elements.append(Branch(f"{side}t{i}", before, f"{side}{i}", draw(_milliohm(0, 9)) * volts / 12.0))
        last = f"{side}{count - 1}"
        emf, ohm = volts * draw(st.integers(100, 112)) / 100.0, draw(_milliohm(2, 12)) * volts / 12.0
        elements.append(Storage(f"{side}bank", f"{side}0", "gnd", emf, ohm, ohm * draw(st.integers(1, 20))))
        if draw(st.booleans()):
            watts = draw(st.sampled_from([float("inf"), 30.0, 200.0]))
            limit = float(draw(st.integers(0, 90)))
            elements.append(Supply(f"{side}sun", last, "gnd", volts * 1.18, limit, droop_ohm=0.004, watts=watts))
        elements.append(PowerLoad(f"{side}load", last, "gnd", float(draw(st.integers(0, 250)))))
        elements.append(CurrentLoad(f"{side}fan", f"{side}1", "gnd", draw(st.integers(0, 30)) / 4.0))
        elements.append(ResistanceLoad(f"{side}heater", last, "gnd", volts * draw(st.integers(1, 40)) / 10.0))
        if draw(st.booleans()):
            elements.append(Diode(f"{side}diode", "l0" if side == "h" else f"{side}0", last, 0.5, 0.01))
    for i in range(draw(st.integers(0, 4))):
        a, b = draw(st.permutations(list(nominal)))[:2]
        set_v = nominal[b] * draw(st.integers(100, 118)) / 100.0
        elements.append(
            Converter(
                f"con{i}", Side(f"{a}1", "gnd"), Side(f"{b}1", "gnd"), draw(st.integers(80, 100)) / 100.0,
                set_v=set_v, limit_in_a=float(draw(st.integers(1, 60))), limit_out_a=float(draw(st.integers(1, 40))),
                hold_v=draw(st.sampled_from([None, nominal[a] * 1.02])), idle_w=float(draw(st.integers(0, 9))),
            )
        )  # fmt: skip
    return elements
