"""Openings in round shells, and ports round a barrel: the metal that replaces what is cut out."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_applicable, expect_not_assessed, found, limit, on_sheet
from speclint_fabrication.formulae.area_replacement import (
    area_of_branch,
    area_of_shell,
    area_required,
    share_of_area,
    thickness_required,
)
from speclint_fabrication.formulae.openings import (
    load_at_opening,
    metal_of_branch,
    metal_of_shell,
    reach_in_branch,
    reach_in_shell,
    strength_at_opening,
)
from tests.plugins.fabrication import bench
from tests.plugins.fabrication.openings import APART, BARREL, REPLACED, single_hole, with_inlet, with_ports
from tests.plugins.known_metals import WITH_METALS


def _en(r: float, e: float, d: float, t_b: float, f_b: float = 130.0, counted: float | None = None) -> float:
    """Use by pressed areas at 1.66 MPa, a shell of 150 MPa, all in mm."""
    r, e, d, t_b = r / 1e3, e / 1e3, d / 1e3, t_b / 1e3
    e_b = t_b if counted is None else counted / 1e3
    l_s, l_b = reach_in_shell(r, e), reach_in_branch(d, e_b)
    F = load_at_opening(1.66e6, r, l_s, d, d - 2 * t_b, l_b, e)
    A_s, A_b = metal_of_shell(e, l_s), metal_of_branch(e_b, l_b, 0.0, e)
    return F / strength_at_opening(A_s, 150e6, A_b, f_b * 1e6, 1.66e6)


def _asme(r: float, t: float, d_e: float, t_n: float) -> float:
    r, t, d, t_n, f_r = r / 1e3, t / 1e3, (d_e - 2 * t_n) / 1e3, t_n / 1e3, 130 / 150
    t_r, t_rn = thickness_required(1.66e6, r, 150e6), thickness_required(1.66e6, d / 2, 130e6)
    A = area_required(d, t_r, t_n, f_r)
    return share_of_area(A, area_of_shell(d, t, t_r, t_n, f_r), area_of_branch(t, t_n, t_rn, f_r))


@pytest.mark.parametrize(
    ("sizes", "use", "beside"),
    [
        # inside radius, shell, branch outside × wall; hand working: needs 127 of 980 kN, 103 of 156, 92.7 of 57.8,
        # 40.0 of 24.5
        ((289, 37.5, 180, 10), 0.13, 0.09),
        ((250, 8, 300, 10), 0.66, 0.455),
        ((250, 5, 300, 4), 1.60, 1.20),
        ((150, 3, 220, 3), 1.63, 1.18),
    ],
)
def test_openings_worked_by_hand(sizes: tuple[float, float, float, float], use: float, beside: float) -> None:
    """Both methods agree on what is sound, though the branch of the second code counts otherwise."""
    assert _en(*sizes) == pytest.approx(use, abs=0.006)
    assert _asme(*sizes) == pytest.approx(beside, abs=0.006)


def test_a_thick_branch_counts_as_twice_its_shell() -> None:
    """10 mm counted as 6 on a shell of 3: 41.3 of 43.6 kN; the whole 10 mm would have more to spare."""
    assert _en(150, 3, 220, 10, counted=6) == pytest.approx(0.95, abs=0.005)
    assert _en(150, 3, 220, 10) < 0.7


def test_the_metal_beside_an_opening(workshop: DesignFolder) -> None:
    """Net 8 mm and 10 mm: l_s 63.75, l_b 53.85 mm; 103.1 kN on 510 × (133.3 − 0.83) + 618.5 × the same = 149.5 kN."""
    check = with_inlet(workshop).only(REPLACED)
    assert check.outcome == "conforms"
    assert found(check) == pytest.approx(103.08e3, rel=2e-3)
    assert limit(check) == pytest.approx(149.5e3, rel=2e-3)


@pytest.mark.parametrize(
    ("proof", "share"),
    [("[120, 80]", 0.6301), ("[480, 320]", 0.5139)],
)
def test_a_branch_of_another_steel_by_the_areas_written_beside(
    workshop: DesignFolder, proof: str, share: float
) -> None:
    """Shell net 8, branch net 10 mm round 300 − 22 = 278 mm; half as strong it counts as half, stronger as the shell.

    Starting, 1.66 MPa of 133.33: t_r = 1.66 × 250/(133.33 − 0.996) = 3.1360 mm.
    Half: A = 3.1360 (278 + 10) = 903.2, A_1 = 4.8640 (278 − 10) = 1303.6, t_rn = 1.66 × 139/(66.667 − 0.996) = 3.5136,
    A_2 = 5 × 8 × 6.4864/2 = 129.7 mm²: 903.2/1433.3.
    Twice, of which 400/2.4 = 166.67 MPa by the tensile strength: A = 871.8, A_1 = 1352.2, t_rn = 1.66 × 139/(166.67 −
    0.996) = 1.3928, A_2 = 40 × 8.6072 = 344.3 mm²: 871.8/1696.5.
    """
    metal = bench.PLATE.replace("known-plate", "other-plate").replace("[240, 160]", proof)
    with_inlet(workshop, ('material = "known-plate"', 'material = "other-plate"'))
    metals = {"metals.toml": bench.FILES["metals.toml"] + metal}
    check = workshop.write(metals, settings=WITH_METALS).only(REPLACED)
    assert check.case == "starting"
    assert on_sheet(check, "u of inlet") == pytest.approx(share, rel=5e-4)


@pytest.mark.parametrize(("set_", "reach"), [("set in", 53.852), ("set on", 55.857)])
def test_a_branch_that_is_set_on_stands_round_its_hole(
    workshop: DesignFolder, set_: str, reach: float
) -> None:
    """Outside 300 mm, or 300 + 2 × 11 = 322: √(290 × 10) and √(312 × 10) mm."""
    check = with_inlet(workshop, ('"set in"', f'"{set_}"')).only(REPLACED)
    assert on_sheet(check, "l_b of inlet") == pytest.approx(reach / 1e3, rel=1e-4)


def test_a_block_without_openings(workshop: DesignFolder) -> None:
    expect_not_applicable(bench.write(workshop).only(REPLACED), "no opening of the block is stated")


@pytest.mark.parametrize(
    ("thickness", "outcome"), [("8.1 mm", "conforms"), ("7.9 mm", "finding"), ("6 mm", "finding")]
)
def test_a_thin_shell_is_a_hold(workshop: DesignFolder, thickness: str, outcome: str) -> None:
    """Branch net 6.5 mm: 0.99 at 7.1 mm net, 1.01 at 6.9; at 5 mm the shell alone has 84 MPa of hoop stress."""
    check = with_inlet(workshop, ('"11 mm"', '"7.5 mm"'), drum=('"9 mm"', f'"{thickness}"')).only(REPLACED)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(
    "change",
    [
        ('to_edge = "100 mm"', 'to_edge = "5 mm"'),
        ('projects_out = "200 mm"', 'projects_out = "0 mm"'),
        ('set = "set in"', 'set = "drilled"'),
        ('diameter = "300 mm"', 'diameter = "300 mm"\nangle = "59 °"'),
    ],
)
def test_what_is_not_there_does_not_help(workshop: DesignFolder, change: tuple[str, str]) -> None:
    """Shell to a corner, no branch outside, no branch at all, a long chord aslant."""
    assert with_inlet(workshop, ('"11 mm"', '"7 mm"')).only(REPLACED).outcome == "conforms"
    assert with_inlet(workshop, ('"11 mm"', '"7 mm"'), change).only(REPLACED).outcome == "finding"


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (('plate = "drum"\n', ""), "plate"),
        (('set = "set in"\n', ""), "set"),
        (('wall = "11 mm"\n', ""), "wall"),
        (('material = "known-plate"\n', ""), "material"),
        (('to_edge = "100 mm"\n', ""), "to_edge"),
        (('plate = "drum"', 'plate = "flange"'), "serves as|flange"),
    ],
)
def test_what_is_not_stated_is_a_hold(workshop: DesignFolder, change: tuple[str, str], says: str) -> None:
    check = with_inlet(workshop, change).only(REPLACED)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert any(one in "; ".join(check.missing) + check.says for one in says.split("|"))


def test_beyond_the_range_it_is_not_covered(workshop: DesignFolder) -> None:
    aslant = ('diameter = "300 mm"', 'diameter = "300 mm"\nangle = "61 °"')
    check = with_inlet(workshop, aslant).only(REPLACED)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "finite elements" in check.says
    oblong = ('diameter = "300 mm"', 'width = "100 mm"\nlength = "201 mm"')
    check = with_inlet(workshop, oblong).only(REPLACED)
    assert "finite elements" in check.says


@pytest.mark.parametrize(("diameter", "set_"), [("9.5 mm", "drilled")])
def test_a_small_opening_alone_needs_no_working(workshop: DesignFolder, diameter: str, set_: str) -> None:
    """0.15 × 63.75 = 9.56 mm."""
    small = with_inlet(workshop, ('"300 mm"', f'"{diameter}"'), ('"set in"', f'"{set_}"'))
    check = small.only(REPLACED)
    assert check.outcome == "conforms"
    assert on_sheet(check, "d_0") * 1e3 == pytest.approx(9.56, abs=0.01)


@pytest.mark.parametrize(("diameter", "outcome"), [("212 mm", "conforms"), ("228 mm", "finding")])
def test_no_more_of_a_branch_counts_than_twice_its_shell(
    workshop: DesignFolder, diameter: str, outcome: str
) -> None:
    """Shell net 4 mm, branch net 10 that counts as 8, of 219.9 mm: l_s √(504 × 4) = 44.9, l_b √(211.9 × 8) = 41.2 mm.

    1.66 × (250 × (44.9 + 109.95) + 197.9 × 45.2/2) = 71.7 kN on (179.6 + 8 × 45.2) × 132.5 MPa = 71.7 kN.
    """
    made = with_inlet(workshop, ('"300 mm"', f'"{diameter}"'), drum=('"9 mm"', '"5 mm"'))
    assert made.only(REPLACED).outcome == outcome


@pytest.mark.parametrize(("diameter", "outcome"), [("311 mm", "conforms"), ("313 mm", "finding")])
def test_half_as_much_of_a_branch_counts_inside(workshop: DesignFolder, diameter: str, outcome: str) -> None:
    """Shell and branch net 6 mm, of 311.9 mm: l_s √(506 × 6) = 55.1, l_b √(305.9 × 6) = 42.84, inside 21.42 mm.

    1.66 × (250 × (55.1 + 155.95) + 297.9 × 48.84/2) = 99.7 kN on (330.6 + 6 × 70.26) × 132.5 MPa = 99.7 kN.
    """
    inside = ('projects_out = "200 mm"', 'projects_out = "200 mm"\nprojects_in = "100 mm"')
    changes = ('"300 mm"', f'"{diameter}"'), ('"11 mm"', '"7 mm"'), inside
    assert with_inlet(workshop, *changes, drum=('"9 mm"', '"7 mm"')).only(REPLACED).outcome == outcome


@pytest.mark.parametrize(("test", "outcome"), [("40.8 bar", "conforms"), ("41.4 bar", "finding")])
def test_a_test_stresses_an_opening_to_its_share(workshop: DesignFolder, test: str, outcome: str) -> None:
    """0.95 × 240 = 228 MPa: 250 × 213.75 + 278 × 61.85/2 = 62 035 mm² pressed, 1128.5 mm² (228 − P/2) at 4.110 MPa."""
    assert with_inlet(workshop, test=test).only(REPLACED).outcome == outcome


def test_ports_round_the_barrel(workshop: DesignFolder) -> None:
    """6.007 MPa at 16.6 bar over 1 − 400/(2 π 307.75) = 0.7931: 7.57 MPa, and by 18 bar on test 8.21."""
    check = with_ports(workshop).only(REPLACED)
    assert check.outcome == "conforms"
    assert on_sheet(check, "σ_x") / 1e6 in (pytest.approx(7.573, rel=1e-3), pytest.approx(8.212, rel=1e-3))


@pytest.mark.parametrize("rule", [REPLACED, APART])
@pytest.mark.parametrize(("serves", "outcome"), [("flange", "conforms"), ("flat wall", "not assessed")])
def test_a_barrel_is_cut_from_no_flat_wall(
    workshop: DesignFolder, rule: str, serves: str, outcome: str
) -> None:
    """The bore names the plate of another place; what is cut from a thick ring may be one."""
    ported = with_ports(workshop)
    text = (workshop.root / "weldment.toml").read_text(encoding="utf-8")
    head, named, tail = text.partition("[plates.barrel]")
    other = head + named + tail.replace('serves_as = "shell"', f'serves_as = "{serves}"', 1)
    check = ported.write({"weldment.toml": other}, settings=WITH_METALS).only(rule)
    assert check.outcome == outcome


def test_an_end_that_names_no_bore_is_of_the_only_one(workshop: DesignFolder) -> None:
    ported = with_ports(workshop)
    text = (workshop.root / "block.toml").read_text(encoding="utf-8").replace('of_bore = "main"\n', "")
    check = ported.write({"block.toml": text}, settings=WITH_METALS).only(REPLACED)
    assert check.outcome == "conforms"
    two = text + '[bores.other]\ndiameter = "400 mm"\nplate = "barrel"\nlength = "900 mm"\n'
    check = ported.write({"block.toml": two}, settings=WITH_METALS).only(REPLACED)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("width", "outcome"), [("1760 mm", "conforms"), ("1800 mm", "finding")])
def test_ports_leave_metal_round_the_barrel(workshop: DesignFolder, width: str, outcome: str) -> None:
    """Starting, of 133.3/2 = 66.7 MPa: 6.007/66.7 = 0.0901 must be left of 1933.6 mm: 1759 mm; test allows more."""
    edge = 1933.64 * (1 - 6.007 / 66.667)
    assert edge == pytest.approx(1759.4, abs=0.5)
    width = f"{edge + (-2 if outcome == 'conforms' else 2):.1f} mm"
    check = with_ports(workshop, ('"400 mm"', f'"{width}"')).only(REPLACED)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("diameter", "wider"), [("499 mm", False), ("501 mm", True)])
def test_an_opening_wider_than_its_shell_is_not_covered(
    workshop: DesignFolder, diameter: str, wider: bool
) -> None:
    """500 mm inside."""
    check = with_inlet(workshop, ('"300 mm"', f'"{diameter}"')).only(REPLACED)
    assert ("is wider than its shell: finite elements are wanted" in check.says) is wider
    assert check.outcome == ("finding" if wider else "conforms")


def test_a_small_opening_beside_another_is_worked(workshop: DesignFolder) -> None:
    """Alone, 9 mm of 9.56 need no working; with another in the shell, or in a barrel, the metal beside it is taken."""
    alone = with_inlet(workshop, opening="", more=single_hole("gauge", "9 mm", "400 mm")).only(REPLACED)
    assert "F of gauge" not in {step.symbol for step in alone.steps}
    two = single_hole("gauge", "9 mm", "400 mm") + single_hole("drain", "9 mm", "400 mm")
    assert on_sheet(with_inlet(workshop, opening="", more=two).only(REPLACED), "F of gauge") > 0
    ported = with_ports(workshop)
    row = single_hole("gauge", "9 mm", "400 mm").replace('plate = "drum"', 'plate = "barrel"')
    weldment = bench.WELDMENT + BARREL.replace('"9 mm"\nrolled', '"38.5 mm"\nrolled').replace(
        'rolled_thickness = "9 mm"', 'rolled_thickness = "38.5 mm"'
    )
    check = ported.write({"weldment.toml": weldment + row}, settings=WITH_METALS).only(REPLACED)
    assert on_sheet(check, "F of gauge") > 0


@given(st.floats(0.05, 0.5), st.floats(2e-3, 0.05), st.floats(1.01, 3))
def test_a_larger_opening_is_loaded_more(r: float, e: float, more: float) -> None:
    l_s = reach_in_shell(r, e)
    one = load_at_opening(1e6, r, l_s, 0.1, 0.08, 0.05, e)
    assert load_at_opening(1e6, r, l_s, 0.1 * more, 0.08 * more, 0.05, e) > one


@pytest.mark.parametrize(
    "cut", ['[openings.inlet]\ndiameter = "300 mm"\n', '[ports.front]\nheight = "40 mm"\n', ""]
)
def test_a_block_with_openings_or_ports_wants_its_weldment(workshop: DesignFolder, cut: str) -> None:
    files = {name: text for name, text in bench.FILES.items() if name != "weldment.toml"}
    check = workshop.write({**files, "block.toml": bench.BLOCK + cut}, settings=WITH_METALS).only(REPLACED)
    if cut:
        expect_not_assessed(check, "no weldment is stated that makes block")
    else:
        expect_not_applicable(check, "no opening of the block is stated")
