"""chain.worst-case-hot and chain.statistical-hot, worked by hand on the bench's metals.

Block of steel 100 mm, seat of iron 99 mm: a gap of 1 mm cold. Warming, block 20 °C and seat 120 °C: the seat grows
99 × 11.5e-6 × 100 = 0.11385 mm, with 11.8e-6 0.11682 mm. Cooling, block 220 °C and seat 180 °C: the block grows
100 × 12.5e-6 × 200 = 0.25 mm, with 12.8e-6 0.256 mm; the seat at least 99 × 11.8e-6 × 160 = 0.186912 mm.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.fits import growth_of_length
from speclint.testing import DesignFolder, found
from speclint_fits.formulae.chains import gap_when_hot
from tests.plugins.fits import bench

WORST, CHANCE = "chain.worst-case-hot", "chain.statistical-hot"
CHAIN = """
kind = "dimension-chain"
id = "chain"
duty = "duty"
least_hot = "0.85 mm"
greatest_hot = "1.10 mm"
wanted_yield = "99 %"
[chain.chamber]
of = "block"
size = "100 mm"
direction = "widens"
[chain.ring]
of = "seat"
size = "99 mm"
direction = "narrows"
"""


def write(workshop: DesignFolder, *changes: tuple[str, str]) -> DesignFolder:
    """The bench with the chain, some passages of it changed."""
    text = CHAIN
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return bench.write(workshop, chain=text)


@pytest.mark.parametrize(
    ("old", "new", "outcome", "case", "worst"),
    [
        ('"0.85 mm"', '"0.8831 mm"', "conforms", "warming", 0.88318e-3),
        ('"0.85 mm"', '"0.8832 mm"', "finding", "warming", 0.88318e-3),
        ('"1.10 mm"', '"1.0691 mm"', "conforms", "cooling", 1.069088e-3),
        ('"1.10 mm"', '"1.0690 mm"', "finding", "cooling", 1.069088e-3),
    ],
)
def test_either_limit_is_held_hot_in_the_case_that_governs(
    workshop: DesignFolder, old: str, new: str, outcome: str, case: str, worst: float
) -> None:
    other = ('greatest_hot = "1.10 mm"\n', "") if "0.85" in old else ('least_hot = "0.85 mm"\n', "")
    check = write(workshop, (old, new), other).only(WORST)
    assert (check.outcome, check.case) == (outcome, case)
    assert found(check) == pytest.approx(worst, abs=1e-9)
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)
    assert "cold 1.000 mm" in check.says


@pytest.mark.parametrize(("greatest", "outcome"), [("1.0691 mm", "conforms"), ("1.0690 mm", "finding")])
def test_water_in_the_cylinder_counts_too(workshop: DesignFolder, greatest: str, outcome: str) -> None:
    """1 + 0.256 − 0.186912 mm with water at the temperatures that cooling has above."""
    made = write(workshop, ('"1.10 mm"', f'"{greatest}"'), ('least_hot = "0.85 mm"\n', ""))
    for old, new in (("water", "swap"), ("cooling", "water"), ("swap", "cooling")):
        workshop.replace("duty.toml", f"cases.{old}", f"cases.{new}")
    check = made.only(WORST)
    assert (check.outcome, check.case) == (outcome, "water")


def test_the_limits_of_size_come_on_top_of_the_heat(workshop: DesignFolder) -> None:
    """Chamber down to 99.95 mm: 0.88318 − 0.05 mm, the block being cold."""
    check = write(workshop, ('"100 mm"', '"100 mm ±0.05"'), ('greatest_hot = "1.10 mm"\n', "")).only(WORST)
    assert found(check) == pytest.approx(0.83318e-3, abs=1e-9)
    assert check.outcome == "finding"


def test_a_lever_takes_its_share_of_the_growth(workshop: DesignFolder) -> None:
    """Half the chamber, 50 − 49.5 = 0.5 mm cold; warming takes half of 0.11682 mm."""
    half = [(f'"{size} mm"', f'"{size} mm"\nlever = "0.5"') for size in ("100", "99")]
    check = write(workshop, *half, ('"0.85 mm"', '"0.44 mm"'), ('greatest_hot = "1.10 mm"\n', "")).only(WORST)
    assert found(check) == pytest.approx(0.44159e-3, abs=1e-9)


def test_a_link_may_have_a_temperature_of_its_own(workshop: DesignFolder) -> None:
    """A ring's foot that stays at 20 °C leaves the gap cold while warming; then it is never below 1 mm."""
    named = "".join(
        f'[cases.{case}.temperatures]\ncylinder-block = "20 °C"\nfoot = "20 °C"\n'
        for case in ("warming", "starting", "running", "drifting", "standing-hot", "cooling", "water")
    )
    write(workshop, ('of = "seat"', 'of = "seat"\ntemperature = "foot"'))
    workshop.write({"duty.toml": f'kind = "duty"\nid = "duty"\n{named}'}, settings=bench.WITH_METALS)
    check = workshop.only(WORST)
    assert found(check) == pytest.approx(1e-3)
    workshop.replace("chain.toml", '"foot"', '"ankle"')
    assert workshop.only(WORST).outcome == "not assessed"


def test_a_length_may_be_stated_by_a_part_of_another_metal(workshop: DesignFolder) -> None:
    """The seat's 99 mm are of the block's steel: both grow alike, and 1 mm of steel is left to grow.

    Cooling, 220 °C: 1 + 1 × 12.8e-6 × 200 = 1.00256 mm.
    """
    steel = ('of = "seat"', 'of = "seat"\ngrows_with = "block"')
    check = write(workshop, steel, ('least_hot = "0.85 mm"\n', "")).only(WORST)
    assert found(check) == pytest.approx(1.00256e-3, abs=1e-9)


@pytest.mark.parametrize(
    "drop",
    [
        'of = "seat"\n',
        'direction = "narrows"',
        'size = "99 mm"',
        'least_hot = "0.85 mm"\ngreatest_hot = "1.10 mm"',
    ],
)
def test_a_hot_chain_needs_parts_sizes_and_limits(workshop: DesignFolder, drop: str) -> None:
    for rule in (WORST, CHANCE):
        assert write(workshop, (drop, "")).only(rule).outcome == "not assessed"


@pytest.mark.parametrize("rule", [WORST, CHANCE])
def test_a_case_that_the_duty_does_not_state_is_not_assessed(workshop: DesignFolder, rule: str) -> None:
    write(workshop)
    duty = bench.DUTY.replace("[cases.drifting.", "[cases.test.")
    check = workshop.write({"duty.toml": duty}, settings=bench.WITH_METALS).only(rule)
    assert (check.outcome, check.says) == ("not assessed", "load case drifting is not stated in duty.toml")


def test_one_side_alone_may_be_asked(workshop: DesignFolder) -> None:
    assert write(workshop, ('greatest_hot = "1.10 mm"\n', "")).only(CHANCE).outcome == "conforms"
    assert write(workshop, ('least_hot = "0.85 mm"\n', "")).only(CHANCE).outcome == "conforms"


@pytest.mark.parametrize(("wanted", "outcome"), [("46 %", "conforms"), ("52 %", "finding")])
def test_half_of_all_chains_lie_above_their_middle(workshop: DesignFolder, wanted: str, outcome: str) -> None:
    """Warming: 1 − 0.11385 = 0.88615 mm is the middle, chamber ± 0.05 mm and growth ± 0.00297 mm about it.

    Root of the squares: √(0.05² + 0.00297²) = 0.050088 mm. Every other case has a wider gap and a better yield.
    5000 trials know a half to ± 1.39 % (Wilson).
    """
    check = write(
        workshop,
        ('"100 mm"', '"100 mm ±0.05"'),
        ('"0.85 mm"', '"0.88615 mm"'),
        ('greatest_hot = "1.10 mm"\n', ""),
        ('"99 %"', f'"{wanted}"'),
    ).only(CHANCE)
    assert (check.outcome, check.case) == (outcome, "warming")
    assert found(check) == pytest.approx(0.5 - 0.0139, abs=0.022)  # three standard deviations of sampling
    values = {step.symbol: step.value for step in check.steps}
    assert values["g_low"] == pytest.approx((0.88615 - 0.050088) * 1e-3, abs=2e-9)
    assert values["g_high"] == pytest.approx((0.88615 + 0.050088) * 1e-3, abs=2e-9)


def test_lengths_of_one_part_grow_together(workshop: DesignFolder) -> None:
    """Up and down by the same block: what is left to grow is 100 − 99 = 1 mm of steel, 0.0024 to 0.00256 mm hot.

    By 220 °C: 1 × 12.2e-6 × 200 = 0.00244 and 1 × 12.8e-6 × 200 = 0.00256 mm. Taken apart it would be 0.012 mm.
    """
    check = write(workshop, ('of = "seat"', 'of = "block"'), ('"99 %"', '"50 %"')).only(CHANCE)
    growing = [float(step.value) for step in check.steps if step.symbol == "r of growth of block"]
    assert max(growing) <= (0.00256 - 0.00244) / 2 * 1e-3 + 1e-12
    cooling = write(
        workshop,
        ('of = "seat"', 'of = "block"'),
        ('"1.10 mm"', '"1.0025 mm"'),
        ('least_hot = "0.85 mm"\n', ""),
    ).only(CHANCE)
    assert (cooling.outcome, cooling.case) == ("finding", "cooling")
    assert found(cooling) == pytest.approx(
        0.5 - 0.0139, abs=0.022
    )  # alike between 1.00244 and 1.00256: half lie below


def test_trials_and_seed_are_settings(workshop: DesignFolder) -> None:
    write(workshop)
    settings = bench.WITH_METALS + f'[limits."{CHANCE}"]\ntrials = "2000"\nseed = "7"\n'
    check = workshop.write({}, settings=settings).only(CHANCE)
    assert any("2000 trials, seed 7" in step.name for step in check.steps)


def test_the_yield_must_be_asked(workshop: DesignFolder) -> None:
    assert write(workshop, ('wanted_yield = "99 %"', "")).only(CHANCE).outcome == "not assessed"


@given(L=st.floats(-2.0, 2.0), alpha=st.floats(8e-6, 20e-6), dT=st.floats(-40.0, 400.0))
def test_growth_turns_with_its_length_and_is_nothing_cold(L: float, alpha: float, dT: float) -> None:
    grown = growth_of_length(L, alpha, 293.15 + dT, 293.15)
    assert growth_of_length(-L, alpha, 293.15 + dT, 293.15) == -grown
    assert growth_of_length(L, alpha, 293.15, 293.15) == 0
    assert gap_when_hot(1e-3, grown) - grown == pytest.approx(1e-3, abs=1e-12)


def test_the_trial_says_from_where_it_starts(workshop: DesignFolder) -> None:
    check = write(workshop).only(CHANCE)
    assert any("5000 trials, seed 1902" in step.name for step in check.steps)
