"""The pads of a block, their fastenings and the cut-outs of the frame state one fixed point and one load."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import fastenings_of_pad, locks_block
from speclint.specs import CylinderBlock, FrameFastening, Length, LocatingFace
from speclint_agreement.formulae.pads import from_datum, half_width


def _fixed(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The pads that locate the block: their place against half of their width, and the name of the fixed point."""
    if not block.pads:
        return
    locating = [name for name, pad in block.pads.items() if locks_block(name, pad, sheet)]
    places = tuple(pad.where for pad in block.pads.values())
    held = block.pads[locating[0] if locating else next(iter(block.pads))]
    some = worked(bool(locating), held.locates) if not held.takes else Worked(bool(locating), (held.where,))
    yield Pair(some, Worked(True, says="a block of which one pad at least locates it"), name="any")
    for name in _counted_from(locating, block, sheet):
        pad = block.pads[name]
        if sheet.is_stated(f"place of {name}", pad.at) and sheet.is_stated(f"width of {name}", pad.width):
            half = sheet.work("w_h", half_width, w=sheet.take("w", pad.width))
            away = sheet.work("a", from_datum, x=sheet.take("x", pad.at))
            yield Pair(worked(away, pad.at), worked(half, pad.width), "at most", name=name)
    if sheet.is_stated("fixed point", block.fixed_point):
        said = sheet.read("fixed point", block.fixed_point)
        yield Pair(block.fixed_point, Worked(said if said in locating else " or ".join(locating), places))


def _counted_from(locating: list[str], block: CylinderBlock, sheet: Sheet) -> list[str]:
    """The pads that must stand where positions count from: of two locked ones that which the fixed point names."""
    if len(locating) < 2:
        return locating
    said = sheet.read("fixed point", block.fixed_point)
    return [name for name in locating if name == said]


def _far_end(fastening: FrameFastening, sheet: Sheet) -> Iterator[Pair]:
    """Each fastening of the pad at the far end: which pad is far from it, its bores, its mass and its shock."""
    if not sheet.is_stated("other pad", fastening.other_pad):
        return
    block, far_pad = sheet.follow(fastening.holds), sheet.read("other pad", fastening.other_pad)
    for far in fastenings_of_pad(block, far_pad, sheet):
        if sheet.is_stated(f"other pad of {far.id}", far.other_pad):
            yield Pair(fastening.pad, far.other_pad, name=f"pad of {far.id}")
        if sheet.is_stated(f"bore of {far.id}", far.bore):
            yield Pair(fastening.bore, far.bore, name=f"bore of {far.id}")
        yield from _no_less("m", fastening.carried_mass, far.carried_mass, f"mass of {far.id}", sheet)
        yield from _no_less("k", fastening.shock, far.shock, f"shock of {far.id}", sheet)


def _no_less(symbol: str, here: Length, there: Length, name: str, sheet: Sheet) -> Iterator[Pair]:
    """Two stated quantities as they are aimed at; each fastening is held to the other, so that they end equal."""
    if sheet.is_stated(f"{name}, here", here) and sheet.is_stated(name, there):
        own, far = sheet.take_nominal(symbol, here), sheet.take_nominal(f"{symbol}_f", there)
        yield Pair(worked(own, here), worked(far, there), "at least", name=name)


def _bearings(face: LocatingFace, sheet: Sheet) -> Iterator[Pair]:
    """The height of the faces in contact against that of the pad, their depth against the frame and what is clamped."""
    block = sheet.follow(face.locks)
    pad = sheet.entry(block.pads, face.pad, f"pads of {block.id}")
    if sheet.is_stated("height of the pad", pad.height):
        yield Pair(face.bearing_height, pad.height, "at most", name="height")
    for one in fastenings_of_pad(block, sheet.read("pad", face.pad), sheet):
        if sheet.is_stated(f"frame at {one.id}", one.frame_grip):
            yield Pair(face.bearing_depth, one.frame_grip, "at most", name=f"depth at {one.id}")
    if sheet.is_stated("frame", face.in_frame):
        frame = sheet.follow(face.in_frame)
        if sheet.is_stated(f"thickness of {frame.id}", frame.thickness):
            yield Pair(face.bearing_depth, frame.thickness, "at most", name=f"depth in {frame.id}")


fixed_at_pad: Rule = agreement(
    "block.fixed-at-pad",
    title="A pad locks the block, that from which positions count stands there, within half of its width, and the "
    "named fixed point is that pad",
    on=CylinderBlock,
    pairs=_fixed,
    within="",
    grade=Grade.HOLD,
    why="everything that grows is reckoned from the pad that is held; held elsewhere, the block meets its neighbours",
    leaves_out="pads on two frames that lock the block at two places along it, and how many lock it "
    "(frame.scheme-of-pads)",
    edition=2,
)

pads_reciprocal: Rule = agreement(
    "frame.pads-reciprocal",
    title="The fastening at the far end of a frame names this pad as its other one and the same bore, and its mass and "
    "shock are no greater",
    on=FrameFastening,
    pairs=_far_end,
    within="",
    optional=False,
    grade=Grade.HOLD,
    why="one pad cannot be pulled off the frame without the other being pressed on it by the same couple",
    leaves_out="a far pad that has no fastening yet",
)

bears_within: Rule = agreement(
    "pad.bears-within",
    title="The faces in contact at a pad are no higher than the pad and no deeper than the frame plate",
    on=LocatingFace,
    pairs=_bearings,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a pad that bears on less than was reckoned is crushed, or wears until the block moves",
    leaves_out="chamfers and reliefs of the faces",
    edition=2,
)

RULES = (bears_within, fixed_at_pad, pads_reciprocal)
