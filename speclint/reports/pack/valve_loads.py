"""Each load that a valve asks for at the instant and corner that governs, beside the load available."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.checking import Assessment, Check
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.figures import Figure, compared, specs_of
from speclint.reports.pack.printed import judged, shown, words
from speclint.specs import PoppetValve


def valve_load_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each valve of which loads are asked."""
    for valve in specs_of(assessment, PoppetValve):
        yield from _asked(assessment, valve)


def _asked(assessment: Assessment, valve: PoppetValve) -> Iterator[Figure]:
    """Inertia, pressure and drag as the valve's checks have them: load available against load needed."""
    own = (one for one in assessment.checks if one.component == valve.id)
    held = [(check, *values) for check in own if (values := compared(check, "≥", "N"))]
    if not held:
        return
    rows = [_load(*one) for one in held]
    paper = chart(
        f"asked-{valve.id}",
        f"Loads on {valve.id}: available and needed",
        "; ".join(f"{row.label}: {row.says}" for row in rows),
        rows,
        "{N} at the governing instant and tolerance corner; the upright mark is what is needed",
    )
    yield Figure.of(
        paper,
        valve.id,
        f"{valve.id}: load available against that needed for inertia, pressure and drag",
        "From the sheets: each bar is the load that shuts the valve, each mark the least that it must be.",
        tuple((check.rule.title, row.says) for (check, _, _), row in zip(held, rows, strict=True)),
        ("rule", "available, needed"),
    )


def _load(check: Check, found: float, limit: float) -> Bar:
    label = f"{check.rule.name}, {check.case}" if check.case else check.rule.name
    held = judged(check)
    assert held is not None  # as both were compared
    return Bar(
        label,
        0.0,
        found,
        words("{} {N}, needs {} {N}", *(shown(one, "N", 0) for one in held)),
        "bad" if check.outcome == "finding" else "bar",
        ((limit, "limit"),),
        sheet_anchor(check),
        tuple((one, "N", 1) for one in held),
    )
