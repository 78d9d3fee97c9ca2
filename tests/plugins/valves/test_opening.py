"""The rules of an open valve: area, lift, speed, loss and Mach number."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.errors import OutOfRange
from speclint.handbook.cams import revolutions
from speclint.handbook.members import round_area
from speclint.handbook.steam import speed_ratio
from speclint.testing import DesignFolder, changed, found, on_sheet
from speclint_valves.formulae.flow import governing_area, pressure_ratio, share_of_area, steam_speed
from tests.plugins.valves.gear import gear_files

AREA, WORTH, SPEED = "valve.lift-area", "valve.lift-worth-having", "valve.steam-speed"
LOSS, MACH = "valve.pressure-loss", "valve.mach"
RUNNING_ABSOLUTE = 1.52e6 + 101_325.0
RUNNING_KELVIN = 663.15


def test_flow_area_of_flat_beats_by_hand(workshop: DesignFolder) -> None:
    """π (150 + 140) 20 = 18221.2 mm²."""
    assert found(workshop.write(gear_files()).only(AREA)) == pytest.approx(18221.2e-6, rel=1e-5)


def test_flow_area_of_conical_beats_by_hand(workshop: DesignFolder) -> None:
    """45°: π 152.1213 √(17.8787² + 2.1213²) + π 142.1213 × 18.0041 = 8604.2 + 8038.6 = 16642.8 mm²."""
    files = gear_files()
    files["valve.toml"] = files["valve.toml"].replace('"0 °"', '"45 °"')
    assert found(workshop.write(files).only(AREA)) == pytest.approx(16642.8e-6, rel=1e-5)


def test_a_throat_governs_where_it_is_the_narrower(workshop: DesignFolder) -> None:
    """Two throats of 100 mm with 2000 mm² taken up: 2 × 5853.98 = 11707.96 mm²."""
    files = gear_files(
        valve=(('throat = "140 mm"', 'throat = "100 mm"'), ('throat = "130 mm"', 'throat = "100 mm"'))
    )
    assert found(workshop.write(files).only(AREA)) == pytest.approx(11707.96e-6, rel=1e-6)


def test_a_throat_is_what_the_wall_of_the_valve_leaves(workshop: DesignFolder) -> None:
    """A rim of 130 mm with walls of 15 leaves 100 mm, 7853.98 − 2000 mm²; the upper beat opens π 150 × 20 = 9424.78."""
    through = (
        'through_valve = "neither"',
        'through_valve = "lower"\ncommon_throat = "30000 mm²"\nwall = "15 mm"',
    )
    rim = ('throat = "130 mm"', 'throat = "130 mm"\nrim_diameter = "130 mm"')
    check = workshop.write(gear_files(valve=(through, rim))).only(AREA)
    assert found(check) == pytest.approx(15278.76e-6, rel=1e-6)


def test_a_single_beat_passes_about_half(workshop: DesignFolder) -> None:
    """The trade's fact turned round: π 150 × 20 = 9424.8 of 18221.2 mm²."""
    alone = ("beats = 2", "beats = 1")
    check = workshop.write(gear_files(valve=(alone,))).only(AREA)
    assert found(check) == pytest.approx(9424.8e-6, rel=1e-5)
    unsaid = workshop.write(gear_files(valve=(alone, ('through_valve = "neither"\n', "")))).only(AREA)
    assert found(unsaid) == found(check), "it has no streams that could meet"


@pytest.mark.parametrize(("port", "outcome"), [("20245 mm²", "conforms"), ("20247 mm²", "finding")])
def test_area_limit_from_both_sides(workshop: DesignFolder, port: str, outcome: str) -> None:
    """18221.24/0.9 = 20245.8 mm²."""
    assert workshop.write(gear_files(valve=(("20000 mm²", port),))).only(AREA).outcome == outcome


@pytest.mark.parametrize(
    "line", ['lift = "20 mm"', 'port_area = "20000 mm²"', 'throat = "130 mm"', "beats = 2"]
)
def test_area_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(gear_files(valve=((line, ""),))).only(AREA)
    assert check.outcome == "not assessed"
    assert line.split()[0] in check.says


def test_three_beats_are_a_query(workshop: DesignFolder) -> None:
    check = workshop.write(gear_files(valve=(("beats = 2", "beats = 3"),))).only(AREA)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


def common(area: str, through: str = "lower") -> tuple[tuple[str, str], ...]:
    """Both streams meeting in one throat."""
    return (('through_valve = "neither"', f'through_valve = "{through}"\ncommon_throat = "{area}"'),)


@pytest.mark.parametrize("through", ["upper", "lower", "neither"])
@pytest.mark.parametrize(("area", "outcome"), [("18010 mm²", "conforms"), ("17990 mm²", "finding")])
def test_streams_that_meet_pass_no_more_than_one_throat(
    workshop: DesignFolder, through: str, area: str, outcome: str
) -> None:
    """0.9 × 20 000 = 18 000 mm²: before, both rings were added, 18 221 mm², whatever followed."""
    check = workshop.write(gear_files(valve=common(area, through))).only(AREA)
    assert check.outcome == outcome


@pytest.mark.parametrize(("area", "outcome"), [("16570 mm²", "conforms"), ("16560 mm²", "finding")])
def test_lift_is_worth_no_more_than_the_common_throat(
    workshop: DesignFolder, area: str, outcome: str
) -> None:
    """At 20/1.1 = 18.182 mm the beats open π 290 × 18.182 = 16 564.8 mm²."""
    assert workshop.write(gear_files(valve=common(area))).only(WORTH).outcome == outcome


def test_steam_hastens_through_the_common_throat(workshop: DesignFolder) -> None:
    """Mean speed by area: 18 221.2 mm² without, 9110.6 mm² with: twice as fast."""
    free, narrow = (
        found(workshop.write(gear_files(valve=change)).only(SPEED)) for change in ((), common("9110.62 mm²"))
    )
    assert narrow == pytest.approx(2 * free, rel=1e-5)


@pytest.mark.parametrize("rule", [AREA, WORTH, SPEED, LOSS, MACH])
def test_where_the_streams_go_must_be_known(workshop: DesignFolder, rule: str) -> None:
    unknown = workshop.write(gear_files(valve=(('through_valve = "neither"\n', ""),))).only(rule)
    assert unknown.outcome == "not assessed"
    unsized = workshop.write(gear_files(valve=(('"neither"', '"upper"'),))).only(rule)
    assert unsized.outcome == "not assessed"
    assert "common_throat" in unsized.says


@pytest.mark.parametrize(("lift", "outcome"), [("31.2 mm", "conforms"), ("31.3 mm", "finding")])
def test_lift_worth_having_from_both_sides(workshop: DesignFolder, lift: str, outcome: str) -> None:
    """(π 140²/4 − 2000)/(π 150) = 13393.8/471.24 = 28.4225 mm for the upper beat; 1.1 times that 31.2648 mm."""
    check = workshop.write(gear_files(valve=(('lift = "20 mm"', f'lift = "{lift}"'),))).only(WORTH)
    assert check.outcome == outcome


def test_lift_worth_having_is_not_assessed_without_the_throat(workshop: DesignFolder) -> None:
    assert (
        workshop.write(gear_files(valve=(('throat = "140 mm"', ""),))).only(WORTH).outcome == "not assessed"
    )


def test_mean_speed_by_hand(workshop: DesignFolder) -> None:
    """360 rev/min, 660 mm: 7.92 m/s; 0.1963495 × 7.92/0.01822124 = 85.345 m/s."""
    check = workshop.write(gear_files()).only(SPEED)
    assert check.outcome == "conforms"
    assert found(check) == pytest.approx(85.345, rel=1e-4)


@pytest.mark.parametrize(("port", "outcome"), [("15551 mm²", "conforms"), ("15550 mm²", "finding")])
def test_inlet_speed_limit_from_both_sides(workshop: DesignFolder, port: str, outcome: str) -> None:
    """0.1963495 × 7.92/100 = 15550.9 mm²."""
    assert workshop.write(gear_files(valve=(("20000 mm²", port),))).only(SPEED).outcome == outcome


@pytest.mark.parametrize(("port", "outcome"), [("19439 mm²", "conforms"), ("19438 mm²", "finding")])
def test_exhaust_speed_limit_from_both_sides(workshop: DesignFolder, port: str, outcome: str) -> None:
    """0.1963495 × 7.92/80 = 19438.6 mm², the valve at 25 mm lift opening more."""
    files = gear_files(
        valve=(('"inlet"', '"exhaust"'), ('lift = "20 mm"', 'lift = "25 mm"'), ("20000 mm²", port))
    )
    assert workshop.write(files).only(SPEED).outcome == outcome


@pytest.mark.parametrize(("last", "speed"), [("509 mm", 88.4447), ("500 mm", 85.3448), (None, 85.3448)])
def test_the_steam_of_a_cylinder_bored_to_its_last_is_counted(
    workshop: DesignFolder, last: str | None, speed: float
) -> None:
    """π 509²/4 = 203481.6 mm², 1.036324 of that of 500 mm: 85.3448 × 1.036324 = 88.4447 m/s."""
    files = gear_files()
    if last is not None:
        files["liner.toml"] = changed(
            files["liner.toml"], ('bore = "500 mm"', f'bore = "500 mm"\nlast_bore = "{last}"')
        )
    assert found(workshop.write(files).only(SPEED)) == pytest.approx(speed, rel=1e-5)


@pytest.mark.parametrize(("last", "outcome"), [("541.2 mm", "conforms"), ("541.3 mm", "finding")])
def test_the_last_bore_from_both_sides(workshop: DesignFolder, last: str, outcome: str) -> None:
    """100 m/s through 18221.24 mm² at 7.92 m/s: a piston of 230066 mm², √(4 × 230066/π) = 541.23 mm."""
    files = gear_files()
    files["liner.toml"] = changed(
        files["liner.toml"], ('bore = "500 mm"', f'bore = "500 mm"\nlast_bore = "{last}"')
    )
    assert workshop.write(files).only(SPEED).outcome == outcome


def test_greatest_speed_and_period_figure_stand_on_the_sheet(workshop: DesignFolder) -> None:
    """The greatest piston speed is ω r × 1.0150 at r/l = 0.1737; to the mean 2 ω r/π: 1.0150 × π/2 = 1.5943."""
    steps = {step.symbol: step.value for step in workshop.write(gear_files()).only(SPEED).steps}
    assert steps["x_max"] == pytest.approx(1.5943, rel=1e-3)
    assert steps["x_period"] == pytest.approx(85.345 / 30.48, rel=1e-4)


@pytest.mark.parametrize("rule", [SPEED, LOSS, MACH])
def test_speeds_are_not_assessed_without_the_liner(workshop: DesignFolder, rule: str) -> None:
    files = gear_files()
    del files["liner.toml"]
    check = workshop.write(files).only(rule)
    assert check.outcome == "not assessed"
    assert "main" in check.says


@pytest.mark.parametrize(("share", "outcome"), [(0.999, "conforms"), (1.001, "finding")])
def test_loss_limit_from_both_sides(workshop: DesignFolder, share: float, outcome: str) -> None:
    """ζ = 2 × 0.1 p/(ρ v²), the density from another implementation of IAPWS-IF97."""
    from iapws import IAPWS97

    density = IAPWS97(P=RUNNING_ABSOLUTE / 1e6, T=RUNNING_KELVIN).rho
    ζ = share * 0.2 * RUNNING_ABSOLUTE / (density * 85.345**2)
    files = gear_files(valve=(('loss_coefficient = "2"', f'loss_coefficient = "{ζ:.5f}"'),))
    assert workshop.write(files).only(LOSS).outcome == outcome


def test_loss_is_not_assessed_without_its_coefficient(workshop: DesignFolder) -> None:
    check = workshop.write(gear_files(valve=(('loss_coefficient = "2"', ""),))).only(LOSS)
    assert check.outcome == "not assessed"


@pytest.mark.parametrize(("share", "outcome"), [(0.998, "conforms"), (1.002, "finding")])
def test_mach_limit_from_both_sides(workshop: DesignFolder, share: float, outcome: str) -> None:
    """The port at which v_max = 0.3 w, the speed of sound from another implementation of IAPWS-IF97."""
    from iapws import IAPWS97

    sound = IAPWS97(P=RUNNING_ABSOLUTE / 1e6, T=RUNNING_KELVIN).w
    fastest = 1.01497 * 12 * math.pi * 0.33
    port = 0.1963495 * fastest / (0.3 * sound) / share * 1e6
    files = gear_files(valve=(("20000 mm²", f"{port:.1f} mm²"),))
    assert workshop.write(files).only(MACH).outcome == outcome


def test_an_exhaust_valve_is_judged_at_the_exhaust_state(workshop: DesignFolder) -> None:
    """170 °C at 0.35 bar gauge: sound goes at about 510 m/s, and not at the 620 m/s of the chest."""
    check = workshop.write(gear_files(valve=(('"inlet"', '"exhaust"'),))).only(MACH)
    sound = on_sheet(check, "w")
    assert sound == pytest.approx(515, abs=10)


@given(d=st.floats(0.1, 1.0), c=st.floats(0.1, 20.0), A=st.floats(1e-3, 0.1))
def test_speed_follows_the_piston_and_not_the_size(d: float, c: float, A: float) -> None:
    v = steam_speed(A_p=round_area(d=d), c=c, A=A)
    assert steam_speed(A_p=round_area(d=2 * d), c=c, A=4 * A) == pytest.approx(v)
    assert speed_ratio(v=2 * v, v_0=v) == pytest.approx(2.0)


@given(A=st.floats(1e-3, 0.1), B=st.floats(1e-3, 0.1))
def test_the_narrower_passage_governs(A: float, B: float) -> None:
    assert governing_area(A_v=A, A_port=B) == governing_area(A_v=B, A_port=A) <= A
    assert share_of_area(x=1.0, A=A) == A


def test_refusals() -> None:
    with pytest.raises(OutOfRange, match="area"):
        steam_speed(A_p=0.2, c=8.0, A=0.0)
    with pytest.raises(OutOfRange, match="pressure"):
        pressure_ratio(Δp=1.0, p=0.0)
    with pytest.raises(OutOfRange, match="speed"):
        speed_ratio(v=1.0, v_0=0.0)
    assert revolutions(ω=0.0) == 0.0
