"""The summary for a change request, read again with a Markdown parser: what was meant as text is text."""

from __future__ import annotations

import html
import re
from pathlib import Path

import pytest
from hypothesis import given, strategies as st
from markdown_it import MarkdownIt

from speclint.reports import markdown_report as markdown
from speclint.reports.markdown_text import marked
from speclint.reports.printable import visible
from speclint.testing import DesignFolder
from tests import tubes
from tests.register import office as offices
from tests.register.office import Office
from tests.reports.hostile import TEXTS, quoted
from tests.reports.test_sarif import every_outcome
from tests.tubes import FILES

#: CommonMark with HTML let through, tables, struck-out text and bare addresses made links: as forges read it.
READER = MarkdownIt("commonmark", {"html": True}).enable(["table", "strikethrough"])
WORDS = re.compile(r"<[^>]+>")


def text_of(page: str) -> str:
    """The text of a page of HTML."""
    return html.unescape(WORDS.sub("", page)).strip()


@given(st.text(st.characters(codec="utf-8"), min_size=1))
def test_marked_text_reads_as_itself(text: str) -> None:
    page = READER.render(f"x {marked(text)} x")
    assert " ".join(text_of(page).split()) == " ".join(f"x {visible(text).strip()} x".split())
    assert WORDS.findall(page) == ["<p>", "</p>"]


@given(st.text("`*_|<>[]()#@:!~-+.1& w", min_size=1))
def test_marked_text_reads_as_itself_at_the_beginning_of_a_line(text: str) -> None:
    shown = " ".join(text.split())
    page = READER.render(marked(text))
    assert " ".join(text_of(page).split()) == shown
    assert set(WORDS.findall(page)) <= {"<p>", "</p>"}


@pytest.mark.parametrize("name", TEXTS)
def test_hostile_text_stays_in_its_cell(workshop: DesignFolder, name: str) -> None:
    workshop.loaded = tubes.tubes()
    workshop.write(FILES).replace("tube.toml", 'ends = "open"', f"ends = {quoted(TEXTS[name])}")
    written = markdown.write(workshop.assess())
    page = READER.render(written)
    tags = {tag.split()[0].strip("</>") for tag in WORDS.findall(page)}
    assert tags <= {"h2", "h3", "p", "em", "strong", "table", "thead", "tbody", "tr", "th", "td", "br"}
    assert "@someone" not in written
    assert "https://" not in written
    assert all(letter == "\n" or letter.isprintable() for letter in written)


def test_it_says_what_stands_in_the_way_the_gravest_first(workshop: DesignFolder) -> None:
    text = text_of(READER.render(markdown.write(every_outcome(workshop))))
    assert text.startswith("NOT TO BE RELIED ON: a rule could not be run.")
    for words in (
        "1 line could not be read",
        "mean hoop stress of a tube 113.1 MPa > 100 MPa allowable stress",
        "1.13",
        "tube.toml:4 bore",
        "2 safety checks not assessed, which count as holds",
        "bore is not stated in bare.toml",
        "the invented pressure code; the invented railway code; and a competent person",
        "they do not replace one",
    ):
        assert words in text, words
    assert text.index("HOLD\n") < text.index("query\n") < text.index("observation\n")


def test_a_sound_design_has_no_table(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    workshop.write(FILES)
    written = markdown.write(workshop.assess())
    assert written.startswith(
        "## IN ORDER as far as these rules go.\n\nNo reason to withhold release. 5 checks conform."
    )
    assert "|" not in written


def test_a_long_table_is_cut_and_says_so(workshop: DesignFolder, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(markdown, "ROWS", 2)
    written = markdown.write(every_outcome(workshop))
    assert re.search(r"… and \d+ more: run `speclint check`\.", written)


def test_a_concession_stands_beside_its_finding(tmp_path: Path) -> None:
    office = Office(DesignFolder(tmp_path, tubes.tubes()).write(offices.FILES, settings=offices.SETTINGS))
    assert "concession" not in markdown.write(office.shop.assess())
    office.concede()
    assert "concession C-001 valid" in markdown.write(office.shop.assess())
