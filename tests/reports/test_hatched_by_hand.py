"""Which way the metal of each drawing is hatched: parts that touch lean away from each other, as ISO 128-50 wants it.

Of one part every face leans one way, wherever it is cut.
"""

from __future__ import annotations

from xml.etree import ElementTree

from speclint.reports.pack.cylinder_drawing import liner_figures
from speclint.reports.pack.end_drawing import end_figures
from speclint.reports.pack.figures import Figure
from speclint.testing import DesignFolder
from tests.reports import (
    test_chain_by_hand as chain,
    test_chambers_by_hand as chambers,
    test_cover_by_hand as cover,
    test_lagging_by_hand as lagging,
    test_rod_by_hand as rod,
    test_valve_by_hand as valve,
)
from tests.reports.small_cylinder import PADS, cylinder

UP, DOWN = "/", "\\"


def leaning(figure: Figure) -> list[str]:
    """Of each hatched face, in the order in which they are drawn, how its lines lean."""
    found = []
    for one in ElementTree.fromstring(figure.drawing).iter():
        if one.get("class") == "hatch":
            numbers = (one.get("d") or "").replace("M", " ").replace("L", " ").replace(",", " ").split()
            x1, y1, x2, y2 = map(float, numbers[:4])
            found.append(UP if (x2 - x1) * (y2 - y1) < 0 else DOWN)
    return found


def test_block_and_cover_lean_one_way_liner_and_piston_the_other(workshop: DesignFolder) -> None:
    front, back = end_figures(cylinder(workshop))
    block, collar, liner = [DOWN] * 3, [UP], [UP] * 2
    assert leaning(front) == [*block, *collar, *liner, DOWN, DOWN, UP]
    assert leaning(back) == [DOWN, UP, DOWN, DOWN, UP]


def test_a_cylinder_in_section_and_its_walls(workshop: DesignFolder) -> None:
    """Above the axis the port cuts block and liner in two beside recess and collar; below both are whole.

    Then each cover, its plate in one and its flange above and below, and two pads, all as the block; last the walls.
    """
    (figure,) = liner_figures(cylinder(workshop, ("block.toml", "[drive]\n", f"{PADS}[drive]\n")))
    above, below = [DOWN] * 3 + [UP] * 3, [DOWN] * 2 + [UP] * 2
    assert leaning(figure) == [*above, *below, *[DOWN] * 3 * 2, *[DOWN] * 2, *[DOWN, UP] * 2]


def test_parts_that_are_drawn_alone(workshop: DesignFolder) -> None:
    assert leaning(rod.drawn(workshop)) == [DOWN, DOWN]


def test_a_valve_on_its_seats(workshop: DesignFolder) -> None:
    """Block about both seats and cage, the guide in the cage, both seats in the block, and the shell on the seats."""
    block, cage, guide, seats, shell = [UP] * 2, [UP], [DOWN], [DOWN] * 2, [UP] * 3
    assert leaning(valve.drawn(workshop)) == [*block, *cage, *guide, *seats, *shell]


def test_a_flat_cover(workshop: DesignFolder) -> None:
    """Plate and flange are one piece."""
    assert leaning(cover.drawn(workshop)) == [DOWN]
    assert leaning(cover.drawn(workshop, cover.SPIGOT)) == [DOWN, DOWN]


def test_the_end_of_a_collar_that_stops_at_a_shoulder(workshop: DesignFolder) -> None:
    """The block goes on beyond the shoulder, above and below, as the rest of it."""
    stop = ("liner.toml", 'free_end_stop = "cover"', 'free_end_stop = "shoulder"')
    (figure,) = liner_figures(cylinder(workshop, stop))
    assert leaning(figure)[:4] == [DOWN] * 4


def test_the_metal_under_lagging(workshop: DesignFolder) -> None:
    figure, _ = lagging.drawn(workshop, "60 °C")
    assert leaning(figure) == [DOWN]


def test_the_gap_of_a_chain(workshop: DesignFolder) -> None:
    assert leaning(chain.drawn(workshop)) == [DOWN]


def test_a_wall_between_two_spaces(workshop: DesignFolder) -> None:
    assert leaning(chambers.drawn(workshop)) == [DOWN]
