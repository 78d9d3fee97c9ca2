"""What is switched on or off by itself: what reports of speclint can do, and how their text and pages are written."""

from __future__ import annotations

import gzip
import json
import math
from types import MappingProxyType, SimpleNamespace
from typing import Any

import pytest

from speclint.reports import staged_findings, terminal_page
from speclint.reports.hooks import speclint_drawings, speclint_reports
from speclint.reports.pack.packed_sheets import as_letters, packed
from speclint.reports.pack.page import sheets_page
from speclint.reports.pack.parts import Part
from speclint.reports.pack.policy import policy_of
from speclint.reports.pack.printed import Printed
from speclint.reports.pack.templating import environment
from speclint.reports.page import Page
from speclint.reports.printable import json_text
from speclint.reports.reference.entries import Entry, index_script
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.letters import DIGITS, from_letters


def test_reports_that_show_remedies_say_so_and_drawings_know_the_units_that_are_chosen() -> None:
    assert [one.name for one in speclint_reports() if one.remedies] == ["json", "sarif", "markdown"]
    assert all(one.in_chosen_units for one in speclint_drawings())


def test_json_has_its_letters_as_they_are_and_no_infinities() -> None:
    """Whatever cannot be seen is written by its code, in names too."""
    assert json_text({"σ\u202e": ["größe", 1, ("a\x1b",)]}) == (
        '{\n"σ⟨U+202E⟩": [\n"größe",\n1,\n["a⟨U+001B⟩"]\n]\n}\n'
    )
    assert json_text({"one": {"σ\u202e": [1, 2]}, "two": {"\x1b": "\\"}}) == (
        '{\n"one": {\n"σ⟨U+202E⟩": [1, 2]\n},\n"two": {\n"⟨U+001B⟩": "\\\\"\n}\n}\n'
    )
    assert json_text({"one": {"two": [1, {"three": 4}]}}, levels=3) == (
        '{\n"one": {\n"two": [\n1,\n{"three": 4}\n]\n}\n}\n'
    )
    assert json_text({"one": {"two": 3}}, levels=0) == '{"one": {"two": 3}}\n'
    with pytest.raises(ValueError, match="Out of range float"):
        json_text([math.inf])
    assert json_text(["a\tb", {}, []]) == '[\n"a b",\n{},\n[]\n]\n'
    assert json_text({"of": [MappingProxyType({"a": [MappingProxyType({})]})], "none": []}) == (
        '{\n"of": [\n{"a": [{}]}\n],\n"none": []\n}\n'
    )
    with pytest.raises(TypeError, match="set is no data that JSON can write"):
        json_text({1})
    assert '"größe"' in index_script([Entry("größe", "key", "a.html")], "made")


def test_sheets_are_packed_by_their_lines_and_cells() -> None:
    """A line or a cell that is new stands as 0, one that was met by its number from 1."""
    sheets = {"a": "σ <b>x</b>\nend", "b": "end\nσ <b>x</b>\nof <b>x</b>"}
    text = gzip.decompress(from_letters(packed(sheets))).decode("utf-8")
    assert "σ" in text, "letters as they are pack into less"
    assert " :" not in text
    assert ": " not in text
    data = json.loads(text)
    assert data["sheets"] == {"a": [0, 0], "b": [2, 1, 0]}
    assert data["cells"] == ["σ ", "<b>x</b>", "end", "of "]
    assert data["lines"] == [[0, 0], [0], [0, 2]]


@pytest.mark.parametrize("length", range(1, 10))
def test_bytes_are_packed_into_five_letters_for_four(length: int) -> None:
    """255 four times is 4 294 967 295, which is 82·85⁴ + 23·85³ + 54·85² + 12·85."""
    assert as_letters(b"\xff" * 4) == "".join(DIGITS[one] for one in (82, 23, 54, 12, 0))
    body = bytes(range(251, 251 - length, -1))
    letters = as_letters(body)
    assert len(letters) == length + -(-length // 4)
    assert from_letters(letters) == body
    assert not {"<", ">", "&"} & set(letters)


def test_a_page_may_load_scripts_only_where_it_says_so() -> None:
    assert "strict-dynamic" not in policy_of("style", "script")
    assert "'strict-dynamic'" in policy_of("style", "script", loads=True)


def test_templates_escape_markup_and_leave_no_lines_of_their_own() -> None:
    made = environment().from_string("{% if 1 %}\n  {% if 1 %}\n{{ text }}\n  {% endif %}\n{% endif %}\n")
    assert made.render(text="<b>\u202e") == "&lt;b&gt;⟨U+202E⟩\n"


def test_a_sheet_alone_has_what_else_stands_in_its_finding(workshop: DesignFolder) -> None:
    """Why the rule is, and the sources."""
    from speclint.reports.pack.document import document
    from speclint.reports.pack.sheet_pages import SheetPages

    workshop.loaded = tubes.tubes()
    found = workshop.write(tubes.FILES).replace("tube.toml", "30 bar", "45 bar").assess()
    pack = document(found)
    (hold,) = pack.holds
    pages = SheetPages(pack.sheets())
    assert "<dt>sources" not in pages.numbered(hold)
    assert "<dt>sources" in pages.numbered(hold, alone=True)
    conforms = pack.sheets("conforms")[0]
    assert "<dt>sources" in pages.numbered(conforms)
    assert "to the finding" not in sheets_page(pack)


def test_what_is_not_said_of_a_part_or_a_number_is_not_so() -> None:
    assert not Part("a", "", "", "", ()).held
    assert not Printed("1", None).as_stated  # type: ignore[arg-type]


def test_a_report_of_what_is_staged_is_in_full_unless_it_is_asked_otherwise(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    asked: list[bool] = []

    def write(_: object, width: int, *, full: bool) -> Page:
        asked.append(full)
        return Page(width)

    monkeypatch.setattr(terminal_page, "write", write)
    of: Any = SimpleNamespace(
        files=(), removed=(), moved={}, accepted=(), assessment=SimpleNamespace(design=None)
    )
    staged_findings.staged_page(of, 80)
    assert asked == [True]


def test_the_report_for_a_terminal_is_in_full_unless_it_is_asked_otherwise(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    found = workshop.write(tubes.FILES).replace("tube.toml", "30 bar", "45 bar").assess()
    usual = terminal_page.write(found, 100).text()
    assert usual == terminal_page.write(found, 100, full=True).text()
    assert usual != terminal_page.write(found, 100, full=False).text()
