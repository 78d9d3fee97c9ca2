"""Text from specs steers nothing: each character without a shape is shown by its code."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given, strategies as st

from speclint.reports import sheet_page as working, terminal_page as terminal
from speclint.reports.page import Page
from speclint.reports.printable import visible
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.hostile import TEXTS, quoted
from tests.tubes import FILES


@given(st.text())
def test_nothing_invisible_is_left(text: str) -> None:
    hidden = {"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"}
    assert all(unicodedata.category(letter) not in hidden for letter in visible(text))


@given(st.text(st.characters(categories=["L", "N", "P", "S", "Zs"])))
def test_what_can_be_seen_is_left_alone(text: str) -> None:
    assert visible(text) == text


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("\x1b]0;title\x07", "⟨U+001B⟩]0;title⟨U+0007⟩"),
        ("one\r\ntwo", "one  two"),
        ("left\u2067right", "left⟨U+2067⟩right"),
        ("zero\u200bwidth", "zero⟨U+200B⟩width"),
        ("σ ≤ 100 N/mm², Ø 500", "σ ≤ 100 N/mm², Ø 500"),
    ],
)
def test_codes_stand_where_nothing_would_show(text: str, shown: str) -> None:
    assert visible(text) == shown


@pytest.mark.parametrize("name", TEXTS)
def test_a_terminal_is_never_steered(workshop: DesignFolder, name: str) -> None:
    workshop.loaded = tubes.tubes()
    text = quoted(TEXTS[name])
    workshop.write(FILES).replace("tube.toml", 'ends = "open"', f"drawing = {text}\nends = {text}")
    workshop.write({"second.toml": tubes.TUBE.replace("ends", f"title = {text}\nends").replace("4", "3")})
    assessment = workshop.assess()
    for page in (
        terminal.write(assessment, 80),
        working.write(assessment, assessment.checks, 80),
        _line(TEXTS[name]),
    ):
        assert all(letter == "\n" or letter.isprintable() for letter in page.text())


def _line(text: str) -> Page:
    page = Page(80)
    page.line((text, "strong"))
    page.ends(text, text)
    page.entry(text, text)
    return page
