"""What the small commands take and say, on a design of one tube: each option, each form, each count."""

from __future__ import annotations

import gc
import json
import sys
from pathlib import Path
from typing import Any

import pytest

from speclint.checking import Processes
from speclint.commands import main
from speclint.families import Loaded, loading
from speclint.reports import hooks
from speclint.reports.reference import REFERENCE_FRONT, REFERENCE_MARK
from speclint.testing import DesignFolder
from tests import tubes
from tests.commands.test_progress import lines
from tests.register.office import git
from tests.reports.test_page import Terminal
from tests.tubes import FILES

UNREADABLE = 'kind = "tube"\nboer = "100 mm"\n'


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A tube in the current folder, and the family of tubes alone."""
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    root = tmp_path / "shop"
    shop = DesignFolder(root, loading.load_families(built_in=hooks)).write(FILES)
    monkeypatch.chdir(root)
    return shop


@pytest.mark.usefixtures("shop")
def test_a_part_to_which_no_rule_applies_has_no_sheet(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", "rack"]) == 1
    assert capsys.readouterr() == ("", "speclint: no rule applies to rack\n")


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("form", "begins"),
    [([], "\nCALCULATION SHEET"), (["--as", "markdown"], "## tube: "), (["--as", "html"], "<!doctype html>")],
)
def test_a_sheet_is_of_all_rules_that_apply_in_the_form_that_is_asked_for(
    form: list[str], begins: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["sheet", "tube", *form]) == 0
    out, err = capsys.readouterr()
    assert err == ""
    assert begins.lower() in out[:120].lower()
    assert all(one.title in out for one in tubes.RULES)


def test_a_sheet_of_what_was_read_says_what_was_not(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    """Beside the sheet of a part that is whole, no word that nothing applies."""
    shop.write({"other.toml": UNREADABLE})
    main(["sheet", "other"])
    err = capsys.readouterr().err
    assert "applies" not in err
    assert err.startswith("speclint: other.toml:2 boer: ")


def test_what_nobody_looked_at_is_asked_of_a_part_that_is_there(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["unseen", "--of", "rack"]) == 0
    assert main(["unseen"]) == 0
    capsys.readouterr()
    shop.write({"other.toml": UNREADABLE})
    assert main(["unseen", "--as", "json"]) == 2
    assert "hazards" in json.loads(capsys.readouterr().out)
    shop.write({}, settings="[works\n")
    assert main(["unseen", "--of", "tube"]) == 2
    assert "no component is called tube" in capsys.readouterr().err


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(("vary", "code"), [("-1", 2), ("0", 0), ("1", 0), ("100000", 0), ("100001", 2)])
def test_the_checks_that_are_varied_are_from_none_to_all(vary: str, code: int) -> None:
    assert main(["margins", "--vary", vary]) == code


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize("word", ["margins", "inspect", "pair"])
def test_a_terminal_is_told_each_stage(word: str, monkeypatch: pytest.MonkeyPatch) -> None:
    words = {
        "margins": (["margins"], ["checking", "varying values"]),
        "inspect": (["inspect", "tube"], ["checking", "varying what tube rests on"]),
        "pair": (["pair", "tube", "rack"], ["checking the drawings", "seeking finish sizes"]),
    }
    stream = Terminal()
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(sys, "stderr", stream)
    given, stages = words[word]
    main(given)
    assert [one for one in lines(stream) if " of " not in one] == stages


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(("values", "code"), [("0", 2), ("1", 0), ("32", 0), ("33", 2)])
def test_a_sheet_has_from_one_row_to_thirty_two_of_each_size(
    values: str, code: int, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["inspect", "tube", "--as", "csv", "--values", values]) == code
    out = capsys.readouterr().out
    assert sum(line.split(",")[1:2] == ["bore"] for line in out.splitlines()) == (0 if code else int(values))


@pytest.mark.usefixtures("shop")
def test_a_blank_is_of_one_kind(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["kinds", "tube", "--as", "template"]) == 0
    assert '\n#bore = "' in capsys.readouterr().out
    assert main(["kinds", "--as", "template"]) == 2
    assert capsys.readouterr() == (
        "",
        "speclint: a template is of one kind: speclint kinds KIND --as template\n",
    )


@pytest.mark.usefixtures("shop")
def test_one_rule_is_told_in_full_and_all_in_short(capsys: pytest.CaptureFixture[str]) -> None:
    """With its limits and what it leaves out."""
    assert main(["rules", "tube.stress"]) == 0
    assert "allowable = 100 MPa" in capsys.readouterr().out
    assert main(["rules"]) == 0
    out = capsys.readouterr().out
    assert "tube.hoops" in out
    assert "allowable = 100 MPa" not in out
    assert main(["rules", "tube.stress", "--as", "json"]) == 0
    assert [one["rule"] for one in json.loads(capsys.readouterr().out)] == ["tube.stress"]


@pytest.mark.usefixtures("shop")
def test_rules_are_found_by_words_of_their_name_family_statement_or_kinds(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """Of the tubes: "loose" stands in one name and one statement, "rack" is the kind of one rule alone."""

    def named(*words: str) -> list[str]:
        assert main(["rules", *words, "--as", "json"]) == 0
        return [one["rule"] for one in json.loads(capsys.readouterr().out)]

    every = named()
    assert named("LOOSE") == [one for one in every if one == "tube.loose-hot"]
    assert named("carries", "steam") == ["tube.case-stress"]
    assert named("tubes") == named("--family", "tubes") == every
    assert main(["rules", "boiler"]) == 2
    said = 'speclint: no rule has "boiler" in its name, family, statement or kinds; write '
    assert capsys.readouterr().err.startswith(said)
    assert main(["rules", "--family", "tube"]) == 2
    assert "no family is called tube" in capsys.readouterr().err


def test_the_pages_of_the_reference_go_into_the_folder_and_their_front_is_named(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Those of what is loaded, over those of an earlier run."""

    def files(loaded: Loaded, _: object) -> dict[str, str]:
        return {REFERENCE_FRONT: f"{REFERENCE_MARK} {[one.name for one in loaded.families]}"}

    monkeypatch.setattr("speclint.reports.reference_files", files)
    front = Path("..") / "pages" / REFERENCE_FRONT
    for _ in range(2):
        assert main(["reference", "--to", "../pages"]) == 0
        assert capsys.readouterr().out == f"{front}\n"
        assert front.read_text(encoding="utf-8") == f"{REFERENCE_MARK} ['tubes']"
    assert shop.root.is_dir()


def test_a_review_says_at_what_it_works_and_where_it_went(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    git(shop.root, "init", "--quiet", "--initial-branch=main")
    git(shop.root, "add", ".")
    git(shop.root, "commit", "--quiet", "-m", "as it was")
    shop.replace("tube.toml", "30 bar", "45 bar")
    stream = Terminal()
    with monkeypatch.context() as patch:
        patch.setenv("TERM", "xterm")
        patch.setattr(sys, "stderr", stream)
        assert main(["review", "--to", "../pack", "--against", "HEAD"]) == 1
    told = [one for one in lines(stream) if " of " not in one]
    assert told[:3] == ["checking", "checking HEAD", "looking for remedies"]
    assert capsys.readouterr().out == f"{Path('..') / 'pack' / 'review.html'}\n"


def test_a_folder_of_a_review_that_cannot_be_made_is_told(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    (shop.root.parent / "taken").write_text("a file", encoding="utf-8")
    assert main(["review", "--to", "../taken/pack"]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.startswith(f"speclint: {Path('..') / 'taken' / 'pack'}: cannot be ")


def test_a_server_runs_with_what_is_loaded_and_frees_what_it_uses_no_more(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    pytest.importorskip("pygls")
    served: list[tuple[list[str], bool]] = []

    def serve(loaded: Loaded) -> None:
        served.append(([one.name for one in loaded.families], gc.isenabled()))

    monkeypatch.setattr("speclint.editing.serve", serve)
    gc.disable()
    try:
        assert main(["serve"]) == 0
    finally:
        gc.enable()
    assert served == [(["tubes"], True)]
    assert main(["serve", "--ready"]) == 0
    assert len(served) == 1
    assert shop.root.is_dir()


@pytest.mark.usefixtures("shop")
def test_what_a_server_needs_and_is_not_there_is_told(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setitem(sys.modules, "lsprotocol", None)  # as Python says that a module is not there
    assert main(["serve", "--ready"]) == 2
    assert capsys.readouterr() == (
        "",
        "speclint: lsprotocol is not installed: pip install speclint[editor]\n",
    )


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize("number", [1, 2])
def test_lines_that_could_not_be_read_are_counted(
    number: int, shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write({f"bad-{one}.toml": "kind =" for one in range(number)})
    assert main(["names", "cases"]) == 0
    lines = "1 line of" if number == 1 else "2 lines of"
    assert capsys.readouterr().err == (
        f"speclint: {lines} the repository could not be read, and names that stand there are wanting: "
        "speclint check says which\n"
    )


@pytest.mark.usefixtures("shop")
def test_a_day_is_written_as_one(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit, match="2"):
        main(["concede", "tube", "tube.stress", "--by", "A", "--grounds", "x", "--until", "tomorrow"])
    assert "tomorrow is not a date; write it as 2027-05-31" in capsys.readouterr().err


@pytest.mark.usefixtures("shop")
def test_a_page_has_ink_on_a_terminal_and_none_in_a_file(monkeypatch: pytest.MonkeyPatch) -> None:
    stream = Terminal()
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setattr(sys, "stdout", stream)
    assert main(["check"]) == 0
    assert "\x1b[" in stream.getvalue()
    assert main(["check", "--to", "page.txt"]) == 0
    assert "\x1b" not in Path("page.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("words", "answer"),
    [
        ([], 39.8),
        (["--set", "tube.outside=105.2 mm ±0.5"], 41.79),
    ],
)
def test_a_value_is_solved_for_with_the_others_that_are_asked_about(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str], words: list[str], answer: float
) -> None:
    """p d/(D − d) is 100 MPa at d = 100.5 mm: for D = 104.5 at 100 × 4/100.5 = 3.98 MPa, for 104.7 at 4.179."""
    solve = ["check", "--set", "tube.pressure=?", "--solve", "tube.stress", "--as", "json"]
    main([*solve, *words])
    then = {one["key"]: one["then"] for one in json.loads(capsys.readouterr().out)["set"]}
    assert answer - 0.5 < float(then["pressure"].split()[0]) <= answer
    assert shop.root.is_dir()


def test_what_if_is_asked_of_the_specs_that_are_named(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Or of the one repository that lies below the top of git."""
    shop.write({"other.toml": FILES["tube.toml"]})
    ask = ["--set", "tube.pressure=31 bar gauge", "--set", "other.pressure=31 bar gauge", "--as", "json"]
    main(["check", "tube.toml", *ask])
    alone = capsys.readouterr().out
    assert '"component": "tube"' in alone
    assert '"component": "other", "rule"' not in " ".join(alone.split())
    main(["check", *ask])
    every = capsys.readouterr().out
    assert len(every) > len(alone)
    git(shop.root.parent, "init", "--quiet")
    monkeypatch.chdir(shop.root.parent)
    main(["check", *ask])
    assert len(capsys.readouterr().out) == len(every)


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize("words", [["--set", "tube.bore=3 mm"], ["--solve", "tube.stress"]])
def test_the_option_that_asks_is_named_where_another_does_not_go_with_it(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", *words, "--staged"]) == 2
    assert capsys.readouterr().err == (
        f"speclint: {words[0]} asks about the design as it stands here: leave out --staged\n"
    )


def test_a_review_seeks_remedies_with_the_helpers(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop.replace("tube.toml", "30 bar", "45 bar")
    met: list[int] = []
    remedies = Processes.remedies

    def watched(self: Processes, firsts: Any, *given: Any) -> Any:
        met.append(len(firsts))
        return remedies(self, firsts, *given)

    monkeypatch.setattr(Processes, "remedies", watched)
    assert main(["review", "--to", "../pack"]) == 1
    assert met == [1]
