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
