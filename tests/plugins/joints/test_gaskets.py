"""Crushing of gaskets: 20 studs at up to 130 kN on π/4 (636² − 604²) = 31 165 mm² are 83.4 MPa."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, NotKnown
from speclint.handbook.bolted_joints.gasket_materials import crushing_stress, gaskets, seating_stress
from speclint.testing import DesignFolder, expect_not_applicable, on_sheet
from tests.plugins.joints import hand
from tests.plugins.joints.bench import GROUND, bench, figure_of, in_every_case, without

_AREA = math.pi / 4 * (636**2 - 604**2)
_PRESSED = 20 * 130e3 / _AREA


def test_press_of_the_bench_by_hand(workshop: DesignFolder) -> None:
    assert pytest.approx(83.43, abs=0.01) == _PRESSED
    check = bench(workshop).only("joint.gasket-crush", "studs")
    assert check.outcome == "conforms"
    assert on_sheet(check, "q_0") / 1e6 == pytest.approx(_PRESSED, rel=1e-6)
    assert on_sheet(check, "q_h") / 1e6 in (
        pytest.approx(_PRESSED, rel=1e-6),
        pytest.approx(20 * hand.heated(130e3) / _AREA, rel=1e-5),
    )


@pytest.mark.parametrize(("times", "outcome"), [(0.999, "conforms"), (1.001, "finding")])
def test_graphite_from_both_sides(workshop: DesignFolder, times: float, outcome: str) -> None:
    """Graphite sheet of 1.5 mm bears 150 MPa: 384 N·m × 150/83.43."""
    torque = f'torque = "{times * 384 * 150 / _PRESSED:.4f} N·m"'
    check = bench(workshop, ("studs", 'torque = "384 N·m"', torque)).only("joint.gasket-crush", "studs")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_narrow_ring_is_crushed(workshop: DesignFolder) -> None:
    """4 mm wide: π/4 (636² − 628²) = 7942 mm² under 2600 kN, 327 MPa; it beds in and holds the steam all the same."""
    bench(workshop, ("studs", 'inside = "604 mm"', 'inside = "628 mm"'))
    check = workshop.only("joint.gasket-crush", "studs")
    assert check.outcome == "finding"
    assert on_sheet(check, "q_0") / 1e6 == pytest.approx(327.4, abs=0.1)
    assert workshop.only("joint.gasket-load", "studs").outcome == "conforms"


def test_a_cover_that_outgrows_its_studs_crushes_the_gasket_hot(workshop: DesignFolder) -> None:
    """Tightened to 149 MPa; a cover that grows 1.5e-6/K more than the studs presses harder hot."""
    torque = f'torque = "{384 * 149 / _PRESSED:.4f} N·m"'
    bench(workshop, ("studs", 'torque = "384 N·m"', torque))
    assert workshop.only("joint.gasket-crush", "studs").outcome == "conforms"
    figure_of(workshop, "test-cover", "expansion", "degC = [-20, 500]\nvalue = 14")
    check = workshop.only("joint.gasket-crush", "studs")
    assert check.outcome == "finding"
    assert on_sheet(check, "q_h") > on_sheet(check, "q_0")


@pytest.mark.parametrize("line", ['outside = "636 mm"', 'name = "graphite sheet on tanged steel 1.5 mm"'])
def test_a_gasket_not_described_is_not_assessed(workshop: DesignFolder, line: str) -> None:
    assert without(workshop, "studs", line).only("joint.gasket-crush", "studs").outcome == "not assessed"


def test_a_gasket_of_no_known_strength_is_not_assessed(workshop: DesignFolder) -> None:
    bench(workshop, ("studs", "graphite sheet on tanged steel 1.5 mm", "self-energising ring"))
    assert workshop.only("joint.gasket-crush", "studs").outcome == "not assessed"


def test_without_heat_stated_it_is_not_assessed(workshop: DesignFolder) -> None:
    in_every_case(bench(workshop), 'cylinder-cover = "200 °C"\n', "")
    assert workshop.only("joint.gasket-crush", "studs").outcome == "not assessed"


def test_a_ground_face_has_nothing_to_crush(workshop: DesignFolder) -> None:
    bench(
        workshop,
        ("studs", 'seal = "gasket"', 'seal = "ground face"\npressure_circle = "620 mm"'),
        ("studs", 'name = "graphite sheet on tanged steel 1.5 mm"\n', ""),
        ("studs", "[tightening]", f"{GROUND}[tightening]"),
    )
    check = workshop.only("joint.gasket-crush", "studs")
    expect_not_applicable(check, "joint.face-pressure judges it")


def test_what_beds_a_gasket_in_does_not_crush_it() -> None:
    """The seating stress, on half the width at most, is well below what the whole ring bears."""
    known = 0
    for gasket in gaskets():
        try:
            bears = crushing_stress(gasket).nominal
        except NotKnown:
            continue
        known += 1
        assert bears >= seating_stress(gasket).nominal
    assert known == len(gaskets()) - 1


@given(st.sampled_from(["graphite sheet on tanged steel", "fibre sheet"]))
def test_thicker_sheet_of_one_kind_bears_less(kind: str) -> None:
    assert crushing_stress(f"{kind} 3 mm").nominal < crushing_stress(f"{kind} 1.5 mm").nominal


@pytest.mark.parametrize(
    ("thickness", "outcome"),
    [
        ("1.2 mm", "conforms"),
        ("1.64 mm", "conforms"),
        ("1.66 mm", "finding"),
        ("3 mm", "finding"),
        ("0.76 mm", "conforms"),
        ("0.74 mm", "finding"),
    ],
)
def test_a_gasket_is_as_thick_as_the_sheet_it_names(
    workshop: DesignFolder, thickness: str, outcome: str
) -> None:
    """A sheet of 1.5 mm: from 0.5 × 1.5 = 0.75 to 1.1 × 1.5 = 1.65 mm."""
    bench(workshop, ("studs", 'thickness = "1.2 mm"', f'thickness = "{thickness}"'))
    check = workshop.only("joint.gasket-as-named", "studs")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_gasket_made_in_several_thicknesses_has_none_of_its_own(workshop: DesignFolder) -> None:
    """The table gives 4.5 mm for a spiral wound one, to which its factors belong; 3.2 mm is as usual."""
    changes = (
        ("studs", '"graphite sheet on tanged steel 1.5 mm"', '"spiral wound carbon steel with filler"'),
        ("studs", 'thickness = "1.2 mm"', 'thickness = "3.2 mm"'),
    )
    assert bench(workshop, *changes).only("joint.gasket-as-named", "studs").outcome == "not applicable"
