"""The commands as a user meets them: words, exit codes, one line for an error and no traceback."""

from __future__ import annotations

import argparse
import errno
import io
import json
import os
import subprocess
import sys
from collections.abc import Callable
from importlib.metadata import version
from pathlib import Path
from typing import Any

import pytest

from speclint.commands import main
from speclint.commands.command_line import COMMANDS, module_of
from speclint.families import loading as plugins
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A repository, and a command line that knows only the family of tubes."""
    point = tubes.entry_point("tubes", rules=(*tubes.RULES,))
    monkeypatch.setattr(plugins, "installed", lambda: [point])
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("NO_COLOR", raising=False)
    return DesignFolder(tmp_path, tubes.tubes()).write(FILES)


def run(*words: str) -> int:
    return main(list(words))


def test_nothing_in_the_way_is_exit_0(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("check") == 0
    assert "IN ORDER as far as these rules go." in capsys.readouterr().out
    assert shop.root.is_dir()


def test_a_finding_is_exit_1_and_says_all_that_a_reader_asks(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.replace("tube.toml", "30 bar", "45 bar")
    assert run("check", "--full") == 1
    out = capsys.readouterr().out
    for words in (
        "HOLD tube.stress, 1.13 of the limit",
        "mean hoop stress of a tube 113.1 MPa > 100 MPa allowable stress",
        "bore 100.5 mm (greatest); outside 104.5 mm (least)",
        "first principles",
        "tube.toml:4 bore",
        "remedy",
        "the invented pressure code; the invented railway code; and a competent person",
        "NOT IN ORDER",
        "they do not replace one",
    ):
        assert words in " ".join(out.split()), words


def test_the_help_of_a_command_says_what_it_does(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit, match="0"):
        run("check", "--help")
    assert "\n\nCheck specs and print the findings.\n\n" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("words", "read"),
    [
        (["rack", "--as", "schema"], lambda found: found["properties"]["kind"]),
        (["--as", "schema-of-all"], lambda found: found["$schema"]),
        (["--as", "schema-of-settings"], lambda found: found["properties"]["works"]),
    ],
)
def test_the_kinds_are_written_as_schemas(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str], words: list[str], read: Callable[[Any], Any]
) -> None:
    assert run("kinds", *words) == 0
    assert read(json.loads(capsys.readouterr().out))
    assert shop.root.is_dir()


def test_the_kinds_are_listed_and_one_is_explained(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("kinds") == 0
    listed = capsys.readouterr().out
    assert "rack" in listed
    assert "hoops" not in listed
    assert run("kinds", "tube") == 0
    assert "hoops" in capsys.readouterr().out
    assert shop.root.is_dir()


def test_what_rests_on_a_value_is_exit_0_and_2_where_a_spec_cannot_be_read(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("affects", "tube.bore") == 0
    assert "tube.stress" in capsys.readouterr().out
    shop.write({"other.toml": 'kind = "tube"\nboer = "100 mm"\n'})
    assert run("affects", "tube.bore") == 2


def test_what_rests_on_a_value_is_a_page_or_data(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("affects", "tube.bore") == 0
    page = capsys.readouterr().out
    assert not page.startswith("{")
    assert run("affects", "tube.bore", "--as", "json", "--to", "rests.json") == 0
    assert capsys.readouterr().out == ""
    data = json.loads((shop.root / "rests.json").read_text(encoding="utf-8"))
    assert (data["component"], data["key"], data["stated"]) == ("tube", "bore", "100 mm ±0.5")
    assert run("affects", "tube.bore", "--to", "rests.txt") == 0
    assert (shop.root / "rests.txt").read_text(encoding="utf-8").split() == page.split()


def test_a_review_makes_the_folders_that_lead_to_it_and_takes_one_that_is_there(shop: DesignFolder) -> None:
    for _ in range(2):
        assert run("review", "--to", "out/of/office") == 0
    assert (shop.root / "out" / "of" / "office").is_dir()


def test_settings_that_cannot_be_read_are_told_and_nothing_is_checked(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    (shop.root / "speclint.toml").write_text("[works\n", encoding="utf-8")
    assert run("check") == 2
    out = capsys.readouterr().out
    assert "NOT CHECKED: the settings could not be read." in out
    assert "the header of a table is not closed" in out


@pytest.mark.skipif(os.name == "nt", reason="a folder in use is not removed there")
@pytest.mark.parametrize("word", ["check", "rules", "gate"])
def test_a_folder_that_is_gone_is_told_in_one_line(
    word: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "gone").mkdir()
    monkeypatch.chdir(tmp_path / "gone")
    (tmp_path / "gone").rmdir()
    assert run(word) == 2
    assert capsys.readouterr().err == (
        "speclint: the current folder cannot be reached: No such file or directory; go to another\n"
    )


def test_an_editor_that_could_be_answered_is_exit_0(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("serve", "--ready") == 0
    assert capsys.readouterr().out.startswith("ready: an editor starts speclint serve; ")
    assert shop.root.is_dir()


@pytest.mark.parametrize(
    ("grade", "code"), [("observation", 1), ("query", 0), ("nonconformity", 0), ("hold", 0)]
)
def test_the_settings_choose_the_least_grade_that_matters(shop: DesignFolder, grade: str, code: int) -> None:
    shop.write({}, settings=f'[works]\nexit_at = "{grade}"\n').replace("tube.toml", "hoops = 4", "hoops = 3")
    assert run("check") == code


def test_an_unassessed_safety_check_is_exit_1(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    shop.replace("tube.toml", 'pressure = "30 bar gauge"\n', "")
    assert run("check") == 1
    assert "1 value still to be stated: " in capsys.readouterr().out
    assert run("check", "--full") == 1
    assert "1 value to be stated\n    tube: pressure" in capsys.readouterr().out
    shop.replace("speclint.toml", 'stage = "draft"', 'stage = "for-review"')
    assert run("check") == 1
    assert "tube, tube.stress: pressure is not stated in tube.toml" in capsys.readouterr().out
    assert run("check", "--full") == 1
    out = capsys.readouterr().out
    assert "NOT ASSESSED  (1)" in out
    assert "pressure is not stated in tube.toml" in out
    assert "tube.stress (HOLD)" in out


def test_an_unreadable_spec_is_exit_2(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    shop.replace("tube.toml", "100 mm", "100,5 mm")
    assert run("check") == 2
    out = capsys.readouterr().out
    assert "COULD NOT BE READ  (1)" in out
    assert "tube.toml:4 bore" in out
    assert '"100.5 mm ±0.5"' in out


def test_a_broken_rule_is_exit_3(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, shop: DesignFolder) -> None:
    point = tubes.entry_point("tubes", rules=(tubes.raises,))
    monkeypatch.setattr(plugins, "installed", lambda: [point])
    shop.replace("tube.toml", "100 mm", "100,5 mm").write({"second.toml": tubes.TUBE})
    assert run("check", str(tmp_path)) == 3


def test_a_family_that_is_required_and_absent_is_exit_3(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write({}, settings='[families]\nrequired = ["boilers"]\n')
    assert run("check") == 3
    assert (
        capsys.readouterr().err == "speclint: speclint.toml requires the family boilers; installed: tubes\n"
    )


@pytest.mark.parametrize(
    ("words", "named"),
    [
        (("check", "--against", ""), "--against"),
        (("gate", "--against="), "--against"),
        (("check", "--rule", " "), "--rule"),
        (("check", ""), "a word of the command line"),
        (("compare", "", "."), "a word of the command line"),
        (("unseen", "--of", ""), "--of"),
        (("review", "--to", ""), "--to"),
        (("families", "--new", ""), "--new"),
        (("margins", ""), "a word of the command line"),
    ],
)
@pytest.mark.usefixtures("shop")
def test_an_empty_word_is_told_and_never_taken_for_none(
    words: tuple[str, ...], named: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """As a shell makes it of a variable that is not set; the comparison that was asked for would be left out."""
    assert main(words) == 2
    told = capsys.readouterr()
    assert (told.out, told.err) == ("", f"speclint: {named} is empty: give it a value, or leave it out\n")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("check", "nowhere"), "nowhere: there is no such file or folder"),
        (("check", "a" * 300), "aaa: there is no such file or folder"),  # longer than a name can be
        (("check", "--as", "jsn"), 'no report is called jsn; write "json"'),
        (("check", "--family", "tubs"), 'no family is called tubs; write "tubes"'),
        (("check", "--rule", "tube.stres"), 'no rule is called tube.stres; write "tube.stress"'),
        (("sheet", "tub"), 'no component is called tub; write "tube"'),
        (("sheet", "tube", "tube.stres"), "no rule is called tube.stres"),
        (("rules", "tube.stras"), 'no rule has "tube.stras" in its name'),
        (("kinds", "tub"), 'no kind is called tub; write "tube"'),
        (("check", "--as", "json", "--to", "no/such/folder/x.json"), "cannot be written"),
        (("check", "--to", "tube.toml"), "tube.toml: this name belongs to the design in "),
        (
            ("check", "--schema", "--to", "speclint.toml"),
            "speclint.toml: this name belongs to the design in ",
        ),
        (("gate", "--to", "register.toml"), "register.toml: this name belongs to the design in "),
        (("sheet", "tube", "--to", "new.toml"), "new.toml: this name belongs to the design in "),
        (("review", "--to", "rack.toml"), "rack.toml: this name belongs to the design in "),
        (
            ("families", "--new", "wheel-sets", "--in", "."),
            "; name a folder outside of it with --in",
        ),
    ],
)
@pytest.mark.usefixtures("shop")
def test_a_wrong_word_is_one_line_and_exit_2(
    words: tuple[str, ...], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(*words) == 2
    err = capsys.readouterr().err
    assert said in err
    assert err.count("\n") == 1


def test_a_report_that_is_refused_its_place_is_refused_before_the_work(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("speclint.checking.assess", None)
    before = {path: path.read_bytes() for path in shop.root.iterdir()}
    assert run("check", "--to", "tube.toml") == 2
    assert run("review", "--to", "tube.toml") == 2
    assert {path: path.read_bytes() for path in shop.root.iterdir()} == before


@pytest.mark.parametrize(
    "words", [("check", "--to", "old.txt"), ("gate", "--to", "old.txt"), ("review", "--to", "pack")]
)
def test_a_full_disk_is_one_line_and_exit_2_and_leaves_the_old_report(
    shop: DesignFolder,
    words: tuple[str, ...],
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    for old in ("old.txt", "pack/review.html"):
        (shop.root / old).parent.mkdir(exist_ok=True)
        (shop.root / old).write_text("old", encoding="utf-8")
    before = {path: path.read_bytes() for path in shop.root.rglob("*.*")}

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    assert run(*words) == 2
    err = capsys.readouterr().err
    assert err.endswith(": cannot be written: No space left on device; what was there is left as it was\n")
    assert err.count("\n") == 1
    assert {path: path.read_bytes() for path in shop.root.rglob("*.*")} == before


def test_a_full_disk_for_temporary_files_withholds_in_one_line(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def full(*_: object, **__: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr("tempfile.mkdtemp", full)
    assert run("gate", "--against", "HEAD") == 2
    assert "no temporary folder can be made: No space left on device" in " ".join(
        capsys.readouterr().out.split()
    )
    assert shop.root.is_dir()


@pytest.mark.usefixtures("shop")
def test_json_is_the_same_to_the_byte_each_time(capsys: pytest.CaptureFixture[str]) -> None:
    run("check", "--as", "json")
    first = capsys.readouterr().out
    run("check", "--as", "json")
    assert capsys.readouterr().out == first
    assert json.loads(first)["schema"] == "speclint.result/1"


@pytest.mark.usefixtures("shop")
def test_a_report_can_go_to_a_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("check", "--as", "json", "--to", "out.json") == 0
    assert capsys.readouterr().out == ""
    assert json.loads((tmp_path / "out.json").read_text(encoding="utf-8"))["exit"] == 0
    assert run("check", "--to", "out.txt") == 0
    assert "IN ORDER" in (tmp_path / "out.txt").read_text(encoding="utf-8")


def test_a_sheet_with_nothing_on_it_says_why(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    """In one line: what could not be read, of the part or of that which it is like; or that nothing applies."""
    for form in ([], ["--as", "markdown"], ["--to", "sheet.txt"]):
        assert run("sheet", "rack", "tube.stress", *form) == 1
        assert capsys.readouterr() == ("", "speclint: tube.stress does not apply to rack\n")
    assert not (shop.root / "sheet.txt").exists()
    shop.replace("tube.toml", '"100 mm ±0.5"', '"100 kg"')
    (shop.root / "second.toml").write_text('kind = "tube"\nlike = "tube"\n', encoding="utf-8")
    for name in ("tube", "second"):
        assert run("sheet", name) == 2
        assert capsys.readouterr().err.startswith('speclint: tube.toml:4 bore: "kg" is no unit of length')


@pytest.mark.usefixtures("shop")
def test_a_sheet_reads_like_a_calculation(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("sheet", "tube", "tube.stress") == 0
    out = " ".join(capsys.readouterr().out.split())
    for words in (
        "CALCULATION SHEET tube",
        "bore: d = 100.5 mm tube.toml:4 as written: 100 mm ±0.5",
        "σ = p d/(D − d) = 3 MPa · 100.5 mm/(104.5 mm − 100.5 mm) σ = 75.38 MPa",
        "CONFORMS: mean hoop stress of a tube 75.38 MPa ≤ 100 MPa allowable stress; 0.754 of the limit is used",
        "Checked by: ____________",
    ):
        assert words in out, words


@pytest.mark.usefixtures("shop")
def test_rules_kinds_and_families_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert (
        run("rules")
        == run("rules", "tube.stress")
        == run("kinds")
        == run("kinds", "tube")
        == run("families")
        == 0
    )
    out = capsys.readouterr().out
    for words in (
        "the tube carries its pressure",
        "allowable = 100 MPa",
        "held_in",
        "the id of a rack",
        "tubes",
    ):
        assert words in out
    assert run("rules", "--as", "json") == 0
    rules = json.loads(capsys.readouterr().out)
    assert {rule["rule"] for rule in rules} == {rule.name for rule in tubes.RULES}
    assert all(rule["sources"] for rule in rules)
    assert run("kinds", "tube", "--as", "schema") == 0
    schema = json.loads(capsys.readouterr().out)
    assert schema["properties"]["ends"] == {
        "anyOf": [
            {"enum": ["open", "closed"]},
            {"type": "string", "pattern": r"\{([A-Za-z][A-Za-z0-9_-]*)\}"},  # a mark of a list of names
        ],
        "description": 'one of "open", "closed"',
        "examples": ["open"],
    }


@pytest.mark.usefixtures("shop")
def test_only_some_rules_are_run_when_asked(capsys: pytest.CaptureFixture[str]) -> None:
    run("check", "--rule", "tube.stress", "--as", "json")
    assert [check["rule"] for check in json.loads(capsys.readouterr().out)["checks"]] == ["tube.stress"]


def test_pipes_get_no_ink_and_any_encoding_serves(tmp_path: Path) -> None:
    """A pipe under an old code page, as on a design office's machine: UTF-8 all the same, no escape codes."""
    DesignFolder(tmp_path, tubes.tubes()).write({"duty.toml": tubes.DUTY})
    command = [sys.executable, "-m", "speclint", "check", str(tmp_path)]
    environment = {**os.environ, "PYTHONIOENCODING": "cp1252"}
    done = subprocess.run(command, capture_output=True, env=environment, check=False)
    assert done.returncode == 1, done.stderr  # nothing was checked
    assert "·" in done.stdout.decode("utf-8")
    assert b"\x1b" not in done.stdout


def test_a_reader_that_leaves_early_is_no_error(tmp_path: Path) -> None:
    DesignFolder(tmp_path, tubes.tubes()).write({"duty.toml": tubes.DUTY})
    command = [sys.executable, "-m", "speclint", "rules", "--as", "json"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as running:
        assert running.stdout is not None
        running.stdout.close()
        assert running.stderr is not None
        assert running.stderr.read() == b""


@pytest.mark.usefixtures("shop")
def test_without_words_of_its_caller_it_takes_those_that_it_was_started_with(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "argv", ["speclint", "sheet", "rack", "tube.stress"])
    assert main() == 1
    assert capsys.readouterr().err == "speclint: tube.stress does not apply to rack\n"


@pytest.mark.usefixtures("shop")
def test_an_old_code_page_is_written_to_as_utf_8(monkeypatch: pytest.MonkeyPatch) -> None:
    """Which has no σ."""
    written = io.BytesIO()
    with io.TextIOWrapper(written, encoding="cp1252") as stream:
        monkeypatch.setattr(sys, "stdout", stream)
        assert main(["sheet", "tube", "tube.stress"]) == 0
        monkeypatch.undo()
        assert "σ = p d/(D − d)" in written.getvalue().decode("utf-8")


@pytest.mark.parametrize("words", [[], ["chek"], ["check", "--colour"], ["check", "--ful"], ["--vers"]])
def test_a_wrong_command_line_is_exit_2(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(words)
    assert ended.value.code == 2
    assert "usage: speclint" in capsys.readouterr().err


#: Each command that cannot go without some options, with a value for each of them.
REQUIRED = {
    "concede tube tube.stress": {"--by": "A", "--grounds": "x", "--until": "2030-01-01"},
    "import tubes.csv": {"--kind": "tube"},
    "read tube": {"--by": "A"},
    "record tubes.csv": {"--part": "tube", "--serial": "7"},
    "reference": {"--to": "out"},
    "review": {"--to": "out"},
    "sign C-001": {"--key": "key"},
}


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("words", "wanting"), [(words, one) for words, options in REQUIRED.items() for one in options]
)
def test_an_option_that_a_command_cannot_go_without_is_asked_for(
    words: str, wanting: str, capsys: pytest.CaptureFixture[str]
) -> None:
    given = [word for pair in REQUIRED[words].items() if pair[0] != wanting for word in pair]
    with pytest.raises(SystemExit, match="2"):
        main([*words.split(), *given])
    assert capsys.readouterr().err.endswith(f"the following arguments are required: {wanting}\n")


def test_the_version_is_all_that_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit, match="0"):
        main(["--version"])
    assert capsys.readouterr() == (f"speclint {version('speclint')}\n", "")


def test_a_word_that_is_no_command_is_answered_with_all_that_are(capsys: pytest.CaptureFixture[str]) -> None:
    """Whatever stands behind it."""
    with pytest.raises(SystemExit, match="2"):
        main(["chek", "check"])
    said = capsys.readouterr().err
    assert [word for word in COMMANDS if word not in said] == []


def test_the_schema_of_the_result_is_published(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("check", "--schema") == 0
    schema = json.loads(capsys.readouterr().out)
    assert schema["properties"]["schema"] == {"const": "speclint.result/1"}


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("form", "begins"), [("sarif", "{"), ("markdown", "## IN ORDER"), ("csv", "component,kind,family,rule")]
)
def test_the_core_brings_reports_for_machines_and_forges(
    form: str, begins: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("check", "--as", form) == 0
    assert capsys.readouterr().out.startswith(begins)


@pytest.mark.parametrize("words", [(), ("--rule", "tube.loose-hot")], ids=" ".join)
def test_a_remedy_says_what_it_spoils_whichever_rules_are_asked_about(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str], words: tuple[str, ...]
) -> None:
    """A tube of 107 mm does not enter its hole; 105.2 mm would, and its wall would not carry 50 bar."""
    shop.replace("tube.toml", "105 mm ±0.5", "107 mm ±0.5").replace("tube.toml", "30 bar", "50 bar")
    run("check", "--full", *words)
    said = " ".join(capsys.readouterr().out.split())
    assert "outside from 107 mm ±0.5 to 105.2 mm ±0.5, but then tube.stress would not hold" in said


def test_what_stands_for_a_word_of_yours_is_in_capitals() -> None:
    """In the usage of every command, as in the table of commands: small letters are written as they stand."""
    for word in COMMANDS:
        parser = argparse.ArgumentParser()
        module_of(word).add_options(parser)
        own = [str(one.metavar or one.dest) for one in parser._actions if not one.option_strings]
        assert own == [one.upper() for one in own], word
