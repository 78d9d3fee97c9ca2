"""JSON Schema of what a spec may say, for editors."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from speclint.specs.component import Spec
from speclint.specs.meanings import meanings, summary

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema_of(kind: type[Spec]) -> dict[str, Any]:
    """The JSON Schema of one kind of spec."""
    schema = kind.model_json_schema(mode="validation")
    _drop_defaults(schema)
    _describe(kind, schema["properties"])
    schema["properties"] = {"kind": {"const": kind.kind}, **schema["properties"]}
    schema["required"] = ["kind"]
    schema["description"] = summary(kind)
    return {
        "$schema": DIALECT,
        "title": kind.kind,
        **{key: value for key, value in schema.items() if key != "title"},
    }


def schemas_of(kinds: Iterable[type[Spec]]) -> dict[str, Any]:
    """The JSON Schemas of all kinds, by kind."""
    return {kind.kind: schema_of(kind) for kind in kinds}


def _describe(kind: type[Spec], properties: dict[str, Any]) -> None:
    for name, meaning in meanings(kind).items():
        properties[name]["description"] = meaning


def _drop_defaults(node: Any) -> None:
    """Leave out what stands for a value not stated: it is no default that a spec could write."""
    if isinstance(node, dict):
        node.pop("default", None)
        for value in node.values():
            _drop_defaults(value)
    elif isinstance(node, list):
        for value in node:
            _drop_defaults(value)
