"""A new design repository, from an empty folder: it checks at once, and nothing that is there is touched."""

from __future__ import annotations

import io
import os
import sys
import tomllib
from pathlib import Path

import pytest

from speclint.commands import begin as command, main
from speclint.commands.first_design import CYLINDERS, LAYOUTS, Blank, first_design
from speclint.commands.new_repository import (
    Answers,
    NewReviewer,
    begin as write_repository,
    duty_text,
    fault_of_reviewer,
    settings_text,
)
from speclint.errors import SettingsError
from speclint.repository import load_settings, open_repository
from speclint.specs import CASE_NAMES, LoadCase
from speclint.testing import DesignFolder, installed_families
from tests.register.office import git
from tests.reports.test_page import Terminal


@pytest.fixture(scope="module")
def begun(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A repository just written, in a folder of a git repository."""
    top = tmp_path_factory.mktemp("work")
    git(top, "init", "--quiet")
    words = [
        "--works",
        'Vale "B" Railway',
        "--reviewer",
        "M. Coyle, chief draughtsman: liners, joints",
        "--railway-code",
        "Code 7",
    ]
    assert main(["begin", str(top / "new design"), "--units", "imperial", "--cylinders", "1", *words]) == 0
    return top


def test_it_checks_at_once_without_a_complaint(begun: Path) -> None:
    """As a draft of which nothing is drawn: nothing is unreadable, and what is wanting is told."""
    found = DesignFolder(begun / "new design").assess("liners")
    assert found.complaints == ()
    assert found.exit_code == 1
    assert found.design is not None
    assert {"engine", "block-middle", "liner-middle", "valve-inlet-middle-front"} <= set(found.design.specs)
    assert found.counted()["not assessed"] > 0
    assert not any(one.could_not_run for one in found.checks)


@pytest.mark.parametrize(
    ("part", "linked"),
    [
        ("engine", {"block-middle"}),
        ("liner-middle", {"block-middle"}),
        ("piston-middle", {"liner-middle", "ring-middle-front", "ring-middle-back"}),
        ("ring-middle-front", {"liner-middle"}),
        ("rod-middle", {"piston-middle"}),
        ("box-middle", {"rod-middle", "cover-middle-back"}),
        ("cover-middle-front", {"block-middle"}),
        ("studs-middle-front", {"cover-middle-front", "block-middle"}),
        ("seat-inlet-middle-front-upper", {"block-middle"}),
        (
            "valve-inlet-middle-front",
            {"seat-inlet-middle-front-upper", "seat-inlet-middle-front-lower"},
        ),
        ("spindle-inlet-middle-front", {"valve-inlet-middle-front"}),
        ("spring-inlet-middle-front", {"valve-inlet-middle-front"}),
    ],
)
def test_each_blank_names_the_parts_it_goes_with(begun: Path, part: str, linked: set[str]) -> None:
    found = open_repository([begun / "new design"], installed_families().kinds).design.specs[part]
    assert {one.id for one in found.links()} == linked


def test_how_blanks_are_committed_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The first commit is of blanks, which the hook withholds: whoever meets that knows it from here."""
    assert main(["begin", str(tmp_path / "new"), "--cylinders", "1"]) == 0
    assert "git commit --no-verify keeps a state that is not finished" in capsys.readouterr().out
    assert "git commit --no-verify" in (tmp_path / "new" / "hooks" / "pre-commit").read_text(encoding="utf-8")


def test_what_is_done_next_is_said_in_order(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["begin", "new", "--cylinders", "1"]) == 0
    written, _, after = capsys.readouterr().out.partition("\nNext:\n")
    assert written.startswith("wrote ")
    assert [line for line in after.splitlines() if line.startswith("  ")] == after.splitlines()
    assert [line.strip() for line in after.splitlines()][:4] == [
        "speclint check new",
        "what is still to be stated and drawn",
        "fill in the duty, then the block and its parts: take the mark # from the front of a key",
        "git init new",
    ]


def test_git_is_told_of_a_folder_only_where_one_stands_elsewhere(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["begin", "new", "--cylinders", "1"]) == 0
    assert "  git -C new config core.hooksPath hooks\n" in capsys.readouterr().out
    (tmp_path / "here").mkdir()
    monkeypatch.chdir(tmp_path / "here")
    assert main(["begin", "--cylinders", "1"]) == 0
    assert "  git config core.hooksPath hooks\n" in capsys.readouterr().out


@pytest.mark.parametrize("in_git", [True, False])
def test_a_folder_that_git_does_not_know_is_to_be_made_known(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], in_git: bool
) -> None:
    monkeypatch.chdir(tmp_path)
    if in_git:
        git(tmp_path, "init", "--quiet")
    assert main(["begin", "new", "--cylinders", "1"]) == 0
    assert ("  git init new\n" in capsys.readouterr().out) is not in_git


def test_its_settings_say_what_was_given(begun: Path) -> None:
    settings, complaints = load_settings(begun / "new design")
    assert complaints == ()
    assert settings is not None
    assert settings.stage == "draft"
    assert settings.local_codes.railway == ("Code 7",)
    assert settings.reviewers["M. Coyle"].competent_for == ("liners", "joints")
    written = tomllib.loads((begun / "new design" / "speclint.toml").read_text(encoding="utf-8"))
    assert written["reviewers"]["M. Coyle"]["role"] == "chief draughtsman"
    assert (written["works"]["name"], written["works"]["units"]) == ('Vale "B" Railway', "imperial")


def test_every_key_that_the_settings_explain_may_be_set(begun: Path, tmp_path: Path) -> None:
    """With the marks taken away, but for the remarks, it is read."""
    lines = (begun / "new design" / "speclint.toml").read_text(encoding="utf-8").splitlines()
    all_set = "\n".join(
        line[1:] if line.startswith("#") and line[1:2] not in (" ", "") else line for line in lines
    )
    settings, complaints = load_settings(_written(tmp_path, "speclint.toml", all_set))
    assert complaints == ()
    assert settings is not None
    assert settings.gauge_share == 0.1


def test_every_load_case_is_explained_and_may_be_stated(tmp_path: Path) -> None:
    """With the marks taken away the duty is read, and states a temperature in every case."""
    text = duty_text(["cylinder-block", "cylinder-liner"])
    lines = [
        line[1:] if line.startswith("#") and line[1:2] not in (" ", "") else line
        for line in text.splitlines()
    ]
    found = DesignFolder(tmp_path).write({"duty.toml": "\n".join(lines)}).assess()
    assert found.complaints == ()
    assert found.design is not None
    cases: dict[str, LoadCase] = found.design.specs["duty-main-line"].cases  # type: ignore[attr-defined]
    assert set(cases) == set(CASE_NAMES)
    assert all(set(case.temperatures) == {"cylinder-block", "cylinder-liner"} for case in cases.values())


def test_the_example_temperatures_of_the_duty_are_those_that_its_own_rules_take(tmp_path: Path) -> None:
    """Running, an inlet valve is washed by live steam of 390 °C ±10: by the rule at most 60 K cooler than that."""
    blank = duty_text(["cylinder-block", "cylinder-cover", "poppet-valve", "valve-seat"])
    marked = (line.startswith("#") and line[1:2] not in (" ", "") for line in blank.splitlines())
    text = "\n".join(line[mark:] for line, mark in zip(blank.splitlines(), marked, strict=True))
    block = 'kind = "cylinder-block"\nduty = "duty-main-line"\n[seat_bores.inlet]\n[bores.main]\n'
    seat = 'kind = "valve-seat"\npressed_into = "block"\nin_bore = "inlet"\n'
    valve = 'kind = "poppet-valve"\nserves = "inlet"\n[upper_beat]\nseat = "seat"\n'
    files = {"duty.toml": text, "block.toml": block, "seat.toml": seat, "valve.toml": valve}
    found = DesignFolder(tmp_path).write(files)
    assert found.only("duty.metal-follows-steam", "valve").outcome == "conforms"
    cold = text.replace('poppet-valve = "340..370 °C"', 'poppet-valve = "250..270 °C"')
    assert found.write({"duty.toml": cold}).only("duty.metal-follows-steam", "valve").outcome == "finding"


@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize("cylinders", CYLINDERS)
def test_every_number_of_cylinders_in_every_layout_is_read(
    cylinders: int, layout: str, tmp_path: Path
) -> None:
    kinds = installed_families().kinds
    blanks = first_design(cylinders, layout)
    files = {one.file: one.text(kinds[one.kind]) for one in blanks}
    design = DesignFolder(tmp_path).write({**files, "duty.toml": duty_text(["piston"])})
    opened = open_repository([design.root], kinds)
    assert opened.complaints == ()
    liners = [name for name in opened.design.specs if name.startswith("liner-")]
    assert len(liners) == cylinders


def text_of(file: str, layout: str = "separate") -> str:
    """A blank of an engine of two cylinders."""
    (blank,) = [one for one in first_design(2, layout) if one.file == file]
    return blank.text(installed_families().kinds[blank.kind])


def test_words_that_stand_for_each_part_are_a_line_below_the_id() -> None:
    """They are seen at the head of the file: a table at its end would take what is written after it."""
    assert '\nid = "liner-{each}"\neach = ["left", "right"]\n' in text_of("liners/liner.toml")
    assert "\n[each]\n" not in text_of("liners/liner.toml")
    ring = text_of("rings/ring.toml")
    line = 'each = { cylinder = ["left", "right"], groove = ["front", "back"] }'
    assert f'\nid = "ring-{{cylinder}}-{{groove}}"\n{line}\n' in ring
    assert "\n[each]\n" not in ring
    alone = text_of("blocks/block.toml", "one-block")
    assert "\neach = " not in alone
    assert "\n[each]\n" not in alone


def test_a_key_that_a_blank_has_not_is_a_slip_of_whoever_wrote_it() -> None:
    kind = installed_families().kinds["cylinder-liner"]
    with pytest.raises(LookupError, match="the blank has no boer"):
        Blank("liner.toml", "cylinder-liner", {"boer": "100 mm"}).text(kind)


def test_a_layout_is_one_that_is_known() -> None:
    with pytest.raises(SettingsError, match="the layout is separate or one-block, and not both"):
        first_design(2, "both")


def test_the_hook_and_the_script_name_the_folder_as_a_shell_reads_it(begun: Path) -> None:
    """A folder with a space in its name, seen from the top of the git repository."""
    hook = begun / "new design" / "hooks" / "pre-commit"
    assert "exec speclint check --staged 'new design'\n" in hook.read_text(encoding="utf-8")
    script = (begun / "new design" / "ci" / "check-change.sh").read_text(encoding="utf-8")
    assert "gate 'new design' --against \"origin/$into\"" in script
    assert "git fetch --no-tags --depth=1 origin" in script
    if os.name == "posix":
        assert os.access(hook, os.X_OK)


def test_every_command_works_at_the_top_of_the_git_repository(
    begun: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(begun)
    assert main(["register"]) == 0
    assert "no entries" in capsys.readouterr().out
    assert main(["sheet", "liner-middle", "release.identity"]) in (0, 1)
    assert "liner-middle" in capsys.readouterr().out


def test_of_several_repositories_below_the_top_none_is_taken(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    git(tmp_path, "init", "--quiet")
    for name in ("a", "b"):
        _written(tmp_path / name, "speclint.toml", "")
    monkeypatch.chdir(tmp_path)
    assert main(["register"]) == 2
    said = capsys.readouterr().err
    assert "several design repositories lie here; say which: " in said
    assert said.count("\n") == 1


def test_outside_of_git_nothing_below_is_looked_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    _written(tmp_path / "a", "speclint.toml", "")
    monkeypatch.chdir(tmp_path)
    assert main(["register"]) == 2
    assert capsys.readouterr().err == (
        "speclint: .: no speclint.toml here or in any folder above; every design repository has one: "
        "speclint begin . writes one\n"
    )


@pytest.mark.parametrize("there", ["speclint.toml", "valves/valve.toml", "hooks/pre-commit"])
def test_nothing_that_is_there_is_touched(
    there: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    kept = _written(tmp_path / "new", there, "mine") / there
    assert main(["begin", str(tmp_path / "new")]) == 2
    assert capsys.readouterr().err == f"speclint: {kept} is there already; nothing was written\n"
    assert [path for path in (tmp_path / "new").rglob("*") if path.is_file()] == [kept]
    assert kept.read_text(encoding="utf-8") == "mine"


def test_none_is_written_inside_of_another(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It would hide its files from the outer one."""
    _written(tmp_path, "speclint.toml", "")
    assert main(["begin", str(tmp_path / "inner")]) == 2
    assert "speclint.toml is there already" in capsys.readouterr().err
    assert not (tmp_path / "inner").exists()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--reviewer", "M. Coyle: linerz"], 'reviewer M. Coyle: no family is called linerz; write "liners"'),
        (
            ["--reviewer", ": liners"],
            'a reviewer has no name: write "M. Coyle, chief draughtsman: liners, joints"; '
            "the role may be left out",
        ),
        (
            ["--reviewer", "M. Coyle liners"],
            'a reviewer has no families: write "M. Coyle, chief draughtsman: liners, joints"; '
            "the role may be left out",
        ),
        (
            ["--reviewer", "M. Coyle: liners", "--reviewer", "M. Coyle: joints"],
            "reviewer M. Coyle is named twice: write all families in one",
        ),
        (["--cylinders", "7"], "an engine has from 1 to 4 cylinders here, and not 7"),
    ],
)
def test_a_wrong_word_is_one_line_and_writes_nothing(
    words: list[str], said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["begin", str(tmp_path / "new"), *words]) == 2
    assert capsys.readouterr().err == f"speclint: {said}\n"
    assert not (tmp_path / "new").exists()


def test_on_a_terminal_it_asks_for_what_was_not_given(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """An answer that is none of the words is asked for again; an empty one takes what stands in brackets."""
    answers = [
        "",
        "drafty",
        "for-review",
        "Code P",
        "",
        "",
        "M. Coyle: linerz",
        "M. Coyle: liners",
        "M. Coyle: joints",
        "",
        "imperial",
        "3",
        "one-block",
    ]
    monkeypatch.setattr(command, "at_terminal", lambda: True)
    monkeypatch.setattr(sys, "stdin", io.StringIO("".join(f"{one}\n" for one in answers)))
    assert main(["begin", str(tmp_path / "engine-b")]) == 0
    asked = capsys.readouterr().err
    assert asked.count("How far the design has come: draft, for-review or released [draft]: ") == 2
    assert "that is none of draft, for-review, released" in asked
    assert '  reviewer M. Coyle: no family is called linerz; write "liners"\n' in asked
    assert "  reviewer M. Coyle is named twice: write all families in one\n" in asked
    assert "How many cylinders: 1, 2, 3 or 4 [2]: " in asked
    assert "The works and the engine [engine-b]: " in asked
    assert "Local code for pressure parts [not known yet]: Local code for pressure parts [no more]: " in asked
    assert "Code of the railway [not known yet]: " in asked
    who = 'with role and families, as "M. Coyle, chief draughtsman: liners, joints"'
    assert f"Who may accept holds, {who} [nobody yet]: " in asked
    assert f"Who may accept holds, {who} [no more]: " in asked
    written = tomllib.loads((tmp_path / "engine-b" / "speclint.toml").read_text(encoding="utf-8"))
    assert written["works"] == {
        "name": "engine-b",
        "stage": "for-review",
        "units": "imperial",
        "exit_at": "nonconformity",
    }
    assert written["local_codes"] == {"pressure": ["Code P"], "railway": []}
    assert written["reviewers"] == {"M. Coyle": {"competent_for": ["liners"]}}
    engine = tomllib.loads((tmp_path / "engine-b" / "engines" / "engine.toml").read_text(encoding="utf-8"))
    assert engine["cranks"]["middle"] == {"block": "block", "bore": "middle"}


def _written(folder: Path, file: str, text: str) -> Path:
    """A folder with one file in it."""
    path = folder / file
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return folder


def test_nothing_is_asked_where_nothing_could_be_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    _written(tmp_path, "speclint.toml", "")
    monkeypatch.setattr(command, "at_terminal", lambda: True)
    assert main(["begin", str(tmp_path)]) == 2
    assert (
        capsys.readouterr().err
        == f"speclint: {tmp_path / 'speclint.toml'} is there already; nothing was written\n"
    )


@pytest.mark.parametrize(
    ("words", "not_asked"),
    [
        (["--works", "Corrow"], "The works"),
        (["--pressure-code", "Code P"], "Local code for pressure parts"),
        (["--railway-code", "Code R"], "Code of the railway"),
        (["--reviewer", "M. Coyle: liners"], "Who may accept holds"),
        (["--stage", "draft"], "How far"),
        (["--cylinders", "1"], "How many cylinders"),
    ],
)
def test_what_was_given_is_not_asked_for(
    words: list[str],
    not_asked: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    """To everything else an empty line is the answer: of eight questions seven are asked."""
    monkeypatch.setattr(command, "at_terminal", lambda: True)
    monkeypatch.setattr(sys, "stdin", io.StringIO("\n" * 8))
    assert main(["begin", str(tmp_path / "new"), *words]) == 0
    asked = capsys.readouterr().err
    assert asked.count("]: ") == 7
    assert not_asked not in asked


@pytest.mark.parametrize(
    ("stdin", "stderr", "can_ask"),
    [
        (Terminal(), Terminal(), True),
        (Terminal(), io.StringIO(), False),
        (io.StringIO(), Terminal(), False),
        (None, Terminal(), False),
        (Terminal(), None, False),
    ],
)
def test_somebody_can_be_asked_where_both_streams_are_a_terminal(
    monkeypatch: pytest.MonkeyPatch, stdin: io.StringIO | None, stderr: io.StringIO | None, can_ask: bool
) -> None:
    """A stream that was closed before Python began is None."""
    monkeypatch.setattr(sys, "stdin", stdin)
    monkeypatch.setattr(sys, "stderr", stderr)
    assert command.at_terminal() is can_ask


def test_a_question_is_seen_before_its_answer_is_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A question ends no line, so that a stream of text holds it back until it is flushed."""
    screen = io.BytesIO()
    seen: list[str] = []

    class Desk:
        def readline(self) -> str:
            seen.append(screen.getvalue().decode())
            return "\n"

    monkeypatch.setattr(command, "at_terminal", lambda: True)
    monkeypatch.setattr(sys, "stdin", Desk())
    with io.TextIOWrapper(screen, encoding="utf-8", line_buffering=True) as stream:
        monkeypatch.setattr(sys, "stderr", stream)
        assert main(["begin", str(tmp_path / "new")]) == 0
        monkeypatch.undo()
    assert len(seen) == 8
    assert seen[0].endswith("The works and the engine [new]: ")
    assert seen[-1].endswith(
        "A block for each cylinder, or one block for all: separate or one-block [separate]: "
    )


def test_a_file_is_no_folder_to_begin_in(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "taken").write_text("a file", encoding="utf-8")
    assert main(["begin", str(tmp_path / "taken")]) == 2
    assert capsys.readouterr().err == f"speclint: {tmp_path / 'taken'}: this is no folder\n"
    _written(tmp_path / "outer", "speclint.toml", "")
    with pytest.raises(SettingsError, match="is there already; nothing was written"):
        write_repository(tmp_path / "outer" / "inner", Answers("Corrow"), installed_families())


def test_names_are_written_as_they_are_and_reviewers_explained_where_none_is_named() -> None:
    text = settings_text(Answers("Süd", pressure_codes=["Prüfung"]), ["liners"])
    assert 'name = "Süd"\n' in text
    assert 'pressure = ["Prüfung"]\n' in text
    assert '#[reviewers."J. Ostler"]' in text
    reviewer = NewReviewer("M. Coyle", families=["liners"])
    assert "J. Ostler" not in settings_text(Answers("Corrow", reviewers=[reviewer]), ["liners"])
    assert fault_of_reviewer(reviewer, [], ["liners"]) == ""


@pytest.mark.parametrize(("length", "line_count"), [(49, 1), (50, 2)])
def test_a_remark_is_a_hundred_letters_wide(length: int, line_count: int) -> None:
    """With comma and space between them 49 + 2 + 49 letters are 100, and 50 + 2 + 49 are 101."""
    one, other = "a" * length, "b" * 49
    text = settings_text(Answers("Corrow"), [one, other])
    assert (f"# {one}, {other}\n" in text) is (line_count == 1)


def test_the_files_for_git_name_their_places_from_its_top(begun: Path, tmp_path: Path) -> None:
    hook = (begun / "new design" / "hooks" / "pre-commit").read_text(encoding="utf-8")
    script = (begun / "new design" / "ci" / "check-change.sh").read_text(encoding="utf-8")
    assert "'new design/hooks'" in hook
    assert "'new design/ci/check-change.sh'" in script
    git(tmp_path, "init", "--quiet")
    assert main(["begin", str(tmp_path), "--cylinders", "1"]) == 0
    hook = (tmp_path / "hooks" / "pre-commit").read_text(encoding="utf-8")
    assert "core.hooksPath hooks" in hook
