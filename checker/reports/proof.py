"""Recorded readings beside what was to be expected, and what may explain those that lie outside."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Final, TypedDict

from checker import __version__
from checker.reports.caution import CAUTION, DEFERRAL
from checker.reports.paragraphs import Painter, heading, paragraph
from checker.reports.plain import one_line
from checker.reports.prediction import bottom, stamp

if TYPE_CHECKING:
    from checker.design.model import Design
    from checker.facts.subject import Facts, Subject

PROOF_FORMAT: Final = 1
AGREES, OUTSIDE, UNDECIDED = "agrees", "outside", "undecided"
INSTRUMENT = "the instrument, its range, or where and which way round it was put: read again with another one"


class Compared(TypedDict):
    """One reading; `result` is agrees, outside or undecided, and `unknown` says why it is undecided.

    `differs` says from which other reading it lies too far; empty where it does not.
    """

    mode: str
    at: str
    quantity: str
    unit: str
    shown: str
    likely: float | None
    lowest: float | None
    highest: float | None
    result: str
    unknown: str
    differs: str
    line: int
    column: int


class Explained(TypedDict):
    """A fault that would explain what was read; `left` is the share of the deviations it leaves unexplained."""

    what: str
    left: float
    also: list[str]
    tell: str
    signs: list[str]


class ModeProved(TypedDict):
    """The readings of one mode and, when some lie outside, what may explain them."""

    mode: str
    readings: list[Compared]
    causes: list[Explained]


class Proof(TypedDict):
    """All of it."""

    proof: int
    caution: str
    design: dict[str, str]
    version: str
    cases: str
    instruments: str
    counts: dict[str, int]
    modes: list[ModeProved]
    deferral: str


def proof(design: Design, facts: Facts) -> Proof:
    """Every reading of the design that can be compared, by mode."""
    from checker.facts.instruments import INSTRUMENT_SAYS
    from checker.facts.operating_point import cases_say

    by_mode: dict[str, list[Subject]] = {}
    for s in facts.subjects("reading"):
        by_mode.setdefault(str(s.item.item.value("mode")), []).append(s)
    modes = [_mode(facts, name, taken) for name, taken in by_mode.items()]
    counts = dict.fromkeys((AGREES, OUTSIDE, UNDECIDED), 0)
    for mode in modes:
        for one in mode["readings"]:
            counts[one["result"]] += 1
    return {
        "proof": PROOF_FORMAT,
        "caution": CAUTION,
        "design": stamp(design),
        "version": __version__,
        "cases": cases_say(facts),
        "instruments": INSTRUMENT_SAYS,
        "counts": counts,
        "modes": modes,
        "deferral": DEFERRAL,
    }


def _mode(facts: Facts, name: str, taken: Sequence[Subject]) -> ModeProved:
    compared = [_compared(s) for s in taken]
    found: list[Explained] = []
    if any(one["result"] == OUTSIDE for one in compared):
        found = list(_causes(facts, name, taken))
    return {"mode": name, "readings": compared, "causes": found}


def _compared(s: Subject) -> Compared:
    from checker.facts.instruments import UNITS, tolerance
    from checker.facts.reading import expected_value
    from checker.facts.reading_pairs import apart
    from checker.quantities import Unknown

    agrees = s.agrees
    expected = expected_value(s)
    known = None if isinstance(expected, Unknown) else expected
    differs = apart(s) if agrees is False else None
    slack = 0.0 if known is None else tolerance(s.item.quantity, known.likely)
    return {
        "mode": str(s.item.item.value("mode")),
        "at": str(s.item.item.value("at")),
        "quantity": s.item.quantity,
        "unit": UNITS[s.item.quantity],
        "shown": s.item.item.get(s.item.quantity).text,
        "likely": None if known is None else _digits(known.likely),
        "lowest": None if known is None else _digits(bottom(s.item.quantity, known.low - slack)),
        "highest": None if known is None else _digits(known.high + slack),
        "result": UNDECIDED if isinstance(agrees, Unknown) else AGREES if agrees is True else OUTSIDE,
        "unknown": agrees.reason if isinstance(agrees, Unknown) else "",
        "differs": "" if differs is None else differs.words,
        "line": s.where.line,
        "column": s.where.column,
    }


def _causes(facts: Facts, name: str, taken: Sequence[Subject]) -> Iterator[Explained]:
    from checker.facts.causes import causes, reads_of
    from checker.facts.operating_point import operating_point

    mode = facts.subject("mode", name)
    if mode is None:
        return
    point = operating_point(mode, mode.item)
    for cause in causes(point, reads_of(taken, point)):
        yield {
            "what": cause.fault.what,
            "left": float(f"{cause.left:.2f}"),
            "also": list(cause.also),
            "tell": cause.fault.tell,
            "signs": list(cause.signs),
        }
    tell = "zero the clamp, check the meter on a known voltage, and repeat"
    yield {"what": INSTRUMENT, "left": 0.0, "also": [], "tell": tell, "signs": []}


def _digits(value: float) -> float:
    return float(f"{value:.4g}")


def proof_text(found: Proof, *, colour: bool = False) -> Iterator[str]:
    """As text for the terminal."""
    paint = Painter(colour)
    yield from _lines(paragraph(found["caution"]))
    yield "\n"
    yield from _lines(paragraph(found["design"]["title"]))
    told = found["counts"]
    counts = f"{told[AGREES]} agree, {told[OUTSIDE]} outside, {told[UNDECIDED]} undecided"
    yield from _lines(paragraph(f"{found['design']['file']}: recorded readings, {counts}"))
    yield from _lines(paragraph(f"Cases: {found['cases']}."))
    yield from _lines(paragraph(f"Allowed besides for the {found['instruments']}."))
    if not found["modes"]:
        yield from _lines(paragraph("There is no reading of a voltage, current or power in a mode to compare."))
    for mode in found["modes"]:
        yield "\n"
        yield from _lines(heading(f"Mode {one_line(mode['mode'])}", paint))
        for one in mode["readings"]:
            yield from _lines(paragraph(_sentence(found["design"]["file"], one), "  ", "      "))
        if mode["causes"]:
            yield "\n"
            yield from _lines(paragraph("What may explain it, the best explanation of all readings of the mode first:"))
        for number, cause in enumerate(mode["causes"], 1):
            yield from _cause(number, cause)
    yield "\n"
    yield from _lines(paragraph(found["deferral"]))


def _sentence(file: str, one: Compared) -> str:
    lead = f"{one['result']}: {one['quantity']} at {one['at']}: {one['shown']}"
    where = f"({file}:{one['line']}:{one['column']})"
    if one["unknown"]:
        return f"{lead}; nothing to compare with: {one['unknown']} {where}"
    differs = f"; but it lies {one['differs']}" if one["differs"] else ""
    ends = f"from {one['lowest']:g} to {one['highest']:g} {one['unit']}"
    return f"{lead}; expected {one['likely']:g}, {ends}{differs} {where}"


def _cause(number: int, cause: Explained) -> Iterator[str]:
    left = "" if cause["what"] == INSTRUMENT else f"; leaves {cause['left']:.0%} of the deviation"
    yield from _lines(paragraph(f"{number}. {cause['what']}{left}", "  ", "     "))
    if cause["also"]:
        yield from _lines(paragraph(f"The same at: {', '.join(cause['also'])}", "     ", "       "))
    yield from _lines(paragraph(f"How to tell: {cause['tell']}.", "     ", "       "))
    for sign in cause["signs"]:
        yield from _lines(paragraph(f"Sign: {sign}", "     ", "       "))


def _lines(lines: Sequence[str] | Iterator[str]) -> Iterator[str]:
    for line in lines:
        yield f"{line}\n"
