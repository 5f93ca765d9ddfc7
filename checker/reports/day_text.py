"""A day of the house as text: hour by hour, with bars; what it comes to, what it rests on and what was left out."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from checker.facts.day import HOUR, DayRun
from checker.quantities import Range, show
from checker.reports.caution import CAUTION, DEFERRAL
from checker.reports.paragraphs import Painter, heading, paragraph
from checker.reports.plain import one_line

BAR = 20
ROWS = 24


def day_text(document: dict[str, Any], run: DayRun, *, colour: bool = False) -> Iterator[str]:
    """The document for a reader at a terminal, 80 columns wide."""
    painter = Painter(colour)
    yield from _lines(paragraph(CAUTION))
    yield "\n"
    yield from _lines([painter.strong(one_line(f"A day of {document['design']['title']}"))])
    yield "\n"
    if document["left_out"]:
        yield from _lines(heading("Not known and counted as nothing: the day may be better or worse", painter))
        for line in document["left_out"]:
            yield from _lines(paragraph(f"- {line}"))
        yield "\n"
    yield from _lines(_hours(run))
    yield "\n"
    yield from _lines(heading("What it comes to", painter))
    for sentence in day_sentences(document, run):
        yield from _lines(paragraph(sentence))
    yield "\n"
    if document["trip"]:
        yield from _lines(heading("Day by day", painter))
        yield from _lines(_trip(document))
        yield "\n"
    yield from _lines(heading("Assumed", painter))
    for line in document["assumed"]:
        yield from _lines(paragraph(f"- {line}"))
    yield "\n"
    yield f"design sha256 {document['design']['sha256']}\nfitout {document['version']}\n\n"
    yield from _lines(paragraph(DEFERRAL))


def _lines(lines: Any) -> Iterator[str]:
    for line in lines:
        yield f"{line}\n"


def _hours(run: DayRun) -> Iterator[str]:
    """One row an hour: means of the powers, and the charge at its end with a bar."""
    yield " hour     use     sun drive  shore  battery  full"
    yield "            W       W     W      W        W"
    steps = run.worse
    size = max(1, len(steps) // ROWS)
    for at in range(0, len(steps), size):
        part = steps[at : at + size]
        load, sun, driving, shore, battery = (
            sum(step.load for step in part) / len(part),
            *(sum(step.given[n] for step in part) / len(part) for n in range(3)),
            sum(step.battery for step in part) / len(part),
        )
        charge = part[-1].charge
        bar = "#" * round(charge * BAR)
        hour = int(part[0].start_s // HOUR)
        yield (
            f"{hour:02d}:00  {load:6.0f}  {sun:6.0f} {driving:5.0f} {shore:6.0f} {battery:+8.0f} {charge:5.0%} {bar}"
        ).rstrip()


def day_sentences(document: dict[str, Any], run: DayRun) -> Iterator[str]:
    """What a day comes to, in whole sentences."""
    lowest, end = show(run.lowest, "%"), show(run.last, "%")
    at = document["lowest"]["at"]
    yield f"The battery is lowest at {_clock(at)}, {lowest} full, and at the end of the day {end}."
    keep = run.inputs.keep
    if isinstance(keep, float) and _bottom(run.lowest) < keep:
        yield f"That is below the {show(keep, '%')} that shall be kept."
    if document["missing"] > 0:
        yield f"{document['missing']:.0f} Wh are missing: the battery is empty while loads still ask."
    refill = document["refill"]
    said = "It is not full again within two weeks."
    if refill is not None:
        said = f"From its lowest it is full again after {refill:.3g} h."
    yield f"{said} Sources could have given {document['unused']:.0f} Wh more."
    yield from _balance(document)
    for source in document["sources"]:
        worse, better = source["share"]
        share = f"{worse:.0%}" if worse == better else f"{min(worse, better):.0%} to {max(worse, better):.0%}"
        yield f"{source['name']}: {share} of what is brought in."
    for one in document["alternators"]:
        yield _alternator_text(one)


def _trip(document: dict[str, Any]) -> Iterator[str]:
    """One row a day: lowest, at its end, missing; of a range the worse end, which decides."""
    start = document["start"]
    yield from paragraph(f"The trip begins {'full' if start is None else f'{start:.0%} full'}; the worse case is told.")
    yield " day  lowest    end  missing"
    for one in document["trip"]:
        lowest, end = _ends(one["lowest"])[0], _ends(one["end"])[0]
        yield f"{one['day']:4d}  {lowest:6.0%}  {end:5.0%}  {one['missing']:4.0f} Wh"


def _balance(document: dict[str, Any]) -> Iterator[str]:
    """What the day asks of the battery whatever the hours."""
    use, deficit = document["use"], document["deficit"]
    if use is not None and deficit is not None:
        least, most = _ends(deficit)
        brought = f"{_told(deficit)} Wh more than its sources can bring"
        if most <= 0:
            brought = f"{_told([-most, -least])} Wh less than its sources can bring"
        elif least < 0:
            brought = f"from {-least:.0f} Wh less to {most:.0f} Wh more than its sources can bring"
        yield f"The day uses {_told(use)} Wh, {brought}."
    lead = document["lead_share"]
    if lead is not None and _ends(lead)[0] < 1.0:
        share = _told([100.0 * end for end in _ends(lead)])
        yield (
            f"At its greatest power of the day a lead-acid battery gives {share} % of its rated capacity "
            "(Peukert); the steps count all of it."
        )
    usable, hours = document["usable"], document["autonomy"]["hours"]
    if usable is not None:
        yield f"{_told(usable)} Wh of {_told(document['capacity'])} Wh may be drawn every day."
    if hours is None:
        yield "How long the battery lasts without sun, engine and shore is not known."
    else:
        days = _told(document["autonomy"]["days"], 3)
        yield f"Without sun, engine and shore it lasts {_told(hours, 3)} h, which is {days} days."
    if document["cycles"] is not None:
        yield f"Such a day is {_told(document['cycles'], 3)} of a whole cycle of what may be drawn."
    cold = document["cold_hours"]
    if cold is None:
        yield "For how many hours of a coldest day it may not be charged is not known."
    elif _ends(cold)[1] > 0:
        yield f"On a coldest day it may not be charged for {_told(cold, 3)} h."


def _alternator_text(one: dict[str, Any]) -> str:
    duty, belt, idle = one["duty"], one["belt_power"], one["belt_power_at_idle"]
    if duty is None or belt is None:
        return f"{one['name']}: how hard it works while driving is not known."
    takes = f"takes up to {_ends(belt)[1]:.0f} W from the belt"
    more = "what it takes at idle is not known" if idle is None else f"at idle up to {_ends(idle)[1]:.0f} W"
    return f"{one['name']}: asked for up to {_ends(duty)[1]:.0%} of its hot output; {takes}, {more}."


def _ends(span: Any) -> tuple[float, float]:
    """Lowest and highest; an end that is open is endless."""
    low, high = span if isinstance(span, list) else (span, span)
    return (-math.inf if low is None else low), (math.inf if high is None else high)


def _told(span: Any, digits: int | None = None) -> str:
    """A number, or both ends of a range; to a whole number or to significant digits."""
    low, high = (f"{end:.0f}" if digits is None or end >= 1000 else f"{end:.{digits}g}" for end in _ends(span))
    return low if low == high else f"{low} to {high}"


def _bottom(value: Any) -> float:
    return float(value.low) if isinstance(value, Range) else float(value) if isinstance(value, float) else 0.0


def _clock(hours: float) -> str:
    minutes = round(hours * 60)
    return f"{minutes // 60:02d}:{minutes % 60:02d}"
