"""How a drawing is held against the sheets and specs that it shows: every number, and every place on an axis."""

from __future__ import annotations

import math
import re
from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from functools import cache, partial
from xml.etree import ElementTree

from speclint.checking import Assessment
from speclint.errors import Location
from speclint.quantities import Measure, System
from speclint.reports.pack.drawings import figures
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.printed import DrawnAgain, InSpec, OnSheet, Printed, Quantity, Words, Worked
from speclint.rules import Step
from speclint.specs import Stated
from tests.example import of_one_cylinder

#: A number in words: not one within a name, such as that of a thread or of a material.
_NUMBER = re.compile(r"(?<![\w.,/-])[-+−±]?\d[\d ]*(?:\.\d+)?(?![\w]*\d)")
METRIC = frozenset(
    {
        "m",
        "mm",
        "µm",
        "m²",
        "mm²",
        "cm²",
        "N",
        "kN",
        "N/mm",
        "N·m",
        "kN·m",
        "Pa",
        "MPa",
        "bar",
        "mbar",
        "m/s",
        "m/s²",
    }
    | {"km/h", "°C", "kg", "kg/s", "kg/h", "kg/kWh", "kW", "W/(m·K)"}
)
IMPERIAL = frozenset(
    {
        "in",
        "thou",
        "in²",
        "lbf",
        "lbf/in",
        "lbf·ft",
        "psi",
        "ft/s",
        "ft/s²",
        "mph",
        "°F",
        "lb/h",
        "lb/ihp·h",
        "lb",
    }
)
_WORDS = {"in", "bar"}  # which stand for much else: units only after a number, or before what only a unit has
_NAMES = "|".join(map(re.escape, sorted((METRIC | IMPERIAL) - _WORDS, key=len, reverse=True)))
#: A unit in words.
_UNIT = re.compile(rf"(?<![\w./·])(?:{_NAMES})(?![\w/·²])|(?<=\d )(?:in|bar)(?![\w²/])|bar(?= absolute)")
_PLACE = 0.06  # units of the paper by which a mark may stand off
_SCALE = 0.6  # units by which a length drawn to scale may be off: a third of a line


@cache
def all_figures(system: System = "as written") -> dict[str, Figure]:
    """Every figure of one cylinder of the example, by its name, in units of a system: made once for all tests."""
    found = list(figures(of_one_cylinder(), system))
    assert len({figure.name for figure in found}) == len(found)
    return {figure.name: figure for figure in found}


class Holder:
    """Looks up what drawings print, in one assessment."""

    def __init__(self, assessment: Assessment) -> None:
        self._assessment = assessment
        self._checks = {(one.component, one.rule.name): one for one in assessment.checks}
        self._taken: dict[object, object] = {}
        self._titles = {one.rule.title for one in assessment.checks}

    def wrong(self, figure: Figure) -> list[str]:
        """All that a figure prints or places otherwise than the sheets and specs have it."""
        return [
            f"{figure.name}: {one}"
            for one in (
                *self._unknown(figure),
                *self._false(figure),
                *_of_other_units(figure),
                *self._misplaced(figure),
            )
        ]

    # Numbers

    def _unknown(self, figure: Figure) -> Iterator[str]:
        """Lines with a number of which the figure does not say what it is."""
        held = figure.held
        ticks = {f"{round(mark.value, 9):g}".replace("-", "−") for mark in held.marks}
        known = {str(one) for one in held.printed} | ticks | set(held.counted)
        known |= {f"{one} {unit}" for one in held.counted for unit in ("mm", "in")}
        for text in texts_of(figure):
            if text not in known and _NUMBER.search(_without_names(text, self._assessment)):
                yield f"the drawing says {text!r}, which is no quantity"
        for cell in cells_of(figure):
            is_known = isinstance(cell, Words) or cell in held.counted or cell in self._titles
            if not is_known and _NUMBER.search(_without_names(cell, self._assessment)):
                yield f"the table says {cell!r}, which is no quantity"

    def _false(self, figure: Figure) -> Iterator[str]:
        """Numbers that are not those of the quantity that they are said to be."""
        for line in lines_of(figure):
            rest = _without_names(line, self._assessment)
            for number in line.numbers:
                if number.text not in rest:
                    yield f"{line!r} has no {number.text!r}"
                rest = rest.replace(number.text, " ", 1)
                yield from (f"{line!r}: {one}" for one in self._problems(number))
            if _NUMBER.search(rest):
                yield f"{line!r} has a number that is no quantity: {rest!r}"

    def _problems(self, number: Printed) -> Iterator[str]:
        yield from self._not_there(number.quantity)
        if number.as_stated:
            origin = number.quantity.origin
            measure = self._stated(origin.where) if isinstance(origin, InSpec) else None
            if isinstance(measure, Measure) and measure.text and measure.text != number.text:
                yield f"the spec states {measure.text!r}"
            return
        said = float(number.text.replace("−", "-").replace(" ", ""))
        meant = number.quantity.in_unit(number.unit) * number.sign
        _, _, decimals = number.text.partition(".")
        step = 10.0 ** -len(decimals)
        if len(number.text.strip("+−")) >= 4 and not decimals and abs(meant) >= 1e4:
            step = 10.0 ** (math.floor(math.log10(abs(meant))) - 3)
        if abs(said - meant) > 0.5001 * step:
            yield f"{number.quantity.origin} is {meant:g}"

    def _not_there(self, quantity: Quantity) -> Iterator[str]:
        """Whether a quantity stands where it is said to."""
        origin = quantity.origin
        if isinstance(origin, Worked):
            for one in origin.of.values():
                yield from self._not_there(one)
            named = origin.formula.func if isinstance(origin.formula, partial) else origin.formula
            if named.__name__ == "<lambda>":
                yield "a number is worked by a formula without a name"
            found: float | None = origin.formula(**{name: one.value for name, one in origin.of.items()})
        elif isinstance(origin, DrawnAgain):
            found = self._drawn_again(origin)
        else:
            found = self._in_spec(origin) if isinstance(origin, InSpec) else self._on_sheet(origin)
        if found is None or not math.isclose(found, quantity.value, rel_tol=1e-12, abs_tol=1e-15):
            yield f"{origin} is {found}, not {quantity.value}"

    def _drawn_again(self, origin: DrawnAgain) -> float | None:
        """What a check takes is taken anew, once for each check."""
        assert (origin.component, origin.rule) in self._checks
        key = origin.component, origin.taken
        if key not in self._taken:
            self._taken[key] = origin.taken(self._assessment, origin.component)
        return origin.formula(self._taken[key])

    def _stated(self, where: Location) -> object:
        design = self._assessment.design
        assert design is not None
        found: object = design.specs[design.owner(where)]
        for part in where.key.split("."):
            if isinstance(found, Mapping):
                found = found[part]
            elif isinstance(found, Sequence):
                found = found[int(part)]
            else:
                found = getattr(found, part)
        return found

    def _in_spec(self, origin: InSpec) -> float | None:
        found = self._stated(origin.where)
        if isinstance(found, Measure):
            return float(getattr(found, origin.side))
        return float(found.value) if isinstance(found, Stated) else None

    def _on_sheet(self, origin: OnSheet) -> float | None:
        check = self._checks[origin.component, origin.rule]
        judgement = check.judgement
        if origin.symbol == "utilisation":
            return check.utilisation
        if origin.symbol in ("found", "limit") and judgement is not None:
            amount = getattr(judgement, origin.symbol)
            return None if amount is None else float(amount.value)
        if origin.at is not None:
            return _of_step(check.steps[origin.at], origin)
        for step in reversed(check.steps):
            if origin.place is not None:
                for series in step.series:
                    if series.symbol == origin.symbol:
                        return series.values[origin.place]
            elif step.symbol == origin.symbol and origin.argument:
                if step.filled:
                    return {name: value for name, value, _ in step.filled}[origin.argument]
            elif step.symbol == origin.symbol and isinstance(step.value, float):
                return step.value
        return None

    # Places

    def _misplaced(self, figure: Figure) -> Iterator[str]:
        held, drawn = figure.held, _drawn(figure)
        axes = {mark.axis for mark in held.marks} | {one.axis for one in held.placed if one.axis}
        for axis in axes:
            marks = sorted({(one.value, one.at) for one in held.marks if one.axis == axis})
            if len(marks) < 2:
                yield f"the axis {axis} has not two marks"
                continue
            (low, at_low), (high, at_high) = marks[0], marks[-1]
            slope = (at_high - at_low) / (high - low)
            for value, at in marks:
                if abs(at_low + (value - low) * slope - at) > 2 * _PLACE:
                    yield f"the mark {value:g} of the axis {axis} stands elsewhere"
                if not _is_near(drawn[not axis.startswith("x")], at):
                    yield f"nothing is drawn at the mark {value:g} of the axis {axis}"
            for one in held.placed:
                meant = one.quantity.in_unit(one.unit) * one.sign if one.axis == axis else 0.0
                if one.axis == axis and abs(at_low + (meant - low) * slope - one.at) > 2 * _PLACE:
                    yield f"{one.quantity.origin}, {meant:g} {one.unit}, stands at {one.at:g} of {axis}"
                if one.axis == axis and not _is_near(drawn[not axis.startswith("x")], one.at):
                    yield f"nothing is drawn at {one.at:g} of {axis}, where {one.quantity.origin} stands"
        for one in held.placed:
            yield from self._not_there(one.quantity)
            if not one.axis and held.scale is None:
                yield "a length is drawn to no scale"
            elif not one.axis and abs(one.quantity.in_unit("mm") * (held.scale or 0.0) - one.at) > _SCALE:
                yield f"{one.quantity.origin} is drawn {one.at / (held.scale or 1.0):g} mm long"


def _of_step(step: Step, origin: OnSheet) -> float | None:
    if step.symbol != origin.symbol:
        return None
    filled = {name: value for name, value, _ in step.filled}
    return filled[origin.argument] if origin.argument else float(step.value)


def lines_of(figure: Figure) -> list[Words]:
    """The lines of a drawing, the cells of its table and the words beneath it whose numbers are known."""
    return [
        *figure.held.printed,
        *(one for one in (*cells_of(figure), figure.says) if isinstance(one, Words)),
    ]


def without_quotes(text: str, figure: Figure) -> str:
    """A text of a figure without what it quotes of specs."""
    quoted = {one.text for line in lines_of(figure) for one in line.numbers if one.as_stated}
    for one in sorted(quoted, key=len, reverse=True):
        text = text.replace(one, " ")
    return text


def units_in(text: str) -> set[str]:
    """The units that drawings print, in one system or the other, that stand in a text."""
    return {found[0] for found in _UNIT.finditer(text)}


def _of_other_units(figure: Figure) -> Iterator[str]:
    """Lines that name a unit in which none of their numbers is."""
    for line in lines_of(figure):
        units = {one.unit for one in line.numbers if not one.as_stated}
        if units and (others := units_in(without_quotes(line, figure)) - units):
            yield f"{line!r} has no number in {', '.join(sorted(others))}"


def texts_of(figure: Figure) -> list[str]:
    """The words of a drawing."""
    root = ElementTree.fromstring(figure.drawing)
    return ["".join(one.itertext()) for one in root.iter() if one.tag.endswith("}text")]


def cells_of(figure: Figure) -> list[str]:
    """The cells of the table of a figure."""
    return [cell for row in figure.rows for cell in row]


def _without_names(text: str, assessment: Assessment) -> str:
    names = assessment.design.specs if assessment.design else {}
    return re.sub(r"[\w-]+", lambda found: " " if found[0] in names else found[0], text)


def _drawn(figure: Figure) -> tuple[list[float], list[float]]:
    """The coordinates, across and down, of edges, points and middles of all marks but texts, in their order."""
    root = ElementTree.fromstring(figure.drawing)
    marks = [one for one in root.iter() if not one.tag.endswith("}text")]
    across, down = (sorted(edge for one in marks for edge in _edges(one, way)) for way in (True, False))
    return across, down


def _is_near(places: list[float], at: float) -> bool:
    after = bisect_left(places, at - _PLACE)
    return after < len(places) and places[after] <= at + _PLACE


def _edges(mark: ElementTree.Element, across: bool) -> list[float]:
    names = ("x", "x1", "x2", "cx") if across else ("y", "y1", "y2", "cy")
    found = [float(value) for name in names if (value := mark.get(name)) is not None]
    if mark.tag.endswith("}rect"):
        long = float(mark.get("width" if across else "height", "0"))
        found += [found[0] + long / 2, found[0] + long]
    if (points := mark.get("points")) is not None:
        found += [float(pair.split(",")[0 if across else 1]) for pair in points.split()]
    if mark.tag.endswith("}polygon") and found:  # the middle of a diamond
        found.append((min(found) + max(found)) / 2)
    return found
