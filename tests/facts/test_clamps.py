"""What the studs of a cover leave to clamp the collar of a liner: ten of them, the ends that a sheet stands on first.

Measured by its length a stud has 1.1 to 1.5 times as much at the most as at the least (VDI 2230, Table A8): at the end
of the least scatter 1 − 0.1/2.1 of the mean.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.facts import clamp_on_collar, left_by_joint
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

JOINT = 'holds = "cover"\nthread = "M30"\ncount = 10\nseal = "{seal}"\n'
MEASURED = '[tightening]\nmethod = "elongation by length"\npreload = "100 kN"\n'
WRENCH = '[tightening]\nmethod = "torque wrench"\ntorque = "500 N·m"\ntorque_coefficient = "0.2"\n'
ANGLE = '[tightening]\nmethod = "angle controlled"\npreload = "100 kN"\n'
RING = '[gasket]\nname = "fibre sheet 1.5 mm"\nform = "{form}"\noutside = "560 mm"\ninside = "540 mm"\n'
GROUND, SEALED = JOINT.format(seal="ground face"), JOINT.format(seal="gasket")
#: 10 × 100 kN × (1 − 0.1/2.1).
LEAST = 1e6 * 2 / 2.1
LINER = 'housed_in = "block"\nin_bore = "main"\ncollar.end = "front"\n'


def drawn(folder: Path, studs: str, liner: str = LINER, end: str = "front") -> Bench:
    files = {
        "cylinder-block block": '[bores.main]\n[ends.front]\nof_bore = "main"\nside = "front"\n'
        '[ends.back]\nof_bore = "main"\nside = "back"\n',
        "cylinder-liner liner": liner,
        "cylinder-cover cover": f'closes = "block"\nof_end = "{end}"\n',
        "bolted-joint studs": studs,
    }
    return bench(folder, files, "studs")


@pytest.mark.parametrize(
    ("studs", "left"),
    [
        (GROUND + MEASURED, LEAST),
        # 500/(0.2 × 0.03) N each, of which a wrench within 25 % leaves three quarters
        (GROUND + WRENCH, 10 * 500 / (0.2 * 0.03) * 0.75),
        # by its angle a stud has the preload of its springs
        (GROUND + ANGLE, None),
        # a ring of 10 mm seats on an eighth of it, a flat one on half, on 550 mm at 26 MPa
        (SEALED + MEASURED + RING.format(form="ring in a groove"), LEAST - math.pi * 1.25e-3 * 0.55 * 26e6),
        (SEALED + MEASURED + RING.format(form="flat"), LEAST - math.pi * 5e-3 * 0.55 * 26e6),
    ],
)
def test_studs_leave_their_least_preload_without_what_seats_the_gasket(
    tmp_path: Path, studs: str, left: float | None
) -> None:
    on = drawn(tmp_path, studs)
    found = left_by_joint(on["studs"], on.sheet)
    assert (None if found is None else found.value) == (
        None if left is None else pytest.approx(left, rel=5e-3)
    )


@pytest.mark.parametrize(
    ("stated", "studs", "end", "clamp"),
    [
        ("", GROUND + MEASURED, "front", LEAST),
        ('collar.clamp_force = "900 kN"\n', GROUND + MEASURED, "front", 9e5),
        ('collar.clamp_force = "1 MN"\n', GROUND + MEASURED, "front", LEAST),
        ('collar.clamp_force = "1 MN"\n', GROUND + ANGLE, "front", 1e6),
        ('collar.clamp_force = "1 MN"\n', GROUND + MEASURED, "back", 1e6),
    ],
)
def test_the_collar_has_what_is_stated_and_no_more_than_the_studs_leave(
    tmp_path: Path, stated: str, studs: str, end: str, clamp: float
) -> None:
    on = drawn(tmp_path, studs, LINER + stated, end)
    assert clamp_on_collar(on["liner"], on.sheet) == pytest.approx(clamp)


def test_where_the_studs_tell_nothing_it_must_be_stated(tmp_path: Path) -> None:
    on = drawn(tmp_path, GROUND + ANGLE)
    with pytest.raises(NotAssessed, match="clamp_force is not stated"):
        clamp_on_collar(on["liner"], on.sheet)
