"""A plain review starts quickly because it loads no array, template or schema library."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
EXAMPLE = "examples/estuary-coach.fitout.yaml"
HEAVY = ("numpy", "scipy", "jinja2", "jsonschema", "networkx", "resvg_py")

LOADED = """
import json, sys
print(json.dumps(sorted({name.partition('.')[0] for name in sys.modules})), file=sys.stderr)
"""
IMPORT = f"import checker.commands{LOADED}"
REVIEW = f"""
import sys
from checker.commands import main
sys.argv = ["fitout", "review", "{EXAMPLE}"]
try:
    main()
except SystemExit as stop:
    assert stop.code in (0, None), stop.code{LOADED}"""


def loaded_by(script: str) -> set[str]:
    """Names of the packages in memory after the script has run in a new interpreter."""
    done = subprocess.run([sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return set(json.loads(done.stderr.splitlines()[-1]))


def test_the_measure_sees_a_library_that_is_loaded() -> None:
    assert "jinja2" in loaded_by(f"import jinja2{LOADED}")


@pytest.mark.parametrize("script", [IMPORT, REVIEW], ids=["importing-the-commands", "a-review-as-text"])
def test_no_heavy_library_is_loaded_by(script: str) -> None:
    loaded = loaded_by(script)
    assert "checker" in loaded
    assert not loaded & set(HEAVY)
