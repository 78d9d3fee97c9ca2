"""The throats of welds against the plates that they join."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.handbook.fits import share_of_size
from speclint.specs import BlockOpening, NotStated, ShellOpening, Stated, WeldedJoint, Weldment

_FILLETS = ("fillet", "single-run fillet")


@rule(
    "weld.throat-of-its-plates",
    title="The throat of a fillet is at most 0.71 of the thinner plate that it joins, that of a weld that penetrates "
    "no more than that plate",
    wrong="throat of weld {item} is {found}, {limit} at most",
    on=Weldment,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="The leg of a fillet is no longer than the edge of the plate on which it stands: a greater throat cannot be "
    "laid there, or melts the edge away, and is no stronger than the plate beside it.",
    leaves_out="tolerances of throat and plates, a throat too small for its load, the wall of a branch that is no "
    "plate of the weldment, a weld that names no plate",
    against=("break under load",),
    against_on={"cylinder-block": ("break under load",)},
    reached_by="makes",
    limits=[
        Limit(
            "fillet",
            "0.71",
            "ratio",
            FIRST_PRINCIPLES,
            "greatest throat of a fillet over the thinner plate: 1/√2 of a leg as long as the plate is thick",
        ),
        Limit(
            "penetrating",
            "1",
            "ratio",
            COMMON_PRACTICE,
            "greatest throat of a weld that penetrates over the thinner plate",
        ),
    ],
)
def throat_of_its_plates(weldment: Weldment, sheet: Sheet) -> Judgement:
    """Throat against a share of the thinner of the plates that each weld names, sizes as they are drawn."""
    welds = [
        (name, joint)
        for name, joint in weldment.joints.items()
        if sheet.is_stated(f"throat of {name}", joint.throat) and any(_plates(name, joint, weldment, sheet))
    ]
    if not welds:
        raise sheet.not_applicable("no weld states a throat and a plate that it joins")
    return sheet.each(welds, lambda item: _within(*item, weldment, sheet))


def _plates(
    name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet
) -> Iterator[Stated[str] | NotStated]:
    """The names of plates that a weld joins: its own, those of both sides, of its wall, and round its opening."""
    yield from joint.plates_joined
    opening = _opening(name, joint, weldment, sheet)
    for of, plate in ((name, joint.plate), (f"the opening of {name}", opening.plate)):
        if sheet.is_stated(f"plate of {of}", plate):
            yield plate
    for of, named in ((name, joint.wall), (f"the opening of {name}", opening.flat_wall)):
        if sheet.is_stated(f"wall of {of}", named):
            wall = sheet.entry(weldment.walls, named, f"walls of {weldment.id}")
            if sheet.is_stated(f"plate of the wall of {of}", wall.plate):
                yield wall.plate


def _opening(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> BlockOpening | ShellOpening:
    """The opening at whose branch a weld lies, of the block first; one that states nothing where there is none."""
    word = sheet.said(f"opening of {name}", joint.opening)
    if word is None:
        return ShellOpening()
    block = sheet.follow(weldment.makes).openings if sheet.is_stated("makes", weldment.makes) else {}
    return block.get(word) or weldment.openings.get(word) or ShellOpening()


def _within(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> Judgement:
    drawn = [
        sheet.take_nominal(
            f"t_{index} of {name}",
            sheet.entry(weldment.plates, plate, f"plates of {weldment.id}").thickness,
        )
        for index, plate in enumerate(_plates(name, joint, weldment, sheet), start=1)
    ]
    share = "fillet" if sheet.read(f"weld of {name}", joint.weld) in _FILLETS else "penetrating"
    most = sheet.work(f"a_g of {name}", share_of_size, k=sheet.limit(share), t=min(drawn))
    return sheet.at_most(sheet.take_nominal(f"a of {name}", joint.throat), most)


RULES: tuple[Rule, ...] = (throat_of_its_plates,)
