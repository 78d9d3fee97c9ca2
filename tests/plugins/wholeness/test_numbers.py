"""Parts that belong to nothing, and one drawing number on several parts: each case of the table from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import SETTINGS, DesignFolder, expect_conforms, expect_finding, expect_not_applicable

BELONGS, NUMBER = "release.belongs-somewhere", "release.one-drawing-one-part"
BLOCK = 'kind = "cylinder-block"\n'
LINER = 'kind = "cylinder-liner"\nhoused_in = "block"\n'
ENGINE = 'kind = "engine"\n[cranks.left]\nblock = "block"\n'
FOR_REVIEW, RELEASED = (SETTINGS.replace("draft", stage) for stage in ("for-review", "released"))


@pytest.mark.parametrize(
    ("settings", "grade"), [(SETTINGS, Grade.OBSERVATION), (FOR_REVIEW, Grade.NONCONFORMITY)]
)
def test_a_part_without_links_belongs_to_nothing(workshop: DesignFolder, settings: str, grade: Grade) -> None:
    files = {"block.toml": BLOCK, "shaft.toml": 'kind = "shaft"\n'}
    check = workshop.write(files, settings=settings).only(BELONGS, "shaft")
    expect_finding(check, grade=grade, says="no chain of links joins it to an engine or a block")


def test_a_chain_that_ends_nowhere_belongs_to_nothing(workshop: DesignFolder) -> None:
    """The ring of a liner that is in no block; the liner itself; and both again once the liner is in one."""
    ring = 'kind = "piston-ring"\nruns_in = "liner"\n'
    files = {"block.toml": BLOCK, "liner.toml": 'kind = "cylinder-liner"\n', "ring.toml": ring}
    for name in ("ring", "liner"):
        expect_finding(workshop.write(files).only(BELONGS, name), grade=Grade.OBSERVATION)
    for name in ("ring", "liner"):
        expect_conforms(workshop.write({**files, "liner.toml": LINER}).only(BELONGS, name))


def test_a_part_that_is_like_another_and_has_no_place_of_its_own_is_told_of_once(
    workshop: DesignFolder,
) -> None:
    """Of a ring like one in a liner like.place-stated tells; one that is like a ring without a place is in none."""
    files = {
        "block.toml": BLOCK,
        "liner.toml": LINER,
        "ring.toml": 'kind = "piston-ring"\nruns_in = "liner"\n',
    }
    like = {"other.toml": 'kind = "piston-ring"\nlike = "ring"\n'}
    expect_not_applicable(workshop.write({**files, **like}).only(BELONGS, "other"), "like.place-stated tells")
    alone = {**files, "ring.toml": 'kind = "piston-ring"\n', **like}
    expect_finding(workshop.write(alone).only(BELONGS, "other"), grade=Grade.OBSERVATION)
    like["other.toml"] += 'runs_in = "liner"\n'
    expect_conforms(workshop.write({**files, **like}).only(BELONGS, "other"))


def test_links_that_lead_to_a_part_join_it_too(workshop: DesignFolder) -> None:
    cam = 'kind = "cam"\nlifts = "tappet"\nturns_on = "shaft"\n'
    files = {
        "block.toml": BLOCK,
        "box.toml": 'kind = "cam-box"\nmounted_on = "block"\n',
        "tappet.toml": 'kind = "tappet"\ncarried_in = "box"\n',
        "shaft.toml": 'kind = "shaft"\n',
    }
    expect_finding(workshop.write(files).only(BELONGS, "shaft"), grade=Grade.OBSERVATION)
    expect_conforms(workshop.write({**files, "cam.toml": cam}).only(BELONGS, "shaft"))


def test_a_duty_and_an_outline_that_nothing_uses_are_told_of_the_engine(workshop: DesignFolder) -> None:
    duty = {"duty.toml": 'kind = "duty"\n', "outline.toml": 'kind = "gauge-outline"\n'}
    files = {"block.toml": BLOCK, "engine.toml": ENGINE}
    check = workshop.write({**files, **duty}).only(BELONGS, "engine")
    expect_finding(check, grade=Grade.OBSERVATION, says="duty duty (duty.toml)")
    assert "gauge outline outline (outline.toml)" in check.says
    envelope = 'kind = "envelope"\naround = "block"\ngauge = "outline"\nduty = "duty"\n'
    expect_conforms(workshop.write({**files, **duty, "envelope.toml": envelope}).only(BELONGS, "engine"))


def on_one(workshop: DesignFolder, first: str, second: str, settings: str = SETTINGS) -> DesignFolder:
    number = 'drawing = "D-1"\n'
    files = {"block.toml": BLOCK, "first.toml": first + number, "second.toml": second + number}
    return workshop.write(files, settings=settings)


@pytest.mark.parametrize(
    ("settings", "grade"),
    [(SETTINGS, Grade.NONCONFORMITY), (FOR_REVIEW, Grade.NONCONFORMITY), (RELEASED, Grade.HOLD)],
)
def test_two_parts_on_one_number(workshop: DesignFolder, settings: str, grade: Grade) -> None:
    """A piston rod can hurt someone: in a release one number on two of them is a hold, told of each with the other."""
    rod = 'kind = "piston-rod"\n'
    design = on_one(workshop, rod, rod, settings)
    for name, other in (("first", "second"), ("second", "first")):
        expect_finding(design.only(NUMBER, name), grade=grade, says=f"{other} ({other}.toml)")


def test_the_parts_of_one_file_are_pieces_of_its_drawing(workshop: DesignFolder) -> None:
    """The same words in a file each are two parts on one number; in one file, by each, two pieces of one drawing."""
    ring = 'kind = "piston-ring"\ndrawing = "D-1"\n'
    apart = {f"ring-{name}.toml": ring for name in ("front", "back")}
    expect_finding(workshop.write(apart).only(NUMBER, "ring-front"), grade=Grade.NONCONFORMITY)
    for file in apart:
        (workshop.root / file).unlink()
    workshop.write({"ring.toml": f'each = ["front", "back"]\nid = "ring-{{each}}"\n{ring}'})
    for name in ("ring-front", "ring-back"):
        expect_conforms(workshop.only(NUMBER, name))


def test_two_parts_that_cannot_hurt_are_no_hold(workshop: DesignFolder) -> None:
    ring = 'kind = "piston-ring"\n'
    expect_finding(on_one(workshop, ring, ring, RELEASED).only(NUMBER, "first"), grade=Grade.NONCONFORMITY)


@pytest.mark.parametrize("number", ["c-1", "C - 1"])
def test_a_number_in_other_letters_is_the_same(workshop: DesignFolder, number: str) -> None:
    """Nobody in a shop keeps c-1 apart from C-1; C-10 is another number."""
    block = f'{BLOCK}drawing = "C-1"\n'
    files = {"block.toml": block, "liner.toml": f'{LINER}drawing = "{number}"\n'}
    expect_finding(
        workshop.write(files, settings=FOR_REVIEW).only(NUMBER, "liner"), says="on the same drawing"
    )
    files["liner.toml"] = f'{LINER}drawing = "C-10"\n'
    expect_conforms(workshop.write(files, settings=FOR_REVIEW).only(NUMBER, "liner"))


def test_a_number_of_its_own(workshop: DesignFolder) -> None:
    files = {"block.toml": f'{BLOCK}drawing = "D-1"\n', "liner.toml": f'{LINER}drawing = "D-2"\n'}
    expect_conforms(workshop.write(files).only(NUMBER, "liner"))
    del files["block.toml"]
    expect_not_applicable(workshop.write({"block.toml": BLOCK}).only(NUMBER, "block"), "release.identity")


@pytest.mark.parametrize(
    ("first", "second", "same", "other"),
    [
        ("piston-ring", "fit", None, Grade.NONCONFORMITY),  # a part and a plan of it
        (
            "cylinder-block",
            "steam-passage",
            None,
            Grade.NONCONFORMITY,
        ),  # a feature is of the revision of its block
        (
            "cylinder-liner",
            "casting",
            Grade.OBSERVATION,
            Grade.NONCONFORMITY,
        ),  # a blank has a number of its own
        ("piston-ring", "piston-ring", Grade.NONCONFORMITY, Grade.NONCONFORMITY),
    ],
)
def test_what_may_share_a_number_shares_its_revision(
    workshop: DesignFolder, first: str, second: str, same: Grade | None, other: Grade
) -> None:
    for revision, wanted in (("A", same), ("B", other)):
        one, two = (
            f'kind = "{kind}"\nrevision = "{at}"\n' for kind, at in ((first, "A"), (second, revision))
        )
        check = on_one(workshop, one, two).only(NUMBER, "second")
        assert (check.outcome, check.grade) == (("finding", wanted) if wanted else ("conforms", None))
        if revision == "B":
            assert check.says == "first (first.toml) is on the same drawing in revision A, this one in B"


@pytest.mark.parametrize(
    ("kind", "grade"), [("steam-passage", Grade.NONCONFORMITY), ("piston-rod", Grade.HOLD)]
)
@pytest.mark.parametrize("name", ["first", "second"])
def test_a_feature_of_another_revision_is_no_hold_in_a_release(
    workshop: DesignFolder, kind: str, grade: Grade, name: str
) -> None:
    """A passage is no piece that could be taken for the other; of two rods the wrong one may be made."""
    rod, other = 'kind = "piston-rod"\nrevision = "A"\n', f'kind = "{kind}"\nrevision = "B"\n'
    expect_finding(on_one(workshop, rod, other, RELEASED).only(NUMBER, name), grade=grade)


def test_what_a_part_belongs_to_is_said(workshop: DesignFolder) -> None:
    files = {"block.toml": BLOCK, "liner.toml": LINER, "engine.toml": ENGINE}
    design = workshop.write(files)
    assert design.only(BELONGS, "liner").says == "a chain of links joins it to an engine or a block"
    assert (
        design.only(BELONGS, "block").says
        == "a block belongs to itself: engine.blocks-named asks for its engine"
    )
    used = "something uses every duty and outline of the repository"
    assert design.only(BELONGS, "engine").says == used


def test_the_file_of_a_duty_that_nothing_uses_is_pointed_at(workshop: DesignFolder) -> None:
    files = {"block.toml": BLOCK, "engine.toml": ENGINE, "duty.toml": 'kind = "duty"\n'}
    check = workshop.write(files).only(BELONGS, "engine")
    expect_finding(check, grade=Grade.OBSERVATION, says="nothing uses duty duty (duty.toml)")
    assert check.where.file == "duty.toml"


RING, THIRD = 'kind = "piston-ring"\n', 'kind = "piston-ring"\ndrawing = "D-3"\n'
UNLIKE = "is on the same drawing, and neither is stated to be like the other"


@pytest.mark.parametrize(
    ("first", "second", "alike"),
    [
        (RING, RING, False),
        (RING, RING + 'like = "first"\n', True),
        (RING + 'like = "second"\n', RING, True),
        (RING, RING + 'mirror_of = "first"\n', True),
        (RING + 'like = "third"\n', RING + 'like = "third"\n', True),
        (RING + 'like = "third"\n', RING + 'mirror_of = "third"\n', True),
        (RING + 'like = "third"\n', RING, False),
        (RING + 'like = "third"\n', RING + 'like = "fourth"\n', False),
        ('kind = "casting"\n', 'kind = "casting"\n', False),  # the foundry makes what the number says
        ('kind = "casting"\n', 'kind = "casting"\nlike = "first"\n', True),
        ('kind = "casting"\n', 'kind = "weldment"\n', False),
    ],
)
def test_two_parts_on_one_number_are_alike(
    workshop: DesignFolder, first: str, second: str, alike: bool
) -> None:
    """Each is told of the other; what one is like may be another part on another number."""
    workshop.write({"third.toml": THIRD, "fourth.toml": THIRD.replace("D-3", "D-4")})
    design = on_one(workshop, first, second)
    for name, other in (("first", "second"), ("second", "first")):
        check = design.only(NUMBER, name)
        if alike:
            expect_conforms(check)
            assert check.says == f"{other} ({other}.toml) may be on the same drawing"
        else:
            expect_finding(check, grade=Grade.NONCONFORMITY, says=f"{other} ({other}.toml) {UNLIKE}")


def test_a_part_like_one_of_a_file_is_like_all_of_that_file(workshop: DesignFolder) -> None:
    """As long as that one is on the number too: else nothing on the drawing says that the others are alike."""
    several = f'each = ["front", "back"]\nid = "ring-{{each}}"\n{RING}drawing = "D-1"\n'
    files = {"rings.toml": several, "new.toml": f'{RING}like = "ring-front"\ndrawing = "D-1"\n'}
    design = workshop.write(files)
    for name in ("new", "ring-front", "ring-back"):
        expect_conforms(design.only(NUMBER, name))
    apart = several + '[for.front]\ndrawing = "D-2"\n'
    design.write({"rings.toml": apart})
    for name in ("new", "ring-back"):
        expect_finding(design.only(NUMBER, name), grade=Grade.NONCONFORMITY, says=UNLIKE)
    design.write({"rings.toml": several, "new.toml": f'{RING}drawing = "D-1"\n'})
    for name in ("new", "ring-front", "ring-back"):
        expect_finding(design.only(NUMBER, name), says=UNLIKE)


@pytest.mark.parametrize(
    ("first", "second", "says"),
    [
        ('revision = "A"\n', 'revision = "A"\n', "first (first.toml) is on the same drawing"),
        (
            'revision = "A"\n',
            "",
            "first (first.toml) is on the same drawing; the revision of one is not stated",
        ),
        (
            "",
            'revision = "A"\n',
            "first (first.toml) is on the same drawing; the revision of one is not stated",
        ),
    ],
)
def test_a_feature_stands_on_the_drawing_of_its_block(
    workshop: DesignFolder, first: str, second: str, says: str
) -> None:
    design = on_one(workshop, BLOCK + first, 'kind = "steam-passage"\n' + second)
    check = design.only(NUMBER, "second")
    expect_conforms(check)
    assert check.says == says


@pytest.mark.parametrize("name", ["first", "second"])
def test_one_of_two_that_can_hurt_is_enough_for_a_hold_in_a_release(
    workshop: DesignFolder, name: str
) -> None:
    """The ring may be made in place of the rod."""
    design = on_one(workshop, 'kind = "piston-rod"\n', RING, RELEASED)
    expect_finding(design.only(NUMBER, name), grade=Grade.HOLD, says=UNLIKE)
