"""What rests on a value, as a page and as data: of the tube at 45 bar, each line by hand."""

from __future__ import annotations

import pytest

from speclint.checking import Assessment, Check, Consequences
from speclint.errors import Complaint, Location, replace
from speclint.reports import consequences_data, consequences_page
from speclint.reports.phrases import CAUTION
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_register_listing import ONE, lines
from tests.tubes import FILES

NOTHING = Consequences("tube", "pressure", "45 bar gauge", ("tube",), (), (), (), ())


@pytest.fixture
def tube(workshop: DesignFolder) -> Assessment:
    """A tube that is too thin for its pressure, with a number on its drawing and on that of its rack."""
    workshop.loaded = tubes.tubes()
    text = FILES["tube.toml"].replace("30 bar", "45 bar") + 'drawing = "X-2"\nrevision = "B"\n'
    workshop.write({**FILES, "tube.toml": text, "rack.toml": FILES["rack.toml"] + 'drawing = "X-1"\n'})
    return workshop.assess()


def check(of: Assessment, rule: str) -> Check:
    (found,) = (one for one in of.checks if one.rule.name == rule)
    return found


def said(of: Assessment, found: Consequences) -> list[str]:
    text = lines(consequences_page(of, found, 200).text())
    assert text[-1] == CAUTION
    return text[:-1]


def with_many(tube: Assessment, parts: int) -> tuple[Assessment, tuple[Check, ...]]:
    """So many tubes alike, of which the first has one check more, which does not apply."""
    stress, ends = check(tube, "tube.stress"), check(tube, "tube.ends")
    names = [f"tube-{number:02}" for number in range(parts)]
    assert tube.design is not None
    specs = {**tube.design.specs, **dict.fromkeys(names, tube.design.specs["tube"])}
    checks = [replace(stress, component=name) for name in names]
    checks.insert(0, replace(ends, component=names[0], outcome="not applicable"))
    return replace(tube, design=replace(tube.design, specs=specs)), tuple(checks)


def test_checks_of_many_parts_are_counted_and_all_told_where_that_is_asked_for(tube: Assessment) -> None:
    """Thirteen parts are more than the twelve of a page; a check that does not apply judges nothing."""
    many, checks = with_many(tube, 13)
    found = replace(NOTHING, checks=checks)
    page = said(many, found)
    assert page[1:9] == [
        "14 checks on 13 parts rest on it.",
        "",
        "By family",
        "    tubes               13 checks on 13 parts",
        "",
        "By kind",
        "    tube                13 checks on 13 parts",
        "",
    ]
    assert page[9:18] == [
        "The least to spare",
        *(f"    tube-{one:02} tube.stress 1.13 (finding)" for one in range(8)),
    ]
    assert page[18:20] == ["", "Every part with its checks: --full."]
    whole = lines(consequences_page(many, found, 200, full=True).text())
    assert "By family" not in whole
    assert sum(line == "    tube.stress 1.13 (finding)" for line in whole) == 12
    few, checks = with_many(tube, 12)
    assert "By family" not in said(few, replace(NOTHING, checks=checks))


def test_checks_stand_below_their_part_with_what_they_use(tube: Assessment) -> None:
    """113.06 MPa of 100: 1.13; four hoops of four: 1; the ends are open, which is no number."""
    stress, hoops, ends = (check(tube, name) for name in ("tube.stress", "tube.hoops", "tube.ends"))
    idle = replace(ends, component="rack", outcome="not applicable")
    found = said(tube, replace(NOTHING, checks=(idle, stress, hoops, ends, replace(idle, component="tube"))))
    assert found[0].startswith("tube.pressure = 45 bar gauge  ")
    assert found[0].endswith("  tube (X-2 B)")
    assert found[1:] == [
        "5 checks on 2 parts rest on it.",
        "",
        "rack (X-1)",
        "    1 that does not apply as it stands",
        "",
        "tube (X-2 B)",
        "    tube.stress 1.13 (finding); tube.hoops 1.00; tube.ends; 1 that does not apply as it stands",
        "",
        "Joined to tube by a link: nothing.",
        "Drawings concerned: X-1, X-2.",
    ]


def test_checks_that_do_not_apply_are_counted(tube: Assessment) -> None:
    idle = replace(check(tube, "tube.ends"), outcome="not applicable")
    found = said(tube, replace(NOTHING, checks=(idle, idle)))
    assert "    2 that do not apply as it stands" in found
    assert "2 checks on 1 part rest on it." in found


def test_where_nothing_rests_on_it_the_page_says_so(tube: Assessment) -> None:
    found = said(tube, NOTHING)
    assert found[1:] == [
        "0 checks on 0 parts rest on it.",
        "",
        "Joined to tube by a link: nothing.",
        "Drawings concerned: X-2.",
    ]
    whole = said(tube, replace(NOTHING, key="", stated="", component="rack", read_in=()))
    assert whole[0].startswith("rack  ")
    assert whole[1] == "0 checks on 0 parts look at it."
    assert whole[-1] == "Drawings concerned: none is numbered."
    silent = said(tube, replace(NOTHING, stated=""))
    assert silent[0].startswith("tube.pressure = not stated  ")


def test_what_else_it_reaches(tube: Assessment) -> None:
    found = said(
        tube,
        replace(
            NOTHING,
            read_in=("tube", "rack"),
            joined=("rack", "duty"),
            made=("tube-7", "tube-8"),
            concessions=(ONE,),
        ),
    )
    assert found[1:] == [
        "The same line is read for rack: they change with it.",
        "0 checks on 0 parts rest on it.",
        "",
        "Concession C-1 rests on it: tube.stress on tube, tube-right.",
        "Joined to tube by a link: rack, duty.",
        "Parts made already that it concerns: tube-7, tube-8.",
        "Drawings concerned: X-1, X-2.",
    ]


def test_what_could_not_be_read_is_not_counted(tube: Assessment) -> None:
    fault = Complaint(Location("odd.toml", 4), "broken")
    found = said(replace(tube, complaints=(fault,)), NOTHING)
    assert found[2] == "1 line could not be read, and what rests there is not counted: speclint check."
    assert consequences_data(replace(tube, complaints=(fault,)), NOTHING)["not_read"] == ["odd.toml:4"]


def test_the_same_as_data(tube: Assessment) -> None:
    hoops = check(tube, "tube.hoops")
    found = consequences_data(tube, replace(NOTHING, checks=(hoops,), made=("tube-7",), concessions=(ONE,)))
    assert found == {
        "component": "tube",
        "key": "pressure",
        "stated": "45 bar gauge",
        "read_in": ["tube"],
        "checks": [{"component": "tube", "rule": "tube.hoops", "outcome": "conforms", "utilisation": 1.0}],
        "joined": [],
        "made_parts": ["tube-7"],
        "concessions": ["C-1"],
        "drawings": ["X-2"],
        "not_read": [],
    }
