"""Pads that carry a block: the load of each, and what draws a pad out of its cut-out again."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kilograms,
    Metres,
    MetresPerSecondSquared,
    NewtonMetres,
    Newtons,
    NewtonsPerMetre,
    Ratio,
)


@formula("G = m g", cites=[FIRST_PRINCIPLES])
def weight_of(m: Kilograms, g: MetresPerSecondSquared) -> Newtons:
    """Weight of a mass.

    G = m g

    ``m`` [kg]; ``g`` [m/s²]. Returns [N].

    >>> round(weight_of(m=2200.0, g=9.80665))
    21575
    """
    return m * g


@formula("R_1 = G |x_2 − x|/|x_2 − x_1|", cites=[FIRST_PRINCIPLES])
def load_of_two(G: Newtons, x: Metres, x_1: Metres, x_2: Metres) -> Newtons:
    """Load of one of two pads with the weight between them, by statics.

    R_1 = G |x_2 − x|/|x_2 − x_1|

    ``G`` weight [N] at ``x``; ``x_1`` this pad, ``x_2`` the other [m], x between them. Returns [N]. Raises OutOfRange
    where the weight lies beyond a pad, which the other would have to hold down.

    Hand working: 21.575 kN at 350 of 620 mm: 21.575 × 350/620 = 12.18 kN on the pad at 620.

    >>> round(load_of_two(G=21575.0, x=0.35, x_1=0.62, x_2=0.0))
    12179
    """
    require((x - x_1) * (x - x_2) <= 0 * x * x, "the weight does not lie between its two carrying pads")
    return G * abs(x_2 - x) / abs(x_2 - x_1)


@formula("c = w/2 − |x − x_1|", cites=[FIRST_PRINCIPLES])
def inside_of_edge(w: Metres, x: Metres, x_1: Metres) -> Metres:
    """How far inside the nearer edge of a pad a weight acts.

    c = w/2 − |x − x_1|

    ``w`` width of the pad, ``x`` place of the weight, ``x_1`` middle of the pad [m]. Returns [m], below 0 where the
    weight acts beyond the edge.

    Hand working: 300 mm from the middle of a pad of 220 mm: 110 − 300 = −190 mm.

    >>> round(inside_of_edge(w=0.22, x=0.3, x_1=0.0) * 1e3, 6)
    -190.0
    """
    return w / 2 - abs(x - x_1)


@formula("s = s_0 + k", cites=[FIRST_PRINCIPLES])
def stiffness_added(s_0: NewtonsPerMetre, k: NewtonsPerMetre) -> NewtonsPerMetre:
    """Stiffness of several pads side by side.

    s = s_0 + k

    ``s_0`` so far, ``k`` of one more [N/m]. Returns [N/m].

    >>> stiffness_added(s_0=1e9, k=2e9)
    3000000000.0
    """
    return s_0 + k


@formula("s = s_0 + k x", cites=[FIRST_PRINCIPLES])
def moment_added(s_0: Newtons, k: NewtonsPerMetre, x: Metres) -> Newtons:
    """Sum of stiffness times distance, or of stiffness times height.

    s = s_0 + k x

    ``s_0`` so far [N]; ``k`` of one more pad [N/m]; ``x`` its place, or its height [m]. Returns [N].

    >>> moment_added(s_0=0.0, k=1e9, x=0.001)
    1000000.0
    """
    return s_0 + k * x


@formula("s = s_0 + k x y", cites=[FIRST_PRINCIPLES])
def product_added(s_0: NewtonMetres, k: NewtonsPerMetre, x: Metres, y: Metres) -> NewtonMetres:
    """Sum of stiffness times place times place, or times height.

    s = s_0 + k x y

    ``s_0`` so far [N·m]; ``k`` of one more pad [N/m]; ``x``, ``y`` [m]. Returns [N·m].

    >>> product_added(s_0=0.0, k=1e9, x=0.5, y=0.5)
    250000000.0
    """
    return s_0 + k * x * y


@formula("b = (S_0 (G x − H_1) − S_1 (G − H_0))/(S_0 S_2 − S_1²)", cites=[FIRST_PRINCIPLES])
def tilt_of_block(
    G: Newtons,
    x: Metres,
    S_0: NewtonsPerMetre,
    S_1: Newtons,
    S_2: NewtonMetres,
    H_0: Newtons,
    H_1: NewtonMetres,
) -> Ratio:
    """Tilt of a stiff block on carrying pads that give.

    b = (S_0 (G x − H_1) − S_1 (G − H_0))/(S_0 S_2 − S_1²)

    ``G`` weight [N] at ``x`` [m]; sums over all pads: ``S_0`` of k [N/m], ``S_1`` of k x [N], ``S_2`` of k x² [N·m],
    ``H_0`` of k h [N], ``H_1`` of k h x [N·m], with the height h of each. Returns a slope. Raises OutOfRange where the
    pads do not lie apart.

    Three like pads at −1, 0 and 1 m, the weight in the middle and the middle one high: no tilt.

    >>> tilt_of_block(G=30e3, x=0.0, S_0=3e9, S_1=0.0, S_2=2e9, H_0=1e5, H_1=0.0)
    0.0
    """
    apart = S_0 * S_2 - S_1**2
    require(apart > 0 * apart, "the carrying pads do not lie apart")
    return (S_0 * (G * x - H_1) - S_1 * (G - H_0)) / apart


@formula("a = (G − H_0 − b S_1)/S_0", cites=[FIRST_PRINCIPLES])
def sinking_of_block(G: Newtons, H_0: Newtons, b: Ratio, S_1: Newtons, S_0: NewtonsPerMetre) -> Metres:
    """Sinking of a stiff block on carrying pads, at the fixed point.

    a = (G − H_0 − b S_1)/S_0

    ``G`` weight, ``H_0`` sum of k h, ``S_1`` sum of k x [N]; ``b`` tilt; ``S_0`` sum of k [N/m], above 0. Returns [m].
    Raises OutOfRange otherwise.

    >>> round(sinking_of_block(G=30e3, H_0=0.0, b=0.0, S_1=0.0, S_0=3e9) * 1e3, 6)
    0.01
    """
    require(S_0 > 0 * S_0, "a stiffness must be above 0")
    return (G - H_0 - b * S_1) / S_0


@formula("R = k (h + a + b x)", cites=[FIRST_PRINCIPLES])
def load_of_pad(k: NewtonsPerMetre, h: Metres, a: Metres, b: Ratio, x: Metres) -> Newtons:
    """Load of one of several carrying pads under a stiff block.

    R = k (h + a + b x)

    ``k`` stiffness [N/m]; ``h`` height over the common plane [m]; ``a`` sinking, ``b`` tilt of the block; ``x`` place
    of the pad [m]. Returns [N], below 0 where the block would have to pull.

    Hand working, three like pads of 1e6 N/mm with 10 kN each, the middle one 0.10 mm high: it takes 2/3 of 100 kN more.

    >>> sunk = sinking_of_block(G=30e3, H_0=1e5, b=0.0, S_1=0.0, S_0=3e9)
    >>> round(load_of_pad(k=1e9, h=1e-4, a=sunk, b=0.0, x=0.0)), round(load_of_pad(k=1e9, h=0.0, a=sunk, b=0.0, x=1.0))
    (76667, -23333)
    """
    return k * (h + a + b * x)


@formula("F = R (1 + n)", cites=[FIRST_PRINCIPLES])
def with_shock(R: Newtons, n: Ratio) -> Newtons:
    """Load of a pad as the engine is jolted.

    F = R (1 + n)

    ``R`` load at rest [N]; ``n`` acceleration, in times gravity. Returns [N].

    >>> with_shock(R=12e3, n=2.0)
    36000.0
    """
    return R * (1 + n)


@formula("u = t X/l", cites=[FIRST_PRINCIPLES])
def out_of_square(t: Metres, X: Metres, l: Metres) -> Metres:  # noqa: E741 - the letter of the equation
    """How far an axis lies out at a distance, of a face that is out of square.

    u = t X/l

    ``t`` zone over a length ``l`` of the face, above 0; ``X`` distance [m]. Returns [m]. Raises OutOfRange otherwise.

    Hand working: 0.05 mm over 300 mm: 0.242 mm at 1450 mm.

    >>> round(out_of_square(t=0.05e-3, X=1.45, l=0.3) * 1e3, 3)
    0.242
    """
    require(l > 0, "the length of a face must be above 0")
    return t * X / l


@formula("u_b = u_1 + u_2", cites=[FIRST_PRINCIPLES])
def out_together(u_1: Metres, u_2: Metres) -> Metres:
    """How far an axis lies out at its crosshead where the axle is square to the other axis, and both lie out.

    u_b = u_1 + u_2

    ``u_1``, ``u_2`` by which each lies out at its own crosshead, the opposite way [m]. Returns [m].

    Hand working: 0.025 mm over 300 mm gives each 0.148 mm at 1780 mm: 0.297 mm together.

    >>> round(out_together(u_1=0.1483e-3, u_2=0.1483e-3) * 1e3, 4)
    0.2966
    """
    return u_1 + u_2


@formula("X = L + S/2", cites=[FIRST_PRINCIPLES])
def far_crosshead(L: Metres, S: Metres) -> Metres:
    """From the middle of the cylinder to the crosshead at the far end of its stroke.

    X = L + S/2

    ``L`` from the crosshead to the middle of the piston; ``S`` stroke [m]. Returns [m].

    >>> round(far_crosshead(L=1.2, S=0.66), 6)
    1.53
    """
    return L + S / 2


@formula("c = 2 q", cites=[FIRST_PRINCIPLES])
def chamfer_to_lead_in(q: Metres) -> Metres:
    """Chamfer that leads in a pad which is out of square.

    c = 2 q

    ``q`` squareness of its faces over their height [m]. Returns [m].

    >>> chamfer_to_lead_in(0.25)
    0.5
    """
    return 2 * q
