"""What a helper process does, tried in this process: its beginning, its work, and what it says through its pipes."""

from __future__ import annotations

import io
import os
import pickle
import sys
import threading
import time
from collections.abc import Iterator, Sequence
from functools import partial
from pathlib import Path
from typing import Any

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Rule, Sheet, rule
from speclint.checking import Assessment, Processes, assess, helper, helper_process, time_limit
from speclint.checking.helper import Helper, HelperLost, copy_at_work, said_of
from speclint.checking.helper_process import Beginning, begin, serve, serve_pipes, unpacked
from speclint.checking.packing import packed
from speclint.errors import FamilyError, replace
from speclint.families import Loaded
from speclint.rules import Context
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES, RULES, Tube

REVIEW: dict[str, Any] = {"cites": [FIRST_PRINCIPLES], "why": "for tests", "leaves_out": "nothing"}


@rule("tube.reviewed", title="t", on=Tube, grade=Grade.QUERY, reviews=True, **REVIEW)
def reviewed(_tube: Tube, sheet: Sheet) -> Judgement:
    """How many other checks there are of it."""
    return sheet.states(len(sheet.outcomes()) == len(RULES), f"{len(sheet.outcomes())} checks are seen")


class Asked(Processes):
    """Keeps what helpers would be told."""

    told: Beginning

    def check(self, rules: Sequence[Rule], context: Context, given: object, parts: Sequence[str]) -> Any:
        made = super().check(rules, context, given, parts)
        self.told = self._told(context, given)
        return made


def begun(shop: DesignFolder, rules: Sequence[Rule] | None = None) -> tuple[Beginning, Assessment]:
    with Asked(0) as processes:
        found = assess([shop.root], shop.loaded, rules, processes=processes)
        return processes.told, found


@pytest.fixture(autouse=True)
def _alone(monkeypatch: pytest.MonkeyPatch) -> None:
    """What this process is as a helper is forgotten after each test."""
    monkeypatch.setattr(helper_process, "_helper", None)
    monkeypatch.setattr(time_limit, "_CLOCK", time_limit._CLOCK)


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A tube that a helper would know, with a finding that has remedies."""
    loaded = tubes.tubes(*RULES, reviewed)
    monkeypatch.setattr(helper_process, "find_families", lambda: loaded)
    files = {**FILES, "tube.toml": tubes.TUBE.replace("30 bar", "45 bar")}
    return DesignFolder(tmp_path, loaded).write(files)


def rules_of(loaded: Loaded) -> dict[str, Rule]:
    return {one.name: one for one in loaded.rules}


def test_a_helper_checks_a_component_as_this_process_does(shop: DesignFolder) -> None:
    told, found = begun(shop)
    begin(told)
    made = unpacked(helper_process.checked(packed("tube")), rules_of(shop.loaded))
    assert made == [one for one in found.checks if one.component == "tube"]
    assert len(made) == len(RULES) + 1
    assert {one.outcome for one in made} >= {"conforms", "finding"}


def test_a_helper_makes_one_check_with_those_before_it_in_sight(shop: DesignFolder) -> None:
    told, found = begun(shop)
    begin(told)
    before = [one for one in found.checks if one.component == "tube" and not one.rule.reviews]
    made = helper_process.checked_by(packed(("tube", "tube.reviewed", before)))
    (wanted,) = (one for one in found.checks if one.rule.reviews)
    assert unpacked(made, rules_of(shop.loaded)) == wanted
    assert wanted.outcome == "conforms"
    less = unpacked(
        helper_process.checked_by(packed(("tube", "tube.reviewed", before[1:]))), rules_of(shop.loaded)
    )
    assert less.outcome == "finding"


def test_a_helper_finds_the_remedies_of_a_finding(shop: DesignFolder) -> None:
    told, found = begun(shop)
    begin(told)
    (stress,) = (one for one in found.checks if one.rule.name == "tube.stress")
    own = [one for one in found.checks if one.component == "tube"]
    made, consulted = unpacked(
        helper_process.remedied(packed((stress, found.checks, own))), rules_of(shop.loaded)
    )
    assert made == found.search(stress)
    assert made.remedies
    assert "tube" in consulted.ids


def test_a_helper_that_is_given_work_before_it_begins_says_so() -> None:
    with pytest.raises(RuntimeError, match=r"^a helper was given work before it was set up$"):
        helper_process.checked(b"")


def test_a_helper_that_finds_other_rules_refuses(shop: DesignFolder, monkeypatch: pytest.MonkeyPatch) -> None:
    told, _ = begun(shop)
    for loaded in (tubes.tubes(*RULES), tubes.tubes(*RULES, reviewed, tubes.raises)):
        monkeypatch.setattr(helper_process, "find_families", lambda loaded=loaded: loaded)
        with pytest.raises(FamilyError, match="found other rules: a family was installed or removed"):
            begin(told)


def test_a_helper_for_some_rules_has_those_and_keeps_no_outcomes(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where all rules are run it asks for those of the kinds that are there."""
    begin(begun(shop, [tubes.stress])[0])
    assert helper_process._helper is not None
    assert set(helper_process._helper.rules) == {"tube.stress"}
    assert helper_process._helper.context.outcomes is None
    told, _ = begun(shop)
    asked: list[object] = []
    plain = Loaded.rules_for

    def for_kinds(self: Loaded, kinds: Any) -> Any:
        asked.append(kinds)
        return plain(self, kinds)

    monkeypatch.setattr(Loaded, "rules_for", for_kinds)
    begin(told)
    assert asked == [{"tube", "rack"}]
    helper: Any = helper_process._helper
    assert helper.context.outcomes == {}
    assert set(helper.rules) == {one.name for one in (*RULES, reviewed)}


def test_a_helper_leaves_out_the_families_that_the_design_leaves_out(shop: DesignFolder) -> None:
    told, _ = begun(shop, [tubes.stress])
    with pytest.raises(FamilyError, match="found other rules"):
        begin(replace(told, left_out=("tubes",)))


class Said(io.BytesIO):
    """What is said; nobody listens any longer once ``left`` is set."""

    left = False

    def write(self, what: Any, /) -> int:
        if self.left:
            raise BrokenPipeError
        return super().write(what)

    def told(self) -> Iterator[tuple[str, Any]]:
        self.seek(0)
        while self.tell() < len(self.getvalue()):
            yield pickle.load(self)


SAID = Said()


@pytest.fixture
def said(monkeypatch: pytest.MonkeyPatch) -> Said:
    monkeypatch.setattr(sys.modules[__name__], "SAID", found := Said())
    return found


@pytest.fixture
def ended(said: Said, monkeypatch: pytest.MonkeyPatch) -> Iterator[list[int]]:
    """The codes with which the process would have ended, in the place of its end; its threads end with the test."""
    codes: list[int] = []

    def end(code: int) -> None:
        codes.append(code)
        raise SystemExit(code)

    monkeypatch.setattr(helper_process, "end_process", end)
    monkeypatch.setattr(helper_process, "_SAYS_SO_EVERY", 0.02)
    before = set(threading.enumerate())
    yield codes
    said.left = True
    for thread in set(threading.enumerate()) - before:
        thread.join(10)


def _twice(number: int) -> int:
    return 2 * number


def _slowly(number: int) -> int:
    time.sleep(0.2)
    return number


def _leave(_: object) -> None:
    SAID.left = True


def _fail(_: object) -> None:
    raise FamilyError("family x: no")


def given(*pieces: object) -> io.BytesIO:
    return io.BytesIO(b"".join(map(pickle.dumps, pieces)))


#: A thread ends here by SystemExit, where a helper would end as a whole.
_ENDS = pytest.mark.filterwarnings("ignore::pytest.PytestUnhandledThreadExceptionWarning")


@_ENDS
def test_a_helper_works_piece_by_piece_until_nobody_listens(
    shop: DesignFolder, said: Said, ended: list[int]
) -> None:
    told, _ = begun(shop)
    with pytest.raises(SystemExit):
        serve(given(told, (_twice, 4), (_fail, 0), (_twice, 5), (_leave, 0), (_twice, 6)), said)
    answers = [one for one in said.told() if one[0] != "alive"]
    assert [one[0] for one in answers] == ["ready", "done", "failed", "done"]
    assert (answers[1][1], answers[3][1]) == (8, 10)
    assert str(answers[2][1]) == "family x: no"
    assert set(ended) == {0}
    assert time_limit._CLOCK.on_stuck("a rule") is None  # of a helper the other process says so


def test_a_helper_that_cannot_begin_says_why_and_does_nothing(said: Said) -> None:
    serve(given("no beginning", (_twice, 4)), said)
    (answer,) = said.told()
    assert answer[0] == "failed"
    assert "AttributeError" in answer[1]


@_ENDS
def test_a_helper_says_now_and_then_that_it_is_alive(said: Said, ended: list[int]) -> None:
    with pytest.raises(SystemExit):
        helper_process._Service(said).work_at(given((_slowly, 3), (_leave, 0)))
    words = [one[0] for one in said.told()]
    assert words.count("alive") >= 2
    assert words[-1] == "done"
    assert ("alive", None) in list(said.told())
    assert 0 in ended


def test_a_helper_ends_when_nothing_more_can_come(said: Said, ended: list[int]) -> None:
    """The thread that takes things in ends the process, whatever comes that is no piece of work."""
    service = helper_process._Service(said)
    for taken in (given(), io.BytesIO(b"no pickle")):
        with pytest.raises(SystemExit):
            service._take(taken)
    assert ended == [0, 0]


def test_the_standard_streams_carry_the_work_and_nothing_that_is_printed(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    streams: list[Any] = []
    monkeypatch.setattr(helper_process, "serve", lambda *both: streams.extend(both))
    monkeypatch.setattr(sys, "stdout", sys.stdout)
    kept = [os.dup(number) for number in (0, 1)]
    (work, gives), (hears, answers) = os.pipe(), os.pipe()
    try:
        os.dup2(work, 0)
        os.dup2(answers, 1)
        serve_pipes()
        printed_to = os.fstat(1)
        nothing = os.read(0, 1)
        assert sys.stdout is sys.stderr
    finally:
        for number, stream in enumerate(kept):
            os.dup2(stream, number)
            os.close(stream)
        os.close(work)
        os.close(answers)
    taken, said = streams
    os.write(gives, b"a piece")
    os.close(gives)
    assert taken.read() == b"a piece"
    said.write(b"done")
    said.close()
    assert os.read(hears, 10) == b"done"
    os.close(hears)
    taken.close()
    assert nothing == b""
    assert (printed_to.st_dev, printed_to.st_ino) == (os.fstat(2).st_dev, os.fstat(2).st_ino)


def test_what_is_said_of_a_piece_of_work() -> None:
    assert said_of(partial(_twice, 3)) == ("done", 6)
    word, problem = said_of(partial(_fail, 0))
    assert (word, str(problem)) == ("failed", "family x: no")
    assert isinstance(problem, FamilyError)
    assert said_of(partial(int, "x")) == (
        "failed",
        "ValueError: invalid literal for int() with base 10: 'x'",
    )


class Process:
    """A process that notes what is done to it."""

    def __init__(self) -> None:
        self.done: list[str] = []

    def kill(self) -> None:
        self.done.append("killed")

    def wait(self) -> None:
        self.done.append("waited for")


def test_a_helper_that_nobody_hears_any_more_is_lost() -> None:
    process, taken = Process(), io.BytesIO()
    one = Helper(process, taken, given(("alive", None), ("done", 3)))
    before, one.heard = one.heard, 0.0
    one.give("work")
    assert one.heard >= before
    assert pickle.loads(taken.getvalue()) == "work"
    one.heard = 0.0
    assert one.hear() == ("done", 3)  # that it is alive is passed over
    assert one.heard >= before
    with pytest.raises(HelperLost):
        one.hear()
    with pytest.raises(HelperLost):
        one.give(lambda: None)  # which cannot be passed between processes
    one.end()
    assert process.done == ["killed", "waited for"]
    assert taken.closed
    with pytest.raises(HelperLost):
        one.give("more")
    one.forget()
    assert one._said.closed


def test_a_frozen_program_starts_no_interpreter(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "frozen", True, raising=False)
    with pytest.raises(OSError, match="this Python cannot be started again"):
        helper.new_interpreter()


def test_a_system_without_a_path_to_python_starts_no_interpreter(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "executable", "")
    with pytest.raises(OSError, match="this Python cannot be started again"):
        helper.new_interpreter()


@pytest.mark.skipif(not hasattr(os, "fork"), reason="this system cannot copy a process")
def test_a_copy_holds_no_pipe_of_the_others_open() -> None:
    """The first is at work that never ends; once its own pipes are closed here, it hears that nobody is there."""
    first = copy_at_work(partial(time.sleep, 60), [])
    second = copy_at_work(partial(_open_files, first), [first])
    try:
        word, open_ = second.hear()
        assert (word, open_) == ("done", [False, False])
    finally:
        for one in (first, second):
            one.end()
            one.forget()


def _open_files(other: Helper) -> list[bool]:
    """Whether this process holds the ends of the pipes of another helper."""
    found = []
    for file in (other._given, other._said):
        try:
            os.fstat(file.fileno())
            found.append(True)
        except OSError:
            found.append(False)
    return found


def test_a_copy_prints_among_the_errors_and_leaves_interrupts_to_the_process_it_comes_from(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    import signal

    done: list[tuple[object, ...]] = []
    monkeypatch.setattr(signal, "signal", lambda *what: done.append(what))
    monkeypatch.setattr(os, "dup2", lambda *files: done.append(files))
    helper._apart()
    assert done == [(signal.SIGINT, signal.SIG_IGN), (2, 1)]
