"""The blow with which a moving tappet takes up its clearance and strikes a train at rest."""

from __future__ import annotations

from speclint.equations import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Kilograms,
    Metres,
    MetresPerSecond,
    Newtons,
    NewtonsPerMetre,
    Pascals,
    Ratio,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.tables import Reading


@formula("m_b = m − m_t/i²", cites=[FIRST_PRINCIPLES])
def mass_struck(m: Kilograms, m_t: Kilograms, i: Ratio) -> Kilograms:
    """Mass at the valve of what stands beyond the clearance, and is set in motion when it is taken up.

    m_b = m − m_t/i²

    ``m`` mass of the whole train at the valve, ``m_t`` mass of the tappet, which moves already [kg]; ``i`` travel of
    the valve for each unit of the tappet's. Returns [kg]. Raises OutOfRange unless i > 0.

    >>> round(mass_struck(m=7.6, m_t=0.9, i=1.5), 9)
    7.2
    """
    require(i > 0, "the lever ratio must be above 0")
    return m - m_t / i**2


@formula("k = x E A/L", cites=[FIRST_PRINCIPLES, COMMON_PRACTICE])
def estimated_stiffness(x: Ratio, E: Pascals, A: SquareMetres, L: Metres) -> NewtonsPerMetre:
    """Stiffness of a train felt at the valve, estimated from its spindle.

    k = x E A/L

    ``x`` share of the spindle's stiffness that the whole train keeps; ``E`` modulus of the spindle [Pa], ``A`` its
    section [m²], ``L`` its length from valve to gear [m]. Returns [N/m]. Raises OutOfRange unless L > 0.

    Hand working: 0.5 × 200 GPa × 380 mm²/400 mm = 95 kN/mm.

    >>> round(estimated_stiffness(x=0.5, E=200e9, A=380e-6, L=0.4) / 1e6, 6)
    95.0
    """
    require(L > 0, f"length {L * 1e3:.6g} mm is not above 0")
    return x * E * A / L


@formula("F_b = v √(k m)", cites=[FIRST_PRINCIPLES])
def blow(v: MetresPerSecond, k: NewtonsPerMetre, m: Kilograms) -> Newtons:
    """Load with which a train at rest is struck, beyond the load that holds it.

    F_b = v √(k m)

    ``v`` speed at which the clearance is taken up, at the valve [m/s]; ``k`` stiffness of the train there [N/m]; ``m``
    mass that is set in motion [kg]. Returns [N]: the peak of a mass on a spring whose far end moves on at ``v``.
    Raises OutOfRange where k or m is below 0.

    Hand working: 0.16 m/s × √(90e6 × 6.4) = 0.16 × 24 000 = 3840 N.

    >>> round(blow(v=0.16, k=90e6, m=6.4), 6)
    3840.0
    """
    require(
        k >= 0 * k and m >= 0 * m,
        f"stiffness {k / 1e3:.4g} N/mm or mass {m:.4g} kg of a train is below 0",
    )
    root: float = (k * m) ** 0.5
    return v * root


@formula("F_t = i (F_f + F_st + F_r + W + F_b)", cites=[FIRST_PRINCIPLES])
def struck_load(i: Ratio, F_f: Newtons, F_st: Newtons, F_r: Newtons, W: Newtons, F_b: Newtons) -> Newtons:
    """Load along the tappet as it takes up its clearance.

    F_t = i (F_f + F_st + F_r + W + F_b)

    ``i`` travel of the valve for each unit of the tappet's; ``F_f`` springs, ``F_st`` steam that holds the valve shut,
    ``F_r`` friction, ``W`` weight that shuts, ``F_b`` blow, all at the valve [N]. Returns [N].

    >>> struck_load(i=1.25, F_f=1000.0, F_st=2000.0, F_r=20.0, W=60.0, F_b=1000.0)
    5100.0
    """
    return i * (F_f + F_st + F_r + W + F_b)


@formula("F = max(F_1, F_2)", cites=[FIRST_PRINCIPLES])
def greater_load(F_1: Newtons, F_2: Newtons) -> Newtons:
    """The greater of two loads that do not come together.

    F = max(F_1, F_2)

    ``F_1``, ``F_2`` loads [N]. Returns [N].

    >>> greater_load(F_1=4000.0, F_2=5100.0)
    5100.0
    """
    return max(F_1, F_2)


def share_of_stiffness() -> Reading:
    """Share of its spindle's stiffness that a train keeps with its tappet, rocker, cam shaft and box.

    >>> share_of_stiffness().high
    0.5
    """
    return Reading("share of the spindle's stiffness", 0.35, 0.2, 0.5, "", COMMON_PRACTICE)
