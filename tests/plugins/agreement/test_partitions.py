"""A wall between two passages is no larger than either: 0.8 m by 0.6 m is 0.48 m², 0.95 m by 0.4 m is 0.38 m²."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

FINE, LESS = ("conforms", None), ("finding", Grade.NONCONFORMITY)
FILES = {
    "chest.toml": 'kind = "steam-passage"\nid = "chest"\nperimeter = "0.95 m"\nlength = "0.4 m"\n',
    "belt.toml": 'kind = "steam-passage"\nid = "belt"\nperimeter = "0.8 m"\nlength = "0.6 m"\n',
    "wall.toml": 'kind = "partition"\nid = "wall"\nlive_side = "chest"\nexhaust_side = "belt"\narea = "0.38 m²"\n',
}


@pytest.mark.parametrize(
    ("file", "old", "new", "wanted"),
    [
        ("wall.toml", "0.38 m²", "0.37 m²", FINE),
        ("wall.toml", "0.38 m²", "0.381 m²", LESS),
        ("belt.toml", "0.6 m", "0.47 m", LESS),
        ("chest.toml", "0.4 m", "0.39 m", LESS),
        ("chest.toml", 'length = "0.4 m"\n', "", FINE),
    ],
)
def test_a_wall_lies_within_its_passages(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    found = workshop.write(FILES).replace(file, old, new).only("partition.within-passage")
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(("area", "wanted"), [("0.0756 m²", FINE), ("0.0755 m²", LESS)])
@pytest.mark.parametrize("drawn", ["wall", "sides"])
def test_a_wall_is_no_smaller_than_it_is_drawn(
    workshop: DesignFolder, area: str, wanted: tuple[str, Grade | None], drawn: str
) -> None:
    """Its sides of 180 by 420 mm are 0.0756 m², stated by itself or by the flat wall of the weldment that it is."""
    sides = 'short_side = "180 mm"\nlong_side = "420 mm"\n'
    files = {
        **FILES,
        "chest.toml": FILES["chest.toml"] + 'in_block = "block"\n',
        "block.toml": 'kind = "cylinder-block"\n',
        "weldment.toml": 'kind = "weldment"\nmakes = "block"\n[walls.chest-side]\n'
        + sides.replace("_side =", " ="),
        "wall.toml": FILES["wall.toml"].replace("0.38 m²", area)
        + ('wall = "chest-side"\n' if drawn == "wall" else sides),
    }
    found = workshop.write(files).only("partition.within-passage")
    assert (found.outcome, found.grade) == wanted
