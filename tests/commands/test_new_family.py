"""A new family, written by the command: it passes its own tests, its types and its contracts as it is written."""

from __future__ import annotations

import errno
import os
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from speclint.commands import main

ROOT = Path(__file__).parents[2]
NAME = "wheel-sets"


def run_in(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """A module of Python in the folder of the family, with this speclint and nothing else on the path."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "MYPYPATH": str(ROOT)}
    command = [sys.executable, "-m", *words]
    return subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, check=False)


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a family just written."""
    folder = tmp_path_factory.mktemp("work")
    assert main(["families", "--new", NAME, "--in", str(folder)]) == 0
    return folder / f"speclint-{NAME}"


def test_it_is_a_distribution_that_declares_its_family(written: Path) -> None:
    project = tomllib.loads((written / "pyproject.toml").read_text(encoding="utf-8"))
    assert project["project"]["name"] == "speclint-wheel-sets"
    assert project["project"]["entry-points"]["speclint"] == {NAME: "speclint_wheel_sets"}
    assert (written / project["tool"]["hatch"]["build"]["targets"]["wheel"]["packages"][0]).is_dir()
    assert (written / "speclint_wheel_sets" / "py.typed").exists()


@pytest.mark.parametrize("name", ["liners", "joints"])
def test_the_name_of_a_family_that_is_installed_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    assert main(["families", "--new", name, "--in", str(tmp_path)]) == 2
    said = f"speclint: a family {name} is installed already: give the new one another name\n"
    assert capsys.readouterr().err == said
    assert list(tmp_path.iterdir()) == []


def test_a_full_disk_leaves_nothing_of_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The disk is full at the third file, in a folder below the first."""
    synced: list[int] = []

    def full(descriptor: int) -> None:
        synced.append(descriptor)
        if len(synced) > 4:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    (tmp_path / "kept.txt").write_text("kept", encoding="utf-8")
    assert main(["families", "--new", NAME, "--in", str(tmp_path)]) == 2
    assert capsys.readouterr().err.endswith("cannot be written: No space left on device\n")
    assert [path.name for path in tmp_path.iterdir()] == ["kept.txt"]


def test_its_own_tests_pass(written: Path) -> None:
    done = run_in(written, "pytest", "-p", "no:cacheprovider", "-p", "no:randomly", "-p", "no:xdist")
    assert done.returncode == 0, done.stdout + done.stderr
    assert " passed" in done.stdout
    assert "skipped" not in done.stdout


@pytest.mark.long
def test_its_types_are_strict_and_right(written: Path) -> None:
    """What it imports from speclint is followed, and checked by the types of speclint's own."""
    done = run_in(written, "mypy", "--follow-imports", "silent", "--cache-dir", str(written / "cache"))
    assert done.returncode == 0, done.stdout + done.stderr
    assert "no issues found" in done.stdout


def test_its_tests_fail_where_a_rule_is_made_wrong(written: Path, tmp_path: Path) -> None:
    """The stress worked from the diameter in place of its square: limit, dimensions and golden result all tell."""
    assert main(["families", "--new", NAME, "--in", str(tmp_path)]) == 0
    formula = tmp_path / written.name / "speclint_wheel_sets" / "formulae" / "rods.py"
    text = formula.read_text(encoding="utf-8")
    assert "d**2" in text
    formula.write_text(text.replace("d**2", "d"), encoding="utf-8")
    done = run_in(
        formula.parents[2], "pytest", "-p", "no:cacheprovider", "-p", "no:randomly", "-p", "no:xdist"
    )
    assert done.returncode == 1
    for test in (
        "test_stress_from_both_sides",
        "works_out_what_it_prints",
        "edition_of_its_rule",
    ):
        assert test in done.stdout, test


def test_its_golden_results_are_written_as_they_stand(written: Path) -> None:
    golden = written / "tests" / "golden.json"
    before = golden.read_bytes()
    done = run_in(written, "tests.golden")
    assert done.returncode == 0, done.stderr
    assert golden.read_bytes() == before


def test_nothing_that_is_there_is_touched(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    kept = tmp_path / "speclint-wheel-sets" / "README.md"
    kept.parent.mkdir()
    kept.write_text("mine", encoding="utf-8")
    assert main(["families", "--new", NAME, "--in", str(tmp_path)]) == 2
    assert capsys.readouterr().err == f"speclint: {kept} is there already; nothing was written\n"
    assert [path.name for path in tmp_path.rglob("*") if path.is_file()] == ["README.md"]
    assert kept.read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--new", "Wheel sets"), '"Wheel sets" is no name of a family: write small letters and hyphens'),
        (("--new", "sets2"), '"sets2" is no name of a family'),
        (("--new", "sets", "--in", "nowhere"), "nowhere: there is no such folder"),
        (("--in", "."), "--in says where a new family is written: give its name with --new NAME"),
    ],
)
def test_a_wrong_word_is_one_line_and_exit_2(
    words: tuple[str, ...],
    said: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["families", *words]) == 2
    err = capsys.readouterr().err
    assert said in err
    assert err.count("\n") == 1
    assert not list(tmp_path.iterdir())


def test_without_a_folder_it_is_written_here(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["families", "--new", "sets"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert all(
        line.startswith("wrote ") and (tmp_path / line.removeprefix("wrote ")).exists() for line in lines
    )
    assert len(lines) == sum(path.is_file() for path in (tmp_path / "speclint-sets").rglob("*"))
