"""Rules put to subjects: one verdict for each pair, findings with their working, and nothing that ends a review."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.quantities import UNKNOWN, Range, Unknown
from checker.reading import read_text
from checker.review import CAUTION, review
from checker.rulebook import load_rulebook
from checker.shipped import shipped
from tests.review.small import (
    CAPACITY,
    CURRENT,
    Made,
    MadeFacts,
    book,
    conductor,
    device,
    made_design,
    other,
    put,
)

OVER = "device-protects-conductor:conductor:feed"


def feed(rating: object = 40.0, capacity: object = 30.0) -> list[Made]:
    fuse = device("F1", rating)
    return [conductor("feed", 10, fuse, capacity=capacity, current=5.0), fuse]


def test_every_pair_is_counted_once_under_its_verdict(tmp_path: Path) -> None:
    made = [
        conductor("a", 1, device("F1", 10.0), capacity=30.0),
        conductor("b", 2, device("F2", 40.0), capacity=30.0),
        conductor("c", 3, device("F3", 40.0)),
        Made("conductor", "d", 4, is_live=False),
    ]
    done, _ = put(tmp_path, [CAPACITY], made)
    assert done.counts == {"breach": 1, "unproven": 1, "set aside": 0, "met": 1, "not applicable": 1}
    assert [finding.verdict for finding in done.findings] == ["breach", "unproven"]


def test_a_breach_says_what_is_wrong_with_numbers(tmp_path: Path) -> None:
    _, found = put(tmp_path, [CAPACITY], feed())
    finding = found[OVER]
    assert finding.says == "Rating of F1 is 40 A, more than the capacity of feed, 30 A."
    assert finding.mend == "Fit a device of at most 30 A in place of 40 A."
    assert (finding.where.file, finding.where.line, finding.where.column) == ("van.fitout.yaml", 10, 3)
    assert (finding.signal, finding.title, finding.covers) == (
        "danger", "The device lets through more than the conductor can carry", ("overload",),
    )  # fmt: skip
    assert finding.sources == ("A standard, 433, 2008 (from memory)",)


def test_the_working_goes_down_to_the_lines_of_the_file(tmp_path: Path) -> None:
    _, found = put(tmp_path, [CAPACITY], feed())
    working = found[OVER].working
    assert working[:2] == (
        "require: some(device.rating <= conductor.capacity for device in conductor.protected_by) (no)",
        "  device.rating (40 A) <= conductor.capacity (30 A): no",
    )
    assert "rating of F1 = 40 A ()" in working
    assert "  how rating came" in working
    assert "  equipment.F1.rating: as written (line 50)" in working
    assert "  cables.feed.size: as written (line 10)" in working


def test_a_sentence_of_the_rule_stands_before_a_made_one(tmp_path: Path) -> None:
    says = "says: '{{ conductor }} carries {{ conductor.capacity }} behind {{ device }}.'"
    text = CAPACITY.replace("why:", f"{says}\nwhy:")
    _, found = put(tmp_path, [text], feed())
    assert found[OVER].says == "feed carries 30 A behind F1."


def test_an_unproven_finding_says_which_entries_would_decide_it(tmp_path: Path) -> None:
    _, found = put(tmp_path, [CAPACITY], feed(rating=Range(20.0, 40.0)))
    finding = found[OVER]
    assert finding.verdict == "unproven"
    assert [(need.path, need.line) for need in finding.needs] == [("equipment.F1.rating", 50)]
    assert finding.says == "Cannot be decided: rating of F1 is 20..40 A, compared with the capacity of feed, 30 A."
    assert finding.mend == "Find out and write down: equipment.F1.rating."


def test_an_unproven_finding_says_why_a_value_is_not_known(tmp_path: Path) -> None:
    _, found = put(tmp_path, [CAPACITY], feed(rating=Unknown("the plate is hidden")))
    assert found[OVER].says.endswith("Not known because: the plate is hidden.")
    assert any("rating of F1 = unknown: the plate is hidden" in line for line in found[OVER].working)


def test_an_undecided_given_asks_for_what_would_settle_it(tmp_path: Path) -> None:
    fuse = device("F1", 40.0)
    made = Made("conductor", "feed", 10, {"is_live": ("circuits.feed.from",)}, capacity=30.0, protected_by=(fuse,))
    _, found = put(tmp_path, [CAPACITY], [made, fuse])
    assert found[OVER].verdict == "unproven"
    assert [need.path for need in found[OVER].needs] == ["circuits.feed.from"]


def test_what_a_finding_rests_on_without_being_written_is_named(tmp_path: Path) -> None:
    fuse = device("F1", 40.0)
    made = Made(
        "conductor", "feed", 10,
        {"capacity": (("cables.red.insulation", "default"), ("cables.red.size", "assumed"), "cables.red.cores")},
        is_live=True, capacity=30.0, protected_by=(fuse,),
    )  # fmt: skip
    _, found = put(tmp_path, [CAPACITY], [made, fuse])
    assert found[OVER].assumes == ("cables.red.insulation", "cables.red.size")


LIMITED = other(CURRENT, id="reach-within-limit", require="conductor.length <= limits.reach", given="true")


def test_the_working_says_whose_limit_was_used(tmp_path: Path) -> None:
    made = [Made("conductor", "feed", 1, length=1.0)]
    _, found = put(tmp_path / "a", [LIMITED], made, code="eu")
    finding = found["reach-within-limit:conductor:feed"]
    assert "limit for reach = 300 mm (eu; Another standard, 2, 2021)" in finding.working
    assert finding.sources[-1] == "Another standard, 2, 2021"
    share = other(LIMITED, id="drop-within-limit", require="design.drop <= limits.drop")
    _, found = put(tmp_path / "b", [share], made, code="eu")
    line = "limit for drop = 5 % (intl, because eu gives none; A standard, 1, 2020 (from memory))"
    assert line in found["drop-within-limit:conductor:feed"].working


def test_a_limit_that_no_code_gives_is_asked_for(tmp_path: Path) -> None:
    _, found = put(tmp_path, [LIMITED], [Made("conductor", "feed", 1, length=1.0)])
    finding = found["reach-within-limit:conductor:feed"]
    assert finding.verdict == "unproven"
    assert [need.path for need in finding.needs] == ["limits.reach"]
    said = "limit for reach = unknown: neither intl nor the international code gives it; elsewhere: eu 300 mm"
    assert said in finding.working


def test_a_crash_is_one_unproven_pair_and_the_review_says_that_it_broke(tmp_path: Path) -> None:
    good, fuse = feed(rating=10.0)
    bad = conductor("bad", 20, fuse, capacity=ZeroDivisionError("division by zero"))
    done, found = put(tmp_path, [CAPACITY], [good, bad, fuse])
    assert done.counts["met"] == 1
    finding = found["device-protects-conductor:conductor:bad"]
    assert finding.verdict == "unproven"
    assert "ZeroDivisionError: division by zero" in finding.says
    assert [(one.rule, one.id) for one in done.broken] == [("device-protects-conductor", "bad")]


def test_subjects_that_cannot_be_listed_are_unproven_for_every_rule(tmp_path: Path) -> None:
    facts = MadeFacts(*feed())
    facts.refuse = "conductor"
    done, found = put(tmp_path, [CAPACITY, CURRENT], [], facts=facts)
    assert done.counts["unproven"] == 2
    assert {finding.about.id for finding in found.values()} == {"(all)"}
    assert {one.cause for one in done.broken} == {"RuntimeError: the graph broke"}


def test_a_finding_that_cannot_be_explained_stands_without_its_working(tmp_path: Path) -> None:
    fuse = device("F1", 40.0)
    made = conductor("feed", 10, fuse, capacity=30.0)
    text = CAPACITY.replace("{{ conductor.capacity }}", "{{ conductor.current }}")
    made.values["current"] = ValueError("no current")
    done, found = put(tmp_path, [text], [made, fuse])
    assert found[OVER].verdict == "breach"
    assert "ValueError: no current" in found[OVER].says
    assert [one.cause for one in done.broken] == ["ValueError: no current"]


def test_everything_is_kept_on_request(tmp_path: Path) -> None:
    made = [*feed(rating=10.0), Made("conductor", "d", 4, is_live=False)]
    done, found = put(tmp_path, [CAPACITY], made, keep_all=True)
    assert {finding.verdict for finding in done.findings} == {"met", "not applicable"}
    assert found[OVER].says == "Rating of F1 is 10 A, compared with the capacity of feed, 30 A."
    assert found["device-protects-conductor:conductor:d"].says == "Is live of d: no."


def test_findings_stand_worst_first_then_by_line_then_by_rule(tmp_path: Path) -> None:
    fuse = device("F1", 40.0)
    made = [conductor(name, line, fuse, capacity=30.0, current=35.0) for name, line in (("z", 5), ("a", 9), ("m", 7))]
    done, _ = put(tmp_path, [CURRENT, CAPACITY], [*made, fuse])
    shown = [(finding.signal, finding.where.line) for finding in done.findings]
    assert shown == [("danger", 5), ("danger", 7), ("danger", 9), ("warning", 5), ("warning", 7), ("warning", 9)]


def test_the_order_of_subjects_and_rules_changes_nothing(tmp_path: Path) -> None:
    fuse = device("F1", 40.0)
    made = [conductor(name, line, fuse, capacity=30.0, current=35.0) for name, line in (("z", 5), ("a", 9), ("m", 7))]
    first, _ = put(tmp_path / "a", [CURRENT, CAPACITY], [*made, fuse])
    second, _ = put(tmp_path / "b", [CAPACITY, CURRENT], [fuse, *reversed(made)])
    assert first.findings == second.findings


def test_the_review_is_stamped(tmp_path: Path) -> None:
    done, _ = put(tmp_path, [CAPACITY], feed())
    assert done.design == {"file": "van.fitout.yaml", "title": "A van", "sha256": "d" * 64}
    assert done.rulebook["rules"] == 1
    assert done.rulebook["code"] == "intl"
    assert len(done.rulebook["sha256"]) == 64
    assert done.version
    assert done.caution == CAUTION


def test_the_code_is_that_of_the_design_unless_another_is_asked_for(tmp_path: Path) -> None:
    from checker.review import review

    rulebook = book(tmp_path, CAPACITY)
    assert review(made_design(code="eu"), rulebook, facts=MadeFacts()).rulebook["code"] == "eu"
    assert review(made_design(code="eu"), rulebook, "intl", facts=MadeFacts()).rulebook["code"] == "intl"
    assert review(made_design(code=UNKNOWN), rulebook, facts=MadeFacts()).rulebook["code"] == "intl"
    with pytest.raises(ValueError, match="there is no code `mars`"):
        review(made_design(), rulebook, "mars", facts=MadeFacts())


def test_no_finding_promises_anything(tmp_path: Path) -> None:
    done, _ = put(tmp_path, [CAPACITY, CURRENT], feed(), keep_all=True)
    words = " ".join(" ".join((one.says, one.mend, *one.working)) for one in done.findings).lower()
    assert not any(word in words for word in ("safe", "compliant", "certified"))


@pytest.mark.parametrize("code", ["us-rv", "us-boat", "eu"])
def test_another_code_judges_as_if_the_file_named_it(code: str) -> None:
    """Rules that ask which code applies must follow, not the limits alone."""
    text = (Path(str(shipped("rules"))) / "designs" / "mains-coach.fitout.yaml").read_text("utf-8")
    asked = review(read_text(text), load_rulebook(), code, keep_all=True)
    written = review(read_text(text, edits=[("code", code)]), load_rulebook(), keep_all=True)
    assert {one.key: one.verdict for one in asked.findings} == {one.key: one.verdict for one in written.findings}
    plain = review(read_text(text), load_rulebook(), keep_all=True)
    assert {one.key: one.verdict for one in asked.findings} != {one.key: one.verdict for one in plain.findings}
