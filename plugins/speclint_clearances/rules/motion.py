"""Clearance to moving parts."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Kelvins, Metres
from speclint.facts import crossheads_of, least_gap
from speclint.handbook.fits import DRAWING_TEMPERATURE, growth_of_length
from speclint.specs import Component, Crosshead, CylinderBlock, Envelope, LoadCase, MotionGap
from speclint_clearances.formulae.room import gap_left
from speclint_clearances.inputs.motion_beside import BETWEEN_WHEELS, FLANGE, left_by_parts
from speclint_clearances.inputs.motion_growth import growth_known
from speclint_clearances.inputs.motion_wear import wear_known


@rule(
    "envelope.motion-clearance",
    title="Crosshead, connecting rod and wheel each have a gap to the block, no wider than drawn parts leave it; every "
    "gap keeps its limit, less growth, wear of bearings and side play, of wheels at least 1 mm",
    wrong="gap {item} closes to {found}, {limit} wanted",
    on=Envelope,
    cases=("running", "drifting"),
    edition=7,
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A rod that touches a cover at speed bends, and a bent rod breaks.",
    leaves_out="coupling rods and brake gear that no gap is to; how far the eyes of rods reach beyond pin and bush, "
    "and the swing of a truck or bogie, which no spec states: what is stated may be wrong by these; whether side play "
    "above its least is all that an axle has; a block that is held behind its back face; a cylinder behind "
    "its axle, or of which rods, faces or covers are not stated, whose gaps are as stated; bending of rods at speed "
    "and of frames on uneven track; the local code and a competent person decide",
    against=("foul",),
    against_on={"cylinder-block": ("foul",), "cylinder-cover": ("foul",), "crosshead": ("foul",)},
    limits=[
        Limit("least_gap", "10 mm", "length", COMMON_PRACTICE, "least gap to the motion"),
        Limit(
            "side play",
            "1 mm",
            "length",
            COMMON_PRACTICE,
            "least side play to one side of an axle in its boxes, which its wheels and coupling rods have too",
            "not negative",
        ),
        FLANGE,
        BETWEEN_WHEELS,
    ],
)
def motion_clearance(envelope: Envelope, case: LoadCase, sheet: Sheet) -> Judgement:
    """Gap cold and new less side play, wear and growth.

    Of several gaps to one kind of part the least is held against what the parts leave: from the flanges of each wheel
    to the covers, from the back cover to the eye of the connecting rod round its pin and bush, and along the engine to
    the pin of a coupled axle in line with a cover. A gap said to be wider is told, and counted so; and so is less wear
    than that of the axleboxes at a wheel or a coupling rod, or of all bearings between wheel and piston at a crosshead
    or its rod, and less growth towards these than over the thickness of the back cover. A wheel or a coupling rod that
    is said to have less side play than every axle has is told, and counted at the least.
    """
    if not envelope.gaps:
        raise sheet.not_assessed("no gap to the motion is stated", envelope.where)
    part = sheet.follow(envelope.around)
    without = _without_gap(envelope, part, sheet) if isinstance(part, CylinderBlock) else []
    named = sheet.states(
        not without, f"no gap to {', '.join(without)}" if without else "what moves beside the block has a gap"
    )
    at = sheet.take("T", case.temperature_of(part))
    left = left_by_parts(envelope, part, sheet) if isinstance(part, CylinderBlock) else {}
    clear = sheet.each(
        envelope.gaps.items(), lambda item: sheet.worst(*_gap(*item, left.get(item[0]), part, at, sheet))
    )
    return sheet.worst(named, clear)


def _without_gap(envelope: Envelope, block: CylinderBlock, sheet: Sheet) -> list[str]:
    """What moves beside every cylinder block and has no gap: the crossheads that are drawn, each by its id."""
    gaps = envelope.gaps.items()
    to = [sheet.follow(gap.to) for name, gap in gaps if sheet.is_stated(f"part at {name}", gap.to)]
    words = {
        sheet.read(f"moving at {name}", gap.moving)
        for name, gap in gaps
        if sheet.is_stated(f"moving at {name}", gap.moving)
    }
    if any(isinstance(part, Crosshead) for part in to):
        words.add("crosshead")
    drawn, ids = [one.id for one in crossheads_of(block, sheet)], {part.id for part in to}
    beside = ("connecting rod", "wheel") if drawn else ("crosshead", "connecting rod", "wheel")
    return [
        *(name for name in drawn if name not in ids),
        *(f"the {word}" for word in beside if word not in words),
    ]


def _gap(
    name: str, gap: MotionGap, most: Metres | None, part: Component, at: Kelvins, sheet: Sheet
) -> Iterator[Judgement]:
    """The gap against what the parts leave, where that could be worked, and what is left of the lesser."""
    a = least_gap(name, gap, sheet)
    if most is not None:
        told = sheet.at_most(a, most).else_says(
            "gap {item} is said to be {found}, the parts as drawn leave {limit} at most"
        )
        yield told.graded(Grade.NONCONFORMITY)
    length, told_of = _length_grown(name, gap, part, sheet)
    yield from told_of
    grown = sheet.work(
        f"g {name}",
        growth_of_length,
        L=length,
        alpha=sheet.look_up("α", sheet.material_of(part).expansion, of=part, at=at),
        T=at,
        T_ref=DRAWING_TEMPERATURE,
    )
    w = sheet.take(f"w {name}", gap.wear)
    known = wear_known(name, gap, part, sheet) if isinstance(part, CylinderBlock) else None
    if known is not None:
        told = sheet.at_least(w, known).else_says(
            "gap {item} counts {found} of wear, its bearings wear {limit}"
        )
        yield told.graded(Grade.NONCONFORMITY)
    s = sheet.take(f"s {name}", gap.side_play)
    moves: str | None = sheet.said(f"moving at {name}", gap.moving)
    if moves in ("wheel", "coupling rod"):  # to the side with an axle
        free = sheet.limit("side play", "s_0")
        told = sheet.at_least(s, free).else_says(
            "gap {item} counts {found} of side play, an axle has {limit} at least"
        )
        yield told.graded(Grade.NONCONFORMITY)
        s = max(s, free)
    left = sheet.work(
        f"c {name}",
        gap_left,
        a=a if most is None else min(a, most),
        s=s,
        w=w if known is None else max(w, known),
        g=grown,
    )
    yield sheet.at_least(left, sheet.limit("least_gap"))


def _length_grown(name: str, gap: MotionGap, part: Component, sheet: Sheet) -> tuple[Metres, list[Judgement]]:
    """Length that grows into a gap, no less than is known, and what is told of one that is stated to be less."""
    L = sheet.take(f"L {name}", gap.growth_length)
    known = growth_known(name, gap, part, sheet) if isinstance(part, CylinderBlock) else None
    if known is None:
        return L, []
    told = sheet.at_least(L, known).else_says(
        "gap {item} counts {found} that grows, the back cover alone is {limit} thick"
    )
    return max(L, known), [told.graded(Grade.NONCONFORMITY)]


RULES: tuple[Rule, ...] = (motion_clearance,)
