"""Progress says how many parts are done on a terminal, and nothing anywhere else."""

from __future__ import annotations

import io
import sys

import pytest

from speclint.checking import Processes
from speclint.commands.command_line import main
from speclint.commands.progress import progress
from speclint.testing import DesignFolder
from tests.register.office import git
from tests.reports.test_page import Terminal


def lines(stream: io.StringIO) -> list[str]:
    return [one.rstrip() for one in stream.getvalue().split("\r") if one.strip()]


def test_a_terminal_is_told_the_stage_and_the_counts(monkeypatch: pytest.MonkeyPatch) -> None:
    stream = Terminal()
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(sys, "stderr", stream)
    with progress("checking") as shown, Processes(helpers=0, on_part=shown.part) as processes:
        assert processes.spread(abs, [-1, 2]) == [1, 2]
        shown("looking for remedies")
    assert lines(stream) == ["checking", "checking: 1 of 2", "checking: 2 of 2", "looking for remedies"]
    assert stream.getvalue().endswith("\r")
    assert stream.getvalue().rsplit("\r", 2)[1].strip() == ""


def test_a_shorter_line_covers_the_longer_one_before_it(monkeypatch: pytest.MonkeyPatch) -> None:
    stream = Terminal()
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(sys, "stderr", stream)
    with progress("a long stage") as shown:
        shown("short")
    assert "\rshort       \r" in stream.getvalue()


@pytest.mark.parametrize(
    ("stream", "term"), [(io.StringIO(), "xterm"), (Terminal(), "dumb"), (None, "xterm")]
)
def test_nothing_is_told_elsewhere(
    monkeypatch: pytest.MonkeyPatch, stream: io.StringIO | None, term: str
) -> None:
    monkeypatch.setenv("TERM", term)
    monkeypatch.setattr(sys, "stderr", stream)
    with progress("checking") as shown:
        shown.part(1, 2)
    assert stream is None or not stream.getvalue()


@pytest.mark.parametrize(
    "words", [("check", "--afresh"), ("review", "--to", "pack", "--afresh")], ids=" ".join
)
def test_what_comes_after_the_checks_is_told_as_a_stage_of_its_own(
    words: tuple[str, ...], workshop: DesignFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = workshop.write({"lid.toml": 'kind = "chamber-cover"\n'}).root
    stream = Terminal()
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.chdir(root)
    monkeypatch.setattr(sys, "stderr", stream)
    main([*words])
    told = lines(stream)
    assert told.index("looking for remedies") > told.index("checking: 1 of 1")


@pytest.mark.parametrize(
    "words", [("check", "--afresh"), ("gate",), ("check", "--staged", "--afresh")], ids=" ".join
)
def test_each_command_that_takes_long_counts_the_parts(
    words: tuple[str, ...], workshop: DesignFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = workshop.write({"lid.toml": 'kind = "chamber-cover"\n', "bar.toml": 'kind = "slide-bar"\n'}).root
    for command in (("init", "--quiet"), ("add", ".")):
        git(root, *command)
    stream = Terminal()
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(sys, "stderr", stream)
    main([*words, str(root)])
    assert {"checking: 1 of 2", "checking: 2 of 2"} <= set(lines(stream))


def test_the_line_stands_until_the_next_and_is_seen_at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    seen: list[str] = []

    class Watched(Terminal):
        def flush(self) -> None:
            seen.append(self.getvalue())

    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(sys, "stderr", Watched())
    with progress("checking"):
        assert seen == ["\rchecking"]
    assert seen == ["\rchecking", "\rchecking\r        \r"]
