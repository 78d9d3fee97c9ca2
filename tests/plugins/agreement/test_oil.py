"""One oil on one film and one feed for one point, from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from speclint_agreement.rules.oil import feeds_named

RULE = "lubrication.one-feed"
FINE, NOTE = ("conforms", None), ("finding", Grade.OBSERVATION)
OIL = 'lubrication.lubricant = "cylinder oil"\nlubrication.viscosity_class = "ISO VG 1000"\n'
FILES = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\n',
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\n'
    + OIL
    + 'lubrication.feed = "mechanical lubricator, feeds 1 and 2"\n',
    "ring.toml": 'kind = "piston-ring"\nid = "ring"\nruns_in = "liner"\n' + OIL,
    "seat.toml": 'kind = "valve-seat"\nid = "seat"\npressed_into = "block"\n',
    "valve.toml": 'kind = "poppet-valve"\nid = "valve"\n[upper_beat]\nseat = "seat"\n',
    "spindle.toml": 'kind = "valve-spindle"\nid = "spindle"\nmoves = "valve"\n'
    'lubrication.feed = "mechanical lubricator, feed 3"\n',
}


@pytest.mark.parametrize(
    ("file", "old", "new", "wanted"),
    [
        ("ring.toml", '"cylinder oil"', '"cylinder oil"', FINE),
        ("ring.toml", '"cylinder oil"', '"engine oil"', NOTE),
        ("ring.toml", "ISO VG 1000", "ISO VG 680", NOTE),
        ("ring.toml", OIL, "", ("not applicable", None)),
        ("spindle.toml", "feed 3", "feed 2", NOTE),
        ("spindle.toml", "feed 3", "Feeds 2, 4", NOTE),
        ("spindle.toml", "mechanical lubricator, feed 3", "Mechanical lubricator, feed no. 2", NOTE),
        ("spindle.toml", "feed 3", "feeds 2 to 4", NOTE),
        ("spindle.toml", "feed 3", "feeds 3 to 5", FINE),
        ("spindle.toml", "mechanical lubricator", "second lubricator", FINE),
        ("spindle.toml", "mechanical lubricator, feed 3", "oil cup", FINE),
    ],
)
def test_oil_and_feeds(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    found = workshop.write(FILES).replace(file, old, new).only(RULE)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("text", "feeds"),
    [
        (
            "mechanical lubricator, feeds 1 and 2",
            ["mechanical lubricator, feed 1", "mechanical lubricator, feed 2"],
        ),
        ("hand pump feed 12", ["hand pump, feed 12"]),
        ("oil cup", ["oil cup"]),
    ],
)
def test_each_feed_is_named_by_itself(text: str, feeds: list[str]) -> None:
    assert feeds_named(text) == feeds
