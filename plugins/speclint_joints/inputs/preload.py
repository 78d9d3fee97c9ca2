"""The preload of a stud as a band: as tightened, after embedding and creep, and hot; least and greatest."""

from __future__ import annotations

from msgspec import Struct

from speclint import Sheet
from speclint.handbook.bolted_joints import loads, scatter, stiffness, tightening
from speclint.specs import BoltedJoint, FrameFastening, LoadCase
from speclint_joints.formulae.preloads import preload_left
from speclint_joints.formulae.springs import growth_of_stack
from speclint_joints.inputs.purposes import seal_of
from speclint_joints.inputs.stack import (
    Metals,
    Springs,
    Stack,
    metals_in,
    metals_tightened,
    springs_at,
    stack_of,
)
from speclint_joints.inputs.studs import Studs, pitch

#: Methods that measure torque; the others measure the preload, or its effect on the stud.
TORQUE_METHODS = tuple(name for name in scatter.tightening_methods() if "wrench" in name or "spanner" in name)
#: The method that measures an angle after a snug torque.
BY_ANGLE = "angle controlled"
#: Tightening outside 0 to 40 °C would need expansion coefficients from that temperature (common practice).
_COLDEST_SHOP, _WARMEST_SHOP = 273.15, 313.15

#: Pairs of faces that the seal makes by itself: on both sides of a gasket or a ring, or metal on metal.
_FACES_OF_SEAL = {"gasket": 2, "ground face": 1, "lens ring": 2, "none": 1}


class Tightened(Struct, frozen=True):
    """Preload of one stud as tightened, N: its mean, its least and its greatest, and the scatter between."""

    method: str
    mean: float
    scatter: float
    low: float
    high: float


class Working(Struct, frozen=True):
    """A joint in a load case: least and greatest preload of one stud after embedding and hot, and its load factor.

    ``low`` and ``high`` in N. ``Phi`` is the share of a working load that comes on the stud, ``Phi_face`` the share
    that does not unload the joint face: both by the load introduction factor, or each by the worse end of it.
    """

    stack: Stack
    tightened: Tightened
    settled_low: float
    low: float
    high: float
    Phi: float
    Phi_face: float


def tightened_preload(joint: BoltedJoint | FrameFastening, sheet: Sheet, studs: Studs) -> Tightened:
    """Work the preload that torque or angle gives, or take the one stated, and the scatter of the method."""
    how = joint.tightening
    method = sheet.read("method of tightening", how.method)
    # first, since nothing else is asked of a method that is misspelt
    spread = sheet.look_up("s_F", scatter.scatter, method=method)
    if method in TORQUE_METHODS:
        torque = sheet.take("T", how.torque)
        coefficient = sheet.take("K", how.torque_coefficient)
        mean = sheet.work("F", tightening.preload_from_torque, T=torque, K=coefficient, d=studs.d)
    elif method == BY_ANGLE:
        mean = _turned(joint, sheet, studs)
    else:
        mean = sheet.take("F", how.preload)
    low = sheet.work("F_low", scatter.preload_low, F=mean, s=spread)
    high = sheet.work("F_high", scatter.preload_high, F=mean, s=spread)
    return Tightened(method, mean, spread, low, high)


def _turned(joint: BoltedJoint | FrameFastening, sheet: Sheet, studs: Studs) -> float:
    """Preload of a nut drawn snug and turned by an angle, on the springs of the joint as it is tightened."""
    if isinstance(joint, FrameFastening):
        raise sheet.not_covered("the preload that an angle makes is not worked for a frame fastening")
    how = joint.tightening
    snug = {"T": sheet.take("T", how.torque), "K": sheet.take("K", how.torque_coefficient), "d": studs.d}
    drawn = sheet.work("F_0", tightening.preload_from_torque, **snug)
    springs = springs_at(metals_tightened(joint, sheet), joint, stack_of(joint, sheet), sheet, "c")
    P = sheet.look_up("P", pitch, designation=studs.thread)
    angle = sheet.take("theta", how.angle)
    on = {"k_b": springs.stud, "k_m": springs.parts}
    return sheet.work("F", tightening.preload_from_angle, F_0=drawn, theta=angle, P=P, **on)


def working_preload(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Working:
    """Work the band of preload in a load case: scatter, embedding, creep and heat."""
    stack = stack_of(joint, sheet)
    cold_metals = metals_tightened(joint, sheet)
    require_shop(cold_metals, sheet)
    cold = springs_at(cold_metals, joint, stack, sheet, "c")
    tightened = tightened_preload(joint, sheet, stack.studs)
    settled = settled_preload(joint, sheet, tightened, cold)
    hot_metals = metals_in(case, joint, stack, sheet)
    hot = springs_at(hot_metals, joint, stack, sheet, "h")
    growth = _growth(joint, stack, sheet, cold_metals, hot_metals)
    Phi, Phi_face = _shares(joint, sheet, hot)
    on_springs = {"Delta": growth, "k_bc": cold.stud, "k_mc": cold.parts, "k_bh": hot.stud, "k_mh": hot.parts}
    return Working(
        stack=stack,
        tightened=tightened,
        settled_low=settled,
        low=sheet.work("F_low,h", loads.preload_hot, F_cold=settled, **on_springs),
        high=sheet.work("F_high,h", loads.preload_hot, F_cold=tightened.high, **on_springs),
        Phi=Phi,
        Phi_face=Phi_face,
    )


def _shares(joint: BoltedJoint, sheet: Sheet, hot: Springs) -> tuple[float, float]:
    """Share of a working load for the stud and for the joint face."""
    under_nut = sheet.work("Phi", stiffness.load_factor, k_b=hot.stud, k_m=hot.parts)
    if not sheet.is_stated("load introduction factor", joint.load_introduction):
        return under_nut, 0.0
    n = sheet.take("n_L", joint.load_introduction)
    share = sheet.work("Phi_n", stiffness.load_factor_at, n=n, Phi=under_nut)
    return share, share


def settled_preload(joint: BoltedJoint, sheet: Sheet, tightened: Tightened, cold: Springs) -> float:
    """Least preload after embedding of the faces and creep of gasket and stud."""
    roughness = sheet.take("Rz", joint.roughness)
    faces = _faces_that_settle(joint, sheet)
    bolt = sheet.read("fastener", joint.fastener) == "bolt"
    settlement = sheet.look_up(
        "f_Z",
        scatter.embedding,
        roughness=roughness,
        joint_faces=faces,
        nut_faces=2 if bolt else 1,
        across=_may_carry_shear(joint, sheet),
    )
    lost = sheet.work("F_Z", scatter.preload_lost, f_Z=settlement, k_b=cold.stud, k_m=cold.parts)
    creep = sheet.take("r", joint.relaxation)
    return sheet.work("F_left", preload_left, F=tightened.low, F_Z=lost, r=creep)


def _faces_that_settle(joint: BoltedJoint, sheet: Sheet) -> int:
    """The pairs of faces as stated; not assessed where they are fewer than the seal itself makes."""
    faces, seal = sheet.count("faces", joint.faces), seal_of(joint, sheet)
    if faces < _FACES_OF_SEAL[seal]:
        pairs = "1 pair of faces is" if faces == 1 else f"{faces} pairs of faces are"
        said = f"{pairs} stated to touch, but a {seal} alone makes {_FACES_OF_SEAL[seal]}"
        raise sheet.not_assessed(said, joint.faces.where)
    return faces


def _may_carry_shear(joint: BoltedJoint, sheet: Sheet) -> bool:
    """Whether the joint carries a load across its studs; where it does not say it may."""
    stated = sheet.is_stated("carries shear", joint.carries_shear)
    return sheet.read("carries shear", joint.carries_shear) if stated else True


def _growth(joint: BoltedJoint, stack: Stack, sheet: Sheet, cold: Metals, hot: Metals) -> float:
    """Thermal growth of the parts over that of the stud between its engaged threads."""
    stud = sheet.look_up("α_b", sheet.material_of(joint).expansion, of=joint, at=hot.stud)
    held = sheet.look_up("α_m", sheet.material_of(stack.held).expansion, of=stack.held, at=hot.held)
    far = sheet.look_up("α_f", sheet.material_of(stack.far).expansion, of=stack.far, at=hot.far)
    return sheet.work(
        "Delta",
        growth_of_stack,
        l_1=stack.held_length,
        alpha_1=held,
        ΔT_1=hot.held - cold.held,
        l_2=stack.far_length,
        alpha_2=far,
        ΔT_2=hot.far - cold.far,
        alpha_b=stud,
        ΔT_b=hot.stud - cold.stud,
    )


def require_shop(cold: Metals, sheet: Sheet) -> None:
    """Refuse studs that are tightened where expansion is not counted from."""
    if not _COLDEST_SHOP <= cold.stud <= _WARMEST_SHOP:
        raise sheet.not_covered(
            "the studs are tightened outside 0 to 40 °C, the range in which expansion is counted from 20 °C"
        )
