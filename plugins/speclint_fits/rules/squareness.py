"""How square the block sits to the axis of its bore, and its bore to that of the other block on the same axle."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres
from speclint.facts import axles_of, driven_by, engine_of, locks_block, stroke_of
from speclint.specs import CylinderBlock, DrivingAxle, LocatingFace
from speclint_fits.formulae.squareness import far_crosshead, out_of_square, out_together
from speclint_fits.inputs.seating import Seated, seated


@rule(
    "frame.square-to-axis",
    edition=2,
    title="The faces of a locked pad are so square to the axis of the bore that this lies out by at most 0.3 mm at the "
    "far end of the crosshead's stroke, together with the other block on its axle",
    on=LocatingFace,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A block that sits askew in its frame runs its crosshead against one side of the bars, and one axle cannot "
    "stand square to two bores that are not parallel.",
    leaves_out="how far out each frame is, and the slide bars' own setting; the other block where no driving axle "
    "names its crank",
    against=(),
    against_on={"crosshead": ("wear",), "slide-bar": ("wear",)},
    limits=[Limit("out", "0.3 mm", "length", COMMON_PRACTICE, "greatest error at the crosshead's far end")],
)
def square_to_axis(face: LocatingFace, sheet: Sheet) -> Judgement:
    """Zone over the height of the faces, carried to the crosshead; an axle square to one bore gives the other both."""
    pad_in = seated(face, sheet)
    if not locks_block(sheet.read("pad", face.pad), pad_in.pad, sheet):
        raise sheet.not_applicable("this pad slides")
    u, allowed = _out("u", pad_in, sheet), sheet.limit("out", "u_a")
    alone = sheet.at_most(u, allowed).else_says("axis lies out by {found} at the crosshead, {limit} allowed")

    def judge(item: tuple[str, CylinderBlock]) -> Judgement:
        name, other = item
        both = sheet.work(f"u with {name}", out_together, u_1=u, u_2=_of_block(other, sheet))
        return sheet.at_most(both, allowed).else_says(
            "axis and that of {item}, on one axle, lie out by {found} at the crosshead, {limit} allowed"
        )

    others = [(other.id, other) for other in _on_its_axle(pad_in.block, sheet)]
    return sheet.worst(alone, sheet.each(others, judge)) if others else alone


def _out(symbol: str, pad_in: Seated, sheet: Sheet) -> Metres:
    """How far the axis of a block lies out at its crosshead by the squareness of one pad."""
    block, i = pad_in.block, pad_in.face.id
    L = sheet.take(f"L of {block.id}", block.drive.rod_length)
    S = sheet.take(f"S of {block.id}", stroke_of(block, sheet))
    X = sheet.work(f"X of {block.id}", far_crosshead, L=L, S=S)
    t, height = (
        sheet.take(f"t of {i}", pad_in.pad.square_to_axis),
        sheet.take(f"l of {i}", pad_in.face.bearing_height),
    )
    return sheet.work(symbol, out_of_square, t=t, X=X, l=height)


def _of_block(block: CylinderBlock, sheet: Sheet) -> Metres:
    """How far the axis of another block lies out, by the worst of its locked pads."""
    out = []
    for face in sheet.belonging_to(block, LocatingFace):
        pad_in = seated(face, sheet)
        if locks_block(sheet.read(f"pad of {face.id}", face.pad), pad_in.pad, sheet):
            out.append(_out(f"u of {face.id}", pad_in, sheet))
    if not out:
        raise sheet.not_assessed(f"no cut-out of a locked pad of {block.id} is drawn", block.where)
    return max(out)


def _on_its_axle(block: CylinderBlock, sheet: Sheet) -> Iterator[CylinderBlock]:
    """The other blocks whose connecting rods turn the axle that this one turns; none where no such axle is drawn."""
    engine = engine_of(block, sheet)
    if engine is None or not sheet.belonging_to(engine, DrivingAxle):
        return
    found: dict[str, CylinderBlock] = {}
    for axle in axles_of(engine, sheet):
        turning = {
            one.id: one for one in (sheet.follow(crank.block) for _, crank in driven_by(axle, engine, sheet))
        }
        if block.id in turning:
            found |= turning
    found.pop(block.id, None)
    yield from found.values()


RULES: tuple[Rule, ...] = (square_to_axis,)
