"""Every kind of spec that the core knows, each imported when it is first asked for."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from importlib import import_module
from typing import TYPE_CHECKING

from speclint.specs.spec import Spec

if TYPE_CHECKING:
    from speclint.specs.extra_tables import ExtraTable

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


class Catalogue(Mapping[str, type[Spec]]):
    """Kinds by the word a spec writes; a kind that no spec uses is never imported.

    ``more`` are the kinds of each family, ``tables`` those that it adds to kinds. ``left_out`` are the families that
    the settings leave out.
    """

    def __init__(
        self,
        more: Mapping[str, Sequence[type[Spec]]] | None = None,
        tables: Mapping[str, Sequence[ExtraTable]] | None = None,
        left_out: Sequence[str] = (),
    ) -> None:
        self._more, self._tables = dict(more or {}), dict(tables or {})
        self.left_out = tuple(left_out)
        self._plain = {kind.kind: kind for kinds in self._more.values() for kind in kinds}

    def __getitem__(self, kind: str) -> type[Spec]:
        return self._with_tables(self._plain[kind] if kind in self._plain else imported(KINDS[kind]))

    def __iter__(self) -> Iterator[str]:
        yield from sorted({*KINDS, *self._plain})

    def __len__(self) -> int:
        return len({*KINDS, *self._plain})

    def _with_tables(self, kind: type[Spec]) -> type[Spec]:
        if not any(self._tables.values()):
            return kind
        from speclint.specs.extra_tables import added_to, extended

        return extended(kind, added_to(kind, self._tables))

    def without(self, families: Collection[str]) -> Catalogue:
        """The catalogue without the kinds and the tables that some families bring."""
        if not set(families) - set(self.left_out):
            return self
        more = {family: kinds for family, kinds in self._more.items() if family not in families}
        tables = {family: own for family, own in self._tables.items() if family not in families}
        return Catalogue(more, tables, sorted({*self.left_out, *families}))

    def tables_of(self, family: str) -> tuple[ExtraTable, ...]:
        """The tables that a family adds to kinds."""
        return tuple(self._tables.get(family, ()))


def imported(place: str) -> type[Spec]:
    """The class of a kind, by its place among the kinds."""
    module, _, name = place.partition(":")
    kind: type[Spec] = getattr(import_module(module), name)
    return kind
