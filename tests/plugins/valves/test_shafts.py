"""shaft.turns-its-cams and spindle.side-by-rocker."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.facts import load_aslant, share_across_spindle
from speclint.testing import DesignFolder, found, limit, on_sheet
from speclint_valves.formulae.keys import height_of_parallel_key, room_over_key
from tests.plugins.valves.gear import train_files

TURNS, SIDE = "shaft.turns-its-cams", "spindle.side-by-rocker"
FINE = ("conforms", None)
WRONG = ("finding", Grade.NONCONFORMITY)
ASKED = ("finding", Grade.QUERY)
SILENT = ("not applicable", None)
SHAFT = 'kind = "shaft"\nid = "shaft"\nduty = "duty"\ntorque = "{}"\n'
#: The keys by which the parts of one train name themselves and each other.
LINKS = (
    *(("id", name) for name in ("cam", "tappet", "spindle", "spring", "valve")),
    ("lifts", "tappet"),
    ("works", "spindle"),
    ("moves", "valve"),
    ("closes", "valve"),
)
OF_ONE = ("cam", "tappet", "spindle", "spring", "valve")


def _torque(steam: float, rpm: float) -> float:
    """The torque as steam lets go of the valve, N·m, worked by hand.

    Harmonic lift s = 10 (1 − cos π x) mm over β = 70°, above a ramp of 1 µm; the valve is 2 % of 20 mm open when the
    tappet, with 0.4 mm of clearance, has risen 0.8 mm: cos u = 1 − 0.799/10. Springs 1100 N + 40 N/mm × 0.4 mm,
    friction 10 N, weight 6 × 9.80665 N; moving mass 4.5 + 1.5 + 0.9/3 + 0.8 = 7.1 kg.
    """
    β, cosine = math.radians(70), 1 - 0.799 / 10
    slope = 0.010 * math.pi / β * math.sqrt(1 - cosine**2)
    a = 0.010 * (math.pi / β) ** 2 * cosine * (rpm * 2 * math.pi / 60) ** 2
    return (1100 + 16 + steam + 7.1 * a + 10 + 6 * 9.80665) * slope


#: Beats of 150 and 140 mm, spindle of 20 mm: what holds the valve shut at 15.2 and 0.35 bar, in running.
HOLDS = math.pi / 4 * ((0.150**2 - 0.140**2) * 1.485e6 + 0.020**2 * 1.52e6)
RUNNING = _torque(HOLDS, 360)


def _torque_of_blow() -> float:
    """The torque as the clearance is taken up, N·m, of a train of 90 kN/mm, worked by hand.

    The tappet has risen 0.4 mm: cos u = 1 − 0.399/10, sin u = 0.27966, and it rises by 7.1913 mm/rad, at 12 π rad/s by
    0.27110 m/s. It strikes 7.1 − 0.8 = 6.3 kg: 0.27110 √(90e6 × 6.3) = 6455.4 N, beside what holds the valve.
    """
    slope = 7.1913e-3
    return (6455.4 + 1100 + HOLDS + 10 + 6 * 9.80665) * slope


BLOW = _torque_of_blow()
STIFF = ("0.001 N/mm", "90 kN/mm")


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


def shafted(design: DesignFolder, torque: str, *phases: str) -> DesignFolder:
    """One train for each phase, alike, whose cams turn on one shaft; of an empty phase none is stated."""
    files = train_files()
    found = {name: text for name, text in files.items() if name.removesuffix(".toml") not in OF_ONE}
    for number, phase in enumerate(phases):
        for part in OF_ONE:
            text = files[f"{part}.toml"]
            for key, other in LINKS:
                text = text.replace(f'{key} = "{other}"\n', f'{key} = "{other}-{number}"\n')
            if part == "cam":
                text += 'turns_on = "shaft"\nat = "100 mm"\n' + (f'phase = "{phase}"\n' if phase else "")
            found[f"{part}-{number}.toml"] = text
    return design.write({**found, "shaft.toml": SHAFT.format(torque)})


@pytest.mark.parametrize(("share", "ends"), [(1.002, FINE), (0.998, WRONG)])
def test_a_shaft_turns_its_cam(design: DesignFolder, share: float, ends: tuple[str, Grade | None]) -> None:
    check = shafted(design, f"{RUNNING * share:.4f} N·m", "").only(TURNS)
    assert (check.outcome, check.grade) == ends
    assert on_sheet(check, "T") == pytest.approx(RUNNING, rel=2e-3)


@pytest.mark.parametrize(("share", "ends"), [(1.002, FINE), (0.998, WRONG)])
def test_the_blow_turns_the_shaft_too(
    design: DesignFolder, share: float, ends: tuple[str, Grade | None]
) -> None:
    assert BLOW > 1.3 * RUNNING
    folder = shafted(design, f"{BLOW * share:.4f} N·m", "")
    spindle = design.root / "spindle-0.toml"
    spindle.write_text(spindle.read_text(encoding="utf-8").replace(*STIFF), encoding="utf-8")
    check = folder.only(TURNS)
    assert (check.outcome, check.grade) == ends
    assert on_sheet(check, "T") == pytest.approx(BLOW, rel=1e-4)


@pytest.mark.parametrize(
    ("phases", "times"), [(("", ""), 2), (("0 °", ""), 2), (("0 °", "0 °"), 2), (("20 °", "200 °"), 1)]
)
def test_cams_that_say_where_they_stand_need_not_all_at_once(
    design: DesignFolder, phases: tuple[str, ...], times: int
) -> None:
    """A lift of 70 + 20 + 70° with ramps of 20° is 200° of a turn; half a turn apart one lifts as the other falls."""
    needed = RUNNING * times
    fine = shafted(design, f"{needed * 1.002:.4f} N·m", *phases).only(TURNS)
    assert (fine.outcome, fine.grade) == FINE
    wrong = shafted(design, f"{needed * 0.9:.4f} N·m", *phases).only(TURNS)
    assert (wrong.outcome, wrong.grade) == WRONG


GEAR = """
kind = "valve-gear"
in_block = "block"
cylinder_bore = "main"
[notches.full]
direction = "{way}"
[notches.full.inlet_front]
cam = "cam-0"
foot = "{foot} °"
[notches.full.inlet_back]
cam = "cam-1"
[notches.full.exhaust_front]
cam = "{third}"
foot = "{foot} °"
[notches.full.exhaust_back]
cam = "{third}"
"""


@pytest.mark.parametrize("way", ["forward", "backward"])
@pytest.mark.parametrize(("third", "times"), [("cam-1", 2), ("cam-0", 2)])
def test_a_gear_says_where_its_cams_stand(design: DesignFolder, way: str, third: str, times: int) -> None:
    """Front and back stand half a turn apart, and each is named at both ends: two lift at once, whichever way it runs.

    The cam is the same from both ends.
    """
    folder = shafted(design, f"{RUNNING * times * 1.002:.4f} N·m", "", "")
    gear = GEAR.format(way=way, foot=10, third=third)
    block = (design.root / "block.toml").read_text(encoding="utf-8")
    bores = {"gear.toml": gear, "block.toml": f'{block}\n[bores.main]\ndiameter = "520 mm"\n'}
    for name, text in bores.items():
        (design.root / name).write_text(text, encoding="utf-8")
    fine = folder.only(TURNS)
    assert (fine.outcome, fine.grade) == FINE
    assert found(fine) == pytest.approx(RUNNING * times * 1.002, rel=1e-4)
    assert limit(fine) == pytest.approx(RUNNING * times, rel=2e-3)
    assert fine.judgement is not None
    assert "notch full" in f"{fine.judgement.of} {fine.says}"


def test_a_shaft_without_cams_turns_none(design: DesignFolder) -> None:
    check = design.write({**train_files(), "shaft.toml": SHAFT.format("1 N·m")}).only(TURNS)
    assert (check.outcome, check.grade) == SILENT


ROCKER = """
kind = "rocker"
id = "rocker"
material = "known-steel"
works = "spindle"
carried_in = "box"
valve_arm = "80 mm"
tappet_arm = "80 mm"
inertia = "0.001 kg·m²"
"""


def aside(
    design: DesignFolder, load: str, *, rocker: bool, opens: str = "upwards", friction: str = "30 N"
) -> tuple[str, Grade | None]:
    files = train_files(
        tappet=(('works = "spindle"', 'works = "rocker"'),) if rocker else (),
        valve=(('opens = "upwards"', f'opens = "{opens}"'),),
    )
    files["spindle.toml"] = files["spindle.toml"].replace('friction = "10 N"', f'friction = "{friction}"')
    files["spindle.toml"] += f'side_load = "{load}"\n' if load else ""
    check = design.write({**files, **({"rocker.toml": ROCKER} if rocker else {})}).only(SIDE)
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("load", "rocker", "opens", "ends"),
    [
        # 1100 + 40 × 20 = 1900 N; sine 20/160, tangent 0.125988: 239.38 N
        ("239.5 N", True, "upwards", FINE),
        ("239.2 N", True, "upwards", ASKED),
        # 6 kg × 9.80665 = 58.84 N; in line with 239.38 N 298.22 N
        ("58.9 N", False, "sideways", FINE),
        ("58.8 N", False, "sideways", ASKED),
        ("298.3 N", True, "sideways", FINE),
        ("298.1 N", True, "sideways", ASKED),
        # without a rocker 0.03 × 1900 = 57 N
        ("57.1 N", False, "upwards", FINE),
        ("56.9 N", False, "upwards", ASKED),
        ("", True, "upwards", SILENT),
    ],
)
def test_a_rocker_and_the_weight_press_on_the_guide(
    design: DesignFolder, load: str, rocker: bool, opens: str, ends: tuple[str, Grade | None]
) -> None:
    assert aside(design, load, rocker=rocker, opens=opens) == ends


@pytest.mark.parametrize(
    ("friction", "ends"),
    [("10 N", FINE), ("9.9 N", ASKED), ("0 N", ASKED), ("0..10.1 N", FINE), ("8..9.9 N", ASKED)],
)
def test_an_oiled_guide_rubs_under_what_presses_on_it(
    design: DesignFolder, friction: str, ends: tuple[str, Grade | None]
) -> None:
    """0.05 × 200 N are 10 N; the greatest friction counts."""
    assert aside(design, "200 N", rocker=False, friction=friction) == ends


@given(k=st.floats(0, 1), F=st.floats(0, 1e5))
def test_no_share_is_more_than_the_whole(k: float, F: float) -> None:
    assert 0 <= share_across_spindle(k, F) <= F


def test_an_arm_must_be_longer_than_half_the_lift() -> None:
    with pytest.raises(OutOfRange, match="less than twice its length"):
        load_aslant(F=1.0, h=0.02, b=0.01)


TORSION, KEY = "shaft.torsion", "shaft.key-of-its-cams"
STRONG = """material = "forging-42CrMo4"
diameter = "60 mm"
keyway_width = "18 mm"
keyway_depth = "7 mm"
bending_moment = "1 N·m"
drive.by = "coupling"
bearings.near.at = "100 mm"
bearings.far.at = "400 mm"
"""


def in_shear(design: DesignFolder) -> float:
    """The stress of the shafting code, Pa: 16 T/(π d³), with next to no bending: each cam stands over a bearing."""
    return on_sheet(design.only(TORSION), "τ")


@pytest.mark.parametrize(("share", "taken"), [(0.01, 1.0), (1.5, 1.5)])
def test_a_shaft_is_judged_by_the_greater_of_stated_and_needed(
    design: DesignFolder, share: float, taken: float
) -> None:
    """Two cams of which nobody says how they stand to each other ask twice the torque of one."""
    needed = 2 * RUNNING
    shafted(design, f"{needed * share:.4f} N·m", "", "")
    shaft = (design.root / "shaft.toml").read_text(encoding="utf-8") + STRONG
    (design.root / "shaft.toml").write_text(shaft, encoding="utf-8")
    assert in_shear(design) == pytest.approx(16 * taken * needed / (math.pi * 0.060**3), rel=2e-3)


def test_a_shaft_that_states_no_torque_is_judged_by_its_cams(design: DesignFolder) -> None:
    shafted(design, "1 N·m", "")
    shaft = (design.root / "shaft.toml").read_text(encoding="utf-8").replace('torque = "1 N·m"\n', STRONG)
    (design.root / "shaft.toml").write_text(shaft, encoding="utf-8")
    assert in_shear(design) == pytest.approx(16 * RUNNING / (math.pi * 0.060**3), rel=2e-3)


@pytest.mark.parametrize(
    ("width", "ends"),
    [
        ("18 mm", FINE),
        ("18.0097 mm", FINE),
        ("18.0103 mm", WRONG),
        ("17.9903 mm", FINE),
        ("17.9897 mm", WRONG),
        ("16 mm", WRONG),
    ],
)
def test_one_key_sits_in_shaft_and_cam(
    design: DesignFolder, width: str, ends: tuple[str, Grade | None]
) -> None:
    """The keyway of the shaft is 18 mm wide: two drawings differ by at most 0.01 mm."""
    shafted(design, "600 N·m", "")
    for name, text in (("shaft", STRONG), ("cam-0", f'keyway_width = "{width}"\n')):
        path = design.root / f"{name}.toml"
        path.write_text(path.read_text(encoding="utf-8") + text, encoding="utf-8")
    check = design.only(KEY)
    assert (check.outcome, check.grade) == ends
    if width == "16 mm":
        assert check.says.startswith("keyway width 18 mm (shaft.toml")


WITHIN = 'keyway_width = "18 mm"\nkeyway_depth = "{0}"\n{1}'
HIGH = 'key_height = "11 mm"\n'


@pytest.mark.parametrize(
    ("depth", "height", "ends"),
    [
        ("4.4 mm", "", FINE),
        ("4.11 mm", "", FINE),
        ("4.09 mm", "", ASKED),
        ("4 mm", HIGH, WRONG),
        ("4.11 mm", HIGH, FINE),
        ("4.09 mm", HIGH, WRONG),
        ("5.19 mm", HIGH, FINE),
        ("5.21 mm", HIGH, WRONG),
        ("5.21 mm", "", ASKED),
        ("4.4 mm", 'key_height = "11.24 mm"\n', FINE),
        ("4.5 mm", 'key_height = "11.26 mm"\n', ASKED),  # 11 mm by the standard, and 0.25 mm
        ("4.4 mm", 'key_height = "10.74 mm"\n', ASKED),
        ("7.2 mm", 'key_height = "13.9 mm"\n', ASKED),  # half of it are 6.95 mm
        ("7.3 mm", 'key_height = "14.1 mm"\n', WRONG),  # half of it are 7.05 mm, and the shaft is 7 mm deep
    ],
)
def test_a_key_has_room_over_it_and_half_of_it_in_the_shaft(
    design: DesignFolder, depth: str, height: str, ends: tuple[str, Grade | None]
) -> None:
    """A key of 18 mm is 11 mm high, of which 7 lie in the shaft: 4.1 to 5.2 mm in the cam leave 0.1 to 1.2 mm."""
    shafted(design, "600 N·m", "")
    for name, text in (("shaft", STRONG), ("cam-0", WITHIN.format(depth, height))):
        path = design.root / f"{name}.toml"
        path.write_text(path.read_text(encoding="utf-8") + text, encoding="utf-8")
    check = design.only("shaft.key-deep-in-both")
    assert (check.outcome, check.grade) == ends


def test_of_a_width_that_is_not_listed_the_height_is_asked(design: DesignFolder) -> None:
    shafted(design, "600 N·m", "")
    cam = WITHIN.format("4.4 mm", "").replace("18", "17")
    for name, text in (("shaft", STRONG), ("cam-0", cam)):
        path = design.root / f"{name}.toml"
        path.write_text(path.read_text(encoding="utf-8") + text, encoding="utf-8")
    check = design.only("shaft.key-deep-in-both")
    assert check.outcome == "not assessed"
    assert "key_height is to state how high it is" in check.says


def test_keys_of_the_standard_lie_deeper_than_half() -> None:
    """ISO 773, recalled: with its depths in shaft and hub a key has 0.2 to 0.4 mm of room over it."""
    for width, height, in_shaft, in_hub in (
        (5, 5, 3.0, 2.3),
        (8, 7, 4.0, 3.3),
        (14, 9, 5.5, 3.8),
        (18, 11, 7.0, 4.4),
        (25, 14, 9.0, 5.4),
        (36, 20, 12.0, 8.4),
        (50, 28, 17.0, 11.4),
        (90, 45, 28.0, 17.4),
    ):
        found = height_of_parallel_key(width / 1e3).nominal
        assert found == pytest.approx(height / 1e3)
        assert in_shaft >= height / 2
        assert 0.2 <= room_over_key(t_1=in_shaft, t_2=in_hub, h=height) + 1e-9 <= 0.4 + 2e-9


def test_of_a_keyway_without_a_depth_nothing_is_said(design: DesignFolder) -> None:
    shafted(design, "600 N·m", "")
    for name, text in (("shaft", STRONG), ("cam-0", 'keyway_width = "18 mm"\n')):
        path = design.root / f"{name}.toml"
        path.write_text(path.read_text(encoding="utf-8") + text, encoding="utf-8")
    check = design.only("shaft.key-deep-in-both")
    assert check.outcome == "not assessed"
    assert "keyway_depth is not stated" in check.says


def test_a_cam_that_is_not_keyed_has_no_key(design: DesignFolder) -> None:
    check = shafted(design, "600 N·m", "").only("shaft.key-deep-in-both")
    assert (check.outcome, check.grade) == SILENT


def test_a_cam_that_is_not_keyed_is_not_asked_for_a_keyway(design: DesignFolder) -> None:
    check = shafted(design, "600 N·m", "").only(KEY)
    assert (check.outcome, check.grade) == SILENT
