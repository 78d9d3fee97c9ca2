"""Progress goes to a terminal beside what a command prints, and never into a pipe."""

from __future__ import annotations

import io

import pytest

from speclint.commands.progress import progress
from tests.reports.test_page import Terminal


def work(monkeypatch: pytest.MonkeyPatch, stream: io.StringIO) -> str:
    monkeypatch.setattr("sys.stderr", stream)
    with progress("checking") as told:
        told("sheets of liner-left [red]")
    return stream.getvalue()


def test_nothing_goes_into_a_pipe(monkeypatch: pytest.MonkeyPatch) -> None:
    assert work(monkeypatch, io.StringIO()) == ""


def test_nothing_goes_to_a_terminal_that_cannot_take_it_back(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "dumb")
    assert work(monkeypatch, Terminal()) == ""


def test_a_terminal_shows_what_goes_on_as_plain_text(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm-256color")
    assert "sheets of liner-left [red]" in work(monkeypatch, Terminal())
