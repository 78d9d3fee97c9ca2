"""What turns and what reciprocates, in planes 0.7 m from the middle: of a mass on the left at y the left plane takes
(b + y)/2b, the right one (b − y)/2b."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import axles_of, to_and_fro_of, turning_in_planes, turning_of, unbalanced_in_planes
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

B = 0.7
BLOCK = 'hand = "{hand}"\n[bores.main]\n[drive]\nreciprocating_mass = "100 kg"\n'
ENGINE = """stroke = "600 mm"
connecting_rod_length = "1800 mm"
connecting_rod_mass = "90 kg"
connecting_rod_centre = "600 mm"
"""
CRANK = '[cranks.one]\nblock = "block"\naxis_from_centre = "{y}"\nangle = "0 °"\n'
AXLE = 'engine = "engine"\nplane_distance = "1400 mm"\n'
PIN = '[turning.pin]\nmass = "70 kg"\nfrom_centre = "350 mm"\n'


def drawn(folder: Path, hand: str = "left", y: str = "350 mm", crank: str = "", **parts: str) -> Bench:
    files = {
        "cylinder-block block": BLOCK.format(hand=hand),
        "engine engine": ENGINE + CRANK.format(y=y) + crank,
    }
    files |= {f"driving-axle {name}": AXLE + text for name, text in parts.items()}
    return bench(folder, files, "block")


@pytest.mark.parametrize(
    ("hand", "y", "crank", "left", "right"),
    [
        # 100 kg × 0.3 m = 30 kg·m: (0.7 + 0.35)/1.4 = 3/4 of it in the plane on its own side
        ("left", "350 mm", "", 22.5, 7.5),
        ("right", "350 mm", "", 7.5, 22.5),
        ("right", "350 mm", 'side = "left"\n', 22.5, 7.5),
        ("left", "350 mm", 'side = "right"\n', 7.5, 22.5),
        ("left", "0 mm", "", 15.0, 15.0),
        ("right", "0 mm", "", 15.0, 15.0),
        ("left", "350 mm", 'stroke = "400 mm"\n', 15.0, 5.0),
    ],
)
def test_a_mass_at_a_crank_is_shared_by_the_planes(
    tmp_path: Path, hand: str, y: str, crank: str, left: float, right: float
) -> None:
    on = drawn(tmp_path, hand, y, crank)
    found = to_and_fro_of(on["engine"], B, on.sheet)
    assert tuple(found) == pytest.approx((left, 0.0, right, 0.0))


def test_a_crank_in_the_middle_is_asked_for_no_side(tmp_path: Path) -> None:
    files = {
        "cylinder-block block": BLOCK.replace('hand = "{hand}"\n', ""),
        "engine engine": ENGINE + CRANK.format(y="0 mm"),
    }
    on = bench(tmp_path, files, "block")
    assert tuple(to_and_fro_of(on["engine"], B, on.sheet)) == pytest.approx((15.0, 0.0, 15.0, 0.0))


@pytest.mark.parametrize(
    ("piece", "along", "across"),
    [
        ('radius = "200 mm"\nangle = "90 °"\n', 0.0, 14.0),  # 70 × 0.2
        ('crank = "one"\n', 21.0, 0.0),  # 70 × 0.3, at the crank's angle
        ('crank = "one"\nradius = "100 mm"\n', 7.0, 0.0),
        ('crank = "one"\nangle = "90 °"\n', 0.0, 21.0),
    ],
)
def test_a_piece_turns_at_its_crank_or_as_it_states(
    tmp_path: Path, piece: str, along: float, across: float
) -> None:
    """3/4 of it in the left plane."""
    on = drawn(tmp_path, axle=PIN + piece)
    found = unbalanced_in_planes(on["axle"], B, on.sheet)
    expected = [share * moment for share in (0.75, 0.25) for moment in (along, across)]
    assert tuple(found) == pytest.approx(expected, abs=1e-12)


def test_a_rod_turns_with_its_big_end(tmp_path: Path) -> None:
    """90 × (1800 − 600)/1800 = 60 kg, × 0.3 m = 18 kg·m, beside a piece of 7."""
    text = 'driven_by = ["one"]\n' + PIN + 'crank = "one"\nradius = "100 mm"\n'
    on = drawn(tmp_path, axle=text)
    found = unbalanced_in_planes(on["axle"], B, on.sheet)
    assert tuple(found) == pytest.approx((18.75, 0.0, 6.25, 0.0))


def test_balance_weights_take_up_in_their_own_planes(tmp_path: Path) -> None:
    """A weight of 20 kg at 0.5 m opposite on the left: −10 kg·m there and none on the right. In planes half as far
    apart it lies 0.7/0.35 = 2 half-distances out: (1 + 2)/2 and (1 − 2)/2 of it."""
    wheel = '[left]\nbalance_mass = "20 kg"\nbalance_radius = "500 mm"\nbalance_angle = "180 °"\n'
    wheel += '[right]\nbalance_mass = "0 kg"\n'
    on = drawn(tmp_path, axle=PIN + 'crank = "one"\n' + wheel)
    own = turning_in_planes(on["axle"], B, on.sheet)
    assert tuple(own) == pytest.approx((15.75 - 10, 0.0, 5.25, 0.0), abs=1e-9)
    pin = (21.0, 0.0, 0.0, 0.0)  # 0.35 m from the middle it stands in the nearer plane
    near = turning_in_planes(on["axle"], 0.35, on.sheet)
    assert tuple(near) == pytest.approx((pin[0] - 15, 0.0, 5.0, 0.0), abs=1e-9)


def test_the_moments_of_all_axles_are_added_up(tmp_path: Path) -> None:
    none = '[left]\nbalance_mass = "0 kg"\n[right]\nbalance_mass = "0 kg"\n'
    first, second = PIN + 'crank = "one"\n', PIN + 'radius = "200 mm"\nangle = "90 °"\n'
    on = drawn(tmp_path, first=first + none, second=second + none)
    found = turning_of(on["engine"], B, on.sheet)
    assert tuple(found) == pytest.approx((15.75, 10.5, 5.25, 3.5), abs=1e-9)


def test_an_engine_without_axles_or_an_axle_on_which_nothing_turns_is_not_assessed(tmp_path: Path) -> None:
    on = drawn(tmp_path, axle="")
    with pytest.raises(NotAssessed, match="turning is not stated"):
        unbalanced_in_planes(on["axle"], B, on.sheet)
    (tmp_path / "bare").mkdir()
    bare = drawn(tmp_path / "bare")
    with pytest.raises(NotAssessed, match="no driving axle of engine is drawn"):
        axles_of(bare["engine"], bare.sheet)
