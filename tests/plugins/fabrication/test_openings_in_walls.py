"""Openings in flat walls, and the bores of valve seats as openings."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_query, on_sheet
from speclint_fabrication.formulae.area_replacement import wall_with_opening
from tests.plugins.fabrication import bench
from tests.plugins.fabrication.openings import DRUM, FLAT, IN_WALL, REPLACED
from tests.plugins.known_metals import WITH_METALS


def _in_wall(workshop: DesignFolder, diameter: str, thickness: str = "20 mm") -> DesignFolder:
    weldment = bench.WELDMENT.replace('thickness = "20 mm"\nmeets', f'thickness = "{thickness}"\nmeets')
    text = IN_WALL.replace('"300 mm"', f'"{diameter}"')
    files = {**bench.FILES, "block.toml": bench.BLOCK + text, "weldment.toml": weldment}
    return workshop.write(files, settings=WITH_METALS)


def test_an_opening_in_a_flat_wall(workshop: DesignFolder) -> None:
    """The wall of 95 mm: to 47.5 mm √2 of its thickness, at 70 mm √(95/25) = 1.95 times; at 77 it is too large."""
    check = _in_wall(workshop, "47 mm").only(FLAT)
    assert check.outcome == "conforms"
    t_0 = on_sheet(check, "t_0 of inlet")
    assert on_sheet(check, "t_n of inlet") == pytest.approx(t_0 * math.sqrt(2))
    wide = _in_wall(workshop, "70 mm").only(FLAT)
    assert on_sheet(wide, "t_n of inlet") == pytest.approx(t_0 * math.sqrt(95 / 25))
    assert "finite elements" in _in_wall(workshop, "77 mm").only(FLAT).says
    assert _in_wall(workshop, "47 mm").only(REPLACED).outcome == "not applicable"


@pytest.mark.parametrize(("wall", "helps"), [("11 mm", True), ("1.1 mm", False)])
def test_a_branch_in_a_flat_wall_spares_what_it_has(workshop: DesignFolder, wall: str, helps: bool) -> None:
    """16.3 bar in a branch of 47 mm: t_rn = 1.63 × 23.5/(133.33 − 0.978) = 0.2894 mm; on test 18 bar of 160 MPa.

    11 mm, 10 net: 5 × 10 × (10 − 0.2894) = 485.5 mm², more than half of what is cut out. Of 1.1 mm 0.1 is left, less
    than it needs itself: the wall wants √2 times its thickness, and no more.
    """
    folder = _in_wall(workshop, "47 mm")
    block = (folder.root / "block.toml").read_text(encoding="utf-8")
    branch = changed(block, ('"drilled"', '"set in"'), ('wall = "11 mm"', f'wall = "{wall}"'))
    check = folder.write({"block.toml": branch}, settings=WITH_METALS).only(FLAT)
    t_0 = on_sheet(check, "t_0 of inlet")
    assert on_sheet(check, "t_n of inlet") == pytest.approx(t_0 if helps else t_0 * math.sqrt(2))
    needed = on_sheet(check, "t_rn of inlet") * 1e3
    assert needed in (
        pytest.approx(0.2894, abs=1e-4),
        pytest.approx(1.8 * 23.5 / (160 - 0.6 * 1.8), abs=1e-4),
    )
    left = 10 if helps else 0.1
    assert on_sheet(check, "A_b of inlet") * 1e6 == pytest.approx(5 * left * (left - needed))


def test_a_thin_flat_wall_with_an_opening_is_a_hold(workshop: DesignFolder) -> None:
    """A thickness that the wall alone would do with."""
    folder = _in_wall(workshop, "70 mm", "9.4 mm")
    check = folder.only(FLAT)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def _seat(workshop: DesignFolder, where: str, diameter: str, thickness: str = "20 mm") -> DesignFolder:
    weldment = bench.WELDMENT.replace('thickness = "20 mm"\nmeets', f'thickness = "{thickness}"\nmeets')
    bore = f'[seat_bores.upper]\ndiameter = "{diameter}"\nwall = "100 mm"\n{where}\n'
    files = {**bench.FILES, "block.toml": bench.BLOCK + bore, "weldment.toml": weldment + DRUM}
    return workshop.write(files, settings=WITH_METALS)


@pytest.mark.parametrize(("thickness", "outcome"), [("20 mm", "conforms"), ("9.4 mm", "finding")])
def test_the_bore_of_a_seat_is_an_opening_in_its_wall(
    workshop: DesignFolder, thickness: str, outcome: str
) -> None:
    """70 mm in the wall of 95: √(95/25) = 1.95 times the thickness without it, as for any other opening there."""
    check = _seat(workshop, 'flat_wall = "barrel"', "70 mm", thickness).only(FLAT)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("diameter", "outcome"), [("190 mm", "conforms"), ("193 mm", "finding")])
def test_the_bore_of_a_seat_in_a_round_shell(workshop: DesignFolder, diameter: str, outcome: str) -> None:
    """r 250, net 8 mm: l_s = 63.75, A_s = 510 mm², 510 × (133.33 − 0.83) = 67.57 kN; of 190 mm the steam brings
    1.66 × (250 × 158.75 + 95 × 8) = 67.1 kN, of 193 mm 67.8."""
    check = _seat(workshop, 'plate = "drum"', diameter).only(REPLACED)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_a_seat_that_names_no_wall_is_a_query(workshop: DesignFolder) -> None:
    expect_query(_seat(workshop, "", "70 mm").only(FLAT), "is not stated by the seat bores upper")


@given(t_0=st.floats(1e-3, 0.1), a=st.floats(0.05, 1), share=st.floats(0.01, 0.79), A=st.floats(0, 1e-2))
def test_an_opening_never_makes_a_wall_thinner(t_0: float, a: float, share: float, A: float) -> None:
    assert t_0 * (1 - 1e-12) <= wall_with_opening(t_0, share * a, a, A)
