"""Areas, diagrams, events and turning moments at both sides of each end of their range, with what a refusal says."""

from __future__ import annotations

import math
from typing import Any

import pytest

from speclint.handbook.cams import CamProfile, Flank, cam_law
from speclint.handbook.valve_events import areas, diagrams, trains, travel, turning
from speclint.handbook.valve_events.trains import TURN, ValveTrain
from tests.ranges import End, expect_end

LITTLE = 1e-9
CRANK = "the connecting rod must be longer than the crank, and that above 0"


def train(cam: float, foot: float, clearance: float, ratio: float) -> ValveTrain:
    """A valve of 10 mm on a cam of so many radians."""
    flank = Flank(cam_law("harmonic"), 0.010, cam / 2)
    return ValveTrain(CamProfile(flank, 0.0, flank), foot, clearance, ratio)


def opening(clearance: float) -> float:
    """Where it leaves its seat with a clearance."""
    return train(2.0, 0.0, clearance, 1.0).opening


def part(first: float, last: float) -> float:
    """The angle-area of a part of the opening."""
    return areas.angle_area(train(2.0, 0.0, 0.0, 1.0), lambda lift: lift, (first, last))


def revolution(steps: float) -> turning.TurningMoment:
    """No cylinder at all, in so many steps."""
    return turning.turning_moment([], int(steps))


AREA = {"C_v": LITTLE, "A_v": 0.0, "C_p": LITTLE, "A_p": LITTLE}
PART = "a part of the opening lies within 0 to 1, from before to"
AREAS = [
    *(
        End(areas.effective_area, AREA, changed, says)
        for changed, says in (
            ({"C_v": 0.0}, "the discharge coefficient of a valve must be above 0"),
            ({"C_p": 0.0}, "the discharge coefficient of a port must be above 0"),
            ({"A_v": -LITTLE}, "the area of a valve must not be below 0"),
            ({"A_p": 0.0}, "the area of a port must be above 0"),
        )
    ),
    End(
        areas.coefficient_of_loss, {"ζ": 0.0}, {"ζ": -0.0125}, "loss coefficient -0.0125 must not be below 0"
    ),
    *(
        End(part, {"first": first, "last": last}, changed, PART)
        for first, last, changed in (
            (0.0, 1.0, {"first": -0.01}),
            (0.0, 1.0, {"last": 1.01}),
            (0.49, 0.5, {"first": 0.5}),
            (0.49, 0.5, {"last": 0.48}),
        )
    ),
]

FORWARD = {"p_1": 12e5, "p_b": 1.2e5, "x_c": 0.4, "c": 0.0, "x_r": 0.4}
BACK = {"p_b": 1.2e5, "x_k": 0.1, "c": LITTLE}
AT = {"outward": True, **FORWARD, "x_k": 0.1}
DIAGRAMS: list[End] = [
    *(
        End(diagrams.mean_forward_pressure, {**FORWARD, **within}, changed, says)
        for within, changed, says in (
            ({"x_c": LITTLE, "c": 0.1}, {"x_c": 0.0}, "cut-off 0 lies outside 0 to the release at 0.4"),
            ({}, {"x_c": 0.4025}, "cut-off 0.4025 lies outside 0 to the release at 0.4"),
            ({"x_r": 1.0}, {"x_r": 1.0125}, "release 1.012 lies beyond the end of the stroke"),
            ({}, {"c": -0.0125}, "clearance -0.0125 must not be below 0"),
        )
    ),
    *(
        End(
            diagrams.mean_return_pressure,
            {**BACK, "x_k": within},
            {"x_k": beyond},
            f"share of the stroke left at compression {beyond} lies outside 0 to 1",
        )
        for within, beyond in ((0.0, -0.01), (1.0, 1.01))
    ),
    End(
        diagrams.mean_return_pressure, BACK, {"c": 0.0}, "steam cannot be compressed into no clearance at all"
    ),
    End(
        diagrams.diagram_factor,
        {"p_m": 1e5, "p_t": LITTLE},
        {"p_t": 0.0},
        "the theoretical diagram must do work",
    ),
    *(
        End(
            diagrams.theoretical_pressure,
            {**AT, "x": within},
            {"x": beyond},
            f"share of the stroke {beyond} lies outside 0 to 1",
        )
        for within, beyond in ((0.0, -0.01), (1.0, 1.01))
    ),
]

RAMP = {"φ_f": 0.0, "γ": LITTLE, "δ": 0.0125, "h_r": 0.0125}
TRAIN = {"cam": TURN, "foot": 0.0, "clearance": 0.0, "ratio": LITTLE}
TRAINS = [
    *(
        End(trains.ramp_opening_angle, {**RAMP, **within}, changed, says)
        for within, changed, says in (
            ({}, {"γ": 0.0}, "the angle of a ramp must be above 0"),
            ({"δ": 0.0, "h_r": LITTLE}, {"h_r": 0.0}, "the height of a ramp must be above 0"),
            ({"δ": 0.0}, {"δ": -0.0125}, "clearance -12.5 mm lies outside 0 to the ramp's 12.5 mm"),
            ({}, {"δ": 0.01255}, "clearance 12.55 mm lies outside 0 to the ramp's 12.5 mm"),
        )
    ),
    End(trains.backward_foot, {"φ_0": 0.1, "β": LITTLE}, {"β": 0.0}, "the angle of the lift must be above 0"),
    *(
        End(
            trains.shift_for_clearance,
            {"s_prime": within},
            {"s_prime": 0.0},
            "the tappet rests where the event would lie",
        )
        for within in (LITTLE, -LITTLE)
    ),
    *(
        End(train, TRAIN, changed, says)
        for changed, says in (
            ({"foot": math.inf}, "the foot of the ramp must be a finite angle"),
            ({"clearance": -12.5e-6}, "clearance -0.0125 mm of the tappet must not be below 0"),
            ({"ratio": 0.0}, "travel of the valve for each of the tappet 0 must be above 0"),
            # 1.0125 × 360 = 364.5
            ({"cam": 1.0125 * TURN}, "the cam lifts for 364.5°, longer than a revolution"),
        )
    ),
    *(
        End(
            opening,
            {"clearance": 0.00999},
            {"clearance": beyond},
            f"the clearance of {said} mm uses up the cam's lift of 10 mm: the valve never leaves its seat",
        )
        for beyond, said in ((0.010, "10"), (0.010125, "10.12"))
    ),
]

TRAVEL: list[End] = [
    *(
        End(one, {"r": within, "l": 1.0, **more}, {"r": beyond}, CRANK)
        for one, more in (
            (travel.back_travel, {"φ": 1.0}),
            (travel.front_angle, {"X": 0.5}),
            (travel.back_angle, {"X": 0.5}),
            (turning.crank_moment, {"F": 1e3, "θ": 1.0}),
        )
        for within, beyond in ((LITTLE, 0.0), (0.99, 1.0))
    ),
    *(
        End(travel.Crank, {"radius": within, "rod": 1.0}, {"radius": beyond}, CRANK)
        for within, beyond in ((LITTLE, 0.0), (0.99, 1.0))
    ),
    End(travel.share_of_stroke, {"s": 0.1, "r": LITTLE}, {"r": 0.0}, "the crank radius must be above 0"),
    *(
        End(
            one,
            {"r": 0.3, "l": 1.5, "X": within},
            {"X": beyond},
            f"share of the stroke {beyond} lies outside 0 to 1",
        )
        for one in (travel.front_angle, travel.back_angle)
        for within, beyond in ((0.0, -0.01), (1.0, 1.01))
    ),
]

WHEEL = "the diameter of the driving wheel must be above 0"
MACH = {"c_m": 4.0, "A": 0.2, "a": LITTLE, "A_m": LITTLE}
TURNING = [
    End(turning.tractive_effort, {"p_m": 1e5, "A": 0.2, "S": 0.6, "D": LITTLE}, {"D": 0.0}, WHEEL),
    End(
        turning.tractive_effort_by_the_trade,
        {"p": 1e5, "d": 0.5, "S": 0.6, "z": 2.0, "D": LITTLE},
        {"D": 0.0},
        WHEEL,
    ),
    End(turning.mach_index, MACH, {"a": 0.0}, "the speed of sound must be above 0"),
    End(turning.mach_index, MACH, {"A_m": 0.0}, "the mean effective area must be above 0"),
    End(revolution, {"steps": 1}, {"steps": 0}, "a revolution needs at least one step"),
]


@pytest.mark.parametrize("end", [*AREAS, *DIAGRAMS, *TRAINS, *TRAVEL, *TURNING], ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)


@pytest.mark.parametrize(
    ("x", "outward", "bar"),
    [
        (0.3999, True, 12.0),
        (0.4, True, 12.0),
        # 12 (0.4 + 0.1)/(0.402 + 0.1)
        (0.402, True, 11.9522),
        # 12 × 0.5/0.9, just before and at the release
        (0.8, True, 6.6667),
        (0.802, True, 1.2),
        # 1.2 (0.1 + 0.1)/(0.098 + 0.1)
        (0.098, False, 1.21212),
        (0.1, False, 1.2),
        (0.102, False, 1.2),
        (0.0, False, 2.4),
    ],
)
def test_the_theoretical_diagram_on_both_sides_of_each_event(x: float, outward: bool, bar: float) -> None:
    """12 bar to 0.4, released at 0.8 to 1.2 bar, compressed from 0.1, clearance 0.1."""
    given: dict[str, Any] = {"p_1": 12e5, "p_b": 1.2e5, "x_c": 0.4, "c": 0.1, "x_r": 0.8, "x_k": 0.1}
    assert diagrams.theoretical_pressure(x, outward, **given) / 1e5 == pytest.approx(bar, rel=1e-5)
