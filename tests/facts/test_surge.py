"""Surge devices and the residual-current devices before them."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, subject

RCD = "{{kind: rcd, rating: 25 A, trips at: 30 mA, type: A, poles: 2, {}place: locker}}"


def behind(more: str) -> dict[str, str]:
    return {"equipment.R0": RCD.format(more), "circuits.shore-in.run": "[1 m via locker, Q1, R0]"}


def test_a_surge_device_spares_what_stands_behind_it_or_is_surge_proof() -> None:
    assert subject(COACH, "inlet", "inlet").surge_spares_residual is True
    assert subject(COACH, "inlet", "inlet", behind("surge proof: true, ")).surge_spares_residual is True
    assert subject(COACH, "inlet", "inlet", behind("surge proof: false, ")).surge_spares_residual is False
    assert isinstance(subject(COACH, "inlet", "inlet", behind("")).surge_spares_residual, Unknown)


def test_a_stretch_that_was_not_seen_may_hide_a_device() -> None:
    unseen = {"circuits.shore-in.run": "[1 m via locker, Q1, unknown]"}
    assert isinstance(subject(COACH, "inlet", "inlet", unseen).surge_spares_residual, Unknown)


def test_without_a_surge_device_there_is_nothing_to_spare() -> None:
    assert subject(VAN, "inlet", "inlet").surge_spares_residual is None
