"""Through-thickness quality required of a plate."""

from __future__ import annotations

from speclint import formula
from speclint.equations import Ratio
from speclint_fabrication.sources import EN_1993_1_10


@formula("Z = Z_a + Z_b + Z_c + Z_d + Z_e", cites=[EN_1993_1_10.at("3.2, eq. 3.2")])
def quality_asked(Z_a: Ratio, Z_b: Ratio, Z_c: Ratio, Z_d: Ratio, Z_e: Ratio) -> Ratio:
    """Through-thickness quality required.

    Z = Z_a + Z_b + Z_c + Z_d + Z_e

    ``Z_a`` throat, ``Z_b`` shape and weld, ``Z_c`` thickness, ``Z_d`` restraint, ``Z_e`` preheat: points of Table 3.2.
    Returns points; up to 10 need no Z quality, to 20 Z15, to 30 Z25, beyond Z35 (EN 1993-1-1, Table 3.2, from memory).

    Hand working: throat 20 mm 6, tee through in sequence 3, 40 mm 8, medium restraint 3, cold 0: 20 points, Z15.

    >>> quality_asked(Z_a=6.0, Z_b=3.0, Z_c=8.0, Z_d=3.0, Z_e=0.0)
    20.0
    """
    return Z_a + Z_b + Z_c + Z_d + Z_e
