"""Formulae of plates at both sides of each end of their range, with the sizes that a refusal names."""

from __future__ import annotations

import pytest

from speclint.handbook.plates import circular, flat_covers, panels, rings, wasted_thickness
from tests.ranges import End, expect_end

LITTLE = 1e-9
DISC = {"p": 1e6, "D": 0.2, "t": 0.05}
STIFF = {"E": 2e11, "nu": 0.3}
COVER = {"G": LITTLE, "C": 0.0, "p": 0.0, "S": LITTLE, "E": 1.0, "W": 0.0, "h_G": 0.0}
STRESSED = {"G": LITTLE, "C": 0.3, "p": 0.0, "t": LITTLE, "E": 1.0, "W": 0.0, "h_G": 0.0}
PERIOD = {"D": 0.5, "C": 0.0, "p": 0.0, "sigma": LITTLE}
PANEL = {"k": 0.0, "p": 0.0, "a": 0.2, "S": LITTLE}
RING = {"p": 1e6, "D": 0.2, "t": 0.05}
THIN = "is not between 0 and a quarter of the"

CIRCULAR = [
    *(
        End(one, {**DISC, **more}, {"t": t}, f"thickness {said} mm {THIN} diameter 200 mm")
        for one, more in (
            (circular.clamped_plate_stress, {}),
            (circular.clamped_plate_centre_stress, {"nu": 0.3}),
            (circular.clamped_plate_deflection, STIFF),
            (circular.supported_plate_stress, {"nu": 0.3}),
            (circular.supported_plate_deflection, STIFF),
            (circular.supported_plate_stress_within, {"nu": 0.3, "G": 0.1}),
        )
        for t, said in ((0.0505, "50.5"), (0.0, "0"))
    ),
    End(
        circular.edge_moment_deflection,
        {"m": 1e3, "D": 0.2, "t": 0.05, **STIFF},
        {"t": 0.0505},
        f"thickness 50.5 mm {THIN} diameter 200 mm",
    ),
    *(
        End(
            circular.plate_rigidity,
            {"E": 2e11, "t": 0.05, "nu": within},
            {"nu": beyond},
            f"Poisson's ratio {beyond:g} is not between -1 and 1",
        )
        for within, beyond in ((0.99, 1.0), (-0.99, -1.0))
    ),
    End(
        circular.supported_plate_stress_within,
        {**DISC, "nu": 0.3, "G": 0.2},
        {"G": 0.2005},
        "circle under pressure 200.5 mm is not between 0 and the support 200 mm",
    ),
    End(
        circular.supported_plate_stress_within,
        {**DISC, "nu": 0.3, "G": LITTLE},
        {"G": 0.0},
        "circle under pressure 0 mm is not between 0 and the support 200 mm",
    ),
    End(circular.edge_moment_stress, {"m": 1e3, "t": LITTLE}, {"t": 0.0}, "thickness 0 mm is not above 0"),
    End(
        circular.edge_moment_stress,
        {"m": 1e3, "t": LITTLE},
        {"t": -0.0015},
        "thickness -1.5 mm is not above 0",
    ),
]
COVERS = [
    *(
        End(one, within, changed, says)
        for one, within in (
            (flat_covers.bolted_cover_thickness, COVER),
            (flat_covers.bolted_cover_stress, STRESSED),
        )
        for changed, says in (
            ({"G": 0.0}, "gasket diameter 0 mm is not above 0"),
            ({"G": -0.0015}, "gasket diameter -1.5 mm is not above 0"),
            ({"p": -1.5e5}, "pressure -1.5 bar is negative"),
            ({"E": 0.0}, "weld efficiency 0 is not between 0 and 1"),
            ({"E": 1.01}, "weld efficiency 1.01 is not between 0 and 1"),
        )
    ),
    End(flat_covers.bolted_cover_thickness, COVER, {"S": 0.0}, "allowable stress 0 MPa is not above 0"),
    End(flat_covers.bolted_cover_thickness, COVER, {"S": -1.5e6}, "allowable stress -1.5 MPa is not above 0"),
    End(flat_covers.bolted_cover_stress, STRESSED, {"t": 0.0}, "thickness 0 mm is not above 0"),
    End(flat_covers.bolted_cover_stress, STRESSED, {"t": -0.0015}, "thickness -1.5 mm is not above 0"),
    End(
        flat_covers.cover_thickness_with_opening,
        {"t": 0.05, "d": 0.1, "G": 0.2},
        {"d": 0.1005},
        "opening 100.5 mm is not between 0 and half of the diameter 200 mm",
    ),
    End(
        flat_covers.cover_thickness_with_opening,
        {"t": 0.05, "d": LITTLE, "G": 0.2},
        {"d": 0.0},
        "opening 0 mm is not between 0 and half of the diameter 200 mm",
    ),
    End(
        flat_covers.period_cover_thickness,
        PERIOD,
        {"p": -1.5e5, "sigma": 2.5e6},
        "pressure -1.5 bar is negative or stress 2.5 MPa is not above 0",
    ),
    End(
        flat_covers.period_cover_thickness,
        PERIOD,
        {"sigma": 0.0},
        "pressure 0 bar is negative or stress 0 MPa is not above 0",
    ),
]
PANELS = [
    *(
        End(panels.panel_stress, {"k": 0.5, "p": 1e6, "a": LITTLE, "t": LITTLE}, changed, says)
        for changed, says in (
            ({"t": 0.0, "a": 0.2}, "thickness 0 mm and short side 200 mm must be above 0"),
            ({"t": 0.05, "a": 0.0}, "thickness 50 mm and short side 0 mm must be above 0"),
        )
    ),
    *(
        End(
            panels.panel_deflection,
            {"alpha": 0.02, "p": 1e6, "a": 0.2, "t": 0.05, **STIFF},
            {"t": t},
            f"thickness {said} mm {THIN} short side 200 mm",
        )
        for t, said in ((0.0505, "50.5"), (0.0, "0"))
    ),
    End(
        panels.panel_thickness,
        PANEL,
        {"p": -1.5e5, "S": 2.5e6},
        "pressure -1.5 bar is negative or stress 2.5 MPa is not above 0",
    ),
    End(
        panels.panel_thickness,
        PANEL,
        {"S": 0.0},
        "pressure 0 bar is negative or stress 0 MPa is not above 0",
    ),
]
RINGS = [
    End(one, {**RING, **more}, {"t": t}, f"thickness {said} mm {THIN} outside 200 mm")
    for one, more in (
        (rings.ring_plate_stress, {"k": 0.5}),
        (rings.ring_plate_deflection, {"k": 0.5, "E": 2e11}),
    )
    for t, said in ((0.0505, "50.5"), (0.0, "0"))
]
RINGS += [
    End(
        rings.ring_plate_hole_load_stress,
        {"F": 1e3, "d": within, "D": 0.2, "t": 0.02, "nu": 0.3},
        {"d": beyond},
        f"hole {beyond * 1e3:g} mm is not within 0.01 to 0.99 of 200 mm",
    )
    for within, beyond in ((0.00201, 0.0015), (0.197, 0.1985))
]


@pytest.mark.parametrize("end", [*CIRCULAR, *COVERS, *PANELS, *RINGS], ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)


@pytest.mark.parametrize(
    ("a", "b", "says"),
    [
        (0.2005, 0.2, "short side 200.5 mm is not between 0 and the long side 200 mm"),
        (0.0, 0.2, "short side 0 mm is not between 0 and the long side 200 mm"),
    ],
)
def test_the_short_side_of_a_panel_is_the_shorter(a: float, b: float, says: str) -> None:
    assert panels.panel_stress_factor(edges="clamped", a=0.2, b=0.2).nominal > 0
    end = End(
        lambda a, b: panels.panel_stress_factor(edges="clamped", a=a, b=b),
        {"a": 0.2, "b": 0.2},
        {"a": a, "b": b},
        says,
    )
    expect_end(end)


@pytest.mark.parametrize(("within", "beyond", "said"), [(24.999, 25.0, "25"), (1.0, 26.5, "26.5")])
def test_corrosion_leaves_something_of_a_wall(within: float, beyond: float, said: str) -> None:
    says = f"the allowance {said} mm leaves nothing of the wall 25 mm"
    expect_end(End(wasted_thickness, {"t": 0.025, "c": within / 1e3}, {"c": beyond / 1e3}, says))
