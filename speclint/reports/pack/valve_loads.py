"""Each load that a valve asks for at the instant and corner that governs, beside what there is."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.assessment import Assessment
from speclint.checks import Check
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.figures import Figure, specs_of
from speclint.specs import PoppetValve


def valve_load_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each valve of which loads are asked."""
    for valve in specs_of(assessment, PoppetValve):
        yield from _asked(assessment, valve)


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
