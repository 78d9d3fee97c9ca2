"""What a change did as a page and as a note, by hand: every part of it, where there is some, none and too much."""

from __future__ import annotations

from math import inf
from typing import Any

import pytest

from speclint import Grade
from speclint.checking import CheckSeen, MarginChange, ValueChange
from speclint.errors import replace
from speclint.register import Comparison, StateOfDesign
from speclint.reports import comparison_markdown, comparison_page
from speclint.reports.comparison_page import cause_said, figures_of, judged_said, specs_said, told_of
from speclint.reports.comparison_rows import lapsed_rows, margin_rows, spec_rows
from speclint.reports.phrases import CAUTION
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_register_listing import LAPSED
from tests.tubes import FILES

HELD = CheckSeen("tube", "tube.stress", 1, "conforms", None, 0.75, "75 MPa, allowed 100 MPa", "f")
FAILS = replace(HELD, outcome="finding", grade=Grade.HOLD, utilisation=1.13, says="113 MPa, allowed 100 MPa")
WORSE = MarginChange(HELD, FAILS, "design")
CLEARED = MarginChange(replace(FAILS, component="pipe"), replace(HELD, component="pipe"), "design")
SAME = MarginChange(HELD, HELD, "")
LIKE = 'kind = "tube"\nlike = "tube"\n'
MARGINS = "Margins: 2 of 2 checks came out otherwise; used of each limit, worst change first"
#: Two reports of earlier runs: no more is known of them than their checks.
REPORTS = Comparison(StateOfDesign("the report a.json", ()), StateOfDesign("the report b.json", ()))


@pytest.fixture
def states(workshop: DesignFolder) -> Comparison:
    """The tube in its rack, as it is, held against itself."""
    workshop.loaded = tubes.tubes()
    made = workshop.write(FILES).assess()
    return Comparison(StateOfDesign("old", (), made), StateOfDesign("new", (), made))


def of(found: Comparison, **other: Any) -> list[str]:
    return comparison_page(found, 400, **other).text().splitlines()


def part(page: list[str], heading: str) -> list[str]:
    """The lines below a heading up to the next empty one."""
    start = page.index(heading) + 1
    return page[start : page.index("", start)]


def test_nothing_that_differs_is_said_in_five_lines(states: Comparison) -> None:
    assert of(replace(states, margins=(SAME,))) == [
        "From old to new",
        "No spec differs.",
        "Both are judged by the rules installed now: no difference comes from the edition of a rule.",
        "",
        "Findings: 0 new, 0 cleared",
        "",
        "Margins: none of 1 check came out otherwise",
        "",
        CAUTION,
    ]


def test_two_reports_have_checks_only_whatever_else_is_said(states: Comparison) -> None:
    assert specs_said(replace(REPORTS, added=("a",))) == "Checks only."
    for pair in ((states.old, REPORTS.new), (REPORTS.old, states.new)):
        found = Comparison(*pair)
        assert specs_said(found) == "Checks only."
        assert list(judged_said(found)) == ["No rule that judged both has changed its edition."]


def test_rules_of_another_edition_are_named_in_order() -> None:
    margins = [
        MarginChange(replace(HELD, rule=rule), replace(HELD, rule=rule, edition=now), "edition")
        for rule, now in (("tube.weight", 3), ("tube.ends", 2))
    ]
    assert list(judged_said(replace(REPORTS, margins=tuple(margins)))) == [
        "2 rules changed edition, which is no change of the design: tube.ends 1 to 2, tube.weight 1 to 3."
    ]
    assert next(judged_said(replace(REPORTS, margins=tuple(margins[:1])))).startswith(
        "1 rule changed edition,"
    )


def test_what_could_not_be_compared_or_read_is_said(states: Comparison, workshop: DesignFolder) -> None:
    broken = workshop.replace("tube.toml", 'pressure = "30 bar', 'pressure = "thirty').assess()
    assert broken.complaints
    found = replace(
        states,
        new=replace(states.new, assessment=broken),
        not_compared=("the basis is not compared", "so is the register"),
    )
    assert list(judged_said(found))[1:] == [
        "The basis is not compared.",
        "So is the register.",
        "new: 1 line could not be read, and what rests there is not compared: speclint check.",
    ]


def test_specs_are_counted_and_named_by_what_was_done_to_them(states: Comparison) -> None:
    value = ValueChange("pressure", "30 bar", "")
    found = replace(
        states,
        added=("tube",),
        removed=("gone", "lost"),
        renamed={"was": "is", "before": "now"},
        changed={"rack": (value,), "tube": (value,), "pipe": (replace(value, was="", now="1 bar"),)},
    )
    assert specs_said(found) == "Specs: 1 added, 2 removed, 2 renamed, 3 changed."
    assert part(of(found), "Specs") == [
        "  added      tube",
        "  removed    gone",
        "  removed    lost",
        "  renamed    before is now now",
        "  renamed    was is now is",
        "  changed    rack, tube",
        "               pressure: was 30 bar, is not stated",
        "  changed    pipe",
        "               pressure: was not stated, is 1 bar",
    ]
    assert list(spec_rows(found)) == [
        ("added", "tube", "", "", ""),
        ("removed", "gone", "", "", ""),
        ("removed", "lost", "", "", ""),
        ("renamed", "now", "id", "before", "now"),
        ("renamed", "is", "id", "was", "is"),
        ("changed", "rack, tube", "pressure", "30 bar", "not stated"),
        ("changed", "pipe", "pressure", "not stated", "1 bar"),
    ]


def test_a_drawing_is_named_beside_its_spec_as_it_is_now(states: Comparison, workshop: DesignFolder) -> None:
    drawn = workshop.replace("tube.toml", "pressure", 'drawing = "D-7"\nrevision = "B"\npressure').assess()
    found = replace(states, new=replace(states.new, assessment=drawn), added=("tube",), removed=("tube",))
    assert part(of(found), "Specs") == ["  added      tube (D-7 B)", "  removed    tube"]
    found = replace(found, changed={"tube": (ValueChange("pressure", "1", "2"),)}, margins=(WORSE, CLEARED))
    assert "  changed    tube (D-7 B)" in of(found)
    assert part(of(found), "Findings: 1 new, 1 cleared") == [
        "  new        hold: tube (D-7 B), tube.stress: 113 MPa, allowed 100 MPa",
        "  cleared    hold: pipe, tube.stress: 113 MPa, allowed 100 MPa",
    ]


def test_of_many_values_twelve_are_written_out_unless_all_are_asked_for(states: Comparison) -> None:
    values = tuple(ValueChange(f"k{number}", "1", "2") for number in range(14))
    found = replace(states, changed={"tube": values})
    below = part(of(found), "Specs")
    assert below[1:] == [
        *(f"               k{number}: was 1, is 2" for number in range(12)),
        "               and 2 more values: --full",
    ]
    assert len(part(of(found, full=True), "Specs")) == 15
    assert len(part(of(replace(states, changed={"tube": values[:12]})), "Specs")) == 13


def test_what_the_design_is_judged_by_and_concessions_have_a_part_each(states: Comparison) -> None:
    found = replace(states, basis=("limit a was 1, is 2", "family b is new"), lapsed=(LAPSED,))
    page = of(found)
    assert part(page, "What the design is judged by") == ["  limit a was 1, is 2", "  family b is new"]
    assert part(page, "Concessions that hold no longer") == [
        "  C-2        tube, tube.stress: lapsed: pressure differs; bore differs"
    ]
    assert page[page.index("What the design is judged by") - 1] == ""
    assert page[page.index("Concessions that hold no longer") - 1] == ""
    assert list(lapsed_rows(found)) == [
        ("C-2", "tube", "tube.stress", "lapsed", "pressure differs; bore differs")
    ]


def test_a_finding_says_what_it_was_and_why_it_is_another(states: Comparison) -> None:
    query = replace(FAILS, grade=Grade.QUERY)
    graver = MarginChange(query, replace(FAILS, edition=2), "both")
    assert part(of(replace(states, margins=(graver,))), "Findings: 1 new, 0 cleared") == [
        "  new        hold (was query): tube, tube.stress: 113 MPa, allowed 100 MPa; by the rule and by values: "
        "edition 1, now 2"
    ]
    gone = MarginChange(FAILS, None, "design")
    assert part(of(replace(states, margins=(gone,))), "Findings: 0 new, 1 cleared") == [
        "  cleared    hold: tube, tube.stress: 113 MPa, allowed 100 MPa; the check is gone"
    ]
    unknown = MarginChange(None, replace(FAILS, outcome="not assessed"), "design")
    assert part(of(replace(states, margins=(unknown,))), "Findings: 1 new, 0 cleared") == [
        "  new        hold, not assessed: tube, tube.stress: 113 MPa, allowed 100 MPa"
    ]


def test_findings_and_margins_of_parts_alike_are_told_once(
    states: Comparison, workshop: DesignFolder
) -> None:
    (workshop.root / "tube-b.toml").write_text(LIKE, encoding="utf-8")
    made = workshop.assess()
    other = MarginChange(replace(HELD, component="tube-b"), replace(FAILS, component="tube-b"), "design")
    third = replace(other, now=replace(FAILS, component="tube-b", utilisation=1.5))
    found = replace(states, new=replace(states.new, assessment=made), margins=(WORSE, other))
    for one in (found, replace(found, new=states.new, old=found.new)):
        assert part(of(one), "Findings: 2 new, 0 cleared") == [
            "  new        hold: tube, tube.stress: 113 MPa, allowed 100 MPa; the same on tube-b"
        ]
        assert part(of(one), MARGINS)[1:] == [
            "     0.75     1.13    +0.38  tube, tube.stress (was conforms, is hold); the same on tube-b"
        ]
    apart = replace(found, margins=(WORSE, third))
    assert len(part(of(apart), "Findings: 2 new, 0 cleared")) == 2, "other figures"
    assert len(part(of(replace(found, new=states.new)), "Findings: 2 new, 0 cleared")) == 2, (
        "not said to be alike"
    )


def test_a_margin_has_three_figures_the_worst_first_and_says_the_rest_in_words(states: Comparison) -> None:
    found = replace(states, margins=(WORSE, SAME))
    heading = "Margins: 1 of 2 checks came out otherwise; used of each limit, worst change first"
    assert part(of(found), heading) == [
        "   before      now   change",
        "     0.75     1.13    +0.38  tube, tube.stress (was conforms, is hold)",
    ]
    assert part(of(found, full=True), heading)[1:] == [
        "     0.75     1.13    +0.38  tube, tube.stress (was conforms, is hold)",
        "     0.75     0.75    +0.00  tube, tube.stress",
    ]
    assert list(margin_rows(found)) == [
        ("0.75", "1.13", "+0.38", "tube, tube.stress (was conforms, is hold)")
    ]


def test_of_many_margins_twenty_five_are_written_out_and_the_rest_is_counted(states: Comparison) -> None:
    many = tuple(
        MarginChange(replace(HELD, component=f"t{one}"), replace(FAILS, component=f"t{one}"), "design")
        for one in range(27)
    )
    heading = "Margins: 27 of 27 checks came out otherwise; used of each limit, worst change first"
    below = part(of(replace(states, margins=many)), heading)
    assert len(below) == 1 + 25 + 1
    assert below[-1] == "and 2 more checks came out otherwise: --full"
    assert len(part(of(replace(states, margins=many), full=True), heading)) == 28
    few = part(of(replace(states, margins=many[:25])), heading.replace("27", "25"))
    assert len(few) == 26


@pytest.mark.parametrize(
    ("was", "now", "figures"),
    [
        (0.75, 1.13, ("0.75", "1.13", "+0.38")),
        (1.13, 0.75, ("1.13", "0.75", "-0.38")),
        (0.5, 0.505, ("0.50", "0.51", "+0.01")),  # a change of 0.005 has two decimals as others have
        (0.5, 0.501, ("0.50", "0.50", "+0.001")),  # below it two figures
        (0.501, 0.5, ("0.50", "0.50", "-0.001")),
        (0.5, 0.5, ("0.50", "0.50", "+0.00")),
        (None, 0.5, ("–", "0.50", "–")),
        (0.5, None, ("0.50", "–", "–")),
        (0.5, inf, ("0.50", "no margin", "–")),
        (inf, 0.5, ("no margin", "0.50", "–")),
    ],
)
def test_the_figures_of_a_margin(was: float | None, now: float | None, figures: tuple[str, ...]) -> None:
    change = MarginChange(replace(HELD, utilisation=was), replace(HELD, utilisation=now), "design")
    assert figures_of(change) == figures


def test_what_figures_do_not_tell() -> None:
    assert told_of(SAME) == ""
    assert told_of(MarginChange(None, FAILS, "design")) == "new: hold"
    assert told_of(MarginChange(HELD, None, "design")) == "gone: conforms"
    edition = MarginChange(HELD, replace(HELD, edition=2), "edition")
    assert told_of(edition) == "by the rule: edition 1, now 2"
    both = MarginChange(HELD, replace(FAILS, edition=2), "both")
    assert told_of(both) == "was conforms, is hold; by the rule and by values: edition 1, now 2"
    assert cause_said(MarginChange(HELD, None, "both")) == ""
    assert cause_said(MarginChange(None, HELD, "both")) == ""
    assert figures_of(MarginChange(None, FAILS, "design")) == ("–", "1.13", "–")


def test_the_note_has_the_same_parts(states: Comparison) -> None:
    found = replace(states, removed=("gone|lost",), lapsed=(LAPSED,), margins=(CLEARED,))
    text = comparison_markdown(found)
    assert "### Specs\n\n| what | spec | key | before | now |\n" in text
    assert "| removed | gone\\|lost |  |  |  |\n" in text
    assert "### Findings: 0 new, 1 cleared\n\n- **cleared** hold: pipe, tube.stress: 113" in text
    assert "### Concessions that hold no longer\n\n| number | component | rule | state | why |\n" in text
    assert "| C-2 | tube | tube.stress | lapsed | pressure differs; bore differs |\n" in text
    assert "### Margins: 1 of 1 check came out otherwise;" in text
    assert "| before | now | change | component and rule |\n" in text
    assert "| 1.13 | 0.75 | -0.38 | pipe, tube.stress (was hold, is conforms) |\n" in text
    assert "…" not in text


@pytest.mark.parametrize(("number", "left"), [(100, ""), (102, "… and 2 more {}: run `speclint compare`.\n")])
def test_the_note_cuts_what_is_too_long(states: Comparison, number: int, left: str) -> None:
    from speclint.reports.markdown_report import ROWS

    assert ROWS == 100, "the numbers above"
    names = tuple(f"t{one}" for one in range(number))
    margins = tuple(
        MarginChange(replace(HELD, component=one), replace(FAILS, component=one), "design") for one in names
    )
    found = replace(states, added=names, margins=margins, lapsed=(LAPSED,) * number)
    text = comparison_markdown(found)
    lines = text.splitlines()
    assert sum(line.startswith("| added |") for line in lines) == 100
    assert sum(line.startswith("- **new**") for line in lines) == 100
    assert sum(line.startswith("| C-2 |") for line in lines) == 100
    assert sum(line.startswith("| 0.75 |") for line in lines) == 100
    assert [line for line in lines if line.startswith("…")] == [
        line for word in ("rows", "findings", "concessions", "rows") if (line := left.format(word).strip())
    ]
