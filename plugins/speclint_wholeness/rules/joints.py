"""Bolted joints: what is held, what is under it, and what seals between."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import BoltedJoint, CamBox, ChamberCover, Component, CylinderCover, Gland, LensJoint


def _parts(joint: BoltedJoint, sheet: Sheet) -> Iterator[ToFill]:
    """The part held, the part under it, the seal; the ring of a lens joint."""
    held = (sheet.follow(joint.holds),) if sheet.is_stated("part held", joint.holds) else ()
    yield ToFill(joint.id, "part that it holds", held, where=joint.where)
    under = [
        sheet.follow(link)
        for word, link in (("tapped part", joint.screwed_into), ("part bolted to", joint.bolted_to))
        if sheet.is_stated(word, link)
    ]
    wrong = next((_onto_itself(one) for one in held if one.id in {part.id for part in under}), "")
    yield ToFill(joint.id, "part under it", under, wrong=wrong, where=joint.where)
    sealed = sheet.is_stated("seal", joint.seal)
    yield ToFill(joint.id, "seal", (sheet.read("seal", joint.seal),) if sealed else (), where=joint.where)
    if sealed and sheet.read("seal", joint.seal) == "lens ring":
        rings = [one for one in (*held, *under) if isinstance(one, LensJoint)]
        for part in (*held, *under):
            rings += sheet.fillers(part, LensJoint, by="of")
        found = {one.id: one for one in rings}
        yield ToFill(joint.id, LensJoint.called, tuple(found.values()), where=joint.where)


def _onto_itself(held: Component) -> str:
    """What is wrong with a part that is held on itself; of a cover, a gland or a cam box its own rule tells."""
    told = isinstance(held, CylinderCover | ChamberCover | Gland | CamBox)
    return "" if told else f"{held.id} is held, and is the part under it too"


whole: Rule = filled_once(
    "joint.whole",
    title="Each bolted joint names the part that it holds, the part under it and its seal",
    on=BoltedJoint,
    places=_parts,
    row=520,
    gravity="hold",
    why="a joint of which a part is not known is checked by guesses",
    leaves_out="a joint without pressure, which states a ground face; a cover, a gland or a cam box that is held on "
    "itself (cover.one-joint, box.fastened)",
    edition=2,
)

RULES = (whole,)
