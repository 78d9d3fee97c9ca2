"""What the sizes of a spring and the lift of its valve say of its loads: against them what the drawing states."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, Newtons, NewtonsPerMetre, formula
from speclint.facts.gear import furthest_lift
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.springs import (
    deflection,
    load_tolerance,
    mean_from_inside,
    mean_from_outside,
    quality_factor,
    spring_load,
    spring_rate,
)
from speclint.rules import Sheet
from speclint.specs import CompressionSpring

#: Share by which a stated rate may differ from that of the sizes: common practice, as in coil-spring.rate.
_RATES_AGREE = 0.05


@formula("F_w = F_s + F − F_n", cites=[FIRST_PRINCIPLES])
def load_about(F_s: Newtons, F: Newtons, F_n: Newtons) -> Newtons:
    """Load that differs from that of the sizes as a stated one differs from its nominal.

    ``F_s`` load by the sizes, ``F`` stated load within its limits, ``F_n`` stated load without its limits [N]. Returns
    [N].

    >>> load_about(F_s=1000.0, F=1520.0, F_n=1600.0)
    920.0
    """
    return F_s + F - F_n


@formula("R_w = R_s + R − R_n", cites=[FIRST_PRINCIPLES])
def rate_about(R_s: NewtonsPerMetre, R: NewtonsPerMetre, R_n: NewtonsPerMetre) -> NewtonsPerMetre:
    """Rate that differs from that of the sizes as a stated one differs from its nominal.

    ``R_s`` rate by the sizes, ``R`` stated rate within its limits, ``R_n`` stated rate without its limits [N/m].
    Returns [N/m].

    >>> rate_about(R_s=40e3, R=58e3, R_n=60e3)
    38000.0
    """
    return R_s + R - R_n


@formula("h = L − y", cites=[FIRST_PRINCIPLES])
def height_to_grip(L: Metres, y: Metres) -> Metres:
    """Height above the lower seat of a free spring at which a tool takes hold of its plate.

    h = L − y

    ``L`` free length of the spring, ``y`` height of the plate over the spring's end, which the tool need not reach [m].
    Returns [m].

    >>> round(height_to_grip(L=0.142, y=0.012), 6)
    0.13
    """
    return L - y


def rate_by_sizes(spring: CompressionSpring, sheet: Sheet, index: str = "") -> float | None:
    """The rate that wire, coils and diameter give at 20 °C, as the drawing aims at them, N/m; None without them."""
    if not (sheet.is_stated("wire", spring.wire) and sheet.is_stated("working coils", spring.working_coils)):
        return None
    d = sheet.take_nominal(f"d_n{index}", spring.wire)
    D = mean_diameter(spring, sheet, d, index)
    if D is None:
        return None
    n = sheet.take_nominal(f"n_n{index}", spring.working_coils)
    G = sheet.look_up(f"G{index}", sheet.material_of(spring).shear_modulus, of=spring, at=DRAWING_TEMPERATURE)
    return sheet.work(f"R_s{index}", spring_rate, G=G, d=d, D=D, n=n)


def mean_diameter(spring: CompressionSpring, sheet: Sheet, d: float, index: str) -> float | None:
    if sheet.is_stated("mean diameter", spring.mean_diameter):
        return sheet.take_nominal(f"D_n{index}", spring.mean_diameter)
    if sheet.is_stated("outside diameter", spring.outside_diameter):
        D_e = sheet.take_nominal(f"D_e{index}", spring.outside_diameter)
        return sheet.work(f"D_n{index}", mean_from_outside, D_e=D_e, d=d)
    if sheet.is_stated("inside diameter", spring.inside_diameter):
        D_i = sheet.take_nominal(f"D_i{index}", spring.inside_diameter)
        return sheet.work(f"D_n{index}", mean_from_inside, D_i=D_i, d=d)
    return None


def _load_by_sizes(spring: CompressionSpring, sheet: Sheet, R: float | None, index: str) -> float | None:
    lengths = spring.free_length, spring.shut_length
    if R is None or not all(sheet.is_stated("length of the spring", one) for one in lengths):
        return None
    free, shut = sheet.take_nominal(f"L_0{index}", lengths[0]), sheet.take_nominal(f"L_U{index}", lengths[1])
    return sheet.work(
        f"F_s{index}", spring_load, R=R, s=sheet.work(f"s_U{index}", deflection, L_0=free, L=shut)
    )


def _load_may_differ(spring: CompressionSpring, sheet: Sheet, F: float, index: str) -> float:
    """What a stated load may differ from that of the sizes: its own limits, or those of EN 15800; N."""
    width = sheet.tolerance(f"ΔF{index}", spring.shut_load)
    if width > 0:
        return width / 2
    d = sheet.take_nominal(f"d_n{index}", spring.wire)
    D = mean_diameter(spring, sheet, d, index)
    if D is None or not sheet.is_stated("quality grade", spring.quality_grade):
        return 0.0
    n = sheet.take_nominal(f"n_n{index}", spring.working_coils)
    Q = sheet.look_up(f"Q{index}", quality_factor, grade=sheet.read("quality grade", spring.quality_grade))
    return sheet.work(f"A_F{index}", load_tolerance, Q=Q, F=F, d=d, D=D, n=n)


def shut_loads(
    spring: CompressionSpring, sheet: Sheet, F: float, R: float | None, index: str = ""
) -> tuple[float, float]:
    """The least and the greatest load that a spring may have at its shut length, N.

    ``F`` is the stated load within its limits: both, where the drawing agrees with itself. Where the sizes, whose rate
    is ``R``, give another load than the limits of the stated one allow, that is the other, with the same limits.
    """
    by_sizes = _load_by_sizes(spring, sheet, R, index)
    if by_sizes is None:
        return F, F
    F_n = sheet.take_nominal(f"F_n{index}", spring.shut_load)
    if abs(by_sizes - F_n) <= _load_may_differ(spring, sheet, F_n, index):
        return F, F
    other = sheet.work(f"F_w{index}", load_about, F_s=by_sizes, F=F, F_n=F_n)
    return (other, F) if by_sizes < F_n else (F, other)


def rates(
    spring: CompressionSpring, sheet: Sheet, by_sizes: float | None, index: str = ""
) -> tuple[float, float]:
    """The least and the greatest rate that a spring may have at 20 °C, N/m.

    Both as stated, or ``by_sizes`` where no rate is stated; where the two differ by more than 5 %, one and the other.
    """
    if by_sizes is not None and not sheet.is_stated("rate", spring.rate):
        return by_sizes, by_sizes
    R = sheet.take(f"R{index}", spring.rate)
    if by_sizes is None:
        return R, R
    R_n = sheet.take_nominal(f"R_n{index}", spring.rate)
    if abs(by_sizes - R_n) <= _RATES_AGREE * R_n:
        return R, R
    other = sheet.work(f"R_w{index}", rate_about, R_s=by_sizes, R=R, R_n=R_n)
    return (other, R) if by_sizes < R_n else (R, other)


def stroke(spring: CompressionSpring, sheet: Sheet) -> float | None:
    """The most by which its valve compresses a shut spring, m: the furthest lift; None where no valve tells."""
    if not sheet.is_stated("valve that the spring shuts", spring.closes):
        return None
    return furthest_lift(sheet.follow(spring.closes), sheet)
