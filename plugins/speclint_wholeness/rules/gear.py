"""Cams, shafts and cam boxes: each in its place once."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once, replace
from speclint.facts import ends_of, tracks_of, valves_of_end
from speclint.specs import BoltedJoint, Cam, CamBox, CylinderBlock, Fit, Shaft, Tappet, ValveGear
from speclint_wholeness.inputs import place, screwed_elsewhere


def _cams(tappet: Tappet, sheet: Sheet) -> Iterator[ToFill]:
    """The cam that lifts the tappet, or each of its tracks; each has a law or a table of lifts, and not both."""

    def without_law(cam: Cam) -> str | None:
        law, table = sheet.is_stated(f"law of {cam.id}", cam.law), bool(sheet.names_under(cam, "table"))
        if law and table:
            return f"{cam.id} states a law and a table of lifts"
        return None if law or table else f"{cam.id} states neither a law nor a table of lifts"

    tracks = len(tracks_of(tappet, sheet))
    one = place(tappet.id, tappet, Cam, sheet, by="lifts", wrong=without_law)
    yield replace(one, most=tracks) if tracks else one


def _gears(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each bore with valves at its ends the valve gear that serves it."""
    for name in block.bores:
        ends = [end for end in ends_of(block, name, sheet) if valves_of_end(block, end, sheet)]
        if ends:
            found = sheet.fillers(block, ValveGear, by="in_block")
            own = tuple(one for one in found if len(block.bores) == 1 or _serves(one, name, sheet))
            yield ToFill(f"valve gear of bore {name}", ValveGear.called, own, where=block.bores[name].where)


def _serves(gear: ValveGear, bore: str, sheet: Sheet) -> bool:
    stated = sheet.is_stated(f"bore of {gear.id}", gear.cylinder_bore)
    return stated and sheet.read(f"bore of {gear.id}", gear.cylinder_bore) == bore


def _shafts(cam: Cam, sheet: Sheet) -> Iterator[ToFill]:
    """The shaft that turns the cam."""
    found = (sheet.follow(cam.turns_on),) if sheet.is_stated("shaft", cam.turns_on) else ()
    yield ToFill(cam.id, Shaft.called, found, where=cam.where)


def _feet(box: CamBox, sheet: Sheet) -> Iterator[ToFill]:
    """The joint that holds the box, and the fit of the saddle or face that it stands on."""
    into = (sheet.follow(box.mounted_on).id,) if sheet.is_stated("block", box.mounted_on) else ()

    def elsewhere(joint: BoltedJoint) -> str | None:
        return screwed_elsewhere(joint, into, sheet)

    yield place(box.id, box, BoltedJoint, sheet, by="holds", wrong=elsewhere)
    yield place(box.id, box, Fit, sheet, by=("hole.of", "shaft.of"))


def _shafts_in(box: CamBox, sheet: Sheet) -> Iterator[ToFill]:
    """The shafts on which the cams of the box turn: one for all of them."""
    cams = [
        cam
        for one in sheet.fillers(box, Tappet, by="carried_in")
        for cam in sheet.fillers(one, Cam, by="lifts")
    ]
    stated = [cam for cam in cams if sheet.is_stated(f"shaft of {cam.id}", cam.turns_on)]
    shafts = {shaft.id: shaft for shaft in (sheet.follow(cam.turns_on) for cam in stated)}
    if shafts:
        yield ToFill(f"shaft of {box.id}", Shaft.called, tuple(shafts.values()), where=box.where)


def _boxes(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """For each end with valves the cam box that works them; a box that names no end stands for all."""
    boxes = sheet.fillers(block, CamBox, by="mounted_on")
    for_all = [one for one in boxes if not sheet.is_stated(f"end of {one.id}", one.of_end)]
    for name, end in block.ends.items():
        if valves_of_end(block, name, sheet):
            own = [
                one
                for one in boxes
                if one not in for_all and sheet.read(f"end of {one.id}", one.of_end) == name
            ]
            yield ToFill(f"end {name}", CamBox.called, (*own, *for_all), where=end.where)


one_cam: Rule = filled_once(
    "tappet.one-cam",
    edition=2,
    title="One cam lifts each tappet, or several tracks of it that have each a name, by a law or by a table of lifts",
    on=Tappet,
    places=_cams,
    row=320,
    gravity="hold",
    why="a tappet without a cam never opens its valve, and one with two has no law",
    leaves_out="whether the cam is that of the valve (valve.of-one-end)",
)

its_valve_gear: Rule = filled_once(
    "cylinder.its-valve-gear",
    title="One valve gear says, for each cylinder with valves, which cam works each of them in which notch",
    on=CylinderBlock,
    places=_gears,
    row=315,
    gravity="part",
    why="without it nobody has worked when the valves open, nor what steam the cylinder takes",
    leaves_out="whether its notches are sound, which the rules of events judge; valves whose seat bores name no end",
)

on_one_shaft: Rule = filled_once(
    "cam.on-one-shaft",
    title="A shaft turns each cam",
    on=Cam,
    places=_shafts,
    row=330,
    gravity="hold",
    why="a cam on no shaft stands still, and its phase is nobody's",
    leaves_out="key and phase of the cam",
)

at_its_end: Rule = filled_once(
    "end.its-cam-box",
    title="One cam box works the valves of each end of a cylinder",
    on=CylinderBlock,
    places=_boxes,
    row=340,
    gravity="hold",
    why="valves that no gear works shut water in the cylinder",
    leaves_out="seat bores that do not say to which end they belong",
)

fastened: Rule = filled_once(
    "box.fastened",
    title="One joint holds each cam box, and one fit says how it stands on its saddle or face",
    on=CamBox,
    places=_feet,
    row=350,
    gravity="hold",
    why="a box that comes loose lets the valves stay open, and falls into the motion",
    leaves_out="the strength of the joint",
    edition=2,
)

has_shaft: Rule = filled_once(
    "box.has-shaft",
    title="All the cams of a box turn on one shaft",
    on=CamBox,
    places=_shafts_in,
    row=360,
    gravity="hold",
    why="cams on two shafts keep no phase to each other",
    leaves_out="the bearings of the shaft; a cam without a shaft (cam.on-one-shaft)",
)

RULES = (at_its_end, fastened, has_shaft, its_valve_gear, on_one_shaft, one_cam)
