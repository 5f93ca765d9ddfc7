"""How long a fault to earth may last: the published table, by the voltage of a line against earth."""

from __future__ import annotations

from checker.facts.catalogue import fact
from checker.facts.disconnection import fed_from_tt
from checker.facts.levels import LINE_TO_NEUTRAL_V
from checker.facts.mains_voltage import line_voltage, tapped
from checker.facts.subject import Subject
from checker.physics.ac import disconnection_time
from checker.quantities import Number, Range, Unknown, between, both, corners, divide, greater_equal, less_equal

SOURCE = "IEC 60364-4-41, Table 41.1 (seen as printed in BS 7671); IEC 60038 (from memory)"
METHOD = (
    "Table 41.1 by the voltage of a line against earth; up to 250 V counts as 230 V, up to 50 V as 120 V; 240 V of a "
    "North American code lies between two lines of 120 V; where the voltage is not told, every one that sites have"
)
LOWEST_V, NOMINAL_V = 120.0, 230.0
SITES_V = Range(LOWEST_V, LINE_TO_NEUTRAL_V)
WINDINGS_V = Range(LOWEST_V, 400.0)
TWO_LINES_V = (235.0, LINE_TO_NEUTRAL_V)
"""What is told of a site of two lines and a neutral between them: 240 V, with tolerance; common practice, no source."""
NORTH_AMERICA = ("us-rv", "us-boat", "ca")


@fact("supply", "time_allowed", unit="ms", says="Longest time until a fault to earth at the load is cleared.",
      method=METHOD, source=SOURCE)  # fmt: skip
def supply_time_allowed(s: Subject) -> Number:
    return _allowed(s)


@fact("short", "time_allowed", unit="ms", says="Longest time until a fault to earth is cleared at what uses mains.",
      method=METHOD, source=SOURCE)  # fmt: skip
def short_time_allowed(s: Subject) -> Number:
    return _allowed(s)


def _allowed(s: Subject) -> Number:
    told = fed_from_tt(s)
    electrode: Number = Range(0.0, 1.0) if isinstance(told, Unknown) else float(told)
    return corners(_by_table, _line_to_earth(s), electrode)


def _line_to_earth(s: Subject) -> Number:
    """Voltage of a line of the source against earth, V; a range where nobody told it."""
    volts = line_voltage(s, s.item.feed)
    if not isinstance(volts, float | Range):
        changed = s.item.feed.equipment.kind == "transformer" or tapped(s) is not None
        return WINDINGS_V if changed else SITES_V
    code = s.use("code", s.facts.design.code)
    if isinstance(code, Unknown) or code not in NORTH_AMERICA:  # without a code the international limits apply
        return volts
    low, high = TWO_LINES_V
    two_lines = both(greater_equal(volts, low), less_equal(volts, high))
    if two_lines is False:
        return volts
    half = divide(volts, 2.0)
    return half if two_lines is True else _from_to(half, volts)


def _from_to(lesser: Number, larger: Number) -> Number:
    """A number that is one of two, nobody knows which."""
    low = lesser.low if isinstance(lesser, Range) else lesser
    high = larger.high if isinstance(larger, Range) else larger
    return between(low, high) if isinstance(low, float) and isinstance(high, float) else Unknown("its voltage")


def _by_table(volts: float, electrode: float) -> float:
    """Time, s, monotone in the voltage; `electrode` is 1 where sites have no earth but an electrode, else 0."""
    counted = NOMINAL_V if NOMINAL_V < volts <= LINE_TO_NEUTRAL_V else max(volts, LOWEST_V)
    return disconnection_time("TT" if electrode else "TN", counted, "ac")
