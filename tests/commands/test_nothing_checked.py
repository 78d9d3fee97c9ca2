"""A check of nothing is no pass, and a TOML file that is not read as a spec is named with the reason."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.commands import main
from speclint.families import loading as plugins
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.register.office import git
from tests.tubes import DUTY, FILES, RACK, TUBE


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A repository, and a command line that knows only the family of tubes."""
    monkeypatch.setattr(plugins, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.chdir(tmp_path)
    return DesignFolder(tmp_path, tubes.tubes()).write(FILES)


@pytest.fixture
def committed(shop: DesignFolder) -> DesignFolder:
    """The same repository with all of it in git."""
    git(shop.root, "init", "--quiet", "--initial-branch=main")
    git(shop.root, "add", ".")
    git(shop.root, "commit", "--quiet", "-m", "first")
    return shop


def out(capsys: pytest.CaptureFixture[str]) -> str:
    return " ".join(capsys.readouterr().out.split())


def emptied(shop: DesignFolder, files: dict[str, str], settings: str = SETTINGS) -> DesignFolder:
    for file in FILES:
        (shop.root / file).unlink()
    return shop.write(files, settings=settings)


@pytest.mark.parametrize(
    ("files", "why"),
    [
        ({}, "there is no spec here"),
        ({"duty.toml": DUTY}, "no rule applies to duty"),
        ({"rack.toml": RACK}, "no rule applies to rack"),
        ({".tube.toml": TUBE}, "no file was read as a spec"),
    ],
)
@pytest.mark.parametrize("command", ["check", "gate"])
def test_a_repository_in_which_nothing_is_checked_is_exit_1(
    shop: DesignFolder, command: str, files: dict[str, str], why: str, capsys: pytest.CaptureFixture[str]
) -> None:
    emptied(shop, files)
    assert main([command]) == 1
    assert f"nothing was checked: {why}" in out(capsys).lower()


def test_a_path_that_selects_no_spec_is_exit_1(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    (shop.root / "empty").mkdir()
    assert main(["check", "empty"]) == 1
    assert "NOTHING WAS CHECKED" in out(capsys)


@pytest.mark.parametrize(("name", "code"), [("tube.stress", 0), ("rack.nothing", 1)])
def test_rules_that_all_do_not_apply_check_nothing(
    shop: DesignFolder,
    name: str,
    code: int,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    point = tubes.entry_point("tubes", rules=(*tubes.RULES, _never))
    monkeypatch.setattr(plugins, "installed", lambda: [point])
    assert shop.root.is_dir()
    assert main(["check", "--rule", name]) == code
    assert ("NOTHING WAS CHECKED: no rule applies to" in out(capsys)) is bool(code)


@rule(
    "rack.nothing",
    title="never",
    on=tubes.Rack,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="for tests",
    leaves_out="nothing",
)
def _never(_rack: tubes.Rack, sheet: Sheet) -> Judgement:
    raise sheet.not_applicable("never")


def test_what_cannot_be_read_or_run_is_graver_than_nothing_checked(shop: DesignFolder) -> None:
    emptied(shop, {"tube.toml": "kind ="})
    assert main(["check"]) == 2


@pytest.mark.parametrize(
    ("file", "why"),
    [
        (".other.toml", "its name begins with a dot"),
        (".old/other.toml", "its folder .old is hidden"),
        ("other.TOML", "its name ends in .TOML, not in .toml"),
        ("left/other.toml", 'speclint.toml leaves out "left/*"'),
        ("own/deep/other.toml", "own/speclint.toml makes its folder a repository of its own"),
    ],
)
@pytest.mark.parametrize("command", ["check", "gate"])
def test_a_file_passed_over_is_counted_and_named_with_the_reason(
    shop: DesignFolder, command: str, file: str, why: str, capsys: pytest.CaptureFixture[str]
) -> None:
    own = {"own/speclint.toml": ""} if file.startswith("own") else {}
    shop.write({file: TUBE, **own}, settings='leave_out = ["left/*"]\n' + SETTINGS)
    assert main([command]) == 0
    said = out(capsys)
    assert "PASSED OVER (1)" in said
    assert f"{file}: {why}" in said
    assert main([command, "--as", "json"]) == 0
    (one,) = json.loads(capsys.readouterr().out)["passed_over"]
    assert one["file"] == file
    assert one["why"].startswith(why)


def test_many_files_passed_over_for_one_reason_are_counted(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write({f".old/{number}.toml": "" for number in range(10)})
    assert main(["check"]) == 0
    said = out(capsys)
    assert "PASSED OVER (10)" in said
    assert ".old/7.toml, and 2 more: its folder .old is hidden" in said


@pytest.mark.parametrize(
    ("folder", "mark", "named"),
    [
        (".venv", "pyvenv.cfg", False),
        (".cache", "CACHEDIR.TAG", False),
        (".cache", "other.txt", True),
        ("left", "CACHEDIR.TAG", True),
        (".git", "config", False),
    ],
)
def test_folders_of_tools_are_not_looked_into(
    shop: DesignFolder, folder: str, mark: str, named: bool, capsys: pytest.CaptureFixture[str]
) -> None:
    """Only hidden ones: a folder of the design is looked into whatever lies in it."""
    shop.write({f"{folder}/{mark}": "", f"{folder}/deep/.x.toml": TUBE})
    assert main(["check"]) == 0
    assert (f"{folder}/deep/.x.toml" in out(capsys)) is named


@pytest.mark.parametrize(
    ("form", "says"),
    [("sarif", "passed over: .other.toml: its name"), ("markdown", "### 1 TOML file passed over")],
)
def test_reports_for_machines_and_forges_name_what_was_passed_over(
    shop: DesignFolder, form: str, says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write({".other.toml": TUBE})
    assert main(["check", "--as", form]) == 0
    assert says in out(capsys)


@pytest.mark.parametrize("path", [".other.toml", "."])
def test_only_what_the_paths_point_at_is_named(
    shop: DesignFolder, path: str, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write({".other.toml": TUBE, "sub/.third.toml": TUBE})
    main(["check", path])
    assert (".third.toml" in out(capsys)) is (path == ".")


# What is staged


@pytest.mark.usefixtures("committed")
def test_a_commit_that_touches_no_spec_is_exit_0_and_says_so(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write({"notes.txt": "a note"})
    git(shop.root, "add", ".")
    assert main(["check", "--staged"]) == 0
    assert "NOTHING TO CHECK: what is staged touches no spec." in out(capsys)


@pytest.mark.usefixtures("committed")
@pytest.mark.parametrize(
    ("file", "text"),
    [(".tube.toml", TUBE), ("tube.TOML", TUBE), ("spare-duty.toml", 'kind = "duty"')],
)
def test_a_commit_of_specs_of_which_none_can_be_judged_is_exit_1(
    shop: DesignFolder, file: str, text: str, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write({file: text})
    git(shop.root, "add", ".")
    assert main(["check", "--staged"]) == 1
    assert "NOTHING WAS CHECKED" in out(capsys)


@pytest.mark.usefixtures("committed")
def test_a_spec_hidden_by_a_commit_is_named(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    git(shop.root, "mv", "tube.toml", ".tube.toml")
    assert main(["check", "--staged"]) == 1
    said = out(capsys)
    assert "Removed, so that what they held is no longer checked: tube.toml." in said
    assert ".tube.toml: its name begins with a dot" in said


@pytest.mark.usefixtures("committed")
def test_a_spec_that_a_commit_moves_is_not_said_to_be_checked_no_longer(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    (shop.root / "pipes").mkdir()
    shop.replace("tube.toml", 'kind = "tube"', 'kind = "tube"\nid = "tube"')
    git(shop.root, "commit", "--quiet", "--all", "-m", "with its id")
    git(shop.root, "mv", "tube.toml", "pipes/long.toml")
    assert main(["check", "--staged"]) == 0
    said = out(capsys)
    assert "Moved: tube.toml to pipes/long.toml." in said
    assert "no longer checked" not in said


@pytest.mark.usefixtures("committed")
def test_a_spec_without_an_id_is_another_under_another_name(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    git(shop.root, "mv", "tube.toml", "long.toml")
    main(["check", "--staged"])
    said = out(capsys)
    assert "no longer checked: tube.toml." in said
    assert "Moved" not in said


@pytest.mark.usefixtures("committed")
def test_a_commit_that_only_removes_a_spec_says_so(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    git(shop.root, "rm", "--quiet", "tube.toml")
    assert main(["check", "--staged"]) == 0
    assert "no longer checked: tube.toml." in out(capsys)


@pytest.mark.usefixtures("committed")
def test_files_hidden_before_the_commit_are_not_of_it(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write({".other.toml": TUBE})
    git(shop.root, "add", ".")
    git(shop.root, "commit", "--quiet", "-m", "second")
    shop.replace("tube.toml", "30 bar", "31 bar")
    git(shop.root, "add", ".")
    assert main(["check", "--staged"]) == 0
    assert ".other.toml" not in out(capsys)
