"""A quantity as the drawing of the other hand writes it: with the other sign, or round the axis from the other side."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction

from speclint.quantities import units

_NUMBER = r"[+-]?(?:[0-9]+\s[0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?)"
_DEVIATION = r"[+-]?[0-9]+(?:\.[0-9]+)?"
_QUANTITY = (  # compiled where a part is mirrored
    rf"(?P<first>{_NUMBER})(?:\s*\.\.\s*(?P<last>{_NUMBER}))?\s*(?P<unit>[^\s\d±+/.-]+)"
    rf"(?:(?P<band>\s*±.*)|\s+(?P<upper>{_DEVIATION})\s*/\s*(?P<lower>{_DEVIATION}))?"
)
_FULL_TURN = 360  # degrees
_FIGURES = 9  # of an angle


def negated(text: str) -> str:
    """A quantity with the other sign, limits and all; a text that is no plain quantity stays as it is.

    >>> negated("320 mm"), negated("-15 mm +0.2/-0.1"), negated("20..30 mm"), negated("1 3/4 in ±0.1")
    ('-320 mm', '15 mm +0.1/-0.2', '-30..-20 mm', '-1 3/4 in ±0.1')
    """
    return _turned(text, lambda number, _: _opposite(number))


def round_the_axis(text: str) -> str:
    """An angle counted round an axis the other way: a becomes 360° − a; a text that is no plain angle stays.

    >>> round_the_axis("30 ° ±1"), round_the_axis("0 °"), round_the_axis("-20 deg"), round_the_axis("40..50 °")
    ('330 ° ±1', '0 °', '20 deg', '310..320 °')
    """
    return _turned(text, _other_way_round)


def _turned(text: str, turn: Callable[[str, str], str]) -> str:
    """A quantity with its numbers turned, and its limits with them: the upper one becomes the lower."""
    found = re.fullmatch(_QUANTITY, " ".join(text.split()))
    if found is None:
        return text
    unit = found["unit"]
    first = turn(found["first"], unit)
    if found["last"]:
        return f"{turn(found['last'], unit)}..{first} {unit}{found['band'] or ''}"
    limits = found["band"] or ""
    if found["upper"]:
        limits = f" {_signed(_opposite(found['lower']))}/{_signed(_opposite(found['upper']))}"
    return f"{first} {unit}{limits}"


def _opposite(number: str) -> str:
    plain = number.lstrip("+-")
    nothing = not any(mark.isdigit() and mark != "0" for mark in plain)
    return plain if number.startswith("-") or nothing else f"-{plain}"


def _signed(deviation: str) -> str:
    return deviation if deviation.startswith("-") else f"+{deviation}"


def _other_way_round(number: str, unit: str) -> str:
    """360° − a, or −a for an angle that is not above 0: both are the same angle."""
    value = sum((Fraction(part) for part in number.lstrip("+-").split()), Fraction(0))
    if number.startswith("-") or not value:
        return _opposite(number)
    turn = Fraction(_FULL_TURN * units.factor("°", "angle") / units.factor(unit, "angle"))
    return f"{float(turn - value):.{_FIGURES}g}"
