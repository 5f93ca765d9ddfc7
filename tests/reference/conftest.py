"""Worked examples and solved networks of the chosen file and folder, run once and summed up at the end."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from tests.reference.network_form.compare import Compared, compare_file
from tests.reference.network_form.compare import summary as network_summary
from tests.reference.worked.run import Outcome, outcomes, summary

SHIPPED = Path(__file__).parent / "worked-examples.yaml"
NETWORKS = Path(__file__).parent / "networks"
COMPARED = pytest.StashKey[tuple[Compared, ...]]()
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


def network_folder(config: pytest.Config) -> Path:
    """The folder of ``--networks``, else the one that lies beside this module."""
    chosen = config.getoption("--networks")
    return Path(chosen) if chosen else NETWORKS


def _compared(config: pytest.Config) -> tuple[Compared, ...]:
    if COMPARED not in config.stash:
        folder = network_folder(config)
        files = sorted(folder.glob("*.yaml"))
        if not files:
            raise pytest.UsageError(f"--networks {folder}: no *.yaml lies there")
        config.stash[COMPARED] = tuple(compare_file(file) for file in files)
    return config.stash[COMPARED]


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    if "covered_example" in metafunc.fixturenames:
        covered = [one for one in _outcomes(metafunc.config) if one.agreeing or one.differing]
        metafunc.parametrize("covered_example", covered, ids=[one.example.id for one in covered])
    if "covered_network" in metafunc.fixturenames:
        solved = [one for one in _compared(metafunc.config) if one.values or one.refused]
        metafunc.parametrize("covered_network", solved, ids=[one.id for one in solved])


@pytest.fixture
def worked(request: pytest.FixtureRequest) -> tuple[Outcome, ...]:
    """Outcomes of all examples of the chosen file."""
    return _outcomes(request.config)


@pytest.fixture
def shipped_worked() -> tuple[Outcome, ...]:
    """Outcomes of the examples that lie beside this module, whatever file was chosen."""
    return outcomes(SHIPPED)


@pytest.fixture
def shipped_networks() -> tuple[Compared, ...]:
    """The solved networks that lie beside this module, whatever folder was chosen."""
    return tuple(compare_file(file) for file in sorted(NETWORKS.glob("*.yaml")))


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    if OUTCOMES in config.stash:
        terminalreporter.section("worked examples")
        terminalreporter.write_line(summary(config.stash[OUTCOMES], worked_file(config)))
    if COMPARED in config.stash:
        terminalreporter.section("solved networks")
        terminalreporter.write_line(network_summary(config.stash[COMPARED], str(network_folder(config))))
