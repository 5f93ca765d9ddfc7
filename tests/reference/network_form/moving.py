"""Published courses in time: samples, greatest values, moments of crossing, and what is derived from them."""

from __future__ import annotations

import re
from typing import Any

from checker.circuit.dc_elements import Branch, Capacitor, Element, Emf, Inductor, Supply
from checker.circuit.dc_solution import NoSolution, Solution
from checker.circuit.dc_stores import frozen
from checker.circuit.dc_transient import Course, run
from tests.reference.network_form.read import Published

Found = list[tuple[str, float, float, float]]  # name, published, ours, full scale
PARTS = 400


def moving_values(network: Published) -> tuple[Found, list[str], str]:
    """Every published value with ours; what is not covered; why there is no answer where there is none."""
    end, known_end = _end(network)
    course = run(network.elements, end)
    if isinstance(course, NoSolution):
        return [], [], course.reason
    found: Found = []
    uncovered: list[str] = []
    expected = network.data["expected"]
    for group, entries in expected.items():
        if group == "samples":
            _samples(network, course, entries, found, uncovered)
        elif group == "maxima" and known_end:
            _maxima(network, course, entries, found, uncovered)
        elif group == "crossings_s":
            _crossings(network, course, entries, found, uncovered)
        else:
            uncovered.append(f"expected {group}")
    for name, value in (network.data.get("derived") or {}).items():
        ours = _derived(network, course, name)
        if ours is None:
            uncovered.append(f"derived {name}")
        else:
            found.append((f"derived {name}", float(value), ours, abs(float(value))))
    return found, uncovered, ""


def _end(network: Published) -> tuple[float, bool]:
    """Until when (s) it was followed; whether that is told or only the last sample."""
    told = re.search(r"^\s*\.tran\s+\S+\s+([\d.eE+-]+)", str(network.data.get("netlist", "")), re.MULTILINE)
    if told:
        return float(told[1]), True
    samples = network.data["expected"].get("samples") or [{"t_s": 1.0}]
    return max(float(one["t_s"]) for one in samples), False


def _observe(network: Published, point: Solution, name: str) -> float | None:
    """A quantity by the name of its column.

    `<element>_A`, `<element>_V`, `<capacitor>_emf_V`, `<converter>_in_A`, `<converter>_out_A`, `<node>_V`.
    """
    sided = re.fullmatch(r"(.+)_(in|out)_A", name)
    if sided is not None and sided[1] in point.flows:
        flow = point.flows[sided[1]]
        return flow.amps if sided[2] == "in" else flow.amps_out
    match = re.fullmatch(r"(.+?)(_emf)?_(V|A)", name)
    if match is None:
        return None
    who, _, unit = match.groups()
    element = _element(network, who)
    if element is None:
        return point.between(who, "gnd") if unit == "V" else None
    flow = point.flows.get(element.name)
    if flow is None:
        return None
    if unit == "V":
        return flow.volts
    given = isinstance(element, Emf | Supply)
    return None if flow.amps is None else -flow.amps if given else flow.amps


def _element(network: Published, who: str) -> Element | None:
    """The element of that name; `capacitor`, `inductor` and `current` mean the only store of energy there is."""
    named = [element for element in network.elements if element.name == who]
    if named:
        return named[0]
    only = [element for element in network.elements if isinstance(element, Capacitor | Inductor)]
    words = ("capacitor", "inductor", "current")
    return only[0] if len(only) == 1 and who in words else None


def _samples(
    network: Published, course: Course, entries: list[dict[str, Any]], found: Found, uncovered: list[str]
) -> None:
    scales: dict[str, float] = {}
    for entry in entries:
        for name, value in entry.items():
            scales[name] = max(scales.get(name, 0.0), abs(float(value)))
    for entry in entries:
        time = float(entry["t_s"])
        point = course.point(time)
        for name, value in entry.items():
            if name == "t_s":
                continue
            ours = None if isinstance(point, NoSolution) else _observe(network, point, name)
            if ours is None:
                uncovered.append(f"{name} at {time:g} s")
            else:
                found.append((f"{name} at {time:g} s", float(value), ours, scales[name]))


def _times(course: Course) -> list[float]:
    """Evenly spread, and every step of the integrator, so that no short peak is missed."""
    even = [course.end * at / PARTS for at in range(PARTS + 1)]
    return sorted({*even, *(piece.start for piece in course.pieces)})


def _series(network: Published, course: Course, name: str, times: list[float]) -> list[float] | None:
    values = []
    for time in times:
        point = course.point(time)
        value = None if isinstance(point, NoSolution) else _observe(network, point, name)
        if value is None:
            return None
        values.append(value)
    return values


def _maxima(network: Published, course: Course, entries: dict[str, Any], found: Found, uncovered: list[str]) -> None:
    for name, value in entries.items():
        greatest = _greatest(network, course, name)
        if greatest is None:
            uncovered.append(f"maximum of {name}")
        else:
            found.append((f"maximum of {name}", float(value), greatest, abs(float(value))))


def _greatest(network: Published, course: Course, name: str) -> float | None:
    """The greatest value: the best of many moments, then narrowed between its neighbours."""
    times = _times(course)
    values = _series(network, course, name, times)
    if values is None:
        return None
    best = max(range(len(values)), key=values.__getitem__)
    low, high = times[max(0, best - 1)], times[min(best + 1, len(times) - 1)]
    for _ in range(25):
        a, b = low + (high - low) / 3.0, high - (high - low) / 3.0
        pair = _series(network, course, name, [a, b])
        if pair is None:
            return None
        low, high = (a, high) if pair[0] < pair[1] else (low, b)
        values += pair
    return max(values)


def _crossings(network: Published, course: Course, entries: dict[str, Any], found: Found, uncovered: list[str]) -> None:
    for text, value in entries.items():
        told = re.search(r"(\w+) (?:at|below) ([\d.]+) % of (?:the )?(\w+)(?: (limit))?", text)
        sought = None if told is None else _moment(network, course, told)
        if sought is None:
            uncovered.append(f"crossing {text}")
        else:
            found.append((f"crossing {text}", float(value), sought, abs(float(value))))


def _moment(network: Published, course: Course, told: re.Match[str]) -> float | None:
    """When a quantity crosses a share of a source's voltage, or of its own current limit."""
    who, share, whole = told[1], float(told[2]) / 100.0, told[3]
    element = _element(network, who)
    if told[4] and isinstance(element, Supply):
        name, level = f"{who}_A", share * element.limit_a
    else:
        source = _element(network, whole)
        if not isinstance(source, Emf):
            return None
        name, level = f"{who}_V", share * source.emf_v
    times = _times(course)
    values = _series(network, course, name, times)
    if values is None:
        return None
    over = [value > level for value in values]
    at = next((i for i in range(1, len(over)) if over[i] != over[i - 1]), None)
    if at is None:
        return None
    low, high = times[at - 1], times[at]
    for _ in range(50):
        middle = 0.5 * (low + high)
        here = _series(network, course, name, [middle])
        if here is None:
            return None
        if (here[0] > level) == over[at - 1]:
            low = middle
        else:
            high = middle
    return high


def _derived(network: Published, course: Course, name: str) -> float | None:
    capacitors = [element for element in network.elements if isinstance(element, Capacitor)]
    if len(capacitors) != 1 or not course.closed_form:
        return None
    capacitor = capacitors[0]
    resistor = next((e.name for e in network.elements if isinstance(e, Branch) and _is_resistor(network, e.name)), None)
    if name == "time_constant_s":
        return course.pieces[0].tau
    if name == "time_constant_after_s" and len(course.pieces) > 1:
        return course.pieces[-1].tau
    if name == "limit_ends_s" and len(course.pieces) > 1:
        return course.pieces[1].start
    if name == "final_bank_emf_V":
        return course.pieces[-1].final
    if name == "first_current_A":
        return _current(network.elements, capacitor, capacitor.initial_v)
    if resistor is None:
        return None
    shorted = tuple(Branch(e.name, e.a, e.b, 0.0) if e.name == resistor else e for e in network.elements)  # type: ignore[union-attr]
    if name == "inrush_without_precharge_A":
        return _current(shorted, capacitor, capacitor.initial_v)
    percent = re.fullmatch(r"inrush_on_closing_at_(\d+)_percent_A", name)
    if percent:
        return _current(shorted, capacitor, course.pieces[0].final * float(percent[1]) / 100.0)
    if name == "resistor_energy_J":
        return _energy(network, course, resistor)
    return None


def _is_resistor(network: Published, name: str) -> bool:
    return any(one["id"] == name and one.get("role") == "resistor" for one in network.data["network"]["branches"])


def _current(elements: tuple[Element, ...], capacitor: Capacitor, volts: float) -> float | None:
    point = frozen(elements, [capacitor], [volts])
    return None if isinstance(point, NoSolution) else point.flows[capacitor.name].amps


def _energy(network: Published, course: Course, name: str) -> float | None:
    """Heat in a branch (J), by Simpson's rule."""
    width = course.end / PARTS
    watts = []
    for at in range(PARTS + 1):
        point = course.point(width * at)
        heat = None if isinstance(point, NoSolution) else point.flows[name].watts
        if heat is None:
            return None
        watts.append(heat)
    return width / 3.0 * (watts[0] + watts[-1] + 4.0 * sum(watts[1:-1:2]) + 2.0 * sum(watts[2:-1:2]))
