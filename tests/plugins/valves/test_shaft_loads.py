"""shaft.bends-under-its-cams, shaft.bearing-load, and the bending moment that shaft.torsion takes."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, found, limit, on_sheet
from tests.plugins.valves.test_shafts import GEAR, HOLDS, RUNNING as TURNED, shafted

BENDS, LOAD, TORSION = "shaft.bends-under-its-cams", "shaft.bearing-load", "shaft.torsion"
FINE, WRONG, ASKED = ("conforms", None), ("finding", Grade.NONCONFORMITY), ("finding", Grade.QUERY)
SILENT = ("not applicable", None)
Ends = tuple[str, "Grade | None"]
#: What is added to a shaft with a torque: two bearings 300 mm apart, and a coupling that only turns it.
LINE = """greatest_diameter = "60 mm"
drive = { by = "coupling" }
bearings.near = { at = "100 mm", length = "40 mm", rated_load = "10 kN" }
bearings.far = { at = "400 mm", length = "40 mm", rated_load = "10 kN" }
"""
#: What turns it by 300 N·m, 60 mm beyond the far bearing: a chain by 3000 N at a radius of 100 mm.
CHAIN = 'drive = { by = "chain", at = "460 mm", radius = "100 mm" }\n'


def _pressing(steam: float, rpm: float) -> float:
    """The load of the cam as it has taken up its clearance, N, worked by hand.

    Harmonic lift s = 10 (1 − cos π x) mm over β = 70°, above a ramp of 1 µm, and 0.4 mm of clearance: cos u = 1 −
    0.399/10. Springs 1100 N, friction 10 N, weight 6 × 9.80665 N; moving mass 4.5 + 1.5 + 0.9/3 + 0.8 = 7.1 kg. Past it
    the springs gain 40 N/mm, the acceleration loses more; steam lets go 0.4 mm of lift later.
    """
    a = 0.010 * (math.pi / math.radians(70)) ** 2 * (1 - 0.0399) * (rpm * 2 * math.pi / 60) ** 2
    return 1100 + steam + 7.1 * a + 10 + 6 * 9.80665


RUNNING = _pressing(HOLDS, 360)


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


def placed(
    design: DesignFolder, *places: str, phases: tuple[str, ...] = (), line: str = LINE, **changes: str
) -> DesignFolder:
    """Cams at places along a shaft, each with a train of its own, some keys of the shaft changed or added."""
    shafted(design, "300 N·m", *(phases or ("",) * len(places)))
    for number, place in enumerate(places):
        at = f'at = "{place}"\n' if place else ""
        _change(design, f"cam-{number}.toml", ('at = "100 mm"\n', at))
    shaft = design.root / "shaft.toml"
    more = "".join(f'{key} = "{value}"\n' for key, value in changes.items())
    shaft.write_text(shaft.read_text(encoding="utf-8") + more + line, encoding="utf-8")
    return design


def _change(design: DesignFolder, name: str, *changes: tuple[str, str]) -> None:
    path = design.root / name
    path.write_text(changed(path.read_text(encoding="utf-8"), *changes), encoding="utf-8")


@pytest.mark.parametrize(("share", "ends"), [(1.005, FINE), (0.995, WRONG)])
@pytest.mark.parametrize(
    ("place", "arm"),
    [
        ("250 mm", 0.075),  # in the middle of 300 mm: F L/4
        ("200 mm", 0.2 / 3),  # 100 × 200/300
        ("40 mm", 0.060),  # 60 mm beyond the near bearing
        ("430 mm", 0.030),
    ],
)
def test_a_cam_bends_its_shaft(
    design: DesignFolder, place: str, arm: float, share: float, ends: Ends
) -> None:
    check = placed(design, place, bending_moment=f"{RUNNING * arm * share:.4f} N·m").only(BENDS)
    assert (check.outcome, check.grade) == ends
    assert limit(check) == pytest.approx(RUNNING * arm, rel=2e-3)


@pytest.mark.parametrize(
    ("phases", "arms"),
    [
        (
            ("0 °", "0 °"),
            (0.2 / 3, 0.1 / 3),
        ),  # under the first: 100 × 200/300, and 100 × 100/300 by the second
        (("", ""), (0.2 / 3, 0.1 / 3)),
        (("0 °", ""), (0.2 / 3, 0.1 / 3)),
        (("20 °", "200 °"), (0.2 / 3, 0.0)),
    ],
)
def test_cams_press_together_or_one_after_the_other(
    design: DesignFolder, phases: tuple[str, ...], arms: tuple[float, float]
) -> None:
    """At 200 and 300 mm of bearings at 100 and 400 mm: 2/3 and 1/3 of each load, over 100 mm."""
    check = placed(design, "200 mm", "300 mm", phases=phases, bending_moment="5 kN·m").only(BENDS)
    assert limit(check) == pytest.approx(RUNNING * sum(arms), rel=2e-3)


def test_loads_on_either_side_of_a_bearing_are_added_without_their_sign(design: DesignFolder) -> None:
    """60 mm beyond the near bearing, and in the middle: tappets may push from either side.

    In the middle F L/4 and half of F × 60 mm; over the bearing F × 60 mm alone.
    """
    check = placed(design, "40 mm", "250 mm", bending_moment="5 kN·m").only(BENDS)
    assert limit(check) == pytest.approx(RUNNING * (0.075 + 0.030), rel=2e-3)


@pytest.mark.parametrize(
    ("drive", "moment"),
    [
        ("chain", 3000 * 0.060),
        ("gear wheel", 1.25 * 3000 * 0.060),
        ("cranks and rods", math.sqrt(2) * 3000 * 0.060),
    ],
)
def test_the_drive_bends_the_shaft_beyond_its_bearing(
    design: DesignFolder, drive: str, moment: float
) -> None:
    """300 N·m at 100 mm are 3000 N, 60 mm beyond the far bearing; the cam stands over the near one."""
    line = changed(LINE, ('drive = { by = "coupling" }\n', CHAIN.replace("chain", drive)))
    check = placed(design, "100 mm", line=line, bending_moment="5 kN·m").only(BENDS)
    assert limit(check) == pytest.approx(moment, rel=1e-6)


def test_a_drive_between_the_bearings_bends_most_under_itself(design: DesignFolder) -> None:
    """3000 N in the middle of 300 mm: 225 N·m."""
    line = changed(LINE, ('drive = { by = "coupling" }\n', CHAIN.replace("460 mm", "250 mm")))
    check = placed(design, "100 mm", line=line, bending_moment="5 kN·m").only(BENDS)
    assert limit(check) == pytest.approx(225.0, rel=1e-6)


def test_without_their_angles_cams_press_hardest_at_once_whatever_their_ramps(design: DesignFolder) -> None:
    """The second takes up its clearance 40° later, when the springs alone are left to press on the first."""
    placed(design, "200 mm", "300 mm", bending_moment="5 kN·m")
    _change(design, "cam-1.toml", ('ramp_angle = "20 °"', 'ramp_angle = "60 °"'))
    assert limit(design.only(BENDS)) == pytest.approx(RUNNING * 0.3 / 3, rel=2e-3)


def test_without_a_gear_a_cam_turns_forward(design: DesignFolder) -> None:
    """By its rise, in 70°: backward it would open by what is its fall, in 100°."""
    placed(design, "250 mm", bending_moment="5 kN·m")
    _change(design, "cam-0.toml", ('fall_angle = "70 °"', 'fall_angle = "100 °"'))
    assert limit(design.only(BENDS)) == pytest.approx(RUNNING * 0.075, rel=2e-3)


def test_of_two_cams_that_which_is_past_its_blow_is_worked_by_its_lift(design: DesignFolder) -> None:
    """20° later: as the second is struck by 6456 N (see the blow, below) the first has no blow left.

    It is 6.31 + 20° up its rise of 70°, cos 67.66° = 0.3801: the valve is 6.2 − 0.4 mm open, the springs have 1332 N,
    steam has let go, and 7.1 kg at 35.71 m/s² are 253.5 N. As the first is struck the second has not begun.
    """
    placed(design, "250 mm", "250 mm", phases=("0 °", "20 °"), bending_moment="5 kN·m")
    for number in (0, 1):
        stiff = ('train_stiffness = "0.001 N/mm"', 'train_stiffness = "90000 N/mm"')
        _change(design, f"spindle-{number}.toml", stiff)
    check = design.only(BENDS)
    symbols = {step.symbol for step in check.steps}
    assert {"F of cam-0", "F of cam-1"} & symbols == {"F of cam-0"}
    weight = 10 + 6 * 9.80665
    struck, past = 6456 + 1100 + HOLDS + weight, 1332 + 253.5 + weight
    assert limit(check) == pytest.approx((struck + past) * 0.075, rel=5e-4)


def with_gear(design: DesignFolder, *notches: str) -> DesignFolder:
    """A gear of these notches, and the bore in which it works."""
    block = (design.root / "block.toml").read_text(encoding="utf-8")
    of_gear = 'kind = "valve-gear"\nin_block = "block"\ncylinder_bore = "main"\n'
    bored = f'{block}\n[bores.main]\ndiameter = "520 mm"\n'
    for name, text in {"gear.toml": of_gear + "".join(notches), "block.toml": bored}.items():
        (design.root / name).write_text(text, encoding="utf-8")
    return design


def _notch(name: str, **cams: int) -> str:
    valves = "".join(
        f'{valve} = {{ cam = "cam-{number}", foot = "10 °" }}\n' for valve, number in cams.items()
    )
    return f'[notches.{name}]\ndirection = "forward"\n{valves}'


#: Of four cams two turn on another shaft. Both others at the front press together, one at each end half a turn apart.
TOGETHER = _notch("together", inlet_front=0, exhaust_front=1, inlet_back=2, exhaust_back=3)
APART = _notch("apart", inlet_front=0, exhaust_front=2, inlet_back=1, exhaust_back=3)


@pytest.mark.parametrize(
    ("notches", "arm", "named"),
    [
        ((APART,), 0.075, "apart"),
        ((TOGETHER,), 0.150, "together"),
        ((TOGETHER, APART), 0.150, "together"),
        ((APART, TOGETHER), 0.150, "together"),
    ],
)
def test_the_worst_notch_bends_a_shaft_and_loads_its_bearings(
    design: DesignFolder, notches: tuple[str, ...], arm: float, named: str
) -> None:
    """In the middle of 300 mm each cam bends it by F L/4, and each bearing takes half of its load."""
    with_gear(placed(design, *["250 mm"] * 4, bending_moment="1 N·m"), *notches)
    for number in (2, 3):
        _change(design, f"cam-{number}.toml", ('turns_on = "shaft"\n', ""))
    check = design.only(BENDS)
    assert (check.outcome, check.grade) == WRONG
    assert limit(check) == pytest.approx(RUNNING * arm, rel=2e-3)
    assert check.judgement is not None
    assert check.judgement.of == f"notch {named}"
    loads = design.only(LOAD)
    for bearing in ("near", "far"):
        assert on_sheet(loads, f"R {bearing}") == pytest.approx(RUNNING * arm / 0.150, rel=2e-3)


def test_each_place_of_which_a_moment_is_worked_is_named_once(design: DesignFolder) -> None:
    """Also of a cam that the gear names at both ends."""
    gear = GEAR.format(way="forward", foot=10, third="cam-1").partition("[")[2]
    with_gear(placed(design, "250 mm", "430 mm", bending_moment="1 N·m"), f"[{gear}")
    says = design.only(BENDS).says
    for place in (
        "at, bearings near 100 mm",
        "at, bearings far 400 mm",
        "at of cam-0 250 mm",
        "at of cam-1 430 mm",
    ):
        assert says.count(place) == 1


def test_a_shaft_without_a_gear_names_no_notch(design: DesignFolder) -> None:
    check = placed(design, "250 mm", bending_moment="1 N·m").only(BENDS)
    assert (check.outcome, check.grade) == WRONG
    assert "notch" not in check.says
    assert check.judgement is not None
    assert "notch" not in check.judgement.of


THIRD = 'bearings.third = { at = "700 mm", length = "40 mm", rated_load = "10 kN" }\n'


def test_three_bearings_in_line(design: DesignFolder) -> None:
    """Spans of 300 mm, the load in the middle of the first: 13/64 F L under it, shares 13/32, 11/16 and −3/32."""
    placed(design, "250 mm", line=LINE + THIRD, bending_moment="5 kN·m")
    assert limit(design.only(BENDS)) == pytest.approx(RUNNING * 0.300 * 13 / 64, rel=2e-3)
    check = design.only(LOAD)
    found_ = {name: on_sheet(check, f"R {name}") for name in ("near", "far", "third")}
    shares = {"near": 13 / 32, "far": 11 / 16, "third": 3 / 32}
    assert found_ == pytest.approx({name: RUNNING * one for name, one in shares.items()}, rel=2e-3)


def test_a_roller_presses_square_to_its_track(design: DesignFolder) -> None:
    """At 0.4 mm the tappet rises by 7.191 mm/rad, over a circle of 60 + 40 + 0.4 mm: 0.25 % more than along it."""
    placed(design, "250 mm", bending_moment="5 kN·m")
    along = limit(design.only(BENDS))
    foot = ('follower = "flat foot"\n', 'follower = "roller"\nfollower_radius = "40 mm"\n')
    _change(design, "tappet-0.toml", foot)
    slope = 0.010 * math.pi / math.radians(70) * math.sqrt(1 - 0.9601**2)
    assert limit(design.only(BENDS)) == pytest.approx(along * math.hypot(1, slope / 0.1004), rel=8e-4)


def test_the_blow_as_the_clearance_is_taken_up(design: DesignFolder) -> None:
    """90 kN/mm and 6.3 kg at 7.191 mm/rad × 37.70 rad/s = 0.2711 m/s: 6456 N; held by 1100 + HOLDS + 68.84 N."""
    placed(design, "250 mm", bending_moment="5 kN·m")
    _change(design, "spindle-0.toml", ('train_stiffness = "0.001 N/mm"', 'train_stiffness = "90000 N/mm"'))
    slope = 0.010 * math.pi / math.radians(70) * math.sqrt(1 - 0.9601**2)
    struck = slope * 360 * math.pi / 30 * math.sqrt(90e6 * 6.3) + 1100 + HOLDS + 10 + 6 * 9.80665
    assert limit(design.only(BENDS)) == pytest.approx(struck * 0.075, rel=1e-4)


def test_a_stiffness_that_is_not_stated_is_the_greatest_by_the_spindle(design: DesignFolder) -> None:
    """Half of 210 GPa × π/4 × 22²/400 mm = 99.78 kN/mm."""
    placed(design, "250 mm", bending_moment="5 kN·m")
    _change(design, "spindle-0.toml", ('train_stiffness = "0.001 N/mm"\n', ""))
    check = design.only(BENDS)
    E = on_sheet(check, "E_s")
    assert on_sheet(check, "k") == pytest.approx(0.5 * E * math.pi / 4 * 0.022**2 / 0.4)


@pytest.mark.parametrize(("rated", "ends"), [(1.005, FINE), (0.995, WRONG)])
@pytest.mark.parametrize(("name", "share"), [("near", 2 / 3), ("far", 1 / 3)])
def test_bearings_are_rated_for_their_load(
    design: DesignFolder, name: str, share: float, rated: float, ends: Ends
) -> None:
    """At 200 mm of bearings at 100 and 400 mm."""
    line = changed(LINE, (_rated(name, "10 kN"), _rated(name, f"{RUNNING * share * rated:.2f} N")))
    check = placed(design, "200 mm", line=line).only(LOAD)
    assert (check.outcome, check.grade) == ends
    if ends == WRONG:
        assert found(check) == pytest.approx(RUNNING * share, rel=2e-3)
        assert check.actual.startswith(f"bearing {name} loaded with")


def _rated(name: str, load: str, more: str = "") -> str:
    at = {"near": 100, "far": 400}[name]
    return f'bearings.{name} = {{ at = "{at} mm", length = "40 mm", rated_load = "{load}"{more} }}'


@pytest.mark.parametrize(
    ("more", "rated", "ends"),
    [
        ("", "59.9 kN", FINE),
        ("", "60.1 kN", ASKED),
        (', runs_in = "bush"', "60.1 kN", ASKED),
        (', runs_in = "rolling bearing"', "60.1 kN", FINE),
        (', runs_in = "rolling bearing"', "497 kN", FINE),
        (', runs_in = "rolling bearing"', "498 kN", WRONG),
    ],
)
def test_a_bearing_is_rated_for_no_more_than_its_size_bears(
    design: DesignFolder, more: str, rated: str, ends: Ends
) -> None:
    """A bush: 25 MPa × 60 × 40 mm = 60 kN. Rollers: 44 MPa × π × 1.5 × 60 × 40 mm = 497.63 kN."""
    line = changed(LINE, (_rated("far", "10 kN"), _rated("far", rated, more)))
    check = placed(design, "200 mm", line=line).only(LOAD)
    assert (check.outcome, check.grade) == ends
    if ends == ASKED:
        assert check.actual == (
            "bearing far rated for 25.04 MPa, more than 25 MPa of a bush, and not said to be a rolling bearing"
        )
    if ends == WRONG:
        assert check.actual == "bearing far rated for 498 kN, rollers all round it bear 497.6 kN"


@pytest.mark.parametrize(("diameter", "ends"), [("50.1 mm", FINE), ("49.9 mm", ASKED)])
def test_a_shaft_without_a_collar_is_as_thick_in_its_bearings(
    design: DesignFolder, diameter: str, ends: Ends
) -> None:
    """50 kN/(25 MPa × 40 mm) = 50 mm."""
    rated = _rated("far", "10 kN"), _rated("far", "50 kN")
    line = changed(LINE, ('greatest_diameter = "60 mm"', f'diameter = "{diameter}"'), rated)
    check = placed(design, "200 mm", line=line).only(LOAD)
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(
    ("old", "says"),
    [
        ('greatest_diameter = "60 mm"\n', "diameter is not stated"),
        (', length = "40 mm"', "length is not stated"),
    ],
)
def test_the_size_of_a_bearing_is_asked_for(design: DesignFolder, old: str, says: str) -> None:
    check = placed(design, "200 mm", line=LINE.replace(old, "", 1)).only(LOAD)
    assert check.outcome == "not assessed"
    assert says in check.says


def test_the_drive_loads_the_bearings_too(design: DesignFolder) -> None:
    """3000 N 60 mm beyond the far bearing: 1.2 of it there and 0.2 on the other, the cam over the near one."""
    line = changed(LINE, ('drive = { by = "coupling" }\n', CHAIN))
    check = placed(design, "100 mm", line=line).only(LOAD)
    assert on_sheet(check, "R far") == pytest.approx(3600.0)
    assert on_sheet(check, "R near") == pytest.approx(RUNNING + 600.0, rel=2e-3)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('rated_load = "10 kN" }\n', "}\n", "rated_load is not stated"),
        ('at = "100 mm", length', "length", "at is not stated"),
        ('drive = { by = "coupling" }\n', "", "drive.by is not stated"),
        ('by = "coupling"', 'by = "chain", at = "1 mm"', "radius is not stated"),
        ('by = "coupling"', 'by = "chain", radius = "90 mm"', "at is not stated"),
    ],
)
def test_what_a_bearing_load_rests_on_is_asked_for(
    design: DesignFolder, old: str, new: str, says: str
) -> None:
    assert old in LINE
    check = placed(design, "200 mm", line=LINE.replace(old, new, 1).replace(", }", " }")).only(LOAD)
    assert check.outcome == "not assessed"
    assert says in check.says


@pytest.mark.parametrize("rule", [LOAD, TORSION, BENDS])
def test_one_bearing_is_not_enough(design: DesignFolder, rule: str) -> None:
    line = changed(LINE, (_rated("far", "10 kN") + "\n", ""))
    check = placed(design, "200 mm", line=line, bending_moment="1 N·m").only(rule)
    assert check.outcome == "not assessed"
    assert (
        'states 1 of the two or more bearings that carry it: write each, as in [bearings] front.at = "50 mm"'
        in (check.says)
    )


@pytest.mark.parametrize("rule", [LOAD, TORSION, BENDS])
def test_two_bearings_at_one_place_hold_no_shaft(design: DesignFolder, rule: str) -> None:
    line = changed(LINE, ('far = { at = "400 mm"', 'far = { at = "100 mm"'))
    check = placed(design, "200 mm", line=line, bending_moment="1 N·m").only(rule)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert "two bearings of shaft stand at one place" in check.says


@pytest.mark.parametrize("rule", [LOAD, TORSION, BENDS])
def test_a_cam_must_say_where_it_stands(design: DesignFolder, rule: str) -> None:
    check = placed(design, "", bending_moment="1 N·m").only(rule)
    assert check.outcome == "not assessed"
    assert "at is not stated" in check.says


@pytest.mark.parametrize("line", [LINE, ""])
def test_a_shaft_without_cams_carries_none(design: DesignFolder, line: str) -> None:
    placed(design, line=line, bending_moment="1 N·m")
    for rule in (LOAD, BENDS):
        check = design.only(rule)
        assert (check.outcome, check.grade) == SILENT


@pytest.mark.parametrize("line", [LINE, ""])
def test_a_moment_that_is_not_stated_agrees_with_all(design: DesignFolder, line: str) -> None:
    check = placed(design, "250 mm", line=line).only(BENDS)
    assert (check.outcome, check.grade) == SILENT


STEEL = """material = "forging-42CrMo4"
diameter = "60 mm"
keyway_width = "0 mm"
keyway_depth = "0 mm"
"""


@pytest.mark.parametrize(("stated", "taken"), [("", 1.0), ("1 N·m", 1.0), ("1.5", 1.5)])
def test_a_shaft_is_bent_by_the_greater_of_stated_and_worked(
    design: DesignFolder, stated: str, taken: float
) -> None:
    """τ = 16 √((1.5 M)² + T²)/(π d³), 300 N·m stated and asked for less."""
    M = RUNNING * 0.075
    said = f"{M * 1.5:.4f} N·m" if stated == "1.5" else stated
    more = f'bending_moment = "{said}"\n' if said else ""
    check = placed(design, "250 mm", line=STEEL + more + LINE).only(TORSION)
    shear = 16 * math.hypot(1.5 * M * taken, on_sheet(check, "T")) / (math.pi * 0.060**3)
    assert on_sheet(check, "τ") == pytest.approx(shear, rel=2e-3)
    assert on_sheet(check, "T") == pytest.approx(300.0)


def test_a_shaft_without_cams_is_bent_as_stated(design: DesignFolder) -> None:
    """τ = 16 √((1.5 × 200)² + 300²)/(π 60³) = 10.00 MPa."""
    check = placed(design, line=STEEL + 'bending_moment = "200 N·m"\n').only(TORSION)
    assert on_sheet(check, "τ") == pytest.approx(16 * math.hypot(300, 300) / (math.pi * 0.060**3))


@pytest.mark.parametrize("torque", ["1 N·m", "30 N·m", "300 N·m"])
def test_the_drive_pushes_with_the_greater_of_the_torque_stated_and_that_of_its_cams(
    design: DesignFolder, torque: str
) -> None:
    """A chain at 100 mm, 60 mm beyond the bearing: the cam needs the torque of test_shafts, whatever less is stated."""
    line = changed(LINE, ('drive = { by = "coupling" }\n', CHAIN))
    placed(design, "100 mm", line=line, bending_moment="5 kN·m")
    _change(design, "shaft.toml", ('torque = "300 N·m"', f'torque = "{torque}"'))
    check = design.only(BENDS)
    taken = max(float(torque.split()[0]), TURNED)
    assert on_sheet(check, "F_d") == pytest.approx(taken / 0.100, rel=2e-3)
    assert limit(check) == pytest.approx(taken / 0.100 * 0.060, rel=2e-3)
