"""Supply states: a coach with four sources of mains and ten switches, and one with more positions than are worked."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from statistics import median
from time import perf_counter

import checker.facts  # noqa: F401 - fills the catalogue
from checker.circuit.build import build
from checker.circuit.states import States
from checker.design.model import Design
from checker.facts.catalogue import CATALOGUE
from checker.facts.subject import Facts
from checker.reading import read_text
from checker.reports.supply_states import supply_states
from tests.benchmarks.timing import Row, table

HEAD = """
fitout: 1
title: Four sources and ten switches
code: intl
vehicle: {kind: motorhome, supply: {voltage: 230 V, earthing: TN-S, polarised: true}}
cables: {flex: {size: 2.5 mm2, cores: 3}, red: {size: 35 mm2, cores: 1}}
places: {cabin: {kind: living space}}
modes: {rest: {engine: stopped}}
"""
SOURCES = """
  bank: {kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 100 Ah, place: cabin}
  inlet: {kind: shore inlet, voltage: 230 V AC, rating: 16 A, place: cabin}
  genset: {kind: generator, power: 2 kW, bond: {when: always}, place: cabin}
  plain: {kind: inverter, power: 1 kW, bond: {when: inverting}, dc: {nominal: 12 V}, place: cabin}
  combined: {kind: inverter-charger, power: 3 kW, place: cabin,
             transfer: {poles: 2, when: shore present, backfeed: blocked}, bond: {when: inverting}, dc: {nominal: 12 V}}
  hub: {kind: terminal block, system: mains, place: cabin}
  rcd: {kind: rcd, rating: 25 A, trips at: 30 mA, type: A, poles: 2, place: cabin}
  main: {kind: changeover, poles: 2, throws: [shore, generator, combined, plain], rating: 20 A,
         operated: by hand, place: cabin}
"""
JOINS = """
  c1: {from: inlet, to: main.shore, run: [1 m], cable: flex}
  c2: {from: genset, to: main.generator, run: [1 m], cable: flex}
  c3: {from: combined.ac-out, to: main.combined, run: [1 m], cable: flex}
  c4: {from: plain.ac, to: main.plain, run: [1 m], cable: flex}
  c5: {from: inlet, to: combined.ac-in, run: [1 m], cable: flex}
  c6: {from: main, to: hub, run: [1 m, rcd], cable: flex}
  d1: {from: bank, to: plain.dc, run: [1 m], cable: red, return: same}
  d2: {from: bank, to: combined.dc, run: [1 m], cable: red, return: same}
"""
THROWS = "{{kind: changeover, poles: 2, throws: [a, b], rating: 20 A, operated: by hand, place: cabin}}"
SWITCH = "{{kind: switch, poles: 2, rating: 20 A, operated: by hand, place: cabin}}"
OUTLET = "{{kind: outlet, voltage: 230 V AC, rating: 10 A, place: cabin}}"


def coach(each: Callable[[int], tuple[str, str]]) -> Design:
    """The four sources, the main changeover and nine further switches with an outlet behind each."""
    parts = [each(number) for number in range(1, 10)]
    items = SOURCES + "".join(item for item, _ in parts)
    return read_text(f"{HEAD}equipment:{items}\ncircuits:{JOINS}" + "".join(circuit for _, circuit in parts))


def in_line(number: int) -> tuple[str, str]:
    """A switch in the run to an outlet."""
    item = f"\n  S{number}: {SWITCH.format()}\n  O{number}: {OUTLET.format()}"
    return item, f"\n  s{number}: {{from: hub, to: O{number}, run: [1 m, S{number}], cable: flex}}"


def changing(number: int) -> tuple[str, str]:
    """A changeover between the board and the shore, before an outlet."""
    item = f"\n  S{number}: {THROWS.format()}\n  O{number}: {OUTLET.format()}"
    runs = (("a", f"hub, to: S{number}.a"), ("b", f"inlet, to: S{number}.b"), ("o", f"S{number}, to: O{number}"))
    return item, "".join(f"\n  s{number}{end}: {{from: {way}, run: [1 m], cable: flex}}" for end, way in runs)


def chained(number: int) -> tuple[str, str]:
    """A changeover behind another: all positions matter together."""
    before = "hub" if number == 1 else f"S{number - 1}"
    item = f"\n  S{number}: {THROWS.format()}\n  O{number}: {OUTLET.format()}"
    runs = (("a", f"{before}, to: S{number}.a"), ("b", f"inlet, to: S{number}.b"), ("o", f"S{number}, to: O{number}"))
    return item, "".join(f"\n  s{number}{end}: {{from: {way}, run: [1 m], cable: flex}}" for end, way in runs)


COACHES = {"switches in line": in_line, "changeovers before loads": changing, "changeovers in a chain": chained}


def seconds(job: Callable[[], object], rounds: int = 3) -> float:
    """Median seconds of a job; the first round is not counted."""
    times = []
    for _ in range(rounds + 1):
        start = perf_counter()
        job()
        times.append(perf_counter() - start)
    return median(times[1:])


def _states(design: Design) -> States:
    return States(build(design))


def every_mains_fact(design: Design) -> None:
    """All facts of the subjects that rest on the states."""
    facts = Facts(design)
    for kind in ("state", "supply", "ac_source", "bond", "changeover", "outlet", "inlet"):
        for subject in facts.subjects(kind):
            for spec in CATALOGUE.facts(kind):
                getattr(subject, spec.name)


def rows() -> list[Row]:
    """Each coach: states alone, with all facts that rest on them, and as the printed table."""
    found = []
    for name, each in COACHES.items():
        design = coach(each)
        states = States(build(design))
        detail = f"{len(states.states)} states" if states.complete else "too many, said so"
        found.append(Row(f"{name}: states", seconds(partial(_states, design)), "s", 1.0, detail))
        found.append(Row(f"{name}: every fact", seconds(partial(every_mains_fact, design)), "s", 1.0, ""))
        found.append(Row(f"{name}: table", seconds(partial(supply_states, design)), "s", 1.0, ""))
    return found


if __name__ == "__main__":
    print(table(rows()))
