"""What nobody looked at, as sentences, as a page and as data, of hazards that are made here."""

from __future__ import annotations

from typing import Any

import pytest

from speclint.checking import Check, HazardSeen, LeftOut, Unseen
from speclint.errors import NOWHERE, replace
from speclint.reports.unseen_listing import hazards_counted, unseen_data, unseen_page
from speclint.rules import Judgement
from tests import tubes


def check(outcome: str = "conforms", **other: Any) -> Check:
    judged = None if outcome == "not assessed" else Judgement(holds=True, says="so")
    one = Check("a", "tube", tubes.stress, outcome, "so", NOWHERE, "", judgement=judged)  # type: ignore[arg-type]
    return replace(one, **other)


WAITS = check("not assessed", missing=("the bore",), rule=tubes.hoops)
HAZARDS = (
    HazardSeen("a", "tube", "burst", "judged", (check(), WAITS)),
    HazardSeen("a", "tube", "leak", "no rule"),
    HazardSeen("a", "tube", "wear", "not assessed", (WAITS,)),
    HazardSeen("b", "tube", "burst", "no rule"),
    HazardSeen("b", "tube", "leak", "no rule"),
    HazardSeen("b", "tube", "wear", "not assessed", (WAITS,)),
    HazardSeen("c", "rack", "wear", "not applicable", (check("not applicable"),)),
)
SEVERAL = LeftOut("heat", ("r1", "r2", "r3", "r4"), ("a", "b"))
FOUND = Unseen(
    HAZARDS,
    ("d", "e"),
    ("r5",),
    (SEVERAL, LeftOut("cold", ("r1", "r2", "r3"), ("a",))),
    (LeftOut("no bore", ("r1",), ("a",)),),
    2,
)


def lines(found: Unseen = FOUND, width: int = 100) -> list[str]:
    return unseen_page(found, width).text().splitlines()


def section(heading: str, found: Unseen = FOUND) -> list[str]:
    """The lines under a heading, up to the next gap."""
    page = lines(found)
    rest = page[page.index(heading) + 1 :]
    return rest[: rest.index("")] if "" in rest else rest


@pytest.mark.parametrize(
    ("hazards", "said"),
    [
        (HAZARDS, "3 of 7 hazards of 3 parts have no rule, 2 not assessed, 1 not applicable"),
        (HAZARDS[:2], "1 of 2 hazards of 1 part has no rule"),
        (HAZARDS[:1], "0 of 1 hazard of 1 part have no rule"),
    ],
)
def test_hazards_are_counted_in_a_sentence(hazards: tuple[HazardSeen, ...], said: str) -> None:
    assert hazards_counted(replace(FOUND, hazards=hazards)) == said


def test_the_page_begins_with_the_sums() -> None:
    page = lines()
    assert page[:3] == [
        "What was not looked at",
        "3 of 7 hazards of 3 parts have no rule, 2 not assessed, 1 not applicable; 1 judged.",
        "2 lines could not be read; what stands there is not counted: speclint check.",
    ]
    assert not any("could not be read" in one for one in lines(replace(FOUND, unread=0)))


def test_the_table_has_a_row_for_each_hazard_and_one_for_all() -> None:
    """Columns as wide as their heads and three more; nothing stands as a dash."""
    page = lines()
    at = next(n for n, one in enumerate(page) if one.startswith("hazard"))
    states = ("judged", "not assessed", "not applicable", "no rule")
    wide = [len(one) + 3 for one in states]
    assert page[at] == "hazard".ljust(18) + "".join(one.rjust(n) for one, n in zip(states, wide, strict=True))
    rows = {"burst": "1––1", "leak": "–––2", "wear": "–21–", "all": "1213"}
    wanted = {
        name: name.ljust(18) + "".join(cell.rjust(n) for cell, n in zip(cells, wide, strict=True))
        for name, cells in rows.items()
    }
    assert {one.split()[0]: one for one in page[at + 1 : at + 5]} == wanted
    inks = [
        line[0][1]
        for line in unseen_page(FOUND, 100).lines
        if line and line[0][0].startswith(("all", "burst "))
    ]
    assert inks == ["", "strong"]


def test_on_a_narrow_page_each_hazard_has_a_line() -> None:
    assert "hazard" in [one.split()[0] for one in lines(width=68) if one]
    narrow = " ".join(" ".join(lines(width=67)).split())
    assert "burst 1 judged, 0 not assessed, 0 not applicable, 1 no rule" in narrow
    assert "all 1 judged, 2 not assessed, 1 not applicable, 3 no rule" in narrow


def test_each_gap_stands_by_kind_with_how_many_parts_where_not_all() -> None:
    assert section("No rule guards against it, by kind") == ["  tube (2 parts): leak, burst (1 of them)"]
    assert section("A rule guards against it, and no check of one could be made, by kind") == [
        "  tube (2 parts): wear"
    ]
    assert section("Rules guard against it, and none applies, by kind")[0] == "  rack (1 part): wear"


def test_reasons_stand_by_part_those_alike_together() -> None:
    assert section("A rule guards against it, and no check of one could be made, by part") == [
        "  a, b, wear: tube.hoops: the bore"
    ]
    assert section("Rules guard against it, and none applies, by part") == ["  c, wear: tube.stress: so"]
    assert section("Judged, with a check of the same hazard that could not be made") == [
        "  a, burst: tube.hoops"
    ]


def test_what_is_not_counted_is_named() -> None:
    assert section("Not counted, or not judged at all") == [
        "  parts of which no hazard was judged: b, c",
        "  parts of kinds that do not say what they can suffer: d, e",
        "  rules that do not say what they guard against: r5",
    ]
    whole = replace(FOUND, hazards=HAZARDS[:1], unsaid=(), silent=())
    assert "Not counted, or not judged at all" not in lines(whole)


def test_what_rules_leave_out_stands_with_three_of_them() -> None:
    assert section("What the rules that apply leave out, in their own words") == [
        "  heat (r1, r2, r3 and 1 more; 2 parts)",
        "  cold (r1, r2, r3; 1 part)",
    ]
    assert section("Checks that do not apply, by their reason") == ["  no bore (r1; 1 part)"]


def test_of_one_part_each_hazard_is_told_with_what_judges_it() -> None:
    """And nothing by kind: there is but one."""
    alone = replace(FOUND, hazards=HAZARDS[:3])
    assert section("Each hazard of a", alone)[:3] == [
        "  burst: judged by tube.stress",
        "  leak: no rule",
        "  wear: not assessed",
    ]
    assert not any("by kind" in one for one in lines(alone))
    assert not any("Each hazard of" in one for one in lines())


def test_the_same_as_data() -> None:
    found = unseen_data(FOUND)
    assert found["hazards"] == {"judged": 1, "not assessed": 2, "not applicable": 1, "no rule": 3, "parts": 3}
    assert found["by_kind"]["rack"] == {"judged": 0, "not assessed": 0, "not applicable": 1, "no rule": 0}
    assert found["by_kind"]["tube"] == {"judged": 1, "not assessed": 2, "not applicable": 0, "no rule": 3}
    assert [(one["component"], one["hazard"]) for one in found["not_judged"]] == [
        ("a", "leak"),
        ("a", "wear"),
        ("b", "burst"),
        ("b", "leak"),
        ("b", "wear"),
        ("c", "wear"),
    ]
    assert found["judged_in_part"] == [
        {
            "component": "a",
            "kind": "tube",
            "hazard": "burst",
            "state": "judged",
            "reasons": ["tube.hoops: the bore"],
        }
    ]
    assert found["never_judged"] == ["b", "c"]
    assert (found["kinds_that_do_not_say"], found["rules_that_do_not_say"]) == (["d", "e"], ["r5"])
    assert found["left_out"][0] == {"says": "heat", "rules": ["r1", "r2", "r3", "r4"], "parts": ["a", "b"]}
    assert found["not_applicable"] == [{"says": "no bore", "rules": ["r1"], "parts": ["a"]}]
    assert found["not_read"] == 2
    bare = replace(FOUND, hazards=(HazardSeen("a", "tube", "burst", "judged", (check(),)),))
    assert unseen_data(bare)["judged_in_part"] == []
