"""Where the class of each kind of the core is, by the word a spec writes; none is imported before it is asked for."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from speclint.specs.spec import Spec

#: The word a spec writes, and where its class is.
KINDS: dict[str, str] = {
    "access-plan": "speclint.specs.kinds.access_plan:AccessPlan",
    "assembly": "speclint.specs.kinds.assembly:Assembly",
    "blast-nozzle": "speclint.specs.kinds.blast_nozzle:BlastNozzle",
    "bolted-joint": "speclint.specs.kinds.bolted_joint:BoltedJoint",
    "bracket": "speclint.specs.kinds.bracket:Bracket",
    "cam": "speclint.specs.kinds.cam:Cam",
    "cam-box": "speclint.specs.kinds.cam_box:CamBox",
    "casting": "speclint.specs.kinds.casting:Casting",
    "chamber-cover": "speclint.specs.kinds.chamber_cover:ChamberCover",
    "compression-spring": "speclint.specs.kinds.compression_spring:CompressionSpring",
    "crosshead": "speclint.specs.kinds.crosshead:Crosshead",
    "cylinder-block": "speclint.specs.kinds.cylinder_block:CylinderBlock",
    "cylinder-cover": "speclint.specs.kinds.cylinder_cover:CylinderCover",
    "cylinder-liner": "speclint.specs.kinds.cylinder_liner:CylinderLiner",
    "dimension-chain": "speclint.specs.kinds.dimension_chain:DimensionChain",
    "driving-axle": "speclint.specs.kinds.driving_axle:DrivingAxle",
    "duty": "speclint.specs.kinds.duty:Duty",
    "engine": "speclint.specs.kinds.engine:Engine",
    "envelope": "speclint.specs.kinds.envelope:Envelope",
    "fit": "speclint.specs.kinds.fit:Fit",
    "frame": "speclint.specs.kinds.frame:Frame",
    "frame-fastening": "speclint.specs.kinds.frame_fastening:FrameFastening",
    "gauge-outline": "speclint.specs.kinds.gauge_outline:GaugeOutline",
    "gland": "speclint.specs.kinds.gland:Gland",
    "known-fault": "speclint.specs.kinds.known_fault:KnownFault",
    "lagging": "speclint.specs.kinds.lagging:Lagging",
    "lens-joint": "speclint.specs.kinds.lens_joint:LensJoint",
    "lifting-plan": "speclint.specs.kinds.lifting_plan:LiftingPlan",
    "locating-face": "speclint.specs.kinds.locating_face:LocatingFace",
    "made-part": "speclint.specs.kinds.made_part:MadePart",
    "partition": "speclint.specs.kinds.partition:Partition",
    "pin": "speclint.specs.kinds.pin:Pin",
    "pipe-flange": "speclint.specs.kinds.pipe_flange:PipeFlange",
    "piston": "speclint.specs.kinds.piston:Piston",
    "piston-ring": "speclint.specs.kinds.piston_ring:PistonRing",
    "piston-rod": "speclint.specs.kinds.piston_rod:PistonRod",
    "poppet-valve": "speclint.specs.kinds.poppet_valve:PoppetValve",
    "retaining-ring": "speclint.specs.kinds.retaining_ring:RetainingRing",
    "rocker": "speclint.specs.kinds.rocker:Rocker",
    "saddle": "speclint.specs.kinds.saddle:Saddle",
    "shaft": "speclint.specs.kinds.shaft:Shaft",
    "slide-bar": "speclint.specs.kinds.slide_bar:SlideBar",
    "steam-passage": "speclint.specs.kinds.steam_passage:SteamPassage",
    "steam-pipe": "speclint.specs.kinds.steam_pipe:SteamPipe",
    "stuffing-box": "speclint.specs.kinds.stuffing_box:StuffingBox",
    "tappet": "speclint.specs.kinds.tappet:Tappet",
    "valve-cage": "speclint.specs.kinds.valve_cage:ValveCage",
    "valve-gear": "speclint.specs.kinds.valve_gear:ValveGear",
    "valve-seat": "speclint.specs.kinds.valve_seat:ValveSeat",
    "valve-spindle": "speclint.specs.kinds.valve_spindle:ValveSpindle",
    "weldment": "speclint.specs.kinds.weldment:Weldment",
}
#: The names of the classes.
CLASSES = frozenset(place.partition(":")[2] for place in KINDS.values())


def imported(place: str) -> type[Spec]:
    """The class of a kind, by its place among the kinds."""
    module, _, name = place.partition(":")
    kind: type[Spec] = getattr(import_module(module), name)
    return kind
