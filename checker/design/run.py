"""What a hand meets along a conductor, in order from the source."""

from __future__ import annotations

from typing import NamedTuple

from checker.design.given import Given, Where


class Length(NamedTuple):
    """A stretch of cable; `place` is None when the writer did not say where it lies."""

    length: Given
    place: str | None
    where: Where


class Through(NamedTuple):
    """A device, relay, shunt, joint or connector. `enter` and `leave` are terminals, None for the usual ones."""

    equipment: str
    enter: str | None
    leave: str | None
    where: Where


class Hole(NamedTuple):
    """A pass: a hole in a wall. It has no electrical meaning."""

    name: str
    where: Where


class Gap(NamedTuple):
    """The word `unknown` in a run: this stretch was not seen and may hide a device."""

    where: Where


Step = Length | Through | Hole | Gap


class Port(NamedTuple):
    """One end of a circuit: equipment (or `chassis`) and the port on it, None for its only or main port."""

    equipment: str
    port: str | None
    where: Where

    def __str__(self) -> str:
        return self.equipment if self.port is None else f"{self.equipment}.{self.port}"


class Path(NamedTuple):
    """How the return or the earth of a circuit goes.

    `how` is `in cable`, `same` (a second single core beside the live one), `chassis`, `run` (a run of its own,
    from the load back to the source), `none`, or `unknown`. `to` is the far end where it is not the source.
    """

    how: str
    run: tuple[Step, ...]
    to: Port | None
    size: Given | None
    where: Where
