"""steamway.speed, steamway.pressure-drop, steamway.area-continuity and steamway.choked.

The live path is worked again with another library of steam (iapws) and with the textbooks' equations written out.
"""

from __future__ import annotations

import math
from functools import cache

import pytest
from hypothesis import given, strategies as st
from iapws import IAPWS97

from speclint import Grade
from speclint.facts.stages import flow_left, losses_together, pressure_after
from speclint.testing import DesignFolder, on_sheet
from speclint_steamways.formulae.paths import share_lost
from tests.own_limits import own_limit
from tests.plugins.known_metals import WITH_METALS
from tests.plugins.steamways.way import BELT, OUT, files, without

SPEED, DROP = "steamway.speed", "steamway.pressure-drop"
AREAS, CHOKED = "steamway.area-continuity", "steamway.choked"


def limited(rule: str, **limits: str) -> str:
    """Settings with limits of one rule."""
    return WITH_METALS + own_limit(rule, "steamways", **limits)


def colebrook(Re: float, rough: float) -> float:
    """The friction factor by substituting over and over, not by Newton's method."""
    f = 0.02
    for _ in range(60):
        f = 1 / (-2 * math.log10(rough / 3.7 + 2.51 / (Re * math.sqrt(f)))) ** 2
    return f


@cache
def reworked() -> dict[str, float]:
    """The live path: pipe of 157.1 mm, chest, pocket; iapws for the steam, Crane's 60 f_T of a mitre, 14 f_T at r/d
    1.5 and 12 f_T at 2 for a bend (here r/d 1.90961, so 12.36156 f_T), Borda's step, a contraction's half.
    """
    p, m = 16.01325e5, 1.7
    h = IAPWS97(P=p / 1e6, T=663.15).h
    stages = (
        (
            math.pi * 0.1571**2 / 4,
            0.1571,
            2.7,
            0.05e-3,
            (2 * (14 - 2 * (0.3 / 0.1571 - 1.5) / 0.5), 0.0),
        ),
        (0.04, 4 * 0.04 / 0.9, 0.3, 0.1e-3, (0.0, 0.0)),
        (0.022, 4 * 0.022 / 0.55, 0.2, 0.1e-3, (60.0, 0.3)),
    )
    found: dict[str, float] = {}
    before: tuple[float, float, float] | None = None
    for number, (A, d, L, rough, (turns, other)) in enumerate(stages, 1):
        steam = IAPWS97(P=p / 1e6, h=h)
        v = m / (steam.rho * A)
        found[f"v_{number}"], found[f"T_{number}"], found[f"Ma_{number}"] = v, steam.T, v / steam.w
        f = colebrook(steam.rho * v * d / steam.mu, rough / d)
        f_T = 1 / (2 * math.log10(rough / d / 3.7)) ** 2
        dynamic = steam.rho * v**2 / 2
        loss = (f * L / d + turns * f_T + other) * dynamic
        if before:
            A_0, v_0, rho_0 = before
            loss += (1 - A_0 / A) ** 2 * rho_0 * v_0**2 / 2 if A > A_0 else (1 - A / A_0) / 2 * dynamic
        before = (A, v, steam.rho)
        p -= loss
        found[f"p_{number + 1}"] = p
    found["x"] = 1 - p / 16.01325e5
    return found


def test_the_sheet_of_a_path_is_worked_again(workshop: DesignFolder) -> None:
    check = workshop.write(files()).only(DROP, "pocket")
    assert check.outcome == "conforms"
    for symbol, value in reworked().items():
        tolerance = 2e-3 if symbol == "x" else 1e-4
        assert on_sheet(check, symbol) == pytest.approx(value, rel=tolerance), symbol


def test_inches_and_pounds_give_the_same_numbers(workshop: DesignFolder) -> None:
    """The same path drawn in inches: 6.625984 in of pipe and so on, to seven figures."""
    metric = on_sheet(workshop.write(files()).only(DROP, "pocket"), "x")
    found = files()
    for part, old, new in (
        ("pipe", '"168.3 mm"', '"6.6259843 in"'),
        ("pipe", '"5.6 mm"', '"0.22047244 in"'),
        ("pipe", '"300 mm"', '"11.811024 in"'),
        ("pipe", '"2.7 m"', '"8.8582677 ft"'),
        ("pipe", '"0.05 mm"', '"0.0019685039 in"'),
        ("chest", '"40000 mm²"', '"62.000124 in²"'),
        ("chest", '"0.9 m"', '"35.433071 in"'),
        ("chest", '"0.3 m"', '"11.811024 in"'),
        ("pocket", '"22000 mm²"', '"34.100068 in²"'),
        ("duty", '"15 bar gauge"', '"217.55660 psi gauge"'),
        ("duty", '"390 °C"', '"734 °F"'),
        ("duty", '"1.7 kg/s"', '"13492.290 lb/h"'),
    ):
        name = f"{part}.toml"
        assert found[name].count(old) == 1
        found[name] = found[name].replace(old, new)
    imperial = on_sheet(workshop.write(found).only(DROP, "pocket"), "x")
    assert imperial == pytest.approx(metric, rel=1e-5)


@pytest.mark.parametrize(("by", "outcome"), [(1.002, "conforms"), (0.998, "finding")])
def test_pressure_drop_from_both_sides(workshop: DesignFolder, by: float, outcome: str) -> None:
    own = limited(DROP, live=f"{by * reworked()['x']:.8f}")
    check = workshop.write({**files(), "speclint.toml": own}).only(DROP, "pocket")
    assert (check.outcome, check.grade) == (outcome, Grade.OBSERVATION if outcome == "finding" else None)


@pytest.mark.parametrize(("by", "outcome"), [(1.0002, "conforms"), (0.9998, "finding")])
def test_speed_from_both_sides(workshop: DesignFolder, by: float, outcome: str) -> None:
    """The pipe is the narrowest and the fastest."""
    own = limited(SPEED, live=f"{by * reworked()['v_1']:.6f} m/s")
    assert workshop.write({**files(), "speclint.toml": own}).only(SPEED, "pocket").outcome == outcome


def test_a_shared_pipe_carries_the_steam_of_all_its_cylinders(workshop: DesignFolder) -> None:
    """Three cylinders on one pipe: three times the speed; the chest and the pocket behind it feed one each."""
    alone = workshop.write(files()).only(SPEED, "pocket")
    assert alone.outcome == "conforms"
    shared = workshop.write(files("pipe", ("cylinders = 1", "cylinders = 3"))).only(SPEED, "pocket")
    assert (shared.outcome, shared.grade) == ("finding", Grade.OBSERVATION)
    assert on_sheet(shared, "v_1") == pytest.approx(3 * on_sheet(alone, "v_1"))
    assert on_sheet(shared, "M_2") == pytest.approx(1.7)


def test_a_wide_shared_pipe_may_choke_before_a_narrow_one_of_its_own(workshop: DesignFolder) -> None:
    """5.1 kg/s in the chest of 40 000 mm², against 1.7 kg/s in the pipe's 19 384 mm²: 127.5 and 87.7 kg/(m² s)."""
    own = workshop.write(files()).only(CHOKED, "pocket")
    shared = workshop.write(files("chest", ("cylinders = 1", "cylinders = 3"))).only(CHOKED, "pocket")
    assert on_sheet(shared, "x") / on_sheet(own, "x") == pytest.approx(127.5 / 87.70, rel=0.02)


@pytest.mark.parametrize(("by", "outcome"), [(1.0002, "conforms"), (0.9998, "finding")])
def test_mach_number_from_both_sides(workshop: DesignFolder, by: float, outcome: str) -> None:
    own = limited(SPEED, mach=f"{by * reworked()['Ma_1']:.8f}")
    assert workshop.write({**files(), "speclint.toml": own}).only(SPEED, "pocket").outcome == outcome


def test_the_exhaust_has_its_own_limit_of_speed(workshop: DesignFolder) -> None:
    """IF97 by iapws: 1.36325 bar, 170 °C; 1.7 kg/s through 206.5 mm."""
    check = workshop.write(files()).only(SPEED, "nozzle")
    assert check.outcome == "conforms"
    rho = IAPWS97(P=on_sheet(check, "p_2") / 1e6, h=IAPWS97(P=0.136325, T=443.15).h).rho
    assert on_sheet(check, "v_2") == pytest.approx(1.7 / (rho * math.pi * 0.2065**2 / 4), rel=1e-5)
    assert workshop.write(files("out", ("219.1 mm", "193.7 mm"))).only(SPEED, "nozzle").outcome == "finding"


def test_wet_exhaust_goes_by_its_dryness(workshop: DesignFolder) -> None:
    """0.96 dry at 1.36325 bar, by iapws: its enthalpy is kept along the path, and no temperature is asked."""
    wet = ('exhaust_temperature = "170 °C"', 'exhaust_dryness = "0.96"')
    check = workshop.write(files("duty", wet)).only(SPEED, "nozzle")
    h = IAPWS97(P=0.136325, x=0.96).h
    assert on_sheet(check, "h") == pytest.approx(h * 1e3, rel=1e-6)
    rho = IAPWS97(P=on_sheet(check, "p_2") / 1e6, h=h).rho
    assert on_sheet(check, "v_2") == pytest.approx(1.7 / (rho * math.pi * 0.2065**2 / 4), rel=1e-5)


def test_dry_exhaust_goes_by_its_temperature(workshop: DesignFolder) -> None:
    dry = ('exhaust_temperature = "170 °C"', 'exhaust_temperature = "170 °C"\nexhaust_dryness = "1"')
    check = workshop.write(files("duty", dry)).only(SPEED, "nozzle")
    assert on_sheet(check, "h") == pytest.approx(IAPWS97(P=0.136325, T=443.15).h * 1e3, rel=1e-6)


def test_a_path_is_judged_at_its_end(workshop: DesignFolder) -> None:
    found = {check.component: check.outcome for check in workshop.write(files()).check(DROP)}
    assert {name for name, outcome in found.items() if outcome == "conforms"} == {"pocket", "nozzle"}
    assert {outcome for name, outcome in found.items() if name not in ("pocket", "nozzle")} == {
        "not applicable"
    }


@pytest.mark.parametrize("narrow", ["out", "other-out"])
def test_of_two_paths_each_is_judged(workshop: DesignFolder, narrow: str) -> None:
    """A pipe of 193.7 mm is too fast, as above, whichever of both it is."""
    made = files("nozzle", ('follows = "out"', 'follows = ["out", "other-out"]'))
    made["other-belt.toml"] = BELT.replace('"belt"', '"other-belt"', 1)
    made["other-out.toml"] = OUT.replace('"out"', '"other-out"').replace('"belt"', '"other-belt"')
    assert workshop.write(made).only(SPEED, "nozzle").outcome == "conforms"
    made[f"{narrow}.toml"] = made[f"{narrow}.toml"].replace("219.1 mm", "193.7 mm")
    assert workshop.write(made).only(SPEED, "nozzle").outcome == "finding"


@pytest.mark.parametrize(
    ("part", "key"),
    [
        ("pipe", "roughness"),
        ("pipe", "length"),
        ("pipe", "bends"),
        ("pipe", "carries"),
        ("chest", "area"),
        ("chest", "perimeter"),
        ("pocket", "mitres"),
        ("pocket", "loss_coefficient"),
        ("pipe", "cylinders"),
        ("chest", "cylinders"),
    ],
)
def test_a_path_is_not_assessed_without(workshop: DesignFolder, part: str, key: str) -> None:
    check = workshop.write(without(part, key)).only(DROP, "pocket")
    assert check.outcome == "not assessed"
    assert key in check.says


def test_a_path_needs_the_steam_flow(workshop: DesignFolder) -> None:
    check = workshop.write(files("duty", ('steam_flow = "1.7 kg/s"\n', ""))).only(DROP, "pocket")
    assert check.outcome == "not assessed"
    assert "steam_flow" in check.says


def test_wet_steam_is_a_query(workshop: DesignFolder) -> None:
    """At 15 bar gauge steam is dry from 201.4 °C."""
    check = workshop.write(files("duty", ('live_temperature = "390 °C"', 'live_temperature = "200 °C"')))
    found = check.only(DROP, "pocket")
    assert (found.outcome, found.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ("168.3 mm", "163.6 mm", "conforms"),
        ("168.3 mm", "163.4 mm", "finding"),
        ("5.6 mm", "7.9 mm", "conforms"),
        ("5.6 mm", "8.1 mm", "finding"),
    ],
)
def test_areas_from_both_sides(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    """Flat beats at 20 mm: π × 150 × 20 + π × 140 × 20 = 18 221.24 mm², each below its throat of 12 393.8 and 11 473.2.
    A bore of √(18 221.24 × 4/π) = 152.316 mm: 163.516 mm outside a wall of 5.6, or a wall of 7.992 in 168.3.
    """
    check = workshop.write(files("pipe", (old, new))).only(AREAS, "pocket")
    assert on_sheet(check, "A_v") * 1e6 == pytest.approx(18_221.24, rel=1e-6)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("throat", "area"), [("140 mm", 9424.78), ("110 mm", 6503.32)])
def test_a_valve_of_one_beat_passes_what_that_beat_does(
    workshop: DesignFolder, throat: str, area: float
) -> None:
    """π × 150 × 20 = 9424.78 mm², or the throat: π/4 × 110² − 3000 = 6503.32."""
    made = files(
        "valve",
        ("beats = 2", "beats = 1"),
        ('"140 mm"\nblocked_area = "3000', f'"{throat}"\nblocked_area = "3000'),
    )
    made["valve.toml"] = made["valve.toml"].partition("[lower_beat]")[0]
    check = workshop.write(made).only(AREAS, "pocket")
    assert check.outcome == "conforms"
    assert on_sheet(check, "A_v") * 1e6 == pytest.approx(area, rel=1e-6)


@pytest.mark.parametrize(
    ("part", "old", "new", "key"),
    [
        ("chest", '"40000 mm²"', '"9000 mm²"', "area"),
        ("pipe", '"168.3 mm"', '"108 mm"', "outside_diameter"),
    ],
)
def test_the_finding_names_the_neck_and_not_the_end_of_the_path(
    workshop: DesignFolder, part: str, old: str, new: str, key: str
) -> None:
    """The path ends at the pocket, which is wide."""
    check = workshop.write(files(part, (old, new))).only(AREAS, "pocket")
    assert check.outcome == "finding"
    assert check.judgement is not None
    assert (check.judgement.where.file, check.judgement.where.key) == (f"{part}.toml", key)


@pytest.mark.parametrize(("box", "outcome"), [("194", "conforms"), ("193.8", "finding")])
def test_the_room_round_a_valve_in_its_box_is_a_stage(workshop: DesignFolder, box: str, outcome: str) -> None:
    """The larger beat opens π × 150 × 20 = 9424.8 mm²; round a valve of 160 mm that wants a box of
    √(160² + 4 × 9424.8/π) = 193.91 mm.
    """
    check = workshop.write(files("valve", ('"200 mm"', f'"{box} mm"'))).only(AREAS, "pocket")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    if outcome == "finding":
        assert check.judgement is not None
        assert (check.judgement.where.file, check.judgement.where.key) == ("valve.toml", "box_diameter")


@pytest.mark.parametrize("key", ["box_diameter", "outside_diameter"])
def test_a_neck_is_told_though_the_room_round_the_valve_is_not_stated(
    workshop: DesignFolder, key: str
) -> None:
    assert workshop.write(without("valve", key)).only(AREAS, "pocket").outcome == "not assessed"
    found = without("valve", key)
    found["chest.toml"] = found["chest.toml"].replace('"40000 mm²"', '"9000 mm²"')
    assert workshop.write(found).only(AREAS, "pocket").outcome == "finding"


def test_a_path_must_name_its_valve(workshop: DesignFolder) -> None:
    assert workshop.write(without("pocket", "valve")).only(AREAS, "pocket").outcome == "not assessed"


@cache
def greatest_flux() -> float:
    """Flux of an ideal expansion from the pipe's state by iapws, the greatest over a fine table of throat pressures."""
    inlet = IAPWS97(P=1.601325, T=663.15)
    best = 0.0
    for step in range(500, 600):
        throat = IAPWS97(P=1.601325 * step / 1000, s=inlet.s)
        best = max(best, throat.rho * math.sqrt(2e3 * (inlet.h - throat.h)))
    return best


@pytest.mark.parametrize(("by", "outcome"), [(1.001, "conforms"), (0.999, "finding")])
def test_choking_from_both_sides(workshop: DesignFolder, by: float, outcome: str) -> None:
    share = 1.7 / (0.9 * math.pi * 0.1571**2 / 4 * greatest_flux())
    own = limited(CHOKED, share=f"{by * share:.8f}")
    check = workshop.write({**files(), "speclint.toml": own}).only(CHOKED, "pocket")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("by", "outcome"), [(0.999, "conforms"), (1.001, "finding")])
def test_half_of_the_choked_flow_is_the_most(workshop: DesignFolder, by: float, outcome: str) -> None:
    """A pipe of ten cylinders chokes first; each has a twentieth of what 0.9 of its bore passes."""
    flow = 0.05 * 0.9 * math.pi * 0.1571**2 / 4 * greatest_flux()
    made = files("pipe", ("cylinders = 1", "cylinders = 10"))
    made["duty.toml"] = made["duty.toml"].replace('"1.7 kg/s"', f'"{by * flow:.6f} kg/s"')
    assert workshop.write(made).only(CHOKED, "pocket").outcome == outcome


def test_the_stages_of_a_path_are_numbered_from_its_start(workshop: DesignFolder) -> None:
    """157.1 mm of bore over the 18 221.24 mm² of the valve, then 40 000 and 22 000 mm²."""
    check = workshop.write(files()).only(AREAS, "pocket")
    bore = math.pi * 157.1**2 / 4
    for symbol, area in (("x_A1", bore), ("x_A2", 40_000), ("x_A3", 22_000)):
        assert on_sheet(check, symbol) == pytest.approx(area / 18_221.24, rel=1e-5)


def test_napier_agrees_within_a_twentieth(workshop: DesignFolder) -> None:
    """Marks (from memory): p A/70 ÷ (1 + 0.00065 °F of superheat), at 16 bar and 188 K of superheat."""
    assert on_sheet(workshop.write(files()).only(CHOKED, "pocket"), "x_N") == pytest.approx(1.0, abs=0.05)


def test_low_exhaust_pressure_is_beyond_napier_and_goes_without(workshop: DesignFolder) -> None:
    check = workshop.write(files()).only(CHOKED, "nozzle")
    assert check.outcome == "conforms"
    assert not [step for step in check.steps if step.symbol == "x_N"]


@given(p=st.floats(1e5, 2e6), share=st.floats(0, 0.9))
def test_what_is_lost_and_what_is_left_make_the_whole(p: float, share: float) -> None:
    assert share_lost(p, pressure_after(p, share * p)) == pytest.approx(share, abs=1e-9)


@given(m=st.floats(0.1, 5), x=st.floats(0, 1), y=st.floats(0, 1))
def test_branches_take_in_any_order(m: float, x: float, y: float) -> None:
    assert flow_left(flow_left(m, x), y) == pytest.approx(flow_left(flow_left(m, y), x))


@given(n=st.integers(0, 5), ζ=st.floats(0, 2))
def test_losses_add(n: int, ζ: float) -> None:
    assert losses_together(n, ζ, 0, 0.0, 0.0) + losses_together(0, 0.0, n, ζ, 0.0) == pytest.approx(
        losses_together(2 * n, ζ, 0, 0.0, 0.0)
    )
