"""A part stands behind every word that says what holds a seat, or the pieces of a valve; the cage leaves its room."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.equations import Metres
from speclint.facts import cages_round, cover_on_collar, ends_beyond, retained_by_part, room_at_lift
from speclint.specs import CylinderLiner, PoppetValve, ValveCage, ValveSeat
from speclint_agreement.formulae.openings import bore_within, depth_of_bar

if TYPE_CHECKING:
    from speclint.specs import Area, Length

#: Words for a part of its own that keeps pieces of a valve back; a collar belongs to the valve itself.
_A_CAGE = ("cage", "perforated plate")
#: What a liner's own spec states whole, or what needs no part.
_IN_THE_LINER = ("dowel", "nothing")
#: The word that holds where no part is drawn.
_NOTHING = "none"


def _parts(component: PoppetValve | ValveSeat | CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """The word for what holds against the part that is drawn: a cage round the valve, a ring on the seat, a cover."""
    if isinstance(component, PoppetValve):
        return _of_valve(component, sheet)
    return _of_seat(component, sheet) if isinstance(component, ValveSeat) else _of_liner(component, sheet)


def _of_valve(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """A part with an end beyond the open valve is a cage; a perforated plate stands below the seat and has none."""
    if not sheet.is_stated("retained", valve.retained):
        return
    said, cages = str(sheet.read("retained", valve.retained)), cages_round(valve, sheet)
    over = [cage for cage in cages if sheet.is_stated(f"end of {cage.id}", cage.end_at)]
    if over:
        yield Pair(valve.retained, Worked("cage", tuple(cage.end_at.where for cage in over)))
    elif cages:
        drawn = said if said in _A_CAGE else "cage"
        yield Pair(valve.retained, Worked(drawn, tuple(cage.surrounds.where for cage in cages)))
    elif said in _A_CAGE and sheet.setting("stage") == "draft":
        sheet.note_place(f"valve cage ({valve.id})", filled=False, where=valve.retained.where)
        raise sheet.not_applicable(
            f"a draft: a cage is still to be drawn, listed under {sheet.listed_under()}"
        )
    elif said in _A_CAGE:
        yield Pair(valve.retained, Worked(_NOTHING, (), "what is drawn"))


def _of_seat(seat: ValveSeat, sheet: Sheet) -> Iterator[Pair]:
    if not sheet.is_stated("retention", seat.retention):
        return
    said, held = str(sheet.read("retention", seat.retention)), retained_by_part(seat, sheet)
    if held is None:
        yield Pair(seat.retention, Worked(_NOTHING, (), "what is drawn"))
    else:
        yield Pair(seat.retention, held if said == _NOTHING else Worked(said, held.places))


def _of_liner(liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """Of a collar that a cover clamps; dowels stand in the liner's own spec."""
    if not sheet.is_stated("held by", liner.retained_by):
        return
    if sheet.read("held by", liner.retained_by) not in _IN_THE_LINER:
        drawn = cover_on_collar(liner, sheet)
        yield Pair(liner.retained_by, drawn or Worked("nothing", (), "what is drawn"))


def _openings(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """The widest opening that the valve states against that of each cage round it."""
    for cage in cages_round(valve, sheet):
        if sheet.is_stated("opening", cage.opening):
            yield Pair(valve.cage_opening, cage.opening, name=cage.id)


def _boxes(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """The bore that the valve states round it against what the wall of each cage leaves within its outside.

    The wall is as deep as the bars, where their section and width are stated. A perforated plate stands beside the
    valve.
    """
    if sheet.said("retained", valve.retained) == "cage":
        for cage in cages_round(valve, sheet):
            if sheet.is_stated("outside of the cage", cage.outside_diameter):
                t, places = _wall(cage, sheet)
                D = sheet.take("D", cage.outside_diameter)
                bore = sheet.work("D_i", bore_within, D=D, t=t)
                room = worked(bore, cage.outside_diameter, *places)
                yield Pair(valve.box_diameter, room, "at most", name=cage.id)


def _wall(cage: ValveCage, sheet: Sheet) -> tuple[Metres, tuple[Area | Length, ...]]:
    """The wall of a cage: the depth of its bars, and no less than a cage has."""
    least = sheet.limit("wall", "t_l")
    sizes = {"section of a bar": cage.bar_area, "width of a bar": cage.bar}
    if not all(sheet.is_stated(name, one) for name, one in sizes.items()):
        return least, ()
    t = sheet.work("t", depth_of_bar, A=sheet.take("A", cage.bar_area), w=sheet.take("w", cage.bar))
    return max(t, least), (cage.bar_area, cage.bar)


def _rooms(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """The clearance beyond the open valve against what its cage, or the cover of its chamber, leaves at full lift.

    Of several, that which leaves the least.
    """
    beyond = sorted(ends_beyond(valve, sheet), key=lambda one: sheet.take_nominal("x", one[1]))
    for _, end_at in beyond[:1]:
        sizes = end_at, valve.height, valve.lift
        if all(sheet.is_stated("end, height or lift", one) for one in sizes):
            x, H, h = (
                sheet.take_nominal(name, one) for name, one in zip(("x", "H", "h"), sizes, strict=True)
            )
            yield Pair(valve.clearance_open, worked(sheet.work("c_0", room_at_lift, x=x, H=H, h=h), *sizes))


has_a_part: Rule = agreement(
    "retention.has-a-part",
    title="What is said to hold a loose seat or liner, or the pieces of a valve, is a part that is drawn, and so drawn",
    on=(CylinderLiner, PoppetValve, ValveSeat),
    pairs=_parts,
    within="",
    grade=Grade.HOLD,
    edition=3,
    row=270,
    why="a cage or a screwed ring that is only a word holds nothing when the fit is lost or the valve breaks",
    leaves_out="the strength of that part and of its fastening; a collar of the valve itself; dowels (liner.fit-hot)",
    against_on={"retaining-ring": ("loosen",)},
)

opening_of_cage: Rule = agreement(
    "valve.opening-of-cage",
    title="The widest opening that a valve's spec states is that of the cage round the valve",
    on=PoppetValve,
    pairs=_openings,
    within="0.1 mm",
    grade=Grade.HOLD,
    why="a piece of a broken valve falls through the opening that the cage has, not through the one on another drawing",
    leaves_out="openings that wear or corrosion make wider",
)

box_of_cage: Rule = agreement(
    "valve.box-of-its-cage",
    title="The bore that a valve states round it leaves the cage that stands there a wall, as deep as its bars and at "
    "least 2 mm",
    on=PoppetValve,
    pairs=_boxes,
    within="",
    limits=[Limit("wall", "2 mm", "length", COMMON_PRACTICE, "least wall of a cage")],
    edition=2,
    grade=Grade.NONCONFORMITY,
    why="steam is reckoned to pass by room that the cage takes, and the engine is throttled there",
    leaves_out="a flange wider than the cage beside the valve; the area that is left round the valve "
    "(steamway.area-continuity)",
    against=(),
)

room_by_lift: Rule = agreement(
    "valve.room-by-lift",
    title="The clearance beyond the open valve is what its cage, or the cover of its chamber, leaves above "
    "its height and lift",
    on=PoppetValve,
    pairs=_rooms,
    within="0.1 mm",
    grade=Grade.HOLD,
    why="a lift that is raised takes the room that another drawing still promises, and the valve strikes cage or cover",
    leaves_out="heat and overtravel (valve.foul-clearance)",
    edition=2,
)

RULES = (box_of_cage, has_a_part, opening_of_cage, room_by_lift)
