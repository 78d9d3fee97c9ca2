"""Pads of a block on the frames: each with its cut-out and its bolts."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.facts import frames_of_pads
from speclint.specs import CylinderBlock, FrameFastening, LocatingFace
from speclint_wholeness.inputs import closed, entries, place, said


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


def _takers(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For the pads on each frame those that take thrust across it and weight; and where the one that locates stands."""
    middle = said("scheme", block.scheme, sheet) == "located at the middle"
    for names in frames_of_pads(block, sheet):
        pads = " and ".join(names)
        for load in ("crosswise thrust", "weight"):
            takers = [
                name
                for name in names
                if load in {sheet.read(f"taken by {name}", one) for one in block.pads[name].takes}
            ]
            yield ToFill(
                f"{load} at {pads}", "pad that takes it", takers, most=0, where=block.pads[names[0]].where
            )
        if middle:
            yield _middle(block, names, sheet)


def _middle(block: CylinderBlock, names: tuple[str, ...], sheet: Sheet) -> ToFill:
    """The pad that locates a block on a frame, with another on either side of it."""
    at = {name: sheet.take_nominal(f"x of {name}", block.pads[name].at) for name in names}
    found = [name for name in names if sheet.read(f"{name} locates", block.pads[name].locates)]
    between = [name for name in found if min(at.values()) < at[name] < max(at.values())]
    wrong = (
        ""
        if between or not found
        else f"no pad stands beyond {found[0]}, which locates the block, on one side"
    )
    return ToFill(
        f"middle of {' and '.join(names)}", "pad that locates", found, wrong=wrong, where=block.scheme.where
    )


one_cut_out: Rule = filled_once(
    "pad.one-cut-out",
    title="Each pad of a block sits in one cut-out of a frame",
    on=CylinderBlock,
    places=_cut_outs,
    row=370,
    gravity="hold",
    why="a block that nothing locates moves under the thrust of its pistons",
    leaves_out="pads that rest on the face of the frame without a cut-out, for which a concession says so",
    edition=2,
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
    edition=2,
)

scheme: Rule = filled_once(
    "frame.scheme-of-pads",
    title="On each frame a pad of the block takes thrust across it and a pad takes weight, and a block that is located "
    "at the middle has pads that slide on both sides",
    on=CylinderBlock,
    places=_takers,
    row=385,
    gravity="hold",
    why="a load that no pad was made to take goes through the bolts, which were not chosen for it",
    leaves_out="whether a pad locates the block along the frame (block.fixed-at-pad) and one alone does "
    "(fit.locating-lugs); the strength of the pads; blocks that two pads lock on one frame",
)

RULES = (one_cut_out, one_fastening, scheme)
