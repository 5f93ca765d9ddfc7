"""A small design that reads, and ways to spoil it."""

from __future__ import annotations

from checker.design.model import Design
from checker.reading import Problem, ReadingErrors, read_text

SMALL = """\
fitout: 1
title: small
code: intl
vehicle: {kind: campervan}
cables:
  one: {size: 16 mm2, cores: 1}
  two: {size: 6 mm2, cores: 2}
  three: {size: 2.5 mm2, cores: 3}
parts:
  strip: {kind: fuse, family: bolt-down strip, rating: 80 A, voltage: 58 V DC}
  cell: {kind: battery, nominal: 12 V, capacity: 50 Ah, bms: {charge limit: 50 A, alarm: true},
         terminals: {+: {stud: M8, torque: 9 N m}}}
places:
  cabin: {}
  bench: {inside: cabin}
passes:
  hole: {between: [cabin, bench]}
equipment:
  house: {kind: battery, nominal: 12 V, place: cabin}
  F1: {kind: fuse, family: class T, rating: 100 A}
  Q1: {kind: breaker, family: C curve, rating: 16 A, voltage: 230 V AC}
  K1: {kind: changeover, throws: [shore, inverter], rest: shore}
  bar: {kind: bar}
  lamp: {kind: lamp, power: 20 W}
  board: {kind: board, family: blade, voltage: 32 V DC, place: cabin, ways: {lights: 10 A, spare: unknown}}
  inverter: {kind: inverter, power: 2 kVA}
joints:
  tee: {kind: joint}
circuits:
  main: {from: house, to: bar, run: [0.2 m via cabin, F1, 1 m via bench, hole], cable: one, return: same}
  light: {from: bar, to: lamp, run: [3 m via cabin], cable: two}
modes:
  parked: {running: {lamp: 20 W}}
"""


def read(*edits: tuple[str, str]) -> Design:
    """The small design with `edits`."""
    return read_text(SMALL, "small", edits)


def problems(*edits: tuple[str, str], text: str = SMALL) -> tuple[Problem, ...]:
    """What the reader finds wrong with `text` after `edits`; nothing when it reads."""
    try:
        read_text(text, "small", edits)
    except ReadingErrors as errors:
        return errors.problems
    return ()


def only(*edits: tuple[str, str], text: str = SMALL) -> Problem:
    """The one problem there is."""
    found = problems(*edits, text=text)
    assert len(found) == 1, found
    return found[0]
