"""Parts drawn out with the block in its frames, and the tools of its nuts, worked by hand."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder
from speclint_clearances.formulae.cranes import bar_wanted, room_to_draw_out

ROOM, TOOL = "room.withdrawn-in-frames", "room.spanner-each-joint"
BLOCK = 'kind = "cylinder-block"\nid = "block"\n'
SEAT = 'kind = "valve-seat"\nid = "seat"\npressed_into = "block"\nlength = "48 mm"\n'
ENTRY = '[withdrawals.seat]\ndirection = "upwards"\nin_place = ["frames"]\nengagement = "48 mm"\nroom = "{room}"\n'
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
