"""The metal of a passage against that of its block and the plates of that."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed

METAL = "passage.metal-of-its-block"
FINE, QUERY, NEITHER = ("conforms", None), ("finding", Grade.QUERY), ("not applicable", None)
FILES = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\nmaterial = "plate-P355GH"\n',
    "weldment.toml": 'kind = "weldment"\nid = "weldment"\nmakes = "block"\n[plates.chest]\n'
    'material = "plate-P265GH"\n',
    "passage.toml": 'kind = "steam-passage"\nid = "passage"\nin_block = "block"\nmaterial = "plate-P355GH"\n',
}


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("passage.toml", "P355GH", "P355GH", FINE),
        ("passage.toml", "plate-P355GH", "plate-P265GH", FINE),  # of a plate of its weldment
        ("passage.toml", "plate-P355GH", "structural-S235", QUERY),
        ("block.toml", "plate-P355GH", "structural-S235", QUERY),
        ("passage.toml", 'material = "plate-P355GH"\n', "", NEITHER),
    ],
)
def test_a_passage_is_of_the_metal_of_its_block(
    workshop: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    found = workshop.write({**FILES, file: changed(FILES[file], (old, new))}).only(METAL, "passage")
    assert (found.outcome, found.grade) == ends


def test_the_plates_of_another_block_say_nothing(workshop: DesignFolder) -> None:
    other = 'kind = "cylinder-block"\nid = "other"\n'
    files = {
        **FILES,
        "other.toml": other,
        "weldment.toml": changed(FILES["weldment.toml"], ('"block"', '"other"')),
        "passage.toml": changed(FILES["passage.toml"], ("P355GH", "P265GH")),
    }
    assert (found := workshop.write(files).only(METAL, "passage")).grade == Grade.QUERY
    assert "block" in found.says


PLATES = """
[plates.end]
material = "plate-P265GH"
[plates.round]
material = "structural-S355"
[walls.one]
plate = "chest"
one_passage = "passage"
[walls.two]
plate = "end"
other_passage = "other"
[walls.three]
plate = "division"
"""
OTHER = changed(FILES["passage.toml"], ('id = "passage"', 'id = "other"'))


def walled(metal: str, *changes: tuple[str, str]) -> dict[str, str]:
    """A passage whose wall is the plate of the chest, of 16Mo3."""
    weldment = changed(FILES["weldment.toml"], ("plate-P265GH", "plate-16Mo3"))
    division = '[plates.division]\nmaterial = "structural-S235"\n'
    return {
        **FILES,
        "weldment.toml": changed(weldment + division + PLATES, *changes),
        "passage.toml": changed(FILES["passage.toml"], ("plate-P355GH", metal)),
        "other.toml": OTHER,
    }


@pytest.mark.parametrize(
    ("metal", "ends"),
    [
        ("plate-16Mo3", FINE),  # of the wall that names it
        ("structural-S235", QUERY),  # of a wall that names no passage
        ("plate-P265GH", QUERY),  # of a wall of another passage
        ("structural-S355", QUERY),  # of a plate in no flat wall
        ("plate-P355GH", QUERY),  # of the block, whose wall here is of another
    ],
)
def test_the_wall_that_names_a_passage_has_its_metal(
    workshop: DesignFolder, metal: str, ends: tuple[str, Grade | None]
) -> None:
    found = workshop.write(walled(metal)).only(METAL, "passage")
    assert (found.outcome, found.grade) == ends
    assert ends == FINE or "plate-16Mo3" in found.says


@pytest.mark.parametrize("metal", ["plate-P265GH", "structural-S355"])
def test_any_plate_may_bound_a_passage_that_no_wall_names(workshop: DesignFolder, metal: str) -> None:
    files = walled(metal, ('one_passage = "passage"\n', ""))
    assert workshop.write(files).only(METAL, "passage").outcome == "conforms"


def test_two_plates_of_unlike_metal_beside_a_passage_are_asked_about(workshop: DesignFolder) -> None:
    both = ('other_passage = "other"', 'other_passage = "passage"')
    for metal in ("plate-16Mo3", "plate-P265GH"):
        assert workshop.write(walled(metal, both)).only(METAL, "passage").grade == Grade.QUERY
