"""crosshead.guided: how many bars guide a crosshead, by how many of them share the thrust in one direction."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import SETTINGS


@pytest.mark.parametrize(
    ("sharing", "outcome"),
    [
        ((1,), "conforms"),  # one bar takes the thrust of both directions between its faces
        ((1, 1), "conforms"),  # one for each direction
        ((1, 1, 1), "finding"),
        ((2,), "finding"),
        ((2, 2), "conforms"),
        ((2, 2, 2, 2), "conforms"),
        ((2, 2, 2, 2, 2), "finding"),
        ((1, 2, 2), "conforms"),  # one above, two below
        ((1, 2), "finding"),
        ((1, 1, 2, 2), "finding"),
    ],
)
def test_bars_are_as_many_as_share_the_thrust(
    workshop: DesignFolder, sharing: Sequence[int], outcome: str
) -> None:
    bars = {
        f"bar-{n}.toml": f'kind = "slide-bar"\nid = "bar-{n}"\nguides = "head"\nbars_sharing = {share}\n'
        for n, share in enumerate(sharing, 1)
    }
    files = {"head.toml": 'kind = "crosshead"\nid = "head"\n', **bars}
    assert workshop.write(files, settings=SETTINGS).only("crosshead.guided", "head").outcome == outcome
