"""The steps in which a drawing office changes a value: a class, limits, 0.1 mm, the next plate or thread.

Two sorts: values that are listed, of which the next ones are offered in turn (:func:`listed`, :func:`threads`), and
values that are rounded to a step (:func:`rounding`). Each gives the text that the spec would state.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction

from msgspec import Struct

from speclint.errors import NotKnown, replace
from speclint.handbook.tables import rows
from speclint.quantities import Measure, Written, classes_of_grade, units

#: A value moved by more than half is another design, not a remedy; limits move by this share of the size while that
#: stays, about as far as the outermost classes of ISO 286 lie from it. Both common practice.
_REACH, _LIMITS_REACH = 0.5, 0.01
#: Larger and smaller threads that are tried: common practice, a stud some sizes larger is another joint.
_THREADS = 4
#: Share of the value's decade that can be stated where the step of the office is too coarse.
_FINE = Fraction(1, 10**5)
#: To what a length is stated at the finest: a micrometre, a tenth of a thou. Common practice.
_FINEST = {"mm": Fraction(1, 1000), "in": Fraction(1, 10000)}
_STEPS_TABLE = "drawing-steps-common-practice.csv"
_FIGURES = 9  # of a size that another part gives; more are what floats leave
#: Ranges of these are what a way of tightening leaves, which is a share of the preload or the torque.
_IN_PROPORTION = ("force", "moment")
_FAHRENHEIT = 5 / 9  # K, one degree: by definition
_ROUNDING = 1e-12  # relative: the logarithm of a power of ten may fall short of it


class Restated(Struct, frozen=True):
    """What a spec would state instead: its text, and how it is read.

    ``by`` is how far the size ``of`` so much moves in SI units, or its limits alone where it stays; of a thread the
    diameter. ``exact`` is true where the step of the drawing office was too coarse.
    """

    text: str
    value: Measure | str | int
    by: float
    of: float
    exact: bool = False

    @property
    def share(self) -> float:
        """The change as a share of the size."""
        return abs(self.by / self.of)


def listed(measure: Measure, *, plate: bool) -> tuple[list[Restated], list[Restated]]:
    """The values that a list gives above and below a size, the nearest first: its classes, or rolled thicknesses.

    None of a size that no list gives.
    """
    written = _as_taken(measure)
    if written is None or measure.dimension != "length":
        return [], []
    found = list((_rolled if plate else _classes)(written, measure))
    above = sorted((one for one in found if one.by > 0), key=lambda one: one.by)
    return above, sorted((one for one in found if one.by < 0), key=lambda one: -one.by)


def threads(designation: str) -> tuple[list[Restated], list[Restated]]:
    """The next larger and the next smaller threads of the same series; none of a word that is no thread."""
    from speclint.handbook.threads import beside, nominal_diameter  # only where a thread is changed

    try:
        larger, smaller = beside(designation)
        diameter = nominal_diameter(designation).nominal
    except NotKnown:
        return [], []
    up, down = (
        [Restated(one.name, one.name, one.major_diameter - diameter, diameter) for one in some[:_THREADS]]
        for some in (larger, smaller)
    )
    return up, down


def sized(measure: Measure, size: float) -> Restated | None:
    """A quantity of another size, SI, its limits as they are; None where it is not written so."""
    written = _as_taken(measure)
    if written is None:
        return None
    by = size - measure.nominal
    wanted = (size - (measure.nominal - float(written.first) * _factor(measure))) / _factor(measure)
    other = replace(written.at(Fraction(f"{wanted:.{_FIGURES}g}")), fraction=False)
    value = other.read()
    return Restated(str(other), value, by, measure.nominal) if value else None


def _classes(written: Written, measure: Measure) -> Iterator[Restated]:
    if not written.letters:
        return
    below = measure.low - measure.nominal
    for name, lower in classes_of_grade(measure.nominal, measure.tolerance_class):
        other = written.with_letters(name.rstrip("0123456789"))
        if (value := other.read()) is not None and name != measure.tolerance_class:
            yield Restated(str(other), value, lower - below, measure.nominal)


def _rolled(written: Written, measure: Measure) -> Iterator[Restated]:
    if written.last is not None:
        return
    from speclint.handbook.plates import rolled_thicknesses  # only where a plate is changed

    for thickness in rolled_thicknesses(measure.unit):
        other = written.at(thickness)
        if (value := other.read()) is not None and abs(value.nominal / measure.nominal - 1) <= _REACH:
            yield Restated(str(other), value, value.nominal - measure.nominal, measure.nominal)


class Rounding:
    """A quantity whose size, or whose limits alone, may take any value in steps: its own, and finer ones.

    Made by :func:`rounding`. Both ends of a range move alike, or in proportion where that is its nature. ``reach`` is
    how far it may move, in SI units, before it is another design: that ``share`` of its size.
    """

    def __init__(self, measure: Measure, written: Written, *, limits: bool) -> None:
        self._measure, self._written, self._limits = measure, written, limits
        self._factor = Fraction(repr(_factor(measure)))
        self._scaled = written.last is not None and measure.dimension in _IN_PROPORTION
        middle = (written.first + written.last) / 2 if written.last is not None else written.first
        #: How far the first of the written numbers moves, as a share of how far the middle does.
        self._first = written.first / middle if self._scaled else Fraction(1)
        self._steps = _steps(written, measure, limits=limits)
        self.share = _LIMITS_REACH if limits else _REACH
        self.reach = abs(_size(written, measure)) * self.share

    @property
    def steps(self) -> list[float]:
        """The steps in SI units, the finer ones after that of the drawing office."""
        return [float(one * self._factor) for one in self._steps]

    def moved(self, by: float) -> Measure:
        """The quantity moved by any amount, as it is not written."""
        measure = self._measure
        if self._limits:
            return replace(measure, low=measure.low + by, high=measure.high + by)
        if self._scaled:
            k = 1 + by / measure.nominal
            return replace(measure, nominal=measure.nominal * k, low=measure.low * k, high=measure.high * k)
        return measure.moved(by)

    def rounded(self, by: float, finer: int, further: int) -> Restated | None:
        """The quantity moved by an amount and then rounded away from its present value, and by some steps further.

        ``finer`` is the number of the step. None where it cannot be read, or where it does not move that way.
        """
        written, step, up = self._written, self._steps[finer], by > 0
        present = written.lower if self._limits and written.lower is not None else written.first
        wanted = (present + Fraction(by) * self._first / self._factor) / step
        aim = (math.ceil(wanted) + further if up else math.floor(wanted) - further) * step
        if aim == present or (aim > present) is not up:
            return None
        if self._limits:
            other = written.with_limits_moved(aim - present)
        elif self._scaled:
            other = written.scaled(aim, step)
        else:
            other = replace(
                written.at(aim), fraction=written.fraction and _in_fractions(written) and not finer
            )
        value = other.read()
        if value is None:
            return None
        by = float((aim - present) / self._first * self._factor)
        return Restated(str(other), value, by, self._measure.nominal, exact=bool(finer))


def rounding(measure: Measure, *, limits: bool = False) -> Rounding | None:
    """How a quantity is rounded, its limits alone or the whole of it; None where it is not written so."""
    written = _as_taken(measure)
    if written is None or not _size(written, measure):
        return None
    if limits and (measure.dimension != "length" or written.lower in (None, written.upper)):
        return None
    return Rounding(measure, written, limits=limits)


def _size(written: Written, measure: Measure) -> float:
    """What a quantity is, in SI units; a temperature as it stands above or below the zero of its scale."""
    return float(written.first) * _factor(measure) if measure.dimension == "temperature" else measure.nominal


def _factor(measure: Measure) -> float:
    """The SI value of one of the unit in which a quantity is written."""
    if measure.dimension.startswith("temperature"):
        return _FAHRENHEIT if measure.unit.startswith("°F") else 1.0
    plain = "pressure" if measure.dimension == "fluid pressure" else measure.dimension
    return units.factor(measure.unit, plain)


def _as_taken(measure: Measure) -> Written | None:
    """The parts of a quantity as written; None where a part takes another, as on the other hand."""
    written = Written.of(measure.text, measure.dimension)
    same = written.read() if written else None
    return written if same and (same.low, same.high) == (measure.low, measure.high) else None


def _steps(written: Written, measure: Measure, *, limits: bool) -> list[Fraction]:
    """The step of the drawing office in the unit of a quantity, and a finer one where there is."""
    decade = _decade(written.first or written.last or Fraction(1))
    if measure.dimension != "length":
        small = measure.dimension == "ratio" and abs(measure.nominal) < 1
        return [decade / (10 if small else 100), decade * _FINE]
    width = _width(written, measure, limits=limits)
    office = _decade(width) / 10 if width else _step_of_length(measure.unit, written, decade)
    fine = min(_FINEST.get(measure.unit, decade), decade / 1000)
    return [office, fine] if fine < office else [office]


def _width(written: Written, measure: Measure, *, limits: bool) -> Fraction:
    """Between the written limits, in the unit of the size; nothing where the step does not go by them."""
    if written.upper is not None and written.lower is not None:
        return written.upper - written.lower if limits else Fraction(0)
    if written.last is not None:
        return written.last - written.first
    if not written.band:
        return Fraction(0)
    width = (measure.high - measure.low) / units.factor(measure.unit, "length")
    return Fraction(f"{width:.6g}")  # free of what floats leave


def _step_of_length(unit: str, written: Written, decade: Fraction) -> Fraction:
    """That of the unit, or a tenth of the decade of what is smaller; of a common fraction always its own."""
    how = "fraction" if _in_fractions(written) else "decimal"
    found = (row["step"] for row in rows(_STEPS_TABLE) if (row["unit"], row["written"]) == (unit, how))
    step = Fraction(next(found, decade / 10))
    return step if how == "fraction" else min(step, decade / 10)


def _in_fractions(written: Written) -> bool:
    """Whether a size is written as a common fraction of an inch, without limits."""
    return written.fraction and units.canonical(written.unit) == "in" and not written.has_limits


def _decade(number: Fraction) -> Fraction:
    """The power of ten that is not above the size of a number.

    >>> [str(_decade(Fraction(one))) for one in ("0.028", "1", "15.5", "999")]
    ['1/100', '1', '10', '100']
    """
    power = math.floor(math.log10(abs(number)) + _ROUNDING)
    return Fraction(10) ** power
