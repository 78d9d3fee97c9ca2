"""Formulae of thick cylinders at both sides of each end of their range, with the sizes that a refusal names."""

from __future__ import annotations

import pytest

from speclint.handbook.cylinders import thick
from tests.ranges import End, expect_end

BETWEEN = {"p_i": 1e6, "p_o": 0.0}
WALL = {"d": 0.499, "D": 0.5}
NO_WALL = "bore 500 mm is not between 0 and the outside diameter 500 mm"

ENDS = [
    End(thick.outside_of_wall, {"d": 0.5, "t": 1e-9}, {"t": 0.0}, "wall 0 mm is not above 0"),
    End(thick.outside_of_wall, {"d": 0.5, "t": 1e-9}, {"t": -0.0015}, "wall -1.5 mm is not above 0"),
    *(
        End(one, {**more, **WALL}, {"d": 0.5}, NO_WALL)
        for one, more in (
            (thick.axial_stress_with_closed_ends, BETWEEN),
            (thick.bore_hoop_stress, {"p": 1e6}),
            (thick.outside_hoop_stress, {"p": 1e6}),
            (thick.bore_hoop_stress_between_pressures, BETWEEN),
            (thick.outside_pressure_for_bore_stress, {"sigma": 1e7, "p_i": 1e6}),
            (thick.hoop_stress, {**BETWEEN, "x": 0.4995}),
            (thick.radial_stress, {**BETWEEN, "x": 0.4995}),
        )
    ),
    End(
        thick.bore_hoop_stress,
        {"p": 1e6, "d": 1e-9, "D": 0.5},
        {"d": 0.0},
        "bore 0 mm is not between 0 and the outside diameter 500 mm",
    ),
    *(
        End(
            one,
            {**BETWEEN, "d": 0.4, "D": 0.5, "x": within},
            {"x": beyond},
            f"diameter {said} mm is not within the wall from 400 mm to 500 mm",
        )
        for one in (thick.hoop_stress, thick.radial_stress)
        for within, beyond, said in ((0.4, 0.3995, "399.5"), (0.5, 0.5005, "500.5"))
    ),
    End(
        thick.minimum_wall,
        {"p": 0.0, "S": 1e6, "d": 0.5},
        {"p": -1.5e5},
        "pressure -1.5 bar is not between 0 and the allowable stress 1 MPa",
    ),
    End(
        thick.minimum_wall,
        {"p": 0.999e6, "S": 1e6, "d": 0.5},
        {"p": 1e6},
        "pressure 10 bar is not between 0 and the allowable stress 1 MPa",
    ),
    End(
        thick.minimum_wall_of_ductile_metal,
        {"p": 0.0, "S": 1e6, "d": 0.5},
        {"p": -1.5e5},
        "twice the pressure -1.5 bar is not between 0 and the allowable stress 1 MPa",
    ),
    End(
        thick.minimum_wall_of_ductile_metal,
        {"p": 0.499e6, "S": 1e6, "d": 0.5},
        {"p": 0.5e6},
        "twice the pressure 5 bar is not between 0 and the allowable stress 1 MPa",
    ),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
