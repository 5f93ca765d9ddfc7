"""Known faults put into the network of the example coach, and what a fitter would then read.

The numbers that the file leaves open stand at their likely values or are drawn within their ranges: a real vehicle is
never the likely one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import cache
from pathlib import Path
from random import Random
from typing import NamedTuple

import checker.facts  # noqa: F401  fills the catalogue
from checker.circuit.dc_elements import Branch, Converter, CurrentLoad, Element, PowerLoad, Storage, Supply
from checker.circuit.dc_solution import Solution
from checker.circuit.dc_solve import solve
from checker.circuit.elements import CHASSIS
from checker.facts.dc_amounts import Amount, Case, Choice
from checker.facts.dc_corners import heat_of
from checker.facts.instruments import CURRENT, VOLTAGE, spot, tolerance
from checker.facts.operating_point import OperatingPoint
from checker.facts.subject import Facts
from checker.reading import read_text
from tests.facts.dc_designs import point_of

COACH = Path("examples/estuary-coach.fitout.yaml")
MODES = ("driving", "idling")
UNITS = {VOLTAGE: "V", CURRENT: "A"}
PLACES = (
    *((name, VOLTAGE) for name in (
        "alternator", "start-battery", "chassis-loads", "bar-12", "converter.low", "converter.high", "bar-48",
        "bar-bank", "inverter",
    )),
    *((name, CURRENT) for name in (
        "alternator-cable", "chassis-feed", "converter-low", "converter-high", "bank-main", "inverter-feed",
    )),
)  # fmt: skip

Spoil = Callable[[Element], Element | None]


class Known(NamedTuple):
    """One fault put in: its name, which sorts of cause are right, at which of these places, and what it does."""

    name: str
    sorts: tuple[str, ...]
    places: tuple[str, ...]
    spoil: Spoil


class Drawn(Choice):
    """Every uncertain number drawn evenly within its range, in the order in which they are asked for."""

    def __init__(self, seed: int) -> None:
        self._random = Random(seed)
        self._held: dict[int, float] = {}

    def of(self, amount: Amount, *, raises: bool) -> float:
        if not amount.known or amount.low >= amount.high:
            return amount.likely
        if id(amount) not in self._held:
            self._held[id(amount)] = self._random.uniform(amount.low, amount.high)
        return self._held[id(amount)]


def with_readings(lines: Sequence[str]) -> str:
    """The text of the coach with other readings."""
    text = COACH.read_text("utf-8")
    start, end = text.index("\nreadings:"), text.index("\ndepartures:")
    return f"{text[:start]}\nreadings:\n{''.join(f'  - {line}' + chr(10) for line in lines)}{text[end:]}"


def coach(lines: Sequence[str]) -> Facts:
    """The facts of the coach with other readings."""
    return Facts(read_text(with_readings(lines)))


@cache
def sound_point(mode: str) -> OperatingPoint:
    """A mode of the coach as it is."""
    return point_of(Facts(read_text(COACH.read_text("utf-8"))), mode)


def network(point: OperatingPoint, case: Case, spoil: Spoil | None) -> Solution:
    """One network with a fault in it, solved for itself."""
    heat: dict[str, float] = {}
    found = None
    for _ in range(2):
        made = [new for one in point.plan.elements(case, heat) if (new := spoil(one) if spoil else one) is not None]
        found = solve(made, ground=CHASSIS)
        assert isinstance(found, Solution), found
        heat = heat_of(point.plan.wires, found)
    assert found is not None
    return found


def readings(point: OperatingPoint, found: Solution, off: Random | None = None) -> Iterator[str]:
    """What a fitter would write down, to 10 mV and 0.1 A; `off`: instruments that err within their tolerance."""
    for at, quantity in PLACES:
        one = spot(point, at, quantity)
        shown = one.ask(found)  # type: ignore[union-attr]
        assert shown is not None, at
        if off is not None:
            shown += off.uniform(-0.95, 0.95) * tolerance(quantity, shown)
        if quantity == CURRENT:
            shown = max(0.0, abs(shown))
        digits = 2 if quantity == VOLTAGE else 1
        yield f"{{mode: {point.mode.name}, at: {at}, {quantity}: {shown:.{digits}f} {UNITS[quantity]}}}"


def at(name: str, change: Callable[..., Element | None], *, also: Sequence[str] = ()) -> Spoil:
    """A change at elements by their names."""
    names = {name, *also}
    return lambda one: change(one) if one.name in names else one


def more(ohm: float) -> Callable[[Branch], Branch]:
    return lambda one: Branch(one.name, one.a, one.b, one.ohm + ohm)


def times(factor: float) -> Callable[[Branch], Branch]:
    return lambda one: Branch(one.name, one.a, one.b, one.ohm * factor)


def weak(share: float) -> Callable[[Supply], Supply]:
    return lambda one: Supply(one.name, one.plus, one.minus, one.set_v, one.limit_a * share, droop_ohm=one.droop_ohm)


def aged(factor: float) -> Callable[[Storage], Storage]:
    return lambda one: Storage(one.name, one.plus, one.minus, one.emf_v, one.ohm * factor, one.charge_ohm * factor)


def converter(*, volts: float = 0.0, share: float = 1.0) -> Callable[[Converter], Converter]:
    return lambda one: Converter(
        one.name, one.into, one.out, one.efficiency, set_v=one.set_v + volts, limit_in_a=one.limit_in_a * share,
        limit_out_a=one.limit_out_a * share, hold_v=one.hold_v, hold_ohm=one.hold_ohm, idle_w=one.idle_w,
        droop_ohm=one.droop_ohm, lowest_v=one.lowest_v,
    )  # fmt: skip


def heavier(factor: float) -> Callable[[Element], Element]:
    def change(one: Element) -> Element:
        if isinstance(one, PowerLoad):
            return PowerLoad(one.name, one.plus, one.minus, one.watts * factor, lowest_v=one.lowest_v)
        assert isinstance(one, CurrentLoad)
        return CurrentLoad(one.name, one.plus, one.minus, one.amps * factor)

    return change


RESISTANCE = ("joint", "open")
LINK = ("link-12", "link-12 return", "F2", "F3", "K1")


def known() -> list[Known]:
    """All of them."""
    found = []
    for circuit, wire, ohms in (
        ("alternator-cable", "alternator-cable 0", (2e-3, 5e-3)), ("link-12", "link-12 2", (2e-3, 4e-3)),
        ("converter-low", "converter-low 0", (2e-3, 4e-3)), ("converter-low", "converter-low return 0", (5e-3,)),
        ("chassis-feed", "chassis-feed 2", (0.02, 0.05)), ("converter-high", "converter-high 2", (0.02, 0.05)),
        ("bank-main", "bank-main 2", (0.03, 0.08)), ("bank-main", "bank-main return 2", (0.05,)),
        ("inverter-feed", "inverter-feed 2", (0.03, 0.09)),
    ):  # fmt: skip
        for ohm in ohms:
            places = (circuit, f"{circuit} return")
            found.append(Known(f"joint of {ohm * 1e3:g} mΩ in {wire}", RESISTANCE, places, at(wire, more(ohm))))
    for holder, circuit, ohm in (("F2", "link-12", 3e-3), ("F3", "link-12", 1.5e-3), ("F7", "converter-high", 0.04),
                                 ("F1", "bank-main", 0.05), ("FL1", "alternator-cable", 3e-3)):  # fmt: skip
        places = (circuit, f"{circuit} return", holder)
        found.append(Known(f"holder of {holder} hot, {ohm * 1e3:g} mΩ", RESISTANCE, places, at(holder, more(ohm))))
    for circuit, factor in (("link-12", 2.7), ("link-12", 5.9), ("converter-high", 2.2), ("converter-high", 5.8)):
        places = (circuit, f"{circuit} return")
        spoil = at(f"{circuit} 2", times(factor), also=[f"{circuit} return 0"])
        found.append(Known(f"cable of {circuit} 1/{factor:g} of its section", RESISTANCE, places, spoil))
    for share in (0.6, 0.4):
        found.append(
            Known(f"alternator gives {share:.0%}", ("output",), ("alternator",), at("alternator", weak(share)))
        )
    unit = at("house-bank.fuse-2", lambda one: None)
    found.append(
        Known("a unit of the bank disconnected", ("open",), tuple(f"house-bank.fuse-{n}" for n in (1, 2, 3)), unit)
    )
    units = tuple(f"house-bank.unit-{number}" for number in (1, 2, 3))
    found.append(Known("bank of twice its resistance", ("aged",), ("house-bank",), at(units[0], aged(2.0), also=units)))
    found.append(
        Known("start battery of twice its resistance", ("aged",), ("start-battery",), at("start-battery", aged(2.0)))
    )
    found.append(Known("converter set 2 V low", ("setting",), ("converter",), at("converter", converter(volts=-2.0))))
    for share in (0.5, 0.35):
        found.append(
            Known(
                f"converter limits at {share:.0%}",
                ("converter",),
                ("converter",),
                at("converter", converter(share=share)),
            )
        )
    for load, factor in (("inverter", 2.2), ("inverter", 1.6), ("chassis-loads", 2.2), ("chassis-loads", 0.3)):
        found.append(Known(f"{load} draws {factor:g} times", ("load",), (load,), at(load, heavier(factor))))
    return found


def taken(case: str, fault: Known | None) -> Facts:
    """The coach with the readings of a faulty network in both modes; `case`: likely, or a number that draws."""
    lines = []
    for mode in MODES:
        point = sound_point(mode)
        spoilt = network(point, Drawn(int(case)) if case.isdigit() else case, fault.spoil if fault else None)
        lines += readings(point, spoilt, Random(case) if case.isdigit() else None)
    return coach(lines)
