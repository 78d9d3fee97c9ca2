"""Programs are found in the folders of the path, in their order, where they may be run."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

from speclint.repository import find_program

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="modes say there nothing of what may be run")


def put(path: Path, mode: int) -> Path:
    path.parent.mkdir(exist_ok=True)
    path.write_text("#!/bin/sh\n", encoding="utf-8")
    path.chmod(mode)
    return path


def test_the_first_that_may_be_run_is_taken(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    put(tmp_path / "a" / "tool", 0o644)
    (tmp_path / "b" / "tool").mkdir(parents=True)
    third, fourth = put(tmp_path / "c" / "tool", 0o755), put(tmp_path / "d" / "tool.exe", 0o755)
    monkeypatch.setenv("PATH", os.pathsep.join(str(tmp_path / name) for name in "abcd"))
    assert find_program("tool") == str(third)
    third.unlink()
    assert find_program("tool") == str(fourth)
    fourth.unlink()
    assert find_program("tool") is None


def test_a_folder_that_hangs_on_the_current_one_is_passed_over(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    put(tmp_path / "tool", 0o755)
    kept = put(tmp_path / "bin" / "tool", 0o755)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("PATH", os.pathsep.join([".", "", "bin", str(tmp_path / "bin")]))
    assert find_program("tool") == str(kept)
