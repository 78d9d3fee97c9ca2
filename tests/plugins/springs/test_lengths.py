"""coil-spring.index and coil-spring.solid-clearance."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.springs import mean_from_inside, mean_from_outside
from speclint.handbook.springs.lengths import clearance_sum_cold_coiled, solid_length
from speclint.testing import DesignFolder, found
from speclint_springs.formulae.helical import gap_before_solid
from tests.plugins.springs.spring import spring

INDEX, CLEARANCE = "coil-spring.index", "coil-spring.solid-clearance"


def test_index_of_a_sound_spring_is_worked_from_its_mean_diameter(workshop: DesignFolder) -> None:
    """48/8 = 6, at the edge of the preferred 6 to 12: by hand nothing of it is left, |6 − 9|/3 = 1."""
    check = workshop.write(spring()).only(INDEX)
    assert check.outcome == "conforms"
    assert found(check) == pytest.approx(6.0)
    assert check.utilisation == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("mean", "process", "outcome", "grade"),
    [
        ("47.9 mm", "cold", "finding", Grade.OBSERVATION),  # index 5.99 < 6
        ("95.9 mm", "cold", "conforms", None),  # 11.99 < 12
        ("96.1 mm", "cold", "finding", Grade.OBSERVATION),  # 12.01 > 12
        ("32.1 mm", "cold", "finding", Grade.OBSERVATION),  # 4.01: the standard covers it
        ("31.9 mm", "cold", "finding", Grade.QUERY),  # 3.99 < 4: it does not
        ("159.9 mm", "cold", "finding", Grade.OBSERVATION),  # 19.99
        ("160.1 mm", "cold", "finding", Grade.QUERY),  # 20.01 > 20
        ("24.1 mm", "hot", "finding", Grade.OBSERVATION),  # 3.01
        ("23.9 mm", "hot", "finding", Grade.QUERY),  # 2.99 < 3
        ("95.9 mm", "hot", "conforms", None),  # 11.99 < 12
        ("96.1 mm", "hot", "finding", Grade.QUERY),  # 12.01 > 12
    ],
)
def test_index_limits_from_both_sides(
    workshop: DesignFolder, mean: str, process: str, outcome: str, grade: Grade | None
) -> None:
    files = spring(('"48 mm"', f'"{mean}"'), ('"cold"', f'"{process}"'))
    check = workshop.write(files).only(INDEX)
    assert (check.outcome, check.grade) == (outcome, grade)


@pytest.mark.parametrize("line", ['outside_diameter = "56 mm"', 'inside_diameter = "40 mm"'])
def test_index_is_the_same_from_any_diameter(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(spring(('mean_diameter = "48 mm"', line))).only(INDEX)
    assert found(check) == pytest.approx(6.0)


@pytest.mark.parametrize("line", ['wire = "8 mm"', 'mean_diameter = "48 mm"', 'process = "cold"'])
def test_index_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(spring((line, ""))).only(INDEX)
    assert check.outcome == "not assessed"
    assert line.split()[0] in check.says


@given(
    d=st.floats(1e-3, 20e-3),
    w=st.floats(3.0, 20.0),
)
def test_outside_and_inside_diameter_give_the_same_mean(d: float, w: float) -> None:
    D = w * d
    assert mean_from_outside(D_e=D + d, d=d) == pytest.approx(D)
    assert mean_from_inside(D_i=D - d, d=d) == pytest.approx(D)


def test_clearance_of_a_sound_spring(workshop: DesignFolder) -> None:
    """Open 100 less solid 10 × 8 = 80: 20 mm; S_a = 1.5 × 8 (0.0015 × 2304/8 + 0.8) = 14.784; 14.784/20 = 0.7392."""
    check = workshop.write(spring()).only(CLEARANCE)
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(0.7392)


@pytest.mark.parametrize(("opened", "outcome"), [("94.79 mm", "conforms"), ("94.78 mm", "finding")])
def test_clearance_limit_from_both_sides(workshop: DesignFolder, opened: str, outcome: str) -> None:
    """80 + 14.784 = 94.784 mm."""
    check = workshop.write(spring(('"100 mm"', f'"{opened}"'))).only(CLEARANCE)
    assert check.outcome == outcome


@pytest.mark.parametrize(("lift", "outcome"), [("22.2 mm", "conforms"), ("22.3 mm", "finding")])
def test_a_spring_is_as_short_as_its_valve_lifts_far(workshop: DesignFolder, lift: str, outcome: str) -> None:
    """118 − 22.2 − 1 = 94.8 mm, where 80 + 14.784 = 94.784 are wanted, whatever open length is stated."""
    files = spring(add='closes = "valve"\n')
    files["valve.toml"] = f'kind = "poppet-valve"\nid = "valve"\nlift = "{lift}"\novertravel = "1 mm"\n'
    assert workshop.write(files).only(CLEARANCE, "spring").outcome == outcome


def test_an_index_goes_by_the_mean_diameter_where_several_are_stated(workshop: DesignFolder) -> None:
    for other in ('outside_diameter = "60 mm"\n', 'inside_diameter = "44 mm"\n'):
        assert found(workshop.write(spring(add=other)).only(INDEX)) == pytest.approx(6.0)


def test_steady_load_needs_less_clearance(workshop: DesignFolder) -> None:
    """Factor 1 where it keeps one length: S_a = 9.856 mm, of 20 mm: 0.4928."""
    files = spring(('"alternating"', '"steady"'), ('"118 mm"', '"100 mm"'))
    check = workshop.write(files).only(CLEARANCE)
    assert check.utilisation == pytest.approx(0.4928)


def test_hot_coiled_clearance(workshop: DesignFolder) -> None:
    """L_c = (10 − 0.3) 8 = 77.6, gap 22.4; S_a = 0.02 × 2 × 8 × (48 + 8) = 17.92; 0.8."""
    check = workshop.write(spring(('"cold"', '"hot"'))).only(CLEARANCE)
    assert check.utilisation == pytest.approx(0.8)


def test_clearance_binds_at_the_limits_of_the_drawing(workshop: DesignFolder) -> None:
    """Sound at its nominal sizes; wire 8.1 and open 95 make 95 − 81 = 14 mm, and S_a rises to about 14.8."""
    files = spring(('wire = "8 mm"', 'wire = "8 mm ±0.1"'), ('"100 mm"', '"97 mm ±2"'))
    check = workshop.write(files).only(CLEARANCE)
    assert check.outcome == "finding"
    assert set(check.governing) == {"wire high", "open length low"}


def test_coils_that_bind_are_far_beyond_the_limit(workshop: DesignFolder) -> None:
    """Open 79 mm is less than solid: no clearance at all."""
    check = workshop.write(spring(('"100 mm"', '"79 mm"'))).only(CLEARANCE)
    assert check.outcome == "finding"
    assert found(check) == pytest.approx(-1e-3)


@pytest.mark.parametrize("line", ['open_length = "100 mm"', 'total_coils = "10"', 'loading = "alternating"'])
def test_clearance_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(spring((line, ""))).only(CLEARANCE)
    assert check.outcome == "not assessed"
    assert line.split()[0] in check.says


@given(
    d=st.floats(2e-3, 15e-3),
    w=st.floats(4.0, 12.0),
    n=st.floats(2.0, 20.0),
    scale=st.floats(0.2, 5.0),
)
def test_a_spring_twice_the_size_has_twice_the_gap_and_needs_twice(
    d: float, w: float, n: float, scale: float
) -> None:
    def gap_over_need(size: float) -> float:
        solid = solid_length(n_t=n + 2, a=0, d_max=size * d)
        gap = gap_before_solid(L_O=size * (n + 5) * d, L_c=solid)
        return gap / clearance_sum_cold_coiled(x=1.5, n=n, D=size * w * d, d=size * d)

    assert gap_over_need(scale) == pytest.approx(gap_over_need(1.0))


@pytest.mark.parametrize(
    ("total", "process", "outcome"),
    [
        ("10", "cold", "conforms"),
        ("9.9", "cold", "finding"),
        ("9.5", "hot", "conforms"),
        ("9.4", "hot", "finding"),
    ],
)
def test_closed_ends_rest_with_coils_of_their_own(
    workshop: DesignFolder, total: str, process: str, outcome: str
) -> None:
    """8 working coils, and two at the ends of a spring coiled cold, one and a half of one coiled hot."""
    shorter = ('open_length = "100 mm"', 'open_length = "110 mm"')
    files = spring(shorter, ('total_coils = "10"', f'total_coils = "{total}"'), ('"cold"', f'"{process}"'))
    check = workshop.write(files).only(CLEARANCE)
    assert check.outcome == outcome
    assert outcome == "conforms" or "beyond the working ones" in check.says


@pytest.mark.parametrize(("closes", "outcome"), [("", "conforms"), ('closes = "valve"\n', "finding")])
def test_a_spring_that_shuts_a_valve_alternates_whatever_it_says(
    workshop: DesignFolder, closes: str, outcome: str
) -> None:
    """At 98 mm 18 mm are left of 80: 8 × (0.0015 × 48²/8 + 0.8) = 9.856 mm, and half as much again 14.784 mm.

    At 90 mm 10 mm are left.
    """
    steady = ('loading = "alternating"', 'loading = "steady"')
    lengths = (
        ('open_length = "100 mm"', 'open_length = "90 mm"'),
        ('shut_length = "118 mm"', 'shut_length = "90 mm"'),
    )
    files = spring(steady, *lengths, add=closes)
    files["valve.toml"] = 'kind = "poppet-valve"\nid = "valve"\n'
    assert workshop.write(files).only(CLEARANCE).outcome == outcome
