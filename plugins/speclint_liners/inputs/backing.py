"""Whether the block stands behind a liner all along, so that it cannot break however thin it is."""

from __future__ import annotations

from speclint import Sheet
from speclint.facts import lengths_of_fit
from speclint.handbook.cylinders import length_without_backing
from speclint.specs import CylinderLiner
from speclint_liners.inputs.fitted import Housing

#: A micrometre: common practice, finer than any length of a liner is drawn.
_ROUNDING = 1e-6


def is_backed(liner: CylinderLiner, housed: Housing, sheet: Sheet) -> bool:
    """Whether a liner is dry and fully backed: no length of its bore relieved, and in contact over its working bore."""
    for name, one in housed.bore.relieved.items():
        sheet.take(f"x_{name}", one.starts)
    if housed.bore.relieved:
        return False
    bare = sheet.work(
        "U",
        length_without_backing,
        x_1=sheet.take("x_1", liner.working_from),
        x_2=sheet.take("x_2", liner.working_to),
        L=min(lengths_of_fit(liner, sheet)),
    )
    return bare < _ROUNDING
