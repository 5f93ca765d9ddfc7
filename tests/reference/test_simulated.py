"""Networks of our own against a circuit simulator that solved them once (`simulated/SOURCES.md`)."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
import yaml

from tests.reference.network_form.compare import Compared, compare_file
from tests.reference.simulated.netlist import netlist
from tests.reference.simulated.networks import NETWORKS

FOLDER = Path(__file__).parent / "simulated"
FILES = sorted(FOLDER.glob("*.yaml"))
STEADY = 1e-9  # of the value; the simulator's ten digits show no more
MOVING = 5e-6  # of full scale


@pytest.fixture(params=FILES, ids=lambda file: file.stem)
def kept(request: pytest.FixtureRequest) -> Path:
    file: Path = request.param
    return file


def errors(found: Compared) -> dict[str, float]:
    """Of the value in a steady network, without any allowance for digits; of full scale in a moving one."""
    if found.id.startswith("transient"):
        return {value.name: value.error for value in found.values}
    return {value.name: abs(value.ours - value.published) / abs(value.published) for value in found.values}


@cache
def compared(file: Path) -> Compared:
    return compare_file(file)


def test_our_solution_is_that_of_the_simulator(kept: Path) -> None:
    found = compared(kept)
    assert found.differing == found.uncovered == ()
    allowed = MOVING if found.id.startswith("transient") else STEADY
    assert {name: error for name, error in errors(found).items() if error > allowed} == {}


def test_as_many_values_are_compared_as_the_sources_say() -> None:
    found = [compared(file) for file in FILES]
    counted = {kind: sum(len(one.values) for one in found if one.id.startswith(kind)) for kind in ("steady", "trans")}
    assert counted == {"steady": 414, "trans": 93}
    assert "all 414 values" in (FOLDER / "SOURCES.md").read_text("utf-8")


@pytest.mark.parametrize("build", NETWORKS, ids=lambda build: build.__name__)
def test_what_is_kept_is_what_would_be_asked_today(build: object) -> None:
    assert callable(build)
    entry = build()
    kept = yaml.safe_load((FOLDER / f"{entry['id']}.yaml").read_text("utf-8"))
    text, places = netlist(entry)
    assert kept["network"] == entry["network"]
    assert kept["netlist"] == text
    assert kept["command"] == f"ngspice -b {entry['id']}.cir"
    expected = kept["expected"]
    for group, *place in places:
        rows = expected[group]
        assert isinstance(rows[place[0]][place[1]] if group == "samples" else rows[place[0]], float)


def test_the_load_near_its_limit_is_on_the_upper_of_its_two_voltages() -> None:
    # V = (E + sqrt(E^2 - 4 R P)) / 2 with E = 12.6 V, R = 0.1 ohm, P = 396.5031 W
    kept = yaml.safe_load((FOLDER / "steady-11-power-near-the-limit.yaml").read_text("utf-8"))
    by_hand = (12.6 + (12.6**2 - 4.0 * 0.1 * 396.5031) ** 0.5) / 2.0
    assert kept["expected"]["node_voltages_V"]["far"] == pytest.approx(by_hand, rel=1e-8)
