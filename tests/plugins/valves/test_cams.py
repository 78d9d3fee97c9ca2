"""cam.contact-stress and cam.acceleration."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.errors import OutOfRange
from speclint.facts import normal_load, tappet_load
from speclint.testing import DesignFolder, found, on_sheet
from speclint_valves.formulae.cams import (
    cam_radius_under_flat,
    pressure_angle,
    relative_radius_of_roller,
    roller_over_its_path,
)
from speclint_valves.formulae.motion import valve_end_load
from speclint_valves.inputs.loads import loaded
from speclint_valves.inputs.touch import Touch
from speclint_valves.inputs.train import train_of
from speclint_valves.rules.cams import contact_stress
from tests.facts.bench import opened
from tests.plugins.known_metals import FILES, WITH_METALS
from tests.plugins.valves.gear import duty, train_files

CONTACT, ACCELERATION = "cam.contact-stress", "cam.acceleration"


def limited(most: str, name: str = "hardened-steel") -> dict[str, str]:
    """The train, and a limit of the contact pressure of its own."""
    return {**train_files(), "speclint.toml": WITH_METALS + f'[limits."{CONTACT}"]\n{name} = "{most}"\n'}


@pytest.mark.parametrize(("most", "outcome"), [("452 MPa", "conforms"), ("451 MPa", "finding")])
def test_contact_limit_from_both_sides(workshop: DesignFolder, most: str, outcome: str) -> None:
    """Starting, at the top: 1100 + 784.04 + 68.84 − 0.5 = 1952.4 N on ρ = 80 − 66.12 = 13.879 mm, 25 wide.

    1/E* = 2 (1 − 0.31²)/206000: E* = 113951 MPa; √(1952.4 × 113951/(π 25 × 13.879)) = 451.8 MPa.
    """
    check = workshop.write(limited(most)).only(CONTACT)
    assert (check.outcome, check.case) == (outcome, "starting")
    assert found(check) == pytest.approx(451.8e6, rel=1e-3)


@pytest.mark.parametrize(
    "follower",
    [
        'follower = "flat foot"\n',
        'follower = "crowned foot"\nfollower_radius = "300 mm"\n',
        'follower = "roller"\nfollower_radius = "30 mm"\n',
        'follower = "roller"\nfollower_radius = "30 mm"\noffset = "5 mm"\n',
    ],
)
def test_the_pressure_that_is_sought_is_the_one_on_the_sheet(tmp_path: Path, follower: str) -> None:
    """At each angle of the lift: the place of the greatest is found by the one and shown by the other."""
    files = train_files(tappet=(('follower = "flat foot"\n', follower),))
    on = opened(tmp_path, {**files, **FILES}, "cam", by=contact_stress)
    train = train_of(on["cam"], on.sheet)
    load = loaded(train, on["duty"].cases["running"], on.sheet)
    touch = Touch(on["cam"], train.tappet, on.sheet)
    for phase in load.phases:
        for share in (0.0, 0.3, 0.6, 1.0):
            angle = phase.start + share * (phase.stop - phase.start)
            at = load.cam.at(angle)
            shown = touch.worked(at, load.tappet(at, phase.steam), on.sheet)
            assert touch.pressure(load, phase.steam, angle) == pytest.approx(shown.pressure, rel=1e-12)


@pytest.mark.parametrize(("most", "outcome"), [("437 MPa", "conforms"), ("435 MPa", "finding")])
def test_chilled_iron_has_its_own_limit(workshop: DesignFolder, most: str, outcome: str) -> None:
    """By its metal, not by a word: E 183.6 GPa at most, ν 0.28: 1/E* = 5.0196e-6 + 4.3879e-6; 436.3 MPa."""
    files = limited(most, "chilled-iron")
    files["cam.toml"] = files["cam.toml"].replace('material = "known-steel"', 'material = "chilled-iron"')
    assert workshop.write(files).only(CONTACT).outcome == outcome


@pytest.mark.parametrize(
    ("metal", "width", "base", "outcome"),
    [
        ("known-steel", "5 mm", "56.15 mm", "conforms"),
        ("known-steel", "5 mm", "55.75 mm", "finding"),
        ("chilled-iron", "5.95 mm", "60 mm", "conforms"),
        ("chilled-iron", "5.80 mm", "60 mm", "finding"),
    ],
)
def test_what_a_hard_track_bears_from_both_sides(
    workshop: DesignFolder, metal: str, width: str, base: str, outcome: str
) -> None:
    """Chilled iron: 436.3 MPa × √(25/w) are 900 on 5.875 mm. Hardened steel on 5 mm: 451.8 × √5 = 1010.3 MPa.

    They are 1200 where ρ is 13.879 × (1010.3/1200)² = 9.838 mm, on a base of 55.96 mm.
    """
    deep = ('hardened_depth = "2 mm"', 'hardened_depth = "9 mm"')
    sizes = (('width = "25 mm"', f'width = "{width}"'), ('"60 mm"', f'"{base}"'))
    files = train_files(cam=(deep, *sizes), tappet=(deep,))
    files["cam.toml"] = files["cam.toml"].replace("known-steel", metal)
    check = workshop.write(files).only(CONTACT)
    assert (check.outcome, check.case) == (outcome, "starting")


SOFT = (('surface = "case hardened"\nhardened_depth = "2 mm"\n', ""),)


@pytest.mark.parametrize(("width", "outcome"), [("16.7 mm", "conforms"), ("16.5 mm", "finding")])
@pytest.mark.parametrize("part", ["cam", "tappet"])
def test_a_soft_track_settles_or_yields(workshop: DesignFolder, part: str, width: str, outcome: str) -> None:
    """R_p 240 MPa: 4 × 240/√3 = 554.3 MPa, at 451.7 MPa × √(25/w) for w = 16.60 mm. Hardened, 1200 MPa passed it."""
    narrow = (('width = "25 mm"', f'width = "{width}"'),)
    soft = train_files(cam=narrow + SOFT) if part == "cam" else train_files(cam=narrow, tappet=SOFT)
    assert workshop.write(soft).only(CONTACT).outcome == outcome
    assert workshop.write(train_files(cam=narrow)).only(CONTACT).outcome == "conforms"


@pytest.mark.parametrize(("depth", "outcome"), [("1.07 mm", "conforms"), ("1.05 mm", "finding")])
def test_a_skin_must_reach_below_the_greatest_shear(workshop: DesignFolder, depth: str, outcome: str) -> None:
    """Deepest where steam no longer holds the valve, running, 0.4 mm open: s = 0.8 mm, cos πx = 0.92.

    κ = 10 × 6.612 × 0.92 = 60.83 mm, a = 0.06083 × 37.699² = 86.46 m/s²; 1116 + 6001.2 + 68.84 + 7.1 × 86.46 = 7799.9 N
    on ρ = 60 + 0.8 + 60.83 = 121.63 mm. Softest, E* = 194000/(2 × 0.9159) = 105 906 MPa: 294.1 MPa;
    0.786 × 2 × 294.1 × 121.63/105 906 = 0.5309 mm, twice. As the clearance is taken up it is 0.5258 mm.
    """
    thin = (('hardened_depth = "2 mm"', f'hardened_depth = "{depth}"'),)
    for files in (train_files(cam=thin), train_files(tappet=thin)):
        assert workshop.write(files).only(CONTACT).outcome == outcome


def test_a_hardened_track_of_unknown_depth_is_not_assessed(workshop: DesignFolder) -> None:
    files = train_files(cam=(('hardened_depth = "2 mm"\n', ""),))
    assert workshop.write(files).only(CONTACT).outcome == "not assessed"


def test_the_blow_presses_the_cam_too(workshop: DesignFolder) -> None:
    """300 kN/mm: 0.27111 × √(300e6 × 6.3) = 11 786 N, 18 956 N in all, running; ρ = 60 + 0.4 + 63.48 = 123.88 mm.

    √(18 956 × 113 951/(π 25 × 123.88)) = 471.2 MPa, above the 451.8 at the top.
    """
    stiff = (('train_stiffness = "0.001 N/mm"', 'train_stiffness = "300000 N/mm"'),)
    deep = (('hardened_depth = "2 mm"', 'hardened_depth = "9 mm"'),)
    check = workshop.write(train_files(spindle=stiff, cam=deep, tappet=deep)).only(CONTACT)
    assert check.case == "running"
    assert found(check) == pytest.approx(471.2e6, rel=1e-3)
    shallow = workshop.write(train_files(spindle=stiff, cam=deep, tappet=(("2 mm", "1.6 mm"),))).only(CONTACT)
    assert (
        shallow.outcome == "finding"
    )  # 0.786 × 2 × 471.2 × 123.88/113 951 = 0.805 mm at the blow, twice 1.61


ANGLE = "cam.pressure-angle"


@pytest.mark.parametrize(("base", "outcome"), [("25.7 mm", "conforms"), ("25.6 mm", "finding")])
def test_pressure_angle_from_both_sides(workshop: DesignFolder, base: str, outcome: str) -> None:
    """s′ = 25.714 sin θ, s = 10 − 10 cos θ: tan φ = 25.714/√((R_b + 20)² − 100) = tan 30° at R_b = 25.65 mm."""
    roller = (('"flat foot"', '"roller"\nfollower_radius = "10 mm"'),)
    files = train_files(cam=(('"60 mm"', f'"{base}"'),), tappet=roller)
    assert workshop.write(files).only(ANGLE).outcome == outcome


def test_a_flat_foot_must_say_how_long_it_is(workshop: DesignFolder) -> None:
    assert workshop.write(train_files()).only(ANGLE).outcome == "not assessed"


def test_pressure_angle_is_not_assessed_without_the_base_circle(workshop: DesignFolder) -> None:
    roller = (('"flat foot"', '"roller"\nfollower_radius = "10 mm"'),)
    files = train_files(cam=(('base_radius = "60 mm"', ""),), tappet=roller)
    assert workshop.write(files).only(ANGLE).outcome == "not assessed"


@given(slope=st.floats(0.0, 0.1), s=st.floats(0.0, 0.03))
def test_a_larger_cam_pushes_less_aslant(slope: float, s: float) -> None:
    small, large = (pressure_angle(s_prime=slope, R_b=R, r=0.02, s=s) for R in (0.03, 0.06))
    assert large <= small
    assert normal_load(F_t=1.0, s_prime=slope, R_b=0.03, r=0.02, s=s) == pytest.approx(1 / math.cos(small))


@pytest.mark.parametrize(("ramp", "outcome"), [("4.62 mm", "conforms"), ("4.64 mm", "finding")])
def test_a_steep_ramp_meets_the_tappet_with_a_blow(workshop: DesignFolder, ramp: str, outcome: str) -> None:
    """0.5 m/s at 37.699 rad/s is 13.263 mm/rad: 4.630 mm in 20°."""
    files = train_files(cam=(('"harmonic"', '"cycloidal"'), ("0.001 mm", ramp)))
    check = workshop.write(files).only(ACCELERATION)
    assert check.outcome == outcome


def test_an_undercut_cam_is_a_query(workshop: DesignFolder) -> None:
    """45 + 20 − 66.1 mm leaves no radius."""
    check = workshop.write(train_files(cam=(('"60 mm"', '"45 mm"'),))).only(CONTACT)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


def test_a_roller_is_pressed_less_the_larger_it_is(workshop: DesignFolder) -> None:
    def pressure(radius: str) -> float:
        roller = (('"flat foot"', f'"roller"\nfollower_radius = "{radius}"'),)
        return found(workshop.write(train_files(tappet=roller)).only(CONTACT))

    assert pressure("30 mm") < pressure("20 mm")


@pytest.mark.parametrize("line", ['base_radius = "60 mm"', 'width = "25 mm"', 'lifts = "tappet"'])
def test_contact_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(train_files(cam=((line, ""),))).check(CONTACT)[0].outcome == "not assessed"


@pytest.mark.parametrize(
    ("law", "outcome"),
    [
        ("harmonic", "finding"),
        ("parabolic", "finding"),
        ("cycloidal", "conforms"),
        ("3-4-5 polynomial", "conforms"),
    ],
)
def test_laws_that_jerk_are_observed(workshop: DesignFolder, law: str, outcome: str) -> None:
    check = workshop.write(train_files(cam=(('"harmonic"', f'"{law}"'),))).only(ACCELERATION)
    assert check.outcome == outcome


def test_greatest_accelerations_stand_on_the_sheet(workshop: DesignFolder) -> None:
    """Cycloidal: 2π × 0.02 × 37.699²/1.22173² = 119.65 m/s² either way."""
    check = workshop.write(train_files(cam=(('"harmonic"', '"cycloidal"'),))).only(ACCELERATION)
    worked = {step.symbol: step.value for step in check.steps}
    assert worked["a_max"] == pytest.approx(119.65, rel=1e-3)
    assert worked["a_min"] == pytest.approx(-119.65, rel=1e-3)


def test_acceleration_is_not_assessed_without_the_law(workshop: DesignFolder) -> None:
    check = workshop.write(train_files(cam=(('law = "harmonic"', ""),))).only(ACCELERATION)
    assert check.outcome == "not assessed"


@given(θ=st.floats(0.0, 2 * math.pi), e=st.floats(0.001, 0.015), r=st.floats(0.01, 0.05))
def test_an_eccentric_circle_has_one_radius_all_round(θ: float, e: float, r: float) -> None:
    """Its pitch curve is a circle about another centre: distance q = e cos θ + √(P² − e² sin² θ), P = 0.04 + r."""
    P = 0.04 + r
    root = math.sqrt(P**2 - (e * math.sin(θ)) ** 2)
    slope = -e * math.sin(θ) - e**2 * math.sin(θ) * math.cos(θ) / root
    κ = (
        -e * math.cos(θ)
        - e**2 * math.cos(2 * θ) / root
        - e**4 * math.sin(θ) ** 2 * math.cos(θ) ** 2 / root**3
    )
    base = P - e - r
    s = e * math.cos(θ) + root - (base + r)
    k = roller_over_its_path(R_b=base, r=r, s=s, s_prime=slope, κ=κ)
    assert r / k == pytest.approx(P, rel=1e-6)
    assert relative_radius_of_roller(r=r, k=k) == pytest.approx(1 / (1 / 0.04 + 1 / r), rel=1e-6)


@given(e=st.floats(0.001, 0.015), θ=st.floats(0.0, 2 * math.pi))
def test_an_eccentric_circle_under_a_flat_foot(e: float, θ: float) -> None:
    """s = e − e cos θ on a base of ρ − e: R_b + s + s″ = ρ everywhere."""
    R = cam_radius_under_flat(R_b=0.04 - e, s=e - e * math.cos(θ), κ=e * math.cos(θ))
    assert pytest.approx(0.04) == R


@given(F=st.floats(0.0, 1e4), slope=st.floats(-0.05, 0.05))
def test_a_slanting_roller_is_pressed_more(F: float, slope: float) -> None:
    assert normal_load(F_t=F, s_prime=slope, R_b=0.04, r=0.02, s=0.0) >= F
    assert normal_load(F_t=F, s_prime=0.0, R_b=0.04, r=0.02, s=0.0) == F
    loads = {"F_f": F, "F_st": F, "m": 1.0, "a": F, "F_r": F, "W": F}
    assert valve_end_load(F_t=tappet_load(i=1.5, **loads), i=1.5) == pytest.approx(5 * F)


def test_refusals() -> None:
    with pytest.raises(OutOfRange, match="undercut"):
        cam_radius_under_flat(R_b=0.02, s=0.01, κ=-0.04)
    with pytest.raises(OutOfRange, match="undercut"):
        relative_radius_of_roller(
            r=0.03, k=roller_over_its_path(R_b=0.02, r=0.03, s=0.0, s_prime=0.0, κ=-0.10)
        )


def test_the_greatest_accelerations_are_written_down(workshop: DesignFolder) -> None:
    """Harmonic: 0.010 (π/β)² ω² both ways, greatest at the foot of the law and at its top."""
    check = workshop.write(train_files()).only(ACCELERATION)
    a = 0.010 * (math.pi / math.radians(70)) ** 2 * (12 * math.pi) ** 2
    assert on_sheet(check, "a_max") == pytest.approx(a, rel=1e-3)
    assert on_sheet(check, "a_min") == pytest.approx(-a, rel=1e-3)
    foot, top = (math.degrees(on_sheet(check, name)) for name in ("φ_max", "φ_min"))
    assert min(abs(foot - place) for place in (20, 180)) < 1
    assert 89 < top < 111


def test_a_roller_beside_the_axis_is_pressed_along_its_own_way(workshop: DesignFolder) -> None:
    """Worst as steam lets go, 0.4 mm open: s = 0.799, s′ = 10.07, κ = 60.84 mm, and 7799.9 N along the tappet.

    20 mm beside the axis y = √(90² − 20²) + 0.799 = 88.55 mm: tan α = 9.93/88.55, F_n = 7848 N;
    k = 30 (y² − y κ + (s′ − 20)(2 s′ − 20))/(y² + 9.93²)^1.5 = 0.105, R = 26.8 mm: 652 MPa.
    """
    beside = 'follower = "roller"\nfollower_radius = "30 mm"\noffset = "20 mm"'
    files = {**limited("600 MPa"), **train_files(tappet=(('follower = "flat foot"', beside),))}
    files["speclint.toml"] = limited("600 MPa")["speclint.toml"]
    check = workshop.write(files).only(CONTACT)
    β, e, r = math.radians(70), 20.0, 30.0
    s, cosine = 0.799, 1 - 0.0799
    slope = 10 * math.pi / β * math.sqrt(1 - cosine**2)
    κ = 10 * (math.pi / β) ** 2 * cosine
    y = math.sqrt(90**2 - e**2) + s
    F_n = 7799.9 / math.cos(math.atan(abs(slope - e) / y))
    k = r * (y**2 - y * κ + (slope - e) * (2 * slope - e)) / (y**2 + (slope - e) ** 2) ** 1.5
    p = math.sqrt(F_n * 113951 / (math.pi * 25 * r * (1 - k)))
    assert (check.outcome, check.case) == ("finding", "running")
    assert found(check) / 1e6 == pytest.approx(p, rel=2e-3)


def _on_a_line_beside(φ: float, e: float, r: float) -> float:
    """Contact pressure of the roller at a cam angle, MPa: springs and weight alone press it, 40 N for each mm."""
    x = min((φ - 20) / 70, 1.0, (180 - φ) / 70)
    B, way = math.radians(70), 1 if φ < 100 else -1
    s, slope, κ = 10 * (1 - math.cos(math.pi * x)), way * 10 * math.pi / B * math.sin(math.pi * x), 0.0
    if x < 1:
        κ = 10 * (math.pi / B) ** 2 * math.cos(math.pi * x)
    y = math.sqrt((60 + r) ** 2 - e**2) + s
    F = (1168.84 + 40 * (s - 0.4)) / math.cos(math.atan((slope - e) / y))
    k = r * (y**2 - y * κ + (slope - e) * (2 * slope - e)) / (y**2 + (slope - e) ** 2) ** 1.5
    return math.sqrt(F * 113951 / (math.pi * 25 * r * (1 - k)))


def test_a_roller_far_beside_the_axis_is_pressed_most_as_it_comes_down(workshop: DesignFolder) -> None:
    """50 mm beside it, 6° below the top of the fall, where the cam pushes more aslant; on the axis, at the top.

    Turned slowly, at so little steam that springs alone count.
    """
    slow = duty().replace('"16 bar gauge"', '"0.4 bar gauge"').replace('"15.2 bar gauge"', '"0.4 bar gauge"')
    beside = 'follower = "roller"\nfollower_radius = "20 mm"\noffset = "50 mm"'
    files = train_files(
        tappet=(('follower = "flat foot"', beside),), duty_text=slow.replace("360 rev/min", "10 rev/min")
    )
    check = workshop.write(files).only(CONTACT)
    worst = max(_on_a_line_beside(20 + i / 10, 50.0, 20.0) for i in range(1, 1600))
    assert worst > 1.003 * _on_a_line_beside(90, 50.0, 20.0)
    assert found(check) / 1e6 == pytest.approx(worst, rel=1e-3)
