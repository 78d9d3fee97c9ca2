"""Fits, press fits and dimension chains at both sides of each end of their range, with the sizes a refusal names."""

from __future__ import annotations

import math

import pytest

from speclint.handbook.fits import chains, compound_cylinders, hot_sizes, press_fits
from speclint.handbook.fits.chains import Link, Span, Yield
from speclint.handbook.fits.limits_and_fits import Kind, kind_of_fit
from tests.ranges import End, expect_end

LITTLE = 1e-9
PAIR = {"d_in": 0.1, "D": 0.2, "D_out": 0.3, "E_in": 2e11, "nu_in": 0.3, "E_out": 2e11, "nu_out": 0.3}
RING = {"d": 0.1, "D": 0.2, "E": 1e11}
SHELL = {"D_s": 0.3, "nu": 0.3, "E_s": 2e11, "nu_s": 0.3, **RING}
RISING = "bore {} mm, joint {} mm, outside {} mm: not three rising diameters"
WALL = "bore {} mm is not between 0 and the outside diameter {} mm"


def fit_of(hole: float, shaft: float) -> Kind:
    """The kind of fit of a hole from so much, and a shaft from so much, both up to 12.5 mm."""
    return kind_of_fit((hole, 0.0125), (shaft, 0.0125))


PRESS_FITS = [
    *(
        End(one, {**first, **PAIR, **within}, changed, RISING.format(*said))
        for one, first in (
            (press_fits.contact_pressure, {"delta": 1e-4}),
            (press_fits.interference_for_pressure, {"p": 1e6}),
        )
        for within, changed, said in (
            ({"d_in": 0.0}, {"d_in": -0.0125}, ("-12.5", "200", "300")),
            ({"d_in": 0.199}, {"d_in": 0.2}, ("200", "200", "300")),
            ({"D": 0.299}, {"D": 0.3}, ("100", "300", "300")),
            ({"D_out": 0.201}, {"D_out": 0.1995}, ("100", "200", "199.5")),
        )
    ),
    End(
        press_fits.contact_pressure,
        {"delta": 0.0, **PAIR},
        {"delta": -12.5e-6},
        "the interference -0.0125 mm is negative: the parts are loose",
    ),
    *(
        End(one, {"c": 0.0, **RING, **more}, changed, says)
        for one, more in (
            (compound_cylinders.pressure_that_closes_gap, {}),
            (compound_cylinders.gap_closing_stress, {"nu": 0.3}),
        )
        for changed, says in (
            ({"c": -12.5e-6}, "the gap -0.0125 mm is negative: the parts already touch"),
            ({"d": 0.0}, WALL.format("0", "200")),
            ({"d": 0.2}, WALL.format("200", "200")),
            ({"D": 0.0995}, WALL.format("100", "99.5")),
        )
    ),
    *(
        End(one, {"c": 0.0, **RING, **more, "d": within}, {"d": beyond}, WALL.format(said, "200"))
        for one, more in (
            (compound_cylinders.pressure_that_closes_gap, {}),
            (compound_cylinders.gap_closing_stress, {"nu": 0.3}),
        )
        for within, beyond, said in ((1e-6, -1e-6, "-0.001"), (0.1999, 0.2001, "200.1"))
    ),
    *(
        End(
            one,
            {"p": 1e6, "c": 0.0, **SHELL, "D_s": 0.2001},
            {"D_s": 0.2},
            RISING.format("100", "200", "200"),
        )
        for one in (
            compound_cylinders.shell_pressure,
            compound_cylinders.supported_bore_hoop_stress,
            compound_cylinders.shell_bore_hoop_stress,
        )
    ),
    *(
        End(fit_of, {"hole": 0.0125, "shaft": 0.0125}, {which: 0.01251}, says)
        for which, says in (
            ("hole", "the hole's lower limit 0.01251 m is above its upper limit 0.0125 m"),
            ("shaft", "the shaft's lower limit 0.01251 m is above its upper limit 0.0125 m"),
        )
    ),
]

MET = {"delta": 1e-4, "c": 1e-4}
HOT = {**MET, "alpha_in": 1e-5, "T_in": 293.15, "T_ref": 293.15}
HEATED = [
    *(
        End(hot_sizes.shrinking_temperature, {**HOT, "D": 0.0125, "alpha_out": LITTLE}, changed, says)
        for changed, says in (
            ({"D": 0.0}, "joint 0 mm and expansion 1e-09 must be above 0"),
            ({"D": -0.0125}, "joint -12.5 mm and expansion 1e-09 must be above 0"),
            ({"alpha_out": 0.0}, "joint 12.5 mm and expansion 0 must be above 0"),
        )
    ),
    *(
        End(hot_sizes.cooling_for_entry, {**MET, "D": 0.0125, "alpha": LITTLE}, changed, says)
        for changed, says in (
            ({"D": 0.0}, "joint 0 mm and expansion 1e-09 must be above 0"),
            ({"D": -0.0125}, "joint -12.5 mm and expansion 1e-09 must be above 0"),
            ({"alpha": 0.0}, "joint 12.5 mm and expansion 0 must be above 0"),
        )
    ),
]


def link(low: float, high: float, direction: float) -> Link:
    """One link."""
    return Link("pad", low, high, direction)


def tried(low: float, high: float, trials: float) -> Yield:
    """A trial of one link from 1 to 2 mm."""
    return chains.monte_carlo(
        [Link("pad", 1e-3, 2e-3, spread="uniform")], low, high, trials=int(trials), seed=1
    )


def machined(low: float, high: float) -> Span:
    """A last link beside one that may be from 1 to 1.25 mm."""
    return chains.machine_to([Link("pad", 1e-3, 1.25e-3)], -1.0, low, high)


LINK = {"low": 0.0125, "high": 0.0125, "direction": LITTLE}
ORDER = "asked limits {} mm and {} mm are not in order"
CHAINS = [
    *(
        End(link, LINK, changed, says)
        for changed, says in (
            ({"low": 0.01251}, "limits 0.01251 and 0.0125 m of pad are not in order"),
            ({"high": 0.01249}, "limits 0.0125 and 0.01249 m of pad are not in order"),
            ({"high": math.inf}, "limits 0.0125 and inf m of pad are not in order"),
            ({"low": -math.inf}, "limits -inf and 0.0125 m of pad are not in order"),
            ({"direction": 0.0}, "pad must act on the gap"),
            ({"direction": math.inf}, "pad must act on the gap"),
        )
    ),
    End(
        tried,
        {"low": 0.0, "high": 1.0, "trials": 1000},
        {"trials": 999},
        "999 trials are too few; at least 1000",
    ),
    End(
        tried,
        {"low": 0.0, "high": 1.0, "trials": 200_000},
        {"trials": 200_001},
        "200001 trials are too many; at most 200 000",
    ),
    End(tried, {"low": 0.01, "high": 0.01, "trials": 1000}, {"low": 0.0125}, ORDER.format("12.5", "10")),
    End(machined, {"low": -1e-3, "high": -0.7e-3}, {"low": 0.0125}, ORDER.format("12.5", "-0.7")),
    End(
        machined,
        {"low": 0.0, "high": 0.2501e-3},
        {"high": 0.245e-3},
        "the other links still vary by 0.25 mm, more than the 0.245 mm asked of the gap",
    ),
    *(
        End(
            machined,
            {"low": -math.inf, "high": math.inf, finite: 0.0},
            {finite: beyond},
            "the gap must be asked on one side at least",
        )
        for finite, beyond in (("low", -math.inf), ("high", math.inf))
    ),
    *(
        End(
            chains.last_link,
            {"g": 1e-3, "s": 0.0, "k": within},
            {"k": 0.0},
            "the last link must act on the gap",
        )
        for within in (LITTLE, -LITTLE)
    ),
]


@pytest.mark.parametrize("end", [*PRESS_FITS, *HEATED, *CHAINS], ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
