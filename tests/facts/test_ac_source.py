"""Sources of mains over all supply states."""

from __future__ import annotations

from checker.facts.subject import trace
from checker.quantities import Range, Unknown
from tests.facts.mains_subjects import COACH, VAN, ids, subject


def test_shore_generator_and_inverter_are_sources() -> None:
    assert ids(VAN, "ac_source") == ["inlet", "genset", "inverter"]
    assert subject(VAN, "ac_source", "genset").is_aboard is True
    assert subject(VAN, "ac_source", "inlet").is_aboard is False


def test_links_are_counted_in_the_worst_state_and_the_working_names_it() -> None:
    source = subject(COACH, "ac_source", "inlet", {"equipment.inverter.bond.when": "always"})
    assert (source.least_links, source.most_links) == (1.0, 2.0)
    notes = trace(source, "most_links").notes
    assert notes == (
        "in the state: shore present, inverter passing, K2 open",
        "reached by: plug in the shore lead; switch inverter on; inverter passes its input through",
    )


def test_an_unknown_bond_gives_a_range_of_links() -> None:
    source = subject(COACH, "ac_source", "inverter", {"equipment.inverter.bond.when": "unknown"})
    assert source.least_links == Range(0.0, 1.0)


def test_sources_made_to_run_together_are_not_counted_as_joined() -> None:
    joined = {"circuits.inverting.to": "out"}
    assert subject(VAN, "ac_source", "inverter", joined).is_joined_with_another is True
    allowed = {**joined, "equipment.inverter.synchronises with": "[genset, inlet]"}
    assert subject(VAN, "ac_source", "inverter", allowed).is_joined_with_another is False


def test_a_charger_that_waits_for_the_shore_closes_no_loop_once_the_inverter_is_off_by_then() -> None:
    assert subject(VAN, "ac_source", "inverter").feeds_own_charger is True  # shore present, changeover left by hand
    assert subject(VAN, "ac_source", "inverter", {"circuits.charging.from": "inlet"}).feeds_own_charger is False
    assert subject(VAN, "ac_source", "inverter", {"equipment.charger.enabled by": "none"}).feeds_own_charger is True


def test_a_charger_of_another_battery_counts_as_well() -> None:
    edits = {
        "equipment.charger.enabled by": "none",
        "equipment.other": "{kind: battery, nominal: 12 V, place: locker}",
        "circuits.charge.to": "other",
    }
    assert subject(VAN, "ac_source", "inverter", edits).feeds_own_charger is True


def test_in_a_survey_a_wire_that_is_not_written_was_perhaps_not_seen() -> None:
    edits = {"equipment.charger.enabled by": "unknown", "purpose": "survey"}
    assert isinstance(subject(VAN, "ac_source", "inverter", edits).feeds_own_charger, Unknown)


def test_a_separated_circuit_must_be_declared() -> None:
    assert subject(VAN, "ac_source", "inverter").is_separated is False
    declared = {"circuits.inverting.shock protection": "separated"}
    assert subject(VAN, "ac_source", "inverter", declared).is_separated is True
    open_ = {"circuits.inverting.shock protection": "unknown"}
    assert isinstance(subject(VAN, "ac_source", "inverter", open_).is_separated, Unknown)


def test_one_pole_shares_the_neutral() -> None:
    assert subject(VAN, "ac_source", "genset").shares_neutral is False
    assert subject(VAN, "ac_source", "genset", {"equipment.KG.poles": "1"}).shares_neutral is True


def test_the_frame_is_asked_of_generators_alone() -> None:
    assert subject(VAN, "ac_source", "genset").frame_is_bonded is True
    assert subject(VAN, "ac_source", "inverter").frame_is_bonded is None


CONTACTORS = {
    "parts.contactor": "{kind: relay, poles: 2, rating: 20 A, form: make, driven by: hooked-up, place: locker}",
    "equipment.C1": "{part: contactor, interlocked with: none}",
    "equipment.C2": "{part: contactor, form: break, interlocked with: none}",
    "circuits.shore": "{from: inlet, to: out, run: [0.5 m via locker, C1], cable: flex-2.5}",
    "circuits.inverting": "{from: inverter.ac, to: out, run: [0.5 m via locker, C2], cable: flex-2.5}",
}


def test_relays_driven_by_the_shore_keep_the_pins_dead_until_one_welds() -> None:
    found = subject(VAN, "ac_source", "inverter", CONTACTORS)
    assert found.reaches_inlet_pins is False
    assert found.reaches_pins_by_one_weld is True


def test_an_interlock_holds_the_second_relay_open_when_the_first_welds() -> None:
    edits = {
        **CONTACTORS,
        "equipment.C1": "{part: contactor, interlocked with: [C2]}",
        "equipment.C2": "{part: contactor, form: break, interlocked with: [C1]}",
    }
    assert subject(VAN, "ac_source", "inverter", edits).reaches_pins_by_one_weld is False


def test_a_relay_of_which_the_drive_is_not_known_leaves_the_pins_in_doubt() -> None:
    edits = {**CONTACTORS, "parts.contactor": "{kind: relay, poles: 2, rating: 20 A, form: make, place: locker}"}
    assert isinstance(subject(VAN, "ac_source", "inverter", edits).reaches_inlet_pins, Unknown)
