"""How far the analysis of a product may lie beyond the limits that its standard sets for the cast."""

from __future__ import annotations

from speclint import NotKnown
from speclint.handbook.tables import Reading, rows
from speclint_release.sources import (
    PRODUCT_ALLOYED,
    PRODUCT_CARBON,
    PRODUCT_PLATE,
    PRODUCT_TUBE,
)

#: The table of each standard that is held, and where it stands there.
_TABLES = {
    "EN 10028-2:2009": ("en-10028-2-2009-product-analysis.csv", PRODUCT_PLATE),
    "EN 10083-2:2006": ("en-10083-2-2006-product-analysis.csv", PRODUCT_CARBON),
    "EN 10083-3:2006": ("en-10083-3-2006-product-analysis.csv", PRODUCT_ALLOYED),
    "EN 10216-2:2007": ("en-10216-2-2007-product-analysis.csv", PRODUCT_TUBE),
}


def product_deviation(standard: str, element: str, content: float) -> Reading:
    """Permissible deviation of the product analysis of an element from a limit of the cast, all as mass fractions.

    By the ``standard`` with its edition, the symbol of the ``element`` and the ``content`` that is the limit. NotKnown
    where no table is held, or where it says nothing of the element at that limit.

    >>> product_deviation("EN 10083-3:2006", "C", 0.0045).nominal  # to 0.55 %: 0.02 %
    0.0002
    """
    beyond = _beyond(standard, element, content)
    if beyond is None:
        raise NotKnown(f"no deviation of {element} at {content * 100:.4g} % is held for {standard}")
    what = f"deviation of {element} at {content * 100:.4g} % in a product"
    return Reading.exact(what, beyond, "", _TABLES[standard][1])


def holds_deviation(standard: str, element: str, content: float) -> bool:
    """Whether a table says how far the product analysis of an element may lie beyond a limit of the cast.

    >>> holds_deviation("EN 10083-3:2006", "C", 0.0045), holds_deviation("EN 1982:2008", "Sn", 0.09)
    (True, False)
    """
    return _beyond(standard, element, content) is not None


def _beyond(standard: str, element: str, content: float) -> float | None:
    if standard not in _TABLES:
        return None
    percent = round(content * 100, 6)
    for row in rows(_TABLES[standard][0], "speclint_release"):
        if row["element"] == element and float(row["over"]) < percent <= float(row["to"]):
            return round(float(row["beyond"]) / 100, 9)
    return None
