"""Equipment of which one property decides."""

from __future__ import annotations

from typing import Any

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask
from tests.facts.mains_subjects import COACH, subject

RUN = {"circuits.heating.run": "[1 m via duct, link, 2 m via duct]"}


@pytest.mark.parametrize(
    ("side", "recessed", "covered"),
    [("socket", "unknown", True), ("plug", "true", True), ("plug", "false", False), ("socket", "false", True)],
)
def test_the_live_half_is_covered_as_a_socket_or_by_recessed_contacts(side: str, recessed: str, covered: bool) -> None:
    edits = {**RUN, "equipment.link": f"{{kind: connector, live side: {side}, recessed contacts: {recessed}}}"}
    assert subject(COACH, "equipment", "link", edits).live_half_covered is covered


def test_bare_pins_that_nobody_saw_are_not_guessed() -> None:
    edits = {**RUN, "equipment.link": "{kind: connector, live side: plug}"}
    assert isinstance(subject(COACH, "equipment", "link", edits).live_half_covered, Unknown)


def test_what_has_no_such_property_has_none() -> None:
    found = subject(COACH, "equipment", "Q1")
    assert (found.live_half_covered, found.fails_to, found.maker_permits, found.isolation_monitored) == (None,) * 4


def test_the_box_of_a_joint_is_read_and_a_bare_joint_has_none() -> None:
    assert subject(COACH, "equipment", "shore-joint").boxed_in == "insulating"
    assert subject(COACH, "equipment", "shore-joint", {"joints.shore-joint.enclosure": "none"}).boxed_in is None


def test_the_isolation_a_traction_side_must_keep_grows_with_its_voltage() -> None:
    drive = "{{kind: traction outlet, traction voltage: {}, isolation resistance: 50 kΩ, place: locker}}"

    def of(voltage: str) -> Any:
        return subject(COACH, "equipment", "drive", {"equipment.drive": drive.format(voltage)})

    assert of("400 V DC").isolation_needed == pytest.approx(40_000.0)
    assert of("400 V AC").isolation_needed == pytest.approx(200_000.0)
    assert isinstance(of("400 V").isolation_needed, Unknown)
    assert subject(COACH, "equipment", "inverter").isolation_needed is None


def test_where_both_halves_stay_live_only_recessed_contacts_serve() -> None:
    run = {"circuits.sun-out.run": "[0.3 m via locker, link, 0.2 m via locker, F8, 0.1 m via locker]"}
    for recessed, covered in (("true", True), ("false", False)):
        edits = {**run, "equipment.link": f"{{kind: connector, live side: socket, recessed contacts: {recessed}}}"}
        assert ask("equipment", "link", "live_half_covered", edits) is covered
