"""Rates of wear, new clearances and reaming, against what an engine and its bearings can have."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, changed, found, limit, without_key
from speclint_motion.formulae.wear import distance_to_limit, grown_by_wear
from tests.plugins.motion.test_wear import ALONE, BORE, SPINDLE, wear

REACHES, CAN_RUN, REAMED = "wear.reaches-its-limit", "wear.new-can-run", "wear.reamed-clean"
CAM = 'kind = "cam"\nid = "cam"\n'
SPRING = 'kind = "compression-spring"\nid = "spring"\nfree_length = "140 mm"\n'
BAR = 'kind = "slide-bar"\nid = "bar"\n'
ROCKER = 'kind = "rocker"\nid = "rocker"\npin = "40 mm"\n'


@pytest.mark.parametrize(
    ("text", "table", "low", "enough"),
    [
        (CAM, ("0.1 mm", {}), "3.99 µm", "4.01 µm"),  # 0.1 mm / 25
        (ALONE["ring"], ("15.6 mm", {}), "15.9 µm", "16.1 µm"),  # (16 − 15.6)/25
        (SPRING, ("139 mm", {}), "39.9 µm", "40.1 µm"),  # (140 − 139)/25
        (SPINDLE, ("0.22 mm", {}), "6.35 µm", "6.37 µm"),  # (0.22 − 0.061)/25 = 6.36 µm
        (ALONE["pin"], ("0.5 mm", {"new": "0.12 mm ±0.02"}), "15.9 µm", "16.1 µm"),  # (0.5 − 0.10)/25
        (BORE, ("0.4 mm", {"new": "0.03 mm"}), "14.7 µm", "14.9 µm"),  # (0.4 − 0.03)/25 = 14.8 µm
        (BAR, ("1 mm", {"new": "0.5 mm"}), "19.9 µm", "20.1 µm"),  # (1 − 0.5)/25
        (ROCKER, ("0.2 mm", {"new": "0.05 mm"}), "5.99 µm", "6.01 µm"),  # (0.2 − 0.05)/25
    ],
)
@pytest.mark.parametrize("basis", ["works record", "common practice"])
def test_a_part_reaches_its_limit_in_the_life_of_its_engine(
    workshop: DesignFolder, text: str, table: tuple[str, dict[str, str]], low: str, enough: str, basis: str
) -> None:
    """2 500 000 km are 25 times the 100 000 km of a rate: the wear to the limit over 25 is the least rate."""
    size, more = table
    check = workshop.write({"part.toml": text + wear(size, low, basis, **more)}).only(REACHES)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert limit(check) == pytest.approx(2.5e9)
    check = workshop.write({"part.toml": text + wear(size, enough, basis, **more)}).only(REACHES)
    assert check.outcome == "conforms"


def test_a_rate_in_inches_written_as_millimetres_is_a_query(workshop: DesignFolder) -> None:
    """0.03 mm, written 0.00118 mm: 0.1/0.00118 × 100 000 = 8 475 000 km."""
    check = workshop.write({"cam.toml": CAM + wear("0.1 mm", "1.18 µm")}).only(REACHES)
    assert found(check) / 1e3 == pytest.approx(8_475_000, rel=1e-3)
    assert "an engine runs" in check.says


@given(a=st.floats(0, 1e-3), m=st.floats(0, 1e-3), w=st.floats(1e-6, 1e-3))
def test_at_the_distance_to_its_limit_a_part_is_worn_to_it(a: float, m: float, w: float) -> None:
    s = distance_to_limit(m_n=m, a=a, w=w, S=1e8)
    grown = grown_by_wear(a=a, w=w if m > a else -w, s=s, S=1e8)
    assert grown == pytest.approx(m, abs=1e-12)


def test_what_does_not_wear_reaches_no_limit() -> None:
    with pytest.raises(OutOfRange, match="nothing is worn"):
        distance_to_limit(m_n=1e-4, a=0.0, w=0.0, S=1e8)


@pytest.mark.parametrize(
    ("text", "new", "outcome"),
    [
        (ALONE["pin"], "0.0301 mm", "conforms"),  # 0.0003 × 100 mm
        (ALONE["pin"], "0.0299 mm", "finding"),
        (ALONE["pin"], "0.05 mm ±0.021", "finding"),  # 0.05 − 0.021 = 0.029 mm
        (ALONE["pin"], "0.05 mm ±0.019", "conforms"),
        (ROCKER, "0.0121 mm", "conforms"),  # 0.0003 × 40 mm
        (ROCKER, "0.0119 mm", "finding"),
        (BAR, "0.051 mm", "conforms"),
        (BAR, "0.049 mm", "finding"),
    ],
)
def test_a_new_bearing_has_clearance_to_run(
    workshop: DesignFolder, text: str, new: str, outcome: str
) -> None:
    check = workshop.write({"part.toml": text + wear("0.5 mm", new=new)}).only(CAN_RUN)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("new", "outcome"), [("5.1 µm", "conforms"), ("4.9 µm", "finding")])
def test_a_bore_rounder_than_any_is_a_query(workshop: DesignFolder, new: str, outcome: str) -> None:
    check = workshop.write({"liner.toml": BORE + wear("0.5 mm", new=new)}).only(CAN_RUN)
    assert (check.outcome, check.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)


@pytest.mark.parametrize("text", [ALONE["pin"], ROCKER])
@pytest.mark.parametrize(
    ("reamed", "new", "outcome"),
    [
        ("0.38 mm", "0.12 mm", "conforms"),  # 0.5 − 0.12 = 0.38 mm
        ("0.379 mm", "0.12 mm", "finding"),
        ("0.39 mm", "0.12 mm ±0.02", "finding"),  # 0.5 − 0.10 = 0.40 mm
    ],
)
def test_a_bush_is_reamed_by_no_less_than_it_wears(
    workshop: DesignFolder, text: str, reamed: str, new: str, outcome: str
) -> None:
    made = {"part.toml": text + wear("0.5 mm", new=new, reamed=reamed)}
    check = workshop.write(made).only(REAMED)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_pin_that_states_no_reaming_is_not_assessed(workshop: DesignFolder) -> None:
    text = changed(ALONE["pin"] + wear("0.5 mm", new="0.12 mm"))
    assert workshop.write({"pin.toml": text}).only(REAMED).outcome == "not assessed"
    text = without_key(text, "diameter")
    assert workshop.write({"pin.toml": text}).only(CAN_RUN).outcome == "not assessed"
