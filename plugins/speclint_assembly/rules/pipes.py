"""Pipes, their lens rings and lagging."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import graded_as_assembly
from speclint.specs import Lagging, LensJoint, PipeFlange, SteamPipe
from speclint_assembly.inputs.pipe_places import DRAWN_TOGETHER, NOT_DRAWN, reaches
from speclint_assembly.inputs.room import BY_HAND, DEFERS, passes
from speclint_assembly.sources import GEOMETRY


@rule(
    "pipe.goes-in",
    edition=7,
    title="A pipe passes between the faces of its joints with 0.5 mm to spare and with its seals is as long as their "
    "gap, less what its joint gives; a loose flange goes on, held by its collar, and a lens ring in",
    on=(SteamPipe, LensJoint),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=GEOMETRY,
    why="a pipe that is sprung into its place pulls on its joints for as long as it is there",
    leaves_out="the swing of the pipe on its way; how deep a lens ring sits in its seats, of which the whole thickness "
    "counts; that its joint lets the end be drawn back as far as is stated; a pipe pulled cold on purpose, which its "
    "analysis judges; the collar beyond its contact with the flange; "
    f"that the flange is on before the second collar, which the steps of making state; {DEFERS}",
    against=(),
    limits=[BY_HAND, NOT_DRAWN, DRAWN_TOGETHER],
)
def goes_in(part: SteamPipe | LensJoint, sheet: Sheet) -> Judgement:
    """Gap of the faces against the pipe, its seals and what its joint gives; pipe < flange < collar; ring < pulled.

    A sliding joint or bellows gives what the hot pipe leaves of its movement, longer or shorter: where in its travel
    the joint stands as the pipe is put in is not stated.
    """
    if isinstance(part, LensJoint):
        pipe = sheet.follow(part.of)
        if not isinstance(pipe, SteamPipe):
            raise sheet.not_applicable("no pipe carries its seats")
        judged = passes(
            sheet.take("a", pipe.drawn_back),
            sheet.take("t", part.thickness),
            "r",
            "beside the lens ring, the pipe drawn back",
            sheet,
        )
        return graded_as_assembly(judged, part, sheet)
    gap, length = sheet.take("L_g", part.faces_gap), sheet.take("L", part.faces_length)
    between = passes(gap, length, "g", "between the faces", sheet)
    flanges = [*_loose_flanges(part, sheet), *_collar_of_none(part, sheet)]
    return graded_as_assembly(sheet.worst(between, reaches(part, gap, length, sheet), *flanges), part, sheet)


def _is_loose(flange: PipeFlange, sheet: Sheet) -> bool:
    return sheet.read(f"how {flange.id} is held", flange.held) == "loose behind a collar"


def _loose_flanges(pipe: SteamPipe, sheet: Sheet) -> Iterator[Judgement]:
    for flange in sheet.belonging_to(pipe, PipeFlange):
        if _is_loose(flange, sheet):
            yield _flange(flange, pipe, sheet)


def _collar_of_none(pipe: SteamPipe, sheet: Sheet) -> Iterator[Judgement]:
    """A pipe with a collar, of whose flanges none is said to be loose."""
    flanges = sheet.belonging_to(pipe, PipeFlange)
    if not flanges or not sheet.is_stated("collar", pipe.collar_diameter):
        return
    if not any(_is_loose(flange, sheet) for flange in flanges):
        says = "the pipe has a collar, and each of its flanges is said to be welded on"
        yield sheet.states(False, says, where=flanges[0].held.where)


def _flange(flange: PipeFlange, pipe: SteamPipe, sheet: Sheet) -> Judgement:
    bore = sheet.take(f"d of {flange.id}", flange.bore)
    slides = passes(
        bore, sheet.take("D", pipe.outside_diameter), f"f of {flange.id}", f"through {flange.id}", sheet
    )
    held = passes(
        sheet.take("D_c", pipe.collar_diameter),
        bore,
        f"c of {flange.id}",
        f"by which the collar holds {flange.id}",
        sheet,
    )
    return sheet.worst(slides, held)


@rule(
    "lagging.goes-on",
    title="Between what lagging covers and what stands beside it there is room for its thickness and 5 mm more",
    on=Lagging,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="lagging that is squeezed in keeps no heat, and is left off after the first repair",
    leaves_out="the fastening of its sheet; nuts that must stay free, which access.inspection judges",
    against=(),
    limits=[
        Limit("beside", "5 mm", "length", COMMON_PRACTICE, "room wanted beside the lagging", "not negative")
    ],
)
def goes_on(lagging: Lagging, sheet: Sheet) -> Judgement:
    """Room behind, less the thickness, against the room wanted."""
    room, thickness = sheet.take("l", lagging.room_behind), sheet.take("t", lagging.thickness)
    return passes(room, thickness, "l", "beside the lagging", sheet, "beside")


RULES = (goes_in, goes_on)
