"""What is planned for later is left out, with what only leads to it."""

from __future__ import annotations

import pytest

import checker.facts  # noqa: F401 - fills the catalogue
from checker.circuit.build import build
from checker.design.fitted import fitted_now
from checker.design.model import Design
from checker.design.run import Through
from checker.facts.catalogue import CATALOGUE
from checker.facts.subject import Facts
from tests.circuit.mains_designs import changed_at


def later(*paths: str) -> Design:
    return changed_at("mains-coach", {f"{path}.fitted": "later" for path in paths})


def test_a_design_with_everything_fitted_is_left_as_it_is() -> None:
    design = changed_at("mains-coach", {})
    assert fitted_now(design) is design


def test_planned_equipment_goes_with_the_circuit_that_leads_to_it_alone() -> None:
    now = fitted_now(later("equipment.heater"))
    assert "heater" not in now.equipment
    assert "heating" not in now.circuits


def test_a_circuit_that_leads_to_other_things_as_well_stays_for_them() -> None:
    now = fitted_now(later("equipment.step-outlet"))
    assert [port.equipment for port in now.circuits["kitchen"].ends] == ["kitchen-outlets"]


def test_a_planned_source_takes_what_starts_at_it() -> None:
    now = fitted_now(later("equipment.inlet"))
    assert "shore-in" not in now.circuits


def test_a_run_passes_on_without_a_planned_device() -> None:
    now = fitted_now(later("equipment.R1"))
    through = [step.equipment for step in now.circuits["board-feed"].run if isinstance(step, Through)]
    assert through == ["S1"]


def test_a_planned_circuit_leaves_its_loom_and_its_loads() -> None:
    now = fitted_now(later("circuits.heating"))
    assert now.looms["duct-mains"].value("carries") == ("kitchen",)
    assert "heater" in now.equipment


def test_the_graph_and_the_subjects_pass_it_by() -> None:
    design = later("equipment.heater", "equipment.R1")
    assert not [node for node in build(design).near if node.startswith(("heater:", "R1:"))]
    facts = Facts(design)
    for kind in ("equipment", "load", "device", "circuit", "supply", "conductor"):
        assert not [one.id for one in facts.subjects(kind) if one.id.startswith(("heater", "heating", "R1"))], kind
    assert facts.whole is design


def test_a_missing_protection_is_seen_when_the_device_is_only_planned() -> None:
    supply = Facts(later("equipment.R1")).subject("supply", "heater on inverter")
    assert supply is not None
    assert supply.has_residual_device is False


@pytest.mark.parametrize("name", ["bank", "inlet", "inverter", "K2", "S1", "board", "main-earth", "Q1", "surge"])
def test_no_fact_breaks_when_something_is_planned(name: str) -> None:
    facts = Facts(later(f"equipment.{name}"))
    asked = 0
    for kind in ("circuit", "conductor", "device", "load", "supply", "ac_source", "bond", "outlet", "switch", "state"):
        for subject in facts.subjects(kind):
            for spec in CATALOGUE.facts(kind):
                getattr(subject, spec.name)
                asked += 1
    assert asked > 100
