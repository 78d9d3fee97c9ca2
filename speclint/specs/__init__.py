"""What a spec may say: the base classes, the words a field is made of, and every kind of the core.

Families import from here.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

from speclint.specs.catalogue import Catalogue
from speclint.specs.component import Spec, SpecTable
from speclint.specs.duty import CASE_NAMES, CaseName, Duty, LoadCase
from speclint.specs.part import Component
from speclint.specs.words import (
    NOT_STATED,
    Allowance,
    Angle,
    Area,
    Conductivity,
    Duration,
    Force,
    Fraction,
    Hardness,
    Inertia,
    Length,
    Link,
    LinkTo,
    Mass,
    MassFlow,
    Moment,
    NotStated,
    Position,
    Pressure,
    RotationalSpeed,
    Speed,
    Stated,
    Stiffness,
    Stress,
    Temperature,
    TemperatureDifference,
    Volume,
    Word,
)

if TYPE_CHECKING:
    from speclint.specs.access_plan import AccessPlan, SpannerRoom, Withdrawal
    from speclint.specs.blast_nozzle import BlastNozzle
    from speclint.specs.bolted_joint import BoltedJoint
    from speclint.specs.cam import Cam
    from speclint.specs.cam_box import CamBox
    from speclint.specs.casting import Casting, Core, MachinedFace, Meeting
    from speclint.specs.compression_spring import CompressionSpring
    from speclint.specs.crosshead import Crosshead
    from speclint.specs.cylinder_block import (
        BlockPort,
        Bore,
        CylinderBlock,
        CylinderEnd,
        Division,
        Pad,
        SeatBore,
    )
    from speclint.specs.cylinder_cover import CylinderCover
    from speclint.specs.cylinder_liner import CylinderLiner, LinerPort
    from speclint.specs.dimension import Dimension
    from speclint.specs.dimension_chain import ChainLink, DimensionChain
    from speclint.specs.envelope import Envelope, GaugePoint, MotionGap
    from speclint.specs.fit import Fit
    from speclint.specs.frame_fastening import FrameFastening
    from speclint.specs.gauge_outline import GaugeOutline
    from speclint.specs.gland import Gland
    from speclint.specs.lagging import Lagging
    from speclint.specs.lens_joint import LensJoint
    from speclint.specs.lifting_plan import LiftingPlan, LiftingPoint, Lug, Weight
    from speclint.specs.locating_face import LocatingFace
    from speclint.specs.partition import Partition
    from speclint.specs.pin import Pin
    from speclint.specs.pipe_flange import PipeFlange
    from speclint.specs.piston import Groove, Piston
    from speclint.specs.piston_ring import PistonRing
    from speclint.specs.piston_rod import PistonRod, RodSection
    from speclint.specs.poppet_valve import Beat, PoppetValve
    from speclint.specs.rocker import Rocker
    from speclint.specs.shaft import Shaft
    from speclint.specs.slide_bar import SlideBar
    from speclint.specs.steam_passage import SteamPassage
    from speclint.specs.steam_pipe import SteamPipe
    from speclint.specs.stuffing_box import StuffingBox
    from speclint.specs.tappet import Tappet
    from speclint.specs.valve_seat import ValveSeat
    from speclint.specs.valve_spindle import ValveSpindle
    from speclint.specs.weldment import FinishedFace, FlatWall, Plate, Ribs, WeldedJoint, Weldment

__all__ = [
    "CASE_NAMES",
    "NOT_STATED",
    "AccessPlan",
    "Allowance",
    "Angle",
    "Area",
    "Beat",
    "BlastNozzle",
    "BlockPort",
    "BoltedJoint",
    "Bore",
    "Cam",
    "CamBox",
    "CaseName",
    "Casting",
    "Catalogue",
    "ChainLink",
    "Component",
    "CompressionSpring",
    "Conductivity",
    "Core",
    "Crosshead",
    "CylinderBlock",
    "CylinderCover",
    "CylinderEnd",
    "CylinderLiner",
    "Dimension",
    "DimensionChain",
    "Division",
    "Duration",
    "Duty",
    "Envelope",
    "FinishedFace",
    "Fit",
    "FlatWall",
    "Force",
    "Fraction",
    "FrameFastening",
    "GaugeOutline",
    "GaugePoint",
    "Gland",
    "Groove",
    "Hardness",
    "Inertia",
    "Lagging",
    "Length",
    "LensJoint",
    "LiftingPlan",
    "LiftingPoint",
    "LinerPort",
    "Link",
    "LinkTo",
    "LoadCase",
    "LocatingFace",
    "Lug",
    "MachinedFace",
    "Mass",
    "MassFlow",
    "Meeting",
    "Moment",
    "MotionGap",
    "NotStated",
    "Pad",
    "Partition",
    "Pin",
    "PipeFlange",
    "Piston",
    "PistonRing",
    "PistonRod",
    "Plate",
    "PoppetValve",
    "Position",
    "Pressure",
    "Ribs",
    "Rocker",
    "RodSection",
    "RotationalSpeed",
    "SeatBore",
    "Shaft",
    "SlideBar",
    "SpannerRoom",
    "Spec",
    "SpecTable",
    "Speed",
    "Stated",
    "SteamPassage",
    "SteamPipe",
    "Stiffness",
    "Stress",
    "StuffingBox",
    "Tappet",
    "Temperature",
    "TemperatureDifference",
    "ValveSeat",
    "ValveSpindle",
    "Volume",
    "Weight",
    "WeldedJoint",
    "Weldment",
    "Withdrawal",
    "Word",
]

#: The kinds' classes and their tables by name: each module is imported when a family first names one of them.
_PLACES = {
    "AccessPlan": "speclint.specs.access_plan",
    "Beat": "speclint.specs.poppet_valve",
    "BlastNozzle": "speclint.specs.blast_nozzle",
    "BlockPort": "speclint.specs.cylinder_block",
    "BoltedJoint": "speclint.specs.bolted_joint",
    "Bore": "speclint.specs.cylinder_block",
    "Cam": "speclint.specs.cam",
    "CamBox": "speclint.specs.cam_box",
    "Casting": "speclint.specs.casting",
    "ChainLink": "speclint.specs.dimension_chain",
    "CompressionSpring": "speclint.specs.compression_spring",
    "Core": "speclint.specs.casting",
    "Crosshead": "speclint.specs.crosshead",
    "CylinderBlock": "speclint.specs.cylinder_block",
    "CylinderCover": "speclint.specs.cylinder_cover",
    "CylinderEnd": "speclint.specs.cylinder_block",
    "CylinderLiner": "speclint.specs.cylinder_liner",
    "Dimension": "speclint.specs.dimension",
    "DimensionChain": "speclint.specs.dimension_chain",
    "Division": "speclint.specs.cylinder_block",
    "Envelope": "speclint.specs.envelope",
    "FinishedFace": "speclint.specs.weldment",
    "Fit": "speclint.specs.fit",
    "FlatWall": "speclint.specs.weldment",
    "FrameFastening": "speclint.specs.frame_fastening",
    "GaugeOutline": "speclint.specs.gauge_outline",
    "GaugePoint": "speclint.specs.envelope",
    "Gland": "speclint.specs.gland",
    "Groove": "speclint.specs.piston",
    "Lagging": "speclint.specs.lagging",
    "LensJoint": "speclint.specs.lens_joint",
    "LiftingPlan": "speclint.specs.lifting_plan",
    "LiftingPoint": "speclint.specs.lifting_plan",
    "LinerPort": "speclint.specs.cylinder_liner",
    "LocatingFace": "speclint.specs.locating_face",
    "Lug": "speclint.specs.lifting_plan",
    "MachinedFace": "speclint.specs.casting",
    "Meeting": "speclint.specs.casting",
    "MotionGap": "speclint.specs.envelope",
    "Pad": "speclint.specs.cylinder_block",
    "Partition": "speclint.specs.partition",
    "Pin": "speclint.specs.pin",
    "PipeFlange": "speclint.specs.pipe_flange",
    "Piston": "speclint.specs.piston",
    "PistonRing": "speclint.specs.piston_ring",
    "PistonRod": "speclint.specs.piston_rod",
    "Plate": "speclint.specs.weldment",
    "PoppetValve": "speclint.specs.poppet_valve",
    "Ribs": "speclint.specs.weldment",
    "Rocker": "speclint.specs.rocker",
    "RodSection": "speclint.specs.piston_rod",
    "SeatBore": "speclint.specs.cylinder_block",
    "Shaft": "speclint.specs.shaft",
    "SlideBar": "speclint.specs.slide_bar",
    "SpannerRoom": "speclint.specs.access_plan",
    "SteamPassage": "speclint.specs.steam_passage",
    "SteamPipe": "speclint.specs.steam_pipe",
    "StuffingBox": "speclint.specs.stuffing_box",
    "Tappet": "speclint.specs.tappet",
    "ValveSeat": "speclint.specs.valve_seat",
    "ValveSpindle": "speclint.specs.valve_spindle",
    "Weight": "speclint.specs.lifting_plan",
    "WeldedJoint": "speclint.specs.weldment",
    "Weldment": "speclint.specs.weldment",
    "Withdrawal": "speclint.specs.access_plan",
}

if not TYPE_CHECKING:

    def __getattr__(name: str) -> object:
        if name not in _PLACES:
            raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
        return getattr(import_module(_PLACES[name]), name)
