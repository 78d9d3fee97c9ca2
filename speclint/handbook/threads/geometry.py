"""Diameters of a thread's basic profile, and the area that carries tension.

>>> stud = thread("M24")
>>> f"{stud.pitch_diameter * 1e3:.3f} {stud.minor_diameter * 1e3:.3f} {stud.root_diameter * 1e3:.3f}"
'22.051 20.752 20.319'
>>> round(stress_area("M24").nominal * 1e6, 1)  # 353 in ISO 898-1, to three figures
352.5
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from msgspec import Struct

from speclint.equations import Metres, Source, SquareMetres, formula
from speclint.errors import replace
from speclint.handbook.tables import Reading, number
from speclint.handbook.threads.designations import Designation, read

ISO_724 = Source(
    "ISO 724, ISO general-purpose metric screw threads: basic dimensions", "1993", "table 1", memory=True
)
ISO_898_1 = Source(
    "ISO 898-1, Mechanical properties of fasteners made of carbon steel and alloy steel, Part 1",
    "2013",
    memory=True,
)
ASME_B1_1 = Source("ASME B1.1, Unified inch screw threads", "2019", "basic profile", memory=True)
BS_84 = Source("BS 84, Parallel screw threads of Whitworth form", "1956", "basic profile", memory=True)
ISO_228_1 = Source(
    "ISO 228-1, Pipe threads where pressure-tight joints are not made on the threads", "2000", memory=True
)

ISO_273 = Source(
    "ISO 273, Fasteners - Clearance holes for bolts and screws", "1979", "clearance holes", memory=True
)
_TABLE = "clearance-holes-iso-273-1979.csv"
_MILLIMETRE = 1e-3


class _Form(Struct, frozen=True):
    """A profile: how far pitch, minor and root diameter lie below the major one, in pitches."""

    below_pitch: float
    below_minor: float
    below_root: float
    flank_angle: float
    source: Source


# Height of the 60° triangle over pitch: √3/2. ISO 68-1 takes 3/4 of it to the pitch diameter and 5/4 to the
# minor; the bolt's root lies another 1/6 deeper (ISO 898-1), in ASME B1.1 at 3/2 (section at minor diameter).
_H = math.sqrt(3) / 2
_ISO = _Form(0.75 * _H, 1.25 * _H, (1.25 + 1 / 6) * _H, math.radians(30), ISO_724)
_UNIFIED = _Form(0.75 * _H, 1.25 * _H, 1.5 * _H, math.radians(30), ASME_B1_1)
# Height of the 55° triangle over pitch, of which a sixth is rounded off at crest and root: depth 0.640327 p.
_DEPTH = 2 / 3 / (2 * math.tan(math.radians(27.5)))
_WHITWORTH = _Form(_DEPTH, 2 * _DEPTH, 2 * _DEPTH, math.radians(27.5), BS_84)
_PIPE = replace(_WHITWORTH, source=ISO_228_1)
_FORMS = {
    "metric coarse": _ISO, "metric fine": _ISO, "UNC": _UNIFIED, "UNF": _UNIFIED, "UN": _UNIFIED,
    "BSW": _WHITWORTH, "BSF": _WHITWORTH, "BSP": _PIPE,
}  # fmt: skip


@formula("A_s = π/4 ((d_2 + d_3)/2)²", cites=[ISO_898_1.at("clause 9.1.6.1"), ASME_B1_1.at("appendix B")])
def tensile_stress_area(d_2: Metres, d_3: Metres) -> SquareMetres:
    """Area that carries tension in a threaded bar: the circle between pitch and root diameter.

    d_2: basic pitch diameter, m. d_3: root diameter of the bolt, m. Returns m². ASME's π/4 (d - 0.9743 p)²
    is the same with its own root. For Whitworth threads the same mean is taken (common practice).

    Published check, ISO 898-1, M16: 157 mm²:

    >>> round(tensile_stress_area(14.701e-3, 13.546e-3) * 1e6)
    157
    """
    return math.pi / 4 * ((d_2 + d_3) / 2) ** 2


@formula("A_3 = π/4 d_3²", cites=[ISO_724])
def root_area(d_3: Metres) -> SquareMetres:
    """Area at the root of a bolt's thread.

    ``d_3`` root diameter [m]. Returns [m²].
    """
    return math.pi / 4 * d_3**2


@dataclass(frozen=True)
class Thread:
    """A thread and its basic profile, in m, m² and rad.

    ``nominal`` is the major diameter; ``minor_diameter`` that of the nut's basic profile;
    ``root_diameter`` that of the bolt (ISO 898-1: H/6 below the minor; ASME B1.1: section at 3/2 H;
    Whitworth: the minor); ``flank_angle`` half the angle of the thread; ``pipe_class`` as in Designation.
    """

    name: str
    series: str
    nominal: float
    pitch: float
    pitch_diameter: float
    minor_diameter: float
    root_diameter: float
    flank_angle: float
    source: Source
    designation: Designation

    @cached_property
    def stress_area(self) -> float:
        """Tensile stress area in m²."""
        return tensile_stress_area(self.pitch_diameter, self.root_diameter)

    @property
    def is_whitworth(self) -> bool:
        """Whether the thread angle is 55°: such a thread does not fit a 60° thread of the same pitch."""
        return self.series in ("BSW", "BSF", "BSP")


def thread(designation: str) -> Thread:
    """The thread of a designation such as "M24", "M24x2", "3/4-10 UNC", "7/8 BSW", "1 BSF", "G 1/2".

    NotKnown is raised for a designation, diameter, pitch or series that the standards do not list.
    Reference: ISO 261 and ISO 724, ASME B1.1, BS 84, ISO 228-1 (from memory).
    """
    found = read(designation)
    form, d, p = _FORMS[found.series], found.major_diameter, found.pitch
    return Thread(
        name=found.name,
        series=found.series,
        nominal=d,
        pitch=p,
        pitch_diameter=d - form.below_pitch * p,
        minor_diameter=d - form.below_minor * p,
        root_diameter=d - form.below_root * p,
        flank_angle=form.flank_angle,
        source=form.source,
        designation=found,
    )


def nominal_diameter(designation: str) -> Reading:
    """Nominal diameter of a thread, m; NotKnown as ``thread``."""
    found = thread(designation)
    return Reading.exact(f"nominal diameter of {found.name}", found.nominal, "m", found.source)


def stress_area(designation: str) -> Reading:
    """Tensile stress area of a thread, unrounded; NotKnown as ``thread``."""
    found = thread(designation)
    return Reading.exact(f"stress area of {found.name}", found.stress_area, "m²", _source(found))


def _source(found: Thread) -> Source:
    if found.series.startswith("metric"):
        return ISO_898_1
    if found.is_whitworth:
        return found.source.at("basic profile; mean of pitch and minor diameter is common practice")
    return found.source


def clearance_hole(designation: str, series: Literal["fine", "medium", "coarse"]) -> Reading:
    """Basic diameter of a clearance hole, m, for a metric thread in a series of ISO 273.

    NotKnown for a thread that the handbook does not hold, or whose diameter ISO 273 does not list here.

    >>> [round(clearance_hole("M30", one).nominal * 1e3, 6) for one in ("fine", "medium", "coarse")]
    [31.0, 33.0, 35.0]
    """
    found = thread(designation)
    what = f"clearance hole for {found.name}, {series}"
    across = number(_TABLE, "thread_mm", f"{found.nominal / _MILLIMETRE:g}", f"{series}_mm", what)
    return Reading.exact(what, across * _MILLIMETRE, "m", ISO_273)
