"""From the text of a unit to its SI value, and the units a sheet writes back.

A unit outside the table (:mod:`speclint.quantities.unit_table`) is looked up in pint; both agree on its dimension.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from typing import TYPE_CHECKING

from speclint.errors import QuantityError
from speclint.quantities.unit_table import DIMENSIONS, SPELLINGS, Dimension

if TYPE_CHECKING:
    import pint


#: The SI unit of dimensions that are read with a datum or an offset, and so stand in no table of factors.
_WITH_DATUM = {"fluid pressure": "Pa", "temperature": "K", "temperature difference": "ΔK"}

#: Unit texts that pint would read as another unit than the writer meant.
_TRAPS = {
    "Mm": "mm",
    "MM": "mm",
    "CM": "cm",
    "IN": "in",
    "Bar": "bar",
    "mPa": "MPa",
    "Psi": "psi",
    "PSI": "psi",
}

_SUPERSCRIPTS = str.maketrans({"⁴": "^4", "²": "^2", "³": "^3", "⁻": "-", "¹": "1", "·": "*"})
#: A unit that is looked up in pint: words, each to one power of one figure, in products and quotients. Compiled where
#: one is met.
_WORD = r"[A-Za-zµμ°Ω]+(?:(?:\^|\*\*)-?[1-9]|⁻?[¹²³⁴])?"
_UNIT_TEXT = rf"(?:1/)?{_WORD}(?: ?[·*/ ] ?{_WORD})*(?:/\({_WORD}(?: ?[·*/ ] ?{_WORD})*\))?"
_LONGEST_UNIT = 40  # characters; common practice, more than any unit of the trade


def factor(text: str, dimension: str) -> float:
    """SI value of one ``text`` as a quantity of ``dimension``.

    :raises QuantityError: when ``text`` is no unit of that dimension; ``instead`` names one that is.
    """
    known = DIMENSIONS[dimension]
    spelling = canonical(text)
    if spelling in known.units:
        return known.units[spelling]
    if text in _TRAPS:
        raise _wrong_unit(text, known)
    return _ask_pint(text, known)


def si_unit(dimension: str) -> str:
    """The SI unit of a dimension by its name; ``ΔK`` is that of a difference of temperatures.

    >>> si_unit("length"), si_unit("temperature"), si_unit("fluid pressure")
    ('m', 'K', 'Pa')
    """
    return _WITH_DATUM.get(dimension) or DIMENSIONS[dimension].si


def with_article(dimension: str) -> str:
    """A dimension as a sentence names one quantity of it.

    >>> with_article("angle"), with_article("length")
    ('an angle', 'a length')
    """
    return f"{'an' if dimension.startswith(tuple('aei')) else 'a'} {dimension}"


@lru_cache(maxsize=4096)  # of the texts of specs, few are not in the table
def canonical(text: str) -> str:
    """The spelling of a unit that the table uses: ``in2``, ``in^2`` and ``in**2`` become ``in²``."""
    tidy = re.sub(r"\s+", " ", text.strip()).replace("**", "^")
    tidy = re.sub(r"\^?(?<![0-9.e/-])2(?![0-9])", "²", tidy)
    tidy = re.sub(r"\^?(?<![0-9.e/-])3(?![0-9])", "³", tidy)
    return SPELLINGS.get(tidy, tidy)


def shown(value: float, dimension: str, unit: str = "") -> tuple[float, str]:
    """A SI value in ``unit``, or else in the unit a sheet writes for its dimension."""
    known = DIMENSIONS[dimension]
    chosen = canonical(unit)
    if chosen not in known.units:
        chosen = known.shown
    return value / known.units[chosen], chosen


@cache
def names() -> frozenset[str]:
    """The units that stand for themselves in an equation, such as mm, MPa or lbf.

    >>> sorted(names() & {"mm", "rev", "K", "N·m"})
    ['K', 'mm', 'rev']
    """
    known = (
        unit for dimension in DIMENSIONS.values() for unit in dimension.units if not unit.startswith("1")
    )
    return frozenset({"K"} | {part for unit in known for part in re.split("[·/() ²³⁴0-9-]+", unit) if part})


@cache
def by_si(unit: str) -> Dimension | None:
    """The dimension a formula means by an SI unit; None for units no table shows otherwise."""
    if unit == "Pa":
        return DIMENSIONS["stress"]
    return next((known for known in DIMENSIONS.values() if known.si == unit), None)


@cache
def comparable(one: str, other: str) -> bool:
    """Whether values in two SI units may be held against each other: they are of one dimension.

    Nothing can be said of a unit with a zero of its own, such as the bar·°C of rating sheets: it is no unit of the SI,
    and a formula that is stated in it gives a bare number.

    >>> comparable("N·m", "J"), comparable("m", "Pa"), comparable("ΔK", "K"), comparable("", "bar·°C")
    (True, False, True, True)
    """
    if one == other or "°" in one + other:
        return True
    texts = [known.pint if (known := by_si(unit)) else unit.removeprefix("Δ") for unit in (one, other)]
    if any(unit and not text for unit, text in zip((one, other), texts, strict=True)):
        return not (one and other)  # a hardness is a bare number of a scale of its own
    found, against = (_registry().parse_units(text.translate(_SUPERSCRIPTS)).dimensionality for text in texts)
    return found == against


def _ask_pint(text: str, known: Dimension) -> float:
    tidy = canonical(text)
    if not known.pint or len(text) > _LONGEST_UNIT or not re.fullmatch(_UNIT_TEXT, tidy):
        raise _wrong_unit(text, known)
    try:
        unit = _registry().parse_units(tidy.translate(_SUPERSCRIPTS))
        return float((1 * unit).to(known.pint).magnitude)
    except Exception as problem:  # pint lets errors of the tokenizer and of the syntax tree through as well
        raise _wrong_unit(text, known) from problem


@cache
def _registry() -> pint.UnitRegistry[float]:
    import pint

    return pint.UnitRegistry()


def _wrong_unit(text: str, known: Dimension) -> QuantityError:
    given = (
        f'"{text.strip()}" is no unit of {known.name}'
        if text.strip()
        else f"{with_article(known.name)} needs a unit"
    )
    meant = _TRAPS.get(text.strip())
    return QuantityError(
        given, meant if meant in known.units else f"one of: {', '.join(filter(None, known.units))}"
    )
