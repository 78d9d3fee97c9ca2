"""Parts alike: common practice of a drawing office, each rule from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import (
    DesignFolder,
    expect_conforms,
    expect_finding,
    expect_not_applicable,
    expect_not_assessed,
)

LINER = """
kind = "cylinder-liner"
id = "left"
title = "Liner, left"
drawing = "CN-C-1211"
revision = "B"
prepared_by = "A. Render"
checked_by = "M. Coyle"
material = "phosphoric-cylinder-iron"
hand = "left"
pressure_part = true
housed_in = "block"
in_bore = "main"
bore = "480 mm"
[collar]
thickness = "25 mm"
"""
BLOCK = 'kind = "cylinder-block"\nid = "block"\n[bores.main]\n[bores.other]\n'
PLACE = 'housed_in = "block"\nin_bore = "other"\n'


def checked(folder: Path, rule: str, text: str) -> Check:
    """The check of a rule on a second liner."""
    second = f'kind = "cylinder-liner"\nid = "second"\n{text}'
    design = DesignFolder(folder).write({"left.toml": LINER, "block.toml": BLOCK, "second.toml": second})
    return design.only(rule, "second")


def test_its_place_must_be_stated(tmp_path: Path) -> None:
    expect_conforms(checked(tmp_path, "like.place-stated", 'like = "left"\n' + PLACE))
    one = checked(tmp_path, "like.place-stated", 'like = "left"\nhoused_in = "block"\n')
    expect_finding(
        one, grade=Grade.NONCONFORMITY, says="left states in_bore, which each part states for itself"
    )
    assert (one.where.file, one.where.line) == ("second.toml", 3)
    both = checked(tmp_path, "like.place-stated", 'like = "left"\n')
    expect_finding(both, says="left states housed_in, in_bore")
    expect_not_applicable(checked(tmp_path, "like.place-stated", PLACE))


@pytest.mark.parametrize("own", ["", 'seat_bore = "back"\n'])
def test_a_chamber_cover_states_its_own_seat_bore(tmp_path: Path, own: str) -> None:
    """Else two covers would close one chamber, and none the other."""
    files = {
        "block.toml": 'kind = "cylinder-block"\n[seat_bores.front]\n[seat_bores.back]\n',
        "one.toml": 'kind = "chamber-cover"\ncloses = "block"\nseat_bore = "front"\nbore = "200 mm"\n',
        "two.toml": f'kind = "chamber-cover"\nlike = "one"\ncloses = "block"\n{own}',
    }
    check = DesignFolder(tmp_path).write(files).only("like.place-stated", "two")
    if own:
        expect_conforms(check)
    else:
        expect_finding(check, says="one states seat_bore, which each part states for itself")


def test_nothing_is_said_twice(tmp_path: Path) -> None:
    other = 'like = "left"\nbore = "482 mm"\nprepared_by = "A. Render"\nchecked_by = "M. Coyle"\n'
    expect_conforms(checked(tmp_path, "like.said-once", other + PLACE))
    twice = 'like = "left"\nbore = "480 mm"\n[collar]\nthickness = "25 mm"\n'
    one = checked(tmp_path, "like.said-once", twice)
    expect_finding(one, grade=Grade.OBSERVATION, says="bore, collar.thickness as in left")
    assert one.where.line == 4


@pytest.mark.parametrize(
    ("notes", "holds"),
    [
        ("", False),
        ('[notes]\nstore = "B"\n', False),
        ('[notes]\nmaterial = " "\n', False),
        ('[notes]\nmaterial = "a trial of softer iron"\n', True),
        ('[notes]\nstore = "its material is on trial"\n', True),
    ],
)
def test_another_material_is_explained(tmp_path: Path, notes: str, holds: bool) -> None:
    text = f'like = "left"\nmaterial = "grey-iron-250"\n{PLACE}{notes}'
    check = checked(tmp_path, "like.material-explained", text)
    if holds:
        expect_conforms(check)
    else:
        expect_finding(check, grade=Grade.NONCONFORMITY, says='of "grey-iron-250", and left of')


def test_a_part_that_cannot_hurt_may_be_of_another(tmp_path: Path) -> None:
    pin = (
        'kind = "cam-box"\nid = "a"\nmaterial = "grey-iron-250"\nsafety_part = false\npressure_part = false\n'
    )
    like = 'kind = "cam-box"\nid = "b"\nlike = "a"\n'
    folder = DesignFolder(tmp_path).write({"a.toml": pin, "b.toml": like + 'material = "plate-P265GH"\n'})
    expect_not_applicable(folder.only("like.material-explained", "b"))


def test_the_same_material_needs_no_word(tmp_path: Path) -> None:
    expect_conforms(checked(tmp_path, "like.material-explained", f'like = "left"\n{PLACE}'))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ('like = "left"\n', ""),
        ('like = "left"\nrevision = "C"\n', ""),
        ('like = "left"\ndrawing = "CN-C-1212"\nrevision = "C"\nbore = "482 mm"\n', ""),
        ('like = "left"\ndrawing = "CN-C-1212"\nlength = "900 mm"\n', ""),
        ('like = "left"\ndrawing = "CN-C-1212"\nrevision = "A"\n', "in nothing but its place"),
        ('like = "left"\ndrawing = "CN-C-1212"\ntitle = "Liner, right"\n', "in nothing but its place"),
        ('mirror_of = "left"\ndrawing = "CN-C-1212"\n', ""),
    ],
)
def test_one_number_is_one_part(tmp_path: Path, text: str, says: str) -> None:
    check = checked(tmp_path, "like.one-drawing", text + PLACE)
    if says:
        expect_finding(check, grade=Grade.NONCONFORMITY, says=says)
    else:
        expect_conforms(check)


@pytest.mark.parametrize("text", ['like = "left"\nrevision = "C"\n', 'mirror_of = "left"\nrevision = "A"\n'])
def test_another_revision_of_the_number_is_told_by_one_rule(tmp_path: Path, text: str) -> None:
    one = checked(tmp_path, "release.one-drawing-one-part", text + PLACE)
    expect_finding(one, grade=Grade.NONCONFORMITY, says="is on the same drawing in revision B")
    same = checked(tmp_path, "release.one-drawing-one-part", text.partition("\n")[0] + "\n" + PLACE)
    expect_conforms(same)


@pytest.mark.parametrize("own", ["", PLACE])
def test_a_place_that_is_not_stated_is_told_by_one_rule(tmp_path: Path, own: str) -> None:
    """A part without its own links belongs to nothing because of that alone."""
    check = checked(tmp_path, "release.belongs-somewhere", 'like = "left"\n' + own)
    if own:
        expect_conforms(check)
    else:
        expect_not_applicable(check, "like.place-stated tells of it")


def test_a_mirror_is_of_the_other_hand(tmp_path: Path) -> None:
    expect_conforms(checked(tmp_path, "like.other-hand", 'mirror_of = "left"\n' + PLACE))
    expect_conforms(checked(tmp_path, "like.other-hand", 'mirror_of = "left"\nhand = "right"\n' + PLACE))
    wrong = checked(tmp_path, "like.other-hand", 'mirror_of = "left"\nhand = "left"\n' + PLACE)
    expect_finding(wrong, grade=Grade.NONCONFORMITY, says="it is of the left hand, as left is")
    expect_not_applicable(checked(tmp_path, "like.other-hand", 'like = "left"\n' + PLACE))


def test_a_hand_that_nobody_states_is_missed(tmp_path: Path) -> None:
    unhanded = LINER.replace('hand = "left"\n', "").replace('id = "left"', 'id = "third"')
    second = 'kind = "cylinder-liner"\nid = "second"\nmirror_of = "third"\n' + PLACE
    design = DesignFolder(tmp_path).write({"third.toml": unhanded, "block.toml": BLOCK, "s.toml": second})
    expect_not_assessed(design.only("like.other-hand", "second"), "hand")
    own = {"third.toml": unhanded, "block.toml": BLOCK, "s.toml": second + 'hand = "right"\n'}
    expect_not_assessed(
        design.write(own).only("like.other-hand", "second"), "the hand of third is not stated"
    )


def test_a_spring_has_no_hand_of_the_engine(tmp_path: Path) -> None:
    files = {
        "a.toml": 'kind = "compression-spring"\nhand = "left"\n',
        "b.toml": 'kind = "compression-spring"\nmirror_of = "a"\n',
    }
    expect_not_applicable(DesignFolder(tmp_path).write(files).only("like.other-hand", "b"))


def test_who_signed_the_other_did_not_sign_what_differs(tmp_path: Path) -> None:
    """The signatures of the other hold for a piece of its drawing, and not for a part that differs from it."""
    expect_conforms(checked(tmp_path, "release.identity", 'like = "left"\n' + PLACE))
    other = checked(tmp_path, "release.identity", 'like = "left"\nbore = "482 mm"\n' + PLACE)
    expect_finding(other, says="not stated: prepared_by")
    assert other.where.file == "second.toml"
    more = checked(tmp_path, "release.identity", 'like = "left"\nlength = "900 mm"\n' + PLACE)
    expect_finding(more, says="not stated: prepared_by")


HAND = "part.hand-of-its-block"
PIPE = 'kind = "steam-pipe"\nid = "pipe"\nhand = "left"\n'


@pytest.mark.parametrize(
    ("block", "ends", "outcome"),
    [
        ('hand = "left"\n', '[ends_at]\npart = "block"\n', "conforms"),
        ('hand = "right"\n', '[ends_at]\npart = "block"\n', "finding"),
        ('hand = "right"\n', '[starts_at]\npart = "block"\n', "finding"),
        ("", '[ends_at]\npart = "block"\n', "not applicable"),
        ('hand = "right"\n', "", "not applicable"),
    ],
)
def test_a_pipe_is_of_the_hand_of_its_block(tmp_path: Path, block: str, ends: str, outcome: str) -> None:
    folder = DesignFolder(tmp_path)
    block = BLOCK.replace("[bores.main]", block + "[bores.main]")
    folder.write({"block.toml": block, "pipe.toml": PIPE + ends})
    check = folder.only(HAND, "pipe")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert outcome != "conforms" or check.says == "block: left"


def test_a_pipe_between_two_blocks_is_of_the_hand_of_both(tmp_path: Path) -> None:
    folder = DesignFolder(tmp_path)
    blocks = {
        f"{hand}.toml": f'kind = "cylinder-block"\nid = "{hand}"\nhand = "{hand}"\n'
        for hand in ("left", "right")
    }
    ends = '[starts_at]\npart = "left"\n[ends_at]\npart = "right"\n'
    check = folder.write({**blocks, "pipe.toml": PIPE + ends}).only(HAND, "pipe")
    expect_finding(check, grade=Grade.NONCONFORMITY, says="right is of the right hand")
    none = folder.write({"pipe.toml": PIPE.replace('hand = "left"\n', "") + ends}).only(HAND, "pipe")
    expect_not_applicable(none, "it states no hand")


def test_a_part_in_a_block_is_of_its_hand(tmp_path: Path) -> None:
    """The turn of a spring's wire is no hand of the engine."""
    folder = DesignFolder(tmp_path)
    block = BLOCK.replace("[bores.main]", 'hand = "right"\n[bores.main]')
    spring = 'kind = "compression-spring"\nid = "spring"\nhand = "left"\n'
    files = {"block.toml": block, "left.toml": LINER, "spring.toml": spring}
    folder.write(files)
    expect_finding(folder.only(HAND, "left"), grade=Grade.NONCONFORMITY, says="made for the left hand")
    expect_not_applicable(folder.only(HAND, "spring"), "it states no hand")


@pytest.mark.parametrize(("hand", "outcome"), [("left", "conforms"), ("right", "finding")])
def test_a_part_in_a_part_on_the_block_is_of_its_hand(tmp_path: Path, hand: str, outcome: str) -> None:
    folder = DesignFolder(tmp_path)
    files = {
        "block.toml": 'kind = "cylinder-block"\nid = "block"\nhand = "left"\n',
        "box.toml": 'kind = "cam-box"\nid = "box"\nmounted_on = "block"\n',
        "tappet.toml": f'kind = "tappet"\nid = "tappet"\nhand = "{hand}"\ncarried_in = "box"\n',
    }
    assert folder.write(files).only(HAND, "tappet").outcome == outcome
