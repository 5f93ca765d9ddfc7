"""The JSON Schema of a rule file, made from the list of keys, for editors that complete and check while one writes.

It knows keys and shapes; facts, units, types and the language of conditions are checked when rules are loaded.
"""

from __future__ import annotations

import json
from typing import Any

from checker.rulebook.keys import BASES, CODES, FACT_NAME, KEYS, NAME, REQUIRED, SHOWN_BY_EXAMPLES, SIGNALS
from checker.rulebook.syntax import LONGEST

Schema = dict[str, Any]

_TEXT: Schema = {"type": "string", "minLength": 1}
_SLUG: Schema = {"type": "string", "pattern": f"^{NAME}$"}
_EXPRESSION: Schema = {"type": ["string", "boolean"], "maxLength": LONGEST}
_PATH = r"^[a-z][a-z0-9_]*\.[a-z][a-z0-9_]*$"


def rule_schema() -> Schema:
    """The schema, draft 2020-12, as plain data; the same each time."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A rule of the rulebook",
        "description": "One duty: what it is about, what it requires, why, and examples that show every verdict.",
        "type": "object",
        "properties": {key.name: {**_shape(key.shape), "description": key.says} for key in KEYS},
        "required": list(REQUIRED),
        "additionalProperties": False,
        "$defs": {
            "source": _source(),
            "facts": {
                "description": "Facts by kind and name; what is left out is unknown.",
                "type": "object",
                "propertyNames": {"pattern": _PATH},
                "additionalProperties": {"$ref": "#/$defs/value"},
            },
            "value": {
                "description": "A value as in a design file; a list of subjects is a list of facts.",
                "anyOf": [
                    {"type": ["string", "number", "boolean"]},
                    {"$ref": "#/$defs/facts"},
                    {"type": "array", "items": {"anyOf": [{"type": "string"}, {"$ref": "#/$defs/facts"}]}},
                ],
            },
            "example": {"oneOf": [_facts_example(), _design_example()]},
        },
    }


def _shape(shape: str) -> Schema:
    shapes: dict[str, Schema] = {
        "name": _SLUG,
        "line": {**_TEXT, "maxLength": 160},
        "text": {**_TEXT, "maxLength": 2000},
        "signal": {"enum": list(SIGNALS)},
        "kind": {"type": "string", "pattern": f"^{FACT_NAME}$"},
        "expression": _EXPRESSION,
        "names": {"type": "array", "items": _TEXT, "uniqueItems": True},
        "sources": {"type": "array", "minItems": 1, "items": {"$ref": "#/$defs/source"}},
        "examples": _examples(),
    }
    return dict(shapes[shape])


def _examples() -> Schema:
    listed = {"type": "array", "minItems": 1, "items": {"$ref": "#/$defs/example"}}
    return {
        "type": "object",
        "properties": dict.fromkeys(SHOWN_BY_EXAMPLES, listed),
        "required": list(SHOWN_BY_EXAMPLES[:3]),
        "additionalProperties": False,
    }


def _source() -> Schema:
    text = {"type": ["string", "number"]}
    return {
        "type": "object",
        "properties": {
            "title": _TEXT,
            "clause": text,
            "edition": text,
            "basis": {"enum": list(BASES), "description": "Seen by us, recalled, or common practice without a source."},
        },
        "required": ["title", "basis"],
        "additionalProperties": False,
    }


def _facts_example() -> Schema:
    return {
        "type": "object",
        "properties": {"name": _SLUG, "facts": {"$ref": "#/$defs/facts"}, "code": {"enum": list(CODES)}},
        "required": ["name", "facts"],
        "additionalProperties": False,
    }


def _design_example() -> Schema:
    return {
        "type": "object",
        "properties": {
            "name": _SLUG,
            "design": {**_SLUG, "description": "A base design in `designs/`."},
            "with": {"type": "object", "description": "Changes to it: dotted path and what stands there instead."},
            "about": {**_TEXT, "description": "The id of the subject it shows."},
            "code": {"enum": list(CODES)},
        },
        "required": ["name", "design", "about"],
        "additionalProperties": False,
    }


def schema_text() -> str:
    """The schema as it is committed."""
    return json.dumps(rule_schema(), indent=2, ensure_ascii=False) + "\n"


if __name__ == "__main__":
    import sys

    sys.stdout.write(schema_text())
