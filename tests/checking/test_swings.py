"""What a check uses of its limit with one value at its low and at its high limit: each number by hand, on a tube."""

from __future__ import annotations

import math
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.checking import Swing, swings
from speclint.checking.swings import _most_apart
from speclint.checking.time_limit import Overrun
from speclint.errors import NOWHERE, FamilyError, Location, replace
from speclint.handbook.tables.reading import Reading
from speclint.rules import NotApplicable
from speclint.specs import Component
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import DUTY, FILES, TUBE, Tube


def swung(shop: DesignFolder, name: str, of: str = "tube", *, instead: Rule | None = None) -> list[Swing]:
    """The swings of a rule's check of the tube by the values of a part."""
    found = shop.assess()
    assert found.context is not None
    assert found.design is not None
    (check,) = (one for one in found.checks if one.rule.name == name)
    part = found.design.specs[of]
    assert isinstance(part, Component)
    return list(swings(replace(check, rule=instead or check.rule), part, found.context))


def used(found: list[Swing]) -> dict[str, tuple[float | None, float | None]]:
    """What is used at the low and at the high limit, rounded, by the key or the figure."""
    return {
        one.where.key or one.figure: tuple(
            None if end is None else round(end, 5) for end in (one.low, one.high)
        )  # type: ignore[misc]
        for one in found
        if one.compared
    }


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path, tubes.tubes()).write(FILES)


def with_rule(tmp_path: Path, function: Any, *limits: Limit) -> DesignFolder:
    made = rule(
        "tube.made",
        title="t",
        on=Tube,
        grade=Grade.QUERY,
        cites=[FIRST_PRINCIPLES],
        why="w",
        leaves_out="l",
        limits=limits,
    )(function)
    return DesignFolder(tmp_path, tubes.tubes(made)).write(FILES)


def test_each_value_is_put_on_both_sides_all_else_at_the_governing_corner(shop: DesignFolder) -> None:
    """3 d/(D − d) MPa of 100 MPa, at worst d = 100.5 and D = 104.5 mm. d = 99.5: 59.7; D = 105.5: 60.3 MPa."""
    found = swung(shop, "tube.stress")
    assert used(found) == {"bore": (0.597, 0.75375), "outside": (0.75375, 0.603)}
    (exact,) = (one for one in found if not one.compared)
    assert (exact.where.key, exact.why_not, exact.carried) == ("pressure", "it states no limits", 0.0)
    assert {one.case for one in found} == {""}


@pytest.mark.parametrize(
    ("bar", "case", "ends"), [(10, "starting", (0.2388, 0.3015)), (14, "running", (0.2786, 0.35175))]
)
def test_the_load_case_in_which_most_is_carried_is_kept(
    shop: DesignFolder, bar: int, case: str, ends: tuple[float, float]
) -> None:
    """0.012 × 99.5/5 to 0.012 × 100.5/4 starting at 12 bar; 14/12 of it running at 14 bar."""
    shop.write({"duty.toml": DUTY.replace("10 bar", f"{bar} bar")})
    found = swung(shop, "tube.case-stress")
    assert used(found)["bore"] == ends
    assert {one.case for one in found if one.where.key == "bore"} == {case}


def test_a_figure_of_a_table_swings_for_the_part_whose_metal_it_is(shop: DesignFolder) -> None:
    """Of 106 − 105.5 = 0.5 mm, 105.5 × 200 K × 11.7 or 12.3e-6/K close 0.24687 or 0.25953 mm: 0.49374 or 0.51906.

    With the outside at 104.5 mm it closes 0.257070 of 1.5 mm: 0.17138; at 200 °C: 0.2335770 of 0.5 mm. The hole is the
    rack's: at 106.1 mm 0.6 mm, of which 0.43255 is used.
    """
    found = swung(shop, "tube.loose-hot")
    assert used(found) == {
        "outside": (0.17138, 0.51906),
        "temperature": (0.46715, 0.51906),
        "expansion": (0.49374, 0.51906),
    }
    (figure,) = (one for one in found if one.where == NOWHERE)
    assert figure.taken == "expansion 12.3e-6/K (greatest)"
    assert used(swung(shop, "tube.loose-hot", "rack")) == {"hole": (0.51906, 0.43255)}


def _of_rack(tube: Tube, sheet: Sheet) -> Judgement:
    """The expansion of the rack."""
    rack = sheet.follow(tube.held_in)
    return sheet.at_most(sheet.look_up("α", tubes.expansion, of=rack), sheet.limit("most"))


def test_a_figure_of_a_mate_is_named_without_it_and_swings_for_the_mate_alone(tmp_path: Path) -> None:
    """11.7 and 12.3e-6/K of 24.6e-6/K."""
    most = Limit("most", "24.6e-6 1/K", "expansion", COMMON_PRACTICE, "greatest expansion")
    shop = with_rule(tmp_path, _of_rack, most)
    (figure,) = swung(shop, "tube.made", "rack")
    assert used([figure]) == {"expansion": (0.47561, 0.5)}
    assert figure.taken == "expansion of rack 12.3e-6/K (greatest)"
    assert swung(shop, "tube.made", "tube") == []


def _plain(tube: Tube, sheet: Sheet) -> Judgement:
    """A bore of which both limits are taken at once, beside a figure without a band."""
    sheet.look_up("α", lambda: Reading.exact("an expansion", 1e-5, "1/K", COMMON_PRACTICE), of=tube)
    _, high = sheet.take_limits("d", tube.bore)
    return sheet.at_most(high, sheet.limit("most"))


MOST = Limit("most", "201 mm", "length", COMMON_PRACTICE, "greatest bore")


def test_a_value_that_is_taken_with_both_limits_is_restated_at_each(tmp_path: Path) -> None:
    """99.5/201 and 100.5/201 mm."""
    found = swung(with_rule(tmp_path, _plain, MOST), "tube.made")
    assert used(found) == {"bore": (0.49502, 0.5)}
    (figure,) = (one for one in found if one.where == NOWHERE)
    assert (figure.compared, figure.why_not) == (False, "the table gives it no limits")
    assert "least" not in figure.taken


def _long(tube: Tube, sheet: Sheet) -> Judgement:
    """The same beside the result of a long calculation."""
    sheet.look_up("n", lambda: Reading("a cycle", 1.0, 1.0, 1.0, "1", COMMON_PRACTICE, worked=True), of=tube)
    return _plain(tube, sheet)


def test_no_value_is_restated_where_a_rule_rests_on_a_long_calculation(tmp_path: Path) -> None:
    found = swung(with_rule(tmp_path, _long, MOST), "tube.made")
    assert used(found) == {}
    said = {one.where.key: one.why_not for one in found if one.where != NOWHERE}
    assert said == {"bore": "the rule rests on a long calculation"}


def _some(tube: Tube, sheet: Sheet) -> Judgement:
    """A pressure, of which there must be some."""
    _, high = sheet.take_limits("p", tube.pressure)
    if high <= 1e5:
        raise sheet.not_applicable("there is no such pressure")
    return sheet.at_most(high, sheet.limit("most"))


@pytest.mark.parametrize(
    ("pressure", "ends", "why"),
    [
        ("0..2 bar gauge", None, "the rule takes no zone of nothing"),
        ("1..2 bar gauge", (None, 0.5), ""),  # at 1 bar nothing is compared
        ("1.2..2 bar gauge", (0.3, 0.5), ""),
    ],
)
def test_a_rule_that_ends_at_one_limit(
    tmp_path: Path, pressure: str, ends: tuple[float | None, float | None] | None, why: str
) -> None:
    most = Limit("most", "4 bar", "pressure", COMMON_PRACTICE, "greatest pressure")
    shop = with_rule(tmp_path, _some, most).replace("tube.toml", "30 bar gauge", pressure)
    (found,) = swung(shop, "tube.made")
    assert found.why_not == why
    assert used([found]).get("pressure") == ends
    assert found.carried == pytest.approx(0.0 if ends is None else math.inf if ends[0] is None else 0.2)


def _words(tube: Tube, sheet: Sheet) -> Judgement:
    """No comparison of numbers."""
    return sheet.states(sheet.take("d", tube.bore) > 0, "there is a bore")


def test_a_rule_that_compares_no_numbers_carries_nothing(tmp_path: Path) -> None:
    (found,) = swung(with_rule(tmp_path, _words), "tube.made")
    assert (found.compared, found.why_not) == (False, "the rule compares no numbers")


def test_a_rule_that_breaks_off_swings_nothing(shop: DesignFolder) -> None:
    broken = replace(tubes.raises, family="tubes")
    assert swung(shop, "tube.stress", instead=broken) == []


def test_a_rule_that_does_not_end_is_told_with_its_family(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    def late(*_: object) -> None:
        raise Overrun

    monkeypatch.setattr(sys.modules["speclint.checking.swings"], "written_at", late)
    with pytest.raises(FamilyError) as refused:
        swung(shop, "tube.stress")
    assert str(refused.value) == (
        "family tubes: a rule did not end in its time while tube.stress was varied on tube"
    )


@pytest.mark.parametrize(
    ("low", "high", "compared", "carried"),
    [
        (0.5, 0.75, True, 0.25),
        (0.75, 0.5, True, 0.25),
        (0.5, 0.75, False, 0.0),
        (0.5, 0.5, True, 0.0),
        (math.inf, math.inf, True, 0.0),
        (None, 0.5, True, math.inf),
        (0.5, None, True, math.inf),
    ],
)
def test_what_a_tolerance_carries(
    shop: DesignFolder, low: float | None, high: float | None, compared: bool, carried: float
) -> None:
    swing = Swing(shop.only("tube.stress"), Location("tube.toml", 1, "bore"), "", low, high, compared)
    assert swing.carried == carried


def judged(*used: float | None) -> Judgement:
    """The worst of some comparisons, which is the first."""
    parts = tuple(Judgement(True, "", one) for one in used)
    return replace(parts[0], parts=parts if len(parts) > 1 else ())


@pytest.mark.parametrize(
    ("low", "high", "most"),
    [
        (judged(0.5), judged(0.6), (0.5, 0.6)),
        (judged(0.5, 0.1), judged(0.6, 0.3), (0.1, 0.3)),  # the second differs most
        (judged(0.5, 0.3), judged(0.6, 0.1), (0.3, 0.1)),
        (judged(0.5, 0.1), judged(0.6), (0.5, 0.6)),  # not the same comparisons: that of the whole
        (judged(math.inf, 0.1), judged(math.inf, 0.2), (0.1, 0.2)),  # without a number between two infinities
        (judged(0.5, None), judged(0.5, 0.2), (0.5, 0.5)),
        (judged(None, 0.1), judged(0.5, 0.2), (0.1, 0.2)),
        (judged(0.5, 0.1), judged(None, 0.2), (0.1, 0.2)),
        (judged(None), judged(None), None),
        (judged(0.5), NotApplicable("no"), (0.5, None)),
        (NotApplicable("no"), judged(0.5), (None, 0.5)),
        (NotApplicable("no"), NotApplicable("no"), None),
    ],
)
def test_of_several_comparisons_the_one_that_differs_most(
    low: Judgement | NotApplicable,
    high: Judgement | NotApplicable,
    most: tuple[float | None, float | None] | None,
) -> None:
    assert _most_apart(low, high) == most


def test_nothing_is_left_between_two_runs(shop: DesignFolder) -> None:
    """Two parts with one bore and another: what was taken over by the one is not that of the other."""
    shop.write({"other.toml": TUBE.replace("100 mm", "99 mm")})
    found = shop.assess()
    assert found.context is not None
    assert found.design is not None
    ends: dict[str, Any] = {}
    for check in _of(found.checks, "tube.stress"):
        part = found.design.specs[check.component]
        assert isinstance(part, Component)
        ends[check.component] = used(list(swings(check, part, found.context)))["bore"]
    assert ends == {"tube": (0.597, 0.75375), "other": (0.49250, 0.59700)}


def _of(checks: Any, name: str) -> Iterator[Any]:
    return (one for one in checks if one.rule.name == name)
