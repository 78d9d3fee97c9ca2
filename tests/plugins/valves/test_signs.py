"""Formulae of the valves with a root or a power, at the ends of their ranges."""

from __future__ import annotations

import pytest

from speclint_valves.formulae.blow import blow
from speclint_valves.formulae.shutting import compression_pressure
from tests.ranges import End, expect_end

TRAIN = {"v": 0.1, "k": 0.0, "m": 0.0}
TRAPPED = {"p_b": 1.4e5, "x": 0.3, "c": 0.1}
NO_GAS = "exponent {} lies outside 1 to 5/3, which no gas exceeds"

ENDS = [
    End(blow, TRAIN, {"k": -1e3}, "stiffness -1 N/mm or mass 0 kg of a train is below 0"),
    End(blow, TRAIN, {"m": -1.0}, "stiffness 0 N/mm or mass -1 kg of a train is below 0"),
    End(compression_pressure, {**TRAPPED, "n": 1.0}, {"n": 0.999}, NO_GAS.format(0.999)),
    End(compression_pressure, {**TRAPPED, "n": 5 / 3}, {"n": 1.667}, NO_GAS.format(1.667)),
]


@pytest.mark.parametrize("end", ENDS, ids=str)
def test_a_formula_answers_at_its_end_and_refuses_beyond(end: End) -> None:
    expect_end(end)
