"""What kind of fit the limits give, and whether its classes are preferred ones."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.handbook.fits import (
    choice,
    greatest_clearance,
    greatest_interference,
    is_preferred_fit,
    kind_of_fit,
    least_clearance,
    least_interference,
)
from speclint.specs import Fit
from speclint_fits.formulae.fits import middle
from speclint_fits.inputs.fits import intent_of
from speclint_fits.sources import ISO_286_1, ISO_1829


@rule(
    "fit.class",
    title="The limits of hole and shaft give the kind of fit stated as intent: clearance, transition or "
    "interference",
    wrong="limits do not give the fit intended: {left} of it left at the least",
    on=Fit,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_286_1.at("clause 3.3, kinds of fit")],
    why="A fit that may come out either loose or tight can be relied on neither to run nor to grip.",
    leaves_out="errors of form: an oval hole has less clearance and less grip than its diameters give",
    against=("loosen", "seize"),
)
def kind(fit: Fit, sheet: Sheet) -> Judgement:
    """Least and greatest clearance or interference between the limits."""
    intent = intent_of(fit, sheet)
    hole = sheet.take_limits("D", sheet.dimension(fit.hole))
    shaft = sheet.take_limits("d", sheet.dimension(fit.shaft))
    found = kind_of_fit(hole, shaft).value
    if intent == "clearance":
        judged = _kept(*_clearances(hole, shaft, sheet), sheet)
    elif intent == "interference":
        judged = _kept(*_interferences(hole, shaft, sheet), sheet)
    else:
        _clearances(hole, shaft, sheet)
        judged = sheet.states(found == intent, f"the intent is {intent}")
    return judged.saying(f"{found} fit: {judged.says}")


def _clearances(hole: tuple[float, float], shaft: tuple[float, float], sheet: Sheet) -> tuple[float, float]:
    least = sheet.work("c_min", least_clearance, D_min=hole[0], d_max=shaft[1])
    return least, sheet.work("c_max", greatest_clearance, D_max=hole[1], d_min=shaft[0])


def _interferences(
    hole: tuple[float, float], shaft: tuple[float, float], sheet: Sheet
) -> tuple[float, float]:
    least = sheet.work("i_min", least_interference, d_min=shaft[0], D_max=hole[1])
    return least, sheet.work("i_max", greatest_interference, d_max=shaft[1], D_min=hole[0])


def _kept(least: float, greatest: float, sheet: Sheet) -> Judgement:
    """What the limits leave of the fit that both parts have at the middle of their limits."""
    return sheet.stays(least, sheet.work("m", middle, a=least, b=greatest))


@rule(
    "fit.class-exists",
    title="Hole and shaft have classes of one basic size that are a recommended pair or in the preferred "
    "zones",
    on=Fit,
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[ISO_286_1.at("clause 5, recommended fits"), ISO_1829.at("preferred zones"), COMMON_PRACTICE],
    why="Reamers and gauges exist for the preferred classes; any other needs special tools, or is a mistake.",
    leaves_out="limits written as numbers, for which no class is preferred; that a class exists is checked "
    "when it is read",
    against=(),
)
def class_exists(fit: Fit, sheet: Sheet) -> Judgement:
    """Capital letter for the hole, small for the shaft, one basic size, and a recommended pair or preferred zones."""
    intent_of(fit, sheet)
    hole, shaft = sheet.dimension(fit.hole), sheet.dimension(fit.shaft)
    of_hole, of_shaft = sheet.tolerance_class(hole), sheet.tolerance_class(shaft)
    if not of_hole and not of_shaft:
        raise sheet.not_applicable("the limits are written as numbers")
    wrong = _wrong_side(of_hole, of_shaft)
    if of_hole and of_shaft:
        one, other = sheet.take_nominal("D", hole), sheet.take_nominal("d", shaft)
        if round(one - other, 9):
            wrong = wrong or f"{of_hole} and {of_shaft} are on different basic sizes"
    if wrong:
        return sheet.states(False, wrong).graded(Grade.NONCONFORMITY)
    return _preferred(of_hole, of_shaft, sheet)


def _wrong_side(of_hole: str, of_shaft: str) -> str:
    if of_hole and not of_hole[0].isupper():
        return f"{of_hole} is the class of a shaft, written on the hole"
    capital = of_shaft and not of_shaft[0].islower()
    return f"{of_shaft} is the class of a hole, written on the shaft" if capital else ""


def _preferred(of_hole: str, of_shaft: str, sheet: Sheet) -> Judgement:
    pair = "/".join(one for one in (of_hole, of_shaft) if one)
    if of_hole and of_shaft and is_preferred_fit(of_hole, of_shaft):
        return sheet.states(True, f"{pair} is a recommended fit")
    outside = [one for one in (of_hole, of_shaft) if one and not choice(one)]
    if outside:
        return sheet.states(False, f"{pair}: {' and '.join(outside)} not among the preferred zones")
    return sheet.states(True, f"{pair} is of preferred zones, though not a recommended pair")


RULES = (kind, class_exists)
