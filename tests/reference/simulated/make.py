"""Asks the simulator anew: `python -m tests.reference.simulated.make` (needs ngspice; the tests do not)."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import yaml

from tests.reference.simulated.netlist import netlist
from tests.reference.simulated.networks import NETWORKS

HERE = Path(__file__).parent
PRINTED = re.compile(r"^\S.* += +(-?\d\.\d+e[+-]\d+)(?: at= .*)?$", re.MULTILINE)
DIGITS = "{:.10g}"


class Block(str):
    """A text of several lines, written as a block."""


yaml.SafeDumper.add_representer(
    Block, lambda dumper, text: dumper.represent_scalar("tag:yaml.org,2002:str", str(text), style="|")
)


def simulate(text: str, file: str) -> tuple[list[float], str]:
    """What the simulator printed, in order, and its version. Raises RuntimeError when it failed."""
    with TemporaryDirectory() as folder:
        (Path(folder) / file).write_text(text, "utf-8")
        done = subprocess.run(["ngspice", "-b", file], cwd=folder, capture_output=True, text=True, check=False)
    told = subprocess.run(["ngspice", "--version"], capture_output=True, text=True, check=True).stdout
    version = re.search(r"ngspice-(\d+)", told)
    found = [float(value) for value in PRINTED.findall(done.stdout)]
    if not found or version is None or done.returncode:
        raise RuntimeError(f"{file}: {done.stdout[-2000:]}{done.stderr[-2000:]}")
    return found, version[1]


def solved(entry: dict[str, Any]) -> dict[str, Any]:
    """The file of one network: what was asked, how, and what was answered."""
    text, places = netlist(entry)
    file = f"{entry['id']}.cir"
    answers, version = simulate(text, file)
    expected: dict[str, Any] = {}
    for printed, (group, *place) in zip(answers, places, strict=True):
        value = float(DIGITS.format(printed))
        if group == "samples":
            at, name = place
            rows = expected.setdefault(group, [{"t_s": time} for time in entry["ask"]["samples"]])
            rows[at][name] = value
        else:
            expected.setdefault(group, {})[place[0]] = value
    kept = {key: value for key, value in entry.items() if key not in ("course", "ask")}
    kept["kind"] = "transient" if "course" in entry else "steady"
    kept["expected"] = expected
    kept["solved_with"] = f"ngspice {version}"
    kept["command"] = f"ngspice -b {file}"
    kept["netlist"] = Block(text)
    return kept


def main() -> int:
    """Write every file anew."""
    for build in NETWORKS:
        kept = solved(build())
        text = yaml.safe_dump(kept, sort_keys=False, default_flow_style=None, width=118, allow_unicode=True)
        (HERE / f"{kept['id']}.yaml").write_text(text, "utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
