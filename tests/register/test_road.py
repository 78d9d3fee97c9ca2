"""The whole road as people walk it: the installed program, real git, real ssh-keygen, exit codes and words.

An unreviewed hold withholds (1); conceded and signed it is released (0); a changed wall thickness withholds again
(1), and the gate names the value.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from contextlib import chdir
from pathlib import Path

import pytest

from speclint.commands import main
from speclint.testing import installed_families
from tests.register.office import days, git

DUTY = """\
kind = "duty"
id = "duty"
[cases.starting]
safety_valve_pressure = "16 bar gauge"
live_pressure = "16 bar gauge"
live_temperature = "350 °C"
[cases.starting.temperatures]
pipe-live = "350 °C"
[cases.running]
safety_valve_pressure = "16 bar gauge"
live_pressure = "15 bar gauge"
live_temperature = "380 °C"
[cases.running.temperatures]
pipe-live = "380 °C"
[cases.drifting]
[cases.drifting.temperatures]
pipe-live = "320 °C"
"""
#: A pipe of 3.2 mm from which the mill may take 12.5 %, the bender 15 % and rust 1.5 mm: what is left is too thin.
PIPE = """\
kind = "steam-pipe"
id = "pipe-live"
title = "Live steam pipe"     # our own comment
drawing = "P-1"
revision = "A"
prepared_by = "A. Render"
checked_by = "M. Coyle"
material = "tube-16Mo3"
duty = "duty"
pressure_part = true
safety_part = true
design_pressure = "17 bar gauge"
design_temperature = "420 °C"
test_pressure = "40 bar gauge"
inspection_document = "3.1"
examination = "butt welds radiographed"
competent_body = "the works' inspector"
supplied_as = "made"
carries = "live steam"
outside_diameter = "168.3 mm"
wall = "3.2 mm"
mill_tolerance = "12.5 %"
joint_factor = "1"
corrosion_allowance = "1.5 mm"
bends = 2
bend_radius = "300 mm"
bend_thinning = "15 %"
length = "2.7 m"
anchor_distance = "2.1 m"
anchor_movement = "2.5 mm"
takes_up_by = "sliding joint"
joint_movement = "20 mm"
cycles = 6000
"""
SETTINGS = """\
[works]
stage = "draft"
[families]
required = ["steamways", "release"]
[local_codes]
pressure = ["the invented pressure code"]
railway = ["the invented railway code"]
[concessions]
signed = ["hold"]
[reviewers."M. Coyle"]
competent_for = [{families}]
role = "chief draughtsman"
signs_as = "m.coyle"
"""


def settings() -> str:
    """The settings, with a reviewer who is competent for every family that there is."""
    families = ", ".join(f'"{family.name}"' for family in installed_families().families)
    return SETTINGS.replace("{families}", families)


@pytest.fixture
def works(tmp_path: Path) -> Path:
    """The repository of a works, in a folder with a space and a letter beyond ASCII, under git."""
    root = tmp_path / "werk ä 1"
    root.mkdir()
    for name, text in (("duty.toml", DUTY), ("pipe.toml", PIPE), ("speclint.toml", settings())):
        (root / name).write_text(text, encoding="utf-8", newline="\n")
    git(root, "init", "--quiet", "--initial-branch=main")
    git(root, "add", ".")
    git(root, "commit", "--quiet", "-m", "as drawn")
    return root


def speclint(root: Path, *words: str) -> tuple[int, str]:
    """Run the program as a person would; what it prints on one line, with a single space between words."""
    environment = {**os.environ, "PYTHONIOENCODING": "utf-8"}
    done = subprocess.run(
        [sys.executable, "-m", "speclint", *words],
        cwd=root,
        env=environment,
        capture_output=True,
        check=False,
        encoding="utf-8",
    )
    assert "Traceback" not in done.stderr, done.stderr
    return done.returncode, " ".join((done.stdout + done.stderr).split())


def open_holds(root: Path) -> list[tuple[str, str]]:
    _, text = speclint(root, "gate", "--as", "json")
    return [(reason["component"], reason["rule"]) for reason in json.loads(text)["reasons"] if reason["rule"]]


def make_key(root: Path, folder: Path) -> Path:
    key = folder / "key of Coyle"
    command = ["ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-C", "", "-f", str(key)]
    subprocess.run(command, check=True, capture_output=True)
    public = key.with_name("key of Coyle.pub").read_text(encoding="utf-8")
    (root / "allowed_signers").write_text(f"m.coyle {public}", encoding="utf-8", newline="\n")
    return key


def here(root: Path, capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str]:
    """The same in this process, which is quicker where one command is given many times."""
    with chdir(root):
        code = main(words)
    said = capsys.readouterr()
    return code, " ".join((said.out + said.err).split())


def test_from_an_unreviewed_hold_to_a_release_to_a_changed_wall(
    works: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out = speclint(works, "gate")
    assert code == 1
    assert "WITHHELD" in out
    assert "hold: pipe-live pipe.wall" in out
    assert (
        "Holds are referred to the invented pressure code; the invented railway code; and a competent person"
        in out
    )

    key = make_key(works, tmp_path)
    until = ["--until", str(days(365))]
    accept = ["--by", "M. Coyle", "--grounds", "held by the old pipe since 1949, gauged each year", *until]
    for component, rule in open_holds(works):
        code, out = here(works, capsys, "concede", component, rule, *accept)
        assert code == 0, out
        assert "entered in register.toml" in out
    code, out = speclint(works, "gate")
    assert code == 1
    assert "speclint.toml asks for a signature on a hold, and it has none" in out
    for number in range(1, len(open_holds(works)) + 1):
        code, out = here(works, capsys, "sign", f"C-{number:03}", "--key", str(key))
        assert code == 0, out
    code, out = speclint(works, "gate")
    assert code == 0, out
    assert "RELEASED as far as these rules go" in out
    assert "they do not replace one" in out
    assert speclint(works, "register")[0] == 0

    git(works, "add", ".")
    git(works, "commit", "--quiet", "-m", "accepted")
    assert speclint(works, "gate", "--against", "main")[0] == 0

    pipe = works / "pipe.toml"
    pipe.write_text(PIPE.replace('wall = "3.2 mm"', 'wall = "3.1 mm"'), encoding="utf-8", newline="\n")
    code, out = speclint(works, "gate", "--against", "main")
    assert code == 1
    assert "is lapsed: pipe-live wall was 3.2 mm, is 3.1 mm" in out
    code, out = speclint(works, "register")
    assert code == 1
    assert "LAPSED C-" in out
    assert "why pipe-live wall was 3.2 mm, is 3.1 mm" in out
    code, out = speclint(works, "check", "--full")
    assert code == 1
    assert "release.stale-concession" in out
    assert "pipe-live wall was 3.2 mm, is 3.1 mm" in out
    git(works, "add", ".")
    pipe.write_text(PIPE, encoding="utf-8", newline="\n")
    assert speclint(works, "check", "--staged")[0] == 1


def test_the_words_of_the_commands(works: Path, tmp_path: Path) -> None:
    for words, code, said in (
        (("concede", "pipe-live", "pipe.wall"), 2, "required: --by, --grounds, --until"),
        (
            ("concede", "pipe", "x", "--by", "a", "--grounds", "b", "--until", "never"),
            2,
            "never is not a date; write it as 2027-05-31",
        ),
        (("sign", "C-001", "--key", "k"), 2, "speclint: register.toml: no concession has the number C-001"),
        (("register",), 0, "no entries"),
        (("register", "--in", "nowhere"), 2, "nowhere: there is no such file or folder"),
        (("gate", "--against", "nowhere"), 2, "WITHHELD: 1 reason"),
        (("gate", "nowhere"), 2, "there is no such file or folder"),
        (("gate", "--to", str(tmp_path / "no" / "folder")), 2, "cannot be written"),
        (("check", "--staged"), 0, "Nothing that is staged affects a component"),
    ):
        got, out = speclint(works, *words)
        assert said in out, out
        assert got == code, out


def test_registers_and_decisions_as_data(works: Path) -> None:
    component, rule = next(hold for hold in open_holds(works) if hold[1] == "pipe.wall")
    until = str(days(100))
    speclint(works, "concede", component, rule, "--by", "M. Coyle", "--grounds", "x", "--until", until)
    code, text = speclint(works, "register", "--as", "json")
    data = json.loads(text)
    assert (code, data["exit"]) == (1, 1)
    (entry,) = data["concessions"]
    assert (entry["state"], entry["until"], entry["signed"]) == ("not signed", until, False)
    code, text = speclint(works, "gate", "--against", "main", "--as", "json")
    data = json.loads(text)
    assert (code, data["exit"], data["released"], data["against"]) == (1, 1, False, "main")


def test_a_plain_git_hook_of_three_lines(works: Path) -> None:
    """The hook of the README, run by git itself, from a linked worktree too."""
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    hook = readme.split("```bash\n")[1].split("```")[0]
    assert len(hook.strip().splitlines()) == 3
    program = f'"{Path(sys.executable).as_posix()}" -m speclint check'
    path = works / ".git" / "hooks" / "pre-commit"
    path.parent.mkdir(exist_ok=True)
    path.write_text(hook.replace("speclint check", program), encoding="utf-8", newline="\n")
    path.chmod(0o755)
    (works / "notes.txt").write_text("x", encoding="utf-8")
    git(works, "add", ".")
    git(works, "commit", "--quiet", "-m", "no component is touched")
    (works / "pipe.toml").write_text(PIPE.replace('"3.2', '"3.1'), encoding="utf-8", newline="\n")
    with pytest.raises(subprocess.CalledProcessError) as refused:
        git(works, "commit", "--quiet", "-a", "-m", "a thinner wall")
    assert "pipe.wall" in str(refused.value.stdout) + str(refused.value.stderr)
    other = works.parent / "second tree ö"
    git(works, "worktree", "add", "--quiet", str(other), "-b", "other")
    (other / "pipe.toml").write_text(PIPE.replace('"3.2', '"3.0'), encoding="utf-8", newline="\n")
    with pytest.raises(subprocess.CalledProcessError):
        git(other, "commit", "--quiet", "-a", "-m", "thinner still")
    assert git(other, "status", "--porcelain").split() == ["M", "pipe.toml"]
