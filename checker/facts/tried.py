"""Tests that were made on the finished work: what the readings of the file prove, and what they leave open."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import inf
from typing import Any

from checker.design.given import MISSING, Given
from checker.design.item import Item
from checker.design.vocabulary.papers import STOPS, TESTS
from checker.facts.catalogue import fact
from checker.facts.contacts import is_word
from checker.facts.shown import is_test
from checker.facts.subject import Subject
from checker.quantities import Range, Truth, Unknown, add, both, either, equal, every, greatest, negate, some

FIRST_TESTS = ("insulation resistance", "polarity", "earth continuity", "rcd trip")
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


@fact("design", "polarity_proven", type="yes/no",
      says="Polarity was tested at every inlet and at every mains outlet, and came out right.",
      method="readings of the test polarity, by the name of the inlet or outlet they were taken at")  # fmt: skip
def polarity_proven(s: Subject) -> Truth:
    points = [one.id for one in s.facts.subjects("inlet")]
    points += [one.id for one in s.facts.subjects("outlet") if one.is_mains is not False]
    taken = [s.read(one, "at") for one in s.item.readings if is_test(s, one, "polarity") is True and one.has("at")]
    missing = [point for point in points if point not in [at for at in taken if isinstance(at, str)]]
    answers: list[Truth] = [_not_read(s, f"polarity at {point}") for point in missing]
    if not points or any(is_test(s, one, "polarity") is True for one in s.item.readings):
        answers.append(_result(s, "polarity", "right"))
    return every(answers)


@fact("design", "dielectric_proven", type="yes/no", says="Every recorded test of the dielectric strength was passed.",
      method="readings of the test dielectric strength, result right")  # fmt: skip
def dielectric_proven(s: Subject) -> Truth:
    return _result(s, "dielectric strength", "right")


@fact("design", "earth_tested", type="yes/no", says="Earth continuity was measured and recorded.")
def earth_tested(s: Subject) -> Truth:
    return tested(s, "earth continuity")


@fact("design", "has_bonds", type="yes/no", says="Conductors aboard bond or earth something.", method="graph")
def has_bonds(s: Subject) -> bool:
    return any(one.role == "bonding" for one in s.facts.network.conductors)


@fact("design", "verification_recorded", type="yes/no",
      says="Insulation, polarity, earth continuity and the trip of each residual-current device are on record; where "
      "there is no such device, the loop impedance.",
      method="readings of these tests; one with the result wrong is no proof")  # fmt: skip
def verification_recorded(s: Subject) -> Truth:
    wrong = [is_test(s, one, test) for one in s.item.readings for test in FIRST_TESTS if _said_wrong(s, one)]
    residual = [one for one in s.facts.subjects("device") if one.type_of_device in ("rcd", "rcbo")]
    figures = [s.insulation_resistance, *(one.trip_time_shown for one in residual)]
    shown = [one if isinstance(one, Unknown) else True for one in figures]
    # What no residual-current device clears, the breaker must: then the impedance of the loop is what was measured.
    loop = [] if residual else [tested(s, "loop impedance")]
    return every([*(negate(one) for one in wrong), s.polarity_proven, s.earth_tested, *shown, *loop])


def _said_wrong(s: Subject, reading: Item) -> bool:
    return reading.has("result") and equal(s.read(reading, "result"), "wrong") is True


@fact("design", "function_proven", type="yes/no",
      says="Alarm, charge stop, discharge stop and cold stop of the battery management were tried out.",
      method="readings of the test function: result right, and what was tried")  # fmt: skip
def function_proven(s: Subject) -> Truth:
    right = _result(s, "function", "right")
    if right is not True:
        return right
    tried = [s.read(one, "tried") for one in s.item.readings if is_test(s, one, "function") is True]
    named = {word for words in tried if isinstance(words, tuple) for word in words}
    missing = [word for word in STOPS if word not in named]
    if not missing:
        return True
    return _not_read(
        s, "function", f"of the battery management nobody wrote that these were tried: {', '.join(missing)}"
    )


@fact("mode", "carries_mains", type="yes/no", says="The shore is present in it, or an inverter or generator runs.",
      method="what the mode sets")  # fmt: skip
def carries_mains(s: Subject) -> Truth:
    return _with_mains(s.item)


@fact("mode", "link_tested", type="yes/no",
      says="The neutral-earth link was tested in it: one, or none where the shore brings it.",
      method="readings of the test in this mode")  # fmt: skip
def link_tested(s: Subject) -> Truth:
    test = "neutral-earth link"
    answers: list[Truth] = []
    done = False
    for reading in s.facts.design.readings:
        this = is_test(s, reading, test)
        mode = s.read(reading, "mode") if reading.has("mode") else None
        if this is False or mode is None or (isinstance(mode, str) and mode != s.id):
            continue
        result = s.read(reading, "result")
        here = result if isinstance(result, Unknown) else _link_right(result, s.item)
        # A reading of another test, or of a mode that is not known, may be no concern of this one.
        sure = this is True and isinstance(mode, str)
        answers.append(here if sure else either(here, Unknown("of which test and mode a reading is, is not told")))
        done = done or sure
    return every(answers) if done else _not_read(s, f"{test} in {s.id}")


@fact("design", "inlet_pins_tested_dead", type="yes/no",
      says="In every mode with mains from aboard the pins of the shore inlet were tested and found dead.",
      method="a reading of the test inlet pins in each mode whose inverter runs without shore")  # fmt: skip
def inlet_pins_tested_dead(s: Subject) -> Truth:
    return _in_modes(s, "inlet pins", s.item.modes, _islanded, _said_right)


@fact("design", "polarity_tested_in_modes", type="yes/no",
      says="Polarity was tested right in every mode with mains.",
      method="a reading of the test in each mode whose inverter or generator runs or with shore present")  # fmt: skip
def polarity_tested_in_modes(s: Subject) -> Truth:
    return _in_modes(s, "polarity", s.item.modes, _with_mains, _said_right)


@fact("design", "changes_tested", type="yes/no",
      says="The change into every mode with mains was watched: polarity, link of neutral and earth, dead inlet pins.",
      method="a reading of the test `mode change` in each of those modes, the mode that was changed into")  # fmt: skip
def changes_tested(s: Subject) -> Truth:
    return _in_modes(s, "mode change", s.item.modes, _with_mains, _said_right)


@fact("design", "makes_mains_aboard", type="yes/no", says="A mode feeds mains from aboard, with no shore present.")
def makes_mains_aboard(s: Subject) -> Truth:
    return some(_islanded(mode) for mode in s.item.modes.values())


def _in_modes(
    s: Subject,
    test: str,
    modes: Mapping[str, Item],
    asked: Callable[[Item], Truth],
    right: Callable[[Any, Item | None], Truth],
) -> Truth:
    """Whether a test came out right in every mode in which it is asked for."""
    done = []
    answers: list[Truth] = []
    for reading in s.item.readings:
        this = is_test(s, reading, test)
        if this is not False and reading.has("mode"):
            result, mode = s.read(reading, "result"), s.read(reading, "mode")
            known = modes.get(mode) if isinstance(mode, str) else None
            answers.append(either(result if isinstance(result, Unknown) else right(result, known), negate(this)))
            if this is True and isinstance(mode, str):
                done.append(mode)
    missing = [name for name, mode in modes.items() if asked(mode) is not False and name not in done]
    answers += [_not_read(s, f"{test} in {name}") for name in missing]
    return every(answers)


def _said_right(result: Any, mode: Item | None) -> Truth:
    return bool(result == "right")


def _link_right(result: Any, mode: Item | None) -> Truth:
    """One link is right anywhere; none only where the shore brings the link, several nowhere."""
    if result == "one":
        return True
    if result is not None:
        return False
    return Unknown("in which mode the test was made is not told") if mode is None else negate(_islanded(mode))


def _islanded(mode: Item) -> Truth:
    """Whether mains comes from aboard alone."""
    return both(is_word(mode.value("shore"), "absent"), _made_aboard(mode))


def _with_mains(mode: Item) -> Truth:
    return either(negate(is_word(mode.value("shore"), "absent")), _made_aboard(mode))


def _made_aboard(mode: Item) -> Truth:
    return either(equal(mode.value("inverter"), "inverting"), equal(mode.value("generator"), "running"))


def _result(s: Subject, test: str, right: str) -> Truth:
    asked = [(one, is_test(s, one, test)) for one in s.item.readings]
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


@fact("design", "warm_joints_checked", type="yes/no",
      says="High-current joints were checked under load.",
      method="readings of a temperature at equipment or a circuit, or of the test voltage drop")  # fmt: skip
def warm_joints_checked(s: Subject) -> Truth:
    drop = _result(s, "voltage drop", "right") if "voltage drop" in s.tests_recorded else None
    if warm_readings(s):
        return drop if drop is False else True
    reason = "no reading records a temperature or a voltage drop under load"
    return drop if drop is not None else _not_read(s, "temperature or voltage drop under load", reason)


@fact("design", "hottest_joint", unit="°C", says="Highest temperature read at a joint under load; none when none was.",
      method="readings of a temperature at equipment or a circuit; one at a place is that of the air")  # fmt: skip
def hottest_joint(s: Subject) -> Any:
    values = [s.read(one, "temperature") for one in warm_readings(s)]
    # One of which nobody knows where it was taken may be that of a joint, and of a hotter one.
    perhaps = [
        add(s.read(one, "temperature"), Range(-inf, 0.0))
        for one in s.item.readings
        if one.has("temperature") and one.has("at") and isinstance(s.read(one, "at"), Unknown)
    ]
    if not values:
        return Unknown("where a temperature was read is not told") if perhaps else None
    return greatest(*values, *perhaps)


def warm_readings(s: Subject) -> list[Item]:
    """Readings of the temperature of a thing."""
    found = []
    for reading in s.item.readings:
        at = s.read(reading, "at") if reading.has("at") else None
        if reading.has("temperature") and isinstance(at, str) and at not in s.item.places:
            found.append(reading)
    return found


@fact("design", "readings_kept", type="yes/no", says="Readings taken after commissioning stand in the file.")
def readings_kept(s: Subject) -> Truth:
    return True if s.item.readings else _not_read(s, "any", "no reading stands in the file")
