"""The joints of a steam pipe: into the parts that it meets, by its ends and by its path."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

RULE = "pipe.joined-at-both-ends"
PARTS = {
    "block": 'kind = "cylinder-block"',
    "other": 'kind = "cylinder-block"',
    "belt": 'kind = "steam-passage"\nin_block = "block"\ncarries = "exhaust steam"',
    "first": 'kind = "steam-pipe"\nfollows = "belt"',
    "second": 'kind = "steam-pipe"\nfollows = "first"',
    "nozzle": 'kind = "blast-nozzle"\nfollows = "second"',
    "flange-block": 'kind = "pipe-flange"\nof = "first"',
    "flange-middle": 'kind = "pipe-flange"\nof = "first"',
    "flange-end": 'kind = "pipe-flange"\nof = "second"',
    "flange-second": 'kind = "pipe-flange"\nof = "second"',
    "studs-block": 'kind = "bolted-joint"\nholds = "flange-block"\nscrewed_into = "block"',
    "bolts-middle": 'kind = "bolted-joint"\nholds = "flange-middle"\nbolted_to = "flange-second"',
    "studs-end": 'kind = "bolted-joint"\nholds = "flange-end"\nscrewed_into = "nozzle"',
}


def found(design: DesignFolder, pipe: str, **parts: str) -> tuple[str, str]:
    """What comes of a pipe of two, from block to nozzle, with some parts changed."""
    specs = {f"{name}.toml": f'id = "{name}"\n{text}\n' for name, text in (PARTS | parts).items()}
    check = design.write(specs).only(RULE, pipe)
    assert check.grade in (None, Grade.HOLD)
    return check.outcome, check.says


@pytest.mark.parametrize("pipe", ["first", "second"])
def test_pipes_that_follow_one_another_meet(workshop: DesignFolder, pipe: str) -> None:
    assert found(workshop, pipe)[0] == "conforms"


def test_studs_go_into_the_block_of_the_passage_that_the_pipe_follows(workshop: DesignFolder) -> None:
    astray = {"studs-block": PARTS["studs-block"].replace('"block"', '"other"')}
    outcome, says = found(workshop, "first", **astray)
    assert (outcome, says) == (
        "finding",
        "ends of first: studs-block goes into other, which first does not meet",
    )
    assert (
        found(workshop, "first", **astray, belt='kind = "steam-passage"\nin_block = "other"')[0] == "conforms"
    )


def test_bolts_go_through_the_flange_of_the_next_pipe_and_of_no_other(workshop: DesignFolder) -> None:
    third = {"third": 'kind = "steam-pipe"', "flange-second": 'kind = "pipe-flange"\nof = "third"'}
    outcome, says = found(workshop, "first", **third)
    assert outcome == "finding"
    assert "bolts-middle goes into flange-second" in says


@pytest.mark.parametrize(
    ("ends", "outcome"),
    [
        ("", "finding"),
        ('\n[starts_at]\npart = "block"\n[ends_at]\npart = "block"', "conforms"),
        ('\njoined_to = "block"', "conforms"),
    ],
)
def test_both_joints_go_into_one_block_only_where_both_ends_do(
    workshop: DesignFolder, ends: str, outcome: str
) -> None:
    made = {
        "first": PARTS["first"] + ends,
        "bolts-middle": 'kind = "bolted-joint"\nholds = "flange-middle"\nscrewed_into = "block"',
    }
    assert found(workshop, "first", **made)[0] == outcome


def test_a_pipe_that_says_only_what_it_is_joined_to_is_so_at_either_end(workshop: DesignFolder) -> None:
    made = {
        "first": 'kind = "steam-pipe"\njoined_to = "block"',
        "bolts-middle": 'kind = "bolted-joint"\nholds = "flange-middle"\nscrewed_into = "block"',
    }
    assert found(workshop, "first", **made)[0] == "conforms"


@pytest.mark.parametrize("part", ["block", "other"])
def test_a_pipe_of_which_no_end_is_known_is_joined_to_anything(workshop: DesignFolder, part: str) -> None:
    alone = {
        "first": 'kind = "steam-pipe"',
        "second": 'kind = "steam-pipe"',
        "studs-block": PARTS["studs-block"].replace('"block"', f'"{part}"'),
    }
    assert found(workshop, "first", **alone)[0] == "conforms"


def test_a_part_at_which_no_drawing_says_that_the_pipe_ends_is_taken_as_it_is(workshop: DesignFolder) -> None:
    header = {
        "header": 'kind = "bracket"',
        "bolts-middle": 'kind = "bolted-joint"\nholds = "flange-middle"\nscrewed_into = "header"',
    }
    assert found(workshop, "first", **header)[0] == "conforms"


#: A pipe alone, with a flange at each end: from one block to another.
ALONE = {
    "block": 'kind = "cylinder-block"',
    "other": 'kind = "cylinder-block"',
    "third": 'kind = "cylinder-block"',
    "pipe": 'kind = "steam-pipe"\n[starts_at]\npart = "block"\n[ends_at]\npart = "other"',
    "near": 'kind = "pipe-flange"\nof = "pipe"',
    "far": 'kind = "pipe-flange"\nof = "pipe"',
    "studs-far": 'kind = "bolted-joint"\nholds = "far"\nscrewed_into = "other"',
    "studs-near": 'kind = "bolted-joint"\nholds = "near"\nscrewed_into = "block"',
}
NEAR, FAR = ALONE["studs-near"], ALONE["studs-far"]


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"studs-near": ""}, "ends of pipe wants a bolted joint: 1 of 2 are there"),
        ({"studs-near": "", "studs-far": ""}, "ends of pipe wants a bolted joint: none is there"),
        (
            {"more": 'kind = "bolted-joint"\nholds = "pipe"\nscrewed_into = "third"'},
            "ends of pipe is filled 3 times (bolted joint): more (more.toml), studs-far (studs-far.toml), "
            "studs-near (studs-near.toml)",
        ),
        # both joints hold the pipe itself, which is at both ends
        ({"studs-near": NEAR.replace("near", "pipe"), "studs-far": FAR.replace("far", "pipe")}, ""),
        (
            {"studs-far": FAR.replace('"far"', '"near"')},
            "ends of pipe: studs-far and studs-near are both at near",
        ),
        (
            {"near": 'kind = "lens-joint"\nof = "pipe"', "studs-far": FAR.replace('"far"', '"near"')},
            "ends of pipe: studs-far and studs-near are both at near",
        ),
        ({"near": 'kind = "lens-joint"\nof = "pipe"'}, ""),
        # a flange under the nuts counts as one that is held
        ({"studs-near": 'kind = "bolted-joint"\nholds = "block"\nbolted_to = "near"'}, ""),
        ({"studs-near": 'kind = "bolted-joint"\nholds = "block"\nscrewed_into = "near"'}, ""),
        (
            {"studs-near": NEAR.replace('"block"', '"third"')},
            "ends of pipe: studs-near goes into third, which pipe does not meet",
        ),
        (
            {"studs-near": NEAR.replace('screwed_into = "block"', 'bolted_to = "third"')},
            "ends of pipe: studs-near goes into third, which pipe does not meet",
        ),
        (
            {"studs-near": NEAR.replace('"block"', '"other"')},
            "ends of pipe: studs-far and studs-near both go into other",
        ),
        # what it follows tells no end of it: a passage that names no block, or a part at which no pipe ends
        ({"pipe": 'kind = "steam-pipe"\nfollows = "passage"', "passage": 'kind = "steam-passage"'}, ""),
        ({"pipe": 'kind = "steam-pipe"\nfollows = "header"', "header": 'kind = "bracket"'}, ""),
    ],
)
def test_a_joint_is_at_each_end_of_a_pipe(workshop: DesignFolder, parts: dict[str, str], says: str) -> None:
    assert told(workshop, {**ALONE, **parts}, RULE, "pipe") == says


#: The same pipe, of which the drawings say only where it starts.
FROM_BLOCK = 'kind = "steam-pipe"\n[starts_at]\npart = "block"'
NO_NEAR = "ends of pipe: studs-far goes into other, and none into block, which pipe meets"


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        # where its other end is, no drawing says: one joint may go into any part
        ({}, ""),
        ({"pipe": 'kind = "steam-pipe"\njoined_to = "block"'}, ""),
        ({"pipe": FROM_BLOCK.replace("pipe", 'pipe"\njoined_to = "block', 1)}, ""),
        ({"studs-near": 'kind = "bolted-joint"\nholds = "block"\nbolted_to = "near"'}, ""),
        # a joint that does not name the part that it goes into may be the one in the block
        ({"studs-near": 'kind = "bolted-joint"\nholds = "near"'}, ""),
        # but not both
        ({"studs-near": NEAR.replace('"block"', '"third"')}, NO_NEAR),
        ({"studs-near": NEAR.replace('"block"', '"header"'), "header": 'kind = "bracket"'}, NO_NEAR),
        (
            {"studs-far": FAR.replace('"other"', '"block"')},
            "ends of pipe: studs-far and studs-near both go into block",
        ),
        # two parts named are two ends
        (
            {"pipe": FROM_BLOCK.replace("pipe", 'pipe"\njoined_to = "third', 1)},
            "ends of pipe: studs-far goes into other, which pipe does not meet",
        ),
        (
            {"pipe": FROM_BLOCK.replace("pipe", 'pipe"\njoined_to = "other', 1)},
            "",
        ),
    ],
)
def test_a_pipe_of_which_one_end_is_known_meets_any_part_at_the_other(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    assert told(workshop, {**ALONE, "pipe": FROM_BLOCK, **parts}, RULE, "pipe") == says


def test_the_first_joint_of_a_draft_may_be_the_one_at_the_other_end(workshop: DesignFolder) -> None:
    parts = {**ALONE, "pipe": FROM_BLOCK, "studs-near": ""}
    waits = "not applicable: a draft: 1 still to be drawn, listed under block"
    assert told(workshop, parts, RULE, "pipe", "draft") == waits


@pytest.mark.parametrize(
    ("into", "says"),
    [
        ("block", "not applicable: a draft: 1 still to be drawn, listed under block"),
        ("third", "ends of pipe: studs-near goes into third, which pipe does not meet"),
    ],
)
def test_a_joint_in_another_part_is_told_in_a_draft_that_lacks_the_second(
    workshop: DesignFolder, into: str, says: str
) -> None:
    parts = {**ALONE, "studs-near": NEAR.replace("block", into), "studs-far": ""}
    assert told(workshop, parts, RULE, "pipe", "draft") == says


@pytest.mark.parametrize(
    ("of", "says"),
    [("next", ""), ("third-pipe", "ends of pipe: studs-far goes into joins, which pipe does not meet")],
)
def test_a_pipe_that_ends_at_another_meets_its_flanges(workshop: DesignFolder, of: str, says: str) -> None:
    parts = {
        "pipe": ALONE["pipe"].replace('"other"', '"next"'),
        "next": 'kind = "steam-pipe"',
        "third-pipe": 'kind = "steam-pipe"',
        "joins": f'kind = "pipe-flange"\nof = "{of}"',
        "studs-far": 'kind = "bolted-joint"\nholds = "far"\nbolted_to = "joins"',
    }
    assert told(workshop, {**ALONE, **parts}, RULE, "pipe") == says


@pytest.mark.parametrize("number", [0, 1, 2])
def test_a_pipe_is_lagged_once(workshop: DesignFolder, number: int) -> None:
    says = (
        "pipe wants a lagging: none is there",
        "",
        "pipe is filled twice (lagging): one-0 (one-0.toml), one-1 (one-1.toml)",
    )
    laggings = {f"one-{n}": 'kind = "lagging"\ncovers = "pipe"' for n in range(number)}
    assert told(workshop, {"pipe": 'kind = "steam-pipe"', **laggings}, "pipe.lagged", "pipe") == says[number]
