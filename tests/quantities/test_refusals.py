"""What is refused, and that the refusal says what would be right."""

from __future__ import annotations

import pytest

from checker.quantities import QuantityError, Range, parse


def refusal(text: str, unit: str) -> QuantityError:
    with pytest.raises(QuantityError) as caught:
        parse(text, unit)
    return caught.value


@pytest.mark.parametrize(
    ("text", "unit", "says", "right"),
    [
        # case is strict
        ("300 a", "A", "'a' is written A", "'300 A'"),
        ("5 KW", "W", "'KW' is written kW", "'5 kW'"),
        ("12 v", "V", "'v' is written V", "'12 V'"),
        ("50 hz", "Hz", "'hz' is written Hz", "'50 Hz'"),
        ("3 M", "m", "'M' is written m", "'3 m'"),
        ("50 ah", "Ah", "'ah' is written Ah", "'50 Ah'"),
        ("5 Mm", "m", "'Mm' is written mm", "'5 mm'"),
        # words for units
        ("30 amps", "A", "'amps' is written A", "'30 A'"),
        ("35 sqmm", "mm2", "is written mm2", "'35 mm2'"),
        ("35 mm^2", "mm2", "is written mm2", "'35 mm2'"),
        ("2 hours", "h", "is written h", "'2 h'"),
        ("40 percent", "%", "is written %", "'40 %'"),
        ("25 degC", "°C", "is written °C", "'25 °C'"),
        # numbers
        ("1e400 A", "A", "too large or too small", "'30 A'"),
        ("1e-400 A", "A", "too large or too small", "'30 A'"),
        ("1e9999 A", "A", "too large or too small", "'30 A'"),
        ("1e308 kWh", "Wh", "too large", "'2.4 kWh'"),
        ("inf", "A", "finite", "'30 A'"),
        ("nan", "A", "finite", "'30 A'"),
        ("inf A", "A", "finite", "'30 A'"),
        ("-inf A", "A", "finite", "'30 A'"),
        ("NaN A", "A", "finite", "'30 A'"),
        ("1,5 m", "m", "a decimal point, never a comma", "'1.5 m'"),
        ("1,000 A", "A", "never a comma", "'1000 A' or '1.000 A'"),
        ("0,5..0,7 m", "m", "never a comma", "'0.5..0.7 m'"),
        ("1 000 A", "A", "stand together", "'1000 A'"),
        ("1_000 A", "A", "stand together", "'1000 A'"),
        (".5 A", "A", "a digit on each side", "'0.5'"),
        ("5. A", "A", "a digit on each side", "'5'"),
        ("0x10 A", "A", "unit 'x10 A' is not known", "'30 A'"),
        # a unit is missing
        ("30", "A", "bare number '30': a unit is missing", "'30 A'"),
        ("30", "Ah", "bare number", "'30 Ah'"),
        ("-5", "°C", "bare number", "'-5 °C'"),
        ("6", "mm2", "bare number", "'6 mm2' or '6 mm auto' or '6 AWG' or '6 B&S'"),
        ("0.94", "%", "bare number", "'94 %'"),
        ("25..35", "mm2", "a unit is missing", "'25..35 mm2'"),
        # a unit is wrong
        ("30 V", "A", "expected a current such as '30 A', found '30 V' (a voltage)", "a current such as '30 A'"),
        ("5 A", "Ah", "(a current)", "a charge"),
        ("10 N m", "Wh", "(a torque)", "an energy"),
        ("50 Hz", "rpm", "(a frequency)", "a rotational speed"),
        ("30 A..40 V", "A", "(a voltage), in '30 A..40 V'", "a current"),
        ("500 g", "kg", "grams are not used", "0.5 kg"),
        ("25 C", "°C", "C is coulomb", "'25 °C'"),
        ("25 K", "°C", "K is a difference", "'25 °C'"),
        ("25 °C", "K", "(a temperature)", "a temperature difference"),
        ("5 x", "A", "the unit 'x' is not known here", "A, mA, kA"),
        ("8 AWG", "A", "a gauge is a size", "'30 A'"),
        ("8 AWG", "cm2", "a gauge is a size", "'6 mm2'"),
        ("6 mm auto", "m", "a trade size", "'0.3 m'"),
        ("12 V DC", "V", "alternating or direct is not said here", "'12 V'"),
        # pure numbers
        ("3 A", "count", "a whole number without a unit", "'3'"),
        ("2.5", "count", "a whole number", "whole number"),
        ("3 each", "each", "without a unit", "'3'"),
        ("3 count", "count", "without a unit", "'3'"),
        ("40 %", "count", "without a unit", "'40'"),
        ("0.94 ratio", "ratio", "not known", "'0.94'"),
        ("0.5 A", "ratio", "(a current)", "a ratio"),
        ("two", "count", "found 'two'", "'3'"),
        # conductor sizes
        (
            "6 mm",
            "mm2",
            "may be the automotive trade size, an outside diameter, and 6 mm auto is only 4.59 mm2",
            "'6 mm2' for the area, or '6 mm auto' for the trade size",
        ),
        ("4..6 mm", "mm2", "may be the automotive trade size", "'4 mm auto'"),
        ("10 mm", "mm2", "may be the automotive trade size", "'10 mm2'"),
        ("6 MM", "mm2", "trade size", "'6 mm auto'"),
        ("7 mm auto", "mm2", "the automotive trade sizes are 2, 2.5, 3, 4, 5, 6 mm", "'6 mm auto'"),
        ("6 auto", "mm2", "the automotive trade sizes are", "'6 mm auto'"),
        ("AWG 8", "mm2", "'AWG 8'", "'8 AWG'"),
        ("8 awg", "mm2", "'8 awg'", "'8 AWG'"),
        ("0 b&s", "mm2", "'0 b&s'", "'0 B&S'"),
        ("99 AWG", "mm2", "gauges run from 4/0", "'2/0 AWG'"),
        ("5/0 AWG", "mm2", "gauges run from 4/0", "'8 AWG'"),
        ("-1 AWG", "mm2", "gauges run from 4/0", "'8 AWG'"),
        ("8 AWG ± 5", "mm2", "after the ±", "%"),
        ("0 B&S ± 5 %", "mm2", "not one exact number", "mm2"),
        ("at least 0 B&S", "mm2", "not one exact number", "mm2"),
        # ranges
        ("35..25 mm2", "mm2", "the lower end first", "'25 mm2..35 mm2'"),
        ("-5..-10 °C", "°C", "the lower end first", "'-10 °C..-5 °C'"),
        ("25-35 mm2", "mm2", "with two dots", "'25..35 mm2'"),
        ("25 – 35 mm2", "mm2", "with two dots", "'25..35 mm2'"),
        ("25 to 35 mm2", "mm2", "with two dots", "'25..35 mm2'"),
        ("25...35 mm2", "mm2", "two dots", "'25..35 mm2'"),
        ("25 mm2..35", "mm2", "the unit stands last, or at both ends", "'25..35 mm2'"),
        ("..35 mm2", "mm2", "found nothing, in '..35 mm2'", "unknown"),
        ("25.. mm2", "mm2", "'25.. mm2'", "mm2"),
        ("10 A..unknown", "A", "a number at both ends", "'at least ...'"),
        ("at least 3..5 A", "A", "a range has its ends already", "'3..5 A'"),
        ("at least", "A", "'at least'", "'30 A'"),
        ("2 m ± 20", "m", "a unit or % after the ±", "'2 m ± 20 %'"),
        ("2 m ± -5 %", "m", "without a sign", "'2 m ± 5 %'"),
        ("2 m ± 150 %", "m", "0 to 100 %", "both ends"),
        ("25 °C ± 10 %", "°C", "a tolerance in K", "'25 °C ± 5 K'"),
        ("40 % ± 5 %", "%", "ambiguous", "'35..45 %'"),
        ("94 % ± 5 %", "ratio", "ambiguous", "both ends"),
        ("2 m ± 1 A", "m", "(a current), in '2 m ± 1 A'", "a length"),
        (">300 A", "A", "the sign '>' is not used", "'at least 300 A'"),
        ("<= 5 A", "A", "is not used", "'at most 5 A'"),
        ("~5 A", "A", "the sign '~' is not used", "'5 A ± 10 %'"),
        ("about 5 A", "A", "is not used", "'5 A ± 10 %'"),
        # words
        ("", "A", "expected a current such as '30 A', found nothing", "'unknown'"),
        ("banana", "A", "found 'banana'", "'30 A' or 'unknown'"),
        ("Unknown", "A", "'Unknown'", "'unknown'"),
        ("TBC", "A", "'TBC'", "'unknown' if nobody knows it"),
        ("None", "A", "'None'", "'none' in small letters"),
        ("5 A 6", "A", "'5 A 6'", "A, mA, kA"),
        ("A" * 200, "A", "a text of 200 letters", "'30 A'"),
    ],
)
def test_a_refusal_says_what_was_found_and_what_would_be_right(text: str, unit: str, says: str, right: str) -> None:
    error = refusal(text, unit)
    assert says in error.message
    assert right in error.right
    assert error.message.startswith("expected ")
    assert str(error) == error.message


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("300 a", "A"),
        ("5 KW", "W"),
        ("1,5 m", "m"),
        ("30", "A"),
        ("-5", "°C"),
        ("35 sqmm", "mm2"),
        ("25-35 mm2", "mm2"),
        ("25...35 mm2", "mm2"),
        ("35..25 mm2", "mm2"),
        ("AWG 8", "mm2"),
        ("25 C", "°C"),
        (">300 A", "A"),
        ("~5 A", "A"),
        ("1_000 A", "A"),
        ("2 m ± -5 %", "m"),
        ("25..35", "mm2"),
        ("10 mm", "mm2"),
        ("3 A", "count"),
    ],
)
def test_what_is_called_right_can_be_read(text: str, unit: str) -> None:
    right = refusal(text, unit).right.split("'")[1]
    assert isinstance(parse(right, unit), (float, Range))
