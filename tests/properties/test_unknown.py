"""Unknown never passes: whatever value of a design becomes unknown, no rule is met that was not met before.

A pair of rule and subject that is there no more is left out: without the number of cores there is no telling whether
there is a return conductor to speak of. Left out too are the names of equipment in a run. A run in which nobody
knows what stands instead of a named fuse is another run: the fuse lies beside the vehicle, and what it fed is fed by
something that was not seen.
"""

from __future__ import annotations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from checker.design.model import Design
from checker.reading import ReadingErrors, read_text
from tests.properties.designs import leaves_of, texts, verdicts_of
from tests.properties.verdicts import Leaf, Pair, verdicts


def made_unknown(name: str, leaf: Leaf) -> Design | None:
    """The design with one value unknown; None where the file may not say that."""
    try:
        return read_text(texts()[name], edits=[(leaf.path, "unknown")])
    except ReadingErrors:
        return None


def names_equipment(leaf: Leaf) -> bool:
    """Whether a leaf is an item of a run that names a device, not a length."""
    steps = leaf.path.split(".")
    return steps[0] == "circuits" and "run" in steps and " via " not in leaf.text and not leaf.text[:1].isdigit()


def newly_met(before: dict[Pair, str], after: dict[Pair, str]) -> list[Pair]:
    """Pairs that broke a rule or were undecided, and are met now."""
    return [pair for pair, verdict in after.items() if verdict == "met" and before.get(pair) in ("breach", "unproven")]


@pytest.mark.parametrize("name", texts())
@given(data=st.data())
@settings(max_examples=14)
def test_a_value_made_unknown_meets_no_rule(name: str, data: st.DataObject) -> None:
    leaf = data.draw(st.sampled_from(leaves_of(name)))
    assume(not names_equipment(leaf))
    design = made_unknown(name, leaf)
    assume(design is not None)
    assert design is not None
    assert newly_met(verdicts_of(name), verdicts(design)) == [], leaf


def test_most_values_may_be_unknown() -> None:
    """Else the property above would speak of nothing."""
    for name in texts():
        found = leaves_of(name)[:: max(1, len(leaves_of(name)) // 40)]
        read = sum(made_unknown(name, leaf) is not None for leaf in found)
        assert read > len(found) / 2, name


def test_a_missed_breach_would_be_seen() -> None:
    before = {("rule", "device", "F1"): "breach", ("rule", "device", "F2"): "not applicable"}
    after = {("rule", "device", "F1"): "met", ("rule", "device", "F2"): "met", ("rule", "device", "F3"): "met"}
    assert newly_met(before, after) == [("rule", "device", "F1")]
