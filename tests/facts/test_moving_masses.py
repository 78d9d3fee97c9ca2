"""The masses of what moves, by hand: the worse of what is stated and what the sizes let it be.

A spindle of known steel, 7850 kg/m³: at its thinnest π/4 × 16² × 300 mm³ are 0.47350 kg, as a bar π/4 × 22² × 500 mm³
1.49200 kg. A spring of 8 mm wire in eight coils of 48 mm: π/4 × 8² × π × 48 × 8 mm³ are 0.47601 kg.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.facts.moving_masses import greatest_mass, least_mass, weight_of_valve
from speclint.facts.taking import Take
from speclint.rules import Sheet
from tests.facts.bench import Bench, bench, opened
from tests.facts.test_masses import SPRING, STEEL, THIN
from tests.plugins.known_metals import FILES

THINNEST, BAR, WIRE = 0.47350, 1.49200, 0.47601
THICK = 'diameter = "22 mm"\nheated_length = "500 mm"\n'
#: More than the least and less than the greatest share of a spindle's sizes.
WITHIN = "1 kg"


def at(sheet: Sheet, end: int) -> Take:
    """Each size taken at its low (0) or its high limit (1)."""
    return lambda symbol, size: sheet.take_limits(symbol, size)[end]


def weighed(folder: Path, kind: str, sizes: str, mass: str) -> Bench:
    return bench(folder, {f"{kind} part": f'{sizes}mass = "{mass}"\n'}, "part", metals=True)


@pytest.mark.parametrize(
    ("kind", "sizes", "mass", "worked"),
    [
        ("valve-spindle", STEEL + THIN + THICK, "0.40 kg", 0.9 * THINNEST),
        ("valve-spindle", STEEL + THIN + THICK, "0.42 kg", 0.9 * THINNEST),
        ("valve-spindle", STEEL + THIN + THICK, "0.43 kg", 0.43),
        ("valve-spindle", STEEL + THIN + THICK, WITHIN, 1.0),
        ("valve-spindle", STEEL + THIN + THICK, "0.40 kg ±0.01", 0.9 * THINNEST + 0.01),
        ("valve-spindle", STEEL + THIN, "0.40 kg", 0.9 * THINNEST),
        ("valve-spindle", STEEL + THICK, "0.40 kg", 0.40),
        ("valve-spindle", THIN + THICK, "0.40 kg", 0.40),
        ("valve-spindle", "", "0.40 kg", 0.40),
        ("compression-spring", SPRING, "0.42 kg", 0.9 * WIRE),
        ("compression-spring", SPRING, "0.43 kg", 0.43),
    ],
)
def test_the_greatest_is_no_less_than_the_sizes_let_it_be(
    tmp_path: Path, kind: str, sizes: str, mass: str, worked: float
) -> None:
    made = weighed(tmp_path, kind, sizes, mass)
    found = greatest_mass("m", made["part"], made.sheet, at(made.sheet, 1))
    assert found == pytest.approx(worked, rel=1e-4)


@pytest.mark.parametrize(
    ("kind", "sizes", "mass", "worked"),
    [
        ("valve-spindle", STEEL + THIN + THICK, "5 kg", 3 * BAR),
        ("valve-spindle", STEEL + THIN + THICK, "4.5 kg", 3 * BAR),
        ("valve-spindle", STEEL + THIN + THICK, "4.4 kg", 4.4),
        ("valve-spindle", STEEL + THIN + THICK, WITHIN, 1.0),
        ("valve-spindle", STEEL + THIN + THICK, "5 kg ±0.1", 3 * BAR - 0.1),
        ("valve-spindle", STEEL + THICK, "5 kg", 3 * BAR),
        ("valve-spindle", STEEL + THIN, "5 kg", 5.0),
        ("valve-spindle", THIN + THICK, "5 kg", 5.0),
        ("valve-spindle", "", "5 kg", 5.0),
        ("compression-spring", SPRING, "0.53 kg", 1.1 * WIRE),
        ("compression-spring", SPRING, "0.52 kg", 0.52),
    ],
)
def test_the_least_is_no_more_than_the_sizes_let_it_be(
    tmp_path: Path, kind: str, sizes: str, mass: str, worked: float
) -> None:
    made = weighed(tmp_path, kind, sizes, mass)
    found = least_mass("m", made["part"], made.sheet, at(made.sheet, 0))
    assert found == pytest.approx(worked, rel=1e-4)


def test_sizes_and_density_count_with_their_limits(tmp_path: Path) -> None:
    """Of 7693 to 8007 kg/m³: 15.5 to 16.5 mm by 300 at its thinnest, 21 to 23 mm by 500 as a bar."""
    banded = 'density = { value = 7850, unit = "kg/m³", tolerance = 157'
    metals = FILES["metals.toml"]
    steel = metals.index("[known-steel]")
    own = metals[:steel] + metals[steel:].replace(banded.replace("157", "0"), banded, 1)
    sizes = (THIN + THICK).replace('"16 mm"', '"16 mm ±0.5"').replace('"22 mm"', '"22 mm ±1"')
    for mass, find, end, by_hand in (
        ("0.40 kg", greatest_mass, 1, 0.9 * math.pi / 4 * 0.0165**2 * 0.3 * 8007),
        ("5 kg", least_mass, 0, 3 * math.pi / 4 * 0.021**2 * 0.5 * 7693),
    ):
        part = f'kind = "valve-spindle"\nid = "part"\n{STEEL}{sizes}mass = "{mass}"\n'
        made = opened(tmp_path, {**FILES, "metals.toml": own, "part.toml": part}, "part")
        assert find("m", made["part"], made.sheet, at(made.sheet, end)) == pytest.approx(by_hand)


@pytest.mark.parametrize(
    ("opens", "helps", "weight"),
    [
        ("upwards", True, 5 + 3 * BAR),  # the lighter it is the less it shuts
        ("upwards", False, 5 + 5),
        ("downwards", True, -(5 + 5)),  # the heavier it is the more it opens
        ("downwards", False, -(5 + 3 * BAR)),
        ("sideways", True, 0.0),
    ],
)
def test_the_weight_of_a_valve_is_the_worse_for_what_is_asked(
    tmp_path: Path, opens: str, helps: bool, weight: float
) -> None:
    """A spindle of 5 kg weighs no more than three times its bar, 4.476 kg, where that is worse."""
    files = {
        "poppet-valve valve": f'mass = "5 kg"\nopens = "{opens}"\n',
        "valve-spindle part": f'{STEEL}{THIN}{THICK}mass = "5 kg"\nmoves = "valve"\n',
    }
    made = bench(tmp_path, files, "part", metals=True)
    weighs = weight_of_valve(made["valve"], made["part"], made.sheet, made.sheet.take, helps=helps)
    assert weighs == pytest.approx(weight * 9.80665, rel=1e-4)
