"""The mass of a cam box against its walls and its gear, by hand with 7850 kg/m³.

Cam 7850 π (0.08² − 0.03²) × 0.03 = 4.069 kg, shaft 7850 π/4 × 0.06² × 0.4 = 8.878, tappet 0.8, boss of the rocker
7850 π/4 (0.06² − 0.04²) × 0.05 = 0.6165 kg. Walls of 5 mm round 500 × 400 × 300 mm, 0.94 m²: 36.895 kg. In all
51.259 kg, of which 0.9 are 46.133.
"""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.agreement.silent import FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.plugins.motion.train import FORGING

RULE = "mass.by-sizes"
STEEL = 'material = "known-forging"\n'
FILES = {
    "speclint.toml": WITH_METALS,
    "metals.toml": METALS + FORGING,
    "box.toml": 'kind = "cam-box"\nid = "box"\n'
    + STEEL
    + 'mass = "60 kg"\nlength = "500 mm"\nwidth = "400 mm"\n'
    'height = "300 mm"\n',
    "tappet.toml": 'kind = "tappet"\nid = "tappet"\ncarried_in = "box"\nmass = "0.8 kg"\n',
    "cam.toml": 'kind = "cam"\nid = "cam"\nlifts = "tappet"\nturns_on = "shaft"\n'
    + STEEL
    + 'base_radius = "80 mm"\nbore = "60 mm"\nwidth = "30 mm"\n',
    "shaft.toml": 'kind = "shaft"\nid = "shaft"\n' + STEEL + 'diameter = "60 mm"\nlength = "400 mm"\n',
    "rocker.toml": 'kind = "rocker"\nid = "rocker"\ncarried_in = "box"\n'
    + STEEL
    + 'boss = "60 mm"\npin = "40 mm"\nbush_length = "50 mm"\n',
}
#: Walls alone, and the least of all.
WALLS, ALL = 0.9 * 36.895, 0.9 * 51.259


def judged(workshop: DesignFolder, mass: float, *without: str, more: dict[str, str] | None = None) -> str:
    files = {name: text for name, text in FILES.items() if name not in without} | (more or {})
    files["box.toml"] = files["box.toml"].replace('"60 kg"', f'"{mass:.4f} kg"')
    check = workshop.write(files).only(RULE, "box")
    assert check.grade == (Grade.NONCONFORMITY if check.outcome == "finding" else None)
    return check.outcome


@pytest.mark.parametrize(
    ("without", "less"),
    [
        ((), 0.0),
        (("cam.toml", "shaft.toml"), 4.0690 + 8.8781),
        (("tappet.toml", "cam.toml", "shaft.toml"), 4.0690 + 8.8781 + 0.8),
        (("rocker.toml",), 0.6165),
        (("rocker.toml", "tappet.toml", "cam.toml", "shaft.toml"), 14.3636),
    ],
)
def test_a_box_weighs_its_walls_and_its_gear(
    workshop: DesignFolder, without: tuple[str, ...], less: float
) -> None:
    least = ALL - 0.9 * less
    assert judged(workshop, 1.001 * least, *without) == "conforms"
    assert judged(workshop, 0.999 * least, *without) == "finding"


def test_a_shaft_through_two_boxes_is_in_neither(workshop: DesignFolder) -> None:
    """Without its 8.878 kg."""
    other = {
        "other.toml": 'kind = "cam"\nid = "other"\nlifts = "afar"\nturns_on = "shaft"\n',
        "afar.toml": 'kind = "tappet"\nid = "afar"\n',
    }
    least = ALL - 0.9 * 8.8781
    assert judged(workshop, 1.001 * least, more=other) == "conforms"
    assert judged(workshop, 0.999 * least, more=other) == "finding"


@pytest.mark.parametrize("size", ['length = "500 mm"\n', 'width = "400 mm"\n', 'height = "300 mm"\n', STEEL])
def test_without_a_size_or_a_metal_the_gear_alone_counts(workshop: DesignFolder, size: str) -> None:
    box = {"box.toml": FILES["box.toml"].replace(size, "")}
    assert judged(workshop, 1.001 * (ALL - WALLS), more=box) == "conforms"
    assert judged(workshop, 0.999 * (ALL - WALLS), more=box) == "finding"


@pytest.mark.parametrize(
    "row",
    rows(
        RULE,
        "box",
        FILES,
        (SILENT, ("box.toml", 'mass = "60 kg"\n')),
        (FINE, ("tappet.toml", 'mass = "0.8 kg"\n')),
        (FINE, ("tappet.toml", 'carried_in = "box"\n')),
        (FINE, ("cam.toml", 'base_radius = "80 mm"\n')),
        (FINE, ("cam.toml", 'bore = "60 mm"\n')),
        (FINE, ("cam.toml", 'width = "30 mm"\n')),
        (FINE, ("cam.toml", 'turns_on = "shaft"\n')),
        (FINE, ("shaft.toml", 'length = "400 mm"\n')),
        (FINE, ("rocker.toml", 'boss = "60 mm"\n')),
    ),
    ids=named,
)
def test_a_silent_place(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
