"""The guide of the reference: the tutorial is worked through as a newcomer would, and shows the real outputs."""

from __future__ import annotations

import re
import shlex
import shutil
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests import guide
from tests.command_blocks import NOT_RUN, commands_of
from tests.guide import FOLDER, SHOWN, TUTORIAL, Block, Ran
from tests.register.office import git

TEXT = TUTORIAL.read_text(encoding="utf-8")
CI = FOLDER / "60-ci.md"


@dataclass(frozen=True)
class Worked:
    """The texts worked through: with their outputs as they are, each run, and the repository as they leave it."""

    texts: dict[Path, str]
    ran: list[Ran]
    folder: Path


@pytest.fixture(scope="module")
def worked(tmp_path_factory: pytest.TempPathFactory) -> Worked:
    """The tutorial from an empty folder to the answer of the gate, then the sheet, once for all tests."""
    place = tmp_path_factory.mktemp("guide")
    return Worked(*guide.renewed(place), place / "new-engine")


@pytest.mark.parametrize("file", SHOWN, ids=lambda file: file.stem)
def test_the_text_shows_what_its_commands_print(file: Path, worked: Worked) -> None:
    """Written anew by ``python -m tests.guide``; read the change before you commit it."""
    assert worked.texts[file] == file.read_text(encoding="utf-8")


def test_each_command_ends_as_the_text_says(worked: Worked) -> None:
    assert [(one.command, one.code) for one in worked.ran] == [(one.command, one.told) for one in worked.ran]


def test_the_tutorial_leads_to_a_finding_cleared_a_concession_and_the_gate(worked: Worked) -> None:
    """What it promises, asked of the runs and not of the text: in this order, and nothing missing."""
    said = [(one.command.split()[1], one.printed, one.code) for one in worked.ran]
    words = [word for word, _, _ in said]
    assert words == [
        "begin",
        "check",
        "check",
        "check",
        "check",
        "concede",
        "concede",
        "gate",
        "gate",
        "sheet",
    ]
    assert "HOLD  pipe.wall" in said[2][1]  # found, solved for, cleared
    assert "CLEARED: 2 findings" in said[3][1]
    assert "1 check conforms" in said[4][1]
    assert "must be accepted by another person" in said[5][1]  # who prepared it is refused
    assert said[6][1].startswith("C-001 entered")
    assert (said[7][1].startswith("RELEASED"), said[7][2]) == (True, 0)
    assert (said[8][1].startswith("WITHHELD"), said[8][2]) == (True, 1)


def test_by_hand_the_first_wall_is_too_thin_and_the_second_is_not() -> None:
    """The outside of a bend: t (1 − 0.125) (1 − 0.12), against 2.424 mm of the working in the text.

    I = (4 × 400/139.7 + 1)/(4 × 400/139.7 + 2) = 0.92567; S = 156.6/1.5 = 104.4 MPa;
    1.5 × 139.7/(2 (104.4/0.92567 + 1.5 × 0.4)) + 1.5 = 0.9241 + 1.5 = 2.424 mm.
    """
    needed = 1.5 * 139.7 / (2 * (104.4 / 0.92567 + 0.6)) + 1.5
    assert needed == pytest.approx(2.424, abs=5e-4)
    first, second = 2.9 * 0.875 * 0.88, 3.2 * 0.875 * 0.88
    assert first == pytest.approx(2.233, abs=5e-4)
    assert first < needed < second
    assert "wall at the bend 2.233 mm, ASME B31.1 requires 2.424 mm" in TEXT


def block(language: str, inside: str, before: str = "") -> Block:
    return Block(language, inside, before, "", 0)


def test_what_is_left_out_is_neither_more_nor_less_than_the_mark_says() -> None:
    assert guide.cut("a\nb\nc\nd\n", "x\n…\ny\n") == "a\n…\nd\n"
    assert guide.cut("a\nb\n", "x\ny\n") == "a\nb\n"
    with pytest.raises(AssertionError, match="nothing is left out"):
        guide.cut("a\nb\n", "x\n…\ny\n")


def test_a_key_is_set_in_the_place_of_its_example_or_below_its_heading(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    guide.enter(block("toml", '[a]\n#b = "1"\nc = "2"\n\n[d]\n#b = "3"\n', "Write `x/y.toml`:"))
    guide.enter(block("toml", '[d]\nb = "4"\ne = "5"\n', "The second is new. In\n`x/y.toml`:"))
    written = (tmp_path / "x" / "y.toml").read_text(encoding="utf-8")
    assert written == '[a]\n#b = "1"\nc = "2"\n\n[d]\ne = "5"\nb = "4"\n'
    with pytest.raises(AssertionError, match=r"there is no \[f\]"):
        guide.enter(block("toml", '[f]\nb = "4"\n', "In `x/y.toml`:"))
    with pytest.raises(AssertionError, match="no file is named"):
        guide.enter(block("toml", 'b = "4"\n', "Do this:"))


def test_every_text_of_the_guide_has_a_title_and_leads_to_texts_that_are_there() -> None:
    texts = {path.name: path.read_text(encoding="utf-8") for path in sorted(FOLDER.glob("*.md"))}
    assert list(texts) == [
        "10-tutorial.md",
        "20-load-cases.md",
        "30-tolerance-corners.md",
        "40-grades.md",
        "50-how-to-read-a-sheet.md",
        "60-ci.md",
    ]
    pages = {f"{name[3:-3]}.html" for name in texts}  # as the reference names them
    for text in texts.values():
        assert re.match(r"# \S", text)
        assert not re.search(
            r"^\|.*(:-|-:)", text, re.MULTILINE
        )  # a cell with a style, which no page may have
        for target in re.findall(r"\]\(([^):]+)\)", text):
            assert target in pages


@pytest.fixture
def on_a_runner(worked: Worked, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The pipe of the tutorial with its duty as the branch main of a repository, and a copy that a runner fetched."""
    main_branch, runner = tmp_path / "origin", tmp_path / "runner"
    for place in ("duties", "pipes", "hooks"):
        shutil.copytree(worked.folder / place, main_branch / place)
    for place in ("speclint.toml", "register.toml"):
        shutil.copy(worked.folder / place, main_branch)
    git(main_branch, "init", "--quiet", "--initial-branch=main")
    git(main_branch, "add", ".")
    git(main_branch, "commit", "--quiet", "-m", "as it is")
    git(tmp_path, "clone", "--quiet", "--depth=1", f"file://{main_branch.as_posix()}", "runner")
    monkeypatch.chdir(runner)
    return runner


def test_every_command_for_ci_runs_on_a_runner(on_a_runner: Path, tmp_path: Path) -> None:
    """But for what installs (`NOT_RUN`). The gate releases what the tutorial left; checks tell what is conceded."""
    told: dict[str, int] = {}
    (tmp_path / "cache").mkdir(mode=0o700)
    with guide.desk(on_a_runner, tmp_path / "cache"):
        for command in commands_of(CI.read_text(encoding="utf-8")):
            if command.startswith("git "):
                git(on_a_runner, *shlex.split(command)[1:])
            elif command not in NOT_RUN:
                said, told[command] = guide.run(command)
                assert said == "" or not said.startswith("speclint:"), said
    assert {code for command, code in told.items() if " gate" in command} == {0}
    assert {code for command, code in told.items() if " check --as" in command} == {
        1
    }  # conceded, and told all the same
    assert set(told.values()) == {0, 1}
    written = [words[words.index("--to") + 1] for words in map(shlex.split, told) if "--to" in words]
    assert len(written) == 7
    for name in written:
        assert any((on_a_runner / name).rglob("*")) or (on_a_runner / name).stat().st_size > 100, name
    assert git(on_a_runner, "config", "core.hooksPath") == "hooks\n"


def test_the_texts_that_show_outputs_are_worked_through_whole(worked: Worked) -> None:
    shown = [command for file in SHOWN for command in commands_of(file.read_text(encoding="utf-8"))]
    assert [one.command for one in worked.ran] == shown
    others = {path.name for path in FOLDER.glob("*.md") if commands_of(path.read_text(encoding="utf-8"))}
    assert others == {CI.name, *(file.name for file in SHOWN)}
