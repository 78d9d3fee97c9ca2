"""coil-spring.rate."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.errors import OutOfRange
from speclint.testing import DesignFolder
from speclint_springs.formulae.helical import half_of_width, load_difference, rate_difference
from speclint_springs.formulae.tables import end_coils_in_pitch
from tests.plugins.springs.spring import spring

RATE = "coil-spring.rate"
GRADE_2 = 'quality_grade = "2"\n'


def test_a_rate_that_fits_the_sizes(workshop: DesignFolder) -> None:
    """46.927 (modulus 2 % high) against 46: 0.02015, of 0.05: 0.4031."""
    check = workshop.write(spring(add='rate = "46 N/mm"\n')).only(RATE)
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(0.4031, rel=1e-3)


@pytest.mark.parametrize(
    ("rate", "outcome"),
    [("44.70", "conforms"), ("44.68", "finding"), ("47.45", "conforms"), ("47.47", "finding")],
)
def test_rate_limits_from_both_sides(workshop: DesignFolder, rate: str, outcome: str) -> None:
    """46.927/1.05 = 44.692 and 45.087/0.95 = 47.460 N/mm."""
    check = workshop.write(spring(add=f'rate = "{rate} N/mm"\n')).only(RATE)
    assert check.outcome == outcome


@pytest.mark.parametrize("stated", ['outside_diameter = "56 mm"', 'inside_diameter = "40 mm"'])
def test_a_rate_is_that_of_the_coil_by_whatever_diameter(workshop: DesignFolder, stated: str) -> None:
    """56 − 8 and 40 + 8 are both 48 mm: as above."""
    files = spring(('mean_diameter = "48 mm"', stated), add='rate = "46 N/mm"\n')
    check = workshop.write(files).only(RATE)
    assert (check.outcome, check.utilisation) == ("conforms", pytest.approx(0.4031, rel=1e-3))


@pytest.mark.parametrize("other", ['outside_diameter = "60 mm"\n', 'inside_diameter = "44 mm"\n'])
def test_a_rate_goes_by_the_mean_diameter_where_several_are_stated(
    workshop: DesignFolder, other: str
) -> None:
    """As the rule of the index and all that hold a load go: 48 mm, and not the 52 mm of the others."""
    check = workshop.write(spring(add=f'rate = "46 N/mm"\n{other}')).only(RATE)
    assert (check.outcome, check.utilisation) == ("conforms", pytest.approx(0.4031, rel=1e-3))


@pytest.mark.parametrize(("load", "outcome"), [("902.5 N", "conforms"), ("902.3 N", "finding")])
def test_load_limit_from_both_sides(workshop: DesignFolder, load: str, outcome: str) -> None:
    """46.92708 × 22 = 1032.396 N; A_F = 116.420 + 0.015 F_s; equal at F_s = 915.976/1.015 = 902.44 N."""
    check = workshop.write(spring(add=f'shut_load = "{load}"\n' + GRADE_2)).only(RATE)
    assert check.outcome == outcome


def test_the_worse_of_several_figures_governs(workshop: DesignFolder) -> None:
    """The shut load is right, the open one is that of another spring: 1877 against 1300 N."""
    add = 'rate = "46 N/mm"\nshut_load = "1012 N"\nopen_load = "1300 N"\n' + GRADE_2
    check = workshop.write(spring(add=add)).only(RATE)
    assert check.outcome == "finding"


def test_tolerances_on_sizes_do_not_make_a_drawing_contradict_itself(workshop: DesignFolder) -> None:
    files = spring(
        ('wire = "8 mm"', 'wire = "8 mm ±0.1"'),
        ('"48 mm"', '"48 mm ±0.8"'),
        ('"140 mm"', '"140 mm ±4"'),
        add='shut_load = "1012 N ±140"\n' + GRADE_2,
    )
    assert workshop.write(files).only(RATE).outcome == "conforms"


@pytest.mark.parametrize(
    ("width", "document", "grade"),
    [
        ("131.7", "", None),
        ("131.5", "", Grade.QUERY),
        ("131.5", "2.2", Grade.QUERY),
        ("131.5", "3.1", None),
        ("131.5", "3.2", None),
    ],
)
def test_limits_closer_than_the_grade_gives_rest_on_a_test(
    workshop: DesignFolder, width: str, document: str, grade: Grade | None
) -> None:
    """A_F = 116.420 + 0.015 × 1012 = 131.600 N of grade 2, to each side."""
    asked = f'inspection_document = "{document}"\n' if document else ""
    add = f'shut_load = "1012 N ±{width}"\n' + GRADE_2 + asked
    check = workshop.write(spring(add=add)).only(RATE)
    assert (check.outcome, check.grade) == ("finding" if grade else "conforms", grade)


@given(w=st.floats(0, 1e4))
def test_both_halves_are_the_width(w: float) -> None:
    assert 2 * half_of_width(w) == pytest.approx(w)


def test_without_any_stated_figure_it_is_not_assessed(workshop: DesignFolder) -> None:
    assert workshop.write(spring()).only(RATE).outcome == "not assessed"


def test_a_load_without_its_quality_grade_is_not_assessed(workshop: DesignFolder) -> None:
    check = workshop.write(spring(add='shut_load = "1012 N"\n')).only(RATE)
    assert check.outcome == "not assessed"
    assert "quality_grade" in check.says


def test_loads_of_hot_coiled_springs_are_a_query(workshop: DesignFolder) -> None:
    files = spring(('"cold"', '"hot"'), add='shut_load = "1012 N"\n' + GRADE_2)
    check = workshop.write(files).only(RATE)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@given(R=st.floats(1e3, 1e5), share=st.floats(0.0, 0.5))
def test_rate_difference_is_a_share_either_way(R: float, share: float) -> None:
    assert rate_difference(R=R * (1 + share), R_s=R) == pytest.approx(share, abs=1e-9)
    assert rate_difference(R=R * (1 - share), R_s=R) == pytest.approx(share, abs=1e-9)
    assert load_difference(F=R, F_s=2 * R) == load_difference(F=2 * R, F_s=R)


def test_a_rate_of_nothing_has_no_share() -> None:
    with pytest.raises(OutOfRange, match="stated rate 0 N/mm is not above 0"):
        rate_difference(R=46e3, R_s=0.0)
    with pytest.raises(OutOfRange, match="stated rate -40 N/mm is not above 0"):
        rate_difference(R=46e3, R_s=-40e3)


def test_ends_of_another_form_have_no_pitch() -> None:
    with pytest.raises(OutOfRange, match="open"):
        end_coils_in_pitch("open")
