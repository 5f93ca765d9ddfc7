"""A whole review against an empty command of the same program, and against nothing but the imports of its libraries.

The empty command has the same options and imports the very modules that the review was seen to import, in the same
order, and leaves the collector alone as `fitout` does; it reads, decides and prints nothing.
"""

from __future__ import annotations

import subprocess
import sys
from statistics import median

from tests.benchmarks.timing import ROOT, Row, python, table

COACH = "examples/estuary-coach.fitout.yaml"
LIBRARIES = "import pydantic, typer, yaml, jinja2"

SEEN = f"""
import sys, os
from checker.commands import run
run(["review", "{COACH}", "--output", os.devnull])
print(" ".join(name for name in sys.modules if not name.startswith(("_", "encodings", "site"))))
"""

EMPTY = """
import gc, importlib, sys
from checker.commands import RINGS
gc.set_threshold(RINGS)
from checker.commands.app import command_line, COMMANDS, LightCommand, _SETTINGS
import typer
for name in {modules!r}.split():
    importlib.import_module(name)
import checker.commands.review as review
import inspect
def nothing(**options): return 0
nothing.__signature__ = inspect.signature(review.command, eval_str=True)
nothing.__annotations__ = {{name: one.annotation for name, one in nothing.__signature__.parameters.items()}}
nothing.__doc__ = review.command.__doc__
review.command = nothing
status = command_line().main(["review", {coach!r}], prog_name="fitout", standalone_mode=False)
gc.freeze()
sys.exit(status)
"""


def modules_of_a_review() -> str:
    """The modules that a text review imports, in order."""
    run = subprocess.run([sys.executable, "-c", SEEN], cwd=ROOT, capture_output=True, text=True, check=True)
    return run.stdout.splitlines()[-1]


def rows(rounds: int = 15) -> list[Row]:
    """Ratios of the processor time of whole processes."""
    empty = EMPTY.format(modules=modules_of_a_review(), coach=COACH)
    commands = {
        "review": ("-m", "checker.commands", "review", COACH),
        "empty": ("-c", empty),
        "libraries": ("-c", LIBRARIES),
        "python": ("-c", "pass"),
    }
    times: dict[str, list[float]] = {name: [] for name in commands}
    for number in range(rounds + 1):
        for name, command in commands.items():
            run = python(*command)
            if number:
                times[name].append(run.busy)
    found = {name: median(one) for name, one in times.items()}
    told = ", ".join(f"{name} {seconds * 1000:.0f} ms" for name, seconds in found.items())
    return [
        Row("review as text / empty command, same modules", found["review"] / found["empty"], "x", 1.25, told),
        Row("review as text / bare import of four libraries", found["review"] / found["libraries"], "x", 1.8, ""),
    ]


if __name__ == "__main__":
    print(table(rows()))
