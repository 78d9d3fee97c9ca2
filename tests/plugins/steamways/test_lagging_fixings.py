"""lagging.held: screws and bands against the jolts of the track and the pull of the air."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, changed, changed_files, on_sheet, without_key
from speclint_steamways.formulae.lagging_fixings import (
    area_of_one_screw,
    edge_in_diameters,
    half_of_head,
    head_in_diameters,
    jolted_weight,
    load_of_one_fixing,
    load_over_head,
    mass_of_flat_lagging,
    pull_of_air,
)
from tests.plugins.steamways.test_laggings import FLAT, ROUND
from tests.plugins.steamways.test_paths import limited
from tests.plugins.steamways.way import files as ways
from tests.ranges import End, expect_end

HELD = "lagging.held"
HEAVY = 'density = "100 kg/m³"\nsheet_thickness = "1 mm"\n'
SCREWS = """
[fixing]
by = "screws"
count = 4
thread = "M6"
head = "10 mm"
edge = "9 mm"
material = "known-steel"
locked_by = "tab washer"
"""
BANDS = """
[fixing]
by = "bands"
count = 2
width = "22 mm"
thickness = "0.2 mm"
material = "known-steel"
locked_by = "lock nut"
"""


def _with(lagging: str, **settings: str) -> dict[str, str]:
    """At 72 km/h, about a pipe of 150 mm."""
    pipe = ("pipe.toml", 'outside_diameter = "168.3 mm"', 'outside_diameter = "150 mm"')
    speed = '"170 °C"\nambient_temperature = "20 °C"\nhottest_ambient'
    faster = ("duty.toml", speed, speed.replace("hottest", 'track_speed = "72 km/h"\nhottest'))
    return changed_files({**ways(lagging=lagging), **settings}, pipe, faster)


def flat(*changes: tuple[str, str], **limits: str) -> dict[str, str]:
    """Half a square metre on half of four screws: 157.01 N each."""
    settings = {"speclint.toml": limited(HELD, **limits)} if limits else {}
    return _with(changed(ROUND + HEAVY + SCREWS, *FLAT, *changes), **settings)


def about_a_pipe(*changes: tuple[str, str]) -> dict[str, str]:
    return _with(changed(ROUND + HEAVY + BANDS, *changes))


@pytest.mark.parametrize(("head", "outcome"), [("9.9 mm", "conforms"), ("9.7 mm", "finding")])
def test_a_screw_does_not_pull_through_the_sheet(workshop: DesignFolder, head: str, outcome: str) -> None:
    """By hand: 0.5 m² · (100 · 0.05 + 7850 · 0.001) = 6.425 kg, three times its weight 189.02 N; 1.25 · 20²/2 =
    250 Pa on 0.5 m² 125 N; 314.02 N on a twentieth of four 1570.1 N. 0.5 · d_w · 1 mm · 400 MPa/1.25 = 160 N/mm · d_w:
    9.813 mm.
    """
    check = workshop.write(flat(("10 mm", head), share="0.05")).only(HELD)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert on_sheet(check, "M") == pytest.approx(6.425, rel=1e-6)
    assert on_sheet(check, "F_j") == pytest.approx(189.02, rel=1e-4)
    assert on_sheet(check, "F_a") == pytest.approx(125, rel=1e-6)
    assert on_sheet(check, "F_1") == pytest.approx(1570.1, rel=1e-4)


@pytest.mark.parametrize(("strength", "outcome"), [("0.313", "conforms"), ("0.31", "finding")])
def test_a_screw_bears_its_pull(workshop: DesignFolder, strength: str, outcome: str) -> None:
    """314.02 N on an eighth of four M3 are 628.05 N: π/4 (3 − 0.9382 · 0.5)² = 5.0308 mm² of 400 MPa are 2012.3 N,
    0.3121 of that.
    """
    check = workshop.write(flat(("M6", "M3"), strength=strength, share="0.125")).only(HELD)
    assert check.outcome == outcome
    assert outcome == "conforms" or check.actual == "a screw is pulled with 628 N, 623.8 N allowed"


@pytest.mark.parametrize(("edge", "outcome"), [("9 mm", "conforms"), ("8.9 mm", "finding")])
def test_a_screw_stands_off_the_edge(workshop: DesignFolder, edge: str, outcome: str) -> None:
    """1.5 · 6 mm."""
    check = workshop.write(flat(("9 mm", edge))).only(HELD)
    assert check.outcome == outcome
    said = "a screw stands 1.483 diameters from the edge of the sheet, 1.5 wanted"
    assert outcome == "conforms" or check.actual == said


@pytest.mark.parametrize(("head", "outcome"), [("17.9 mm", "conforms"), ("18.1 mm", "finding")])
def test_a_washer_lies_on_the_sheet(workshop: DesignFolder, head: str, outcome: str) -> None:
    """9 mm from the edge: 18 mm of washer at the most."""
    check = workshop.write(flat(("10 mm", head))).only(HELD)
    assert check.outcome == outcome
    said = "head or washer reaches 9.05 mm to each side, the edge of the sheet is at 9 mm"
    assert outcome == "conforms" or check.actual == said


@given(st.floats(1e-3, 0.1))
def test_a_head_reaches_as_far_to_either_side(d_w: float) -> None:
    assert 2 * half_of_head(d_w=d_w) == pytest.approx(d_w)


@pytest.mark.parametrize(("width", "outcome"), [("21.2 mm", "conforms"), ("21 mm", "finding")])
def test_a_band_bears_its_pull(workshop: DesignFolder, width: str, outcome: str) -> None:
    """By hand: π · 2.5 · (100 · 0.2 · 0.05 + 7850 · 0.251 · 0.001) = 23.329 kg, three times its weight 686.34 N; 250 Pa
    on 0.252 · 2.5 m² 157.5 N; 843.84 N on half of two. 2 · 0.25 · 400 MPa · 0.2 mm = 40 N/mm · b: 21.096 mm.
    """
    check = workshop.write(about_a_pipe(("22 mm", width))).only(HELD)
    assert check.outcome == outcome
    assert on_sheet(check, "M") == pytest.approx(23.329, rel=1e-4)
    assert on_sheet(check, "F_1") == pytest.approx(843.84, rel=1e-4)


@pytest.mark.parametrize(
    ("limit", "value"),
    [
        ("jolts", "60"),
        ("air", "30"),
        ("sheet", "13"),
        ("edge", "1.52"),
        ("head", "1.7"),
        ("screws", "5"),
        ("area", "0.12 m²"),
    ],
)
def test_a_works_may_set_its_own_limits(workshop: DesignFolder, limit: str, value: str) -> None:
    """A screw bears 1600 N over its head: 61 · 63.0 + 125 N on two, 189 + 3750 N on two; 153.8 N by a factor of 13. A
    head of 10 mm has 1.667 times M6; an eighth of a square metre for each screw.
    """
    assert workshop.write(flat()).only(HELD).outcome == "conforms"
    assert workshop.write(flat(**{limit: value})).only(HELD).outcome == "finding"


@pytest.mark.parametrize(
    ("lock", "outcome"),
    [
        ("wire", "conforms"),
        ("lock nut", "conforms"),
        ("prevailing torque nut", "conforms"),
        ("spring washer", "finding"),
        ("nothing", "finding"),
    ],
)
def test_a_lock_must_hold(workshop: DesignFolder, lock: str, outcome: str) -> None:
    assert workshop.write(flat(("tab washer", lock))).only(HELD).outcome == outcome
    assert workshop.write(about_a_pipe(('"lock nut"', f'"{lock}"'))).only(HELD).outcome == outcome


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("count = 4", "count = 3", "screws: 3 hold the sheet, 4 wanted"),
        ('"10 mm"', '"8.3 mm"', "the head of a screw has 1.383 times its diameter, 1.4 wanted"),
        ('"10 mm"', '"8.5 mm"', ""),
        ('"0.5 m²"', '"1.01 m²"', "a screw for each 0.2525 m² of sheet, 0.25 m² at the most wanted"),
        ('"0.5 m²"', '"0.99 m²"', ""),
    ],
)
def test_screws_are_enough_and_have_heads(workshop: DesignFolder, old: str, new: str, says: str) -> None:
    files = flat()
    files["lagging.toml"] = changed(files["lagging.toml"], (old, new))
    check = workshop.write(files).only(HELD)
    assert (check.outcome, check.actual if says else "") == ("finding" if says else "conforms", says)


def test_one_band_is_too_few(workshop: DesignFolder) -> None:
    check = workshop.write(about_a_pipe(("count = 2", "count = 1"), ('"22 mm"', '"50 mm"'))).only(HELD)
    assert check.actual == "bands: 1 hold the sheet, 2 wanted"


def test_bands_hold_nothing_flat(workshop: DesignFolder) -> None:
    check = workshop.write(flat(('"screws"', '"bands"'))).only(HELD)
    assert (check.outcome, check.actual) == ("finding", "bands hold nothing flat: they go round")


def test_no_screw_holds_nothing(workshop: DesignFolder) -> None:
    check = workshop.write(flat(("count = 4", "count = 0"))).only(HELD)
    assert (check.outcome, check.actual) == ("finding", "no screws hold the sheet")


@pytest.mark.parametrize(
    "key",
    ["by", "count", "thread", "head", "edge", "locked_by", "density", "sheet_thickness", "thickness", "area"],
)
def test_what_nobody_states_of_screws_is_asked(workshop: DesignFolder, key: str) -> None:
    found = flat()
    found["lagging.toml"] = without_key(found["lagging.toml"], key)
    assert workshop.write(found).only(HELD).outcome == "not assessed"


@pytest.mark.parametrize("key", ["width", "length"])
def test_what_nobody_states_of_bands_is_asked(workshop: DesignFolder, key: str) -> None:
    found = about_a_pipe()
    found["lagging.toml"] = without_key(found["lagging.toml"], key)
    assert workshop.write(found).only(HELD).outcome == "not assessed"


@given(st.floats(1.0, 60.0), st.floats(1.01, 2.0))
def test_the_air_pulls_with_the_square_of_the_speed(v: float, more: float) -> None:
    one, other = pull_of_air(c=1.0, v=v, A=2.0), pull_of_air(c=1.0, v=more * v, A=2.0)
    assert other == pytest.approx(more**2 * one)


@given(st.floats(0.1, 5.0), st.floats(0.1, 3.0))
def test_mass_goes_with_the_area(A: float, more: float) -> None:
    given_ = {"ρ": 100.0, "t": 0.05, "ρ_s": 7850.0, "t_s": 0.001}
    one, other = mass_of_flat_lagging(A=A, **given_), mass_of_flat_lagging(A=A * more, **given_)
    assert other == pytest.approx(more * one)


def test_a_pound_weighs_a_pound_force() -> None:
    """0.45359237 kg by definition; 4.4482216152605 N, in ASTM SI 10 and NIST SP 811, appendix B.8."""
    assert jolted_weight(M=0.45359237, n=0.0) == pytest.approx(4.4482216152605, rel=1e-12)


def test_the_pressure_of_the_speed_is_near_that_of_another_code() -> None:
    """ASCE 7, velocity pressure in SI: 0.613 V² N/m², from memory; of air at 15 °C, 1.225 kg/m³."""
    assert pull_of_air(c=1.0, v=30.0, A=1.0) == pytest.approx(0.613 * 30.0**2, rel=0.025)


_ONE = "one fixing at least carries"
_WIDE = "the diameter of a screw must be above 0"
_OVER = {"d_w": 0.01, "t_s": 0.001, "f_u": 4e8, "gamma": 1.0}


@pytest.mark.parametrize(
    "end",
    [
        *(End(load_of_one_fixing, {"F": 1.0, "s": 1e-6, "n": 1e-6}, {one: 0.0}, _ONE) for one in ("s", "n")),
        End(area_of_one_screw, {"A": 1.0, "n": 1e-6}, {"n": 0.0}, "one screw at least holds a sheet"),
        End(load_over_head, _OVER, {"gamma": 0.99}, "a partial factor is at least 1"),
        End(edge_in_diameters, {"e": 0.01, "d": 1e-6}, {"d": 0.0}, _WIDE),
        End(head_in_diameters, {"d_w": 0.01, "d": 1e-6}, {"d": 0.0}, _WIDE),
    ],
    ids=str,
)
def test_formulae_refuse_what_cannot_be(end: End) -> None:
    expect_end(end)


def test_a_sheet_without_a_factor_bears_half_of_head_by_sheet() -> None:
    """0.5 · 10 mm · 1 mm · 400 MPa."""
    assert load_over_head(**_OVER) == pytest.approx(2000)


def test_the_lock_is_told_before_the_number(workshop: DesignFolder) -> None:
    check = workshop.write(flat(("tab washer", "nothing"), ("count = 4", "count = 3"))).only(HELD)
    assert check.judgement is not None
    assert check.judgement.parts[0].says == "screws locked by: nothing"
