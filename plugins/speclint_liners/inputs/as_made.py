"""Thickness of walls as they were rolled or cast, at which the strength of their metal is read."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import Sheet
from speclint.equations import Metres
from speclint.facts import Panel
from speclint.handbook.materials import Material
from speclint.specs import Casting, CylinderBlock, CylinderLiner, Length, Weldment
from speclint_liners.formulae.walls import wall_as_cast, wall_as_made

if TYPE_CHECKING:
    from speclint.specs import Bore, Division, FinishedFace, MachinedFace

#: Diameters that differ by less than this share are of one face (common practice: no two faces lie so close).
_SAME = 0.02


def metal_of_wall(bore: Bore, block: CylinderBlock, sheet: Sheet) -> tuple[Material, Metres]:
    """The metal of the wall round a bore and its thickness as rolled or cast.

    By the plate of the block's weldment that the wall names, else as stated; with the metal added that the weldment
    leaves on it until it is machined. Never less than the finished wall.
    """
    left = sheet.take("w", bore.wall)
    welded = sheet.belonging_to(block, Weldment)
    if sheet.is_stated("plate", bore.plate):
        if not welded:
            raise sheet.not_assessed(f"no weldment is stated that makes {block.id}", block.where)
        plate = sheet.entry(welded[0].plates, bore.plate, f"plates of {welded[0].id}")
        metal = sheet.material_named(f"plate of {block.id}", plate.material)
        rolled = sheet.take_nominal("t_r", plate.thickness)
    else:
        metal, rolled = sheet.material_of(block), sheet.take_nominal("t_r", bore.as_made)
    a = _allowance(bore, welded, sheet)
    return metal, sheet.work("t_m", wall_as_made, t_r=rolled, t=left, a=a)


def metal_of_panel(
    panel: Panel, division: Division, block: CylinderBlock, sheet: Sheet
) -> tuple[Material, Metres]:
    """The metal of a wall of a division and its thickness as rolled or cast; never less than the finished wall.

    By its plate, else of the block and as the division states it.
    """
    left = sheet.take("w", panel.thickness)
    if panel.plate is not None:
        metal = sheet.material_named(f"plate of {block.id}", panel.plate.material)
        rolled = sheet.take_nominal("t_r", panel.plate.thickness)
    else:
        metal, rolled = sheet.material_of(block), sheet.take_nominal("t_r", division.as_made)
    return metal, sheet.work("t_m", wall_as_made, t_r=rolled, t=left, a=0.0)


def _allowance(bore: Bore, welded: tuple[Weldment, ...], sheet: Sheet) -> Metres:
    """Metal that the weldment leaves on a bore until it is machined; nothing on a bore of no weldment."""
    for weldment in welded:
        for face in weldment.faces.values():
            if _is_of(bore.diameter, face, sheet):
                return sheet.take("a", face.allowance)
    if not welded:
        return 0.0
    raise sheet.not_assessed(_no_face(bore.diameter, welded[0], sheet), welded[0].where)


def _is_of(diameter: Length, face: FinishedFace | MachinedFace, sheet: Sheet) -> bool:
    """Whether a machined face is the one of a diameter."""
    if not sheet.is_stated("dimension of the face", face.dimension):
        return False
    own = sheet.take_nominal("d", diameter)
    return abs(sheet.take_nominal("d_f", face.dimension) - own) < _SAME * own


def liner_as_cast(liner: CylinderLiner, sheet: Sheet) -> Metres:
    """Wall of a liner as cast: the new wall and the metal that its casting has on bore and outside."""
    castings = sheet.belonging_to(liner, Casting)
    if not castings:
        said = (
            f"no casting is stated that becomes {liner.id}: the strength of iron is that of the wall as cast"
        )
        raise sheet.not_assessed(said, liner.where)
    return sheet.work(
        "t_c",
        wall_as_cast,
        d=sheet.take("d", liner.bore),
        D=sheet.take("D_l", liner.outside_diameter),
        a_i=_cast_on("a_i", liner.bore, castings[0], sheet),
        a_o=_cast_on("a_o", liner.outside_diameter, castings[0], sheet),
    )


def _cast_on(symbol: str, diameter: Length, casting: Casting, sheet: Sheet) -> Metres:
    for face in casting.faces.values():
        if _is_of(diameter, face, sheet):
            return sheet.take(symbol, face.allowance)
    raise sheet.not_assessed(_no_face(diameter, casting, sheet), casting.where)


def _no_face(diameter: Length, blank: Casting | Weldment, sheet: Sheet) -> str:
    size = sheet.take_nominal("d", diameter)
    return f"faces: no machined face of {sheet.millimetres(size, 'g')} is stated in {blank.where.file}"
