"""The plates that a weld joins."""

from __future__ import annotations

from dataclasses import dataclass

from speclint import Sheet
from speclint.equations import Metres
from speclint.specs import Plate, WeldedJoint, Weldment


@dataclass(frozen=True, slots=True)
class Joined:
    """Two plates, with their names."""

    names: tuple[str, str]
    plates: tuple[Plate, Plate]

    def thicknesses(self, sheet: Sheet) -> tuple[Metres, Metres]:
        """Thickness of both by the drawing [m]."""
        one, other = (
            sheet.take(f"t of {name}", plate.thickness)
            for name, plate in zip(self.names, self.plates, strict=True)
        )
        return one, other


def joined_by(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> Joined:
    """The plates that a weld joins; not assessed unless it names two."""
    if len(joint.plates_joined) != 2:
        said = f"{len(joint.plates_joined)} plates are stated to be joined by weld {name}; plates_joined names two"
        raise sheet.not_assessed(said, joint.where)
    one, other = joint.plates_joined
    of = f"plates of {weldment.id}"
    return Joined(
        (sheet.read(f"plate of {name}", one), sheet.read(f"other plate of {name}", other)),
        (sheet.entry(weldment.plates, one, of), sheet.entry(weldment.plates, other, of)),
    )


def plate_standing(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> Plate | None:
    """The plate that a weld joins to the face of another: that of its wall, or the other of the two that it names.

    None where the weld names no plate but the one, or names none that the weldment has.
    """
    face = sheet.read(f"plate of {name}", joint.plate)
    named = [sheet.read(f"plates joined by {name}", one) for one in joint.plates_joined]
    if named.count(face) > 1:
        return weldment.plates.get(face)
    if sheet.is_stated(f"wall of {name}", joint.wall):
        wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
        named.append(sheet.read(f"plate of the wall of {name}", wall.plate))
    return weldment.plates.get(next((one for one in named if one != face), ""))


def share_of_a_side(name: str, joint: WeldedJoint, sheet: Sheet) -> float:
    """How much of a plate that is penetrated one side has: half where the weld is laid from both, else the whole."""
    return 0.5 if sheet.said(f"{name} from both sides", joint.from_both_sides) else 1.0
