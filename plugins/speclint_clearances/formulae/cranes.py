"""The load of a crane and of a jib, the tilt of what hangs on a hook, and tools for nuts."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kilograms,
    Metres,
    MetresPerSecondSquared,
    NewtonMetres,
    Newtons,
    Pascals,
    Radians,
    Ratio,
)


@formula("x = x_0 + x_1/n", cites=[FIRST_PRINCIPLES])
def mean_with(x_0: Metres, x_1: Metres, n: Ratio) -> Metres:
    """Mean of the places of n points, added up point by point.

    x = x_0 + x_1/n

    ``x_0`` of the points before; ``x_1`` of one more [m]; ``n`` how many points there are. Returns [m]. Raises
    OutOfRange without points.

    >>> mean_with(x_0=0.5, x_1=1.0, n=2.0)
    1.0
    """
    require(n >= 1, "there are no lifting points")
    return x_0 + x_1 / n


@formula("r = D/2 + t", cites=[FIRST_PRINCIPLES])
def radius_of_barrel(D: Metres, t: Metres) -> Metres:
    """How far the barrel of a cylinder reaches from its axis.

    r = D/2 + t

    ``D`` diameter of its bore, ``t`` thickness of its wall [m]. Returns [m].

    >>> round(radius_of_barrel(D=0.578, t=0.040), 6)
    0.329
    """
    return D / 2 + t


@formula("r = D_f/2", cites=[FIRST_PRINCIPLES])
def radius_of_face(D_f: Metres) -> Metres:
    """How far the round face of an end of a cylinder reaches from its axis.

    r = D_f/2

    ``D_f`` outside diameter of the face [m]. Returns [m].

    >>> radius_of_face(D_f=0.804)
    0.402
    """
    return D_f / 2


@formula("d = z_a − z_b", cites=[FIRST_PRINCIPLES])
def below_axis(z_a: Metres, z_b: Metres) -> Metres:
    """How far the lowest place of a load is said to stand below the axis of a cylinder.

    d = z_a − z_b

    ``z_a`` height of the axis, ``z_b`` of the lowest place, both from the corner of the plan [m]. Returns [m].

    >>> round(below_axis(z_a=0.01, z_b=-0.47), 6)
    0.48
    """
    return z_a - z_b


@formula("z_m = z_a − r", cites=[FIRST_PRINCIPLES])
def lowest_of_metal(z_a: Metres, r: Metres) -> Metres:
    """Lowest place of the metal round the axis of a cylinder.

    z_m = z_a − r

    ``z_a`` height of the axis, ``r`` how far the metal reaches from it [m]. Returns [m].

    >>> round(lowest_of_metal(z_a=0.01, r=0.402), 6)
    -0.392
    """
    return z_a - r


@formula("β = arctan(e/(z_p + h − z_c))", cites=[FIRST_PRINCIPLES])
def tilt_of_load(e: Metres, z_p: Metres, h: Metres, z_c: Metres) -> Radians:
    """Angle by which a load hangs aslant.

    β = arctan(e/(z_p + h − z_c))

    ``e`` distance in plan of its centre from the middle of the points; ``z_p`` height of the points, ``h`` of the hook
    above them, ``z_c`` of the centre [m]. Returns [rad]. Raises OutOfRange unless the hook is above the centre.

    Hand working: 6.64 mm, the hook 1720 − 82.7 = 1637.3 mm above the centre: 0.23°.

    >>> round(math.degrees(tilt_of_load(e=0.00664, z_p=0.520, h=1.200, z_c=0.0827)), 2)
    0.23
    """
    require(z_p + h > z_c, "the hook is not above the centre of the load")
    return math.atan(e / (z_p + h - z_c))


@formula("m = m_0 + k m_w + m_t", cites=[COMMON_PRACTICE, FIRST_PRINCIPLES])
def mass_on_crane(m_0: Kilograms, k: Ratio, m_w: Kilograms, m_t: Kilograms) -> Kilograms:
    """Mass on the hook of a crane.

    m = m_0 + k m_w + m_t

    ``m_0`` mass of all pieces, ``m_w`` mass of those that are welded, ``m_t`` mass of the tackle [kg]; ``k`` share of
    weld that no drawing states. Returns [kg].

    Hand working: 2120 + 0.05 × 1650 + 90 = 2292.5 kg.

    >>> mass_on_crane(m_0=2120.0, k=0.05, m_w=1650.0, m_t=90.0)
    2292.5
    """
    return m_0 + k * m_w + m_t


@formula("x = m/m_c", cites=[FIRST_PRINCIPLES])
def share_of_crane(m: Kilograms, m_c: Kilograms) -> Ratio:
    """Share of a crane's capacity that a load takes.

    x = m/m_c

    ``m`` on the hook, ``m_c`` capacity [kg]. Returns a ratio. Raises OutOfRange unless m_c > 0.

    >>> share_of_crane(m=2290.0, m_c=2500.0)
    0.916
    """
    require(m_c > 0, "the crane has no capacity")
    return m / m_c


@formula("H = a + c + z_p − z_b + h", cites=[FIRST_PRINCIPLES])
def hook_wanted(a: Metres, c: Metres, z_p: Metres, z_b: Metres, h: Metres) -> Metres:
    """Height of a hook that lifts a load over something.

    H = a + c + z_p − z_b + h

    ``a`` height of what it is lifted over; ``c`` clearance; ``z_p`` height of the points, ``z_b`` of the lowest place
    of the load, ``h`` of the hook above the points [m]. Returns [m].

    >>> round(hook_wanted(a=1.4, c=0.2, z_p=0.52, z_b=-0.45, h=1.2), 6)
    3.77
    """
    return a + c + z_p - z_b + h


@formula("M = s k m g r", cites=[COMMON_PRACTICE, FIRST_PRINCIPLES])
def moment_of_jib(s: Ratio, k: Ratio, m: Kilograms, g: MetresPerSecondSquared, r: Metres) -> NewtonMetres:
    """Moment at the foot of the post of a jib.

    M = s k m g r

    ``s`` share of the load on one post; ``k`` factor for jerks; ``m`` load [kg]; ``g`` gravity [m/s²]; ``r`` reach
    [m]. Returns [N·m].

    Hand working: 1.25 × 90 × 9.80665 × 0.8 = 882.6 N·m.

    >>> round(moment_of_jib(s=1.0, k=1.25, m=90.0, g=9.80665, r=0.8), 1)
    882.6
    """
    return s * k * m * g * r


@formula("r_0 = (b + D)/2", cites=[FIRST_PRINCIPLES])
def least_reach(b: Metres, D: Metres) -> Metres:
    """Least reach at which a box hangs beside the post of its jib.

    r_0 = (b + D)/2

    ``b`` the shorter side of the box, turned towards the post; ``D`` outside of the post [m]. Returns [m].

    Hand working: (360 + 60.3)/2 = 210.15 mm.

    >>> round(least_reach(b=0.360, D=0.0603) * 1e3, 6)
    210.15
    """
    return (b + D) / 2


@formula("σ = 32 M D/(π (D⁴ − (D − 2 t)⁴))", cites=[FIRST_PRINCIPLES])
def stress_of_post(M: NewtonMetres, D: Metres, t: Metres) -> Pascals:
    """Bending stress of a tube.

    σ = 32 M D/(π (D⁴ − (D − 2 t)⁴))

    ``M`` moment [N·m]; ``D`` outside diameter, ``t`` wall [m]. Returns [Pa]. Raises OutOfRange unless t > 0 and D is
    above 2 t.

    Hand working: 882.6 N·m on 60.3 × 5, 11 104 mm³: 79.5 MPa; on 48.3 × 4, 5 701 mm³: 154.8 MPa.

    >>> round(stress_of_post(M=882.6, D=0.0603, t=0.005) / 1e6, 1)
    79.5
    >>> round(stress_of_post(M=882.6, D=0.0483, t=0.004) / 1e6, 1)
    154.8
    """
    require(t > 0, "the post has no wall")
    require(2 * t < D, "the wall of the post is thicker than its radius")
    return 32 * M * D / (math.pi * (D**4 - (D - 2 * t) ** 4))


@formula("p = 6 M/(D l²)", cites=[FIRST_PRINCIPLES])
def pressure_in_socket(M: NewtonMetres, D: Metres, l: Metres) -> Pascals:  # noqa: E741
    """Pressure at the edge of a socket in which a post is held against a moment.

    p = 6 M/(D l²)

    ``M`` moment [N·m]; ``D`` post, ``l`` depth of the socket [m]. Returns [Pa]. Raises OutOfRange unless l > 0.

    >>> round(pressure_in_socket(M=883.0, D=0.06, l=0.1) / 1e6, 2)
    8.83
    """
    require(l > 0, "the socket has no depth")
    return 6 * M / (D * l**2)


@formula("τ = 4 M/(π D² a)", cites=[FIRST_PRINCIPLES])
def stress_of_ring_weld(M: NewtonMetres, D: Metres, a: Metres) -> Pascals:
    """Stress in the throat of a fillet weld round a post.

    τ = 4 M/(π D² a)

    ``M`` moment [N·m]; ``D`` post, ``a`` throat [m]. Returns [Pa]. Raises OutOfRange unless a > 0.

    >>> round(stress_of_ring_weld(M=883.0, D=0.06, a=0.005) / 1e6, 1)
    62.5
    """
    require(a > 0, "the weld has no throat")
    return 4 * M / (math.pi * D**2 * a)


@formula("S = R/n", cites=[COMMON_PRACTICE])
def proof_over(R: Pascals, n: Ratio) -> Pascals:
    """Proof stress over its factor.

    S = R/n

    ``R`` proof stress [Pa]; ``n`` factor. Returns [Pa].

    >>> round(proof_over(R=235e6, n=1.5) / 1e6, 1)
    156.7
    """
    return R / n


@formula("S = R/(√3 n)", cites=[COMMON_PRACTICE, FIRST_PRINCIPLES])
def weld_over(R: Pascals, n: Ratio) -> Pascals:
    """Shear that the throat of a fillet weld may bear.

    S = R/(√3 n)

    ``R`` proof stress of the metal [Pa]; ``n`` factor. Returns [Pa].

    >>> round(weld_over(R=235e6, n=1.5) / 1e6, 1)
    90.5
    """
    allowed: float = R / (3**0.5 * n)
    return allowed


@formula("l = T/F", cites=[FIRST_PRINCIPLES])
def bar_wanted(T: NewtonMetres, F: Newtons) -> Metres:
    """Length of the bar by which a hand turns a nut.

    l = T/F

    ``T`` torque [N·m]; ``F`` force of a hand [N]. Returns [m].

    Hand working: 860/400 = 2.15 m; 580/400 = 1.45 m.

    >>> bar_wanted(T=860.0, F=400.0)
    2.15
    """
    return T / F


@formula("r = l + e + c", cites=[COMMON_PRACTICE])
def room_to_draw_out(l: Metres, e: Metres, c: Metres) -> Metres:  # noqa: E741
    """Room that a part needs to be drawn out.

    r = l + e + c

    ``l`` its length, ``e`` engagement, ``c`` room of the tool [m]. Returns [m].

    >>> round(room_to_draw_out(l=0.33, e=0.05, c=0.025), 6)
    0.405
    """
    return l + e + c


@formula("l_a = l cos(θ) + d sin(θ)/2", cites=[FIRST_PRINCIPLES])
def reach_along(l: Metres, d: Metres, θ: Radians) -> Metres:  # noqa: E741
    """How far a part that is swung out of its axis reaches along it.

    l_a = l cos(θ) + d sin(θ)/2

    ``l`` its length, ``d`` its width, from 0 [m]; ``θ`` swing about the middle of its inner end [rad], 0 to π/2.
    Returns [m]: that of the corner of its outer end that the swing lifts. Raises OutOfRange otherwise.

    Hand working: 400 mm by 60 mm at 30°: 346.4 + 15 = 361.4 mm.

    >>> round(reach_along(l=0.4, d=0.06, θ=math.radians(30)) * 1e3, 1)
    361.4
    """
    require(0 <= θ <= math.pi / 2, f"a part swings by 0° to 90°, not by {math.degrees(θ):.4g}°")
    return l * math.cos(θ) + d * math.sin(θ) / 2


@formula("l_s = l sin(θ) + d cos(θ)/2", cites=[FIRST_PRINCIPLES])
def reach_beside(l: Metres, d: Metres, θ: Radians) -> Metres:  # noqa: E741
    """How far a part that is swung out of its axis reaches to the side.

    l_s = l sin(θ) + d cos(θ)/2

    ``l`` its length, ``d`` its width, from 0 [m]; ``θ`` swing about the middle of its inner end [rad], 0 to π/2.
    Returns [m], from the axis. Raises OutOfRange otherwise.

    Hand working: 400 mm by 60 mm at 30°: 200 + 26.0 = 226.0 mm.

    >>> round(reach_beside(l=0.4, d=0.06, θ=math.radians(30)) * 1e3, 1)
    226.0
    """
    require(0 <= θ <= math.pi / 2, f"a part swings by 0° to 90°, not by {math.degrees(θ):.4g}°")
    return l * math.sin(θ) + d * math.cos(θ) / 2
