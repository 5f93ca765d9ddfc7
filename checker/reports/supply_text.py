"""The supply states for a terminal, 80 columns wide."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Final

from checker.reports import supply_words as words
from checker.reports.caution import CAUTION, DEFERRAL
from checker.reports.paragraphs import Painter, heading, paragraph

if TYPE_CHECKING:
    from checker.reports.supply_states import StateData, SupplyStates

COLUMN: Final = 16
INDENT: Final = "  "


def supply_text(table: SupplyStates | None, *, colour: bool = False) -> Iterator[str]:
    """The table line by line, each with its line end."""
    for line in _lines(table, Painter(colour)):
        yield line + "\n"


def supply_json(table: SupplyStates | None) -> Iterator[str]:
    """The same as JSON; `null` when the design has no mains."""
    yield json.dumps(table, indent=2, ensure_ascii=False) + "\n"


def _lines(table: SupplyStates | None, paint: Painter) -> Iterator[str]:
    yield from paragraph(CAUTION)
    yield ""
    if table is None:
        yield from paragraph(words.NO_MAINS)
    else:
        yield from (paint.strong(line) for line in paragraph(table["title"] or "(no title)"))
        for sentence in (table["file"], *words.summary(table)):
            yield from paragraph(sentence)
        yield ""
        if table["states"]:
            yield from heading("Supply states", paint)
        for number, state in enumerate(table["states"], 1):
            yield from _state(number, state, paint)
        if table["isolation"]:
            yield from heading("What stays live", paint)
            for opened in table["isolation"]:
                yield from paragraph(f"With {opened['opened']}:")
                for one in words.left(opened):
                    yield from paragraph(one, INDENT, INDENT * 2)
            yield ""
        if table["losses"]:
            yield from heading("What goes dark, away from the shore", paint)
            for loss in table["losses"]:
                yield from paragraph(f"Without {loss['failed']}: {words.lost(loss)}", "", INDENT)
            yield ""
    yield from paragraph(DEFERRAL)


def _state(number: int, state: StateData, paint: Painter) -> Iterator[str]:
    lead = f"{number}. "
    yield from (paint.strong(line) for line in paragraph(lead + state["name"], "", " " * len(lead)))
    yield from _entry("Doubt", [words.certain(state)])
    yield from _entry("Sources", [words.sources(state)])
    yield from _entry("Neutral to earth", [words.links(island) for island in state["neutral"]])
    yield from _entry("Residual path", [words.residual(path) for path in state["residual"]])
    yield from _entry("Live outlets", [words.outlets(state)])
    yield from _entry("Inlet pins", [words.pins(state)])
    yield from _entry("Reached by", [words.reached(state)])
    yield ""


def _entry(label: str, entries: Iterable[str]) -> Iterator[str]:
    lead = f"{INDENT}{label:<{COLUMN}}  "
    for entry in entries:
        if entry:
            yield from paragraph(entry, lead, " " * (len(lead) + 2))
            lead = " " * len(lead)
