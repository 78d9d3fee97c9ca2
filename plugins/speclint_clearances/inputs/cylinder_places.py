"""Where a cylinder ahead of its axle lies along and across the engine, by its rods, faces and covers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct

from speclint import Sheet
from speclint.facts import (
    axis_height,
    axle_driven_for,
    axle_pairs_at,
    connecting_rod_of,
    cranks_of,
    ends_by_side,
    engine_of,
    faces_apart,
    places_apart,
    side_closed,
    stroke_of,
)
from speclint.specs import CylinderBlock, CylinderCover, DrivingAxle, Engine, Envelope
from speclint_clearances.formulae.motion_beside import outside_of_cover

if TYPE_CHECKING:
    from speclint.equations import Metres
    from speclint.specs import Crank, CylinderEnd


class CoverPlace(Struct, frozen=True):
    """The outer side of a cover along the engine, its outside diameter and its thickness."""

    x: Metres
    D: Metres
    t: Metres


class CylinderPlace(Struct, frozen=True):
    """A cylinder on its engine: its axle, where its axis lies, both covers, and the lengths of its motion."""

    engine: Engine
    axle: DrivingAxle
    h: Metres
    y: Metres
    back: CoverPlace
    front: CoverPlace
    L: Metres
    S: Metres
    X_f: Metres


def cylinder_place(envelope: Envelope, block: CylinderBlock, sheet: Sheet) -> CylinderPlace | str:
    """The place of a block's only cylinder; else what is wanting to work it."""
    engine = engine_of(block, sheet)
    if engine is None or len(block.bores) != 1:
        return "no engine has a crank of this cylinder alone"
    axle = axle_driven_for(block, engine, sheet)
    if axle is None:
        return "no axle says that the rods of this cylinder drive it"
    covers = {side_closed(cover, sheet): cover for cover in sheet.belonging_to(block, CylinderCover)}
    ends = ends_by_side(block, next(iter(block.bores)), sheet)
    if not {"front", "back"} <= covers.keys() & ends.keys():
        return "front and back cover with their ends are not both drawn"
    if not _is_ahead(envelope, axle, engine, sheet):
        return "no point of a cover says that the cylinder is ahead of its axle"
    crank = next(iter(cranks_of(engine, block, sheet)))[1]
    lacks = _lacks(block, axle, crank, covers["front"], covers["back"], sheet)
    return lacks or _placed(block, axle, engine, crank, (covers["front"], covers["back"]), ends, sheet)


def _lacks(
    block: CylinderBlock,
    axle: DrivingAxle,
    crank: Crank,
    front: CylinderCover,
    back: CylinderCover,
    sheet: Sheet,
) -> str:
    """What is not stated of rods, stroke, covers and place; "" where all is."""
    wanted = {
        "length of the connecting rod": connecting_rod_of(block, sheet),
        "length of the piston rod": block.drive.rod_length,
        "stroke": stroke_of(block, sheet),
        f"place of {axle.id}": axle.at,
        "distance of the axis from the middle of the engine": crank.axis_from_centre,
        **{f"thickness of {one.id}": one.thickness for one in (front, back)},
        **{f"outside diameter of {one.id}": one.outside_diameter for one in (front, back)},
    }
    return ", ".join(
        f"{name} is not stated" for name, one in wanted.items() if not sheet.is_stated(name, one)
    )


def _placed(
    block: CylinderBlock,
    axle: DrivingAxle,
    engine: Engine,
    crank: Crank,
    covers: tuple[CylinderCover, CylinderCover],
    ends: dict[str, CylinderEnd],
    sheet: Sheet,
) -> CylinderPlace | str:
    faces = places_apart((ends["front"], ends["back"]), sheet)
    if faces is None:
        return "the places of both faces are not stated"
    height = axis_height(block, sheet, sheet.take)
    if height is None:
        return "the height of the axis is not known"
    X_f = faces_apart(faces, sheet, sheet.take)
    L, rod = sheet.take("L", block.drive.rod_length), sheet.take("l", connecting_rod_of(block, sheet))
    front, back = (
        CoverPlace(
            sheet.work(
                f"x_c {cover.id}",
                outside_of_cover,
                x_a=sheet.take("x_a", axle.at),
                l=rod,
                L=L,
                j=j,
                X_f=X_f,
                t=(t := sheet.take(f"t {cover.id}", cover.thickness)),
            ),
            sheet.take(f"D {cover.id}", cover.outside_diameter),
            t,
        )
        for cover, j in zip(covers, (1.0, -1.0), strict=True)
    )
    y, S = sheet.take("y_a", crank.axis_from_centre), sheet.take("S", stroke_of(block, sheet))
    return CylinderPlace(engine, axle, height.value, y, back, front, L, S, X_f)


def _is_ahead(envelope: Envelope, axle: DrivingAxle, engine: Engine, sheet: Sheet) -> bool:
    """Whether a point of a cover lies ahead of the axle: its place counts from the middle of the rigid wheelbase."""
    pairs = axle_pairs_at(envelope, engine, 0.0, sheet)
    if not pairs or not sheet.is_stated(f"place of {axle.id}", axle.at):
        return False
    for name, point in envelope.points.items():
        part = sheet.follow(point.of) if sheet.is_stated(f"part of {name}", point.of) else None
        if isinstance(part, CylinderCover) and sheet.is_stated(f"place of {name}", point.along):
            x = sheet.take_nominal(f"x {name}", point.along)
            middle = pairs[0][0].value + pairs[0][1].value
            return bool(2 * x + middle > 2 * sheet.take_nominal("x_a", axle.at))
    return False
