"""Usual mistakes in the writing of a quantity, each told with what was meant: the grammar alone could not say that."""

from __future__ import annotations

import re

from speclint.errors import QuantityError

_NOT_FINITE = re.compile(r"[+-]?(nan|inf|infinity)\b", re.IGNORECASE)
#: A number with commas, and points perhaps.
_COMMAS = re.compile(r"[0-9]+(?:\.[0-9]+)*,[0-9]+(?:[.,][0-9]+)*")
#: Of these those whose commas may part thousands.
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:\.[0-9]+)?")
_SPACED = re.compile(r"(?<![0-9.,/])[1-9][0-9]{0,2}(?: [0-9]{3})+(?![0-9/])")
#: Of these a number with one decimal sign, in front of which the other sign parts thousands; or that parts them alone.
_PARTED = re.compile(
    r"[0-9]+[.,][0-9]+|[1-9][0-9]{0,2}(?:(?:\.[0-9]{3})+(?:,[0-9]+)?|(?:,[0-9]{3})+(?:\.[0-9]+)?)"
)
#: Minus signs and dashes that are not the hyphen of a keyboard.
_DASHES = re.compile(r"[‐‑‒–—−]")
_SPAN = re.compile(r"([0-9.]+) ?- ?([0-9.]+)(?![0-9./])(.*)")
_INCHES = re.compile(r"([0-9]+) ?- ?([0-9]+/[0-9]+)(.*)")
#: A pressure with the datum shortened: 250 psig, 17 bar(g), 17 barg, 18 bara, 18 bar abs., 17 bar (ü).
_SHORT_DATUM = re.compile(
    r"(?P<before>.*?(?:bar|psi|Pa|/cm²|/in²|/mm²)) ?\(?(?P<word>gauge|absolute|abs\.?|[agü])\)?(?P<after>(?: .*|±.*)?)"
)
#: A size, its limits or its tolerance class, and only then the unit: 50±0.1 mm, 50 +0.1/-0 mm, 50 H7 mm.
_UNIT_LAST = re.compile(
    r"(?P<size>-?[0-9.]+) ?(?:(?P<limits>± ?[0-9.]+|[+-][0-9.]+ ?/ ?[+-]?[0-9.]+) ?(?P<unit>[^0-9\s±+/.%-]\S*)"
    r"|(?P<letter>[A-Za-z]{1,2}[0-9]{1,2}) (?P<length>mm|cm|m|µm|in|ft))"
)


def refuse_usual_mistakes(words: str, dimension: str) -> None:
    """Tell what is meant where a quantity, its spaces single, is written as many do and speclint does not.

    :raises QuantityError: for an empty text, a comma, a space or a dash within a number, a number that is not finite,
        equal limits without ±, a unit behind the limits, and a fluid pressure with a shortened datum.
    """
    if not words:
        raise QuantityError("the quantity is empty", "a number with its unit, or leave the key out")
    if _COMMAS.search(words):
        raise QuantityError("a comma is not a decimal point", _without_commas(words))
    if _NOT_FINITE.match(words):
        raise QuantityError("this is not a finite number", "a number with its unit, or leave the key out")
    if "+/-" in words or "+-" in words:
        raise QuantityError("equal limits are written with ±", f'"{re.sub("[+]/?-", "±", words)}"')
    if _SPACED.search(words):
        plain = _SPACED.sub(lambda found: found[0].replace(" ", ""), words)
        raise QuantityError("a number is written without spaces", f'"{plain}"')
    _refuse_dashes(words)
    if last := _UNIT_LAST.fullmatch(words):
        meant = f"{last['size']} {last['unit'] or last['length']} {last['limits'] or last['letter']}"
        raise QuantityError("the unit stands behind the size, before its limits", f'"{meant}"')
    if dimension == "fluid pressure" and (short := _SHORT_DATUM.fullmatch(words)):
        _refuse_short_datum(short)


def _refuse_dashes(words: str) -> None:
    plain = _DASHES.sub("-", words)
    if inches := _INCHES.fullmatch(plain):
        raise QuantityError(
            "a fraction stands behind a space, not a dash", f'"{inches[1]} {inches[2]}{inches[3]}"'
        )
    if span := _SPAN.fullmatch(plain):
        raise QuantityError("a range is written with two points", f'"{span[1]}..{span[2]}{span[3]}"')
    if plain != words:
        raise QuantityError("a minus is written - here, as on a keyboard", f'"{plain}"')


def _refuse_short_datum(short: re.Match[str]) -> None:
    word = "absolute" if short["word"].startswith("a") else "gauge"
    meant = f"{short['before']} {word}{short['after']}"
    if meant != short[0]:
        raise QuantityError("a fluid pressure says gauge or absolute in full", f'"{meant}"')


def _without_commas(words: str) -> str:
    """What to write: of a comma and a point in one number the last is the decimal point; one alone may be either.

    A number whose signs part neither thousands nor decimals may be any: none is proposed.
    """
    numbers = _COMMAS.findall(words)
    if not all(_PARTED.fullmatch(found) for found in numbers):
        return "a number with one point, before its decimals, and no other sign"
    meant = _COMMAS.sub(lambda found: _with_point(found[0]), words)
    whole = _COMMAS.sub(lambda found: found[0].replace(",", ""), words)
    if whole == meant or not all(_THOUSANDS.fullmatch(found) for found in numbers):
        return f'"{meant}"'
    return f'"{meant}", or "{whole}" where the comma parts thousands'


def _with_point(number: str) -> str:
    whole, last, part = number.rpartition(max(".,", key=number.rfind))
    if number.count(last) > 1:  # it parts thousands
        return number.replace(last, "")
    return f"{re.sub('[.,]', '', whole)}.{part}"
