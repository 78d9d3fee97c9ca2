"""The throat under each beat of a valve, and the section of a passage: what the metal round the steam leaves."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement, worked
from speclint.facts import around_throat, least_perimeter, within_valve
from speclint.handbook.members import round_area
from speclint.specs import PoppetValve, SteamPassage, ValveSpindle
from speclint_agreement.formulae.openings import room_in_box


def _throats(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """The throat of each beat within its seat and the passage beyond; what is taken off it not less than the spindle.

    A spindle goes through one of two throats at the least, so the greater of both areas has to cover it.
    """
    beats = (("upper", valve.upper_beat), ("lower", valve.lower_beat))
    for name, beat in beats:
        for called, size in around_throat(beat, name, sheet):
            yield Pair(beat.throat, size, "at most", name=f"{name}, {called}")
    areas = [
        (sheet.take_nominal(f"A_{name[0]}", beat.blocked_area), beat.blocked_area)
        for name, beat in beats
        if sheet.is_stated(f"blocked area, {name}", beat.blocked_area)
    ]
    yield from _within_valve(valve, sheet)
    yield from _in_its_box(valve, sheet)
    for spindle in sheet.belonging_to(valve, ValveSpindle):
        if areas and sheet.is_stated(f"diameter of {spindle.id}", spindle.diameter):
            A = sheet.work("A_s", round_area, d=sheet.take("d", spindle.diameter))
            most = max(areas, key=lambda one: one[0])[1]
            yield Pair(most, worked(A, spindle.diameter), "at least", name=spindle.id)


def _within_valve(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """The throat of the beat whose steam flows through the valve, against what the wall of its rim leaves."""
    for name, beat in (("upper", valve.upper_beat), ("lower", valve.lower_beat)):
        if sheet.is_stated(f"throat, {name}", beat.throat):
            inside = within_valve(valve, beat, name, sheet)
            if inside is not None:
                yield Pair(beat.throat, inside, "at most", name=f"{name}, within the valve")


def _in_its_box(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """The throat after the streams of both beats have met in the valve, against what the box round it lets out."""
    if sheet.said("steam flows through the valve", valve.through_valve) in (None, "neither"):
        return
    sizes = valve.common_throat, valve.box_diameter, valve.beat_distance
    if all(sheet.is_stated("common throat, box or distance of the beats", one) for one in sizes):
        D, a = sheet.take("D_b", valve.box_diameter), sheet.take("a", valve.beat_distance)
        room = sheet.work("A_b", room_in_box, D=D, a=a)
        places = valve.box_diameter, valve.beat_distance
        yield Pair(valve.common_throat, worked(room, *places), "at most", name="both streams, in the box")


def _sections(passage: SteamPassage, sheet: Sheet) -> Iterator[Pair]:
    """The wetted perimeter against that of a round passage of the same section, the least of all."""
    if sheet.is_stated("area", passage.area):
        least = sheet.work("P", least_perimeter, A=sheet.take("A", passage.area))
        yield Pair(passage.perimeter, worked(least, passage.area), "at least")


throat_of_seat: Rule = agreement(
    "valve.throat-of-seat",
    title="The throat of each beat is no wider than the bore of its seat and the passage beyond, that through the "
    "valve than its rim leaves, the common one than its box lets out, and the spindle is taken off",
    on=PoppetValve,
    pairs=_throats,
    within="",
    grade=Grade.NONCONFORMITY,
    why="the steam is reckoned through a throat that the ring or the spindle closes in part: the engine chokes there",
    edition=4,
    leaves_out="ribs and hub of the valve; a valve that does not state its rim; a block that states no passage beyond "
    "the seat; streams that meet outside the box; which of two throats the spindle goes through, and one that leaves "
    "the valve on the side away "
    "from both",
)

section_possible: Rule = agreement(
    "passage.section-possible",
    title="The perimeter of a passage is at least that of a round one of the same area",
    on=SteamPassage,
    pairs=_sections,
    within="",
    grade=Grade.NONCONFORMITY,
    why="no section has less edge than a round one: friction and heat are worked from a passage that cannot be made",
    leaves_out="whether the passage is as wide as it says anywhere but at its narrowest",
)

RULES = (section_possible, throat_of_seat)
