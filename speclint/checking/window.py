"""A window in which a rule holds: looked for among the amounts by which a value is moved, and closed in on."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from speclint.checking.severity import Severity

#: Of what golden section leaves of an interval, and how often it is used to find a window in one.
_GOLDEN, _CLOSER = (5**0.5 - 1) / 2, 12
_HALVINGS = 40

#: How grave a rule is with a value moved by an amount; None where it holds.
_Grave = Callable[[float], Severity | None]
#: Whether a rule holds with a value moved by an amount.
_Holds = Callable[[float], bool]


def shift_that_holds(grave: _Grave, shifts: Sequence[float]) -> float | None:
    """The first of some shifts that holds, else one in a window that lies between them; None where none is found."""
    tried: dict[float, Severity] = {}
    found = _first(grave, shifts, tried)
    if found is None:
        _first(grave, [0.0], tried)
        between = valley(tried)
        found = closing_in(grave, *between) if between else None
    return found


def _first(grave: _Grave, shifts: Sequence[float], tried: dict[float, Severity]) -> float | None:
    """The first of some shifts that holds; how grave the others are is noted."""
    for by in shifts:
        how = grave(by)
        if how is None:
            return by
        tried[by] = how
    return None


def closing_in(grave: _Grave, start: float, stop: float) -> float | None:
    """A shift that holds between two, by golden section on how grave it is."""
    tried: dict[float, Severity] = {}
    inner = [stop - _GOLDEN * (stop - start), start + _GOLDEN * (stop - start)]
    for _ in range(_CLOSER):
        found = _first(grave, [one for one in inner if one not in tried], tried)
        if found is not None:
            return found
        if tried[inner[0]] <= tried[inner[1]]:
            stop, inner = inner[1], [inner[1] - _GOLDEN * (inner[1] - start), inner[0]]
        else:
            start, inner = inner[0], [inner[1], inner[0] + _GOLDEN * (stop - inner[0])]
    return None


def halved(holds: _Holds, fails: float, works: float, width: float) -> tuple[float, float]:
    """A change that does not hold and one that does, closer together than a width."""
    for _ in range(_HALVINGS):
        if abs(works - fails) < width:
            break
        middle = (fails + works) / 2
        fails, works = (fails, middle) if holds(middle) else (middle, works)
    return fails, works


def valley(tried: Mapping[float, Severity]) -> tuple[float, float] | None:
    """The shifts on both sides of one that is less grave than they are; None where there is none.

    A window that was missed makes what lies beside it less grave than what lies on. Tried in order.
    """
    places, grave = list(tried), list(tried.values())
    for at in range(1, len(places) - 1):
        if grave[at - 1] > grave[at] < grave[at + 1]:
            return places[at + 1], places[at - 1]
    return None
