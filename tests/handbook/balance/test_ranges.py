"""Formulae of balance at both sides of each end of their range, with what a refusal says."""

from __future__ import annotations

import pytest

from speclint.handbook.balance import forces, planes
from tests.ranges import End, expect_end

LITTLE = 1e-9
NOTHING = dict.fromkeys(("X_l", "Y_l", "X_r", "Y_r", "U_l", "V_l", "U_r", "V_r"), 0.0)
ENDS = [
    *(
        End(forces.share_balanced, {**NOTHING, which: moment}, {which: 0.0}, "something must reciprocate")
        for which in ("U_l", "V_l", "U_r", "V_r")
        for moment in (LITTLE, -LITTLE)
    ),
    *(
        End(
            one,
            {first: 0.0, "m": 1.0, "r": 0.3, "α": 0.1, "b": LITTLE, "y": 0.1},
            {"b": beyond},
            "the planes of the wheels must stand apart",
        )
        for one, first in ((planes.along_in_plane, "X_0"), (planes.across_in_plane, "Y_0"))
        for beyond in (0.0, -LITTLE)
    ),
    *(
        End(
            planes.mass_of_balance,
            {"R": 1.0, "r": LITTLE},
            {"r": beyond},
            "the radius of the balance must be above 0",
        )
        for beyond in (0.0, -LITTLE)
    ),
    *(
        End(
            one,
            {"m": 100.0, "l": 2.0, "a": within},
            {"a": beyond},
            "the rod's centre of gravity must lie between its pins",
        )
        for one in (planes.big_end_share, planes.small_end_share)
        for within, beyond in ((LITTLE, 0.0), (1.99, 2.0))
    ),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
