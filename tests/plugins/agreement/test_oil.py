"""One oil on one film and one feed for one point, from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from speclint_agreement.rules.oil import feeds_named

RULE = "lubrication.one-feed"
FINE, NOTE = ("conforms", None), ("finding", Grade.NONCONFORMITY)
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
        ("ring.toml", OIL, "", FINE),
        ("spindle.toml", "feed 3", "feed 2", NOTE),
        ("spindle.toml", "feed 3", "Feeds 2, 4", NOTE),
        ("spindle.toml", "mechanical lubricator, feed 3", "Mechanical lubricator, feed no. 2", NOTE),
        ("spindle.toml", "feed 3", "feeds 2 to 4", NOTE),
        ("spindle.toml", "feed 3", "feeds 3 to 5", FINE),
        ("spindle.toml", "mechanical lubricator", "second lubricator", FINE),
        ("spindle.toml", "mechanical lubricator, feed 3", "oil cup", FINE),
        ("spindle.toml", "feed 3", "feed 2, by a divider", FINE),
        ("spindle.toml", "feed 3", "feed 2, front end", NOTE),
        ("spindle.toml", "feed 3", "feeds 2/3", NOTE),
        ("spindle.toml", "feed 3", "feed 2 and 3", NOTE),
        ("spindle.toml", "feed 3", "feed 3, 2 drops a minute", FINE),
        ("spindle.toml", "feed 3", "feed 2a", FINE),  # a feed of its own
        ("spindle.toml", "feed 3", "feeds nos. 1 and 3, by a divider", FINE),
        ("spindle.toml", ", feed 3", "", NOTE),  # which feed is not said
    ],
)
def test_oil_and_feeds(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    found = workshop.write(FILES).replace(file, old, new).only(RULE)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("feed", "wanted"),
    [
        ("feed 9, by a divider", FINE),
        ("feed 9, without a divider", NOTE),
        ("feed 9, no divider fitted", NOTE),
        ("feed 9, divider not fitted", NOTE),
        ("feed no. 9, by a divider", FINE),
        ("feed 9", NOTE),
    ],
)
def test_a_divider_that_is_denied_shares_nothing_out(
    workshop: DesignFolder, feed: str, wanted: tuple[str, Grade | None]
) -> None:
    """Two spindles on one feed."""
    second = FILES["spindle.toml"].replace('"spindle"', '"second"')
    folder = workshop.write({**FILES, "second.toml": second})
    for file in ("spindle.toml", "second.toml"):
        folder.replace(file, "feed 3", feed)
    found = folder.only(RULE)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("lubricator", "grade", "wanted"),
    [
        ("mechanical lubricator", "ISO VG 1000", FINE),
        ("mechanical lubricator", "ISO VG 460", NOTE),
        ("second lubricator", "ISO VG 460", FINE),
        ("Mechanical  lubricator", "ISO VG 460", NOTE),
    ],
)
def test_a_lubricator_has_oil_of_one_class(
    workshop: DesignFolder, lubricator: str, grade: str, wanted: tuple[str, Grade | None]
) -> None:
    """The liner has oil of ISO VG 1000 from it."""
    folder = workshop.write(FILES).replace("spindle.toml", "mechanical lubricator", lubricator)
    oiled = f'moves = "valve"\nlubrication.viscosity_class = "{grade}"\n'
    found = folder.replace("spindle.toml", 'moves = "valve"\n', oiled).only(RULE)
    assert (found.outcome, found.grade) == wanted


BOX = 'kind = "cam-box"\nid = "box"\nmounted_on = "block"\n[pairs]\n'
PAIR = '{{ between = ["cam", "tappet"], oil = "{}", feed = "{}" }}\n'


@pytest.mark.parametrize(
    ("oil", "feed", "wanted"),
    [
        ("engine oil", "oil pump", FINE),
        ("cylinder oil", "mechanical lubricator, cam feeds", FINE),
        ("engine oil", "mechanical lubricator, cam feeds", NOTE),
        ("engine oil", "Mechanical lubricator", NOTE),
        ("engine oil", "second lubricator, cam feeds", FINE),
    ],
)
def test_a_lubricator_has_one_oil(
    workshop: DesignFolder, oil: str, feed: str, wanted: tuple[str, Grade | None]
) -> None:
    """The liner has cylinder oil from it: no engine oil comes to the cams by it."""
    found = workshop.write({**FILES, "box.toml": BOX + "cams = " + PAIR.format(oil, feed)}).only(RULE)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("oil", "feed", "wanted"),
    [("grease", "oil pump", NOTE), ("engine oil", "oil pump", FINE), ("grease", "grease nipples", FINE)],
)
def test_two_pairs_of_one_feed_have_one_oil(
    workshop: DesignFolder, oil: str, feed: str, wanted: tuple[str, Grade | None]
) -> None:
    pairs = "cams = " + PAIR.format("engine oil", "oil pump") + "tappets = " + PAIR.format(oil, feed)
    found = workshop.write({**FILES, "box.toml": BOX + pairs}).only(RULE)
    assert (found.outcome, found.grade) == wanted


#: An engine of two blocks, whose liners have feeds of their own, and the piston rod of the second with its box.
ENGINE = {
    **FILES,
    "engine.toml": 'kind = "engine"\nid = "engine"\ncranks.left.block = "block"\ncranks.right.block = "other"\n',
    "other.toml": 'kind = "cylinder-block"\nid = "other"\n[bores.main]\ndiameter = "500 mm"\n',
    "other-liner.toml": 'kind = "cylinder-liner"\nid = "other-liner"\nhoused_in = "other"\nin_bore = "main"\n'
    'lubrication.feed = "mechanical lubricator, feeds 5 and 6"\n',
    "piston.toml": 'kind = "piston"\nid = "piston"\nruns_in = "other-liner"\n',
    "rod.toml": 'kind = "piston-rod"\nid = "rod"\ncarries = "piston"\nlubrication.feed = "oil cup on the gland"\n',
    "box.toml": 'kind = "stuffing-box"\nid = "box"\nseals = "rod"\n'
    'lubrication.feed = "mechanical lubricator, feed 7"\n',
}


@pytest.mark.parametrize(
    ("file", "old", "new", "wanted"),
    [
        ("other-liner.toml", "feeds 5 and 6", "feeds 5 and 6", FINE),
        ("other-liner.toml", "feeds 5 and 6", "feeds 2 and 6", NOTE),
        (
            "other-liner.toml",
            "mechanical lubricator, feeds 5 and 6",
            "second lubricator, feeds 1 and 2",
            FINE,
        ),
        ("box.toml", "feed 7", "feed 3", NOTE),
        ("box.toml", "feed 7", "feeds 1 to 3 by a divider", FINE),
        ("rod.toml", "oil cup on the gland", "mechanical lubricator, feed 1", NOTE),
        ("engine.toml", 'cranks.right.block = "other"\n', "", FINE),
    ],
)
def test_a_feed_is_for_one_point_of_the_whole_engine(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    """Feeds 1 and 2 of the first block go to its liner, feed 3 to a spindle."""
    found = workshop.write(ENGINE).replace(file, old, new).only(RULE, "block")
    assert (found.outcome, found.grade) == wanted


def test_points_on_both_blocks_are_named(workshop: DesignFolder) -> None:
    folder = workshop.write(ENGINE).replace("other-liner.toml", "feeds 5 and 6", "feeds 2 and 6")
    for block in ("block", "other"):
        check = folder.only(RULE, block)
        assert check.outcome == "finding"
        assert all(one in check.says for one in ("liner", "other-liner", "feed 2")), check.says


def test_oil_cups_of_two_blocks_may_be_called_alike(workshop: DesignFolder) -> None:
    """In one block they are two points on one cup."""
    folder = workshop.write(ENGINE).replace(
        "spindle.toml", "mechanical lubricator, feed 3", "oil cup on the gland"
    )
    assert folder.only(RULE, "block").outcome == "conforms"
    folder.replace("box.toml", "mechanical lubricator, feed 7", "oil cup on the gland")
    assert folder.only(RULE, "other").outcome == "finding"


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
