"""steamway.port-rule, steamway.drains, steamway.drifting, steamway.branch, blast-pipe.area and blast-pipe.lift."""

from __future__ import annotations

import math
from functools import cache

import pytest
from hypothesis import given, strategies as st
from iapws import IAPWS97

from speclint import Grade
from speclint.facts import jet_speed
from speclint.handbook.steam import nozzle_area
from speclint.testing import DesignFolder, on_sheet
from speclint_steamways.formulae.paths import (
    bourne_port,
    breathing_depression,
    compression_ratio,
    effective_area_together,
    trade_port,
)
from tests.plugins.steamways.test_paths import limited
from tests.plugins.steamways.way import BELT, BREATH, OUT, files, without

PORT, DRAINS, DRIFTING = "steamway.port-rule", "steamway.drains", "steamway.drifting"
BRANCH, NOZZLE, LIFT = "steamway.branch", "blast-pipe.area", "blast-pipe.lift"

FEED = """
kind = "steam-passage"
id = "feed"
material = "known-steel"
in_block = "block"
follows = "belt"
place = "branch"
carries = "exhaust steam"
share = "20 %"
feeds = "the feed heater"
low_point = false
"""


@pytest.mark.parametrize(("area", "outcome"), [("15708", "conforms"), ("15707", "finding")])
def test_port_from_both_sides(workshop: DesignFolder, area: str, outcome: str) -> None:
    """0.08 × 196 349.541 = 15 707.96 mm²."""
    check = workshop.write(files("port", ("21000", area))).only(PORT, "port")
    assert (check.outcome, check.grade) == (outcome, Grade.OBSERVATION if outcome == "finding" else None)


def test_the_other_rules_stand_beside(workshop: DesignFolder) -> None:
    """21 000/196 349.5 = 0.10695. 7.92 m/s is 1559.06 ft/min: Bourne 0.389764, the trade 0.259843 of the piston."""
    check = workshop.write(files()).only(PORT, "port")
    assert on_sheet(check, "A/A_p") == pytest.approx(0.106952, rel=1e-5)
    assert on_sheet(check, "A/A_0") == pytest.approx(1.05)  # 0.08 × 500² = 20 000 mm²
    assert (on_sheet(check, "k_B"), on_sheet(check, "k_B′")) == (0.1, 0.125)
    assert on_sheet(check, "A_B") * 1e6 == pytest.approx(0.389764 * 196_349.54, rel=1e-5)
    assert on_sheet(check, "A_v") * 1e6 == pytest.approx(0.259843 * 196_349.54, rel=1e-5)


def test_an_exhaust_port_stands_beside_its_own_rule(workshop: DesignFolder) -> None:
    """0.18 × 500² = 45 000 mm²."""
    check = workshop.write(files("port", ("live steam", "exhaust steam"))).only(PORT, "port")
    assert on_sheet(check, "A_e") * 1e6 == pytest.approx(45_000)


@pytest.mark.parametrize("key", ["area", "cylinder_bore", "in_block"])
def test_the_port_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    found = without("port", key)
    found["port.toml"] += 'duty = "duty"\n'
    assert workshop.write(found).only(PORT, "port").outcome == "not assessed"


@pytest.mark.parametrize(("rule", "part"), [(PORT, "chest"), (DRIFTING, "port")])
def test_other_passages_are_none_of_it(workshop: DesignFolder, rule: str, part: str) -> None:
    assert workshop.write(files()).only(rule, part).outcome == "not applicable"


@pytest.mark.parametrize("part", ["chest", "pocket", "belt"])
def test_undrained_places_are_held(workshop: DesignFolder, part: str) -> None:
    check = workshop.write(files(part, ("drained = true", "drained = false"))).only(DRAINS, part)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert workshop.write(files()).only(DRAINS, part).outcome == "conforms"


def test_a_chest_is_drained_whether_or_not_it_says_that_it_lies_low(workshop: DesignFolder) -> None:
    """Water gathers there by its place."""
    for low in ("true", "false"):
        made = files("chest", ("low_point = true\ndrained = true", f"low_point = {low}\ndrained = false"))
        check = workshop.write(made).only(DRAINS, "chest")
        assert (check.outcome, check.grade) == ("finding", Grade.HOLD), low


def test_a_port_is_drained_where_it_lies_low(workshop: DesignFolder) -> None:
    assert workshop.write(files()).only(DRAINS, "port").outcome == "not applicable"
    low = files("port", ("low_point = false", "low_point = true\ndrained = false"))
    assert workshop.write(low).only(DRAINS, "port").outcome == "finding"


def test_a_relieved_length_of_the_block_is_drained(workshop: DesignFolder) -> None:
    assert workshop.write(files()).only(DRAINS, "block").outcome == "conforms"
    check = workshop.write(files("block", ("drained = true", "drained = false"))).only(DRAINS, "block")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "middle of bore main" in check.says


@pytest.mark.parametrize(("part", "key"), [("chest", "drained"), ("chest", "place"), ("port", "low_point")])
def test_drains_are_not_assessed_without(workshop: DesignFolder, part: str, key: str) -> None:
    check = workshop.write(without(part, key)).only(DRAINS, part)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("area", "outcome"), [("32100", "conforms"), ("32000", "finding")])
def test_depression_from_both_sides(workshop: DesignFolder, area: str, outcome: str) -> None:
    """Air of 20 °C: 101 325/(287.05 × 293.15) = 1.204113 kg/m³; √(2 × 10 000/1.204113) = 128.879 m/s.

    Greatest piston speed at 360 rev/min, from a table of angles of the exact formula: 12.627 m/s.
    196 349.5 × 12.627/(0.6 × 128.879) = 32 063 mm².
    """
    check = workshop.write(files("breath", ("40000", area))).only(DRIFTING, "breath")
    table = max(speed_at(math.radians(tenth / 10)) for tenth in range(1800))
    assert table == pytest.approx(12.627, abs=1e-3)
    assert on_sheet(check, "v_max") == pytest.approx(table, rel=1e-6)
    assert check.outcome == outcome


def speed_at(θ: float) -> float:
    """Piston speed by the exact formula, 360 rev/min, 0.33 and 1.9 m."""
    λ = 0.33 / 1.9
    root = math.sqrt(1 - (λ * math.sin(θ)) ** 2)
    return 12 * math.pi * 0.33 * (math.sin(θ) + λ * math.sin(θ) * math.cos(θ) / root)


@pytest.mark.parametrize(("pressure", "outcome"), [("2.66", "conforms"), ("2.67", "finding")])
def test_compression_from_both_sides(workshop: DesignFolder, pressure: str, outcome: str) -> None:
    """423.15 K r^(0.4/1.4) = 623.15 K: r = 1.472645^3.5; ln 1.472645 = 0.387060; e^1.354711 = 3.87564.
    Depression: 1.204113/2 × (196 349.5 × 12.62712/(0.6 × 40 000))² = 6425.2 Pa; 3.87564 × (1.01325 − 0.064252) =
    3.67798: 2.66473 bar gauge.
    """
    found = files("duty", ('cylinder_pressure = "2 bar', f'cylinder_pressure = "{pressure} bar'))
    assert workshop.write(found).only(DRIFTING, "breath").outcome == outcome


def second(area: str, bore: str = "main", place: str = "breathing way") -> str:
    return (
        BREATH.replace('"breath"', '"second"')
        .replace("40000", area)
        .replace('"main"', f'"{bore}"')
        .replace('"breathing way"', f'"{place}"')
    )


@pytest.mark.parametrize(
    ("first", "more", "outcome"),
    [
        ("20000", second("20000"), "conforms"),
        ("20000", second("12100"), "conforms"),
        ("20000", second("12000"), "finding"),
        ("20000", second("20000", bore="other"), "finding"),
        ("20000", second("20000", place="passage"), "finding"),
    ],
)
def test_a_cylinder_breathes_through_all_its_passages(
    workshop: DesignFolder, first: str, more: str, outcome: str
) -> None:
    """32 063 mm² together, as above."""
    found = files("breath", ("40000", first), second=more)
    found["block.toml"] += "\n[bores.other]\n"
    assert workshop.write(found).only(DRIFTING, "breath").outcome == outcome


@pytest.mark.parametrize("key", ["area", "discharge_coefficient", "charge_temperature"])
def test_drifting_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(without("breath", key)).only(DRIFTING, "breath").outcome == "not assessed"


@pytest.mark.parametrize(("share", "outcome"), [("25 %", "conforms"), ("25.1 %", "finding")])
def test_a_branch_from_both_sides(workshop: DesignFolder, share: str, outcome: str) -> None:
    found = files(feed=FEED.replace("20 %", share))
    assert workshop.write(found).only(BRANCH).outcome == outcome


def test_a_branch_lowers_the_flow_of_what_follows(workshop: DesignFolder) -> None:
    """1.7 × 0.8 = 1.36 kg/s a cylinder in the pipe, 2.72 kg/s at the nozzle."""
    check = workshop.write(files(feed=FEED)).only(NOZZLE)
    assert on_sheet(check, "m_2") == pytest.approx(1.36)
    assert [step.value for step in check.steps if step.symbol == "m"][-1] == pytest.approx(2.72)


@pytest.mark.parametrize(("second", "outcome"), [("5 %", "conforms"), ("5.1 %", "finding")])
def test_two_branches_off_one_belt_each_take_of_its_flow(
    workshop: DesignFolder, second: str, outcome: str
) -> None:
    """20 % and 5 % of the same flow leave 75 %, and not 0.8 · 0.95 = 76 %."""
    other = FEED.replace('"feed"', '"pump"').replace("20 %", second)
    check = workshop.write(files(feed=FEED, pump=other)).only(BRANCH)
    assert check.outcome == outcome


@pytest.mark.parametrize(("share", "outcome"), [("50 %", "conforms"), ("50.1 %", "finding")])
def test_of_two_paths_the_nozzle_has_what_both_leave(
    workshop: DesignFolder, share: str, outcome: str
) -> None:
    """One of two cylinders gives 50 %: (0.5 + 1)/2 = 75 % is left."""
    other = {
        "other-belt": BELT.replace('"belt"', '"other-belt"', 1),
        "other-out": OUT.replace('"out"', '"other-out"').replace('"belt"', '"other-belt"'),
        "feed": FEED.replace("20 %", share),
    }
    found = files("nozzle", ('follows = "out"', 'follows = ["out", "other-out"]'), **other)
    check = workshop.write(found).only(BRANCH)
    assert check.outcome == outcome
    assert (on_sheet(check, "z_1"), on_sheet(check, "z_2")) == (1, 1)


def test_without_a_branch_there_is_nothing_to_judge(workshop: DesignFolder) -> None:
    assert workshop.write(files()).only(BRANCH).outcome == "not applicable"


def test_a_branch_is_not_assessed_without_its_share(workshop: DesignFolder) -> None:
    found = files(feed=FEED.replace('share = "20 %"\n', ""))
    assert workshop.write(found).only(BRANCH).outcome == "not assessed"


@cache
def jet(p: float) -> tuple[float, float]:
    """Flux and speed of an ideal expansion from the end of the exhaust path to the atmosphere, by iapws."""
    inlet = IAPWS97(P=p / 1e6, h=IAPWS97(P=0.136325, T=443.15).h)
    out = IAPWS97(P=0.101325, s=inlet.s)
    speed = math.sqrt(2e3 * (inlet.h - out.h))
    return out.rho * speed, speed


@pytest.mark.parametrize(("by", "outcome"), [(1.0005, "conforms"), (0.9995, "finding")])
def test_the_nozzle_from_both_sides(workshop: DesignFolder, by: float, outcome: str) -> None:
    """3.4 kg/s = 0.95 G π d²/4."""
    flux, _ = jet(on_sheet(workshop.write(files()).only(NOZZLE), "p_3"))
    d = math.sqrt(3.4 / (0.95 * flux * math.pi / 4)) * 1e3
    found = files("nozzle", ("165 mm", f"{by * d:.4f} mm"))
    assert workshop.write(found).only(NOZZLE).outcome == outcome


def test_a_nozzle_that_chokes_is_found(workshop: DesignFolder) -> None:
    """1.5 bar gauge behind it: 1.01325/2.513 = 0.40, below the critical ratio of about 0.546."""
    found = files("duty", ('"0.35 bar gauge"', '"1.5 bar gauge"'))
    assert workshop.write(found).only(NOZZLE).outcome == "finding"


def test_the_periods_nozzle_stands_beside(workshop: DesignFolder) -> None:
    """0.3 × 500 = 150 mm; 165/150."""
    assert on_sheet(workshop.write(files()).only(NOZZLE), "d/d_0") == pytest.approx(1.1)


def test_of_unlike_cylinders_the_larger_gives_the_periods_nozzle(workshop: DesignFolder) -> None:
    """Bores of 500 and 550 mm: 0.3 × 550 = 165 mm, and the nozzle of 165 mm is as large."""
    engine = (
        'kind = "engine"\nid = "engine"\nnozzle = "nozzle"\n[cranks.left]\nblock = "block"\nbore = "main"\n'
        '[cranks.right]\nblock = "other"\nbore = "main"\n'
    )
    other = 'kind = "cylinder-block"\nid = "other"\n[bores.main]\ndiameter = "550 mm"\nlined = false\n'
    check = workshop.write(files(engine=engine, other=other)).only(NOZZLE)
    assert on_sheet(check, "d/d_0") == pytest.approx(1.0)


@pytest.mark.parametrize("key", ["diameter", "discharge_coefficient", "follows"])
def test_the_nozzle_is_not_assessed_without(workshop: DesignFolder, key: str) -> None:
    found = without("nozzle", key)
    found["nozzle.toml"] += 'duty = "duty"\n'
    assert workshop.write(found).only(NOZZLE).outcome == "not assessed"


def leaving(m: float, d: float) -> float:
    """The speed that carries the flow out of 0.95 of the opening, the density by iapws at what enthalpy is left."""
    h, v = IAPWS97(P=0.136325, T=443.15).h, 0.0
    for _ in range(80):
        v = m / (0.95 * math.pi / 4 * d**2 * IAPWS97(P=0.101325, h=h - v**2 / 2e3).rho)
    return v


@pytest.mark.parametrize(
    ("limits", "outcome"),
    [
        ({"least": 0.999}, "conforms"),
        ({"least": 1.001}, "finding"),
        ({"most": 1.001}, "conforms"),
        ({"most": 0.999}, "finding"),
    ],
)
def test_the_jet_from_both_sides(workshop: DesignFolder, limits: dict[str, float], outcome: str) -> None:
    """3.4 kg/s out of 0.95 of the opening, over 1100 N."""
    x = 3.4 * leaving(3.4, 0.165) / 1100
    own = limited(LIFT, **{name: f"{by * x:.8f}" for name, by in limits.items()})
    check = workshop.write({**files(), "speclint.toml": own}).only(LIFT)
    assert check.outcome == outcome


@pytest.mark.parametrize("diameter", ["150 mm", "165 mm", "260 mm"])
def test_a_wide_nozzle_has_a_slow_jet(workshop: DesignFolder, diameter: str) -> None:
    """260 mm passes the flow at about a third of the speed of 158 mm, whatever pressure is stated behind it."""
    check = workshop.write(files("nozzle", ("165 mm", diameter))).only(LIFT)
    v = leaving(3.4, float(diameter[:3]) / 1e3)
    assert on_sheet(check, "v") == pytest.approx(v, rel=1e-4)
    assert check.outcome == ("finding" if diameter == "260 mm" else "conforms")


def test_a_flow_that_would_be_faster_than_sound_is_a_query(workshop: DesignFolder) -> None:
    check = workshop.write(files("nozzle", ("165 mm", "110 mm"))).only(LIFT)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert "faster than sound" in check.says


@given(m=st.floats(1.0, 3.0), more=st.floats(1.01, 1.5))
def test_more_flow_or_a_smaller_opening_make_a_faster_jet(m: float, more: float) -> None:
    v = jet_speed(m=m, C=0.95, A=0.025, h=2.8e6, p_2=101325.0)
    assert jet_speed(m=m, C=0.95, A=0.025 / more, h=2.8e6, p_2=101325.0) > v
    assert jet_speed(m=m * more, C=0.95, A=0.025, h=2.8e6, p_2=101325.0) > v


def test_the_jet_is_not_assessed_without_a_reference(workshop: DesignFolder) -> None:
    assert workshop.write(without("nozzle", "reference_momentum")).only(LIFT).outcome == "not assessed"


@given(v=st.floats(0.5, 12), A=st.floats(0.05, 0.5))
def test_bourne_asks_half_as_much_again_as_the_trade(v: float, A: float) -> None:
    """1/4000 against 0.1/600: three halves."""
    assert bourne_port(A, v) == pytest.approx(1.5 * trade_port(A, v))


@given(A=st.floats(0.005, 0.1), v=st.floats(1, 15))
def test_twice_the_way_takes_a_quarter(A: float, v: float) -> None:
    whole = breathing_depression(1.2, 0.2, v, 0.6, A)
    assert breathing_depression(1.2, 0.2, v, 0.6, 2 * A) == pytest.approx(whole / 4)


@given(d=st.floats(0.05, 0.3))
def test_four_nozzles_of_half_the_diameter_are_one(d: float) -> None:
    assert nozzle_area(4.0, d / 2) == pytest.approx(nozzle_area(1.0, d))


@given(A=st.floats(0.001, 0.1), B=st.floats(0.001, 0.1), C=st.floats(0.1, 1.0))
def test_two_passages_breathe_as_one_of_both_areas(A: float, B: float, C: float) -> None:
    both = effective_area_together(effective_area_together(0.0, C, A), C, B)
    assert both == pytest.approx(C * (A + B))


@given(p_0=st.floats(0.8e5, 1.5e5), share=st.floats(0.0, 0.5))
def test_a_depression_is_compressed_further(p_0: float, share: float) -> None:
    assert compression_ratio(3e5, p_0, share * p_0) == pytest.approx(3e5 / p_0 / (1 - share))
