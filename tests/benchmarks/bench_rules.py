"""Compiled rules against loops written by hand, on exact values and on ranges.

Both sides answer the same question with the same facts and are checked to give the same verdicts first.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Any

from checker.quantities import UNKNOWN, Range, Unknown, less_equal
from checker.rulebook import Broken, judge, load_rulebook
from tests.benchmarks.timing import Row, interleaved, table
from tests.rulebook.small import Thing, rule_text, small_catalogue, write_rules

FACTS = "conductor.current: 1 A, conductor.capacity: 2 A, limits.reach: 300 mm"
COMPARES = rule_text(
    id="length-within-reach",
    given="conductor.is_live",
    require="conductor.length <= limits.reach and conductor.current <= conductor.capacity",
    mend="Shorten it.",
    change="[conductor.length]",
    examples=f"""
  met:
    - {{name: short, facts: {{{FACTS}, conductor.is_live: true, conductor.length: 100 mm}}}}
  breach:
    - {{name: long, facts: {{{FACTS}, conductor.is_live: true, conductor.length: 400 mm}}}}
  unproven:
    - {{name: who-knows, facts: {{{FACTS}, conductor.is_live: true}}}}
  not applicable:
    - {{name: return-core, facts: {{conductor.is_live: false}}}}""",
)
LOOPS = rule_text()
REACH_M = 0.3


def compares_exact(subjects: Sequence[Any], limits: Any) -> list[str]:
    """`COMPARES` by hand for floats."""
    found: list[str] = []
    add = found.append
    reach = limits["reach"]
    for one in subjects:
        if one.is_live:
            add("met" if one.length <= reach and one.current <= one.capacity else "breach")
        else:
            add("not applicable")
    return found


def loops_exact(subjects: Sequence[Any], limits: Any) -> list[str]:
    """`LOOPS` by hand for floats."""
    found: list[str] = []
    add = found.append
    for one in subjects:
        if one.is_live:
            for device in one.protected_by:
                if device.rating <= one.capacity:
                    add("met")
                    break
            else:
                add("breach")
        else:
            add("not applicable")
    return found


def compares_ranges(subjects: Sequence[Any], limits: Any) -> list[str]:
    """`COMPARES` by hand with three answers."""
    found = []
    reach = limits["reach"]
    for one in subjects:
        live = one.is_live
        if live is False:
            found.append("not applicable")
            continue
        answer = less_equal(one.length, reach)
        if answer is not False:
            other = less_equal(one.current, one.capacity)
            if other is not True:
                answer = other
        if type(live) is Unknown or type(answer) is Unknown:
            found.append("unproven")
        else:
            found.append("met" if answer else "breach")
    return found


def loops_ranges(subjects: Sequence[Any], limits: Any) -> list[str]:
    """`LOOPS` by hand with three answers."""
    found = []
    for one in subjects:
        live = one.is_live
        if live is False:
            found.append("not applicable")
            continue
        devices = one.protected_by
        answer: Any = devices if type(devices) is Unknown else False
        if type(devices) is tuple:
            for device in devices:
                fits = less_equal(device.rating, one.capacity)
                if fits is True:
                    answer = True
                    break
                if fits is not False:
                    answer = fits
        if type(live) is Unknown or type(answer) is Unknown:
            found.append("unproven")
        else:
            found.append("met" if answer else "breach")
    return found


def things(count: int, doubtful: bool) -> list[Thing]:
    """Conductors with their devices; with `doubtful` a third of the numbers are ranges, a tenth unknown."""
    random = Random(count)

    def number(low: float, high: float) -> Any:
        value = random.uniform(low, high)
        chance = random.random()
        if doubtful and chance < 0.1:
            return UNKNOWN
        return Range(value * 0.9, value * 1.1) if doubtful and chance < 0.43 else value

    found = []
    for at in range(count):
        devices = tuple(Thing("device", f"d{at}-{n}", rating=number(5, 60)) for n in range(random.randint(1, 3)))
        found.append(
            Thing(
                "conductor", f"c{at}", is_live=random.random() < 0.8, length=number(0.05, 0.5), current=number(1, 40),
                capacity=number(10, 50), protected_by=devices,
            )
        )  # fmt: skip
    return found


def rows(rounds: int = 25, count: int = 2000) -> list[Row]:
    """Four rows: two rules, exact and doubtful values."""
    with TemporaryDirectory() as folder:
        base = write_rules(Path(folder), COMPARES, LOOPS)
        book = load_rulebook(catalogue=small_catalogue(), base=base)
        rules = {rule.text.id: rule for rule in book.rules}
    limits = {"reach": REACH_M, "drop": 0.05, "bare_allowed": UNKNOWN}
    design = Thing("design")
    by_hand: dict[tuple[str, bool], Callable[[Sequence[Any], Any], list[str]]] = {
        ("length-within-reach", False): compares_exact,
        ("device-protects-conductor", False): loops_exact,
        ("length-within-reach", True): compares_ranges,
        ("device-protects-conductor", True): loops_ranges,
    }
    found = []
    for (name, doubtful), hand in by_hand.items():
        subjects = things(count, doubtful)
        rule = rules[name]

        def ours(rule: Any = rule, subjects: Any = subjects) -> list[str]:
            broken: list[Broken] = []
            verdicts = judge(rule, subjects, design, limits, broken)
            if broken:
                raise RuntimeError(broken[0].cause)
            return verdicts

        def theirs(hand: Any = hand, subjects: Any = subjects) -> list[str]:
            return hand(subjects, limits)  # type: ignore[no-any-return]

        if ours() != theirs():
            raise RuntimeError(f"{name}: the rule and the loop disagree, so their times compare nothing")
        times = interleaved({"rule": ours, "hand": theirs}, rounds)
        what = f"rule {name} / loop by hand, {'ranges' if doubtful else 'exact'}"
        told = f"{count} subjects; " + ", ".join(f"{one} {at * 1e6 / count:.2f} µs" for one, at in times.items())
        found.append(Row(what, times["rule"] / times["hand"], "x", 1.4 if doubtful else 1.1, told))
    return found


if __name__ == "__main__":
    print(table(rows()))
