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
