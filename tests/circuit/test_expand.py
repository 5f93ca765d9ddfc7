"""A bank written short and the same bank written out give the same graph."""

from __future__ import annotations

from checker.circuit.elements import LIVE
from tests.circuit.designs import lamp, network

UNIT = "kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 50 Ah, internal resistance: 10 mΩ"
SHORT = """
  bank: {kind: bank, units: 2, of: unit, arrangement: 1s2p, joined by: bar,
         unit leads: {cable: red, length: 0.4 m each},
         unit fuses: {family: bolt-down strip, rating: 80 A, voltage: 58 V DC, breaking capacity: 5 kA, at: battery}}
  bar: {kind: bar, poles: [+, -]}
"""
LONG = f"""
  one: {{{UNIT}}}
  two: {{{UNIT}}}
  f-one: {{kind: fuse, family: bolt-down strip, rating: 80 A, voltage: 58 V DC, breaking capacity: 5 kA}}
  f-two: {{kind: fuse, family: bolt-down strip, rating: 80 A, voltage: 58 V DC, breaking capacity: 5 kA}}
  bar: {{kind: bar, poles: [+, -]}}
"""
PARTS = f"parts: {{unit: {{{UNIT}}}}}"
OUT = "  out: {from: bar, to: light, run: [2 m via cabin], cable: red, return: same}"
LEADS = """
  lead-one: {from: one, to: bar, run: [0 m, f-one, 0.4 m], cable: red, return: same, duty: charge}
  lead-two: {from: two, to: bar, run: [0 m, f-two, 0.4 m], cable: red, return: same, duty: charge}
"""


def test_a_bank_has_one_lead_and_one_fuse_for_each_string() -> None:
    graph = network(SHORT + lamp("light"), OUT, PARTS)
    assert graph.units == {"bank": ("bank.unit-1", "bank.unit-2")}
    lead = graph.conductor("bank.lead-2", LIVE)
    assert lead is not None
    assert (lead.start, lead.end) == ("bank.unit-2:+", "bar:+")
    assert [link.equipment.value("rating") for link in lead.links] == [80.0]


def test_short_and_long_form_have_the_same_sources_and_the_same_number_of_wires() -> None:
    short = network(SHORT + lamp("light"), OUT, PARTS)
    long = network(LONG + lamp("light"), OUT + LEADS)
    assert [(s.storage, s.system) for s in short.sources] == [(s.storage, s.system) for s in long.sources]
    assert len(short.wires()) == len(long.wires())


def test_a_lead_whose_fuse_may_sit_at_either_end_has_an_uncertain_length_before_it() -> None:
    graph = network(SHORT.replace(", at: battery", "") + lamp("light"), OUT, PARTS)
    lead = graph.conductor("bank.lead-1", LIVE)
    assert lead is not None
    before = lead.wires[0].lengths[0].length.value
    assert (before.low, before.high) == (0.0, 0.4)


def test_a_fuse_on_the_bar_leaves_the_whole_lead_before_it() -> None:
    graph = network(SHORT.replace("at: battery", "at: bar") + lamp("light"), OUT, PARTS)
    lead = graph.conductor("bank.lead-1", LIVE)
    assert lead is not None
    assert [[one.length.value for one in wire.lengths] for wire in lead.wires] == [[0.4], [0.0]]
