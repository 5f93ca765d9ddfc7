"""Small designs in text for tests of the graph: a head, then what a test wants of equipment and circuits."""

from __future__ import annotations

from checker.circuit.build import build
from checker.circuit.network import Network
from checker.design.model import Design
from checker.reading import read_text

HEAD = """
fitout: 1
title: Test bench
code: intl
vehicle: {kind: motorhome, ambient: {low: 0 °C, high: 30 °C}, supply: {voltage: 230 V}, site outlet: 16 A}
places: {cabin: {kind: living space, thermal insulation: none}}
cables: {red: {size: 35 mm2, cores: 1, insulation: 105 °C}, flex: {size: 2.5 mm2, cores: 3}}
modes: {rest: {engine: stopped}}
"""


def design(equipment: str, circuits: str, more: str = "") -> Design:
    """A design of some equipment and circuits."""
    return read_text(f"{HEAD}{more}\nequipment:\n{equipment}\ncircuits:\n{circuits}\n")


def network(equipment: str, circuits: str, more: str = "") -> Network:
    """The graph of such a design."""
    return build(design(equipment, circuits, more))


BATTERY = (
    "  {name}: {{kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 100 Ah, internal resistance: 5 mΩ}}"
)
FUSE = "  {name}: {{kind: fuse, family: bolt-down strip, rating: {amps} A, voltage: 58 V DC, breaking capacity: 5 kA}}"
LAMP = "  {name}: {{kind: lamp, power: {watts} W, voltage: 10..15 V}}"


def battery(name: str) -> str:
    """A 12 V battery."""
    return BATTERY.format(name=name)


def fuse(name: str, amps: float) -> str:
    """A fuse."""
    return FUSE.format(name=name, amps=amps)


def lamp(name: str, watts: float = 24) -> str:
    """A lamp."""
    return LAMP.format(name=name, watts=watts)
