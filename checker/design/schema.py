"""The JSON Schema of a design file, made from the vocabulary, for editors that complete and check while one writes.

It is wider than the reader: it knows keys, words and the look of quantities, but not whether a name exists.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import Any

from checker.design.schema_values import Definitions, described, plain_name, reference
from checker.design.vocabulary import KINDS, SECTIONS
from checker.design.vocabulary.key import Key, Kind, Section
from checker.design.vocabulary.structure import EARTHS, RETURNS, Structural, structure_of

Schema = dict[str, Any]
_WIDTH = 120
BY_PART = "equipment-of-a-part"
WITHOUT_MARKS = ("equipment", "joints", "places", "passes", "circuits", "moving")
NAME = "^(?!.* via )[^.#>,]+$"  # a dot divides the port from the equipment, an arrow two terminals


def design_schema() -> Schema:
    """The schema, draft 2020-12, as plain data; the same each time."""
    return _Writer().schema()


def schema_text() -> str:
    """The schema as it is committed: what fits stands on one line."""
    return _text(design_schema(), "") + "\n"


def _text(value: Any, indent: str) -> str:
    line = json.dumps(value, ensure_ascii=False)
    if len(indent) + len(line) <= _WIDTH or not isinstance(value, dict | list):
        return line
    deeper = indent + " "
    if isinstance(value, dict):
        inside = [f"{json.dumps(name, ensure_ascii=False)}: {_text(below, deeper)}" for name, below in value.items()]
        opening, closing = "{}"
    else:
        inside = [_text(below, deeper) for below in value]
        opening, closing = "[]"
    lines = f",\n{deeper}".join(inside)
    return f"{opening}\n{deeper}{lines}\n{indent}{closing}"


class Group:
    """The keys at one step of a record: the key itself, if it has a value, and what stands below."""

    __slots__ = ("below", "key")

    def __init__(self) -> None:
        self.key: Key | None = None
        self.below: dict[str, Group] = {}


def grouped(keys: Iterable[Key]) -> dict[str, Group]:
    """Dotted keys as a tree, in their order."""
    root = Group()
    for key in keys:
        group = root
        for step in key.name.split("."):
            group = group.below.setdefault(step, Group())
        group.key = key
    return root.below


def _kind(kind: Kind) -> str:
    return "kind-" + plain_name(kind.name)


class _Writer:
    def __init__(self) -> None:
        self.defs = Definitions()
        self.of_kind: dict[str, Schema] = {}
        self.union: dict[str, list[Schema]] = {}

    def schema(self) -> Schema:
        kinds = [kind for (section, _), kind in KINDS.items() if section == "equipment"]
        for kind in kinds:
            self.of_kind[_kind(kind)] = self._thing(kind, "equipment")
        self.of_kind[BY_PART] = self._any_kind(kinds)
        self.of_kind["equipment"] = self._equipment(kinds)
        for section in SECTIONS:
            if section.kind:
                self.of_kind[plain_name(section.kind)] = self._thing(KINDS[section.name, section.kind], section.name)
        for name, section_name in (("terminal", "terminals"), ("termination", "ends")):
            self.of_kind[name] = self._thing(KINDS[section_name, name], section_name)
        top = {section.name: self._section(section) for section in SECTIONS}
        return {
            "$schema": "https://json-schema.org/draft/2020-12/schema",
            "title": "fitout design file, format 1",
            "description": "One vehicle's electrical fit-out, written as a fitter walks the vehicle.",
            "type": "object",
            "required": [section.name for section in SECTIONS if section.required],
            "properties": top,
            "additionalProperties": False,
            "$defs": {**self.of_kind, **self.defs.written()},
        }

    def _section(self, section: Section) -> Schema:
        if section.holds == "value":
            return self._value(KINDS["", "fit-out"].keys[section.name])
        entry = reference(plain_name(section.kind or "equipment"))
        if section.holds == "list":
            return {"description": section.says, "type": "array", "items": entry}
        if section.holds == "item":
            return {"description": section.says, **entry}
        names = KINDS[section.name, section.kind].names if section.kind else ()
        free = {"pattern": NAME if section.name in WITHOUT_MARKS else "."}
        allowed: Schema = {"enum": list(names)} if names else free
        return {
            "description": section.says,
            "type": "object",
            "propertyNames": allowed,
            "additionalProperties": entry,
        }

    def _thing(self, kind: Kind, section: str) -> Schema:
        properties: Schema = {}
        structure = structure_of(kind.name, section)
        for part in structure:
            properties[part.name] = self._structural(part, kind.name)
        properties.update(self._properties(grouped(kind.keys.values())))
        required = [part.name for part in structure if part.required and section != "equipment"]
        required += [key.name for key in kind.keys.values() if key.required]
        found: Schema = {"description": kind.says, "type": "object", "properties": properties}
        if required:
            found["required"] = required
        return {**found, "additionalProperties": False}

    def _any_kind(self, kinds: list[Kind]) -> Schema:
        """An entry whose part tells its kind: any key of any kind, in any of its forms."""
        forms: dict[str, list[Schema]] = {}
        for kind in kinds:
            for name, form in self.of_kind[_kind(kind)]["properties"].items():
                known = forms.setdefault(name, [])
                if name != "kind" and form not in known:
                    known.append(form)
        properties = {
            name: known[0] if len(known) == 1 else {"anyOf": known} for name, known in forms.items() if name != "kind"
        }
        return {
            "description": "Equipment that takes its kind from a part.",
            "type": "object",
            "properties": properties,
            "additionalProperties": False,
        }

    def _equipment(self, kinds: list[Kind]) -> Schema:
        by_kind = [
            {
                "if": {"properties": {"kind": {"const": kind.name}}, "required": ["kind"]},
                "then": reference(_kind(kind)),
            }
            for kind in kinds
        ]
        words = [kind.name for kind in kinds]
        return {
            "description": "One thing with terminals, or a part that several share.",
            "type": "object",
            "properties": {"kind": {"description": "What it is.", "enum": words}},
            "anyOf": [{"required": ["kind"]}, {"required": ["part"]}],
            "allOf": [
                *by_kind,
                {"if": {"not": {"required": ["kind"]}}, "then": reference(BY_PART)},
            ],
        }

    def _properties(self, groups: dict[str, Group]) -> Schema:
        return {name: self._group(name, group) for name, group in groups.items()}

    def _group(self, name: str, group: Group) -> Schema:
        if not group.below:
            assert group.key is not None  # a leaf of the tree is a key
            return self._value(group.key)
        forms: list[Schema] = [self._value(group.key)] if group.key is not None else []
        below = {**self._properties(group.below), "basis": self.defs.basis()}
        forms.append({"type": "object", "properties": below, "additionalProperties": False})
        says = group.key.says if group.key is not None else "Its keys are " + ", ".join(group.below) + "."
        forms.append(self.defs.left_open())
        return self.defs.shared(f"keys of {name}", {"description": says, "anyOf": forms})

    def _value(self, key: Key) -> Schema:
        return self.defs.shared(f"key {key.name}", described(key, self.defs.value(key)))

    def _structural(self, part: Structural, kind: str) -> Schema:
        form = _FORMS[part.name]
        if part.name == "kind":
            form = {"const": kind}
        description = f"{part.says} E.g. {part.example}"
        return self.defs.shared(f"structure {part.name}", {"description": description, **form})


_TEXT: Schema = {"type": "string", "minLength": 1}
_STATED: Schema = {
    "type": "object",
    "required": ["is", "basis"],
    "properties": {"is": _TEXT, "basis": reference("basis")},
    "additionalProperties": False,
}
_RUN: Schema = {
    "anyOf": [
        {
            "type": "array",
            "items": {"anyOf": [_TEXT, _STATED, reference("equipment")]},
        },
        {"enum": ["unknown", "?"]},
    ]
}


def _way_back(words: tuple[str, ...]) -> Schema:
    record = {"run": _RUN, "to": _TEXT, "size": reference("key-size")}
    return {
        "anyOf": [
            {"enum": [*words, "unknown", "?"]},
            {"type": "string", "pattern": "^chassis[.]"},
            _STATED,
            {"type": "object", "properties": record, "additionalProperties": False},
        ]
    }


_NUMBERS: Schema = {"type": ["integer", "string"], "pattern": "^([0-9]+|unknown)$"}
_DEVICE: Schema = reference(BY_PART)
_FORMS: dict[str, Schema] = {
    "kind": {},
    "part": _TEXT,
    "of": {"anyOf": [_TEXT, _STATED]},
    "terminals": {
        "anyOf": [
            {"type": "object", "additionalProperties": reference("terminal")},
            {"enum": ["unknown", "?"]},
        ]
    },
    "ways": {
        "type": "object",
        "propertyNames": {"pattern": NAME},
        "additionalProperties": {
            "anyOf": [reference("key-rating"), _DEVICE, reference("equipment")],
        },
    },
    "from": {"anyOf": [_TEXT, _STATED]},
    "to": {"anyOf": [_TEXT, _STATED, {"type": "array", "items": _TEXT, "minItems": 1}]},
    "run": _RUN,
    "cable": {"anyOf": [_TEXT, _STATED, reference("cable")]},
    "cores": {"anyOf": [_NUMBERS, {"type": "array", "items": _NUMBERS}]},
    "return": _way_back(RETURNS),
    "earth": _way_back(EARTHS),
    "ends": {
        "type": "object",
        "properties": {"from": reference("termination"), "to": reference("termination")},
        "additionalProperties": False,
    },
}


if __name__ == "__main__":
    import sys

    sys.stdout.write(schema_text())
