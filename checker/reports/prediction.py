"""What the instruments should read, mode by mode: as plain data, and as comma-separated values from it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any, Final, TypedDict

from checker import __version__
from checker.reports.caution import CAUTION, DEFERRAL
from checker.reports.fault_table import Short, shorts
from checker.reports.place_heat import PlaceHeat, heat_by_place
from checker.reports.plain import one_line

if TYPE_CHECKING:
    from checker.design.model import Design
    from checker.facts.operating_point import OperatingPoint
    from checker.facts.subject import Facts

PREDICTION_FORMAT: Final = 1
LEAST_A = 1.0
"""Conductors and devices that carry less are listed only when asked for by name."""


class Expected(TypedDict):
    """One reading to expect; `likely` and the ends are null where nothing can be told, and `unknown` says why.

    `side` is the nominal voltage of what it belongs to, such as 12 V, and empty where nothing tells, as of a negative.
    """

    at: str
    side: str
    quantity: str
    unit: str
    likely: float | None
    lowest: float | None
    highest: float | None
    touch: str
    state: str
    unknown: str


class ModeExpected(TypedDict):
    """One mode; `reason` says why there is no operating point, `trouble` the same of each case that has none.

    `unsupplied` are the loads that are to run and that no supply reaches; `shorts` is empty unless it was asked for.
    """

    mode: str
    says: str
    reason: str
    trouble: list[str]
    unsupplied: list[str]
    readings: list[Expected]
    heat: list[PlaceHeat]
    assumed: list[str]
    missing: list[str]
    shorts: list[Short]


class Prediction(TypedDict):
    """All of it."""

    prediction: int
    caution: str
    design: dict[str, str]
    version: str
    cases: str
    instruments: str
    modes: list[ModeExpected]
    deferral: str


def prediction(
    design: Design, facts: Facts, modes: Sequence[str], at: Sequence[str], *, faults: bool = False
) -> Prediction:
    """What should be read in each of `modes`; only at the names in `at` where there are any.

    With `faults` also what a short circuit at the end of each circuit can draw.
    """
    from checker.facts.instruments import INSTRUMENT_SAYS
    from checker.facts.operating_point import cases_say

    found = [_mode(facts, mode, at, faults) for mode in modes]
    return {
        "prediction": PREDICTION_FORMAT,
        "caution": CAUTION,
        "design": stamp(design),
        "version": __version__,
        "cases": cases_say(facts),
        "instruments": INSTRUMENT_SAYS,
        "modes": found,
        "deferral": DEFERRAL,
    }


def stamp(design: Design) -> dict[str, str]:
    """Which design it is about."""
    title = design.title.value
    return {"file": str(design.file), "title": title if isinstance(title, str) else "", "sha256": design.sha256}


def _mode(facts: Facts, name: str, at: Sequence[str], faults: bool) -> ModeExpected:
    from checker.facts.operating_point import operating_point

    subject = facts.subject("mode", name)
    if subject is None:
        raise LookupError(f"there is no mode {name}")
    point = operating_point(subject, subject.item)
    says = subject.item.value("says")
    return {
        "mode": name,
        "says": says if isinstance(says, str) else "",
        "reason": point.reason,
        "trouble": list(point.trouble),
        "unsupplied": list(point.unsupplied),
        "readings": list(_readings(point, at)),
        "heat": [] if at else list(heat_by_place(point, subject)),
        "assumed": list(point.assumed),
        "missing": list(point.missing),
        "shorts": shorts(facts, name, at) if faults else [],
    }


def _readings(point: OperatingPoint, at: Sequence[str]) -> Iterator[Expected]:
    from checker.facts.instruments import UNITS, drop_spot, names_on, predicted, side_of, spots_at, tolerance
    from checker.quantities import Unknown

    network = point.plan.facts.network
    for name in at or names_on(point):
        spots = spots_at(point, name)
        wanted = at or _is_main(point, name)
        loss = drop_spot(point, name) if name in network.by_circuit else None
        if not wanted and not _carries(point, name):
            continue
        nominal = side_of(point, name)
        side = f"{nominal:g} V" if isinstance(nominal, float) else ""
        for one in [*spots, *([loss] if loss is not None else [])]:
            found = predicted(point, one)
            if not wanted and isinstance(found, Unknown):
                continue
            known = None if isinstance(found, Unknown) else found
            slack = 0.0 if known is None else tolerance(one.quantity, known.likely)
            yield {
                "at": name,
                "side": side,
                "quantity": one.quantity,
                "unit": UNITS[one.quantity],
                "likely": None if known is None else _digits(known.likely),
                "lowest": None if known is None else _digits(bottom(one.quantity, known.low - slack)),
                "highest": None if known is None else _digits(known.high + slack),
                "touch": one.between,
                "state": _state(point, name),
                "unknown": found.reason if isinstance(found, Unknown) else "",
            }


def bottom(quantity: str, value: float) -> float:
    """The lowest reading: a current or a power is read without its direction, so never below nothing."""
    return value if quantity == "voltage" and value > 0.0 else max(0.0, value)


def _is_main(point: OperatingPoint, name: str) -> bool:
    """Buses, sources, converters and what runs: listed in every mode where they are alive."""
    from checker.facts.instruments import BUSES, spots_at

    item = point.plan.facts.network.equipment.get(name.partition(".")[0])
    if item is None or point.likely is None or all(one.ask(point.likely) is None for one in spots_at(point, name)):
        return False
    owned = item.name in point.plan.sources or item.name in point.plan.loads or item.name in point.plan.units
    return item.kind in BUSES or owned or f"{item.name}.dc" in point.plan.sources


def _carries(point: OperatingPoint, name: str) -> bool:
    from checker.facts.instruments import spots_at

    if point.likely is None:
        return False
    amps = [one.ask(point.likely) for one in spots_at(point, name) if one.quantity == "current"]
    return any(value is not None and abs(value) >= LEAST_A for value in amps)


def _state(point: OperatingPoint, name: str) -> str:
    owner = name.partition(".")[0]
    for element in (name, owner, f"{owner}.dc", *point.plan.units.get(owner, ())[:1]):
        state = point.state(element)
        if state:
            return state
    return ""


def _digits(value: float) -> float:
    """Four significant digits: more would claim more than is known."""
    return float(f"{value:.4g}")


SHORTS = (
    ("least short circuit", "least", "least_at_most"),
    ("greatest short circuit", "greatest_at_least", "greatest"),
)
COLUMNS = ("mode", "at", "quantity", "unit", "likely", "lowest", "highest", "touch", "state", "unknown")


def prediction_csv(found: Prediction) -> Iterator[str]:
    """As comma-separated values; the caution stands in lines that begin with #."""
    import csv
    import io

    for line in (found["caution"], f"{found['design']['file']}, sha256 {found['design']['sha256']}", found["cases"]):
        yield f"# {one_line(line)}\n"
    held = io.StringIO()
    writer = csv.writer(held, lineterminator="\n")
    writer.writerow(COLUMNS)
    for mode in found["modes"]:
        for one in mode["readings"]:
            row: dict[str, Any] = {"mode": mode["mode"], **one}
            writer.writerow([_cell(row[column]) for column in COLUMNS])
        for short in mode["shorts"]:
            row = {"mode": mode["mode"], "unit": "A", "state": short["weakest"], **short}
            for quantity, low, high in SHORTS:
                row.update(quantity=quantity, lowest=row[low], highest=row[high])
                writer.writerow([_cell(row.get(column)) for column in COLUMNS])
    yield held.getvalue()


def _cell(value: Any) -> str:
    if value is None:
        return ""
    text = one_line(str(value))
    return f"'{text}" if text[:1] in ("=", "+", "@") else text  # a spreadsheet takes these for a formula
