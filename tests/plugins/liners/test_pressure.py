"""cylinder.test-pressure and cylinder.between-bores.

P355GH of 16 to 40 mm (EN 10028-2): at 20 °C 345 and 510 MPa, allowable 510/2.4 = 212.5 MPa; at 200 °C 267/1.5 = 178;
at 250 °C 245/1.5 = 163.33 MPa.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.plates import pressure_across
from speclint.testing import DesignFolder, found, limit
from speclint_liners.formulae.water import wanted_test_pressure
from tests.plugins.liners.bench import bench, in_block, in_duty

TEST, BETWEEN = "cylinder.test-pressure", "cylinder.between-bores"


def with_test(bar: str, *changes: tuple[str, str, str]) -> dict[str, str]:
    return bench(in_block('test_pressure = "28 bar', f'test_pressure = "{bar} bar'), *changes)


@pytest.mark.parametrize(("bar", "outcome"), [("24.9", "conforms"), ("24.8", "finding")])
def test_the_least_factor(workshop: DesignFolder, bar: str, outcome: str) -> None:
    # 1.5 × 16.6; 1.25 × 212.5/178 = 1.4923 is less
    check = workshop.write(with_test(bar)).only(TEST)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("bar", "outcome"), [("27.0", "conforms"), ("26.9", "finding")])
def test_a_hot_block_is_tested_harder(workshop: DesignFolder, bar: str, outcome: str) -> None:
    # 1.25 × 212.5/163.333 × 16.6 = 26.996 bar
    hot = in_duty('cylinder-block = "200 °C"', 'cylinder-block = "250 °C"')
    assert workshop.write(with_test(bar, hot)).only(TEST).outcome == outcome


@pytest.mark.parametrize(("bar", "outcome"), [("44.2", "conforms"), ("44.3", "finding")])
def test_the_test_spares_the_liner(workshop: DesignFolder, bar: str, outcome: str) -> None:
    # 8.820316 p ≤ 195/5 = 39 MPa: 44.216 bar
    assert workshop.write(with_test(bar)).only(TEST).outcome == outcome


@pytest.mark.parametrize(("wall", "outcome"), [("2.5", "conforms"), ("2.47", "finding")])
def test_the_test_spares_the_block(workshop: DesignFolder, wall: str, outcome: str) -> None:
    """P355GH up to 16 mm has 355 MPa: 0.9 × 355 = 319.5 = 2 × 2.8 D_s²/(D_s² − 560²).

    D_s² = 560² × 319.5/(319.5 − 5.6): D_s = 564.973, a wall of 2.4866 mm. The liner stands at 24.7 of 39 MPa.
    """
    check = workshop.write(bench(in_block('\nwall = "40 mm"', f'\nwall = "{wall} mm"'))).only(TEST)
    assert check.outcome == outcome


@pytest.mark.parametrize(("bar", "outcome"), [("33.2", "conforms"), ("33.1", "finding")])
def test_an_iron_block_is_tested_at_twice_the_duty(workshop: DesignFolder, bar: str, outcome: str) -> None:
    iron = in_block('id = "block"\nmaterial = "plate-P355GH"', 'id = "block"\nmaterial = "grey-iron-250"')
    assert workshop.write(with_test(bar, iron)).only(TEST).outcome == outcome


def test_an_iron_block_stands_at_a_fifth_of_its_strength(workshop: DesignFolder) -> None:
    # a wall of 15 mm: (590² + 560²)/(590² − 560²) = 19.1797, × 3.4 = 65.2 MPa, above 225/5 = 45 MPa
    iron = in_block('id = "block"\nmaterial = "plate-P355GH"', 'id = "block"\nmaterial = "grey-iron-250"')
    check = workshop.write(with_test("34", iron, in_block('\nwall = "40 mm"', '\nwall = "15 mm"'))).only(TEST)
    assert check.outcome == "finding"
    assert found(check) == pytest.approx(65.211e6, rel=1e-4)
    assert limit(check) == pytest.approx(45e6)


def test_a_test_not_stated_is_a_hold(workshop: DesignFolder) -> None:
    check = workshop.write(bench(in_block('test_pressure = "28 bar gauge"', ""))).only(TEST)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_a_flat_division_by_hand(workshop: DesignFolder) -> None:
    """Timoshenko's table for built-in edges has 0.0829 at b/a = 2 and 0.0833 without end: by straight line over
    a/b = 1/3 0.08303, × 6 = 0.4982. 0.4982 × 1.6 × (200/20)² = 79.7 MPa."""
    check = workshop.write(bench()).only(BETWEEN)
    assert found(check) == pytest.approx(79.7e6, rel=2e-3)
    assert limit(check) == pytest.approx(178e6)


@pytest.mark.parametrize(("thickness", "outcome"), [("13.25 mm", "conforms"), ("13.1 mm", "finding")])
def test_a_division_is_thick_enough(workshop: DesignFolder, thickness: str, outcome: str) -> None:
    # up to 16 mm 275/1.5 = 183.33 MPa: 200 √(0.4982 × 1.6/183.33) = 13.19 mm
    check = workshop.write(bench(in_block('thickness = "20 mm"', f'thickness = "{thickness}"'))).only(BETWEEN)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def ring(one: str, other: str) -> dict[str, str]:
    sides = in_block(
        'one_side = "live steam"\nother_side = "exhaust steam"', f'one_side = "{one}"\nother_side = "{other}"'
    )
    return bench(in_block('span = "200 mm"\nlength = "600 mm"', 'ring_diameter = "560 mm"'), sides)


@pytest.mark.parametrize(
    ("one", "other", "pressure"),
    [
        ("cylinder", "atmosphere", 1.66e6),
        ("cylinder", "live steam", 1.6e6),  # the cylinder empty
        ("exhaust steam", "live steam", 1.6e6),
    ],
)
def test_a_ring_carries_the_difference_between_its_sides(
    workshop: DesignFolder, one: str, other: str, pressure: float
) -> None:
    # 560 and 600 mm: (360000 + 313600)/(360000 − 313600) = 14.517241
    check = workshop.write(ring(one, other)).only(BETWEEN)
    assert found(check) == pytest.approx(14.517241 * pressure, rel=1e-6)


@pytest.mark.parametrize("missing", ['span = "200 mm"', 'length = "600 mm"', 'one_side = "live steam"'])
def test_a_division_without_its_sizes_is_a_hold(workshop: DesignFolder, missing: str) -> None:
    check = workshop.write(bench(in_block(missing, ""))).only(BETWEEN)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@given(p=st.floats(5e5, 3e6), ratio=st.floats(1.0, 2.0))
def test_a_test_never_falls_short_of_either_factor(p: float, ratio: float) -> None:
    wanted = wanted_test_pressure(p, 1.43, 1.25, ratio * 100e6, 100e6)
    assert wanted >= 1.43 * p
    assert wanted >= 1.25 * ratio * p * (1 - 1e-12)
    assert pressure_across(p, wanted) == pressure_across(wanted, p)
