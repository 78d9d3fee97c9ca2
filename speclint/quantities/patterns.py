"""How a quantity is written, as a regular expression that an editor can hold a text against.

It is a little narrower than what is read: the units are those of the tables in every spelling that is known, and no
unit that only pint has. What lies outside of a span, or has its limits the wrong way round, an editor does not see.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from speclint.quantities.unit_table import DIMENSIONS, SPELLINGS

_NUMBER = r"[+-]?(?:[0-9]+\s+[0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?)"
_SIGNED = r"[+-]?[0-9]+(?:\.[0-9]+)?"
_CLASS = r"\s+[A-Za-z]{1,2}[0-9]{1,2}"
#: A name that a file of several parts puts in.
_MARK = r"^.*\{[A-Za-z][A-Za-z0-9_-]*\}.*$"
_META = re.compile(r"[.^$*+?()\[\]{}|\\/]")
_DEGREES = {"°C": "(?:°C|degC|deg C)", "°F": "(?:°F|degF|deg F)"}
_OTHER_SIGNS = (
    ("²", "^2"),
    ("³", "^3"),
    ("²", "2"),
    ("³", "3"),
    ("·", "*"),
    ("·", " "),
    ("µ", "μ"),
    ("µ", "u"),
)


@cache
def pattern_of(dimension: str) -> str:
    """The pattern of a quantity of a dimension: ECMA 262, as JSON Schema wants it, and Python's too.

    >>> [bool(re.search(pattern_of("length"), text)) for text in ("25 mm +0.05/-0.02", "5,5 mm", "banana", "5 kg")]
    [True, False, False, False]
    >>> [bool(re.search(pattern_of("fluid pressure"), text)) for text in ("17 bar gauge", "17 bar")]
    [True, False]
    """
    unit = "|".join(_units(dimension))
    band = _unit_of_band(unit)
    limits = rf"(?:\s*±\s*{_NUMBER}{band}|\s+{_SIGNED}\s*/\s*{_SIGNED}|{_CLASS})?"
    plain = rf"^\s*{_NUMBER}(?:\s*\.\.\s*{_NUMBER})?(?:{unit}){limits}\s*$"
    return f"{plain}|{_MARK}"


def _unit_of_band(unit: str) -> str:
    """What may stand behind a tolerance: a share, or the unit without the word that a pressure has."""
    plain = unit.replace(r"\s+(?:gauge|absolute)", "")
    return rf"(?:\s*%|{plain})?"


def _units(dimension: str) -> Iterator[str]:
    """The units of a dimension as patterns, each with what stands before it."""
    if dimension.startswith("temperature"):
        yield r"\s*K(?:\s+difference)?" if dimension == "temperature difference" else r"\s*K"
        behind = r"\s+difference" if dimension == "temperature difference" else ""
        yield from (rf"\s*{degrees}{behind}" for degrees in _DEGREES.values())
        return
    plain = "pressure" if dimension == "fluid pressure" else dimension
    behind = r"\s+(?:gauge|absolute)" if dimension == "fluid pressure" else ""
    known = DIMENSIONS[plain]
    if "" in known.units or not known.units:
        yield ""
    spellings = {text for unit in known.units if unit for text in _spellings(unit)}
    for text in sorted(spellings, key=lambda one: (-len(one), one)):
        yield rf"\s*{_META.sub(lambda found: chr(92) + found[0], text)}{behind}"


def _spellings(unit: str) -> set[str]:
    """A unit in every spelling in which it is read."""
    found = {unit, *(text for text, meant in SPELLINGS.items() if meant == unit)}
    for sign, other in _OTHER_SIGNS:
        found |= {text.replace(sign, other) for text in found}
    return found
