"""JSON Schema of what a spec may say, for editors: meanings, units and examples of every key."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, get_origin
from urllib.parse import unquote

from pydantic.fields import FieldInfo
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core.core_schema import WithDefaultSchema

from speclint.quantities import DIMENSIONS, PROVENANCES, pattern_of
from speclint.specs.by_word import class_of
from speclint.specs.docstrings import meanings, summary
from speclint.specs.examples import example_for, examples_of, quantities_of
from speclint.specs.geometry import conditions_of
from speclint.specs.key_descriptions import inner_table, listed_ids, said_of
from speclint.specs.old_keys import old_keys_of
from speclint.specs.spec import MARK, Spec, SpecTable

_NAMES = {"type": "array", "items": {"type": "string"}, "minItems": 1}
_FOR = "in a file of several parts, what differs: a table of keys for each name, or for several with commas"
DIALECT = "https://json-schema.org/draft/2020-12/schema"
#: Units of the two dimensions that are no plain multiples of an SI unit, and of their difference.
_SPECIAL_UNITS = {
    "temperature": ["°C", "°F", "K"],
    "temperature difference": ["K", "°C difference", "°F difference"],
}


class _WithoutDefaults(GenerateJsonSchema):
    """Leaves out what stands for a value that is not stated."""

    def default_schema(self, schema: WithDefaultSchema) -> JsonSchemaValue:
        """The schema of the value alone."""
        return self.generate_inner(schema["schema"])


def schema_of(kind: type[Spec]) -> dict[str, Any]:
    """The JSON Schema of one kind of spec."""
    kind = class_of(kind)
    schema = kind.model_json_schema(mode="validation", schema_generator=_WithoutDefaults)
    used: set[str] = set()
    _tidy(schema, used)
    tables = {name: table for table in _tables(kind) for name in _names(table)}
    for name, inner in schema.get("$defs", {}).items():
        _describe(tables[name], inner)
    _describe(kind, schema)
    if kind.hosts:
        schema["description"] += f" It must fit: {'; '.join(map(str, kind.hosts))}."
    for key in ("like", "mirror_of"):
        schema["properties"][key]["x-link-to"] = [kind.kind]
    _several(schema["properties"])
    schema["properties"] = {"kind": {"const": kind.kind}, **schema["properties"]}
    schema["required"] = ["kind"]
    definitions = {
        **schema.pop("$defs", {}),
        **{dimension: _quantity(dimension) for dimension in sorted(used)},
    }
    schema.pop("title")
    return {"$schema": DIALECT, "title": kind.kind, **schema, "$defs": definitions}


def _several(properties: dict[str, Any]) -> None:
    """What a file of several parts may state: lists of names, and what differs between the parts."""
    names = {**_NAMES, "examples": properties["each"].pop("examples")}
    tables = {"type": "object", "additionalProperties": _NAMES, "minProperties": 1}
    of_each = {"anyOf": [names, tables], "description": properties["each"]["description"]}
    own = {"id", "like", "mirror_of", "each"}
    keys = {name: {"$ref": f"#/properties/{name}"} for name in properties if name not in own}
    differing = {"type": "object", "properties": keys, "additionalProperties": False}
    properties["each"] = of_each
    properties["for"] = {
        "type": "object",
        "additionalProperties": differing,
        "description": _FOR,
    }


def schemas_of(kinds: Iterable[type[Spec]]) -> dict[str, Any]:
    """The JSON Schemas of all kinds, by kind."""
    return {kind.kind: schema_of(kind) for kind in kinds}


def schema_of_all(kinds: Iterable[type[Spec]]) -> dict[str, Any]:
    """One JSON Schema for every spec of a repository: what else may stand in a file is told by its ``kind``."""
    definitions: dict[str, Any] = {}
    words: dict[str, str] = {}
    for kind in kinds:
        schema = schema_of(kind)
        inner = schema.pop("$defs")
        schema.pop("$schema")
        words[kind.kind] = schema["description"]
        for name, one in {"": schema, **inner}.items():
            if "x-units" in one:
                definitions[name] = one  # of quantities, which every kind has alike
            else:
                definitions[_called(kind, name)] = _referred(one, kind, inner)
    by_kind = [
        {
            "if": {"properties": {"kind": {"const": word}}, "required": ["kind"]},
            "then": {"$ref": f"#/$defs/{word}"},
        }
        for word in words
    ]
    told = [{"const": word, "description": says} for word, says in words.items()]
    return {
        "$schema": DIALECT,
        "title": "spec of a component",
        "type": "object",
        "properties": {"kind": {"oneOf": told, "description": "what kind of component it is"}},
        "required": ["kind"],
        "allOf": by_kind,
        "$defs": definitions,
    }


def _called(kind: type[Spec], name: str) -> str:
    return f"{kind.kind}.{name}" if name else kind.kind


def _referred(node: Any, kind: type[Spec], inner: Mapping[str, Any]) -> Any:
    """The same with its references to where they lead in the schema of all kinds."""
    if isinstance(node, list):
        return [_referred(one, kind, inner) for one in node]
    if not isinstance(node, dict):
        return node
    found = {name: _referred(one, kind, inner) for name, one in node.items()}
    if isinstance(to := node.get("$ref"), str):
        name = unquote(to.removeprefix("#/$defs/"))
        if to.startswith("#/properties/"):
            found["$ref"] = f"#/$defs/{kind.kind}{to[1:]}"
        elif "x-units" not in inner[name]:
            found["$ref"] = f"#/$defs/{_called(kind, name)}"
    return found


def schema_of_table(table: type[SpecTable]) -> dict[str, Any]:
    """The JSON Schema of a file that is no spec, such as the settings of a repository."""
    schema = table.model_json_schema(mode="validation", schema_generator=_WithoutDefaults)
    used: set[str] = set()
    _tidy(schema, used)
    tables = {name: one for one in _tables(table) for name in _names(one)}
    for name, inner in schema.get("$defs", {}).items():
        _describe(tables[name], inner)
    _describe(table, schema)
    definitions = {
        **schema.pop("$defs", {}),
        **{dimension: _quantity(dimension) for dimension in sorted(used)},
    }
    schema.pop("title")
    return {"$schema": DIALECT, "title": table.kind, **schema, "$defs": definitions}


def _tables(table: type[SpecTable]) -> Iterator[type[SpecTable]]:
    for field in table.model_fields.values():
        inner, _ = inner_table(field.annotation)
        if inner is not None:
            yield inner
            yield from _tables(inner)


def _names(table: type[SpecTable]) -> tuple[str, str]:
    """What a definition is called: by its class, or with its module where another class has the same name."""
    return table.__name__, f"{table.__module__}.{table.__qualname__}".replace(".", "__")


def _describe(table: type[SpecTable], schema: dict[str, Any]) -> None:
    """What the table is, and of each key what it means, what it takes and an example."""
    rules = "".join(f"; {one}" for one in conditions_of(table))
    schema["description"] = summary(table) + (f" It must hold{rules.replace(';', ':', 1)}." if rules else "")
    known = meanings(table)
    for name, field in table.model_fields.items():
        about = schema["properties"][name]
        inner, _ = inner_table(field.annotation)
        takes = said_of(field) if inner is None else summary(inner)
        about["description"] = f"{known[name]}; {takes}" if name in known else takes
        if name in old_keys_of(table):
            about["deprecated"] = True
        examples = _examples(name, field, table)
        if examples:
            about["examples"] = examples


def _examples(name: str, field: FieldInfo, table: type[SpecTable]) -> list[Any]:
    value = example_for(name, field, table)
    if value is not None:
        return [str(value) if isinstance(value, dt.date) else value]
    if name == "each" and issubclass(table, Spec):
        return [["left", "right"]]
    if ids := listed_ids(field):
        return [ids]
    is_list = get_origin(field.annotation) is tuple
    return [[quantities_of(table)[name]]] if is_list and name in quantities_of(table) else []


def _quantity(dimension: str) -> dict[str, Any]:
    """The definition of a quantity: text with a unit, or a table that says where it comes from."""
    known = "pressure" if dimension == "fluid pressure" else dimension
    taken = _SPECIAL_UNITS.get(dimension) or [unit for unit in DIMENSIONS[known].units if unit]
    datum = ", followed by gauge or absolute" if dimension == "fluid pressure" else ""
    named = f"its unit ({', '.join(taken)})" if taken else "no unit"
    text = {
        "type": "string",
        "pattern": pattern_of(dimension),
        "description": f"{dimension}: a number with {named}{datum}, and limits where it has them",
        "examples": examples_of(dimension),
    }
    table = {
        "type": "object",
        "properties": {
            "value": text,
            "from": {"enum": list(PROVENANCES), "description": "where the value comes from"},
            "note": {"type": "string", "description": "anything a reader should know of it"},
        },
        "required": ["value"],
        "additionalProperties": False,
    }
    return {"anyOf": [text, table], "x-units": taken}


def _tidy(node: Any, used: set[str]) -> None:
    """Refer to each quantity by its dimension; leave out made-up titles."""
    if isinstance(node, list):
        for value in node:
            _tidy(value, used)
    if not isinstance(node, dict):
        return
    dimension = node.get("x-dimension")
    if isinstance(dimension, str):
        used.add(dimension)
        node.clear()
        node["$ref"] = f"#/$defs/{dimension.replace(' ', '%20')}"
        return
    for name, value in node.items():
        if name == "properties":
            for inner in value.values():
                inner.pop("title", None)
        _tidy(value, used)
    if isinstance(node.get("enum"), list) and all(isinstance(word, str) for word in node["enum"]):
        node["anyOf"] = [{"enum": node.pop("enum")}, {"type": "string", "pattern": MARK}]
