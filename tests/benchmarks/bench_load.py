"""What the shipped rules cost a command beyond its bare start: found, read, checked and compiled.

The bare start imports what reading a design imports, and the catalogue of facts; both processes do that. Every rule is
checked, and every one compiled too, though a review compiles only those with many subjects: the dearest case.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from statistics import median
from tempfile import TemporaryDirectory

from checker.rulebook import load_rulebook
from tests.benchmarks.timing import Row, python, table

BARE = """import gc
from checker.commands import RINGS
gc.set_threshold(RINGS)
import checker.commands.app, checker.reading, checker.facts
"""
LOADED = f"""{BARE}from checker.rulebook import load_rulebook
for rule in load_rulebook().rules:
    rule.given_tree, rule.require_tree{{also}}
"""
PROGRAMS = {
    "bare": BARE,
    "checked": LOADED.format(also=""),
    "compiled": LOADED.format(also=", rule.quick"),
}


def _medians(rounds: int, cache: str) -> Mapping[str, float]:
    os.environ["FITOUT_CACHE"] = cache
    times: dict[str, list[float]] = {name: [] for name in PROGRAMS}
    for number in range(rounds + 1):
        for name, program in PROGRAMS.items():
            run = python("-c", program)
            if number:  # the first round fills the cache
                times[name].append(run.busy)
    return {name: median(found) for name, found in times.items()}


def rows(rounds: int = 15) -> list[Row]:
    """Milliseconds of processor time for 300 rules, with the cache of texts and without it."""
    share = 300 / len(load_rulebook().rules)
    before = os.environ.get("FITOUT_CACHE")
    try:
        with TemporaryDirectory() as folder:
            found = {"with cache": _medians(rounds, folder), "without": _medians(rounds, "none")}
    finally:
        os.environ.pop("FITOUT_CACHE")
        if before is not None:
            os.environ["FITOUT_CACHE"] = before
    return [
        Row(
            f"300 rules over the bare start, {name}, {step}",
            (times[step] - times["bare"]) * share * 1000,
            "ms",
            60 if (name, step) == ("with cache", "checked") else None,
            f"bare {times['bare'] * 1000:.0f} ms",
        )
        for name, times in found.items()
        for step in ("checked", "compiled")
    ]


if __name__ == "__main__":
    print(table(rows()))
