"""Tables of the family: threads of rods, finish of a rod for its packing, period proportions."""

from __future__ import annotations

from functools import cache

from speclint import COMMON_PRACTICE, NotKnown
from speclint.handbook.tables import Reading, Row, rows
from speclint.handbook.threads import root_area, thread
from speclint_motion.sources import PERIOD_PROPORTIONS

_FINISH = "rod-finish-common-practice.csv"
#: Sizes over the bore of the cylinder in the approximate rules for locomotives.
_PROPORTIONS = {"piston rod": 0.16, "crank pin diameter": 0.26, "crank pin length": 0.28}
_MICROMETRE = 1e-6


@cache
def root_area_of_thread(designation: str) -> Reading:
    """Area at the root of a rod's thread, m²; NotKnown for a thread that no standard lists.

    Hand working, M85x4: 85 − 17/12 × 0.866025 × 4 = 80.09252 mm; 5038.2 mm².

    >>> round(root_area_of_thread("M85x4").nominal * 1e6, 1)
    5038.2
    """
    found = thread(designation)
    return Reading.exact(f"root area of {found.name}", root_area(found.root_diameter), "m²", found.source)


def proportion_of_bore(part: str) -> Reading:
    """Size over the bore of the cylinder, by the period's approximate rules for locomotives.

    >>> proportion_of_bore("piston rod").nominal
    0.16
    """
    return Reading.exact(f"period proportion of the {part}", _PROPORTIONS[part], "", PERIOD_PROPORTIONS)


def greatest_roughness(packing: str) -> Reading:
    """Greatest roughness Ra of a rod under a packing, m; NotKnown for a packing that the table lacks.

    >>> round(greatest_roughness("carbon segments").nominal * 1e6, 6)
    0.4
    """
    value = _figure(packing, "roughness_um") * _MICROMETRE
    return Reading.exact(f"greatest roughness under {packing}", value, "m", COMMON_PRACTICE)


def least_hardness(packing: str) -> Reading:
    """Least Brinell hardness of a rod under a packing; NotKnown for a packing that the table lacks.

    >>> least_hardness("carbon segments").nominal
    250.0
    """
    return Reading.exact(
        f"least hardness under {packing}", _figure(packing, "hardness_HB"), "HB", COMMON_PRACTICE
    )


def _figure(packing: str, column: str) -> float:
    found = _finishes()
    if packing not in found:
        raise NotKnown(f"no rod finish is listed for {packing}; known: {', '.join(found)}")
    return float(found[packing][column])


def _finishes() -> dict[str, Row]:
    return {row["packing"]: row for row in rows(_FINISH, "speclint_motion")}
