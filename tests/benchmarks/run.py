"""Every benchmark, one table: `python -m tests.benchmarks.run` and names of those wanted, all without one."""

from __future__ import annotations

import sys

from tests.benchmarks import (
    bench_faults,
    bench_load,
    bench_network,
    bench_predict,
    bench_reading,
    bench_rules,
    bench_size,
    bench_space,
    bench_start,
    bench_states,
)
from tests.benchmarks.timing import table

BENCHMARKS = {
    "start": bench_start.rows,
    "reading": bench_reading.rows,
    "load": bench_load.rows,
    "rules": bench_rules.rows,
    "size": bench_size.rows,
    "network": bench_network.rows,
    "predict": bench_predict.rows,
    "faults": bench_faults.rows,
    "states": bench_states.rows,
    "space": bench_space.rows,
}


def main(wanted: list[str]) -> int:
    """Print the table of the benchmarks wanted, all when none is named."""
    unknown = [name for name in wanted if name not in BENCHMARKS]
    if unknown:
        print(f"no benchmark {', '.join(unknown)}; there are {', '.join(BENCHMARKS)}", file=sys.stderr)
        return 2
    for name in wanted or BENCHMARKS:
        print(f"\n{name}\n")
        print(table(BENCHMARKS[name]()), flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
