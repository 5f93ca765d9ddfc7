"""Names, types and units: what does not go together is refused where it stands, with the nearest right name."""

from __future__ import annotations

from typing import Any

import pytest

from checker.rulebook.check import DEEPEST_LOOP, check_expression
from checker.rulebook.limits import LimitSpec
from checker.rulebook.nodes import Comparison, Const, Logic, Not, walk
from checker.rulebook.syntax import ExpressionError
from tests.rulebook.small import small_catalogue

CATALOGUE = small_catalogue()
LIMITS = {"drop": LimitSpec("drop", "number", "%", (), ""), "reach": LimitSpec("reach", "number", "mm", (), "")}


def check(text: str, about: str = "conductor") -> Any:
    return check_expression(text, about, CATALOGUE, LIMITS)


GOOD = [
    "true",
    "conductor.is_live",
    "not conductor.is_live",
    "conductor.is_live == false",
    "conductor.capacity > '30 A'",
    "conductor.capacity > '3 kA'",
    "'1 A' < conductor.capacity < '30 A'",
    "conductor.capacity * conductor.voltage > '30 W'",
    "conductor.capacity / conductor.current >= 1.25",
    "conductor.voltage / conductor.current < '2 Ω'",
    "-conductor.capacity < '0 A'",
    "design.ambient - '30 °C' <= '5 K'",
    "design.ambient + '5 K' <= '30 °C'",
    "design.drop <= limits.drop",
    "design.drop <= '3 %'",
    "design.drop <= 0.03",
    "conductor.length <= limits.reach",
    "conductor.voltage in conductor.window",
    "conductor.voltage in '10..15 V'",
    "conductor.window in '10..15 V'",
    "conductor.covering == 'conduit'",
    "conductor.covering in ('conduit', 'split tube')",
    "'conduit' in conductor.coverings",
    "conductor.main_device == none",
    "conductor.main_device.family != 'blade'",
    "conductor.main_device in conductor.protected_by",
    "count(conductor.protected_by) == 1",
    "count(device for device in conductor.protected_by if device.trip_free) >= 1",
    "count(device.trip_free for device in conductor.protected_by) >= 1",
    "sum(device.rating for device in conductor.protected_by) < '300 A'",
    "max(device.rating for device in conductor.protected_by) <= conductor.capacity",
    "some(some(conductor.is_live for conductor in device.protects) for device in conductor.protected_by)",
    "conductor.note == 'anything'",
    "conductor.reason == conductor.main_device.reason",
]


@pytest.mark.parametrize("text", GOOD)
def test_what_goes_together_is_taken(text: str) -> None:
    assert check(text).type.name == "yes/no"


BAD = [
    ("conductor.capasity > '3 A'", "capasity", "did you mean `capacity`?"),
    ("conducter.capacity > '3 A'", "conducter", "did you mean `conductor`?"),
    ("capacity > '3 A'", "capacity", "`conductor.capacity`"),
    ("device.rating > '3 A'", "device", "reach it with a loop"),
    ("limits.dorp > '3 %'", "dorp", "did you mean `drop`?"),
    ("limits > 3", "limits", ""),
    ("conductor.capacity > conductor.voltage", "conductor.capacity", "one dimension"),
    ("conductor.capacity > 30", "conductor.capacity", "give the number its unit, in quotes: `'30 A'`"),
    ("30 < conductor.capacity", "30", "give the number its unit, in quotes"),
    ("conductor.is_live == 'no'", "'no'", "write the fact alone, or `not` before it"),
    ("conductor.capacity > 30 A", "A", "a quantity stands in quotes: `'30 A'`"),
    ("conductor.capacity >= 1.5mm2 and conductor.is_live", "5mm2", "a quantity stands in quotes: `'1.5mm2'`"),
    ("conductor.is_live = true", "=", "what is equal is asked with `==`"),
    ("conductor.is_live AND conductor.is_live", "AND", "write `and` in small letters"),
    ("conductor.is_live and (1 < )", ")", "an expression is made of"),
    ("conductor.capacity > '30'", "'30'", "'30 A'"),
    ("conductor.capacity > '30 V'", "'30 V'", "'30 A'"),
    ("conductor.capacity > '30 a'", "'30 a'", ""),
    ("conductor.capacity > '25..30 A'", "'25..30 A'", "one number"),
    ("conductor.capacity > 'unknown'", "'unknown'", ""),
    ("conductor.capacity + conductor.voltage > '1 A'", "conductor.capacity", ""),
    ("conductor.capacity + 1 > '1 A'", "conductor.capacity", ""),
    ("design.ambient * 2 > '30 °C'", "design.ambient", ""),
    ("design.ambient > '5 K'", "'5 K'", "'25 °C'"),
    ("-design.ambient < '5 °C'", "design.ambient", "minus"),
    ("conductor.covering == 'conduits'", "'conduits'", "did you mean `conduit`?"),
    ("conductor.covering in ('conduit', 'pipe')", "'pipe'", ""),
    ("conductor.covering in ('conduit')", "'conduit'", "=="),
    ("conductor.covering > 'conduit'", "conductor.covering", "=="),
    ("conductor.covering == conductor.reason", "conductor.covering", ""),
    ("conductor.capacity in ('a', 'b')", "conductor.capacity", ""),
    ("conductor.capacity in conductor.window", "conductor.capacity", ""),
    ("conductor.capacity in conductor.protected_by", "conductor.capacity", ""),
    ("conductor.capacity", "conductor.capacity", "compare"),
    ("conductor.capacity and true", "conductor.capacity", "compare"),
    ("not conductor.capacity", "conductor.capacity", "compare"),
    ("conductor.is_live + 1 > 1", "conductor.is_live", "two numbers"),
    ("conductor.is_live == 1", "conductor.is_live", "one type"),
    ("conductor.is_live > false", "conductor.is_live", "=="),
    ("conductor.main_device > none", "conductor.main_device", "=="),
    ("conductor.main_device == conductor", "conductor.main_device", "one kind"),
    ("conductor.protected_by.rating > '1 A'", "conductor.protected_by.rating", "loop"),
    ("conductor.capacity.value > 1", "conductor.capacity", "no facts"),
    ("conductor.__class__ == none", "__class__", ""),
    ("conductor.kind == 'x'", "kind", ""),
    ("conductor.facts == none", "facts", ""),
    ("'1 A' == '1 A'", "'1 A'", "compare a fact"),
    ("none == none", "none", "fact"),
    ("open('x') == 1", "open", "`every`"),
    ("len(conductor.protected_by) > 1", "len", ""),
    ("conductor.is_live()", "conductor.is_live()", ""),
    ("every(conductor.protected_by)", "conductor.protected_by", "for x in list"),
    ("__import__('os').system('true') == 1", "__import__", ""),
    ("().__class__.__bases__ == none", "()", ""),
    ("every(device.trip_free for d in conductor.protected_by)", "d ", "for device in"),
    ("every(device.rating for device in conductor.protected_by)", "device.rating", "compare"),
    ("every(true for device in conductor.capacity)", "conductor.capacity", "list"),
    ("every(true for device in conductor.protected_by for device in conductor.protected_by)", "true for", "loop"),
    ("count(conductor.protected_by, conductor.protected_by) > 1", "count", "for x in list"),
    ("count(conductor.protected_by, key=1) > 1", "key=1", ""),
    ("sum(design.ambient for device in conductor.protected_by) > '1 °C'", "design.ambient", "number"),
    ("count(conductor.capacity) > 1", "conductor.capacity", "list"),
    ("count(device in conductor.protected_by) > 1", "device", ""),
    ("min(conductor.capacity, conductor.current) > '1 A'", "min", "for x in list"),
    ("('a', 'b') == conductor.covering", "('a'", "in"),
    ("(conductor.is_live, true)", "(conductor", ""),
    ("(device.rating for device in conductor.protected_by)", "(device", ""),
]


@pytest.mark.parametrize(("text", "where", "right"), BAD, ids=[text for text, _, _ in BAD])
def test_what_does_not_go_together_is_refused_at_its_place(text: str, where: str, right: str) -> None:
    with pytest.raises(ExpressionError) as caught:
        check(text)
    at = text.index(where)
    assert abs(caught.value.offset - at) <= 1, (caught.value.offset, caught.value.what)
    assert right in caught.value.right


def test_loops_stand_in_loops_to_a_stated_depth_only() -> None:
    inner = "some(device.trip_free for device in conductor.protected_by)"
    text = f"some(some({inner} for conductor in device.protects) for device in conductor.protected_by)"
    assert DEEPEST_LOOP == 2
    with pytest.raises(ExpressionError, match="deep"):
        check(text)


def test_the_design_is_at_hand_in_a_rule_about_the_design() -> None:
    assert check("design.drop < '3 %'", "design").type.name == "yes/no"


def test_a_chain_of_comparisons_is_an_and_of_its_pairs() -> None:
    tree = check("'1 A' < conductor.capacity <= '30 A'")
    assert isinstance(tree, Logic)
    assert [part.op for part in tree.parts if isinstance(part, Comparison)] == ["<", "<="]


def test_not_in_is_the_opposite_of_in() -> None:
    assert isinstance(check("conductor.voltage not in '10..15 V'"), Not)


def test_a_literal_is_in_si_from_loading_on() -> None:
    tree = check("conductor.length <= '300 mm'")
    assert [node.value for node in walk(tree) if isinstance(node, Const)] == [0.3]


def test_a_gauge_is_read_in_the_unit_of_what_stands_beside_it() -> None:
    catalogue = small_catalogue()
    from checker.facts.catalogue import FactSpec

    catalogue.add(FactSpec("conductor", "area", "number", "mm2", (), "", "", "", "", lambda s: None))
    tree = check_expression("conductor.area >= '6 AWG'", "conductor", catalogue, {})
    values = [node.value for node in walk(tree) if isinstance(node, Const)]
    assert values == [pytest.approx(13.3e-6, rel=0.001)]
