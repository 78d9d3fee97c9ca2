"""Both sides of each end of the range of a formula: within it a number, beyond it what is wrong with the values."""

from __future__ import annotations

import math

import pytest

from speclint_fits.formulae.carrying_pads import (
    share_of_weight,
    sinking_of_block,
    tilt_of_block,
    weight_moved,
)
from speclint_fits.formulae.chains import share_of_reach, share_of_square
from speclint_fits.formulae.fits import saddle_gap
from speclint_fits.formulae.geometry import angles_apart, opening_of_zone
from speclint_fits.formulae.locked_pads import (
    grip,
    in_series,
    pressure_on_face,
    share_of_thrust,
    stiffness_of_bar,
    stress_beside_axis,
    stress_of_web,
)
from speclint_fits.formulae.pads import bearing_with_thrust, wedged_stress, wedged_stress_in_slot
from speclint_fits.formulae.squareness import out_of_square
from speclint_fits.formulae.three_pads import give_of_three, share_of_three, share_on_line, sinking_of_line
from tests.ranges import End, expect_end

_LITTLE = 1e-6
_WEIGHT, _STIFFNESS = "a weight must be above 0", "a stiffness must be above 0"
_LINE = {"p": 0.5, "s_j": 1.0, "k_j": _LITTLE, "q": 0.5, "s_k": 1.0, "k_k": _LITTLE}
_THREE = {"k": _LITTLE, "p": 0.5, "k_j": 1.0, "q": 0.5, "k_k": 1.0}
#: Two pads of stiffness 1 at ±0.001: S_0 2, S_1 0, S_2 2e-6, apart 4e-6; both at one place leave nothing.
_TILT = {"G": 1.0, "x": 0.0, "S_0": 2.0, "S_1": 0.0, "S_2": 2e-6, "H_0": 0.0, "H_1": 0.0}
_SADDLE = {"D_s": 1.6, "D_b": 1.6, "theta": math.radians(80)}
_SERIES = {"k_1": _LITTLE, "k_2": _LITTLE}
_SECTION = "section and section modulus must be above 0"
_GRIP = {"δ": 1e-4, "s": 0.0, "w": _LITTLE, "E": 2e11, "A": _LITTLE, "k": _LITTLE}
_SLOT = {"delta": 1e-4, "w": _LITTLE, "E": 2e11, "A": 0.01, "k": _LITTLE}

ENDS = [
    End(weight_moved, {"x": 0.0, "M": 1.0, "G": _LITTLE}, {"G": 0.0}, _WEIGHT),
    End(
        share_on_line,
        {"x": 0.1, "x_j": 0.2, "x_k": 0.2 + _LITTLE},
        {"x_k": 0.2},
        "two carrying pads stand at one place",
    ),
    End(sinking_of_line, _LINE, {"k_j": 0.0}, _STIFFNESS),
    End(sinking_of_line, _LINE, {"k_k": 0.0}, _STIFFNESS),
    End(give_of_three, _THREE, {"k": 0.0}, _STIFFNESS),
    End(share_of_three, {"e": 0.0, "G": _LITTLE, "w": 1.0, "c": 1.0}, {"G": 0.0}, _WEIGHT),
    End(tilt_of_block, _TILT, {"S_2": 0.0}, "the carrying pads do not lie apart"),
    End(
        sinking_of_block,
        {"G": 1.0, "H_0": 0.0, "b": 0.0, "S_1": 0.0, "S_0": _LITTLE},
        {"S_0": 0.0},
        _STIFFNESS,
    ),
    End(share_of_weight, {"R": 1.0, "G": _LITTLE}, {"G": 0.0}, _WEIGHT),
    End(
        out_of_square,
        {"t": 1e-4, "X": 1.0, "l": _LITTLE},
        {"l": 0.0},
        "the length of a face must be above 0",
    ),
    *(
        End(share, {"r": 1e-6, "R": _LITTLE}, {"R": 0.0}, "no link of the chain has any tolerance")
        for share in (share_of_reach, share_of_square)
    ),
    End(saddle_gap, _SADDLE, {"theta": math.radians(80.5)}, "half arc 80.5° is not between 0 and 80°"),
    End(saddle_gap, {**_SADDLE, "theta": _LITTLE}, {"theta": 0.0}, "half arc 0° is not between 0 and 80°"),
    End(
        saddle_gap,
        {**_SADDLE, "D_s": 1.759},
        {"D_s": 1.761},
        "saddle 1761 mm and barrel 1600 mm do not belong together",
    ),
    End(
        saddle_gap,
        {**_SADDLE, "D_s": 1.441},
        {"D_s": 1.439},
        "saddle 1439 mm and barrel 1600 mm do not belong together",
    ),
    End(opening_of_zone, {"P": 0.02, "D": _LITTLE}, {"D": 0.0}, "the thread has no depth"),
    End(
        angles_apart,
        {"θ_1": 0.1, "θ_2": 0.0, "z": 0.5},
        {"z": 0.0},
        "the number of holes must be above 0",
    ),
    End(stiffness_of_bar, {"E": 2e11, "A": 0.01, "L": _LITTLE}, {"L": 0.0}, "the pads must lie apart"),
    *(End(in_series, _SERIES, {one: 0.0}, _STIFFNESS) for one in ("k_1", "k_2")),
    *(End(share_of_thrust, {"P": 1.0, **_SERIES}, {one: 0.0}, _STIFFNESS) for one in ("k_1", "k_2")),
    *(
        End(stress_beside_axis, {"F": 1.0, "A": _LITTLE, "e": 0.1, "W": _LITTLE}, {one: 0.0}, _SECTION)
        for one in ("A", "W")
    ),
    *(
        End(stress_of_web, {"F": 1.0, "A": _LITTLE, "a": 0.1, "W": _LITTLE}, {one: 0.0}, _SECTION)
        for one in ("A", "W")
    ),
    End(pressure_on_face, {"F": 1.0, "A": _LITTLE}, {"A": 0.0}, "a face must be above 0"),
    *(
        End(grip, _GRIP, {one: 0.0}, "width, face and stiffness of a pad must be above 0")
        for one in ("w", "A", "k")
    ),
    End(
        wedged_stress,
        {"delta": 1e-4, "w": _LITTLE, "E": 2e11},
        {"w": -0.0005},
        "width -0.5 mm is not above 0",
    ),
    End(wedged_stress, {"delta": 1e-4, "w": _LITTLE, "E": 2e11}, {"w": 0.0}, "width 0 mm is not above 0"),
    End(
        wedged_stress_in_slot,
        _SLOT,
        {"w": 0.0, "k": 2e6},
        "width 0 mm and stiffness 2000 N/mm must be above 0",
    ),
    End(
        wedged_stress_in_slot,
        _SLOT,
        {"w": 0.25, "k": 0.0},
        "width 250 mm and stiffness 0 N/mm must be above 0",
    ),
    End(
        bearing_with_thrust,
        {"sigma": 0.0, "T": 1.0, "A": _LITTLE},
        {"A": 0.0},
        "face 0 mm² is not above 0",
    ),
    End(
        bearing_with_thrust,
        {"sigma": 0.0, "T": 1.0, "A": _LITTLE},
        {"A": -0.0025},
        "face -2500 mm² is not above 0",
    ),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_refuses_what_lies_beyond_its_range(end: End) -> None:
    expect_end(end)
