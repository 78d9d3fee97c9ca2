"""spindle.guide-wall: a guide that is pressed in is no sleeve."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "spindle.guide-wall"


def guide(workshop: DesignFolder, outside: str, bore: str, held: str = "pressed in") -> DesignFolder:
    """A spindle with a guide of these diameters."""
    text = f'kind = "valve-spindle"\nid = "spindle"\nguide_held = "{held}"\nguide_bore = "{bore}"\n'
    return workshop.write({"spindle.toml": f'{text}guide_outside = "{outside}"\n'})


@pytest.mark.parametrize(
    ("outside", "bore", "says"),
    [
        ("25 mm", "22 mm", ""),  # 1.5 mm, and 22/20 = 1.1 mm
        ("24.98 mm", "22 mm", "1.49 mm < 1.5 mm"),
        ("44 mm", "40 mm", ""),  # 2 mm, and 40/20 = 2 mm
        ("43.9 mm", "40 mm", "1.95 mm < 2 mm"),
        ("25 mm 0/-0.02", "22 mm", "1.49 mm < 1.5 mm"),  # the smallest guide
        ("25 mm", "22 mm +0.02/0", "1.49 mm < 1.5 mm"),  # and the largest bore
        ("23 mm", "22 mm", "0.5 mm < 1.5 mm"),
    ],
)
def test_the_wall_from_both_sides(workshop: DesignFolder, outside: str, bore: str, says: str) -> None:
    check = guide(workshop, outside, bore).only(RULE)
    assert (check.outcome, check.grade) == (("finding", Grade.NONCONFORMITY) if says else ("conforms", None))
    assert says in check.says


def test_a_guide_bored_in_the_block_has_no_wall_of_its_own(workshop: DesignFolder) -> None:
    check = guide(workshop, "23 mm", "22 mm", "part of the block").only(RULE)
    assert check.outcome == "not applicable"
