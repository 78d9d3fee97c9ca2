"""Two pads that lock a block on one frame: growth, stiffness and the force between them."""

from __future__ import annotations

from typing import NamedTuple

from speclint import Sheet
from speclint.equations import Kelvins, Metres, Newtons, NewtonsPerMetre, Pascals
from speclint.facts import face_of_cut_out, locks_block, pads_by_frame
from speclint.handbook.fits import DRAWING_TEMPERATURE, relative_growth
from speclint.handbook.members import rectangle_area
from speclint.specs import CylinderBlock, Frame, LoadCase
from speclint_fits.formulae.locked_pads import (
    apart,
    force_of_growth,
    in_series,
    stiffness_of_bar,
    stiffness_of_one_face,
)
from speclint_fits.inputs.seating import Seated, seated


class Pair(NamedTuple):
    """Two locked pads in the cut-outs of one frame, by their names."""

    block: CylinderBlock
    frame: Frame
    names: tuple[str, str]
    pads: tuple[Seated, Seated]


class Held(NamedTuple):
    """What the pads hold back in a load case: growth, stiffness, force, and the temperatures of block and frame."""

    Δ: Metres
    k: NewtonsPerMetre
    F: Newtons
    T_b: Kelvins
    T_f: Kelvins


def locked_on_frames(block: CylinderBlock, sheet: Sheet) -> list[list[str]]:
    """The pads that lock a block, frame by frame."""
    return [
        [name for name in names if locks_block(name, block.pads[name], sheet)]
        for names in pads_by_frame(block, sheet)
    ]


def pairs_of(block: CylinderBlock, sheet: Sheet) -> list[Pair]:
    """The pairs of locked pads of a block, each on one frame.

    :raises NotApplicable: where no frame locks it at two pads.
    """
    twice = [names for names in locked_on_frames(block, sheet) if len(names) == 2]
    if not twice:
        raise sheet.not_applicable("no two pads lock it on one frame")
    found = []
    for one, other in twice:
        both = tuple(seated(face_of_cut_out(block, name, sheet), sheet) for name in (one, other))
        found.append(Pair(block, _frame_of(both[0], both[1], sheet), (one, other), (both[0], both[1])))
    return found


def _frame_of(one: Seated, other: Seated, sheet: Sheet) -> Frame:
    """The frame of two cut-outs: of that which says so, where one alone does."""
    stated = sheet.is_stated(f"frame of {one.face.id}", one.face.in_frame)
    return sheet.follow((one if stated else other).face.in_frame)


def held_back(pair: Pair, case: LoadCase, sheet: Sheet) -> Held:
    """Growth of block over frame between the pads, through block, frame, webs and faces in series."""
    block, frame = pair.block, pair.frame
    T_b = sheet.take("T_b", case.temperature_named(sheet.read("mean of block", block.mean_temperature)))
    T_f = sheet.take("T_f", case.temperature_named(sheet.read("mean of frame", frame.mean_temperature)))
    x_1, x_2 = (sheet.take(f"x_{name}", block.pads[name].at) for name in pair.names)
    L = sheet.work("L", apart, x_1=x_1, x_2=x_2)
    Δ = sheet.work(
        "Δ",
        relative_growth,
        L=L,
        alpha_1=sheet.look_up("α_b", sheet.material_of(block).expansion, of=block, at=T_b),
        T_1=T_b,
        alpha_2=sheet.look_up("α_f", sheet.material_of(frame).expansion, of=frame, at=T_f),
        T_2=T_f,
        T_ref=DRAWING_TEMPERATURE,
    )
    k = _stiffness(pair, L, (T_b, T_f), sheet)
    return Held(Δ, k, sheet.work("F", force_of_growth, k=k, Δ=Δ), T_b, T_f)


def section_of_frame(frame: Frame, sheet: Sheet) -> float:
    """The section of a frame between the pads, m²: as stated, else that of its plate."""
    if sheet.is_stated("section of the frame", frame.section):
        return sheet.take("A_f", frame.section)
    t, h = sheet.take("t_f", frame.thickness), sheet.take("h_f", frame.depth)
    return sheet.work("A_f", rectangle_area, b=t, h=h)


def _stiffness(pair: Pair, L: Metres, at: tuple[Kelvins, Kelvins], sheet: Sheet) -> NewtonsPerMetre:
    block, frame = pair.block, pair.frame
    E_b = modulus_of_block(block, at[0], sheet)
    E_f = sheet.look_up("E_f", sheet.material_of(frame).modulus, of=frame, at=at[1])
    A_b = sheet.take("A_b", block.section)
    k_b = sheet.work("k_b", stiffness_of_bar, E=E_b, A=A_b, L=L)
    k_f = sheet.work("k_f", stiffness_of_bar, E=E_f, A=section_of_frame(frame, sheet), L=L)
    k = sheet.work("k", in_series, k_1=k_b, k_2=k_f)
    for name, one in zip(pair.names, pair.pads, strict=True):
        k = sheet.work("k", in_series, k_1=k, k_2=sheet.take(f"k_{name}", one.pad.stiffness))
        if sheet.is_stated(f"stiffness of the cut-out of {name}", one.face.slot_stiffness):
            spread = sheet.take(f"k_s{name}", one.face.slot_stiffness)
            k = sheet.work("k", in_series, k_1=k, k_2=sheet.work("k_1", stiffness_of_one_face, k_s=spread))
    return k


def modulus_of_block(block: CylinderBlock, at: Kelvins, sheet: Sheet) -> Pascals:
    """Modulus of the metal of a block at a temperature."""
    return sheet.look_up("E_b", sheet.material_of(block).modulus, of=block, at=at)
