"""The throats of welds against the plates that they join."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.handbook.fits import share_of_size
from speclint.specs import NotStated, Stated, WeldedJoint, Weldment

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
    """The names of plates that a weld joins: its own, those of both sides, and that of its wall."""
    yield from joint.plates_joined
    if sheet.is_stated(f"plate of {name}", joint.plate):
        yield joint.plate
    if sheet.is_stated(f"wall of {name}", joint.wall):
        wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
        if sheet.is_stated(f"plate of the wall of {name}", wall.plate):
            yield wall.plate


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
