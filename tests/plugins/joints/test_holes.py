"""Engagement, depth and edge of tapped holes."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.bolted_joints import inner_thread_bending_factor, nut_widening_factor
from speclint.handbook.threads import internal_stripping_area
from speclint.testing import DesignFolder, limit, on_sheet
from speclint_joints.formulae.holes import bursting_pressure
from tests.own_limits import own_limit
from tests.plugins.joints import hand
from tests.plugins.joints.bench import bench, used, without

_TAN = math.tan(math.radians(30))
# ISO 965-1 for M24 x 3 (from memory): es 6g 48 µm, T_d 375 µm, T_d2 200 µm, T_D1 500 µm, T_D2 265 µm.
_MAJOR_LEAST = 24 - 0.048 - 0.375
_PITCH_LEAST = 22.0514 - 0.048 - 0.200
_MINOR_MOST = 20.7519 + 0.500
_PITCH_MOST = 22.0514 + 0.265
#: Shear areas per millimetre of engagement at worst limits, mm (FED-STD-H28).
_STUD = math.pi * _MINOR_MOST / 3 * (1.5 + (_PITCH_LEAST - _MINOR_MOST) * _TAN)
_HOLE = math.pi * _MAJOR_LEAST / 3 * (1.5 + (_MAJOR_LEAST - _PITCH_MOST) * _TAN)


#: Factors of VDI 2230 and Alexander (from memory). Hexagon of 36 mm, 1.5 d: 5.7 - 2.25 - 2.61 = 0.84; hole 30 mm from
#: the edge, 2.5 d, does not widen; threads of like strength keep 0.897.
_NUT, _ALIKE = 0.84, 0.897
#: Block of 480 MPa round a stud of 900 MPa: R_S = 480 × 55.0/(900 × 40.5) = 0.725.
_R_S = 480 * _HOLE / (900 * _STUD)
_BENDS = 0.728 + 1.769 * _R_S - 2.896 * _R_S**2 + 1.296 * _R_S**3


def _greatest() -> float:
    """Load of a stud in the cold test, N: 130 kN and its share of the lift."""
    return 130e3 + hand.share() * hand.lift()


def test_shear_areas_of_the_bench_by_hand(workshop: DesignFolder) -> None:
    """36 mm in the block: some 1457 mm² of stud and 1980 mm² of block."""
    check = bench(workshop).only("joint.engagement", "studs")
    assert on_sheet(check, "A_be") * 1e6 == pytest.approx(36 * _STUD, rel=1e-3)
    assert on_sheet(check, "A_e") * 1e6 == pytest.approx(36 * _HOLE, rel=1e-3)


@pytest.mark.parametrize(("times", "outcome"), [(1.01, "conforms"), (0.99, "finding")])
def test_the_stud_breaks_before_the_block_strips(workshop: DesignFolder, times: float, outcome: str) -> None:
    """Block: 0.58 × 480 MPa × 0.982; stud: 900 × 352.5 = 317.3 kN, with 1.2: some 25.3 mm of engagement; the stud's own
    thread, 0.58 × 900 × 0.897 on 40.46 mm²/mm, wants 20.1 mm."""
    assert pytest.approx(0.982, abs=1e-3) == _BENDS
    length = 1.2 * 900 * hand.A_S / (0.58 * 480 * _HOLE * _BENDS)
    assert length == pytest.approx(25.3, abs=0.1)
    bench(workshop, ("studs", 'engagement = "36 mm"', f'engagement = "{times * length:.4f} mm"'))
    check = workshop.only("joint.engagement", "studs")
    assert check.outcome == outcome
    if outcome == "finding":
        assert check.grade is Grade.NONCONFORMITY
        assert check.says.startswith("thread of the tapped hole: ")


@pytest.mark.parametrize(("times", "grade"), [(1.01, Grade.NONCONFORMITY), (0.99, Grade.HOLD)])
def test_a_thread_that_would_strip_in_work_is_a_hold(
    workshop: DesignFolder, times: float, grade: Grade
) -> None:
    """1.2 × 138.7 kN in work asks for some 11.1 mm."""
    length = 1.2 * _greatest() / (0.58 * 480 * _HOLE * _BENDS)
    assert length == pytest.approx(11.1, abs=0.1)
    bench(workshop, ("studs", 'engagement = "36 mm"', f'engagement = "{times * length:.4f} mm"'))
    assert workshop.only("joint.engagement", "studs").grade is grade


@pytest.mark.parametrize(("times", "outcome"), [(1.01, "conforms"), (0.99, "finding")])
def test_the_stud_in_a_low_nut_strips_its_own_thread(
    workshop: DesignFolder, times: float, outcome: str
) -> None:
    """0.58 × 900 MPa × 0.84 × 0.897 on 40.46 mm²/mm: 380.7 kN at some 23.9 mm: at 1.01 of that, 24.16 mm, the nut is a
    matching one too."""
    length = 1.2 * 900 * hand.A_S / (0.58 * 900 * _STUD * _NUT * _ALIKE)
    assert length == pytest.approx(23.9, abs=0.1)
    bench(workshop, ("studs", 'engagement = "24 mm"', f'engagement = "{times * length:.4f} mm"'))
    check = workshop.only("joint.engagement", "studs")
    assert check.outcome == outcome
    if outcome == "finding":
        assert check.says.startswith("thread of the stud in the nut: ")


def test_a_nut_widens_and_threads_bend(workshop: DesignFolder) -> None:
    """18.5 mm of nut stood by the threads alone, 0.58 × 900 × 40.46 × 18.5 = 390.7 ≥ 380.7 kN; with 0.753 it does
    not break the stud, 294.4 < 317.3 kN."""
    assert 0.58 * 900 * _STUD * 18.5 > 1.2 * 900 * hand.A_S
    assert 0.58 * 900 * _STUD * 18.5 * _NUT * _ALIKE < 900 * hand.A_S
    bench(workshop, ("studs", 'engagement = "24 mm"', 'engagement = "18.5 mm"'))
    assert workshop.only("joint.engagement", "studs").outcome == "finding"


@pytest.mark.parametrize(
    ("height", "steel", "flats", "outcome"),
    [
        ("24 mm", "test-stud", "36 mm", "conforms"),
        ("23.8 mm", "test-stud", "36 mm", "finding"),
        ("24 mm", "test-block", "36 mm", "finding"),
        ("24 mm", "test-stud", "34.7 mm", "finding"),
        ("24 mm", "test-stud", "34.8 mm", "conforms"),
    ],
)
def test_a_nut_that_matches_its_stud_is_taken_as_such(
    workshop: DesignFolder, height: str, steel: str, flats: str, outcome: str
) -> None:
    """A diameter high, 1.45 diameters across its flats and of the stud's steel: not asked to break the stud. Asked, it
    has 0.753 × 0.58 × 900 × 40.46 × 24 = 381.9 kN: 1.2 times 317.3 = 380.7 kN, so the margin is set to 1.25."""
    nut = 'material = "test-stud"\nengagement = "24 mm"\nacross_flats = "36 mm"'
    bench(
        workshop, ("studs", nut, f'material = "{steel}"\nengagement = "{height}"\nacross_flats = "{flats}"')
    )
    with (workshop.root / "speclint.toml").open("a", encoding="utf-8") as settings:
        settings.write(own_limit("joint.engagement", "joints", margin="1.25"))
    assert workshop.only("joint.engagement", "studs").outcome == outcome


def test_a_matching_nut_still_holds_the_load(workshop: DesignFolder) -> None:
    """Ten times the greatest load no nut holds, matching or not."""
    bench(workshop)
    with (workshop.root / "speclint.toml").open("a", encoding="utf-8") as settings:
        settings.write(own_limit("joint.engagement", "joints", margin="10"))
    check = workshop.only("joint.engagement", "studs")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize("flats", ['across_flats = "36 mm"\n', ""])
def test_a_nut_of_no_stated_width_is_a_hold(workshop: DesignFolder, flats: str) -> None:
    bench(workshop, ("studs", 'across_flats = "36 mm"\n', flats))
    assert (workshop.only("joint.engagement", "studs").outcome == "not assessed") is (flats == "")


def test_a_nut_too_narrow_is_a_hold(workshop: DesignFolder) -> None:
    """33 mm are 1.375 diameters: no factor is known below 1.4."""
    bench(workshop, ("studs", 'across_flats = "36 mm"', 'across_flats = "33 mm"'))
    check = workshop.only("joint.engagement", "studs")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


@pytest.mark.parametrize("opens", ["nothing", "air"])
def test_no_more_thread_is_engaged_than_the_hole_has(workshop: DesignFolder, opens: str) -> None:
    """36 mm stated in a hole 20 mm deep, 8.8 mm set in: 11.2 mm in one that goes through, which just hold the load of
    work (11.1) and not that which breaks the stud; 2.2 mm in a blind one."""
    run_out = "9 mm" if opens == "nothing" else "0 mm"
    bench(
        workshop,
        ("studs", 'depth = "56 mm"', 'depth = "20 mm"'),
        ("studs", 'opens_into = "nothing"', f'opens_into = "{opens}"'),
        ("studs", 'run_out = "9 mm"\n', f'run_out = "{run_out}"\n' if opens == "nothing" else ""),
    )
    check = workshop.only("joint.engagement", "studs")
    assert check.grade is (Grade.HOLD if opens == "nothing" else Grade.NONCONFORMITY)
    left = 2.2 if opens == "nothing" else 11.2
    assert on_sheet(check, "A_e") * 1e6 == pytest.approx(left * _HOLE, rel=1e-3)
    assert workshop.only("joint.hole-depth", "studs").outcome == "finding"


def test_grey_iron_is_taken_by_its_own_shear_strength(workshop: DesignFolder) -> None:
    """EN 1561 (from memory): shear 1.1 to 1.15 of the tension."""
    bench(workshop, ("block", 'material = "test-block"', 'material = "grey-iron-250"'))
    check = workshop.only("joint.engagement", "studs")
    assert on_sheet(check, "r_e") == pytest.approx(1.10)


@pytest.mark.parametrize("line", ['engagement = "36 mm"', 'material = "test-stud"\nengagement'])
def test_engagement_not_stated_is_a_hold(workshop: DesignFolder, line: str) -> None:
    bench(workshop, ("studs", line, "engagement" if line.endswith("engagement") else ""))
    check = workshop.only("joint.engagement", "studs")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("depth", "outcome"), [("53.8 mm", "conforms"), ("53.7 mm", "finding")])
def test_depth_for_thread_and_run_out(workshop: DesignFolder, depth: str, outcome: str) -> None:
    """8.8 set in, 36 engaged, 9 left by the tap: 53.8 mm."""
    bench(workshop, ("studs", 'depth = "56 mm"', f'depth = "{depth}"'))
    assert workshop.only("joint.hole-depth", "studs").outcome == outcome


@pytest.mark.parametrize(("depth", "outcome"), [("44.8 mm", "conforms"), ("44.7 mm", "finding")])
def test_a_hole_that_goes_through_is_as_deep_as_its_thread(
    workshop: DesignFolder, depth: str, outcome: str
) -> None:
    """8.8 set in and 36 engaged: 44.8 mm; the tap goes through and leaves nothing."""
    bench(
        workshop,
        ("studs", 'depth = "56 mm"\nrun_out = "9 mm"', f'depth = "{depth}"'),
        ("studs", 'opens_into = "nothing"', 'opens_into = "air"'),
    )
    assert workshop.only("joint.hole-depth", "studs").outcome == outcome


@pytest.mark.parametrize(
    ("opens", "sealed", "outcome"),
    [("steam", "none", "finding"), ("steam", "copper washer", "conforms"), ("air", "none", "conforms")],
)
def test_a_hole_into_steam_is_sealed(workshop: DesignFolder, opens: str, sealed: str, outcome: str) -> None:
    bench(
        workshop,
        ("studs", 'opens_into = "nothing"', f'opens_into = "{opens}"'),
        ("studs", 'sealed = "none"', f'sealed = "{sealed}"'),
    )
    check = workshop.only("joint.hole-depth", "studs")
    assert check.outcome == outcome
    assert check.judgement is not None
    leaks = "the hole opens into steam and is not sealed"
    says = leaks if outcome == "finding" else "no tapped hole leaks steam past its stud"
    assert says in [one.says for one in check.judgement.parts]


@pytest.mark.parametrize(
    ("depth", "sealed", "outcome"),
    [("59.9 mm", "", "conforms"), ("60.1 mm", "", "finding"), ("70 mm", "welded", "conforms")],
)
def test_a_blind_hole_in_a_cover_ends_within_its_plate(
    workshop: DesignFolder, depth: str, sealed: str, outcome: str
) -> None:
    """The plate of the cover is 60 mm thick; what goes through it is said to, and is sealed."""
    opens = f'opens_into = "{"steam" if sealed else "nothing"}"\nsealed = "{sealed or "none"}"'
    bench(
        workshop,
        ("studs", 'screwed_into = "block"', 'screwed_into = "cover"'),
        ("studs", 'depth = "56 mm"', f'depth = "{depth}"'),
        ("studs", 'opens_into = "nothing"\nsealed = "none"', opens),
    )
    assert workshop.only("joint.hole-depth", "studs").outcome == outcome


def test_depth_not_stated_is_not_assessed(workshop: DesignFolder) -> None:
    assert (
        without(workshop, "studs", 'depth = "56 mm"').only("joint.hole-depth", "studs").outcome
        == "not assessed"
    )


@pytest.mark.parametrize(("edge", "outcome"), [("16.9 mm", "conforms"), ("16.7 mm", "finding")])
def test_edge_in_diameters(workshop: DesignFolder, edge: str, outcome: str) -> None:
    """0.7 × 24 = 16.8 mm, where the wedge alone, 30.1 MPa on 24/33.6, makes 92.8 MPa of 240."""
    bench(workshop, ("studs", 'edge_distance = "30 mm"', f'edge_distance = "{edge}"'))
    assert workshop.only("joint.edge", "studs").outcome == outcome


@pytest.mark.parametrize(("times", "outcome"), [(1.01, "conforms"), (0.99, "finding")])
def test_a_thin_ligament_is_wedged_apart(workshop: DesignFolder, times: float, outcome: str) -> None:
    """With 6 mm engaged the wedge is 180.6 MPa: Lamé, q (D² + d²)/(D² - d²) = 240 MPa at D = 24 √(420.6/59.4)."""
    wedge = 130e3 * _TAN / (math.pi * 22.0514 * 6)
    edge = 12 * math.sqrt((240 + wedge) / (240 - wedge))
    assert edge == pytest.approx(31.9, abs=0.1)
    bench(
        workshop,
        ("studs", 'engagement = "36 mm"', 'engagement = "6 mm"'),
        ("studs", 'edge_distance = "30 mm"', f'edge_distance = "{times * edge:.4f} mm"'),
    )
    assert workshop.only("joint.edge", "studs").outcome == outcome


@pytest.mark.parametrize("edge", ["4 mm", "11.9 mm", "12 mm"])
def test_a_hole_that_breaks_through_the_edge_is_too_near_to_it(workshop: DesignFolder, edge: str) -> None:
    """M24: half of it is 12 mm, where no ring of metal is left; 16.8 mm are wanted."""
    bench(workshop, ("studs", 'edge_distance = "30 mm"', f'edge_distance = "{edge}"'))
    check = workshop.only("joint.edge", "studs")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert limit(check) == pytest.approx(16.8e-3)


def test_edge_not_stated_is_not_assessed(workshop: DesignFolder) -> None:
    assert (
        without(workshop, "studs", 'edge_distance = "30 mm"').only("joint.edge", "studs").outcome
        == "not assessed"
    )


def test_bolts_have_no_tapped_holes(workshop: DesignFolder) -> None:
    bench(workshop, ("studs", 'fastener = "stud"', 'fastener = "bolt"'))
    assert workshop.only("joint.hole-depth", "studs").outcome == "not applicable"
    assert workshop.only("joint.edge", "studs").outcome == "not applicable"


@given(st.floats(0.05, 3.0), st.floats(1.0, 2.0), st.floats(1.4, 4.0))
def test_stronger_metal_and_a_wider_nut_never_strip_sooner(ratio: float, more: float, flats: float) -> None:
    """R_S C_3(R_S) grows with R_S, and C_1 with the width, which gives nothing beyond 1.9 diameters."""
    weak, strong = ratio, ratio * more
    assert strong * inner_thread_bending_factor(strong) >= weak * inner_thread_bending_factor(weak) * (
        1 - 1e-9
    )
    assert 0.75 - 1e-9 <= nut_widening_factor(flats, 1.0) <= nut_widening_factor(flats * more, 1.0) + 1e-12
    assert nut_widening_factor(4.0, 1.0) == pytest.approx(1.0)


@given(st.floats(5e-3, 0.1), st.floats(1.01, 3.0))
def test_longer_engagement_shears_more_and_wedges_less(length: float, more: float) -> None:
    assert internal_stripping_area("M24", length * more).low > internal_stripping_area("M24", length).low
    like = {"F": 1e5, "alpha": math.radians(30), "d_2": 0.022}
    assert bursting_pressure(L_e=length * more, **like) < bursting_pressure(L_e=length, **like)


def test_a_worn_nut_never_helps(workshop: DesignFolder) -> None:
    whole = used(bench(workshop), "joint.engagement")
    assert (
        used(bench(workshop, ("studs", 'engagement = "24 mm"', 'engagement = "20 mm"')), "joint.engagement")
        > whole
    )


@pytest.mark.parametrize(
    ("short", "key", "says"),
    [
        ('engagement = "36 mm"', "tapped.engagement", "of the tapped hole"),
        ('engagement = "24 mm"', "nut.engagement", "the nut"),
    ],
)
def test_a_short_thread_is_pointed_at_where_its_length_is_stated(
    workshop: DesignFolder, short: str, key: str, says: str
) -> None:
    check = bench(workshop, ("studs", short, 'engagement = "12 mm"')).only("joint.engagement", "studs")
    assert check.outcome == "finding"
    assert check.judgement is not None
    assert check.judgement.where.key == key
    assert says in check.says


@pytest.mark.parametrize(("opens", "outcome"), [("nothing", "not assessed"), ("air", "conforms")])
def test_a_blind_hole_says_how_much_of_it_has_no_full_thread(
    workshop: DesignFolder, opens: str, outcome: str
) -> None:
    """One that goes through is tapped all the way."""
    bench(
        workshop,
        ("studs", 'run_out = "9 mm"\n', ""),
        ("studs", 'opens_into = "nothing"', f'opens_into = "{opens}"'),
    )
    check = workshop.only("joint.engagement", "studs")
    assert check.outcome == outcome
    assert ("tapped.run_out" in "; ".join(check.missing)) is (outcome == "not assessed")
