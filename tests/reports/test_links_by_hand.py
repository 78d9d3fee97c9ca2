"""The links of a part: its box in the middle, those that name it to the left and those that it names to the right.

Boxes are 232 wide and 36 high, 46 apart from 44 on; the part stands in the middle of 780, at half of the height.
"""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from speclint.checking import Assessment
from speclint.errors import replace
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.links_drawing import links_figures
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.placed_marks import numbers
from tests.tubes import FILES

OVER = FILES["tube.toml"].replace("30 bar", "45 bar")


def made(workshop: DesignFolder, *more: tuple[str, str]) -> Assessment:
    workshop.loaded = tubes.tubes()
    return workshop.write({**FILES, "tube.toml": OVER, **dict(more)}).assess()


def boxes(figure: Figure) -> list[list[float]]:
    root = ElementTree.fromstring(figure.drawing)
    return [numbers(one, "x", "y", "width", "height") for one in root.iter() if one.tag.endswith("}rect")]


def lines(figure: Figure) -> list[list[float]]:
    root = ElementTree.fromstring(figure.drawing)
    return [numbers(one, "x1", "y1", "x2", "y2") for one in root.iter() if one.tag.endswith("}line")]


def says(figure: Figure) -> list[tuple[object, ...]]:
    root = ElementTree.fromstring(figure.drawing)
    return [(one.text, *numbers(one, "x", "y")) for one in root.iter() if one.tag.endswith("}text")]


def height(figure: Figure) -> float:
    return float((ElementTree.fromstring(figure.drawing).get("viewBox") or "").split()[3])


def test_a_part_with_a_hold_has_those_that_it_names_to_the_right(workshop: DesignFolder) -> None:
    (figure,) = links_figures(made(workshop))
    assert figure.heading == "Links of tube"
    assert boxes(figure) == [[548, 44, 232, 36], [548, 90, 232, 36], [274, 67, 232, 36]]
    assert lines(figure) == [[548, 62, 506, 85], [548, 108, 506, 85]]
    assert says(figure) == [
        ("parts that name it", 0, 20),
        ("parts that it names", 548, 20),
        ("duty", 556, 59),
        ("duty", 556, 74),
        ("rack", 556, 105),
        ("held_in", 556, 120),
        ("tube", 390, 90),
    ]
    assert figure.rows == ()
    assert height(figure) == 44 + 2 * 46 + 18
    about = next(
        one.text for one in ElementTree.fromstring(figure.drawing).iter() if one.tag.endswith("}desc")
    )
    assert about == "named by none; names duty, rack"


@pytest.mark.parametrize(("number", "rows"), [(10, 0), (12, 2)])
def test_of_many_parts_ten_are_drawn_and_the_table_has_the_rest(
    workshop: DesignFolder, number: int, rows: int
) -> None:
    """A duty is no component that could be named by a check, so tubes name a rack that has a hold itself."""
    others = [(f"tube-{index:02}.toml", OVER) for index in range(number - 1)]
    found = made(workshop, *others)
    checks = [one for one in found.checks if one.rule.name == "tube.stress" and one.component == "tube"]
    (figure,) = links_figures(replace(found, checks=tuple(replace(one, component="rack") for one in checks)))
    assert len(boxes(figure)) == 11
    assert boxes(figure)[0] == [0, 44, 232, 36]
    assert lines(figure)[0][:2] == [232, 62]
    rest = ("and 2 more: see the table", 8, 44 + 460 + 15)
    assert (rest in says(figure)) is (rows > 0)
    most = 11 if rows else 10
    assert height(figure) == 44 + most * 46 + 18
    middle = 44 + (most - 1) * 23
    assert boxes(figure)[-1] == [274, middle, 232, 36]
    assert {(one[2], one[3]) for one in map(tuple, lines(figure))} == {(274, middle + 18)}
    assert figure.rows == tuple((f"tube-{index:02}", "names it", "held_in") for index in (9, 10))[:rows]


def test_a_long_name_is_cut_to_its_box(workshop: DesignFolder) -> None:
    """232 − 16 units are 26 letters of 8.06."""
    name = "rack-" + "r" * 22
    renamed = ("tube.toml", OVER.replace('"rack"', f'"{name}"'))
    workshop.loaded = tubes.tubes()
    found = workshop.write(
        {"duty.toml": FILES["duty.toml"], f"{name}.toml": FILES["rack.toml"], renamed[0]: renamed[1]}
    )
    (figure,) = links_figures(found.assess())
    assert (f"{name[:25]}…", 556, 105) in says(figure)


def test_a_part_without_a_hold_or_without_links_has_no_figure(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    assert not list(links_figures(workshop.write(FILES).assess()))
    alone = OVER.replace('held_in = "rack"\n', "").replace('duty = "duty"\n', "")
    assert not list(links_figures(workshop.write({"tube.toml": alone}).assess()))
