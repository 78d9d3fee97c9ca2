"""The openings between the bars of a valve's cage."""

from __future__ import annotations

import math

from speclint.equations import FIRST_PRINCIPLES, Metres, Ratio, formula, require
from speclint.rules import Sheet, Worked, worked
from speclint.specs import PoppetValve, ValveCage


@formula("b_s = D sin(π/n − arcsin(min(1, w/D)))", cites=[FIRST_PRINCIPLES])
def straight_opening(D: Metres, n: Ratio, w: Metres) -> Metres:
    """Opening between bars that stand evenly on a circle, straight across from edge to edge: the widest is no narrower.

    b_s = D sin(π/n − arcsin(min(1, w/D)))

    ``D`` diameter of the circle [m]; ``n`` number of bars [-]; ``w`` width of each, straight across, where more than
    ``D`` it counts as that [m]. Returns [m], 0 or less where the bars close the circle. Raises OutOfRange with fewer
    than two bars, or unless ``D`` is above 0 and ``w`` not below it.

    By hand: four thin bars on 200 mm stand 200 sin 45° = 141.42 mm apart, and 157.08 mm round the circle.

    >>> round(straight_opening(D=0.2, n=4, w=0.0), 6)
    0.141421
    >>> round(straight_opening(D=0.2, n=12, w=0.030), 6)  # 200 sin(15° − 8.6269°)
    0.0222
    """
    require(n >= 2, "fewer than two bars stand round no circle")
    require(D > 0 and w >= 0, "the circle has no size, or a bar less than none")
    return D * math.sin(math.pi / n - math.asin(min(1.0, w / D)))


def opening_by_bars(cage: ValveCage, sheet: Sheet) -> Worked | None:
    """What the bars of a cage leave between them, m, where they stand evenly: its widest opening is no narrower.

    The bars stand no nearer than the bore that the valve states round it, or than the valve itself where it states
    none, so that what they would leave there is the least that they leave. None of a cage that counts no bars; one
    that counts them is asked how wide they are.
    """
    return _between_bars(cage, sheet, widest=False)


def _between_bars(cage: ValveCage, sheet: Sheet, *, widest: bool) -> Worked | None:
    """What evenly spaced bars leave between them, m: the least that they can, or the most where no bore is stated."""
    if not sheet.is_stated("bars", cage.bars) or not sheet.is_stated("valve", cage.surrounds):
        return None
    n, w = float(sheet.count("n", cage.bars)), sheet.take("w", cage.bar)
    valve = sheet.follow(cage.surrounds)
    unstated = cage.outside_diameter if widest else valve.outside_diameter
    circle = valve.box_diameter if _bore_is_stated(valve, sheet) else unstated
    b = sheet.work("b_s", straight_opening, D=sheet.take("D", circle), n=n, w=w)
    return worked(b, cage.bars, cage.bar, circle)


def _bore_is_stated(valve: PoppetValve, sheet: Sheet) -> bool:
    """Whether a valve states a bore round it that is that of its cage."""
    caged = sheet.said("retained", valve.retained) == "cage"
    return caged and sheet.is_stated("bore round the valve", valve.box_diameter)


def opening_of_cage(cage: ValveCage, sheet: Sheet) -> Metres:
    """The widest opening of a cage, m: the greater of what it states and of what its bars can leave between them.

    Where the valve states no bore round it, the bars may stand as far out as the outside of the cage, which is asked.
    """
    stated, by_bars = sheet.take("b_o", cage.opening), _between_bars(cage, sheet, widest=True)
    return stated if by_bars is None else max(stated, by_bars.value)
