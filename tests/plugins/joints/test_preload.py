"""The temperature at which studs are tightened, from which their preload changes with heat."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.joints.bench import bench


@pytest.mark.parametrize(
    ("at", "outcome"),
    [("0 °C", "conforms"), ("-0.1 °C", "finding"), ("40 °C", "conforms"), ("40.1 °C", "finding")],
)
def test_studs_are_tightened_in_the_shop(workshop: DesignFolder, at: str, outcome: str) -> None:
    """Expansion counts from 20 °C, which is near enough from 0 to 40 °C, either included."""
    bench(workshop, ("studs", 'temperature = "20 °C"', f'temperature = "{at}"'))
    check = workshop.only("joint.separation", "studs")
    assert check.outcome == outcome
    assert outcome == "conforms" or "outside 0 to 40 °C" in check.says
