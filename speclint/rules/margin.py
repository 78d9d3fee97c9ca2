"""What a comparison leaves before its limit, as a share of the limit: below nothing where it fails.

Unlike the utilisation it goes on smoothly where a value passes through nothing, so that of two values beyond a limit
one is always the worse. It is in order with the utilisation wherever that is finite. Floats and enclosures are taken.
"""

from __future__ import annotations

from typing import TypeVar

from speclint.rules.enclosure import Enclosure

N = TypeVar("N", float, "float | Enclosure")


def margin_below(value: N, limit: N) -> N:
    """What is left of a limit that must not be exceeded; in SI units where the limit is nothing."""
    if limit > 0.0:
        return 1.0 - value / limit
    if limit < 0.0:
        return value / limit - 1.0
    return -value


def margin_above(value: N, limit: N) -> N:
    """What a value has beyond a limit that it must reach; in SI units where the limit is nothing."""
    return -margin_below(value, limit)


def margins_within(value: N, low: N, high: N) -> tuple[N, N]:
    """What is left up to the high limit and down to the low one of a band.

    Where the low limit is nothing or less: as a share of half the band, counted from its middle.
    """
    if low > 0.0:
        return margin_below(value, high), margin_above(value, low)
    half, away = (high - low) / 2, value - (low + high) / 2
    if half > 0.0:
        return 1.0 - away / half, 1.0 + away / half
    return -away, away


def margin_of_stay(left: N, cold: N) -> N:
    """What is left of something that must stay, as a share of what there was cold.

    In SI units where there was nothing cold, or less: as a share, the greater of two gaps in place of an interference
    would seem the better.
    """
    return left / cold if cold > 0.0 else left
