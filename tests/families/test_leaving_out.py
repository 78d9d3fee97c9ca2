"""A family that the settings leave out: nothing of it is applied, and every report says so."""

from __future__ import annotations

import datetime as dt
import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from speclint import ReportWriter
from speclint.checking import Assessment, Processes, assess, chosen_rules
from speclint.commands.command_line import main
from speclint.errors import FamilyError, SettingsError
from speclint.families import Loaded, load_families
from speclint.register import judge
from speclint.reports import gate_data, gate_page, hooks, review_page, schema, terminal_page
from speclint.reports.listings import families_page
from speclint.reports.phrases import left_out
from speclint.repository import families_left_out
from speclint.specs import ExtraTable, Shaft, class_of
from speclint.testing import SETTINGS, DesignFolder
from tests.families.test_refusing import Hoops, gives, point
from tests.tubes import FILES, entry_point

LEFT_OUT = SETTINGS + '[families]\nleave_out = ["tubes"]\n'
SAYS = "LEFT OUT by speclint.toml: the family tubes; none of its rules was applied."
SHAFT = 'kind = "shaft"\ndiameter = "100 mm"\n'


@pytest.fixture
def loaded() -> Loaded:
    """The tubes, and another family with a report and a table for shafts."""
    own = point(
        "own",
        speclint_reports=gives(ReportWriter("own", "", lambda _: "own")),
        speclint_tables=gives(ExtraTable(Shaft, Hoops)),
    )
    return load_families([entry_point("tubes"), own], built_in=hooks)


@pytest.fixture
def without(tmp_path: Path, loaded: Loaded) -> Assessment:
    """A design of one shaft, with the tubes left out."""
    return DesignFolder(tmp_path, loaded).write({"shaft.toml": SHAFT}, settings=LEFT_OUT).assess()


def test_nothing_of_it_is_left_but_the_name(loaded: Loaded) -> None:
    less = loaded.without(["tubes"])
    assert [family.name for family in less.families] == ["own"]
    assert less.rules == ()
    assert "tube" in loaded.kinds
    assert "tube" not in less.kinds
    assert less.left_out == ("tubes",)
    assert less.without(["tubes"]) is less
    assert less.without(["own"]).left_out == ("own", "tubes")
    assert "own" not in less.without(["own"]).writers
    assert less.without(["own"]).kinds["shaft"] is class_of(Shaft)
    assert loaded.kinds["shaft"] is not Shaft


def test_a_name_that_no_family_has_is_told_as_such(tmp_path: Path, loaded: Loaded) -> None:
    """A slip of the pen: the family that was meant is used, and the report must not say that it is not."""
    assert loaded.without(["tubs", "own"]).absent == ("tubs",)
    assert loaded.without(["tubs"]).without(["own", "tubs"]).absent == ("tubs",)
    settings = SETTINGS + '[families]\nleave_out = ["tubs"]\n'
    said = left_out(DesignFolder(tmp_path, loaded).write({"shaft.toml": SHAFT}, settings=settings).assess())
    assert said == "speclint.toml leaves out tubs: no family of that name is installed."
    both = SETTINGS + '[families]\nleave_out = ["tubes", "tubs"]\n'
    said = left_out(DesignFolder(tmp_path, loaded).write({}, settings=both).assess())
    assert said == f"{SAYS} speclint.toml leaves out tubs: no family of that name is installed."


def test_its_rules_are_not_applied_even_where_they_are_named(tmp_path: Path, loaded: Loaded) -> None:
    shop = DesignFolder(tmp_path, loaded).write({"shaft.toml": SHAFT}, settings=LEFT_OUT)
    assert assess([shop.root], loaded, loaded.rules).checks == ()
    with pytest.raises(SettingsError, match="the family tubes is left out by speclint"):
        chosen_rules(loaded.without(["tubes"]), ["tubes"], [])
    said = "no rule is called tube.stress while speclint.toml leaves out the family tubes; write nothing"
    with pytest.raises(SettingsError, match=said):
        chosen_rules(loaded.without(["tubes"]), [], ["tube.stress"])


def test_a_spec_of_its_kinds_is_told_that_it_is_left_out(tmp_path: Path, loaded: Loaded) -> None:
    (said, *_) = (
        DesignFolder(tmp_path, loaded)
        .write({"rack.toml": FILES["rack.toml"]}, settings=LEFT_OUT)
        .assess()
        .complaints
    )
    assert (
        said.message == "this kind of component is not known while speclint.toml leaves out the family tubes"
    )
    assert (said.where.file, said.where.line, said.read) == ("rack.toml", 2, '"rack"')


@pytest.mark.parametrize(
    ("settings", "text", "says", "write"),
    [
        (
            '[families]\nleave_out = ["own"]\n',
            SHAFT + '[own]\npitch = "1 mm"\n',
            "[own] is read by the family own, which speclint.toml leaves out",
            'the table under [notes], or speclint.toml without "own" in leave_out',
        ),
        (
            "",
            'kind = "pin"\n[own]\npitch = "1 mm"\n',
            "the family own reads a table [own] of a shaft, not of a pin",
            "the table where it belongs, or under [notes]",
        ),
        (
            "",
            SHAFT + '[electrics]\npitch = "1 mm"\n',
            "[electrics] is no table of a shaft, and no family that is loaded reads it",
            "the family installed that reads it, or the table under [notes]",
        ),
        ("", SHAFT + "[weldin]\nwelded = true\n", '"weldin" is no key of a shaft', '"welding"'),
    ],
)
def test_a_table_that_no_family_reads_says_which_would(
    tmp_path: Path, loaded: Loaded, settings: str, text: str, says: str, write: str
) -> None:
    shop = DesignFolder(tmp_path, loaded).write({"part.toml": text}, settings=SETTINGS + settings)
    (said,) = shop.assess().complaints
    assert (said.message, said.write) == (says, write)
    assert said.where.file == "part.toml"
    assert said.where.line > 1


def test_a_required_family_cannot_be_left_out(tmp_path: Path, loaded: Loaded) -> None:
    settings = SETTINGS + '[families]\nrequired = ["tubes"]\nleave_out = ["tubes", "own"]\n'
    assessment = DesignFolder(tmp_path, loaded).write(FILES, settings=settings).assess()
    (said,) = assessment.complaints
    assert said.message == "a family that is required cannot be left out"
    assert (said.where.file, said.where.line, said.where.key) == ("speclint.toml", 8, "families.leave_out")
    assert said.read == '"tubes"'
    assert assessment.loaded.left_out == ("own",)
    assert assessment.checks
    assert assessment.exit_code == 2


# Every report


def test_the_terminal_says_so(without: Assessment) -> None:
    assert SAYS in " ".join(terminal_page.write(without, 100).text().split())


@pytest.mark.parametrize("width", [80, 300])
def test_the_list_of_families_says_so(loaded: Loaded, width: int) -> None:
    page = families_page(loaded.without(["tubes"]), width).text()
    assert any(line.split() == ["tubes", "left", "out", "by", "speclint.toml"] for line in page.splitlines())


def test_the_json_document_says_so_and_only_then(without: Assessment, tmp_path: Path, loaded: Loaded) -> None:
    document = json.loads(loaded.writers["json"].write(without))
    jsonschema.validate(document, json.loads(schema()))
    assert document["left_out"] == ["tubes"]
    whole = DesignFolder(tmp_path / "whole", loaded).write(FILES).assess()
    document = json.loads(loaded.writers["json"].write(whole))
    jsonschema.validate(document, json.loads(schema()))
    assert "left_out" not in document


def test_the_sarif_log_says_so(without: Assessment, loaded: Loaded) -> None:
    log: Any = json.loads(loaded.writers["sarif"].write(without))
    (invocation,) = log["runs"][0]["invocations"]
    assert {"level": "warning", "message": {"text": SAYS}} in invocation["toolConfigurationNotifications"]
    assert invocation["executionSuccessful"]


def test_markdown_and_the_pack_say_so(without: Assessment, loaded: Loaded) -> None:
    assert SAYS in loaded.writers["markdown"].write(without).replace("\\", "")
    assert SAYS in review_page(without)


def test_the_gate_says_so(tmp_path: Path, loaded: Loaded) -> None:
    shop = DesignFolder(tmp_path, loaded).write({"shaft.toml": SHAFT}, settings=LEFT_OUT)
    decision = judge([shop.root], lambda: loaded, dt.date.today())
    assert SAYS in " ".join(gate_page(decision, 100).text().split())
    assert gate_data(decision)["left_out"] == ["tubes"]
    assert decision.exit_code == 3
    assert decision.reasons[0].says == "no family of rules is installed"


# Where it is read


def test_families_left_out_are_read_from_the_settings_above(tmp_path: Path) -> None:
    shop = DesignFolder(tmp_path, load_families([])).write({"parts/shaft.toml": SHAFT}, settings=LEFT_OUT)
    assert families_left_out([shop.root / "parts"]) == ("tubes",)
    assert families_left_out([tmp_path.parent / "none"]) == ()
    shop.replace("speclint.toml", "[families]", "[familes]")
    assert families_left_out([shop.root]) == ()


def test_a_command_takes_them_from_the_folder_it_runs_in(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    points = [entry_point("tubes")]
    monkeypatch.setattr("speclint.families.loading.installed", lambda: points)
    monkeypatch.chdir(DesignFolder(tmp_path, load_families([])).write({}, settings=LEFT_OUT).root)
    assert main(["families"]) == 0
    assert capsys.readouterr().out.split() == [
        "tubes",
        "left",
        "out",
        "by",
        "speclint.toml",
        "no",
        "other",
        "family",
        "is",
        "installed",
    ]
    assert main(["rules", "tube.stress"]) == 2
    assert main(["check", "--family", "tubes"]) == 2
    assert "the family tubes is left out by speclint.toml" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("left_out", "code", "out", "err"),
    [("[]", 1, "own", ""), ('["own"]', 2, "", "speclint: no report is called own; write")],
)
def test_a_report_of_it_is_not_written(
    left_out: str,
    code: int,
    out: str,
    err: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    """1 where it is written: nothing was checked by a family without rules."""
    own = point("own", speclint_reports=gives(ReportWriter("own", "", lambda _: "own")))
    monkeypatch.setattr("speclint.families.loading.installed", lambda: [own])
    settings = SETTINGS + f"[families]\nleave_out = {left_out}\n"
    shop = DesignFolder(tmp_path, load_families([])).write({"shaft.toml": SHAFT}, settings=settings)
    assert main(["check", "--as", "own", str(shop.root)]) == code
    told = capsys.readouterr()
    assert told.out.strip() == out
    assert told.err.startswith(err)


def test_one_that_is_required_and_absent_still_stops_the_run(tmp_path: Path, loaded: Loaded) -> None:
    settings = SETTINGS + '[families]\nrequired = ["boilers"]\nleave_out = ["tubes"]\n'
    with pytest.raises(FamilyError, match="requires the family boilers; installed: own"):
        DesignFolder(tmp_path, loaded).write({}, settings=settings).assess()


def test_helpers_leave_it_out_too(tmp_path: Path) -> None:
    """Of the installed families, in an interpreter of their own."""
    files = {f"shaft-{number}.toml": SHAFT for number in range(3)}
    settings = SETTINGS + '[families]\nleave_out = ["motion"]\n'
    shop = DesignFolder(tmp_path, load_families()).write(files, settings=settings)
    with Processes(helpers=1, enough=1, start="new") as helpers:
        spread = assess([shop.root], shop.loaded, processes=helpers)
    assert {check.rule.family for check in spread.checks} == {
        check.rule.family for check in shop.assess().checks
    }
    assert "motion" not in {check.rule.family for check in spread.checks}
