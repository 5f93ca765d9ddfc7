"""One rule told in full, with its limits under every code."""

from __future__ import annotations

from functools import cache

import pytest

from checker.reports.rule_text import rule_text, whole_rule
from checker.rulebook import Rulebook, load_rulebook


@cache
def book() -> Rulebook:
    return load_rulebook()


def text_of(id: str) -> str:
    rule = next(one for one in book().rules if one.id == id)
    return " ".join("".join(rule_text(whole_rule(rule, book()))).split())


def test_a_limit_stands_with_each_code_that_gives_one_and_its_source() -> None:
    text = text_of("battery-device-near-its-terminal")
    for code in book().codes.values():
        if "battery_fuse_distance" in code.limits:
            value = code.limits["battery_fuse_distance"]
            assert f"{code.name}: {value.text}; {value.source.title}" in text
    assert "Limit battery fuse distance" in text
    assert "*" not in text.partition("As written")[0]


@pytest.mark.parametrize("id", ["device-breaks-the-fault", "converter-has-an-off-state"])
def test_it_says_why_and_what_puts_it_right_with_the_cautions(id: str) -> None:
    rule = next(one for one in book().rules if one.id == id)
    text = text_of(id)
    for words in (rule.why, rule.mend, rule.title, rule.require, *rule.covers):
        assert " ".join(words.split()) in text
    assert text.startswith("Mains and high-current direct current kill and burn.")
    assert text.endswith("a licensed electrician say otherwise, they are right.")


def test_every_rule_can_be_told_within_the_width() -> None:
    for rule in book().rules:
        found = whole_rule(rule, book())
        assert all(found["facts"].values())
        wide = [line for line in rule_text(found) if len(line) > 81 and " " in line.strip()]
        assert wide == [], rule.id
