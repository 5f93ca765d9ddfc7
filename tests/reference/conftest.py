"""The worked examples of the chosen file, run once, handed to the tests and summed up at the end."""
from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from tests.reference.worked.run import Outcome, outcomes, summary

SHIPPED = Path(__file__).parent / "worked-examples.yaml"
OUTCOMES = pytest.StashKey[tuple[Outcome, ...]]()


def worked_file(config: pytest.Config) -> Path:
    """The file of ``--worked-examples``, else the one that lies beside this module."""
    chosen = config.getoption("--worked-examples")
    return Path(chosen) if chosen else SHIPPED


def _outcomes(config: pytest.Config) -> tuple[Outcome, ...]:
    if OUTCOMES not in config.stash:
        try:
            config.stash[OUTCOMES] = outcomes(worked_file(config))
        except (OSError, KeyError, TypeError, ValueError, yaml.YAMLError) as error:
            message = f"--worked-examples {worked_file(config)}: not a file of worked examples: {error!r}"
            raise pytest.UsageError(message) from error
    return config.stash[OUTCOMES]


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    if "covered_example" in metafunc.fixturenames:
        covered = [one for one in _outcomes(metafunc.config) if one.agreeing or one.differing]
        metafunc.parametrize("covered_example", covered, ids=[one.example.id for one in covered])


@pytest.fixture
def worked(request: pytest.FixtureRequest) -> tuple[Outcome, ...]:
    """Outcomes of all examples of the chosen file."""
    return _outcomes(request.config)


@pytest.fixture
def shipped_worked() -> tuple[Outcome, ...]:
    """Outcomes of the examples that lie beside this module, whatever file was chosen."""
    return outcomes(SHIPPED)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    if OUTCOMES in config.stash:
        terminalreporter.section("worked examples")
        terminalreporter.write_line(summary(config.stash[OUTCOMES], worked_file(config)))
