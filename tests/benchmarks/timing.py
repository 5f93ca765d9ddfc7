"""Fair comparison: the things compared run in turn within one session, and the median of each counts.

Processor time is measured, not that of the clock: other work on the same machine then spoils little.
"""

from __future__ import annotations

import gc
import os
import subprocess
import sys
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from statistics import median
from time import perf_counter, process_time
from typing import NamedTuple

ROOT = Path(__file__).resolve().parents[2]


def interleaved(jobs: Mapping[str, Callable[[], object]], rounds: int) -> dict[str, float]:
    """Median processor seconds of each job. One round runs every job once; the first round is not counted."""
    times: dict[str, list[float]] = {name: [] for name in jobs}
    for number in range(rounds + 1):
        for name, job in jobs.items():
            gc.collect()
            start = process_time()
            job()
            if number:
                times[name].append(process_time() - start)
    return {name: median(found) for name, found in times.items()}


class Run(NamedTuple):
    """One run of a command in a process of its own; `busy` are the seconds of processor time it took."""

    seconds: float
    peak_mb: float
    status: int
    busy: float


def python(*arguments: str) -> Run:
    """Run this Python with `arguments` in the checkout; what it prints is thrown away.

    Modules are compiled once and kept, as they are for whoever uses the program, whatever the surroundings say.
    """
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "PYTHONHASHSEED": "0"}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    start = perf_counter()
    process = subprocess.Popen(
        [sys.executable, *arguments], cwd=ROOT, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE
    )
    said = process.stderr.read() if process.stderr else b""
    _, status, usage = os.wait4(process.pid, 0)
    seconds = perf_counter() - start
    code = os.waitstatus_to_exitcode(status)
    process.returncode = code
    if code not in (0, 1):
        raise RuntimeError(f"python {' '.join(arguments)[:200]} ended with {code}: {said.decode()[-2000:]}")
    return Run(seconds, usage.ru_maxrss / 1024, code, usage.ru_utime + usage.ru_stime)


class Row(NamedTuple):
    """One line of the table. `unit` is `x` for a ratio; lower is better throughout."""

    what: str
    found: float
    unit: str
    target: float | None
    detail: str


def table(rows: Sequence[Row]) -> str:
    """The rows for the terminal and for a README."""
    lines = [f"| {'what':64} | {'found':>9} | {'target':>9} | detail |", "| --- | ---: | ---: | --- |"]
    for row in rows:
        target = "" if row.target is None else f"{row.target:g} {row.unit}"
        missed = " MISSED" if row.target is not None and row.found > row.target else ""
        lines.append(f"| {row.what:64} | {row.found:7.3g} {row.unit} | {target:>9} | {row.detail}{missed} |")
    return "\n".join(lines)
