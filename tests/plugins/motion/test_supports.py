"""slidebar.held-by: what carries the ends of a slide bar."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_conforms, expect_not_assessed
from tests.plugins.motion.train import files

HELD = "slidebar.held-by"
TWO = '[supports.front]\npart = "{part}"\n[supports.back]\ndrawing = "X-1"\n'


def test_a_bar_without_supports_is_not_assessed(workshop: DesignFolder) -> None:
    expect_not_assessed(workshop.write(files()).only(HELD), "supports is not stated in bar.toml")


def test_a_part_that_is_no_cover_may_carry_an_end(workshop: DesignFolder) -> None:
    """A part of the frame that no spec calls a cover: it closes no cylinder, and is at no side of one."""
    check = workshop.write(files("bar", add=TWO.format(part="block"))).only(HELD)
    expect_conforms(check)


def test_one_support_is_one_too_few(workshop: DesignFolder) -> None:
    one = TWO.format(part="block").partition("[supports.back]")[0]
    check = workshop.write(files("bar", add=one)).only(HELD)
    assert (check.outcome, check.grade) == ("finding", Grade.OBSERVATION)
    assert "one support is named: the span has two" in check.says


def test_a_cover_does_not_carry_both_ends(workshop: DesignFolder) -> None:
    """A part of the frame may; the other end of a bar is farther from a cover than the stroke is long."""
    both = TWO.format(part="{part}").replace('drawing = "X-1"', 'part = "{part}"')
    cover = {"cover.toml": 'kind = "cylinder-cover"\ncloses = "block"\nend = "back"\n'}
    check = workshop.write({**files("bar", add=both.format(part="cover")), **cover}).only(HELD)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "cover is named for both front and back" in check.says
    expect_conforms(workshop.write(files("bar", add=both.format(part="block"))).only(HELD))


def test_a_support_without_part_and_drawing_is_asked_for_either(workshop: DesignFolder) -> None:
    silent = TWO.format(part="block").replace('drawing = "X-1"', "bolts = 4")
    check = workshop.write(files("bar", add=silent)).only(HELD)
    expect_not_assessed(check, "supports.back states neither part nor drawing in bar.toml")


@pytest.mark.parametrize(
    ("closes", "end", "says"),
    [
        ("block", "front", "front: cover is at the front of the cylinder, and the crosshead is behind it"),
        ("other", "back", "front: cover is a cover of other, but the crosshead on the bar is one of block"),
    ],
)
def test_a_cover_that_the_bar_does_not_reach_is_told(
    workshop: DesignFolder, closes: str, end: str, says: str
) -> None:
    bar = files("bar", add=TWO.format(part="cover"))
    cover = f'kind = "cylinder-cover"\nid = "cover"\ncloses = "{closes}"\nend = "{end}"\n'
    other = 'kind = "cylinder-block"\nid = "other"\n'
    check = workshop.write({**bar, "cover.toml": cover, "other.toml": other}).only(HELD)
    assert (check.grade, check.actual) == (Grade.NONCONFORMITY, says)
    assert check.where.key == "supports.front.part"


@pytest.mark.parametrize("part", ["crosshead", "piston", "rod"])
def test_a_part_that_moves_or_is_no_structure_carries_nothing(workshop: DesignFolder, part: str) -> None:
    check = workshop.write(files("bar", add=TWO.format(part=part))).only(HELD)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert f"front: {part} is a " in check.actual
    assert check.where.key == "supports.front.part"


def test_a_cover_carries_the_end_next_to_it(workshop: DesignFolder) -> None:
    """The two ends exchanged: the cover at the back of a cylinder stands in front of its bars."""
    cover = {"cover.toml": 'kind = "cylinder-cover"\nid = "cover"\ncloses = "block"\nend = "back"\n'}
    turned = TWO.replace("front", "x").replace("back", "front").replace("supports.x", "supports.back")
    check = workshop.write({**files("bar", add=turned.format(part="cover")), **cover}).only(HELD)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "back: cover closes the cylinder in front of the bar" in check.actual


@pytest.mark.parametrize(
    ("number", "says"),
    [
        ("X-1", ""),
        ("X 12 a", ""),
        ("to follow", 'back: "to follow" is no drawing number'),
        ("C-7", "back: drawing C-7 is that of block, which has a spec here: name it by part"),
    ],
)
def test_a_drawing_is_a_number_that_no_spec_has(workshop: DesignFolder, number: str, says: str) -> None:
    design = files("bar", add=TWO.format(part="block").replace("X-1", number))
    design["block.toml"] = 'drawing = "C-7"\n' + design["block.toml"]
    check = workshop.write(design).only(HELD)
    if not says:
        expect_conforms(check)
        return
    assert (check.grade, check.actual, check.where.key) == (
        Grade.NONCONFORMITY,
        says,
        "supports.back.drawing",
    )
