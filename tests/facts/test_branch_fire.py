"""What becomes of a thin branch when a short stands before its own device."""

from __future__ import annotations

from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown
from checker.reading import read_text
from checker.shipped import shipped

TEXT = (shipped("rules") / "designs" / "coach-48.fitout.yaml").read_text("utf-8")
THIN = "{size: 1.5 mm2, cores: 1, insulation: 90 °C}"


def heating(run: str = "[2 m via cabin, F6, 0.2 m via cabin]", cable: str = THIN, **more: str) -> Subject:
    edits = (("circuits.heating.run", run), ("circuits.heating.cable", cable))
    others = tuple((f"circuits.heating.{key.replace('_', ' ')}", text) for key, text in more.items())
    found = Facts(read_text(TEXT, "coach-48", (*edits, *others))).subject("conductor", "heating")
    assert found is not None
    return found


def test_a_thin_branch_does_not_stand_what_the_fuse_of_the_bank_lets_through() -> None:
    assert heating().branch_stands_the_short is False


def test_a_thick_one_does() -> None:
    assert heating(cable="red-35").branch_stands_the_short is True


def test_of_a_branch_of_unknown_size_nobody_knows() -> None:
    assert isinstance(heating(cable="{size: unknown, cores: 1}").branch_stands_the_short, Unknown)


def test_what_lies_behind_its_own_device_is_spared() -> None:
    found = heating(run="[F6, 2.2 m via cabin]")
    assert found.branch_stands_the_short is True
    assert found.branch_off_combustible is True


def test_wood_burns_and_metal_does_not() -> None:
    assert heating(fixed_to="wood").branch_off_combustible is False
    assert heating(fixed_to="metal").branch_off_combustible is True


def test_in_metal_conduit_it_does_not_matter_what_lies_outside() -> None:
    assert heating(fixed_to="wood", covering="metal conduit").branch_off_combustible is True


def test_where_a_part_was_not_seen_nobody_knows_what_it_lies_on() -> None:
    found = heating(run="[unknown, F6, 0.2 m via cabin]").branch_off_combustible
    assert isinstance(found, Unknown)


def test_the_surface_of_the_place_tells_what_the_circuit_does_not() -> None:
    edits = (
        ("circuits.heating.run", "[2 m via cabin, F6, 0.2 m via cabin]"),
        ("circuits.heating.cable", THIN),
        ("places.cabin.surface", "wood"),
    )
    found = Facts(read_text(TEXT, "coach-48", edits)).subject("conductor", "heating")
    assert found is not None
    assert found.branch_off_combustible is False


def test_where_the_fuse_of_the_bank_was_not_seen_nobody_knows_what_feeds_a_branch() -> None:
    edits = (
        ("circuits.main.run", "[0.15 m via locker, unknown, 0.3 m via locker, isolator, 0.5 m via locker]"),
        ("circuits.heating.cable", THIN),
    )
    found = Facts(read_text(TEXT, "coach-48", edits)).subject("conductor", "heating")
    assert found is not None
    assert isinstance(found.is_branch, Unknown)
    assert isinstance(found.divides_before_device, Unknown)
    assert isinstance(found.branch_stands_the_short, Unknown)
    assert isinstance(found.branch_off_combustible, Unknown)
