"""Formulae of what a cam does, over a wide range of its angle: worked on small parts of the range.

Lift, slope and curvature of a cam hang on one angle, and so does all that is worked from them. A formula that takes the
bounds of each over the whole range allows the curvature of one angle beside the lift of another; on a small part of the
range the two lie near to those of one angle. What is found on each part goes with the result into the next formula.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping, MutableMapping
from itertools import pairwise
from typing import Any

from speclint.rules import intervals
from speclint.rules.enclosure import Enclosure, Input, Undecided
from speclint.rules.intervals import Interval
from speclint.rules.slopes import slopes

#: Parts of a range of angles.
_PIECES = 12
#: A range below this share of the lift is left whole.
_WIDE = 0.01
_NONE: Interval = (0.0, 0.0)
Known = MutableMapping[Hashable, Any]


class Ranged(Enclosure):
    """What hangs on an angle over a range of it, and can be asked for its bounds on a part of that range."""

    __slots__ = ("angle", "whole")

    def __init__(self, bounds: Interval, slope: Interval, angle: Enclosure, whole: float) -> None:
        super().__init__(*bounds, angle, *slope)
        self.angle, self.whole = angle, whole

    def over(self, low: float, high: float) -> Interval:
        """Its bounds over a part of the range of angles [rad]."""
        raise NotImplementedError


class Pieced(Enclosure):
    """The result of a formula over a range of angles, with its bounds on each part of the range."""

    __slots__ = ("angle", "pieces")

    def __init__(
        self,
        pieces: tuple[Interval, ...],
        angle: Enclosure,
        hangs: Mapping[str, Interval],
        on: Mapping[str, Any],
    ) -> None:
        low, high = min(low for low, _ in pieces), max(high for _, high in pieces)
        super().__init__(low, high, more=tuple((on[name], *slope) for name, slope in hangs.items()))
        self.pieces, self.angle = pieces, angle


def by_pieces(formula: Callable[..., Any], known: Known, key: Hashable, arguments: Mapping[str, Any]) -> Any:
    """What a formula gives for some arguments; part by part where some hang on one and the same angle of a cam.

    ``key`` stands for the formula in ``known``, where results are kept for the same bounds.
    """
    pieced = {name: one for name, one in arguments.items() if isinstance(one, Pieced) or _is_wide(one)}
    angles = {id(one.angle): one.angle for one in pieced.values()}
    if len(angles) != 1:
        return formula(**arguments)
    (angle,) = angles.values()
    parts = {name: _pieces(one) for name, one in pieced.items()}
    given = {
        name: one for name, one in arguments.items() if isinstance(one, Enclosure) and name not in pieced
    }
    plain = {name: one for name, one in arguments.items() if not isinstance(one, Enclosure)}
    bounds = tuple((name, one.bounds) for name, one in given.items())
    place = ("by pieces", key, tuple(plain.items()), bounds, tuple(parts.items()))
    found = known.get(place)
    if found is None:
        try:
            found = known[place] = _worked(formula, parts, given, plain)
        except Undecided:
            return formula(**arguments)
    values, hangs = found
    return Pieced(values, angle, hangs, arguments)


def _worked(
    formula: Callable[..., Any],
    parts: Mapping[str, tuple[Interval, ...]],
    given: Mapping[str, Enclosure],
    plain: Mapping[str, Any],
) -> tuple[tuple[Interval, ...], dict[str, Interval]]:
    """The bounds on each part of the range, and the bounds of the slopes over all of them."""
    values: list[Interval] = []
    hangs: dict[str, Interval] = {}
    for index in range(_PIECES):
        leaves = {name: Input(name, *one.bounds) for name, one in given.items()}
        leaves |= {name: Input(name, *pieces[index]) for name, pieces in parts.items()}
        value = formula(**plain, **leaves)
        found = slopes(value) if isinstance(value, Enclosure) else {}
        for name in leaves:
            slope = found.get(name, _NONE)
            hangs[name] = intervals.hull(hangs[name], slope) if name in hangs else slope
        values.append(value.bounds if isinstance(value, Enclosure) else (value, value))
    return tuple(values), hangs


def _is_wide(one: Any) -> bool:
    return isinstance(one, Ranged) and one.angle.high - one.angle.low > _WIDE * one.whole


def _pieces(one: Pieced | Ranged) -> tuple[Interval, ...]:
    """The bounds on each part of the range of angles."""
    if isinstance(one, Pieced):
        return one.pieces
    low, high = one.angle.bounds
    ends = [low, *(low + (high - low) * index / _PIECES for index in range(1, _PIECES)), high]
    return tuple(one.over(*part) for part in pairwise(ends))
