"""A piston ring as a spring: the gap that closes, the pressure that it gives, and the bore that it is of, by hand.

Bore 500 mm, ring 16 mm thick: (d − t) = 484 mm. A gap that closes by 57 mm of a metal of 194 GPa, the least of the
known steel, presses with 4 × 194e3 × 16³ × 57/(9 π × 500 × 484³) MPa.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path

import pytest

from speclint.errors import OutOfRange
from speclint.facts.ring_springs import (
    change_of_gap_in_bore,
    gap_change_for_pressure,
    modulus_of_ring,
    pressure_by_free_gap,
    pressure_of_gap_change,
    ring_bore,
    stress_of_gap_change,
)
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

RING = 'runs_in = "liner"\nmaterial = "known-steel"\ngap = "3 mm"\nthickness = "16 mm"\n'
FREE = 'free_gap = "60 mm"\n'


def drawn(folder: Path, text: str = RING + FREE) -> Bench:
    files = {"cylinder-liner liner": 'bore = "500 mm"\n', "piston-ring ring": text}
    return bench(folder, files, "ring", metals=True)


def test_the_gap_closes_from_free_to_that_in_the_bore(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    assert change_of_gap_in_bore(on["ring"], on.sheet.take, on.sheet) == pytest.approx(0.057)


def test_the_gap_closes_by_what_gives_the_wall_pressure(tmp_path: Path) -> None:
    """9 π × 0.05 × 500 × 484³/(4 × 194e3 × 16³) mm."""
    on = drawn(tmp_path, RING + 'wall_pressure = "0.05 MPa"\n')
    E = modulus_of_ring(on["ring"], on.sheet)
    assert pytest.approx(194e9) == E
    wanted = 9 * math.pi * 0.05 * 500 * 484**3 / (4 * 194e3 * 16**3) / 1e3
    assert change_of_gap_in_bore(on["ring"], on.sheet.take, on.sheet) == pytest.approx(wanted)
    assert pressure_by_free_gap(on["ring"], on.sheet.take, on.sheet) is None


def test_the_pressure_of_a_ring_by_its_free_gap(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    found = pressure_by_free_gap(on["ring"], on.sheet.take, on.sheet)
    assert found is not None
    assert found.value / 1e6 == pytest.approx(4 * 194e3 * 16**3 * 57 / (9 * math.pi * 500 * 484**3))
    assert [place.key for place in found.places] == ["free_gap", "gap", "thickness", "bore"]


def test_a_ring_is_of_its_liner_or_of_the_least_bore_that_it_is_made_for(tmp_path: Path) -> None:
    made = 'made_for = ["510 mm", "505 mm", "508 mm"]\n'
    for text, bore in (
        (RING + made, 0.5),
        (RING.replace('runs_in = "liner"\n', "") + made, 0.505),
    ):
        folder = tmp_path / str(bore)
        folder.mkdir()
        on = drawn(folder, text)
        assert on.sheet.take("d", ring_bore(on["ring"], on.sheet)) == pytest.approx(bore)
    folder = tmp_path / "none"
    folder.mkdir()
    on = drawn(folder, RING.replace('runs_in = "liner"\n', ""))
    with pytest.raises(NotAssessed, match="runs_in is not stated"):
        ring_bore(on["ring"], on.sheet)


@pytest.mark.parametrize(
    ("thick", "told"),
    [(0.0, "must have a thickness"), (0.05, "thicker than a tenth"), (0.0501, "thicker than a tenth")],
)
def test_a_ring_that_is_no_slender_beam_is_refused(thick: float, told: str) -> None:
    works: tuple[Callable[[], float], ...] = (
        lambda: stress_of_gap_change(E=1e11, t=thick, delta=0.05, d=0.5),
        lambda: gap_change_for_pressure(p=5e4, d=0.5, t=thick, E=1e11),
        lambda: pressure_of_gap_change(E=1e11, t=thick, delta=0.05, d=0.5),
    )
    for work in works:
        with pytest.raises(OutOfRange, match=told):
            work()
    assert stress_of_gap_change(E=1e11, t=0.0499, delta=0.05, d=0.5) > 0
