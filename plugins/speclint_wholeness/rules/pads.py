"""Pads of a block on the frames: each with its cut-out and its bolts."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import CylinderBlock, FrameFastening, LocatingFace
from speclint_wholeness.inputs import closed, entries, place


def _cut_outs(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each pad the cut-out of the frame that names it; or what blanks it."""
    yield from entries(block, "pads", sheet)
    for name, pad in block.pads.items():
        inside = place(f"pad {name}", block, LocatingFace, sheet, by="locks", named=("pad", name), entry=pad)
        yield closed(f"pad {name}", name, pad, block, inside, sheet)


def _fastenings(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each pad the bolts that name it; or what blanks it."""
    for name, pad in block.pads.items():
        inside = place(
            f"pad {name}", block, FrameFastening, sheet, by="holds", named=("pad", name), entry=pad
        )
        yield closed(f"pad {name}", name, pad, block, inside, sheet)


one_cut_out: Rule = filled_once(
    "pad.one-cut-out",
    title="Each pad of a block sits in one cut-out of a frame",
    on=CylinderBlock,
    places=_cut_outs,
    row=370,
    gravity="hold",
    why="a block that nothing locates moves under the thrust of its pistons",
    leaves_out="pads that rest on the face of the frame without a cut-out, for which a concession says so",
    edition=4,
)

one_fastening: Rule = filled_once(
    "pad.one-fastening",
    title="One set of bolts fastens each pad of a block to its frame",
    on=CylinderBlock,
    places=_fastenings,
    row=380,
    gravity="hold",
    why="a pad without bolts lets go of tonnes over the track",
    leaves_out="the strength of the bolts",
    edition=4,
)

RULES = (one_cut_out, one_fastening)
