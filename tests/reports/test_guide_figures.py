"""The drawings of the guide: their numbers against hand working, their words readable and within the paper."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from speclint.errors import replace
from speclint.register import judge
from speclint.reports.pack.paper import wide
from speclint.reports.reference.guide_figures import (
    GUIDE_FIGURES,
    grades,
    guide_figure,
    load_cases,
    tolerance_corners,
)
from speclint.rules import Grade
from speclint.testing import DesignFolder, installed_families
from tests import tubes
from tests.guide import FOLDER
from tests.register.office import FILES, TODAY

NAMES = sorted(GUIDE_FIGURES)
_SVG = "{http://www.w3.org/2000/svg}"


def test_the_texts_show_each_drawing_once_and_no_other() -> None:
    texts = "".join(path.read_text(encoding="utf-8") for path in FOLDER.glob("*.md"))
    assert sorted(re.findall(r"^!\[[^\]]+\]\(figure:([^)]*)\)$", texts, re.MULTILINE)) == NAMES
    with pytest.raises(KeyError):
        guide_figure("load cases")


@pytest.mark.parametrize("name", NAMES)
def test_a_drawing_says_in_words_what_it_shows(name: str) -> None:
    """For whoever cannot see it: a title and a description, which name every number that stands in the drawing."""
    root = ET.fromstring(guide_figure(name))
    title, about = root.find(f"{_SVG}title"), root.find(f"{_SVG}desc")
    assert title is not None
    assert title.text
    assert about is not None
    assert root.attrib["aria-labelledby"] == f"{title.attrib['id']} {about.attrib['id']}"
    assert len((about.text or "").split()) > 30


@pytest.mark.parametrize("name", NAMES)
def test_words_stay_on_the_paper_and_off_one_another(name: str) -> None:
    """By the width that the drawings of the pack reckon with; at 390 px a drawing of 420 is shown at 0.83 or more."""
    root = ET.fromstring(guide_figure(name))
    _, _, right, foot = map(float, root.attrib["viewBox"].split())
    assert right <= 420
    boxes = [box(one) for one in root.iter(f"{_SVG}text")]
    assert len(boxes) > 10
    for number, (x_0, y_0, x_1, y_1, words) in enumerate(boxes):
        assert x_0 >= 0, words
        assert x_1 <= right, words
        assert 0 <= y_0 < y_1 <= foot, words
        for a_0, b_0, a_1, b_1, others in boxes[:number]:
            assert x_1 <= a_0 or a_1 <= x_0 or y_1 <= b_0 or b_1 <= y_0, f"{words} lies on {others}"


def box(one: ET.Element) -> tuple[float, float, float, float, str]:
    """Where a line of words stands, with the height of its capitals."""
    x, y, words = float(one.attrib["x"]), float(one.attrib["y"]), one.text or ""
    long = wide(words) * 0.85  # of usual faces; the pack reckons with more, so that nothing is cut
    left = {"middle": x - long / 2, "end": x - long}.get(one.attrib.get("text-anchor", ""), x)
    return left, y - 10, left + long, y + 2, words


def test_by_hand_what_is_left_of_the_fit_while_cooling() -> None:
    """At the worst corner the liner is at 120 °C with its least expansion, the block at 160 °C with its greatest.

    Iron 10.87e-6/K at 120 °C and steel 12.76e-6/K at 160 °C, as the sheet of liner-left in the example has them:
    0.24 + 400 (10.87e-6 × 100 − 12.76e-6 × 140) = 0.24 + 0.4348 − 0.7146 = −0.0398 mm.
    """
    assert load_cases.left_of("cooling").least == pytest.approx(-0.0398, abs=5e-4)
    assert load_cases.governing() == "cooling"
    assert all(load_cases.left_of(case).least > 0 for case in load_cases.TEMPERATURES if case != "cooling")
    assert "−0.040 mm, governs" in guide_figure("load-cases")


def test_the_load_cases_that_are_drawn_are_those_of_the_rule() -> None:
    rule = next(one for one in installed_families().rules if one.name == "liner.fit-hot")
    assert tuple(load_cases.TEMPERATURES) == rule.cases


def test_by_hand_what_the_corners_of_the_rod_use() -> None:
    """A = π 9.8²/4 = 75.430 mm²: 12 000/75.430 = 159.09 MPa of 155, so 1.026; a kN more 13.26 MPa.

    π 10²/4 = 78.540 mm²: 152.79 MPa, 0.986. π 9.9²/4 = 76.977 mm²: 11 000/76.977 = 142.90 MPa, 0.922.
    π 9.7²/4 = 73.898 mm²: 12 000/73.898 = 162.39 MPa, 3.30 MPa more than at 9.8 mm.
    """
    used = tolerance_corners.used
    assert tolerance_corners.governing() == (9.8, 12.0)
    assert (used(9.8, 12), used(10, 12), used(9.9, 11)) == pytest.approx((1.026, 0.986, 0.922), abs=5e-4)
    assert tolerance_corners.falls_by_load() == pytest.approx(13.26, abs=0.01)
    assert tolerance_corners.falls_by_diameter() == pytest.approx(3.30, abs=0.01)


def test_what_is_used_at_the_corners_is_written_within_the_box() -> None:
    """The least diameter stands to the left: its words go to the right, and those of the greatest to the left."""
    root = ET.fromstring(guide_figure("tolerance-corners"))
    band = next(one for one in root.iter(f"{_SVG}rect") if one.attrib["class"] == "band")
    left = float(band.attrib["x"])
    right = left + float(band.attrib["width"])
    used = ("1.03 governs", "0.99", "0.86", "0.82")  # 10 kN: 132.57 and 127.32 MPa of 155
    words = [box(one) for one in root.iter(f"{_SVG}text") if one.text in used]
    assert len(words) == 4
    for x_0, _, x_1, _, said in words:
        assert left <= x_0 < x_1 <= right, said


def test_the_grades_are_drawn_the_gravest_first() -> None:
    drawn = [row.name for row in grades.ROWS if row.name != "not assessed"]
    assert drawn == [grade.word for grade in sorted(Grade, reverse=True)]


@pytest.mark.parametrize("row", grades.ROWS, ids=lambda row: row.name)
def test_the_check_and_the_gate_do_with_a_grade_what_is_drawn(row: grades.Row, tmp_path: Path) -> None:
    """A tube that is loaded too high, or whose pressure nobody stated, by a rule of each grade in turn."""
    missing = row.name == "not assessed"
    grade = Grade.HOLD if missing else Grade[row.name.upper()]
    family = tubes.tubes(replace(tubes.stress, grade=grade))
    shop = DesignFolder(tmp_path, family).write(FILES, settings="")
    if missing:
        shop.replace("tube.toml", 'pressure = "45 bar gauge"', "")
    (check,) = shop.assess().checks
    assert check.outcome == ("not assessed" if missing else "finding")
    assert shop.assess().exit_code == row.code
    assert judge([tmp_path], lambda: family, TODAY).released is not row.withholds
