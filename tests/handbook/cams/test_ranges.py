"""Formulae and shapes of cams and cranks at both sides of each end of their range, with what a refusal says."""

from __future__ import annotations

import math

import pytest

from speclint.handbook.cams import laws, lift_tables, profiles, slider_crank
from speclint.handbook.cams.lift_tables import LiftTable
from speclint.handbook.cams.profiles import CamProfile, Flank, Follower, Ramp
from tests.ranges import End, expect_end

LITTLE = 1e-9
LAWS = [laws.cam_law(name) for name in ("parabolic", "harmonic", "cycloidal", "3-4-5 polynomial")]
SHARES = [
    End(curve, {"x": within}, {"x": beyond}, f"share of the rise {beyond} lies outside 0 to 1")
    for law in LAWS
    for curve in (law.displacement, law.velocity, law.acceleration)
    for within, beyond in ((0.0, -0.01), (1.0, 1.01))
]
RISES = [
    End(one, {first: 2.0, "L": 0.02, "ω": 30.0, "β": LITTLE}, {"β": beyond}, says)
    for one, first in ((laws.lift_velocity, "v"), (laws.lift_acceleration, "a"))
    for beyond, says in (
        (0.0, "the angle of the rise must be above 0"),
        (-LITTLE, "the angle of the rise must be above 0"),
    )
]

CRANK = "the connecting rod must be longer than the crank, and that above 0"
CRANKS = [
    End(one, {"r": within, "l": 1.0, **more}, {"r": beyond}, CRANK)
    for one, more in (
        (slider_crank.piston_travel, {"θ": 1.0}),
        (slider_crank.rod_angle, {"θ": 1.0}),
        (slider_crank.piston_speed, {"ω": 30.0, "θ": 1.0}),
        (slider_crank.piston_acceleration, {"ω": 30.0, "θ": 1.0}),
        (slider_crank.piston_speed_two_term, {"ω": 30.0, "θ": 1.0}),
        (slider_crank.piston_acceleration_two_term, {"ω": 30.0, "θ": 1.0}),
    )
    for within, beyond in ((LITTLE, 0.0), (0.99, 1.0))
]
SQUARE = math.pi / 2
THRUSTS = [
    End(
        slider_crank.side_thrust,
        {"F": 1e3, "φ": sign * (SQUARE - LITTLE)},
        {"φ": sign * (SQUARE + LITTLE)},
        "the rod must be at less than a right angle to the line of stroke",
    )
    for sign in (1, -1)
]


def table(first: float, second: float, last: float, lift: float) -> LiftTable:
    """Four entries, of which a test moves one."""
    return LiftTable((first, second, 1.0, last), (0.0, 0.010, 0.010, lift))


def table_of(angles: float, lifts: float) -> LiftTable:
    """A table of so many angles and lifts."""
    return LiftTable([0.1 * n for n in range(int(angles))], [0.0] * int(lifts))


def off_table(angle: float) -> Follower:
    """The follower of a table that ends at 1.5 rad."""
    return table(0.0, 0.5, 1.5, 0.0).at(angle)


TABLE = {"first": 0.0, "second": 0.5, "last": 1.5, "lift": 0.0}
RISE = "the angles of a lift table must rise"
FINITE = "a lift table must hold finite numbers"
TABLES = [
    *(
        End(table, TABLE, changed, says)
        for changed, says in (
            ({"first": 0.0125}, "the first angle 0.0125 rad must be 0"),
            ({"first": -0.0125}, "the first angle -0.0125 rad must be 0"),
            ({"second": 0.0}, RISE),
            ({"second": 1.0}, RISE),
            ({"last": 1.0}, RISE),
            ({"last": math.inf}, FINITE),
            ({"lift": math.nan}, FINITE),
            ({"lift": -0.0125}, "lift -12.5 mm must not be below 0"),
        )
    ),
    End(table, {**TABLE, "second": LITTLE}, {"second": -LITTLE}, RISE),
    End(
        table_of,
        {"angles": 4, "lifts": 4},
        {"angles": 3, "lifts": 3},
        "3 entries are too few for a curve; give at least 4",
    ),
    End(table_of, {"angles": 4, "lifts": 4}, {"lifts": 5}, "4 angles do not match 5 lifts"),
    *(
        End(
            off_table,
            {"angle": within},
            {"angle": beyond},
            f"cam angle {beyond} rad lies outside 0 to 1.5 rad, the table",
        )
        for within, beyond in ((0.0, -0.01), (1.5, 1.515), (1.5, math.nan))
    ),
    End(
        lift_tables.acceleration_doubt,
        {"δ": 5e-6, "Δ": LITTLE, "ω": 30.0},
        {"Δ": 0.0},
        "the spacing of the table must be above 0",
    ),
]


def flank(height: float, angle: float) -> Flank:
    """A rise without a ramp."""
    return Flank(LAWS[1], height, angle)


def flank_on_ramp(height: float, angle: float) -> Flank:
    """A rise on a ramp of 2 mm in 0.1 rad, whose speed alone lifts it 0.020 × 1/2 = 10 mm in 1 rad."""
    return Flank(LAWS[1], height, angle, Ramp(0.002, 0.1))


def profile(top: float, dwell: float) -> CamProfile:
    """A cam that opens to 20 mm and closes from another height."""
    return CamProfile(flank(0.020, 0.8), dwell, flank(top, 0.8))


def off_lift(angle: float) -> Follower:
    """The follower of a cam of 0.8 + 0.4 + 0.8 = 2 rad."""
    return profile(0.020, 0.4).at(angle)


ALONE = "the ramp alone would lift the valve higher than the cam"
PROFILES = [
    End(Ramp, {"height": LITTLE, "angle": LITTLE}, {"height": 0.0}, "the height of a ramp must be above 0"),
    End(Ramp, {"height": LITTLE, "angle": LITTLE}, {"angle": 0.0}, "the angle of a ramp must be above 0"),
    End(flank, {"height": LITTLE, "angle": LITTLE}, {"height": 0.0}, "the lift of a cam must be above 0"),
    End(
        flank,
        {"height": LITTLE, "angle": LITTLE},
        {"angle": 0.0},
        "the angle of a rise or fall must be above 0",
    ),
    End(flank_on_ramp, {"height": 0.0101, "angle": 1.0}, {"height": 0.0099}, ALONE),
    End(flank_on_ramp, {"height": 0.010, "angle": 0.99}, {"angle": 1.01}, ALONE),
    End(profile, {"top": 0.020, "dwell": 0.0}, {"dwell": -LITTLE}, "the dwell of a cam must not be below 0"),
    *(
        End(
            profile,
            {"top": 0.020 * (1 + LITTLE / 2), "dwell": 0.0},
            {"top": top},
            f"the cam opens to 20 mm but closes from {said} mm",
        )
        for top, said in ((0.020001, "20.001"), (0.019999, "19.999"))
    ),
    *(
        End(
            off_lift,
            {"angle": within},
            {"angle": beyond},
            f"cam angle {beyond} rad lies outside 0 to 2 rad, the lift",
        )
        for within, beyond in ((0.0, -0.01), (1.999999, 2.02), (1.0, math.inf))
    ),
]


@pytest.mark.parametrize("end", [*SHARES, *RISES, *CRANKS, *THRUSTS, *TABLES, *PROFILES], ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)


def test_outside_the_lift_the_follower_is_at_the_nearer_end() -> None:
    """On the base circle before and after, where a harmonic rise and fall begin and end at rest."""
    cam = profile(0.020, 0.4)
    assert profiles.follower_at(-0.01, cam) == cam.at(0.0)
    assert profiles.follower_at(cam.duration + 0.01, cam) == cam.at(cam.duration)
    assert profiles.follower_at(1.0, cam).lift == pytest.approx(0.020)
