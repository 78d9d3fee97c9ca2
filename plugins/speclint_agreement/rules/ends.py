"""A valve, its seats and its gear belong to one end of one cylinder; its spindle passes out through one steam."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import bores_under, boxes_of, ends_of_valve, gear_of, steam_at_spindle, valves_of_end
from speclint.specs import Cam, CamBox, PoppetValve, Rocker, Tappet, ValveSpindle


def _ends(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """What the valve serves, its cylinder, its beats and the boxes of its gear against the bores of its seats."""
    found = tuple(bores_under(valve, sheet))
    for name, beat, bore in found:
        if sheet.is_stated("serves", bore.serves):
            yield Pair(valve.serves, bore.serves, name=f"{name}, serves")
        if sheet.is_stated("beat", bore.beat):
            yield Pair(worked(name, beat.seat), bore.beat, name=f"{name}, beat")
    spaces = [
        bore.opens_into
        for _, _, bore in found
        if sheet.is_stated("space that it opens into", bore.opens_into)
    ]
    for space in spaces[1:]:
        yield Pair(space, spaces[0], name="space that it opens into")
    blocks = [(sheet.follow(sheet.follow(beat.seat).pressed_into).id, beat.seat) for _, beat, _ in found]
    for other, link in blocks[1:]:
        yield Pair(worked(other, link), worked(blocks[0][0], blocks[0][1]), name="block")
    ends = ends_of_valve(valve, sheet)
    for end in ends[1:]:
        yield Pair(end, ends[0], name="end of both seats")
    if ends:
        yield from _of_end(valve, ends[0], sheet)


def _of_end(valve: PoppetValve, end: Worked, sheet: Sheet) -> Iterator[Pair]:
    block = sheet.follow(sheet.follow(valve.upper_beat.seat).pressed_into)
    table = block.ends.get(end.value)
    if table is not None and sheet.is_stated(f"bore of end {end.value}", table.of_bore):
        yield Pair(valve.cylinder_bore, table.of_bore, name="cylinder")
    gear = gear_of(valve, sheet)
    for box in boxes_of(gear, sheet) if gear else ():
        if sheet.is_stated(f"end of {box.id}", box.of_end):
            yield Pair(end, box.of_end, name=f"end of {box.id}")


def _boxes(rocker: Rocker, sheet: Sheet) -> Iterator[Pair]:
    """The box that carries the rocker against that which carries its tappet."""
    for tappet in sheet.belonging_to(rocker, Tappet):
        if sheet.is_stated("box", rocker.carried_in) and sheet.is_stated("box of tappet", tappet.carried_in):
            own, other = sheet.follow(rocker.carried_in).id, sheet.follow(tappet.carried_in).id
            yield Pair(worked(own, rocker.carried_in), worked(other, tappet.carried_in), name=tappet.id)


def _counts(box: CamBox, sheet: Sheet) -> Iterator[Pair]:
    """The tappets of a box against the valves whose seats are at its end of the cylinder."""
    if sheet.is_stated("block", box.mounted_on) and sheet.is_stated("end", box.of_end):
        valves = valves_of_end(sheet.follow(box.mounted_on), sheet.read("end", box.of_end), sheet)
        if valves:
            places = (box.of_end.where, *(valve.upper_beat.seat.where for valve in valves))
            yield Pair(box.tappets, Worked(len(valves), places))


def _spindles(spindle: ValveSpindle, sheet: Sheet) -> Iterator[Pair]:
    """The steam inside the seal against that on the side where the spindle leaves; the seal against the spindle."""
    by_place = steam_at_spindle(spindle, sheet)
    if by_place is not None:
        yield Pair(spindle.leaves, by_place, name="leaves")
    sizes = spindle.seal_diameter, spindle.diameter
    if all(sheet.is_stated("diameter", one) for one in sizes):
        yield Pair(spindle.seal_diameter, spindle.diameter, "at most", name="seal_diameter")


def _bores(cam: Cam, sheet: Sheet) -> Iterator[Pair]:
    """The bore of the cam against the shaft that turns it."""
    if sheet.is_stated("shaft", cam.turns_on) and sheet.is_stated("bore", cam.bore):
        shaft = sheet.follow(cam.turns_on)
        if sheet.is_stated("diameter of the shaft", shaft.diameter):
            yield Pair(cam.bore, shaft.diameter)


of_one_end: Rule = agreement(
    "valve.of-one-end",
    title="Both seats of a valve and the gear that works it belong to one end of one cylinder, serve what it serves "
    "and open into one space",
    on=PoppetValve,
    pairs=_ends,
    within="",
    grade=Grade.HOLD,
    edition=2,
    why="gear of the other end opens the valve at the wrong half of the stroke, with steam behind it",
    leaves_out="a seat bore, or a cam box, that does not say to which end it belongs",
)

one_box: Rule = agreement(
    "gear.one-box",
    title="A rocker and the tappet that works it are carried in one box",
    on=Rocker,
    pairs=_boxes,
    within="",
    grade=Grade.HOLD,
    why="parts lined up on two datums leave a clearance that neither drawing gives",
    leaves_out="where in the box they are",
)

valves_of_box: Rule = agreement(
    "cambox.valves-of-its-end",
    title="A cam box has a tappet for each valve at its end of the cylinder",
    on=CamBox,
    pairs=_counts,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a box is found to be a tappet short when it is offered up to the engine",
    leaves_out="valves whose seat bores do not say at which end they are; one tappet that works two valves",
)

steam_by_place: Rule = agreement(
    "spindle.steam-by-place",
    edition=2,
    title="Inside the seal of a spindle is the steam of the side on which it leaves; the seal is no larger than the "
    "spindle",
    on=ValveSpindle,
    pairs=_spindles,
    within="",
    grade=Grade.HOLD,
    why="steam on the end of the spindle opens or shuts the valve by the pressure that is really there",
    leaves_out="the direction in which it pushes, which tells on which side the spindle leaves",
)

bore_of_shaft: Rule = agreement(
    "cam.bore-of-shaft",
    title="The bore of a cam is of the size of the shaft that turns it",
    on=Cam,
    pairs=_bores,
    grade=Grade.NONCONFORMITY,
    why="a cam bored for another shaft does not go on, or turns on its key alone",
    leaves_out="the fit and the key, and a shaft stepped between its cams",
)

RULES = (bore_of_shaft, of_one_end, one_box, steam_by_place, valves_of_box)
