"""Parts drawn out with the block in its frames, and the tools of its nuts, worked by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, OutOfRange
from speclint.testing import DesignFolder, expect_not_applicable, expect_not_assessed
from speclint_clearances.formulae.cranes import bar_wanted, reach_along, reach_beside, room_to_draw_out

ROOM, TOOL = "room.withdrawn-in-frames", "room.spanner-each-joint"
BLOCK = 'kind = "cylinder-block"\nid = "block"\n'
SEAT = 'kind = "valve-seat"\nid = "seat"\npressed_into = "block"\nlength = "48 mm"\n'
ENTRY = '[withdrawals.seat]\ndirection = "upwards"\nin_place = ["frames"]\nengagement = "48 mm"\nroom = "{room}"\n'
FORWARDS = ENTRY.replace("upwards", "forwards")
PLAN = 'kind = "access-plan"\nid = "plan"\nserves = "block"\n'
STUDS = (
    'kind = "bolted-joint"\nid = "studs"\nscrewed_into = "block"\nfastener = "stud"\n'
    '[tightening]\ntorque = "{torque}"\n'
)


def drawn(entry: str, **more: str) -> dict[str, str]:
    return {"block.toml": BLOCK, "seat.toml": SEAT, "plan.toml": PLAN + entry, **more}


@pytest.mark.parametrize(("room", "outcome"), [("121 mm", "conforms"), ("120.9 mm", "finding")])
def test_room_for_part_engagement_and_tool(workshop: DesignFolder, room: str, outcome: str) -> None:
    """48 + 48 + 25 = 121 mm."""
    check = workshop.write(drawn(ENTRY.format(room=room))).only(ROOM)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


SWUNG = 'kind = "valve-seat"\nid = "seat"\npressed_into = "block"\nlength = "240 mm"\noutside_diameter = "80 mm"\n'
SWINGS = 'swing = "30 °"\nbeside = "{beside}"\n'


def swung(room: str = "310 mm", beside: str = "160 mm", more: str = "") -> dict[str, str]:
    entry = ENTRY.format(room=room) + SWINGS.format(beside=beside) + more
    return {**drawn(entry), "seat.toml": SWUNG}


@pytest.mark.parametrize(
    ("room", "beside", "outcome"),
    [
        ("300.9 mm", "160 mm", "conforms"),
        ("300.8 mm", "160 mm", "finding"),
        ("310 mm", "154.7 mm", "conforms"),
        ("310 mm", "154.6 mm", "finding"),
    ],
)
def test_a_part_that_swings_as_it_comes_out(
    workshop: DesignFolder, room: str, beside: str, outcome: str
) -> None:
    """240 × 80 mm by 30°: 207.85 + 20 + 48 + 25 = 300.85 mm along, 313 straight; 120 + 34.64 = 154.64 mm beside."""
    check = workshop.write(swung(room, beside)).only(ROOM)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)
    straight = drawn(ENTRY.format(room=room)) | {"seat.toml": SWUNG}
    assert workshop.write(straight).only(ROOM).outcome == "finding"


def test_a_wider_part_of_the_plan_counts(workshop: DesignFolder) -> None:
    """100 mm: 207.85 + 25 + 73 = 305.85 mm along, and 120 + 43.30 beside."""
    assert workshop.write(swung("305 mm", "164 mm", 'across = "100 mm"\n')).only(ROOM).outcome == "finding"
    assert workshop.write(swung("306 mm", "164 mm", 'across = "100 mm"\n')).only(ROOM).outcome == "conforms"


def test_a_swing_without_the_room_beside_is_not_assessed(workshop: DesignFolder) -> None:
    made = swung()
    made["plan.toml"] = made["plan.toml"].replace('beside = "160 mm"\n', "")
    assert workshop.write(made).only(ROOM).outcome == "not assessed"


def test_a_part_without_an_entry_passed_before(workshop: DesignFolder) -> None:
    check = workshop.write(drawn("")).only(ROOM)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "seat" in check.says


def test_a_spring_that_cannot_be_drawn_out_is_no_hold(workshop: DesignFolder) -> None:
    """A seat is a safety part by its kind; 140 + 30 + 25 = 195 mm of a spring, which is none."""
    entry = ENTRY.format(room="121 mm")
    made = drawn(entry)
    for part, text in (
        ("valve", 'kind = "poppet-valve"\nid = "valve"\nheight = "40 mm"\nupper_beat.seat = "seat"\n'),
        ("spring", 'kind = "compression-spring"\nid = "spring"\ncloses = "valve"\nfree_length = "140 mm"\n'),
    ):
        made[f"{part}.toml"] = text
        made["plan.toml"] += entry.replace("seat]", f"{part}]").replace('"48 mm"', '"30 mm"')
    check = workshop.write(made).only(ROOM)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)


def test_what_stays_in_place_must_be_said(workshop: DesignFolder) -> None:
    entry = ENTRY.format(room="200 mm").replace('in_place = ["frames"]\n', "")
    assert workshop.write(drawn(entry)).only(ROOM).outcome == "not assessed"


def turned(torque: str, entry: str) -> dict[str, str]:
    return drawn(entry, **{"studs.toml": STUDS.format(torque=torque)})


@pytest.mark.parametrize(
    ("torque", "bar", "outcome"),
    [
        ("580 N·m", "1.45 m", "conforms"),
        ("580 N·m", "1.44 m", "finding"),
        ("600 N·m", "1.5 m", "conforms"),
        ("395 N·m", "1.51 m", "finding"),  # longer than a hand turns, though half of it would do
        ("601 N·m", "1.51 m", "finding"),
        ("860 N·m", "2.15 m", "finding"),
    ],
)
def test_by_hand_from_both_sides(workshop: DesignFolder, torque: str, bar: str, outcome: str) -> None:
    """580/400 = 1.45 m; 860/400 = 2.15 m, more than 1.5 m."""
    check = workshop.write(turned(torque, f'[spanners.studs]\nby = "hand"\nbar = "{bar}"\n')).only(TOOL)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("reaction", "outcome"), [('reaction_at = "next nut"\n', "conforms"), ("", "finding")]
)
def test_a_multiplier_needs_its_reaction(workshop: DesignFolder, reaction: str, outcome: str) -> None:
    check = workshop.write(turned("860 N·m", f'[spanners.studs]\nby = "multiplier"\n{reaction}')).only(TOOL)
    assert check.outcome == outcome
    assert ("nothing is said to take the reaction" in check.says) == (outcome == "finding")
    assert ("the reaction is taken" in check.says) == (outcome == "conforms")


def test_a_tool_that_nobody_said_is_a_query(workshop: DesignFolder) -> None:
    check = workshop.write(turned("860 N·m", "")).only(TOOL)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize(
    ("method", "outcome"),
    [
        ("torque wrench", "not assessed"),
        ("angle controlled", "not assessed"),
        ("", "not assessed"),
        ("elongation by length", "not applicable"),
        ("hydraulic tensioner", "not applicable"),
    ],
)
@pytest.mark.parametrize("by", ["hand", "multiplier"])
def test_nuts_without_a_torque_are_not_assessed(
    workshop: DesignFolder, method: str, outcome: str, by: str
) -> None:
    """Nobody knows what the tool must bear; nuts that are run down on stretched studs want no spanner to bear it."""
    made = turned("580 N·m", f'[spanners.studs]\nby = "{by}"\nbar = "1.5 m"\nreaction_at = "next nut"\n')
    stated = f'method = "{method}"\n' if method else ""
    made["studs.toml"] = made["studs.toml"].replace('torque = "580 N·m"\n', stated)
    check = workshop.write(made).only(TOOL)
    assert check.outcome == outcome, check.says
    assert outcome == "not applicable" or "studs" in check.says


def test_a_gland_is_drawn_up_as_its_packing_needs(workshop: DesignFolder) -> None:
    made = turned("580 N·m", "")
    made["studs.toml"] = made["studs.toml"].replace("fastener", 'holds = "gland"\nfastener')
    made["studs.toml"] = made["studs.toml"].replace('torque = "580 N·m"\n', "")
    made["gland.toml"] = 'kind = "gland"\nid = "gland"\n'
    assert workshop.write(made).only(TOOL).outcome == "not applicable"


@given(T=st.floats(1.0, 5e3))
def test_twice_the_torque_wants_twice_the_bar(T: float) -> None:
    assert bar_wanted(T=2 * T, F=400.0) == pytest.approx(2 * bar_wanted(T=T, F=400.0))


@given(l=st.floats(0.01, 2.0), e=st.floats(0.0, 1.0))
def test_room_is_never_less_than_the_part(l: float, e: float) -> None:  # noqa: E741
    assert room_to_draw_out(l=l, e=e, c=0.025) > l + e


@given(l=st.floats(0.01, 2.0), d=st.floats(0.0, 1.0), θ=st.floats(0.0, math.pi / 2))
def test_a_swung_part_keeps_its_size(l: float, d: float, θ: float) -> None:  # noqa: E741
    """Its raised corner stays as far from the middle of its inner end; straight it reaches its own length."""
    along, beside = reach_along(l=l, d=d, θ=θ), reach_beside(l=l, d=-d, θ=θ)
    assert math.hypot(along, beside) == pytest.approx(math.hypot(l, d / 2))
    assert reach_along(l=l, d=d, θ=0.0) == l


def test_a_swing_beyond_a_right_angle_is_refused() -> None:
    for reach in (reach_along, reach_beside):
        with pytest.raises(OutOfRange, match="90°"):
            reach(l=0.4, d=0.06, θ=math.radians(91))


@pytest.mark.parametrize(
    ("size", "room", "outcome"),
    [
        ("60 mm", "133 mm", "conforms"),  # the plan says more than the ring: 60 + 48 + 25 = 133 mm
        ("60 mm", "132.9 mm", "finding"),
        ("40 mm", "121 mm", "conforms"),  # less: 48 + 48 + 25 = 121 mm
        ("40 mm", "120.9 mm", "finding"),
    ],
)
def test_the_longer_of_part_and_plan_counts(
    workshop: DesignFolder, size: str, room: str, outcome: str
) -> None:
    assert workshop.write(drawn(ENTRY.format(room=room) + f'size = "{size}"\n')).only(ROOM).outcome == outcome


def test_a_narrower_part_of_the_plan_does_not_count(workshop: DesignFolder) -> None:
    """The ring is 80 mm wide whatever the plan says: 300.85 mm along, where 60 mm would want 295.85 mm."""
    assert workshop.write(swung("300.8 mm", "164 mm", 'across = "60 mm"\n')).only(ROOM).outcome == "finding"
    assert workshop.write(swung("300.9 mm", "164 mm", 'across = "60 mm"\n')).only(ROOM).outcome == "conforms"


IN_LINER = {
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\n',
    "piston.toml": 'kind = "piston"\nid = "piston"\nruns_in = "liner"\nlength = "150 mm"\ndiameter = "100 mm"\n',
    "rod.toml": 'kind = "piston-rod"\nid = "rod"\ncarries = "piston"\nfree_length = "150 mm"\n',
}
ON_SEAT = {
    "valve.toml": 'kind = "poppet-valve"\nid = "valve"\nupper_beat.seat = "seat"\nheight = "150 mm"\n'
    'outside_diameter = "100 mm"\n',
    "spindle.toml": 'kind = "valve-spindle"\nid = "spindle"\nmoves = "valve"\nheated_length = "150 mm"\n',
}


@pytest.mark.parametrize("part", ["piston", "rod", "valve", "spindle"])
@pytest.mark.parametrize(("room", "outcome"), [("185 mm", "conforms"), ("184.9 mm", "finding")])
def test_each_part_is_drawn_out_over_its_own_length(
    workshop: DesignFolder, part: str, room: str, outcome: str
) -> None:
    """150 + 10 + 25 = 185 mm; of the others, which are drawn too, the plan leaves a metre."""
    entry = FORWARDS.replace('"48 mm"', '"10 mm"')
    files = drawn("", **IN_LINER, **ON_SEAT)
    for one in ("seat", "piston", "rod", "valve", "spindle"):
        files["plan.toml"] += entry.format(room=room if one == part else "1 m").replace("seat]", f"{one}]")
    assert workshop.write(files).only(ROOM).outcome == outcome


@pytest.mark.parametrize("part", ["piston", "valve"])
@pytest.mark.parametrize(("beside", "outcome"), [("118.4 mm", "conforms"), ("118.2 mm", "finding")])
def test_each_part_swings_with_its_own_width(
    workshop: DesignFolder, part: str, beside: str, outcome: str
) -> None:
    """150 × 100 mm by 30°: 150 sin 30° + 50 cos 30° = 118.30 mm beside the axis."""
    files = drawn("", **IN_LINER, **ON_SEAT)
    for one in ("seat", "piston", "rod", "valve", "spindle"):
        files["plan.toml"] += FORWARDS.format(room="1 m").replace("seat]", f"{one}]")
        files["plan.toml"] += SWINGS.format(beside=beside) if one == part else ""
    assert workshop.write(files).only(ROOM).outcome == outcome


@pytest.mark.parametrize("part", ["piston", "rod"])
@pytest.mark.parametrize(
    ("way", "outcome"),
    [
        ("forwards", "conforms"),
        ("towards the back", "conforms"),
        ("upwards", "finding"),
        ("to the left", "finding"),
        ("not forwards", "finding"),
    ],
)
def test_what_runs_in_a_cylinder_comes_out_along_the_engine(
    workshop: DesignFolder, part: str, way: str, outcome: str
) -> None:
    """A metre is room enough for the 150 mm of each; a seat may come out any way."""
    files = drawn("", **IN_LINER)
    for one in ("seat", "piston", "rod"):
        entry = FORWARDS.format(room="1 m").replace("seat]", f"{one}]")
        files["plan.toml"] += entry.replace("forwards", way) if one == part else entry
    check = workshop.write(files).only(ROOM)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)
    assert outcome == "conforms" or f"{part} is said to be drawn out {way}" in check.says


@pytest.mark.parametrize(
    ("way", "outcome"),
    [("upwards", "conforms"), ("Up", "conforms"), ("to the left", "conforms"), ("downwards", "finding")],
)
def test_a_seat_is_not_drawn_out_against_its_valve(workshop: DesignFolder, way: str, outcome: str) -> None:
    """Both go through one opening, the seat after the valve; the seat is drawn out upwards."""
    files = drawn("", **ON_SEAT)
    for one in ("seat", "valve", "spindle"):
        entry = ENTRY.format(room="1 m").replace("seat]", f"{one}]")
        files["plan.toml"] += entry.replace("upwards", way) if one == "valve" else entry
    check = workshop.write(files).only(ROOM)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)
    assert outcome == "conforms" or "seat is drawn out upwards, and valve" in check.says


FRONT_OFF = '["front cover"]'
COVERS = {
    "front.toml": 'kind = "cylinder-cover"\nid = "front-lid"\ncloses = "block"\nend = "front"\n',
    "back.toml": 'kind = "cylinder-cover"\nid = "back-lid"\ncloses = "block"\nend = "back"\n',
}


@pytest.mark.parametrize("part", ["piston", "rod"])
@pytest.mark.parametrize(
    ("way", "off", "outcome"),
    [
        ("forwards", '["front cover"]', "conforms"),
        ("forwards", '["relief valves", "front-lid"]', "conforms"),
        ("forwards", '["both covers"]', "conforms"),
        ("forwards", '["back cover"]', "finding"),
        ("forwards", "[]", "finding"),
        ("backwards", '["front cover"]', "finding"),
        ("towards the back", '["Back cover, with its studs"]', "conforms"),
        ("along the engine", '["back cover"]', "conforms"),
        ("along the engine", '["running board"]', "finding"),
    ],
)
def test_what_runs_in_a_cylinder_comes_out_past_a_cover_that_is_off(
    workshop: DesignFolder, part: str, way: str, off: str, outcome: str
) -> None:
    files = drawn("", **IN_LINER, **COVERS)
    for one in ("seat", "piston", "rod"):
        entry = FORWARDS.format(room="1 m").replace("seat]", f"{one}]")
        entry = entry.replace("forwards", way if one == part else "forwards")
        files["plan.toml"] += entry + f"comes_off = {off if one == part else FRONT_OFF}\n"
    check = workshop.write(files).only(ROOM)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)
    assert outcome == "conforms" or f"{part} is drawn out {way}, and" in check.says


def test_a_block_of_which_nothing_is_drawn_out(workshop: DesignFolder) -> None:
    files = {"block.toml": BLOCK, "plan.toml": PLAN}
    expect_not_applicable(workshop.write(files).only(ROOM), "no part of the block is drawn")


def test_the_direction_in_which_a_part_is_drawn_out_must_be_said(workshop: DesignFolder) -> None:
    entry = ENTRY.format(room="200 mm").replace('direction = "upwards"\n', "")
    expect_not_assessed(workshop.write(drawn(entry)).only(ROOM), "direction")


@pytest.mark.parametrize(
    ("stays", "off", "says"),
    [
        ('["wheels"]', "[]", "with wheels in place and nothing off"),
        (
            '["frames", "motion"]',
            '["motion", "running board"]',
            "and motion in place and motion and running board off",
        ),
        ('["wheels"]', '["motion"]', "with wheels in place and motion off"),
    ],
)
def test_a_part_that_comes_out_only_without_frames_is_a_hold(
    workshop: DesignFolder, stays: str, off: str, says: str
) -> None:
    """Frames that are not in place, or what is in place and off at once; with the room for it, 121 mm."""
    entry = ENTRY.format(room="121 mm").replace('["frames"]', f"{stays}\ncomes_off = {off}")
    check = workshop.write(drawn(entry)).only(ROOM)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert says in check.says


@pytest.mark.parametrize(("off", "outcome"), [('["motion"]', "conforms"), ('["frames"]', "finding")])
def test_what_comes_off_does_not_stay(workshop: DesignFolder, off: str, outcome: str) -> None:
    entry = ENTRY.format(room="121 mm") + f"comes_off = {off}\n"
    assert workshop.write(drawn(entry)).only(ROOM).outcome == outcome


@pytest.mark.parametrize("part", ["spindle", "rod"])
@pytest.mark.parametrize(
    ("across", "beside", "outcome"),
    [
        ('across = "20 mm"\n', "83.7 mm", "conforms"),
        ('across = "20 mm"\n', "83.6 mm", "finding"),
        ("", "200 mm", "not assessed"),
    ],
)
def test_a_part_of_no_width_of_its_own_swings_with_that_of_the_plan(
    workshop: DesignFolder, part: str, across: str, beside: str, outcome: str
) -> None:
    """150 × 20 mm by 30°: 150 sin 30° + 10 cos 30° = 83.66 mm beside the axis."""
    files = drawn("", **IN_LINER, **ON_SEAT)
    for one in ("seat", "piston", "rod", "valve", "spindle"):
        files["plan.toml"] += FORWARDS.format(room="1 m").replace("seat]", f"{one}]")
        files["plan.toml"] += SWINGS.format(beside=beside) + across if one == part else ""
    assert workshop.write(files).only(ROOM).outcome == outcome


@pytest.mark.parametrize(
    ("torque", "outcome"), [('torque = "580 N·m"\n', "conforms"), ("", "not applicable")]
)
def test_a_nut_with_a_torque_is_turned_by_whatever_method(
    workshop: DesignFolder, torque: str, outcome: str
) -> None:
    """580/400 = 1.45 m of bar; a stretched stud that states no torque wants none."""
    made = turned("580 N·m", '[spanners.studs]\nby = "hand"\nbar = "1.5 m"\n')
    made["studs.toml"] = made["studs.toml"].replace(
        'torque = "580 N·m"\n', f'method = "hydraulic tensioner"\n{torque}'
    )
    assert workshop.write(made).only(TOOL).outcome == outcome
