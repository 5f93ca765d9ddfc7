"""Findings with one cause are folded under the first; none is lost, and nothing hides behind something less severe."""

from __future__ import annotations

from pathlib import Path

from checker.quantities import Range
from tests.review.small import CAPACITY, CURRENT, Made, conductor, device, other, put

AFTER = other(CURRENT, after="[device-protects-conductor]")


def test_unproven_findings_that_need_the_same_entries_are_folded_under_the_first(tmp_path: Path) -> None:
    fuse = device("F1", Range(20.0, 40.0))
    made = [conductor(name, line, fuse, capacity=30.0) for name, line in (("a", 3), ("b", 2), ("c", 9))]
    _, found = put(tmp_path, [CAPACITY], [*made, fuse])
    head = "device-protects-conductor:conductor:b"
    assert {key: finding.under for key, finding in found.items()} == {
        head: None,
        "device-protects-conductor:conductor:a": head,
        "device-protects-conductor:conductor:c": head,
    }


def test_unproven_findings_that_need_different_entries_stand_for_themselves(tmp_path: Path) -> None:
    one, two = device("F1", Range(20.0, 40.0)), device("F2", Range(20.0, 40.0))
    made = [conductor("a", 1, one, capacity=30.0), conductor("b", 2, two, capacity=30.0)]
    _, found = put(tmp_path, [CAPACITY], [*made, one, two])
    assert {finding.under for finding in found.values()} == {None}


def cored(name: str, line: int, fuse: Made, reads: tuple[str, ...] = ("cables.red.size",)) -> Made:
    return Made("conductor", name, line, {"capacity": reads}, is_live=True, protected_by=(fuse,), capacity=30.0)


def test_breaches_of_one_rule_that_rest_on_the_same_entries_are_folded(tmp_path: Path) -> None:
    fuse = device("F1", 40.0)
    _, found = put(tmp_path, [CAPACITY], [cored("plus", 4, fuse), cored("minus", 5, fuse), fuse])
    assert found["device-protects-conductor:conductor:plus"].under is None
    assert found["device-protects-conductor:conductor:minus"].under == "device-protects-conductor:conductor:plus"


def test_breaches_that_rest_on_different_entries_stand_for_themselves(tmp_path: Path) -> None:
    fuse = device("F1", 40.0)
    made = [cored("plus", 4, fuse), cored("minus", 5, fuse, ("cables.black.size",)), fuse]
    _, found = put(tmp_path, [CAPACITY], made)
    assert {finding.under for finding in found.values()} == {None}


def test_a_rule_named_in_after_explains_the_breach_on_the_same_subject(tmp_path: Path) -> None:
    fuse = device("F1", 40.0)
    made = [
        conductor("both", 4, fuse, capacity=30.0, current=35.0),
        conductor("one", 5, device("F2", 10.0), capacity=20.0, current=35.0),
        fuse,
    ]
    _, found = put(tmp_path, [CAPACITY, AFTER], made)
    head = "device-protects-conductor:conductor:both"
    assert found["current-within-capacity:conductor:both"].under == head
    assert found["current-within-capacity:conductor:one"].under is None


def test_a_rule_named_in_after_explains_the_breach_on_a_subject_the_working_speaks_of(tmp_path: Path) -> None:
    devices = other(
        CURRENT, id="device-trips-free", title="Does not trip", about="device", signal="danger", given="true",
        require="device.trip_free", mend="Another.",
    )  # fmt: skip
    after = other(CAPACITY, after="[device-trips-free]")
    fuse = device("F1", 40.0, trip_free=False)
    _, found = put(tmp_path, [devices, after], [conductor("feed", 4, fuse, capacity=30.0), fuse])
    assert found["device-protects-conductor:conductor:feed"].under == "device-trips-free:device:F1"


def test_nothing_hides_behind_something_less_severe(tmp_path: Path) -> None:
    after = other(CAPACITY, after="[current-within-capacity]")
    fuse = device("F1", 40.0)
    made = [conductor("feed", 4, fuse, capacity=30.0, current=35.0), fuse]
    _, found = put(tmp_path, [CURRENT, after], made)
    assert found["device-protects-conductor:conductor:feed"].signal == "danger"
    assert found["device-protects-conductor:conductor:feed"].under is None


def test_two_rules_that_name_each_other_do_not_both_disappear(tmp_path: Path) -> None:
    one = other(CAPACITY, after="[current-within-capacity]")
    two = other(CURRENT, after="[device-protects-conductor]", signal="danger")
    fuse = device("F1", 40.0)
    _, found = put(tmp_path, [one, two], [conductor("feed", 4, fuse, capacity=30.0, current=35.0), fuse])
    assert sorted(str(finding.under) for finding in found.values()).count("None") == 1


def test_the_head_of_a_fold_stands_for_itself(tmp_path: Path) -> None:
    fuse = device("F1", 40.0)
    made = []
    for name, line in (("a", 4), ("b", 5), ("c", 6)):
        one = cored(name, line, fuse)
        one.values["current"] = 35.0
        made.append(one)
    _, found = put(tmp_path, [CAPACITY, AFTER], [*made, fuse])
    heads = {finding.under for finding in found.values()} - {None}
    assert heads
    assert all(found[head].under is None for head in heads if head is not None)
    assert len(found) == 6
