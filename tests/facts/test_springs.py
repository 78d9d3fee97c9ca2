"""What the sizes of a spring say of its rate and its load, against what its drawing states.

G d⁴/(8 D³ n) with 79.5 GPa, 8 mm, 48 mm and six coils: 79.5e9 × 4.096e-9/(8 × 1.10592e-4 × 6) = 61 342.6 N/m. From 150
to 120 mm: 1840.28 N.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import rate_by_sizes, rates, shut_loads, stroke
from tests.facts.bench import Bench, bench

WIRE = 'wire = "8 mm"\nworking_coils = "6"\n'
MEAN = 'mean_diameter = "48 mm"\n'
LENGTHS = 'free_length = "150 mm"\nshut_length = "120 mm"\n'
RATE = 79.5e9 * 0.008**4 / (8 * 0.048**3 * 6)
LOAD = RATE * 0.030


def drawn(folder: Path, spring: str) -> Bench:
    return bench(
        folder, {"compression-spring spring": 'material = "known-wire"\n' + spring}, "spring", metals=True
    )


def by_sizes(on: Bench) -> float | None:
    return rate_by_sizes(on["spring"], on.sheet)


@pytest.mark.parametrize(
    ("sizes", "rate"),
    [
        (WIRE + MEAN, RATE),
        (WIRE + 'outside_diameter = "56 mm"\n', RATE),
        (WIRE + 'inside_diameter = "40 mm"\n', RATE),
        (WIRE, None),
        (WIRE.replace('wire = "8 mm"\n', "") + MEAN, None),
        (WIRE.replace('working_coils = "6"\n', "") + MEAN, None),
    ],
)
def test_the_rate_is_that_of_wire_coils_and_diameter(tmp_path: Path, sizes: str, rate: float | None) -> None:
    """The corner that the sheet stands on is within the 2 % of the modulus."""
    assert by_sizes(drawn(tmp_path, sizes)) == (None if rate is None else pytest.approx(rate, rel=0.0201))


def rate_written(share: float) -> str:
    return f'rate = "{share * RATE / 1e3:.6f} N/mm"\n'


@pytest.mark.parametrize(
    ("stated", "least", "most"),
    [
        ("", 1.0, 1.0),
        (rate_written(1.05), 1.05, 1.05),  # within 5 % of the stated one
        (rate_written(0.96), 0.96, 0.96),
        (rate_written(1.06), 1.0, 1.06),
        (rate_written(0.94), 0.94, 1.0),
    ],
)
def test_a_rate_beyond_five_per_cent_is_one_and_the_other(
    tmp_path: Path, stated: str, least: float, most: float
) -> None:
    on = drawn(tmp_path, stated)
    found = rates(on["spring"], on.sheet, RATE)
    assert found == pytest.approx((least * RATE, most * RATE), rel=1e-6)


def test_without_sizes_a_rate_is_as_stated(tmp_path: Path) -> None:
    on = drawn(tmp_path, rate_written(0.5))
    assert rates(on["spring"], on.sheet, None) == pytest.approx((0.5 * RATE, 0.5 * RATE), rel=1e-6)


def load_written(load: float, limits: str = "") -> str:
    return f'shut_load = "{load:.3f} N{limits}"\n'


@pytest.mark.parametrize(
    ("stated", "given", "least", "most"),
    [
        # within its own limits of ± 100 N the drawing agrees with itself
        (load_written(LOAD + 99, " ±100"), LOAD + 90, LOAD + 90, LOAD + 90),
        (load_written(LOAD + 101, " ±100"), LOAD + 201, LOAD + 100, LOAD + 201),
        (load_written(LOAD - 101, " ±100"), LOAD - 201, LOAD - 201, LOAD - 100),
        (load_written(LOAD - 99, " ±100"), LOAD - 90, LOAD - 90, LOAD - 90),
        # without limits, and without a grade, any difference is one
        (load_written(LOAD + 1), LOAD + 1, LOAD, LOAD + 1),
    ],
)
def test_a_load_that_its_sizes_contradict_is_one_and_the_other(
    tmp_path: Path, stated: str, given: float, least: float, most: float
) -> None:
    on = drawn(tmp_path, WIRE + MEAN + LENGTHS + stated)
    assert shut_loads(on["spring"], on.sheet, given, RATE) == pytest.approx((least, most), abs=0.01)


def test_a_load_of_a_quality_grade_may_differ_by_the_standard(tmp_path: Path) -> None:
    """EN 15800 allows more than 1 N of 1840 in any grade, and less than half of it."""
    spring = WIRE + MEAN + LENGTHS + 'quality_grade = "2"\n'
    on = drawn(tmp_path, spring + load_written(LOAD + 1))
    assert shut_loads(on["spring"], on.sheet, LOAD, RATE) == (LOAD, LOAD)
    (tmp_path / "a").mkdir()
    far = drawn(tmp_path / "a", spring + load_written(1.5 * LOAD))
    low, high = shut_loads(far["spring"], far.sheet, 1.5 * LOAD, RATE)
    assert (low, high) == pytest.approx((LOAD, 1.5 * LOAD), abs=0.01)


@pytest.mark.parametrize("missing", ['free_length = "150 mm"\n', 'shut_length = "120 mm"\n'])
def test_without_a_length_the_stated_load_stands_alone(tmp_path: Path, missing: str) -> None:
    on = drawn(tmp_path, WIRE + MEAN + LENGTHS.replace(missing, "") + load_written(2 * LOAD))
    assert shut_loads(on["spring"], on.sheet, 7.0, RATE) == (7.0, 7.0)
    assert shut_loads(on["spring"], on.sheet, 7.0, None) == (7.0, 7.0)


@pytest.mark.parametrize(("spring", "length"), [('closes = "valve"\n', 0.021), ("", None)])
def test_the_stroke_of_a_spring_is_the_furthest_lift(
    tmp_path: Path, spring: str, length: float | None
) -> None:
    files = {
        "compression-spring spring": spring,
        "poppet-valve valve": 'lift = "20 mm"\novertravel = "1 mm"\n',
    }
    on = bench(tmp_path, files, "spring")
    assert stroke(on["spring"], on.sheet) == pytest.approx(length)
