"""Templates and schemas of every kind: filled with its examples a template loads, and real specs fit the schema."""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import tomli
import tomlkit

from speclint.commands import main
from speclint.quantities import DIMENSIONS
from speclint.repository.reading import load_specs
from speclint.specs import Spec, schema_of, template_of
from speclint.specs.examples import examples_of
from speclint.specs.template import _remark
from speclint.testing import installed_families
from tests.tubes import tubes

KINDS = {**installed_families().kinds}
EXAMPLE = Path(__file__).parents[2] / "example_specs"
SPECS = sorted(path for path in EXAMPLE.rglob("*.toml") if path.parent != EXAMPLE)


def filled(template: str) -> str:
    """The template with the mark # taken from the front of every key."""
    return re.sub(r"^#(?! |$)", "", template, flags=re.MULTILINE)


def keys_in(schema: dict[str, Any]) -> set[str]:
    """Every key that a schema has a meaning for and that is still written, its tables' keys included."""
    tables = [schema, *(one for one in schema["$defs"].values() if "properties" in one)]
    keys = (item for table in tables for item in table["properties"].items())
    return {name for name, about in keys if "deprecated" not in about}


@pytest.mark.parametrize("kind", KINDS)
def test_a_template_filled_with_its_examples_loads(kind: str, tmp_path: Path) -> None:
    path = tmp_path / "new.toml"
    path.write_text(filled(template_of(KINDS[kind])), encoding="utf-8")
    loaded = load_specs(path, "new.toml", KINDS)[0]
    assert loaded.complaints == ()
    assert isinstance(loaded.spec, KINDS[kind])


@pytest.mark.parametrize("kind", KINDS)
def test_a_template_as_it_comes_is_a_spec_that_states_nothing(kind: str, tmp_path: Path) -> None:
    path = tmp_path / "new.toml"
    path.write_text(template_of(KINDS[kind]), encoding="utf-8")
    assert tomli.loads(path.read_text(encoding="utf-8")) == {"kind": kind, "id": f"{kind}-left"}
    assert load_specs(path, "new.toml", KINDS)[0].complaints == ()


def test_a_word_of_a_remark_is_never_broken() -> None:
    """Such as the address of a page: it stands whole on a line of its own."""
    long = "x" * 300
    assert list(_remark(f"see  {long}\nfor more")) == ["# see", f"# {long}", "# for more"]


@pytest.mark.parametrize(("letters", "lines"), [(49, 1), (50, 2)])
def test_a_remark_is_a_hundred_signs_wide_at_the_most(letters: int, lines: int) -> None:
    """The mark and a space, 48 letters, a space and 49 more."""
    found = list(_remark(f"{'x' * 48} {'y' * letters}"))
    assert len(found) == lines
    assert max(map(len, found)) <= 100


@pytest.mark.parametrize("kind", KINDS)
def test_a_template_has_every_key_of_its_kind(kind: str) -> None:
    text = filled(template_of(KINDS[kind]))
    remarked = {"like", "mirror_of", "each"}  # whoever states one leaves most others out
    assert all(name in text for name in remarked)
    for name in keys_in(schema_of(KINDS[kind])) - {"kind"} - remarked:
        assert re.search(rf"(^|[\[.]){re.escape(name)}( =|\]|\.)", text, re.MULTILINE), name


def as_json(raw: Any) -> Any:
    """A spec as editors hold it against its schema: JSON has no dates, and takes them as text."""
    return json.loads(json.dumps(raw, default=str))


@pytest.mark.parametrize("kind", KINDS)
def test_a_filled_template_fits_the_schema(kind: str) -> None:
    schema = schema_of(KINDS[kind])
    jsonschema.Draft202012Validator.check_schema(schema)
    raw = as_json(tomli.loads(filled(template_of(KINDS[kind]))))
    jsonschema.validate(raw, schema, jsonschema.Draft202012Validator)


@cache
def validator_of(kind: str) -> jsonschema.Draft202012Validator:
    """What holds a spec against the schema of its kind, made once for all specs of it."""
    schema = schema_of(KINDS[kind])
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.relative_to(EXAMPLE).as_posix())
def test_the_specs_of_the_example_fit_their_schema(path: Path) -> None:
    raw = tomli.loads(path.read_text(encoding="utf-8"))
    validator_of(raw["kind"]).validate(as_json(raw))


@pytest.mark.parametrize(
    "spoil",
    [
        {"kind": "duty"},
        {"bor": "500 mm"},
        {"bore": 500},
        {"bore": {"value": "500 mm", "from": "guessed"}},
        {"collar": {"end": "top"}},
        {"finish_bored_after": "yes"},
        {"pistons_for": "503 mm"},
        {"inspection_document": "3.3"},
    ],
)
def test_the_schema_refuses_what_the_loader_refuses(spoil: dict[str, Any], tmp_path: Path) -> None:
    raw = tomli.loads((EXAMPLE / "liners" / "liner.toml").read_text(encoding="utf-8"))
    (tmp_path / "a.toml").write_text(tomlkit.dumps({**raw, **spoil}), encoding="utf-8")
    assert spoil.keys() == {"kind"} or load_specs(tmp_path / "a.toml", "a.toml", KINDS)[0].complaints
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(
            {**raw, **spoil}, schema_of(KINDS["cylinder-liner"]), jsonschema.Draft202012Validator
        )


def test_every_key_says_what_it_takes_with_units_and_an_example() -> None:
    schema = schema_of(KINDS["cylinder-liner"])
    bore = schema["properties"]["bore"]
    assert bore["description"].endswith('length, such as "480 mm"; 100 mm to 1.2 m')
    assert bore["examples"] == ["380 mm"]  # less than the outside, 480 mm
    length = schema["$defs"]["length"]
    assert {"mm", "in", "thou"} <= set(length["x-units"])
    assert "480 mm H8" in length["anyOf"][0]["examples"]


@pytest.mark.parametrize(
    "dimension", [*DIMENSIONS, "fluid pressure", "temperature", "temperature difference"]
)
def test_every_example_of_a_quantity_can_be_read(dimension: str) -> None:
    from speclint.quantities import read

    assert examples_of(dimension)
    for text in examples_of(dimension):
        read(text, dimension, "any")


def test_a_kind_of_a_family_has_its_template_too(tmp_path: Path) -> None:
    """The invented family of tubes documents no key: the template still says what each takes."""
    kinds: dict[str, type[Spec]] = dict(tubes().kinds)
    text = template_of(kinds["rack"])
    assert "#[slots.first]" in text
    path = tmp_path / "rack.toml"
    path.write_text(filled(text), encoding="utf-8")
    assert load_specs(path, "rack.toml", kinds)[0].complaints == ()


def test_the_command_prints_them(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["kinds", "cylinder-liner", "--as", "template"]) == 0
    assert capsys.readouterr().out.startswith("# cylinder liner: A cast-iron liner in a bore")
    assert main(["kinds", "--as", "schema"]) == 0
    assert set(json.loads(capsys.readouterr().out)) == set(KINDS)
    assert main(["kinds", "--as", "template"]) == 2
    assert "speclint kinds KIND --as template" in capsys.readouterr().err
