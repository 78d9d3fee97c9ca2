"""A pad of the block in its cut-out: interference, form, contact and its area."""

from __future__ import annotations

from msgspec import Struct

from speclint import Sheet
from speclint.equations import Kelvins, Metres, Pascals, SquareMetres
from speclint.handbook.fits import DRAWING_TEMPERATURE, interference, relative_growth
from speclint.handbook.members import rectangle_area
from speclint.specs import CylinderBlock, LocatingFace, Pad
from speclint_fits.formulae.pads import (
    grown,
    out_of_form,
    wedged_stress,
    wedged_stress_in_slot,
)


class Seated(Struct, frozen=True):
    """A block, one of its pads, and the cut-out that the pad is in."""

    block: CylinderBlock
    pad: Pad
    face: LocatingFace


def seated(face: LocatingFace, sheet: Sheet) -> Seated:
    """The block and the pad that a cut-out takes."""
    block = sheet.follow(face.locks)
    return Seated(block, sheet.entry(block.pads, face.pad, f"pads of {block.id}"), face)


def interference_of(one: Seated, sheet: Sheet) -> Metres:
    """By the drawings, negative for a clearance."""
    slot = sheet.take(f"s of {one.face.id}", one.face.slot)
    width = sheet.take(f"w of {one.face.id}", one.pad.width)
    return sheet.work("δ", interference, d=width, D=slot)


def form_of(one: Seated, sheet: Sheet) -> Metres:
    """Half of the zones of both faces of pad and cut-out: by how much less, or more, they may bear than their sizes."""
    i = one.face.id
    return sheet.work(
        "z",
        out_of_form,
        f_p=sheet.take(f"f_p of {i}", one.pad.flatness),
        f_s=sheet.take(f"f_s of {i}", one.face.flatness),
        q_p=sheet.take(f"q_p of {i}", one.pad.squareness),
        q_s=sheet.take(f"q_s of {i}", one.face.squareness),
    )


def with_form(delta: Metres, one: Seated, sheet: Sheet) -> Metres:
    """The greatest interference with the form zones added, where all of them are stated."""
    zones = (one.pad.flatness, one.face.flatness, one.pad.squareness, one.face.squareness)
    if not all(sheet.is_stated("form", zone) for zone in zones):
        return delta
    return sheet.work("δ_z", grown, delta=delta, g=form_of(one, sheet))


def stress_of(one: Seated, delta: Metres, at: float, sheet: Sheet) -> Pascals:
    """Pressure on the faces of a pad: in a rigid cut-out, unless the cut-out's stiffness is stated."""
    width = sheet.take(f"w of {one.face.id}", one.pad.width)
    E = sheet.look_up("E", sheet.material_of(one.block).modulus, of=one.block, at=at)
    if not sheet.is_stated("stiffness of the cut-out", one.face.slot_stiffness):
        return sheet.work("σ", wedged_stress, delta=delta, w=width, E=E)
    k = sheet.take("k", one.face.slot_stiffness)
    return sheet.work("σ", wedged_stress_in_slot, delta=delta, w=width, E=E, A=area_of_faces(one, sheet), k=k)


def area_of_faces(one: Seated, sheet: Sheet) -> SquareMetres:
    """One face of a pad in contact with its cut-out: no higher than the pad."""
    height = sheet.take("h", one.face.bearing_height)
    if sheet.is_stated("height of the pad", one.pad.height):
        height = min(height, sheet.take("h_p", one.pad.height))
    return sheet.work("A", rectangle_area, b=sheet.take("b", one.face.bearing_depth), h=height)


def growth_of(length: Metres, pad_in: Seated, at: tuple[Kelvins, Kelvins], sheet: Sheet) -> Metres:
    """How much more a length of the block grows than its frame, the two at temperatures of their own."""
    block, frame = sheet.material_of(pad_in.block), sheet.material_of(pad_in.face)
    return sheet.work(
        "g",
        relative_growth,
        L=length,
        alpha_1=sheet.look_up("α_b", block.expansion, of=pad_in.block, at=at[0]),
        T_1=at[0],
        alpha_2=sheet.look_up("α_f", frame.expansion, of=pad_in.face, at=at[1]),
        T_2=at[1],
        T_ref=DRAWING_TEMPERATURE,
    )
