"""What the pads of a block take of its forces, and which of them lock it along the frame."""

from __future__ import annotations

from speclint.rules import Sheet
from speclint.specs import CylinderBlock, LocatingFace, Pad


def taken_by(name: str, pad: Pad, sheet: Sheet) -> tuple[str, ...]:
    """What a pad takes, in words: by its list; by its old word at least whether it locks."""
    if pad.takes:
        return tuple(sheet.read(f"pad {name} takes", one) for one in pad.takes)
    return ("lengthwise",) if sheet.read(f"pad {name} locates", pad.locates) else ()


def locks_block(name: str, pad: Pad, sheet: Sheet) -> bool:
    """Whether a pad locks the block along the frame; every other slides, so that the block may grow."""
    return "lengthwise" in taken_by(name, pad, sheet)


def says_what_it_takes(name: str, pad: Pad, sheet: Sheet) -> bool:
    """Whether a pad says what it takes at all."""
    return bool(pad.takes) or sheet.is_stated(f"pad {name} locates", pad.locates)


def pads_by_frame(block: CylinderBlock, sheet: Sheet) -> dict[str, list[str]]:
    """The names of the pads of a block on each frame, by the cut-outs that they sit in.

    Cut-outs that lead to no frame are of one, and so are pads that no cut-out names.
    """
    frames: dict[str, list[str]] = {}
    seated: dict[str, str] = {}
    for face in sheet.belonging_to(block, LocatingFace):
        name = sheet.read(f"pad of {face.id}", face.pad)
        stated = sheet.is_stated(f"frame of {face.id}", face.in_frame)
        seated[name] = sheet.follow(face.in_frame).id if stated else ""
    for name in block.pads:
        frames.setdefault(seated.get(name, ""), []).append(name)
    return frames


def face_of_cut_out(block: CylinderBlock, name: str, sheet: Sheet) -> LocatingFace:
    """The cut-out in which a pad of a block sits.

    :raises NotAssessed: where none names it.
    """
    for face in sheet.belonging_to(block, LocatingFace):
        if sheet.read(f"pad of {face.id}", face.pad) == name:
            return face
    raise sheet.not_assessed(f"no locating face says that it takes pad {name}", block.pads[name].where)
