"""Patterns of quantities against what is read: an editor marks what the reader refuses, and nothing that it takes."""

from __future__ import annotations

import json
import re
import tomllib
from pathlib import Path

import jsonschema
import pytest

from speclint.errors import QuantityError
from speclint.quantities import DIMENSIONS, example, pattern_of, read
from speclint.repository import Settings
from speclint.specs import schema_of_all, schema_of_table
from speclint.testing import installed_families

EXAMPLE = Path(__file__).parents[2] / "example_specs"
NAMES = [*DIMENSIONS, "fluid pressure", "temperature", "temperature difference"]


@pytest.mark.parametrize("dimension", NAMES)
def test_every_example_and_every_unit_fits_its_pattern(dimension: str) -> None:
    pattern = re.compile(pattern_of(dimension))
    texts = re.findall(r'"([^"]+)"', example(dimension))
    known = DIMENSIONS.get("pressure" if dimension == "fluid pressure" else dimension)
    datum = " gauge" if dimension == "fluid pressure" else ""
    texts += [f"5 {unit}{datum}".strip() for unit in (known.units if known else ())]
    for text in [one for one in texts if _reads(one, dimension)]:
        assert pattern.search(text), text
        for band in (" ±1", " ±5 %"):
            assert not _reads(text + band, dimension) or pattern.search(text + band), text + band
    assert not pattern.search("banana")
    assert not pattern.search("5,5 mm")
    assert not pattern.search("")


@pytest.mark.parametrize(
    ("dimension", "text"),
    [
        ("length", "480 mm H8"),
        ("length", "25 mm +0.05/-0.02"),
        ("length", "20.0..20.2 mm"),
        ("length", "1 3/4 in"),
        ("length", '7/8"'),
        ("length", "3 thou"),
        ("length", "{size} mm"),
        ("stress", "15 tonf/in2"),
        ("stress", "15 tonf/in^2"),
        ("moment", "400 Nm"),
        ("fluid pressure", "15.2 bar gauge ±0.3"),
        ("fluid pressure", "15.2 bar gauge ±0.3 bar"),
        ("temperature", "300..330 °C"),
        ("temperature", "30 degC"),
        ("temperature difference", "50 °F difference"),
        ("temperature difference", "50 K difference"),
        ("ratio", "12.5 %"),
        ("ratio", "1"),
        ("expansion", "10.5 1e-6/K"),
        ("length", "5 inches"),
        ("inertia", "5 kg*cm^2"),
        ("heat transfer", "5 W/(m2*K)"),
    ],
)
def test_what_is_read_fits(dimension: str, text: str) -> None:
    assert "{" in text or _reads(text, dimension)
    assert re.search(pattern_of(dimension), text)


@pytest.mark.parametrize(
    ("dimension", "text"),
    [
        ("length", "5 kg"),
        ("length", "5"),
        ("length", "5 rpm"),
        ("length", "1.750 in plus"),
        ("fluid pressure", "17 bar"),
        ("fluid pressure", "17 bar gage"),
        ("stress", "15 bar gauge"),
        ("temperature", "300"),
        ("temperature", "50 K difference"),
        ("temperature difference", "50 °C"),
    ],
)
def test_what_is_refused_does_not_fit(dimension: str, text: str) -> None:
    assert not _reads(text, dimension)
    assert not re.search(pattern_of(dimension), text)


def _reads(text: str, dimension: str) -> bool:
    try:
        read(text, dimension, "any")
    except QuantityError:
        return False
    return True


# One schema for all kinds, and that of the settings


@pytest.fixture(scope="module")
def of_all() -> jsonschema.Draft202012Validator:
    kinds = installed_families().kinds
    schema = schema_of_all([kinds[word] for word in ("cylinder-liner", "steam-pipe", "duty")])
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


@pytest.mark.parametrize("file", ["liners/liner.toml", "pipes/pipe-live.toml", "duties/main-line.toml"])
def test_specs_fit_the_schema_of_all_kinds_by_their_kind(
    file: str, of_all: jsonschema.Draft202012Validator
) -> None:
    path = EXAMPLE / file
    spec = json.loads(json.dumps(tomllib.loads(path.read_text(encoding="utf-8")), default=str))
    assert list(of_all.iter_errors(spec)) == []


@pytest.mark.parametrize(
    "spec",
    [
        {},
        {"kind": "cylinder-linner"},
        {"kind": "cylinder-liner", "bore": "banana"},
        {"kind": "cylinder-liner", "bore": "5,5 mm"},
        {"kind": "steam-pipe", "design_pressure": "17 bar"},
        {"kind": "steam-pipe", "bore": "500 mm", "starts_at": {"prt": "x"}},
        {"kind": "cylinder-liner", "for": {"left": {"bore": "5 kg"}}},
    ],
)
def test_the_schema_of_all_kinds_marks_what_is_wrong(
    spec: object, of_all: jsonschema.Draft202012Validator
) -> None:
    assert list(of_all.iter_errors(spec))


def test_settings_fit_their_schema_and_wrong_ones_do_not() -> None:
    schema = schema_of_table(Settings)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    settings = tomllib.loads((EXAMPLE / "speclint.toml").read_text(encoding="utf-8"))
    assert list(validator.iter_errors(settings)) == []
    refused: list[dict[str, object]] = [
        {"work": {}},
        {"works": {"stage": "done"}},
        {"works": {"site_pressure": "1 bar"}},
    ]
    for wrong in refused:
        assert list(validator.iter_errors(wrong)), wrong
