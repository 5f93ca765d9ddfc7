"""What `predict` costs: the example coach, and made-up coaches of 100 and 300 circuits in all their modes.

Each in a process of its own, as it would be asked for; processor time, the least of several rounds.
"""

from __future__ import annotations

from math import inf
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.bench_size import exponent
from tests.benchmarks.generator import coach
from tests.benchmarks.timing import ROOT, Row, python, table

SIZES = {100: 2.0, 300: 6.0}  # circuits, and what they may take, s
GROWTH = 1.2


def rows(rounds: int = 3) -> list[Row]:
    """Seconds of each, and the exponent of time over circuits."""
    example = ROOT / "examples" / "estuary-coach.fitout.yaml"
    with TemporaryDirectory() as name:
        files = {0: example}
        for size in SIZES:
            files[size] = Path(name) / f"coach-{size}.fitout.yaml"
            files[size].write_text(coach(size), "utf-8")
        taken = dict.fromkeys(files, inf)
        for _ in range(rounds):
            for size, file in files.items():
                run = python("-c", "from checker.commands import main; main()", "predict", str(file))
                taken[size] = min(taken[size], run.busy)
    found = [Row("predict of the example coach, all modes", taken.pop(0), "s", None, "")]
    found += [Row(f"predict of {size} circuits, all modes", taken[size], "s", SIZES[size], "") for size in SIZES]
    told = ", ".join(f"{size}: {seconds:.2f} s" for size, seconds in taken.items())
    return [*found, Row("growth of predict, 100 to 300 circuits", exponent(taken), "", GROWTH, told)]


if __name__ == "__main__":
    print(table(rows()))
