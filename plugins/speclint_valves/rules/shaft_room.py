"""Room along a camshaft: a key in its cam, and the cams side by side in their box and between the bearings."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import FIRST_PRINCIPLES, Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import cams_on
from speclint.specs import Cam, CamBox, Shaft
from speclint_valves.formulae.room import places_apart
from speclint_valves.inputs.hubs import hub_of, in_boxes, together


def _keys(cam: Cam, sheet: Sheet) -> Iterator[Pair]:
    """The length of the key within the cam against its hub, or its track where no hub is stated."""
    hub = hub_of(cam, sheet)
    if sheet.is_stated("hub or track", hub):
        yield Pair(cam.key_length, hub, "at most")


def _cams(shaft: Shaft, sheet: Sheet) -> Iterator[Pair]:
    """The cams of each box against its longest side, and all on the shaft against its outermost bearings."""
    cams = cams_on(shaft, sheet)
    for box, own in in_boxes(cams, sheet):
        longest = _longest_side(box, sheet)
        if longest is not None:
            yield from _side_by_side(own, longest, box.id, sheet)
    ends = _outermost(shaft, sheet)
    if ends is not None:
        yield from _side_by_side(cams, ends, "bearings", sheet)


def _side_by_side(cams: list[Cam] | tuple[Cam, ...], room: Worked, name: str, sheet: Sheet) -> Iterator[Pair]:
    taken = together(cams, sheet)
    if taken.places:
        yield Pair(taken, room, "at most", name=name)


def _longest_side(box: CamBox, sheet: Sheet) -> Worked | None:
    """The longest of the sides of a cam box, of which all must be stated: any of them may lie along the shaft."""
    sizes = {"length": box.length, "width": box.width, "height": box.height}
    if not all(sheet.is_stated(f"{name} of {box.id}", one) for name, one in sizes.items()):
        return None
    taken = [(sheet.take(f"{name} of {box.id}", one), one) for name, one in sizes.items()]
    most, place = max(taken, key=lambda item: item[0])
    return worked(most, place)


def _outermost(shaft: Shaft, sheet: Sheet) -> Worked | None:
    """The distance of the outermost bearings, where all of two or more state their places."""
    places = {name: one.at for name, one in shaft.bearings.items()}
    if len(places) < 2 or not all(sheet.is_stated(f"bearing {name}", at) for name, at in places.items()):
        return None
    at = [sheet.take(f"x {name}", one) for name, one in places.items()]
    return worked(sheet.work("L_b", places_apart, x_1=min(at), x_2=max(at)), *places.values())


key_in_hub: Rule = agreement(
    "cam.key-in-its-hub",
    title="The key of a cam is no longer within the cam than its hub, or its track where no hub is stated",
    on=Cam,
    pairs=_keys,
    within="",
    grade=Grade.NONCONFORMITY,
    why="the length of a key beside the cam turns nothing, and the rest of it is sheared by the whole torque",
    leaves_out="ends of the key that are round, and one key that turns several cams, of which each states its own part",
)

room_for_cams: Rule = agreement(
    "shaft.room-for-its-cams",
    title="The cams of a shaft side by side are no longer than the longest side of their cam box, nor than the shaft "
    "from one of its outermost bearings to the other",
    on=Shaft,
    pairs=_cams,
    within="",
    cites=[FIRST_PRINCIPLES],
    grade=Grade.NONCONFORMITY,
    why="a cam for which the box has no room stands under the tappet of another, or is made narrower than judged",
    leaves_out="walls of the box, bearings, collars and gaps between cams, which take room too; cams outside of the "
    "bearings, for which a concession says so",
)

RULES = (key_in_hub, room_for_cams)
