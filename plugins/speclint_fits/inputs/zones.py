"""The zone of the face that a link of a dimension chain runs to, and what it takes of the gap."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from speclint import Sheet
from speclint.equations import Metres
from speclint.facts import Acting, zone_at_distance, zone_of
from speclint.specs import ORIENTATIONS, Component, GeometricalTolerance, Weldment
from speclint_fits.formulae.geometry import (
    beyond_projection,
    half_of_zone,
    opening_of_zone,
    part_of_zone,
    zone_of_faces,
)
from speclint_fits.formulae.tables import general_flatness, weldment_angle

#: The one general specification that states its zone itself.
_BY_ZONE = "ISO 22081"


def zone_of_link(one: Acting, sheet: Sheet) -> Metres | None:
    """What form, orientation and place of a link's faces add either way to its size; None where nothing says.

    The greatest of what is stated of the face, since form holds in orientation and that in location; else by the
    general class of the drawing. Nothing where the link was measured, is stated in the chain itself, or has a class of
    fits.
    """
    if sheet.is_stated(f"{one.name} as measured", one.link.measured):
        return 0.0
    if not sheet.is_stated(f"{one.name} is drawn", one.link.dimension):
        return 0.0
    part, key = sheet.follow(one.link.of), sheet.read(f"{one.name} of its part", one.link.dimension)
    found = [*_stated(one, part, key, sheet), *_of_table(one, part, key, sheet)]
    if found:
        return max(found)
    if sheet.tolerance_class(sheet.dimension(one.link)):
        return 0.0
    return _general(one, part, sheet)


def _stated(one: Acting, part: Component, key: str, sheet: Sheet) -> Iterator[Metres]:
    """Each tolerance of the part that is of this size."""
    for name, its in part.tolerances.items():
        if sheet.read(f"face of {name} of {part.id}", its.of) != key:
            continue
        form = sheet.read(f"form of {name} of {part.id}", its.form)
        t = zone_of(f"t of {one.name}, {name}", name, its, part, sheet)
        if form in ORIENTATIONS:
            yield _tilted(one, name, its, t, sheet)
        else:
            e = sheet.work(f"e of {one.name}", half_of_zone, t=t)
            yield _opened(one, name, its, e, sheet) if _projected(name, its, sheet) else e


def _projected(name: str, its: GeometricalTolerance, sheet: Sheet) -> bool:
    """Whether a zone lies outside of its part, from the face to the height to which it is projected."""
    return sheet.said(f"modifier of {name}", its.modifier) == "P"


def _tilted(one: Acting, name: str, its: GeometricalTolerance, t: Metres, sheet: Sheet) -> Metres:
    """A zone of orientation at the reach of the link: over its length, which is its height where it is projected."""
    if not sheet.is_stated(f"reach of {one.name}", one.link.reach):
        return t
    over = its.projects if _projected(name, its, sheet) else its.over
    length, reach = sheet.take(f"l of {name}", over), sheet.take(f"L of {one.name}", one.link.reach)
    return sheet.work(f"e of {one.name}", zone_at_distance, t=t, L=reach, l=length)


def _opened(one: Acting, name: str, its: GeometricalTolerance, e: Metres, sheet: Sheet) -> Metres:
    """A projected zone of position at the far end of what projects, as far as that reaches beyond its height."""
    if not sheet.is_stated(f"reach of {one.name}", one.link.reach):
        return e
    h, reach = sheet.take(f"h of {name}", its.projects), sheet.take(f"L of {one.name}", one.link.reach)
    beyond = sheet.work(f"P of {one.name}", beyond_projection, P=reach, h=h)
    k = sheet.work(f"k of {one.name}", opening_of_zone, P=beyond, D=h)
    return sheet.work(f"e of {one.name}", part_of_zone, k=k, e=e)


def _of_table(one: Acting, part: Component, key: str, sheet: Sheet) -> Iterator[Metres]:
    """Flatness and squareness of both faces, where the table of the size states them, as of a pad."""
    table: Any = part
    for step in key.split(".")[:-1]:
        table = table.get(step) if isinstance(table, dict) else getattr(table, step, None)
    flat, square = (getattr(table, name, None) for name in ("flatness", "squareness"))
    if flat is None or not sheet.is_stated(f"flatness of {one.name}", flat):
        return
    q = 0.0
    if square is not None and sheet.is_stated(f"squareness of {one.name}", square):
        q = sheet.take(f"q of {one.name}", square)
    yield sheet.work(f"e of {one.name}", zone_of_faces, f=sheet.take(f"f of {one.name}", flat), q=q)


def _general(one: Acting, part: Component, sheet: Sheet) -> Metres | None:
    """The zone of the general class of its drawing, else of all drawings, for a face as long as the size.

    Of a weldment that states a class it is by its angle.
    """
    size = sheet.take_nominal(f"x of {one.name}", sheet.dimension(one.link))
    if sheet.is_stated(f"general tolerance of {part.id}", part.general_tolerance):
        named = sheet.read(f"general tolerance of {part.id}", part.general_tolerance)
        if named == _BY_ZONE:
            t = sheet.take(f"t of {one.name}", part.general_zone)
        else:
            t = sheet.look_up(f"t of {one.name}", general_flatness, grade=named[-1], size=abs(size))
        return sheet.work(f"e of {one.name}", half_of_zone, t=t)
    if isinstance(part, Weldment) and sheet.is_stated(f"class of {part.id}", part.tolerance_class):
        grade = sheet.read(f"class of {part.id}", part.tolerance_class)
        reach = sheet.take(f"L of {one.name}", one.link.reach)
        rate = sheet.look_up(f"r of {one.name}", weldment_angle, grade=grade, size=abs(size))
        return sheet.work(f"e of {one.name}", zone_at_distance, t=rate, L=reach, l=1.0)
    if general := sheet.setting("general geometry"):
        t = sheet.look_up(f"t of {one.name}", general_flatness, grade=general, size=abs(size))
        return sheet.work(f"e of {one.name}", half_of_zone, t=t)
    return None
