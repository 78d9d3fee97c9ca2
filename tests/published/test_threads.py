"""Threads, property classes and wire gauge against published rows and independent libraries.

Each list names its source and how its rows were obtained. Inch figures are compared in inches, metric ones
in millimetres, as printed.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction
from itertools import pairwise

import pytest
from fluids.piping import t_from_gauge

from speclint.errors import NotKnown
from speclint.handbook.springs.wire_gauge import wire_diameter
from speclint.handbook.tables.csv_files import entries, rows
from speclint.handbook.threads import (
    clearance_hole,
    external_stripping_area,
    internal_stripping_area,
    limits,
    root_area,
    stress_area,
    thread,
)
from speclint.handbook.threads.property_classes import property_class
from tests.published.proof import proves

INCH = 0.0254
SQUARE_INCH = INCH**2

# --- tensile stress areas ---

STRESS_AREAS_MM2 = [
    # University of Stavanger, table of standard metric bolt dimensions: seen
    ("M16", 156.67, 0.0001),
    ("M24", 352.5, 0.0001),
    ("M36", 816.72, 0.0001),
    # a library's unit tests after Shigley, table 8-1: seen
    ("M10", 57.98960, 1e-6),
    # U. C. Jindal, Machine Design, Ex. 9-1, as printed by a companion notebook: seen
    ("M16", 156.7, 0.0005),
    ("M16x1.5", 167.2, 0.0005),
    # ISO 898-1:2013, Tables 4 to 7, to three figures: memory
    *(
        (name, area, 0.005)
        for name, area in [
            ("M3", 5.03), ("M3.5", 6.78), ("M4", 8.78), ("M5", 14.2), ("M6", 20.1), ("M7", 28.9),
            ("M8", 36.6), ("M10", 58.0), ("M12", 84.3), ("M14", 115), ("M16", 157), ("M18", 192), ("M20", 245),
            ("M22", 303), ("M24", 353), ("M27", 459), ("M30", 561), ("M33", 694), ("M36", 817), ("M39", 976),
            ("M8x1", 39.2), ("M10x1.25", 61.2), ("M10x1", 64.5), ("M12x1.5", 88.1), ("M12x1.25", 92.1),
            ("M14x1.5", 125), ("M18x1.5", 216), ("M20x1.5", 272), ("M22x1.5", 333), ("M24x2", 384),
            ("M27x2", 496), ("M30x2", 621), ("M33x2", 761), ("M36x3", 865), ("M39x3", 1030),
        ]
    ),
    # Machinery's Handbook, coarse threads above M39: memory
    *((name, area, 0.001) for name, area in [("M42", 1121), ("M48", 1473), ("M56", 2030), ("M64", 2676)]),
]  # fmt: skip

STRESS_AREAS_IN2 = [
    # Table of bolt root and tensile stress areas in the manner of ASME PCC-1: seen
    ("1/2 UNC", 0.1419, 0.0005),
    ("3/4 UNC", 0.3345, 0.0005),
    # UNF thread data table: seen
    ("3/4-16 UNF", 0.373, 0.001),
    # screw-thread-lib 0.0.6, FED-STD-H28/2B formula (1b): library
    ("No. 10-24 UNC", 0.01753, 0.0003),
    ("No. 10-32 UNF", 0.01999, 0.0003),
    ("1/4-28 UNF", 0.03637, 0.0002),
    ("1/2-20 UNF", 0.15995, 0.0001),
    ("1-12 UNF", 0.66304, 0.0001),
    ("1-8 UNC", 0.60575, 0.0001),
    # ASME B1.1 tables, to three figures: memory
    *(
        (f"{size} {series}", area, 0.004)
        for series, areas in [
            ("UNC", [("No. 1", 0.00263), ("No. 2", 0.00370), ("No. 3", 0.00487), ("No. 4", 0.00604),
                     ("No. 5", 0.00796), ("No. 6", 0.00909), ("No. 8", 0.0140), ("No. 12", 0.0242),
                     ("1/4", 0.0318), ("5/16", 0.0524), ("3/8", 0.0775), ("7/16", 0.1063), ("9/16", 0.182),
                     ("5/8", 0.226), ("7/8", 0.462), ("1 1/8", 0.763), ("1 1/4", 0.969), ("1 3/8", 1.155),
                     ("1 1/2", 1.405), ("1 3/4", 1.90), ("2-4 1/2", 2.50), ("2 1/4", 3.25), ("2 1/2", 4.00),
                     ("2 3/4", 4.93), ("3", 5.97), ("3 1/4", 7.10), ("3 1/2", 8.33), ("3 3/4", 9.66),
                     ("4-4", 11.08)]),
            ("UNF", [("No. 0", 0.00180), ("No. 1", 0.00278), ("No. 2", 0.00394), ("No. 3", 0.00523),
                     ("No. 4", 0.00661), ("No. 5", 0.00830), ("No. 6", 0.01015), ("No. 8", 0.01474),
                     ("No. 12", 0.0258), ("5/16", 0.0580), ("3/8", 0.0878), ("7/16", 0.1187), ("9/16", 0.203),
                     ("5/8", 0.256), ("7/8", 0.509), ("1 1/8", 0.856), ("1 1/4", 1.073), ("1 3/8", 1.315),
                     ("1 1/2", 1.581)]),
            ("UN", [("1 1/8", 0.790), ("1 1/4", 1.000), ("1 3/8", 1.233), ("1 1/2", 1.492), ("1 5/8", 1.78),
                    ("1 3/4", 2.08), ("1 7/8", 2.41), ("2", 2.77), ("2 1/4", 3.56), ("2 1/2", 4.44),
                    ("2 3/4", 5.43), ("3", 6.51), ("3 1/4", 7.69), ("3 1/2", 8.96), ("3 3/4", 10.34),
                    ("4", 11.81)]),
        ]
        for size, area in areas
    ),
]  # fmt: skip


@proves(
    "threads.geometry",
    "threads.designations",
    seen=[
        "University of Stavanger, table of standard metric bolt dimensions",
        "U. C. Jindal, Machine Design",
    ],
    memory=["ISO 898-1:2013", "Machinery's Handbook"],
)
@pytest.mark.parametrize(("name", "area", "tolerance"), STRESS_AREAS_MM2)
def test_stress_area_of_metric_threads(name: str, area: float, tolerance: float) -> None:
    assert stress_area(name).nominal * 1e6 == pytest.approx(area, rel=tolerance)


@proves(
    "threads.geometry",
    "threads.designations",
    seen=["ASME PCC-1, table of bolt root and tensile stress areas"],
    library="screw-thread-lib",
    memory="ASME B1.1",
)
@pytest.mark.parametrize(("name", "area", "tolerance"), STRESS_AREAS_IN2)
def test_stress_area_of_unified_threads(name: str, area: float, tolerance: float) -> None:
    assert stress_area(name).nominal / SQUARE_INCH == pytest.approx(area, rel=tolerance)


# --- root areas ---


@proves(
    "threads.geometry",
    "threads.designations",
    seen="University of Stavanger, table of standard metric bolt dimensions",
)
@pytest.mark.parametrize(
    ("name", "area"),
    [("M10", 52.29232), ("M12", 76.247), ("M16", 144.12), ("M20", 225.19), ("M30", 518.99), ("M36", 759.28)],
)
def test_root_area_of_metric_threads(name: str, area: float) -> None:
    """University of Stavanger, table of standard metric bolt dimensions: seen."""
    assert root_area(thread(name).root_diameter) * 1e6 == pytest.approx(area, rel=1e-4)


@proves(
    "threads.geometry",
    "threads.designations",
    seen=["ASME PCC-1, table of bolt root and tensile stress areas", "UNF thread data, public table"],
)
@pytest.mark.parametrize(("name", "area"), [("1/2 UNC", 0.1257), ("3/4 UNC", 0.3019), ("3/4 UNF", 0.351)])
def test_root_area_of_unified_threads(name: str, area: float) -> None:
    """Table of bolt root and tensile stress areas, and UNF thread data table: seen."""
    assert root_area(thread(name).root_diameter) / SQUARE_INCH == pytest.approx(area, rel=1.5e-3)


# --- basic diameters ---

CORE_OF_WHITWORTH = [
    # BSW thread geometry table of a fastener maker: seen
    ("7/8 BSW", 0.7327),
    ("1 BSW", 0.8400),
    ("1 1/4 BSW", 1.0671),
    # Whitworth depth 0.640327 p with a table of threads per inch, both seen; the diameters: derived
    ("1/2 BSF", 0.4200),
    ("7/8 BSF", 0.7586),
    # BS 84 tables of basic dimensions: memory
    ("1/4 BSW", 0.1860),
    ("5/16 BSW", 0.2414),
    ("3/8 BSW", 0.2950),
    ("7/16 BSW", 0.3461),
    ("1/2 BSW", 0.3933),
    ("5/8 BSW", 0.5086),
    ("3/4 BSW", 0.6219),
    ("1 1/8 BSW", 0.9420),
    ("1 1/2 BSW", 1.2866),
    ("1 3/4 BSW", 1.4939),
    ("2 BSW", 1.7154),
    ("1/4 BSF", 0.2007),
    ("5/16 BSF", 0.2543),
    ("3/8 BSF", 0.3110),
    ("5/8 BSF", 0.5335),
    ("3/4 BSF", 0.6433),
    ("1 BSF", 0.8719),
    ("1 1/4 BSF", 1.1077),
    ("1 1/2 BSF", 1.3399),
    # BS 84 list of threads per inch: memory; d - 1.280654/n worked by hand: derived
    *(
        (f"{size} {series}", core)
        for series, cores in [
            ("BSW", [("1/8", 0.0930), ("3/16", 0.1341), ("9/16", 0.4558), ("11/16", 0.5711),
                     ("2 1/4", 1.9298), ("2 1/2", 2.1798), ("2 3/4", 2.3841), ("3", 2.6341), ("3 1/4", 2.8560),
                     ("3 1/2", 3.1060), ("3 3/4", 3.3231), ("4", 3.5731), ("4 1/2", 4.0546), ("5", 4.5343),
                     ("5 1/2", 5.0121), ("6", 5.4877)]),
            ("BSF", [("3/16", 0.1475), ("7/32", 0.1730), ("9/32", 0.2320), ("7/16", 0.3664), ("9/16", 0.4825),
                     ("11/16", 0.5960), ("13/16", 0.7058), ("1 1/8", 0.9827), ("1 3/8", 1.2149),
                     ("1 5/8", 1.4649), ("1 3/4", 1.5670), ("2", 1.8170), ("2 1/4", 2.0366), ("2 1/2", 2.2866),
                     ("2 3/4", 2.5366), ("3", 2.7439), ("3 1/4", 2.9939), ("3 1/2", 3.2154), ("3 3/4", 3.4654),
                     ("4", 3.7154), ("4 1/4", 3.9298)]),
        ]
        for size, core in cores
    ),
]  # fmt: skip


@proves(
    "threads.geometry",
    "threads.designations",
    seen="BSW thread geometry, table of a fastener maker",
    memory="BS 84",
    derived="hand working",
)
@pytest.mark.parametrize(("name", "core"), CORE_OF_WHITWORTH)
def test_core_diameter_of_whitworth_threads(name: str, core: float) -> None:
    found = thread(name)
    assert found.root_diameter / INCH == pytest.approx(core, abs=1.1e-4)
    assert found.minor_diameter == found.root_diameter


@proves("threads.geometry", "threads.designations", memory="BS 84")
@pytest.mark.parametrize(
    ("name", "effective"),
    [("1/4 BSW", 0.2180), ("1/2 BSW", 0.4466), ("3/4 BSW", 0.6860), ("1 BSW", 0.9200), ("1 1/2 BSW", 1.3933),
     ("2 BSW", 1.8577)],
)  # fmt: skip
def test_effective_diameter_of_whitworth_threads(name: str, effective: float) -> None:
    """BS 84 tables of basic dimensions: memory."""
    assert thread(name).pitch_diameter / INCH == pytest.approx(effective, abs=1e-4)


@proves("threads.geometry", "threads.designations", memory="ISO 724:1993")
@pytest.mark.parametrize(
    ("name", "pitch_diameter", "minor_diameter"),
    [
        ("M6", 5.350, 4.917), ("M8", 7.188, 6.647), ("M10", 9.026, 8.376), ("M12", 10.863, 10.106),
        ("M16", 14.701, 13.835), ("M20", 18.376, 17.294), ("M24", 22.051, 20.752), ("M30", 27.727, 26.211),
        ("M36", 33.402, 31.670), ("M42", 39.077, 37.129), ("M48", 44.752, 42.587), ("M56", 52.428, 50.046),
        ("M64", 60.103, 57.505), ("M24x2", 22.701, 21.835), ("M36x3", 34.051, 32.752),
        ("M16x1.5", 15.026, 14.376),
    ],
)  # fmt: skip
def test_basic_dimensions_of_metric_threads(name: str, pitch_diameter: float, minor_diameter: float) -> None:
    """ISO 724:1993, Table 1, mm to three places: memory."""
    found = thread(name)
    assert found.pitch_diameter * 1e3 == pytest.approx(pitch_diameter, abs=6e-4)
    assert found.minor_diameter * 1e3 == pytest.approx(minor_diameter, abs=6e-4)


@proves("threads.geometry", "threads.designations", memory="ISO 228-1:2000")
@pytest.mark.parametrize(
    ("name", "pitch_diameter", "minor_diameter"),
    [
        ("G 1/16", 7.142, 6.561), ("G 1/8", 9.147, 8.566), ("G 1/4", 12.301, 11.445), ("G 3/8", 15.806, 14.950),
        ("G 1/2", 19.793, 18.631), ("G 5/8", 21.749, 20.587), ("G 3/4", 25.279, 24.117), ("G 7/8", 29.039, 27.877),
        ("G 1", 31.770, 30.291), ("G 1 1/8", 36.418, 34.939), ("G 1 1/4", 40.431, 38.952),
        ("G 1 1/2", 46.324, 44.845), ("G 1 3/4", 52.267, 50.788), ("G 2", 58.135, 56.656),
        ("G 2 1/4", 64.231, 62.752), ("G 2 1/2", 73.705, 72.226), ("G 2 3/4", 80.055, 78.576),
        ("G 3", 86.405, 84.926), ("G 3 1/2", 98.851, 97.372), ("G 4", 111.551, 110.072),
        ("G 4 1/2", 124.251, 122.772), ("G 5", 136.951, 135.472), ("G 5 1/2", 149.651, 148.172),
        ("G 6", 162.351, 160.872),
    ],
)  # fmt: skip
def test_basic_dimensions_of_pipe_threads(name: str, pitch_diameter: float, minor_diameter: float) -> None:
    """ISO 228-1:2000, Table 1, mm to three places: memory."""
    found = thread(name)
    assert found.pitch_diameter * 1e3 == pytest.approx(pitch_diameter, abs=1.1e-3)
    assert found.minor_diameter * 1e3 == pytest.approx(minor_diameter, abs=1.1e-3)


# --- limits of size: bolt major, bolt pitch, nut minor, nut pitch, each least and greatest ---

# ASME B1.1-2019, Table 2, 2A and 2B, inches, as carried by screw-thread-lib 0.0.6: library
UNIFIED_2A_2B = [
    ("No. 10-24 UNC", (0.1818, 0.1890, 0.1586, 0.1619, 0.145, 0.155, 0.1629, 0.1672)),
    ("No. 10-32 UNF", (0.1831, 0.1891, 0.1658, 0.1688, 0.156, 0.164, 0.1697, 0.1736)),
    ("1/4-20 UNC", (0.2408, 0.2489, 0.2127, 0.2164, 0.196, 0.207, 0.2175, 0.2224)),
    ("1/4-28 UNF", (0.2425, 0.2490, 0.2225, 0.2258, 0.211, 0.220, 0.2268, 0.2311)),
    ("1/2-13 UNC", (0.4876, 0.4985, 0.4435, 0.4485, 0.417, 0.434, 0.4500, 0.4565)),
    ("1/2-20 UNF", (0.4906, 0.4987, 0.4619, 0.4662, 0.446, 0.457, 0.4675, 0.4731)),
    ("3/4-10 UNC", (0.7353, 0.7482, 0.6773, 0.6832, 0.642, 0.663, 0.6850, 0.6927)),
    ("3/4-16 UNF", (0.7391, 0.7485, 0.7029, 0.7079, 0.682, 0.696, 0.7094, 0.7159)),
    ("1-8 UNC", (0.9830, 0.9980, 0.9101, 0.9168, 0.865, 0.890, 0.9188, 0.9276)),
    ("1-12 UNF", (0.9868, 0.9982, 0.9382, 0.9441, 0.910, 0.928, 0.9459, 0.9535)),
]

# ISO 965-2:1998, limits of 6g and 6H, mm: memory. M8, M20 and M24 agree with ASME B1.13M-2005, appendix, as
# carried by screw-thread-lib 0.0.6; so does M12 but for its least bolt pitch diameter (there 10.674 mm).
METRIC_6G_6H = [
    ("M6", (5.794, 5.974, 5.212, 5.324, 4.917, 5.153, 5.350, 5.500)),
    ("M8", (7.760, 7.972, 7.042, 7.160, 6.647, 6.912, 7.188, 7.348)),
    ("M10", (9.732, 9.968, 8.862, 8.994, 8.376, 8.676, 9.026, 9.206)),
    ("M12", (11.701, 11.966, 10.679, 10.829, 10.106, 10.441, 10.863, 11.063)),
    ("M16", (15.682, 15.962, 14.503, 14.663, 13.835, 14.210, 14.701, 14.913)),
    ("M20", (19.623, 19.958, 18.164, 18.334, 17.294, 17.744, 18.376, 18.600)),
    ("M24", (23.577, 23.952, 21.803, 22.003, 20.752, 21.252, 22.051, 22.316)),
    ("M30", (29.522, 29.947, 27.462, 27.674, 26.211, 26.771, 27.727, 28.007)),
    ("M36", (35.465, 35.940, 33.118, 33.342, 31.670, 32.270, 33.402, 33.702)),
]

# ISO 228-1:2000, Table 1, mm, class stated: memory
PIPE = [
    ("G 1/8 A", (9.514, 9.728, 9.040, 9.147, 8.566, 8.848, 9.147, 9.254)),
    ("G 1/2 A", (20.671, 20.955, 19.651, 19.793, 18.631, 19.172, 19.793, 19.935)),
    ("G 1/2 B", (20.671, 20.955, 19.509, 19.793, 18.631, 19.172, 19.793, 19.935)),
    ("G 1 A", (32.889, 33.249, 31.590, 31.770, 30.291, 30.931, 31.770, 31.950)),
    ("G 3 B", (87.450, 87.884, 85.971, 86.405, 84.926, 85.566, 86.405, 86.622)),
]


def limits_in(unit: float, name: str) -> list[float]:
    found = limits(name)
    pairs = (found.bolt_major, found.bolt_pitch, found.nut_minor, found.nut_pitch)
    return [end / unit for pair in pairs for end in pair]


@proves("threads.limits", library="screw-thread-lib, ASME B1.1-2019, Table 2")
@pytest.mark.parametrize(("name", "printed"), UNIFIED_2A_2B)
def test_limits_of_unified_threads(name: str, printed: tuple[float, ...]) -> None:
    """Within one in the last printed place: the standard rounds tolerance and allowance before it adds."""
    assert limits_in(INCH, name) == pytest.approx(printed, abs=1.1e-4)


@proves("threads.limits", memory=["ISO 965-2:1998", "ISO 228-1:2000"], library="screw-thread-lib")
@pytest.mark.parametrize(("name", "printed"), METRIC_6G_6H + PIPE)
def test_limits_of_metric_and_pipe_threads(name: str, printed: tuple[float, ...]) -> None:
    assert limits_in(1e-3, name) == pytest.approx(printed, abs=1.6e-3)


@proves("threads.limits", memory="BS 84")
def test_limits_of_a_whitworth_thread_worked_by_hand() -> None:
    """1 BSW, medium class, BS 84 formulae (memory), p = 1/8 in, L = D = 1 in.

    T = 0.002 + 0.003 + 0.005 √0.125 = 0.006768 in, no allowance above 3/4 in.
    Bolt: effective 0.9200 less T = 0.9132; major 1 less T less 0.01 √0.125 (0.003536) = 0.9897.
    Nut: effective 0.9200 + T = 0.9267 (0.919959 + 0.006768); minor 0.8399 to 0.8399 + 0.025 + 0.007 = 0.8719.
    """
    assert limits_in(INCH, "1 BSW") == pytest.approx(
        [0.9897, 1.0, 0.9132, 0.9200, 0.8399, 0.8719, 0.9200, 0.9267], abs=6e-5
    )


@proves("threads.limits", memory="BS 84")
def test_limits_of_a_small_whitworth_thread_have_an_allowance() -> None:
    """1/2 BSW, medium class, BS 84 formulae (memory), p = 1/12 in, L = D = 0.5 in.

    T = 0.002 ∛0.5 + 0.003 √0.5 + 0.005 √(1/12) = 0.0015874 + 0.0021213 + 0.0014434
    = 0.0051521 in; allowance 0.3 T = 0.0015456 in.
    Bolt: major 0.5 - 0.0015456 = 0.4985, less T and 0.01 √(1/12) (0.0028868) = 0.4904; effective
    0.4466395 - 0.0015456 = 0.4451, less T = 0.4399.
    Nut: effective to 0.4518; minor 0.3933 + 1/60 + 0.007 = 0.4169.
    """
    assert limits_in(INCH, "1/2 BSW") == pytest.approx(
        [0.4904, 0.4985, 0.4399, 0.4451, 0.3933, 0.4169, 0.4466, 0.4518], abs=6e-5
    )


# --- the formulae of ISO 965-1:1998, clause 13 (memory); its tables are rounded from them to the R 40 series ---


METRIC_SIZES = [1.6, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 24, 27, 30, 33, 36, 39, 42, 48, 56, 64]


@proves("threads.limits", memory="ISO 965-1:1998, clause 13")
@pytest.mark.parametrize("size", METRIC_SIZES)
def test_metric_tolerances_follow_their_formulae(size: float) -> None:
    name = f"M{size:g}"
    t, at = thread(name), limits(name)
    P, d = t.pitch * 1e3, t.nominal * 1e3
    bands = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90]
    over = max(bound for bound in bands if bound < d)
    mean = math.sqrt(over * bands[bands.index(over) + 1])
    bolt_pitch = 90 * P**0.4 * mean**0.1
    minor = 230 * P**0.7 if P >= 1 else 433 * P - 190 * P**1.22
    for (least, greatest), expected in (
        (at.bolt_pitch, bolt_pitch),
        (at.nut_pitch, 1.32 * bolt_pitch),
        (at.bolt_major, 180 * P ** (2 / 3) - 3.15 / math.sqrt(P)),
        (at.nut_minor, minor),
    ):
        assert (greatest - least) * 1e6 == pytest.approx(expected, rel=0.055)
    assert (t.nominal - at.bolt_major[1]) * 1e6 == pytest.approx(15 + 11 * P, rel=0.04)


R40 = [100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315, 335,
       355, 375, 400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850, 900, 950, 1000]  # fmt: skip
PREFERRED = {*R40, *(63, 67, 71, 75, 80, 85, 90, 95), 56}  # R 40 of the decade below, as the tables round it


@proves("threads.limits", memory=["ISO 965-1:1998, clause 13", "ISO 3, R 40 series"])
@pytest.mark.parametrize("row", rows("iso-965-1-1998-pitch-diameter-tolerances.csv"), ids=str)
def test_tolerances_of_pitch_diameters_are_preferred_numbers_near_their_formula(
    row: Mapping[str, str],
) -> None:
    bolt, nut = float(row["external"]), float(row["internal"])
    expected = 90 * float(row["pitch"]) ** 0.4 * math.sqrt(float(row["over"]) * float(row["to"])) ** 0.1
    assert {bolt, nut} <= PREFERRED
    assert bolt == pytest.approx(expected, rel=0.045)
    assert nut == pytest.approx(1.32 * expected, rel=0.055)


@proves("threads.limits", memory=["ISO 965-1:1998, clause 13", "ISO 3, R 40 series"])
@pytest.mark.parametrize("row", rows("iso-965-1-1998-tolerances-by-pitch.csv"), ids=str)
def test_tolerances_by_pitch_are_preferred_numbers_near_their_formulae(row: Mapping[str, str]) -> None:
    P, below, major = (float(row[column]) for column in ("pitch", "es g", "major diameter external"))
    minor = 230 * P**0.7 if P >= 1 else 433 * P - 190 * P**1.22
    assert below == pytest.approx(15 + 11 * P, rel=0.03, abs=1.3)
    assert major in PREFERRED
    assert major == pytest.approx(180 * P ** (2 / 3) - 3.15 / math.sqrt(P), rel=0.055)
    if P >= 0.3:
        assert float(row["minor diameter internal"]) in PREFERRED
        assert float(row["minor diameter internal"]) == pytest.approx(minor, rel=0.045)


# ISO 965-1:1998: bands of diameter, Tables 5 and 6, mm; deviation es of position g by pitch, Table 1, µm: memory
ISO_965_BANDS = [1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355]
ISO_965_ES_G = {
    0.2: 17, 0.25: 18, 0.3: 18, 0.35: 19, 0.4: 19, 0.45: 20, 0.5: 20, 0.6: 21, 0.7: 22, 0.75: 22, 0.8: 24, 1: 26,
    1.25: 28, 1.5: 32, 1.75: 34, 2: 38, 2.5: 42, 3: 48, 3.5: 53, 4: 60, 4.5: 63, 5: 71, 5.5: 75, 6: 80, 8: 100,
}  # fmt: skip


@proves("threads.limits", memory="ISO 965-1:1998, Tables 1, 5 and 6")
def test_bands_pitches_and_deviations_are_those_of_the_standard() -> None:
    bands = [
        (float(row["over"]), float(row["to"])) for row in rows("iso-965-1-1998-pitch-diameter-tolerances.csv")
    ]
    assert set(bands) <= set(pairwise(ISO_965_BANDS))
    assert bands == sorted(bands)
    pitches = {float(row["pitch"]) for row in rows("iso-965-1-1998-pitch-diameter-tolerances.csv")}
    assert pitches <= set(ISO_965_ES_G)
    deviations = {
        float(row["pitch"]): float(row["es g"]) for row in rows("iso-965-1-1998-tolerances-by-pitch.csv")
    }
    assert deviations == {pitch: es for pitch, es in ISO_965_ES_G.items() if pitch in deviations}


@proves("threads.limits", memory="ISO 228-1:2000")
@pytest.mark.parametrize("row", rows("iso-228-1-2000-pipe-threads.csv"), ids=lambda row: row["size"])
def test_tolerances_of_pipe_threads_go_by_pitch(row: Mapping[str, str]) -> None:
    """ISO 228-1:2000, Table 1, µm: memory. Above size 2 the pitch and major diameters have a wider one."""
    small = {"28": (107, 282, 214), "19": (125, 445, 250), "14": (142, 541, 284), "11": (180, 640, 360)}
    large = float(row["major diameter"]) > 59.614
    expected = (217, 640, 434) if large else small[row["threads per inch"]]
    assert tuple(int(row[f"{what} diameter tolerance"]) for what in ("pitch", "minor", "major")) == expected


# --- pitches and sizes ---

FINE_PITCHES = {0.2, 0.25, 0.35, 0.5, 0.75, 1, 1.25, 1.5, 2, 3, 4, 6, 8}  # ISO 261:1998, Table 2: memory


@proves("threads.designations", memory="ISO 261:1998, Table 2")
@pytest.mark.parametrize("size", dict.fromkeys(entries("iso-261-1998-metric-threads.csv", "diameter")))
def test_fine_pitches_are_those_of_the_standard_and_finer_than_the_coarse(size: str) -> None:
    listed = [row for row in rows("iso-261-1998-metric-threads.csv") if row["diameter"] == size]
    coarse = [float(row["pitch"]) for row in listed if row["series"] == "metric coarse"]
    fine = [float(row["pitch"]) for row in listed if row["series"] == "metric fine"]
    assert set(fine) <= FINE_PITCHES
    assert fine == sorted(set(fine), reverse=True)
    assert all(pitch < coarse[0] for pitch in fine if coarse)


# ISO 261:1998, Table 2, all three choices to 150 mm, and the pitches of the coarse series: memory
ISO_261_DIAMETERS = {
    *(
        1,
        1.1,
        1.2,
        1.4,
        1.6,
        1.8,
        2,
        2.2,
        2.5,
        3,
        3.5,
        4,
        4.5,
        5,
        5.5,
        6,
        7,
        8,
        9,
        10,
        11,
        12,
        14,
        15,
        16,
        17,
        18,
        20,
    ),
    *(
        22,
        24,
        25,
        26,
        27,
        28,
        30,
        32,
        33,
        35,
        36,
        38,
        39,
        40,
        42,
        45,
        48,
        50,
        52,
        55,
        56,
        58,
        60,
        62,
        64,
        65,
        68,
        70,
    ),
    *(72, 75, 76, 78, 80, 82, 85, 90, 95, 100, 105, 110, 115, 120, 125, 130, 135, 140, 145, 150),
}
ISO_261_COARSE = {
    1: 0.25, 1.1: 0.25, 1.2: 0.25, 1.4: 0.3, 1.6: 0.35, 1.8: 0.35, 2: 0.4, 2.2: 0.45, 2.5: 0.45, 3: 0.5, 3.5: 0.6,
    4: 0.7, 4.5: 0.75, 5: 0.8, 6: 1, 7: 1, 8: 1.25, 9: 1.25, 10: 1.5, 11: 1.5, 12: 1.75, 14: 2, 16: 2, 18: 2.5,
    20: 2.5, 22: 2.5, 24: 3, 27: 3, 30: 3.5, 33: 3.5, 36: 4, 39: 4, 42: 4.5, 45: 4.5, 48: 5, 52: 5, 56: 5.5, 60: 5.5,
    64: 6, 68: 6,
}  # fmt: skip


@proves("threads.designations", memory="ISO 261:1998, Table 2")
def test_diameters_are_those_of_the_general_plan() -> None:
    table = rows("iso-261-1998-metric-threads.csv")
    assert {float(row["diameter"]) for row in table} == ISO_261_DIAMETERS
    coarse = {
        float(row["diameter"]): float(row["pitch"]) for row in table if row["series"] == "metric coarse"
    }
    assert coarse == ISO_261_COARSE


@proves("threads.designations", memory="ASME B1.1")
@pytest.mark.parametrize("table", ["asme-b1.1-2019-unified-threads.csv", "bs-84-1956-whitworth-threads.csv"])
def test_inch_diameters_are_what_their_size_says(table: str) -> None:
    """Fractions of an inch; number sizes are 0.060 in and 0.013 in more for each number (ASME B1.1: memory)."""
    for row in rows(table):
        size = row["size"]
        if size.startswith("No. "):
            expected = Fraction(60 + 13 * int(size.removeprefix("No. ")), 1000)
        else:
            expected = sum((Fraction(part) for part in size.split()), Fraction(0))
        assert float(row["diameter"]) == float(expected), size


# --- stripping areas at worst limits, per inch of engagement, FED-STD-H28/2B formulae (2a) and (4a) ---

STRIPPING_IN2 = [
    # name, bolt's thread, nut's thread; screw-thread-lib 0.0.6: library
    ("No. 10-24 UNC", 0.2678, 0.4011),
    ("No. 10-32 UNF", 0.2747, 0.3886),
    ("1/4-20 UNC", 0.3680, 0.5390),
    ("1/4-28 UNF", 0.3735, 0.5213),
    ("1/2-13 UNC", 0.7789, 1.1235),
    ("1/2-20 UNF", 0.7991, 1.0821),
    ("3/4-10 UNC", 1.2134, 1.7232),
    ("3/4-16 UNF", 1.2326, 1.6586),
    ("1-8 UNC", 1.6576, 2.3343),
    ("1-12 UNF", 1.6637, 2.2653),
    ("M8", 0.4787, 0.6625),
    ("M12", 0.7449, 1.0283),
    ("M20", 1.3103, 1.7870),
    ("M24", 1.5931, 2.1658),
]


@proves("threads.engagement", library="screw-thread-lib")
@pytest.mark.parametrize(("name", "bolt", "nut"), STRIPPING_IN2)
def test_stripping_areas(name: str, bolt: float, nut: float) -> None:
    """Within 0.4 %: one in the last place of an ASME limit moves the area by as much."""
    assert external_stripping_area(name, INCH).low / SQUARE_INCH == pytest.approx(bolt, rel=0.004)
    assert internal_stripping_area(name, INCH).low / SQUARE_INCH == pytest.approx(nut, rel=0.004)


@proves("threads.engagement", memory="FED-STD-H28/2B", derived="hand working")
@pytest.mark.parametrize("name", ["M8", "M20", "M24x2", "1/2 UNC", "1-12 UNF"])
def test_stripping_areas_of_the_basic_profile(name: str) -> None:
    """Bolt 3/4 π D_1 L: FED-STD-H28/2B, formula (6b). Nut 7/8 π d L: by hand from the 60° profile."""
    t, L = thread(name), 10e-3
    assert external_stripping_area(name, L).nominal == pytest.approx(0.75 * math.pi * t.minor_diameter * L)
    assert internal_stripping_area(name, L).nominal == pytest.approx(0.875 * math.pi * t.nominal * L)


# --- property classes ---

LOADS = [
    # name, class, breaking load, proof load (N); EN ISO 898-1 tables as reproduced: breaking load seen
    ("M20", "8.8", 203_000, None),
    ("M24", "8.8", 293_000, None),
    ("M16", "10.9", 163_000, None),
    ("M30", "5.6", 280_000, None),
    # ISO 898-1:2013, Tables 4 to 7: memory
    ("M8", "8.8", 29_200, 21_200),
    ("M10", "8.8", 46_400, 33_700),
    ("M12", "8.8", 67_400, 48_900),
    ("M16", "8.8", 125_000, 91_000),
    ("M20", "8.8", 203_000, 147_000),
    ("M24", "8.8", 293_000, 212_000),
    ("M30", "8.8", 466_000, 337_000),
    ("M12", "10.9", 87_700, 70_000),
    ("M20", "10.9", 255_000, 203_000),
    ("M24", "10.9", 367_000, 293_000),
    ("M16", "12.9", 192_000, 152_000),
    ("M20", "12.9", 299_000, 238_000),
    ("M16", "4.6", 62_800, 35_300),
    ("M24", "5.6", 176_000, 98_800),
    ("M16", "5.8", 81_600, 59_700),
    ("M20", "6.8", 147_000, 108_000),
    ("M10", "9.8", 52_200, 37_700),
]


@proves("threads.property_classes", seen="EN ISO 898-1", memory="ISO 898-1:2013")
@pytest.mark.parametrize(("name", "class_name", "breaking", "proof"), LOADS)
def test_breaking_and_proof_loads(name: str, class_name: str, breaking: float, proof: float | None) -> None:
    t = thread(name)
    found = property_class(class_name, t.nominal)
    assert found.tensile_strength * t.stress_area == pytest.approx(breaking, rel=0.005)
    if proof is not None:
        assert found.proof_stress * t.stress_area == pytest.approx(proof, rel=0.005)


@proves("threads.property_classes", memory=["ISO 898-1:2013, Table 3", "ISO 3506-1:2009, Tables 2 and 3"])
@pytest.mark.parametrize(
    ("name", "strength", "stress_at_yield", "hardness"),
    [
        # ISO 898-1:2013, Table 3, for 20 mm, MPa and HV: memory
        ("4.6", 400, 240, 120), ("4.8", 420, 340, 130), ("5.6", 500, 300, 155), ("5.8", 520, 420, 160),
        ("6.8", 600, 480, 190), ("8.8", 830, 660, 255), ("10.9", 1040, 940, 320), ("12.9", 1220, 1100, 385),
        # ISO 3506-1:2009, Tables 2 and 3: memory
        *(
            (f"A{grade}-{number}", 10 * number, at_yield, None)
            for grade in range(1, 6)
            for number, at_yield in ((50, 210), (70, 450), (80, 600))
        ),
        ("C1-50", 500, 250, 155), ("C1-70", 700, 410, 220), ("C1-110", 1100, 820, 350), ("C3-80", 800, 640, 240),
        ("C4-50", 500, 250, 155), ("C4-70", 700, 410, 220), ("F1-45", 450, 250, 135), ("F1-60", 600, 410, 180),
    ],
)  # fmt: skip
def test_properties_of_classes(
    name: str, strength: float, stress_at_yield: float, hardness: float | None
) -> None:
    found = property_class(name, 20e-3)
    assert found.tensile_strength == pytest.approx(strength * 1e6)
    assert found.yield_stress == pytest.approx(stress_at_yield * 1e6)
    assert found.hardness == hardness


# --- clearance holes ---

#: Close, normal and loose, mm, as the table of bd-warehouse 0.4.0 prints them: seen. It has those of M12, M14 and
#: M16 to whole millimetres, where ISO 273 has halves (memory).
HOLES_OF_LIBRARY = {
    "M5": (5.3, 5.5, 5.8), "M6": (6.4, 6.6, 7), "M8": (8.4, 9, 10), "M10": (10.5, 11, 12), "M18": (19, 20, 21),
    "M20": (21, 22, 24), "M22": (23, 24, 26), "M24": (25, 26, 28), "M27": (28, 30, 32), "M30": (31, 33, 35),
    "M33": (34, 36, 38), "M36": (37, 39, 42), "M39": (40, 42, 45), "M42": (43, 45, 48), "M45": (46, 48, 52),
    "M48": (50, 52, 56), "M52": (54, 56, 62), "M56": (58, 62, 66), "M60": (62, 66, 70), "M64": (66, 70, 74),
}  # fmt: skip
HOLES_FROM_MEMORY = {"M12": (13, 13.5, 14.5), "M14": (15, 15.5, 16.5), "M16": (17, 17.5, 18.5)}


@proves("threads.geometry", seen="bd-warehouse 0.4.0, clearance holes", memory="ISO 273:1979")
@pytest.mark.parametrize(("bolt", "holes"), (HOLES_OF_LIBRARY | HOLES_FROM_MEMORY).items())
def test_clearance_holes(bolt: str, holes: tuple[float, float, float]) -> None:
    found = [clearance_hole(bolt, one).nominal * 1e3 for one in ("fine", "medium", "coarse")]
    assert found == pytest.approx(holes)


# --- Imperial standard wire gauge ---

GAUGES = entries("bs-3737-1964-wire-gauge.csv", "gauge")
_NUMBERS_OF_LIBRARY = {"7/0": 0.143, "6/0": 0.167, "5/0": 0.2, "4/0": 0.25, "3/0": 0.33, "2/0": 0.5}


@proves("springs.wire_gauge", library="fluids")
@pytest.mark.parametrize("gauge", [gauge for gauge in GAUGES if gauge != "28"])
def test_wire_gauge_agrees_with_another_table(gauge: str) -> None:
    """fluids 1.3, British Standard Wire Gauge: library. For 28 see the next test."""
    number = _NUMBERS_OF_LIBRARY.get(gauge) or float(gauge)
    assert wire_diameter(gauge).nominal == pytest.approx(t_from_gauge(number, schedule="BSWG"), rel=1e-9)


@proves("springs.wire_gauge", memory="BS 3737")
def test_28_gauge_is_0_0148_inch() -> None:
    """BS 3737, 0.376 mm: memory. fluids has 0.0149 in, which breaks the even steps of 0.0012 in there."""
    assert wire_diameter(28).nominal == pytest.approx(0.0148 * INCH)
    assert round(wire_diameter(28).nominal * 1e3, 3) == 0.376


@proves("threads.designations", memory=["ISO 261:1998", "ASME B1.1", "BS 84", "ISO 228-1:2000"])
def test_threads_outside_the_published_lists_are_refused() -> None:
    for name in ("M24x1.25", "M23", "1/2-12 UNC", "7/8-9 BSF", "G 9/16"):
        with pytest.raises(NotKnown):
            thread(name)
