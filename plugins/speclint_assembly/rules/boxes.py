"""Cam boxes, and the gear that goes into them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import Cam, CamBox, Shaft, Tappet
from speclint_assembly.formulae.sizes import between_rims, least_wall_of_bush, over_the_nose, wall_of_bush
from speclint_assembly.inputs.room import BY_HAND, WITH_TACKLE, passes
from speclint_assembly.sources import GEOMETRY

if TYPE_CHECKING:
    from speclint.specs import Length


@rule(
    "cambox.removable",
    title="Across the direction in which it is withdrawn the cam box passes the opening of frames and brackets "
    "with 5 mm to spare, everything else in its place",
    on=CamBox,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="a box that is tight between the frames comes out only with the block",
    leaves_out="its length in the direction in which it is withdrawn, which cambox.withdrawal judges",
    against=(),
    limits=[WITH_TACKLE],
)
def removable(box: CamBox, sheet: Sheet) -> Judgement:
    """Width and height of the box against those of the opening on the side that `withdrawn` names."""
    sheet.read("withdrawn", box.withdrawn)
    wide, high = sheet.take("B", box.opening_width), sheet.take("H", box.opening_height)
    return sheet.worst(
        passes(wide, sheet.take("b", box.width), "b", "across the opening", sheet, "with_tackle"),
        passes(high, sheet.take("h", box.height), "h", "in the height of the opening", sheet, "with_tackle"),
    )


_RIM = Limit(
    "rim",
    "5 mm",
    "length",
    COMMON_PRACTICE,
    "least metal of a box on each side of the opening under its lid",
    "not negative",
)


_BUSH = Limit(
    "bush",
    "0.04",
    "ratio",
    COMMON_PRACTICE,
    "least wall of a bearing between journal and housing over the diameter of the journal, as of a wrapped bush",
)


@rule(
    "gear.enters-its-box",
    title="The cam shaft passes the bearing housings of its box with room for bushes, the circle over the nose of each "
    "cam these or the opening under the lid, which lies within the box, and each tappet its guide",
    edition=3,
    on=CamBox,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="a cam that passes neither housing nor lid is in the box before the box is made, or never",
    leaves_out="rockers and their pins; cams that are in halves; the order in which cams stand on the shaft; on which "
    "side of the box its lid is: it is held against the largest",
    against=(),
    limits=[BY_HAND, _RIM, _BUSH],
)
def enters_its_box(box: CamBox, sheet: Sheet) -> Judgement:
    """Greatest diameter of the shaft, and of each cam over its nose or through the lid; stem of each tappet."""
    tappets = sheet.belonging_to(box, Tappet)
    cams = [cam for tappet in tappets for cam in sheet.belonging_to(tappet, Cam)]
    if not cams:
        raise sheet.not_assessed(f"no cam lifts a tappet of {box.id}", box.where)
    housing = sheet.take("D_h", box.bearing_bore)
    shafts = {shaft.id: shaft for shaft in (sheet.follow(cam.turns_on) for cam in cams)}
    return sheet.worst(
        sheet.each(shafts.values(), lambda shaft: _shaft(shaft, housing, sheet)),
        sheet.each(shafts.values(), lambda shaft: _bushes(shaft, housing, sheet)),
        sheet.each(cams, lambda cam: _cam(cam, box, housing, sheet)),
        sheet.each(tappets, lambda tappet: _tappet(tappet, box, sheet)),
        *_lid_in_box(box, sheet),
    )


def _lid_in_box(box: CamBox, sheet: Sheet) -> Iterator[Judgement]:
    """The opening under the lid against the largest side of the box, less the metal round it."""
    sizes = {"l": box.length, "b": box.width, "h": box.height}
    if not all(sheet.is_stated("size of the box", one) for one in sizes.values()):
        return
    long, short, _ = sorted((sheet.take(name, one) for name, one in sizes.items()), reverse=True)
    t = sheet.limit(_RIM.name, "t_r")
    for name, opening, side in (("long", box.lid_length, long), ("wide", box.lid_width, short)):
        if sheet.is_stated(f"lid, {name}", opening):
            most = sheet.work(f"s_{name}", between_rims, s=side, t=t)
            yield sheet.at_most(sheet.take(f"l_{name}", opening), most).else_says(
                f"opening under the lid {{found}} {name}, its box has room for {{limit}}"
            )


def _shaft(shaft: Shaft, housing: float, sheet: Sheet) -> Judgement:
    greatest = sheet.take(f"D of {shaft.id}", shaft.greatest_diameter)
    return sheet.at_most(greatest, housing).else_says(f"{shaft.id} {{found}} across, its housing {{limit}}")


def _bushes(shaft: Shaft, housing: float, sheet: Sheet) -> Judgement:
    """What the housing leaves round each journal; where one states no diameter, or none is drawn, round the shaft."""
    own = [
        one.journal
        for name, one in shaft.bearings.items()
        if sheet.is_stated(f"journal in {name} of {shaft.id}", one.journal)
    ]
    if len(own) < max(len(shaft.bearings), 1):
        own.append(shaft.diameter)
    return sheet.worst(*(_bush(shaft, journal, housing, sheet) for journal in own))


def _bush(shaft: Shaft, journal: Length, housing: float, sheet: Sheet) -> Judgement:
    d = sheet.take(f"d of {shaft.id}", journal)
    wall = sheet.work(f"t_b of {shaft.id}", wall_of_bush, D_h=housing, d=d)
    least = sheet.work(f"t_l of {shaft.id}", least_wall_of_bush, k=sheet.limit(_BUSH.name, "k_b"), d=d)
    return sheet.at_least(wall, least).else_says(
        f"bearing of {shaft.id} has {{found}} between journal and housing, {{limit}} wanted"
    )


def _tappet(tappet: Tappet, box: CamBox, sheet: Sheet) -> Judgement:
    stem = sheet.take(f"d of {tappet.id}", tappet.stem_diameter)
    bore = sheet.take("d_b", box.tappet_bore)
    return sheet.at_most(stem, bore).else_says(f"stem of {tappet.id} {{found}}, its bore {{limit}}")


def _cam(cam: Cam, box: CamBox, housing: float, sheet: Sheet) -> Judgement:
    """Through the housings on its shaft; through the lid on its edge where it does not pass these."""
    radius, lift = sheet.take(f"r of {cam.id}", cam.base_radius), _lift(cam, sheet)
    over = sheet.work(f"D_c of {cam.id}", over_the_nose, r=radius, h=lift)
    on_shaft = over + sheet.limit("by_hand") <= housing
    if on_shaft or not sheet.is_stated("length under the lid", box.lid_length):
        return passes(housing, over, f"h of {cam.id}", f"through the housing, {cam.id}", sheet)
    return sheet.worst(*_through_lid(cam, box, over, sheet))


def _through_lid(cam: Cam, box: CamBox, over: float, sheet: Sheet) -> Iterator[Judgement]:
    long, short = sheet.take("l_l", box.lid_length), sheet.take("b_l", box.lid_width)
    yield passes(long, over, f"l of {cam.id}", f"along the lid, {cam.id}", sheet)
    yield passes(
        short, sheet.take(f"b of {cam.id}", cam.width), f"b of {cam.id}", f"across the lid, {cam.id}", sheet
    )


def _lift(cam: Cam, sheet: Sheet) -> float:
    """The lift at the nose over the base circle: that of the law with its ramp, or the greatest of the table."""
    if cam.table:
        return max(sheet.take(f"h of {cam.id}", one) for one in cam.table)
    return sheet.take(f"h_l of {cam.id}", cam.lift) + sheet.take(f"h_r of {cam.id}", cam.ramp_height)


RULES = (removable, enters_its_box)
