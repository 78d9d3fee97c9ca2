"""The hexagon of a relief valve against the seat inside of it, from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed

ROUND = "fitting.round-its-seat"
BLOCK = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\n'
    '[ends.front]\nrelief_seat_diameter = "50 mm"\n[ends.front.relief_fitting]\nacross_flats = "65 mm"\n'
    '[ends.back]\nrelief_seat_diameter = "40 mm"\n[ends.back.relief_fitting]\nacross_flats = "55 mm"\n'
}
WRONG, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ("65 mm", "65 mm", FINE),
        ("65 mm", "50 mm", FINE),
        ("65 mm", "49.9 mm", WRONG),
        ("65 mm", "24 mm", WRONG),
        ("65 mm", "50 mm ±0.1", WRONG),  # 49.9 mm at the least
        ("50 mm", "65 mm", FINE),
        ("50 mm", "65.1 mm", WRONG),
        ("55 mm", "40 mm", FINE),
        ("55 mm", "39.9 mm", WRONG),  # of the second end
        ("55 mm", "49.9 mm", FINE),  # each end has valves of its own
    ],
)
def test_the_hexagon_takes_the_seat(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    block = changed(BLOCK["block.toml"], (f'"{old}"', f'"{new}"'))
    found = workshop.write({"block.toml": block}).only(ROUND)
    assert (found.outcome, found.grade) == ends


def test_a_finding_names_both_places(workshop: DesignFolder) -> None:
    block = changed(BLOCK["block.toml"], ("65 mm", "24 mm"))
    found = workshop.write({"block.toml": block}).only(ROUND)
    assert "24 mm" in found.says
    assert "50 mm" in found.says
