"""Which sizes can be machined, and which mates can be made to match: by hand, on plugs in holes.

A hole is drawn 50.04 to 50.06 mm and is opened no more; a plug 49.98 to 50.00 mm, and can be turned down. Each size is
known to 1 µm. The clearance is to lie from 20 µm to 100 µm; as drawn it is 40 to 80 µm.
"""

from __future__ import annotations

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.families import Loaded, load_families
from speclint.made import Change, PartMade, judge
from speclint.testing import DesignFolder, made_family
from tests.made.test_pairing import Hole, Plug, drawn as wide, enters, made, plugs, tight

__all__ = ["plugs"]


def drawn(name: str, more: str = "") -> dict[str, str]:
    sizes = {"50.07 mm ±0.03": "50.05 mm ±0.01", "50.02 mm ±0.03": "49.99 mm ±0.01"}
    found = wide(name, more)
    for old, new in sizes.items():
        found = {file: text.replace(old, new) for file, text in found.items()}
    return found


def judged(workshop: DesignFolder, plugs: Loaded, name: str, files: dict[str, str]) -> PartMade:
    workshop.loaded = plugs
    assessment = workshop.write(files).assess()
    assert assessment.complaints == ()
    return next(one for one in judge(assessment).parts if one.made.id == name)


def ways(part: PartMade) -> list[tuple[str, tuple[Change, ...]]]:
    return [(one.how, one.changes) for one in part.reworks]


_MATCHED = ("make the mate to match", (Change("plug-a", "outside", "49.99 mm ±0.01", "49.93..49.95 mm"),))


def test_a_hole_that_is_not_opened_is_not_machined_but_its_plug_is_made_to_match(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    """50.000 mm, 50 µm below the middle: 49.999 − 50.00 = −1 µm. The plug becomes as much less, 49.93..49.95 mm, which
    leaves 49 to 71 µm.
    """
    part = judged(workshop, plugs, "h", {**drawn("a"), **made("h", "hole-a", "bore", "50.000")})
    assert {one.rule.name for one in part.failing} == {"plug.enters"}
    assert ways(part) == [_MATCHED]


def test_a_hole_that_is_too_large_is_not_machined_to_its_drawing(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    """50.110 mm, 60 µm above the middle: 50.111 − 49.98 = 131 µm. The plug becomes as much more, 50.04..50.06 mm."""
    part = judged(workshop, plugs, "h", {**drawn("a"), **made("h", "hole-a", "bore", "50.110")})
    change = Change("plug-a", "outside", "49.99 mm ±0.01", "50.04..50.06 mm")
    assert ways(part) == [("make the mate to match", (change,))]


@rule(
    "plug.large",
    title="the plug is large enough",
    on=Plug,
    grade=Grade.NONCONFORMITY,
    limits=[Limit("least", "49.94 mm", "length", FIRST_PRINCIPLES, "least outside")],
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def large(plug: Plug, sheet: Sheet) -> Judgement:
    """The plug alone."""
    return sheet.at_least(sheet.take("d", plug.outside), sheet.limit("least"))


@pytest.fixture(scope="module")
def large_plugs() -> Loaded:
    return load_families([made_family("plugs", kinds=[Hole, Plug], rules=[enters, tight, large])])


def test_a_mate_that_would_fail_by_itself_is_not_made_to_match(
    workshop: DesignFolder, large_plugs: Loaded
) -> None:
    """A plug of 49.93..49.95 mm may be less than 49.94 mm, which no rule of the hole tells."""
    part = judged(workshop, large_plugs, "h", {**drawn("a"), **made("h", "hole-a", "bore", "50.000")})
    assert {one.rule.name for one in part.failing} == {"plug.enters"}
    assert (part.outcome, part.reworks) == ("no rework found", ())


def test_a_part_that_names_no_mate_has_none_made_to_match(
    workshop: DesignFolder, large_plugs: Loaded
) -> None:
    """49.900 mm is less than 49.94 mm, and nothing can be put on."""
    files = drawn("a")
    files["plug-a.toml"] = files["plug-a.toml"].replace('held_by = "hole-a"\n', "")
    part = judged(workshop, large_plugs, "p", {**files, **made("p", "plug-a", "outside", "49.900")})
    assert [one.rule.name for one in part.failing] == ["plug.large"]
    assert (part.outcome, part.reworks) == ("no rework found", ())


@pytest.mark.parametrize("held_by", ['held_by = "hole-b"\n', ""])
def test_only_a_plug_that_goes_into_the_hole_is_made_to_match(
    workshop: DesignFolder, plugs: Loaded, held_by: str
) -> None:
    """Another plug bears on the hole by its washer alone; it goes into a hole of its own, or none is stated."""
    other = drawn("b", 'washer = "hole-a"\n')
    other["plug-b.toml"] = other["plug-b.toml"].replace('held_by = "hole-b"\n', held_by)
    files = {**drawn("a"), **other, **made("h", "hole-a", "bore", "50.000")}
    assert ways(judged(workshop, plugs, "h", files)) == [_MATCHED]


def test_a_plug_without_a_diameter_on_its_drawing_is_not_made_to_match(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    other = drawn("b")
    other["plug-b.toml"] = 'kind = "plug"\nid = "plug-b"\nheld_by = "hole-a"\n'
    files = {**drawn("a"), **other, **made("h", "hole-a", "bore", "50.000")}
    assert ways(judged(workshop, plugs, "h", files)) == [_MATCHED]


def test_a_plug_that_is_made_already_is_not_made_to_match(workshop: DesignFolder, plugs: Loaded) -> None:
    """49.999 − 49.991 = 8 µm: what clears it is to turn the plug down."""
    files = {
        **drawn("a"),
        **made("h", "hole-a", "bore", "50.000"),
        **made("p", "plug-a", "outside", "49.990"),
    }
    assert ways(judged(workshop, plugs, "h", files)) == []


@pytest.mark.parametrize(
    ("size", "metal"),
    [
        ("50.060", True),  # 50.059 is above 50.00
        ("49.930", False),  # 49.931 is below 49.98: nothing can be put on
    ],
)
def test_a_plug_is_machined_to_the_drawing_where_there_is_metal(
    workshop: DesignFolder, plugs: Loaded, size: str, metal: bool
) -> None:
    """In the hole as drawn, 50.04..50.06 mm: 50.04 − 50.061 = −21 µm, and 50.06 − 49.929 = 131 µm."""
    part = judged(workshop, plugs, "p", {**drawn("a"), **made("p", "plug-a", "outside", size)})
    assert part.failing
    there = [one.changes for one in part.reworks if one.how == "machine to the drawing"]
    low, high = float(size) - 0.001, float(size) + 0.001
    now = f"{low:.3f}..{high:.3f} mm"
    assert there == ([(Change("plug-a", "outside", now, "49.99 mm ±0.01"),)] if metal else [])


def test_a_plug_above_its_limits_at_one_place_and_below_at_another_is_past_machining(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    text = made("p", "plug-a", "outside", "50.060")["p.toml"].replace(
        '["50.060 mm"]', '["50.060 mm", "49.930 mm"]'
    )
    part = judged(workshop, plugs, "p", {**drawn("a"), "p.toml": text})
    assert part.failing
    assert "machine to the drawing" not in {one.how for one in part.reworks}
