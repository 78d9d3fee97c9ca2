"""The rules of a valve on its seats and of the room round it."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.facts import lift_with_overtravel, strain_since
from speclint.testing import DesignFolder, found, on_sheet
from speclint_valves.formulae.landing import beat_gap, clearance_hot, seating_load, size_of_gap
from tests.plugins.valves.gear import CAGE, duty, gear_files, train_files

STRESS, WIDTH, GROWTH = "valve.seat-stress", "valve.seat-width", "valve.beat-growth"
FOUL, STOP, FALL, MATERIAL = (
    "valve.foul-clearance",
    "valve.lift-stop",
    "valve.cannot-fall-in",
    "valve.material",
)


@pytest.mark.parametrize(("load", "outcome"), [("20552 N", "conforms"), ("20555 N", "finding")])
def test_seat_stress_limit_from_both_sides(workshop: DesignFolder, load: str, outcome: str) -> None:
    """Lower beat π (140 + 3) 3 = 1347.743 mm², 20 MPa: 26954.9 N; steam holds with 1.57 × 3719.65 = 5839.8 N.

    The steam on the end of the spindle adds 1.6 × π 20²/4 = 502.7 N, the weight 58.8 N: 26954.9 − 5839.8 − 502.7 −
    58.8 = 20553.6 N of spring, new.
    """
    check = workshop.write(gear_files(spring=(("1100 N", load),))).only(STRESS)
    assert (check.outcome, check.case) == (outcome, "starting")


@pytest.mark.parametrize(("pushed", "outcome"), [("shut", "finding"), ("open", "conforms")])
def test_steam_on_the_spindle_loads_the_seat_only_where_it_shuts(
    workshop: DesignFolder, pushed: str, outcome: str
) -> None:
    """With 21000 N of spring: 26898.6 + 502.7 N or − 502.7 N on the lower beat, which bears 26954.9 N."""
    files = gear_files(
        spring=(("1100 N", "21000 N"),), spindle=(('pushed = "shut"', f'pushed = "{pushed}"'),)
    )
    assert workshop.write(files).only(STRESS).outcome == outcome


def test_seat_stress_is_not_assessed_without_spring(workshop: DesignFolder) -> None:
    files = gear_files()
    del files["spring.toml"]
    assert workshop.write(files).only(STRESS).outcome == "not assessed"


@pytest.mark.parametrize(
    ("width", "outcome"),
    [("1.49 mm", "finding"), ("1.51 mm", "conforms"), ("4.99 mm", "conforms"), ("5.01 mm", "finding")],
)
def test_seat_width_from_both_sides(workshop: DesignFolder, width: str, outcome: str) -> None:
    files = gear_files()
    files["valve.toml"] = files["valve.toml"].replace('contact_width = "3 mm"', f'contact_width = "{width}"')
    check = workshop.write(files).only(WIDTH)
    assert check.outcome == outcome
    for beat in ("w_u", "w_l"):
        assert on_sheet(check, beat) * 1e3 == pytest.approx(float(width[:4]))


def test_seat_width_is_not_assessed_without_it(workshop: DesignFolder) -> None:
    files = gear_files()
    files["valve.toml"] = files["valve.toml"].replace('contact_width = "3 mm"', "")
    assert workshop.write(files).only(WIDTH).outcome == "not assessed"


@pytest.mark.parametrize(("at", "outcome"), [("42.8 °C", "conforms"), ("43 °C", "finding")])
def test_beat_growth_from_both_sides(workshop: DesignFolder, at: str, outcome: str) -> None:
    """Flat seats, block at 20 °C: 110 mm × 11.914e-6 × 22.8 = 0.02988 and 110 × 11.915e-6 × 23 = 0.03015 mm."""
    check = workshop.write(gear_files(duty_text=duty(running=f"20 °C; {at}"))).only(GROWTH)
    assert check.outcome == outcome


def test_lapping_hot_takes_the_gap_away(workshop: DesignFolder) -> None:
    """400 mm, all at 160 °C: the two steels may differ by 0.6e-6: 400 × 140 × 0.6e-6 = 0.0336 mm."""
    long = (('beat_distance = "110 mm"', 'beat_distance = "400 mm"'),)
    hot = duty(running="160 °C")
    check = workshop.write(gear_files(long, duty_text=hot)).only(GROWTH)
    assert check.outcome == "finding"
    assert found(check) == pytest.approx(0.0336e-3, rel=1e-3)
    lapped = (*long, ("beats = 2", 'beats = 2\nlapped_at = "160 °C"'))
    files = gear_files(lapped, duty_text=duty("160 °C"))
    assert found(workshop.write(files).only(GROWTH)) == pytest.approx(0.0, abs=1e-12)


def test_a_single_beat_has_no_other_to_leave(workshop: DesignFolder) -> None:
    check = workshop.write(gear_files((("beats = 2", "beats = 1"),))).only(GROWTH)
    assert check.outcome == "not applicable"


def test_beat_growth_is_not_assessed_without_the_distance(workshop: DesignFolder) -> None:
    check = workshop.write(gear_files((('beat_distance = "110 mm"', ""),))).only(GROWTH)
    assert check.outcome == "not assessed"


@pytest.mark.parametrize(("room", "outcome"), [("2.501 mm", "conforms"), ("2.499 mm", "finding")])
def test_foul_clearance_from_both_sides(workshop: DesignFolder, room: str, outcome: str) -> None:
    """All at 20 °C: 0.5 mm of overtravel and the 2 mm asked for."""
    check = workshop.write(gear_files((('"5 mm"', f'"{room}"'),))).only(FOUL)
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_hot_valve_needs_more_room(workshop: DesignFolder) -> None:
    """120 mm × 12.5e-6 × 140 = 0.21 mm: 2.60 is too little, 2.72 is not."""
    hot = duty(running="20 °C; 160 °C")
    assert (
        workshop.write(gear_files((('"5 mm"', '"2.60 mm"'),), duty_text=hot)).only(FOUL).outcome == "finding"
    )
    assert (
        workshop.write(gear_files((('"5 mm"', '"2.72 mm"'),), duty_text=hot)).only(FOUL).outcome == "conforms"
    )


@pytest.mark.parametrize(("room", "outcome"), [("4.438 mm", "conforms"), ("4.437 mm", "finding")])
def test_meeting_the_piston_is_a_hold(workshop: DesignFolder, room: str, outcome: str) -> None:
    """0.5 mm of overtravel, 1 mm of wear and the 2 mm asked for; starting, both rods stretch.

    1.6 × 196 350 N on 194 GPa × 5026.5 mm² over 1000 mm: 0.3222 mm; × 5000 mm² over 1900 mm: 0.6154 mm.
    """
    check = workshop.write(gear_files((("beats = 2", f'beats = 2\nclearance_piston = "{room}"'),))).only(FOUL)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("room", "outcome"), [("6.21 mm", "conforms"), ("6.19 mm", "finding")])
def test_a_hot_rod_brings_the_piston_nearer(workshop: DesignFolder, room: str, outcome: str) -> None:
    """Starting at 160 °C: 1000 × 12.5e-6 × 140 = 1.75 mm; E 187.21 GPa, 0.3339 mm; with 0.6154: 6.199 mm."""
    hot = duty(starting="20 °C; 160 °C")
    for kind in ("poppet-valve", "valve-seat"):
        start = hot.index("[cases.starting.temperatures]")
        hot = hot[:start] + hot[start:].replace(f'{kind} = "160 °C"', f'{kind} = "20 °C"', 1)
    piston = (("beats = 2", f'beats = 2\nclearance_piston = "{room}"'),)
    check = workshop.write(gear_files(piston, duty_text=hot)).only(FOUL)
    assert check.outcome == outcome
    if outcome == "finding":
        assert (check.grade, check.case) == (Grade.HOLD, "starting")


@pytest.mark.parametrize(("room", "outcome"), [("7.79 mm", "conforms"), ("7.78 mm", "finding")])
def test_a_hot_connecting_rod_brings_the_piston_nearer(
    workshop: DesignFolder, room: str, outcome: str
) -> None:
    """At 160 °C 1900 × 12.5e-6 × 140 = 3.325 mm; E 187.21 GPa, 0.6377 mm; 3.5 + 0.3222 + 3.325 + 0.6377 = 7.785 mm."""
    hot = duty().replace('connecting-rod = "20 °C"', 'connecting-rod = "160 °C"')
    piston = (("beats = 2", f'beats = 2\nclearance_piston = "{room}"'),)
    check = workshop.write(gear_files(piston, duty_text=hot)).only(FOUL)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_a_piston_whose_rod_is_unknown_is_not_assessed(workshop: DesignFolder) -> None:
    files = gear_files((("beats = 2", 'beats = 2\nclearance_piston = "20 mm"'),))
    for line in ('rod_length = "1000 mm"\n', 'connecting_rod_area = "5000 mm²"\n'):
        less = {**files, "block.toml": files["block.toml"].replace(line, "")}
        assert workshop.write(less).only(FOUL).outcome == "not assessed"


@pytest.mark.parametrize("line", ['height = "120 mm"', 'overtravel = "0.5 mm"', 'clearance_open = "5 mm"'])
def test_foul_clearance_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(gear_files(((line, ""),))).only(FOUL)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(
    ("valve", "outcome"), [("140..160 °C", "finding"), ("cylinder-block + 0..5 K", "conforms")]
)
def test_temperatures_that_move_together_are_not_set_at_opposite_ends(
    workshop: DesignFolder, valve: str, outcome: str
) -> None:
    """Running, the block 140..160 °C, 110 mm between flat seats.

    Apart: 12.5e-6 × 140 − 11.8e-6 × 120 = 3.34e-4, 0.0367 mm; tied, 5 K more: 12.525e-6 × 145 − 11.9e-6 × 140
    = 1.501e-4, 0.0165 mm of the 0.03.
    """
    hot = duty(running="140..160 °C").replace('poppet-valve = "140..160 °C"', f'poppet-valve = "{valve}"')
    assert workshop.write(gear_files(duty_text=hot)).only(GROWTH).outcome == outcome


@pytest.mark.parametrize(("stop", "outcome"), [("20.5 mm", "conforms"), ("20.4 mm", "finding")])
def test_lift_stop_from_both_sides(workshop: DesignFolder, stop: str, outcome: str) -> None:
    """20 + 0.5 mm."""
    assert workshop.write(gear_files((('"21 mm"', f'"{stop}"'),))).only(STOP).outcome == outcome


@pytest.mark.parametrize(
    ("stop", "outcome"), [("24.9 mm", "conforms"), ("25.1 mm", "finding"), ("60 mm", "finding")]
)
def test_the_stop_comes_before_what_the_valve_strikes(
    workshop: DesignFolder, stop: str, outcome: str
) -> None:
    """20 mm of lift and 5 mm of room beyond it."""
    assert workshop.write(gear_files((('"21 mm"', f'"{stop}"'),))).only(STOP).outcome == outcome


@pytest.mark.parametrize(("stop", "outcome"), [("24.78 mm", "conforms"), ("24.80 mm", "finding")])
def test_a_hot_valve_strikes_sooner(workshop: DesignFolder, stop: str, outcome: str) -> None:
    """The valve at 160, the block at 20 °C: 120 mm × 12.5e-6 × 140 = 0.21 mm of the 25 mm."""
    files = gear_files((('"21 mm"', f'"{stop}"'),), duty_text=duty(running="20 °C; 160 °C"))
    assert workshop.write(files).only(STOP).outcome == outcome


@pytest.mark.parametrize(
    ("stiffness", "outcome"), [("356 N/mm", "conforms"), ("349 N/mm", "finding"), ("1 N/mm", "finding")]
)
def test_a_stop_gives_no_farther_than_there_is_room(
    workshop: DesignFolder, stiffness: str, outcome: str
) -> None:
    """At most 0.9694 m/s (π/2 × 0.02 × 37.699/1.22173), 4.5 + 1.5 kg; 4 mm from the stop to what the valve strikes.

    6 kg × (0.9694/0.004)² = 352.4 N/mm.
    """
    soft = ('lift_stop = "21 mm"', f'lift_stop = "21 mm"\nstop_stiffness = "{stiffness}"')
    check = workshop.write(train_files(valve=(soft,))).only(STOP, "valve")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_how_far_a_stop_gives_wants_the_gear(workshop: DesignFolder) -> None:
    """Where nothing says how fast the valve is thrown; a stop that comes too late is told all the same."""
    soft = ('"21 mm"', '"21 mm"\nstop_stiffness = "1 N/mm"')
    late = ('"21 mm"', '"25.1 mm"\nstop_stiffness = "1 N/mm"')
    assert workshop.write(gear_files((soft,))).only(STOP, "valve").outcome == "not assessed"
    assert workshop.write(gear_files((late,))).only(STOP, "valve").outcome == "finding"


def test_lift_stop_is_not_assessed_without_one(workshop: DesignFolder) -> None:
    assert workshop.write(gear_files((('lift_stop = "21 mm"', ""),))).only(STOP).outcome == "not assessed"


@pytest.mark.parametrize(("piece", "outcome"), [("20.1 mm", "conforms"), ("19.9 mm", "finding")])
def test_pieces_against_the_opening_from_both_sides(workshop: DesignFolder, piece: str, outcome: str) -> None:
    """Against 20 mm, by a spindle that is 21 mm at its weakest."""
    thick = (('seal_diameter = "20', 'seal_diameter = "21'), ('least_diameter = "16', 'least_diameter = "21'))
    pieces = (('"30 mm"', f'"{piece}"'), ('"25 mm"', '"20 mm"'))
    check = workshop.write(gear_files(pieces, thick)).only(FALL)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("opening", "outcome"), [("15.9 mm", "conforms"), ("16.1 mm", "finding")])
def test_a_broken_spindle_leaves_an_end_as_thin_as_its_weakest_section(
    workshop: DesignFolder, opening: str, outcome: str
) -> None:
    """16 mm at its weakest, whatever is stated of the smallest piece: 30 mm."""
    check = workshop.write(gear_files((('"25 mm"', f'"{opening}"'),))).only(FALL)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize(("piece", "outcome"), [("12.1 mm", "conforms"), ("11.9 mm", "finding")])
@pytest.mark.parametrize("catch", ["cage", "perforated plate", "collar larger than the port"])
def test_a_catch_is_held_against_the_smallest_piece(
    workshop: DesignFolder, catch: str, piece: str, outcome: str
) -> None:
    """An opening of 12 mm in the cage that is drawn, or in the valve's own collar; 25 mm lead into the cylinder."""
    caught = ('"none"', f'"{catch}"\ncage_opening = "12 mm"')
    files = gear_files((caught, ('"30 mm"', f'"{piece}"')))
    if not catch.startswith("collar"):
        files["cage.toml"] = CAGE
    check = workshop.write(files).only(FALL)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_a_cage_that_nothing_holds_is_not_assessed(workshop: DesignFolder) -> None:
    cage = CAGE.replace('held_by = "block"\n', "")
    check = workshop.write({**gear_files(), "cage.toml": cage}).only(FALL)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "held_by" in check.says


LID = 'kind = "chamber-cover"\nid = "lid"\n'


@pytest.mark.parametrize(
    ("holder", "outcome"),
    [
        (LID + 'over = "valve"\n', "conforms"),
        (LID + 'over = "other"\n', "finding"),
        ('kind = "retaining-ring"\nid = "lid"\n', "conforms"),
        ('kind = "valve-seat"\nid = "lid"\n', "finding"),
        ('kind = "bolted-joint"\nid = "lid"\n', "conforms"),
        ('kind = "casting"\nid = "lid"\n', "conforms"),
        ('kind = "weldment"\nid = "lid"\n', "conforms"),
        ('kind = "cylinder-cover"\nid = "lid"\n', "conforms"),
        ('kind = "cam-box"\nid = "lid"\n', "finding"),
        ('kind = "steam-pipe"\nid = "lid"\n', "finding"),
        ('kind = "valve-spindle"\nid = "lid"\n', "finding"),
    ],
)
def test_a_cage_is_held_by_a_part_of_its_chamber(workshop: DesignFolder, holder: str, outcome: str) -> None:
    """A cover over this valve, a ring, a seat, a joint or the block; nothing beside it."""
    files = gear_files() | {
        "cage.toml": CAGE.replace('held_by = "block"', 'held_by = "lid"'),
        "lid.toml": holder,
        "other.toml": 'kind = "poppet-valve"\nid = "other"\n',
    }
    check = workshop.write(files).only(FALL, "valve")
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)
    assert outcome == "conforms" or "the cage is held by lid" in check.says


@pytest.mark.parametrize(
    ("holder", "outcome"),
    [
        ('kind = "bolted-joint"\nid = "studs"\nholds = "own-lid"\n', "conforms"),
        ('kind = "bolted-joint"\nid = "studs"\nholds = "other-lid"\n', "finding"),
        ('kind = "bolted-joint"\nid = "studs"\nholds = "head"\n', "finding"),
        ('kind = "cylinder-cover"\nid = "studs"\n', "finding"),
        ('kind = "casting"\nid = "studs"\n', "conforms"),
    ],
)
def test_a_joint_holds_a_cage_by_the_cover_over_its_valve(
    workshop: DesignFolder, holder: str, outcome: str
) -> None:
    """The studs of another cover, and a cylinder cover where the chamber has a cover of its own, hold nothing here."""
    files = gear_files() | {
        "cage.toml": CAGE.replace('held_by = "block"', 'held_by = "studs"'),
        "studs.toml": holder,
        "own.toml": LID.replace('"lid"', '"own-lid"') + 'over = "valve"\n',
        "others.toml": LID.replace('"lid"', '"other-lid"') + 'over = "other"\n',
        "head.toml": 'kind = "cylinder-cover"\nid = "head"\n',
        "other.toml": 'kind = "poppet-valve"\nid = "other"\n',
    }
    check = workshop.write(files).only(FALL, "valve")
    assert (check.outcome, "the cage is held by studs" in check.says) == (outcome, outcome == "finding")


def test_a_seat_holds_the_cage_of_its_own_valve(workshop: DesignFolder) -> None:
    """The valve names "seat"; that of another is no part of its chamber."""
    cage = CAGE.replace('held_by = "block"', 'held_by = "seat"')
    other = 'kind = "valve-seat"\nid = "another"\n'
    files = gear_files() | {"cage.toml": cage, "another.toml": other}
    assert workshop.write(files).only(FALL, "valve").outcome == "conforms"
    files["cage.toml"] = cage.replace('"seat"', '"another"')
    check = workshop.write(files).only(FALL, "valve")
    assert check.outcome == "finding"
    assert "the cage is held by another, which is no seat of valve" in check.says


def test_a_cage_under_a_cover_that_is_over_no_valve_is_not_assessed(workshop: DesignFolder) -> None:
    files = gear_files() | {
        "cage.toml": CAGE.replace('held_by = "block"', 'held_by = "lid"'),
        "lid.toml": LID,
    }
    check = workshop.write(files).only(FALL, "valve")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
    assert "over is not stated" in check.says


@pytest.mark.parametrize("catch", ["cage", "perforated plate"])
def test_a_cage_that_is_only_a_word_catches_nothing(workshop: DesignFolder, catch: str) -> None:
    """A piece of 20 mm passes the 25 mm that lead into the cylinder, whatever opening the word is given."""
    caught = ('"none"', f'"{catch}"\ncage_opening = "12 mm"')
    check = workshop.write(gear_files((caught, ('"30 mm"', '"20 mm"')))).only(FALL)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def test_a_catch_without_its_opening_or_without_a_piece_is_not_assessed(workshop: DesignFolder) -> None:
    no_piece = gear_files((('smallest_piece = "30 mm"', ""),))
    for files in (
        gear_files((('"none"', '"collar larger than the port"'),)),
        {**gear_files(), "cage.toml": CAGE.replace('opening = "12 mm"', "")},
        {**no_piece, "cage.toml": CAGE},
    ):
        check = workshop.write(files).only(FALL)
        assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize("line", ['retained = "none"', 'smallest_piece = "30 mm"', 'passage_below = "25 mm"'])
def test_falling_in_not_assessed_is_a_hold(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(gear_files(((line, ""),))).only(FALL)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


@pytest.mark.parametrize(("at", "outcome"), [("349 °C", "conforms"), ("351 °C", "finding")])
def test_material_from_both_sides(workshop: DesignFolder, at: str, outcome: str) -> None:
    """The iron of the seat is good to 350 °C, the steel of the valve to 400."""
    check = workshop.write(gear_files(duty_text=duty(running=f"20 °C; {at}"))).only(MATERIAL)
    assert check.outcome == outcome


@pytest.mark.parametrize(("weak", "sound"), [("valve", "seat"), ("seat", "valve")])
@pytest.mark.parametrize(("at", "outcome"), [("349 °C", "conforms"), ("351 °C", "finding")])
def test_valve_and_seat_are_each_judged_by_their_own_metal(
    workshop: DesignFolder, weak: str, sound: str, at: str, outcome: str
) -> None:
    """Either of iron, good to 350 °C, the other of the steel that is good to 400."""
    files = gear_files(duty_text=duty(running=f"20 °C; {at}"))
    for part, metal in ((weak, "known-iron"), (sound, "known-steel")):
        text = files[f"{part}.toml"]
        files[f"{part}.toml"] = text.replace("known-iron", metal).replace("known-steel", metal)
    check = workshop.write(files).only(MATERIAL)
    assert check.outcome == outcome
    for part in ("T_v", "T_u", "T_l"):
        assert on_sheet(check, part) - 273.15 == pytest.approx(float(at[:3]))
    assert outcome == "conforms" or check.actual == f"{weak} at 351 °C, its metal is for 350 °C"


def test_material_is_not_assessed_without_one(workshop: DesignFolder) -> None:
    files = gear_files()
    files["seat.toml"] = files["seat.toml"].replace('material = "known-iron"', "")
    assert workshop.write(files).only(MATERIAL).outcome == "not assessed"


@given(
    strain=st.floats(0.0, 0.005),
    apart=st.floats(0.0, 0.005),
    d=st.floats(0.1, 0.2),
    L=st.floats(0.02, 0.1),
    β=st.floats(0.2, 1.2),
)
def test_cones_with_one_apex_open_no_gap(strain: float, apart: float, d: float, L: float, β: float) -> None:
    """L = r_u tan β_u − r_l tan β_l: every point of the valve moves along its cone."""
    D = 2 * (L + d / 2 * math.tan(β)) / math.tan(β)
    gap = beat_gap(ε_v=strain + apart, ε_b=strain, L=L, d_u=D, β_u=β, d_l=d, β_l=β)
    assert gap == pytest.approx(0.0, abs=1e-12)
    assert size_of_gap(g_u=gap) >= 0


@given(T=st.floats(250.0, 700.0))
def test_nothing_has_grown_since_it_was_finished(T: float) -> None:
    assert strain_since(alpha=12e-6, T=T, alpha_0=12e-6, T_0=T, T_ref=293.15) == 0.0


@given(F_v=st.floats(-1e4, 1e4), h=st.floats(0.0, 0.05))
def test_only_steam_that_holds_loads_the_seat(F_v: float, h: float) -> None:
    assert seating_load(F_f=0.0, W=0.0, F_v=F_v) == max(-F_v, 0.0)
    assert clearance_hot(c_0=h, o=h, H=0.1, ε_v=1e-3, ε_b=1e-3, y=0.0) == pytest.approx(0.0)
    assert lift_with_overtravel(h=h, o=0.0) == h


def test_a_valve_that_can_meet_the_piston_says_how_near_it_comes(workshop: DesignFolder) -> None:
    check = workshop.write(gear_files((("meets_piston = false", "meets_piston = true"),))).only(FOUL)
    assert check.outcome == "not assessed"
    assert "the valve can meet the piston: clearance_piston" in check.says
    silent = workshop.write(gear_files((("meets_piston = false\n", ""),))).only(FOUL)
    assert silent.outcome == "not assessed"
    assert "meets_piston is not stated" in silent.says
