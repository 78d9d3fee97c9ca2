"""Pages fit their width, and on a terminal ink only adds to what the words say."""

from __future__ import annotations

import io
import os
import re
import shutil
import sys

import pytest

from speclint.families import Loaded
from speclint.reports import terminal as terminals, terminal_page as terminal
from speclint.reports.page import Page, put
from speclint.reports.terminal import width_of
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
    assert width_of(Terminal()) == terminals.NARROWEST


def test_grades_are_words_not_only_ink(workshop: DesignFolder) -> None:
    text = a_page(workshop, 100).text()
    assert "HOLD  tube.stress" in text
    assert "NOT COMPLETE" in text
    assert isinstance(workshop.loaded, Loaded)


# The lines of a page, by hand


def made(width: int = 40) -> Page:
    return Page(width)


def test_parts_of_a_line_keep_their_ink_and_gaps_are_single() -> None:
    page = made()
    page.gap()
    assert page.lines == []
    page.gap_always()
    assert page.lines == [()]
    page.line("plain", ("strong\x1b", "strong"))
    page.gap()
    page.gap()
    page.rule("=")
    assert page.lines[1:] == [
        (("plain", ""), ("strong⟨U+001B⟩", "strong")),
        (),
        (("=" * 40, "faint"),),
    ]
    assert page.text() == "\nplainstrong⟨U+001B⟩\n\n" + "=" * 40 + "\n"


@pytest.mark.parametrize(
    ("left", "right", "lines"),
    [
        ("a" * 30, "b" * 8, ["a" * 30 + "  " + "b" * 8]),  # two spaces are enough
        ("a" * 31, "b" * 8, ["a" * 31, " " * 32 + "b" * 8]),  # one is not
        ("a" * 35, "[1234", ["a" * 35, "  [1234"]),  # a short mark follows its line
        ("a" * 38, "[12345", ["a" * 38, " " * 34 + "[12345"]),
        ("a" * 5, "b" * 40, ["a" * 5, "b" * 40]),
        ("a" * 5, "b" * 41, ["a" * 5, "b" * 41]),
    ],
)
def test_something_stands_at_each_end_of_a_line_or_on_two(left: str, right: str, lines: list[str]) -> None:
    page = made()
    page.ends(left, right, "strong")
    assert page.text().splitlines() == lines
    inks = [ink for line in page.lines for _, ink in line]
    assert inks[0] == "strong"
    assert ("faint" in inks) == (len(right) > 5)


def test_a_paragraph_hangs_by_its_indent() -> None:
    page = made(30)
    page.wrapped("one two three four five six seven", indent=2, hanging=3, emphasis="faint")
    assert page.text() == "  one two three four five six\n     seven\n"
    assert {ink for line in page.lines for _, ink in line} == {"faint"}
    page = made(5)
    page.wrapped("a-long-word-that-is-left-whole and more", indent=4)
    assert page.text() == "    a-long-word-that-is-left-whole\n    and more\n", "20 letters at the least"


def test_an_entry_has_its_label_in_a_column() -> None:
    page = made(60)
    page.entry("label", "word " * 12, emphasis="strong")
    assert (
        page.text() == " " * 8 + "label      " + "word " * 7 + "word\n" + " " * 19 + "word word word word\n"
    )
    assert page.lines[0][0] == (" " * 8 + "label      ", "faint")
    assert [line[-1][1] for line in page.lines] == ["strong", "strong"]
    page = made(60)
    page.entry("a label that is long", "text", indent=2, column=8)
    page.entry("", "text", indent=2, column=8)
    page.entry("none", "", indent=2, column=8)
    page.entry("12345678", "text", indent=2, column=8)
    assert page.text() == ("  a label that is long text\n" + " " * 10 + "text\n  none\n  12345678 text\n")


@pytest.mark.parametrize(("width", "head"), [(59, 19), (58, 11)])
def test_on_a_narrow_page_the_column_of_labels_is_narrow(width: int, head: int) -> None:
    """40 columns must be left beside the 8 of the indent and the 11 of the label: else 2 and 9 are taken."""
    page = made(width)
    page.entry("label", "text")
    assert page.text().index("text") == head
    page = made(40)
    page.entry("label", "text", indent=1, column=7)
    assert page.text().index("text") == 8


def test_the_width_of_a_terminal_is_never_less_than_forty(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("COLUMNS", raising=False)
    sizes: list[object] = []

    def size(fallback: tuple[int, int]) -> os.terminal_size:
        sizes.append(fallback)
        return os.terminal_size((120, 24))

    monkeypatch.setattr(shutil, "get_terminal_size", size)
    assert width_of(Terminal()) == 120
    assert sizes == [(100, 24)]
    assert width_of(None) == 100
    monkeypatch.setenv("COLUMNS", "39")
    assert width_of(io.StringIO()) == 40


def test_streams_take_every_character(monkeypatch: pytest.MonkeyPatch) -> None:
    """One in another encoding is changed; one that has utf-8 under any of its names, or cannot, is left alone."""

    class Stream:
        def __init__(self, encoding: str | None) -> None:
            self.encoding, self.changed = encoding, ""

        def reconfigure(self, encoding: str) -> None:
            self.changed = encoding

    for encoding, changed in (("cp1252", "utf-8"), ("UTF-8", ""), ("utf8", ""), (None, "utf-8")):
        streams = Stream(encoding), Stream(encoding)
        monkeypatch.setattr(sys, "stdout", streams[0])
        monkeypatch.setattr(sys, "stderr", streams[1])
        terminals.speak_utf8()
        assert [one.changed for one in streams] == [changed, changed]
    monkeypatch.setattr(sys, "stdout", None)
    monkeypatch.setattr(sys, "stderr", io.StringIO())
    terminals.speak_utf8()
