"""Each planted part checked: what the rule says of it against what was worked by hand."""

from __future__ import annotations

import math
from collections.abc import Iterator

from speclint.checking import Check
from speclint.errors import DesignError
from speclint.quantities.units import by_si
from speclint.rules import Amount
from tests.planted.reading import NotReadable, Planted
from tests.rule_examples.designs import Bench

_ZERO_CELSIUS = 273.15
_WANTED = {"bad": "finding", "sound": "conforms"}


def faults_of(bench: Bench, one: Planted) -> Iterator[str]:
    """What is otherwise than it was worked by hand, each with the name of the part."""
    try:
        check = made(bench, one)
    except DesignError as problem:
        yield f"{one.name}: {problem}"
        return
    wanted = _WANTED[one.sort]
    if check.outcome != wanted:
        missing = "; ".join(map(str, check.missing))
        yield f"{one.name}: {check.outcome}, not {wanted}: {check.says} {missing}".rstrip()
        return
    judgement = check.judgement
    for what in ("found", "limit"):
        text = getattr(one, what)
        if text:
            yield from _otherwise(one, what, text, getattr(judgement, what) if judgement else None)
    if one.says and one.says not in check.says:
        yield f"{one.name}: it does not say {one.says!r}: {check.says}"


def made(bench: Bench, one: Planted) -> Check:
    """The check of a planted part.

    :raises DesignError: where the design cannot be read with its changes, or has no such component.
    """
    if one.rule not in bench.rules:
        raise DesignError(f"no rule is called {one.rule}")
    state = bench.alone(one.changes) if one.alone else bench.design.changed(one.changes)
    return bench.made(bench.rules[one.rule], one.component, state)


def _otherwise(one: Planted, what: str, text: str, amount: Amount | None) -> Iterator[str]:
    if amount is None:
        yield f"{one.name}: {what} is {text} by hand, and the check compares no numbers"
        return
    value = in_si(text, amount.unit)
    if not math.isclose(value, amount.value, rel_tol=one.within, abs_tol=1e-12):
        other = f"{amount.value:.6g} {amount.unit}".rstrip()
        yield f"{one.name}: {what} is {text} by hand, {value:.6g} in SI, and {other} of the check"


def in_si(text: str, si_unit: str) -> float:
    """A number with its unit in the SI unit of an amount.

    >>> in_si("161.2 mm", "m"), in_si("30 °C", "K"), in_si("0.8", "")
    (0.1612, 303.15, 0.8)
    """
    number, _, unit = text.partition(" ")
    try:
        value = float(number)
    except ValueError:
        raise NotReadable(f"{text!r} is not a number with its unit") from None
    if si_unit == "K" and unit == "°C":
        return value + _ZERO_CELSIUS
    dimension = by_si(si_unit)
    units = {si_unit: 1.0, **(dimension.units if dimension else {})}
    units |= {"": 1.0} if not si_unit else {}
    if unit not in units:
        raise NotReadable(
            f"{text!r}: the check's unit is {si_unit or 'none'}; write one of {', '.join(units)}"
        )
    return round(value * units[unit], 15)
