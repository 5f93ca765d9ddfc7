"""One load on one source: residual device, bond, earth."""

from __future__ import annotations

import pytest

from checker.facts.subject import Facts, trace
from checker.quantities import Unknown
from checker.reading import read_text
from tests.circuit.designs import HEAD
from tests.facts.mains_subjects import COACH, VAN, ids, subject


def test_states_that_do_not_differ_for_a_load_are_one_supply() -> None:
    assert ids(COACH, "supply") == [
        "kitchen-outlets on inlet", "kitchen-outlets on inverter", "step-outlet on inlet", "step-outlet on inverter",
        "heater on inlet", "heater on inverter",
    ]  # fmt: skip


def test_two_ways_of_one_source_are_two_supplies() -> None:
    found = ids(COACH, "supply", {"circuits.inverter-in.to": "inverter.ac-in", "circuits.normal.to": "board"})
    assert "heater on inverter" in found
    assert "heater on inlet (2)" in found


def test_the_lowest_residual_current_on_the_way_counts() -> None:
    assert subject(COACH, "supply", "heater on inverter").residual_current == 0.03
    own = {"equipment.step-outlet.own rcd": "10 mA"}
    assert subject(COACH, "supply", "step-outlet on inlet", own).residual_current == 0.01


def test_no_device_is_decided_absence() -> None:
    bare = subject(COACH, "supply", "heater on inlet", {"circuits.board-feed.run": "[0.3 m via locker, S1]"})
    assert bare.has_residual_device is False
    assert bare.residual_current is None


def test_the_working_names_the_devices_and_the_state() -> None:
    notes = trace(subject(COACH, "supply", "heater on inverter"), "has_residual_device").notes
    assert notes == (
        "residual-current devices on the way: R1",
        "in the state: shore absent, inverter inverting, K2 inverter",
        "reached by: switch inverter on; inverter joins neutral to earth; set K2 to inverter",
    )


def test_a_charger_needs_an_earth_when_its_case_is_earthed() -> None:
    assert subject(VAN, "supply", "charger on inlet").needs_earth is True
    insulated = {"equipment.charger.case": "insulated"}
    assert subject(VAN, "supply", "charger on inlet", insulated).needs_earth is False
    assert isinstance(
        subject(COACH, "supply", "heater on inlet", {"equipment.heater.class": "unknown"}).needs_earth, Unknown
    )


def test_a_source_that_perhaps_reaches_it_gives_an_uncertain_supply() -> None:
    found = subject(COACH, "supply", "heater on inlet", {"equipment.K2.operated": "unknown"})
    assert isinstance(found.is_certain, Unknown)


@pytest.mark.parametrize(("cores", "known"), [("3", True), ("unknown", False)])
def test_earths_that_meet_inside_an_inverter_alone_stay_open_behind_cables_of_untold_cores(
    cores: str, known: bool
) -> None:
    equipment = """
  inlet: {kind: shore inlet, rating: 16 A, place: cabin}
  inverter: {kind: inverter-charger, power: 2 kVA, dc: {nominal: 12 V, voltage: 10..15 V}, place: cabin,
             transfer: {when: shore present, poles: 2}, bond: {when: inverting}}
  socket: {kind: outlet, voltage: 230 V AC, rating: 10 A, earth contact: true, place: cabin}"""
    circuits = """
  shore-in: {from: inlet, to: inverter.ac-in, run: [1 m via cabin], cable: lead}
  inverter-out: {from: inverter.ac-out, to: socket, run: [1 m via cabin], cable: lead}"""
    text = HEAD.replace("cables: {", f"cables: {{lead: {{size: 2.5 mm2, cores: {cores}}}, ")
    found = Facts(read_text(f"{text}\nequipment:{equipment}\ncircuits:{circuits}\n")).subject(
        "supply", "socket on inlet"
    )
    assert found is not None
    assert (found.earth_is_continuous is True) is known
    assert isinstance(found.earth_is_continuous, Unknown) is not known
