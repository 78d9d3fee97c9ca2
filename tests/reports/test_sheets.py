"""One sheet in all its forms and systems of units: the terminal's, Markdown's, and the lines beneath them."""

from __future__ import annotations

import html

import pytest

from speclint.checking import Assessment
from speclint.equations import COMMON_PRACTICE
from speclint.errors import Location, replace
from speclint.quantities import System
from speclint.quantities.unit_systems import SYSTEMS
from speclint.reports import sheet_markdown, sheet_page as working
from speclint.reports.sheet_text import Lines, sheet_of
from speclint.rules import Step
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.hostile import TEXTS, quoted
from tests.reports.test_markdown import READER, WORDS, text_of
from tests.tubes import FILES


def overloaded(workshop: DesignFolder) -> Assessment:
    """The tube at 45 bar: a hold."""
    workshop.loaded = tubes.tubes()
    workshop.write(FILES).replace("tube.toml", "30 bar", "45 bar")
    return workshop.assess()


def test_lines_say_what_was_taken_worked_and_allowed(workshop: DesignFolder) -> None:
    """By hand: 4.5 MPa × 100.5/(104.5 − 100.5) = 113.1 MPa."""
    assessment = overloaded(workshop)
    (check,) = (one for one in assessment.checks if one.rule.name == "tube.stress")
    sheet = sheet_of(assessment, check)
    worked = next(line for line in sheet.lines if line.equation)
    assert worked.equation == "σ = p d/(D − d)"
    assert worked.numbers == "4.5 MPa · 100.5 mm/(104.5 mm − 100.5 mm)"
    assert worked.values == {"p": "4.5 MPa", "d": "100.5 mm", "D": "104.5 mm"}
    assert worked.value == "113.1 MPa"
    assert sheet.used == "1.131 of the limit is used"
    assert sheet.refer_to == "the invented pressure code; the invented railway code; and a competent person"
    assert sheet.would_clear
    assert set(sheet.sources) == {"common practice", "first principles"}


def test_a_sheet_can_be_read_in_inches_and_pounds(workshop: DesignFolder) -> None:
    """By hand: 100.5/25.4 = 3.9567 in; 4.5e6/6894.757 = 652.7 psi; 113.0625e6/6894.757 = 16 398 psi."""
    assessment = overloaded(workshop)
    checks = [one for one in assessment.checks if one.rule.name == "tube.stress"]
    out = " ".join(working.write(assessment, checks, 100, "imperial").text().split())
    for words in (
        "d = 3.9567 in",
        "= 652.7 psi · 3.9567 in/(4.1142 in − 3.9567 in)",
        "σ = 16398 psi",
        "in these units 16398 psi against 14504 psi",  # 100e6/6894.757 = 14 503.8
        "as written: 100 mm ±0.5",
    ):
        assert words in out, words


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_form_says_all_that_the_lines_say(workshop: DesignFolder, system: System) -> None:
    assessment = overloaded(workshop)
    page = READER.render(sheet_markdown.write(assessment, assessment.checks, system)).replace("<br>", " ")
    marked = "".join(text_of(page).split())
    plain = "".join(working.write(assessment, assessment.checks, 100, system).text().split())
    for check in assessment.checks:
        sheet = sheet_of(assessment, check, system)
        said = [sheet.result, sheet.used, *sheet.would_clear, *sheet.sources, sheet.worked_for]
        for line in sheet.lines:
            said += [line.name, line.equation, line.numbers, line.value, line.note]
        for text in said:
            assert "".join(text.split()) in marked, text
            assert "".join(text.split()) in plain, text


@pytest.mark.parametrize("name", TEXTS)
def test_hostile_text_is_text_on_a_sheet(workshop: DesignFolder, name: str) -> None:
    workshop.loaded = tubes.tubes()
    note = f'{{ value = "100 mm ±0.5", from = "measured", note = {quoted(TEXTS[name])} }}'
    workshop.write(FILES).replace("tube.toml", '"100 mm ±0.5"', note)
    assessment = workshop.assess()
    assert not assessment.complaints
    page = READER.render(sheet_markdown.write(assessment, assessment.checks))
    tags = {tag.split()[0].strip("</>") for tag in WORDS.findall(page)}
    assert tags <= {
        *("h2", "p", "em", "strong", "table", "thead", "tbody", "tr", "th", "td", "br", "ul", "ol", "li")
    }
    assert html.unescape(page).count("measured") >= 1


def test_a_line_that_sheets_have_alike_is_worked_once_and_others_are_told_apart() -> None:
    """A count of one is not "yes", nor the value of one load case that of another."""
    lines = Lines("as written")
    taken = Step("taken", "d", "inside diameter", 0.1, "m", where=Location("tube.toml", 4, "bore"))
    alike = Step("taken", "d", "inside diameter", 0.1, "m", where=Location("tube.toml", 4, "bore"))
    assert lines.of(taken) is lines.of(alike)
    assert lines.of(taken).value == "100 mm"
    for other in (
        replace(taken, kind="read"),
        replace(taken, symbol="D"),
        replace(taken, name="outside diameter"),
        replace(taken, value=0.2),
        replace(taken, unit="s"),
        replace(taken, written_in="in"),
        replace(taken, expression="d = 1"),
        replace(taken, filled=(("p", 1.0, "Pa"),)),
        replace(taken, note="hot"),
        replace(taken, source=COMMON_PRACTICE),
        replace(taken, where=Location("tube.toml", 5, "bore")),
    ):
        assert lines.of(other) is not lines.of(taken)
    one = Step("read", "", "guided", value=1)
    assert [lines.of(step).value for step in (one, replace(one, value=True))] == ["1", "yes"]
