"""Clean designs raise no alarm, and each fault put into them is found.

Each design was written as a fitter would, before any review; `log.yaml` tells what the reviews then found, and which
of it was a fault of the design and which a false alarm of ours.
"""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest
import yaml

from checker.reading import read_text
from checker.review import Review, review
from tests.clean.designs import HERE, NAMES, Edits, Fault, faults, text_of
from tests.properties.verdicts import Pair, rulebook, verdicts

ARGUED: dict[tuple[str, str, str, str], str] = {}
"""Exceptions: design, rule, subject and verdict of a finding that stays, with the argument; none remains."""


@cache
def reviewed(name: str) -> Review:
    return review(read_text(text_of(name), f"{name}.fitout.yaml"), rulebook())


@cache
def found(name: str, edits: Edits = ()) -> dict[Pair, str]:
    return verdicts(read_text(text_of(name), edits=edits))


def test_there_are_six_of_different_kinds_codes_and_chemistries() -> None:
    designs = [read_text(text_of(name)) for name in NAMES]
    assert len(designs) >= 6
    assert {str(one.code.value) for one in designs} == {"au-nz", "eu", "intl", "uk", "us-boat", "us-rv"}
    kinds = Counter(str(one.vehicle.value("kind")) for one in designs)
    assert set(kinds) >= {"campervan", "motorhome", "caravan", "boat", "unit"}
    items = [item for one in designs for item in (*one.equipment.values(), *one.parts.values())]
    batteries = [item for item in items if item.allows("chemistry") and item.has("chemistry")]
    chemistries = {str(item.value("chemistry")) for item in batteries}
    assert chemistries >= {"lithium iron phosphate", "AGM lead acid", "gel lead acid", "flooded lead acid"}
    assert {volts for one in designs if (volts := str(one.vehicle.value("supply.voltage")))} == {"230.0", "120.0"}


@pytest.mark.parametrize("name", NAMES)
def test_a_clean_design_raises_no_alarm_and_leaves_no_question(name: str) -> None:
    told = reviewed(name)
    assert told.broken == ()
    raised = {(name, one.rule, one.about.id, one.verdict) for one in told.findings if one.verdict != "met"}
    assert raised == {key for key in ARGUED if key[0] == name}
    assert told.counts["met"] > 500, "a whole design, with much to judge"


@pytest.mark.parametrize("fault", faults(), ids=lambda fault: f"{fault.design}: {fault.says}")
def test_a_fault_is_found(fault: Fault) -> None:
    before = found(fault.design, fault.edits)
    broken = {(rule, about) for (rule, _, about), verdict in before.items() if verdict == "breach"}
    assert (fault.rule, fault.about) in broken


def test_each_design_has_at_least_three_faults() -> None:
    count = Counter(fault.design for fault in faults())
    assert set(count) == set(NAMES)
    assert min(count.values()) >= 3


def test_each_false_alarm_is_shown_by_an_example_of_its_rule() -> None:
    log = yaml.safe_load((HERE / "log.yaml").read_text("utf-8"))
    for entry in log["false alarms"]:
        rule = rulebook().by_id[entry["rule"]]
        assert entry["example"] in {example.name for example in rule.examples}, entry["rule"]
        assert entry["design"] in NAMES
