"""Loads of a pipe on a chest of 8 mm net in a metal of 200/1.5 MPa, with an opening of 300 mm, by hand."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_assessed, expect_query, found
from speclint_fabrication.formulae.pipe_loads import force_on_branch, moment_on_branch, share_of_pipe_load
from tests.plugins.fabrication import bench
from tests.plugins.fabrication.openings import DRUM, INLET
from tests.plugins.known_metals import WITH_METALS

RULE = "opening.pipe-load"
PIPE = """
kind = "steam-pipe"
id = "pipe"
ends_at = {{ part = "block", opening = "inlet"{loads} }}
"""


def _write(folder: DesignFolder, loads: str, opening: str = INLET) -> DesignFolder:
    files = {
        **bench.FILES,
        "block.toml": bench.BLOCK + opening,
        "weldment.toml": bench.WELDMENT + DRUM,
        "pipe.toml": PIPE.format(loads=loads),
    }
    return folder.write(files, settings=WITH_METALS)


LOADS_FILES = {
    **bench.FILES,
    "block.toml": bench.BLOCK + INLET,
    "weldment.toml": bench.WELDMENT + DRUM,
    "pipe.toml": PIPE.format(loads=', force = "400 N", moment = "50 N·m"'),
}


def _loads(force: str, moment: str) -> str:
    return f', force = "{force}", moment = "{moment}"'


@pytest.mark.parametrize(
    ("force", "moment", "outcome"),
    [
        ("772 N", "0.001 N·m", "conforms"),
        ("773 N", "0.001 N·m", "finding"),
        ("0.01 N", "156 N·m", "conforms"),
        ("0.01 N", "157 N·m", "finding"),
        ("338 N", "88 N·m", "conforms"),
        ("340 N", "88 N·m", "finding"),
    ],
)
def test_a_load_from_both_sides(workshop: DesignFolder, force: str, moment: str, outcome: str) -> None:
    """5 % of 15.445 kN is 772.3 N, of 3.136 kN·m 156.8 N·m; 88 N·m and 338.9 N together."""
    check = _write(workshop, _loads(force, moment)).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)


def test_a_pipe_by_hand(workshop: DesignFolder) -> None:
    check = _write(workshop, _loads("1 kN", "100 N·m")).only(RULE)
    assert found(check) == pytest.approx(1 / 15.445 + 0.1 / 3.136, rel=1e-3)


def test_a_pipe_whose_loads_nobody_states(workshop: DesignFolder) -> None:
    expect_not_assessed(_write(workshop, "").only(RULE), "force")


def test_a_pipe_that_starts_at_the_block_loads_it_too(workshop: DesignFolder) -> None:
    """As one that ends there: 773 N are more than 772.3."""
    _write(workshop, _loads("773 N", "0.001 N·m"))
    assert workshop.replace("pipe.toml", "ends_at", "starts_at").only(RULE).outcome == "finding"


def test_a_pipe_that_ends_at_no_opening_of_the_block(workshop: DesignFolder) -> None:
    _write(workshop, _loads("1 N", "1 N·m"))
    unsaid = workshop.replace("pipe.toml", ', opening = "inlet"', "").only(RULE)
    expect_not_assessed(unsaid, "opening")


def test_a_block_without_pipes_and_a_pipe_in_a_flat_wall(workshop: DesignFolder) -> None:
    bare = {**bench.FILES, "block.toml": bench.BLOCK + INLET, "weldment.toml": bench.WELDMENT + DRUM}
    assert workshop.write(bare, settings=WITH_METALS).only(RULE).outcome == "not applicable"
    wall = bench.WELDMENT.split("[walls.")[1].split("]")[0]
    flat = INLET.replace('plate = "drum"\n', f'flat_wall = "{wall}"\n')
    expect_query(_write(workshop, _loads("1 N", "1 N·m"), flat).only(RULE), "flat wall")


@given(f=st.floats(50e6, 200e6), e=st.floats(0.004, 0.04), d=st.floats(0.05, 0.5))
def test_what_a_shell_bears_grows_with_its_square(f: float, e: float, d: float) -> None:
    F, M = force_on_branch(f=f, e=e), moment_on_branch(f=f, e=e, d=d)
    assert share_of_pipe_load(F=F / 2, M=M / 2, F_a=F, M_a=M) == pytest.approx(1)
    assert force_on_branch(f=f, e=2 * e) == pytest.approx(4 * F)
