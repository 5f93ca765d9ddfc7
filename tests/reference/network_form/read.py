"""Reads one solved network and builds our elements from it.

Whatever the form holds that is not known here (a kind of element, a key of an element) is named in `unknown`: such a
network is not covered, and counts neither as agreeing nor as differing.
"""

from __future__ import annotations

from math import inf
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from checker.circuit.dc_elements import (
    FLOOR_V,
    Branch,
    Capacitor,
    Converter,
    CurrentLoad,
    Element,
    Emf,
    Inductor,
    PowerLoad,
    ResistanceLoad,
    Side,
    Storage,
    Supply,
)

TALK = {"id", "role", "why", "note", "title", "comment", "name"}  # keys that only people read
GROUND = "gnd"


class Published(NamedTuple):
    """One file: `elements` by our names, `unknown` what cannot be built, `data` the file as it stands."""

    id: str
    kind: str
    elements: tuple[Element, ...]
    unknown: tuple[str, ...]
    data: dict[str, Any]


def read_network(path: Path) -> Published:
    """Read one file. Raises ValueError when it is not of the form at all."""
    data = yaml.safe_load(path.read_text(encoding="utf-8"))
    if not isinstance(data, dict) or not isinstance(data.get("network"), dict):
        raise ValueError(f"{path}: not a solved network: there is no record 'network'")
    elements: list[Element] = []
    unknown: list[str] = []
    for section, entries in data["network"].items():
        build = BUILDERS.get(section)
        if build is None:
            unknown.append(f"elements of the kind {section}")
            continue
        for entry in entries or ():
            try:
                elements.append(build(Fields(entry)))
            except UnknownKeyError as error:
                unknown.append(f"{section}: {error}")
    name = str(data.get("id", path.stem))
    return Published(name, str(data.get("kind", "steady")), tuple(elements), tuple(unknown), data)


class UnknownKeyError(Exception):
    """An element has a key that is not known, or lacks one that is needed."""


class Fields:
    """The keys of one element; `done` complains about those nobody asked for."""

    def __init__(self, entry: dict[str, Any]) -> None:
        self.entry = entry
        self.asked = set(TALK)

    @property
    def id(self) -> str:
        return str(self.entry.get("id", ""))

    def node(self, key: str, otherwise: str | None = None) -> str:
        self.asked.add(key)
        found = self.entry.get(key, otherwise)
        if found is None:
            raise UnknownKeyError(f"{self.id} does not say {key}")
        return str(found)

    def number(self, key: str, otherwise: float | None = None) -> float:
        self.asked.add(key)
        found = self.entry.get(key, otherwise)
        if found is None:
            raise UnknownKeyError(f"{self.id} does not say {key}")
        return float(found)

    def has(self, key: str) -> bool:
        return key in self.entry

    def done(self, element: Element) -> Element:
        left = sorted(set(self.entry) - self.asked)
        if left:
            raise UnknownKeyError(f"{self.id} has the unknown {', '.join(left)}")
        return element


def _battery(f: Fields) -> Element:
    plus, minus, emf = f.node("plus"), f.node("minus", GROUND), f.number("emf_V")
    ohm = f.number("internal_resistance_ohm", 0.0)
    if f.has("charge_resistance_ohm"):
        return f.done(Storage(f.id, plus, minus, emf, ohm, f.number("charge_resistance_ohm")))
    return f.done(Emf(f.id, plus, minus, emf, ohm))


def _branch(f: Fields) -> Element:
    return f.done(Branch(f.id, f.node("from"), f.node("to"), f.number("resistance_ohm")))


def _load(f: Fields) -> Element:
    plus, minus = f.node("plus"), f.node("minus", GROUND)
    if f.has("constant_power_W"):
        return f.done(PowerLoad(f.id, plus, minus, f.number("constant_power_W"), floor_v=FLOOR_V))
    if f.has("constant_current_A"):
        return f.done(CurrentLoad(f.id, plus, minus, f.number("constant_current_A")))
    return f.done(ResistanceLoad(f.id, plus, minus, f.number("resistance_ohm")))


def _converter(f: Fields) -> Element:
    into = Side(f.node("in_plus"), f.node("in_minus", GROUND))
    out = Side(f.node("out_plus"), f.node("out_minus", GROUND))
    efficiency = f.number("efficiency")
    if f.has("output_power_W"):
        return f.done(Converter(f.id, into, out, efficiency, watts=f.number("output_power_W")))
    return f.done(
        Converter(
            f.id, into, out, efficiency, set_v=f.number("set_voltage_V"),
            droop_ohm=f.number("regulation_resistance_ohm"), limit_in_a=f.number("input_limit_A", inf),
            limit_out_a=f.number("output_limit_A", inf), idle_w=f.number("idle_W", 0.0),
        )
    )  # fmt: skip


def _limited(f: Fields) -> Element:
    plus, minus = f.node("plus"), f.node("minus", GROUND)
    volts, amps, watts = f.number("set_voltage_V"), f.number("current_limit_A"), f.number("greatest_power_W", inf)
    droop = f.number("regulation_resistance_ohm")
    return f.done(Supply(f.id, plus, minus, volts, amps, droop_ohm=droop, watts=watts))


def _capacitor(f: Fields) -> Element:
    plus, minus = f.node("plus"), f.node("minus", GROUND)
    return f.done(Capacitor(f.id, plus, minus, f.number("capacitance_F"), f.number("initial_V", 0.0)))


def _inductor(f: Fields) -> Element:
    plus, minus = (f.node("from"), f.node("to")) if f.has("from") else (f.node("plus"), f.node("minus", GROUND))
    return f.done(Inductor(f.id, plus, minus, f.number("inductance_H"), f.number("initial_A", 0.0)))


BUILDERS = {
    "batteries": _battery,
    "branches": _branch,
    "loads": _load,
    "converters": _converter,
    "limited_sources": _limited,
    "capacitors": _capacitor,
    "inductors": _inductor,
}
