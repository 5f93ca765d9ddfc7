"""The operating point of the whole direct-current side in one mode: what every instrument should read.

Exact for the likely case; lowest and highest are those of the worst corners of all that is uncertain, sought for each
reading (`dc_corners`). What hangs on something unknown gets no number: it is found by solving with all that is unknown
at its least and at its most.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import inf
from typing import NamedTuple

from checker.circuit.dc_solution import Flow, NoSolution, Solution
from checker.circuit.dc_solve import solve
from checker.circuit.elements import CHASSIS
from checker.design.item import Item
from checker.facts.dc_amounts import CASES, EXTREMES, Case
from checker.facts.dc_conductors import add_conductors
from checker.facts.dc_corners import Corners, heat_of
from checker.facts.dc_loads import add_loads
from checker.facts.dc_plan import Plan
from checker.facts.dc_sources import add_sources
from checker.facts.dc_storage import add_storage
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import unjoined_bank
from checker.quantities import Range, Unknown

CASES_SAY = (
    "likely is exact for the likely numbers; lowest and highest are worst corners: for each reading every uncertain "
    "number stands at the end that lowers or raises it, as the slopes of the solved network tell; tested with drawn "
    "values, not proved"
)
SLOPES_SAY = (
    "; in a network as large as this not every corner is solved: what numbers may still add is then told by the slopes "
    "and counted twice"
)
MOST_NAMED = 3
HANGS_VOLTS = (0.0005, 0.005)  # share and volts by which a voltage may move and still not hang on an unknown
HANGS_FLOWS = (0.005, 0.02)  # the same for currents and powers, A and W
SMALL = 0.2  # of these volts, amperes and watts: what need not be solved for at a worst corner


class Predicted(NamedTuple):
    """A quantity in the likely case, and between which ends it lay over all cases."""

    likely: float
    low: float
    high: float


Value = Predicted | Unknown
Measure = Callable[[Solution], float | None]


class OperatingPoint:
    """The cases of one mode, each solved when asked. `reason` says why the likely one has no solution.

    `assumed` and `missing` are what it rests on.
    """

    __slots__ = ("_corners", "_solved", "mode", "plan", "reason")

    def __init__(self, plan: Plan) -> None:
        self.mode = plan.mode
        self.plan = plan
        self._solved: dict[str, Solution | NoSolution] = {}
        likely = self.case("likely")
        self.reason = likely.reason if isinstance(likely, NoSolution) else ""
        self._corners: Corners | None = None

    def case(self, name: str) -> Solution | NoSolution:
        """One case."""
        if name not in self._solved:
            self._solved[name] = solve_case(self.plan, name)
        return self._solved[name]

    @property
    def cases(self) -> Mapping[str, Solution | NoSolution]:
        """All of them; only the likely one where that has no solution, since the others could add nothing."""
        if self.likely is not None:
            for name in (*CASES[1:], *(EXTREMES if self.missing else ())):
                self.case(name)
        return self._solved

    @property
    def assumed(self) -> tuple[str, ...]:
        """What was assumed, each once."""
        return tuple(self.plan.book.assumed)

    @property
    def missing(self) -> tuple[str, ...]:
        """What the file does not tell, each once."""
        return tuple(self.plan.book.missing)

    @property
    def likely(self) -> Solution | None:
        """The solution of the likely case."""
        found = self.case("likely")
        return found if isinstance(found, Solution) else None

    @property
    def unsupplied(self) -> tuple[str, ...]:
        """Loads that are to run and that no supply reaches, in the likely case."""
        likely = self.likely
        return () if likely is None else tuple(name for name in likely.dead if name in self.plan.loads)

    def value(self, measure: Measure, *, current: bool = False, usual: bool = False) -> Value:
        """Put one question to the likely case and to the worst corners; `usual`: to the usual cases alone."""
        likely = self.likely
        if likely is None:
            return Unknown(f"{self.mode.name}: {self.reason}")
        middle = measure(likely)
        if middle is None:
            return Unknown(f"no supply reaches it in {self.mode.name}")
        ends: list[Solution] = []
        values = [middle]
        for case in CASES[1:]:
            found = self.case(case)
            if isinstance(found, NoSolution):
                return Unknown(f"no operating point in the {case} case of {self.mode.name}")
            value = measure(found)
            if value is None:
                return Unknown(f"in the {case} case of {self.mode.name} no supply reaches it")
            ends.append(found)
            values.append(value)
        share, slack = HANGS_FLOWS if current else HANGS_VOLTS
        if self._hangs(measure, share, slack):
            return Unknown(f"hangs on what is not known: {_some(self.missing)}")
        if usual:
            return Predicted(middle, min(values), max(values))
        if self._corners is None:
            self._corners = Corners(self.plan.makers, self.plan.wires, likely, (ends[0], ends[1]))
        return self._between(self._corners, measure, middle, SMALL * slack)

    def _between(self, corners: Corners, measure: Measure, middle: float, small: float) -> Value:
        """The likely value with its worst corners; what switches itself off is taken both ways."""
        low = high = middle
        solved = [self.case(name) for name in CASES]
        for off in dict.fromkeys(frozenset(one.off) for one in solved if isinstance(one, Solution)):
            ends = corners.range_of(measure, off, small)
            if isinstance(ends, NoSolution):
                return Unknown(f"no operating point at the worst corner of {self.mode.name}: {ends.reason}")
            if ends is None:
                return Unknown(f"at the worst corner of {self.mode.name} no supply reaches it")
            low, high = min(low, ends[0]), max(high, ends[1])
        return Predicted(middle, low, high)

    @property
    def short(self) -> bool:
        """Whether there were too many worst corners to solve each, so that slopes told the rest."""
        return self._corners is not None and self._corners.short

    @property
    def trouble(self) -> tuple[str, ...]:
        """Why a case has no solution, case by case."""
        return tuple(f"{case} case: {one.reason}" for case, one in self.cases.items() if isinstance(one, NoSolution))

    def _hangs(self, measure: Measure, share: float, slack: float) -> bool:
        """Whether a quantity differs between the least and the most of what is not known."""
        if not self.missing:
            return False
        values = []
        for case in EXTREMES:
            found = self.case(case)
            value = None if isinstance(found, NoSolution) else measure(found)
            if value is None:
                return True
            values.append(value)
        return abs(values[0] - values[1]) > max(slack, share * abs(values[0]))

    def volts(self, plus: str, minus: str) -> Value:
        """Voltage between two nodes, V."""
        return self.value(lambda found: found.between(plus, minus))

    def flow(self, name: str, ask: Callable[[Flow], float | None]) -> Value:
        """A quantity of one element, by its name in the plan."""

        def measure(found: Solution) -> float | None:
            if name in found.off:
                return 0.0
            flow = found.flows.get(name)
            return None if flow is None else ask(flow)

        return self.value(measure, current=True)

    def state(self, name: str) -> str:
        """How an element works in the likely case, in words."""
        likely = self.likely
        if likely is None:
            return ""
        if name in likely.off:
            return "switched off by its voltage limits"
        flow = likely.flows.get(name)
        return "" if flow is None else flow.state


def _some(texts: tuple[str, ...]) -> str:
    more = f" and {len(texts) - MOST_NAMED} more" if len(texts) > MOST_NAMED else ""
    return "; ".join(texts[:MOST_NAMED]) + more


def cases_say(facts: Facts) -> str:
    """What lowest and highest are, after all has been asked."""
    held: dict[str, OperatingPoint] = facts.store.get("operating points", {})
    return CASES_SAY + (SLOPES_SAY if any(point.short for point in held.values()) else "")


def operating_point(s: Subject, mode: Item) -> OperatingPoint:
    """The operating point of a mode, solved once for each set of facts; inputs are read through `s`."""
    held: dict[str, OperatingPoint] = s.facts.store.setdefault("operating points", {})
    if mode.name not in held:
        held[mode.name] = OperatingPoint(_plan(s, mode))
    return held[mode.name]


def lowest_corner(s: Subject, mode: Item) -> Solution | NoSolution | None:
    """The lowest voltages: every uncertain number at the end that lowers them, every conductor as hot as its insulation
    endures. None where something that counts is not known at all.

    A sixth of the work of an operating point: a review asks whether a mode holds, not what an instrument reads.
    """
    plan = _plan(s, mode)
    if plan.book.missing:
        return None
    try:
        return solve(plan.elements("low", dict.fromkeys(plan.wires, inf)), ground=CHASSIS)
    except ValueError as error:
        return NoSolution(f"the file tells something that cannot be: {error}")


def _plan(s: Subject, mode: Item) -> Plan:
    held: dict[str, Plan] = s.facts.store.setdefault("plans", {})
    if mode.name not in held:
        held[mode.name] = plan_of(s, mode)
    return held[mode.name]


def plan_of(s: Subject, mode: Item) -> Plan:
    """Everything on the direct-current side in a mode."""
    plan = Plan(s, mode)
    unjoined = unjoined_bank(s.facts)
    if unjoined is not None:
        plan.book.lack(unjoined.reason)
    add_conductors(plan)
    add_storage(plan)
    add_sources(plan)
    add_loads(plan)
    return plan


def solve_case(plan: Plan, case: Case) -> Solution | NoSolution:
    """One case: solved with cool conductors, then again with each as warm as its current makes it."""
    unjoined = unjoined_bank(plan.facts)
    if unjoined is not None:
        return NoSolution(unjoined.reason)
    try:
        cool = plan.elements(case, {})
    except ValueError as error:
        return NoSolution(f"the file tells something that cannot be: {error}")
    first = solve(cool, ground=CHASSIS)
    if isinstance(first, NoSolution):
        return first
    heat = heat_of(plan.wires, first)
    return solve(plan.elements(case, heat), ground=CHASSIS, start=first.volts)


def as_number(value: Value) -> float | Range | Unknown:
    """A predicted quantity as a number of the facts: from the lowest to the highest of its cases."""
    if isinstance(value, Unknown):
        return value
    return Range(value.low, value.high) if value.low < value.high else value.likely


def points(facts: Facts) -> dict[str, OperatingPoint]:
    """The operating point of every mode, in file order."""
    return {s.id: operating_point(s, s.item) for s in facts.subjects("mode")}
