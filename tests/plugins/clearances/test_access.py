"""access.inspection: openings, welds, seats, spanners and studs."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder
from speclint_clearances.formulae.access import spanner_head, swing_wanted
from tests.plugins.clearances.bench import write

RULE = "access.inspection"
FILES = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\n',
    "weldment.toml": """
kind = "weldment"
id = "weldment"
makes = "block"
[joints.seam]
on_pressure = true
[joints.bracket]
on_pressure = false
""",
    "cover.toml": 'kind = "cylinder-cover"\nid = "cover"\ncloses = "block"\n',
    "studs.toml": 'kind = "bolted-joint"\nid = "studs"\nholds = "cover"\nscrewed_into = "block"\nfastener = "stud"\n',
    "gland-bolts.toml": (
        'kind = "bolted-joint"\nid = "gland-bolts"\nholds = "gland"\nbolted_to = "cover"\nfastener = "bolt"\n'
    ),
    "gland.toml": 'kind = "gland"\nid = "gland"\nof = "cover"\n',
    "fastening.toml": 'kind = "frame-fastening"\nid = "fastening"\nholds = "block"\n',
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\n',
    "seat.toml": 'kind = "valve-seat"\nid = "seat"\npressed_into = "block"\n',
    "plan.toml": """
kind = "access-plan"
id = "plan"
serves = "block"
weldment = "weldment"
chambers_complete = true
[chambers.chest]
opening_length = "100 mm"
opening_width = "80 mm"
[welds.seam]
seen_through = "chest"
[seats.seat]
lapped_in_place = true
[spanners.gland-bolts]
across_flats = "30 mm"
to_wall = "25 mm"
swing = "90 °"
spanner = "open"
[spanners.fastening]
across_flats = "30 mm"
to_wall = "25 mm"
swing = "90 °"
spanner = "open"
[withdrawals.liner]
size = "900 mm"
room = "1000 mm"
[spanners.studs]
across_flats = "36 mm"
to_wall = "28.8 mm"
swing = "60 °"
spanner = "ring of six points"
[withdrawals.studs]
size = "110 mm"
room = "120 mm"
""",
}


def changed(old: str, new: str) -> tuple[str, str, str]:
    return "plan.toml", old, new


def test_all_that_can_be_reached_conforms_at_its_limits(workshop: DesignFolder) -> None:
    check = write(workshop, FILES).only(RULE)
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ('"100 mm"', '"99 mm"', "finding"),
        ('"80 mm"', '"79 mm"', "finding"),
        ('"28.8 mm"', '"28.7 mm"', "finding"),  # 0.8 × 36 = 28.8 mm
        ('"60 °"', '"59 °"', "finding"),
        # a twelfth of a turn, 30°, for twelve points and for an open spanner, which is turned over
        *(
            (
                'swing = "60 °"\nspanner = "ring of six points"',
                f'swing = "{swing}"\nspanner = "{spanner}"',
                outcome,
            )
            for spanner in ("ring of twelve points", "open")
            for swing, outcome in (("30 °", "conforms"), ("29.9 °", "finding"))
        ),
        ('"120 mm"', '"119 mm"', "finding"),  # 110 mm of stud and 10 mm beyond
        ('[welds.seam]\nseen_through = "chest"\n', "", "finding"),
        ('seen_through = "chest"', "", "not assessed"),
        ('seen_through = "chest"', 'seen_through = "outside"', "conforms"),
        ("[seats.seat]\nlapped_in_place = true\n", "", "finding"),
        ("lapped_in_place = true", "lapped_in_place = false", "finding"),
        ("lapped_in_place = true", "", "not assessed"),
        ("chambers_complete = true", "chambers_complete = false", "finding"),
        ("chambers_complete = true", "", "not assessed"),
        ('weldment = "weldment"', "", "not assessed"),
        ('opening_width = "80 mm"', "", "not assessed"),
        ('room = "120 mm"', "", "not assessed"),
        ('spanner = "ring of six points"', "", "not assessed"),
    ],
)
def test_each_way_of_reaching(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    check = write(workshop, FILES, changed(old, new)).only(RULE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_plan_without_chambers_is_not_assessed(workshop: DesignFolder) -> None:
    bare = FILES["plan.toml"].replace(
        '[chambers.chest]\nopening_length = "100 mm"\nopening_width = "80 mm"\n', ""
    )
    assert write(workshop, {**FILES, "plan.toml": bare}).only(RULE).outcome == "not assessed"


@pytest.mark.parametrize("name", ["spanners.studs", "spanners.gland-bolts", "spanners.fastening"])
def test_every_joint_needs_its_spanner(workshop: DesignFolder, name: str) -> None:
    check = write(workshop, FILES, changed(f"[{name}]", "[notes.another]")).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert f"{name.split('.')[1]} has no room for a spanner" in check.says


@pytest.mark.parametrize("name", ["withdrawals.studs", "withdrawals.liner"])
def test_every_stud_and_liner_must_come_out(workshop: DesignFolder, name: str) -> None:
    check = write(workshop, FILES, changed(f"[{name}]", "[withdrawals.another]")).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert f"{name.split('.')[1]} has no room for withdrawal" in check.says


def test_a_joint_that_does_not_say_what_fastens_it_is_not_assessed(workshop: DesignFolder) -> None:
    check = write(workshop, FILES, ("studs.toml", 'fastener = "stud"\n', "")).only(RULE)
    assert check.outcome == "not assessed"


@given(n=st.integers(1, 24), s=st.floats(5e-3, 0.1))
def test_more_points_want_less_swing_and_larger_nuts_more_room(n: int, s: float) -> None:
    assert swing_wanted(float(n)) * n == pytest.approx(2 * math.pi)
    assert spanner_head(0.8, 2 * s) == pytest.approx(2 * spanner_head(0.8, s))


STUD = (
    FILES["studs.toml"]
    + """set_in = "5 mm"
grip = "45 mm"
tapped.engagement = "36 mm"
nut.engagement = "24 mm"
nut.across_flats = "36 mm"
"""
)


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ('size = "110 mm"\nroom = "120 mm"', 'room = "120 mm"', "conforms"),  # 36 + 5 + 45 + 24 = 110 mm
        ('size = "110 mm"\nroom = "120 mm"', 'room = "119.9 mm"', "finding"),
        ('size = "110 mm"\nroom = "120 mm"', 'size = "80 mm"\nroom = "119.9 mm"', "finding"),
        ('across_flats = "36 mm"\nto_wall = "28.8 mm"', 'to_wall = "28.8 mm"', "conforms"),
        (
            'across_flats = "36 mm"\nto_wall = "28.8 mm"',
            'across_flats = "30 mm"\nto_wall = "28.7 mm"',
            "finding",
        ),
        # 0.8 × 40 = 32 mm for the wider nut of the plan
        (
            'across_flats = "36 mm"\nto_wall = "28.8 mm"',
            'across_flats = "40 mm"\nto_wall = "32.1 mm"',
            "conforms",
        ),
        (
            'across_flats = "36 mm"\nto_wall = "28.8 mm"',
            'across_flats = "40 mm"\nto_wall = "31.9 mm"',
            "finding",
        ),
    ],
)
def test_studs_and_nuts_are_as_their_joint_has_them(
    workshop: DesignFolder, old: str, new: str, outcome: str
) -> None:
    """What the plan leaves out is taken from the joint, and a smaller size that it states eases nothing."""
    assert write(workshop, {**FILES, "studs.toml": STUD}, changed(old, new)).only(RULE).outcome == outcome


@pytest.mark.parametrize(("room", "outcome"), [("935.1 mm", "conforms"), ("935 mm", "finding")])
def test_a_liner_comes_out_with_its_collar(workshop: DesignFolder, room: str, outcome: str) -> None:
    """900 + 25.1 mm and 10 mm beyond, whatever the plan states."""
    liner = FILES["liner.toml"] + 'length = "900 mm"\ncollar.thickness = "25.1 mm"\n'
    check = write(workshop, {**FILES, "liner.toml": liner}, changed('"1000 mm"', f'"{room}"')).only(RULE)
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("of", "word", "outcome"),
    [
        ('of = "belt"\n', "", "conforms"),
        ("", "", "finding"),
        ("", "chambers_complete = true\n", "finding"),
        ('of = "belt"\n', "chambers_complete = false\n", "finding"),
    ],
)
def test_each_chest_belt_and_pocket_is_a_chamber(
    workshop: DesignFolder, of: str, word: str, outcome: str
) -> None:
    """A word that all are listed does not make it so."""
    belt = 'kind = "steam-passage"\nid = "belt"\nin_block = "block"\nplace = "belt"\n'
    changes = (
        changed("[chambers.chest]\n", "[chambers.chest]\n" + of),
        changed("chambers_complete = true\n", word),
    )
    check = write(workshop, {**FILES, "belt.toml": belt}, *changes).only(RULE)
    assert (check.outcome, "belt" in check.says) == (outcome, not of)


@pytest.mark.parametrize(
    ("one_side", "carries", "outcome"),
    [
        ("live steam", 'carries = "live steam"\n', "conforms"),
        ("live steam", 'carries = "exhaust steam"\n', "finding"),
        ("exhaust steam", 'carries = "exhaust steam"\n', "conforms"),
        ("live steam", "", "conforms"),
    ],
)
def test_a_weld_is_seen_from_a_side_of_its_wall(
    workshop: DesignFolder, one_side: str, carries: str, outcome: str
) -> None:
    """Nobody sees a corner of the chest through the opening of the exhaust belt."""
    wall = (
        f'wall = "side"\n[walls.side]\none_side = "{one_side}"\nother_side = "atmosphere"\n[joints.bracket]'
    )
    passage = f'kind = "steam-passage"\nid = "way"\nin_block = "block"\nplace = "chest"\n{carries}'
    files = {**FILES, "way.toml": passage}
    changes = (
        ("weldment.toml", "[joints.bracket]", wall),
        ("plan.toml", "[chambers.chest]\n", '[chambers.chest]\nof = "way"\n'),
    )
    check = write(workshop, files, *changes).only(RULE)
    assert check.outcome == outcome
    assert ("seam is seen through chest, which lies on neither side" in check.says) == (outcome == "finding")


def test_what_is_drawn_out_in_the_frames_has_its_room_judged_there(workshop: DesignFolder) -> None:
    """A seat, which room.withdrawn-in-frames judges, is no liner and no stud: the 20 mm here are not enough for it."""
    entry = changed(
        "[withdrawals.liner]", '[withdrawals.seat]\nsize = "48 mm"\nroom = "20 mm"\n[withdrawals.liner]'
    )
    assert write(workshop, FILES, entry).only(RULE).outcome == "conforms"


def test_a_weld_is_not_seen_through_what_is_no_chamber(workshop: DesignFolder) -> None:
    """The rule tells it too, beside the complaint about the name."""
    check = write(workshop, FILES, changed('seen_through = "chest"', 'seen_through = "belt"')).only(
        RULE, readable=False
    )
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "seam is seen through belt, which is not a chamber" in check.says


@pytest.mark.parametrize(
    ("beyond", "hollow", "outcome"),
    [("atmosphere", "", "conforms"), ("cylinder", "", "finding"), ("atmosphere", "panel", "finding")],
)
def test_from_outside_a_weld_is_seen_on_a_wall_that_has_an_outer_side(
    workshop: DesignFolder, beyond: str, hollow: str, outcome: str
) -> None:
    """Open air beyond it shows it; a cylinder does not, nor a hollow that a second wall shuts off."""
    panel = f'[walls.panel]\none_side = "live steam"\nother_side = "{beyond}"\n'
    division = f'[divisions.hollow]\nwall = "other"\nother_wall = "{hollow}"\n' if hollow else ""
    walled = FILES["weldment.toml"].replace("[joints.seam]\n", '[joints.seam]\nwall = "panel"\n') + panel
    files = {**FILES, "weldment.toml": walled, "block.toml": FILES["block.toml"] + division}
    check = write(workshop, files, changed('seen_through = "chest"', 'seen_through = "outside"')).only(
        RULE, readable=False
    )
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)
    assert ("from outside" in check.says) == (outcome == "finding")
