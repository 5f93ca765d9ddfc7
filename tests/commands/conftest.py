"""Running the command line as a user does."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).parents[2]

Fitout = Callable[..., "subprocess.CompletedProcess[bytes]"]


@pytest.fixture
def fitout() -> Fitout:
    """Runs `python -m checker.commands` with the arguments, in `cwd`, with `env` on top of a plain environment."""

    def run(*arguments: Any, cwd: Path = ROOT, env: dict[str, str] | None = None, **options: Any) -> Any:
        plain = {
            key: value for key, value in os.environ.items() if not key.startswith(("FITOUT", "LC_", "LANG", "PYTHON"))
        }
        return subprocess.run(
            [sys.executable, "-m", "checker.commands", *map(str, arguments)],
            cwd=cwd,
            env={**plain, "PYTHONPATH": str(ROOT), **(env or {})},
            check=False,
            **{"capture_output": True, "timeout": 120, **options},
        )

    return run


@pytest.fixture
def no_shipped_rules(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The shipped folder without its rules, in this process; limits and catalogue are still the shipped ones."""
    import checker.shipped

    bare = tmp_path / "bare"
    shutil.copytree(ROOT / "rules" / "codes", bare / "codes")
    shutil.copy(ROOT / "rules" / "requirements.csv", bare)
    monkeypatch.setattr(checker.shipped, "shipped", lambda _: bare)
    monkeypatch.setattr("checker.commands.loading.shipped", lambda _: bare)
    return bare
