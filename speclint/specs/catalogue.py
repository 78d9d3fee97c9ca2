"""Every kind of spec that the core knows."""

from __future__ import annotations

from speclint.specs.bolted_joint import BoltedJoint
from speclint.specs.component import Spec
from speclint.specs.compression_spring import CompressionSpring
from speclint.specs.cylinder_block import CylinderBlock
from speclint.specs.cylinder_cover import CylinderCover
from speclint.specs.cylinder_liner import CylinderLiner
from speclint.specs.duty import Duty
from speclint.specs.gland import Gland
from speclint.specs.lens_joint import LensJoint
from speclint.specs.pipe_flange import PipeFlange
from speclint.specs.piston_ring import PistonRing
from speclint.specs.poppet_valve import PoppetValve
from speclint.specs.steam_pipe import SteamPipe
from speclint.specs.valve_seat import ValveSeat
from speclint.specs.valve_spindle import ValveSpindle

KINDS: tuple[type[Spec], ...] = (
    Duty,
    CylinderBlock,
    CylinderLiner,
    PistonRing,
    CompressionSpring,
    PoppetValve,
    ValveSeat,
    BoltedJoint,
    CylinderCover,
    Gland,
    LensJoint,
    PipeFlange,
    ValveSpindle,
    SteamPipe,
)
