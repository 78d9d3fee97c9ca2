"""Two features that mate: clearance or interference between their limits, kind of fit, preferred fits.

Interference is clearance with its sign changed: a fit that can be either has both greatest values positive.

>>> press = fit(0.025, "H7", "s6")
>>> press.kind.value
'interference'
>>> f"{press.least_interference * 1e6:.0f} to {press.greatest_interference * 1e6:.0f} µm"
'14 to 48 µm'
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from speclint.equations import FIRST_PRINCIPLES, Metres, Ratio, Source, formula, require
from speclint.errors import NotKnown
from speclint.handbook.tables import rows
from speclint.quantities import deviations

ISO_286_1 = Source(
    "ISO 286-1, Geometrical product specifications (GPS): ISO code system for tolerances on linear sizes, "
    "Part 1: Basis of tolerances, deviations and fits",
    "2010",
    memory=True,
)
ISO_1829 = Source("ISO 1829, Selection of tolerance zones for general purposes", "1975", memory=True)
ASME_B4_2 = Source("ASME B4.2, Preferred metric limits and fits", "1978 (R2009)", memory=True)
_TERMS = ISO_286_1.at("clause 3.3, terms for fits")
# One size reached by two routes ("50 mm +0.02/0" and "50.02 mm") differs by less than this, in m.
_ROUNDING = 1e-12


class Kind(Enum):
    """Kind of fit, as ISO 286-1 defines the three."""

    CLEARANCE = "clearance"
    TRANSITION = "transition"
    INTERFERENCE = "interference"


@formula("δ = d − D", cites=[FIRST_PRINCIPLES])
def interference(d: Metres, D: Metres) -> Metres:
    """Diametral interference.

    δ = d − D

    ``d`` shaft, or outside of the ring; ``D`` hole, or bore [m]. Returns [m], negative for a clearance.

    By hand: 170.12 mm in 170.04 mm.

    >>> round(interference(d=0.17012, D=0.17004) * 1e6, 6)
    80.0
    """
    return d - D


@formula("c = −δ", cites=[FIRST_PRINCIPLES])
def gap_of_interference(delta: Metres) -> Metres:
    """Diametral clearance.

    c = −δ

    ``delta`` diametral interference [m]. Returns [m], negative for an interference.

    >>> gap_of_interference(delta=-0.1e-3)
    0.0001
    """
    return -delta


@formula("c = D − d", cites=[FIRST_PRINCIPLES])
def diametral_clearance(D: Metres, d: Metres) -> Metres:
    """Diametral clearance between a bore and the part in it.

    c = D − d

    ``D`` bore, ``d`` part in it [m], both cold or both hot. Returns [m], below 0 where it binds.

    By hand: 501.0 mm less 499.0 mm.

    >>> round(diametral_clearance(D=0.5010, d=0.4990) * 1e3, 6)
    2.0
    """
    return D - d


@formula("c_n = k D", cites=[FIRST_PRINCIPLES])
def share_of_diameter(k: Ratio, D: Metres) -> Metres:
    """Clearance as a share of the diameter.

    c_n = k D

    ``k`` share; ``D`` diameter [m]. Returns [m].

    By hand: a two-thousandth of 500 mm.

    >>> round(share_of_diameter(k=0.0005, D=0.5) * 1e3, 6)
    0.25
    """
    return k * D


@formula("c_max = D_max − d_min", cites=[_TERMS])
def greatest_clearance(D_max: Metres, d_min: Metres) -> Metres:
    """Greatest clearance: largest hole on smallest shaft; negative where they still interfere.

    D_max: upper limit of size of the hole, m. d_min: lower limit of size of the shaft, m. Returns m.

    Published check, ISO 286-2 limits (from memory), 25 H7/g6, hole 25.021 and shaft 24.980 mm:

    >>> round(greatest_clearance(25.021e-3, 24.980e-3), 9)
    4.1e-05
    """
    return D_max - d_min


@formula("c_min = D_min − d_max", cites=[_TERMS])
def least_clearance(D_min: Metres, d_max: Metres) -> Metres:
    """Least clearance: smallest hole on largest shaft; negative where they interfere.

    D_min: lower limit of size of the hole, m. d_max: upper limit of size of the shaft, m. Returns m.
    """
    return D_min - d_max


@formula("i_max = d_max − D_min", cites=[_TERMS])
def greatest_interference(d_max: Metres, D_min: Metres) -> Metres:
    """Greatest interference, on the diameter: largest shaft in smallest hole; negative where they clear.

    d_max: upper limit of size of the shaft, m. D_min: lower limit of size of the hole, m. Returns m.
    """
    return d_max - D_min


@formula("i_min = d_min − D_max", cites=[_TERMS])
def least_interference(d_min: Metres, D_max: Metres) -> Metres:
    """Least interference, on the diameter: smallest shaft in largest hole; negative where they clear.

    d_min: lower limit of size of the shaft, m. D_max: upper limit of size of the hole, m. Returns m.
    """
    return d_min - D_max


def kind_of_fit(hole: tuple[float, float], shaft: tuple[float, float]) -> Kind:
    """Kind of fit between two pairs of limits, each lower before upper, in m (sizes or deviations alike).

    A limit case with neither clearance nor interference belongs to the fit on its side (ISO 286-1, 3.3.2 to
    3.3.4). OutOfRange is raised when a lower limit is above its upper.
    """
    for what, (lower, upper) in (("hole", hole), ("shaft", shaft)):
        require(lower <= upper, f"the {what}'s lower limit {lower:g} m is above its upper limit {upper:g} m")
    if hole[0] - shaft[1] >= -_ROUNDING:
        return Kind.CLEARANCE
    if shaft[0] - hole[1] >= -_ROUNDING:
        return Kind.INTERFERENCE
    return Kind.TRANSITION


@dataclass(frozen=True, slots=True)
class Fit:
    """A hole and a shaft of one nominal size: limits of size in m, lower before upper."""

    nominal: float
    hole: tuple[float, float]
    shaft: tuple[float, float]

    @property
    def kind(self) -> Kind:
        """Clearance, transition or interference."""
        return kind_of_fit(self.hole, self.shaft)

    @property
    def least_clearance(self) -> float:
        """In m; negative where there is interference."""
        return least_clearance(self.hole[0], self.shaft[1])

    @property
    def greatest_clearance(self) -> float:
        """In m; negative where there is interference."""
        return greatest_clearance(self.hole[1], self.shaft[0])

    @property
    def least_interference(self) -> float:
        """On the diameter, in m; negative where there is clearance."""
        return least_interference(self.shaft[0], self.hole[1])

    @property
    def greatest_interference(self) -> float:
        """On the diameter, in m; negative where there is clearance."""
        return greatest_interference(self.shaft[1], self.hole[0])


def fit(nominal: float, hole_class: str, shaft_class: str) -> Fit:
    """The fit of two tolerance classes at a nominal size in m, such as 0.025, "H7", "g6".

    NotKnown is raised for a class that ISO 286-1 does not give at that size, or when capitals and small
    letters do not say which is the hole and which the shaft.
    """
    if not hole_class[:1].isupper() or not shaft_class[:1].islower():
        raise NotKnown(
            f"{hole_class}/{shaft_class}: a hole is written in capitals and a shaft in small letters"
        )
    hole, shaft = deviations(nominal, hole_class), deviations(nominal, shaft_class)
    return Fit(nominal, (nominal + hole[0], nominal + hole[1]), (nominal + shaft[0], nominal + shaft[1]))


def choice(tolerance_class: str) -> str:
    """How far a class is a preferred one: "first", "second", or "" for a class outside the selection.

    Reference: ISO 1829:1975, taken over into ISO 286-1:2010 (from memory).

    >>> choice("H7"), choice("m6"), choice("H13")
    ('first', 'second', '')
    """
    found = [
        row["choice"]
        for row in rows("iso-1829-1975-preferred-classes.csv")
        if row["class"] == tolerance_class
    ]
    return found[0] if found else ""


def is_preferred_fit(hole_class: str, shaft_class: str) -> bool:
    """Whether ISO 286-1:2010 (from memory) recommends the fit, on the hole or on the shaft basis."""
    return (hole_class, shaft_class) in {
        (row["hole"], row["shaft"]) for row in rows("iso-286-1-2010-preferred-fits.csv")
    }


def name_of_fit(hole_class: str, shaft_class: str) -> str:
    """What one of the ten fits of ASME B4.2 (from memory) is for, such as "sliding"; "" for any other fit.

    >>> name_of_fit("H8", "f7"), name_of_fit("S7", "h6")
    ('close running', 'medium drive')
    """
    written = f"{hole_class}/{shaft_class}"
    table = rows("asme-b4.2-1978-preferred-fits.csv")
    found = [row["name"] for row in table if written in (row["hole basis"], row["shaft basis"])]
    return found[0] if found else ""


@formula("t_n = k t", cites=[FIRST_PRINCIPLES])
def share_of_size(k: Ratio, t: Metres) -> Metres:
    """Share of a size, or of the zone of a tolerance.

    t_n = k t

    ``k`` share; ``t`` size [m]. Returns [m].

    >>> round(share_of_size(k=0.85, t=0.0145) * 1e3, 6)
    12.325
    """
    return k * t


@formula("r = (D − d)/2", cites=[FIRST_PRINCIPLES])
def room_in_hole(D: Metres, d: Metres) -> Metres:
    """Movement of a part before its hole touches the stud or bolt that stands in the middle of it when cold.

    r = (D − d)/2

    ``D`` hole, ``d`` stud or bolt [m]. Returns [m], negative where it does not go in.

    >>> round(room_in_hole(D=0.026, d=0.024) * 1e3, 6)
    1.0
    """
    return (D - d) / 2
