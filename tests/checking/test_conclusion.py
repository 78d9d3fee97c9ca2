"""Where a check points to: among the values of the component's own file, the one that is judged, and else another."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES, Rack, Tube, gap


def _tube(sheet: Sheet, tube: Tube) -> tuple[float, float]:
    """The bore, which the record then has first, and the outside."""
    return sheet.take("d", tube.bore), sheet.take("D", tube.outside)


def _hole(sheet: Sheet, tube: Tube) -> float:
    """The hole of the rack, which stands in another file."""
    rack: Rack = sheet.follow(tube.held_in)
    return sheet.take("H", rack.hole)


def value_judged(tube: Tube, sheet: Sheet) -> Judgement:
    bore, outside = _tube(sheet, tube)
    return sheet.at_least(outside, bore)


def value_judged_before_its_limit(tube: Tube, sheet: Sheet) -> Judgement:
    bore, outside = _tube(sheet, tube)
    return sheet.at_most(bore, outside)


def limit_of_what_was_worked(tube: Tube, sheet: Sheet) -> Judgement:
    bore, outside = _tube(sheet, tube)
    return sheet.at_most(sheet.work("g", gap, H=_hole(sheet, tube), D=bore), outside)


def limit_of_a_value_of_another_file(tube: Tube, sheet: Sheet) -> Judgement:
    _, outside = _tube(sheet, tube)
    return sheet.at_least(_hole(sheet, tube), outside)


def nothing_taken_is_judged(tube: Tube, sheet: Sheet) -> Judgement:
    sheet.count("n", tube.hoops)
    bore, outside = _tube(sheet, tube)
    return sheet.stays(sheet.work("g", gap, H=outside, D=bore), _hole(sheet, tube))


def nothing_is_compared(tube: Tube, sheet: Sheet) -> Judgement:
    _tube(sheet, tube)
    return sheet.states(holds=True, says="so it is")


def what_the_rule_names(tube: Tube, sheet: Sheet) -> Judgement:
    bore, outside = _tube(sheet, tube)
    return sheet.at_most(bore, outside).pointing_at(tube.temperature.where)


def nothing_taken(_tube: Tube, sheet: Sheet) -> Judgement:
    return sheet.states(holds=True, says="so it is")


def pointed_at(
    tmp_path: Path, judge: Callable[[Tube, Sheet], Judgement], text: str = FILES["tube.toml"]
) -> str:
    """The key that the check of such a rule points at."""
    made = rule(
        "tube.made", title="t", on=Tube, grade=Grade.QUERY, cites=[FIRST_PRINCIPLES], why="w", leaves_out="l"
    )(judge)
    shop = DesignFolder(tmp_path, tubes.tubes(made)).write({**FILES, "tube.toml": text})
    found = shop.only("tube.made")
    assert found.outcome == "conforms"
    assert found.where.file == "tube.toml"
    return found.where.key


@pytest.mark.parametrize(
    ("judge", "key"),
    [
        (value_judged, "outside"),
        (value_judged_before_its_limit, "bore"),
        (limit_of_what_was_worked, "outside"),
        (limit_of_a_value_of_another_file, "outside"),
        (nothing_taken_is_judged, "bore"),
        (nothing_is_compared, "bore"),
        (what_the_rule_names, "temperature"),
        (nothing_taken, ""),
    ],
)
def test_a_check_points_at_the_value_that_is_judged(
    tmp_path: Path, judge: Callable[[Tube, Sheet], Judgement], key: str
) -> None:
    """Bore and outside both govern, with the hole: of what is worked from both, the first whose side governs."""
    assert pointed_at(tmp_path, judge) == key


def test_of_two_values_alike_it_points_at_the_one_that_is_judged_by_its_name(tmp_path: Path) -> None:
    """Both are 100 mm: the bore is the first of that value."""
    alike = FILES["tube.toml"].replace("100 mm ±0.5", "100 mm").replace("105 mm ±0.5", "100 mm")
    assert pointed_at(tmp_path, value_judged, alike) == "outside"
