"""piston.proof-within-rod: the proof load of a piston's fastening against the rod that it stretches."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import (
    DesignFolder,
    expect_conforms,
    expect_finding,
    expect_not_applicable,
    expect_not_assessed,
    on_sheet,
)
from tests.plugins.motion.train import files, without

RULE = "piston.proof-within-rod"
IN_ONE = (('by = "nut"', 'by = "forged in one"'), ('thread = "M85x4"\n', ""))


@pytest.mark.parametrize(
    ("load", "holds"), [("2720.6 kN", True), ("2720.7 kN", False), ("2720 kN ±1", False)]
)
def test_a_proof_load_stretches_no_rod(workshop: DesignFolder, load: str, holds: bool) -> None:
    """0.9 × 600 MPa × 5038.2 mm², the root of M85x4: 2720.63 kN."""
    check = workshop.write(files("piston", ("600 kN", load))).only(RULE)
    if holds:
        expect_conforms(check)
    else:
        expect_finding(check, grade=Grade.HOLD)


def test_a_small_thread_bears_a_small_proof_load(workshop: DesignFolder) -> None:
    """M36: 36 − 17/12 × 0.866025 × 4 = 31.0925 mm, 759.28 mm²: 410.0 kN, less than the 600 kN stated."""
    check = workshop.write(files("piston", ("M85x4", "M36"))).only(RULE)
    expect_finding(check, grade=Grade.HOLD)
    assert on_sheet(check, "F_p") == pytest.approx(410.01e3, rel=1e-4)


@pytest.mark.parametrize(("load", "holds"), [("3435.2 kN", True), ("3435.4 kN", False)])
def test_a_rod_forged_in_one_is_stretched_where_it_is_thinnest(
    workshop: DesignFolder, load: str, holds: bool
) -> None:
    """0.9 × 600 MPa × π 90²/4 = 3435.3 kN."""
    check = workshop.write(files("piston", *IN_ONE, ("600 kN", load))).only(RULE)
    (expect_conforms if holds else expect_finding)(check)
    assert on_sheet(check, "F_p") == pytest.approx(3435.3e3, rel=1e-4)


def test_without_a_proof_load_nothing_is_proved(workshop: DesignFolder) -> None:
    expect_not_applicable(workshop.write(without("piston", "proof_load")).only(RULE))


@pytest.mark.parametrize("key", ["by", "thread"])
def test_how_and_by_which_thread_it_is_fastened_is_asked(workshop: DesignFolder, key: str) -> None:
    expect_not_assessed(workshop.write(without("piston", key)).only(RULE), f"fastening.{key}")
