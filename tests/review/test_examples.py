"""Examples that are designs: the base design is changed, read and judged on the subject they name."""

from __future__ import annotations

from pathlib import Path

import pytest

import checker.facts  # noqa: F401 - fills the catalogue
from checker.review.examples import ExampleError, example_verdict
from checker.rulebook import RuleErrors, load_rulebook

DESIGN = """\
fitout: 1
title: Small
code: intl
vehicle: {kind: campervan, ambient: {low: 0 °C, high: 30 °C}}
cables: {red: {size: 6 mm2, cores: 2, insulation: 105 °C}}
places: {cabin: {kind: living space}}
equipment:
  leisure: {kind: battery, nominal: 12 V, place: cabin}
  F1: {kind: fuse, family: blade, rating: 20 A, place: cabin}
  lamps: {kind: lamp, power: 20 W, voltage: 10..15 V, place: cabin}
circuits:
  feed: {from: leisure, to: lamps, run: [0.2 m via cabin, F1, 3 m via cabin], cable: red}
modes:
  parked: {running: {lamps: 20 W}}
"""
RULE = """\
id: house-rating
title: The fuse is larger than the house rule allows
signal: caution
about: device
require: device.rating <= '25 A'
why: House rule.
mend: Fit a smaller one.
covers: []
sources: [{{title: House rule, basis: practice}}]
examples:
  met:
    - {{name: as-drawn, design: house-base, about: F1}}
  breach:
    - {{name: too-large, design: house-base, with: {{equipment.F1.rating: 30 A}}, about: F1}}
  unproven:
    - {{name: unread, design: {design}, with: {{{path}: unknown}}, about: {about}}}
"""


def own(root: Path, design: str = "house-base", path: str = "equipment.F1.rating", about: str = "F1") -> Path:
    """A folder with one rule and its base design."""
    (root / "designs").mkdir()
    (root / "designs" / "house-base.fitout.yaml").write_text(DESIGN, "utf-8")
    (root / "house").mkdir()
    (root / "house" / "house-rating.yaml").write_text(RULE.format(design=design, path=path, about=about), "utf-8")
    return root


def test_a_design_is_changed_and_judged(tmp_path: Path) -> None:
    rulebook = load_rulebook([own(tmp_path)])
    rule = rulebook.by_id["house-rating"]
    assert [example_verdict(rule, one, rulebook, [tmp_path]) for one in rule.examples] == ["met", "breach", "unproven"]


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"design": "nowhere"}, "there is no base design `nowhere.fitout.yaml`"),
        ({"about": "F9"}, "there is no device `F9`; there are: F1"),
        ({"path": "equipment.F1.colour"}, "colour"),
        ({"path": "title.x.y"}, "title.x.y"),
    ],
)
def test_what_is_wrong_with_an_example_is_told_with_its_place(
    tmp_path: Path, changes: dict[str, str], said: str
) -> None:
    rulebook = load_rulebook([own(tmp_path, **changes)])
    rule = rulebook.by_id["house-rating"]
    with pytest.raises(ExampleError) as caught:
        example_verdict(rule, rule.examples[2], rulebook, [tmp_path])
    assert said in str(caught.value)
    assert f"{tmp_path}/house/house-rating.yaml:16: the example `unread`" in str(caught.value)


def test_a_user_rule_goes_through_the_same_checks(tmp_path: Path) -> None:
    folder = own(tmp_path)
    file = folder / "house" / "house-rating.yaml"
    file.write_text(file.read_text("utf-8").replace("device.rating <=", "device.ratng <="), "utf-8")
    with pytest.raises(RuleErrors, match="did you mean `rating`"):
        load_rulebook([folder])
