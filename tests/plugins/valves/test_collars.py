"""valve.collar-bears: the ring on which the collar of a spindle presses, as the nut of its valve draws it up."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_assessed, on_sheet
from tests.plugins.valves.gear import duty, train_files

COLLAR = "valve.collar-bears"


def drawn_up(
    collar: str, preload: str = "20 kN", bore: str = "16 mm", metal: str = "20 °C", by: str = "nut"
) -> dict[str, str]:
    """A valve drawn up against the collar of its spindle, all metal at one temperature."""
    made = train_files(
        valve=(('lift = "20 mm"', f'lift = "20 mm"\nspindle_bore = "{bore}"'),), duty_text=duty(metal)
    )
    made["spindle.toml"] += f'collar_diameter = "{collar}"\n' if collar else ""
    made["spindle.toml"] += f'[valve_held]\nby = "{by}"\n' + (
        f'thread = "M16"\npreload = "{preload}"\nlocked_by = "tab washer"\n' if by == "nut" else ""
    )
    return made


@pytest.mark.parametrize(
    ("collar", "preload", "bore", "metal", "outcome"),
    [
        ("20.25 mm", "20 kN", "16 mm", "20 °C", "conforms"),
        ("20.15 mm", "20 kN", "16 mm", "20 °C", "finding"),
        ("20.25 mm", "18..20.5 kN", "16 mm", "20 °C", "finding"),  # the greatest preload counts
        ("20.25 mm", "20 kN", "16 mm +0.3/0", "20 °C", "finding"),  # and the widest bore
        ("20.95 mm", "20 kN", "16 mm", "220 °C", "conforms"),
        ("20.90 mm", "20 kN", "16 mm", "220 °C", "finding"),
    ],
)
def test_the_ring_under_a_collar(
    workshop: DesignFolder, collar: str, preload: str, bore: str, metal: str, outcome: str
) -> None:
    """0.7 × 240 MPa: 20 kN want 119.05 mm² round 16 mm, a collar of 20.188 mm; 0.7 × 200 at 220 °C, one of 20.926."""
    check = workshop.write(drawn_up(collar, preload, bore, metal)).only(COLLAR)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("collar", "outcome"), [("20.95 mm", "conforms"), ("20.90 mm", "finding")])
def test_a_valve_may_be_hottest_while_it_drifts(workshop: DesignFolder, collar: str, outcome: str) -> None:
    """At 220 °C while drifting, else at 20 °C: 0.7 × 200 MPa, a collar of 20.926 mm, as above."""
    made = {**drawn_up(collar), "duty.toml": duty("20 °C", drifting="220 °C")}
    assert workshop.write(made).only(COLLAR).outcome == outcome


def test_the_pressure_under_a_collar(workshop: DesignFolder) -> None:
    """20 kN on π/4 (26² − 16²) = 329.87 mm²: 60.63 MPa."""
    check = workshop.write(drawn_up("26 mm")).only(COLLAR)
    assert on_sheet(check, "p_c") == pytest.approx(60.63e6, rel=1e-4)


@pytest.mark.parametrize(("collar", "found"), [("16 mm", True), ("15 mm", True), ("26 mm", False)])
def test_a_collar_that_passes_the_bore_holds_nothing(
    workshop: DesignFolder, collar: str, found: bool
) -> None:
    check = workshop.write(drawn_up(collar)).only(COLLAR)
    assert (check.outcome == "finding", "no wider than the bore" in check.says) == (found, found)


def test_a_valve_of_one_piece_has_no_collar_to_bear_on(workshop: DesignFolder) -> None:
    assert workshop.write(drawn_up("", by="forged in one")).only(COLLAR).outcome == "not applicable"


def test_a_collar_that_is_not_stated_is_not_assessed(workshop: DesignFolder) -> None:
    expect_not_assessed(workshop.write(drawn_up("")).only(COLLAR), "collar_diameter")


CENTRED = "valve.centred-on-its-spindle"


@pytest.mark.parametrize(
    ("bore", "end", "outcome"),
    [
        ("16.3 mm", "16 mm", "conforms"),
        ("16.319 mm", "16 mm", "conforms"),
        ("16.321 mm", "16 mm", "finding"),
        ("16 mm +0.33/0", "16 mm", "finding"),  # at its widest
        ("16 mm", "15.69 mm", "conforms"),  # 0.31 of 0.3138 mm
        ("16 mm", "15.68 mm", "finding"),  # 0.32 of 0.3136 mm
        ("20 mm", "16 mm", "finding"),
        ("24.48 mm", "24 mm", "conforms"),  # a fiftieth of 24 mm
        ("24.485 mm", "24 mm", "finding"),
        ("40.498 mm", "40 mm", "conforms"),  # half a millimetre, where a fiftieth is 0.8 mm
        ("40.502 mm", "40 mm", "finding"),
        ("40 mm +0.505/0", "40 mm", "finding"),
    ],
)
def test_a_valve_is_centred_by_its_bore(workshop: DesignFolder, bore: str, end: str, outcome: str) -> None:
    """A fiftieth of 16 mm is 0.32 mm; from 25 mm on it is more than half a millimetre."""
    made = drawn_up("26 mm", bore=bore)
    spindle = made["spindle.toml"].replace('least_diameter = "16 mm"', 'least_diameter = "15 mm"')
    made["spindle.toml"] = f'valve_end_diameter = "{end}"\n{spindle}'
    check = workshop.write(made).only(CENTRED)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_valve_of_one_piece_needs_no_bore(workshop: DesignFolder) -> None:
    assert workshop.write(drawn_up("", by="forged in one")).only(CENTRED).outcome == "not applicable"


def test_an_end_that_is_not_stated_is_not_assessed(workshop: DesignFolder) -> None:
    expect_not_assessed(workshop.write(drawn_up("26 mm")).only(CENTRED), "valve_end_diameter")
