"""Uncertain numbers drawn at random, to look for values outside of what is predicted."""

from __future__ import annotations

from random import Random

from checker.facts.dc_amounts import Amount, Choice


class Drawn(Choice):
    """Each uncertain number anywhere within its range, or at one of its ends."""

    __slots__ = ("_ends", "_held", "_random")

    def __init__(self, random: Random, *, ends: bool) -> None:
        self._random = random
        self._ends = ends
        self._held: dict[int, float] = {}

    def of(self, amount: Amount, *, raises: bool) -> float:
        if not amount.known or amount.low == amount.high:
            return amount.likely
        if id(amount) not in self._held:
            low, high = amount.low, amount.high
            self._held[id(amount)] = self._random.choice((low, high)) if self._ends else self._random.uniform(low, high)
        return self._held[id(amount)]
