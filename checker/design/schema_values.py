"""The values of a design file as JSON Schema: one definition for each shape with its unit, section or words."""

from __future__ import annotations

from typing import Any

from checker.design.given import BASES
from checker.design.patterns import (
    ARRANGEMENT,
    DATES,
    DEGREE,
    quantity_pattern,
    rated_voltage_pattern,
    window_pattern,
)
from checker.design.samples import sample
from checker.design.vocabulary.key import Key

Schema = dict[str, Any]
LEFT_OPEN = "unknown-or-none"
_LETTERS = {"°C": "celsius", "Ω": "ohm", "%": "percent", "/": " per ", "µ": "u", "+": "plus"}
_LONGEST_NAME = 48
_TEXT: Schema = {"type": ["string", "number", "boolean"], "minLength": 1}
_POINT = {"$ref": "#/$defs/point"}


def described(key: Key, value: Schema) -> Schema:
    """`value` with what the key says, its unit, its default and an example."""
    says = key.says
    if key.shape in ("quantity", "quantities", "window"):
        says += f" In {key.unit}."
    return {"description": f"{says} E.g. {sample(key)}", **value}


class Definitions:
    """Definitions collected while the schema is written: those of values, and forms that come more than once."""

    def __init__(self) -> None:
        self._values: dict[str, Schema] = {
            "basis": {"description": "What a value rests on.", "enum": list(BASES)},
            LEFT_OPEN: {"description": "Not known; or decided that there is none.", "enum": ["unknown", "?", "none"]},
        }
        self._names: dict[str, str] = {}
        self._shared: dict[str, Schema] = {}

    def written(self) -> Schema:
        """All definitions by name."""
        return {**self._shared, **self._values}

    def basis(self) -> Schema:
        """The words for a basis."""
        return reference("basis")

    def left_open(self) -> Schema:
        """`unknown` or `none`, plain or with a basis."""
        return {"anyOf": [reference(LEFT_OPEN), self._with_basis(reference(LEFT_OPEN))]}

    def shared(self, name: str, form: Schema) -> Schema:
        """A reference to `form`, which is kept once under `name`, numbered when another form has the name."""
        return reference(_keep(self._shared, plain_name(name), form))

    def value(self, key: Key) -> Schema:
        """A value of `key`, left open, or with its basis."""
        says = _name(key)
        if says not in self._names:
            name = plain_name(says)
            while name in self._values:
                name += "-more"
            self._names[says] = name
            self._values[name] = {}  # its place; the form refers to itself
            self._values[name] = self._form(key, reference(name))
        return reference(self._names[says])

    def _form(self, key: Key, itself: Schema) -> Schema:
        forms = [self._bare(key), reference(LEFT_OPEN), self._with_basis(itself)]
        if key.words and key.shape not in ("word", "words"):
            forms.insert(1, {"enum": list(key.words)})
        return {"anyOf": forms}

    def _with_basis(self, value: Schema) -> Schema:
        return {
            "type": "object",
            "required": ["is", "basis"],
            "properties": {"is": value, "basis": self.basis()},
            "additionalProperties": False,
        }

    def _bare(self, key: Key) -> Schema:
        if key.shape in ("map", "choices", "curve", "box", "point", "points"):
            return self._structured(key)
        single = _scalar(key)
        if key.shape in ("quantities", "words", "texts", "names"):
            item = {"anyOf": [single, self._with_basis(single)]}
            return {"anyOf": [single, {"type": "array", "items": item}]}
        return single

    def _structured(self, key: Key) -> Schema:
        if key.shape == "curve":
            x_unit, y_unit = key.unit
            steps = {"pattern": quantity_pattern(x_unit)}
            return {"type": "object", "propertyNames": steps, "additionalProperties": self._number(y_unit)}
        if key.shape == "map":
            forms = [self._number(unit) for unit in key.unit]
            return {"type": "object", "additionalProperties": {"anyOf": forms}}
        if key.shape == "choices":
            return {"type": "object", "additionalProperties": _TEXT}
        self._values.setdefault("point", {"type": "array", "items": self._number("m"), "minItems": 3, "maxItems": 3})
        if key.shape == "box":
            corner = {"anyOf": [_POINT, {"enum": ["unknown", "?"]}]}
            return {
                "type": "object",
                "required": ["at", "size"],
                "properties": {"at": corner, "size": corner},
                "additionalProperties": False,
            }
        return dict(_POINT) if key.shape == "point" else {"type": "array", "items": _POINT}

    def _number(self, unit: str) -> Schema:
        """A quantity, left open, or with its basis."""
        return self.value(Key("length", "quantity", "", unit=unit))


def reference(name: str) -> Schema:
    """A reference to a definition."""
    return {"$ref": f"#/$defs/{name}"}


def plain_name(name: str) -> str:
    """`name` with letters that a reference may hold unescaped, and not long."""
    for letter, plain in _LETTERS.items():
        name = name.replace(letter, plain)
    words = "".join(letter if letter.isascii() and (letter.isalnum() or letter == ".") else " " for letter in name)
    return "-".join(words.split())[:_LONGEST_NAME].rstrip("-")


def _keep(kept: dict[str, Schema], name: str, form: Schema) -> str:
    wanted, number = name, 1
    while kept.get(wanted, form) != form:
        number += 1
        wanted = f"{name}-{number}"
    kept[wanted] = form
    return wanted


def _name(key: Key) -> str:
    unit = " against ".join(key.unit) if key.shape == "curve" else " or ".join(_units(key))
    parts = (key.shape, f"in {unit}" if unit else "", f"of {key.section}" if key.section else "", *key.words)
    return " ".join(part for part in parts if part)


def _units(key: Key) -> tuple[str, ...]:
    return key.unit if isinstance(key.unit, tuple) else (key.unit,) if key.unit else ()


def _scalar(key: Key) -> Schema:
    shape = key.shape
    if shape in ("quantity", "quantities"):
        return {"type": "string", "pattern": quantity_pattern(key.unit)}
    if shape == "window":
        return {"type": "string", "pattern": window_pattern(key.unit)}
    if shape in ("count", "ratio"):
        number = {"type": "integer", "minimum": 0} if shape == "count" else {"type": "number"}
        return {"anyOf": [number, {"type": "string", "pattern": quantity_pattern(shape)}]}
    if shape == "yes/no":
        return {"enum": [True, False, "true", "false"]}
    if shape in ("word", "words"):
        return {"enum": [*key.words, *(int(word) for word in key.words if word.isdigit())]}
    if shape == "rated voltage":
        return {"type": "string", "pattern": rated_voltage_pattern()}
    patterns = {"date": DATES, "arrangement": ARRANGEMENT, "degree": DEGREE}
    if shape in patterns:
        return {"type": "string", "pattern": patterns[shape]}
    return dict(_TEXT)
