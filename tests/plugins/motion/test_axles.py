"""Loads of axles and where the weight stands, by hand; each limit from both sides."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.testing import DesignFolder, expect_not_assessed
from speclint_motion.formulae.balance import unevenness
from tests.plugins.motion.locomotive import files

LOAD, STANDS = "axle.load", "engine.weight-on-axles"


@pytest.mark.parametrize(
    ("part", "old", "new", "outcome"),
    [
        ("engine", "17 t", "16 t", "conforms"),  # twice 8000 kg
        ("engine", "17 t", "15.9 t", "finding"),
        ("axle", '"8000 kg"', '"8490 kg"', "conforms"),  # 490/16490 = 0.0297
        ("axle", '"8000 kg"', '"8500 kg"', "finding"),  # 500/16500 = 0.0303
        ("axle", '"8000 kg"', '"7540 kg"', "conforms"),  # 460/15540 = 0.0296
        ("axle", '"8000 kg"', '"7530 kg"', "finding"),  # 470/15530 = 0.0303
    ],
)
def test_the_load_of_an_axle(workshop: DesignFolder, part: str, old: str, new: str, outcome: str) -> None:
    assert workshop.write(files(part, (old, new))).only(LOAD).outcome == outcome


@pytest.mark.parametrize(
    ("part", "old", "new", "outcome"),
    [
        ("engine", 'load = "8 t"', 'load = "8.238 t"', "conforms"),  # 24.238 of 24 t: 0.992 %
        ("engine", 'load = "8 t"', 'load = "8.242 t"', "finding"),  # 1.008 %
        ("engine", '"16 t"\nat', '"16.238 t"\nat', "conforms"),
        ("engine", '"16 t"\nat', '"16.242 t"\nat', "finding"),
        ("engine", 'at = "1.5 m"', 'at = "1.574 m"', "conforms"),  # 16 × 0.074/24 = 49.3 mm
        ("engine", 'at = "1.5 m"', 'at = "1.576 m"', "finding"),  # 50.7 mm
        ("engine", 'at = "3 m"', 'at = "3.2 m"', "finding"),  # 8 × 0.2/24 = 66.7 mm
        (
            "engine",
            'at = "1.5 m"\nfrom_centre = "0 mm"',
            'at = "1.5 m"\nfrom_centre = "22 mm"',
            "conforms",
        ),  # 14.7
        (
            "engine",
            'at = "1.5 m"\nfrom_centre = "0 mm"',
            'at = "1.5 m"\nfrom_centre = "-23 mm"',
            "finding",
        ),  # 15.3
    ],
)
def test_where_the_weight_stands(workshop: DesignFolder, part: str, old: str, new: str, outcome: str) -> None:
    """16 t on the axle and 8 t at 3 m: the centre at 1 m; 16 t at 1.5 m and 8 t on the axle: 1 m too."""
    assert workshop.write(files(part, (old, new))).only(STANDS).outcome == outcome


def test_without_parts_nothing_is_weighed(workshop: DesignFolder) -> None:
    made = files()
    made["engine.toml"] = made["engine.toml"].partition("[stands.boiler]")[0]
    expect_not_assessed(workshop.write(made).only(STANDS), "stands")


@given(m=st.floats(1e3, 1e4), d=st.floats(0, 900))
def test_either_wheel_may_be_the_heavier(m: float, d: float) -> None:
    assert unevenness(m + d, m - d) == pytest.approx(unevenness(m - d, m + d)) == pytest.approx(d / m)
