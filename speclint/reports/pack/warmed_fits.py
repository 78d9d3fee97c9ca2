"""The interference of a fit as its parts warm from the temperature of drawings to those of the governing load case."""

from __future__ import annotations

from speclint.quantities import Measure
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.hot_fits import HotFit, less
from speclint.reports.pack.plot import Plot
from speclint.reports.pack.printed import Quantity, argument, shown, stated, words, worked

_ROOM = 0.12  # of the height beyond the least and the greatest
_SAYS = (
    "From the sheet of {}, {}: the interference that is sure at its corner, with both parts warmed together in the "
    "proportion of that case, by its mean coefficients; above the line what the limits of the sizes may add to it. "
    "Below the heavy line the parts are loose."
)


def spread(hole_low: float, hole_high: float, shaft_low: float, shaft_high: float) -> float:
    """How much more interference the limits of two sizes may give than their least."""
    return (shaft_high - hole_low) - (shaft_low - hole_high)


def loose_at(cold: float, hot: float, at: float, reference: float) -> float:
    """The temperature at which a fit that loses its interference evenly has none left."""
    return reference + (at - reference) * cold / (cold - hot)


def warmed(name: str, hot: HotFit, sizes: tuple[Measure, Measure]) -> Figure:
    """The figure: least interference over the temperature of the outer part, and the zone above it."""
    cold, reference = hot.cold, argument(hot.check, _symbol(hot), "T_ref")
    assert cold is not None  # as was asked before
    assert reference is not None
    beyond = _wider(*sizes).in_unit("µm")
    ends = [one.in_unit("µm") for one in (cold, hot.left)]
    span = (reference.in_unit("°C"), hot.hole_at.in_unit("°C"))
    low, high = min(0.0, *ends), max(*ends) + beyond
    room = (high - low) * _ROOM
    rows = _rows(hot, cold, reference)
    plot = Plot(
        f"warmed-{name}",
        f"Interference of {name} over the temperature",
        "; ".join(f"{what}: {size}" for what, size in rows),
        (span[0] - 5, span[1] + (span[1] - span[0]) * 0.12),
        (low - (room if low < 0 else 0.0), high + room),
        ("temperature of the outer part, {°C}", "interference on the diameter, {µm}"),
        tall=220.0,
    )
    line = list(zip(span, ends, strict=True))
    plot.band(line, [(at, up + beyond) for at, up in line])
    plot.line(line, "edge")
    plot.level(0.0, "limit")
    _points(plot, hot, cold, reference)
    heading = f"{name}: interference over the temperature"
    says = _SAYS.format(hot.check.rule.name, hot.check.case)
    return Figure.of(plot.paper, name, heading, says, rows, ("what", "size"))


def _wider(hole: Measure, shaft: Measure) -> Quantity:
    """What the limits of the sizes may add to the least interference."""
    return worked(
        spread,
        hole_low=stated(hole, "low"),
        hole_high=stated(hole, "high"),
        shaft_low=stated(shaft, "low"),
        shaft_high=stated(shaft, "high"),
    )


def _points(plot: Plot, hot: HotFit, cold: Quantity, reference: Quantity) -> None:
    """The interference cold and hot, and where there is none left."""
    for at, up in ((reference, cold), (hot.hole_at, hot.left)):
        ink = "point bad" if up.value < 0 else "point"
        plot.noted(at, "°C", up, "µm", words("{} {µm}", shown(up, "µm", 0)), ink)
    if hot.left.value < 0 < cold.value:
        at = _loose(hot, cold, reference)
        plot.noted(at, "°C", None, "", words("loose at {} {°C}", shown(at, "°C", 0)), "point bad")


def _symbol(hot: HotFit) -> str:
    """The symbol of the step that works what is judged."""
    return next(step.symbol for step in reversed(hot.check.steps) if step.value == hot.left.value)


def _rows(hot: HotFit, cold: Quantity, reference: Quantity) -> list[tuple[str, str]]:
    rows: list[tuple[str, str]] = [
        ("interference that is sure, cold", words("{} {µm}", shown(cold, "µm", 1))),
        ("growth of the outer part", words("{} {µm}", shown(hot.hole, "µm", 0))),
        ("growth of the inner part", words("{} {µm}", shown(hot.shaft, "µm", 0))),
        ("temperature of the outer part", words("{} {°C}", shown(hot.hole_at, "°C", 0))),
        ("temperature of the inner part", words("{} {°C}", shown(hot.shaft_at, "°C", 0))),
        ("interference left", words("{} {µm}", shown(hot.left, "µm", 1))),
        ("lost by warming", words("{} {µm}", shown(worked(less, one=cold, other=hot.left), "µm", 0))),
    ]
    if hot.left.value < 0 < cold.value:
        at = _loose(hot, cold, reference)
        rows.append(("none is left with the outer part at", words("{} {°C}", shown(at, "°C", 0))))
    return rows


def _loose(hot: HotFit, cold: Quantity, reference: Quantity) -> Quantity:
    return worked(loose_at, cold=cold, hot=hot.left, at=hot.hole_at, reference=reference)
