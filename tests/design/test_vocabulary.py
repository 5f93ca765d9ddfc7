"""The closed table of kinds and keys is consistent with itself."""

from __future__ import annotations

import subprocess
import sys

import pytest
import yaml

from checker.design.shapes import default_value
from checker.design.vocabulary import KINDS, SECTIONS, kind
from checker.design.vocabulary.common import COMMON
from checker.design.vocabulary.key import SHAPES, Key, Kind, Port
from checker.design.vocabulary.structure import structure_of
from checker.design.vocabulary.table import EQUIPMENT, FAMILIES, OTHERS
from checker.design.vocabulary.words import EITHER_POLES
from checker.quantities.units import BY_SYMBOL

KEYS = [(each.name, key) for each in (*EQUIPMENT, *OTHERS) for key in each.keys.values()]
BELOW_OTHERS = {"terminals", "ends", "", "built in"}
LOOKED_UP_ELSEWHERE = {"throws", "anything"}
WITH_WORDS = ("word", "words")
WITH_SECTION = ("name", "names", "map", "choices")
WITH_UNIT = ("quantity", "quantities", "window", "rated voltage", "curve", "map")


def test_no_name_stands_for_two_kinds_in_one_section() -> None:
    for section in {section for each in (*EQUIPMENT, *OTHERS) for section in each.sections}:
        names = [each.name for each in (*EQUIPMENT, *OTHERS) if section in each.sections]
        assert len(names) == len(set(names)), section


def test_every_kind_stands_in_a_section_of_the_file_or_below_one() -> None:
    known = {section.name for section in SECTIONS} | BELOW_OTHERS
    assert {section for section, _ in KINDS} <= known


def test_every_section_of_one_kind_has_that_kind() -> None:
    for section in SECTIONS:
        if section.kind:
            assert kind(section.kind, section.name) is not None, section.name


def test_every_single_value_at_the_top_is_a_key_of_the_fit_out() -> None:
    fit_out = KINDS["", "fit-out"]
    assert [one.name for one in SECTIONS if one.holds == "value"] == [
        name for name in ("fitout", "title", "code", "date", "purpose", "essential") if name in fit_out.keys
    ]
    for section in SECTIONS:
        if section.holds == "value":
            assert fit_out.keys[section.name].required == section.required


def test_a_kind_that_is_not_in_a_section_is_none() -> None:
    assert kind("fuse", "joints") is None
    assert kind("warp drive", "equipment") is None


def test_every_kind_of_equipment_may_also_be_a_part() -> None:
    for each in EQUIPMENT:
        assert ("parts" in each.sections) == ("equipment" in each.sections), each.name


def test_every_key_has_a_sentence() -> None:
    assert [f"{owner}.{key.name}" for owner, key in KEYS if not key.says[1:].endswith(".")] == []


def test_every_key_has_what_its_shape_needs() -> None:
    sections = {section.name for section in SECTIONS} | LOOKED_UP_ELSEWHERE
    wrong = []
    for owner, key in KEYS:
        units = key.unit if isinstance(key.unit, tuple) else (key.unit,)
        fits = (
            key.shape in SHAPES
            and len(set(key.words)) == len(key.words)
            and (key.shape not in WITH_WORDS or bool(key.words))
            and (key.shape not in WITH_UNIT or all(unit in BY_SYMBOL for unit in units))
            and (key.shape not in WITH_SECTION or key.section in sections)
            and (key.shape != "records" or bool(key.fields))
        )
        if not fits:
            wrong.append(f"{owner}.{key.name}")
    assert wrong == []


def test_a_default_reads_as_if_it_had_been_written_and_is_told_where_the_key_is_explained() -> None:
    with_default = [(owner, key) for owner, key in KEYS if key.default]
    assert with_default
    for owner, key in with_default:
        assert (default_value(key) is None) == (key.default == "none"), f"{owner}.{key.name}"
        assert not key.required, f"{owner}.{key.name}: a key that must be written has no use for a default"
        assert "Left out: " in key.says, f"{owner}.{key.name}"


def test_nothing_a_fitter_must_have_looked_at_has_a_default() -> None:
    looked_at = (
        "torque", "torqued", "grommet", "sealed", "cover", "breaking capacity", "voltage", "rating", "isolates", "bms",
        "bms.low temperature", "breaks load", "earth contact", "polarised", "bond.when", "transfer.backfeed",
        "isolation", "restraint", "lug", "crimp", "trips at", "break before make", "sealed from", "vents.to",
        "interlock.acts on", "free length", "support spacing", "trip free", "reset", "licence", "size",
    )  # fmt: skip
    names = {key.name for _, key in KEYS}
    assert set(looked_at) <= names
    assert [f"{owner}.{key.name}" for owner, key in KEYS if key.name in looked_at and key.default] == []


def test_no_word_and_no_key_is_read_as_something_else_by_another_yaml_reader() -> None:
    words = {word for _, key in KEYS for word in key.words}
    steps = {step for _, key in KEYS for step in key.name.split(".")}
    surge_classes = {"1", "2", "3"}  # a number wherever they are read, and shown as they stand
    assert {word for word in words if yaml.safe_load(f"[{word}]") != [word]} == surge_classes
    assert {step for step in steps if yaml.safe_load(f"{{{step}: 1}}") != {step: 1}} == set()


def test_words_never_say_unknown_or_none_themselves() -> None:
    assert not {word for _, key in KEYS for word in key.words} & {"unknown", "none", "?", "true", "false"}


@pytest.mark.parametrize("each", EQUIPMENT, ids=lambda each: each.name)
def test_ports_have_names_of_their_own_and_known_poles(each: Kind) -> None:
    names = [port.name for port in each.ports]
    assert len(set(names)) == len(names)
    for port in each.ports:
        assert port.poles
        assert port.poles == ("",) or set(port.poles) <= set(EITHER_POLES)
    assert len(set(each.terminals())) == len(each.terminals())


@pytest.mark.parametrize("each", [one for one in EQUIPMENT if one.through], ids=lambda each: each.name)
def test_a_run_passes_between_two_terminals_that_exist(each: Kind) -> None:
    assert each.through is not None
    if each.through == ("", ""):
        assert each.more_ports == "throws"
    else:
        assert each.through[0] != each.through[1]
        assert set(each.through) <= set(each.terminals())


def test_all_equipment_has_the_common_keys_except_signals_and_the_chassis() -> None:
    common = {key.name for key in COMMON}
    assert [each.name for each in EQUIPMENT if not common <= set(each.keys)] == ["chassis", "signal"]


def test_no_key_is_also_a_structural_key() -> None:
    for (section, name), each in KINDS.items():
        clash = {one.name for one in structure_of(name, section)} & {key.split(".")[0] for key in each.keys}
        assert not clash, (section, name)


def test_usual_holds_keys_of_cables_and_circuits_under_their_own_names_and_shapes() -> None:
    cable, circuit = KINDS["cables", "cable"], KINDS["circuits", "circuit"]
    for name, key in KINDS["usual", "usual"].keys.items():
        assert (name in cable.keys) != (name in circuit.keys), name
        other = cable.keys.get(name) or circuit.keys[name]
        assert (key.shape, key.unit, key.words) == (other.shape, other.unit, other.words)


def test_every_kind_of_equipment_belongs_to_one_family() -> None:
    named = [each.name for _, kinds in FAMILIES for each in kinds]
    assert len(named) == len(set(named)) == len(EQUIPMENT)


def test_a_terminal_is_called_by_port_and_pole() -> None:
    assert Port("dc", ("+", "-")).terminals() == ("dc+", "dc-")
    assert Port("", ("L", "N", "PE")).terminals() == ("L", "N", "PE")
    assert Port("a", ("",)).terminals() == ("a",)


def test_a_kind_refuses_a_key_that_stands_twice() -> None:
    key = Key("rating", "quantity", "Rated current.", unit="A")
    with pytest.raises(ValueError, match="fuse: a key stands twice"):
        Kind("fuse", "A fuse.", (key, key))


def test_a_key_refuses_a_shape_that_does_not_exist() -> None:
    with pytest.raises(ValueError, match="rating: no such shape as number"):
        Key("rating", "number", "Rated current.")


def test_the_package_loads_no_table_until_it_is_asked() -> None:
    code = "import sys, checker.design.vocabulary; sys.exit('checker.design.vocabulary.table' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


def test_asking_the_package_for_something_else_is_an_attribute_error() -> None:
    import checker.design.vocabulary as package

    with pytest.raises(AttributeError, match="TABLES"):
        _ = package.TABLES  # type: ignore[attr-defined]
