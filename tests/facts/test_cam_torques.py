"""What cams ask of their shaft: of a cam of 20 mm by a 3-4-5 polynomial on ramps of 1 mm, each load by hand."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.errors import replace
from speclint.facts import WholeLift, cams_on, train_of_cam
from speclint.facts.cam_torques import (
    CRACKED,
    load_of_steam,
    loads_of_springs,
    turning,
    weight_that_shuts,
)
from speclint.facts.turning_cams import Turning, angle_of_greatest
from speclint.handbook.cams import CamProfile, Flank, Ramp, cam_law
from tests.facts.bench import Bench, bench

TURN = 2 * math.pi
FLANK = Flank(cam_law("3-4-5 polynomial"), 0.020, 1.2, Ramp(0.001, 0.3))
PROFILE = WholeLift(CamProfile(FLANK, 0.2, FLANK))
ONE = Turning(
    name="cam",
    cam=PROFILE,
    i=1.5,
    c=0.0005,
    ω=30.0,
    springs=(1000.0, 40e3),
    steam=3000.0,
    cracked=0.0006,
    friction=20.0,
    weight=50.0,
    m=7.0,
    phase=1.0,
    taken_up=0.15,
    struck=0.0,
)
#: 0.5 mm of the ramp, 1 mm in 0.3 rad, lie at 0.15 rad; then it is struck by 9 kN.
STRUCK = replace(ONE, struck=9000.0)


@pytest.mark.parametrize(
    ("θ", "angle"),
    [
        (1.0, 0.0),
        (1.9, 0.9),
        (1.9 + TURN, 0.9),
        (0.9, PROFILE.duration),
        (1.0 + 3.2, PROFILE.duration),
    ],
)
def test_a_cam_stands_at_its_place_on_the_shaft(θ: float, angle: float) -> None:
    """Its lift takes 0.3 + 1.2 + 0.2 + 1.2 + 0.3 rad: on the base circle the follower is at the end of it."""
    assert PROFILE.duration == pytest.approx(3.2)
    at, there = ONE.follower(θ), PROFILE.at(angle)
    assert (at.lift, at.slope) == pytest.approx((there.lift, there.slope), abs=1e-12)


def test_the_load_of_a_cam_that_rises() -> None:
    """Half way up: the valve lifts by 1.5 times what is left of the tappet's lift beyond 0.5 mm, and κ ω² of it."""
    at = ONE.follower(1.7)
    assert at.curvature > 0
    found = ONE.load(1.7, at)
    spring = 1000 + 40e3 * 1.5 * (at.lift - 0.0005)
    a = 1.5 * at.curvature * 30**2
    assert (found["F_f"], found["a"]) == pytest.approx((spring, a))
    assert (found["F_st"], found["F_r"], found["W"], found["m"], found["i"]) == (0.0, 20.0, 50.0, 7.0, 1.5)
    assert ONE.torque(1.7) == pytest.approx(1.5 * (spring + 7 * a + 20 + 50) * at.slope)


def test_steam_holds_a_valve_until_it_is_cracked_and_not_as_it_falls() -> None:
    """On the ramp, 0.6 mm of it: 1.5 × 0.1 = 0.15 mm at the valve; 0.6 mm of the valve's lift are 0.9 mm."""
    rising = ONE.follower(1.0 + 0.18)
    assert rising.lift == pytest.approx(0.0006)
    assert ONE.load(1.18, rising)["F_st"] == 3000.0
    cracked = replace(ONE, cracked=0.00014)
    assert cracked.load(1.18, rising)["F_st"] == 0.0
    falling = 1.0 + 3.2 - 0.18
    assert ONE.follower(falling).lift == pytest.approx(0.0006)
    assert ONE.load(falling, ONE.follower(falling))["F_st"] == 0.0


def test_a_tappet_bears_beyond_its_clearance() -> None:
    """0.5 mm of the ramp lie at 0.15 rad."""
    assert not ONE.bears(ONE.follower(1.0 + 0.14))
    assert ONE.bears(ONE.follower(1.0 + 0.16))
    assert not replace(ONE, c=0.021).bears(ONE.follower(1.0 + 1.6))
    assert ONE.torque(1.0 + 0.14) == 0.0
    assert ONE.torque(1.0 + 0.16) == pytest.approx(
        1.5 * (1000 + 40e3 * 1.5 * (0.16 / 0.3 * 1e-3 - 5e-4) + 3070) * 1e-3 / 0.3
    )


def test_a_load_below_nothing_turns_no_shaft() -> None:
    light = replace(ONE, springs=(0.0, 0.0), steam=0.0, friction=0.0, weight=-500.0)
    assert light.torque(1.9) == 0.0
    assert light.torque(1.0 + 2.3) == 0.0
    assert ONE.torque(1.0 + 2.3) < 0  # the springs drive the cam as it falls


def test_the_angle_of_the_greatest_torque_of_all_together() -> None:
    """Two cams half a turn apart, of which only one bears at a time: the greatest is that of either alone."""
    alone = angle_of_greatest((ONE,)).nominal % TURN
    both = angle_of_greatest((ONE, replace(ONE, phase=1.0 + math.pi))).nominal % math.pi
    assert both == pytest.approx(alone % math.pi, abs=TURN / 720)
    finer = max((ONE.torque(TURN * step / 7200), TURN * step / 7200) for step in range(7200))
    assert ONE.torque(alone) >= finer[0] - 1e-9


@pytest.mark.parametrize("θ", [1.15, 1.15 + TURN, 1.15 - TURN, 1.15 + 0.99e-9, 1.15 - 0.99e-9])
def test_the_blow_falls_where_the_clearance_is_taken_up(θ: float) -> None:
    """9000 N on a ramp of 1 mm in 0.3 rad: 30 N·m."""
    assert STRUCK.struck_at == pytest.approx(1.15)
    assert STRUCK.strikes(θ)
    assert STRUCK.along(θ, STRUCK.follower(θ)) == 9000.0
    assert STRUCK.torque(θ) == pytest.approx(30.0)


@pytest.mark.parametrize("θ", [1.15 + 1.01e-9, 1.15 - 1.01e-9, 1.15 + math.pi])
def test_elsewhere_nothing_strikes(θ: float) -> None:
    assert not STRUCK.strikes(θ)
    assert STRUCK.along(θ, STRUCK.follower(θ)) < 9000.0
    assert STRUCK.torque(θ) == ONE.torque(θ)


def test_a_blow_that_is_less_than_the_load_counts_for_nothing() -> None:
    at = STRUCK.struck_at + 5e-10  # within what is one angle: the tappet bears already
    borne = ONE.load(at, ONE.follower(at))
    load = 1.5 * sum(borne[key] for key in ("F_f", "F_st", "F_r", "W"))
    light = replace(ONE, struck=10.0)
    assert light.along(at, light.follower(at)) == pytest.approx(load)


def test_the_greatest_torque_may_be_that_of_a_blow() -> None:
    """ONE needs some 50 N·m at most; a blow of 90 kN on the ramp 300, and of 2 kN less than what it needs later."""
    alone = angle_of_greatest((ONE,)).nominal
    assert 10 < ONE.torque(alone) < 200
    heavy = replace(ONE, struck=90e3)
    assert angle_of_greatest((heavy,)).nominal == pytest.approx(1.15)
    assert heavy.torque(1.15) == pytest.approx(300.0)
    assert angle_of_greatest((replace(ONE, struck=2e3),)).nominal == pytest.approx(alone)


VALVE = """lift = "20 mm"
mass = "4.5 kg"
opens = "{opens}"
beats = {beats}
supply_acts = "{acts} the beats"
upper_beat.seat_diameter = "150 mm"
lower_beat.seat_diameter = "140 mm"
"""
SPINDLE = """moves = "valve"
mass = "1.5 kg"
seal_diameter = "20 mm"
leaves = "{leaves}"
pushed = "{pushed}"
friction = "15..20 N"
train_stiffness = "90 kN/mm"
"""
SPRING = 'closes = "valve"\nshut_load = "1000 N ±50"\nmass = "0.6 kg"\n'
CAM = """lifts = "tappet"
turns_on = "shaft"
law = "3-4-5 polynomial"
lift = "20 mm"
ramp_height = "1 mm"
ramp_angle = "10 °"
rise_angle = "60 °"
dwell_angle = "10 °"
fall_angle = "60 °"
"""
DUTY = """[cases.running]
live_pressure = "16 bar gauge"
exhaust_pressure = "1 bar gauge"
rotational_speed = "300 rev/min"
"""


def drawn(
    folder: Path,
    acts: str = "between",
    beats: int = 2,
    leaves: str = "supply",
    pushed: str = "shut",
    opens: str = "upwards",
    spring: str = SPRING + 'rate = "40 N/mm"\n',
    **more: str,
) -> Bench:
    files = {
        "duty duty": DUTY,
        "cylinder-block block": "[seat_bores.s]\n",
        "valve-seat seat": 'pressed_into = "block"\nin_bore = "s"\n',
        "poppet-valve valve": VALVE.format(acts=acts, beats=beats, opens=opens)
        + 'upper_beat.seat = "seat"\n',
        "valve-spindle spindle": SPINDLE.format(leaves=leaves, pushed=pushed),
        "compression-spring spring": spring,
        "tappet tappet": 'works = "spindle"\nmass = "0.5 kg"\nclearance = "0.5 mm ±0.1"\n',
        "shaft shaft": 'duty = "duty"\ntorque = "{}"\n'.format(more.pop("torque", "1 N·m")),
        "cam cam": CAM,
    }
    return bench(folder, files | {f"cam {name}": text for name, text in more.items()}, "shaft", metals=True)


def upper(p: float) -> float:
    return p * math.pi / 4 * 0.15**2


def ring(p: float) -> float:
    return p * math.pi / 4 * (0.15**2 - 0.14**2)


END = math.pi / 4 * 0.02**2


@pytest.mark.parametrize(
    ("acts", "beats", "leaves", "pushed", "load"),
    [
        ("beyond", 2, "supply", "shut", ring(15e5) + 16e5 * END),
        ("beyond", 2, "supply", "open", ring(15e5) - 16e5 * END),
        ("beyond", 2, "delivery", "shut", None),
        ("between", 2, "supply", "shut", 0.0),  # it lifts by more than the spindle presses
        ("beyond", 1, "supply", "open", upper(15e5) - 16e5 * END),
    ],
)
def test_steam_holds_a_valve_shut(
    tmp_path: Path, acts: str, beats: int, leaves: str, pushed: str, load: float | None
) -> None:
    """15 bar on the ring between circles of 150 and 140 mm, and 16 bar on the end of a spindle of 20 mm.

    Beyond both beats stands one steam, whatever the spindle's own word: the supply here.
    """
    on = drawn(tmp_path, acts, beats, leaves, pushed)
    train = train_of_cam(on["cam"], on.sheet)
    found = load_of_steam(train, on["duty"].cases["running"], on.sheet)
    assert found == pytest.approx(ring(15e5) + 16e5 * END if load is None else load)


@pytest.mark.parametrize(
    ("spring", "rate"),
    [
        (SPRING + 'rate = "40 N/mm ±2"\n', 40e3),
        (
            'material = "known-wire"\n'
            + SPRING
            + 'wire = "8 mm"\nmean_diameter = "48 mm"\nworking_coils = "6"\n',
            79.5e9 * 0.008**4 / (8 * 0.048**3 * 6),
        ),
    ],
)
def test_springs_press_as_drawn_or_by_their_sizes(tmp_path: Path, spring: str, rate: float) -> None:
    on = drawn(tmp_path, spring=spring)
    shut, found = loads_of_springs(train_of_cam(on["cam"], on.sheet), on.sheet)
    assert shut == 1000.0
    assert found == pytest.approx(rate, rel=0.021)


@pytest.mark.parametrize(
    ("opens", "sense"), [("upwards", 1), ("downwards", -1), ("60 ° from upright, back", 0.5)]
)
def test_the_weight_that_shuts(tmp_path: Path, opens: str, sense: float) -> None:
    on = drawn(tmp_path, opens=opens)
    found = weight_that_shuts(train_of_cam(on["cam"], on.sheet), on.sheet)
    assert found == pytest.approx(sense * 6 * 9.80665)


def test_cams_that_a_shaft_turns(tmp_path: Path) -> None:
    on = drawn(tmp_path, other=CAM.replace('turns_on = "shaft"\n', ""))
    assert [cam.id for cam in cams_on(on["shaft"], on.sheet)] == ["cam"]


def test_a_cam_has_the_sizes_and_loads_of_its_train_as_they_are_drawn(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """4.5 + 1.5 + 0.6/3 + 0.5 = 6.7 kg at a valve that lifts as its tappet does; 2 % of 20 mm are 0.4 mm.

    The clearance is taken up at 5° on a ramp of 1 mm in 10°, 5.7296 mm/rad, at 10 π rad/s: 0.18 m/s. The tappet moves
    already: 0.18 √(90e6 × 6.2) = 4252.0 N.
    """
    on = drawn(tmp_path)
    measure = CRACKED.read(CRACKED.default)
    monkeypatch.setattr(type(on.sheet), "limit", lambda _, name, __: {CRACKED.name: measure.nominal}[name])
    found = turning(on["cam"], on["duty"].cases["running"], 1.0, on.sheet)
    assert (found.name, found.i, found.phase) == ("cam", 1.0, 1.0)
    assert (found.c, found.cracked, found.friction) == pytest.approx((0.5e-3, 0.4e-3, 20.0))
    assert found.m == pytest.approx(6.7)
    assert found.springs == pytest.approx((1000.0, 40e3))
    assert found.ω == pytest.approx(TURN * 5)
    assert found.weight == pytest.approx(6.0 * 9.80665)
    assert found.taken_up == pytest.approx(math.radians(5))
    assert found.struck == pytest.approx(1000 + found.steam + 20 + 6.0 * 9.80665 + 4252.0, rel=1e-5)
