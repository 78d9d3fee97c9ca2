"""What a part that is bought is described by."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

RING = 'kind = "piston-ring"\ninspection_document = "3.1"\ndrawing = "D-1"\nsupplied_as = "bought"'


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("", "", ""),
        ('\ndrawing = "D-1"', "", "ring wants a drawing or data sheet: none is there"),
        ('\ninspection_document = "3.1"', "", "ring wants an inspection document: none is there"),
        ('drawing = "D-1"\nsupplied_as = "bought"', "", "not applicable: it has no such place"),
        (
            'drawing = "D-1"\nsupplied_as = "bought"',
            'supplied_as = "made"',
            "not applicable: it has no such place",
        ),
    ],
)
def test_a_bought_part_has_its_data_sheet_and_its_inspection_document(
    workshop: DesignFolder, old: str, new: str, says: str
) -> None:
    ring = RING.replace(old, new) if old else RING
    assert told(workshop, {"ring": ring}, "release.bought-part-described", "ring") == says
