"""What several rules share: coil diameter, rate, loads and solid length of a spring."""

from __future__ import annotations

from collections.abc import Callable

from speclint import Sheet
from speclint.equations import Kelvins, Metres, Newtons, NewtonsPerMetre, Pascals, Ratio
from speclint.facts import rate_by_sizes, rates, shut_loads, stroke
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.springs import (
    deflection,
    length_at_lift,
    mean_from_inside,
    mean_from_outside,
    relaxation_loss,
    shear_stress,
    solid_coils,
    solid_length,
    spring_load,
    spring_load_at_lift,
    spring_rate,
)
from speclint.specs import CompressionSpring, Length
from speclint_springs.formulae.helical import open_load_from_shut


def mean_diameter(spring: CompressionSpring, sheet: Sheet, d: Metres) -> Metres:
    """Mean coil diameter as stated, or from the outside or inside diameter and the wire."""
    return _by_any_diameter(spring, sheet, d, sheet.take, ("D", "D_e", "D_i"))


def aimed_mean_diameter(spring: CompressionSpring, sheet: Sheet, d: Metres) -> Metres:
    """Mean coil diameter that the drawing aims at, without limits; ``d`` is that of the wire."""
    return _by_any_diameter(spring, sheet, d, sheet.take_nominal, ("D_n", "D_en", "D_in"))


def _by_any_diameter(
    spring: CompressionSpring,
    sheet: Sheet,
    d: Metres,
    take: Callable[[str, Length], Metres],
    symbols: tuple[str, str, str],
) -> Metres:
    """Mean coil diameter; ``symbols`` are those of the mean, the outside and the inside diameter."""
    D, D_e, D_i = symbols
    if not sheet.is_stated("mean diameter", spring.mean_diameter):
        if sheet.is_stated("outside diameter", spring.outside_diameter):
            return sheet.work(D, mean_from_outside, D_e=take(D_e, spring.outside_diameter), d=d)
        if sheet.is_stated("inside diameter", spring.inside_diameter):
            return sheet.work(D, mean_from_inside, D_i=take(D_i, spring.inside_diameter), d=d)
    return take(D, spring.mean_diameter)


def modulus_of_rigidity(spring: CompressionSpring, sheet: Sheet, T: Kelvins = DRAWING_TEMPERATURE) -> Pascals:
    """Modulus of rigidity of the wire; at the drawing's 20 °C unless a temperature is given."""
    return sheet.look_up("G", sheet.material_of(spring).shear_modulus, of=spring, at=T)


def rate(
    spring: CompressionSpring, sheet: Sheet, d: Metres, D: Metres, *, least: bool = False
) -> NewtonsPerMetre:
    """Rate at 20 °C as stated, or from the sizes, also where these give more (or ``least``: less) than is stated."""
    if sheet.is_stated("rate", spring.rate):
        return rates(spring, sheet, rate_by_sizes(spring, sheet))[0 if least else 1]
    G = modulus_of_rigidity(spring, sheet)
    return sheet.work("R", spring_rate, G=G, d=d, D=D, n=working_coils(spring, sheet))


def working_coils(spring: CompressionSpring, sheet: Sheet) -> Ratio:
    """Number of working (active) coils."""
    return sheet.take("n", spring.working_coils)


def shut_load(
    spring: CompressionSpring, sheet: Sheet, d: Metres, D: Metres, *, least: bool = False
) -> Newtons:
    """Load at the shut length at 20 °C as stated, or from rate and lengths.

    By the sizes also where these give more (or ``least``: less) than the limits of the stated load allow.
    """
    if sheet.is_stated("shut load", spring.shut_load):
        F, by_sizes = sheet.take("F_U", spring.shut_load), rate_by_sizes(spring, sheet)
        return shut_loads(spring, sheet, F, by_sizes)[0 if least else 1]
    R = rate(spring, sheet, d, D, least=least)
    free, shut = sheet.take("L_0", spring.free_length), sheet.take("L_U", spring.shut_length)
    return sheet.work("F_U", spring_load, R=R, s=sheet.work("s_U", deflection, L_0=free, L=shut))


def open_load(spring: CompressionSpring, sheet: Sheet, d: Metres, D: Metres) -> Newtons:
    """Load with the valve open at 20 °C as stated, and by shut load, rate and lift where these give more.

    From rate and lengths where it is not stated.
    """
    if sheet.is_stated("open load", spring.open_load):
        F_O = sheet.take("F_O", spring.open_load)
        h = stroke(spring, sheet)
        if h is None:
            return F_O
        F_U, R = shut_load(spring, sheet, d, D), rate(spring, sheet, d, D)
        return max(F_O, sheet.work("F_h", spring_load_at_lift, F_U=F_U, R=R, h=h))
    R = rate(spring, sheet, d, D)
    free, opened = sheet.take("L_0", spring.free_length), sheet.take("L_O", spring.open_length)
    return sheet.work("F_O", spring_load, R=R, s=sheet.work("s_O", deflection, L_0=free, L=opened))


def same_spring_open_load(
    spring: CompressionSpring, sheet: Sheet, d: Metres, D: Metres, F_U: Newtons
) -> Newtons:
    """Load of the same spring that has the load ``F_U`` at its shut length, its valve as far open as it can go.

    At the stated open length where no valve, or no lift of it, is drawn.
    """
    R = rate(spring, sheet, d, D)
    h = stroke(spring, sheet)
    if h is not None:
        return sheet.work("F_O", spring_load_at_lift, F_U=F_U, R=R, h=h)
    shut, opened = sheet.take("L_U", spring.shut_length), sheet.take("L_O", spring.open_length)
    return sheet.work("F_O", open_load_from_shut, F_U=F_U, R=R, L_U=shut, L_O=opened)


def shortest_length(spring: CompressionSpring, sheet: Sheet) -> Metres:
    """Length with the valve as far open as it can go; as stated where no valve, or no lift of it, is drawn."""
    h = stroke(spring, sheet)
    if h is None:
        return sheet.take("L_O", spring.open_length)
    return sheet.work("L_O", length_at_lift, L_U=sheet.take("L_U", spring.shut_length), h=h)


def greatest_solid_length(spring: CompressionSpring, sheet: Sheet, d: Metres) -> Metres:
    """Solid length by process and ends."""
    process, ends = sheet.read("process", spring.process), sheet.read("ends", spring.ends)
    added = sheet.look_up("a", solid_coils, process=process, ends=ends)
    return sheet.work("L_c", solid_length, n_t=sheet.take("n_t", spring.total_coils), a=added, d_max=d)


def alternates(spring: CompressionSpring, sheet: Sheet) -> bool:
    """Whether the load of a spring alternates: as it states, and always where it closes a valve or moves.

    A spring of a nest closes the valve of the nest; one with a shut and another open length moves between them.
    """
    if sheet.read("loading", spring.loading) == "alternating":
        return True
    if sheet.is_stated("closes", spring.closes) or sheet.is_stated("nested in", spring.nested_in):
        return True
    lengths = {"shut length": spring.shut_length, "open length": spring.open_length}
    if not all(sheet.is_stated(name, length) for name, length in lengths.items()):
        return False
    return sheet.take_nominal("L_U", spring.shut_length) != sheet.take_nominal("L_O", spring.open_length)


def relaxation_of_wire(spring: CompressionSpring, sheet: Sheet, T: Kelvins, symbol: str) -> Ratio:
    """Share of its load that a spring held fully open at ``T`` [K] loses, by its wire and the stress in it."""
    d = sheet.take("d", spring.wire)
    D = mean_diameter(spring, sheet, d)
    stress = sheet.work("τ_O", shear_stress, F=open_load(spring, sheet, d, D), D=D, d=d)
    wire = sheet.read("wire grade", spring.wire_grade)
    return sheet.look_up(symbol, relaxation_loss, wire=wire, T=T, tau=stress)
