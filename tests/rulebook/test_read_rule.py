"""A rule file: every mistake is told with file, line, column and what would be right."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.rulebook import RuleErrors, load_rulebook
from tests.rulebook.small import rule_text, small_catalogue, write_rules


@pytest.fixture(autouse=True)
def _no_cache(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("FITOUT_CACHE", "none")


def problems(root: Path, *texts: str) -> list[str]:
    with pytest.raises(RuleErrors) as caught:
        load_rulebook(catalogue=small_catalogue(), base=write_rules(root, *texts))
    return [str(problem) for problem in caught.value.problems]


FILE = "rules/overcurrent/device-protects-conductor.yaml"
EXAMPLES = "{{met: [{0}], breach: [{1}], unproven: [{2}]}}"


def examples(met: str = "{name: a, facts: {}}") -> str:
    return EXAMPLES.format(met, "{name: b, facts: {}}", "{name: c, facts: {}}")


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"require": "conductor.capasity > '3 A'"}, ":6:20: a conductor has no fact `capasity`; did you mean `capac"),
        ({"require": ">\n  conductor.is_live\n  and conductor.capacity > '3 V'"}, ":8:28: `'3 V'` is a voltage"),
        ({"given": "conductor.current"}, ":5:8: the whole is `conductor.current`, a current, not a yes/no"),
        ({"signal": "terrible"}, ":3:9: `terrible` is no signal"),
        ({"about": "condutcor"}, ":4:8: there is no kind `condutcor`; did you mean `conductor`?"),
        ({"about": "blade"}, ":4:8: there is no kind `blade`; there are `conductor`, `design` or `device`"),
        ({"title": "It ends."}, ":2:8: the title ends with a full stop"),
        ({"title": "x" * 200}, "more than 160"),
        ({"why": "''"}, ":7:6: `why` is empty"),
        ({"why": "[a]"}, ":7:6: `why` is not a text"),
        ({"colour": "red"}, "a rule has no key `colour`"),
        ({"covers": "overload"}, ":10:9: `covers` is not a list"),
        ({"covers": "[Overload]"}, "`Overload` is no name"),
        ({"covers": "[a, a]"}, "`a` stands twice"),
        ({"mend": "Fit {{ device.ratin }}."}, ":8:21: a device has no fact `ratin`; did you mean `rating`?"),
        ({"mend": "Fit {{ design.ambient + 1 }}."}, ":8:14:"),
        ({"mend": "Fit {{ conductor.capacity."}, ":8:11: `{{` stands alone"),
        ({"mend": "Fit {{ 3 }}."}, "only a fact, a limit or a subject"),
        ({"sources": "[]"}, ":11:10: there is no source"),
        ({"sources": "[{title: A, basis: hearsay}]"}, "does not say its basis"),
        ({"sources": "[{title: A, basis: seen}]"}, "no edition"),
        ({"sources": "[{tittle: A, basis: memory}]"}, "did you mean `title`?"),
        ({"sources": "[A]"}, "this is no source"),
        ({"after": "[no-such-rule]"}, "`after` names no rule: `no-such-rule`"),
        ({"after": "[device-protects-conductor]"}, "`after` names no rule"),
        ({"examples": "{met: [{name: a, facts: {}}]}"}, "no example shows `breach`"),
        ({"examples": "[]"}, "these are no examples"),
        ({"examples": examples("{name: a}")}, "the example gives no facts"),
        ({"examples": examples("{name: A B, facts: {}}")}, "no name of small letters"),
        ({"examples": examples("{name: b, facts: {}}")}, "`b` stands twice"),
        ({"examples": examples("{name: a, facts: {conductor.capacity: 30 V}}")}, "expected a current"),
        ({"examples": examples("{name: a, facts: {conductor.capasity: 30 A}}")}, "did you mean `capacity`?"),
        ({"examples": examples("{name: a, facts: {device.rating: 30 A}}")}, "neither a conductor, the design nor"),
        ({"examples": examples("{name: a, facts: {limits.dorp: 3 %}}")}, "did you mean `drop`?"),
        ({"examples": examples("{name: a, facts: {conductor.is_live: on}}")}, "`on` is no yes/no"),
        ({"examples": examples("{name: a, facts: {conductor.covering: tube}}")}, "not one of its words"),
        ({"examples": examples("{name: a, facts: {conductor.coverings: conduit}}")}, "where a list belongs"),
        ({"examples": examples("{name: a, facts: {conductor.protected_by: 3}}")}, "a list of device"),
        ({"examples": examples("{name: a, facts: {conductor.protected_by: [{rating: 3 A}]}}")}, "`device.rating`"),
        ({"examples": examples("{name: a, facts: {}, code: mars}")}, "there is no code `mars`"),
        ({"examples": examples("{name: a, design: base}")}, "which subject it is about"),
        ({"examples": examples("{name: a, design: Base x, about: b}")}, "names no base design"),
        ({"examples": examples("{name: a, design: base, about: b, facts: {}}")}, "has no key `facts`"),
        ({"examples": "{right: [], met: []}"}, "`right` is no verdict"),
    ],
)  # fmt: skip
def test_a_mistake_is_told_at_its_place(tmp_path: Path, changes: dict[str, str], said: str) -> None:
    order = {"order": ["id", "title", "signal", "after", "about"]} if "after" in changes else {}
    found = problems(tmp_path, rule_text(**changes, **order))
    assert any(said in line for line in found), found
    assert all(line.startswith(FILE) for line in found)


def test_keys_in_another_order_are_refused(tmp_path: Path) -> None:
    found = problems(tmp_path, rule_text(order=["id", "signal"]))
    assert len(found) == 1
    assert f"{FILE}:3:1: `title` stands after `signal`; the order is id, title, signal" in found[0]


@pytest.mark.parametrize("key", ["title", "signal", "about", "require", "why", "mend", "covers", "sources", "examples"])
def test_a_missing_key_is_told(tmp_path: Path, key: str) -> None:
    found = problems(tmp_path, rule_text(drop=[key]))
    assert f"{FILE}:1:1: the rule has no `{key}`; write `{key}:`" in found


def test_a_rule_lies_in_a_file_of_its_name(tmp_path: Path) -> None:
    root = write_rules(tmp_path, rule_text())
    (root / "overcurrent" / "device-protects-conductor.yaml").rename(root / "overcurrent" / "other.yaml")
    with pytest.raises(RuleErrors, match=r"other.yaml:1:5: the rule `device-protects-conductor` stands in"):
        load_rulebook(catalogue=small_catalogue(), base=root)


def test_every_problem_of_every_file_is_told_at_once(tmp_path: Path) -> None:
    second = rule_text(id="second", require="conductor.x", title="Another").replace("overload", "Overload")
    found = problems(tmp_path, rule_text(signal="x", why="''"), second)
    assert len(found) == 4
    assert {line.split(":")[0].rsplit("/", 1)[1] for line in found} == {"device-protects-conductor.yaml", "second.yaml"}


def test_given_may_be_left_out(tmp_path: Path) -> None:
    root = write_rules(tmp_path, rule_text(drop=["given"], examples=examples()))
    assert load_rulebook(catalogue=small_catalogue(), base=root).rules[0].given == "true"


def test_a_sort_of_thing_is_told_the_kind_of_subject_it_belongs_to(tmp_path: Path) -> None:
    import checker.facts  # noqa: F401 - fills the catalogue
    from checker.facts.catalogue import CATALOGUE

    with pytest.raises(RuleErrors) as caught:
        load_rulebook(catalogue=CATALOGUE, base=write_rules(tmp_path, rule_text(about="relay")))
    right = "write `switch`, and `given: switch.type_of_switch == 'relay'`"
    assert f"there is no kind `relay`; {right}" in str(caught.value)


def test_covers_names_what_the_catalogue_of_requirements_holds(tmp_path: Path) -> None:
    root = write_rules(tmp_path, rule_text(covers="[fuse-near-battery, fuse-near-batery]", examples=examples()))
    assert len(load_rulebook(catalogue=small_catalogue(), base=root).rules) == 1  # no catalogue lies beside these rules
    (root / "requirements.csv").write_text("id,topic,decidable\nfuse-near-battery,fuses,design\n", encoding="utf-8")
    with pytest.raises(RuleErrors) as caught:
        load_rulebook(catalogue=small_catalogue(), base=root)
    (problem,) = str(caught.value).splitlines()
    assert "there is no published requirement `fuse-near-batery`; did you mean `fuse-near-battery`?" in problem
