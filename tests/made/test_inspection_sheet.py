"""The rows of the inspection sheet, cell by cell, by hand: a tube of 100 mm ±0.5 and 105 mm ±0.5 in its rack.

As in ``test_inspection.py`` the bore carries 0.0025 of the limit of a pile, the outside 0.005.
"""

from __future__ import annotations

import math
from pathlib import Path

import msgspec

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.errors import replace
from speclint.made import ranked_rows
from speclint.made.inspection_sheet import SheetRow, carries, cells, other_rows
from tests import tubes
from tests.made.test_inspection import listed, pile


@rule(
    "tube.count",
    title="the tube has hoops, of whatever bore",
    on=tubes.Tube,
    grade=Grade.NONCONFORMITY,
    limits=[Limit("least", "4", "ratio", COMMON_PRACTICE, "least number of hoops")],
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def words_alone(tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """The bore is taken, and compared with nothing."""
    sheet.take("d", tube.bore)
    return sheet.states(sheet.read("ends", tube.ends) == "open", "the ends are open")


def of(rows: tuple[SheetRow, ...], key: str) -> SheetRow:
    return next(one for one in rows if one.dimension == key)


def test_a_row_has_its_limits_its_gauge_and_what_proves_conformity(tmp_path: Path) -> None:
    """1 mm between the limits: U is a tenth of it, and as much is taken off at each end."""
    rows = ranked_rows(listed(tmp_path))
    head = ("1", "outside", "105 mm ±0.5", "104.5", "105.5", "mm")
    assert msgspec.structs.astuple(rows[0]) == (
        *head,
        "0.005",
        "tube.reach",
        "tube.toml:5",
        "0.1",
        "104.6",
        "105.4",
        "mm",
    )
    assert [(one.rank, one.carries) for one in rows] == [("1", "0.005"), ("2", "0.0025")]
    assert cells(rows[0]) == (
        *msgspec.structs.astuple(rows[0])[:-1],
        "",
        "",
        "mm",
        "",
        "",
        "",
        "",
        "",
    )  # the inspector fills in


def test_a_row_without_limits_says_so_and_has_no_gauge(tmp_path: Path) -> None:
    rows = ranked_rows(listed(tmp_path, ("100 mm ±0.5", "100 mm")))
    row = of(rows, "bore")
    assert (row.rank, row.low, row.high, row.uncertainty, row.accepted_from, row.accepted_to) == ("",) * 6
    assert (row.drawn, row.unit, row.carries, row.rule) == ("100 mm", "mm", "no limits", "tube.reach")


def test_a_row_of_which_no_rule_compares_a_number_says_so(tmp_path: Path) -> None:
    row = of(ranked_rows(listed(tmp_path, rules=(words_alone,))), "bore")
    assert (row.low, row.high, row.carries, row.rule) == ("99.5", "100.5", "no number", "tube.count")


def test_a_row_that_no_rule_rests_on_has_its_limits_all_the_same(tmp_path: Path) -> None:
    rows = other_rows(listed(tmp_path, rules=(tubes.hoops,)))
    assert [(one.dimension, one.low, one.high, one.carries, one.rule) for one in rows] == [
        ("bore", "99.5", "100.5", "", "no rule rests on it"),
        ("outside", "104.5", "105.5", "", "no rule rests on it"),
    ]


def test_a_row_names_the_part_of_the_rule_and_how_many_others_there_are(tmp_path: Path) -> None:
    """The bore is taken by two rules, the outside by three; the hole of the rack by one of its tube."""
    rows = ranked_rows(listed(tmp_path, rules=tubes.RULES))
    assert of(rows, "bore").rule == "tube.stress and 1 more"
    assert of(rows, "outside").rule == "tube.loose-hot and 2 more"
    [row] = ranked_rows(listed(tmp_path, part="rack", rules=tubes.RULES))
    assert row.rule == "tube.loose-hot of tube"


def test_what_uses_up_all_of_a_limit_carries_all_of_it(tmp_path: Path) -> None:
    one = listed(tmp_path, rules=(pile,)).ranked[0]
    whole = replace(one.rests[0], high=None)
    assert math.isinf(whole.carried)
    assert carries(replace(one, rests=(whole,))) == "all"
