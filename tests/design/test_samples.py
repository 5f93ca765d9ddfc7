"""Every example in the schema and on the page of keys is one that the reader takes."""

from __future__ import annotations

import yaml

from checker.design.samples import sample
from checker.design.schema import design_schema
from checker.design.shapes import parse_shape
from checker.design.vocabulary.key import Key
from checker.design.vocabulary.structure import CIRCUIT_STRUCTURE, EQUIPMENT_STRUCTURE
from checker.design.vocabulary.table import EQUIPMENT, OTHERS
from checker.quantities import Range, parse

KEYS = {f"{each.name}.{key.name}": key for each in (*EQUIPMENT, *OTHERS) for key in each.keys.values()}


def _is_taken(key: Key, written: object) -> bool:
    """Whether the reader takes `written`, an example of `key`, as a value."""
    if key.shape == "curve":
        assert isinstance(written, dict)
        pairs = [(parse(x, key.unit[0]), parse(y, key.unit[1])) for x, y in written.items()]
        return all(isinstance(x, float) and isinstance(y, float | Range) for x, y in pairs)
    if key.shape == "map":
        assert isinstance(written, dict)
        value = Key(key.name, "quantity", key.says, unit=key.unit)
        return all(isinstance(parse_shape(value, text), float) for text in written.values())
    if key.shape == "choices":
        return isinstance(written, dict) and bool(written)
    if key.shape in ("point", "points", "box"):
        lengths = _leaves(written)
        return len(lengths) % 3 == 0 and all(isinstance(parse(text, "m"), float) for text in lengths)
    texts = written if isinstance(written, list) else [written]
    return all(parse_shape(key, text) is not None for text in texts)


def _leaves(written: object) -> list[str]:
    if isinstance(written, dict):
        return [leaf for below in written.values() for leaf in _leaves(below)]
    if isinstance(written, list):
        return [leaf for below in written for leaf in _leaves(below)]
    return [str(written)]


def test_every_example_is_a_value_of_its_key() -> None:
    wrong = []
    for name, key in KEYS.items():
        written = yaml.load(sample(key), Loader=yaml.BaseLoader)  # texts only
        try:
            taken = _is_taken(key, written)
        except ValueError as error:
            wrong.append((name, str(error)))
        else:
            if not taken:
                wrong.append((name, sample(key)))
    assert wrong == []


def test_the_structural_examples_are_yaml_that_the_schema_has_a_form_for() -> None:
    definitions = design_schema()["$defs"]
    for part in (*EQUIPMENT_STRUCTURE, *CIRCUIT_STRUCTURE):
        assert yaml.load(part.example, Loader=yaml.BaseLoader)  # texts only
        assert any(name.startswith(f"structure-{part.name}") for name in definitions), part.name
