"""What a drawing shows of metal and limits, on small designs: hatching, frame and pads, and the line at the limit."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from speclint.checking import Processes, assess
from speclint.reports.pack.cylinder_drawing import liner_figures
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.overview_charts import overview_figures
from speclint.reports.pack.paper import Paper, hatched
from speclint.testing import DesignFolder
from tests import tubes
from tests.plugins.liners.bench import bench, in_block


def marks(markup: str, tag: str, ink: str) -> list[ElementTree.Element]:
    """The marks with a tag and an ink, in their order."""
    root = ElementTree.fromstring(markup)
    return [one for one in root.iter() if one.tag.endswith(tag) and ink in (one.get("class") or "").split()]


def lines_of(markup: str) -> list[tuple[float, ...]]:
    """The lines of the hatching: x and y of both ends."""
    (path,) = marks(markup, "path", "hatch")
    numbers = [float(one) for one in re.findall(r"-?\d+(?:\.\d+)?", path.get("d") or "")]
    return [tuple(numbers[at : at + 4]) for at in range(0, len(numbers), 4)]


@pytest.mark.parametrize(
    ("rising", "lines"),
    [
        # a rectangle of 40 by 20 at (100, 200), lines 10 apart along its edges, each at 45° and none outside
        (
            False,
            [
                (110, 200, 100, 210),
                (120, 200, 100, 220),
                (130, 200, 110, 220),
                (140, 200, 120, 220),
                (140, 210, 130, 220),
            ],
        ),
        (
            True,
            [
                (110, 220, 100, 210),
                (120, 220, 100, 200),
                (130, 220, 110, 200),
                (140, 220, 120, 200),
                (140, 210, 130, 200),
            ],
        ),
    ],
)
def test_metal_in_section_is_hatched_one_way_or_the_other(
    rising: bool, lines: list[tuple[float, ...]]
) -> None:
    paper = Paper("a", "a", "a", 400.0, 400.0)
    hatched(paper, (100.0, 200.0), 40.0, 20.0, pitch=10.0, rising=rising)
    assert lines_of(paper.markup()) == lines
    (metal,) = marks(paper.markup(), "rect", "metal")
    assert [float(metal.get(name, "")) for name in ("x", "y", "width", "height")] == [100, 200, 40, 20]


PADS = """
[pads.front]
at = "600 mm"
width = "180 mm"
[pads.back]
at = "0 mm"
width = "220 mm"
takes = ["lengthwise"]
"""


def section(workshop: DesignFolder, *changes: tuple[str, str, str]) -> Figure:
    workshop.write(bench(*changes))
    (figure,) = liner_figures(assess([workshop.root], workshop.loaded, (), processes=Processes(0)))
    return figure


def test_pads_stand_between_the_block_and_the_face_of_the_frame(workshop: DesignFolder) -> None:
    """Collar's seat at 700 + 35 = 735 mm: pads about 135 and 735 mm, from 560/2 + 40 = 320 to 350 mm below the axis.

    The face of the frame reaches 5 mm beyond them: from 135 − 90 − 5 = 40 to 735 + 110 + 5 = 850 mm.
    """
    bare, figure = section(workshop), section(workshop, in_block("[drive]\n", PADS + "[drive]\n"))
    said = [one.text for one in ElementTree.fromstring(figure.drawing).iter() if one.tag.endswith("}text")]
    assert {"pad front, slides", "pad back, locates", "face of the frame"} <= set(said)
    scale = figure.held.scale
    assert scale
    (face,) = (
        one
        for one in marks(figure.drawing, "line", "edge")
        if float(one.get("x2", "")) - float(one.get("x1", "")) == pytest.approx(810 * scale, abs=0.05)
    )
    pads = [
        one
        for one in marks(figure.drawing, "rect", "metal")
        if float(one.get("height", "")) == pytest.approx(30 * scale, abs=0.05)
    ]
    assert [float(one.get("width", "")) for one in pads] == pytest.approx(
        [180 * scale, 220 * scale], abs=0.05
    )
    assert [float(one.get("y", "")) + 30 * scale for one in pads] == pytest.approx(
        [float(face.get("y1", ""))] * 2, abs=0.05
    )
    for drawn in (bare, figure):
        assert len(marks(drawn.drawing, "path", "hatch")) >= len(marks(drawn.drawing, "rect", "metal"))
    assert len(marks(figure.drawing, "path", "hatch")) == len(marks(bare.drawing, "path", "hatch")) + 2


def test_the_line_at_the_limit_is_drawn_where_a_point_of_the_whole_limit_would_stand(
    workshop: DesignFolder,
) -> None:
    """The axis has its marks at nothing, half, the limit and one and a half: of four lines the third alone is heavy."""
    shop = DesignFolder(workshop.root, tubes.tubes()).write(tubes.FILES)
    (figure, *_) = overview_figures(shop.assess())
    (limit,) = marks(figure.drawing, "line", "limit")
    grid = sorted(float(one.get("x1", "")) for one in marks(figure.drawing, "line", "grid"))
    zero, half, most = grid
    assert float(limit.get("x1", "")) == pytest.approx(zero + 2 * (half - zero), abs=0.02)
    assert most == pytest.approx(zero + 3 * (half - zero), abs=0.02)
    assert float(limit.get("y2", "")) > float(limit.get("y1", ""))
