"""Every command block of README.md and DEVELOPERS.md is run, or is listed with the reason why no test can.

The blocks of the guide are run by ``tests/test_guide.py``, which takes every line of them.
"""

from __future__ import annotations

import re
import shlex
import subprocess
from pathlib import Path

import pytest

from speclint.commands import main
from speclint.testing import changed
from tests.command_blocks import NOT_RUN, block_of, commands_of, indented_of, languages_of
from tests.guide import FOLDER
from tests.register.office import git
from tests.register.test_road import DUTY, PIPE, settings

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
GUIDE = [path.read_text(encoding="utf-8") for path in sorted(FOLDER.glob("*.md"))]


@pytest.fixture
def thin_pipe(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The repository of which README.md speaks, in git, with the key of its reviewer where ssh keeps keys."""
    root, home = tmp_path / "works", tmp_path / "home"
    root.mkdir()
    (home / ".ssh").mkdir(parents=True)
    key = home / ".ssh" / "id_ed25519"
    subprocess.run(["ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-C", "", "-f", str(key)], check=True)
    public = key.with_suffix(".pub").read_text(encoding="utf-8")
    pipe = changed(PIPE, ("cycles = 6000\n", 'faces_length = "2096 mm"\nfaces_gap = "2100 mm"\n'))
    files = {"duty.toml": DUTY, "pipe.toml": pipe, "speclint.toml": settings()}
    files["allowed_signers"] = f'm.coyle namespaces="speclint-concession" {public}'
    for name, text in files.items():
        (root / name).write_text(text, encoding="utf-8", newline="\n")
    git(root, "init", "--quiet", "--initial-branch=main")
    git(root, "add", ".")
    git(root, "commit", "--quiet", "-m", "as drawn")
    monkeypatch.chdir(root)
    monkeypatch.setenv("HOME", str(home))
    monkeypatch.setenv("USERPROFILE", str(home))
    return root


def typed(command: str, folder: Path, capsys: pytest.CaptureFixture[str]) -> tuple[int, str]:
    """What becomes of a line at a prompt: the exit code of its last command, and all that it printed on one line."""
    code, printed = 0, ""
    for part in command.split(" && "):
        program, *words = (
            re.sub("^~", Path.home().as_posix(), word) for word in shlex.split(part, comments=True)
        )
        if program == "speclint":
            code = main(words)
            said = capsys.readouterr()
            printed += said.out + said.err
        else:
            (changes,) = re.findall(r"^s/(.*)/(.*)/$", words[1])
            assert (program, words[0]) == ("sed", "-i"), command
            text = (folder / words[2]).read_text(encoding="utf-8")
            assert text.count(changes[0]) == 1
            (folder / words[2]).write_text(text.replace(*changes), encoding="utf-8", newline="\n")
    return code, " ".join(printed.split())


def test_the_road_to_a_release_in_readme_goes_as_its_remarks_say(
    thin_pipe: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    lines = re.findall(
        r"^\$ (.*?)(?:\s+# exit (\d)(?:: (.*))?)?$", block_of(README, "console").replace("\n   ", ""), re.M
    )
    assert len(lines) == 5
    remarks = 0
    for command, code, remark in lines:
        found, printed = typed(command, thin_pipe, capsys)
        assert found == int(code or 0), printed
        if remark == "released":
            assert printed.startswith("RELEASED")
            remarks += 1
        elif remark:
            said = remark.split(": ", 2) if remark.startswith("hold") else [remark]
            assert all(part in printed for part in said), (remark, printed)
            remarks += 1
    assert remarks == 3


def test_the_hook_in_readme_checks_what_is_staged(
    thin_pipe: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    *_, last = block_of(README, "bash").splitlines()
    command = last.removeprefix("exec ")
    code, printed = typed(command, thin_pipe, capsys)
    assert (code, "NOTHING TO CHECK" in printed) == (0, True)  # nothing is staged
    pipe = thin_pipe / "pipe.toml"
    pipe.write_text(pipe.read_text(encoding="utf-8").replace("3.2 mm", "3.1 mm"), encoding="utf-8")
    git(thin_pipe, "add", ".")
    code, printed = typed(command, thin_pipe, capsys)
    assert code == 1
    assert "pipe.wall" in printed


def test_the_commands_of_developers_write_a_family(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The other indented blocks are the direction of imports, which the test of architecture holds, and Python."""
    shown = indented_of(DEVELOPERS)
    (commands,) = [block for block in shown if block[0].startswith("speclint ")]
    others = [block for block in shown if block is not commands]
    assert all(
        block[0].startswith(("commands, testing -> ", "def ", "bore_of_liner = ", "one_liner = "))
        for block in others
    )
    monkeypatch.chdir(tmp_path)
    assert [command for command in commands if command not in NOT_RUN] == commands[:1]
    assert main(shlex.split(commands[0])[1:]) == 0
    assert (tmp_path / shlex.split(commands[1])[1] / "pyproject.toml").exists()


def test_what_is_not_run_stands_in_a_text_and_has_a_reason() -> None:
    lines = [line for text in (README, DEVELOPERS, *GUIDE) for line in commands_of(text)]
    lines += [line for block in indented_of(DEVELOPERS) for line in block]
    assert set(NOT_RUN) <= set(lines)
    assert all(NOT_RUN.values())
    assert {line for text in (README, DEVELOPERS) for line in commands_of(text)} <= set(NOT_RUN)


def test_no_block_of_another_language_waits_to_be_run() -> None:
    """``toml``, ``text`` and ``python`` are no commands; README's and DEVELOPERS' are held by their own tests."""
    assert languages_of(README) == {"sh", "toml", "text", "console", "bash"}
    assert languages_of(DEVELOPERS) <= {"toml", "text", "python"}
    for text in GUIDE:
        assert languages_of(text) <= {"sh", "text", "toml"}
        assert not indented_of(text)
    assert not indented_of(README)
