"""The JSON document against its schema, kept in the package."""

from __future__ import annotations

import json
from importlib.resources import files
from typing import Any

import jsonschema
import pytest

from speclint.checking import assess
from speclint.reports.json_report import SCHEMA, document
from speclint.testing import DesignFolder
from tests import tubes
from tests.plugins.valves.gear import train_files
from tests.tubes import FILES


def schema() -> dict[str, Any]:
    text = (files("speclint.reports") / "speclint.result-1.schema.json").read_text(encoding="utf-8")
    return dict(json.loads(text))


def a_document(workshop: DesignFolder) -> dict[str, Any]:
    workshop.loaded = tubes.tubes(*tubes.RULES, tubes.raises)
    workshop.write(FILES).replace("tube.toml", "30 bar", "45 bar").replace("tube.toml", "hoops = 4\n", "")
    workshop.write({"bad.toml": "kind ="})
    return document(workshop.assess())


def test_a_document_with_every_outcome_is_valid(workshop: DesignFolder) -> None:
    made = a_document(workshop)
    jsonschema.Draft202012Validator.check_schema(schema())
    jsonschema.validate(made, schema(), jsonschema.Draft202012Validator)
    assert {check["outcome"] for check in made["checks"]} == {"conforms", "finding", "not assessed"}
    assert made["schema"] == SCHEMA
    assert made["exit"] == 3


@pytest.mark.parametrize(
    "spoil",
    [
        lambda made: made.pop("exit"),
        lambda made: made["checks"][0].update(grade="grave"),
        lambda made: made["checks"][0].update(outcome="finding", grade=None),
        lambda made: made["checks"][0].update(fingerprint=""),
        lambda made: made["checks"][0].update(sources=[]),
        lambda made: made["checks"][0].update(more=1),
        lambda made: made["complaints"][0].update(line="3"),
    ],
)
def test_the_schema_refuses_what_is_wrong(workshop: DesignFolder, spoil: Any) -> None:
    made = a_document(workshop)
    spoil(made)
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(made, schema(), jsonschema.Draft202012Validator)


def test_amounts_are_in_the_units_of_the_trade(workshop: DesignFolder) -> None:
    """By hand: 4.5 MPa × 100.5/4 = 113.0625 MPa against 100 MPa."""
    check = next(one for one in a_document(workshop)["checks"] if one["rule"] == "tube.stress")
    assert check["found"] == {"value": 113.0625, "unit": "MPa"}
    assert check["limit"] == {"value": 100.0, "unit": "MPa"}
    assert check["where"] == {"file": "tube.toml", "line": 4, "key": "bore"}


def test_what_runs_beside_a_scan_is_in_the_document(workshop: DesignFolder) -> None:
    follows = [one for one in workshop.loaded.rules if one.name == "valve.spring-follows-cam"]
    made = document(assess([workshop.write(train_files()).root], workshop.loaded, follows))
    jsonschema.validate(made, schema(), jsonschema.Draft202012Validator)
    (check,) = made["checks"]
    (series,) = (step["series"] for step in check["steps"] if "series" in step)
    assert [one["symbol"] for one in series] == ["φ", "h", "F_h", "F_0", "F_a", "a"]
    (pushed,) = (one for one in series if one["symbol"] == "F_a")
    assert None in pushed["values"], "nothing is asked where the cam pushes"
    series[-1]["values"][0] = "much"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(made, schema(), jsonschema.Draft202012Validator)
