"""Every kind of spec that the core knows, each imported when it is first asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from importlib import import_module

from speclint.specs.spec import Spec

#: The word a spec writes, and where its class is.
KINDS: dict[str, str] = {
    "access-plan": "speclint.specs.kinds.access_plan:AccessPlan",
    "blast-nozzle": "speclint.specs.kinds.blast_nozzle:BlastNozzle",
    "bolted-joint": "speclint.specs.kinds.bolted_joint:BoltedJoint",
    "cam": "speclint.specs.kinds.cam:Cam",
    "cam-box": "speclint.specs.kinds.cam_box:CamBox",
    "casting": "speclint.specs.kinds.casting:Casting",
    "compression-spring": "speclint.specs.kinds.compression_spring:CompressionSpring",
    "crosshead": "speclint.specs.kinds.crosshead:Crosshead",
    "cylinder-block": "speclint.specs.kinds.cylinder_block:CylinderBlock",
    "cylinder-cover": "speclint.specs.kinds.cylinder_cover:CylinderCover",
    "cylinder-liner": "speclint.specs.kinds.cylinder_liner:CylinderLiner",
    "dimension-chain": "speclint.specs.kinds.dimension_chain:DimensionChain",
    "duty": "speclint.specs.kinds.duty:Duty",
    "envelope": "speclint.specs.kinds.envelope:Envelope",
    "fit": "speclint.specs.kinds.fit:Fit",
    "frame-fastening": "speclint.specs.kinds.frame_fastening:FrameFastening",
    "gauge-outline": "speclint.specs.kinds.gauge_outline:GaugeOutline",
    "gland": "speclint.specs.kinds.gland:Gland",
    "lagging": "speclint.specs.kinds.lagging:Lagging",
    "lens-joint": "speclint.specs.kinds.lens_joint:LensJoint",
    "lifting-plan": "speclint.specs.kinds.lifting_plan:LiftingPlan",
    "locating-face": "speclint.specs.kinds.locating_face:LocatingFace",
    "partition": "speclint.specs.kinds.partition:Partition",
    "pin": "speclint.specs.kinds.pin:Pin",
    "pipe-flange": "speclint.specs.kinds.pipe_flange:PipeFlange",
    "piston": "speclint.specs.kinds.piston:Piston",
    "piston-ring": "speclint.specs.kinds.piston_ring:PistonRing",
    "piston-rod": "speclint.specs.kinds.piston_rod:PistonRod",
    "poppet-valve": "speclint.specs.kinds.poppet_valve:PoppetValve",
    "rocker": "speclint.specs.kinds.rocker:Rocker",
    "shaft": "speclint.specs.kinds.shaft:Shaft",
    "slide-bar": "speclint.specs.kinds.slide_bar:SlideBar",
    "steam-passage": "speclint.specs.kinds.steam_passage:SteamPassage",
    "steam-pipe": "speclint.specs.kinds.steam_pipe:SteamPipe",
    "stuffing-box": "speclint.specs.kinds.stuffing_box:StuffingBox",
    "tappet": "speclint.specs.kinds.tappet:Tappet",
    "valve-seat": "speclint.specs.kinds.valve_seat:ValveSeat",
    "valve-spindle": "speclint.specs.kinds.valve_spindle:ValveSpindle",
    "weldment": "speclint.specs.kinds.weldment:Weldment",
}


class Catalogue(Mapping[str, type[Spec]]):
    """Kinds by the word a spec writes; a kind that no spec uses is never imported."""

    def __init__(
        self, places: Mapping[str, str] = KINDS, more: Mapping[str, type[Spec]] | None = None
    ) -> None:
        self._places = dict(places)
        self._classes = dict(more or {})

    def __getitem__(self, kind: str) -> type[Spec]:
        if kind not in self._classes:
            module, _, name = self._places[kind].partition(":")
            self._classes[kind] = getattr(import_module(module), name)
        return self._classes[kind]

    def __iter__(self) -> Iterator[str]:
        yield from sorted({*self._places, *self._classes})

    def __len__(self) -> int:
        return len({*self._places, *self._classes})

    def with_more(self, kinds: Mapping[str, type[Spec]]) -> Catalogue:
        """The catalogue with the kinds that families bring."""
        return Catalogue(self._places, {**self._classes, **kinds})
