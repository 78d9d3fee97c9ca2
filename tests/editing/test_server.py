"""An editing of a spec as an editor tells it to the server over the protocol, and what the server answers."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest

from speclint.testing import DesignFolder
from tests.editing.client import Client, start
from tests.editing.repository import FILES, LINER, SETTINGS

pytest.importorskip("pygls", reason="the extra editor is not installed")
TOP = Path(__file__).parents[2]


@pytest.fixture
def editor(tmp_path: Path) -> Iterator[Client]:
    """An editor with a design of a block and its liner."""
    DesignFolder(tmp_path).write(
        {**FILES, "liner.toml": LINER.replace("left", "lèft🚂", 0)}, settings=SETTINGS
    )
    path = os.pathsep.join([str(TOP), str(TOP / "plugins")])
    client = start(tmp_path, {**os.environ, "PYTHONPATH": path})
    yield client
    client.close()


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
    assert editor.end() == 0
