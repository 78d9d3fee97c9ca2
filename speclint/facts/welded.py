"""Whether a part is welded, by all that its spec, its records and its neighbours state."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from speclint.facts.flange_welds import is_welded_to_flange
from speclint.rules import Sheet
from speclint.specs import (
    Bracket,
    ChamberCover,
    CylinderBlock,
    CylinderCover,
    MadePart,
    RetainingRing,
    ValveCage,
    Weldment,
)

if TYPE_CHECKING:
    from speclint.specs import Component

#: Words for welds, in English and in German; a weldment is another part, and a weldless tube has none.
_WELDS = r"(?i)(?<!un)weld(?!ment|less)|schwei(?:ß|ss)"
#: What parts one saying of an examination from the next.
_PARTED = r"(?i)[,;.()]|\b(?:and|but|und|aber)\b"
#: Words by which a weld is denied or forbidden: "no weld repairs", "welding not permitted".
_DENIED = (
    r"(?i)\b(?:no|not|none|non|never|nor|without|excluded|forbidden|prohibited|refused|keine?[nrs]?|nicht|ohne"
    r"|verboten)\b"
)


def is_welded(component: Component, sheet: Sheet) -> bool:
    """Whether a component is a weldment or a fabricated block, or states that it is welded.

    One that states a preheat, a treatment after welding or the joint factor of a welded cover is welded too, and so is
    a flange that is welded on, with its pipe, and a part whose examination, inspection plan or records name welds,
    whatever else it states.
    """
    if isinstance(component, Weldment):
        return True
    if sheet.said("welded", component.welding.welded):
        return True
    if _speaks_of_welds(component, sheet) or is_welded_to_flange(component, sheet):
        return True
    if names_welds(component, sheet):
        return True
    if isinstance(component, CylinderBlock):
        return sheet.read("construction", component.construction) == "fabricated"
    return False


def _speaks_of_welds(component: Component, sheet: Sheet) -> bool:
    welding = component.welding
    if sheet.is_stated("preheat", welding.preheat):
        return True
    treated = sheet.is_stated("treatment after welding", welding.heat_treatment)
    if treated and sheet.read("treatment after welding", welding.heat_treatment) != "none":
        return True
    if not isinstance(component, CylinderCover | ChamberCover):
        return False
    efficiency = component.weld_efficiency
    return sheet.is_stated("weld efficiency", efficiency) and sheet.take("z", efficiency) < 1


def names_welds(component: Component, sheet: Sheet) -> bool:
    """Whether an examination, a point of the inspection plan, a record, or how a part is held names its welds."""
    examination = sheet.said("examination", component.examination)
    if examination is not None and speaks_of_a_weld(examination):
        return True
    point = sheet.said("point of welding", component.inspection_points.welding)
    if point is not None and point != "none":
        return True
    if any(made.welds for made in sheet.belonging_to(component, MadePart)):
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
    if isinstance(component, Bracket):
        return bool(component.welds)
    if isinstance(component, ValveCage):
        return sheet.said("fastened by", component.fastened_by) == "welds"
    if isinstance(component, RetainingRing):
        return sheet.said("fastened", component.fastened) == "welded in"
    return False
