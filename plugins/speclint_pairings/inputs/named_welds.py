"""Whether anything that a spec or its records state names a weld of a part, beside its table of welding."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, cast

from speclint import Sheet
from speclint.specs import by_word

if TYPE_CHECKING:
    from speclint.specs import Bracket, Component, RetainingRing, ValveCage

#: Words for welds, in English and in German; a weldment is another part, and a weldless tube has none.
_WELDS = r"(?i)(?<!un)weld(?!ment|less)|schwei(?:ß|ss)"
#: What parts one saying of an examination from the next.
_PARTED = r"(?i)[,;.()]|\b(?:and|but|und|aber)\b"
#: Words by which a weld is denied or forbidden: "no weld repairs", "welding not permitted".
_DENIED = (
    r"(?i)\b(?:no|not|none|non|never|nor|without|excluded|forbidden|prohibited|refused|keine?[nrs]?|nicht|ohne"
    r"|verboten)\b"
)


def names_welds(component: Component, sheet: Sheet) -> bool:
    """Whether an examination, a point of the inspection plan, a record, or how a part is held names its welds."""
    examination = sheet.said("examination", component.examination)
    if examination is not None and speaks_of_a_weld(examination):
        return True
    point = sheet.said("point of welding", component.inspection_points.welding)
    if point is not None and point != "none":
        return True
    if any(made.welds for made in sheet.belonging_to(component, by_word.MadePart)):
        return True
    return _is_held_by_welds(component, sheet)


def speaks_of_a_weld(examination: str) -> bool:
    """Whether the words of an examination name a weld that they do not deny.

    >>> speaks_of_a_weld("butt welds radiographed"), speaks_of_a_weld("magnetic particle, no weld repairs")
    (True, False)
    """
    return any(
        re.search(_WELDS, said) and not re.search(_DENIED, said) for said in re.split(_PARTED, examination)
    )


def _is_held_by_welds(component: Component, sheet: Sheet) -> bool:
    """Whether a bracket, a cage or a ring says that it is welded on."""
    if component.is_one_of(("bracket",)):
        return bool(cast("Bracket", component).welds)
    if component.is_one_of(("valve-cage",)):
        return sheet.said("fastened by", cast("ValveCage", component).fastened_by) == "welds"
    if component.is_one_of(("retaining-ring",)):
        return sheet.said("fastened", cast("RetainingRing", component).fastened) == "welded in"
    return False
