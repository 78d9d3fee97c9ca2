"""Formulae of liners at both sides of each end of their range, with the sizes that a refusal names."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from speclint_liners.formulae.ends import stretch_of_section
from speclint_liners.formulae.ports import overlap
from speclint_liners.formulae.seating import (
    collar_seat_area,
    dowel_bearing,
    dowel_shear,
    steam_on_liner_end,
)
from speclint_liners.formulae.walls import (
    compression,
    gap_at_best,
    thinnest_wall,
    wall_when_wasted,
    whole_reborings,
)
from speclint_liners.formulae.water import relief_area, relief_area_wanted
from tests.ranges import End, expect_end

ROD = {"F": 1e5, "l": 2.0, "A": 1e-9, "E": 1.0}
DOWELS = {"F": 8e4, "n": 1e-6, "d": 1e-6, "L": 1e-6}
SHEAR = {"F": 8e4, "n": 1e-6, "d": 1e-6}
LINER = {"p": 1.66e6, "D": 0.560, "d": 0.559999}
COLLAR = {"D_c": 0.568001, "D_b": 0.560, "k": 0.004}
WALL = {"d": 0.500, "D": 0.560, "e": 0.029999}
REBORING = {"d_last": 0.5, "d": 0.5, "s": 1e-6}
RELIEF = {"Q": 0.1, "C": 0.6, "p": 1e-3, "rho": 1000.0}
VALVES = {"n": 2.0, "d": 0.06, "h": 0.01, "beta": 0.0}

ENDS = [
    End(stretch_of_section, ROD, {"A": 0.0}, "section 0 mm² and modulus 1e-06 MPa must be above 0"),
    End(stretch_of_section, ROD, {"E": 0.0}, "section 0.001 mm² and modulus 0 MPa must be above 0"),
    End(
        stretch_of_section,
        ROD,
        {"A": -0.005, "E": 2e11},
        "section -5000 mm² and modulus 200000 MPa must be above 0",
    ),
    End(steam_on_liner_end, LINER, {"d": 0.560}, "bore 560 mm leaves no wall within 560 mm"),
    End(
        steam_on_liner_end, LINER, {"d": 0.5605, "D": 0.5601}, "bore 560.5 mm leaves no wall within 560.1 mm"
    ),
    End(dowel_shear, SHEAR, {"n": 0.0, "d": 0.025}, "0 dowels of 25 mm hold nothing"),
    End(dowel_shear, SHEAR, {"d": 0.0, "n": 2.0}, "2 dowels of 0 mm hold nothing"),
    End(dowel_bearing, DOWELS, {"n": 0.0, "d": 0.025, "L": 0.016}, "0 dowels of 25 mm by 16 mm hold nothing"),
    End(dowel_bearing, DOWELS, {"n": 2.0, "d": 0.0, "L": 0.016}, "2 dowels of 0 mm by 16 mm hold nothing"),
    End(dowel_bearing, DOWELS, {"n": 2.0, "d": 0.025, "L": 0.0}, "2 dowels of 25 mm by 0 mm hold nothing"),
    End(
        collar_seat_area,
        {"D_c": 0.5625, "D_b": 0.560, "k": 0.001},
        {"k": 0.00125},
        "collar 562.5 mm leaves no seat outside 562.5 mm",
    ),
    End(collar_seat_area, COLLAR, {"D_c": 0.565}, "collar 565 mm leaves no seat outside 568 mm"),
    End(
        thinnest_wall,
        WALL,
        {"e": 0.0301},
        "bore 500 mm with an eccentricity of 30.1 mm leaves no wall within 560 mm",
    ),
    End(
        thinnest_wall,
        {"d": 0.5, "D": 0.625, "e": 0.0624},
        {"e": 0.0625},
        "bore 500 mm with an eccentricity of 62.5 mm leaves no wall within 625 mm",
    ),
    End(
        thinnest_wall,
        {"d": 0.0, "D": 0.0125, "e": 0.00624},
        {"e": 0.00625},
        "bore 0 mm with an eccentricity of 6.25 mm leaves no wall within 12.5 mm",
    ),
    End(
        wall_when_wasted,
        {"t": 0.025, "w": 0.024999},
        {"w": 0.025},
        "wasting of 25 mm leaves nothing of a wall of 25 mm",
    ),
    End(
        wall_when_wasted,
        {"t": 0.025, "w": 0.0},
        {"w": 0.0265},
        "wasting of 26.5 mm leaves nothing of a wall of 25 mm",
    ),
    End(whole_reborings, REBORING, {"s": 0.0}, "the step 0 mm must be above 0"),
    End(whole_reborings, REBORING, {"s": -0.0015}, "the step -1.5 mm must be above 0"),
    End(
        whole_reborings,
        REBORING,
        {"d_last": 0.4995},
        "the last bore 499.5 mm is smaller than the new one 500 mm",
    ),
    End(
        whole_reborings,
        {"d_last": 0.625, "d": 0.5, "s": 0.000125},
        {"s": 0.000124},
        "the step 0.124 mm is less than a thousandth of the whole reboring",
    ),
    End(relief_area_wanted, RELIEF, {"p": 0.0}, "the relief pressure 0 bar must be above 0"),
    End(relief_area_wanted, RELIEF, {"p": -1.5e5}, "the relief pressure -1.5 bar must be above 0"),
    End(
        relief_area,
        VALVES,
        {"beta": math.radians(-5)},
        "the angle of the seat, -5°, is not from 0 to 90°",
    ),
    End(
        relief_area,
        {**VALVES, "beta": math.radians(89.999)},
        {"beta": math.pi / 2},
        "the angle of the seat, 90°, is not from 0 to 90°",
    ),
    # with a root or a power, at 0 and just below it
    End(
        relief_area_wanted,
        {"Q": 0.1, "C": 0.6, "p": 1e5, "rho": 1e-3},
        {"rho": 0.0},
        "density 0 kg/m³ of the water is not above 0",
    ),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)


def test_a_step_of_exactly_a_thousandth_is_counted() -> None:
    """125 mm of reboring in steps of 0.125 mm: 1000."""
    assert whole_reborings(d_last=0.625, d=0.5, s=0.000125) == 1000


@pytest.mark.parametrize(
    ("formula", "value"), [(gap_at_best, 0.0), (gap_at_best, 1e-4), (compression, 0.0), (compression, 5e6)]
)
def test_what_is_not_negative_leaves_nothing(formula: Callable[[float], float], value: float) -> None:
    """Neither a gap nor a compression: at nothing at all too."""
    assert formula(value) == 0


def test_openings_that_only_touch_do_not_overlap() -> None:
    """One from −1 to 1 m, the other from 1 to 3 m, and one from 1.5 to 3.5 m."""
    for middle in (2.0, 2.5):
        assert overlap(x_a=0.0, a=2.0, x_b=middle, b=2.0) == 0
