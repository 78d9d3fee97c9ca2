"""cylinder.end-clearance, cylinder.clearance-volume and cylinder.centre-line-hot.

The front clearance, running, is worked by hand in test_rings: 7.2787 mm, connecting rod and frame at 20 °C. The back
one is 8 + 100 × 180 × 12.4e-6 + 0.8715 − 0.1385 − 0.2287 − 1 = 7.7275 mm.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.facts import clearance_ratio, swept_volume
from speclint.testing import SETTINGS, DesignFolder, expect_not_assessed, found
from speclint_liners.formulae.ends import (
    axis_out_of_line,
    clearance_when_hot,
    clearance_with_driving_rod,
)
from tests.own_limits import own_limit
from tests.plugins.liners.bench import BLOCK, DUTY, bench, in_block, in_duty, in_liner

_FAST, _WORN = 'rotational_speed = "300 rev/min"', 'least_wheel_diameter = "1680 mm"\n'
END, VOLUME, LINE = "cylinder.end-clearance", "cylinder.clearance-volume", "cylinder.centre-line-hot"


def test_the_hot_clearance_by_hand(workshop: DesignFolder) -> None:
    """Short of a limit raised to 7.6 mm; the cold clearance, which uses more of its own, would be reported else."""
    raised = SETTINGS + own_limit(END, "liners", hot="7.6 mm")
    check = workshop.write(bench(), settings=raised).only(END)
    assert check.grade is Grade.HOLD
    assert found(check) == pytest.approx(7.2787e-3, rel=1e-4)


@pytest.mark.parametrize(
    ("speed", "gear", "left"),
    [
        # 95 km/h on tyres of 1680 mm: 31.41 rad/s, below the 31.416 of the 300 rev/min stated
        ("95 km/h", "", 7.2787e-3),
        # 190.004 km/h: 62.832 rad/s, twice the speed and four times the 0.3672 mm of stretch: 7.2787 − 3 × 0.3672
        ("190.004 km/h", "", 6.1771e-3),
        ("95.002 km/h", 'gear_ratio = "2"\n', 6.1771e-3),
    ],
)
def test_worn_tyres_turn_the_crank_faster(workshop: DesignFolder, speed: str, gear: str, left: float) -> None:
    raised = SETTINGS + own_limit(END, "liners", hot="7.6 mm")
    changes = in_duty(_FAST, f'{_FAST}\ntrack_speed = "{speed}"'), in_block("[drive]\n", f"[drive]\n{gear}")
    check = workshop.write(bench(*changes), settings=raised).only(END)
    assert found(check) == pytest.approx(left, rel=1e-4)


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ('least_wheel_diameter = "1680 mm"', 7.2787e-3),
        ('least_wheel_diameter = "840 mm"', 6.1771e-3),  # half the wheel: twice the speed
        ('gear_ratio = "2"', 6.1771e-3),
    ],
)
def test_the_wheel_of_the_engine_counts(workshop: DesignFolder, said: str, left: float) -> None:
    """Whatever wheel and gear the block's own spec states."""
    raised = SETTINGS + own_limit(END, "liners", hot="7.6 mm")
    engine = f'kind = "engine"\nid = "engine"\n{said}\n[cranks.only]\nblock = "block"\n'
    files = bench(in_duty(_FAST, f'{_FAST}\ntrack_speed = "95.002 km/h"'))
    check = workshop.write({**files, "engine.toml": engine}, settings=raised).only(END)
    assert found(check) == pytest.approx(left, rel=1e-4)


def test_a_duty_without_a_speed_of_the_crank_has_that_of_the_wheel(workshop: DesignFolder) -> None:
    raised = SETTINGS + own_limit(END, "liners", hot="7.6 mm")
    changes = in_duty(_FAST, 'track_speed = "190.004 km/h"')
    assert found(workshop.write(bench(changes), settings=raised).only(END)) == pytest.approx(
        6.1771e-3, rel=1e-4
    )


@pytest.mark.parametrize("at", ["", "[cranks.only]\nblock = 'block'\n"])
def test_the_stroke_of_engine_or_crank_counts(workshop: DesignFolder, at: str) -> None:
    """Whatever stroke the block's own spec states."""
    before = found(workshop.write(bench()).only(VOLUME))
    wanted = found(workshop.write(bench(in_block('"660 mm"', '"600 mm"'))).only(VOLUME))
    engine = f'kind = "engine"\nid = "engine"\n{at}stroke = "600 mm"\n'
    engine += "" if at else "[cranks.only]\nblock = 'block'\n"
    files = {**bench(), "engine.toml": engine}
    assert wanted != pytest.approx(before, rel=1e-3)
    assert found(workshop.write(files).only(VOLUME)) == pytest.approx(wanted, rel=1e-9)


def test_worn_tyres_must_be_stated_with_a_track_speed(workshop: DesignFolder) -> None:
    changes = in_duty(_FAST, f'{_FAST}\ntrack_speed = "95 km/h"'), in_block(_WORN, "")
    check = workshop.write(bench(*changes)).only(END)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(
    ("cold", "grade"),
    [
        ("3.72 mm", Grade.HOLD),  # 2.9987 mm hot
        ("3.73 mm", Grade.OBSERVATION),  # 3.0087 mm hot, and short of 1/4 in cold
        ("6.34 mm", Grade.OBSERVATION),
        ("6.36 mm", None),  # 1/4 in is 6.35 mm
        ("9.52 mm", None),  # 3/8 in is 9.525 mm
        ("9.53 mm", Grade.OBSERVATION),
    ],
)
def test_clearance_hot_and_cold(workshop: DesignFolder, cold: str, grade: Grade | None) -> None:
    check = workshop.write(bench(in_block('clearance = "8 mm"', f'clearance = "{cold}"'))).only(END)
    assert check.grade is grade


def with_piston(length: str) -> dict[str, str]:
    """The bench with a piston of 320 °C: 860 − 35 − 660 = 165 mm less its length for both ends; each states 8 mm."""
    piston = f'kind = "piston"\nmaterial = "plate-P355GH"\nruns_in = "liner"\nlength = "{length}"\n'
    duty = bench()["duty.toml"].replace('frame = "20 °C"', 'frame = "20 °C"\npiston = "320 °C"')
    return {**bench(), "duty.toml": duty, "piston.toml": piston}


def test_a_hot_piston_is_nearer_to_its_cover(workshop: DesignFolder) -> None:
    # 149 mm leave 8 mm at both ends; (13.42 + 0.3)e-6 × 300 K × 149/2 = 0.3066 mm off the 7.2787 of a cold one
    raised = SETTINGS + own_limit(END, "liners", hot="7.6 mm")
    check = workshop.write(with_piston("149 mm"), settings=raised).only(END)
    assert found(check) == pytest.approx(7.2787e-3 - 0.3066e-3, rel=1e-4)


def test_a_piston_without_a_temperature_or_a_length_is_not_assessed(workshop: DesignFolder) -> None:
    files = with_piston("149 mm")
    for name, said in (("duty.toml", '\npiston = "320 °C"'), ("piston.toml", 'length = "149 mm"')):
        left_out = {**files, name: files[name].replace(said, "")}
        check = workshop.write(left_out).only(END)
        assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("length", "grade"), [("147.5 mm", None), ("147.4 mm", Grade.OBSERVATION)])
def test_a_short_piston_leaves_more_than_is_stated(
    workshop: DesignFolder, length: str, grade: Grade | None
) -> None:
    # 165 − 147.5 − 8 = 9.5 mm at one end, 3/8 in is 9.525 mm
    assert workshop.write(with_piston(length)).only(END).grade is grade


@pytest.mark.parametrize(("length", "outcome"), [("125.3 mm", "conforms"), ("125.0 mm", "finding")])
def test_a_short_piston_leaves_a_large_clearance_volume(
    workshop: DesignFolder, length: str, outcome: str
) -> None:
    # back: 0.12 × 125392 − 9000 = 6047 cm³ over 189.99 cm² is 31.83 mm; the piston leaves 165 − 8 mm less its length
    assert workshop.write(with_piston(length)).only(VOLUME).outcome == outcome


@pytest.mark.parametrize(
    "change",
    [
        in_block('\nrod_material = "plate-P355GH"', ""),
        in_block('wear = "1 mm"', ""),
        in_block('side = "back"', 'side = "front"'),
        in_duty('rotational_speed = "300 rev/min"', ""),
    ],
)
def test_end_clearance_not_assessed_is_a_hold(workshop: DesignFolder, change: tuple[str, str, str]) -> None:
    check = workshop.write(bench(change)).only(END)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(
    ("rod", "frame", "left"),
    [
        # 12.22e-6 at most at 70 °C, as the piston rod has in test_rings; 194.12 GPa there makes 0.2325 of 0.2287 mm:
        # 7.2787 − 1980 × 50 × 12.22e-6 − 0.0038
        ("70 °C", "20 °C", 6.0651),
        # at the back 7.7275 − 3500 × 50 × 12.22e-6
        ("20 °C", "70 °C", 5.5890),
    ],
)
def test_connecting_rod_and_frame_move_the_piston(
    workshop: DesignFolder, rod: str, frame: str, left: float
) -> None:
    warm = in_duty('connecting-rod = "20 °C"', f'connecting-rod = "{rod}"')
    held = in_duty('frame = "20 °C"', f'frame = "{frame}"')
    raised = SETTINGS + own_limit(END, "liners", hot="7.6 mm")
    assert found(workshop.write(bench(warm, held), settings=raised).only(END)) == pytest.approx(
        left * 1e-3, rel=2e-4
    )


@pytest.mark.parametrize(
    "missing",
    [
        in_block('connecting_rod_area = "5000 mm²"', ""),
        in_block('connecting_rod_material = "plate-P355GH"', ""),
        in_block('axle_from_fixed_point = "3500 mm"', ""),
        in_block('frame_material = "plate-P355GH"', ""),
        in_duty('connecting-rod = "20 °C"', ""),
        in_duty('frame = "20 °C"', ""),
    ],
)
def test_the_growth_of_the_rods_must_be_known(workshop: DesignFolder, missing: tuple[str, str, str]) -> None:
    check = workshop.write(bench(missing)).only(END)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_clearance_volume_by_hand(workshop: DesignFolder) -> None:
    # back: (9000 + 0.1899879 × 8000)/(0.1899879 × 660000) = 10519.9/125392 = 0.083896
    assert found(workshop.write(bench()).only(VOLUME)) == pytest.approx(0.083896, rel=1e-4)


@pytest.mark.parametrize(
    ("volume", "long", "outcome"),
    [
        ("13520", "false", "conforms"),  # 0.12 × 125392 − 1519.9 = 13527 cm³
        ("13540", "false", "finding"),
        ("13540", "true", "conforms"),
        ("16030", "true", "conforms"),
        ("16040", "true", "finding"),  # 0.14 × 125392 − 1519.9 = 16035 cm³
        ("3620", "false", "conforms"),  # 0.04 × 129591 − 1570.8 = 3612.8 cm³
        ("3600", "false", "finding"),
    ],
)
def test_clearance_volume_has_limits(workshop: DesignFolder, volume: str, long: str, outcome: str) -> None:
    changes = (
        in_block('"9000 cm³"', f'"{volume} cm³"'),
        in_block("long_passages = false", f"long_passages = {long}"),
    )
    check = workshop.write(bench(*changes)).only(VOLUME)
    assert check.outcome == outcome
    assert check.grade is (Grade.OBSERVATION if outcome == "finding" else None)


@pytest.mark.parametrize(("volume", "outcome"), [("13970", "conforms"), ("13990", "finding")])
def test_no_rod_takes_room_in_front_of_the_piston(workshop: DesignFolder, volume: str, outcome: str) -> None:
    """In front 0.12 × 129591 − 1570.8 = 13980 cm³, where behind 13527 are the most: there 9000 as before."""
    block = BLOCK.replace('"9000 cm³"', f'"{volume} cm³"', 1)
    assert workshop.write({**bench(), "block.toml": block}).only(VOLUME).outcome == outcome


def test_clearance_volume_needs_a_liner_in_the_bore(workshop: DesignFolder) -> None:
    other = in_liner('in_bore = "main"\n', "")
    assert workshop.write(bench(other)).only(VOLUME).outcome == "not assessed"
    assert workshop.write(bench(in_block('stroke = "660 mm"', ""))).only(VOLUME).outcome == "not assessed"


@pytest.mark.parametrize(
    ("cold_set", "outcome"),
    [("0.52", "conforms"), ("0.51", "finding"), ("1.08", "conforms"), ("1.09", "finding")],
)
def test_the_axis_comes_true_hot(workshop: DesignFolder, cold_set: str, outcome: str) -> None:
    # 350 × 180 × (12.4 to 13.0)e-6 = 0.7812 to 0.8190 mm
    check = workshop.write(bench(in_block('cold_set = "0.8 mm"', f'cold_set = "{cold_set} mm"'))).only(LINE)
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_the_axis_needs_its_cold_set(workshop: DesignFolder) -> None:
    assert workshop.write(bench(in_block('cold_set = "0.8 mm"', ""))).only(LINE).outcome == "not assessed"


@given(c=st.floats(2e-3, 2e-2), x=st.floats(-1.0, 1.0), warm=st.floats(0.0, 300.0))
def test_what_one_end_loses_by_the_rod_the_other_gains(c: float, x: float, warm: float) -> None:
    hot = {"alpha_b": 12e-6, "T_b": 293.15, "L": 1.5, "alpha_r": 12e-6, "T_r": 293.15 + warm, "T_ref": 293.15}
    front, back = (clearance_when_hot(c=c, s=s, x=x, **hot) for s in (1.0, -1.0))
    assert front + back == pytest.approx(2 * c)
    assert front <= c


@given(warm=st.floats(0.0, 80.0), length=st.floats(1.0, 4.0))
def test_a_rod_and_a_frame_that_grow_alike_leave_the_clearance(warm: float, length: float) -> None:
    at = 293.15 + warm
    left = clearance_with_driving_rod(8e-3, 1.0, length, 12e-6, at, length, 12e-6, at, 293.15)
    assert left == pytest.approx(8e-3)
    alone = clearance_with_driving_rod(8e-3, 1.0, length, 12e-6, at, length, 12e-6, 293.15, 293.15)
    assert alone <= left


@given(d=st.floats(0.2, 0.8), stroke=st.floats(0.3, 0.9), factor=st.floats(1.0, 3.0))
def test_clearance_share_is_free_of_scale(d: float, stroke: float, factor: float) -> None:
    small = clearance_ratio(0.05 * d**3, d, 0.1 * d, 0.01 * d, swept_volume(d, 0.1 * d, stroke))
    k = factor
    large = clearance_ratio(
        0.05 * (k * d) ** 3, k * d, 0.1 * k * d, 0.01 * k * d, swept_volume(k * d, 0.1 * k * d, k * stroke)
    )
    assert large == pytest.approx(small)
    assert axis_out_of_line(0.35, 12e-6, 293.15 + 100 * k, 293.15, 0.35 * 12e-6 * 100 * k) == pytest.approx(
        0, abs=1e-12
    )


def test_a_block_without_bores_has_no_centre_line(workshop: DesignFolder) -> None:
    block = BLOCK.partition("[bores.main]")[0]
    check = workshop.write({"duty.toml": DUTY, "block.toml": block}).only(LINE)
    expect_not_assessed(check, "bores is not stated in block.toml")
