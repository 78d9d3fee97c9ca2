"""The chart of all utilisations: its columns, what stands in one row, and what lies on top."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from speclint.errors import replace
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.overview_charts import overview_figures
from speclint.rules import Grade
from tests.example import of_one_cylinder
from tests.reports.figure_marks import inked, number, texts


def lefts(figure: Figure) -> set[float]:
    """Where the columns of names end."""
    return {number(one, "x") for one in inked(figure, "text", "word")}


@pytest.mark.parametrize(("components", "columns"), [(40, 1), (41, 2)])
def test_utilisations_stand_in_two_columns_where_one_is_too_tall_for_a_page(
    components: int, columns: int
) -> None:
    """230 units for a name and 500 for a column; names stand to the left of 230 and 730."""
    base = next(check for check in of_one_cylinder().checks if check.utilisation is not None)
    assert base.judgement is not None
    checks = tuple(  # each used by a little more than the last, or they would stand in one row
        replace(
            base, component=f"part-{index:03}", judgement=replace(base.judgement, utilisation=index / 1000)
        )
        for index in range(components)
    )
    (figure,) = (
        one
        for one in overview_figures(replace(of_one_cylinder(), checks=checks))
        if one.name == "utilisations"
    )
    assert lefts(figure) == {230.0, 730.0} if columns == 2 else lefts(figure) == {230.0}
    assert [name for name in texts(figure) if name.startswith("part-")] == [
        check.component for check in checks
    ]
    root = ElementTree.fromstring(figure.drawing)
    _, _, wide, tall = map(float, (root.get("viewBox") or "").split())
    assert wide == 500.0 * columns
    assert tall == 40 + 44 + 16 * -(-components // columns)


def test_parts_whose_checks_come_out_alike_stand_in_one_row() -> None:
    """Three of five: the two others differ in kind, or in how much of the limit is used."""
    base = next(check for check in of_one_cylinder().checks if check.utilisation is not None)
    assert base.judgement is not None
    more = replace(base.judgement, utilisation=(base.utilisation or 0.0) + 0.1)
    checks = (
        *(replace(base, component=f"part-{index}") for index in range(3)),
        replace(base, component="part-3", kind="another"),
        replace(base, component="part-4", judgement=more),
    )
    figure = next(overview_figures(replace(of_one_cylinder(), checks=checks)))
    names = [one for one in texts(figure) if one.startswith("part-")]
    assert names == ["part-0 and 2 alike", "part-3", "part-4"]
    assert ">part-0, part-1, part-2</title>" in figure.drawing, "the others are named where one points at it"


def test_what_is_wrong_lies_on_top_of_what_holds() -> None:
    base = next(check for check in of_one_cylinder().checks if check.utilisation is not None)
    wrong = replace(base, outcome="finding", grade=Grade.HOLD)
    right = replace(base, outcome="conforms", grade=None)
    figure = next(overview_figures(replace(of_one_cylinder(), checks=(wrong, right))))
    root = ElementTree.fromstring(figure.drawing)
    inks = [one.get("class") for one in root.iter() if "point" in (one.get("class") or "").split()]
    assert inks == ["point", "point hold"]


def test_what_is_wrong_without_a_number_is_on_the_page_too_and_what_is_round_conforms() -> None:
    """One column of 500 units: the limit at 244 + 204/1.5 = 380, what has no number right of 448, the end of all."""
    base = next(check for check in of_one_cylinder().checks if check.utilisation is not None)
    assert base.judgement is not None
    none, over, half = (replace(base.judgement, utilisation=used) for used in (None, 1.06, 0.5))
    checks = (
        replace(base, outcome="finding", grade=Grade.HOLD, judgement=none),
        replace(base, outcome="not assessed", grade=None, judgement=none),
        replace(base, outcome="finding", grade=Grade.NONCONFORMITY, judgement=over),
        replace(base, outcome="conforms", grade=None, judgement=half),
    )
    figure = next(overview_figures(replace(of_one_cylinder(), checks=checks)))
    (diamond,) = inked(figure, "polygon", "hold")
    (ring,) = inked(figure, "circle", "balloon")
    (square,) = inked(figure, "rect", "bad")
    (group,) = inked(figure, "g", "point")
    (circle,) = group
    assert number(circle, "cx") == 312.0  # 244 + 0.5 × 136
    assert number(square, "x") + 4 == pytest.approx(388.16)  # 244 + 1.06 × 136
    assert min(float(pair.split(",")[0]) for pair in (diamond.get("points") or "").split()) > 448
    assert number(ring, "cx") == 486.0, "beside the other"
    (limit, *_) = inked(figure, "line", "limit")
    assert number(limit, "x1") == 380.0
