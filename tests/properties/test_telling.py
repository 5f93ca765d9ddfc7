"""Nothing stands in for an unknown entry: what is met without it does not break by what it turns out to say."""

from __future__ import annotations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from tests.properties.designs import leaves_of, texts
from tests.properties.every_value import verdicts_with
from tests.properties.telling import excused, other_answers, stood_in
from tests.properties.verdicts import Leaf


@pytest.mark.parametrize("name", texts())
@given(data=st.data())
@settings(max_examples=8)
def test_what_an_unknown_entry_lets_pass_no_answer_breaks(name: str, data: st.DataObject) -> None:
    leaf = data.draw(st.sampled_from([one for one in leaves_of(name) if not excused(one) and [*other_answers(one)]]))
    text = data.draw(st.sampled_from([*other_answers(leaf)]))
    before, after = verdicts_with(name, leaf, "unknown"), verdicts_with(name, leaf, text)
    assume(before is not None and after is not None)
    assert before is not None and after is not None
    assert stood_in(before, after) == [], (leaf, text)


def test_answers_are_other_than_what_stands_there() -> None:
    assert [*other_answers(Leaf("equipment.F1.rating", "60 A"))] == ["24 A", "51 A", "69 A", "150 A"]
    assert [*other_answers(Leaf("equipment.b.nominal", "48 V"))] == ["45.6 V", "50.4 V"]
    assert [*other_answers(Leaf("equipment.c.both ways", "true"))] == ["false"]
    assert "by itself" in [*other_answers(Leaf("equipment.F1.reset", "by hand"))]
    assert [*other_answers(Leaf("equipment.F1.kind", "fuse"))] == []


def test_a_stand_in_would_be_seen() -> None:
    pair = ("rule", "device", "F1")
    assert len(stood_in({pair: "met"}, {pair: "breach"})) == 1
    assert len(stood_in({pair: "not applicable"}, {pair: "breach"})) == 1
    assert stood_in({pair: "unproven"}, {pair: "breach"}) == []
    assert stood_in({pair: "met"}, {}) == []
