"""The clearance of a tappet as it works: box and spindle of the known steel, valve and block with it.

From 20 to 120 °C the steel grows by 12.0e-6/K, the middle of its band: 1.2e-3.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import nominal_ratio, train_of_cam, working_clearances
from speclint.facts.hot_clearances import cold_clearances
from tests.facts.bench import Bench, bench

STEEL = 'material = "known-steel"\n'
SPINDLE = STEEL + 'moves = "valve"\nheated_length = "330 mm"\nvalve_length = "60 mm"\n'
ROCKER = 'works = "spindle"\nvalve_arm = "120 mm"\ntappet_arm = "80 mm"\n'
TAPPET = 'works = "rocker"\ncarried_in = "box"\nclearance = "{}"\nseat_wear = "0.15 mm"\n'
DUTY = """[cases.running]
[cases.running.temperatures]
poppet-valve = "120 °C"
valve-spindle = "120 °C"
cylinder-block = "{block}"
cam-box = "20 °C"
"""


def drawn(
    folder: Path,
    tappet: str = TAPPET.format("0.6 mm"),
    spindle: str = SPINDLE,
    block: str = "20 °C",
    rocker: bool = True,
) -> Bench:
    files = {
        "duty duty": DUTY.format(block=block),
        "cylinder-block block": STEEL,
        "poppet-valve valve": STEEL,
        "valve-spindle spindle": spindle,
        "tappet tappet": tappet if rocker else tappet.replace('"rocker"', '"spindle"'),
        "cam cam": 'lifts = "tappet"\n',
        "cam-box box": STEEL + 'mounted_on = "block"\nblock_length = "150 mm"\ndatum_length = "180.6 mm"\n',
    }
    files |= {"rocker rocker": ROCKER} if rocker else {}
    return bench(folder, files, "tappet", metals=True)


def clearances(on: Bench, cold: bool = False) -> tuple[float, ...]:
    """In mm: cold, hot, hot and worn, the least and the greatest."""
    train = train_of_cam(on["cam"], on.sheet)
    work = cold_clearances if cold else working_clearances
    found = work(train, on["duty"].cases["running"], "if", on.sheet)
    return tuple(1e3 * one for one in (found.cold, found.hot, found.worn, found.low, found.high))


GROWN = 330 * 1.2e-3 / 1.5  # of spindle and valve, at the tappet, mm


@pytest.mark.parametrize(
    ("tappet", "spindle", "cold", "either_way"),
    [
        (TAPPET.format("0.6 mm"), SPINDLE, 0.4, 0.0),  # (150 + 180.6 − 330)/1.5: as the lengths leave it
        (TAPPET.format("0.6 mm") + 'clearance_setting = "0.05 mm"\n', SPINDLE, 0.6, 0.05),
        (TAPPET.format("0.6 mm ±0.08") + 'clearance_setting = "0.05 mm"\n', SPINDLE, 0.6, 0.08),
        (TAPPET.format("0.6 mm ±0.08"), SPINDLE, 0.4, 0.08),
        (TAPPET.format("0.6 mm"), SPINDLE + 'cap_ground_off = "0.3 mm"\n', 0.6, 0.0),
    ],
)
def test_heat_and_wear_use_up_the_clearance(
    tmp_path: Path, tappet: str, spindle: str, cold: float, either_way: float
) -> None:
    """The seat wears by 0.15 mm, which is 0.1 mm at the tappet."""
    found = clearances(drawn(tmp_path, tappet, spindle))
    hot, worn = cold - GROWN, cold - GROWN - 0.1
    assert found == pytest.approx((cold, hot, worn, worn - either_way, cold + either_way), abs=1e-6)


def test_a_block_that_grows_gives_it_back(tmp_path: Path) -> None:
    """150 mm of the same steel at the same temperature: (330 − 150) × 1.2e-3/1.5 = 0.144 mm."""
    found = clearances(drawn(tmp_path, block="120 °C"))
    assert found[:2] == pytest.approx((0.4, 0.4 - 0.144), abs=1e-6)


def test_a_tied_temperature_stands_in_its_middle(tmp_path: Path) -> None:
    found = clearances(drawn(tmp_path, block="poppet-valve - 0..20 K"))  # 110 °C: 11.95e-6 × 90
    assert found[1] == pytest.approx(0.4 - (330 * 1.2e-3 - 150 * 11.95e-6 * 90) / 1.5, abs=1e-6)


def test_without_a_rocker_the_valve_moves_as_the_tappet(tmp_path: Path) -> None:
    on = drawn(tmp_path, rocker=False)
    assert nominal_ratio(train_of_cam(on["cam"], on.sheet), "if", on.sheet) == 1.0
    found = clearances(on)
    assert found[:3] == pytest.approx((0.6, 0.6 - 0.396, 0.6 - 0.396 - 0.15), abs=1e-6)


def test_a_cold_engine_keeps_its_clearance(tmp_path: Path) -> None:
    assert clearances(drawn(tmp_path), cold=True) == pytest.approx((0.4,) * 5)
