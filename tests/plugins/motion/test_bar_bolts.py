"""slidebar.bolted: the bolts that press a slide bar to its supports.

The train of tests: 325.940 kN on the piston, crank 330 and rod 1900 mm; the thrust is greatest near the quarter, where
it is 325.940 · tan(arcsin(330/1900)) = 325.940 · 0.176366 = 57.485 kN.
"""

from __future__ import annotations

import pytest

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, on_sheet
from speclint_motion.formulae.bodies import tightening_factor
from speclint_motion.formulae.guides import thrust_on_one_bar
from tests.own_limits import own_limit
from tests.plugins.motion.train import files

BOLTED = "slidebar.bolted"
SUPPORTS = """
[supports.front]
drawing = "D-1"
bolts = 4
thread = "M24"
bolt_material = "known-forging"
preload = "20..23 kN"
locked_by = "split pin"
[supports.back]
drawing = "D-2"
bolts = 2
thread = "M24"
bolt_material = "known-forging"
preload = "50..60 kN"
locked_by = "locking plate"
"""


def _bar(*changes: tuple[str, str]) -> dict[str, str]:
    text = SUPPORTS
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return files("bar", add=text)


@pytest.mark.parametrize(("preload", "outcome"), [("17.26", "conforms"), ("17.23", "finding")])
def test_the_least_preload_holds_the_thrust(workshop: DesignFolder, preload: str, outcome: str) -> None:
    """1.2 · 57.485 = 68.982 kN of four bolts: 17.2455 kN each."""
    check = workshop.write(_bar(('"20..23 kN"', f'"{preload}..23 kN"'))).only(BOLTED)
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.HOLD)
    assert on_sheet(check, "N_1") == pytest.approx(57_485, rel=1e-4)
    assert outcome == "conforms" or check.actual == "bar held at front with 68.92 kN, 68.98 kN wanted"


@pytest.mark.parametrize(("most", "outcome"), [("148 kN", "conforms"), ("148.1 kN", "finding")])
def test_a_bolt_is_not_overtightened(workshop: DesignFolder, most: str, outcome: str) -> None:
    """ISO 898-1: 352.5 mm² of M24: 0.7 · 600 MPa · 352.5 = 148.06 kN."""
    check = workshop.write(_bar(('"50..60 kN"', f'"50..{most}"'))).only(BOLTED)
    assert check.outcome == outcome
    assert outcome == "conforms" or "bolt at back tightened to 148.1 kN" in check.actual


@pytest.mark.parametrize(
    ("preload", "grade", "says"),
    [
        ("50..55.1 kN", None, ""),
        ("50..54.9 kN", Grade.QUERY, "1.1"),
        ("35..140 kN", None, ""),
        ("35..141 kN", Grade.QUERY, "4.03"),
    ],
)
def test_some_method_of_tightening_leaves_the_preload(
    workshop: DesignFolder, preload: str, grade: Grade | None, says: str
) -> None:
    """55/50 = 1.1 by ultrasound, VDI 2230; 140/35 = 4 by an impact wrench. Two bolts of 35 kN hold 70 of 69 kN."""
    check = workshop.write(_bar(('"50..60 kN"', f'"{preload}"'))).only(BOLTED)
    assert check.grade is grade
    assert (
        not says
        or check.actual == f"greatest preload at back is {says} times the least: tightening leaves 1.1 to 4"
    )


def test_one_bolt_holds_no_end(workshop: DesignFolder) -> None:
    """One of 100 kN presses with more than 69 kN, and two of 50 kN do."""
    assert workshop.write(_bar()).only(BOLTED).outcome == "conforms"
    one = _bar(("bolts = 2", "bolts = 1"), ('"50..60 kN"', '"100..120 kN"'))
    check = workshop.write(one).only(BOLTED)
    assert (check.outcome, check.grade, check.actual) == ("finding", Grade.HOLD, "bolts at back: 1")


@pytest.mark.parametrize(
    ("lock", "outcome"),
    [("tab washer", "conforms"), ("split pin", "conforms"), ("set screw", "finding"), ("nothing", "finding")],
)
def test_a_lock_must_hold(workshop: DesignFolder, lock: str, outcome: str) -> None:
    assert workshop.write(_bar(('"locking plate"', f'"{lock}"'))).only(BOLTED).outcome == outcome


def test_two_bars_share_the_thrust(workshop: DesignFolder) -> None:
    shared = files("bar", ("bars_sharing = 1", "bars_sharing = 2"), add=SUPPORTS)
    assert on_sheet(workshop.write(shared).only(BOLTED), "N_1") == pytest.approx(28_742.5, rel=1e-4)


@pytest.mark.parametrize(
    "line",
    [
        "bolts = 4",
        'preload = "20..23 kN"',
        'locked_by = "split pin"',
        'thread = "M24"',
        'bolt_material = "known-forging"',
    ],
)
def test_what_nobody_states_is_asked(workshop: DesignFolder, line: str) -> None:
    without = files("bar", add=SUPPORTS.replace(f"{line}\n", "", 1))
    assert workshop.write(without).only(BOLTED).outcome == "not assessed"
    assert workshop.write(files()).only(BOLTED).outcome == "not assessed"


def test_both_ends_are_held_by_a_preload_with_limits(workshop: DesignFolder) -> None:
    one = files("bar", add=SUPPORTS[: SUPPORTS.index("[supports.back]")])
    check = workshop.write(one).only(BOLTED)
    assert (check.outcome, check.says) == (
        "not assessed",
        "bar states one support: a bar is held at both of its ends",
    )
    check = workshop.write(_bar(('"20..23 kN"', '"20 kN"'))).only(BOLTED)
    assert (check.outcome, check.says) == (
        "not assessed",
        "the preload at front states no least and greatest",
    )


@pytest.mark.parametrize(
    ("limit", "value"),
    [("held", "1.4"), ("bolt", "0.25"), ("several", "3"), ("close", "1.3"), ("wide", "1.18")],
)
def test_a_works_may_set_its_own_limits(workshop: DesignFolder, limit: str, value: str) -> None:
    """1.4 · 57.485 = 80.5 kN of the 80 that four bolts hold; 0.25 · 600 · 352.5 = 52.9 kN for 60.

    Two bolts at the back; 60/50 = 1.2.
    """
    design = _bar()
    own = design["speclint.toml"] + own_limit(BOLTED, "motion", **{limit: value})
    assert workshop.write({**design, "speclint.toml": own}).only(BOLTED).outcome == "finding"


def test_no_bar_takes_no_thrust() -> None:
    with pytest.raises(OutOfRange):
        thrust_on_one_bar(N=1e3, z=0.0)


def test_no_preload_has_no_factor() -> None:
    """125 kN over 95 kN is 1.3158."""
    assert tightening_factor(F_max=125e3, F_min=95e3) == pytest.approx(1.315789, rel=1e-6)
    with pytest.raises(OutOfRange):
        tightening_factor(F_max=1e3, F_min=0.0)
