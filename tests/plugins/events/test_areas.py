"""What the valves open to the steam, by areas of an independent model of the same valves and of a cam of 20 %.

With 9.5 mm of lift above ramps of 1.1 mm over 10°, rise and fall 21°, dwell 6°, foot −10.5° and a clearance of 0.5 mm
that model has 173 144.9 mm² degrees of effective area over an opening of 58.909°, and at 10° after dead centre and at
the top the areas that are written below.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from iapws import IAPWS97

from speclint import COMMON_PRACTICE, Sheet
from speclint.handbook.tables import Reading
from speclint.rules import Grade
from speclint.testing import DesignFolder, expect_conforms, expect_finding, found, on_sheet
from speclint_events.rules import areas
from tests.plugins.events.gear import checked, files
from tests.plugins.events.test_shares import dwell
from tests.plugins.events.worked_engine import STEADY
from tests.plugins.known_metals import WITH_METALS

OPENS = "events.opens"
OPENING, SHUTTING, ENOUGH = "events.opening-speed", "events.shutting-speed", "events.area-enough"
MEAN = 173144.9e-6 / 58.909  # m²
#: Of the exhaust, 1 489 137.3 mm² degrees over 172.909°.
MEAN_OUT = 1489137.3e-6 / 172.909  # m²
EARLY, TOP = 3329.77, 5845.08  # mm²


def steady(*changes: tuple[str, str, str]) -> dict[str, str]:
    found = files(*STEADY, *changes)
    return {**found, "duty.toml": found["duty.toml"].replace("62.69 °C", "20 °C")}


@pytest.fixture
def folder(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


def measure(monkeypatch: pytest.MonkeyPatch, share: float) -> None:
    """Let every valve have this share of its area."""

    def given() -> Reading:
        return Reading.exact("share as given", share, "", COMMON_PRACTICE)

    monkeypatch.setattr(
        areas, "measured", lambda symbol, _table, _cam, sheet, **_: sheet.look_up(symbol, given)
    )


@pytest.mark.parametrize("side", [-1, 1])
def test_early_opening_from_both_sides(folder: DesignFolder, side: int) -> None:
    """Of the notch of 20 % alone: 10° after dead centre the model has EARLY, at the top TOP."""
    share = EARLY / TOP
    limits = f'[limits."events.opening-speed"]\nto = "22 %"\nleast = "{share * (1 + 0.006 * side):.5f}"\n'
    check = folder.write(steady(), settings=WITH_METALS + limits).only(OPENING)
    (expect_finding if side > 0 else expect_conforms)(check)
    assert found(check) == pytest.approx(share, rel=0.005)


@pytest.mark.parametrize(("longer", "outcome"), [(1, "not applicable"), (-1, "finding")])
def test_early_opening_is_asked_to_35_percent(folder: DesignFolder, longer: int, outcome: str) -> None:
    """The notch of 35 % shuts hot at 67.955° and 77.455°; 1° more or less of dwell are 35.8 or 34.1 % of the stroke.

    That of 20 % is not run; 10° after dead centre no inlet has nine tenths of its greatest area.
    """
    not_run = "gear.toml", '"forward"\ncut_off = "20 %"', '"mid"\ncut_off = "20 %"'
    ends = dwell("inlet-front-35", "3", f"{3 + longer}"), dwell("inlet-back-35", "12.5", f"{12.5 + longer}")
    settings = WITH_METALS + '[limits."events.opening-speed"]\nleast = "0.9"\n'
    assert folder.write(files(not_run, *ends), settings=settings).only(OPENING).outcome == outcome


@pytest.mark.parametrize(
    ("rule", "share", "outcome"),
    [
        (OPENING, 0.249, "finding"),
        (OPENING, 0.251, "conforms"),
        (SHUTTING, 0.0299, "finding"),
        (SHUTTING, 0.0301, "conforms"),
    ],
)
def test_the_declared_shares_from_both_sides(
    folder: DesignFolder, monkeypatch: pytest.MonkeyPatch, rule: str, share: float, outcome: str
) -> None:
    """A quarter of the greatest area by 10°, and 0.03 of the area over the angle in the last fifth."""
    measure(monkeypatch, share)
    check = checked(folder, rule)
    assert found(check) == pytest.approx(share)
    assert check.outcome == outcome


def test_early_opening_is_asked_at_the_longest_cut_off_too(
    folder: DesignFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every notch cuts off at the very limit to which the rule asks."""

    def at_the_limit(_gear: object, _notch: str, sheet: Sheet) -> float:
        return sheet.limit("to")

    monkeypatch.setattr(areas, "mean_cut_off", at_the_limit)
    measure(monkeypatch, 0.5)
    expect_conforms(checked(folder, OPENING))


@pytest.mark.parametrize(("clearance", "fails"), [("3.0999999999", False), ("3.1000000001", True)])
def test_a_valve_must_leave_its_seat_and_not_only_reach_it(
    folder: DesignFolder, clearance: str, fails: bool
) -> None:
    """2 mm above a ramp of 1.1 mm are 3.1 mm, to less than the round-off that other limits allow."""
    low = ("cam-inlet-front-20.toml", 'lift = "9.5 mm"', 'lift = "2 mm"')
    stated = ("tappet-inlet-front.toml", 'clearance = "0.6 mm"', f'clearance = "{clearance} mm"')
    (expect_finding if fails else expect_conforms)(checked(folder, OPENS, low, stated))


def test_the_share_of_the_lift_that_the_clearance_takes(folder: DesignFolder) -> None:
    """Of the lowest cam, 9.5 mm above a ramp of 1.1 mm, 0.6 mm cold: 0.6/10.6 = 0.0566."""
    check = checked(folder, OPENS)
    expect_conforms(check)
    assert check.utilisation == pytest.approx(0.6 / 10.6)


def test_slow_shutting(folder: DesignFolder) -> None:
    """A ramp twice as long lets the last fifth of the opening creep."""
    expect_conforms(checked(folder, SHUTTING))
    slow = checked(
        folder, SHUTTING, ("cam-inlet-front-65.toml", 'ramp_angle = "10 °"', 'ramp_angle = "20 °"')
    )
    expect_finding(slow, grade=Grade.OBSERVATION)


def _expect_share(folder: DesignFolder, notch: str, n: float, share: float, grade: Grade | None) -> None:
    """What the rule finds where the engine runs in a notch at a share of the n rev/s that use it up."""
    duty = (
        "duty.toml",
        'rotational_speed = "180 rev/min"\nnotch = "35"',
        f'rotational_speed = "{60 * n * share:.4f} rev/min"\nnotch = "{notch}"',
    )
    check = folder.write(steady(duty), settings=WITH_METALS).only(ENOUGH)
    if grade is None:
        expect_conforms(check)
    else:
        expect_finding(check, grade=grade)
    assert found(check) == pytest.approx(0.5 * share, rel=0.003)


@pytest.mark.parametrize(
    ("share", "grade"),
    [
        (0.995, None),
        (1.005, Grade.OBSERVATION),
        (1.195, Grade.OBSERVATION),
        (1.205, Grade.NONCONFORMITY),
    ],
)
def test_area_for_the_speed(folder: DesignFolder, share: float, grade: Grade | None) -> None:
    """Z = 2 S n A/(a A_m) = 0.5 at some 210 rev/min, grave above 1.2 of that; the exhausts, far larger, have less."""
    sound = IAPWS97(P=1.52 + 0.101325, T=663.15).w
    n = 0.5 * sound * MEAN / (2 * 0.66 * math.pi * 0.5**2 / 4)
    _expect_share(folder, "20", n, share, grade)


def until_shut(degrees: float) -> float:
    """Mean speed of the front's piston to a crank angle, m for each turn: stroke 660 mm, rod 1900 mm."""
    θ, r, rod = math.radians(degrees), 0.33, 1.9
    travel = r * (1 - math.cos(θ)) + rod - math.sqrt(rod**2 - (r * math.sin(θ)) ** 2)
    return travel * math.tau / θ


@pytest.mark.parametrize(
    ("notch", "share", "grade"),
    [
        ("35", 0.995, None),
        ("35", 1.005, Grade.OBSERVATION),
        ("65", 1.005, Grade.OBSERVATION),
        ("35", 1.195, Grade.OBSERVATION),
        ("35", 1.205, Grade.NONCONFORMITY),
    ],
)
def test_area_of_a_notch_that_cuts_off_earlier(
    folder: DesignFolder, notch: str, share: float, grade: Grade | None
) -> None:
    """The notch of 20 % shuts at −10.5 + 68 − 10 × 0.5/1.1 = 52.9545°; Z = c A/(a A_m), c the mean speed until then."""
    sound = IAPWS97(P=1.52 + 0.101325, T=663.15).w
    n = 0.5 * sound * MEAN / (until_shut(52.9545) * math.pi * 0.5**2 / 4)
    _expect_share(folder, notch, n, share, grade)


def test_a_notch_that_cuts_off_later_is_not_run_so_fast(folder: DesignFolder) -> None:
    """A cam of 35 % that lifts 3 mm is told in its own notch, and not where the engine runs in that of 20 %."""
    low = ("cam-inlet-front-35.toml", 'lift = "', 'lift = "3 mm" # ')
    own = folder.write(steady(low), settings=WITH_METALS).only(ENOUGH)
    expect_finding(own, grade=Grade.NONCONFORMITY)
    short = ("duty.toml", 'notch = "35"', 'notch = "20"')
    expect_conforms(folder.write(steady(low, short), settings=WITH_METALS).only(ENOUGH))


def test_the_speed_may_be_that_of_the_track(folder: DesignFolder) -> None:
    """Wheels worn to 1.675 m turn three times a second at 3 × π × 1.675 = 15.7865 m/s, 56.8314 km/h."""
    duty = (
        "duty.toml",
        'rotational_speed = "180 rev/min"\nnotch = "35"',
        'track_speed = "56.8314 km/h"\nnotch = "20"',
    )
    check = folder.write(steady(duty), settings=WITH_METALS).only(ENOUGH)
    assert on_sheet(check, "n") == pytest.approx(3.0, rel=1e-5)


@pytest.mark.parametrize("share", [0.985, 1.015])
def test_the_area_of_an_exhaust_from_both_sides(folder: DesignFolder, share: float) -> None:
    """With both coefficients halved it has half of MEAN_OUT: Z = 2 S n A/(a A_m) = 0.4 at some 190 rev/min."""
    sound = IAPWS97(P=0.035 + 0.101325, T=403.15).w
    n = 0.4 * sound * MEAN_OUT / 2 / (2 * 0.66 * math.pi * 0.5**2 / 4)
    was = 'exhaust_temperature = { from = "events" }\nrotational_speed = "180 rev/min"'
    now = f'exhaust_temperature = "130 °C"\nrotational_speed = "{60 * n * share:.4f} rev/min"'
    halved = [
        ("valve-exhaust-front.toml", f'{key} = "{was}"', f'{key} = "{float(was) / 2:g}"')
        for key, was in (("\ndischarge_coefficient", "0.75"), ("port_discharge_coefficient", "0.90"))
    ]
    check = folder.write(steady(("duty.toml", was, now), *halved), settings=WITH_METALS).only(ENOUGH)
    (expect_conforms if share < 1 else expect_finding)(check)
    assert found(check) == pytest.approx(0.4 * share, rel=0.003)


def test_an_exhaust_too_small(folder: DesignFolder) -> None:
    """Through a port of 4000 mm² at 0.9 no more than 3600 mm² open: at 180 rev/min 3.96 m/s × 0.196 m²/(490 m/s ×
    0.0036 m²) = 0.44, and more for the ramps."""
    small = ("valve-exhaust-front.toml", 'port_area = "20000 mm²"', 'port_area = "4000 mm²"')
    expect_finding(checked(folder, ENOUGH, small))
    expect_conforms(checked(folder, ENOUGH))


def test_the_sound_in_the_exhaust_stands_once_on_the_sheet(folder: DesignFolder) -> None:
    """Both exhausts let the same steam go."""
    sounds = [step.symbol for step in checked(folder, ENOUGH).steps if step.symbol in ("a_i", "a_e")]
    assert sorted(sounds) == ["a_e", "a_i"]
