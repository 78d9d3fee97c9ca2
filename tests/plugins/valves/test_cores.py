"""cam.core-under-its-skin: the core beneath the hardened skins of a cam and its tappet."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint import Grade
from speclint.facts import ValvesTrain
from speclint.handbook.members import line_shear_below
from speclint.testing import DesignFolder, expect_not_applicable, expect_not_assessed, found, on_sheet
from speclint_valves.formulae.cores import angle_between, shear_allowed, skin_left
from speclint_valves.inputs.cores import sheared_most
from speclint_valves.inputs.loads import Loaded, loaded
from speclint_valves.inputs.touch import Touch
from speclint_valves.inputs.train import train_of
from speclint_valves.rules.cores import core_under_its_skin
from tests.facts.bench import opened
from tests.plugins.known_metals import FILES, WITH_METALS
from tests.plugins.valves.gear import train_files
from tests.ranges import End, expect_end

CORE = "cam.core-under-its-skin"
#: Ground twice by 0.15 mm, and worn by 0.1 mm.
USED = '\n[wear]\nlimit = "0.1 mm"\n\n[regrind]\ndepth = "0.15 mm"\ntimes = 2\n'
HARDENED = 'surface = "case hardened"\nhardened_depth = "2 mm"\n'
NONE_LEFT = "grinding and wear take 1 mm of a skin of 1 mm: none of it is left"
SOFT = ((HARDENED, ""),)


def skins(
    cam: str = "9 mm",
    tappet: str = "9 mm",
    used: str = USED,
    *,
    follower: str = 'follower = "flat foot"',
    stiff: bool = False,
    width: str = "12.5 mm",
) -> dict[str, str]:
    """The train with a track of some width, with skins of cam and tappet so deep when new."""
    files = train_files(
        cam=(('hardened_depth = "2 mm"', f'hardened_depth = "{cam}"'), ('"25 mm"', f'"{width}"')),
        tappet=(
            ('hardened_depth = "2 mm"', f'hardened_depth = "{tappet}"'),
            ('follower = "flat foot"', follower),
        ),
        spindle=(('train_stiffness = "0.001 N/mm"', 'train_stiffness = "300000 N/mm"'),) if stiff else (),
    )
    files["cam.toml"] += used
    return files


def by_johnson(F: float, L: float, R: float, z: float, E_star: float = 113951.0) -> float:
    """Shear in MPa at z mm under F N on L mm: (p_0/b) (z − z²/√(b² + z²)), and 0.3 p_0 above z = 0.786 b."""
    b = math.sqrt(4 * F * R / (math.pi * L * E_star))
    p_0 = 2 * F / (math.pi * L * b)
    return 0.3003 * p_0 if z < 0.786 * b else p_0 / b * (z - z**2 / math.hypot(b, z))


#: Where steam no longer holds the valve, running: 7799.9 N on ρ = 121.63 mm (test_cams), on 12.5 mm: b = 0.9209 mm,
#: p_0 = 431.4 MPa; at 1.6 mm (431.4/0.9209) (1.6 − 2.56/√(0.848 + 2.56)) = 99.9 MPa, of 240/(2 × 1.2) = 100 MPa.
DEEPEST = (7799.9, 12.5, 121.63)


@pytest.mark.parametrize(("depth", "outcome"), [("2.01 mm", "conforms"), ("1.98 mm", "finding")])
def test_what_grinding_and_wear_leave_of_the_skin_of_a_cam(
    workshop: DesignFolder, depth: str, outcome: str
) -> None:
    """2 × 0.15 + 0.1 = 0.4 mm are used; 100 MPa lie at 1.598 mm."""
    check = workshop.write(skins(cam=depth)).only(CORE)
    left = float(depth[:4]) - 0.4
    assert (check.outcome, check.case) == (outcome, "running")
    assert found(check) / 1e6 == pytest.approx(by_johnson(*DEEPEST, left), rel=1e-3)
    assert on_sheet(check, "t_lc") * 1e3 == pytest.approx(left)
    assert on_sheet(check, "τ_ac") / 1e6 == pytest.approx(100)


@pytest.mark.parametrize(("depth", "outcome"), [("1.61 mm", "conforms"), ("1.58 mm", "finding")])
def test_the_skin_of_a_tappet_counts_whole(workshop: DesignFolder, depth: str, outcome: str) -> None:
    check = workshop.write(skins(tappet=depth)).only(CORE)
    assert (check.outcome, check.case) == (outcome, "running")
    assert found(check) / 1e6 == pytest.approx(by_johnson(*DEEPEST, float(depth[:4])), rel=1e-3)


@pytest.mark.parametrize(("factor", "outcome"), [("1.165", "conforms"), ("1.18", "finding")])
def test_a_skin_above_the_greatest_shear_leaves_all_of_it_to_the_core(
    workshop: DesignFolder, factor: str, outcome: str
) -> None:
    """On 20 mm p_0 = 431.4 × √(12.5/20) = 341.0 MPa. 0.572 mm down, 0.3003 × 341.0 = 102.4 MPa: 240/(2 × 1.172)."""
    files = skins(tappet="0.3 mm", width="20 mm")
    files["speclint.toml"] = WITH_METALS + f'[limits."{CORE}"]\ncore = "{factor}"\n'
    check = workshop.write(files).only(CORE)
    assert check.outcome == outcome
    assert found(check) / 1e6 == pytest.approx(0.3003 * 341.0, rel=2e-3)


@pytest.mark.parametrize(("depth", "outcome"), [("2.05 mm", "conforms"), ("2.02 mm", "finding")])
def test_the_blow_shears_the_core_too(workshop: DesignFolder, depth: str, outcome: str) -> None:
    """300 kN/mm: 18 956 N on ρ = 123.88 mm (test_cams): b = 1.0245 mm, p_0 = 471.2 MPa, and 100 MPa at 2.034 mm."""
    check = workshop.write(skins(tappet=depth, stiff=True, width="25 mm")).only(CORE)
    assert check.outcome == outcome
    assert found(check) / 1e6 == pytest.approx(by_johnson(18956.0, 25, 123.88, float(depth[:4])), rel=1e-3)


def test_what_is_soft_has_no_core(workshop: DesignFolder) -> None:
    expect_not_applicable(workshop.write(train_files(cam=SOFT, tappet=SOFT)).only(CORE), "hardened")


@pytest.mark.parametrize(("tappet", "outcome"), [("1.61 mm", "conforms"), ("1.58 mm", "finding")])
def test_of_a_soft_cam_the_tappet_is_judged_alone(workshop: DesignFolder, tappet: str, outcome: str) -> None:
    files = skins(tappet=tappet, used="")
    files["cam.toml"] = files["cam.toml"].replace(HARDENED.replace("2 mm", "9 mm"), "")
    check = workshop.write(files).only(CORE)
    assert check.outcome == outcome
    assert "τ_cs" not in {step.symbol for step in check.steps}


@pytest.mark.parametrize(
    "line", ['hardened_depth = "9 mm"', 'limit = "0.1 mm"', 'depth = "0.15 mm"', "times = 2"]
)
def test_how_deep_a_skin_is_at_the_end_of_its_life_is_asked(workshop: DesignFolder, line: str) -> None:
    files = skins()
    files["cam.toml"] = files["cam.toml"].replace(line, "")
    expect_not_assessed(workshop.write(files).only(CORE), line.partition(" =")[0])


def test_a_cam_of_unknown_depth_hides_no_core_of_its_tappet(workshop: DesignFolder) -> None:
    check = workshop.write(skins(tappet="1.58 mm", used="")).only(CORE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)


def test_a_core_without_a_proof_stress_is_asked(workshop: DesignFolder) -> None:
    """Grey iron has none."""
    files = skins()
    files["tappet.toml"] = files["tappet.toml"].replace("known-steel", "known-iron")
    assert workshop.write(files).only(CORE).outcome == "not assessed"


def test_ends_of_ranges() -> None:
    expect_end(End(skin_left, {"t": 1e-3, "u": 0.999e-3}, {"u": 1e-3}, NONE_LEFT))
    expect_end(End(shear_allowed, {"R_p": 440e6, "x": 1e-9}, {"x": 0.0}, "factor 0 is not above 0"))


def test_an_angle_stays_between_the_ends_of_its_part() -> None:
    assert [angle_between(φ, 0.1, 0.2) for φ in (0.0, 0.15, 3.0)] == [0.1, 0.15, 0.2]


def test_a_skin_that_is_all_ground_away_is_a_query(workshop: DesignFolder) -> None:
    check = workshop.write(skins(cam="0.35 mm")).only(CORE)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert "none of it is left" in check.says


def _greatest(load: Loaded, touch: Touch, steam: float, start: float, stop: float, t: float) -> float:
    """The greatest shear of a part of the lift, looked for at two thousand angles."""
    lines = (touch.line(load, steam, start + (stop - start) * step / 2000) for step in range(2001))
    return max(line_shear_below(F, touch.width, R, touch.modulus, t) for F, R in lines)


@pytest.mark.parametrize("case", ["starting", "running"])
@pytest.mark.parametrize(
    "follower",
    [
        'follower = "flat foot"',
        'follower = "crowned foot"\nfollower_radius = "300 mm"',
        'follower = "roller"\nfollower_radius = "30 mm"',
        'follower = "roller"\nfollower_radius = "30 mm"\noffset = "20 mm"',
    ],
)
@pytest.mark.parametrize("law", ["harmonic", "parabolic", "3-4-5 polynomial"])
def test_the_angles_hold_for_all_tolerances(tmp_path: Path, law: str, follower: str, case: str) -> None:
    """Found at the low limits of all sizes, they shear a core as much as any angle with other sizes, to 1 %."""
    drawn = skins(cam="2.4 mm", tappet="1 mm", follower=follower, width="25 mm")
    drawn["cam.toml"] = drawn["cam.toml"].replace('"harmonic"', f'"{law}"')
    other = dict(drawn)
    for file, old, new in (
        ("cam.toml", '"25 mm"', '"24 mm"'),
        ("cam.toml", '"2.4 mm"', '"2.9 mm"'),
        ("tappet.toml", '"0.4 mm"', '"0.5 mm"'),
        ("spindle.toml", '"1.5 kg"', '"1.6 kg"'),
        ("valve.toml", '"4.5 kg"', '"5 kg"'),
        ("spring.toml", '"1100 N ±0.0001"', '"1200 N ±0.0001"'),
        ("spring.toml", '"40 N/mm"', '"44 N/mm"'),
    ):
        assert old in other[file]
        other[file] = other[file].replace(old, new)
    for number, files in enumerate((drawn, other)):
        (tmp_path / str(number)).mkdir()
        on = opened(tmp_path / str(number), {**files, **FILES}, "cam", by=core_under_its_skin)
        asked = on["duty"].cases[case]
        if not number:
            most = sheared_most(on["cam"], asked, on.sheet)
        train: ValvesTrain = train_of(on["cam"], on.sheet)
        touch, load = Touch(on["cam"], train.tappet, on.sheet), loaded(train, asked, on.sheet)
        for phase in load.phases:
            lines = [
                touch.line(load, phase.steam, min(max(angle, phase.start), phase.stop))
                for angle in most[phase.mark]
            ]
            for t in (1e-3, 2e-3):
                shear = max(line_shear_below(F, touch.width, R, touch.modulus, t) for F, R in lines)
                assert shear >= 0.99 * _greatest(load, touch, phase.steam, phase.start, phase.stop, t)
