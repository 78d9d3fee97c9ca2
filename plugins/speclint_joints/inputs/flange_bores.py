"""How wide the ring of a pipe flange is bored: as stated, and no narrower than what it is on lets it be."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Sheet
from speclint.equations import Metres
from speclint.facts import bore_of_pipe, openings_of
from speclint.specs import BoltedJoint, CylinderBlock, LensJoint, PipeFlange, SteamPipe


def bore_of_ring(flange: PipeFlange, joint: BoltedJoint, sheet: Sheet, *, loose: bool) -> Metres:
    """Bore of the ring that bears the bolts, m: the stated one, and no less than what goes through it.

    A loose flange is round its pipe. One that is welded on is no narrower than the way through its pipe, or on a block
    than the opening to which the pipe beside it leads.
    """
    stated = sheet.take("B", flange.bore)
    carrier = sheet.follow(flange.of)
    if isinstance(carrier, SteamPipe):
        return max([stated, *_of_pipe(carrier, sheet, loose=loose)])
    if isinstance(carrier, CylinderBlock):
        return max([stated, *_of_block(carrier, joint, sheet)])
    return stated


def _of_pipe(pipe: SteamPipe, sheet: Sheet, *, loose: bool) -> Iterator[Metres]:
    D = sheet.take("d", pipe.outside_diameter)
    if loose:
        yield D
    elif sheet.is_stated("wall of the pipe", pipe.wall):
        yield sheet.work("d_i", bore_of_pipe, D=D, t=sheet.take("t_p", pipe.wall))


def _of_block(block: CylinderBlock, joint: BoltedJoint, sheet: Sheet) -> Iterator[Metres]:
    """The openings of the block to which the pipe leads that is bolted to its flange."""
    links = {"holds": joint.holds, "bolted to": joint.bolted_to}
    for word, link in links.items():
        other = sheet.follow(link) if sheet.is_stated(f"{word} of {joint.id}", link) else None
        pipe = sheet.follow(other.of) if isinstance(other, PipeFlange | LensJoint) else other
        if isinstance(pipe, SteamPipe):
            for _, there, opening in openings_of(pipe, sheet):
                if there is block and sheet.is_stated("bore of the opening", opening.bore):
                    yield sheet.take("d_o", opening.bore)
