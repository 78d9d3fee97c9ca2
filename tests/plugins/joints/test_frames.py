"""The block on its frame: bore 500 mm, 20 bar of trapped water, 2000 kg jolted with 3 g; its front pad slides.

Bolts M24 through 60 mm of pad and 28 mm of frame, of one modulus and one expansion, all at 200 °C: no heat is felt.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, changed, on_sheet, without_key
from speclint_joints.formulae.frames import drag_of_pad, factor_against_slip, lift_by_couple, thrust_with_drag
from tests.own_limits import own_limit
from tests.plugins.joints import hand
from tests.plugins.joints.bench import BLOCK, DUTY, ENDS, FILES, SETTINGS_WITH_METALS, in_every_case, used

PADS = """
[bores.main]
axis_from_frame = "350 mm"
[pads.back]
at = "0 mm"
area = "62000 mm²"
locates = true
[pads.front]
at = "600 mm"
area = "50000 mm²"
locates = false
"""
LINER = (
    'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\nin_bore = "main"\n'
    'bore = "500 mm"\nlast_bore = "500 mm"\n'
)
FASTENING = """
kind = "frame-fastening"
id = "fastening"
holds = "block"
pad = "back"
other_pad = "front"
bore = "main"
material = "test-stud"
thread = "M24"
count = 30
hole = "25 mm"
grip = "60 mm"
frame_grip = "28 mm"
shank = "24 mm"
shank_length = "60 mm"
roughness = "6.3 µm"
faces = 1
relaxation = "10 %"
thrust_taken_by = "friction"
friction = "0.7"
fitted_diameter = "25 mm"
bearing_length = "25 mm"
lug_shear_area = "9000 mm²"
lug_bearing_area = "5000 mm²"
carried_mass = "2000 kg"
shock = "3"
over_track = true
second_retention = "keep plate"
[tightening]
method = "torque wrench"
torque = "384 N·m"
torque_coefficient = "0.16"
lubrication = "graphite paste"
temperature = "20 °C"
[nut]
thread = "M24"
face = "36 mm"
locking = "split pin"
could_fall_into = "track"
"""
FACE = """
kind = "locating-face"
id = "face-{pad}"
material = "test-cover"
locks = "block"
pad = "{pad}"
"""
SLIDING = changed(
    FASTENING,
    ('id = "fastening"', 'id = "sliding"'),
    ('pad = "back"\nother_pad = "front"', 'pad = "front"\nother_pad = "back"'),
    ("count = 30", "count = 4"),
    ('friction = "0.7"', 'greatest_friction = "0.2"'),
)
#: 20 bar on 500 mm and 3 × 9.80665 × 2000 N: 392.7 + 58.8 kN.
_THRUST = math.pi / 4 * 500**2 * 2 + 3 * 9.80665 * 2000
#: Give of a bolt, mm/N: 60 mm of shank, 28 of thread, half a diameter of core and 0.4 of shank at each end (VDI 2230,
#: 5.1.1.1); and of 88 mm of parts of one modulus under 36 mm faces with a 25 mm hole, cones of 30° (Shigley, eq. 8-22).
BOLT = (60 / hand.A_N + 28 / hand.A_S + 2 * (12 / hand.A_3 + 0.4 * 24 / hand.A_N)) / hand.E
_SPREAD = 88 * math.tan(math.radians(30))
_CONES = (_SPREAD + 36 - 25) * (36 + 25) / ((_SPREAD + 36 + 25) * (36 - 25))
GIVE = BOLT + 2 * math.log(_CONES) / (math.pi * hand.E * 25 * math.tan(math.radians(30)))
#: 70 kN, less 11 µm of embedding (thread 3, head and nut 3 each, one face between 2: VDI 2230, 5.4/1), less a tenth.
_LOW = (70e3 - 11e-3 / GIVE) * 0.9
#: 0.2 × 4 × 130 kN.
_DRAG = 104e3
#: 451.5 kN × 350 mm over 600 mm and 30 bolts.
_LIFT = _THRUST * 350 / 600 / 30


def files(*changes: tuple[str, str]) -> dict[str, str]:
    """The block on its frame, with some passages of its fastening changed."""
    old = '[cases.water]\ncylinder_pressure = "16'
    duty = DUTY.replace(old, old.replace("16", "20")).replace(
        "frame-fastening = ", 'locating-face = "200 °C"\nframe-fastening = '
    )
    faces = {f"face-{pad}.toml": FACE.format(pad=pad) for pad in ("back", "front")}
    return {
        **FILES,
        **faces,
        "duty.toml": duty,
        "fastening.toml": changed(FASTENING, *changes),
        "sliding.toml": SLIDING,
        "liner.toml": LINER,
        "block.toml": changed(BLOCK, ("test-block", "test-cover")) + ENDS + PADS,
        "speclint.toml": SETTINGS_WITH_METALS.replace("materials", 'leave_out = ["metals.toml"]\nmaterials'),
    }


def fastened(workshop: DesignFolder, *changes: tuple[str, str]) -> DesignFolder:
    return workshop.write(files(*changes))


def test_friction_by_hand(workshop: DesignFolder) -> None:
    """Bolt and parts give 1.6426 + 0.2470 µm/kN: 5.821 kN of embedding. 0.7 × 30 × (57.76 - 8.78) kN = 1028.6 kN over
    451.5 + 104 kN: 1.85 against 1.8."""
    assert pytest.approx(1.85, abs=0.005) == 0.7 * 30 * (_LOW - _LIFT) / (_THRUST + _DRAG)
    check = fastened(workshop).only("frame.block-slip", "fastening")
    assert on_sheet(check, "F_T") == pytest.approx(_THRUST, rel=1e-6)
    assert on_sheet(check, "D") == pytest.approx(_DRAG, rel=1e-6)
    assert on_sheet(check, "N_s") == pytest.approx(0.7 * 30 * (_LOW - _LIFT) / (_THRUST + _DRAG), rel=1e-6)
    assert check.case == "water"


@pytest.mark.parametrize(("times", "outcome"), [(1.005, "conforms"), (0.995, "finding")])
def test_friction_at_its_limit(workshop: DesignFolder, times: float, outcome: str) -> None:
    """1.8 × 555.5/(30 × 48.98) = 0.6805."""
    mu = 1.8 * (_THRUST + _DRAG) / (30 * (_LOW - _LIFT))
    assert mu == pytest.approx(0.6805, abs=1e-3)
    check = fastened(workshop, ('friction = "0.7"', f'friction = "{times * mu:.6f}"')).only(
        "frame.block-slip", "fastening"
    )
    assert check.outcome == outcome
    assert (check.grade is Grade.HOLD) is (outcome == "finding")


@pytest.mark.parametrize(("d", "outcome"), [("19.9 mm", "conforms"), ("19.8 mm", "finding")])
def test_fitted_bolts_take_all_the_thrust(workshop: DesignFolder, d: str, outcome: str) -> None:
    """555.5 kN/30 at 60 MPa: d = √(4 × 18518/(60 π)) = 19.82 mm; without the drag 17.87 mm had stood."""
    fastened(
        workshop,
        ('taken_by = "friction"', 'taken_by = "fitted bolts"'),
        ('fitted_diameter = "25 mm"', f'fitted_diameter = "{d}"'),
        ('hole = "25 mm"', f'hole = "{d}"'),
    )
    assert workshop.only("frame.block-slip", "fastening").outcome == outcome


@pytest.mark.parametrize(
    ("hole", "outcome"),
    [
        ("25.049 mm", "conforms"),
        ("25.051 mm", "finding"),
        ("26 mm", "finding"),
        ("24.902 mm", "conforms"),
        ("24.898 mm", "finding"),
    ],
)
def test_a_bolt_that_does_not_fit_takes_no_thrust(workshop: DesignFolder, hole: str, outcome: str) -> None:
    fitted = fastened(
        workshop,
        ('taken_by = "friction"', 'taken_by = "fitted bolts"'),
        ('hole = "25 mm"', f'hole = "{hole}"'),
    )
    check = fitted.only("frame.block-slip", "fastening")
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("length", "outcome"), [("7.5 mm", "conforms"), ("7.3 mm", "finding")])
def test_fitted_bolts_bear_on_the_plate(workshop: DesignFolder, length: str, outcome: str) -> None:
    """18 518 N on 25 mm at 100 MPa: 7.41 mm."""
    fastened(
        workshop,
        ('taken_by = "friction"', 'taken_by = "fitted bolts"'),
        ('bearing_length = "25 mm"', f'bearing_length = "{length}"'),
    )
    assert workshop.only("frame.block-slip", "fastening").outcome == outcome


@pytest.mark.parametrize(("length", "outcome"), [("7.5 mm", "conforms"), ("7.3 mm", "finding")])
def test_fitted_bolts_bear_on_no_more_than_the_frame(
    workshop: DesignFolder, length: str, outcome: str
) -> None:
    """25 mm are stated to bear, in a frame of 7.41 mm and less."""
    fastened(
        workshop,
        ('taken_by = "friction"', 'taken_by = "fitted bolts"'),
        ('frame_grip = "28 mm"', f'frame_grip = "{length}"'),
    )
    assert workshop.only("frame.block-slip", "fastening").outcome == outcome


@pytest.mark.parametrize(
    ("shear", "bearing", "outcome"),
    [(9300, 5600, "conforms"), (9200, 5600, "finding"), (9300, 5500, "finding")],
)
def test_lugs_take_all_the_thrust(workshop: DesignFolder, shear: int, bearing: int, outcome: str) -> None:
    """555.5 kN at 60 MPa is 9259 mm², at 100 MPa 5555 mm²."""
    fastened(
        workshop,
        ('taken_by = "friction"', 'taken_by = "lugs"'),
        ('lug_shear_area = "9000', f'lug_shear_area = "{shear}'),
        ('lug_bearing_area = "5000', f'lug_bearing_area = "{bearing}'),
    )
    assert workshop.only("frame.block-slip", "fastening").outcome == outcome


@pytest.mark.parametrize(("friction", "outcome"), [("0.285", "conforms"), ("0.286", "finding")])
def test_a_sliding_pad_drags_the_block_off_the_other(
    workshop: DesignFolder, friction: str, outcome: str
) -> None:
    """30 fitted bolts of 20.6 mm bear 599.9 kN at 60 MPa; 148.4 kN of that are left beside the thrust, and 4 × 130 kN
    drag so much at 0.2854."""
    bears = 60 * 30 * math.pi / 4 * 20.6**2 - _THRUST
    assert bears / 520e3 == pytest.approx(0.2854, abs=5e-4)
    fastened(
        workshop,
        ('taken_by = "friction"', 'taken_by = "fitted bolts"'),
        ('fitted_diameter = "25 mm"', 'fitted_diameter = "20.6 mm"'),
        ('hole = "25 mm"', 'hole = "20.6 mm"'),
    )
    workshop.replace("sliding.toml", 'greatest_friction = "0.2"', f'greatest_friction = "{friction}"')
    assert workshop.only("frame.block-slip", "fastening").outcome == outcome


@pytest.mark.parametrize(
    ("roughness", "settled"), [("9.9 µm", 11e-6), ("10 µm", 14.5e-6), ("50 µm", 19.5e-6)]
)
def test_rough_faces_settle_more(workshop: DesignFolder, roughness: str, settled: float) -> None:
    """VDI 2230, table 5.4/1, load across: 3 + 2 × 3 + 2 µm; from Rz 10: 3 + 2 × 4.5 + 2.5; from 40: 3 + 13 + 3.5."""
    check = fastened(workshop, ("6.3 µm", roughness)).only("frame.block-slip", "fastening")
    assert on_sheet(check, "f_Z") == pytest.approx(settled)


def test_each_face_between_settles(workshop: DesignFolder) -> None:
    """With a liner 13 µm: (70 - 6.88) × 0.9 = 56.81 kN hold; the load of the couple is 8.78 kN."""
    check = fastened(workshop, ("faces = 1", "faces = 2")).only("frame.block-couple", "fastening")
    assert on_sheet(check, "n_p") == pytest.approx((70e3 - 13e-3 / GIVE) * 0.9 / _LIFT, rel=1e-6)


def test_a_pad_touches_its_frame(workshop: DesignFolder) -> None:
    """Nothing would settle between them."""
    check = fastened(workshop, ("faces = 1", "faces = 0")).only("frame.block-couple", "fastening")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "a pad and its frame make 1" in check.missing[0]


def _pad_at(workshop: DesignFolder, pad: str, celsius: float) -> DesignFolder:
    """One pad at its own temperature."""
    face = FACE.format(pad=pad) + 'pad_temperature = "pads"\n'
    (workshop.root / f"face-{pad}.toml").write_text(face, encoding="utf-8")
    return in_every_case(workshop, "frame-fastening = ", f'pads = "{celsius} °C"\nframe-fastening = ')


@pytest.mark.parametrize(("celsius", "outcome"), [(196.6, "conforms"), (196.5, "finding")])
def test_a_pad_cooler_than_its_bolts_lets_them_go(
    workshop: DesignFolder, celsius: float, outcome: str
) -> None:
    """1.8 × 555.5/(0.7 × 30) + 8.78 = 56.40 kN are wanted of 57.76: 1.36 kN × 1.8896 µm/kN = 2.57 µm are left, which
    60 mm of pad at 12.5e-6/K lose by 3.43 K."""
    left = _LOW - _LIFT - 1.8 * (_THRUST + _DRAG) / (0.7 * 30)
    assert left * GIVE / (60 * 12.5e-6) == pytest.approx(3.43, abs=0.01)
    check = _pad_at(fastened(workshop), "back", celsius).only("frame.block-slip", "fastening")
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("celsius", "outcome"), [(203.9, "conforms"), (204.1, "finding")])
def test_a_pad_hotter_than_its_bolts_stretches_them(
    workshop: DesignFolder, celsius: float, outcome: str
) -> None:
    """Seven bolts: 480 MPa × 352.5 mm² - 263.4/7 - 130 = 1.572 kN: 2.97 µm, by 3.96 K of 60 mm."""
    left = 480 * hand.A_S - _THRUST * 350 / 600 / 7 - 130e3
    assert left * GIVE / (60 * 12.5e-6) == pytest.approx(4.0, abs=0.05)
    fastened(workshop, ("count = 30", "count = 7"))
    check = _pad_at(workshop, "back", celsius).only("frame.block-couple", "fastening")
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("celsius", "outcome"), [(213, "conforms"), (214, "finding")])
def test_a_hot_sliding_pad_drags_more(workshop: DesignFolder, celsius: float, outcome: str) -> None:
    """30 fitted bolts of 19.9 mm bear 559.9 kN at 60 MPa: 108.3 kN of drag, (135.4 - 130) kN more a bolt: 10.2 µm, by
    13.6 K of 60 mm."""
    bears = 60 * 30 * math.pi / 4 * 19.9**2 - _THRUST
    assert (bears / 0.8 - 130e3) * GIVE / (60 * 12.5e-6) == pytest.approx(13.58, abs=0.02)
    fastened(
        workshop,
        ('taken_by = "friction"', 'taken_by = "fitted bolts"'),
        ('fitted_diameter = "25 mm"', 'fitted_diameter = "19.9 mm"'),
        ('hole = "25 mm"', 'hole = "19.9 mm"'),
    )
    assert _pad_at(workshop, "front", celsius).only("frame.block-slip", "fastening").outcome == outcome


@pytest.mark.parametrize(
    "line",
    [
        'grip = "60 mm"\nframe',
        'frame_grip = "28 mm"\n',
        'shank = "24 mm"\n',
        'roughness = "6.3 µm"\n',
        "faces = 1\n",
        'face = "36 mm"\n',
    ],
)
def test_the_springs_of_the_bolts_must_be_described(workshop: DesignFolder, line: str) -> None:
    check = fastened(workshop, (line, line[-5:] if line.endswith("frame") else "")).only(
        "frame.block-couple", "fastening"
    )
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_the_frame_beside_a_pad_must_be_stated(workshop: DesignFolder) -> None:
    fastened(workshop)
    (workshop.root / "face-back.toml").unlink()
    check = workshop.only("frame.block-couple", "fastening")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize("left_out", ["friction", "fastening"])
def test_a_sliding_pad_not_described_is_a_hold(workshop: DesignFolder, left_out: str) -> None:
    fastened(workshop)
    if left_out == "friction":
        workshop.replace("sliding.toml", 'greatest_friction = "0.2"\n', "")
    else:
        (workshop.root / "sliding.toml").unlink()
    check = workshop.only("frame.block-slip", "fastening")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_a_pad_lifted_off_holds_nothing(workshop: DesignFolder) -> None:
    """Four bolts of 57.8 kN against a couple that lifts each by 65.8 kN."""
    check = fastened(workshop, ("count = 30", "count = 4")).only("frame.block-slip", "fastening")
    assert check.outcome == "finding"
    assert on_sheet(check, "N_s") < 0


def test_a_sliding_pad_takes_no_thrust(workshop: DesignFolder) -> None:
    fastened(workshop, ('pad = "back"\nother_pad = "front"', 'pad = "front"\nother_pad = "back"'))
    assert workshop.only("frame.block-slip", "fastening").outcome == "not applicable"
    assert workshop.only("frame.block-couple", "fastening").outcome != "not applicable"


def test_couple_by_hand(workshop: DesignFolder) -> None:
    """451.5 kN × 350 mm over 600 mm: 263.4 kN, 8.78 kN a bolt; 57.76/8.78 = 6.58."""
    lift = _THRUST * 350 / 600 / 30
    check = fastened(workshop).only("frame.block-couple", "fastening")
    assert on_sheet(check, "P") == pytest.approx(lift, rel=1e-6)
    assert on_sheet(check, "n_p") == pytest.approx(_LOW / lift, rel=1e-6)


@pytest.mark.parametrize(("count", "outcome"), [(7, "conforms"), (6, "finding"), (5, "finding")])
def test_too_few_bolts_gape_or_yield(workshop: DesignFolder, count: int, outcome: str) -> None:
    """263.4 kN × 1.2/57.76 kN: 5.47 bolts keep it shut; (130 + 263.4/7) kN on 352.5 mm² is 475.5 of 480 MPa, with
    six 493.3 MPa."""
    total = _THRUST * 350 / 600
    assert total * 1.2 / _LOW == pytest.approx(5.47, abs=0.01)
    assert (130e3 + total / 7) / hand.A_S == pytest.approx(475.5, abs=0.5)
    assert (
        fastened(workshop, ("count = 30", f"count = {count}")).only("frame.block-couple", "fastening").outcome
        == outcome
    )


@pytest.mark.parametrize(("shank", "outcome"), [("19.3 mm", "conforms"), ("19.1 mm", "finding")])
def test_a_waisted_bolt_is_stressed_on_its_waist(workshop: DesignFolder, shank: str, outcome: str) -> None:
    """(130 + 263.4/30) kN at 480 MPa want 289.1 mm²: a shank of 19.19 mm, less than the 352.5 mm² of the thread."""
    waisted = ('shank = "24 mm"', f'shank = "{shank}"')
    assert fastened(workshop, waisted).only("frame.block-couple", "fastening").outcome == outcome


@pytest.mark.parametrize(("area", "outcome"), [("52100 mm²", "conforms"), ("51900 mm²", "finding")])
def test_pad_pressure_from_both_sides(workshop: DesignFolder, area: str, outcome: str) -> None:
    """30 × 130 + 263.4 = 4163 kN at 80 MPa: 52 043 mm²."""
    fastened(workshop)
    workshop.replace("block.toml", 'area = "62000 mm²"', f'area = "{area}"')
    assert workshop.only("frame.block-couple", "fastening").outcome == outcome


def test_the_worn_bore_thrusts_most(workshop: DesignFolder) -> None:
    fastened(workshop)
    workshop.replace("liner.toml", 'last_bore = "500 mm"\n', 'last_bore = "510 mm"\n')
    check = workshop.only("frame.block-slip", "fastening")
    assert on_sheet(check, "F_s") == pytest.approx(math.pi / 4 * 510**2 * 2, rel=1e-9)


@pytest.mark.parametrize("key", ["last_bore", "in_bore"])
@pytest.mark.parametrize("rule", ["frame.block-slip", "frame.block-couple"])
def test_a_liner_without_its_bore_or_its_last_is_a_hold(workshop: DesignFolder, rule: str, key: str) -> None:
    fastened(workshop)
    (workshop.root / "liner.toml").write_text(without_key(LINER, key), encoding="utf-8")
    check = workshop.only(rule, "fastening")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert f"{key} is not stated in liner.toml" in check.says


@pytest.mark.parametrize("rule", ["frame.block-slip", "frame.block-couple"])
def test_water_at_relief_valves_that_are_not_set_is_a_hold(workshop: DesignFolder, rule: str) -> None:
    fastened(workshop)
    text = (workshop.root / "block.toml").read_text(encoding="utf-8")
    (workshop.root / "block.toml").write_text(text.replace(ENDS, ENDS[: len(ENDS) // 2]), encoding="utf-8")
    assert workshop.only(rule, "fastening").outcome == "conforms"
    (workshop.root / "block.toml").write_text(text.replace(ENDS, ""), encoding="utf-8")
    check = workshop.only(rule, "fastening")
    assert (check.outcome, check.grade, check.case) == ("not assessed", Grade.HOLD, "water")


@pytest.mark.parametrize(
    "line", ['friction = "0.7"\n', 'shock = "3"\n', 'carried_mass = "2000 kg"\n', 'pad = "back"\n']
)
def test_a_fastening_not_described_is_a_hold(workshop: DesignFolder, line: str) -> None:
    check = fastened(workshop, (line, "")).only("frame.block-slip", "fastening")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize("line", ['other_pad = "front"\n', 'relaxation = "10 %"\n'])
def test_a_couple_not_described_is_a_hold(workshop: DesignFolder, line: str) -> None:
    check = fastened(workshop, (line, "")).only("frame.block-couple", "fastening")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_locking_and_retention_of_the_frame_bolts(workshop: DesignFolder) -> None:
    assert fastened(workshop).only("joint.locking", "fastening").outcome == "conforms"
    assert workshop.only("fastening.underside", "fastening").outcome == "conforms"
    loose = ('locking = "split pin"', 'locking = "none"')
    fastened(workshop, ('second_retention = "keep plate"', 'second_retention = "none"'), loose)
    assert workshop.only("joint.locking", "fastening").grade is Grade.NONCONFORMITY
    assert workshop.only("fastening.underside", "fastening").grade is Grade.HOLD


def test_bolts_of_a_frame_stand_over_the_track_whatever_is_said(workshop: DesignFolder) -> None:
    loose = ('locking = "split pin"', 'locking = "none"')
    fastened(
        workshop,
        ('second_retention = "keep plate"', 'second_retention = "none"'),
        loose,
        ("over_track = true", "over_track = false"),
        ('could_fall_into = "track"', 'could_fall_into = "nothing"'),
    )
    check = workshop.only("fastening.underside", "fastening")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def test_more_shock_uses_more(workshop: DesignFolder) -> None:
    calm = used(fastened(workshop), "frame.block-slip", "fastening")
    assert used(fastened(workshop, ('shock = "3"', 'shock = "4"')), "frame.block-slip", "fastening") > calm


@given(st.floats(0.05, 0.5), st.integers(2, 60), st.floats(1e4, 3e5), st.floats(1e4, 1e6))
def test_bolts_share_slip_and_couple(mu: float, n: int, F: float, T: float) -> None:
    like = {"mu": mu, "F": F, "T": T}
    assert factor_against_slip(n=2 * n, P=0.0, **like) == pytest.approx(
        2 * factor_against_slip(n=n, P=0.0, **like)
    )
    assert factor_against_slip(n=n, P=F, **like) == 0
    assert thrust_with_drag(T, drag_of_pad(mu, n, F)) > T
    assert lift_by_couple(T * 0.35, 0.6, 2 * n) == pytest.approx(lift_by_couple(T * 0.35, 0.6, n) / 2)


@pytest.mark.parametrize(("times", "outcome"), [(1.005, "conforms"), (0.995, "finding")])
def test_the_pad_stays_down_from_both_sides(workshop: DesignFolder, times: float, outcome: str) -> None:
    """Eight bolts of 57.76 kN keep 1.2 of the couple where the axis is 511 mm aside: 451.5 kN × 511/600 on them."""
    aside = _LOW * 8 * 600 / (1.2 * _THRUST) / times
    made = files(("count = 30", "count = 8"))
    made["block.toml"] = made["block.toml"].replace('"350 mm"', f'"{aside:.3f} mm"')
    values = {"pad pressure": "800 MPa", "share of proof": "5"}
    strong = own_limit("frame.block-couple", "joints", **values)
    made["speclint.toml"] += strong
    check = workshop.write(made).only("frame.block-couple", "fastening")
    assert check.outcome == outcome, check.says
    assert on_sheet(check, "n_p") == pytest.approx(1.2 * times, rel=1e-3)


def test_an_angle_is_not_worked_for_a_frame_fastening(workshop: DesignFolder) -> None:
    turned = ('method = "torque wrench"', 'method = "angle controlled"\nangle = "30 °"')
    check = fastened(workshop, turned).only("frame.block-couple", "fastening")
    assert check.outcome == "finding"
    assert "the preload that an angle makes is not worked for a frame fastening" in check.says
