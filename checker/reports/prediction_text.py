"""What the instruments should read, as text: one line for each place to hold an instrument to, side by side of the net.

Asked for single places it tells all that can be read there and where to touch; what every mode assumes stands once.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from checker.reports.fault_table import short_lines
from checker.reports.paragraphs import Painter, heading, paragraph
from checker.reports.place_heat import heat_lines
from checker.reports.plain import one_line
from checker.reports.prediction import Expected, ModeExpected, Prediction

NAME, VALUE = 22, 26
DECIMALS = {"V": 2, "A": 1}
COLUMNS = (("voltage", "volts"), ("current", "amperes"))
CABLE_COLUMNS = (("current", "amperes"), ("voltage lost", "volts lost along it"))


def prediction_text(found: Prediction, *, whole: bool = False, colour: bool = False) -> Iterator[str]:
    """As text for the terminal; `whole` tells every quantity of every place, and where to touch."""
    paint = Painter(colour)
    yield from _lines(paragraph(found["caution"]))
    yield "\n"
    yield from _lines(paragraph(found["design"]["title"]))
    yield from _lines(paragraph(f"{found['design']['file']}: what the instruments should read"))
    yield from _lines(paragraph(f"Cases: {found['cases']}."))
    yield from _lines(paragraph(f"Lowest and highest allow for the {found['instruments']}."))
    common = _common(found["modes"])
    for mode in found["modes"]:
        yield "\n"
        yield from _lines(heading(f"Mode {one_line(mode['mode'])}", paint))
        yield from _lines(paragraph(mode["says"]))
        yield from _every_quantity(mode["readings"]) if whole else _overview(mode["readings"])
        yield from _lines(heat_lines(mode["heat"]))
        yield from _lines(short_lines(mode["shorts"]))
        yield from _list("No operating point", mode["trouble"])
        yield from _list("No supply reaches", mode["unsupplied"])
        yield from _list("Not known", mode["missing"])
        yield from _list("Assumed", [each for each in mode["assumed"] if each not in common])
    if common:
        yield "\n"
        yield from _lines(heading("Assumed in every mode", paint))
        for entry in common:
            yield from _lines(paragraph(entry, "  - ", "    "))
    yield "\n"
    yield from _lines(paragraph(found["deferral"]))


def _common(modes: Sequence[ModeExpected]) -> list[str]:
    """What all modes assume, where there is more than one; a mode without operating point assumes nothing."""
    solved = [mode["assumed"] for mode in modes if mode["assumed"]]
    if len(solved) < 2:
        return []
    return [each for each in solved[0] if all(each in other for other in solved[1:])]


def _list(title: str, entries: Sequence[str]) -> Iterator[str]:
    if entries:
        yield f"  {title}:\n"
    for entry in entries:
        yield from _lines(paragraph(entry, "    - ", "      "))


def _overview(readings: Sequence[Expected]) -> Iterator[str]:
    """Places first, then cables, each by side; what is not known comes last."""
    known = [one for one in readings if not one["unknown"]]
    cables = {one["at"] for one in known if one["quantity"] == "voltage lost"}
    shown: set[tuple[str, str]] = set()
    for title, columns, these in (
        ("at", COLUMNS, [one for one in known if one["at"] not in cables]),
        ("cable", CABLE_COLUMNS, [one for one in known if one["at"] in cables]),
    ):
        for side in dict.fromkeys(one["side"] for one in these):
            here = [one for one in these if one["side"] == side]
            yield _row(f"{title}, {side} side" if side else title, [name for _, name in columns], indent=2)
            for _, held in groupby(here, key=lambda one: one["at"]):
                yield from _place(list(held), [quantity for quantity, _ in columns], shown)
    for reason in dict.fromkeys(one["unknown"] for one in readings if one["unknown"]):
        names = ", ".join(_without_number(readings, reason))
        yield from _lines(paragraph(f"unknown at {names}: {reason}", "  ", "      "))


def _without_number(readings: Sequence[Expected], reason: str) -> Iterator[str]:
    """Places where nothing is known for that reason; with the quantity where another quantity is known there."""
    known = {one["at"] for one in readings if one["unknown"] != reason}
    quantities: dict[str, list[str]] = {}
    for one in readings:
        if one["unknown"] == reason:
            quantities.setdefault(one["at"], []).append(one["quantity"])
    for at, names in quantities.items():
        yield f"{at} ({', '.join(names)})" if at in known else at


def _place(held: Sequence[Expected], quantities: Sequence[str], shown: set[tuple[str, str]]) -> Iterator[str]:
    by_quantity = {one["quantity"]: one for one in held}
    cells = [_cell(by_quantity[quantity]) if quantity in by_quantity else "" for quantity in quantities]
    yield _row(one_line(held[0]["at"]), cells, indent=4)
    state = held[0]["at"].partition(".")[0], held[0]["state"]
    if held[0]["state"] and state not in shown:
        shown.add(state)
        yield from _lines(paragraph(held[0]["state"], " " * 6, " " * 6))


def _row(name: str, cells: Sequence[str], indent: int) -> str:
    """A name too long for its column stands on a line of its own."""
    start = f"{' ' * indent}{name}"
    if len(start) > NAME:
        start += f"\n{'':<{NAME}}"
    return (f"{start:<{NAME}}" + "".join(f"  {cell:<{VALUE}}" for cell in cells)).rstrip() + "\n"


def _cell(one: Expected) -> str:
    likely, lowest, highest = (_read(one["unit"], end) for end in (one["likely"], one["lowest"], one["highest"]))
    return f"{likely} ({lowest} to {highest})"


def _read(unit: str, value: float | None) -> str:
    """As finely as the instrument in the hand shows it."""
    return "" if value is None else f"{value:.{DECIMALS[unit]}f}"


def _every_quantity(readings: Sequence[Expected]) -> Iterator[str]:
    """All that can be read at each place, in columns, with where the instrument is held."""
    if not readings:
        return
    yield f"  {'':<16} {'likely':>9} {'lowest':>9} {'highest':>9}\n"
    for name, held in groupby(readings, key=lambda one: one["at"]):
        these = list(held)
        state = f", {these[0]['state']}" if these[0]["state"] else ""
        yield from _lines(paragraph(f"{one_line(name)}{state}", "  ", "      "))
        for one in these:
            if one["unknown"]:
                yield from _lines(paragraph(f"{one['quantity']}: unknown: {one['unknown']}", "    ", "      "))
                continue
            row = f"    {one['quantity']:<14} {_shown(one['likely'])} {_shown(one['lowest'])} {_shown(one['highest'])}"
            yield f"{row} {one['unit']}\n"
            yield from _lines(paragraph(one["touch"], " " * 6, " " * 6))


def _shown(value: float | None) -> str:
    return f"{'' if value is None else f'{value:.4g}':>9}"


def _lines(lines: Iterable[str]) -> Iterator[str]:
    for line in lines:
        yield f"{line}\n"
