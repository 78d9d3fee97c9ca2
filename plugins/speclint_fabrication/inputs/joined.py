"""The two plates that a weld joins."""

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
