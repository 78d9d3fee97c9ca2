"""The greatest diameter at the end of a rod: whatever its section is called, its larger diameter has to pass."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.assembly.bench import with_links, write

ORDER = "assembly.order"
FLANGE = 'form = "shoulder"\nat = "crosshead end"\ndiameter = "88 mm"\nlarger_diameter = "140 mm"\n'


@pytest.mark.parametrize("form", ["shoulder", "plain", "cotter slot"])
def test_a_flange_by_another_name_does_not_pass_either(workshop: DesignFolder, form: str) -> None:
    """The flange of 140 mm cannot go through a gland bore of 91 mm: the piston's end, 85 mm, is the one that can."""
    change = ("rod", FLANGE, FLANGE.replace("shoulder", form))
    thread = ("rod", 'form = "thread"\nat = "piston end"\nthread = "M85x4"', NO_SLIM_END)
    needed = with_links("rod", "box", "gland")
    assert write(workshop, change, only=needed).only("rod.enters", "rod").outcome == "conforms"
    assert write(workshop, change, thread, only=needed).only("rod.enters", "rod").outcome == "finding"


NO_SLIM_END = 'form = "plain"\nat = "piston end"\ndiameter = "92 mm"'


def test_without_a_larger_diameter_a_plain_end_passes(workshop: DesignFolder) -> None:
    """88 mm through a neck bush of 90.6 mm."""
    plain = FLANGE.replace("shoulder", "plain").replace('larger_diameter = "140 mm"\n', "")
    changes = (
        ("rod", FLANGE, plain),
        ("rod", 'form = "thread"\nat = "piston end"\nthread = "M85x4"', NO_SLIM_END),
    )
    needed = with_links("rod", "box", "gland")
    assert write(workshop, *changes, only=needed).only("rod.enters", "rod").outcome == "conforms"
