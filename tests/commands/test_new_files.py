"""Files to begin with: specs stand where a report may not, and of several that cannot all be written none is left."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.commands.new_files import write_new
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
