"""How an entry of the file is told."""

from __future__ import annotations

import pytest

from checker.design.given import NOWHERE, Box
from checker.facts.subject import Input
from checker.quantities import Range
from checker.review.explain import input_text

BOX = Box((0.4, 0.0, 0.5), (0.6, Range(1.62, 1.98), 1.0))


@pytest.mark.parametrize(
    ("value", "unit", "said"),
    [
        (BOX, "m", "at [0.4 m, 0 m, 0.5 m], size [0.6 m, 1.62..1.98 m, 1 m]"),
        (((54.0, Range(60.0, 600.0)), (80.0, Range(10.0, 40.0))), "", "[54.0, 60..600], [80.0, 10..40]"),
        (("low", "high"), "", "low, high"),
        ((), "", "none"),
        (Range(10.5, 15.0), "V", "10.5..15 V"),
    ],
)  # fmt: skip
def test_values_without_a_text_of_their_own_are_told_as_the_file_writes_them(value, unit, said) -> None:  # type: ignore[no-untyped-def]
    assert input_text(Input("a.b", value, unit, "stated", NOWHERE, "")) == said
