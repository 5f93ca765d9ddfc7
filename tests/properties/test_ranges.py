"""A range says less than a number in it, and never something else.

An exact quantity widened to a range around it may leave a rule undecided and change no verdict otherwise. One change
is none: a rule of which nobody can tell any more whether it applies is met when its requirement holds all over the
range. The other way round it is the same: what was met or broken all over a range stays so for every number in it.
"""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from checker.reading import ReadingErrors, read_text
from tests.properties.designs import leaves_of, texts, verdicts_of
from tests.properties.verdicts import Leaf, Pair, exact, verdicts


@cache
def quantities(name: str) -> list[Leaf]:
    """The values of a design that are one number and not nought.

    How many cores a cable has says which conductors there are: two or three of them are two designs, not one range.
    """
    found = (leaf for leaf in leaves_of(name) if not leaf.path.endswith(".cores"))
    return [leaf for leaf in found if (exact(leaf.text) or (0.0, ""))[0]]


def widened(leaf: Leaf, share: float) -> tuple[str, float, float, str]:
    """The leaf as a range around its number; its ends and unit."""
    found = exact(leaf.text)
    assert found is not None
    number, unit = found
    low, high = sorted((float(f"{number * (1 - share):.9g}"), float(f"{number * (1 + share):.9g}")))
    return f"{low}..{high}{unit}", low, high, unit


def overturned(before: dict[Pair, str], after: dict[Pair, str]) -> list[tuple[Pair, str, str]]:
    """Verdicts that a range changed although it may not."""
    allowed = {("not applicable", "met")}
    return [
        (pair, verdict, after.get(pair, "gone"))
        for pair, verdict in before.items()
        if after.get(pair, "gone") not in (verdict, "unproven") and (verdict, after.get(pair)) not in allowed
    ]


def narrowed_against(wide: dict[Pair, str], narrow: dict[Pair, str]) -> list[tuple[Pair, str, str]]:
    """Verdicts decided over the whole range that a number in it does not share."""
    return [
        (pair, verdict, narrow.get(pair, "gone"))
        for pair, verdict in wide.items()
        if verdict in ("met", "breach")
        and narrow.get(pair, "gone") != verdict
        and (verdict, narrow.get(pair)) != ("met", "not applicable")
    ]


def read_with(name: str, leaf: Leaf, text: str) -> dict[Pair, str] | None:
    """The verdicts with one value written otherwise; None where it may not be."""
    try:
        return verdicts(read_text(texts()[name], edits=[(leaf.path, text)]))
    except ReadingErrors:
        return None


def may_be(name: str, leaf: Leaf, text: str) -> bool:
    """Whether the file may say that instead."""
    try:
        read_text(texts()[name], edits=[(leaf.path, text)])
    except ReadingErrors:
        return False
    return True


@pytest.mark.parametrize("name", texts())
@given(data=st.data())
@settings(max_examples=7)
def test_a_range_overturns_no_verdict_and_numbers_in_it_keep_it(name: str, data: st.DataObject) -> None:
    leaf = data.draw(st.sampled_from(quantities(name)))
    text, low, high, unit = widened(leaf, data.draw(st.sampled_from((0.001, 0.1, 0.5))))
    wide = read_with(name, leaf, text)
    assume(wide is not None)
    assert wide is not None
    assert overturned(verdicts_of(name), wide) == [], (leaf, text)
    inside = low + (high - low) * data.draw(st.sampled_from((0.0, 0.3, 1.0)))
    narrow = read_with(name, leaf, f"{inside:.9g}{unit}")
    assume(narrow is not None)
    assert narrow is not None
    assert narrowed_against(wide, narrow) == [], (leaf, text, inside)


def test_most_quantities_may_be_ranges() -> None:
    """Else the property above would speak of nothing."""
    for name in texts():
        found = quantities(name)[:: max(1, len(quantities(name)) // 20)]
        assert sum(may_be(name, leaf, widened(leaf, 0.1)[0]) for leaf in found) > len(found) / 2, name


def test_an_overturned_verdict_would_be_seen() -> None:
    pair = ("rule", "device", "F1")
    assert overturned({pair: "met"}, {pair: "breach"}) == [(pair, "met", "breach")]
    assert overturned({pair: "breach"}, {}) == [(pair, "breach", "gone")]
    assert overturned({pair: "met"}, {pair: "unproven"}) == []
    assert narrowed_against({pair: "breach"}, {pair: "not applicable"}) == [(pair, "breach", "not applicable")]
    assert narrowed_against({pair: "unproven"}, {pair: "breach"}) == []
