"""How a value over a box hangs on each input: one pass back from it, through all that it was worked from.

Reverse accumulation of slopes, rounded outward.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Mapping

from speclint.rules import intervals
from speclint.rules.enclosure import Choice, Enclosure, Input, Undecided
from speclint.rules.intervals import Interval

Slopes = Mapping[Hashable, Interval]
_NONE: Interval = (0.0, 0.0)


def asked_slopes(undecided: Undecided) -> Slopes:
    """How what a branch asks hangs on the open inputs; where it hangs on none, all that it was worked from."""
    reached = {node.key: (0.0, 0.0) for node in ordered(undecided.asked) if isinstance(node, Input)}
    return slopes(undecided.asked) or reached


def slope_against(result: Enclosure, place: Input) -> Interval:
    """The bounds of the slope against one input; nothing made before that hangs on it."""
    found, _ = _one_pass(ordered(result, place.serial), result, {}, may_fork=False)
    return found.get(place.key, _NONE)


def slopes(result: Enclosure) -> Slopes:
    """The bounds of the slope of a result against each input, over the box."""
    return next(_pass_back(result, {}))


def alternatives(result: Enclosure, most: int = 16) -> Iterator[Slopes]:
    """The slopes of a result, each time with one of the pieces of the choices in it that can make it greater.

    The greatest of a function that rises with the greater of two values is the greater of its greatest with each: so
    each choice that works towards a greater result is gone through piece by piece, as long as they are few.
    """
    return _pass_back(result, {}, most)


def ordered(result: Enclosure, since: int = 0) -> list[Enclosure]:
    """A result and all it was worked from since some serial number, each after those that were worked from it."""
    found = {result.serial: result}
    stack = [result]
    while stack:
        node = stack.pop()
        one, two = node.one, node.two
        if one is not None and one.serial >= since and one.serial not in found:
            found[one.serial] = one
            stack.append(one)
        if two is not None and two.serial >= since and two.serial not in found:
            found[two.serial] = two
            stack.append(two)
        for parent, _, _ in node.more:
            if parent.serial >= since and parent.serial not in found:
                found[parent.serial] = parent
                stack.append(parent)
    return [found[serial] for serial in sorted(found, reverse=True)]


def _pass_back(result: Enclosure, chosen: Mapping[int, int], most: int = 0) -> Iterator[Slopes]:
    order = ordered(result)
    pending: list[Mapping[int, int]] = [chosen]
    given = 0
    while pending:
        picked = pending.pop()
        found, fork = _one_pass(order, result, picked, may_fork=len(pending) + given < most)
        if fork is not None:
            pending.extend({**picked, fork.serial: index} for index in range(len(fork.pieces)))
            continue
        given += 1
        yield found


def _one_pass(
    order: list[Enclosure], result: Enclosure, picked: Mapping[int, int], *, may_fork: bool
) -> tuple[Slopes, Choice | None]:
    """The slopes of a result, with one piece of each choice picked; or the first choice of which none is."""
    weights: dict[int, Interval] = {result.serial: (1.0, 1.0)}
    found: dict[Hashable, Interval] = {}
    take = weights.pop
    for node in order:
        weight = take(node.serial, _NONE)
        if weight == _NONE:
            continue
        if isinstance(node, Input):
            found[node.key] = weight
            continue
        parents = node.more
        if may_fork and isinstance(node, Choice) and (weight[0] >= 0.0 if node.rises else weight[1] <= 0.0):
            if node.serial not in picked:
                return {}, node
            parents = (parents[picked[node.serial]],)
        if node.one is not None:
            _pass_on(weights, node.one.serial, weight, node.one_low, node.one_high)
        if node.two is not None:
            _pass_on(weights, node.two.serial, weight, node.two_low, node.two_high)
        for parent, low, high in parents:
            _pass_on(weights, parent.serial, weight, low, high)
    return found, None


def _pass_on(weights: dict[int, Interval], serial: int, weight: Interval, low: float, high: float) -> None:
    """Add to the slope against what a value was worked from, by the slope of that value against it."""
    if low == high:
        share = weight if low == 1.0 else intervals.scaled(weight, low)
    else:
        share = intervals.multiply(weight, (low, high))
    known = weights.get(serial)
    weights[serial] = share if known is None else intervals.add(known, share)
