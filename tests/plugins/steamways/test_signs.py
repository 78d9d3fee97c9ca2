"""Formulae of steamways with a root, at 0 and just below it."""

from __future__ import annotations

import pytest

from speclint_steamways.formulae.exchange import parallel_exchange
from speclint_steamways.formulae.plate_fins import fin_argument, round_foot
from speclint_steamways.formulae.water import drained_together
from tests.ranges import End, expect_end

DRAIN = {"w_0": 0.0, "k": 1.0, "C": 0.6, "A": 1e-4, "ρ": 0.0, "Δp": 1e5}
STREAMS = {"U": 0.0, "ψ": 0.0, "W_1": 1e3, "W_2": 1e3, "T_1": 500.0, "T_2": 400.0}

ENDS = [
    End(fin_argument, {"r": 0.1, "h": 0.0, "λ": 45.0, "t": 0.02}, {"h": -1.0}, "film -1 W/(m²·K) is below 0"),
    End(round_foot, {"A": 0.0}, {"A": -1e-6}, "area -1 mm² in contact is below 0"),
    End(drained_together, DRAIN, {"ρ": -1.0}, "density -1 kg/m³ is below 0"),
    End(parallel_exchange, STREAMS, {"U": -2.0}, "0 times -2 W/K of heat transfer is below 0"),
    End(parallel_exchange, STREAMS, {"ψ": -0.5}, "-0.5 times 0 W/K of heat transfer is below 0"),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
