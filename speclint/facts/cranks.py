"""Which cylinders of a block push the same way at once, by the angles of their cranks."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from speclint.facts.engine import cranks_of, engine_of
from speclint.rules import Sheet
from speclint.specs import CylinderBlock

if TYPE_CHECKING:
    from speclint.specs import LoadCase

#: Load cases in which the engine turns, and each cylinder is worked by its steam.
_TURNING = ("starting", "running", "drifting", "water")
_HALF, _WHOLE = math.pi, 2 * math.pi
#: Angles of drawings are whole degrees or fractions, which in radians floats do not hold.
_ROUNDING = 1e-9


def bores_pushing_together(
    bores: Sequence[str], block: CylinderBlock, case: LoadCase, lead: float, sheet: Sheet
) -> tuple[tuple[str, ...], ...]:
    """Bores of a block whose pistons may be pushed the same way at once, as every set that is in no larger one.

    The steam pushes one way from a dead centre to the other, and the new way from ``lead`` (rad) before the dead centre
    on, by steam that is admitted early or compressed, or by water before the piston. All push together where the angle
    of a crank is not stated, and in a case in which the engine does not turn.
    """
    angles = _angles(bores, block, sheet) if case.name in _TURNING else {}
    if not angles or len(angles) < len(bores):
        return (tuple(bores),)
    sets = {frozenset(_pushed_forward(angles, -lead - start, lead)) for start in angles.values()}
    widest = [one for one in sets if not any(one < other for other in sets)]
    return tuple(sorted(tuple(name for name in bores if name in one) for one in widest))


def _pushed_forward(angles: dict[str, float], at: float, lead: float) -> Iterator[str]:
    """The bores that may push forward with the crank from which angles count at an angle."""
    for name, angle in angles.items():
        if (at + angle + lead + _ROUNDING) % _WHOLE <= _HALF + lead + 2 * _ROUNDING:
            yield name


def _angles(bores: Sequence[str], block: CylinderBlock, sheet: Sheet) -> dict[str, float]:
    """The angle of the crank of each bore that has one, as drawn, rad."""
    engine = engine_of(block, sheet) if len(bores) > 1 else None
    cranks = dict(cranks_of(engine, block, sheet)) if engine is not None else {}
    return {
        name: sheet.take_nominal(f"θ of {name}", cranks[name].angle)
        for name in bores
        if name in cranks and sheet.is_stated(f"angle of the crank of {name}", cranks[name].angle)
    }
