"""What the pack shows once: sheets with the same working, figures of parts alike, and the words beside each."""

from __future__ import annotations

import datetime as dt
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.checking import Alike, Check
from speclint.equations import Source
from speclint.errors import NOWHERE, replace
from speclint.reports.pack.drawn_once import ShownFigure, drawn_once
from speclint.reports.pack.figures import Figure, compared
from speclint.reports.pack.finding_labels import labels_of, not_conceded
from speclint.reports.pack.parts import Part, Placed, figures_by_name, figures_of_all, with_figures
from speclint.reports.pack.same_working import SameAs, firsts_of, led, same_as
from speclint.reports.pack.shown_sheets import Sheets, ShownSheet, Sources
from speclint.rules import Amount, Grade, Judgement, Step
from speclint.testing import DesignFolder
from tests import tubes


def check(component: str = "tube", used: float | None = 0.5, **other: Any) -> Check:
    judged = Judgement(holds=True, says="so", utilisation=used)
    one = Check(component, "tube", tubes.stress, "conforms", "so", NOWHERE, "", judgement=judged)
    return replace(one, **other)


def step(**changed: Any) -> Step:
    return replace(Step("taken", "d", "bore", 0.1, "m"), **changed)


def first_of(one: Check, other: Check, *names: str) -> bool:
    return firsts_of([one, other], names or ("tube", "pipe", "rack-a", "rack-b")) == {other.order: one}


def test_checks_that_conform_with_the_same_figures_have_one_sheet() -> None:
    """Names of parts may differ, each in the place of the other; a finding has its own sheet."""
    assert first_of(check(), check("pipe"))
    assert not first_of(check(outcome="finding"), check("pipe", outcome="finding"))
    assert not first_of(check(), check("pipe", outcome="not assessed"))
    third = check("rack-a")
    found = firsts_of([check(), check("pipe"), third], ())
    assert found == {("pipe", "tube.stress"): check(), third.order: check()}


@pytest.mark.parametrize(
    "change",
    [
        {"kind": "rack"},
        {"rule": tubes.hoops},
        {"case": "running"},
        {"judgement": Judgement(holds=True, says="so", utilisation=0.51)},
        {"says": "otherwise"},
        {"governing": ("d at its least",)},
        {"steps": (step(value=0.2),)},
        {"steps": (step(kind="read"),)},
        {"steps": (step(symbol="D"),)},
        {"steps": (step(name="outside"),)},
        {"steps": (step(value="0.1"),)},
        {"steps": (step(unit="mm"),)},
        {"steps": (step(expression="d = 2"),)},
        {"steps": (step(note="a note"),)},
        {"steps": (step(filled=(("d", 0.1, "m"),)),)},
        {"steps": (step(source=Source("a book")),)},
        {"steps": ()},
    ],
)
def test_whatever_a_sheet_shows_tells_it_apart(change: dict[str, Any]) -> None:
    assert first_of(check(steps=(step(),)), check("pipe", steps=(step(),)))
    assert not first_of(check(steps=(step(),)), replace(check("pipe", steps=(step(),)), **change))


@pytest.mark.parametrize("key", ["symbol", "name", "value", "note"])
def test_names_of_parts_are_told_by_their_place(key: str) -> None:
    """In a line, with marks about them; one that comes back must come back in the other."""

    def named(component: str, *texts: str) -> Check:
        return check(component, steps=tuple(step(**{key: text}) for text in texts))

    assert first_of(named("tube", "of (rack-a)"), named("pipe", "of (rack-b)"))
    assert first_of(named("tube", "of tube,"), named("pipe", "of pipe,"))
    assert not first_of(named("tube", "of tube"), named("pipe", "of tube"))
    assert not first_of(named("tube", "of rack-a", "of rack-a"), named("pipe", "of rack-a", "of rack-b"))
    assert not first_of(named("tube", "of rack-c"), named("pipe", "of rack-d"))
    assert not first_of(named("tube", "in rack-a"), named("pipe", "of rack-b"))


def test_names_in_what_is_said_and_in_the_corner_are_told_by_their_place() -> None:
    for key in ("says", "governing"):
        pair = [("of tube and rack-a", "of pipe and rack-b"), ("of tube and rack-a", "of pipe and pipe")]
        (one, other), (this, that) = (
            [
                replace(check(name), governing=(text,))
                if key == "governing"
                else replace(check(name), says=text)
                for name, text in zip(("tube", "pipe"), both, strict=True)
            ]
            for both in pair
        )
        assert first_of(one, other)
        assert not first_of(this, that)


def test_what_stands_for_the_sheets_of_a_part_is_told_with_the_most_last() -> None:
    own = [check("pipe", rule=rule) for rule in (tubes.stress, tubes.hoops, tubes.ends)]
    own += [check("pipe", rule=tubes.loose_hot, outcome="finding"), check("pipe", rule=tubes.case_stress)]
    firsts = {one.order: check("rack-a", rule=one.rule) for one in own[:2]}
    firsts |= {own[2].order: check("rack-b"), own[3].order: check("rack-b")}
    assert list(same_as(own, firsts)) == [
        SameAs("rack-b", (own[2],)),
        SameAs("rack-a", (own[0], own[1]), rest=True),
    ]
    assert list(same_as(own[4:], firsts)) == []


def test_the_words_for_checks_told_elsewhere() -> None:
    two = (check(), check(rule=tubes.hoops))
    assert SameAs("tube", two).said == "tube.stress, tube.hoops"
    assert SameAs("tube", two, rest=True).said == "its 2 other checks that conform"
    assert SameAs("tube", two[:1], rest=True).said == "its one other check that conforms"
    of_families = tuple(
        replace(one, rule=replace(one.rule, family=name)) for one, name in zip(two, "ba", strict=True)
    )
    assert SameAs("tube", of_families).families == ["a", "b"]
    assert SameAs("tube", two).anchor == "sheets.tube"


def test_links_of_figures_lead_to_the_sheets_that_are_shown() -> None:
    drawing = '<a href="#sheet.pipe.tube.stress"/><a href="#sheet.pipe.tube.hoops"/><a href="#else"/>'
    (found,) = led([Figure("one", "pipe", "", "", drawing)], {("pipe", "tube.stress"): check()})
    assert found.drawing == drawing.replace("pipe.tube.stress", "tube.tube.stress")


# Figures


def figure(component: str, **changed: Any) -> Figure:
    said = f"the {component} of rack-a"
    return replace(
        Figure(
            f"view-{component}", component, said, said, f"<svg id='view-{component}'/>", ((said,),), ("what",)
        ),
        **changed,
    )


def test_figures_that_differ_in_names_of_parts_are_one() -> None:
    names = ("tube", "pipe", "rack-a", "rack-b")
    tube, pipe = figure("tube"), figure("pipe")
    assert drawn_once([tube, pipe], names) == (ShownFigure(tube, ("pipe",)),)
    for change in (
        {"heading": "another"},
        {"says": "another"},
        {"drawing": "<svg/>"},
        {"rows": (("another",),)},
        {"columns": ("where",)},
        {"says": "the pipe of pipe"},
    ):
        other = replace(pipe, **change)
        assert drawn_once([tube, other], names) == (ShownFigure(tube), ShownFigure(other))
    whole = [Figure(name, "", "all", "all", "<svg/>") for name in ("a", "b")]
    assert drawn_once(whole, names) == tuple(map(ShownFigure, whole))
    assert (
        ShownFigure(tube, ("pipe", "rack-a")).said == "The same, but for the names of parts, of pipe, rack-a."
    )
    assert ShownFigure(tube).said == ""


def test_a_comparison_is_read_by_its_sign_and_unit() -> None:
    judged = Judgement(holds=True, says="", found=Amount(1.0, "m"), limit=Amount(2.0, "m"), compared="≤")
    assert compared(check(judgement=judged), "≤", "m") == (1.0, 2.0)
    assert compared(check(judgement=None), "≤", "m") is None
    for change in (
        {"found": None},
        {"limit": None},
        {"compared": "≥"},
        {"limit": Amount(2.0, "N")},
        {"found": Amount(1.0, "N")},
    ):
        assert compared(check(judgement=replace(judged, **change)), "≤", "m") is None
    assert compared(check(judgement=judged), "≤", "N") is None


def placed(part: Part) -> list[tuple[int, str]]:
    return [(one.number, one.shown.figure.name) for one in part.figures]


def sheet(of: Check, *others: str) -> ShownSheet:
    alike = Alike((of, *(replace(of, component=name) for name in others)))
    return ShownSheet(SimpleNamespace(check=of), "", (), (), "", alike)  # type: ignore[arg-type]


def test_figures_are_numbered_by_part_and_those_of_all_come_last() -> None:
    tube, pipe = Part("tube", "", "", "", ()), Part("pipe", "", "", "", ())
    shown = [
        ShownFigure(Figure(name, of, "", "", ""))
        for name, of in (("a", "tube"), ("b", ""), ("c", "tube"), ("d", "ghost"))
    ]
    parts = with_figures([tube, pipe], shown)
    assert [(part.name, placed(part)) for part in parts] == [
        ("ghost", [(1, "d")]),
        ("pipe", []),
        ("tube", [(2, "a"), (3, "c")]),
    ]
    assert figures_of_all(parts, shown) == (Placed(4, shown[1]),)
    assert [part.alone for part in parts] == [True, False, True]
    assert not any(part.held for part in parts)


def test_a_hold_holds_the_parts_alike_that_have_a_figure() -> None:
    hold = check("tube", outcome="finding", grade=Grade.HOLD)
    parts = [
        Part("tube", "", "", "", (sheet(hold, "pipe", "rack-a"),)),
        Part("pipe", "", "", "", ()),
        Part("rack-a", "", "", "", ()),
        Part("rack-b", "", "", "", (sheet(check("rack-b", outcome="finding", grade=Grade.QUERY)),)),
        Part("rack-c", "", "", "", (sheet(check("rack-c", grade=Grade.HOLD)),)),
    ]
    shown = [
        ShownFigure(Figure("p", "pipe", "", "", "")),
        ShownFigure(Figure("o", "other", "", "", ""), ("pipe",)),
        ShownFigure(Figure("b", "rack-b", "", "", ""), ("rack-c",)),
    ]
    found = with_figures(parts, shown)
    assert {part.name: part.held for part in found} == {
        "other": True,
        "pipe": True,
        "rack-a": False,
        "rack-b": False,
        "rack-c": False,
        "tube": True,
    }
    by_name = figures_by_name(found)
    assert [one.number for one in by_name["pipe"]] == [1, 2]
    assert [one.number for one in by_name["rack-c"]] == [3]


def test_a_part_has_its_sheets_by_their_outcome() -> None:
    of = {name: replace(tubes.stress, family=name) for name in ("a", "b")}
    outcomes = (
        ("finding", "a"),
        ("not assessed", "a"),
        ("conforms", "b"),
        ("conforms", "a"),
        ("conforms", "b"),
    )
    sheets = tuple(sheet(check(outcome=outcome, rule=of[family])) for outcome, family in outcomes)
    part = Part("tube", "", "", "", sheets, (SameAs("pipe", (check(rule=of["a"]),)),))
    assert [len(part.findings), len(part.waiting), part.conforms] == [1, 1, 3]
    assert [(name, len(some)) for name, some in part.conforming] == [("a", 1), ("b", 2)]
    assert (part.anchor, part.sheets_anchor, part.families) == ("component.tube", "sheets.tube", ["a"])


# A sheet


@pytest.mark.parametrize(
    ("used", "said", "share", "gauge"),
    [
        (None, "", "", "0.000"),
        (0.5, "0.50", "0.50 of the limit", "0.333"),
        (1.0, "1.00", "1.00 of the limit", "0.667"),
        (1.001, "1.001", "1.001 of the limit", "0.667"),
        (1.005, "1.00", "1.00 of the limit", "0.670"),
        (1.5, "1.50", "1.50 of the limit", "1.000"),
        (3.0, "3.00", "3.00 of the limit", "1.000"),
        (float("inf"), "no margin left", "no margin left", "1.000"),
    ],
)
def test_what_is_used_of_the_limit_in_words_and_on_a_gauge(
    used: float | None, said: str, share: str, gauge: str
) -> None:
    found = sheet(check(used=used))
    assert (found.used, found.share, found.on_gauge) == (said, share, gauge)


def test_a_sheet_is_packed_or_long_or_laid_out() -> None:
    """More than 60 lines are long."""
    finding = sheet(check(outcome="finding"))
    assert sheet(check()).way == "packed"
    assert replace(finding, lines=(None,) * 60).way == ""  # type: ignore[arg-type]
    assert replace(finding, lines=(None,) * 61).way == "long"  # type: ignore[arg-type]


def test_a_sheet_is_called_by_its_grade_where_it_counts() -> None:
    assert sheet(check(outcome="finding", grade=Grade.HOLD)).word == "hold"
    assert sheet(check(outcome="not assessed", grade=Grade.HOLD)).word == "hold"
    assert sheet(check(outcome="not assessed")).word == "not assessed"
    assert sheet(check(grade=Grade.HOLD)).word == "conforms"


def test_the_sources_of_the_rule_stand_first() -> None:
    cited = [str(one) for one in tubes.stress.cites]
    some = ((1, "a book"), (2, cited[0]), (3, "another"))
    assert replace(sheet(check()), sources=some).after == [(2, cited[0]), (1, "a book"), (3, "another")]


def test_a_sheet_stands_for_those_of_parts_alike() -> None:
    found = sheet(check(outcome="finding"), "pipe", "rack-a")
    assert found.others == ["finding.pipe.tube.stress", "finding.rack-a.tube.stress"]
    assert found.finding == "finding.tube.tube.stress"


def test_a_source_has_one_number() -> None:
    sources = Sources()
    assert [sources.number(one) for one in ("a", "b", "a", "c")] == [1, 2, 1, 3]


def test_lines_of_a_sheet_have_their_symbol_equation_and_source(workshop: DesignFolder) -> None:
    """The bore of the tube is taken, its stress is worked: σ = p d/(D − d)."""
    workshop.loaded = tubes.tubes()
    of = workshop.write(tubes.FILES).assess()
    one = next(each for each in of.checks if each.rule.name == "tube.stress")
    entry = SimpleNamespace(
        number="C-001", accepted_by="M. Coyle", until=dt.date(2027, 1, 31), grounds="proved"
    )
    stands = SimpleNamespace(concession=entry, state="lapsed", reasons=("the bore moved",))
    alike = {each.order: Alike((each,)) for each in of.checks}
    sheets = Sheets(of, "as written", Sources(), {one.order: stands}, alike, {one.order: "H1"})  # type: ignore[dict-item]
    found = sheets.of(one)
    bore = next(each for each in found.lines if "bore" in each.line.name)
    assert ("<mi>d</mi>" in bore.symbol, bore.equation, bore.numbers, bore.source) == (True, "", "", 0)
    worked = next(each for each in found.lines if each.line.equation)
    assert "<mfrac>" in worked.equation
    assert "100.5 mm" in worked.numbers or "100.5" in worked.numbers
    assert worked.source > 0
    assert found.label == "H1"
    assert found.concession == "C-001, lapsed, by M. Coyle until 2027-01-31: proved; the bore moved"
    assert found.anchor == "sheet.tube.tube.stress"
    assert dict(found.sources)[worked.source] == worked.line.source
    again = sheets.of(one)
    assert all(this is that for this, that in zip(found.lines, again.lines, strict=True))
    other = next(each for each in of.checks if each.rule.name == "tube.hoops")
    assert (sheets.of(other).label, sheets.of(other).concession) == ("", "")


# Labels


def test_findings_are_labelled_by_grade_in_the_order_of_their_gravity() -> None:
    def found(name: str, used: float, grade: Grade | None) -> Alike:
        return Alike((check(name, used, outcome="finding", grade=grade),))

    groups = [
        found("a", 1.1, Grade.QUERY),
        found("b", 1.2, Grade.HOLD),
        found("c", 1.3, Grade.HOLD),
        found("d", 1.0, None),
        Alike((check("e", grade=Grade.HOLD),)),
    ]
    labels = labels_of(groups)
    assert {name: label for (name, _), label in labels.items()} == {
        "c": "H1",
        "b": "H2",
        "a": "Q1",
        "d": "F1",
    }
    holds, lapsed = SimpleNamespace(holds=True), SimpleNamespace(holds=False)
    conceded: Any = {("c", "tube.stress"): holds, ("a", "tube.stress"): lapsed}
    assert not_conceded(groups, labels, conceded) == {"hold": ["H2"], "query": ["Q1"]}
    assert not_conceded(groups, labels, {}) == {"hold": ["H1", "H2"], "query": ["Q1"]}
