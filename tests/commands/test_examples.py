"""The example in the help of each command runs as it is printed."""

from __future__ import annotations

import csv
import shlex
import shutil
import subprocess
from pathlib import Path

import pytest

from speclint.commands import main
from speclint.commands.command_line import COMMANDS, module_of
from speclint.made.inspection_sheet import COLUMNS
from tests.example import assessed
from tests.register.office import git

ROOT = Path(__file__).parents[2]


@pytest.fixture
def office(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with example_specs in git, a key of a reviewer and a filled-in sheet, as the examples have them."""
    shutil.copytree(ROOT / "example_specs", tmp_path / "example_specs")
    git(tmp_path / "example_specs", "init", "--quiet")
    git(tmp_path / "example_specs", "add", "--all")
    git(tmp_path / "example_specs", "commit", "--quiet", "--message=first")
    monkeypatch.chdir(tmp_path)
    key = ["ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-f", "coyle_key"]
    subprocess.run(key, check=True)
    public = (tmp_path / "coyle_key.pub").read_text(encoding="utf-8")
    (tmp_path / "example_specs" / "allowed_signers").write_text(f"m.coyle {public}", encoding="utf-8")
    filled = {"dimension": "bore", "unit": "mm", "measured": "500.03", "U": "0.005", "unit of U": "mm"}
    with (tmp_path / "sheet.csv").open("w", newline="", encoding="utf-8") as file:
        writer = csv.DictWriter(file, COLUMNS, restval="")
        writer.writeheader()
        writer.writerow(filled | {"instrument": "bore gauge", "date": "2025-03-04", "inspector": "M. Holt"})
    table = "id,outside_diameter (mm),wall (mm)\npipe-drain,48.3,3.2\n"
    (tmp_path / "pipes.csv").write_text(table, encoding="utf-8")
    return tmp_path


#: Commands whose examples take seconds, and whose own tests run them on the example too: they run in ``.ci/long``.
_SLOW = {"affects", "inspect", "pair", "reference", "review"}


@pytest.mark.usefixtures("office")
@pytest.mark.parametrize(
    "word", [pytest.param(word, marks=pytest.mark.long) if word in _SLOW else word for word in COMMANDS]
)
def test_the_example_of_a_command_runs(word: str, capsys: pytest.CaptureFixture[str]) -> None:
    if word == "serve":
        pytest.importorskip("pygls", reason="the extra editor is not installed")
    if word in ("affects", "inspect"):
        assessed()  # which it then takes over
    program, *words = shlex.split(module_of(word).EXAMPLE)
    assert (program, words[0]) == ("speclint", word)
    assert main(words) in (0, 1)  # done; or done, and there are findings
    said = capsys.readouterr()
    assert said.out.strip()
    assert said.err == ""


@pytest.mark.parametrize("word", COMMANDS)
def test_the_help_of_a_command_shows_its_example(word: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main([word, "--help"])
    assert ended.value.code == 0
    assert f"example: {module_of(word).EXAMPLE}" in " ".join(capsys.readouterr().out.split())


@pytest.mark.parametrize("word", COMMANDS)
def test_a_command_says_in_the_list_what_its_module_says(word: str) -> None:
    assert module_of(word).__doc__ == COMMANDS[word]


def test_the_version_is_that_of_the_distribution(capsys: pytest.CaptureFixture[str]) -> None:
    from importlib.metadata import version

    with pytest.raises(SystemExit) as ended:
        main(["--version"])
    assert ended.value.code == 0
    assert capsys.readouterr().out == f"speclint {version('speclint')}\n"
