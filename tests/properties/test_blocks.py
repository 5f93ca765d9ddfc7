"""Forgetting all of a thing decides nothing either: its block hidden leaves each verdict, or makes it a question."""

from __future__ import annotations

import pytest

from tests.properties.blocks import blocks_of
from tests.properties.designs import design_with, verdicts_of
from tests.properties.forgetting import contradictions
from tests.properties.verdicts import verdicts

SAMPLES = {"house-48.fitout.yaml": 5, "heron-camper.fitout.yaml": 10, "plover-van": 15}
"""Every so-many-th block of a design; `python -m tests.properties.every_value blocks` tries them all."""


@pytest.mark.parametrize("name", SAMPLES)
def test_a_forgotten_block_decides_nothing(name: str) -> None:
    before = verdicts_of(name)
    tried = list(blocks_of(name))[:: SAMPLES[name]]
    for block, edits in tried:
        paths = [path for path, _ in edits]
        assert contradictions(paths, before, verdicts(design_with(name, edits))) == [], block
    assert len(tried) > 10


def test_a_block_is_a_section_a_thing_or_what_is_told_together_of_it() -> None:
    found = dict(blocks_of("house-48.fitout.yaml"))
    assert {"equipment", "equipment.bank", "equipment.bank.unit leads", "circuits.link", "vehicle.ambient"} <= set(
        found
    )
    assert ("equipment.bank.unit leads.length", "unknown") in found["equipment.bank"]
    assert all(
        len(edits) > 1 and all(path.startswith(f"{block}.") for path, _ in edits) for block, edits in found.items()
    )
