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
    block = known.followed(f"block of {liner.id}", liner.housed_in)
    own = known.word(f"bore of {liner.id}", liner.in_bore)
    for cover in known.belonging_to(block, CylinderCover) if block else ():
        end = block.ends.get(known.word(f"end of {cover.id}", cover.of_end) or "") if block else None
        if end is not None and known.word("bore of the end", end.of_bore) == own:
            side = known.word("side of the end", end.side)
        elif len(block.bores if block else ()) == 1:
            side = known.word(f"side of {cover.id}", cover.end)
        else:
            side = None
        if side is not None:
            yield side, cover


def of_piston(piston: Piston, known: Known) -> Iterator[Force]:
    """A piston goes in before the one cover of its cylinder that has no stuffing box."""
    liner = known.followed(f"liner of {piston.id}", piston.runs_in)
    if liner is None:
        return
    over = Sized(piston, "diameter", piston.diameter)
    closed = [one for _, one in _covers_of(liner, known) if not known.belonging_to(one, StuffingBox)]
    for cover in closed if len(closed) == 1 else ():
        hole = Sized(cover, "central hole", cover.central_hole)
        yield from known.does_not_pass(piston.id, cover.id, over, hole)


def of_ring(ring: PistonRing, known: Known) -> Iterator[Force]:
    """A ring goes into its groove before the piston goes into the liner, where it does not pass beside the piston."""
    liner = known.followed(f"liner of {ring.id}", ring.runs_in)
    for piston in known.belonging_to(ring, Piston) if liner else ():
        thick, over = (
            Sized(ring, "thickness", ring.thickness),
            Sized(piston, "diameter", piston.diameter),
        )
        bore = Sized(liner, "bore", liner.bore) if liner else over
        yield from _beside(ring, piston, thick, over, bore, known)


def _beside(
    ring: PistonRing, piston: Piston, thick: Sized, over: Sized, bore: Sized, known: Known
) -> Iterator[Force]:
    found = [known.limits(one) for one in (thick, over, bore)]
    if None in found:
        return
    t, d, D = (one for one in found if one is not None)
    room = (D[0] - d[1]) / 2
    if t[1] > room:
        says = f"the thickness of {ring.id}, {t[1] * 1e3:.6g} mm, does not pass the room beside {piston.id} in its bore"
        yield Force(ring.id, piston.id, f"{says}, {room * 1e3:.6g} mm")


def of_rod(rod: PistonRod, known: Known) -> Iterator[Force]:
    """What is threaded on a rod goes on by the end that passes: before the crosshead, or before the piston."""
    piston = known.followed(f"piston of {rod.id}", rod.carries)
    flange = _flange_of(rod, known)
    crossheads = known.belonging_to(rod, Crosshead)
    for box in known.belonging_to(rod, StuffingBox):
        glands = _glands_on(box, known)
        rings = [(one, Sized(box, "gland bore", box.gland_bore)) for one in glands]
        threaded: list[tuple[StuffingBox | Gland, Sized]] = [
            (box, Sized(box, "neck bush", box.neck_bush)),
            *rings,
        ]
        for part, bore in threaded:
            if not known.word(f"{part.id} split", part.split):
                yield from _threaded(part, bore, rod, flange, piston, crossheads, known)


def _glands_on(box: StuffingBox, known: Known) -> tuple[Gland, ...]:
    """The glands that close a box, by the box itself or else by its cover."""
    own = known.belonging_to(box, Gland)
    cover = known.followed(f"cover of {box.id}", box.in_cover)
    return own or (known.belonging_to(cover, Gland) if cover is not None else ())


def _flange_of(rod: PistonRod, known: Known) -> list[Sized]:
    """The diameters at the crosshead's end of a rod: the larger that a section states, whatever it is called."""
    found = []
    for name, section in rod.sections.items():
        if known.word(f"place of {name}", section.at) == "crosshead end":
            shoulder = known.word(f"form of {name}", section.form) == "shoulder"
            larger = shoulder or known.sheet.is_stated(f"larger diameter at {name}", section.larger_diameter)
            value = section.larger_diameter if larger else section.diameter
            found.append(Sized(rod, f"diameter at {name}", value))
    return found


def _threaded(
    part: Component,
    bore: Sized,
    rod: PistonRod,
    flange: list[Sized],
    piston: Piston | None,
    crossheads: tuple[Crosshead, ...],
    known: Known,
) -> Iterator[Force]:
    held = [force for one in flange for force in known.does_not_pass(part.id, rod.id, one, bore)]
    if held and piston is not None:
        over = Sized(piston, "diameter", piston.diameter)
        blocked = known.does_not_pass(part.id, piston.id, over, bore)
        yield from blocked
        yield from (Force(rod.id, piston.id, force.says) for force in held)
        if known.word(f"fastening of {piston.id}", piston.fastening.by) == "forged in one":
            # neither end of the rod passes: the part goes on neither after the rod nor before it
            yield from (Force(part.id, rod.id, force.says) for force in blocked)
            yield from (Force(rod.id, part.id, force.says) for force in held if blocked)
    for crosshead in crossheads:
        # a rod that goes in from behind needs the room where the crosshead will be
        yield from (Force(rod.id, crosshead.id, force.says) for force in held)
        slipper = Sized(crosshead, "width of the slipper", crosshead.slipper_width)
        yield from known.does_not_pass(part.id, crosshead.id, slipper, bore)


def of_box(box: StuffingBox, known: Known) -> Iterator[Force]:
    """A stuffing box goes in after its cover, and its gland after it."""
    cover = known.followed(f"cover of {box.id}", box.in_cover)
    if cover is not None:
        hole, over = (
            Sized(cover, "central hole", cover.central_hole),
            Sized(box, "outside diameter", box.outside_diameter),
        )
        yield from known.stands_in(cover.id, box.id, hole, over)
    for gland in _glands_on(box, known):
        room, ring = Sized(box, "bore", box.bore), Sized(box, "bore of the gland", box.gland_bore)
        yield from known.stands_in(box.id, gland.id, room, ring)


def of_joint(joint: BoltedJoint, known: Known) -> Iterator[Force]:
    """Studs go in before the cover that stands over them."""
    held = known.followed(f"part held by {joint.id}", joint.holds)
    if known.word(f"fastener of {joint.id}", joint.fastener) != "stud" or held is None:
        return
    if isinstance(held, CylinderCover | ChamberCover | PipeFlange):
        over, circle = (
            Sized(held, "outside diameter", held.outside_diameter),
            Sized(joint, "circle", joint.circle),
        )
        yield from known.does_not_pass(joint.id, held.id, over, circle)


def of_cover(cover: CylinderCover, known: Known) -> Iterator[Force]:
    """Lagging goes over a cover; one wider than the opening of the frames goes on when the block is between them."""
    over = Sized(cover, "outside diameter", cover.outside_diameter)
    for lagging in known.belonging_to(cover, Lagging):
        yield from known.lies_over(cover.id, lagging.id, over, Sized(lagging, "height", lagging.height))
    block = known.followed(f"block of {cover.id}", cover.closes)
    if not isinstance(block, CylinderBlock):
        return
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
