"""Conditions in words."""

from __future__ import annotations

import pytest

from checker.facts.catalogue import FactSpec
from checker.rulebook.check import check_expression
from checker.rulebook.words import in_words
from tests.rulebook.small import small_catalogue


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("conductor.is_live", "the conductor is live"),
        ("not conductor.is_live", "it is not so that the conductor is live"),
        (
            "conductor.is_live and (conductor.length < '2 m' or conductor.covering == 'conduit')",
            "the conductor is live, and (the length of the conductor is below 2 m, or the covering of the conductor "
            "is conduit)",
        ),
        (
            "every(device.rating <= conductor.capacity for device in conductor.protected_by if device.trip_free)",
            "for every device among the protected by of the conductor where the device: trip free: the rating of the "
            "device is at most the capacity of the conductor",
        ),
        ("count(conductor.protected_by) >= 1", "the number of the protected by of the conductor is at least 1"),
        (
            "max(device.rating for device in conductor.protected_by) * 2 <= conductor.capacity",
            "the greatest of the rating of the device over each device among the protected by of the conductor times "
            "2 is at most the capacity of the conductor",
        ),
        (
            "conductor.voltage in conductor.window",
            "the voltage of the conductor lies within the window of the conductor",
        ),
        (
            "conductor.covering in ('none', 'split tube', 'conduit')",
            "the covering of the conductor is none, split tube or conduit",
        ),
    ],
)
def test_a_condition_is_said_in_words(written: str, said: str) -> None:
    assert in_words(check_expression(written, "conductor", small_catalogue(), {})) == said


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("sealed_from_living", "the device is sealed from living"),
        ("charges_lithium", "the device charges lithium"),
        ("covers_inspected", "the device: covers inspected"),
        ("lug_told", "the device: lug told"),
    ],
)
def test_a_yes_or_no_reads_as_a_sentence_where_its_name_lets_it(name: str, said: str) -> None:
    catalogue = small_catalogue()
    catalogue.add(FactSpec("device", name, "yes/no", "", (), "", "So it is.", "", "", lambda subject: True))
    assert in_words(check_expression(f"device.{name}", "device", catalogue, {})) == said
