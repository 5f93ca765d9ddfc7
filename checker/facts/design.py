"""The design as a whole: one subject that every rule can name."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.design.given import NOWHERE, Where
from checker.facts.catalogue import subjects
from checker.facts.subject import Facts


@subjects("design", "The vehicle, its papers and its people.")
def designs(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """The one design."""
    yield "design", NOWHERE, facts.design
