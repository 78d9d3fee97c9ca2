"""The lowest place of a block that is lifted: its barrel and the faces of its ends reach below the axis."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint import Grade, Sheet
from speclint.facts import thickest_wall
from speclint.specs import CylinderBlock, CylinderLiner, LiftingPlan
from speclint_clearances.formulae.cranes import below_axis, lowest_of_metal, radius_of_barrel, radius_of_face
from speclint_clearances.inputs.counted import Counted, rounded

if TYPE_CHECKING:
    from speclint.equations import Metres


def lowest_place(plan: LiftingPlan, sheet: Sheet) -> Counted:
    """The lowest place of the load as stated, and no higher than the metal round the axis of each liner weighed."""
    z_b = counted = sheet.take("z_b", plan.bottom)
    told = []
    for name, z_a, reach in _reaches(plan, sheet):
        depth = sheet.work(f"d {name}", below_axis, z_a=z_a, z_b=z_b)
        judged = sheet.at_least(depth, rounded(f"r_l {name}", reach, sheet)).else_says(
            f"lowest place {{found}} below the axis of {name} as stated, its metal {{limit}}"
        )
        told.append(judged.graded(Grade.NONCONFORMITY))
        counted = min(counted, sheet.work(f"z_m {name}", lowest_of_metal, z_a=z_a, r=reach))
    return Counted(counted, tuple(told))


def _reaches(plan: LiftingPlan, sheet: Sheet) -> Iterator[tuple[str, Metres, Metres]]:
    """Each liner that a weight is, the height of its axis, and how far the block reaches from that axis."""
    block = sheet.follow(plan.lifts) if sheet.is_stated("what is lifted", plan.lifts) else None
    if not isinstance(block, CylinderBlock):
        return
    for name, weight in plan.weights.items():
        part = sheet.follow(weight.of) if sheet.is_stated(f"part of {name}", weight.of) else None
        if isinstance(part, CylinderLiner) and sheet.follow(part.housed_in).id == block.id:
            radii = list(_radii(part, block, sheet))
            if radii:
                yield part.id, sheet.take(f"z {name}", weight.z), max(radii)


def _radii(liner: CylinderLiner, block: CylinderBlock, sheet: Sheet) -> Iterator[Metres]:
    """Of the barrel with its wall, and of the faces of its ends, as far as they are stated."""
    alone = len(block.bores) == 1
    if alone:
        bore, name = next(iter(block.bores.values())), ""
    else:
        bore = sheet.entry(block.bores, liner.in_bore, f"the bores of {block.id}")
        name = sheet.read(f"bore of {liner.id}", liner.in_bore)
    wall = thickest_wall(bore, block, sheet, sheet.take)
    if wall is not None and sheet.is_stated("bore", bore.diameter):
        yield sheet.work("r", radius_of_barrel, D=sheet.take("D", bore.diameter), t=wall.value)
    for end_name, end in block.ends.items():
        if not alone and sheet.read(f"bore of {end_name}", end.of_bore) != name:
            continue
        if sheet.is_stated(f"face of {end_name}", end.face_diameter):
            yield sheet.work("r_f", radius_of_face, D_f=sheet.take(f"D_f {end_name}", end.face_diameter))
