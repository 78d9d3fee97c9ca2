"""The rigid wheelbase of an engine, as stated and by its axles."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.rules import Sheet, Worked, worked
from speclint.specs import by_word

if TYPE_CHECKING:
    from speclint.specs import Engine, Envelope


@formula("X = |x_2 − x_1|", cites=[FIRST_PRINCIPLES])
def apart(x_1: Metres, x_2: Metres) -> Metres:
    """Distance of two places on one line.

    X = |x_2 − x_1|

    x_1, x_2: the places from one datum, m. Returns m.

    >>> round(apart(x_1=0.620, x_2=-0.206) * 1e3, 6)
    826.0
    """
    return abs(x_2 - x_1)


def wheelbase_by_axles(envelope: Envelope, engine: Engine, within: Metres, sheet: Sheet) -> Worked | None:
    """The distance of two axles of which at least one is driven, that of the rigid wheelbase of an envelope.

    Which of them are free to move sideways no spec says: any two as far apart as is stated, but for ``within``, stand
    for it. Where it is that of no two, the outermost which are driven. None where fewer than two are drawn.
    """
    driven = [
        worked(sheet.take_nominal(f"x {axle.id}", axle.at), axle.at)
        for axle in sheet.belonging_to(engine, by_word.DrivingAxle)
    ]
    if len(driven) < 2:
        return None
    carrying = [
        worked(sheet.take_nominal(f"x {name}", axle.at), axle.at)
        for name, axle in engine.carrying.items()
        if not sheet.is_stated(f"wheelbase of {name}", axle.wheelbase)
    ]
    a = sheet.take_nominal("a", envelope.rigid_wheelbase)
    driven.sort(key=lambda axle: axle.value)
    pairs = [*combinations(driven, 2), *((one, other) for one in driven for other in carrying)]
    found = [_apart(driven[0], driven[-1], sheet), *(_apart(one, other, sheet) for one, other in pairs)]
    return next((one for one in found if abs(one.value - a) <= within), found[0])


def _apart(one: Worked, other: Worked, sheet: Sheet) -> Worked:
    return Worked(sheet.work("a_x", apart, x_1=one.value, x_2=other.value), (*one.places, *other.places))
