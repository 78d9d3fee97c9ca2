"""A family that ends the program, prints, or raises what has no text: told under its name, and never a pass."""

from __future__ import annotations

import json
import os
import re
import sys
from collections.abc import Callable
from importlib.metadata import EntryPoint
from pathlib import Path
from typing import Annotated, Any, NoReturn

import pytest
from pydantic import BeforeValidator

from speclint import FigureMaker, ReportWriter, Rule, rules_in
from speclint.checking import check_component
from speclint.commands import main
from speclint.errors import FamilyError, in_words, replace
from speclint.families import Guard, find_families, load_families
from speclint.reports import hooks, review_page
from speclint.specs import NOT_STATED, Word
from speclint.testing import DesignFolder
from tests.families.test_refusing import gives, kind, point
from tests.tubes import FILES, Tube, entry_point, stress


class Mute(Exception):
    """An exception that has no text to show."""

    def __str__(self) -> str:
        raise ValueError("nor this one")


class Quits(Exception):
    """An exception whose text ends the program."""

    def __str__(self) -> str:
        sys.exit(0)


def mute(*_: object) -> NoReturn:
    raise Mute


def quits(*_: object) -> NoReturn:
    raise Quits


def leaves(*_: object) -> NoReturn:
    sys.exit(0)


def leaves_at_once(*_: object) -> NoReturn:
    os._exit(0)


#: Each way to end without having done the work, and what is said of it.
WAYS: list[tuple[Callable[..., Any], str]] = [
    (leaves, "it ended the program: SystemExit: 0"),
    (leaves_at_once, "it ended the program: SystemExit: os._exit(0)"),
    (mute, "Mute: its text cannot be read, since reading it raises ValueError"),
    (quits, "Quits: its text cannot be read, since reading it raises SystemExit"),
]
#: Where in the code of the family it was raised.
PLACE = re.compile(r" \(tests\.families\.test_mishaps, line [0-9]+\)$")
ways = pytest.mark.parametrize(("way", "said"), WAYS, ids=lambda one: getattr(one, "__name__", ""))


def rule_that(does: Callable[..., Any]) -> Rule:
    def function(*_: object) -> Any:
        """Made for one test."""
        return does()

    return replace(stress, name="tube.bad", function=function)


@pytest.fixture
def design(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A tube in order, in the current folder."""
    monkeypatch.chdir(tmp_path)
    return DesignFolder(tmp_path, load_families([entry_point("tubes")])).write(FILES)


def use(monkeypatch: pytest.MonkeyPatch, *points: EntryPoint) -> None:
    monkeypatch.setattr("speclint.families.loading.installed", lambda: list(points))


@pytest.mark.usefixtures("design")
@pytest.mark.parametrize("command", ["check", "gate"])
@ways
def test_a_rule_is_named_and_the_others_are_run(
    command: str,
    way: Callable[..., Any],
    said: str,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    use(monkeypatch, entry_point("tubes", rules=[stress, rule_that(way)]))
    assert main([command, "--as", "json"]) == 3
    told = capsys.readouterr()
    assert told.err == ""
    found = json.loads(told.out)
    if command == "check":
        states = {check["rule"]: (check["outcome"], check["could_not_run"]) for check in found["checks"]}
        outcome, told_of_it = states.pop("tube.bad")
        assert (outcome, PLACE.sub("", told_of_it)) == ("finding", said)
        assert PLACE.search(told_of_it)
        assert states == {"tube.stress": ("conforms", None)}
    else:
        assert not found["released"]
        assert f"tube tube.bad: could not be run (family tubes): {said}" in [
            PLACE.sub("", one["says"]) for one in found["reasons"]
        ]


@pytest.mark.usefixtures("design")
@pytest.mark.parametrize("command", ["check", "gate", "rules"])
@ways
def test_a_hook_is_named(
    command: str,
    way: Callable[..., Any],
    said: str,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    use(monkeypatch, entry_point("tubes"), point(speclint_materials=way))
    assert main([command]) == 3
    told = capsys.readouterr()
    assert f"family bad: speclint_materials raised {said}" in " ".join((told.out + told.err).split())
    assert "RELEASED" not in told.out


@pytest.mark.parametrize("does", ["import sys; sys.exit(0)", "import os; os._exit(0)"])
@pytest.mark.parametrize("late", [False, True], ids=["the family", "its rules"])
@pytest.mark.usefixtures("design")
def test_an_import_is_named(
    does: str, late: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    name = f"ends_{len(does)}_{late}"
    (tmp_path / f"{name}.py").write_text(does, encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    ends = (
        point(speclint_rules=gives(rules_in(name, "tube"))) if late else EntryPoint("bad", name, "speclint")
    )
    use(monkeypatch, entry_point("tubes"), ends)
    for command in ("check", "gate"):
        assert main([command]) == 3
        told = capsys.readouterr()
        assert "family bad cannot be imported: it ended the program: " in " ".join(
            (told.out + told.err).split()
        )


@ways
def test_a_report_and_a_drawing_are_named(way: Callable[..., Any], said: str, design: DesignFolder) -> None:
    bad = point(
        speclint_reports=gives(ReportWriter("mine", "", way)),
        speclint_drawings=gives(FigureMaker("mine", "", way)),
    )
    design.loaded = load_families([entry_point("tubes"), bad], built_in=hooks)
    assessment = design.assess()
    for work, what in ((design.loaded.writers["mine"].write, "report"), (review_page, "drawing")):
        with pytest.raises(FamilyError) as refused:
            work(assessment)
        assert str(refused.value) == f"family bad: the {what} mine raised {said}"
        assert refused.value.exit_code == 3


@pytest.mark.parametrize("does", [leaves, leaves_at_once])
def test_a_kind_whose_own_code_ends_the_program(
    does: Callable[..., Any],
    design: DesignFolder,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    """A kind may read a key by a function of its own; the module that ended the program is named."""

    read = Annotated[Word[str], BeforeValidator(lambda value: does(value))]
    gauge = kind(kind="gauge", called="gauge", __annotations__={"range": read}, range=NOT_STATED)
    use(monkeypatch, entry_point("tubes"), point(speclint_kinds=gives(gauge)))
    design.write({"gauge.toml": 'kind = "gauge"\nrange = "0 to 20 bar"\n'})
    for command in ("check", "gate"):
        assert main([command]) == 3
        told = capsys.readouterr()
        assert told.out == ""
        assert told.err.startswith(
            f"speclint: code of the module {__name__} did not finish its work: it ended"
        )


def test_an_interrupt_is_not_taken_for_a_fault(design: DesignFolder) -> None:
    def interrupted(*_: object) -> NoReturn:
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        find_families([point(speclint_rules=interrupted)])
    assessment = design.assess()
    part = assessment.design.specs["tube"] if assessment.design else None
    assert isinstance(part, Tube)
    assert assessment.context is not None
    with pytest.raises(KeyboardInterrupt):
        check_component(part, [rule_that(interrupted)], assessment.context)


@pytest.mark.usefixtures("design")
def test_what_a_family_prints_is_told_under_its_name_and_spoils_nothing(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def prints(*_: object) -> Any:
        print("here")
        print("no line\x1b[2J end", end="")
        raise ValueError("after printing")

    use(monkeypatch, entry_point("tubes", rules=[stress, rule_that(prints)]))
    assert main(["check", "--as", "json"]) == 3
    told = capsys.readouterr()
    assert json.loads(told.out)["exit"] == 3
    assert told.err.splitlines() == [
        "speclint: the family tubes printed: here",
        "speclint: the family tubes printed: no line\\x1b[2J end",
    ]


def test_a_flood_of_lines_is_cut(capsys: pytest.CaptureFixture[str]) -> None:
    with Guard("floods"):
        for number in range(500):
            print(number // 2)
    told = capsys.readouterr()
    assert told.out == ""
    assert len(told.err.splitlines()) == 11
    assert told.err.endswith("10; what else it prints is not shown\n")


def test_nothing_is_left_of_the_guard() -> None:
    out, ended = sys.stdout, os._exit
    with Guard("tubes"):
        sys.stdout = None
    assert (sys.stdout, os._exit) == (out, ended)


def test_an_error_is_told_in_one_line() -> None:
    assert in_words(ValueError("one\n  two")) == "ValueError: one two"


def test_the_last_line_that_is_shown_of_a_flood_alone_says_that_more_is_not(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """Ten different lines are shown as they are, the eleventh with what is said of the rest."""
    with Guard("of ten lines"):
        print(*range(10), sep="\n")
    assert capsys.readouterr().err.count("not shown") == 0
    with Guard("of twelve lines"):
        print(*range(12), sep="\n")
    told = capsys.readouterr().err.splitlines()
    assert [line.endswith("; what else it prints is not shown") for line in told] == [False] * 10 + [True]


def test_a_line_that_can_be_shown_is_shown_as_it_was_printed(capsys: pytest.CaptureFixture[str]) -> None:
    with Guard("of umlauts"):
        print("Kesselüberdruck 12 °C")
        assert sys.stdout.writable()
    assert capsys.readouterr().err == "speclint: the family of umlauts printed: Kesselüberdruck 12 °C\n"
