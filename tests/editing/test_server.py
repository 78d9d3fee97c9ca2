"""An editing of a spec as an editor tells it to the server over the protocol, and what the server answers."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from speclint.testing import DesignFolder, installed_families
from tests.editing.client import Client, Here, start
from tests.editing.repository import BLOCK, FILES, LINER, SETTINGS

pytest.importorskip("pygls", reason="the extra editor is not installed")
from speclint.editing.marks import Mark
from speclint.editing.server import _column, _diagnostic, _range, server

TOP = Path(__file__).parents[2]


@pytest.fixture(params=["as the command begins it", "in this process"])
def editor(tmp_path: Path, request: pytest.FixtureRequest) -> Iterator[Client]:
    """An editor with a design of a block and its liner."""
    DesignFolder(tmp_path).write(
        {**FILES, "liner.toml": LINER.replace("left", "lèft🚂", 0)}, settings=SETTINGS
    )
    if request.param == "in this process":
        client = Client(tmp_path, Here(server(installed_families()).start_io))
    else:
        path = os.pathsep.join([str(TOP), str(TOP / "plugins")])
        client = start(tmp_path, {**os.environ, "PYTHONPATH": path})
    yield client
    client.close()


@pytest.fixture
def here(tmp_path: Path) -> Iterator[Client]:
    """An editor of the same design whose server runs in this process."""
    DesignFolder(tmp_path).write(FILES, settings=SETTINGS)
    client = Client(tmp_path, Here(server(installed_families()).start_io))
    yield client
    client.close()


def of_rule(client: Client, file: str, rule: str) -> list[dict[str, Any]]:
    return [one for one in client.marks[client.uri(file)] if one.get("code") == rule]


def test_columns_are_told_in_units_of_utf_16() -> None:
    """The engine takes two units, é one: behind both stand 1 + 2 + 1 units and three letters."""
    line = "a🚂éb"
    assert [_column(line, units) for units in (0, 1, 3, 4, 5, 9)] == [0, 1, 2, 3, 4, 4]
    passage = _range(line, 7, 1, 3)
    assert (passage.start.line, passage.start.character) == (7, 1)
    assert (passage.end.line, passage.end.character) == (7, 4)


def test_a_mark_is_told_with_its_weight_its_rule_and_its_columns() -> None:
    """The protocol counts: error 1, warning 2, information 3, hint 4."""
    lines = ["", "é🚂 x"]
    for weight, number in (("error", 1), ("warning", 2), ("information", 3), ("hint", 4)):
        made = _diagnostic(Mark(1, 1, 4, weight, "said", "a.rule"), lines)  # type: ignore[arg-type]
        assert (made.severity, made.message, made.code, made.source) == (number, "said", "a.rule", "speclint")
        assert (made.range.start.character, made.range.end.character) == (1, 5)
    assert _diagnostic(Mark(1, 0, 1, "error", "said"), lines).code is None
    beyond = _diagnostic(Mark(5, 2, 3, "error", "said"), lines).range  # the line was taken away meanwhile
    assert (beyond.start.line, beyond.start.character, beyond.end.character) == (5, 0, 0)


def test_a_change_of_one_text_marks_the_others_that_rest_on_it(here: Client) -> None:
    """The liner lies in the bore "main" of the block; the open block loses it, and has it again."""
    here.open("liner.toml", LINER)
    here.open("block.toml", BLOCK)
    here.type("block.toml", 2, 4, 7, 11, "other")
    here.told("liner.toml", "do not have this name")
    here.type("block.toml", 3, 4, 7, 12, "main")
    here.told("liner.toml", "do not have this name", there=False)
    assert here.quiet()


def test_settings_that_are_saved_and_files_that_change_outside_are_read_anew(here: Client) -> None:
    """The family that marks the liner is left out, and then a bore of the block is called otherwise on the disk."""
    here.open("liner.toml", LINER)
    assert of_rule(here, "liner.toml", "release.identity")
    settings = SETTINGS + '[families]\nleave_out = ["release"]\n'
    (here.root / "speclint.toml").write_text(settings, encoding="utf-8")
    here.tell("textDocument/didSave", {"textDocument": {"uri": here.uri("speclint.toml")}})
    here.settled("liner.toml")
    assert not of_rule(here, "liner.toml", "release.identity")
    (here.root / "block.toml").write_text(BLOCK.replace("bores.main", "bores.other"), encoding="utf-8")
    here.tell("workspace/didChangeWatchedFiles", {"changes": [{"uri": here.uri("block.toml"), "type": 2}]})
    here.told("liner.toml", "do not have this name")


def test_a_document_of_no_repository_and_one_that_is_not_open_are_answered_with_nothing(
    here: Client, tmp_path_factory: pytest.TempPathFactory
) -> None:
    elsewhere = (tmp_path_factory.mktemp("elsewhere") / "liner.toml").as_uri()
    document = {"uri": elsewhere, "languageId": "toml", "version": 1, "text": LINER}
    here.tell("textDocument/didOpen", {"textDocument": document})
    at = {"textDocument": {"uri": elsewhere}, "position": {"line": 4, "character": 10}}
    assert here.ask("textDocument/hover", at) is None
    assert here.ask("textDocument/completion", at) == []
    for method in ("definition", "prepareRename"):
        assert here.ask(f"textDocument/{method}", at) is None
        assert here.ask_at(method, "liner.toml", 2, 15) is None  # in the repository, and not open
    here.tell("textDocument/didClose", {"textDocument": {"uri": elsewhere}})
    assert here.ask("textDocument/hover", at) is None  # so that the closing is over
    assert (here.marks, here.shown) == ({}, [])


def test_a_recorded_editing_of_a_spec(editor: Client) -> None:
    provided = editor.capabilities
    assert provided["textDocumentSync"]["change"] == 2  # changes, not whole texts
    for name in ("completionProvider", "hoverProvider", "definitionProvider", "renameProvider"):
        assert provided[name]
    marks = editor.open("liner.toml", LINER)
    assert "release.identity" in {one.get("code") for one in marks}

    # 500 mm H8 becomes a word that is none: one complaint at the value's line, while it stands there
    editor.type("liner.toml", 2, 4, 8, 17, "banana")
    (mark,) = editor.settled("liner.toml")
    assert (mark["range"]["start"]["line"], mark["severity"], mark["source"]) == (4, 1, "speclint")
    assert "banana" in mark["message"]

    # a bore wider than the liner's outside: geometry that cannot be
    editor.type("liner.toml", 3, 4, 8, 14, "600 mm")
    marks = editor.settled("liner.toml")
    assert any("outside_diameter" in one["message"] for one in marks)

    # two keystrokes at once: the checks of the first are given up
    editor.type("liner.toml", 4, 4, 8, 14, "500 m")
    editor.type("liner.toml", 5, 4, 13, 13, "m ")
    editor.until("liner.toml", "release.identity")
    found = editor.ask_at("completion", "liner.toml", 4, 15)
    assert {"H8", "s6"} <= {one["label"] for one in found}
    (h8,) = [one for one in found if one["label"] == "H8"]
    assert h8["textEdit"]["newText"] == "H8"
    assert h8["textEdit"]["range"]["start"] == {"line": 4, "character": 15}
    editor.type("liner.toml", 6, 4, 15, 15, "H8")
    editor.settled("liner.toml")
    assert "500 mm to 500.097 mm" in editor.ask_at("hover", "liner.toml", 4, 10)["contents"]["value"]

    there = editor.ask_at("definition", "liner.toml", 2, 15)
    assert there == {
        "uri": editor.uri("block.toml"),
        "range": {"start": {"line": 1, "character": 6}, "end": {"line": 1, "character": 16}},
    }
    assert editor.ask_at("prepareRename", "liner.toml", 2, 15)["placeholder"] == "block-left"
    edit = editor.ask_at("rename", "liner.toml", 2, 15, newName="block-port")
    assert {uri: [one["newText"] for one in edits] for uri, edits in edit["changes"].items()} == {
        editor.uri("block.toml"): ["block-port"],
        editor.uri("liner.toml"): ["block-port"],
    }
    assert editor.ask_at("rename", "liner.toml", 2, 15, newName="liner-left") is None
    assert any("has the id liner-left already" in said for said in editor.shown)
    assert editor.ask_at("hover", "liner.toml", 99, 0) is None

    editor.tell("textDocument/didClose", {"textDocument": {"uri": editor.uri("liner.toml")}})
    editor.cleared("liner.toml")
    if not editor.is_here:
        assert editor.end() == 0
