"""The load of a valve spring over its lift, and each load that its valve asks for at the governing instant."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from speclint.assessment import Assessment
from speclint.checks import Check
from speclint.quantities import Measure
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.figures import Figure, followed, said, specs_of
from speclint.reports.pack.paper import Paper, Point, ticks
from speclint.specs import CompressionSpring, PoppetValve

_WIDTH, _HEIGHT = 620.0, 330.0
_LEFT, _RIGHT, _TOP, _FOOT = 74.0, 592.0, 24.0, 274.0


def spring_figures(assessment: Assessment) -> Iterator[Figure]:
    """Two figures for each spring that shuts a valve: its load over the lift, and what the valve asks of it."""
    for spring in specs_of(assessment, CompressionSpring):
        valve = followed(assessment, spring.closes)
        lift = valve.lift if isinstance(valve, PoppetValve) else None
        if isinstance(valve, PoppetValve) and isinstance(lift, Measure):
            yield from _over_lift(spring, valve, lift)
            yield from _asked(assessment, valve)


def _over_lift(spring: CompressionSpring, valve: PoppetValve, lift: Measure) -> Iterator[Figure]:
    load, rate = spring.shut_load, spring.rate
    if not isinstance(load, Measure) or not isinstance(rate, Measure):
        return
    low = [(0.0, load.low), (lift.nominal, load.low + rate.low * lift.nominal)]
    high = [(0.0, load.high), (lift.nominal, load.high + rate.high * lift.nominal)]
    paper = Paper(
        f"load-{spring.id}",
        f"Load of {spring.id} over the lift of {valve.id}",
        f"From {load.low:.0f} to {load.high:.0f} N shut, to {low[1][1]:.0f} to {high[1][1]:.0f} N at full lift.",
        _WIDTH,
        _HEIGHT,
    )
    _axes(paper, lift.nominal, high[1][1])
    place = _places(lift.nominal, high[1][1])
    paper.shape([*(place(*point) for point in low), *(place(*point) for point in reversed(high))], "band")
    paper.path([place(*point) for point in low], "curve")
    paper.path([place(*point) for point in high], "curve")
    middle = [(0.0, load.nominal), (lift.nominal, load.nominal + rate.nominal * lift.nominal)]
    paper.path([place(*point) for point in middle], "axis")
    if isinstance(spring.open_load, Measure):
        stated = spring.open_load
        paper.line(place(lift.nominal, stated.low), place(lift.nominal, stated.high), "stated")
    rows = (
        ("load shut", said(load)),
        ("rate", said(rate)),
        ("load at full lift, worked", f"{low[1][1]:.0f} to {high[1][1]:.0f} N"),
        ("load at full lift, stated", said(spring.open_load)),
        ("lift", said(lift)),
    )
    yield Figure(
        paper.name,
        spring.id,
        f"{spring.id}: load over the lift of {valve.id}",
        "The band lies between the least and the greatest load that the drawing allows, at 20 °C; the upright mark is "
        "the load that the drawing states at full lift.",
        paper.markup(),
        rows,
        ("what", "size"),
    )


def _places(lift: float, most: float) -> Callable[[float, float], Point]:
    def place(at: float, load: float) -> Point:
        return (
            _LEFT + at / lift * (_RIGHT - _LEFT),
            _FOOT - load / most * (_FOOT - _TOP),
        )

    return place


def _axes(paper: Paper, lift: float, most: float) -> None:
    place = _places(lift, most)
    for value in ticks(0.0, most):
        _, y = place(0.0, value)
        paper.line((_LEFT, y), (_RIGHT, y), "grid")
        paper.text((_LEFT - 8, y + 4), f"{value:g}", "figure", "end")
    for value in ticks(0.0, lift * 1e3):
        x, _ = place(value / 1e3, 0.0)
        paper.line((x, _FOOT), (x, _FOOT + 5), "edge")
        paper.text((x, _FOOT + 20), f"{value:g}", "figure", "middle")
    paper.line((_LEFT, _TOP), (_LEFT, _FOOT), "edge")
    paper.line((_LEFT, _FOOT), (_RIGHT, _FOOT), "edge")
    paper.text(((_LEFT + _RIGHT) / 2, _FOOT + 42), "lift, mm", "quiet", "middle")
    paper.text((16, (_TOP + _FOOT) / 2), "load, N", "quiet", "middle", turn=-90)


def _asked(assessment: Assessment, valve: PoppetValve) -> Iterator[Figure]:
    """Inertia, pressure and drag as the valve's checks have them: what there is against what is needed."""
    checks = [one for one in assessment.checks if one.component == valve.id and _is_load(one)]
    if not checks:
        return
    rows = [_load(check) for check in checks]
    paper = chart(
        f"asked-{valve.id}",
        f"Loads on {valve.id}: there against needed",
        "; ".join(f"{row.label}: {row.says}" for row in rows),
        rows,
        "N at the governing instant and tolerance corner; the upright mark is what is needed",
    )
    yield Figure(
        paper.name,
        valve.id,
        f"{valve.id}: load that is there against what inertia, pressure and drag ask",
        "From the sheets: each bar is the load that shuts the valve, each mark what it must be at least.",
        paper.markup(),
        tuple((check.rule.title, row.says) for check, row in zip(checks, rows, strict=True)),
        ("rule", "there, needed"),
    )


def _is_load(check: Check) -> bool:
    judgement = check.judgement
    return (
        judgement is not None
        and judgement.found is not None
        and judgement.limit is not None
        and judgement.compared == "≥"
        and judgement.found.unit == judgement.limit.unit == "N"
    )


def _load(check: Check) -> Bar:
    judgement = check.judgement
    assert judgement is not None  # as was asked before
    assert judgement.found is not None
    assert judgement.limit is not None
    found, limit = judgement.found.value, judgement.limit.value
    label = f"{check.rule.name}, {check.case}" if check.case else check.rule.name
    return Bar(
        label,
        0.0,
        found,
        f"{found:.0f} N, needs {limit:.0f} N",
        "bad" if check.outcome == "finding" else "bar",
        ((limit, "limit"),),
        sheet_anchor(check),
    )
