"""Contradictions between two drawings, planted: each is told, and no rule is satisfied by the kinder of the two."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, changed, found, on_sheet
from tests.plugins.agreement.test_cylinders import DRAWN, PIN
from tests.plugins.agreement.test_ends import design as one_end
from tests.plugins.joints.bench import bench as joint
from tests.plugins.joints.test_frames import fastened
from tests.plugins.liners.bench import bench as cylinder
from tests.plugins.valves.gear import BLOCK, PRESSURES, duty, seat_files, train_files

HOLD = ("finding", Grade.HOLD)


def ends(check: Check) -> tuple[str, Grade | None]:
    return check.outcome, check.grade


@pytest.mark.parametrize(("stated", "taken"), [("360 rev/min", 400 / 9), ("500 rev/min", 52.35988)])
def test_the_speed_of_worn_tyres_is_that_of_the_valve_gear(
    workshop: DesignFolder, stated: str, taken: float
) -> None:
    """120 km/h on 1500 mm: 2 × 33.3333/1.5 = 44.4444 rad/s; 360 and 500 rev/min are 37.699 and 52.360 rad/s."""
    slow = PRESSURES["running"]
    fast = changed(slow, ("360 rev/min", stated)) + '\ntrack_speed = "120 km/h"'
    block = changed(
        BLOCK,
        ("[drive]\n", '[drive]\ndriving_wheel_diameter = "1550 mm"\nleast_wheel_diameter = "1500 mm"\n'),
    )
    files = train_files(duty_text=duty().replace(slow, fast))
    before = found(workshop.write(train_files()).only("valve.landing-speed"))
    workshop.write({**files, "block.toml": block})
    assert found(workshop.only("valve.landing-speed")) == pytest.approx(before * taken / 37.699112, rel=1e-6)
    assert ends(workshop.only("duty.speed-of-wheel", "block")) == HOLD


def test_a_box_wider_than_its_hole_is_the_hole_of_the_cover(workshop: DesignFolder) -> None:
    """No hole is drawn in the cover; the box that stands in it is 150 mm across."""
    joint(workshop)
    plain = workshop.only("cover.thickness", "cover").utilisation
    drawn = workshop.replace("cover.toml", 'central_hole = "0 mm"', 'central_hole = "150 mm"')
    pierced = drawn.only("cover.thickness", "cover").utilisation
    workshop.replace("cover.toml", 'central_hole = "150 mm"', 'central_hole = "0 mm"')
    box = 'kind = "stuffing-box"\nid = "box"\nin_cover = "cover"\noutside_diameter = "150 mm"\n'
    (workshop.root / "box.toml").write_text(box, encoding="utf-8")
    assert workshop.only("cover.thickness", "cover").utilisation == pytest.approx(pierced)
    assert plain is not None
    assert pierced is not None
    assert pierced > plain
    assert ends(workshop.only("cover.hole-for-box", "cover")) == HOLD


FIT = """
kind = "fit"
id = "fit"
friction = "0.05"
axial_load = "2000 N"
[shaft]
of = "seat"
dimension = "outside_diameter"
"""


def test_a_seat_is_held_by_the_lesser_friction_against_the_greater_drag(workshop: DesignFolder) -> None:
    """The seat states 0.1 and 500 N, its fit 0.05 and 2000 N."""
    files = seat_files()
    alone = workshop.write(files).only("seat.push-out")
    friction = on_sheet(alone, "F_h")
    both = workshop.write({**files, "fit.toml": FIT}).only("seat.push-out")
    assert on_sheet(both, "F_h") == pytest.approx(friction * 0.05 / on_sheet(alone, "μ"))
    assert on_sheet(both, "F_w") == pytest.approx(on_sheet(alone, "F_w") + 1500)
    assert ends(workshop.only("fit.says-once", "fit")) == HOLD


WELDMENT = """
kind = "weldment"
id = "weldment"
makes = "block"
[plates.boss]
material = "known-steel"
thickness = "25 mm"
"""


def test_a_seat_is_backed_by_the_plate_that_is_there(workshop: DesignFolder) -> None:
    """40 mm of wall are stated round the bore of 200 mm, in a boss of 25 mm."""
    files = seat_files(block=changed(BLOCK, ('wall = "40 mm"', 'wall = "40 mm"\nplate = "boss"')))
    check = workshop.write({**files, "weldment.toml": WELDMENT}).only("seat.push-out")
    assert on_sheet(check, "D_o") == pytest.approx(0.250)
    assert ends(workshop.only("block.wall-of-plate", "block")) == HOLD


def test_the_piston_moves_by_the_wear_of_all_bearings(tmp_path: Path) -> None:
    """The drive states 1 mm; the axlebox may wear 0.6 mm and the crosshead pin 0.9 mm."""
    workshop = DesignFolder(tmp_path).write({**cylinder(), **DRAWN, "pin.toml": PIN})
    room = on_sheet(workshop.only("cylinder.end-clearance", "block"), "c_l")
    workshop.replace("block.toml", "[drive]\n", '[drive]\naxlebox_wear = "0.6 mm"\n')
    (workshop.root / "pin.toml").write_text(PIN + 'wear.along = "0.9 mm"\n', encoding="utf-8")
    left = on_sheet(workshop.only("cylinder.end-clearance", "block"), "c_l")
    assert left == pytest.approx(room - 0.5e-3)
    assert ends(workshop.only("drive.wear-adds-up", "block")) == HOLD


gear_of_one_end = one_end  # the fixture of another module, under a name of this one


def test_a_word_does_not_turn_the_load_on_a_valve_about(gear_of_one_end: DesignFolder) -> None:
    """An inlet valve that lifts into its chest has the supply beyond its beats, whatever its drawing says."""
    rule, block = "valve.spring-holds-shut", gear_of_one_end.root / "block.toml"
    text = block.read_text(encoding="utf-8")
    for end in ("front", "back"):
        text = text.replace(f"[ends.{end}]\n", f'[ends.{end}]\nrelief_set = "16 bar gauge"\n')
    block.write_text(text, encoding="utf-8")
    before = gear_of_one_end.only(rule)
    gear_of_one_end.replace("valve.toml", '"beyond the beats"', '"between the beats"')
    gear_of_one_end.replace("spindle.toml", 'leaves = "supply"', 'leaves = "delivery"')
    after = gear_of_one_end.only(rule)
    assert (after.outcome, after.utilisation) == (before.outcome, before.utilisation)
    assert before.outcome != "not assessed"
    assert ends(gear_of_one_end.only("valve.supply-by-place")) == HOLD
    assert ends(gear_of_one_end.only("spindle.steam-by-place")) == HOLD


def test_the_pads_of_a_frame_are_jolted_alike(workshop: DesignFolder) -> None:
    """20 bar on 500 mm and 6 × 9.80665 m/s² on 2000 kg, as the sliding pad states: 392.7 + 117.7 kN."""
    fastened(workshop).replace("sliding.toml", 'shock = "3"', 'shock = "6"')
    check = workshop.only("frame.block-slip", "fastening")
    assert on_sheet(check, "F_T") == pytest.approx(math.pi / 4 * 0.5**2 * 2e6 + 6 * 9.80665 * 2000, rel=1e-6)
    assert ends(workshop.only("frame.pads-reciprocal", "fastening")) == HOLD


def _table(steps: int) -> str:
    """Lifts in mm: so many steps of 0.05 mm, then of 0.5 mm to the top, and down again as they rose."""
    rise = [0.05 * number for number in range(steps + 1)]
    rise += [rise[-1] + 0.5 * number for number in range(1, 30)]
    lifts = ", ".join(f'"{lift:.2f} mm"' for lift in (*rise, *rise[::-1]))
    return f'table_step = "2 °"\ntable = [{lifts}]\n'


@pytest.mark.parametrize(("steps", "outcome"), [(6, "conforms"), (5, "finding")])
def test_a_ramp_is_what_the_table_of_lifts_has(workshop: DesignFolder, steps: int, outcome: str) -> None:
    """0.29 mm of clearance with a new seat: taken up by 6 even steps of 0.05 mm, not by 5, though 1 mm is stated."""
    ramp = (('ramp_height = "0.001 mm"\n', 'ramp_height = "1 mm"\n' + _table(steps)),)
    files = train_files(cam=ramp, tappet=(('"0.4 mm"', '"0.29 mm"'),))
    check = workshop.write(files).only("tappet.clearance-hot")
    assert check.outcome == outcome
