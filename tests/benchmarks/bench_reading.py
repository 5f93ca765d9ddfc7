"""Reading with places, limits and quantities against the plain YAML loader on the same text.

The plain loader gives dictionaries and strings, turns `1.5` into a number and a date into a date, and knows neither
line nor unit. Ours gives the checked design.
"""

from __future__ import annotations

from pathlib import Path

import yaml

from checker.reading import read_text
from tests.benchmarks.generator import coach
from tests.benchmarks.timing import ROOT, Row, interleaved, table

EXAMPLE = ROOT / "examples" / "estuary-coach.fitout.yaml"


def rows(rounds: int = 15) -> list[Row]:
    """One row for the example, one for 300 circuits."""
    texts = {"the example coach": Path(EXAMPLE).read_text("utf-8"), "300 circuits": coach(300)}
    found = []
    for name, text in texts.items():
        times = interleaved(
            {
                "ours": lambda text=text: read_text(text),  # type: ignore[misc]
                "plain": lambda text=text: yaml.load(text, Loader=yaml.CSafeLoader),  # type: ignore[misc]
                "safe": lambda text=text: yaml.safe_load(text),  # type: ignore[misc]
            },
            rounds,
        )
        told = f"{len(text) / 1000:.0f} kB; " + ", ".join(f"{one} {at * 1000:.1f} ms" for one, at in times.items())
        found.append(Row(f"reading {name} / yaml.load, C loader", times["ours"] / times["plain"], "x", 0.6, told))
        found.append(Row(f"reading {name} / yaml.safe_load", times["ours"] / times["safe"], "x", None, ""))
    return found


if __name__ == "__main__":
    print(table(rows()))
