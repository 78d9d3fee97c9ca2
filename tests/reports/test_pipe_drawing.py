"""A pipe in section, straight and bent: each line of it where the sizes put it, at the scale that the page says."""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest

from speclint.reports.pack.figures import Figure
from speclint.reports.pack.pipe_drawing import pipe_figures
from speclint.testing import DesignFolder
from tests.plugins.steamways.pipe import files

#: The lowest left corner of a straight pipe, and the centre of a bend.
X, Y = 290.0, 232.0


def drawn(workshop: DesignFolder, *changes: tuple[str, str]) -> Figure:
    (figure,) = pipe_figures(workshop.write(files(*changes)).assess())
    return figure


def marks(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]


def sizes(mark: ElementTree.Element, *names: str) -> list[float]:
    return [float(mark.get(name, "nan")) for name in names]


def points(mark: ElementTree.Element) -> list[tuple[float, float]]:
    numbers = [float(one) for one in mark.get("points", "").replace(",", " ").split()]
    return list(zip(numbers[::2], numbers[1::2], strict=True))


def test_a_straight_pipe_fills_the_room_with_its_two_walls(workshop: DesignFolder) -> None:
    """By hand: 210 over 168.3 mm is 1.247772 to the millimetre, so that the wall of 5.6 mm is 6.99 thick."""
    figure = drawn(workshop, ("bends = 2", "bends = 0"))
    upper, lower = marks(figure, "rect", "metal")
    assert sizes(upper, "x", "y", "width", "height") == [X, Y - 210, 260, 6.99]
    assert sizes(lower, "x", "y", "width", "height") == [X, Y - 6.99, 260, 6.99]
    assert [row[1] for row in figure.rows[2:]] == ["5.6 mm", "4.90 mm, needs 2.33 mm"]


def test_a_straight_pipe_has_one_place_and_its_diameter_from_edge_to_edge(workshop: DesignFolder) -> None:
    """The number stands 14 below the lower wall and its line runs from the rim of the ring to mid-wall, 3.49 up."""
    figure = drawn(workshop, ("bends = 2", "bends = 0"))
    (ring,) = marks(figure, "circle", "balloon")
    assert sizes(ring, "cx", "cy") == [X + 130, Y + 14]
    thin = [sizes(one, "x1", "y1", "x2", "y2") for one in marks(figure, "line", "thin")]
    assert [X + 130, Y + 4, X + 130, Y - 3.49] in thin
    assert [X + 30, Y - 210, X + 30, Y] in thin
    assert "Ø 168.3" in figure.drawing


def test_the_bar_of_the_scale_is_as_long_as_it_says(workshop: DesignFolder) -> None:
    """By hand: 110 over 1.247772 is 88.2 mm; the round length below it, 50 mm, is 62.39 in five parts of 12.48."""
    figure = drawn(workshop, ("bends = 2", "bends = 0"))
    parts = marks(figure, "rect", "solid") + marks(figure, "rect", "blank")
    assert [sizes(one, "width", "y") for one in parts] == [[12.48, 244]] * 5
    assert min(sizes(one, "x")[0] for one in parts) == 30
    assert ">50 mm<" in figure.drawing


def test_a_bend_has_its_walls_round_its_centre_and_a_straight_end_a_diameter_long(
    workshop: DesignFolder,
) -> None:
    """By hand: 300 + 84.15 + 168.3 = 552.45 mm in 210 is 0.380125 to the millimetre.

    The outer wall lies between 384.15 and 378.55 mm from the centre, the inner between 221.45 and 215.85: 146.02 and
    143.90, 84.18 and 82.05. A straight end is 63.97 long.
    """
    figure = drawn(workshop)
    for wall, (far, near) in zip(
        marks(figure, "polygon", "metal"), ((146.02, 143.90), (84.18, 82.05)), strict=True
    ):
        outline = points(wall)
        half = len(outline) // 2
        outer, inner = outline[:half], outline[: half - 1 : -1]
        for side, radius in ((outer, far), (inner, near)):
            assert side[0] == pytest.approx((X - 63.97, Y - radius), abs=0.011)
            assert side[1] == pytest.approx((X, Y - radius), abs=0.011)
            assert side[-1] == pytest.approx((X + radius, Y), abs=0.011)
            assert [math.dist((X, Y), one) for one in side[1:]] == pytest.approx([radius] * 19, abs=0.02)


def test_the_places_of_a_bend_are_numbered_where_they_are(workshop: DesignFolder) -> None:
    """By hand: outside at 146.02 and inside at 82.05 from the centre, at 45 degrees 103.26 and 58.02 across and up.

    The straight end is numbered 0.55 × 63.97 = 35.19 before the bend, 20 above it.
    """
    figure = drawn(workshop)
    rings = [sizes(one, "cx", "cy") for one in marks(figure, "circle", "balloon")]
    assert rings == [
        pytest.approx([X - 35.19, Y - 146.02 - 20], abs=0.02),
        pytest.approx([X + 103.26 + 26, Y - 103.26 - 20], abs=0.02),
        pytest.approx([X + 58.02 - 26, Y - 58.02 + 22], abs=0.02),
    ]
    thin = [sizes(one, "x2", "y2") for one in marks(figure, "line", "thin")]
    for end in (
        [X - 35.19, Y - 146.02],
        [X + 103.26, Y - 103.26],
        [X + 58.02, Y - 58.02],
        [X - 49.97, Y - 82.05],
    ):
        assert any(one == pytest.approx(end, abs=0.02) for one in thin), end


def test_a_pipe_without_a_wall_or_a_diameter_is_not_drawn(workshop: DesignFolder) -> None:
    for line in ('wall = "5.6 mm"\n', 'outside_diameter = "168.3 mm"\n'):
        assert not list(pipe_figures(workshop.write(files((line, ""))).assess()))
