"""A seat bore and the plate that it is cut in."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "seat-bore.within-its-plate"
HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)
WELDMENT = """kind = "weldment"
makes = "block"
[plates.thick]
thickness = "55 mm +1/-0.5"
[plates.thin]
thickness = "30 mm"
[walls.pocket]
plate = "thick"
"""


@pytest.mark.parametrize(
    ("cut_in", "depth", "wanted"),
    [
        ('flat_wall = "pocket"', "54.5 mm", FINE),
        ('flat_wall = "pocket"', "54.5 mm ±0.1", HOLD),
        ('plate = "thin"', "30 mm", FINE),
        ('plate = "thin"', "30.1 mm", HOLD),
        ('plate = "thin"\nflat_wall = "pocket"', "48 mm", HOLD),
        ('plate = "thick"\nflat_wall = "pocket"', "48 mm", FINE),
    ],
)
def test_a_seat_bore_ends_in_its_plate(
    workshop: DesignFolder, cut_in: str, depth: str, wanted: tuple[str, Grade | None]
) -> None:
    block = f'kind = "cylinder-block"\n[seat_bores.upper]\n{cut_in}\ndepth = "{depth}"\n'
    found = workshop.write({"block.toml": block, "weldment.toml": WELDMENT}).only(RULE)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize("line", ['depth = "60 mm"', 'flat_wall = "pocket"'])
def test_without_a_plate_or_a_depth_there_is_nothing_to_compare(workshop: DesignFolder, line: str) -> None:
    block = f'kind = "cylinder-block"\n[seat_bores.upper]\n{line}\n'
    found = workshop.write({"block.toml": block, "weldment.toml": WELDMENT}).only(RULE)
    assert found.outcome == "not applicable"
