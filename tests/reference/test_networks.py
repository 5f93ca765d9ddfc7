"""Published solved networks: steady values within 0.1 %, courses in time within 1 % of full scale.

``--networks FOLDER`` runs every file of another folder. A network that holds something unknown here is listed as not
covered in the summary; it is never counted as agreeing.
"""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from tests.reference.network_form.compare import Compared, compare, compare_file, summary
from tests.reference.network_form.read import read_network

FOLDER = Path(__file__).parent / "networks"


def test_published_networks_are_reproduced(covered_network: Compared) -> None:
    assert not covered_network.differing, "; ".join(covered_network.differing)


def test_the_shipped_networks_are_covered_to_the_last_value(shipped_networks: tuple[Compared, ...]) -> None:
    assert [one.id for one in shipped_networks if one.uncovered] == []
    assert sum(len(one.values) for one in shipped_networks) == 135
    assert max(one.worst for one in shipped_networks) < 1e-5


@pytest.mark.parametrize("file", sorted(FOLDER.glob("*.yaml")), ids=lambda file: file.stem)
def test_a_wrong_published_value_is_found(file: Path) -> None:
    network = read_network(file)
    group = "source_currents_A" if network.kind == "steady" else "crossings_s"
    name = next(iter(network.data["expected"][group]))
    network.data["expected"][group][name] = float(network.data["expected"][group][name]) * 1.03
    assert any(name in text for text in compare(network).differing)


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        ("network.flywheels", [{"id": "w"}], "elements of the kind flywheels"),
        ("network.branches.0.skin_effect", 2, "unknown skin_effect"),
        ("network.batteries.0.emf_V", None, "does not say emf_V"),
        ("kind", "harmonic", "networks of the kind harmonic"),
        ("expected.ripple_V", {"a": 1}, "expected ripple_V"),
        ("expected.node_voltages_V.nowhere", 1.0, "node_voltages_V.nowhere"),
    ],
)
def test_what_is_unknown_is_reported_as_not_covered(tmp_path: Path, path: str, value: object, words: str) -> None:
    data = yaml.safe_load((FOLDER / "steady-02-meshed-12v-bridge.yaml").read_text(encoding="utf-8"))
    at = data
    *way, last = path.split(".")
    for part in way:
        at = at[int(part)] if part.isdigit() else at[part]
    if value is None:
        del at[last]
    else:
        at[last] = value
    file = tmp_path / "changed.yaml"
    file.write_text(yaml.safe_dump(data), encoding="utf-8")
    found = compare_file(file)
    assert words in "; ".join(found.uncovered)
    if "expected" not in path:
        assert found.values == ()
    assert "not covered" in summary((found,), "somewhere")


def test_a_file_of_another_form_is_not_covered(tmp_path: Path) -> None:
    file = tmp_path / "list.yaml"
    file.write_text("- 1\n- 2\n", encoding="utf-8")
    assert "not of the form" in compare_file(file).uncovered[0]


def test_optional_fields_may_be_missing(tmp_path: Path) -> None:
    data = yaml.safe_load((FOLDER / "steady-02-meshed-12v-bridge.yaml").read_text(encoding="utf-8"))
    for key in (
        "title",
        "why",
        "conventions",
        "start_voltages_V",
        "cross_check",
        "tolerance",
        "solved_with",
        "netlist",
    ):
        data.pop(key)
    for branch in data["network"]["branches"]:
        branch.pop("role")
    for load in data["network"]["loads"]:
        load.pop("minus")
    file = tmp_path / "bare.yaml"
    file.write_text(yaml.safe_dump(data), encoding="utf-8")
    found = compare_file(file)
    assert len(found.values) == 16
    assert found.differing == found.uncovered == ()


def test_the_greatest_values_need_the_end_of_the_run(tmp_path: Path) -> None:
    data = yaml.safe_load((FOLDER / "transient-05-precharge-48v.yaml").read_text(encoding="utf-8"))
    data.pop("netlist")
    file = tmp_path / "no-end.yaml"
    file.write_text(yaml.safe_dump(data), encoding="utf-8")
    found = compare_file(file)
    assert found.uncovered == ("expected maxima",)
    assert found.differing == ()
