"""The throats of welds against the plates that they join."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres
from speclint.handbook.fits import share_of_size
from speclint.specs import BlockOpening, NotStated, ShellOpening, Stated, WeldedJoint, Weldment
from speclint_fabrication.inputs.joined import plate_standing, share_of_a_side
from speclint_fabrication.inputs.plates import plate_named

_FILLETS = ("fillet", "single-run fillet")


@rule(
    "weld.throat-of-its-plates",
    title="The throat of a fillet is at most 0.71 of the thinner plate that it joins, that of a weld that penetrates "
    "at most that plate, and one that goes through has it all, half from both sides",
    wrong="throat of weld {item} is {found}, {limit} at most",
    on=Weldment,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="The leg of a fillet is no longer than the edge of the plate on which it stands: a greater throat cannot be "
    "laid there, or melts the edge away, and is no stronger than the plate beside it. A weld that is said to go "
    "through and is drawn shallower leaves a slit in its middle, from which it cracks.",
    leaves_out="tolerances of throat and plates, a throat too small for its load, the wall of a branch that is no "
    "plate of the weldment, a weld that names no plate or states no throat, the least throat of a weld at a branch "
    "whose wall is not stated, the other side of a weld from both sides; a competent person decides on these",
    against=("break under load",),
    against_on={"cylinder-block": ("break under load",)},
    reached_by="makes",
    edition=2,
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
        Limit(
            "through",
            "0.95",
            "ratio",
            COMMON_PRACTICE,
            "least throat of a weld that goes through over what its side has of the plate",
        ),
    ],
)
def throat_of_its_plates(weldment: Weldment, sheet: Sheet) -> Judgement:
    """Throat against a share of the thinner of the plates that each weld names, sizes as they are drawn.

    One that goes through has the plate that it penetrates for its throat too: the thinner of a butt joint, that which
    stands on the face of another, or the wall of a branch where that is thinner; from both sides half of it on one.
    """
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
    weld = sheet.read(f"weld of {name}", joint.weld)
    drawn = _drawn(name, _plates(name, joint, weldment, sheet), weldment, sheet)
    share = sheet.limit("fillet" if weld in _FILLETS else "penetrating")
    most = sheet.work(f"a_g of {name}", share_of_size, k=share, t=min(drawn))
    a = sheet.take_nominal(f"a of {name}", joint.throat)
    t = _gone_through(name, joint, weldment, sheet) if weld == "full penetration" else None
    if t is None:
        return sheet.at_most(a, most)
    side = sheet.work(f"a_s of {name}", share_of_size, k=share_of_a_side(name, joint, sheet), t=t)
    least = sheet.work(f"a_l of {name}", share_of_size, k=sheet.limit("through"), t=side)
    deep = sheet.at_least(a, least).else_says(
        "throat of weld {item} is {found}, {limit} at least where it goes through"
    )
    return sheet.worst(sheet.at_most(a, most), deep)


def _drawn(
    name: str, plates: Iterable[Stated[str] | NotStated], weldment: Weldment, sheet: Sheet
) -> list[Metres]:
    """Thickness of plates as they are drawn [m]."""
    return [
        sheet.take_nominal(f"t_{index} of {name}", plate_named(weldment, plate, sheet).thickness)
        for index, plate in enumerate(plates, start=1)
    ]


def _gone_through(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> Metres | None:
    """Thickness of what a weld goes through [m]; None where nothing tells which plate or which branch that is."""
    if sheet.is_stated(f"opening of {name}", joint.opening):
        opening = _opening(name, joint, weldment, sheet)
        if not sheet.is_stated(f"wall of the branch of {name}", opening.wall):
            return None
        wall = sheet.take_nominal(f"w of {name}", opening.wall)
        return min(wall, *_drawn(name, _plates(name, joint, weldment, sheet), weldment, sheet))
    if not sheet.is_stated(f"plate of {name}", joint.plate):
        return None
    if sheet.read(f"shape of {name}", joint.shape) == "butt":
        return min(_drawn(name, (joint.plate, *joint.plates_joined), weldment, sheet))
    standing = plate_standing(name, joint, weldment, sheet)
    return None if standing is None else sheet.take_nominal(f"t_s of {name}", standing.thickness)


RULES: tuple[Rule, ...] = (throat_of_its_plates,)
