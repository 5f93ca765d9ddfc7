"""Modes: what the whole direct-current side does in each state of use. Asked for, each solves its network once."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from checker.design.given import Where
from checker.facts.catalogue import fact, subjects
from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown

if TYPE_CHECKING:
    from checker.circuit.dc_solution import Solution
    from checker.facts.operating_point import Measure, OperatingPoint

METHOD = (
    "operating point of the network by Newton's method; from the lowest to the highest worst corner of all that is "
    "uncertain, sought by the slopes of the solved network"
)
SOURCE = "Kirchhoff's laws; what is assumed is noted, common practice, no source"


@subjects("mode", "One state of use.")
def modes(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for name, mode in facts.design.modes.items():
        yield name, mode.where, mode


def _point(s: Subject) -> OperatingPoint:
    from checker.facts.operating_point import operating_point

    return operating_point(s, s.item)


def _asked(s: Subject, measure: Measure) -> Any:
    """A quantity over all cases; its inputs are those of the operating point."""
    from checker.facts.operating_point import as_number

    if s.has_operating_point is not True:
        return Unknown(f"{s.id} has no operating point")
    return as_number(_point(s).value(measure, current=True))


@fact(
    "mode", "has_operating_point", type="yes/no",
    says="Steady voltages and currents exist for what runs in it.", method=METHOD, source=SOURCE,
)  # fmt: skip
def has_operating_point(s: Subject) -> Any:
    point = _point(s)
    for text in point.assumed:
        s.note(_said(text))
    if point.reason:
        s.note(_said(point.reason))
        return Unknown(f"hangs on what is not known: {'; '.join(point.missing)}") if point.missing else False
    return True


def _said(text: str) -> Any:
    return lambda: text


@fact(
    "mode", "lowest_bus_share", unit="%",
    says="Lowest voltage of a bar or board over its nominal voltage.", method=METHOD, source=SOURCE,
)  # fmt: skip
def lowest_bus_share(s: Subject) -> Any:
    from checker.facts.levels import level_at

    buses = []
    for name, item in s.facts.network.equipment.items():
        level = level_at(s.facts, f"{name}:+") if item.kind in ("bar", "board") else None
        if level is not None and level.system == "dc" and isinstance(level.nominal, float) and level.nominal > 0.0:
            buses.append((f"{name}:+", f"{name}:-", level.nominal))

    def lowest(found: Solution) -> float | None:
        shares = [(found.between(plus, minus), nominal) for plus, minus, nominal in buses]
        return min((volts / nominal for volts, nominal in shares if volts is not None), default=None)

    return _asked(s, lowest)


def _power_of(names: list[str]) -> Measure:
    def measure(found: Solution) -> float | None:
        flows = [found.flows[name] for name in names if name in found.flows]
        return sum(flow.watts or 0.0 for flow in flows)

    return measure


def _batteries(s: Subject, *, starting: bool) -> list[str]:
    names: list[str] = []
    for item in s.facts.design.equipment.values():
        if item.kind in ("battery", "bank") and item.says("purpose", "starting") == starting:
            names += s.facts.network.units.get(item.name, (item.name,))
    return names


@fact(
    "mode", "house_bank_power", unit="W",
    says="Power that the batteries other than the starting one take in; negative when they give.",
    method=METHOD, source=SOURCE,
)  # fmt: skip
def house_bank_power(s: Subject) -> Any:
    return _asked(s, _power_of(_batteries(s, starting=False)))


@fact(
    "mode", "starting_battery_power", unit="W",
    says="Power that the starting battery takes in; negative when it gives.", method=METHOD, source=SOURCE,
)  # fmt: skip
def starting_battery_power(s: Subject) -> Any:
    return _asked(s, _power_of(_batteries(s, starting=True)))


@fact(
    "mode", "alternator_power", unit="W", says="Power that the alternators give.", method=METHOD, source=SOURCE,
)  # fmt: skip
def alternator_power(s: Subject) -> Any:
    names = [item.name for item in s.facts.design.equipment.values() if item.kind == "alternator"]
    given = _power_of(names)

    def measure(found: Solution) -> float | None:
        power = given(found)
        return None if power is None else -power

    return _asked(s, measure)


@fact(
    "mode", "power_to_high_side", unit="W",
    says="Power that converters give at their high-voltage side.", method=METHOD, source=SOURCE,
)  # fmt: skip
def power_to_high_side(s: Subject) -> Any:
    names = [name for name, side in _point(s).plan.gives_at.items() if side == "high"]

    def measure(found: Solution) -> float | None:
        given = 0.0
        for flow in (found.flows[name] for name in names if name in found.flows):
            if flow.volts_out is not None and flow.amps_out is not None:
                given += flow.volts_out * flow.amps_out
        return given

    return _asked(s, measure)


@fact(
    "mode", "conductor_losses", unit="W",
    says="Heat in all conductors, fuses and contacts of the direct-current side.", method=METHOD, source=SOURCE,
)  # fmt: skip
def conductor_losses(s: Subject) -> Any:
    plan = _point(s).plan
    names = [name for group in (*plan.wires.values(), *plan.links.values()) for name in group]
    return _asked(s, _power_of(names))


@fact(
    "mode", "stops_by_voltage", unit="each",
    says="Loads and converters that the voltage stops, in the likely case.", method=METHOD, source=SOURCE,
)  # fmt: skip
def stops_by_voltage(s: Subject) -> Any:
    return _asked(s, lambda found: float(len(found.off)))
