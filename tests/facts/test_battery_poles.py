"""Marks and clamps at the poles of a battery."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.mains_subjects import VAN, subject


def poles(plus: str, minus: str) -> object:
    return subject(VAN, "bank", "bank", {"equipment.bank.terminals": f"{{+: {{{plus}}}, -: {{{minus}}}}}"})


def test_both_poles_count() -> None:
    found = poles("clamp: bolted, marked: true", "clamp: spring clip, marked: true")
    assert found.poles_marked is True
    assert found.leads_held is False
    assert poles("clamp: bolted, marked: true", "clamp: bolted, marked: false").poles_marked is False


def test_poles_that_the_file_does_not_describe_are_asked_for() -> None:
    bare = subject(VAN, "bank", "bank")
    assert isinstance(bare.poles_marked, Unknown)
    assert isinstance(bare.leads_held, Unknown)
    assert isinstance(poles("clamp: bolted", "clamp: bolted").poles_marked, Unknown)
