"""An exact value within a range gives an answer within the range of answers: a wide design never promises too much."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from checker.facts.subject import Facts, Subject
from checker.quantities import Range
from tests.circuit.designs import design

CIRCUITS = """
  main: {{from: bank, to: bar, run: [0.2 m, F1, 1 m], cable: red, return: same}}
  feed: {{from: bar, to: pump, run: [0.2 m, F2, {length} m], cable: {{size: {size} mm2, cores: 1}}, return: same}}
  other: {{from: bar, to: glow, run: [0.2 m, F3, 2 m], cable: red, return: same}}
"""
EQUIPMENT = """
  bank: {{kind: battery, chemistry: AGM lead acid, nominal: 12 V, internal resistance: {ohms} mΩ}}
  bar: {{kind: bar, poles: [+, -]}}
  F1: {{kind: fuse, family: bolt-down strip, rating: 100 A, voltage: 58 V DC}}
  F2: {{kind: fuse, family: blade, rating: 20 A, voltage: 32 V DC}}
  F3: {{kind: fuse, family: blade, rating: 20 A, voltage: 32 V DC}}
  pump: {{kind: motor, running: 10 A, start: {{current: {start} A, time: 0.2 s}}, stall: {start} A, voltage: 10..15 V}}
  glow: {{kind: lamp, power: 20 W, voltage: 10..15 V, essential: true}}
"""
NUMBERS = ("prospective_min", "prospective_max", "clearing_time", "clears_by", "let_through")
ANSWERS = ("holds_starts", "opens_before_upstream", "shares_with_essentials")


def subjects(ohms: str, length: str, size: str, start: str) -> dict[str, Subject]:
    facts = Facts(design(EQUIPMENT.format(ohms=ohms, start=start), CIRCUITS.format(length=length, size=size)))
    found = {"F1": facts.subject("device", "F1"), "F2": facts.subject("device", "F2"),
             "feed": facts.subject("conductor", "feed"), "pump": facts.subject("load", "pump")}  # fmt: skip
    return {name: one for name, one in found.items() if one is not None}


def encloses(wide: Any, exact: Any) -> bool:
    if not isinstance(wide, float | Range) or not isinstance(exact, float | Range):
        return not isinstance(wide, float | Range)
    low, high = (wide.low, wide.high) if isinstance(wide, Range) else (wide, wide)
    bottom, top = (exact.low, exact.high) if isinstance(exact, Range) else (exact, exact)
    slack = 1e-9
    return low <= bottom * (1 + slack) and top <= high * (1 + slack)


def within(low: float, high: float) -> st.SearchStrategy[tuple[float, float, float]]:
    """A least, an inner and a greatest number, in order and apart."""
    return st.tuples(*[st.integers(int(low * 10), int(high * 10))] * 3).map(
        lambda three: (min(three) / 10, sorted(three)[1] / 10, max(three) / 10 + 0.1)
    )


@settings(max_examples=40, deadline=None)
@given(within(2, 30), within(1, 40), within(1, 20), within(5, 80))
def test_exact_values_stay_within_what_the_ranges_allow(
    ohms: tuple[float, float, float],
    length: tuple[float, float, float],
    size: tuple[float, float, float],
    start: tuple[float, float, float],
) -> None:
    wide = subjects(*(f"{low}..{high}" for low, _, high in (ohms, length, size, start)))
    exact = subjects(*(f"{inner}" for _, inner, _ in (ohms, length, size, start)))
    for name in ("F1", "F2"):
        for fact in NUMBERS:
            assert encloses(getattr(wide[name], fact), getattr(exact[name], fact)), (name, fact)
        for fact in ANSWERS:
            told = getattr(wide[name], fact)
            assert not isinstance(told, bool) or told is getattr(exact[name], fact), (name, fact)
    assert encloses(wide["feed"].let_through, exact["feed"].let_through)
    assert encloses(wide["pump"].stall_clears_by, exact["pump"].stall_clears_by)
    assert encloses(wide["pump"].start_voltage, exact["pump"].start_voltage)
    told = wide["feed"].withstands_fault
    assert not isinstance(told, bool) or told is exact["feed"].withstands_fault
