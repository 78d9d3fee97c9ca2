"""What a spec states, by key, as it is written."""

from __future__ import annotations

from pathlib import Path

from speclint.specs import stated_values
from speclint.testing import DesignFolder

RING = """
kind = "piston-ring"
id = "ring"
safety_part = true
thickness = "15 mm ±0.1"
made_for = ["500 mm", "503 mm"]
[wear]
limit = "14 mm"
"""


def test_each_value_stands_under_the_key_by_which_reports_point_at_it(tmp_path: Path) -> None:
    """Items of a list count from 0, as they do where a place is named; tables and truths are as the file has them."""
    design = DesignFolder(tmp_path).write({"ring.toml": RING}).assess().design
    assert design is not None
    ring = design.specs["ring"]
    assert stated_values(ring) == {
        "kind": "piston-ring",
        "id": "ring",
        "safety_part": "true",
        "thickness": "15 mm ±0.1",
        "made_for[0]": "500 mm",
        "made_for[1]": "503 mm",
        "wear.limit": "14 mm",
    }
    assert {one.where.key for one in ring.measures()} <= set(stated_values(ring))
