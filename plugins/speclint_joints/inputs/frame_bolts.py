"""The bolts that draw a pad of the block on its frame: preload after embedding and creep, hot, least and greatest."""

from __future__ import annotations

from msgspec import Struct

from speclint import Sheet
from speclint.equations import Metres, Newtons, SquareMetres
from speclint.handbook.bolted_joints import loads, scatter, stiffness
from speclint.handbook.materials import Material
from speclint.handbook.members import round_area
from speclint.specs import CylinderBlock, FrameFastening, LoadCase, LocatingFace
from speclint_joints.formulae.loads import least_area
from speclint_joints.formulae.preloads import preload_left
from speclint_joints.formulae.springs import (
    free_length,
    free_thread,
    growth_of_stack,
    stud_with_ends_stiffness,
    two_part_stiffness,
)
from speclint_joints.inputs.preload import require_shop, tightened_preload
from speclint_joints.inputs.stack import Metals, Springs
from speclint_joints.inputs.studs import Studs, core_area, studs_of


class FrameBolts(Struct, frozen=True):
    """The bolts of a pad: least and greatest preload of one in a load case, N, and its stiffness and the parts'.

    ``area`` is the least of one, m²: of its thread, or of a shank reduced below it.
    """

    bolts: Studs
    area: SquareMetres
    low: Newtons
    high: Newtons
    hot: Springs


class _Clamped(Struct, frozen=True):
    """What a bolt clamps: pad of the block and frame, their thicknesses, and the bolt between its threads."""

    bolts: Studs
    block: CylinderBlock
    face: LocatingFace
    grip: Metres
    frame_grip: Metres
    shank: Metres
    shank_length: Metres
    thread_length: Metres


def frame_bolts(fastening: FrameFastening, block: CylinderBlock, case: LoadCase, sheet: Sheet) -> FrameBolts:
    """Preload of one bolt in a load case: scatter of tightening, embedding of its faces, creep, and heat."""
    clamped = _clamped(fastening, block, sheet)
    at = sheet.take("T_0", fastening.tightening.temperature)
    cold_metals, hot_metals = Metals(at, at, at), _metals_in(case, fastening, clamped, sheet)
    require_shop(cold_metals, sheet)
    cold = _springs(cold_metals, fastening, clamped, sheet, "c")
    hot = _springs(hot_metals, fastening, clamped, sheet, "h")
    sheet.read("lubrication", fastening.tightening.lubrication)
    tightened = tightened_preload(fastening, sheet, clamped.bolts)
    lost = sheet.work(
        "F_Z", scatter.preload_lost, f_Z=_embedding(fastening, sheet), k_b=cold.stud, k_m=cold.parts
    )
    creep = sheet.take("r", fastening.relaxation)
    left = sheet.work("F_left", preload_left, F=tightened.low, F_Z=lost, r=creep)
    growth = _growth(fastening, clamped, cold_metals, hot_metals, sheet)
    on_springs = {"Delta": growth, "k_bc": cold.stud, "k_mc": cold.parts, "k_bh": hot.stud, "k_mh": hot.parts}
    shank = sheet.work("A_d", round_area, d=clamped.shank)
    return FrameBolts(
        clamped.bolts,
        area=sheet.work("A", least_area, A_s=clamped.bolts.A_s, A_d=shank),
        low=sheet.work("F_low,h", loads.preload_hot, F_cold=left, **on_springs),
        high=sheet.work("F_high,h", loads.preload_hot, F_cold=tightened.high, **on_springs),
        hot=hot,
    )


def _clamped(fastening: FrameFastening, block: CylinderBlock, sheet: Sheet) -> _Clamped:
    grip, frame = sheet.take("l_1", fastening.grip), sheet.take("l_2", fastening.frame_grip)
    length = sheet.work("L", free_length, l_1=grip, l_2=frame, t_g=0.0, s=0.0)
    shank_length = sheet.take("l_d", fastening.shank_length)
    return _Clamped(
        bolts=studs_of(fastening, sheet),
        block=block,
        face=_face_of(fastening, block, sheet),
        grip=grip,
        frame_grip=frame,
        shank=sheet.take("d_s", fastening.shank),
        shank_length=shank_length,
        thread_length=sheet.work("l_t", free_thread, L=length, l_d=shank_length),
    )


def _face_of(fastening: FrameFastening, block: CylinderBlock, sheet: Sheet) -> LocatingFace:
    """The frame beside the pad, with its metal and its temperature."""
    pad = sheet.read(f"pad of {fastening.id}", fastening.pad)
    for face in sheet.belonging_to(block, LocatingFace):
        if sheet.read(f"pad of {face.id}", face.pad) == pad:
            return face
    raise sheet.not_assessed(
        f"no locating face is stated that has pad {pad} of {block.id}: metal and temperature of the frame there "
        "are not known",
        fastening.where,
    )


def _embedding(fastening: FrameFastening, sheet: Sheet) -> Metres:
    """Embedding of thread, of both faces under head and nut, and of the faces between; the load is across.

    Not assessed where none is stated between: a pad and its frame touch.
    """
    faces = sheet.count("faces", fastening.faces)
    if faces < 1:
        raise sheet.not_assessed(
            "no faces are stated to touch, but a pad and its frame make 1", fastening.faces.where
        )
    return sheet.look_up(
        "f_Z",
        scatter.embedding,
        roughness=sheet.take("Rz", fastening.roughness),
        joint_faces=faces,
        nut_faces=2,
        across=True,
    )


def _metals_in(case: LoadCase, fastening: FrameFastening, clamped: _Clamped, sheet: Sheet) -> Metals:
    """Bolt, pad and frame, each at its own temperature; the pad as hot as the block, unless it has its own."""
    pad = case.temperature_of(clamped.block)
    if sheet.is_stated("temperature of the pad", clamped.face.pad_temperature):
        pad = case.temperature_named(sheet.read("temperature of the pad", clamped.face.pad_temperature))
    return Metals(
        stud=sheet.take("T_b", case.temperature_of(fastening)),
        held=sheet.take("T_p", pad),
        far=sheet.take("T_f", case.temperature_of(clamped.face)),
    )


def _of_each(
    fastening: FrameFastening, clamped: _Clamped, sheet: Sheet
) -> tuple[Material, Material, Material]:
    """The metals of bolt, block and frame."""
    return sheet.material_of(fastening), sheet.material_of(clamped.block), sheet.material_of(clamped.face)


def _springs(
    metals: Metals, fastening: FrameFastening, clamped: _Clamped, sheet: Sheet, mark: str
) -> Springs:
    """Stiffness of a bolt with head and nut, and of pad and frame under them."""
    bolt, block, frame = _of_each(fastening, clamped, sheet)
    E_b = sheet.look_up(f"E_b{mark}", bolt.modulus, of=fastening, at=metals.stud)
    parts = sheet.work(
        f"k_m{mark}",
        two_part_stiffness,
        E_1=sheet.look_up(f"E_p{mark}", block.modulus, of=clamped.block, at=metals.held),
        E_2=sheet.look_up(f"E_f{mark}", frame.modulus, of=clamped.face, at=metals.far),
        d=sheet.take("d_h", fastening.hole),
        D=sheet.take("D_w", fastening.nut.face),
        h_1=clamped.grip,
        h_2=clamped.frame_grip,
        alpha=stiffness.CONE_30,
    )
    bolts = clamped.bolts
    free = sheet.work(
        f"k_f{mark}",
        stiffness.stud_stiffness,
        E=E_b,
        A_d=sheet.work("A_d", round_area, d=clamped.shank),
        l_d=clamped.shank_length,
        A_t=bolts.A_s,
        l_t=clamped.thread_length,
    )
    end = sheet.work(
        f"k_n{mark}",
        stiffness.engaged_thread_stiffness,
        E=E_b,
        E_n=E_b,
        d=bolts.d,
        A_3=sheet.look_up("A_3", core_area, designation=bolts.thread),
        x=stiffness.GIVE_OF_NUT,
    )
    return Springs(sheet.work(f"k_b{mark}", stud_with_ends_stiffness, k_f=free, k_n=end, k_e=end), parts)


def _growth(fastening: FrameFastening, clamped: _Clamped, cold: Metals, hot: Metals, sheet: Sheet) -> Metres:
    """Thermal growth of pad and frame over that of the bolt through them."""
    bolt, block, frame = _of_each(fastening, clamped, sheet)
    return sheet.work(
        "Delta",
        growth_of_stack,
        l_1=clamped.grip,
        alpha_1=sheet.look_up("α_p", block.expansion, of=clamped.block, at=hot.held),
        ΔT_1=hot.held - cold.held,
        l_2=clamped.frame_grip,
        alpha_2=sheet.look_up("α_f", frame.expansion, of=clamped.face, at=hot.far),
        ΔT_2=hot.far - cold.far,
        alpha_b=sheet.look_up("α_b", bolt.expansion, of=fastening, at=hot.stud),
        ΔT_b=hot.stud - cold.stud,
    )
