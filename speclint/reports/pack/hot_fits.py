"""What a sheet says of a fit when it is hot: how far hole and shaft have grown, how hot they are, what is left."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import partial

from msgspec import Struct

from speclint.checking import Check
from speclint.reports.pack.printed import Quantity, argument, judged, on_sheet, worked
from speclint.rules import Step

#: What is put into the equation of the interference of a fit with each part at its own temperature.
_GROWN = {"delta", "D", "alpha_in", "T_in", "alpha_out", "T_out", "T_ref"}
#: The same of the clearance of a spindle in its guide, and of the size of a saddle or a barrel.
_GUIDED, _SIZED = {"D_g", "ε_g", "Δ_g", "d", "ε_s"}, {"L", "alpha", "T", "T_ref"}


class HotFit(Struct, frozen=True):
    """The growth of hole and shaft on the diameter, their temperatures, and the interference left as the sheet has it.

    ``left`` is negative for a clearance; ``cold`` is the interference from which the sheet starts, where it has one.
    """

    check: Check
    hole: Quantity
    shaft: Quantity
    hole_at: Quantity
    shaft_at: Quantity
    left: Quantity
    cold: Quantity | None = None


def hot_fit(checks: Iterable[Check], hole: str, shaft: str) -> HotFit | None:
    """What the first of some checks says that judges, in a load case, the fit of two sizes by their places."""
    for check in checks:
        taken = {str(step.where.key) for step in check.steps if step.kind == "taken"}
        if check.case and judged(check) and {hole, shaft} <= taken:
            found = _grown(check) or _guided(check) or _saddled(check)
            if found is not None:
                return found
    return None


def _filled(step: Step) -> set[str]:
    return {name for name, _, _ in step.filled}


def _judged_step(check: Check, names: set[str]) -> str | None:
    """The symbol of the step that works what is judged, where these were put into its equation."""
    held = judged(check)
    found = [step for step in check.steps if step.filled and _filled(step) == names]
    return next((step.symbol for step in found if held and step.value == held[0].value), None)


def grown(size: float, alpha: float, hot: float, cold: float) -> float:
    """Growth of a size from one temperature to another."""
    return size * alpha * (hot - cold)


def _grown(check: Check) -> HotFit | None:
    symbol = _judged_step(check, _GROWN)
    if symbol is None:
        return None
    of = _arguments(check, symbol, _GROWN)
    growth = partial(_growth, of)
    return HotFit(check, growth("out"), growth("in"), of["T_out"], of["T_in"], _found(check), of["delta"])


def _growth(of: Mapping[str, Quantity], part: str) -> Quantity:
    return worked(grown, size=of["D"], alpha=of[f"alpha_{part}"], hot=of[f"T_{part}"], cold=of["T_ref"])


def _found(check: Check) -> Quantity:
    held = judged(check)
    assert held is not None  # as was asked
    return held[0]


def _arguments(check: Check, symbol: str, names: set[str]) -> dict[str, Quantity]:
    found = {name: argument(check, symbol, name) for name in names}
    return {name: one for name, one in found.items() if one is not None}


def guide_grown(bore: float, strain: float, closed: float) -> float:
    """Growth of the bore of a guide that its block closes besides."""
    return bore * strain - closed


def strained(size: float, strain: float) -> float:
    """Growth of a size by a strain."""
    return size * strain


def less(one: float, other: float) -> float:
    """One size less another."""
    return one - other


def turned(clearance: float) -> float:
    """A clearance as an interference."""
    return -clearance


def _guided(check: Check) -> HotFit | None:
    symbol = _judged_step(check, _GUIDED)
    temperatures = on_sheet(check, "T_g"), on_sheet(check, "T_s")
    if symbol is None or temperatures[0] is None or temperatures[1] is None:
        return None
    of = _arguments(check, symbol, _GUIDED)
    hole = worked(guide_grown, bore=of["D_g"], strain=of["ε_g"], closed=of["Δ_g"])
    shaft = worked(strained, size=of["d"], strain=of["ε_s"])
    return HotFit(
        check, hole, shaft, temperatures[0], temperatures[1], worked(turned, clearance=_found(check))
    )


def _saddled(check: Check) -> HotFit | None:
    """A saddle and its barrel: their hot diameters stand on the sheet, which judges the gap between them."""
    symbols = [step.symbol for step in check.steps if step.kind == "worked" and _filled(step) == _SIZED]
    if len(symbols) != 2:
        return None
    hot = [on_sheet(check, symbol) for symbol in symbols]
    of = [_arguments(check, symbol, _SIZED) for symbol in symbols]
    if hot[0] is None or hot[1] is None:
        return None
    growths = [
        worked(less, one=one, other=known["L"]) for one, known in zip((hot[0], hot[1]), of, strict=True)
    ]
    left = worked(less, one=hot[1], other=hot[0])
    return HotFit(check, growths[0], growths[1], of[0]["T"], of[1]["T"], left)
