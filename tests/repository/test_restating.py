"""Another quantity in the place of a stated one: on every part of the drawing, and turned on the other hand."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, ClassVar

import pytest

from speclint.families import load_families
from speclint.quantities import Measure, read
from speclint.specs import NOT_STATED, Component, Mirrors, Position
from speclint.testing import DesignFolder, made_family


class Arm(Component):
    """An arm that stands to one side."""

    kind: ClassVar[str] = "side-arm"
    called: ClassVar[str] = "side-arm"

    aside: Annotated[Position, Mirrors("negate")] = NOT_STATED


FILES = {
    "left.toml": 'kind = "side-arm"\naside = "20 mm +0.3/+0.1"\n',
    "twin.toml": 'kind = "side-arm"\nlike = "left"\n',
    "right.toml": 'kind = "side-arm"\nmirror_of = "left"\n',
}


def test_limits_move_the_other_way_on_the_other_hand(tmp_path: Path) -> None:
    """20 mm +0.3/+0.1 becomes 20 mm +0.7/+0.5: the mirror, -20 mm -0.1/-0.3, becomes -20 mm -0.5/-0.7."""
    folder = DesignFolder(tmp_path, load_families([made_family("arms", kinds=[Arm], rules=[])]))
    design = folder.write(FILES).assess().design
    assert design is not None
    left, twin, right = (design.specs[name] for name in ("left", "twin", "right"))
    assert isinstance(left, Arm)
    assert isinstance(left.aside, Measure)
    changed = design.restated(left.aside.where, read("20 mm +0.7/+0.5", "length"))
    for part, nominal, low, high in (
        (left, 20, 20.5, 20.7),
        (twin, 20, 20.5, 20.7),
        (right, -20, -20.7, -20.5),
    ):
        there = changed[part.under("aside").where]
        assert isinstance(there, Measure)
        assert (there.nominal, there.low, there.high) == pytest.approx((nominal / 1e3, low / 1e3, high / 1e3))
