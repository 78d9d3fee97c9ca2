"""Openings beside each other, and beside welds: ligaments from both sides, by hand."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, changed, on_sheet
from speclint_fabrication.formulae.openings import stress_of_ligament
from tests.plugins.fabrication import bench
from tests.plugins.fabrication.openings import APART, BARREL, FLAT, ROW, single_hole, with_inlet, with_ports
from tests.plugins.known_metals import WITH_METALS


def test_ports_near_each_other_leave_a_ligament(workshop: DesignFolder) -> None:
    """38.5 mm net 37.5: apart alone from 2 × 152 + 40; at 42 mm σ = 1.66 × 307.75/37.5/(2/42) = 286 MPa."""
    check = with_ports(workshop, ('from_seat = "750 mm"', 'from_seat = "192 mm"')).only(APART)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert with_ports(workshop).only(APART).outcome == "conforms"


@pytest.mark.parametrize(("apart", "outcome"), [("104.4 mm", "conforms"), ("103.2 mm", "finding")])
def test_a_row_from_both_sides(workshop: DesignFolder, apart: str, outcome: str) -> None:
    """1.66 × 254/8/η = 52.705/η ≤ 133.33: η 0.3953, p = 60/(1 − 0.3953) = 99.2 mm; on test 18 bar of 228 MPa, less."""
    edge = 60 / (1 - 52.705 / (400 / 3))
    assert edge == pytest.approx(99.22, abs=0.01)
    apart = f"{edge + (0.1 if outcome == 'conforms' else -0.1):.3f} mm"
    row = ROW.replace('"160 mm"', f'"{apart}"')
    check = with_inlet(workshop, opening="", more=row).only(APART)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def _beside_unlike(apart: float) -> str:
    """A hole of 60 mm so far from the next, which may be one of 20 mm or one of 100 mm, both far from all others."""
    return (
        single_hole("drain", "60 mm", f"{apart:.3f} mm")
        + single_hole("gauge", "20 mm", "400 mm")
        + single_hole("manhole", "100 mm", "400 mm")
    )


@pytest.mark.parametrize(("by", "outcome"), [(0.1, "conforms"), (-0.1, "finding")])
def test_the_next_opening_is_taken_as_the_largest(workshop: DesignFolder, by: float, outcome: str) -> None:
    """η 0.3953 as above; holes of 60 and 100 mm: p = 80/(1 − 0.3953) = 132.3 mm, beside one of 20 mm 66.2."""
    edge = 80 / (1 - 52.705 / (400 / 3))
    assert edge == pytest.approx(132.30, abs=0.01)
    check = with_inlet(workshop, opening="", more=_beside_unlike(edge + by)).only(APART)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("by", "outcome"), [(0.1, "conforms"), (-0.1, "finding")])
def test_so_it_is_in_a_flat_wall(workshop: DesignFolder, by: float, outcome: str) -> None:
    """52.3716 × 1.66 = 86.94 of 200 MPa, η 0.4347: holes of 60 and 100 mm 80/(1 − 0.4347) = 141.5 mm apart."""
    edge = 80 / (1 - 52.3716 * 1.66 / 200)
    assert edge == pytest.approx(141.51, abs=0.02)
    holes = _beside_unlike(edge + by).replace('plate = "drum"', 'flat_wall = "chest"')
    weldment = changed(bench.WELDMENT, ('wall = "chest"', 'wall = "barrel"')) + holes
    check = workshop.write({**bench.FILES, "weldment.toml": weldment}, settings=WITH_METALS).only(APART)
    assert check.outcome == outcome


@pytest.mark.parametrize(("width", "length"), [("40 mm", "60 mm"), ("60 mm", "40 mm")])
@pytest.mark.parametrize(("by", "outcome"), [(0.1, "conforms"), (-0.1, "finding")])
def test_an_oblong_opening_counts_by_its_longer_side(
    workshop: DesignFolder, width: str, length: str, by: float, outcome: str
) -> None:
    """As a round one of 60 mm: 99.22 mm apart."""
    edge = 60 / (1 - 52.705 / (400 / 3))
    row = changed(
        ROW,
        ('diameter = "60 mm"', f'width = "{width}"\nlength = "{length}"'),
        ("160 mm", f"{edge + by:.3f} mm"),
    )
    assert with_inlet(workshop, opening="", more=row).only(APART).outcome == outcome


@pytest.mark.parametrize(("width", "covered"), [("30.1 mm", True), ("29.9 mm", False)])
def test_an_opening_twice_as_long_as_wide_is_the_longest(
    workshop: DesignFolder, width: str, covered: bool
) -> None:
    row = ROW.replace('diameter = "60 mm"', f'width = "{width}"\nlength = "60 mm"')
    check = with_inlet(workshop, opening="", more=row).only(APART)
    assert ("more than twice as long as it is wide" in check.says) is not covered
    assert check.outcome == ("conforms" if covered else "finding")


@pytest.mark.parametrize(
    "more", ["", '[bores.small]\ndiameter = "400 mm"\nplate = "barrel"\nlength = "900 mm"\n']
)
def test_of_a_barrel_the_bore_is_the_inside(workshop: DesignFolder, more: str) -> None:
    """1.66 × (289 + 37.5/2)/37.5 = 13.623 MPa, of which 60 of 160 mm are cut out: 21.797 MPa; on test by 18/16.6.

    Of two bores in one plate the larger counts.
    """
    row = changed(ROW, ('plate = "drum"', 'plate = "barrel"'), ('to_edge = "100 mm"', 'to_edge = "120 mm"'))
    weldment = bench.WELDMENT + BARREL.replace('"9 mm"', '"38.5 mm"') + row
    workshop = with_ports(workshop)
    block = (workshop.root / "block.toml").read_text(encoding="utf-8") + more
    files = {"weldment.toml": weldment, "block.toml": block}
    check = workshop.write(files, settings=WITH_METALS).only(APART)
    assert check.outcome == "conforms"
    assert on_sheet(check, "σ of drains") / 1e6 in (
        pytest.approx(21.797, rel=1e-3),
        pytest.approx(23.635, rel=1e-3),
    )


@pytest.mark.parametrize(("test", "outcome"), [("28.5 bar", "conforms"), ("28.9 bar", "finding")])
def test_a_test_stresses_a_ligament_to_its_share(workshop: DesignFolder, test: str, outcome: str) -> None:
    """P × 254/8/0.4 is 0.95 × 240 = 228 MPa at 28.72 bar; in service 131.8 of 133.3."""
    row = ROW.replace('"160 mm"', '"100 mm"')
    assert with_inlet(workshop, opening="", more=row, test=test).only(APART).outcome == outcome


@pytest.mark.parametrize("rule", [FLAT, APART])
@pytest.mark.parametrize(("pressure", "outcome"), [("19.0 bar", "conforms"), ("19.2 bar", "finding")])
def test_a_flat_wall_bends_to_one_and_a_half_times_its_tension(
    workshop: DesignFolder, rule: str, pressure: str, outcome: str
) -> None:
    """The chest's wall of ``test_walls`` is stressed to 52.3716 p, of 1.5 × 133.33 MPa; no weld makes it up.

    Holes of 60 mm, 120 mm apart, in 190: √2 times as thick, or a ligament of one half, leave 100 MPa: 19.09 bar.
    """
    row = ROW.replace('plate = "drum"', 'flat_wall = "chest"').replace('"160 mm"', '"120 mm"')
    weldment = changed(bench.WELDMENT, ('wall = "chest"', 'wall = "barrel"')) + row
    duty = changed(
        bench.DUTY, ('pressure = "16.6 bar gauge"\nexhaust', f'pressure = "{pressure} gauge"\nexhaust')
    )
    files = {**bench.FILES, "weldment.toml": weldment, "duty.toml": duty}
    assert workshop.write(files, settings=WITH_METALS).only(rule).outcome == outcome


def test_a_single_opening_is_no_row(workshop: DesignFolder) -> None:
    """It has no next, so that its distance to one is not asked; two of them have."""
    single = changed(ROW, ('to_next = "160 mm"\n', ""), ("count = 4", "count = 1"))
    assert with_inlet(workshop, opening="", more=single).only(APART).outcome == "conforms"
    double = single.replace("count = 1", "count = 2")
    assert with_inlet(workshop, opening="", more=double).only(APART).outcome == "not assessed"


def test_a_row_says_how_near_its_holes_are(workshop: DesignFolder) -> None:
    check = with_inlet(workshop, opening="", more=ROW.replace('to_next = "160 mm"\n', "")).only(APART)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("edge", "outcome"), [("24.1 mm", "conforms"), ("23.9 mm", "finding")])
def test_clear_of_welds(workshop: DesignFolder, edge: str, outcome: str) -> None:
    """max(0.2 × 63.75, 3 × 8) = 24 mm."""
    check = with_inlet(workshop, ('"100 mm"', f'"{edge}"')).only(APART)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_through_a_weld_that_is_fully_examined(workshop: DesignFolder) -> None:
    through = ('to_edge = "100 mm"', 'to_edge = "100 mm"\nthrough_weld = "barrel-seam"')
    assert with_inlet(workshop, through).only(APART).outcome == "conforms"
    partly = ('to_edge = "100 mm"', 'to_edge = "100 mm"\nthrough_weld = "chest-edge"')
    assert with_inlet(workshop, partly).only(APART).outcome == "finding"
    weldment = (workshop.root / "weldment.toml").read_text(encoding="utf-8")
    nearly = weldment.replace('examined = "10 %"', 'examined = "99 %"')
    assert workshop.write({"weldment.toml": nearly}, settings=WITH_METALS).only(APART).outcome == "finding"


@given(r=st.floats(0.05, 0.5), e=st.floats(2e-3, 0.05), p=st.floats(0.1, 1), d=st.floats(0.001, 0.09))
def test_a_ligament_is_never_stressed_less_than_the_shell(r: float, e: float, p: float, d: float) -> None:
    assert stress_of_ligament(1e6, r, e, p, d, d) >= 1e6 * (r + e / 2) / e
