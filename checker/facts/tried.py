"""Tests that were made on the finished work: what the readings of the file prove, and what they leave open."""

from __future__ import annotations

from typing import Any

from checker.design.given import MISSING, Given
from checker.design.item import Item
from checker.design.vocabulary.papers import TESTS
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, either, equal, every, least, negate

ANSWERS = ("result", "resistance", "time", "voltage", "current", "temperature")


@fact("design", "tests_recorded", words=TESTS, type="words", says="Tests with a recorded result.", method="readings")
def tests_recorded(s: Subject) -> tuple[str, ...]:
    found = []
    for reading in s.item.readings:
        test = s.read(reading, "test") if reading.has("test") else None
        if isinstance(test, str) and any(reading.has(key) for key in ANSWERS):
            found.append(test)
    return tuple(word for word in TESTS if word in found)


def tested(s: Subject, test: str) -> Truth:
    """Whether a test was recorded; silence is not a failed test."""
    return True if test in s.tests_recorded else _not_read(s, test)


def _not_read(s: Subject, what: str, reason: str = "") -> Unknown:
    """A reading that is not in the file, as an entry that would settle the question."""
    missing = Unknown(reason or f"no reading records the test: {what}")
    s.use(f"readings: {what}", Given(missing, s.where, MISSING))
    return missing


@fact("design", "insulation_resistance", unit="Ω", says="Least insulation resistance that was measured.",
      method="readings of the test insulation resistance")  # fmt: skip
def insulation_resistance(s: Subject) -> Any:
    return _measured(s, "insulation resistance", "resistance")


def _measured(s: Subject, test: str, key: str) -> Any:
    values = [s.read(one, key) for one in s.item.readings if equal(one.value("test"), test) is True]
    return least(values) if values else _not_read(s, test)


@fact("design", "polarity_proven", type="yes/no", says="Every recorded polarity test came out right.")
def polarity_proven(s: Subject) -> Truth:
    return _result(s, "polarity", "right")


@fact("design", "dielectric_proven", type="yes/no", says="Every recorded test of the dielectric strength was passed.",
      method="readings of the test dielectric strength, result right")  # fmt: skip
def dielectric_proven(s: Subject) -> Truth:
    return _result(s, "dielectric strength", "right")


@fact("design", "earth_tested", type="yes/no", says="Earth continuity was measured and recorded.")
def earth_tested(s: Subject) -> Truth:
    return tested(s, "earth continuity")


@fact("design", "function_proven", type="yes/no", says="Alarms and stops of the battery management were tried out.",
      method="a reading of the test function, result right")  # fmt: skip
def function_proven(s: Subject) -> Truth:
    return _result(s, "function", "right")


@fact("design", "link_tested_in_modes", type="yes/no",
      says="The neutral-earth link was tested in every mode with mains aboard.",
      method="a reading of the test in each mode whose inverter runs or whose shore is present")  # fmt: skip
def link_tested_in_modes(s: Subject) -> Truth:
    wanted = [name for name, mode in s.item.modes.items() if _mains_mode(mode)]
    done = []
    answers: list[Truth] = []
    for reading in s.item.readings:
        this = _is_test(s, reading, "neutral-earth link")
        if this is not False and reading.has("mode"):
            result = s.read(reading, "result")
            once = result if isinstance(result, Unknown) else result != "several"
            answers.append(either(once, negate(this)))
            mode = s.read(reading, "mode")
            if this is True and isinstance(mode, str):
                done.append(mode)
    missing = [name for name in wanted if name not in done]
    if missing:
        reason = f"no reading records the test in: {', '.join(missing)}"
        answers.append(_not_read(s, "neutral-earth link in every mode with mains", reason))
    return every(answers)


def _mains_mode(mode: Item) -> bool:
    shore, inverter = mode.value("shore"), mode.value("inverter")
    return (not isinstance(shore, str) or shore != "absent") or (isinstance(inverter, str) and inverter == "inverting")


def _is_test(s: Subject, reading: Item, test: str) -> Truth:
    """Whether a reading is of a test; one that names no test is none."""
    return equal(s.read(reading, "test"), test) if reading.has("test") else False


def _result(s: Subject, test: str, right: str) -> Truth:
    asked = [(one, _is_test(s, one, test)) for one in s.item.readings]
    readings = [one for one, this in asked if this is True]
    perhaps = [one for one, this in asked if isinstance(this, Unknown)]
    if not readings:
        return _not_read(s, test)

    def fits(reading: Item) -> Truth:
        said = s.read(reading, "result")
        return said if isinstance(said, Unknown) else said == right

    # A reading of which the test is not known may be one of these, and came out wrong.
    doubts = [either(fits(one), Unknown("what a reading tested is not told")) for one in perhaps]
    return every([*(fits(one) for one in readings), *doubts])


@fact("design", "warm_joints_checked", type="yes/no", says="High-current joints were checked under load.",
      method="a reading of a temperature, or of the test voltage drop")  # fmt: skip
def warm_joints_checked(s: Subject) -> Truth:
    if any(one.has("temperature") for one in s.item.readings) or "voltage drop" in s.tests_recorded:
        return True
    reason = "no reading records a temperature or a voltage drop under load"
    return _not_read(s, "temperature or voltage drop under load", reason)


@fact("design", "readings_kept", type="yes/no", says="Readings taken after commissioning stand in the file.")
def readings_kept(s: Subject) -> Truth:
    return True if s.item.readings else _not_read(s, "any", "no reading stands in the file")
