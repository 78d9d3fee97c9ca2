"""Steam pipes: wall of straight pipe and bends by two codes.

``D`` is the outside diameter, ``d`` the bore. Both codes are shown so that each can be held against the
other: ASME B31.1 (allowable S, efficiency E of a longitudinal weld, factor y) and EN 13480-3 (allowable f,
weld factor z). Pressures are gauge. The codes in force at the place of use, and a licensed person, decide.
"""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Kelvins, Metres, Pascals, Ratio, Source, formula, require
from speclint.errors import NotKnown
from speclint.handbook import tables
from speclint.handbook.tables import Reading, between

FACTOR_Y = "pipe-factor-y-asme-b31.1-2018.csv"
B31_1 = Source("ASME B31.1, Power Piping", "2018", memory=True)
EN_13480_3 = Source("EN 13480-3, Metallic industrial piping: design and calculation", "2017", memory=True)
STRAIGHT = B31_1.at(
    "104.1.2, straight pipe under internal pressure, as reproduced in a public guide specification",
    memory=False,
)
MILL = EN_13480_3.at("4.3, mill tolerance, as reproduced in a public pipe calculation", memory=False)
BENT = B31_1.at("102.4.5, bending")

_FACTORS = B31_1.at("Table 104.1.2(A), as reproduced on a public reference page", memory=False)
_ZERO_CELSIUS = 273.15
#: Ratio of outside diameter to bore above which EN 13480-3 goes over to the thick-wall form.
_THICK_RATIO = 1.7
#: Rounding allowed where a bore is just two thirds of the outside.
_SLACK = 1e-9


def wall_factor_y(metal: str, T: Kelvins) -> Reading:
    """Factor y of B31.1 for pipe whose wall is less than a sixth of its diameter.

    ``metal`` ferritic, austenitic, nickel alloy, copper alloy or cast iron; ``T`` metal temperature [K].
    NotKnown for other metals; OutOfRange above the table's temperatures.

    >>> wall_factor_y("ferritic", T=783.15).nominal
    0.5
    """
    rows = [row for row in tables.rows(FACTOR_Y) if row["metal"] == metal]
    if not rows:
        known = ", ".join(dict.fromkeys(tables.entries(FACTOR_Y, "metal")))
        raise NotKnown(f"no factor y for metal {metal!r}; known: {known}")
    points = [(float(row["temperature"]), float(row["y"])) for row in rows]
    celsius = max(T - _ZERO_CELSIUS, points[0][0])
    value = between(points, celsius, f"factor y of {metal} pipe over °C")
    source = _FACTORS if all(row["seen"] == "yes" for row in rows) else B31_1.at("Table 104.1.2(A)")
    return Reading.exact(f"factor y of {metal} pipe at {celsius:.0f} °C", value, "", source)


@formula("y = d/(d + D)", cites=[B31_1.at("Table 104.1.2(A), note on thick pipe")])
def thick_pipe_factor_y(d: Metres, D: Metres) -> Ratio:
    """Factor y where the wall is a sixth of the outside diameter or more; B31.1 is then Lamé's formula.

    y = d/(d + D)

    ``d`` bore, ``D`` outside [m]. Returns [-]. Raises OutOfRange unless 0 < d ≤ 2 D/3.

    At a wall of a sixth it is 0.4, as in the table.

    >>> round(thick_pipe_factor_y(d=0.2, D=0.3), 6)
    0.4
    """
    require(
        0 < 3 * d <= 2 * D * (1 + _SLACK),
        f"bore {d * 1e3:.6g} mm is not a thick pipe's: more than 2/3 of {D * 1e3:.6g} mm",
    )
    return d / (d + D)


@formula("t = p D/(2 (S E + p y)) + A", cites=[STRAIGHT])
def pipe_wall(p: Pascals, D: Metres, S: Pascals, E: Ratio, y: Ratio, A: Metres) -> Metres:
    """Least wall of straight pipe after B31.1, from the outside diameter.

    t = p D/(2 (S E + p y)) + A

    ``p`` design pressure, gauge [Pa]; ``D`` outside [m]; ``S`` allowable stress at metal temperature [Pa];
    ``E`` efficiency of the longitudinal weld (1 when seamless) [-]; ``y`` factor (``wall_factor_y``);
    ``A`` threading, corrosion, wear [m]. Returns [m]. Raises OutOfRange unless p ≥ 0, S > 0 and 0 < E ≤ 1.

    A worked example recalled from a course on process plant piping (V. A. Carucci): 650 psi, 14 in pipe,
    S = 16 200 psi, y = 0.4, without allowance 0.276 in; with 0.0625 in it is 0.339 in.

    >>> psi, inch = 6894.757, 0.0254
    >>> round(pipe_wall(p=650 * psi, D=14 * inch, S=16200 * psi, E=1.0, y=0.4, A=0.0625 * inch) / inch, 3)
    0.339
    """
    _require_design(p, S, E)
    return p * D / (2 * (S * E + p * y)) + A


@formula("t = (p d + 2 A (S E + p y))/(2 (S E + p y − p))", cites=[STRAIGHT])
def pipe_wall_from_bore(p: Pascals, d: Metres, S: Pascals, E: Ratio, y: Ratio, A: Metres) -> Metres:
    """Least wall of straight pipe after B31.1, from the bore.

    t = (p d + 2 A (S E + p y))/(2 (S E + p y − p))

    ``p`` design pressure, gauge [Pa]; ``d`` bore [m]; ``S`` allowable stress at metal temperature [Pa]; ``E``
    efficiency of the longitudinal weld (1 when seamless) [-]; ``y`` factor (``wall_factor_y``); ``A`` threading,
    corrosion, wear [m]. Returns [m]. Raises OutOfRange as ``pipe_wall``, or when the pressure is beyond what any wall
    holds by this formula.

    Hand working: 10 MPa, 100 mm, S 100 MPa, y 0.4: 1000/(2 × 94) = 5.319 mm.

    >>> round(pipe_wall_from_bore(p=10e6, d=0.1, S=100e6, E=1.0, y=0.4, A=0.0) * 1e3, 3)
    5.319
    """
    _require_design(p, S, E)
    require(
        S * E + p * y > p, f"pressure {p / 1e5:.6g} bar is beyond the formula for stress {S / 1e6:.6g} MPa"
    )
    return (p * d + 2 * A * (S * E + p * y)) / (2 * (S * E + p * y - p))


@formula("p = 2 S E (t − A)/(D − 2 y (t − A))", cites=[STRAIGHT])
def pipe_pressure(t: Metres, D: Metres, S: Pascals, E: Ratio, y: Ratio, A: Metres) -> Pascals:
    """Pressure for which the wall of a straight pipe is just enough after B31.1.

    p = 2 S E (t − A)/(D − 2 y (t − A))

    ``t`` least wall, the mill's tolerance deducted [m]. Other arguments as for ``pipe_wall``. Returns [Pa]. Raises
    OutOfRange unless A ≤ t < D/2, S > 0 and 0 < E ≤ 1.

    Hand working: 5 mm of 100 mm, S 100 MPa, y 0.4: 1000/(100 − 4) = 10.417 MPa.

    >>> round(pipe_pressure(t=0.005, D=0.1, S=100e6, E=1.0, y=0.4, A=0.0) / 1e6, 3)
    10.417
    """
    _require_metal(S, E)
    require(
        t >= A and 2 * t < D,
        f"wall {t * 1e3:.6g} mm is not between the allowance {A * 1e3:.6g} mm and half of {D * 1e3:.6g} mm",
    )
    return 2 * S * E * (t - A) / (D - 2 * y * (t - A))


@formula("I = (4 R/D − 1)/(4 R/D − 2)", cites=[BENT])
def bend_factor_inside(R: Metres, D: Metres) -> Ratio:
    """Wall that the inside of a bend needs over that of straight pipe.

    I = (4 R/D − 1)/(4 R/D − 2)

    ``R`` radius of the bend's centre line, ``D`` outside of the pipe [m]. Returns [-].
    Raises OutOfRange unless R > D/2, where the bend would close on itself. EN 13480-3 has the same factor.

    Hand working: R = 1.5 D gives 5/4.

    >>> bend_factor_inside(R=0.15, D=0.1)
    1.25
    """
    _require_bend(R, D)
    return (4 * R / D - 1) / (4 * R / D - 2)


@formula("I = (4 R/D + 1)/(4 R/D + 2)", cites=[BENT])
def bend_factor_outside(R: Metres, D: Metres) -> Ratio:
    """Wall that the outside of a bend needs over that of straight pipe.

    I = (4 R/D + 1)/(4 R/D + 2)

    ``R`` radius of the bend's centre line, ``D`` outside of the pipe [m]. Returns [-].
    Raises OutOfRange unless R > D/2. EN 13480-3 has the same factor. The sides of the bend have I = 1.

    Hand working: R = 1.5 D gives 7/8.

    >>> bend_factor_outside(R=0.15, D=0.1)
    0.875
    """
    _require_bend(R, D)
    return (4 * R / D + 1) / (4 * R / D + 2)


@formula("t = p D/(2 (S E/I + p y)) + A", cites=[BENT])
def bend_wall(
    p: Pascals,
    D: Metres,
    S: Pascals,
    E: Ratio,
    I: Ratio,  # noqa: E741 - the symbol of the code
    y: Ratio,
    A: Metres,
) -> Metres:
    """Least wall of a bend after B31.1, once bent.

    t = p D/(2 (S E/I + p y)) + A, I the bend factor

    ``I`` the bend factor of the inside, outside (``bend_factor_inside``, ``bend_factor_outside``) or side (1) of the
    bend. Other arguments as for ``pipe_wall``. Returns [m]. Raises OutOfRange as there, or unless I > 0.

    Hand working: 10 MPa, 100 mm, S 100 MPa, y 0.4, I 1.25: 1000/(2 × 84) = 5.952 mm.

    >>> round(bend_wall(p=10e6, D=0.1, S=100e6, E=1.0, I=1.25, y=0.4, A=0.0) * 1e3, 3)
    5.952
    """
    require(I > 0, f"bend factor {I:.6g} is not above 0")
    _require_design(p, S, E)
    return p * D / (2 * (S * E / I + p * y)) + A


@formula("t_l = t (1 − u)", cites=[MILL])
def least_wall(t: Metres, u: Ratio) -> Metres:
    """Least wall within the mill tolerance.

    t_l = t (1 − u)

    ``t`` wall ordered [m]; ``u`` the mill's minus tolerance as a share. Returns [m].
    Raises OutOfRange unless 0 ≤ u < 1.

    >>> round(least_wall(t=0.008, u=0.125) * 1e3, 6)
    7.0
    """
    require(0 <= u < 1, f"mill tolerance {u:.6g} is not between 0 and 1")
    return t * (1 - u)


@formula("t_n = t/(1 − u)", cites=[MILL, FIRST_PRINCIPLES])
def ordering_wall(t: Metres, u: Ratio) -> Metres:
    """Nominal wall to order, so that the least wall within the mill tolerance is enough.

    t_n = t/(1 − u)

    ``t`` least wall with all allowances [m]; ``u`` the mill's minus tolerance, as 0.125 for seamless pipe.
    Returns [m]. Raises OutOfRange unless 0 ≤ u < 1.

    >>> round(ordering_wall(t=0.007, u=0.125) * 1e3, 3)
    8.0
    """
    require(0 <= u < 1, f"mill tolerance {u:.6g} is not between 0 and 1")
    return t / (1 - u)


@formula(
    "e = e_t if D ≤ 1.7 (D − 2 e_t), else D/2 (1 − √((f z − p)/(f z + p))), e_t = p D/(2 f z + p)",
    cites=[EN_13480_3.at("6.1, straight pipes")],
)
def pipe_wall_of_european_code(p: Pascals, D: Metres, f: Pascals, z: Ratio) -> Metres:
    """Least wall of straight pipe after EN 13480-3, without allowances.

    e = e_t if D ≤ 1.7 (D − 2 e_t), else D/2 (1 − √((f z − p)/(f z + p))), e_t = p D/(2 f z + p)

    ``p`` pressure, gauge [Pa]; ``D`` outside [m]; ``f`` allowable stress at temperature [Pa]; ``z`` weld
    factor (1 when seamless). Returns [m]; corrosion and thinning are added, then ``ordering_wall``. The
    code's two forms do not meet: the wall steps up by 6 % where the second takes over.
    Raises OutOfRange unless 0 ≤ p < f z and 0 < z ≤ 1.

    Hand working: 10 MPa, 100 mm, f 100 MPa: 1000/210 = 4.762 mm.

    >>> round(pipe_wall_of_european_code(p=10e6, D=0.1, f=100e6, z=1.0) * 1e3, 3)
    4.762
    """
    require(0 < z <= 1, f"weld factor {z:.6g} is not between 0 and 1")
    require(
        0 <= p < f * z, f"pressure {p / 1e5:.6g} bar is not between 0 and the allowable {f * z / 1e6:.6g} MPa"
    )
    thin = p * D / (2 * f * z + p)
    if _THICK_RATIO * (D - 2 * thin) >= D:
        return thin
    bore_share: float = ((f * z - p) / (f * z + p)) ** 0.5
    return D / 2 * (1 - bore_share)


@formula("e_b = e B", cites=[EN_13480_3.at("6.2.3, bends")])
def bend_wall_of_european_code(e: Metres, B: Ratio) -> Metres:
    """Least wall of a bend after EN 13480-3, without allowances.

    e_b = e B

    ``e`` least wall of straight pipe (``pipe_wall_of_european_code``) [m]; ``B`` factor of the inside or the
    outside: (R/D ∓ 0.25)/(R/D ∓ 0.5), which are ``bend_factor_inside`` and ``bend_factor_outside``.
    Returns [m]. Raises OutOfRange unless B > 0.

    >>> round(bend_wall_of_european_code(e=0.004, B=1.25) * 1e3, 6)
    5.0
    """
    require(B > 0, f"bend factor {B:.6g} is not above 0")
    return e * B


def _require_design(p: float, S: float, E: float) -> None:
    require(p >= 0, f"pressure {p / 1e5:.6g} bar is negative")
    _require_metal(S, E)


def _require_metal(S: float, E: float) -> None:
    require(S > 0, f"allowable stress {S / 1e6:.6g} MPa is not above 0")
    require(0 < E <= 1, f"weld efficiency {E:.6g} is not between 0 and 1")


def _require_bend(R: float, D: float) -> None:
    require(
        D > 0 and 2 * R > D,
        f"bend radius {R * 1e3:.6g} mm is not more than half of the pipe's {D * 1e3:.6g} mm",
    )
