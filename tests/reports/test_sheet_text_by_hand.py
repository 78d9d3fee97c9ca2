"""A sheet line by line and as data: what stands for each sort of step, and how it is laid out on a page, by hand."""

from __future__ import annotations

import math
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.checking import Check, Remedy, Sought
from speclint.equations import Source
from speclint.errors import NOWHERE, Complaint, Location, replace
from speclint.quantities import amount_in
from speclint.reports import json_report, sheet_page, sheet_text
from speclint.reports.json_report import check_as_data
from speclint.reports.page import Page
from speclint.reports.sheet_text import Line, Lines, SheetText, sheet_of, worked_for
from speclint.rules import Amount, Grade, Judgement, Series, Step
from tests import tubes

HERE = Location("tube.toml", 4, "bore")
BOOK = Source("a book")
BORE = Step("taken", "d", "bore", 0.1, "m", where=HERE, note="100 mm ±0.5")
AREA = Step(
    "worked", "A", "area", 0.00785, "m²", expression="A = π d²/4", filled=(("d", 0.1, "m"),), source=BOOK
)


def line(step: Step, system: Any = "as written") -> Line:
    return Lines(system).of(step)


def test_what_was_taken_has_its_value_its_place_and_what_is_written() -> None:
    found = line(BORE)
    assert (found.name, found.symbol, found.value, found.note) == (
        "bore",
        "d",
        "100 mm",
        "as written: 100 mm ±0.5",
    )
    assert (found.equation, found.numbers, found.source, found.where) == ("", "", "", HERE)
    assert line(replace(BORE, note="", where=NOWHERE)).note == ""
    assert line(replace(BORE, where=NOWHERE)).where is None
    assert line(replace(BORE, written_in="in")).value == "3.937 in"
    assert line(BORE, "imperial").value == "3.937 in"


def test_what_was_worked_has_its_equation_with_numbers_and_its_source() -> None:
    found = line(AREA)
    assert (found.symbol, found.equation, found.numbers) == ("A", "A = π d²/4", "π · (100 mm)²/4")
    assert found.values == {"d": "100 mm"}
    assert found.source == str(BOOK)
    unnamed = line(replace(AREA, symbol=""))
    assert (unnamed.symbol, unnamed.equation) == ("A", "A = π d²/4"), "that of the equation"
    other = line(replace(AREA, symbol="A_1"))
    assert (other.symbol, other.equation) == ("A_1", "A_1 = π d²/4")


def test_words_are_words_and_what_holds_is_yes_or_no() -> None:
    assert [line(replace(BORE, value=one)).value for one in ("open", True, False)] == ["open", "yes", "no"]
    looked = line(replace(BORE, kind="looked up", note="11 and 13"))
    assert looked.note == "between 11 and 13"
    assert line(replace(BORE, kind="limit", note="as set")).note == "as set"
    assert line(replace(BORE, kind="looked up", note="")).note == ""
    scanned = line(Step("scanned", "", "angle", 0.5, "rad", expression="no equation"))
    assert (scanned.symbol, scanned.equation, scanned.numbers) == ("", "no equation", "")


JUDGED = Judgement(
    holds=False,
    says="113 MPa > 100 MPa",
    utilisation=1.13,
    found=Amount(113e6, "Pa"),
    limit=Amount(100e6, "Pa"),
)
CHECK = Check(
    "tube",
    "tube",
    tubes.stress,
    "finding",
    "it bursts",
    HERE,
    "abc",
    grade=Grade.HOLD,
    judgement=JUDGED,
    steps=(BORE, AREA),
)


def test_what_a_sheet_was_worked_for() -> None:
    assert worked_for(CHECK) == "no load case: the part as drawn; no tolerance changes the result"
    running = replace(CHECK, case="running", governing=("d at its most", "p at its least"))
    assert worked_for(running) == "load case running; d at its most, p at its least"


def sheet(
    monkeypatch: pytest.MonkeyPatch, check: Check, system: Any = "as written", own: Any = "as written"
) -> SheetText:
    """Of an assessment whose works chose some units, and which finds four remedies."""
    remedies = [
        Remedy(
            HERE, f"bore {n}", 0.1, 0.2, "m", "", None if n == 1 else 0.9, written="100 mm", instead="200 mm"
        )
        for n in range(4)
    ]
    monkeypatch.setattr(sheet_text, "said_of_like", lambda _, component: f"like the other {component}")
    of: Any = SimpleNamespace(
        settings=SimpleNamespace(units=own, local_codes=None), search=lambda _: Sought(tuple(remedies))
    )
    return sheet_of(of, check, system)


def test_a_sheet_has_its_result_its_remedies_and_each_source_once(monkeypatch: pytest.MonkeyPatch) -> None:
    found = sheet(monkeypatch, replace(CHECK, steps=(BORE, AREA, replace(AREA, symbol="B"))))
    assert (found.result, found.used) == ("it bursts", "1.130 of the limit is used")
    cited = [str(one) for one in tubes.stress.cites]
    assert found.sources == (str(BOOK), *cited)
    assert [found.number_of(one) for one in (str(BOOK), cited[0], "")] == [1, 2, 0]
    assert len(found.would_clear) == 3
    assert found.would_clear[0].startswith("bore 0 from 100 mm to 200 mm")
    assert found.would_clear[0].endswith("(then 0.900 of the limit)")
    assert "of the limit" not in found.would_clear[1]
    assert found.refer_to.endswith("and a competent person")
    assert found.like == "like the other tube"
    query = sheet(monkeypatch, replace(CHECK, grade=Grade.QUERY, judgement=None))
    assert (query.refer_to, query.used) == ("", "")


def test_in_other_units_the_result_has_both_numbers_in_them(monkeypatch: pytest.MonkeyPatch) -> None:
    """Not where the works chose the same, nor where there are none to compare."""
    found = sheet(monkeypatch, CHECK, "imperial")
    limits = [amount_in("imperial", one, "Pa") for one in (113e6, 100e6)]
    assert found.result == f"it bursts; in these units {limits[0]} against {limits[1]}"
    assert found.lines[0].value == "3.937 in"
    assert sheet(monkeypatch, CHECK, "as written", "imperial").result == "it bursts"
    assert sheet(monkeypatch, CHECK, "imperial", "imperial").result == "it bursts"
    for change in (
        {"judgement": None},
        {"judgement": replace(JUDGED, found=None)},
        {"judgement": replace(JUDGED, limit=None)},
    ):
        assert sheet(monkeypatch, replace(CHECK, **change), "imperial").result == "it bursts"


# On a page


def laid_out(found: SheetText) -> list[str]:
    page = Page(60)
    sheet_page._sheet(page, found, "sheet 1 of 2")
    return page.text().splitlines()


def test_a_sheet_on_a_page() -> None:
    lines = (line(BORE), line(AREA), Line("ends", "", "open", source=str(BOOK)))
    also = replace(JUDGED, says="so is this", of="end")
    check = replace(CHECK, failing=(JUDGED, also), missing=("the metal",), says="113 MPa > 100 MPa")
    found = SheetText(
        check,
        "as drawn",
        lines,
        "it bursts",
        "1.130 used",
        ("a thicker wall",),
        "the code",
        (str(BOOK),),
        "like b",
    )
    assert laid_out(found) == [
        "═" * 60,
        "CALCULATION SHEET   tube" + "sheet 1 of 2".rjust(36),
        "tube.stress, edition 1" + "family ".rjust(38).rstrip(),
        "the tube carries its pressure",
        "why        for tests",
        "worked for  as drawn",
        "part        like b",
        "─" * 60,
        "  1  bore: d = 100 mm" + "tube.toml:4".rjust(39),
        "       as written: 100 mm ±0.5",
        "  2  area" + "[1]".rjust(51),
        "       A = π d²/4",
        "         = π · (100 mm)²/4",
        "       A = 7850 mm²",
        "  3  ends: open" + "[1]".rjust(45),
        "─" * 60,
        "FINDING, grade hold: it bursts; 1.130 used",
        "and        end: so is this",
        "needs      the metal",
        "would clear  a thicker wall",
        "refer to  the code",
        "not covered  nothing",
        "Sources",
        f"  [1]  {BOOK}",
    ]


def test_a_sheet_that_conforms_has_no_more_than_its_result() -> None:
    check = replace(CHECK, outcome="conforms", grade=None, failing=(), judgement=None)
    found = SheetText(check, "as drawn", (), "so", "", (), "", ())
    page = laid_out(found)
    assert page[6:] == ["─" * 60, "─" * 60, "CONFORMS: so", "not covered  nothing", "Sources"]


def test_several_sheets_are_numbered_and_signed_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(
        sheet_page, "sheet_of", lambda _, check, system: SheetText(check, system, (), "", "", (), "", ())
    )
    of: Any = object()
    page = sheet_page.write(of, [CHECK, CHECK], 100, "metric").text()
    assert [f"sheet {n} of 2" in page for n in (1, 2, 3)] == [True, True, False]
    assert page.count("worked for  metric") == 2
    assert page.count("Prepared by speclint") == 1
    assert page.index("These checks support") < page.index("Prepared by")


# As data


def test_a_check_as_data() -> None:
    proof: Any = SimpleNamespace(method="all corners")
    check = replace(
        CHECK,
        governing=("d at its most",),
        at_worst=("d = 101 mm",),
        missing=("a metal",),
        failing=(JUDGED,),
        proofs={"": proof, "running": proof},
    )
    data = check_as_data(check)
    steps = data.pop("steps")
    found, limit = {"value": 113.0, "unit": "MPa"}, {"value": 100.0, "unit": "MPa"}
    assert data == {
        "component": "tube",
        "kind": "tube",
        "rule": "tube.stress",
        "family": "",
        "edition": 1,
        "outcome": "finding",
        "grade": "hold",
        "utilisation": 1.13,
        "found": found,
        "limit": limit,
        "statement": "the tube carries its pressure",
        "says": "it bursts",
        "actual": check.actual,
        "case": None,
        "governing": ["d at its most"],
        "at_worst": ["d = 101 mm"],
        "where": {"file": "tube.toml", "line": 4, "key": "bore"},
        "fingerprint": "abc",
        "missing": ["a metal"],
        "failing": [
            {"of": "", "says": "113 MPa > 100 MPa", "utilisation": 1.13, "found": found, "limit": limit}
        ],
        "proofs": {"always": "all corners", "running": "all corners"},
        "could_not_run": None,
        "sources": [str(one) for one in tubes.stress.cites],
    }
    assert steps == [
        {
            "kind": "taken",
            "symbol": "d",
            "name": "bore",
            "expression": "",
            "numbers": "",
            "value": 100.0,
            "unit": "mm",
            "note": "100 mm ±0.5",
            "source": "",
            "where": {"file": "tube.toml", "line": 4, "key": "bore"},
        },
        {
            "kind": "worked",
            "symbol": "A",
            "name": "area",
            "expression": "A = π d²/4",
            "numbers": "",
            "value": 7850.0,
            "unit": "mm²",
            "note": "",
            "source": str(BOOK),
            "where": None,
        },
    ]
    bare = check_as_data(replace(CHECK, judgement=None, grade=None, case="running", could_not_run="fault"))
    assert [bare[key] for key in ("utilisation", "found", "limit", "grade")] == [None] * 4
    assert (bare["case"], bare["could_not_run"]) == ("running", "fault")


def test_numbers_as_data_have_ten_figures_and_no_infinities() -> None:
    series = Series("F", "load", "N", (1.0, None, math.inf, 1 / 3))
    (step,) = check_as_data(replace(CHECK, steps=(replace(BORE, value=True, series=(series,)),)))["steps"]
    assert step["value"] is True
    assert step["unit"] == "m"
    assert step["series"] == [
        {"symbol": "F", "name": "load", "unit": "N", "values": [1.0, None, None, 0.3333333333]}
    ]
    assert json_report._finite(2 / 3) == 0.6666666667
    assert json_report._finite(math.nan) is None
    bare = check_as_data(replace(CHECK, judgement=replace(JUDGED, found=None, utilisation=math.inf)))
    assert (bare["found"], bare["utilisation"]) == (None, None)


def test_remedies_changes_and_what_is_left_as_data() -> None:
    remedy = Remedy(HERE, "bore", 0.1, 0.2, "m", "", math.inf, ("tube.ends",), short_of=("tube-2",))
    data = json_report._remedy(remedy, "so")
    assert data == {
        "says": "so",
        "name": "bore",
        "where": {"file": "tube.toml", "line": 4, "key": "bore"},
        "written": None,
        "instead": None,
        "exact": False,
        "utilisation": None,
        "spoils": ["tube.ends"],
        "short_of": ["tube-2"],
    }
    value = SimpleNamespace(key="bore", was="", now="100 mm")
    gone = SimpleNamespace(key="hole", was="1 mm", now="")
    changes: Any = SimpleNamespace(
        since="v1", added=("a",), removed=("b", "c"), changed={"d": (value, gone)}, new=(), cleared=(CHECK,)
    )
    found = json_report.changes_data(changes)
    assert found["changed"] == {
        "d": [{"key": "bore", "was": None, "now": "100 mm"}, {"key": "hole", "was": "1 mm", "now": None}]
    }
    assert (found["since"], found["added"], found["removed"], found["new"]) == ("v1", ["a"], ["b", "c"], [])
    assert [one["component"] for one in found["cleared"]] == ["tube"]
    note = Complaint(HERE, "an old key", "4", "bands")
    of: Any = SimpleNamespace(old_keys=(note,))
    assert json_report.old_keys_data(of) == [
        {
            "file": "tube.toml",
            "line": 4,
            "key": "bore",
            "message": "an old key",
            "read": "4",
            "write": "bands",
        }
    ]
