"""What some values would do to a design, as a page and as data: of results made here, each line by hand."""

from __future__ import annotations

import math

import pytest

from speclint.checking import Assessment, Bound, Check, MovedMargin, Question, Restatement, Solved, WhatIf
from speclint.errors import Location, replace
from speclint.reports.what_if import what_if_data, what_if_page
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_register_listing import lines
from tests.tubes import FILES

ASKED = Question("tube", "pressure", "50 bar gauge")
RESTATED = Restatement(ASKED, Location("tube.toml", 6, "pressure"), "45 bar gauge")


@pytest.fixture
def tube(workshop: DesignFolder) -> Assessment:
    """A tube at 45 bar, which uses 1.13 of what its wall allows."""
    workshop.loaded = tubes.tubes()
    text = FILES["tube.toml"].replace("30 bar", "45 bar") + 'drawing = "X-2"\n'
    return workshop.write({**FILES, "tube.toml": text}).assess()


def check(of: Assessment, rule: str) -> Check:
    (found,) = (one for one in of.checks if one.rule.name == rule)
    return found


def using(one: Check, share: float | None, **changed: object) -> Check:
    """The check with another share of its limit."""
    assert one.judgement is not None
    return replace(one, judgement=replace(one.judgement, utilisation=share), **changed)  # type: ignore[arg-type]


def said(found: WhatIf, solved: Solved | None = None) -> list[str]:
    page = lines(what_if_page(found, 150, solved).text())
    assert page[0].startswith("WHAT IF  ")
    assert page[0].endswith("  nothing is written")
    return page[1:-1]


def nothing(of: Assessment) -> WhatIf:
    return WhatIf((RESTATED,), of, of)


def test_where_no_margin_moves_the_page_says_so(tube: Assessment) -> None:
    found = said(nothing(tube))
    assert found[0] == "tube.pressure: 45 bar gauge → 50 bar gauge   (tube.toml:6)"
    assert f"No margin moves, and no check comes out otherwise, of {len(tube.checks)} checks." in found
    assert "NEW: no finding." in found
    assert "CLEARED: no finding." in found


def test_a_value_that_was_not_stated_and_is_read_for_others(tube: Assessment) -> None:
    one = Restatement(ASKED, Location("tube.toml"), "", ("tube-b", "tube-c"))
    found = said(replace(nothing(tube), restated=(one,)))
    assert found[:2] == [
        "tube.pressure: not stated → 50 bar gauge   (tube.toml)",
        "    The same line is read for tube-b, tube-c: they change with it.",
    ]


def test_specs_that_the_paths_leave_out_may_move_too(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    some = workshop.write(FILES).assess("tube.toml")
    found = said(WhatIf((), some, some))
    assert "Only what the paths choose is compared; 2 other specs may move too." in found
    whole = workshop.assess()
    assert not any("paths choose" in line for line in said(WhatIf((), whole, whole)))


def test_margins_that_move_alike_are_told_once(tube: Assessment) -> None:
    stress, ends = check(tube, "tube.stress"), check(tube, "tube.ends")
    was = using(stress, 0.75375, outcome="conforms", grade=None)
    moved = (
        MovedMargin(was, stress),
        MovedMargin(replace(was, component="tube-b"), replace(stress, component="tube-b")),
        MovedMargin(using(was, 0.75375 + 1e-8), stress),  # another by more than nine figures show
        MovedMargin(ends, replace(ends, outcome="finding")),
        MovedMargin(None, using(stress, math.inf)),
        MovedMargin(using(stress, None, outcome="not assessed"), None),
    )
    found = said(replace(nothing(tube), moved=moved))
    start = next(number for number, line in enumerate(found) if "move, the worst change first" in line)
    assert found[start].startswith(
        f"6 margins of {len(tube.checks)} checks move, the worst change first: before,"
    )
    rows = [line for line in found if "tube.stress" in line or "tube.ends" in line]
    assert rows == [
        "     0.75    1.13   tube and 1 more alike tube.stress: conforms, then finding",
        "     0.75    1.13   tube tube.stress: conforms, then finding",
        "    holds   fails   tube tube.ends: conforms, then finding",
        "     none   > all   tube tube.stress: not made, then finding",
        "        –    none   tube tube.stress: not assessed, then not made",
    ]


def test_a_margin_that_stays_a_finding_says_no_more(tube: Assessment) -> None:
    stress = check(tube, "tube.stress")
    found = said(replace(nothing(tube), moved=(MovedMargin(stress, using(stress, 1.26)),)))
    assert f"1 margin of {len(tube.checks)} checks move" in " ".join(found)
    assert "     1.13    1.26   tube tube.stress" in found


def test_findings_that_come_and_go(tube: Assessment) -> None:
    stress, ends = check(tube, "tube.stress"), check(tube, "tube.ends")
    alike = replace(stress, component="tube-b")
    unknown = replace(ends, outcome="not assessed", grade=None)
    found = said(replace(nothing(tube), new=(stress, alike, unknown), cleared=(ends,)))
    at = found.index("NEW: 3 findings")
    assert found[at + 1].startswith("  tube (X-2) and 1 more alike: hold: tube.stress: ")
    assert any(line.startswith("  tube (X-2): finding, not assessed: tube.ends: ") for line in found)
    cleared = found.index("CLEARED: 1 finding")
    assert at < cleared
    assert found[cleared + 1].startswith("  tube (X-2): finding: tube.ends: ")


UP = Bound("39 bar gauge", 0.98, True, "40 bar gauge", "0.01 too much")
DOWN = Bound("39.5 bar gauge", None, False, exact=True)
PROVED = "; proved by running the rule with it"


@pytest.mark.parametrize(
    ("holds", "bounds", "within", "told"),
    [
        (
            True,
            (UP,),
            "50 %",
            [
                f"  It just holds up to 39 bar gauge, 0.98 of the limit{PROVED}; 40 bar gauge fails: 0.01 too much.",
                "  It still holds with a smaller value within 50 %, as far as was looked.",
            ],
        ),
        (
            True,
            (DOWN,),
            "50 %",
            [
                "  It just holds down to 39.5 bar gauge, exactly, as the step of the drawing office is too coarse"
                f"{PROVED}.",
                "  It still holds with a greater value within 50 %, as far as was looked.",
            ],
        ),
        (True, (UP, DOWN), "50 %", None),
        (True, (), "50 %", ["  It still holds either way within 50 %, as far as was looked."]),
        (True, (), "", ["  No other value was tried: as it is written, it has no step to go by."]),
        (False, (), "50 %", ["  No change within 50 % makes it hold."]),
        (
            False,
            (UP,),
            "50 %",
            [f"  The least change that holds is 39 bar gauge, 0.98 of the limit{PROVED}."],
        ),
    ],
)
def test_what_was_solved_for(
    tube: Assessment, holds: bool, bounds: tuple[Bound, ...], within: str, told: list[str] | None
) -> None:
    stress = check(tube, "tube.stress")
    found = said(nothing(tube), Solved(ASKED, stress, holds, "45 bar gauge", bounds, within))
    at = found.index("SOLVED FOR tube.stress on tube")
    assert found[at - 1] == ""
    verb = "holds" if holds else "fails"
    assert found[at + 1] == f"  It {verb} with tube.pressure = 45 bar gauge, 1.13 of the limit."
    text = " ".join(line.strip() for line in found[at + 2 :])
    end = text.index("No margin moves")
    if told is None:
        assert "It still holds" not in text[:end]
        return
    assert text[:end].strip() == " ".join(line.strip() for line in told)


def test_what_has_no_number_says_none(tube: Assessment) -> None:
    ends = check(tube, "tube.ends")
    found = said(nothing(tube), Solved(ASKED, ends, True, "open", (), ""))
    assert "  It holds with tube.pressure = open." in found


def test_the_same_as_data(tube: Assessment) -> None:
    stress, ends = check(tube, "tube.stress"), check(tube, "tube.ends")
    found = replace(
        nothing(tube),
        moved=(MovedMargin(None, using(stress, math.inf)), MovedMargin(ends, None)),
        new=(stress,),
        cleared=(replace(ends, grade=None),),
    )
    data = what_if_data(found, Solved(ASKED, stress, False, "45 bar gauge", (UP,), "50 %"))
    assert data["set"] == [
        {
            "component": "tube",
            "key": "pressure",
            "was": "45 bar gauge",
            "then": "50 bar gauge",
            "file": "tube.toml",
            "line": 6,
            "read_for": [],
        }
    ]
    assert data["solved"] == {
        "component": "tube",
        "rule": "tube.stress",
        "value": "tube.pressure",
        "holds": False,
        "now": "45 bar gauge",
        "bounds": [
            {
                "value": "39 bar gauge",
                "utilisation": 0.98,
                "higher": True,
                "beyond": "40 bar gauge",
                "why": "0.01 too much",
            }
        ],
    }
    assert data["checks"] == len(tube.checks)
    assert data["moved"] == [
        {
            "component": "tube",
            "rule": "tube.stress",
            "before": None,
            "after": {"outcome": "finding", "grade": "hold", "utilisation": "no margin left"},
        },
        {
            "component": "tube",
            "rule": "tube.ends",
            "before": {"outcome": "conforms", "grade": None, "utilisation": None},
            "after": None,
        },
    ]
    (new,), (cleared,) = data["new"], data["cleared"]
    assert (new["component"], new["rule"], new["outcome"], new["grade"]) == (
        "tube",
        "tube.stress",
        "finding",
        "hold",
    )
    assert (cleared["rule"], cleared["grade"]) == ("tube.ends", None)
    assert what_if_data(nothing(tube))["solved"] is None
