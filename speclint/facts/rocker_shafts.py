"""The shaft of a rocker whose arms stand apart: how much of the lift it loses as it twists and bends."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    MetresToTheFourth,
    NewtonMetres,
    Newtons,
    Pascals,
    Radians,
    Ratio,
    formula,
    require,
)
from speclint.facts.taking import Take
from speclint.handbook.members import round_second_moment, tube_polar_moment, twist
from speclint.rules import Sheet
from speclint.specs import Rocker, Shaft


@formula("T = F r", cites=[FIRST_PRINCIPLES])
def torque_of_arm(F: Newtons, r: Metres) -> NewtonMetres:
    """Torque of a force on an arm.

    T = F r

    ``F`` force [N]; ``r`` arm of the force [m]. Returns [N·m].

    >>> torque_of_arm(F=8000.0, r=0.08)
    640.0
    """
    return F * r


@formula("G = E/(2 (1 + ν))", cites=[FIRST_PRINCIPLES])
def modulus_of_rigidity(E: Pascals, ν: Ratio) -> Pascals:
    """Modulus of rigidity of a metal alike in all directions.

    G = E/(2 (1 + ν))

    ``E`` modulus [Pa]; ``ν`` Poisson's ratio. Returns [Pa].

    >>> round(modulus_of_rigidity(E=208e9, ν=0.3) / 1e9, 6)
    80.0
    """
    return E / (2 * (1 + ν))


@formula("x = a − a_1", cites=[FIRST_PRINCIPLES])
def place_between(a: Metres, a_1: Metres) -> Metres:
    """Place of an arm from one bearing.

    x = a − a_1

    ``a`` of the arm, ``a_1`` of the bearing along the shaft [m]. Returns [m].

    >>> round(place_between(a=0.3, a_1=0.1), 9)
    0.2
    """
    return a - a_1


@formula(
    "u = F (L − max(a, x)) min(a, x) (L² − (L − max(a, x))² − min(a, x)²)/(6 E I L)", cites=[FIRST_PRINCIPLES]
)
def sag_at(
    F: Newtons,
    a: Metres,
    x: Metres,
    L: Metres,
    E: Pascals,
    I: MetresToTheFourth,  # noqa: E741
) -> Metres:
    """Deflection at one place of a shaft on two bearings under a load at another.

    u = F (L − max(a, x)) min(a, x) (L² − (L − max(a, x))² − min(a, x)²)/(6 E I L)

    ``F`` load [N]; ``a`` distance of the load from one bearing [m]; ``x`` distance of the place from the same bearing
    [m]; ``L`` distance between the bearings [m]; ``E`` modulus of elasticity [Pa]; ``I`` second moment of area of the
    shaft [m⁴]. Returns [m]. Raises OutOfRange where a place lies beyond a bearing.

    Hand working, in the middle: F L³/(48 E I).

    >>> round(sag_at(F=48.0, a=0.5, x=0.5, L=1.0, E=1e9, I=1e-6) * 1e3, 6)
    1.0
    """
    for place in (a, x):
        require(place >= 0 * place, "an arm stands beyond the bearings of its shaft")
        require(place <= L, "an arm stands beyond the bearings of its shaft")
    near, far = min(a, x), max(a, x)
    return F * (L - far) * near * (L**2 - (L - far) ** 2 - near**2) / (6 * E * I * L)


@formula("f = θ b + u_v + i u_t", cites=[FIRST_PRINCIPLES])
def lift_lost_by_shaft(θ: Radians, b: Metres, u_v: Metres, i: Ratio, u_t: Metres) -> Metres:
    """Lift that a valve loses by twist and bending of the shaft of its rocker.

    f = θ b + u_v + i u_t

    ``θ`` twist [rad]; ``b`` valve arm, ``u_v`` deflection of the shaft at the valve arm, ``u_t`` deflection of the
    shaft at the tappet arm [m]; ``i`` travel of the valve over that of the tappet. Returns [m].

    Hand working: 3.26e-3 × 80 = 0.261 mm by twist alone.

    >>> round(lift_lost_by_shaft(θ=3.26e-3, b=0.08, u_v=0.0, i=1.0, u_t=0.0) * 1e3, 3)
    0.261
    """
    return θ * b + u_v + i * u_t


@formula("ψ = f γ/(i h_r)", cites=[FIRST_PRINCIPLES])
def delay_on_ramp(f: Metres, γ: Radians, i: Ratio, h_r: Metres) -> Radians:
    """Cam angle by which a valve cracks later as its gear gives way on the ramp.

    ψ = f γ/(i h_r)

    ``f`` lift lost [m]; ``γ`` angle and ``h_r`` height of the ramp [rad, m]; ``i`` travel of the valve over that of the
    tappet. Returns [rad]. Raises OutOfRange unless h_r > 0.

    >>> round(delay_on_ramp(f=0.00022, γ=0.1, i=1.0, h_r=0.0011), 6)
    0.02
    """
    require(h_r > 0, "the ramp has no height")
    return f * γ / (i * h_r)


class ArmsOnShaft(NamedTuple):
    """The places of both arms from one bearing, and the distance of the bearings [m]."""

    x_v: Metres
    x_t: Metres
    L: Metres


def arms_on_shaft(rocker: Rocker, shaft: Shaft, sheet: Sheet, take: Take) -> ArmsOnShaft:
    """Where the arms of a rocker stand between the two bearings of its shaft."""
    if len(shaft.bearings) != 2:
        raise sheet.not_covered(
            f"{shaft.id} states {len(shaft.bearings)} bearings; two can be worked by hand"
        )
    first, last = sorted(take(f"a_{name}", one.at) for name, one in shaft.bearings.items())
    x_v = sheet.work("x_v", place_between, a=take("a_v", rocker.arm_at), a_1=first)
    x_t = sheet.work("x_t", place_between, a=x_v, a_1=-take("a_d", rocker.arm_distance))
    return ArmsOnShaft(x_v, x_t, sheet.work("L", place_between, a=last, a_1=first))


@dataclass(frozen=True, slots=True)
class StiffShaft:
    """A rocker's shaft with its arms, and what its stiffness rests on: diameter, moduli, arms and their ratio."""

    arms: ArmsOnShaft
    d: Metres
    E: Pascals
    G: Pascals
    b_v: Metres
    i: Ratio

    def lift_lost(self, F_v: Newtons, F_t: Newtons, sheet: Sheet) -> Metres:
        """Lift that the valve loses under a load at either arm: by twist, and by the sag at both arms."""
        arms = self.arms
        T = sheet.work("T", torque_of_arm, F=F_v, r=self.b_v)
        J = sheet.work("J", tube_polar_moment, D=self.d, d=0.0)
        θ = sheet.work("θ", twist, T=T, L=abs(arms.x_v - arms.x_t), G=self.G, J=J)
        bent = {"L": arms.L, "E": self.E, "I": sheet.work("I", round_second_moment, d=self.d)}
        u = {}
        for mark, x in (("v", arms.x_v), ("t", arms.x_t)):
            by_valve = sheet.work(f"u_{mark}v", sag_at, F=F_v, a=arms.x_v, x=x, **bent)
            u[f"u_{mark}"] = by_valve + sheet.work(f"u_{mark}t", sag_at, F=F_t, a=arms.x_t, x=x, **bent)
        return sheet.work("f", lift_lost_by_shaft, θ=θ, b=self.b_v, i=self.i, **u)
