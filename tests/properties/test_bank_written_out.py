"""A bank written short and the batteries, leads and fuses it stands for give the same facts and verdicts elsewhere."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from checker.facts.catalogue import CATALOGUE
from checker.facts.subject import Facts, Subject
from checker.quantities import same
from checker.reading import read_text
from tests.properties.verdicts import Pair, verdicts

HEAD = """
fitout: 1
title: A bank and three circuits
code: au-nz
vehicle: {{kind: motorhome, ambient: {{low: 0 °C, high: 40 °C}}, chassis: {{negative: true, resistance: 2 mΩ}}}}
cables:
  red-70: {{size: 70 mm2, cores: 1, insulation: 105 °C, voltage: 600 V}}
  lead:   {{size: {size} mm2, cores: 1, insulation: 105 °C, voltage: 600 V}}
  twin:   {{size: 4 mm2, cores: 2, insulation: 90 °C, voltage: 300 V}}
parts:
  module: {{kind: battery, chemistry: lithium iron phosphate, nominal: 48 V, cells: 16, capacity: 50 Ah,
           internal resistance: 9 mΩ, short circuit current: 2.4 kA,
           bms: {{charge limit: 50 A, discharge limit: 100 A, over voltage: 58.4 V, under voltage: 42 V}}}}
  link:   {{kind: fuse, family: bolt-down high voltage strip, rating: {fuse} A, voltage: 80 V DC,
           breaking capacity: 20 kA}}
places:
  bay:   {{kind: battery locker, inside: outer skin}}
  cabin: {{kind: living space}}
equipment:
  joint:  {{kind: bar, poles: [+, -], rating: 400 A, place: bay}}
  F1:     {{kind: fuse, family: class T, rating: 200 A, voltage: 125 V DC, breaking capacity: 20 kA, place: bay}}
  bar:    {{kind: bar, poles: [+, -], rating: 300 A, place: cabin}}
  F2:     {{part: link, rating: 30 A, place: cabin}}
  heater: {{kind: load, power: {power} W, voltage: 40..60 V, place: cabin}}
"""
SHARED = """
  main:    {from: joint, to: bar, run: [0.2 m via bay, F1, 1 m via cabin], cable: red-70, return: same}
  heating: {from: bar, to: heater, run: [0.1 m via cabin, F2, 3 m via cabin], cable: twin}
  bonding: {from: bar.-, to: chassis, run: [0.5 m via cabin], cable: red-70, duty: bonding}
modes:
  parked: {engine: stopped, running: {heater: 10 A}}
"""


def short(units: int, length: str, head: dict[str, Any]) -> str:
    """The bank as one entry."""
    bank = (
        f"  bank: {{kind: bank, units: {units}, of: module, arrangement: 1s{units}p, joined by: joint, place: bay, "
        f"unit leads: {{cable: lead, length: {length} m each}}, unit fuses: {{part: link, at: battery}}}}"
    )
    return f"{HEAD.format(**head)}{bank}\ncircuits:{SHARED}"


def long(units: int, length: str, head: dict[str, Any]) -> str:
    """The same with every battery, lead and fuse written."""
    equipment, circuits = [], []
    for number in range(1, units + 1):
        equipment += [f"  bat-{number}: {{part: module, place: bay}}", f"  fuse-{number}: {{part: link, place: bay}}"]
        circuits.append(
            f"  lead-{number}: {{from: bat-{number}, to: joint, run: [0 m via bay, fuse-{number}, {length} m via bay], "
            "cable: lead, return: same, duty: charge}"
        )
    head_and_items = HEAD.format(**head) + "\n".join(equipment)
    return head_and_items + "\ncircuits:\n" + "\n".join(circuits) + SHARED


SHARED_IDS = frozenset(
    ("main", "main return", "heating", "heating return", "bonding", "F1", "F2", "joint", "bar", "heater", "cabin")
)
KINDS = ("circuit", "conductor", "device", "bar", "load")
BY_NAME = frozenset((("load", "dark_when"), ("load", "single_failures")))
"""They count pieces by name, and a bank written short is one piece more than its batteries."""


def of_shared(value: Any) -> Any:
    """A value in which subjects of the bank itself, which have other names, are left out."""
    if isinstance(value, Subject):
        return (value.kind, value.id) if value.id in SHARED_IDS else "of the bank"
    if isinstance(value, tuple):
        return tuple(dict.fromkeys(of_shared(one) for one in value))
    return value


def facts_of(text: str) -> dict[tuple[str, str, str], Any]:
    """The facts of what both designs have."""
    facts = Facts(read_text(text))
    return {
        (kind, subject.id, spec.name): of_shared(getattr(subject, spec.name))
        for kind in KINDS
        for subject in facts.subjects(kind)
        if subject.id in SHARED_IDS
        for spec in CATALOGUE.facts(kind)
        if (kind, spec.name) not in BY_NAME
    }


def shared_verdicts(text: str) -> dict[Pair, str]:
    """The verdicts on what both designs have."""
    found = verdicts(read_text(text))
    return {pair: verdict for pair, verdict in found.items() if pair[1] in KINDS and pair[2] in SHARED_IDS}


heads = st.fixed_dictionaries(
    {
        "size": st.sampled_from((16, 25, 35)),
        "fuse": st.sampled_from((60, 100, 125, "80..100")),
        "power": st.sampled_from((200, 600, "500..900")),
    }
)


@given(units=st.integers(2, 4), length=st.sampled_from(("0.35", "0.2..0.5", "1.2")), head=heads)
@settings(max_examples=10)
def test_the_circuits_that_both_have_share_facts_and_verdicts(units: int, length: str, head: dict[str, Any]) -> None:
    one, other = short(units, length, head), long(units, length, head)
    first, second = facts_of(one), facts_of(other)
    assert first.keys() == second.keys() and len(first) > 200
    assert [name for name, value in first.items() if not same(value, second[name])] == []
    shared = [shared_verdicts(text) for text in (one, other)]
    assert shared[0] == shared[1] and len(shared[0]) > 100
