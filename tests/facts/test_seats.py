"""What seats, their bores and the valve on them say of each other."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import (
    chamber_beyond,
    chamber_by_valve,
    chamber_of_bore,
    contact_of,
    ends_of_valve,
    seat_with_face,
    steam_at_spindle,
    steam_inside_seal,
    supply_acts,
    supply_by_place,
    throat_of,
    valves_of_end,
)
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

BEAT = 'seat = "seat"\nseat_diameter = "150 mm"\ncontact_width = "3 mm"\nseat_angle = "60 °"\nthroat = "140 mm"\n'
SEAT = 'pressed_into = "block"\nin_bore = "upper"\n'
FACE = 'seat_diameter = "{}"\nseat_width = "{}"\nseat_angle = "60 °"\n'
VALVE = 'serves = "inlet"\nbeats = 2\n'
SPINDLE = 'moves = "valve"\npushed = "open"\nleaves = "delivery"\n'


def drawn(
    folder: Path,
    bore: str = "",
    valve: str = VALVE,
    beat: str = BEAT,
    seat: str = SEAT,
    spindle: str = SPINDLE,
) -> Bench:
    files = {
        "cylinder-block block": f"[seat_bores.upper]\n{bore}",
        "valve-seat seat": seat,
        "poppet-valve valve": f"{valve}[upper_beat]\n{beat}",
        "valve-spindle spindle": spindle,
    }
    return bench(folder, files, "valve")


@pytest.mark.parametrize(
    ("face", "contact"),
    [
        ("", (0.150, 0.153)),  # 150 + 2 × 3 cos 60°
        (FACE.format("151 mm", "3 mm"), (0.151, 0.153)),
        (FACE.format("149 mm", "3 mm"), (0.150, 0.152)),
        (FACE.format("153 mm", "3 mm"), (0.153, 0.153)),
        (FACE.format("151 mm", "3 mm").replace('seat_angle = "60 °"\n', ""), (0.150, 0.153)),
    ],
)
def test_the_contact_is_what_both_faces_have_in_common(
    tmp_path: Path, face: str, contact: tuple[float, float]
) -> None:
    on = drawn(tmp_path, seat=SEAT + face)
    assert contact_of(on["valve"].upper_beat, "u", on.sheet) == pytest.approx(contact)


@pytest.mark.parametrize("diameter", ["153.5 mm", "146 mm"])
def test_faces_that_do_not_meet_are_not_assessed(tmp_path: Path, diameter: str) -> None:
    on = drawn(tmp_path, seat=SEAT + FACE.format(diameter, "3 mm"))
    with pytest.raises(NotAssessed, match="the faces of beat and seat do not meet"):
        contact_of(on["valve"].upper_beat, "u", on.sheet)


def test_a_beat_that_names_no_seat_has_the_contact_that_it_states(tmp_path: Path) -> None:
    on = drawn(tmp_path, beat=BEAT.replace('seat = "seat"\n', ""))
    assert seat_with_face(on["valve"].upper_beat, on.sheet) is None
    assert contact_of(on["valve"].upper_beat, "u", on.sheet) == pytest.approx((0.150, 0.153))


@pytest.mark.parametrize(
    ("valve", "bore", "by_valve", "beyond"),
    [
        ('serves = "inlet"\n', 'serves = "exhaust"\n', "live steam", "live steam"),
        ('serves = "exhaust"\n', 'chamber = "live steam"\n', "exhaust steam", "exhaust steam"),
        ("", 'serves = "exhaust"\n', "exhaust steam", "exhaust steam"),
        ("", 'chamber = "live steam"\n', None, "live steam"),
    ],
)
def test_the_steam_beyond_a_seat_is_that_which_its_valve_serves(
    tmp_path: Path, valve: str, bore: str, by_valve: str | None, beyond: str
) -> None:
    on = drawn(tmp_path, bore, valve)
    found = chamber_by_valve(on["seat"], on.sheet)
    assert (None if found is None else found.value) == by_valve
    assert chamber_beyond(on["seat"], on.sheet) == beyond


@pytest.mark.parametrize(
    ("bore", "steam"),
    [
        ('serves = "inlet"\n', "live steam"),
        ('serves = "exhaust"\nchamber = "live steam"\n', "exhaust steam"),
        ('chamber = "live steam"\n', "live steam"),
        ("", None),
    ],
)
def test_the_steam_beyond_a_seat_bore(tmp_path: Path, bore: str, steam: str | None) -> None:
    on = drawn(tmp_path, bore)
    assert chamber_of_bore("upper", on["block"].seat_bores["upper"], on.sheet) == steam


@pytest.mark.parametrize(
    ("serves", "into", "acts"),
    [
        ("inlet", "chamber", "beyond the beats"),
        ("inlet", "cylinder", "between the beats"),
        ("exhaust", "chamber", "between the beats"),
        ("exhaust", "cylinder", "beyond the beats"),
        ("inlet", "", None),
        ("", "chamber", None),
    ],
)
def test_where_the_supply_acts_follows_from_what_a_valve_serves_and_lifts_into(
    tmp_path: Path, serves: str, into: str, acts: str | None
) -> None:
    stated = 'supply_acts = "beyond the beats"\n'
    valve = stated + (f'serves = "{serves}"\n' if serves else "")
    on = drawn(tmp_path, f'opens_into = "{into}"\n' if into else "", valve)
    found = supply_by_place(on["valve"], on.sheet)
    assert (None if found is None else found.value) == acts
    assert supply_acts(on["valve"], on.sheet) == (acts or "beyond the beats")


INTO = 'opens_into = "chamber"\n'
BETWEEN = 'supply_acts = "between the beats"\n'


@pytest.mark.parametrize(
    ("valve", "bore", "spindle", "steam"),
    [
        (VALVE, INTO, SPINDLE, "supply"),  # of two beats one steam is beyond both
        (VALVE, INTO, SPINDLE.replace('"open"', '"shut"'), "supply"),
        (VALVE, 'opens_into = "cylinder"\n', SPINDLE, "delivery"),
        (VALVE.replace("beats = 2", "beats = 1"), INTO, SPINDLE, "supply"),
        (VALVE.replace("beats = 2", "beats = 1"), INTO, SPINDLE.replace('"open"', '"shut"'), "delivery"),
        (VALVE + BETWEEN, "", SPINDLE, "delivery"),
        (VALVE + BETWEEN.replace("between", "beyond"), "", SPINDLE, "supply"),
        (VALVE, "", SPINDLE, None),
        (VALVE.replace("beats = 2\n", ""), INTO, SPINDLE, None),
        (VALVE, INTO, SPINDLE.replace('pushed = "open"\n', ""), None),
        (VALVE, INTO, SPINDLE.replace('moves = "valve"\n', ""), None),
    ],
)
def test_the_steam_inside_the_seal_of_a_spindle(
    tmp_path: Path, valve: str, bore: str, spindle: str, steam: str | None
) -> None:
    on = drawn(tmp_path, bore, valve, spindle=spindle)
    found = steam_at_spindle(on["spindle"], on.sheet)
    assert (None if found is None else found.value) == steam
    assert steam_inside_seal(on["spindle"], on.sheet) == (steam or "delivery")


@pytest.mark.parametrize(
    ("seat", "bore", "throat"),
    [
        (SEAT, "", 0.140),
        (SEAT + 'bore = "135 mm"\n', 'passage = "138 mm"\n', 0.135),
        (SEAT + 'bore = "139 mm"\n', 'passage = "138 mm"\n', 0.138),
        (SEAT + 'bore = "145 mm"\n', 'passage = "150 mm"\n', 0.140),
        ('bore = "135 mm"\n', 'passage = "130 mm"\n', 0.135),  # of a seat without a place
    ],
)
def test_a_throat_is_no_wider_than_seat_and_passage(
    tmp_path: Path, seat: str, bore: str, throat: float
) -> None:
    on = drawn(tmp_path, bore, seat=seat)
    assert throat_of(on["valve"], on["valve"].upper_beat, "u", on.sheet) == pytest.approx(throat)


def test_a_beat_that_names_no_seat_has_its_own_throat(tmp_path: Path) -> None:
    on = drawn(tmp_path, beat=BEAT.replace('seat = "seat"\n', ""))
    assert throat_of(on["valve"], on["valve"].upper_beat, "u", on.sheet) == pytest.approx(0.140)


def test_valves_are_at_the_end_of_their_upper_seats(tmp_path: Path) -> None:
    files = {
        "cylinder-block block": '[ends.front]\n[ends.back]\n[seat_bores.f]\nend = "front"\n'
        '[seat_bores.b]\nend = "back"\n[seat_bores.n]\n',
        "valve-seat f1": 'pressed_into = "block"\nin_bore = "f"\n',
        "valve-seat b1": 'pressed_into = "block"\nin_bore = "b"\n',
        "valve-seat n1": 'pressed_into = "block"\nin_bore = "n"\n',
        "poppet-valve front": 'upper_beat.seat = "f1"\nlower_beat.seat = "b1"\n',
        "poppet-valve back": 'upper_beat.seat = "b1"\n',
        "poppet-valve nowhere": 'upper_beat.seat = "n1"\n',
    }
    on = bench(tmp_path, files, "block")
    assert [one.id for one in valves_of_end(on["block"], "front", on.sheet)] == ["front"]
    assert [one.id for one in valves_of_end(on["block"], "back", on.sheet)] == ["back"]
    assert [one.value for one in ends_of_valve(on["front"], on.sheet)] == ["front", "back"]
    assert ends_of_valve(on["nowhere"], on.sheet) == ()


@pytest.mark.parametrize(
    ("through", "rim", "wall", "throat"),
    [
        ("upper", "151.2 mm", "6 mm", 0.1392),
        ("upper", "152.8 mm", "6 mm", 0.140),
        ("lower", "140 mm", "6 mm", 0.140),
        ("neither", "140 mm", "6 mm", 0.140),
        ("upper", "", "6 mm", 0.140),
        ("upper", "140 mm", "", 0.140),
        ("", "140 mm", "6 mm", 0.140),
    ],
)
def test_a_throat_is_no_wider_than_the_rim_of_its_valve_leaves(
    tmp_path: Path, through: str, rim: str, wall: str, throat: float
) -> None:
    """151.2 mm less two walls of 6 are 139.2 mm, and 152.8 less them 140.8; the valve states a throat of 140."""
    own = {"through_valve": through, "wall": wall}
    valve = VALVE + "".join(f'{key} = "{value}"\n' for key, value in own.items() if value)
    beat = BEAT.replace('seat = "seat"\n', "") + (f'rim_diameter = "{rim}"\n' if rim else "")
    on = drawn(tmp_path, valve=valve, beat=beat)
    assert throat_of(on["valve"], on["valve"].upper_beat, "u", on.sheet) == pytest.approx(throat)
