"""The list of what is still to be drawn, as check, the gate, JSON and Markdown show it."""

from __future__ import annotations

import datetime as dt
import json
from pathlib import Path

import jsonschema
import pytest

from speclint.checking import Assessment, Unfinished, still_to_be_drawn
from speclint.register import judge
from speclint.reports import gate_data, gate_page, schema, terminal_page
from speclint.testing import SETTINGS, DesignFolder, installed_families

BLOCK = 'kind = "cylinder-block"\n[bores.main]\n[pads.axle]\n'
LINER = 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "main"\n'
FILES = {"block.toml": BLOCK, "liner.toml": LINER}
SAID = "locating face (pad axle), frame fastening (pad axle)"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> DesignFolder:
    return DesignFolder(tmp_path_factory.mktemp("draft")).write(FILES)


@pytest.fixture(scope="module")
def assessment(folder: DesignFolder) -> Assessment:
    return folder.assess()


def joined(text: str) -> str:
    return " ".join(text.split())


def test_check_shows_one_list_at_the_end(assessment: Assessment) -> None:
    page = joined(terminal_page.write(assessment, 100).text())
    assert page.count("STILL TO BE DRAWN") == 1
    assert SAID in page
    assert page.index("STILL TO BE DRAWN") > page.index("NOT ASSESSED")
    assert "liner: bore, " in page  # a value that checks of the liner want
    assert "of this draft waiting for values alone: they are listed below" in page


def test_json_has_the_list_by_its_schema(assessment: Assessment) -> None:
    document = json.loads(installed_families().writers["json"].write(assessment))
    jsonschema.validate(document, json.loads(schema()))
    (block,) = (one for one in document["still_to_be_drawn"] if one["under"] == "block")
    assert block["places"] == block["filled"] + len(block["to_draw"])
    face = next(one for one in block["to_draw"] if one["what"] == "locating face (pad axle)")
    assert face["where"] == {"file": "block.toml", "line": 3, "key": "pads.axle"}
    assert "bore" in block["to_state"]["liner"]


def test_markdown_has_it(assessment: Assessment) -> None:
    writers = installed_families().writers
    assert "### Still to be drawn in this draft" in writers["markdown"].write(assessment)


def test_the_gate_prints_it_and_withholds_for_safety_checks_alone(folder: DesignFolder) -> None:
    decision = judge([folder.root], installed_families, dt.date(2030, 1, 1))
    assert SAID in joined(gate_page(decision, 100).text())
    assert gate_data(decision)["still_to_be_drawn"][0]["under"] == "block"
    assert not any("still to be drawn" in detail for one in decision.reasons for detail in one.details)


def test_a_part_without_places_lists_its_values_alone() -> None:
    assert Unfinished("rod", 0, (), (("rod", ("mass",)),)).says == "rod: 1 value to be stated"
    assert Unfinished("block", 2, (), ()).says == "block: 2 places, 2 filled"


def test_no_list_at_a_later_stage(tmp_path: Path) -> None:
    later = DesignFolder(tmp_path).write(FILES, settings=SETTINGS.replace("draft", "for-review")).assess()
    assert "still_to_be_drawn" not in json.loads(installed_families().writers["json"].write(later))


def test_places_stand_in_the_order_of_the_work_and_not_of_their_names(tmp_path: Path) -> None:
    """How a cylinder breathes, its pipes, its walls, then the duty: whatever the parts are called."""
    block = 'kind = "cylinder-block"\n[bores.main]\n[divisions.belt]\n'
    block += 'one_side = "live steam"\nother_side = "exhaust steam"\n'
    files = {"z.toml": block, "a.toml": 'kind = "steam-pipe"\n[ends_at]\npart = "z"\n'}
    (found,) = still_to_be_drawn(DesignFolder(tmp_path).write(files).assess())
    order = ("breathing way (bore main)", "bolted joint (ends of a)", "partition (division belt)")
    cases = tuple(f"load case {case} (duty of z)" for case in ("starting", "drifting"))
    assert tuple(one.called for one in found.to_draw if one.called in {*order, *cases}) == (*order, *cases)
