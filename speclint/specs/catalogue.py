"""Every kind of spec that the core knows."""

from __future__ import annotations

from speclint.specs.component import Spec
from speclint.specs.compression_spring import CompressionSpring
from speclint.specs.cylinder_block import CylinderBlock
from speclint.specs.cylinder_liner import CylinderLiner
from speclint.specs.duty import Duty
from speclint.specs.piston_ring import PistonRing
from speclint.specs.poppet_valve import PoppetValve
from speclint.specs.valve_seat import ValveSeat

KINDS: tuple[type[Spec], ...] = (
    Duty,
    CylinderBlock,
    CylinderLiner,
    PistonRing,
    CompressionSpring,
    PoppetValve,
    ValveSeat,
)
