"""The block between the frames, and the fittings that are screwed into it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import graded_as_assembly, has_drain_cock, locks_block
from speclint.specs import CylinderBlock, Fitting, LocatingFace
from speclint_assembly.formulae.sizes import half_of_tool, tool_over_hexagon
from speclint_assembly.inputs.room import BY_HAND, DEFERS, WITH_TACKLE, passes
from speclint_assembly.sources import GEOMETRY


@rule(
    "block.enters-its-frames",
    title="The block, as it is put in, passes the opening of the frames with 5 mm to spare, and every sliding "
    "pad enters its cut-out",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=GEOMETRY,
    why="a block of two tons that does not pass hangs in the slings while the frames are cut",
    leaves_out="the fit of the pad that locates the block, which fit.locating-lugs judges; the way from the "
    f"floor to the opening, and the height of the crane; {DEFERS}",
    against=(),
    limits=[WITH_TACKLE],
)
def enters_its_frames(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Width and height that have to pass, against the opening stated with each cut-out; each sliding pad."""
    faces = sheet.belonging_to(block, LocatingFace)
    if not faces:
        raise sheet.not_assessed(f"no locating face says that it takes {block.id}", block.where)
    wide, high = sheet.take("b", block.entering_width), sheet.take("h", block.entering_height)

    def alone(name: str) -> Judgement:
        raise sheet.not_assessed(f"no locating face says that it takes pad {name}", block.pads[name].where)

    taken = {sheet.read(f"pad of {face.id}", face.pad) for face in faces}
    left = [
        name for name, pad in block.pads.items() if name not in taken and not locks_block(name, pad, sheet)
    ]
    items: list[tuple[str, LocatingFace | None]] = [(face.id, face) for face in faces]
    items += [(name, None) for name in left]
    judged = sheet.each(
        items, lambda item: _past(item[1], block, wide, high, sheet) if item[1] else alone(item[0])
    )
    return graded_as_assembly(judged, block, sheet)


def _past(face: LocatingFace, block: CylinderBlock, wide: float, high: float, sheet: Sheet) -> Judgement:
    """Through the opening beside one cut-out, and a pad that slides through the cut-out itself."""
    judged = [
        passes(
            sheet.take(f"B of {face.id}", face.opening_width),
            wide,
            "b",
            f"across the opening at {face.id}",
            sheet,
            "with_tackle",
        ),
        passes(
            sheet.take(f"H of {face.id}", face.opening_height),
            high,
            "h",
            f"in the height of the opening at {face.id}",
            sheet,
            "with_tackle",
        ),
    ]
    pad = sheet.entry(block.pads, face.pad, f"the pads of {block.id}")
    if not locks_block(sheet.read(f"pad of {face.id}", face.pad), pad, sheet):
        slot = sheet.take(f"s of {face.id}", face.slot)
        judged.append(
            sheet.at_most(sheet.take(f"w of {face.id}", pad.width), slot).else_says(
                f"pad {{found}} wide, the slot of {face.id} {{limit}}"
            )
        )
    return sheet.worst(*judged)


@rule(
    "fitting.goes-in",
    edition=2,
    title="Relief valves and drain cocks are screwed in with the tool clear of the nearest obstacle and of the "
    "opening of the lagging by 0.5 mm",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=GEOMETRY,
    why="a relief valve that cannot be taken out is never tested again",
    leaves_out=f"the height that the tool needs over the fitting; {DEFERS}",
    against=(),
    limits=[
        BY_HAND,
        Limit("tool", "0.8", "ratio", COMMON_PRACTICE, "half the diameter of the tool over the hexagon"),
    ],
)
def fitting_goes_in(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Half the tool against the room to the obstacle, the whole of it against the opening of the lagging."""
    fittings = list(_fittings(block, sheet))
    if not fittings:
        raise sheet.not_assessed(f"no end of {block.id} has a relief valve or a drain cock", block.where)
    judged = sheet.each(fittings, lambda item: _goes_in(*item, sheet))
    return graded_as_assembly(judged, block, sheet)


def _fittings(block: CylinderBlock, sheet: Sheet) -> Iterator[tuple[str, Fitting]]:
    for name, end in block.ends.items():
        if sheet.count(f"n {name}", end.relief_count) > 0:
            yield f"relief valve of {name}", end.relief_fitting
        if has_drain_cock(name, end, sheet):
            yield f"drain cock of {name}", end.cock_fitting


def _goes_in(name: str, fitting: Fitting, sheet: Sheet) -> Judgement:
    flats = sheet.take(f"s {name}", fitting.across_flats)
    half = sheet.work(f"r_t {name}", half_of_tool, k=sheet.limit("tool", "k"), d=flats)
    to_wall = sheet.take(f"l {name}", fitting.to_wall)
    judged = passes(to_wall, half, f"w {name}", f"of the tool beside the {name}", sheet)
    lagged = sheet.read(f"lagging round {name}", fitting.lagged)
    if not lagged and not sheet.is_stated(f"opening of the lagging at the {name}", fitting.lagging_opening):
        return judged
    tool = sheet.work(f"D_t {name}", tool_over_hexagon, k=sheet.limit("tool", "k"), s=flats)
    opening = sheet.take(f"D_l {name}", fitting.lagging_opening)
    return sheet.worst(
        judged, passes(opening, tool, f"l {name}", f"of the tool in the lagging, {name}", sheet)
    )


RULES = (enters_its_frames, fitting_goes_in)
