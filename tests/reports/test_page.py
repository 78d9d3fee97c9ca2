"""Pages fit their width, and on a terminal ink only adds to what the words say."""

from __future__ import annotations

import io
import re

import pytest

from speclint.families import Loaded
from speclint.reports import page as pages, terminal_page as terminal
from speclint.reports.page import Page, put, width_of
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES


class Terminal(io.StringIO):
    """A stream that says it is a terminal."""

    def isatty(self) -> bool:
        return True


def a_page(workshop: DesignFolder, width: int) -> Page:
    workshop.loaded = tubes.tubes()
    workshop.write(FILES).replace("tube.toml", "30 bar", "45 bar").replace("tube.toml", "hoops = 4\n", "")
    workshop.write({"bad.toml": 'kind = "tube"\nbore = "5,5 mm"\n'})
    return terminal.write(workshop.assess(), width)


@pytest.mark.parametrize("width", [44, 60, 80, 100, 160])
def test_the_report_fits_every_terminal(workshop: DesignFolder, width: int) -> None:
    lines = a_page(workshop, width).text().splitlines()
    longest_word = max(len(word) for line in lines for word in line.split() if not set(word) <= {"═", "─"})
    assert max(len(line) for line in lines) <= max(width, longest_word + 24)


@pytest.mark.parametrize("no_color", [None, ""])  # set to nothing it asks for nothing
def test_ink_adds_nothing_to_the_words(
    workshop: DesignFolder, monkeypatch: pytest.MonkeyPatch, no_color: str | None
) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    if no_color is not None:
        monkeypatch.setenv("NO_COLOR", no_color)
    monkeypatch.setenv("TERM", "xterm-256color")
    page = a_page(workshop, 100)
    inked = Terminal()
    put(page, inked)
    assert "\x1b[" in inked.getvalue()
    bare = re.sub(r"\x1b\[[0-9;]*m", "", inked.getvalue())
    assert [line.rstrip() for line in bare.splitlines()] == page.text().splitlines()


@pytest.mark.parametrize(("name", "value"), [("NO_COLOR", "1"), ("TERM", "dumb")])
def test_ink_is_left_out_where_it_is_not_wanted(
    workshop: DesignFolder, monkeypatch: pytest.MonkeyPatch, name: str, value: str
) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv(name, value)
    stream = Terminal()
    put(a_page(workshop, 80), stream)
    assert "\x1b" not in stream.getvalue()


def test_width_is_that_of_the_terminal_or_fixed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("COLUMNS", raising=False)
    assert width_of(io.StringIO()) == 100
    for odd in ("wide", "-3", "", "0"):
        monkeypatch.setenv("COLUMNS", odd)
        assert width_of(io.StringIO()) == 100
    monkeypatch.setenv("COLUMNS", "72")
    assert width_of(Terminal()) == width_of(io.StringIO()) == 72
    monkeypatch.setenv("COLUMNS", "10")
    assert width_of(Terminal()) == pages._NARROWEST


def test_grades_are_words_not_only_ink(workshop: DesignFolder) -> None:
    text = a_page(workshop, 100).text()
    assert "HOLD  tube.stress" in text
    assert "NOT COMPLETE" in text
    assert isinstance(workshop.loaded, Loaded)
