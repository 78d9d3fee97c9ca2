"""What the pads of a block take of its forces, and which of them lock it along the frame."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.rules import Sheet
from speclint.specs import NotStated

if TYPE_CHECKING:
    from speclint.specs import Pad


def taken_by(name: str, pad: Pad, sheet: Sheet) -> tuple[str, ...]:
    """What a pad takes, in words: by its list, and by its old word whether it locks; a silent one is asked its list."""
    listed = tuple(sheet.read(f"pad {name} takes", one) for one in pad.takes)
    if sheet.is_stated(f"pad {name} locates", pad.locates):
        return (*listed, "lengthwise") if sheet.read(f"pad {name} locates", pad.locates) else listed
    if not listed:
        sheet.read(f"what pad {name} takes", NotStated(pad.where.at(f"{pad.where.key}.takes")))
    return listed


def locks_block(name: str, pad: Pad, sheet: Sheet) -> bool:
    """Whether a pad locks the block along the frame; every other slides, so that the block may grow."""
    return "lengthwise" in taken_by(name, pad, sheet)


def says_what_it_takes(name: str, pad: Pad, sheet: Sheet) -> bool:
    """Whether a pad says what it takes at all."""
    return bool(pad.takes) or sheet.is_stated(f"pad {name} locates", pad.locates)
