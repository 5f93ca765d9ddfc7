"""Limits: declared once, given by each code with a source, the international code behind them all."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from checker.rulebook.limits import Limits, read_code, read_limit_names
from checker.rulebook.problems import Problems
from checker.rulebook.source import load_tree
from tests.rulebook.small import EU, INTL, LIMIT_NAMES


def specs(text: str = LIMIT_NAMES) -> tuple[dict, list[str]]:  # type: ignore[type-arg]
    problems = Problems("limits.yaml")
    tree = load_tree(text.encode(), problems)
    assert tree is not None
    found = read_limit_names(tree, {}, problems)
    return found, [str(problem) for problem in problems.found]


def code(text: str, name: str = "intl") -> tuple[object, list[str]]:
    problems = Problems("code.yaml")
    tree = load_tree(text.encode(), problems)
    assert tree is not None
    found = read_code(tree, name, specs()[0], problems)
    return found, [str(problem) for problem in problems.found]


def limits(name: str) -> Limits:
    codes = {"intl": code(INTL)[0], "eu": code(EU, "eu")[0]}
    return Limits(name, specs()[0], codes)  # type: ignore[arg-type]


def test_a_code_gives_its_own_value_first() -> None:
    assert limits("eu")["reach"] == 0.3
    assert limits("eu").taken["reach"][0] == "eu"


def test_what_a_code_does_not_give_is_taken_from_the_international_one() -> None:
    assert limits("eu")["drop"] == 0.05
    assert limits("eu").taken["drop"][0] == "intl"


def test_what_no_code_gives_is_unknown_and_says_so() -> None:
    value = limits("eu")["bare_allowed"]
    assert type(value) is Unknown
    assert value.reason == "the code eu gives no bare allowed"


def test_what_another_code_gives_stands_beside_the_value_taken() -> None:
    assert limits("intl").elsewhere("reach") == "; elsewhere: eu 300 mm"
    assert limits("eu").elsewhere("reach") == ""


def test_a_code_that_gives_the_same_value_is_not_told_twice() -> None:
    codes = {
        "intl": code(INTL)[0],
        "eu": code(EU + "  drop: {value: 5.0 %, source: {title: A, basis: memory}}\n", "eu")[0],
    }
    assert Limits("eu", specs()[0], codes).elsewhere("drop") == ""  # type: ignore[arg-type]


def test_a_limit_that_is_not_declared_is_no_limit() -> None:
    with pytest.raises(KeyError):
        limits("eu")["nothing"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Drop: {unit: V, says: x}", "no name of a limit"),
        ("drop: {unit: volts, says: x}", "no unit `volts`"),
        ("drop: {unit: V}", "no sentence"),
        ("drop: {says: x}", "no type"),
        ("drop: V", "says nothing"),
        ("drop: {unit: V, says: x, colour: red}", "no key `colour`"),
    ],
)
def test_a_wrong_declaration_is_told(text: str, said: str) -> None:
    assert any(said in problem for problem in specs(text)[1])


SOURCE = "source: {title: A, basis: practice}"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (INTL.replace("5 %", "5 V"), "code.yaml:5:17: expected a percentage"),
        (INTL.replace("5 %", "3..5 %"), "one exact value"),
        (INTL.replace("5 %", "unknown"), "one exact value"),
        (INTL.replace("5 %", "none"), "one exact value"),
        (INTL.replace("drop:", "dorp:"), "did you mean `drop`?"),
        (INTL.replace("basis: memory", "basis: hope"), "does not say its basis"),
        (INTL.replace("code: intl", "code: eu"), "the code is called `eu`, its file `intl`"),
        ("code: intl\ntitle: x\nsays: y\n", "gives no limits"),
        ("code: intl\ntitle: x\nsays: y\nlimits: {drop: 5 %}\n", "needs a value and a source"),
        ("code: intl\ntitle: x\nsays: y\nlimits: {drop: {value: 5 %}}\n", "needs a value and a source"),
        (f"code: intl\ntitle: x\nlimits: {{drop: {{value: 5 %, {SOURCE}}}}}\n", "no `says`"),
        (INTL + "more: x\n", "no key `more`"),
    ],
)
def test_a_wrong_code_is_told(text: str, said: str) -> None:
    assert any(said in problem for problem in code(text)[1]), code(text)[1]
