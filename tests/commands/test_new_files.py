"""Files to begin with: specs stand where a report may not, and of several that cannot all be written none is left."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from speclint.commands.new_files import write_in_folder, write_new
from speclint.errors import OutputError


def test_a_spec_may_stand_where_a_report_may_not(tmp_path: Path) -> None:
    """A folder of git is refused to reports alone."""
    spec = tmp_path / ".git" / "hooks" / "tube.toml"
    write_new({spec: "hoops = 4\n"})
    assert spec.read_text(encoding="utf-8") == "hoops = 4\n"


def test_where_one_is_refused_none_is_left_nor_any_folder(tmp_path: Path) -> None:
    spec, page = tmp_path / "specs" / "tube.toml", tmp_path / ".git" / "pages" / "page.md"
    with pytest.raises(OutputError, match=r"page\.md: git keeps its own files there; give another place$"):
        write_new({spec: "hoops = 4\n", page: "# Page\n"})
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(os.name != "posix", reason="elsewhere no mark of a file lets a shell run it")
def test_only_what_a_shell_runs_is_marked_so(tmp_path: Path) -> None:
    hook, note = tmp_path / "hook", tmp_path / "note.md"
    write_new({hook: "exit 0\n", note: "# Note\n"}, runnable=[hook])
    assert os.access(hook, os.X_OK)
    assert not note.stat().st_mode & 0o111


@pytest.mark.parametrize(
    "written",
    [lambda file: write_new({file: "hoops = 4\n"}), lambda file: write_in_folder(file, "hoops = 4\n")],
)
def test_a_folder_that_cannot_be_made_is_told(written: Callable[[Path], None], tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("a file", encoding="utf-8")
    with pytest.raises(OutputError, match="cannot be made: "):
        written(tmp_path / "taken" / "specs" / "tube.toml")
    assert (tmp_path / "taken").read_text(encoding="utf-8") == "a file"
