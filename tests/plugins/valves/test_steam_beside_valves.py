"""Shut valves and seats under the worst pressure of the cycle over a turn, where their cylinder has a valve gear."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.checking import Check
from speclint.rules import Grade, actual
from speclint.testing import DesignFolder, expect_conforms, expect_finding, on_sheet
from tests.plugins.events.worked_engine import AT_20
from tests.plugins.valves.test_steam_at_valves import sprung

#: Little steam in every other case, and water held by the chest, so that running governs.
_OTHERS = """
[cases.drifting]
live_pressure = "0 bar gauge"
exhaust_pressure = "0 bar gauge"
cylinder_pressure = "0 bar gauge"
least_cylinder_pressure = "0 bar gauge"
rotational_speed = "10 rev/min"
[cases.drifting.temperatures]
compression-spring = "60 °C"
valve-seat = "20 °C"
cylinder-block = "20 °C"
[cases.water]
live_pressure = "5 bar gauge"
exhaust_pressure = "0 bar gauge"
safety_valve_pressure = "5 bar gauge"
cylinder_pressure = "0 bar gauge"
[cases.water.temperatures]
compression-spring = "60 °C"
valve-seat = "20 °C"
cylinder-block = "20 °C"
[cases.cooling]
live_pressure = "0 bar gauge"
exhaust_pressure = "0 bar gauge"
[cases.cooling.temperatures]
valve-seat = "20 °C"
cylinder-block = "20 °C"
"""
_STATED = """lift = "20 mm"
steam_load = "holds shut"
reversal_hurts = false
lifts_drifting = false
relieves_water = false"""


def beside(
    folder: Path, name: str, *changes: tuple[str, str, str], safety: str = "16.2 bar absolute"
) -> DesignFolder:
    """The engine of the worked cases, one valve of it whole; some passages changed, each wherever it stands."""
    design = sprung(folder, name, whole=True)
    for file, old, new in (
        (f"valve-{name}.toml", 'lift = "20 mm"', _STATED),
        ("duty.toml", "rotational_speed", f'safety_valve_pressure = "{safety}"\nrotational_speed'),
        ("block.toml", "20 bar gauge", "0.1 bar gauge"),
        *changes,
    ):
        path = design.root / file
        text = path.read_text(encoding="utf-8")
        assert old in text, f"{old} does not stand in {file}"
        path.write_text(
            text.replace(old, new) + (_OTHERS if old == "rotational_speed" else ""),
            encoding="utf-8",
            newline="\n",
        )
    return design


def held(folder: Path, name: str, *changes: tuple[str, str, str], safety: str = "16.2 bar absolute") -> Check:
    rule = "valve.spring-holds-shut"
    return beside(folder, name, *changes, safety=safety).only(rule, f"valve-{name}")


#: With a third of the clearance volume the steam that is kept in front is pressed above the chest.
_TIGHT = (
    ("block.toml", 'side = "front"\nclearance = "8 mm"', 'side = "front"\nclearance = "3 mm"'),
    ("block.toml", "9500 cm³", "3000 cm³"),
)


def test_compression_above_the_chest_lifts_an_inlet(tmp_path: Path) -> None:
    """What the cylinder has over the chest, on the ring between the beats' circles, less the spindle's push shut.

    Live steam holds the valve shut: at worst the circle of the upper beat is that of its edge of 156.54 mm, that of the
    lower one of 143 mm. The spindle of 20 mm is pushed shut by the chest's 15.187 bar gauge: 477 N.
    """
    check = held(tmp_path, "inlet-front", *_TIGHT)
    assert check.case == "running"
    p, peak = on_sheet(check, "p_k_g"), on_sheet(check, "p_k")
    assert p == pytest.approx(0.33675e5 + 1.1 * (peak - 1.35e5), rel=1e-9)
    assert p > 15.187e5
    ring = math.pi / 4 * (0.1565355**2 - 0.143**2)
    assert on_sheet(check, "F_l") == pytest.approx((p - 15.18675e5) * ring - 477.1, rel=1e-3)


def test_the_sheet_says_at_which_angle_and_from_where(tmp_path: Path) -> None:
    """Compression is highest as the inlet opens, 5.95° before its dead centre."""
    check = held(tmp_path, "inlet-front")
    (step,) = (step for step in check.steps if step.symbol == "p_k")
    says = "greatest pressure before admission, absolute, at 354° of its end's crank"
    assert step.name == f"{says}, calculated: gear, notch 20, 180 rev/min, front"
    assert any(name.startswith("cycle beside valve-inlet-front") for name in check.rests_on)


def test_where_compression_stays_below_the_chest_the_boiler_counts(tmp_path: Path) -> None:
    """9.5 bar: a cylinder at the pressure of the safety valves, 17.6 bar, against a chest at 16.2 is the worse."""
    check = held(tmp_path, "inlet-front", safety="17.6 bar absolute")
    assert on_sheet(check, "Δp") == pytest.approx(1.4e5)


def test_steam_cut_off_early_sucks_the_exhaust_valve_open(tmp_path: Path) -> None:
    """With 5 bar in the chest 20 % expand to less than the 1.35 bar of the exhaust, which lifts the valve."""
    low = [("duty.toml", "16.2 bar absolute", "5 bar absolute")]
    check = held(tmp_path, "exhaust-front", *low, safety="5 bar absolute")
    least = on_sheet(check, "p_l")
    assert least < 1.2e5
    assert on_sheet(check, "Δp") == pytest.approx(1.1 * (1.35e5 - least), rel=1e-9)
    (step,) = (step for step in check.steps if step.symbol == "p_l")
    assert "least pressure while the exhaust is shut, absolute, at 145°" in step.name


def test_a_full_cylinder_never_does(tmp_path: Path) -> None:
    """At 16.2 bar the front has 2.24 bar at release: nothing stands against the exhaust's own pressure."""
    assert on_sheet(held(tmp_path, "exhaust-front"), "Δp") == pytest.approx(0.0, abs=1e-6)


def test_without_a_gear_nothing_changes(tmp_path: Path) -> None:
    design = beside(tmp_path, "inlet-front", *_TIGHT)
    (design.root / "gear.toml").unlink()
    check = design.only("valve.spring-holds-shut", "valve-inlet-front")
    assert not [step for step in check.steps if step.symbol == "p_k"]
    assert on_sheet(check, "Δp") == pytest.approx(0.0, abs=1e-6)


def test_an_incomplete_gear_leaves_it_as_without(tmp_path: Path) -> None:
    """The hold is still judged; that a clearance is missing is what the rules of the gear tell."""
    change = ("tappet-exhaust-back.toml", 'clearance = "0.5 mm"\n', "")
    check = held(tmp_path, "inlet-front", *_TIGHT, change)
    assert check.outcome in ("conforms", "finding")
    assert not [step for step in check.steps if step.symbol == "p_k"]


def test_an_exhaust_valve_shuts_against_what_is_left(tmp_path: Path) -> None:
    """Its spindle is pushed open by the cylinder: 2.634 bar as it shuts, a tenth more above 1.35 bar: 55 N.

    Without a gear it is taken to shut at the exhaust's pressure, 10.6 N.
    """
    gauge = 0.33675e5 + 1.1 * (2.6345e5 - 1.35e5)
    pushed = ("spindle-exhaust-front.toml", 'pushed = "shut"', 'pushed = "open"')
    design = beside(tmp_path, "exhaust-front", pushed)
    check = design.only("valve.closes", "valve-exhaust-front")
    assert check.case == "running"
    assert on_sheet(check, "F_o") == pytest.approx(math.pi / 4 * 0.020**2 * gauge, rel=0.01)
    (design.root / "gear.toml").unlink()
    without = design.only("valve.closes", "valve-exhaust-front")
    assert on_sheet(without, "F_o") == pytest.approx(math.pi / 4 * 0.020**2 * 0.33675e5, rel=1e-4)


def test_a_spindle_that_turns_the_load_where_pressures_come_nearest(tmp_path: Path) -> None:
    """Pushed open by the chest, 477 N: full steam holds the inlet with 3.4 kN, compression of 9.5 bar leaves 1.4.

    With little clearance the pressures meet, and the spindle alone is left: an observation, for springs hold it.
    """
    pushed = ("spindle-inlet-front.toml", 'pushed = "shut"', 'pushed = "open"')
    rule, part = "valve.pressure-closed", "valve-inlet-front"
    usual = beside(tmp_path / "usual", "inlet-front", pushed).only(rule, part)
    expect_conforms(usual)
    tight = beside(tmp_path / "tight", "inlet-front", pushed, *_TIGHT).only(rule, part)
    expect_finding(tight, grade=Grade.OBSERVATION)
    assert tight.judgement is not None
    assert "where both pressures come nearest" in actual(tight.rule, tight.judgement)
    assert on_sheet(tight, "F_g") == pytest.approx(-477.1, rel=1e-3)


def test_release_counts_a_tenth_and_the_safety_valves(tmp_path: Path) -> None:
    """2.24 bar at release from 16.2; with the safety valves at 17.6 some 8.6 % more, and a tenth above the exhaust."""
    check = beside(tmp_path, "exhaust-front", safety="17.6 bar absolute").only(
        "spindle.stress", "spindle-exhaust-front"
    )
    p, gauge = ({s.value for s in check.steps if s.symbol == name} for name in ("p_r", "p_r_g"))
    released = [one for one in p if isinstance(one, float) and one < 5e5]
    if check.case == "running":
        assert released == [pytest.approx(AT_20["release"][0] * 1e3 * 17.6 / 16.2, rel=0.02)]
        assert max(gauge) == pytest.approx(0.33675e5 + 1.1 * (released[0] - 1.35e5), rel=1e-6)


_SEAT = """outside_diameter = "200.2 mm"
bore = "170 mm"
length = "30 mm"
roughness = "0.2 µm"
friction = "0.1"
entered_from = "chamber"
sticking_drag = "500 N"
retention = "none"
"""
_BORE = 'diameter = "200 mm"\ndepth = "30 mm"\nwall = "40 mm"\nroughness = "0.2 µm"\n'


def _seated(entered: str) -> tuple[tuple[str, str, str], ...]:
    """The upper seat of the front inlet, put in from one side."""
    seat = _SEAT.replace('"chamber"', f'"{entered}"')
    return (
        (
            "seat-inlet-front-upper.toml",
            'in_bore = "inlet-front-upper"\n',
            f'in_bore = "inlet-front-upper"\n{seat}',
        ),
        ("block.toml", "[seat_bores.inlet-front-upper]\n", f"[seat_bores.inlet-front-upper]\n{_BORE}"),
        ("duty.toml", 'cam-box = "20 °C"', 'cam-box = "20 °C"\nvalve-seat = "20 °C"'),
    )


def test_a_seat_is_drawn_by_the_least_pressure_of_the_turn(tmp_path: Path) -> None:
    """Of a ring put in from below: the chest behind it, and before it the exhaust's 1.35 bar.

    The least at any angle is a little above that, of which a tenth is taken off.
    """
    design = beside(tmp_path, "inlet-front", *_seated("cylinder"))
    check = design.only("seat.push-out", "seat-inlet-front-upper")
    p, gauge = on_sheet(check, "p_l"), on_sheet(check, "p_l_g")
    assert check.case == "running"
    assert 1.35e5 < p < 1.4e5
    assert gauge == pytest.approx(0.33675e5 + 0.9 * (p - 1.35e5), rel=1e-9)
    assert on_sheet(check, "F_w") == pytest.approx((15.18675e5 - 0.33675e5) * 8717.92e-6 + 500, rel=1e-6)


def test_a_seat_is_pushed_by_the_peak_of_compression(tmp_path: Path) -> None:
    """Steam pressed above the chest stands behind a ring that was put in from the chamber: 8717.92 mm² of it."""
    design = beside(tmp_path, "inlet-front", *_seated("chamber"), *_TIGHT)
    check = design.only("seat.push-out", "seat-inlet-front-upper")
    p = on_sheet(check, "p_k_g")
    assert check.case == "running"
    assert on_sheet(check, "F_w") == pytest.approx((p - 15.18675e5) * 8717.92e-6 + 500, rel=1e-6)
