"""The masses of parts that move or are lifted: the worse of what is stated and what the sizes allow."""

from __future__ import annotations

from speclint.equations import (
    CGPM,
    FIRST_PRINCIPLES,
    STANDARD_GRAVITY,
    Kilograms,
    KilogramsPerCubicMetre,
    Newtons,
    Ratio,
    formula,
)
from speclint.facts.masses import BySizes, Weighed, mass_by_sizes
from speclint.facts.taking import Take
from speclint.facts.train_loads import sense_of_weight
from speclint.facts.weights import density_of, share_of_mass
from speclint.handbook.materials import Material
from speclint.handbook.tables import Reading
from speclint.rules import Sheet
from speclint.specs import CamBox, PoppetValve, ValveSpindle

#: Least and greatest mass over that of the sizes: common practice, as in mass.by-sizes.
_LEAST_SHARE, _GREATEST_SHARE = 0.9, 1.1
#: The same of a spindle over a bar of its diameter, with its collars, nuts and spring plates.
_GREATEST_OF_SPINDLE = 3.0


@formula("W = g (m_v + m_s) · 9.80665 m/s²", cites=[FIRST_PRINCIPLES, CGPM], empirical="kg and N")
def weight_shutting(g: Ratio, m_v: Kilograms, m_s: Kilograms) -> Newtons:
    """Weight of valve and spindle that helps to shut the valve.

    W = g (m_v + m_s) · 9.80665 m/s²

    ``g`` 1 where the valve opens upwards, −1 downwards, 0 sideways; ``m_v``, ``m_s`` mass of valve and
    spindle [kg]. Returns [N], negative where weight opens the valve.

    Hand working: (4.5 + 1.5) × 9.80665 = 58.84 N.

    >>> round(weight_shutting(g=1.0, m_v=4.5, m_s=1.5), 2)
    58.84
    """
    return g * (m_v + m_s) * STANDARD_GRAVITY


def greatest_mass(symbol: str, part: Weighed, sheet: Sheet, take: Take) -> Kilograms:
    """Mass of a part where a heavier one is worse, kg: as stated, and no less than its sizes let it be."""
    m, by_sizes = take(symbol, part.mass), _by_sizes(part, sheet)
    if by_sizes is None or by_sizes.least is None:
        return m
    return no_lighter(symbol, part, m, by_sizes.least, sheet)


def no_lighter(
    symbol: str, part: Weighed | CamBox, m: Kilograms, by_sizes: Kilograms, sheet: Sheet
) -> Kilograms:
    """The mass ``m`` of a part, kg, and no less than the share of what it weighs ``by_sizes`` that it has at the least.

    That share has the limits of the stated mass.
    """
    least = sheet.work(f"{symbol}_l", share_of_mass, s=_LEAST_SHARE, M=by_sizes)
    return max(m, least + m - sheet.take_nominal(symbol, part.mass))


def least_mass(symbol: str, part: Weighed, sheet: Sheet, take: Take) -> Kilograms:
    """Mass of a part where a lighter one is worse, kg: as stated, and no more than its sizes let it be."""
    m, by_sizes = take(symbol, part.mass), _by_sizes(part, sheet)
    if by_sizes is None or by_sizes.most is None:
        return m
    share = _GREATEST_OF_SPINDLE if isinstance(part, ValveSpindle) else _GREATEST_SHARE
    most = sheet.work(f"{symbol}_g", share_of_mass, s=share, M=by_sizes.most)
    return min(m, most + m - sheet.take_nominal(symbol, part.mass))  # with the limits of the stated one


def density_at_end(metal: Material, end: str) -> Reading:
    """The density of a metal at the "low" or the "high" end of its band [kg/m³]."""
    found = metal.density()
    return Reading.exact(f"{found.what}, {end}", getattr(found, end), found.unit, found.source)


def _by_sizes(part: Weighed, sheet: Sheet) -> BySizes | None:
    return sheet.aside(f"mass of {part.id} by its sizes", _at_limits, part)


def _at_limits(part: Weighed, sheet: Sheet) -> BySizes | None:
    """The least mass with sizes and density at their high limits, and the most with all of them at their low ones."""
    low, high = (
        mass_by_sizes(part, sheet, lambda symbol, size, end=end: sheet.take_limits(symbol, size)[end])  # type: ignore[misc]
        for end in (0, 1)
    )
    rho = density_of(part, sheet)
    if low is None or high is None or rho is None:
        return None
    least, most = (
        mass and sheet.work(f"m_{end}", share_of_mass, s=_density(end, part, sheet) / rho, M=mass)
        for end, mass in (("high", high.least), ("low", low.most))
    )
    return BySizes(least, most, high.places)


def _density(end: str, part: Weighed, sheet: Sheet) -> KilogramsPerCubicMetre:
    return sheet.look_up(f"ρ_{end}", density_at_end, metal=sheet.material_of(part), end=end)


def weight_of_valve(
    valve: PoppetValve, spindle: ValveSpindle, sheet: Sheet, take: Take, *, helps: bool
) -> Newtons:
    """Weight of valve and spindle that shuts the valve, N; below 0 where it opens it.

    The least where it ``helps`` to shut, else the greatest, of what is stated and what the sizes let both weigh.
    """
    g = sheet.look_up("g_w", sense_of_weight, opens=sheet.read("opens", valve.opens))
    mass = least_mass if helps == (g >= 0) else greatest_mass
    m_v, m_s = mass("m_v", valve, sheet, take), mass("m_s", spindle, sheet, take)
    return sheet.work("W", weight_shutting, g=g, m_v=m_v, m_s=m_s)
