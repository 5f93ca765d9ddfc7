"""JSON Schemas of the documents that commands print with `--format json`, made from their typed dictionaries."""

from __future__ import annotations

from types import NoneType, UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints, is_typeddict

DIALECT = "https://json-schema.org/draft/2020-12/schema"
SIMPLE = {str: "string", int: "integer", float: "number", bool: "boolean", NoneType: "null"}


def typed_schema(kind: Any, title: str) -> dict[str, Any]:
    """JSON Schema 2020-12 of a typed dictionary and of those in it; every key is there, and no other.

    Raises
    ------
    TypeError: it holds a type that has no shape in JSON.
    """
    parts: dict[str, Any] = {}
    top = _shape(kind, parts)
    return {"$schema": DIALECT, "title": title, **top, "$defs": dict(sorted(parts.items()))}


def _name(kind: Any) -> str:
    return str(getattr(kind, "__name__", ""))


def _shape(kind: Any, parts: dict[str, Any]) -> dict[str, Any]:
    if kind in SIMPLE:
        return {"type": SIMPLE[kind]}
    if kind is Any:
        return {}
    if is_typeddict(kind):
        return _dictionary(kind, parts)
    origin, inner = get_origin(kind), get_args(kind)
    if origin is list:
        return {"type": "array", "items": _shape(inner[0], parts)}
    if origin is dict:
        return {"type": "object", "additionalProperties": _shape(inner[1], parts)}
    if origin in (Union, UnionType):
        return {"anyOf": [_shape(one, parts) for one in inner]}
    raise TypeError(f"{kind} has no shape in JSON")


def _dictionary(kind: Any, parts: dict[str, Any]) -> dict[str, Any]:
    name = _name(kind)
    if name not in parts:
        parts[name] = {}
        hints = get_type_hints(kind)
        parts[name] = {
            "description": " ".join(str(kind.__doc__).split()),
            "type": "object",
            "properties": {key: _shape(value, parts) for key, value in hints.items()},
            "required": list(hints),
            "additionalProperties": False,
        }
    return {"$ref": f"#/$defs/{name}"}
