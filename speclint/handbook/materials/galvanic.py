"""Unlike metals in contact where it is wet: which one corrodes and whether the difference is too large.

Not for parts that are oiled or in dry steam. A small less noble part in a large noble one corrodes fastest.

>>> round(potential_difference(anodic_index("brass or bronze").nominal, anodic_index("cast iron").nominal), 2)
0.45
>>> base_metal("brass or bronze", "cast iron")
'cast iron'
"""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Source, Volts, formula
from speclint.errors import NotKnown
from speclint.handbook.tables import Reading, entries, number, row

MIL_STD_1250 = Source(
    "MIL-STD-1250A, Corrosion Prevention and Deterioration Control in Electronic Components",
    "1992",
    memory=True,
)
SEA_WATER = Source("Galvanic series of metals in sea water, Professional Boatbuilder No. 100", "2006")
_INDEX = "anodic-index-mil-std-1250a-1992.csv"
_SERIES = "galvanic-series-sea-water-boatbuilder-100-2006.csv"
_READ_IN_SERIES = ("cast iron", "mild steel", "nickel cast iron")
#: Greatest difference of anodic index by surroundings, V.
_LIMITS = {"weather and wet": 0.15, "indoors": 0.25, "dry and controlled": 0.50}


def metals() -> tuple[str, ...]:
    """Metals of the anodic index, the noblest first."""
    return entries(_INDEX, "metal")


def metals_in_sea_water() -> tuple[str, ...]:
    """Metals of the sea water series, the noblest first."""
    return entries(_SERIES, "metal")


def surroundings() -> tuple[str, ...]:
    """The surroundings for which a limit is known, the most severe first."""
    return tuple(_LIMITS)


def anodic_index(metal: str) -> Reading:
    """Anodic index, V; NotKnown for a metal that is not in the table."""
    what = f"anodic index of {metal}"
    return Reading.exact(
        what, number(_INDEX, "metal", metal, "index_V", what), "V", MIL_STD_1250.at("Table II")
    )


def sea_water_potential(metal: str) -> Reading:
    """Corrosion potential in sea water, V against silver/silver chloride: a range."""
    found = row(_SERIES, "metal", metal)
    noble, base = float(found["noble_V"]), float(found["base_V"])
    source = SEA_WATER.at("figure", memory=metal not in _READ_IN_SERIES)
    return Reading(f"potential of {metal} in sea water", (noble + base) / 2, base, noble, "V", source)


@formula("U = |E_1 − E_2|", cites=[FIRST_PRINCIPLES])
def potential_difference(E_1: Volts, E_2: Volts) -> Volts:
    """Difference of two potentials of one series.

    E_1, E_2: potentials, V. Returns V.
    """
    return abs(E_1 - E_2)


def potential_limit(where: str) -> Reading:
    """Greatest difference of anodic index for surroundings: "weather and wet", "indoors", "dry and controlled"."""
    if where not in _LIMITS:
        raise NotKnown(f"no surroundings {where!r} in the handbook; it knows {', '.join(_LIMITS)}")
    return Reading.exact(f"potential difference permitted, {where}", _LIMITS[where], "V", MIL_STD_1250)


def base_metal(metal_1: str, metal_2: str) -> str:
    """The one of two metals that corrodes where they touch; empty when both have one index."""
    first, second = anodic_index(metal_1).nominal, anodic_index(metal_2).nominal
    if first == second:
        return ""
    return metal_1 if first < second else metal_2
