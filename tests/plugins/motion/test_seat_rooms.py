"""pin.seat-has-room: the seat of a crank pin within its boss, and before the frame."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from speclint_motion.formulae.pin_seats import end_of_seat, longest_seat, room_inside, room_outside
from tests.plugins.motion.test_pin_seats import IN_WHEEL
from tests.plugins.motion.train import files

ROOM = "pin.seat-has-room"


def _engine(axis: str = "880 mm", frame: str = "470 mm", bore: str = "main") -> str:
    lines = ['kind = "engine"', 'id = "engine"', "[cranks.only]", 'block = "block"', f'bore = "{bore}"']
    lines += [f'axis_from_centre = "{axis}"'] if axis else []
    lines += [f'frame_from_centre = "{frame}"'] if frame else []
    return "\n".join(lines) + "\n"


#: What turns the pin, with the boss that holds it.
TURNED = """kind = "driving-axle"
id = "axle"
FRAME
turning.pin = { of = "crank-pin", boss = "400 mm", boss_width = "600 mm", boss_material = "known-forging" }
"""


def _with_seat(
    length: str, engine: str = "", overhang: str = "120 mm", at_axle: str = "470 mm"
) -> dict[str, str]:
    made = files(
        "crank-pin",
        ('overhang = "120 mm"', f'overhang = "{overhang}"'),
        add=IN_WHEEL.replace('length = "200 mm"', f'length = "{length}"'),
    )
    made["axle.toml"] = TURNED.replace("FRAME", f'frame_from_centre = "{at_axle}"' if at_axle else "")
    return {**made, "engine.toml": engine} if engine else made


@pytest.mark.parametrize(("length", "outcome"), [("350.4 mm", "conforms"), ("350.5 mm", "finding")])
def test_a_seat_much_longer_than_thick_is_asked_about(
    workshop: DesignFolder, length: str, outcome: str
) -> None:
    """1.75 × 200.25 mm = 350.4375 mm; no engine is drawn."""
    check = workshop.write(_with_seat(length)).only(ROOM, "crank-pin")
    assert check.outcome == outcome
    if outcome == "finding":
        assert check.grade is Grade.QUERY
        assert check.actual == "seat of 350.5 mm, up to 350.438 mm is usual for its diameter"


@pytest.mark.parametrize(("length", "outcome"), [("290 mm", "conforms"), ("290.1 mm", "finding")])
def test_a_seat_ends_before_the_frame(workshop: DesignFolder, length: str, outcome: str) -> None:
    """Rods at 880 mm, the frame at 470: 410 mm, of which the overhang takes 120."""
    check = workshop.write(_with_seat(length, _engine())).only(ROOM, "crank-pin")
    assert check.outcome == outcome
    assert on_sheet(check, "y_r") == pytest.approx(0.410)
    if outcome == "finding":
        assert check.grade is Grade.NONCONFORMITY
        assert check.actual == "seat ends 410.1 mm behind the rods, the frame begins at 410 mm"


@pytest.mark.parametrize(("length", "outcome"), [("230 mm", "conforms"), ("230.1 mm", "finding")])
def test_between_the_frames_the_farther_one_counts(workshop: DesignFolder, length: str, outcome: str) -> None:
    """Rods at 50 mm, frames at 300: the web may be on either side, so that 350 mm are there, less 120."""
    made = _with_seat(length, _engine(axis="50 mm", frame="300 mm"), at_axle="")
    assert workshop.write(made).only(ROOM, "crank-pin").outcome == outcome


def test_rods_drawn_in_the_plane_of_the_frame_leave_its_other_side(workshop: DesignFolder) -> None:
    """300 + 300 mm: on which side of the frame they run is not known."""
    check = workshop.write(_with_seat("340 mm", _engine(axis="300 mm", frame="300 mm"), at_axle="")).only(
        ROOM, "crank-pin"
    )
    assert check.outcome == "conforms"
    assert on_sheet(check, "y_r") == pytest.approx(0.600)


def test_rods_before_which_the_bearing_has_no_room_are_as_far_out_as_half_of_it(
    workshop: DesignFolder,
) -> None:
    """An overhang of 12 mm on a bearing of 185 mm: 92.5 mm count, with a seat of 318 mm 410.5 of 410."""
    check = workshop.write(_with_seat("318 mm", _engine(), overhang="12 mm")).only(ROOM, "crank-pin")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)


@pytest.mark.parametrize(
    "engine",
    [_engine(bore="other"), _engine(axis=""), _engine(frame="")],
    ids=["crank of another bore", "rods not placed", "frame not placed"],
)
def test_a_crank_that_says_nothing_of_the_pin_is_passed_over(workshop: DesignFolder, engine: str) -> None:
    """300 mm are too long for the frame at 470 mm, and not for the diameter."""
    made = _with_seat("300 mm", engine, at_axle="")
    made["block.toml"] += "[bores.other]\n"
    assert workshop.write(made).only(ROOM, "crank-pin").outcome == "conforms"


@pytest.mark.parametrize(
    ("by", "outcome"),
    [("press fit", "finding"), ("end plate", "finding"), ("taper and nut", "not applicable")],
)
def test_the_length_that_grips_is_judged(workshop: DesignFolder, by: str, outcome: str) -> None:
    made = _with_seat("600 mm")
    made["crank-pin.toml"] = made["crank-pin.toml"].replace("press fit", by)
    assert workshop.write(made).only(ROOM, "crank-pin").outcome == outcome


def test_a_crosshead_pin_is_left_to_its_crosshead(workshop: DesignFolder) -> None:
    check = workshop.write(files("pin", add=IN_WHEEL)).only(ROOM, "pin")
    assert check.outcome == "not applicable"
    assert "pin.in-its-crosshead" in check.says


def test_a_length_that_is_not_stated_is_asked_for(workshop: DesignFolder) -> None:
    made = files("crank-pin", add=IN_WHEEL.replace('length = "200 mm"\n', ""))
    check = workshop.write({**made, "axle.toml": TURNED.replace("FRAME", "")}).only(ROOM, "crank-pin")
    assert check.outcome == "not assessed"
    assert "seat.length" in str(check.missing)


@pytest.mark.parametrize(
    ("old", "says"),
    [
        ('boss = "400 mm", ', "no driving axle states boss of pin"),
        ('boss_width = "600 mm", ', "no driving axle states boss_width of pin"),
        (', boss_material = "known-forging"', "no driving axle states boss_material of pin"),
        ('of = "crank-pin", ', "no driving axle names this pin among what turns with it"),
    ],
)
def test_a_boss_that_the_pin_alone_states_is_asked_about(workshop: DesignFolder, old: str, says: str) -> None:
    made = _with_seat("200 mm")
    assert workshop.write(made).only(ROOM, "crank-pin").outcome == "conforms"
    made["axle.toml"] = made["axle.toml"].replace(old, "")
    check = workshop.write(made).only(ROOM, "crank-pin")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert check.actual == f"{says}: the boss of its seat is the pin's own statement"


@pytest.mark.parametrize(
    ("at_axle", "outcome"), [("490 mm", "finding"), ("470 mm", "conforms"), ("450 mm", "conforms")]
)
def test_the_frame_counts_where_it_stands_behind_the_wheel(
    workshop: DesignFolder, at_axle: str, outcome: str
) -> None:
    """880 − 490 = 390 mm for 120 and 290; the frame at the cylinder, at 470 mm, leaves 410."""
    check = workshop.write(_with_seat("290 mm", _engine(), at_axle=at_axle)).only(ROOM, "crank-pin")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)
    alone = workshop.write(_with_seat("290 mm", _engine(frame=""), at_axle=at_axle)).only(ROOM, "crank-pin")
    assert alone.outcome == outcome


@pytest.mark.parametrize(("length", "outcome"), [("290 mm", "conforms"), ("290.1 mm", "finding")])
def test_by_the_frame_at_the_cylinder_alone_it_is_asked_about(
    workshop: DesignFolder, length: str, outcome: str
) -> None:
    check = workshop.write(_with_seat(length, _engine(), at_axle="")).only(ROOM, "crank-pin")
    assert (check.outcome, check.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)
    says = "seat ends 410.1 mm behind the rods, the frame begins at 410 mm unless it is set in or out there"
    assert outcome == "conforms" or check.actual == says


@given(y_f=st.floats(0.2, 1.0), gap=st.floats(0.01, 0.8), moved=st.floats(0.001, 0.1))
def test_a_frame_set_out_takes_from_the_room_outside_what_it_gives_inside(
    y_f: float, gap: float, moved: float
) -> None:
    """Rods as far outside of one frame as they would be from it inside: the other frame is twice its place farther."""
    y_a = y_f + gap
    assert room_outside(y_a, y_f) == pytest.approx(gap)
    assert room_inside(y_a, y_f) - room_outside(y_a, y_f) == pytest.approx(2 * y_f)
    lost = room_outside(y_a, y_f) - room_outside(y_a, y_f + moved)
    won = room_inside(y_a, y_f + moved) - room_inside(y_a, y_f)
    assert lost == pytest.approx(moved)
    assert won == pytest.approx(moved)


@given(a=st.floats(0.02, 0.4), room=st.floats(0.05, 0.8), more=st.floats(0.001, 0.2))
def test_a_seat_as_long_as_its_room_less_the_overhang_just_ends_there(
    a: float, room: float, more: float
) -> None:
    assert end_of_seat(a, room - a) == pytest.approx(room)
    assert end_of_seat(a, room - a + more) > room
    assert longest_seat(1.75, 2 * room) == pytest.approx(2 * longest_seat(1.75, room))
