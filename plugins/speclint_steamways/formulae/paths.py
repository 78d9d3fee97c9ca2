"""Formulae of a steam path: from header to valve, and from valve to nozzle."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kelvins,
    KilogramsPerCubicMetre,
    KilogramsPerSecond,
    Metres,
    MetresPerSecond,
    Pascals,
    Ratio,
    SquareMetres,
)
from speclint.handbook.tables import POCKET_BOOK
from speclint_steamways.sources import BOURNE


@formula("x = (p_1 − p_2)/p_1", cites=[FIRST_PRINCIPLES])
def share_lost(p_1: Pascals, p_2: Pascals) -> Ratio:
    """Pressure lost along a path as a share of that at its start.

    x = (p_1 − p_2)/p_1

    ``p_1`` pressure at the start, absolute [Pa], above 0; ``p_2`` pressure at the end, absolute [Pa]. Raises OutOfRange
    otherwise.

    >>> round(share_lost(p_1=16e5, p_2=15.2e5), 9)
    0.05
    """
    require(p_1 > 0 * p_1, "the absolute pressure must be above 0")
    return (p_1 - p_2) / p_1


@formula("x = m_1/m_2", cites=[FIRST_PRINCIPLES])
def flow_ratio(m_1: KilogramsPerSecond, m_2: KilogramsPerSecond) -> Ratio:
    """One mass flow over another.

    x = m_1/m_2

    ``m_1`` mass flow [kg/s]; ``m_2`` mass flow by which it is divided [kg/s], above 0. Raises OutOfRange otherwise.

    >>> flow_ratio(m_1=1.0, m_2=4.0)
    0.25
    """
    require(m_2 > 0 * m_2, "the flow to compare with must be above 0")
    return m_1 / m_2


@formula("x = A_1/A_2", cites=[FIRST_PRINCIPLES])
def area_ratio(A_1: SquareMetres, A_2: SquareMetres) -> Ratio:
    """One area over another.

    x = A_1/A_2

    ``A_1`` area [m²]; ``A_2`` area by which it is divided [m²], above 0. Raises OutOfRange otherwise.

    >>> area_ratio(A_1=0.02, A_2=0.016)
    1.25
    """
    require(A_2 > 0 * A_2, "the area to compare with must be above 0")
    return A_1 / A_2


@formula("A = k D²", cites=[POCKET_BOOK.at("p. 501, approximate rules for locomotives")])
def period_port(k: Ratio, D: Metres) -> SquareMetres:
    """Port by the pocket-book's approximate rules.

    A = k D²

    ``k`` 0.08 for steam, 0.18 for the exhaust; ``D`` bore of the cylinder [m]. Returns [m²].

    Hand working: 0.08 × 500² = 20 000 mm².

    >>> round(period_port(k=0.08, D=0.5) * 1e6, 6)
    20000.0
    """
    return k * D**2


@formula("A = A_p v/(4000 ft/min)", cites=[BOURNE.at("Q. 320")], empirical="feet and minutes")
def bourne_port(A_p: SquareMetres, v: MetresPerSecond) -> SquareMetres:
    """Port by Bourne's rule of piston speed.

    A = A_p v/4000 with v in ft/min

    ``A_p`` area of the piston [m²]; ``v`` mean piston speed [m/s]. Returns [m²].

    Hand working: 400 ft/min is 2.032 m/s and asks a tenth.

    >>> round(bourne_port(A_p=0.2, v=2.032), 9)
    0.02
    """
    return A_p * (v / 0.3048 * 60) / 4000


@formula("A = 0.1 A_p v/(600 ft/min)", cites=[BOURNE.at("Q. 320, as the trade has it")], empirical="ft/min")
def trade_port(A_p: SquareMetres, v: MetresPerSecond) -> SquareMetres:
    """Port by the rule of the trade: a tenth of the piston at 600 ft/min.

    A = 0.1 A_p v/600 with v in ft/min

    Arguments as ``bourne_port``. Returns [m²].

    >>> round(trade_port(A_p=0.2, v=3.048), 9)
    0.02
    """
    return 0.1 * A_p * (v / 0.3048 * 60) / 600


@formula("A_e = A_0 + C A", cites=[FIRST_PRINCIPLES])
def effective_area_together(A_0: SquareMetres, C: Ratio, A: SquareMetres) -> SquareMetres:
    """Effective area of passages side by side, added up one by one.

    A_e = A_0 + C A

    ``A_0`` of those before [m²]; ``C`` discharge coefficient and ``A`` area [m²] of one more. Returns [m²].
    Raises OutOfRange unless 0 < C ≤ 1 and A > 0.

    Hand working: 12 000 mm² and 0.6 × 20 000 mm².

    >>> round(effective_area_together(A_0=0.012, C=0.6, A=0.020), 9)
    0.024
    """
    require(0 < C <= 1, f"discharge coefficient {C:.4g} is not between 0 and 1")
    require(A > 0 * A, "the area of the passage must be above 0")
    return A_0 + C * A


@formula("r = p_2/(p_0 − Δp)", cites=[FIRST_PRINCIPLES])
def compression_ratio(p_2: Pascals, p_0: Pascals, Δp: Pascals) -> Ratio:
    """Pressure ratio by which a drifting cylinder compresses the charge that it has drawn.

    r = p_2/(p_0 − Δp)

    ``p_2`` pressure at the end of the compression, absolute [Pa]; ``p_0`` pressure where the charge comes from,
    absolute [Pa]; ``Δp`` depression in the cylinder [Pa]. Returns a ratio. Raises OutOfRange unless Δp < p_0.

    Hand working: 3.6 bar from 1.0 less 0.1 bar.

    >>> round(compression_ratio(p_2=3.6e5, p_0=1.0e5, Δp=0.1e5), 9)
    4.0
    """
    require(Δp < p_0, f"a depression of {Δp / 1e5:.4g} bar leaves nothing of {p_0 / 1e5:.4g} bar")
    return p_2 / (p_0 - Δp)


@formula("Δp = ρ/2 (A_p v/(C A))²", cites=[FIRST_PRINCIPLES])
def breathing_depression(
    ρ: KilogramsPerCubicMetre, A_p: SquareMetres, v: MetresPerSecond, C: Ratio, A: SquareMetres
) -> Pascals:
    """Depression in a cylinder that draws air through a passage as fast as its piston moves.

    Δp = ρ/2 (A_p v/(C A))²

    ``ρ`` density of the air [kg/m³]; ``A_p`` piston [m²]; ``v`` its speed [m/s]; ``C`` discharge coefficient, above 0
    to 1; ``A`` area of the passage [m²], above 0. Returns [Pa]. Valid below a tenth of the atmospheric pressure.
    Raises OutOfRange outside.

    Hand working: 1.2/2 × (0.2 × 10/(0.5 × 0.05))² = 0.6 × 80² = 3840 Pa.

    >>> round(breathing_depression(ρ=1.2, A_p=0.2, v=10.0, C=0.5, A=0.05), 6)
    3840.0
    """
    require(0 < C <= 1, f"discharge coefficient {C:.4g} is not between 0 and 1")
    require(A > 0 * A, "the area of the passage must be above 0")
    return ρ / 2 * (A_p * v / (C * A)) ** 2


@formula(
    "ρ = p/(287.05 J/(kg·K) T)",
    cites=[FIRST_PRINCIPLES],
    empirical="R and M of dry air in SI: 287.05 J/(kg·K)",
)
def air_density(p: Pascals, T: Kelvins) -> KilogramsPerCubicMetre:
    """Density of dry air as a perfect gas.

    ρ = p/(287.05 T)

    ``p`` pressure, absolute [Pa]; ``T`` temperature [K], above 0. Returns [kg/m³]. Raises OutOfRange otherwise.

    International Standard Atmosphere at sea level (from memory): 1.2250 kg/m³.

    >>> round(air_density(p=101_325.0, T=288.15), 4)
    1.225
    """
    require(T > 0, "the temperature must be above 0 absolute")
    return p / (287.05 * T)


@formula("r = p_2/p", cites=[FIRST_PRINCIPLES])
def pressure_share(p_2: Pascals, p: Pascals) -> Ratio:
    """Pressure after a nozzle over that before it, both absolute.

    r = p_2/p

    ``p_2`` pressure after the nozzle, absolute [Pa]; ``p`` pressure before it, absolute [Pa], above 0. Raises
    OutOfRange otherwise.

    >>> pressure_share(p_2=1.0e5, p=1.25e5)
    0.8
    """
    require(p > 0 * p, "the absolute pressure must be above 0")
    return p_2 / p
