"""The works that the family cites."""

from __future__ import annotations

from speclint import Source

ISO_286_1 = Source(
    "ISO 286-1, Geometrical product specifications (GPS): ISO code system for tolerances on linear sizes, "
    "Part 1: Basis of tolerances, deviations and fits",
    "2010",
    memory=True,
)
ISO_1829 = Source("ISO 1829, Selection of tolerance zones for general purposes", "1975", memory=True)
DIN_7190 = Source(
    "DIN 7190-1, Interference fits: calculation and design",
    "2017",
    "force that an interference fit holds",
    memory=True,
)
ISO_8062_3 = Source(
    "ISO 8062-3, Geometrical product specifications (GPS): Dimensional and geometrical tolerances for moulded "
    "parts, Part 3: General dimensional and geometrical tolerances and machining allowances for castings",
    "2007",
    memory=True,
)
ISO_8062_3_ALLOWANCES = ISO_8062_3.at(
    "Table 7, grades E to K as reproduced in SFSA Supplement 3", memory=False
)
ISO_8062_3_TOLERANCES = ISO_8062_3.at(
    "Table 2, as reproduced after the edition of 1994 in SFSA Supplement 3", memory=False
)
ISO_1101 = Source(
    "ISO 1101, Geometrical tolerancing: form, orientation, location and run-out",
    "2017",
    "table of geometrical characteristics",
    memory=True,
)
ISO_2768_1 = Source(
    "ISO 2768-1, General tolerances, Part 1: Tolerances for linear and angular dimensions without individual "
    "tolerance indications",
    "1989",
    "Table 3, angles",
    memory=True,
)
ISO_2768_2 = Source(
    "ISO 2768-2, General tolerances, Part 2: Geometrical tolerances for features without individual tolerance "
    "indications",
    "1989",
    "Table 1, flatness, and 5.2, parallelism",
    memory=True,
)
ISO_13920 = Source(
    "ISO 13920, Welding: general tolerances for welded constructions", "1996", "Table 2, angles", memory=True
)
ISO_2692 = Source("ISO 2692, Maximum material requirement", "2014", "virtual condition", memory=True)
ASME_Y14_5 = Source(
    "ASME Y14.5, Dimensioning and Tolerancing",
    "2018",
    "appendix on fasteners, fixed fastener with and without projected zone",
    memory=True,
)
ASME_PCC_1 = Source(
    "ASME PCC-1, Guidelines for Pressure Boundary Bolted Flange Joint Assembly",
    "2013",
    "appendix D, flatness of contact faces",
    memory=True,
)
