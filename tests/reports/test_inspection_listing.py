"""The inspection list of a part as a page and as data, by hand: each part of it, from what rules rest on and not."""

from __future__ import annotations

from math import inf
from typing import Any

import pytest

from speclint.checking import Assessment, Check, Swing
from speclint.errors import NOWHERE, Complaint, Location, replace
from speclint.made import AskedOnPaper, InspectionList, InspectionPoint, inspection_list, ranked_rows
from speclint.reports import inspection_data, inspection_page
from speclint.reports.inspection_listing import carried_said, checks_said, not_read, said_of, sections
from speclint.reports.phrases import CAUTION
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES

WIDE = 600


@pytest.fixture
def tube(workshop: DesignFolder) -> tuple[Assessment, InspectionList]:
    """The tube in its rack, with all that is inspected on it."""
    workshop.loaded = tubes.tubes()
    made = workshop.write(FILES).assess()
    return made, inspection_list(made, "tube")


def stress_of(made: Assessment) -> Check:
    return next(one for one in made.checks if one.rule.name == "tube.stress")


def test_the_head_counts_what_has_limits_and_what_has_none(tube: tuple[Assessment, InspectionList]) -> None:
    made, found = tube
    more = replace(found, without_limits=found.ranked)
    page = inspection_page(made, more, WIDE).text().splitlines()
    assert page[0] == page[4] == "═" * WIDE
    assert page[1] == f"INSPECTION LIST   tube{'4 dimensions':>{WIDE - len('INSPECTION LIST   tube')}}"
    assert page[2].startswith("Ranked by how much of a limit the tolerance carries:")
    assert page[3] == (
        "Greatest uncertainty of a gauge (expanded, k = 2): 10 % of the tolerance; common practice is 10 %, and 20 % "
        "at the most (gauge_share under [made]). A reading in the accepted range proves conformity by ISO 14253-1, "
        "decision by guard band of U."
    )
    assert page[-2:] == ["", CAUTION]


def test_each_dimension_has_three_lines_by_hand(tube: tuple[Assessment, InspectionList]) -> None:
    """The stress p d/(D − d) at 30 bar is 75.375 MPa of 100 with the bore at 100.5 and the outside at 104.5 mm.

    With the outside at 105.5 it is 60.3, with the bore at 99.5 59.7: the bore carries 0.157. Cold the tube has 0.5 mm
    room in its rack with the outside at 105.5, 1.5 mm at 104.5, of which the heat takes 12.3e-6 × 200 × 105.5 = 0.260
    and 0.257: 0.519 and 0.171, so that the outside carries 0.348.
    """
    made, found = tube
    page = inspection_page(made, found, WIDE).text().splitlines()
    assert page[5:12] == [
        f"  1  outside  105 mm ±0.5{'tube.toml:5':>{WIDE - 25}}",
        "     carries 0.348 of a limit; 104.5 to 105.5 mm; U at most 0.1 mm; accepted from 104.6 to 105.4 mm",
        "     tube.loose-hot of tube: uses 0.17 at the low limit, 0.52 at the high; tube.stress of tube: uses 0.75 at "
        "the low limit, 0.60 at the high; tube.case-stress of tube, starting: uses 0.30 at the low limit, 0.24 at the "
        "high",
        f"  2  bore  100 mm ±0.5{'tube.toml:4':>{WIDE - 22}}",
        "     carries 0.157 of a limit; 99.5 to 100.5 mm; U at most 0.1 mm; accepted from 99.6 to 100.4 mm",
        "     tube.stress of tube: uses 0.60 at the low limit, 0.75 at the high; tube.case-stress of tube, starting: "
        "uses 0.24 at the low limit, 0.30 at the high",
        "",
    ]


def test_what_a_dimension_carries_is_said_where_it_is_a_number(
    tube: tuple[Assessment, InspectionList],
) -> None:
    row = next(iter(ranked_rows(tube[1])))
    row = replace(row, low="1", high="2", unit="mm", uncertainty="3", unit_of_uncertainty="µm")
    row = replace(row, accepted_from="1.1", accepted_to="1.9", carries="0.15")
    assert said_of(row) == "carries 0.15 of a limit; 1 to 2 mm; U at most 3 µm; accepted from 1.1 to 1.9 mm"
    assert carried_said(replace(row, carries="all")) == "carries all that is left; "
    assert carried_said(replace(row, carries="no number")) == ""


def test_of_the_checks_three_are_named(tube: tuple[Assessment, InspectionList]) -> None:
    made, found = tube
    one = Swing(stress_of(made), NOWHERE, "", 0.5, 0.75, compared=True)
    some = [
        one,
        replace(one, case="starting", low=None),
        replace(one, compared=False, why_not="it compares no numbers"),
    ]
    dimension = replace(found.ranked[0], rests=tuple(some))
    said = [
        "tube.stress of tube: uses 0.50 at the low limit, 0.75 at the high",
        "tube.stress of tube, starting: uses not judged at the low limit, 0.75 at the high",
        "tube.stress of tube: rests on it (it compares no numbers)",
    ]
    assert list(checks_said(dimension)) == said
    assert list(checks_said(replace(dimension, rests=(*some, one)))) == [*said, "and 1 check more"]
    assert list(checks_said(replace(dimension, rests=(*some, one, one))))[3] == "and 2 checks more"


def test_what_was_not_read_or_not_assessed_is_said_first(tube: tuple[Assessment, InspectionList]) -> None:
    made, found = tube
    assert list(not_read(made, "tube")) == []
    stress = stress_of(made)
    wanting = replace(stress, outcome="not assessed")
    unread = replace(
        made,
        complaints=(Complaint(Location("a"), "x"),) * 2,
        checks=(wanting, replace(wanting, component="b")),
    )
    said = [
        "2 lines could not be read, and what rests there is not ranked: speclint check.",
        "1 check of tube was not assessed: what rests on nothing here may rest there. speclint check says what is "
        "wanting.",
    ]
    assert list(not_read(unread, "tube")) == said
    page = inspection_page(unread, found, WIDE).text().splitlines()
    assert page[5:7] == said
    two = replace(unread, checks=(wanting, wanting, stress))
    assert list(not_read(two, "tube"))[1].startswith("2 checks of tube were not assessed: ")
    assert list(not_read(two, "rack"))[1:] == []


def test_what_follows_the_dimensions(tube: tuple[Assessment, InspectionList]) -> None:
    made, found = tube
    stress = stress_of(made)
    bare = replace(found, without_limits=(), conditions=(), figures=(), no_rule=())
    assert list(sections(bare)) == []
    bore, outside = sorted(found.ranked, key=lambda one: one.at.key)
    swing = Swing(stress, NOWHERE, "", 0.5, 0.75, compared=True, figure="strength", taken="least strength")
    where = Location("tube.toml", 9, "x")
    full = replace(
        bare,
        without_limits=(replace(bore, rests=(swing, swing)),),
        figures=(swing, replace(swing, compared=False, why_not="why")),
        points=(InspectionPoint("the weld", "not stated", where), InspectionPoint("release", "hold", where)),
        asked=(AskedOnPaper("certificate", "3.1", "certificates", where),),
        conditions=(outside,),
        unstated=(("hoops", ("tube.hoops", "tube.b")),),
        no_rule=(bore,),
    )
    told = {
        "Rules rest on these, and the drawing states no limits: no gauge can decide them": [
            "bore 100 mm ±0.5 (tube.toml:4): tube.stress"
        ],
        "Properties of the metal that rules rest on": [
            "least strength: tube.stress of tube: uses 0.50 at the low limit, 0.75 at the high",
            "least strength: tube.stress of tube rests on it (why)",
        ],
        "Hold and witness points": [
            "the weld: no point is stated; agree with the inspector before the work begins",
            "release: hold",
        ],
        "Certificates, examinations and tests asked for": [
            "certificate: 3.1 (tube.toml:9; recorded under certificates)"
        ],
        "Conditions that rules rest on, not measured on the part": ["outside 105 mm ±0.5 (tube.toml:5)"],
        "Rules ask for these, and the spec does not state them: what rests there is not ranked": [
            "hoops: tube.hoops, tube.b"
        ],
        "What no rule rests on": ["bore 100 mm ±0.5 (tube.toml:4)"],
    }
    assert list(sections(full)) == list(told.items())
    page = inspection_page(made, full, WIDE).text().splitlines()
    for heading, lines in told.items():
        start = page.index(heading)
        assert page[start - 1] == ""
        assert page[start + 1 : start + 2 + len(lines)] == [*(f"    {line}" for line in lines), ""]


def test_the_data_have_every_part_in_si_units(tube: tuple[Assessment, InspectionList]) -> None:
    made, found = tube
    stress = stress_of(made)
    where = Location("tube.toml", 9, "x")
    swing = Swing(stress, NOWHERE, "starting", 0.5, inf, compared=True, figure="strength", taken="least")
    bore = next(one for one in found.ranked if one.at.key == "bore")
    plain = replace(bore, rests=(), uncertainty=None, accepted=None)
    data = inspection_data(
        replace(made, complaints=(Complaint(where, "x"),)),
        InspectionList(
            part=found.part,
            ranked=(replace(bore, rests=(swing,), uncertainty=1e-4, accepted=(0.0996, 0.1004)), plain),
            without_limits=(plain,),
            conditions=(plain, plain),
            figures=(replace(swing, compared=False, low=None, high=0.75, case="", why_not="why"),),
            points=(InspectionPoint("release", "hold", where),),
            asked=(AskedOnPaper("certificate", "3.1", "certificates", where),),
            unstated=(("hoops", ("tube.hoops",)),),
            no_rule=(plain,),
            share=0.1,
            decision=found.decision,
        ),
    )
    quantity: dict[str, Any] = {
        "rank": None,
        "key": "bore",
        "drawn": "100 mm ±0.5",
        "low": pytest.approx(0.0995),
        "high": pytest.approx(0.1005),
        "carried": 0.0,
        "greatest_uncertainty": None,
        "accepted": None,
        "file": "tube.toml",
        "line": 4,
        "checks": [],
    }
    at_starting = {
        "component": "tube",
        "rule": "tube.stress",
        "case": "starting",
        "used_at_low": 0.5,
        "used_at_high": None,
        "no_margin_left": True,
        "why_not": None,
    }
    first = {"rank": 1, "carried": None, "greatest_uncertainty": 1e-4, "accepted": [0.0996, 0.1004]}
    assert data == {
        "schema": "speclint.inspection/1",
        "component": "tube",
        "decision": found.decision,
        "gauge_share": 0.1,
        "dimensions": [{**quantity, **first, "checks": [at_starting]}, {**quantity, "rank": 2}],
        "without_limits": [quantity],
        "properties": [
            {
                "figure": "strength",
                "taken": "least",
                **at_starting,
                "case": None,
                "used_at_low": None,
                "used_at_high": 0.75,
                "no_margin_left": False,
                "why_not": "why",
            }
        ],
        "points": [{"what": "release", "stands": "hold", "where": str(where)}],
        "asked_for": [
            {"what": "certificate", "stated": "3.1", "record": "certificates", "where": str(where)}
        ],
        "not_stated": [{"key": "hoops", "rules": ["tube.hoops"]}],
        "conditions": [quantity, quantity],
        "no_rule": [quantity],
        "not_read": [str(where)],
    }
