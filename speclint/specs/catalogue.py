"""Every kind of spec that the core knows, each imported when it is first asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from importlib import import_module

from speclint.specs.component import Spec

#: The word a spec writes, and where its class is.
KINDS: dict[str, str] = {
    "access-plan": "speclint.specs.access_plan:AccessPlan",
    "blast-nozzle": "speclint.specs.blast_nozzle:BlastNozzle",
    "bolted-joint": "speclint.specs.bolted_joint:BoltedJoint",
    "cam": "speclint.specs.cam:Cam",
    "cam-box": "speclint.specs.cam_box:CamBox",
    "casting": "speclint.specs.casting:Casting",
    "compression-spring": "speclint.specs.compression_spring:CompressionSpring",
    "crosshead": "speclint.specs.crosshead:Crosshead",
    "cylinder-block": "speclint.specs.cylinder_block:CylinderBlock",
    "cylinder-cover": "speclint.specs.cylinder_cover:CylinderCover",
    "cylinder-liner": "speclint.specs.cylinder_liner:CylinderLiner",
    "dimension-chain": "speclint.specs.dimension_chain:DimensionChain",
    "duty": "speclint.specs.duty:Duty",
    "envelope": "speclint.specs.envelope:Envelope",
    "fit": "speclint.specs.fit:Fit",
    "frame-fastening": "speclint.specs.frame_fastening:FrameFastening",
    "gauge-outline": "speclint.specs.gauge_outline:GaugeOutline",
    "gland": "speclint.specs.gland:Gland",
    "lagging": "speclint.specs.lagging:Lagging",
    "lens-joint": "speclint.specs.lens_joint:LensJoint",
    "lifting-plan": "speclint.specs.lifting_plan:LiftingPlan",
    "locating-face": "speclint.specs.locating_face:LocatingFace",
    "partition": "speclint.specs.partition:Partition",
    "pin": "speclint.specs.pin:Pin",
    "pipe-flange": "speclint.specs.pipe_flange:PipeFlange",
    "piston": "speclint.specs.piston:Piston",
    "piston-ring": "speclint.specs.piston_ring:PistonRing",
    "piston-rod": "speclint.specs.piston_rod:PistonRod",
    "poppet-valve": "speclint.specs.poppet_valve:PoppetValve",
    "rocker": "speclint.specs.rocker:Rocker",
    "shaft": "speclint.specs.shaft:Shaft",
    "slide-bar": "speclint.specs.slide_bar:SlideBar",
    "steam-passage": "speclint.specs.steam_passage:SteamPassage",
    "steam-pipe": "speclint.specs.steam_pipe:SteamPipe",
    "stuffing-box": "speclint.specs.stuffing_box:StuffingBox",
    "tappet": "speclint.specs.tappet:Tappet",
    "valve-seat": "speclint.specs.valve_seat:ValveSeat",
    "valve-spindle": "speclint.specs.valve_spindle:ValveSpindle",
    "weldment": "speclint.specs.weldment:Weldment",
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
