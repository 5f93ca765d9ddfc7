"""The table of supply states: as data, in words, as a page and a drawing."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from lxml import etree
from lxml import html as lxml_html

from checker.circuit.states import MOST_STATES
from checker.reports import render
from checker.reports.caution import CAUTION, DEFERRAL
from checker.reports.supply_drawing import supply_drawing
from checker.reports.supply_states import StateData, SupplyStates, supply_states
from checker.reports.supply_text import supply_json, supply_text
from tests.circuit.designs import design
from tests.circuit.mains_designs import changed_at
from tests.reports.sample import sample

PASSING = "shore present, inverter passing, K2 inverter"
INVERTING = "shore absent, inverter inverting, K2 inverter"
NO_DEVICE = {"circuits.board-feed.run": "[0.3 m via locker, S1]"}
SVG = "{http://www.w3.org/2000/svg}"


def table(base: str = "mains-coach", edits: dict[str, str] | None = None) -> SupplyStates:
    found = supply_states(changed_at(base, edits or {}))
    assert found is not None
    return found


def state(found: SupplyStates, name: str) -> StateData:
    return next(one for one in found["states"] if one["name"] == name)


def words(found: SupplyStates | None) -> str:
    return "".join(supply_text(found))


def test_a_state_tells_sources_links_residual_path_outlets_pins_and_witness() -> None:
    assert state(table(), PASSING) == {
        "name": PASSING,
        "certain": True,
        "sources": ["inlet"],
        "perhaps": [],
        "neutral": [{"sources": ["inlet"], "links": ["ashore"], "perhaps": []}],
        "residual": [
            {
                "source": "inlet",
                "devices": ["R1"],
                "protected": "yes",
                "works": "yes",
                "loads": ["kitchen-outlets", "step-outlet", "heater"],
            }
        ],
        "outlets": ["kitchen-outlets", "step-outlet"],
        "outlets_perhaps": [],
        "pins": [],
        "witness": [
            "plug in the shore lead", "switch inverter on", "inverter passes its input through", "set K2 to inverter",
        ],
    }  # fmt: skip


def test_on_the_inverter_the_link_is_its_own() -> None:
    assert state(table(), INVERTING)["neutral"] == [{"sources": ["inverter"], "links": ["inverter"], "perhaps": []}]


def test_a_missing_residual_device_is_said() -> None:
    (path,) = state(table(edits=NO_DEVICE), INVERTING)["residual"]
    assert (path["protected"], path["devices"]) == ("no", [])
    assert "no residual-current device" in " ".join(words(table(edits=NO_DEVICE)).split())


def test_a_device_that_no_fault_unbalances_is_called_blind() -> None:
    found = table(edits={"equipment.inverter.bond.when": "never"})
    assert state(found, INVERTING)["residual"][0]["works"] == "no"
    assert "R1, blind to a fault to earth" in " ".join(words(found).split())


def test_pins_made_live_from_aboard_are_told() -> None:
    found = table(edits={"circuits.normal.to": "shore-joint"})
    assert "inlet live from inverter" in [pin for one in found["states"] for pin in one["pins"]]


def test_a_bond_that_is_not_known_is_perhaps_there() -> None:
    found = table(edits={"equipment.inverter.bond.when": "unknown"})
    (island,) = state(found, INVERTING)["neutral"]
    assert (island["links"], island["perhaps"]) == ([], ["inverter"])
    assert "none to one (perhaps inverter)" in " ".join(words(found).split())


def test_what_stays_live_with_the_main_switch_open() -> None:
    bypass = {"circuits.heating": "{from: shore-joint, to: heater, run: [3 m via duct], cable: flex-2.5}"}
    opened = {one["opened"]: one["live"] for one in table(edits=bypass)["isolation"]}
    assert opened["S1 open"] == [{"sources": ["inlet"], "loads": ["heater"], "perhaps": []}]
    assert {one["opened"]: one["live"] for one in table()["isolation"]}["S1 open"] == []


def test_what_stays_live_with_the_lead_out_is_what_the_inverter_feeds() -> None:
    opened = {one["opened"]: one["live"] for one in table()["isolation"]}
    loads = ["kitchen-outlets", "step-outlet", "heater"]
    assert opened["the shore lead out"] == [{"sources": ["inverter"], "loads": loads, "perhaps": []}]


def test_too_many_states_are_said_and_none_is_listed() -> None:
    edits = {"parts.more": "{kind: changeover, poles: 2, throws: [one, two, open], rating: 20 A, operated: by hand}"}
    for number in range(1, 8):
        start = "out" if number == 1 else f"C{number - 1}"
        edits[f"equipment.C{number}"] = "{part: more, place: locker}"
        edits[f"circuits.c{number}"] = f"{{from: {start}, to: C{number}.one, run: [1 m via locker], cable: flex-2.5}}"
    found = table("generator-van", edits)
    assert found["states"] == []
    assert f"more than {MOST_STATES} combinations" in words(found)
    assert "unproven" in words(found)


def test_the_text_fits_80_columns_and_carries_caution_and_deferral() -> None:
    said = words(table())
    assert max(len(line) for line in said.splitlines()) <= 80
    flat = " ".join(said.split())
    assert CAUTION in flat
    assert DEFERRAL in flat


def test_the_json_is_the_table_and_the_same_each_time() -> None:
    found = table()
    assert json.loads("".join(supply_json(found))) == found
    assert words(table()) == words(table())


def test_a_design_without_mains_has_no_table() -> None:
    lamp = "  lamp: {kind: lamp, power: 5 W, voltage: 10..15 V}"
    bank = "  bank: {kind: battery, nominal: 12 V}"
    feeder = "  feed: {from: bank, to: lamp, run: [1 m via cabin], cable: red, return: same}"
    found = supply_states(design(f"{bank}\n{lamp}", feeder))
    assert found is None
    assert "no source of mains" in words(found)
    assert "Supply states" not in "".join(render(sample(), "html", supply=found))


def test_the_page_has_a_row_for_each_state_and_a_drawing_with_title_and_description() -> None:
    found = table()
    page = lxml_html.document_fromstring("".join(render(sample(), "html", supply=found)))
    (section,) = page.xpath("//section[@aria-labelledby='supply']")
    rows = section.xpath(".//table[caption[@id='supply-states']]/tbody/tr/th/text()")
    assert rows == [one["name"] for one in found["states"]]
    (drawing,) = section.xpath(".//svg")
    assert drawing.get("role") == "img"
    for name in drawing.get("aria-labelledby").split():
        assert drawing.xpath(f".//*[@id='{name}']/text()")[0].strip()


def test_the_drawing_says_in_words_who_feeds_what_and_draws_a_dashed_line_where_nothing_protects() -> None:
    plain = etree.fromstring(supply_drawing(table()).replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"', 1))
    told = plain.findtext(f"{SVG}desc")
    assert told is not None
    assert "inverter feeds kitchen-outlets, step-outlet, heater, with R1" in told
    assert "inlet: one; inverter: one" in told
    assert not plain.findall(f".//{SVG}line[@stroke-dasharray]")
    bare = supply_drawing(table(edits=NO_DEVICE))
    assert "stroke-dasharray" in bare


def test_names_are_never_markup_in_the_drawing() -> None:
    found = table()
    first = found["states"][0]
    first["residual"][0]["source"] = first["neutral"][0]["sources"][0] = "<b>x</b>"
    assert "<b>" not in supply_drawing(found)


def test_essential_loads_that_one_failure_leaves_dark_are_told() -> None:
    found = table("house-48", {"equipment.gas-alarm.own cell": "none"})
    assert {one["failed"]: one["dark"] for one in found["losses"]}["alarm-supply"] == ["gas-alarm"]
    assert "Without alarm-supply: gas-alarm" in words(found)
    assert table("house-48")["losses"] == []  # its own cell keeps the alarm going


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_the_accessibility_checker_finds_nothing_in_the_section(browser: Any, tmp_path: Path, theme: str) -> None:
    from axe_playwright_python.sync_playwright import Axe

    file = tmp_path / "report.html"
    file.write_text("".join(render(sample(), "html", supply=table())), "utf-8")
    context = browser.new_context(color_scheme=theme)
    page = context.new_page()
    page.goto(file.as_uri())
    page.eval_on_selector_all("details", "all => all.forEach(each => each.open = true)")
    answer = Axe().run(page).response
    over = page.evaluate("() => document.documentElement.scrollWidth - document.documentElement.clientWidth")
    context.close()
    assert answer["violations"] == []
    assert over <= 0
