"""Small direct-current designs for the tests of operating points, readings and causes."""

from __future__ import annotations

import checker.facts  # noqa: F401  fills the catalogue
from checker.facts.operating_point import OperatingPoint, Predicted, operating_point
from checker.facts.subject import Facts
from checker.quantities import Unknown
from checker.reading import read_text
from tests.circuit.designs import HEAD

VAN = """
  start: {kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 90 Ah, internal resistance: 5 mΩ,
          purpose: starting}
  gen: {kind: alternator, nominal: 12 V, rating: 150 A, set voltage: 14.2..14.4 V,
        hot output: {800 rpm: 60 A, 2500 rpm: 130 A}}
  house: {kind: battery, chemistry: lithium iron phosphate, nominal: 12 V, cells: 4, capacity: 200 Ah,
          internal resistance: 4 mΩ, purpose: house}
  charger: {kind: dc converter, both ways: false, isolated: false, efficiency: 0.9, idle: 2 W, enabled by: run,
            sides: {low: {nominal: 12 V, current: 50 A}, high: {nominal: 12 V, current: 40 A}},
            settings: {charge voltage: 14.2 V}}
  run: {kind: signal, means: engine running, from: gen.d+}
  wall: {kind: charger, dc: {nominal: 12 V, current: 20 A}, efficiency: 0.88,
         settings: {charge voltage: 14.2 V, float: 13.5 V}}
  inlet: {kind: shore inlet, voltage: 230 V AC, rating: 10 A}
  panel: {kind: solar array, modules: 2, arrangement: 1s2p, power: 100 W each}
  sun: {kind: solar controller, output: {nominal: 12 V, current: 15 A}, efficiency: 0.95,
        settings: {charge voltage: 14.2 V}}
  bus: {kind: bar, poles: [+, -]}
  inverter: {kind: inverter, power: 1 kVA, efficiency: 0.9, no load: 10 W, dc: {nominal: 12 V, voltage: 10.5..16 V}}
  kettle: {kind: load, power: 700 W}
  pump: {kind: motor, running: 6 A}
  F1: {kind: fuse, family: bolt-down strip, rating: 100 A, voltage: 58 V DC, breaking capacity: 5 kA}
  S1: {kind: switch, rating: 200 A}
"""
RUNS = """
  gen-cable: {from: gen.b+, to: start, run: [1 m], cable: red, return: chassis}
  start-neg: {from: start.-, to: chassis, run: [0.3 m], cable: red, duty: bonding}
  in: {from: start, to: charger.low, run: [2 m, F1, 1 m], cable: red, return: same}
  out: {from: charger.high, to: bus, run: [1 m], cable: red, return: same}
  house-main: {from: house, to: bus, run: [0.5 m, S1, 0.5 m], cable: red, return: same}
  sun-out: {from: sun.battery, to: bus, run: [1 m], cable: red, return: same}
  sun-in: {from: panel, to: sun.pv, run: [4 m], cable: red, return: same}
  wall-out: {from: wall.dc, to: bus, run: [1 m], cable: red, return: same}
  wall-in: {from: inlet, to: wall.ac, run: [2 m], cable: flex}
  inverter-feed: {from: bus, to: inverter.dc, run: [0.6 m], cable: red, return: same}
  kettle-feed: {from: inverter.ac, to: kettle, run: [3 m], cable: flex}
  pump-feed: {from: bus, to: pump, run: [4 m], cable: red, return: same}
"""
MODES = {
    "driving": "{engine: 2500 rpm, charge: 50 %}",
    "idle": "{engine: idle, charge: 50 %}",
    "boiling": "{inverter: inverting, charge: 80 %, running: {kettle: 700 W, pump: 6 A}}",
    "sunny": "{sun: 800 W/m2, charge: 60 %, running: {pump: 6 A}}",
    "shore": "{shore: 10 A, charge: 50 %}",
    "off": "{set: {S1: open}, running: {pump: 6 A}}",
}


def van(changes: tuple[tuple[str, str], ...] = (), readings: str = "") -> Facts:
    """The van, with some of its text replaced."""
    modes = ", ".join(f"{name}: {text}" for name, text in MODES.items())
    head = HEAD.replace("modes: {rest: {engine: stopped}}", f"modes: {{{modes}}}")
    text = f"{head}\nequipment:{VAN}\ncircuits:{RUNS}\n"
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return Facts(read_text(f"{text}\nreadings:\n{readings}\n" if readings else text))


def point_of(facts: Facts, mode: str) -> OperatingPoint:
    """The operating point of a mode."""
    s = facts.subject("mode", mode)
    assert s is not None
    return operating_point(s, s.item)


def read(facts: Facts, mode: str, at: str, quantity: str) -> Predicted:
    """What should be read."""
    from checker.facts.instruments import predicted, spot

    one = spot(point_of(facts, mode), at, quantity)
    assert not isinstance(one, Unknown), one
    found = predicted(point_of(facts, mode), one)
    assert isinstance(found, Predicted), found
    return found
