"""Limits of wear, wear until an overhaul, and parts at their limits, worked by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import SETTINGS, DesignFolder, changed, found, limit, without_key
from speclint_motion.formulae.wear import (
    gap_of_worn_ring,
    grown_by_wear,
    left_by_wear,
    play_with_pin,
    ratio_of_lever,
)
from tests.plugins.motion.train import CRANK_PIN, LINER, PIN, RING

STATED, LASTS, WORKS = "wear.limits-stated", "wear.lasts-to-overhaul", "wear.works-at-limit"
RINGS, PINS = "wear.rings", "wear.pins-and-bushes"
REVIEW = SETTINGS.replace('"draft"', '"for-review"')
BORE = changed(without_key(without_key(LINER, "housed_in"), "in_bore"), ("500.0 mm", "503 mm"), of="liner")
#: Parts on their own, without what they are linked to.
ALONE = {
    "ring": without_key(RING, "runs_in"),
    "pin": without_key(PIN, "moved_by"),
    "crank-pin": without_key(CRANK_PIN, "moved_by"),
}


def wear(limit: str, rate: str = "0.1 mm", basis: str = "works record", **more: str) -> str:
    """A table of wear that lasts until the heavy overhaul, 200 000 km."""
    text = f'[wear]\nlimit = "{limit}"\nrate = "{rate}"\nbasis = "{basis}"\nuntil = "heavy overhaul"\n'
    return text + "".join(f'{key} = "{value}"\n' for key, value in more.items())


SPINDLE = """
kind = "valve-spindle"
id = "spindle"
diameter = "22 mm"
guide_bore = "22.061 mm"
guide_length = "100 mm"
guide_from_seat = "60 mm"
"""
BAR = 'kind = "slide-bar"\nid = "bar"\n'
VALVE = """
kind = "poppet-valve"
id = "valve"
upper_beat.seat = "seat"
lower_beat.seat = "seat"
"""
SEAT = """
kind = "valve-seat"
id = "seat"
seat_angle = "45 °"
seat_width = "2.2 mm"
"""


@pytest.mark.parametrize("missing", ["limit", "rate", "basis", "until"])
def test_all_of_its_wear_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    """A ring without a word on wear passed before; in a draft it still may."""
    table = "\n".join(line for line in wear("14 mm").splitlines() if not line.startswith(missing))
    made = {"ring.toml": ALONE["ring"] + table}
    check = workshop.write(made, settings=REVIEW).only(STATED)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert missing in check.says
    assert workshop.write(made).only(STATED).outcome == "not applicable"


def test_what_states_it_conforms(workshop: DesignFolder) -> None:
    made = {"ring.toml": ALONE["ring"] + wear("14 mm")}
    assert workshop.write(made, settings=REVIEW).only(STATED).outcome == "conforms"


@pytest.mark.parametrize(
    ("text", "size", "outcome"),
    [
        (BORE, "1.5 mm", "conforms"),
        (BORE, "1.51 mm", "finding"),
        (SPINDLE, "0.2199 mm", "conforms"),
        (SPINDLE, "0.2201 mm", "finding"),
        (BAR, "3 mm", "conforms"),
        (BAR, "3.01 mm", "finding"),
        (BAR, "4 mm", "finding"),
    ],
)
def test_a_limit_beyond_practice_is_a_query(
    workshop: DesignFolder, text: str, size: str, outcome: str
) -> None:
    """A bore 1.5 mm out of true; a guide 0.010 × 22 mm; 3 mm between a slide bar and its slippers."""
    check = workshop.write({"part.toml": text + wear(size)}, settings=REVIEW).only(STATED)
    assert (check.outcome, check.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("rate", "outcome", "worn"), [("0.02 mm", "conforms", 0.101), ("0.09 mm", "finding", 0.241)]
)
def test_the_guide_of_the_page(workshop: DesignFolder, rate: str, outcome: str, worn: float) -> None:
    """0.061 + 2 × 0.02 = 0.101 mm, 0.061 + 2 × 0.09 = 0.241 mm, against 0.22."""
    check = workshop.write({"spindle.toml": SPINDLE + wear("0.22 mm", rate)}).only(LASTS)
    assert check.outcome == outcome
    assert found(check) * 1e3 == pytest.approx(worn, abs=1e-3)


@pytest.mark.parametrize(("rate", "outcome"), [("0.10 mm", "conforms"), ("0.25 mm", "finding")])
def test_the_crosshead_bush_of_the_page(workshop: DesignFolder, rate: str, outcome: str) -> None:
    """0.12 + 2 × 0.10 = 0.32 mm, 0.12 + 2 × 0.25 = 0.62 mm, against 0.5."""
    check = workshop.write({"pin.toml": ALONE["pin"] + wear("0.5 mm", rate, new="0.12 mm")}).only(LASTS)
    assert check.outcome == outcome


@pytest.mark.parametrize(("rate", "outcome"), [("0.1999 mm", "conforms"), ("0.2001 mm", "finding")])
def test_a_ring_grows_thinner(workshop: DesignFolder, rate: str, outcome: str) -> None:
    """16 − 2 × 0.2 = 15.6 mm."""
    assert workshop.write({"ring.toml": ALONE["ring"] + wear("15.6 mm", rate)}).only(LASTS).outcome == outcome


def test_a_rate_of_common_practice_leaves_a_query(workshop: DesignFolder) -> None:
    table = wear("15.6 mm", "0.3 mm", "common practice")
    check = workshop.write({"ring.toml": ALONE["ring"] + table}).only(LASTS)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize(("rate", "outcome"), [("0.398 mm", "conforms"), ("0.402 mm", "finding")])
def test_a_light_overhaul_comes_earlier(workshop: DesignFolder, rate: str, outcome: str) -> None:
    """After 100 000 km 16 − 1 × 0.4 = 15.6 mm."""
    table = wear("15.6 mm", rate).replace("heavy", "light")
    assert workshop.write({"ring.toml": ALONE["ring"] + table}).only(LASTS).outcome == outcome


@pytest.mark.parametrize(("c", "outcome"), [("1.414 mm", "conforms"), ("1.415 mm", "finding")])
def test_a_worn_guide_lands_its_valve_on_its_seat(workshop: DesignFolder, c: str, outcome: str) -> None:
    """c/2 × (1 + 120/100) = 2.2 cos 45° = 1.5556 mm: c = 1.41421 mm."""
    made = {"spindle.toml": 'moves = "valve"' + SPINDLE + wear(c), "valve.toml": VALVE, "seat.toml": SEAT}
    assert workshop.write(made).only(WORKS, "spindle").outcome == outcome


@pytest.mark.parametrize(("seat", "outcome"), [("0.0407 mm", "conforms"), ("0.0408 mm", "finding")])
def test_a_tappet_allows_for_worn_seats(workshop: DesignFolder, seat: str, outcome: str) -> None:
    """(0.0407 + 0.03)/cos 45° = 0.09998 mm against 0.1."""
    made = {
        "valve.toml": VALVE + wear("0.03 mm"),
        "seat.toml": SEAT + wear(seat),
        "spindle.toml": 'moves = "valve"' + SPINDLE,
        "tappet.toml": 'kind = "tappet"\nid = "tappet"\nworks = "spindle"\nseat_wear = "0.1 mm"\n',
    }
    assert workshop.write(made).only(WORKS, "valve").outcome == outcome


@pytest.mark.parametrize(
    ("size", "step", "outcome"),
    [("3 mm", "3 mm", "conforms"), ("3 mm", "2.9 mm", "finding"), ("3.1 mm", "4 mm", "finding")],
)
def test_a_liner_is_rebored_clean(workshop: DesignFolder, size: str, step: str, outcome: str) -> None:
    """500 mm, the last bore 503 mm."""
    text = BORE + f'reboring_step = "{step}"\n' + wear(size, new="0 mm")
    assert workshop.write({"liner.toml": text}).only(WORKS).outcome == outcome


@pytest.mark.parametrize(("free", "outcome"), [("138.75 mm", "conforms"), ("138.74 mm", "finding")])
def test_a_spring_may_lose_a_twentieth(workshop: DesignFolder, free: str, outcome: str) -> None:
    """40 N/mm × 1.25 mm is 5 % of 1000 N."""
    text = 'kind = "compression-spring"\nid = "spring"\nfree_length = "140 mm"\n'
    text += 'rate = "40 N/mm"\nshut_load = "1000 N"\n'
    assert workshop.write({"spring.toml": text + wear(free)}).only(WORKS).outcome == outcome


@pytest.mark.parametrize(("along", "outcome"), [("0.2 mm", "conforms"), ("0.19 mm", "finding")])
def test_a_worn_pin_counts_towards_the_covers(workshop: DesignFolder, along: str, outcome: str) -> None:
    """0.4 mm of clearance lets it move 0.2 mm either way."""
    made = {"pin.toml": ALONE["pin"] + wear("0.4 mm", along=along)}
    assert workshop.write(made).only(WORKS).outcome == outcome


def rings(bore: str, ring: str, side: str = "0.3 mm", gap: str = "2 mm") -> dict[str, str]:
    """A ring of 16 mm in a liner of 500 mm, each with its limit of wear."""
    worn = RING.replace('gap = "4 mm"', f'gap = "{gap}"')
    return {
        "liner.toml": BORE + wear(bore),
        "ring.toml": worn + wear(ring, side_limit=side),
    }


def test_the_ring_of_the_page(workshop: DesignFolder) -> None:
    """2 + 4.398 = 6.398 against 0.01 × 500 + 2 = 7 mm; 2 + 10.996 = 12.996 mm."""
    sound = workshop.write(rings("0.6 mm", "15.6 mm")).only(RINGS)
    assert sound.outcome == "conforms"
    assert found(sound) * 1e3 == pytest.approx(6.398, abs=1e-3)
    assert limit(sound) * 1e3 == pytest.approx(7.0)
    worn = workshop.write(rings("1.5 mm", "15 mm")).only(RINGS)
    assert (worn.outcome, worn.grade) == ("finding", Grade.NONCONFORMITY)
    assert found(worn) * 1e3 == pytest.approx(12.996, abs=1e-3)


@pytest.mark.parametrize(
    ("changed", "outcome"),
    [
        (rings("0.6 mm", "15.6 mm", gap="2.60 mm"), "conforms"),
        (rings("0.6 mm", "15.6 mm", gap="2.61 mm"), "finding"),
        (rings("0.6 mm", "15.6 mm", side="0.41 mm"), "finding"),
        (rings("0.1 mm", "13.5 mm", gap="0.2 mm"), "finding"),
    ],
)
def test_gap_side_and_thickness_each_have_a_limit(
    workshop: DesignFolder, changed: dict[str, str], outcome: str
) -> None:
    """7 − 4.398 = 2.602 mm; 0.4 mm beside it; 0.85 × 16 = 13.6 mm."""
    assert workshop.write(changed).only(RINGS).outcome == outcome


@pytest.mark.parametrize(("left", "outcome"), [("5.11 mm", "conforms"), ("5.09 mm", "finding")])
def test_a_thin_ring_keeps_most_of_its_thickness(workshop: DesignFolder, left: str, outcome: str) -> None:
    """0.85 × 6 = 5.1 mm; worn by 0.91 mm its gap is 0.2 + 0.1 π + 2 × 0.91 π = 6.23 of 7 mm."""
    made = rings("0.1 mm", left, gap="0.2 mm")
    made["ring.toml"] = changed(made["ring.toml"], ('thickness = "16 mm"', 'thickness = "6 mm"'))
    assert workshop.write(made).only(RINGS).outcome == outcome


@pytest.mark.parametrize(
    ("text", "size", "reamed", "outcome"),
    [
        ("pin", "0.5 mm", "4 mm", "conforms"),
        ("pin", "0.51 mm", "4 mm", "finding"),
        ("crank-pin", "1.0 mm", "7.9 mm", "conforms"),
        ("crank-pin", "1.01 mm", "4 mm", "finding"),
        ("pin", "0.4 mm", "8.1 mm", "finding"),
    ],
)
def test_pins_and_their_bushes_from_both_sides(
    workshop: DesignFolder, text: str, size: str, reamed: str, outcome: str
) -> None:
    """10 − 8/2 = 6 mm, 0.6 of 10."""
    made = {"pin.toml": ALONE[text] + wear(size, bush_wall="10 mm", reamed=reamed)}
    assert workshop.write(made).only(PINS).outcome == outcome


def gear(play: str, clearance: str = "0.1 mm", pins: int = 5) -> dict[str, str]:
    """A valve gear with pins on arms of 200 mm."""
    text = f'kind = "valve-gear"\nid = "gear"\ndrive_play = "{play}"\n'
    for number in range(pins):
        text += f'[drive_pins.{number}]\nclearance = "{clearance}"\nratio = "1"\narm = "200 mm"\n'
    return {"gear.toml": text}


@pytest.mark.parametrize(("play", "outcome"), [("0.144 °", "conforms"), ("0.143 °", "finding")])
def test_the_pins_of_the_page(workshop: DesignFolder, play: str, outcome: str) -> None:
    """5 × 0.1/200 = 0.0025 rad = 0.14324°; a play that is only stated passed before."""
    check = workshop.write(gear(play)).only(PINS)
    assert check.outcome == outcome
    assert math.degrees(found(check)) == pytest.approx(0.14324, abs=1e-5)


@pytest.mark.parametrize(
    ("lever", "ratio", "outcome"),
    [
        ("", "0.901", "conforms"),
        ("", "0.899", "finding"),
        # 150/120 = 1.25, of which 0.9 are 1.125
        ('lever_in = "120 mm"\nlever_out = "150 mm"\n', "1.126", "conforms"),
        ('lever_in = "120 mm"\nlever_out = "150 mm"\n', "1.124", "finding"),
        ('lever_in = "120 mm"\n', "1.25", "not assessed"),
        ('lever_out = "150 mm"\n', "1.25", "not assessed"),
    ],
)
def test_the_ratio_of_a_pin_is_that_of_its_lever(
    workshop: DesignFolder, lever: str, ratio: str, outcome: str
) -> None:
    """0.9 of the lever's, and of 1 where rods alone are between: both ends of a rod move alike."""
    made = gear("0.3 °", pins=1)
    made["gear.toml"] = made["gear.toml"].replace('ratio = "1"', f'ratio = "{ratio}"') + lever
    assert workshop.write(made).only(PINS).outcome == outcome


@given(r_o=st.floats(0.02, 1), r_i=st.floats(0.02, 1))
def test_a_lever_turned_round_gives_the_inverse(r_o: float, r_i: float) -> None:
    assert ratio_of_lever(r_o, r_i) * ratio_of_lever(r_i, r_o) == pytest.approx(1)


def test_a_gear_without_its_pins_is_not_assessed(workshop: DesignFolder) -> None:
    assert workshop.write(gear("0.3 °", pins=0)).only(PINS).outcome == "not assessed"


@given(w=st.floats(0, 1e-3), s=st.floats(0, 1e9))
def test_wear_is_in_proportion_to_the_distance(w: float, s: float) -> None:
    grown = grown_by_wear(a=1e-3, w=w, s=s, S=1e8) - 1e-3
    assert grown == pytest.approx(1e-3 - left_by_wear(a=1e-3, w=w, s=s, S=1e8), abs=1e-12)
    assert 2 * grown == pytest.approx(grown_by_wear(a=0.0, w=w, s=2 * s, S=1e8), abs=1e-12)


@given(D=st.floats(0, 3e-3), w=st.floats(0, 3e-3))
def test_a_worn_ring_fills_the_same_way_round(D: float, w: float) -> None:
    """The metal of the ring is what the bore's circumference less the gap was: (D + ΔD − 2 w) grows by the gap."""
    gap = gap_of_worn_ring(g=0.0, ΔD=D, w=w)
    assert gap == pytest.approx(math.pi * (0.5 + D) - math.pi * (0.5 - 2 * w), abs=1e-12)


@given(c=st.floats(1e-5, 1e-3))
def test_the_order_of_pins_does_not_matter(c: float) -> None:
    one = play_with_pin(θ_0=play_with_pin(θ_0=0.0, k=1.0, c=c, a=0.2), k=0.5, c=2e-4, a=0.1)
    other = play_with_pin(θ_0=play_with_pin(θ_0=0.0, k=0.5, c=2e-4, a=0.1), k=1.0, c=c, a=0.2)
    assert one == pytest.approx(other)
