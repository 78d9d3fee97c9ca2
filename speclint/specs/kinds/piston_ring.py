"""The piston ring: it runs in a liner, and the end rings run past the ends of the working bore."""

from __future__ import annotations

from typing import ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Fraction, Hardness, Length, LinkTo, Stress, Word
from speclint.specs.kinds.cylinder_liner import Structure
from speclint.specs.link_targets import CylinderBlock, CylinderLiner


class PistonRing(Component):
    """A piston ring.

    Fields:
        runs_in: the liner
        bears_on: the block, where the ring runs directly in its bore without a liner
        place: front or back for the end ring of the piston, middle for one between
        edge_from_piston_face: from the piston's face at that end to the ring's nearer edge
        width: along the axis
        thickness: radial
        gap: between its ends in the new bore, cold
        wall_pressure: mean contact pressure on the new bore by its own spring, without steam
        made_for: bores for which the ring is made or kept in stock
        hardness: of the ring
        phosphorus: content of its iron
        structure: of its iron
    """

    kind: ClassVar[str] = "piston-ring"
    called: ClassVar[str] = "piston ring"

    runs_in: LinkTo[CylinderLiner] = NOT_STATED
    bears_on: LinkTo[CylinderBlock] = NOT_STATED
    place: Word[Literal["front", "middle", "back"]] = NOT_STATED
    edge_from_piston_face: Length = NOT_STATED
    width: Length = NOT_STATED
    thickness: Length = NOT_STATED
    gap: Length = NOT_STATED
    wall_pressure: Stress = NOT_STATED
    made_for: tuple[Length, ...] = ()
    hardness: Hardness = NOT_STATED
    phosphorus: Fraction = NOT_STATED
    structure: Word[Structure] = NOT_STATED
