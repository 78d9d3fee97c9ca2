"""liner.end-room, liner.collar-clamp and liner.steam-behind."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, found, on_sheet
from speclint_liners.formulae.seating import collar_bending, collar_seat_area, collar_shear, room_left
from tests.plugins.liners.bench import bench, in_liner

ROOM, CLAMP, BEHIND = "liner.end-room", "liner.collar-clamp", "liner.steam-behind"


def test_first_steam_takes_most_of_the_room(workshop: DesignFolder) -> None:
    """2 + 902 × 30 K × 11.5e-6 − 900 × 100 K × 11.46667e-6 = 2 + 0.31119 − 1.03200 = 1.27919 mm.

    Block at 50 °C: 11.8 − 0.3; liner at 120 °C: 10.5 + 1.2 × 100/180 + 0.3.
    """
    check = workshop.write(bench()).only(ROOM)
    assert found(check) == pytest.approx(1.27919e-3, rel=1e-5)
    assert check.case == "warming"


@pytest.mark.parametrize(("length", "outcome"), [("901.27", "conforms"), ("901.285", "finding")])
def test_room_lasts_until_the_liner_meets_the_shoulder(
    workshop: DesignFolder, length: str, outcome: str
) -> None:
    # 902.31119 = L × 1.001146667: L = 901.2777 mm
    check = workshop.write(bench(in_liner('length = "900 mm"', f'length = "{length} mm"'))).only(ROOM)
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_liner_that_grows_against_the_cover_is_a_hold(workshop: DesignFolder) -> None:
    cover = in_liner('free_end_stop = "shoulder"', 'free_end_stop = "cover"')
    check = workshop.write(bench(in_liner('length = "900 mm"', 'length = "902 mm"'), cover)).only(ROOM)
    assert check.grade is Grade.HOLD


@pytest.mark.parametrize(("length", "outcome"), [("901.2", "conforms"), ("901.4", "finding")])
def test_a_free_end_said_to_meet_nothing_has_room_to_the_end_of_its_bore(
    workshop: DesignFolder, length: str, outcome: str
) -> None:
    """901.2777 mm as for a shoulder; what it would meet is not known: as a cover."""
    nothing = in_liner('free_end_stop = "shoulder"', 'free_end_stop = "none"')
    long = in_liner('length = "900 mm"', f'length = "{length} mm"')
    check = workshop.write(bench(nothing, long)).only(ROOM)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_what_stands_beyond_must_be_stated(workshop: DesignFolder) -> None:
    assert (
        workshop.write(bench(in_liner('free_end_stop = "shoulder"', ""))).only(ROOM).outcome == "not assessed"
    )


@pytest.mark.parametrize(
    ("thickness", "outcome"),
    [("25.05", "conforms"), ("25.049", "finding"), ("25.15", "conforms"), ("25.151", "finding")],
)
def test_the_nip_has_two_limits(workshop: DesignFolder, thickness: str, outcome: str) -> None:
    check = workshop.write(bench(in_liner('"25.1 mm"', f'"{thickness} mm"'))).only(CLAMP)
    assert check.outcome == outcome


def test_a_collar_presses_with_half_of_the_strength_of_its_iron_at_most(workshop: DesignFolder) -> None:
    check = workshop.write(bench()).only(CLAMP)
    assert on_sheet(check, "S_c") == pytest.approx(on_sheet(check, "R_c") / 2)


@pytest.mark.parametrize(
    ("fillet", "outcome"), [("2", "conforms"), ("1.98", "finding"), ("4", "conforms"), ("4.1", "finding")]
)
def test_the_fillet_is_large_enough_and_clears_its_chamfer(
    workshop: DesignFolder, fillet: str, outcome: str
) -> None:
    check = workshop.write(bench(in_liner('fillet = "3 mm"', f'fillet = "{fillet} mm"'))).only(CLAMP)
    assert check.outcome == outcome


@pytest.mark.parametrize(("force", "outcome"), [("861 kN", "conforms"), ("862 kN", "finding")])
def test_shear_of_the_collar_is_limited(workshop: DesignFolder, force: str, outcome: str) -> None:
    # π × 560.3 × 25.1 = 44181.8 mm², at 195/10 = 19.5 MPa 861.5 kN
    assert workshop.write(bench(in_liner('"200 kN"', f'"{force}"'))).only(CLAMP).outcome == outcome


@pytest.mark.parametrize(("force", "outcome"), [("436 kN", "conforms"), ("438 kN", "finding")])
def test_bending_of_the_collar_is_limited(workshop: DesignFolder, force: str, outcome: str) -> None:
    # seat from 568 to 599 mm, middle 583.5; pressed on 600: arm 8.25 mm; 6 F 8.25/(π × 560.3 × 25.1²) = 19.5 MPa
    # at F = 19.5 × 1108963/49.5 = 436.9 kN
    pressed = in_liner('clamp_diameter = "590 mm"', 'clamp_diameter = "600 mm"')
    assert workshop.write(bench(pressed, in_liner('"200 kN"', f'"{force}"'))).only(CLAMP).outcome == outcome


@pytest.mark.parametrize(
    ("collar", "outcome"), [("578.1", "conforms"), ("577.9", "finding"), ("566", "finding")]
)
def test_a_collar_needs_a_seat(workshop: DesignFolder, collar: str, outcome: str) -> None:
    # 560 mm, 4 mm of chamfer and 5 mm of seat: 560 + 2 × 9 = 578 mm; at 566 mm the collar passes through
    light = in_liner('"200 kN"', '"100 kN"'), in_liner('"590 mm"', '"575 mm"')
    check = workshop.write(bench(*light, in_liner('"599 mm"', f'"{collar} mm"'))).only(CLAMP)
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_the_clamp_needs_its_force(workshop: DesignFolder) -> None:
    assert workshop.write(bench(in_liner('clamp_force = "200 kN"', ""))).only(CLAMP).outcome == "not assessed"


@pytest.mark.parametrize(("ends", "outcome"), [("25", "conforms"), ("24.9", "finding")])
def test_a_sealing_land_is_long_enough(workshop: DesignFolder, ends: str, outcome: str) -> None:
    check = workshop.write(bench(in_liner('ends = "35 mm"', f'ends = "{ends} mm"'))).only(BEHIND)
    assert check.outcome == outcome


@pytest.mark.parametrize(
    ("key", "says"),
    [
        ("tell_tale", "no tell-tale hole shows steam behind the liner"),
        ("drain_behind", "water behind the liner cannot drain"),
    ],
)
def test_steam_behind_the_liner_shows_and_drains(workshop: DesignFolder, key: str, says: str) -> None:
    check = workshop.write(bench(in_liner(f"{key} = true", f"{key} = false"))).only(BEHIND)
    assert (check.outcome, check.grade, check.says) == ("finding", Grade.NONCONFORMITY, says)
    assert workshop.write(bench(in_liner(f"{key} = true", ""))).only(BEHIND).outcome == "not assessed"


def test_what_is_as_it_should_be_is_told_as_it_is(workshop: DesignFolder) -> None:
    check = workshop.write(bench()).only(BEHIND)
    assert check.outcome == "conforms"
    assert check.judgement is not None
    told = {one.says for one in check.judgement.every}
    assert {
        "tell-tale hole",
        "drained",
        "each end has a sealing land",
        "lands on both sides of port front",
    } <= told


def test_each_end_has_a_land(workshop: DesignFolder) -> None:
    back = '[lands.back]\nstarts = "120 mm"\nends = "890 mm"\n'
    front = '[lands.front]\nstarts = "5 mm"\nends = "35 mm"\n'
    assert workshop.write(bench(in_liner(back, ""))).only(BEHIND).outcome == "finding"
    assert (
        workshop.write(bench(in_liner(back, ""), in_liner(front, ""))).only(BEHIND).outcome == "not assessed"
    )


@pytest.mark.parametrize(
    ("starts", "ends", "outcome", "says"),
    [
        # the port is open from 40 to 80 mm
        ("5 mm", "890 mm", "conforms", ""),
        ("120 mm", "890 mm", "finding", "before port front"),
        ("5 mm", "35 mm", "finding", "beyond port front"),
    ],
)
def test_a_land_lies_on_both_sides_of_a_port(
    workshop: DesignFolder, starts: str, ends: str, outcome: str, says: str
) -> None:
    """Two lands at one end let the steam of the port go behind the liner to the other."""
    lands = (
        in_liner('starts = "5 mm"\nends = "35 mm"', f'starts = "{starts}"\nends = "{ends}"'),
        in_liner('starts = "120 mm"\nends = "890 mm"', f'starts = "{starts}"\nends = "{ends}"'),
    )
    check = workshop.write(bench(*lands)).only(BEHIND)
    assert check.outcome == outcome
    assert says in check.says


@pytest.mark.parametrize(
    ("first", "last", "says"),
    [
        (("44.5", "67"), ("63", "85.5"), ""),
        (("45", "67"), ("63", "85.5"), "no sealing land lies before port front"),
        (("44.5", "67"), ("63", "85"), "no sealing land lies beyond port front"),
    ],
)
def test_a_land_begins_before_the_port_or_ends_beyond_it(
    workshop: DesignFolder, first: tuple[str, str], last: tuple[str, str], says: str
) -> None:
    """A port at 65 mm is open from 45 to 85 mm: a land that begins or ends with it seals nothing there."""
    changes = (
        in_liner('from_collar = "60 mm"', 'from_collar = "65 mm"'),
        in_liner('starts = "5 mm"\nends = "35 mm"', f'starts = "{first[0]} mm"\nends = "{first[1]} mm"'),
        in_liner('starts = "120 mm"\nends = "890 mm"', f'starts = "{last[0]} mm"\nends = "{last[1]} mm"'),
    )
    check = workshop.write(bench(*changes)).only(BEHIND)
    assert check.outcome == ("finding" if says else "conforms")
    assert says in check.says


def test_one_land_is_not_enough_though_it_lies_on_both_sides_of_the_port(workshop: DesignFolder) -> None:
    front, back = '[lands.front]\nstarts = "5 mm"\nends = "35 mm"\n', 'starts = "120 mm"\nends = "890 mm"'
    one = in_liner(front, ""), in_liner(back, 'starts = "5 mm"\nends = "890 mm"')
    check = workshop.write(bench(*one)).only(BEHIND)
    assert (check.outcome, check.says) == ("finding", "one sealing land is stated: each end needs one")


@given(kelvins=st.floats(0, 300), length=st.floats(0.2, 1.5))
def test_parts_that_grow_alike_keep_their_room(kelvins: float, length: float) -> None:
    at = 293.15 + kelvins
    assert room_left(1e-3, length, 12e-6, at, length, 12e-6, at, 293.15) == pytest.approx(1e-3)


@given(force=st.floats(1e3, 1e6), thickness=st.floats(0.01, 0.05))
def test_a_thicker_collar_is_stressed_less(force: float, thickness: float) -> None:
    assert collar_shear(force, 0.56, 2 * thickness) == pytest.approx(collar_shear(force, 0.56, thickness) / 2)
    thin = collar_bending(force, 0.60, 0.58, 0.56, thickness)
    assert collar_bending(force, 0.60, 0.58, 0.56, 2 * thickness) == pytest.approx(thin / 4)
    assert collar_seat_area(0.60, 0.56, 0.004) < collar_seat_area(0.60, 0.56, 0.003)
