"""Tied temperatures move together: no corner sets one high and the other low, and the sheet shows the working."""

from __future__ import annotations

from pathlib import Path
from typing import ClassVar

import pytest
from hypothesis import given, settings, strategies as st

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, formula, rule
from speclint.checking import Check
from speclint.equations import KelvinDifference, Kelvins
from speclint.families import load_families
from speclint.specs import Component, LoadCase
from speclint.testing import DesignFolder
from tests.tubes import entry_point


class Ring(Component):
    """A ring in a block."""

    kind: ClassVar[str] = "ring"
    called: ClassVar[str] = "ring"


@formula("Δ = T_1 - T_2", cites=[FIRST_PRINCIPLES])
def hotter_by(T_1: Kelvins, T_2: Kelvins) -> KelvinDifference:
    """How much hotter the ring is than its block."""
    return T_1 - T_2


@rule(
    "ring.hotter",
    title="The ring is at most 40 K hotter than its block",
    on=Ring,
    cases=("running",),
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    limits=[Limit("most", "40 K", "temperature difference", COMMON_PRACTICE, "greatest difference")],
    why="the fit would grow tighter than it is drawn",
    leaves_out="nothing",
)
def hotter(ring: Ring, case: LoadCase, sheet: Sheet) -> Judgement:
    """The difference at the worst corner."""
    block = sheet.take("T_2", case.temperature_named("block"))
    own = sheet.take("T_1", case.temperature_of(ring))
    return sheet.at_most(sheet.work("Δ", hotter_by, T_1=own, T_2=block), sheet.limit("most"))


DUTY = 'kind = "duty"\n[cases.running.temperatures]\nblock = "{block}"\nring = "{ring}"\n'


def checked(folder: Path, ring: str, block: str = "250..270 °C", one: Rule = hotter) -> Check:
    loaded = load_families([entry_point("rings", kinds=(Ring,), rules=(one,))])
    files = {"duty.toml": DUTY.format(ring=ring, block=block), "r.toml": 'kind = "ring"\nduty = "duty"\n'}
    return DesignFolder(folder, loaded).write(files).only("ring.hotter")


def greatest(check: Check) -> float:
    assert check.judgement is not None
    assert check.judgement.found is not None
    return check.judgement.found.value


def test_a_tie_keeps_two_temperatures_from_opposite_ends(tmp_path: Path) -> None:
    # by hand: stated apart, 300 - 250 = 50 K at worst; tied, 30 K whatever the block does
    apart = checked(tmp_path / "apart", "270..300 °C")
    together = checked(tmp_path / "tied", "block + 20..30 K")
    assert (apart.outcome, together.outcome) == ("finding", "conforms")
    assert greatest(apart) == pytest.approx(50.0)
    assert greatest(together) == pytest.approx(30.0)


@pytest.mark.parametrize(("band", "outcome"), [("20..40 K", "conforms"), ("20..40.1 K", "finding")])
def test_the_limit_is_met_by_the_difference_alone(tmp_path: Path, band: str, outcome: str) -> None:
    assert checked(tmp_path, f"block + {band}").outcome == outcome


def test_the_sheet_shows_the_other_temperature_the_difference_and_the_sum(tmp_path: Path) -> None:
    steps = {step.symbol: step for step in checked(tmp_path, "block + 20..30 K").steps}
    assert steps["T_1_b"].value == steps["T_2"].value
    assert steps["ΔT_1"].value == pytest.approx(30.0)
    assert "block + 20..30 K" in steps["ΔT_1"].note
    assert steps["T_1"].value == pytest.approx(float(steps["T_1_b"].value) + 30.0)
    assert steps["T_1"].expression == "T = T_b + ΔT"


def test_a_change_of_either_changes_the_fingerprint(tmp_path: Path) -> None:
    first = checked(tmp_path / "a", "block + 20..30 K")
    other_band = checked(tmp_path / "b", "block + 20..31 K")
    other_base = checked(tmp_path / "c", "block + 20..30 K", block="250..271 °C")
    assert len({one.fingerprint for one in (first, other_band, other_base)}) == 3


@settings(max_examples=20, deadline=None)
@given(low=st.integers(0, 30), more=st.integers(0, 30), width=st.integers(0, 80))
def test_the_worst_difference_is_the_greatest_of_the_band_however_wide_the_base(
    tmp_path_factory: pytest.TempPathFactory, low: int, more: int, width: int
) -> None:
    folder = tmp_path_factory.mktemp("tied")
    found = checked(folder, f"block + {low}..{low + more} K", block=f"200..{200 + width} °C")
    assert greatest(found) == pytest.approx(low + more, abs=1e-9)
