"""A piston rod in sections with the stresses at each, where they stand, worked by hand.

Diameters: the shoulder runs up to 110 mm, which takes 124 units: 1.12727 to the millimetre. Stresses, as the tests of
the rule have them: in the thread M85x4 79.31 MPa of 80 allowed, which is the axis to 1.15 × 80 = 92 MPa in 130 units.
"""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from speclint.checking import Assessment, Processes, assess
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.rod_drawing import rod_figures
from speclint.testing import DesignFolder
from tests.plugins.motion.train import files
from tests.reports.placed_marks import numbers

SCALE = 124 / 110
SLOT = """
[sections.cotter]
form = "cotter slot"
at = "between the ends"
diameter = "95 mm"
slot_width = "22 mm"
pushed = true
"""
SHOULDER = """
[sections.head]
form = "shoulder"
at = "piston end"
diameter = "88 mm"
larger_diameter = "108 mm"
fillet = "10 mm"
pushed = false
"""


def made(workshop: DesignFolder, *changes: tuple[str, str], add: str = "") -> Assessment:
    workshop.write(files("rod", *changes, add=add))
    rules = [one for one in workshop.loaded.rules if one.name == "rod.tension"]
    return assess([workshop.root], workshop.loaded, rules, processes=Processes(0))


def drawn(workshop: DesignFolder, *changes: tuple[str, str], add: str = "") -> Figure:
    (figure,) = rod_figures(made(workshop, *changes, add=add))
    return figure


class View:
    """The marks of a figure."""

    def __init__(self, figure: Figure) -> None:
        self.root = ElementTree.fromstring(figure.drawing)

    def of(self, tag: str, ink: str, *names: str) -> list[list[float]]:
        found = [one for one in self.root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]
        return [numbers(one, *names) for one in found]

    def boxes(self, ink: str) -> list[list[float]]:
        return self.of("rect", ink, "x", "y", "width", "height")

    def lines(self, ink: str) -> list[list[float]]:
        return self.of("line", ink, "x1", "y1", "x2", "y2")

    def says(self) -> dict[str, list[float]]:
        return {
            one.text or "": numbers(one, "x", "y") for one in self.root.iter() if one.tag.endswith("}text")
        }


def near(places: list[list[float]]) -> list[object]:
    return [pytest.approx(one, abs=0.02) for one in places]


def test_the_sections_stand_at_the_ends_and_the_plain_length_between(workshop: DesignFolder) -> None:
    """Each section 110 units long from the end at 90 or 690; the shoulder's 26 more to the right."""
    view = View(drawn(workshop))
    wide, thread, large = 90 * SCALE, 85 * SCALE, 124
    assert view.boxes("metal") == near(
        [[90, 120 - thread / 2, 110, thread], [580, 120 - wide / 2, 110, wide]]
    )
    assert view.boxes("stud") == near([[200, 120 - wide / 2, 380, wide], [690, 58, 26, large]])
    assert view.of("circle", "balloon", "cx", "cy")[:3] == [[145, 34], [390, 34], [635, 34]]
    assert view.lines("thin") == near(
        [
            [145, 45, 145, 120 - thread / 2],
            [390, 45, 390, 120 - wide / 2],
            [635, 45, 635, 120 - wide / 2],
        ]
    )
    said = view.says()
    assert (said["nut"], said["plain length"], said["foot"]) == ([145, 204], [390, 204], [635, 204])
    assert view.lines("axis") == [[50, 120, 730, 120]]
    for ink in ("erased", "thin"):
        paths = [one for one in view.root.iter() if one.tag.endswith("}polyline") and one.get("class") == ink]
        ends = [
            [float(number) for number in one.get("points", "").replace(",", " ").split()] for one in paths
        ]
        top, foot = 120 - wide / 2 - 6, 120 + wide / 2 + 6
        assert ends == near([[431, top, 439, foot], [441, top, 449, foot]])


def test_sections_of_one_place_stand_side_by_side(workshop: DesignFolder) -> None:
    """Between the ends a slot 110 units to the right of the middle; a second nut follows the first."""
    second = (
        SLOT.replace("cotter]", "second]").replace("between the ends", "piston end").replace("95 mm", "88 mm")
    )
    third = second.replace("second]", "third]").replace("piston end", "crosshead end")
    view = View(drawn(workshop, add=SLOT + second + third))
    assert [one[0] for one in view.boxes("metal")] == pytest.approx([90, 200, 445, 470, 580], abs=0.02)
    assert [one[3] / SCALE for one in view.boxes("metal")] == pytest.approx([85, 88, 95, 88, 90], abs=0.02)
    plain = view.boxes("stud")[0]
    assert plain == pytest.approx([310, 120 - 45 * SCALE, 445 - 310, 90 * SCALE], abs=0.02)


def test_what_a_shoulder_at_the_piston_runs_up_to_stands_to_the_left(workshop: DesignFolder) -> None:
    """Before the second section of that end, which is from 200 to 310."""
    view = View(drawn(workshop, add=SHOULDER))
    assert view.boxes("stud")[1] == pytest.approx([174, 120 - 54 * SCALE, 26, 108 * SCALE], abs=0.02)


def test_the_stresses_stand_below_each_with_the_line_at_the_limit(workshop: DesignFolder) -> None:
    """Pulled to the left of the middle of its section, pushed to the right of it, 18 wide, to the foot at 380."""
    figure = drawn(workshop)
    view = View(figure)
    each = 130 / 92
    (limit,) = view.lines("limit")
    assert limit == pytest.approx([60, 380 - 80 * each, 720, 380 - 80 * each], abs=0.02)
    assert view.lines("edge") == [[60, 380, 720, 380]]
    bars = view.boxes("bar")
    assert bars[0] == pytest.approx([125, 380 - 79.30863 * each, 18, 79.30863 * each], abs=0.02)
    assert [one[0] for one in bars] == [125, 370, 615]
    holes = view.boxes("hole")
    assert [one[0] for one in holes] == [392, 637], "the thread is not pushed"
    assert not view.boxes("bad")
    assert view.says()["79.3"] == pytest.approx([134, 380 - 79.30863 * each - 5], abs=0.02)
    grid = view.lines("grid")
    assert [one[1] for one in grid] == pytest.approx([380 - n * 20 * each for n in range(5)], abs=0.02)
    assert [one[0] for one in grid] == [60] * 5
    assert [one[2] for one in grid] == [720] * 5
    assert view.says()["80"] == pytest.approx([52, 380 - 80 * each + 4], abs=0.02)
    assert view.says()["mean stress, MPa"] == pytest.approx([20, 315], abs=0.02)
    rings = view.of("circle", "balloon", "cx", "cy")
    assert rings[3:] == [[145, 396], [390, 396], [635, 396]]
    assert [one.at for one in figure.held.placed if one.axis == "y"][-1] == pytest.approx(limit[1], abs=0.01)


def test_a_stress_beyond_the_limit_is_told_apart(workshop: DesignFolder) -> None:
    """M82x2: 80.40 of 80 MPa."""
    figure = drawn(workshop, ("M85x4", "M82x2"))
    view = View(figure)
    assert [one[0] for one in view.boxes("bad")] == [125]
    assert len(view.boxes("bar")) == 2
    assert ("nut, thread", "M82x2") in figure.rows


def test_the_table_of_a_rod(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    assert figure.heading == "rod: its sections, and the stress at each"
    names = [name for name, _ in figure.rows]
    assert names == [
        "diameter in the packing",
        "nut, thread",
        "nut, pulled",
        "nut, factor against fatigue",
        "plain length, pulled",
        "plain length, pushed",
        "plain length, factor against fatigue",
        "foot, shoulder",
        "foot, pulled",
        "foot, pushed",
        "foot, factor against fatigue",
        "greatest mean stress allowed",
    ]
    rows = {row[0]: row[1] for row in figure.rows}
    assert rows["nut, thread"] == "M85x4"
    assert rows["nut, pulled"] == "79.3 MPa"
    assert rows["nut, factor against fatigue"] == "2.16"
    assert rows["foot, shoulder"] == "90.0 mm"
    assert rows["greatest mean stress allowed"] == "80 MPa"
    assert "From the sheet" not in figure.says
    assert "from the sheet of rod.tension, water" in figure.says


def test_a_rod_whose_tension_is_not_judged_is_not_drawn(workshop: DesignFolder) -> None:
    assert not list(rod_figures(made(workshop, ('diameter = "90 mm"\n', ""))))
    workshop.write(files("rod"))
    assert not list(rod_figures(assess([workshop.root], workshop.loaded, (), processes=Processes(0))))
