"""The best detail category that the shape of a weld and the way it is laid can have."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Pascals
from speclint.specs import WeldedJoint, Weldment
from speclint_fabrication.formulae.tables import best_category
from speclint_fabrication.inputs.joined import plate_standing, share_of_a_side


def best_of_its_kind(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> Pascals:
    """The best category [Pa] that EN 1993-1-9 has for a weld of this shape; one not stated is taken for a tee."""
    shape = sheet.said(f"shape of {name}", joint.shape)
    size = 0.0
    if shape == "lap":
        detail = "any"
    elif shape == "butt":
        detail = _of_butt(name, joint, sheet)
    else:
        shape, detail, size = "tee", *_of_tee(name, joint, weldment, sheet)
    return sheet.look_up(f"Δσ_b of {name}", best_category, shape=shape, detail=detail, size=size)


def _of_butt(name: str, joint: WeldedJoint, sheet: Sheet) -> str:
    """How a butt weld is laid: what is not stated is taken for the worse."""
    if not _goes_through(name, joint, sheet):
        return "not through"
    if sheet.said(f"{name} ground flush", joint.ground_flush):
        return "ground flush"
    if share_of_a_side(name, joint, sheet) < 1:
        return "from both sides"
    stated = sheet.is_stated(f"examination of {name}", joint.examined)
    whole = stated and sheet.take(f"x of {name}", joint.examined) >= 1
    return "from one side, examined" if whole else "from one side"


def _of_tee(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> tuple[str, float]:
    """How a tee is laid, and the thickness [m] of the plate that stands on the other: 0 where the weld names none."""
    if not _goes_through(name, joint, sheet):
        return "not through", 0.0
    standing = plate_standing(name, joint, weldment, sheet)
    return "through", 0.0 if standing is None else sheet.take_nominal(f"t_s of {name}", standing.thickness)


def _goes_through(name: str, joint: WeldedJoint, sheet: Sheet) -> bool:
    return sheet.read(f"weld of {name}", joint.weld) == "full penetration"
