"""Which of liner, piston, rod, rings, boxes, covers and studs goes in before which, and the sizes that force it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    Component,
    Crosshead,
    CylinderBlock,
    CylinderCover,
    CylinderLiner,
    FrameFastening,
    Gland,
    Lagging,
    LensJoint,
    LocatingFace,
    PipeFlange,
    Piston,
    PistonRing,
    PistonRod,
    RetainingRing,
    SteamPipe,
    StuffingBox,
)
from speclint_assembly.inputs.known import Force, Known, Sized


def of_liner(liner: CylinderLiner, known: Known) -> Iterator[Force]:
    """A liner goes in before its piston, what retains it, and the cover at the end of its collar."""
    outside = Sized(liner, "outside diameter", liner.outside_diameter)
    for piston in known.belonging_to(liner, Piston):
        bore, over = Sized(liner, "bore", liner.bore), Sized(piston, "diameter", piston.diameter)
        yield from known.stands_in(liner.id, piston.id, bore, over)
    for ring in known.belonging_to(liner, RetainingRing):
        yield from known.does_not_pass(liner.id, ring.id, outside, Sized(ring, "bore", ring.bore))
    collar = known.word(f"end of the collar of {liner.id}", liner.collar.end)
    for side, cover in _covers_of(liner, known):
        if side == collar:
            hole = Sized(cover, "central hole", cover.central_hole)
            yield from known.does_not_pass(liner.id, cover.id, outside, hole)


def _covers_of(liner: CylinderLiner, known: Known) -> Iterator[tuple[str, CylinderCover]]:
    """The covers of the bore that a liner is in, each with its side."""
    bore = known.word(f"bore of {liner.id}", liner.in_bore)
    for block in known.led_to(f"block of {liner.id}", liner.housed_in):
        for cover in known.belonging_to(block, CylinderCover):
            side = _side_of(cover, block, bore, known)
            if side is not None:
                yield side, cover


def _side_of(cover: CylinderCover, block: CylinderBlock, bore: str | None, known: Known) -> str | None:
    """The side of a bore that a cover closes: by its end of the block, or by its own word where there is one bore."""
    end = block.ends.get(known.word(f"end of {cover.id}", cover.of_end) or "")
    if end is not None and bore is not None and known.word("bore of the end", end.of_bore) == bore:
        side: str | None = known.word("side of the end", end.side)
    elif len(block.bores) == 1:
        side = known.word(f"side of {cover.id}", cover.end)
    else:
        side = None
    return side


def of_piston(piston: Piston, known: Known) -> Iterator[Force]:
    """A piston goes in before the one cover of its cylinder that has no stuffing box."""
    over = Sized(piston, "diameter", piston.diameter)
    for liner in known.led_to(f"liner of {piston.id}", piston.runs_in):
        closed = [one for _, one in _covers_of(liner, known) if not known.belonging_to(one, StuffingBox)]
        for cover in closed if len(closed) == 1 else ():
            hole = Sized(cover, "central hole", cover.central_hole)
            yield from known.does_not_pass(piston.id, cover.id, over, hole)


def of_ring(ring: PistonRing, known: Known) -> Iterator[Force]:
    """A ring goes into its groove before the piston goes into the liner, where it does not pass beside the piston."""
    for liner in known.led_to(f"liner of {ring.id}", ring.runs_in):
        for piston in known.belonging_to(ring, Piston):
            yield from _beside(ring, piston, liner, known)


def _beside(ring: PistonRing, piston: Piston, liner: CylinderLiner, known: Known) -> Iterator[Force]:
    thick = known.limits(Sized(ring, "thickness", ring.thickness))
    over = known.limits(Sized(piston, "diameter", piston.diameter))
    bore = known.limits(Sized(liner, "bore", liner.bore))
    if thick is None or over is None or bore is None:
        return
    room = (bore[0] - over[1]) / 2
    if thick[1] > room:
        says = (
            f"the thickness of {ring.id}, {thick[1] * 1e3:.6g} mm, does not pass the room beside {piston.id} "
            f"in its bore, {room * 1e3:.6g} mm"
        )
        yield Force(ring.id, piston.id, says)


def of_rod(rod: PistonRod, known: Known) -> Iterator[Force]:
    """What is threaded on a rod goes on by the end that passes: before the crosshead, or before the piston."""
    for box in known.belonging_to(rod, StuffingBox):
        threaded: list[tuple[StuffingBox | Gland, Sized]] = [
            (box, Sized(box, "neck bush", box.neck_bush)),
            *((gland, Sized(box, "gland bore", box.gland_bore)) for gland in _glands_on(box, known)),
        ]
        for part, bore in threaded:
            if not known.word(f"{part.id} split", part.split):
                yield from _threaded(part, bore, rod, known)


def _glands_on(box: StuffingBox, known: Known) -> tuple[Gland, ...]:
    """The glands that close a box, by the box itself or else by its cover."""
    covers = known.led_to(f"cover of {box.id}", box.in_cover)
    by_cover = (gland for cover in covers for gland in known.belonging_to(cover, Gland))
    return known.belonging_to(box, Gland) or tuple(by_cover)


def _flange_of(rod: PistonRod, known: Known) -> Iterator[Sized]:
    """The diameters at the crosshead's end of a rod: the larger that a section states, whatever it is called."""
    for name, section in rod.sections.items():
        if known.word(f"place of {name}", section.at) == "crosshead end":
            larger = known.sheet.is_stated(f"larger diameter at {name}", section.larger_diameter)
            value = section.larger_diameter if larger else section.diameter
            yield Sized(rod, f"diameter at {name}", value)


def _threaded(part: Component, bore: Sized, rod: PistonRod, known: Known) -> Iterator[Force]:
    held = [says for one in _flange_of(rod, known) if (says := known.refusal(one, bore))]
    for piston in known.led_to(f"piston of {rod.id}", rod.carries):
        blocked = known.refusal(Sized(piston, "diameter", piston.diameter), bore)
        if held and blocked:
            yield Force(part.id, piston.id, blocked)
            yield Force(rod.id, piston.id, held[0])
            if known.word(f"fastening of {piston.id}", piston.fastening.by) == "forged in one":
                # neither end of the rod passes: the part goes on neither after the rod nor before it
                yield Force(part.id, rod.id, blocked)
                yield Force(rod.id, part.id, held[0])
    for crosshead in known.belonging_to(rod, Crosshead):
        # a rod that goes in from behind needs the room where the crosshead will be
        yield from (Force(rod.id, crosshead.id, says) for says in held)
        slipper = Sized(crosshead, "width of the slipper", crosshead.slipper_width)
        yield from known.does_not_pass(part.id, crosshead.id, slipper, bore)


def of_box(box: StuffingBox, known: Known) -> Iterator[Force]:
    """A stuffing box goes in after its cover, and its gland after it."""
    over = Sized(box, "outside diameter", box.outside_diameter)
    for cover in known.led_to(f"cover of {box.id}", box.in_cover):
        hole = Sized(cover, "central hole", cover.central_hole)
        yield from known.stands_in(cover.id, box.id, hole, over)
    for gland in _glands_on(box, known):
        room, ring = Sized(box, "bore", box.bore), Sized(box, "bore of the gland", box.gland_bore)
        yield from known.stands_in(box.id, gland.id, room, ring)


def of_joint(joint: BoltedJoint, known: Known) -> Iterator[Force]:
    """Studs go in before the cover that stands over them."""
    studs = known.word(f"fastener of {joint.id}", joint.fastener) == "stud"
    for held in known.led_to(f"part held by {joint.id}", joint.holds):
        if studs and isinstance(held, CylinderCover | ChamberCover | PipeFlange):
            over = Sized(held, "outside diameter", held.outside_diameter)
            circle = Sized(joint, "circle", joint.circle)
            yield from known.does_not_pass(joint.id, held.id, over, circle)


def of_cover(cover: CylinderCover, known: Known) -> Iterator[Force]:
    """Lagging goes over a cover; one wider than the opening of the frames goes on when the block is between them."""
    over = Sized(cover, "outside diameter", cover.outside_diameter)
    for lagging in known.belonging_to(cover, Lagging):
        yield from known.lies_over(cover.id, lagging.id, over, Sized(lagging, "height", lagging.height))
    for block in known.led_to(f"block of {cover.id}", cover.closes):
        for face in known.belonging_to(block, LocatingFace):
            for bolts in known.belonging_to(block, FrameFastening):
                opening = Sized(face, "opening width", face.opening_width)
                yield from known.does_not_pass(bolts.id, cover.id, over, opening)


def of_pipe(pipe: SteamPipe, known: Known) -> Iterator[Force]:
    """A loose flange goes on its pipe, and a lens ring to its seat, before the pipe; lagging after it."""
    for flange in known.belonging_to(pipe, PipeFlange):
        collar = Sized(pipe, "collar diameter", pipe.collar_diameter)
        yield from known.does_not_pass(flange.id, pipe.id, collar, Sized(flange, "bore", flange.bore))
    for ring in known.belonging_to(pipe, LensJoint):
        thick, back = Sized(ring, "thickness", ring.thickness), Sized(pipe, "draw-back", pipe.drawn_back)
        yield from known.does_not_pass(ring.id, pipe.id, thick, back)
    for lagging in known.belonging_to(pipe, Lagging):
        over = Sized(pipe, "outside diameter", pipe.outside_diameter)
        around = Sized(lagging, "inside diameter", lagging.inside_diameter)
        yield from known.stands_in(pipe.id, lagging.id, around, over)
