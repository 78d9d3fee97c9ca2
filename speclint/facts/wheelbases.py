"""The rigid wheelbase of an engine, as stated and by its axles."""

from __future__ import annotations

from itertools import combinations

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.rules import Sheet, Worked, worked
from speclint.specs import DrivingAxle, Engine, Envelope


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

    None where fewer than two driven ones are drawn.
    """
    pairs = axle_pairs_at(envelope, engine, within, sheet)
    return _apart(*pairs[0], sheet) if pairs else None


def axle_pairs_at(
    envelope: Envelope, engine: Engine, within: Metres, sheet: Sheet
) -> list[tuple[Worked, Worked]]:
    """The places of each two axles that are as far apart as the rigid wheelbase of an envelope, but for ``within``.

    Which of them are free to move sideways no spec says. Where none are so far apart, or no wheelbase is stated, the
    outermost which are driven.
    """
    pairs = _axle_pairs(engine, sheet)
    if not sheet.is_stated("rigid wheelbase", envelope.rigid_wheelbase):
        return pairs[:1]
    a = sheet.take_nominal("a", envelope.rigid_wheelbase)
    found = [pair for pair in pairs if abs(_apart(*pair, sheet).value - a) <= within]
    return found or pairs[:1]


def _axle_pairs(engine: Engine, sheet: Sheet) -> list[tuple[Worked, Worked]]:
    """The places of each two axles that a rigid wheelbase may lie between, the outermost driven ones first."""
    driven = [
        worked(sheet.take_nominal(f"x {axle.id}", axle.at), axle.at)
        for axle in sheet.belonging_to(engine, DrivingAxle)
    ]
    if len(driven) < 2:
        return []
    carrying = [
        worked(sheet.take_nominal(f"x {name}", axle.at), axle.at)
        for name, axle in engine.carrying.items()
        if not sheet.is_stated(f"wheelbase of {name}", axle.wheelbase)
    ]
    driven.sort(key=lambda axle: axle.value)
    pairs = [*combinations(driven, 2), *((one, other) for one in driven for other in carrying)]
    return [(driven[0], driven[-1]), *pairs]


def _apart(one: Worked, other: Worked, sheet: Sheet) -> Worked:
    return Worked(sheet.work("a_x", apart, x_1=one.value, x_2=other.value), (*one.places, *other.places))
