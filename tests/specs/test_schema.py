"""The schema of a kind that has a key of every sort, of several kinds in one, and of a table that is no spec."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, ClassVar
from urllib.parse import unquote

import jsonschema
import pytest

from speclint.specs import CASE_NAMES, Duty, MadePart, SpecTable, schema_of, schema_of_all, schema_of_table
from speclint.specs.examples import examples_of
from speclint.specs.kinds.piston import Piston
from speclint.specs.schema import DIALECT, schemas_of
from tests.specs.made_up import Foot, Rest, Stand

SCHEMA = schema_of(Stand)
KEYS: dict[str, dict[str, Any]] = SCHEMA["properties"]


def fits(schema: dict[str, Any], spec: dict[str, Any]) -> bool:
    return bool(jsonschema.Draft202012Validator(schema).is_valid(spec))


def test_a_schema_says_what_it_is_of() -> None:
    assert (SCHEMA["$schema"], SCHEMA["title"], SCHEMA["required"]) == (DIALECT, "stand", ["kind"])
    assert SCHEMA["description"] == "A stand of a test."
    assert KEYS["kind"] == {"const": "stand"}
    assert next(iter(KEYS)) == "kind"
    assert KEYS["like"]["x-link-to"] == KEYS["mirror_of"]["x-link-to"] == ["stand"]
    assert set(schemas_of((Stand, Rest))) == {"stand", "rest"}


@pytest.mark.parametrize(
    ("key", "says", "examples"),
    [
        ("width", 'across its feet; length, such as "2 m"; 1 m to 4 m', ["2 m"]),
        ("legs", "a whole number", [4]),
        ("made_on", "a date without quotes, such as 2027-05-31", ["2025-05-31"]),
        ("sides", 'a list, each one of "left", "right"', None),
        ("holds", "the id of a rest, or a list of several", [["rest-left", "rest-right"]]),
        ("foot", "A foot of a stand.", None),
        ("form", 'one of "welded", "cast"; of the other hand the other word', ["welded"]),
    ],
)
def test_each_key_says_what_it_takes(key: str, says: str, examples: list[Any] | None) -> None:
    assert KEYS[key]["description"] == says
    assert KEYS[key].get("examples") == examples
    assert "deprecated" not in KEYS[key]
    assert "title" not in KEYS[key]
    assert "default" not in KEYS[key]


def test_a_list_of_quantities_has_an_example_of_one() -> None:
    ((example,),) = KEYS["heights"]["examples"]
    assert example == examples_of("length")[0]
    assert "examples" not in KEYS["widths"]


@pytest.mark.parametrize(
    ("more", "good"),
    [
        ({}, True),
        ({"kind": "rest"}, False),
        ({"width": "2 m"}, True),
        ({"width": {"value": "2 m", "from": "measured", "note": "by tape"}}, True),
        ({"width": {"from": "measured"}}, False),
        ({"width": {"value": "2 m", "of": "x"}}, False),
        ({"width": "two metres"}, False),
        ({"form": "cast"}, True),
        ({"form": "{each}"}, True),  # of a file of several parts
        ({"form": "forged"}, False),
        ({"legs": 4}, True),
        ({"legs": "four"}, False),
        ({"feet": {"front": {"height": "40 mm", "fixed": True}}}, True),
        ({"feet": {"front": {"height": "40"}}}, False),
        ({"each": ["left", "right"]}, True),
        ({"each": []}, False),
        ({"each": {"side": ["left"], "end": ["front"]}}, True),
        ({"each": {}}, False),
        ({"each": {"side": ["left"]}}, True),
        ({"each": {"side": []}}, False),
        ({"each": ["left"], "for": {"left": {"width": "2 m"}}}, True),
        ({"each": ["left"], "for": {"left": {"id": "x"}}}, False),
        ({"each": ["left"], "for": {"left": {"widht": "2 m"}}}, False),
        ({"temperatures": {"a": "20 °C"}}, True),
    ],
)
def test_what_fits_the_schema(more: dict[str, Any], good: bool) -> None:
    assert fits(SCHEMA, {"kind": "stand", **more}) is good
    assert not fits(SCHEMA, more if "kind" in more else {**more})


def test_each_quantity_is_defined_once_with_its_units() -> None:
    definitions = SCHEMA["$defs"]
    length, temperature = definitions["length"], definitions["temperature"]
    assert "mm" in length["x-units"]
    assert temperature["x-units"] == ["°C", "°F", "K"]
    text, table = temperature["anyOf"]
    assert (
        text["description"] == "temperature: a number with its unit (°C, °F, K), and limits where it has them"
    )
    assert table["required"] == ["value"]
    assert set(table["properties"]) == {"value", "from", "note"}
    assert definitions["Foot"]["description"] == "A foot of a stand."
    pressure = schema_of(Piston)["$defs"]["fluid pressure"]["anyOf"][0]["description"]
    assert pressure.startswith("fluid pressure: a number with its unit (")
    assert pressure.endswith("), followed by gauge or absolute, and limits where it has them")


def test_words_of_names_are_a_list_or_a_mark() -> None:
    names = schema_of(Duty)["properties"]["cases"]["propertyNames"]
    assert names.keys() == {"anyOf"}
    words, mark = names["anyOf"]
    assert words["enum"] == list(CASE_NAMES)
    assert mark["type"] == "string"


def test_units_are_listed_without_that_of_a_plain_number() -> None:
    ratio = schema_of(Duty)["$defs"]["ratio"]
    assert "%" in ratio["x-units"]
    assert "" not in ratio["x-units"]
    assert ratio["anyOf"][0]["description"].startswith("ratio: a number with its unit (")


def test_what_must_hold_and_fit_is_said_of_a_kind() -> None:
    said = schema_of(Piston)["description"]
    assert "It must hold: " in said
    assert " It must fit: " in said
    assert "It must" not in SCHEMA["description"]


class Plain(SpecTable):
    """A file that is no spec.

    Fields:
        foot: what it stands on
    """

    kind: ClassVar[str] = "plain file"

    foot: Foot = Foot.unstated()


def test_a_table_that_is_no_spec() -> None:
    found = schema_of_table(Plain)
    assert (found["$schema"], found["title"], found["description"]) == (
        DIALECT,
        "plain file",
        "A file that is no spec.",
    )
    assert found["properties"]["foot"]["description"] == "what it stands on; A foot of a stand."
    assert "length" in found["$defs"]
    assert fits(found, {"foot": {"height": "40 mm"}})
    assert not fits(found, {"foot": {"height": "40"}})


def test_one_schema_of_all_kinds_tells_them_by_their_word() -> None:
    found = schema_of_all((Stand, Rest))
    assert (found["title"], found["required"]) == ("spec of a component", ["kind"])
    assert found["properties"]["kind"]["oneOf"] == [
        {"const": "stand", "description": "A stand of a test."},
        {"const": "rest", "description": "What a stand carries."},
    ]
    assert {"stand", "rest", "stand.Foot", "length"} <= set(found["$defs"])
    assert not any("$schema" in one for one in found["$defs"].values())
    for spec, good in (
        ({"kind": "stand", "width": "2 m"}, True),
        ({"kind": "stand", "feet": {"front": {"height": "40 mm"}}}, True),
        ({"kind": "stand", "feet": {"front": {"height": "40"}}}, False),
        ({"kind": "stand", "each": ["left"], "for": {"left": {"width": "2 m"}}}, True),
        ({"kind": "stand", "each": ["left"], "for": {"left": {"width": "2"}}}, False),
        ({"kind": "rest"}, True),
        ({"kind": "rest", "width": "2 m"}, False),
        ({"width": "2 m"}, False),
        ({"kind": "table"}, False),
    ):
        assert fits(found, spec) is good, spec


def referred(node: Any) -> Iterator[str]:
    """Every reference in a schema."""
    if isinstance(node, dict):
        if isinstance(to := node.get("$ref"), str):
            yield to
        for one in node.values():
            yield from referred(one)
    elif isinstance(node, list):
        for one in node:
            yield from referred(one)


def test_every_reference_leads_to_something() -> None:
    for found in (schema_of_all((Stand, Rest, Piston, MadePart)), SCHEMA, schema_of_table(Plain)):
        places = set(referred(found))
        assert places
        for place in places:
            node: Any = found
            for part in place.removeprefix("#/").split("/"):
                node = node[unquote(part)]
            assert node, place
