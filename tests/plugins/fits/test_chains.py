"""chain.worst-case, chain.statistical and chain.measured.

Published: Budynas and Nisbett, Shigley's Mechanical Engineering Design, 10th ed. 2015, example of section 1-14 (from
memory): w = a − b − c − d with a 1.750 ± 0.003, b 0.750 ± 0.001, c 0.120 ± 0.005, d 0.875 ± 0.001 in is
0.005 ± 0.010 in. By hand the root of the squares is √(9 + 1 + 25 + 1) = 6 thou.
"""

from __future__ import annotations

import re

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.fits.chains import MONTE_CARLO, Link, root_sum_square, wilson_interval, worst_case
from speclint.testing import DesignFolder, found
from speclint_fits.formulae.chains import reaches_in_square, reaches_together

WORST, CHANCE, MEASURED = "chain.worst-case", "chain.statistical", "chain.measured"
INCH = 0.0254
CHAIN = """
kind = "dimension-chain"
id = "chain"
least = "-5 thou"
greatest = "15 thou"
wanted_yield = "99 %"
last = "a"
[chain.a]
size = "1.750 in ±0.003"
direction = "widens"
[chain.b]
size = "0.750 in ±0.001"
direction = "narrows"
[chain.c]
size = "0.120 in ±0.005"
direction = "narrows"
[chain.d]
size = "0.875 in ±0.001"
direction = "narrows"
"""


def write(workshop: DesignFolder, *changes: tuple[str, str], settings: str = "") -> DesignFolder:
    text = CHAIN
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return workshop.write({"chain.toml": text, "speclint.toml": settings}, settings=settings)


def test_the_published_stack(workshop: DesignFolder) -> None:
    """−0.005 and 0.015 in are the worst: both just at what is asked."""
    check = write(workshop).only(WORST)
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(1.0)
    assert found(check) in (pytest.approx(-0.005 * INCH), pytest.approx(0.015 * INCH))
    assert "shares: c 50%, a 30%, b 10%, d 10%" in check.says


@pytest.mark.parametrize(
    ("old", "new", "worst"),
    [('"-5 thou"', '"-4.9 thou"', -0.005), ('"15 thou"', '"14.9 thou"', 0.015)],
)
def test_either_limit_is_held_at_the_worst(workshop: DesignFolder, old: str, new: str, worst: float) -> None:
    check = write(workshop, (old, new)).only(WORST)
    assert check.outcome == "finding"
    assert found(check) == pytest.approx(worst * INCH)


@pytest.mark.parametrize(
    ("drop", "outcome"), [('least = "-5 thou"', "conforms"), ('greatest = "15 thou"', "conforms")]
)
def test_one_side_alone_may_be_asked(workshop: DesignFolder, drop: str, outcome: str) -> None:
    assert write(workshop, (drop, "")).only(WORST).outcome == outcome
    assert (
        write(
            workshop, (drop, ""), ('"15 thou"', '"14 thou"') if "least" in drop else ('"-5 thou"', '"0 thou"')
        )
        .only(WORST)
        .outcome
        == "finding"
    )


def test_a_lever_takes_its_share(workshop: DesignFolder) -> None:
    """Half of c: the middle gap is 0.005 + 0.060 = 0.065 in, its reach 0.003 + 0.001 + 0.0025 + 0.001 = 0.0075 in."""
    lever = ('size = "0.120 in ±0.005"', 'size = "0.120 in ±0.005"\nlever = "0.5"')
    check = write(workshop, lever, ('"15 thou"', '"72.6 thou"')).only(WORST)
    assert (check.outcome, found(check)) == ("conforms", pytest.approx(0.0725 * INCH))


@pytest.mark.parametrize(
    "drop", ['direction = "widens"', 'size = "1.750 in ±0.003"', 'least = "-5 thou"\ngreatest = "15 thou"']
)
def test_a_chain_needs_its_links_and_its_limits(workshop: DesignFolder, drop: str) -> None:
    for rule in (WORST, CHANCE):
        assert write(workshop, (drop, "")).only(rule).outcome == "not assessed"


def test_a_chain_without_links_is_not_assessed(workshop: DesignFolder) -> None:
    workshop.write({"chain.toml": CHAIN.split("[chain.a]")[0]})
    for rule in (WORST, CHANCE, MEASURED):
        assert workshop.only(rule).outcome == "not assessed"


def test_links_without_tolerance_have_no_shares(workshop: DesignFolder) -> None:
    check = write(workshop, *((f" ±0.00{t}", "") for t in (3, 1, 5))).only(WORST)
    assert (check.outcome, "share" in check.says) == ("conforms", False)


def test_the_root_of_the_squares_is_on_the_sheet(workshop: DesignFolder) -> None:
    """0.005 ± 0.006 in; shares of the square 25/36, 9/36, 1/36, 1/36."""
    check = write(workshop).only(CHANCE)
    values = {step.symbol: step.value for step in check.steps}
    assert values["g_low"] == pytest.approx(-0.001 * INCH)
    assert values["g_high"] == pytest.approx(0.011 * INCH)
    assert values["share of c"] == pytest.approx(25 / 36)
    assert "c 69%, a 25%, b 3%, d 3%" in check.says
    assert check.outcome == "conforms"


@pytest.mark.parametrize(("wanted", "outcome"), [("48 %", "conforms"), ("52 %", "finding")])
def test_half_of_all_chains_lie_below_the_middle(workshop: DesignFolder, wanted: str, outcome: str) -> None:
    """By symmetry; 20 000 trials know it to ± 0.7 % (Wilson), and the sheet says so."""
    below = ('least = "-5 thou"\ngreatest = "15 thou"', 'greatest = "5 thou"')
    check = write(workshop, below, ('"99 %"', f'"{wanted}"')).only(CHANCE)
    low, high = wilson_interval(10_000, 20_000)
    assert (high - low) / 2 == pytest.approx(0.0069, abs=1e-4)
    assert found(check) == pytest.approx(0.5 - 0.0069, abs=0.012)  # three standard deviations of sampling
    assert check.outcome == outcome
    step = next(step for step in check.steps if step.symbol == "Y")
    assert "20000 trials, seed 1902" in step.name
    assert step.note  # the interval of its own doubt


def test_a_uniform_link_yields_its_share(workshop: DesignFolder) -> None:
    """A link anywhere within 0 to 1 mm alike is below 0.75 mm in three of four."""
    text = CHAIN.split("[chain.a]")[0].replace('least = "-5 thou"\n', "").replace("15 thou", "0.75 mm")
    one = '[chain.a]\nsize = "0..1 mm"\ndirection = "widens"\nspread = "uniform"\n'
    workshop.write({"chain.toml": text + one})
    low, _ = wilson_interval(15_000, 20_000)
    check = workshop.only(CHANCE)
    assert found(check) == pytest.approx(low, abs=0.01)
    step = next(step for step in check.steps if step.symbol == "Y")
    mean, deviation = (float(one) for one in re.findall(r"(\d\.\d+) mm", step.name))
    assert mean == pytest.approx(0.5, abs=0.006)  # three standard deviations of sampling
    assert deviation == pytest.approx(1 / 12**0.5, abs=0.004)
    assert step.source == MONTE_CARLO


def test_trials_and_seed_are_settings(workshop: DesignFolder) -> None:
    base = '[works]\nstage = "draft"\n[limits."chain.statistical"]\ntrials = "2000"\nseed = "7"\n'
    first = write(workshop, settings=base).only(CHANCE)
    again = write(workshop, settings=base).only(CHANCE)
    assert found(first) == found(again)
    assert any("2000 trials, seed 7" in step.name for step in first.steps)


def test_the_yield_must_be_asked(workshop: DesignFolder) -> None:
    assert write(workshop, ('wanted_yield = "99 %"', "")).only(CHANCE).outcome == "not assessed"


def test_the_last_link_is_machined_to_the_others_as_measured(workshop: DesignFolder) -> None:
    """b + c + d = 0.7502 + 0.1185 + 0.8749 = 1.7436 in; a gap of 1 to 5 thou wants a = 1.7446 to 1.7486 in."""
    job = [
        ('"-5 thou"', '"1 thou"'),
        ('"15 thou"', '"5 thou"'),
        ('"0.750 in ±0.001"', '{ value = "0.7502 in", from = "measured" }'),
        ('"0.120 in ±0.005"', '{ value = "0.1185 in", from = "measured" }'),
        ('"0.875 in ±0.001"', '{ value = "0.8749 in", from = "measured" }'),
    ]
    check = write(workshop, *job).only(MEASURED)
    assert check.outcome == "conforms"
    assert "machine a to 44.313 to 44.414 mm" in check.says  # 1.7446 and 1.7486 in


@pytest.mark.parametrize(("greatest", "outcome"), [("9.1 thou", "conforms"), ("8.9 thou", "finding")])
def test_links_that_still_vary_too_much_leave_no_size(
    workshop: DesignFolder, greatest: str, outcome: str
) -> None:
    """b, c and d vary by 14 thou together: from −5 thou a gap to 9 thou is the least that can be promised."""
    assert write(workshop, ('"15 thou"', f'"{greatest}"')).only(MEASURED).outcome == outcome


def test_a_gap_asked_on_one_side_bounds_the_link_on_one_side(workshop: DesignFolder) -> None:
    """At least −5 thou with b + c + d at most 1.752 in: a at least 1.747 in = 44.3738 mm."""
    check = write(workshop, ('greatest = "15 thou"', "")).only(MEASURED)
    assert found(check) == pytest.approx(1.747 * INCH)
    assert "least gap" in check.says
    check = write(workshop, ('least = "-5 thou"', "")).only(MEASURED)
    assert found(check) == pytest.approx((1.738 + 0.015) * INCH)


def test_a_last_link_that_narrows_is_machined_the_other_way(workshop: DesignFolder) -> None:
    """a − b − d is 0.120 to 0.130 in: c at most 0.120 + 0.005 and at least 0.130 − 0.015 in."""
    check = write(workshop, ('last = "a"', 'last = "c"')).only(MEASURED)
    assert check.outcome == "conforms"
    assert "machine c to 2.921 to 3.175 mm" in check.says


def test_without_a_last_link_nothing_is_machined(workshop: DesignFolder) -> None:
    assert write(workshop, ('last = "a"', "")).only(MEASURED).outcome == "not applicable"


BOX = 'kind = "steam-pipe"\nid = "box"\nwall = "0.120 in ±0.005"\n'
DRAWN = ('size = "0.120 in ±0.005"', 'of = "box"\ndimension = "wall"')


@pytest.mark.parametrize(
    ("measured", "outcome", "used"),
    [("0.1249 in", "conforms", 0.98), ("0.1150 in", "conforms", 1.0), ("0.1149 in", "finding", 1.02)],
)
def test_what_is_measured_is_as_drawn(
    workshop: DesignFolder, measured: str, outcome: str, used: float
) -> None:
    """c drawn 0.120 ± 0.005 in: 4.9, 5 and 5.1 thou off its middle, of 5."""
    workshop.write({"box.toml": BOX})
    taken = (DRAWN[0], f'{DRAWN[1]}\nmeasured = "{measured}"')
    check = write(workshop, taken, ('last = "a"', "")).only(MEASURED)
    assert check.outcome == outcome
    assert check.utilisation == pytest.approx(used)
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_the_measured_size_goes_before_the_drawn_one(workshop: DesignFolder) -> None:
    """c = 0.124 in: the gap is 0.001 ± 0.005 in, and a machined to 0.751 + 0.124 + 0.876 − 0.005 in at least."""
    workshop.write({"box.toml": BOX})
    taken = (DRAWN[0], f'{DRAWN[1]}\nmeasured = "0.124 in"')
    check = write(workshop, taken, ('greatest = "15 thou"', ""), ('"-5 thou"', '"-3.9 thou"')).only(WORST)
    assert check.outcome == "finding"
    assert found(check) == pytest.approx(-0.004 * INCH)
    check = write(workshop, taken, ('greatest = "15 thou"', "")).only(MEASURED)
    assert "for the least gap machine a to: 44.348 mm" in check.says  # 1.746 in


def test_without_a_measured_size_the_drawn_one_is_read_where_its_part_states_it(
    workshop: DesignFolder,
) -> None:
    workshop.write({"box.toml": BOX})
    check = write(workshop, DRAWN).only(WORST)
    assert (check.outcome, check.utilisation) == ("conforms", pytest.approx(1.0))
    workshop.replace("chain.toml", '"wall"', '"wal"')
    assert workshop.only(WORST).outcome == "not assessed"


def test_a_drawn_size_without_limits_judges_no_measurement(workshop: DesignFolder) -> None:
    workshop.write({"box.toml": BOX.replace(" ±0.005", "")})
    taken = (DRAWN[0], f'{DRAWN[1]}\nmeasured = "0.130 in"')
    assert write(workshop, taken, ('last = "a"', "")).only(MEASURED).outcome == "not applicable"


@given(widths=st.lists(st.floats(1e-6, 1e-3), min_size=2, max_size=6))
def test_link_by_link_is_the_handbook_s_sum(widths: list[float]) -> None:
    links = [Link(str(i), 0.01, 0.01 + width, (-1) ** i) for i, width in enumerate(widths)]
    together = square = 0.0
    for width in widths:
        together = reaches_together(together, width / 2)
        square = reaches_in_square(square, width / 2)
    whole, chance = worst_case(links), root_sum_square(links)
    assert together == pytest.approx((whole.high - whole.low) / 2)
    assert square == pytest.approx((chance.high - chance.low) / 2)
    assert square <= together


_CLOSING = """
kind = "dimension-chain"
id = "chain"
closes = { of = "face", dimension = "room" }
"""
_LINKS = """
[chain.slot]
size = "10 mm ±0.3"
direction = "widens"
[chain.pad]
size = "8 mm"
direction = "narrows"
"""


@pytest.mark.parametrize(
    ("own", "room", "outcome", "worst"),
    [
        ("", "2 mm ±0.31", "conforms", None),
        ("", "2 mm ±0.29", "finding", None),
        ('least = "1.6 mm"\n', "2 mm ±0.25", "finding", 2.3e-3),
        ('least = "1.6 mm"\n', "2 mm ±0.31", "conforms", None),
        ('greatest = "2.4 mm"\n', "2 mm ±0.25", "finding", 1.7e-3),
        ('greatest = "2.4 mm"\n', "2 mm ±0.31", "conforms", None),
        ('least = "1.6 mm"\ngreatest = "2.4 mm"\n', "2 mm ±0.01", "conforms", None),
        ('least = "1.6 mm"\n', "2 mm", "conforms", None),
        ('least = "1.75 mm"\n', "2 mm ±0.31", "finding", 1.7e-3),
        ('greatest = "2.25 mm"\n', "2 mm ±0.31", "finding", 2.3e-3),
        ('least = "1.75 mm"\n', "2 mm", "finding", 1.7e-3),
        ('greatest = "2.2 mm"\n', "2 mm", "finding", 2.3e-3),
    ],
)
def test_a_gap_is_asked_what_the_size_that_it_is_states(
    workshop: DesignFolder, own: str, room: str, outcome: str, worst: float | None
) -> None:
    """10 ± 0.3 less 8 mm: 1.7 to 2.3. What the chain itself states goes first; a size without limits asks nothing."""
    face = f'kind = "locating-face"\nid = "face"\nroom = "{room}"\n'
    check = workshop.write({"chain.toml": _CLOSING + own + _LINKS, "face.toml": face}).only(WORST)
    assert check.outcome == outcome, check.says
    assert worst is None or found(check) == pytest.approx(worst)


@pytest.mark.parametrize(("spread", "share"), [("uniform", 0.75), ("normal", 0.9332), ("", 0.9332)])
def test_a_link_is_spread_as_it_is_said_to_be(workshop: DesignFolder, spread: str, share: float) -> None:
    """0 to 1 mm: three of four alike lie below 0.75; of normal ones, six deviations wide, those below 1.5: 93.32 %."""
    text = CHAIN.split("[chain.a]")[0].replace('least = "-5 thou"\n', "").replace("15 thou", "0.75 mm")
    line = f'spread = "{spread}"\n' if spread else ""
    workshop.write({"chain.toml": text + f'[chain.a]\nsize = "0..1 mm"\ndirection = "widens"\n{line}'})
    low, _ = wilson_interval(round(share * 20_000), 20_000)
    assert found(workshop.only(CHANCE)) == pytest.approx(low, abs=0.006)


def test_the_last_link_is_told_once(workshop: DesignFolder) -> None:
    """Where the last link alone is asked, it is told once."""
    once = write(workshop).only(MEASURED).says
    assert once.count("machine a to") == 1
    assert "; machine" not in once
