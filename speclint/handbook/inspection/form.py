"""How far a bore or a journal is from round, and how far it tapers, by diameters measured at several places."""

from __future__ import annotations

from collections.abc import Iterable


def ovality(diameters: Iterable[tuple[float | None, float]]) -> float | None:
    """The greatest difference of diameters measured round one place along the part; None where no place has two.

    ``diameters`` are places along the part and diameters, in one unit: as works gauge cylinders, common practice. It
    is twice the out-of-roundness of an oval, and tells nothing of a bore of three lobes.

    >>> round(ovality([(0.1, 500.02), (0.1, 500.05), (0.8, 500.03)]), 3)
    0.03
    """
    places = _by_place(diameters).items()
    spreads = [max(some) - min(some) for along, some in places if along is not None and len(some) > 1]
    return max(spreads, default=None)


def taper(diameters: Iterable[tuple[float | None, float]]) -> float | None:
    """The greatest difference of the mean diameters of places along the part; None where fewer than two were measured.

    ``diameters`` are places along the part and diameters, in one unit. On the diameter, common practice.

    >>> round(taper([(0.1, 500.02), (0.1, 500.06), (0.8, 500.03)]), 3)
    0.01
    """
    means = [
        sum(some) / len(some) for along, some in _by_place(diameters).items() if along is not None and some
    ]
    return max(means) - min(means) if len(means) > 1 else None


def _by_place(diameters: Iterable[tuple[float | None, float]]) -> dict[float | None, list[float]]:
    found: dict[float | None, list[float]] = {}
    for along, diameter in diameters:
        found.setdefault(along, []).append(diameter)
    return found
