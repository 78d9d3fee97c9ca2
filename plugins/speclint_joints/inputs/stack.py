"""The parts that a stud clamps, and the stiffness of parts and stud."""

from __future__ import annotations

from msgspec import Struct

from speclint import Sheet
from speclint.facts import grip_bolted_to, grip_held
from speclint.handbook.bolted_joints import stiffness
from speclint.handbook.members import round_area, tube_area
from speclint.specs import BoltedJoint, Component, LoadCase
from speclint_joints.formulae.springs import (
    free_length,
    free_thread,
    gasket_stiffness,
    stud_with_ends_stiffness,
    tapped_part_in_grip,
    two_part_stiffness,
)
from speclint_joints.inputs.purposes import seal_of
from speclint_joints.inputs.studs import Studs, core_area, studs_of


class Stack(Struct, frozen=True):
    """What a stud clamps: the part held, the part below it, and the lengths between its threads, m.

    ``held_length`` and ``far_length`` are the lengths whose growth stretches the stud: grip of the part held, and
    grip of the part bolted to or depth at which a stud is set in. ``squeezed`` is the thickness of the far
    part that is compressed. ``gasket`` is the stiffness of one stud's share of it, None without.
    """

    studs: Studs
    held: Component
    far: Component
    tapped: bool
    held_length: float
    far_length: float
    squeezed: float
    shank_area: float
    shank_length: float
    thread_length: float
    hole: float
    face: float
    gasket: float | None


class Metals(Struct, frozen=True):
    """Temperatures of stud, part held and far part, K."""

    stud: float
    held: float
    far: float


class Springs(Struct, frozen=True):
    """Stiffness of the stud with its ends, and of the clamped parts, N/m."""

    stud: float
    parts: float


def stack_of(joint: BoltedJoint, sheet: Sheet) -> Stack:
    """Take all lengths of a joint."""
    studs = studs_of(joint, sheet)
    tapped = sheet.read("fastener", joint.fastener) == "stud"
    held = sheet.follow(joint.holds)
    far = sheet.follow(joint.screwed_into if tapped else joint.bolted_to)
    grip = grip_held(joint, sheet)
    far_grip = 0.0 if tapped else grip_bolted_to(joint, sheet)
    set_in = sheet.take("s", joint.set_in) if tapped else 0.0
    has_gasket = seal_of(joint, sheet) == "gasket"
    gasket_thickness = sheet.take("t_g", joint.gasket.thickness) if has_gasket else 0.0
    free = sheet.work("L", free_length, l_1=grip, l_2=far_grip, t_g=gasket_thickness, s=set_in)
    shank = sheet.take("d_s", joint.shank)
    shank_length = sheet.take("l_d", joint.shank_length)
    return Stack(
        studs=studs,
        held=held,
        far=far,
        tapped=tapped,
        held_length=grip,
        far_length=set_in if tapped else far_grip,
        squeezed=sheet.work("h_2", tapped_part_in_grip, d=studs.d) if tapped else far_grip,
        shank_area=sheet.work("A_d", round_area, d=shank),
        shank_length=shank_length,
        thread_length=sheet.work("l_t", free_thread, L=free, l_d=shank_length),
        hole=sheet.take("d_h", joint.hole),
        face=sheet.take("D_w", joint.nut.face),
        gasket=_gasket_spring(joint, sheet, studs.n, gasket_thickness) if has_gasket else None,
    )


def _gasket_spring(joint: BoltedJoint, sheet: Sheet, n: int, thickness: float) -> float:
    area = sheet.work(
        "A_g",
        tube_area,
        D=sheet.take("D_o", joint.gasket.outside),
        d=sheet.take("D_i", joint.gasket.inside),
    )
    modulus = sheet.take("E_g", joint.gasket.modulus)
    return sheet.work("k_g", gasket_stiffness, E_g=modulus, A=area, n=n, t_g=thickness)


def metals_tightened(joint: BoltedJoint, sheet: Sheet) -> Metals:
    """All metal at the temperature at which the nuts are tightened."""
    at = sheet.take("T_0", joint.tightening.temperature)
    return Metals(at, at, at)


def metals_in(case: LoadCase, joint: BoltedJoint, stack: Stack, sheet: Sheet) -> Metals:
    """Each metal at its own temperature in a load case."""
    return Metals(
        stud=sheet.take("T_b", case.temperature_of(joint)),
        held=sheet.take("T_m", case.temperature_of(stack.held)),
        far=sheet.take("T_f", case.temperature_of(stack.far)),
    )


def springs_at(metals: Metals, joint: BoltedJoint, stack: Stack, sheet: Sheet, mark: str) -> Springs:
    """Stiffness of stud and parts with the moduli at some temperatures; ``mark`` tells symbols apart."""
    E_b = sheet.look_up(f"E_b{mark}", sheet.material_of(joint).modulus, of=joint, at=metals.stud)
    E_m = sheet.look_up(f"E_m{mark}", sheet.material_of(stack.held).modulus, of=stack.held, at=metals.held)
    E_f = sheet.look_up(f"E_f{mark}", sheet.material_of(stack.far).modulus, of=stack.far, at=metals.far)
    parts = sheet.work(
        f"k_m{mark}",
        two_part_stiffness,
        E_1=E_m,
        E_2=E_f,
        d=stack.hole,
        D=stack.face,
        h_1=stack.held_length,
        h_2=stack.squeezed,
        alpha=stiffness.CONE_30,
    )
    if stack.gasket is not None:
        parts = sheet.work(f"k_mg{mark}", stiffness.stiffness_in_series, k_1=parts, k_2=stack.gasket)
    return Springs(_stud_spring(E_b, E_f, stack, sheet, mark), parts)


def _stud_spring(E_b: float, E_f: float, stack: Stack, sheet: Sheet, mark: str) -> float:
    studs = stack.studs
    core = sheet.look_up("A_3", core_area, designation=studs.thread)
    free = sheet.work(
        f"k_f{mark}",
        stiffness.stud_stiffness,
        E=E_b,
        A_d=stack.shank_area,
        l_d=stack.shank_length,
        A_t=studs.A_s,
        l_t=stack.thread_length,
    )
    in_nut = {"E": E_b, "E_n": E_b, "d": studs.d, "A_3": core, "x": stiffness.GIVE_OF_NUT}
    nut = sheet.work(f"k_n{mark}", stiffness.engaged_thread_stiffness, **in_nut)
    far = nut
    if stack.tapped:
        in_hole = {**in_nut, "E_n": E_f, "x": stiffness.GIVE_OF_TAPPED_HOLE}
        far = sheet.work(f"k_e{mark}", stiffness.engaged_thread_stiffness, **in_hole)
    return sheet.work(f"k_b{mark}", stud_with_ends_stiffness, k_f=free, k_n=nut, k_e=far)
