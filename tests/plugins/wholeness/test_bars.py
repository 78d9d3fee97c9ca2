"""crosshead.guided: how many bars guide a crosshead, by how many of them share the thrust in one direction."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import SETTINGS, told


@pytest.mark.parametrize(
    ("sharing", "outcome"),
    [
        ((), "finding"),
        ((0,), "conforms"),  # one that does not say how many share
        ((0, 0), "conforms"),
        ((0, 0, 0), "finding"),
        ((1, 0), "conforms"),
        ((2, 0), "conforms"),
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
        ((1, 2, 2, 2), "finding"),
        ((1, 2, 2, 0), "finding"),
        # the thrust has two directions: of three numbers one is of none
        ((1, 2, 2, 3, 3, 3), "finding"),
        ((2, 2, 3, 3, 3), "conforms"),
        ((1, 2, 2, 3, 3), "finding"),
    ],
)
def test_bars_are_as_many_as_share_the_thrust(
    workshop: DesignFolder, sharing: Sequence[int], outcome: str
) -> None:
    """A bar that does not say how many share the thrust is written as 0."""
    bars = {
        f"bar-{n}.toml": f'kind = "slide-bar"\nid = "bar-{n}"\nguides = "head"\n'
        + (f"bars_sharing = {share}\n" if share else "")
        for n, share in enumerate(sharing, 1)
    }
    files = {"head.toml": 'kind = "crosshead"\nid = "head"\n', **bars}
    assert workshop.write(files, settings=SETTINGS).only("crosshead.guided", "head").outcome == outcome


@pytest.mark.parametrize(
    ("sharing", "says"),
    [
        ((), "head wants a slide bar: none is there"),
        ((3, 3), "head wants a slide bar: 2 of 3 are there"),
        (
            (1, 1, 1),
            "head is filled 3 times (slide bar): bar-0 (bar-0.toml), bar-1 (bar-1.toml), bar-2 (bar-2.toml)",
        ),
        ((1, 2), "head, of bars with bars_sharing = 2, wants a slide bar: 1 of 2 are there"),
        (
            (1, 1, 2),
            "head, of bars with bars_sharing = 1, is filled twice (slide bar): bar-0 (bar-0.toml), bar-1 (bar-1.toml)",
        ),
    ],
)
def test_a_crosshead_says_which_bars_it_wants(
    workshop: DesignFolder, sharing: Sequence[int], says: str
) -> None:
    bars = {
        f"bar-{n}": f'kind = "slide-bar"\nguides = "head"\nbars_sharing = {share}'
        for n, share in enumerate(sharing)
    }
    assert told(workshop, {"head": 'kind = "crosshead"', **bars}, "crosshead.guided", "head") == says
