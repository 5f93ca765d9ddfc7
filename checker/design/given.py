"""One value of a design file, with the place it was written and what it rests on."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.quantities import Number

STATED, DEFAULT, MISSING = "stated", "default", "missing"
BASES = ("measured", "read off", "datasheet", "assumed")
"""The words a writer may give as the basis of a value; `stated` stands where none is given."""


class Where(NamedTuple):
    """A place in the design file, both counted from 1."""

    line: int
    column: int


NOWHERE = Where(1, 1)


class RatedVoltage(NamedTuple):
    """A voltage rating with the system it was given for: `80 V DC`. `system` is dc, ac, or None when not said."""

    volts: Number
    system: str | None


class Box(NamedTuple):
    """A rectangular box in vehicle axes: its least corner and its size, metres each."""

    at: tuple[Number, Number, Number]
    size: tuple[Number, Number, Number]


class Given:
    """A value (`Number`, `Window`, `RatedVoltage`, `Box`, word, yes/no or tuple), its place, basis and text as written.

    `basis` is `stated`, one of `BASES`, `default` (not written: the generic value of the kind, reported as
    assumed) or `missing` (not written and without a default: the value is unknown).
    """

    __slots__ = ("basis", "text", "value", "where")

    def __init__(self, value: Any, where: Where, basis: str = STATED, text: str = "") -> None:
        self.value = value
        self.where = where
        self.basis = basis
        self.text = text

    @property
    def is_assumed(self) -> bool:
        """Whether a finding that rests on this value must say so."""
        return self.basis in ("assumed", DEFAULT)

    def __repr__(self) -> str:
        return f"Given({self.value!r}, {self.where.line}:{self.where.column}, {self.basis})"
