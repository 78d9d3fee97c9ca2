"""All utilisations on one page and the speeds below them, where each mark stands, worked by hand.

A column is 500 wide, names end at 230, a share of the limit stands 244 + 136 for each; rows are 16 high from 40 on.
"""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from speclint import Grade
from speclint.checking import Assessment, Check
from speclint.errors import replace
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.overview_charts import overview_figures
from speclint.rules import Amount
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.placed_marks import numbers
from tests.tubes import FILES

LINK = "{http://www.w3.org/2000/svg}a"


@pytest.fixture
def tube(workshop: DesignFolder) -> Assessment:
    workshop.loaded = tubes.tubes()
    return workshop.write(FILES).assess()


def stress(of: Assessment, used: float | None, outcome: str = "conforms", **other: object) -> Check:
    found = next(one for one in of.checks if one.rule.name == "tube.stress")
    assert found.judgement is not None
    judged = replace(found.judgement, utilisation=used)
    return replace(found, judgement=judged, outcome=outcome, **other)  # type: ignore[arg-type]


def drawn(of: Assessment, *checks: Check) -> Figure:
    return next(overview_figures(replace(of, checks=checks)))


def marks(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]


def circles(figure: Figure) -> list[list[float]]:
    (group,) = marks(figure, "g", "point")
    return [numbers(one, "cx", "cy") for one in group]


def test_points_that_would_cover_one_another_are_one_the_nearest_to_the_limit(tube: Assessment) -> None:
    """8 units are 0.0588 of a limit: 0.80 is kept, 0.75 too near to it, 0.74 is not, 0.69 too near to that."""
    some = [stress(tube, used) for used in (0.69, 0.75, 0.80, 0.74)]
    assert circles(drawn(tube, *some)) == [
        pytest.approx([244 + 0.80 * 136, 48], abs=0.06),
        pytest.approx([244 + 0.74 * 136, 48], abs=0.06),
    ]


def test_a_share_beyond_the_page_stands_at_its_edge_and_is_not_held_to_the_axis(tube: Assessment) -> None:
    over = [stress(tube, used, "finding", grade=Grade.NONCONFORMITY) for used in (1.5, 1.6)]
    figure = drawn(tube, *over)
    assert [numbers(one, "x", "y") for one in marks(figure, "rect", "point bad")] == [[444, 44], [444, 44]]
    assert [one.at for one in figure.held.placed] == [448]
    under = [stress(tube, used) for used in (0.0, -0.5)]
    figure = drawn(tube, *under)
    assert circles(figure) == [[244, 48]]
    assert [one.at for one in figure.held.placed] == [244]
    assert [one.axis for one in figure.held.placed] == ["x0"]


def test_what_has_no_number_stands_beyond_the_third_over_the_second_to_last(tube: Assessment) -> None:
    """24 before the edge of the column and 10 apart; the fourth stands where the third does."""
    none = [stress(tube, None, "finding", grade=Grade.NONCONFORMITY) for _ in range(4)]
    figure = drawn(tube, *none)
    assert [numbers(one, "x")[0] + 4 for one in marks(figure, "rect", "point bad")] == [476, 486, 496, 496]
    assert not figure.held.placed
    assert not list(overview_figures(replace(tube, checks=(stress(tube, None),)))), (
        "it conforms without a number"
    )


def test_each_mark_has_its_form_and_leads_to_its_sheet(tube: Assessment) -> None:
    hold = stress(tube, 1.2, "finding", grade=Grade.HOLD)
    query = stress(tube, 1.1, "finding", grade=Grade.QUERY, component="b", kind="b")
    unknown = stress(tube, None, "not assessed", grade=None, component="c", kind="c")
    figure = drawn(tube, hold, query, unknown)
    (diamond,) = marks(figure, "polygon", "point hold")
    x = 244 + 1.2 * 136
    corners = [float(one) for one in diamond.get("points", "").replace(",", " ").split()]
    assert corners == pytest.approx([x, 42, x + 6, 48, x, 54, x - 6, 48], abs=0.02)
    (square,) = marks(figure, "rect", "point bad")
    assert numbers(square, "x", "y", "width", "height") == pytest.approx(
        [244 + 1.1 * 136 - 4, 60, 8, 8], abs=0.02
    )
    (ring,) = marks(figure, "circle", "balloon")
    assert numbers(ring, "cx", "cy", "r") == [476, 80, 4]
    links = list(ElementTree.fromstring(figure.drawing).iter(LINK))
    told = [(one[0].text, one.get("href")) for one in links if len(one) == 2]
    assert told == [
        ("tube tube.stress: 1.20 of the limit", "#sheet.tube.tube.stress"),
        ("b tube.stress: 1.10 of the limit", "#sheet.b.tube.stress"),
        ("c tube.stress: not assessed", "#sheet.c.tube.stress"),
    ]
    assert [one.get("href") for one in links if len(one) == 1] == ["#sheets.tube", "#sheets.b", "#sheets.c"]


def test_the_rows_have_their_names_and_lines(tube: Assessment) -> None:
    figure = drawn(tube, stress(tube, 0.5), stress(tube, 0.6, component="b"))
    names = {one.text: numbers(one, "x", "y") for one in marks(figure, "text", "word")}
    assert names == {
        "tube": pytest.approx([230, 52.33], abs=0.01),
        "b": pytest.approx([230, 68.33], abs=0.01),
    }
    rows = [numbers(one, "x1", "y1", "x2", "y2") for one in marks(figure, "line", "row")]
    assert rows == [[244, 48, 448, 48], [244, 64, 448, 64]]
    root = ElementTree.fromstring(figure.drawing)
    assert root.get("role") == "group"
    assert list(map(float, (root.get("viewBox") or "").split()))[2:] == [500, 40 + 2 * 16 + 44]
    about = next(one.text for one in root.iter() if one.tag.endswith("}desc"))
    assert about == "2 checks of 2 components; 0 findings."


def test_a_long_name_is_cut_so_that_how_many_are_alike_stays(tube: Assessment) -> None:
    """230 × 1.2 = 276 units less those of " and 1 alike", 12 letters of 8.06: 22 letters."""
    some = [stress(tube, 0.5, component=f"{'a' * 40}-{end}") for end in "xy"]
    (name,) = marks(drawn(tube, *some), "text", "word")
    assert name.text == f"{'a' * 21}… and 1 alike"
    assert marks(drawn(tube, some[0]), "text", "word")[0].text == f"{'a' * 33}…"


def test_the_grid_stands_at_halves_of_the_limit_above_and_below(tube: Assessment) -> None:
    figure = drawn(tube, stress(tube, 0.5))
    lines = [numbers(one, "x1", "y1", "x2", "y2") for one in marks(figure, "line", "grid")]
    assert lines == [[x, 34, x, 62] for x in (244, 312, 448)]
    (limit,) = marks(figure, "line", "limit")
    assert numbers(limit, "x1", "y1", "x2", "y2") == [380, 34, 380, 62]
    assert [(one.axis, one.value, one.at) for one in figure.held.marks] == [
        ("x0", value, at) for value, at in ((0, 244), (0.5, 312), (1, 380), (1.5, 448)) for _ in range(2)
    ]
    texts = [
        (one.text, *numbers(one, "x", "y"))
        for one in ElementTree.fromstring(figure.drawing).iter()
        if one.get("x")
    ]
    for words in (("of the limit", 346, 94), ("none", 476, 26), ("0.5", 312, 26), ("0.5", 312, 78)):
        assert words in texts


def speed(
    of: Assessment, name: str, found: float, limit: float, outcome: str = "conforms", sign: str = "≤"
) -> Check:
    one = stress(of, found / limit, outcome, component=name)
    assert one.judgement is not None
    assert one.judgement.found is not None
    amounts = [replace(one.judgement.found, value=value, unit="m/s") for value in (found, limit)]
    assert isinstance(amounts[0], Amount)
    judged = replace(one.judgement, found=amounts[0], limit=amounts[1], compared=sign)
    return replace(one, judgement=judged)


def test_slow_speeds_have_a_chart_of_their_own(tube: Assessment) -> None:
    """The greatest limit is 50 m/s: what is held to 10 or more is fast, to less slow; what must be fast is neither."""
    some = [
        speed(tube, "a", 40, 50),
        speed(tube, "b", 5, 10),
        speed(tube, "c", 5, 9.99),
        speed(tube, "d", 30, 20, sign="≥"),
        speed(tube, "e", 60, 50, "finding"),
    ]
    _, fast, slow = overview_figures(replace(tube, checks=tuple(some)))
    assert (fast.name, slow.name) == ("speeds", "slow-speeds")
    assert fast.rows == (
        ("a, stress", "40 m/s, at most 50 m/s"),
        ("b, stress", "5 m/s, at most 10 m/s"),
        ("e, stress", "60 m/s, at most 50 m/s"),
    )
    assert [name for name, _ in slow.rows] == ["c, stress"]
    assert fast.heading == "Speeds along the path of the steam"
    assert slow.heading == "Speeds of parts that rub or strike"
    assert len(marks(fast, "rect", "bad")) == 1
    assert len(marks(fast, "line", "limit")) == 3
    (only,) = overview_figures(replace(tube, checks=(stress(tube, 0.5),)))
    assert only.name == "utilisations"
