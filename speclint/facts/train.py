"""The train between cam and valve: its lever ratio, and the lift that it gives."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, Ratio, formula, require


@formula("i = b_v/b_t", cites=[FIRST_PRINCIPLES])
def lever_ratio(b_v: Metres, b_t: Metres) -> Ratio:
    """Lever ratio: travel of the valve over travel of the tappet.

    i = b_v/b_t

    ``b_v`` arm of the rocker at the valve, ``b_t`` its arm at the tappet [m]. Returns [-]. Raises OutOfRange unless
    both are above 0.

    >>> lever_ratio(b_v=0.06, b_t=0.05)
    1.2
    """
    require(b_v > 0 and b_t > 0, "the arms of a rocker must be above 0")
    return b_v / b_t


@formula("h = i max(s − c, 0)", cites=[FIRST_PRINCIPLES])
def valve_lift(i: Ratio, s: Metres, c: Metres) -> Metres:
    """Lift of the valve.

    h = i max(s − c, 0)

    ``i`` travel of the valve over travel of the tappet; ``s`` lift of the tappet, ``c`` clearance at the
    tappet [m]. Returns [m].

    >>> round(valve_lift(i=1.5, s=0.0104, c=0.0004), 9)
    0.015
    """
    return i * max(s - c, 0.0)


@formula("s = h_r + s_1", cites=[FIRST_PRINCIPLES])
def top_of_lift(h_r: Metres, s_1: Metres) -> Metres:
    """Greatest lift of a tappet on a cam with ramps.

    s = h_r + s_1

    ``h_r`` height of the ramp, ``s_1`` lift above it [m]. Returns [m].

    >>> round(top_of_lift(h_r=0.0011, s_1=0.0198), 6)
    0.0209
    """
    return h_r + s_1


@formula("h_o = h + o", cites=[FIRST_PRINCIPLES])
def lift_with_overtravel(h: Metres, o: Metres) -> Metres:
    """Furthest lift that the gear can give.

    h_o = h + o

    ``h`` full lift, ``o`` overtravel [m]. Returns [m].

    >>> round(lift_with_overtravel(h=0.020, o=0.001), 6)
    0.021
    """
    return h + o


@formula("o = h_o − h", cites=[FIRST_PRINCIPLES])
def beyond_full_lift(h_o: Metres, h: Metres) -> Metres:
    """How far a gear moves its valve beyond full lift.

    o = h_o − h

    ``h_o`` furthest lift that the gear can give, ``h`` full lift [m]. Returns [m], negative where the gear does not
    give full lift.

    >>> round(beyond_full_lift(h_o=0.0209, h=0.020), 6)
    0.0009
    """
    return h_o - h


@formula("c = (L_b + L_d − L + a)/i", cites=[FIRST_PRINCIPLES])
def clearance_from_lengths(L_b: Metres, L_d: Metres, L: Metres, a: Metres, i: Ratio) -> Metres:
    """Clearance at the tappet that the lengths of block, box and spindle leave, cold, the valve shut.

    c = (L_b + L_d − L + a)/i

    ``L_b`` from the valve's seat to the foot of the cam box, ``L_d`` from there to where the spindle meets the gear,
    ``L`` from the seat to the end of the spindle, ``a`` what is ground off that end [m]; ``i`` travel of the valve over
    travel of the tappet. Returns [m], negative where the valve is held off its seat. Raises OutOfRange unless i > 0.

    Hand working: (150 + 180 − 330 + 0.85)/1 = 0.85 mm.

    >>> round(clearance_from_lengths(L_b=0.150, L_d=0.180, L=0.330, a=0.00085, i=1.0) * 1e3, 6)
    0.85
    """
    require(i > 0, "the lever ratio must be above 0")
    return (L_b + L_d - L + a) / i


@formula("c_w = c_l + c − c_n", cites=[FIRST_PRINCIPLES])
def clearance_about(c_l: Metres, c: Metres, c_n: Metres) -> Metres:
    """Clearance that differs from that of the lengths as a stated one differs from its nominal.

    c_w = c_l + c − c_n

    ``c_l`` clearance by the lengths, ``c`` stated clearance within its limits, ``c_n`` stated clearance without its
    limits [m]. Returns [m].

    >>> round(clearance_about(c_l=0.0006, c=0.0009, c_n=0.00085) * 1e3, 6)
    0.65
    """
    return c_l + c - c_n
