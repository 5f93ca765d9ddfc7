"""How cost grows with the design: a coach of 300 circuits as a whole command, and each stage from 30 to 3,000."""

from __future__ import annotations

import sys
from collections.abc import Mapping, Sequence
from math import log
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory

from checker.rulebook import load_rulebook
from tests.benchmarks.generator import coach
from tests.benchmarks.stages import every_fact, stages
from tests.benchmarks.timing import Row, python, table

SIZES = (30, 300, 3000)
EXPONENT = 1.15


def exponent(times: Mapping[int, float]) -> float:
    """Slope of the least-squares line through log time over log size: 1 is proportional."""
    points = [(log(size), log(max(seconds, 1e-9))) for size, seconds in times.items()]
    x_mean = sum(x for x, _ in points) / len(points)
    y_mean = sum(y for _, y in points) / len(points)
    return sum((x - x_mean) * (y - y_mean) for x, y in points) / sum((x - x_mean) ** 2 for x, _ in points)


def whole_command(rounds: int = 5) -> list[Row]:
    """Processor seconds and megabytes of `fitout review` on 300 circuits."""
    with TemporaryDirectory() as folder:
        file = Path(folder) / "coach.fitout.yaml"
        file.write_text(coach(300), "utf-8")
        runs = [python("-m", "checker.commands", "review", str(file)) for _ in range(rounds + 1)][1:]
    return [
        Row(
            "review of 300 circuits, whole command",
            median(run.busy for run in runs),
            "s",
            1.0,
            f"{median(run.seconds for run in runs):.2f} s by the clock",
        ),
        Row("review of 300 circuits, peak memory", max(run.peak_mb for run in runs), "MB", 150, ""),
    ]


def growth(sizes: Sequence[int] = SIZES, rounds: int = 3) -> list[Row]:
    """The exponent of each stage, and of all together."""
    rulebook = load_rulebook()
    stages(coach(sizes[0]), rulebook)  # tables and compiled rules are loaded once, whatever the size
    times: dict[str, dict[int, float]] = {}
    for size in sizes:
        text = coach(size)
        runs = [stages(text, rulebook) for _ in range(rounds)]
        for stage in runs[0]:
            times.setdefault(stage, {})[size] = median(run[stage] for run in runs)
        times.setdefault("all", {})[size] = median(sum(run.values()) for run in runs)
    return [
        Row(
            f"growth of {stage}, {sizes[0]} to {sizes[-1]} circuits",
            exponent(found),
            "",
            EXPONENT if stage == "all" else None,
            ", ".join(f"{size}: {seconds * 1000:.1f} ms" for size, seconds in found.items())
            + f"; last step alone {exponent({size: found[size] for size in sizes[-2:]}):.2f}",
        )
        for stage, found in times.items()
    ]


def growth_of_facts(sizes: Sequence[int] = (100, 300, 1000), worst: int = 15) -> list[Row]:
    """The facts that grow fastest of those that take at least a hundredth of the time of all, used by a rule or not."""
    times: dict[str, dict[int, float]] = {}
    broken: dict[str, str] = {}
    every_fact(coach(sizes[0]))
    for size in sizes:
        facts = every_fact(coach(size))
        broken.update(facts.broken)
        for name, seconds in [*facts.spent.items(), ("all facts", sum(facts.spent.values()))]:
            times.setdefault(name, {})[size] = seconds
    for name, cause in broken.items():
        print(f"broke: {name}: {cause}", file=sys.stderr)
    largest = times["all facts"][sizes[-1]]
    heavy = {name: found for name, found in times.items() if found.get(sizes[-1], 0.0) > 0.01 * largest}
    order = sorted(heavy, key=lambda name: -exponent(heavy[name]))[:worst]
    return [
        Row(
            f"growth of {name}",
            exponent(heavy[name]),
            "",
            None,
            ", ".join(f"{size}: {seconds * 1000:.1f} ms" for size, seconds in heavy[name].items()),
        )
        for name in order
    ]


def rows() -> list[Row]:
    """All of them."""
    return [*whole_command(), *growth(), *growth_of_facts()]


if __name__ == "__main__":
    print(table(rows()))
