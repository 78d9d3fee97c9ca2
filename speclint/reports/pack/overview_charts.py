"""All utilisations on one page, and the speeds of the steam along its path."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

import svg

from speclint.checking import Assessment, Check
from speclint.quantities import amount
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.figures import Figure, compared
from speclint.reports.pack.paper import SIZE, Paper, Point, placed, rounded, shortened, wide
from speclint.reports.pack.same_working import Firsts, firsts_of
from speclint.reports.phrases import share_of_limit
from speclint.rules import Grade

_COLUMN, _LABELS, _TOP, _ROW, _FOOT = 500.0, 230.0, 40.0, 16.0, 44.0
_TALLEST = (
    40  # rows beyond which they stand in two columns, so that they fill a page of A4 and can be read on it
)
_MOST = 1.5  # beyond one and a half times the limit a point stands at the edge
_EDGE = 22.0
_POINT = 4
_SLOW = 0.2  # speeds held to less than a fifth of the greatest limit have a chart of their own


def overview_figures(assessment: Assessment) -> Iterator[Figure]:
    """The page of all utilisations, then the speeds of the steam."""
    firsts = firsts_of(assessment.checks, assessment.design.files if assessment.design else ())
    yield from _utilisations(assessment.checks, firsts)
    yield from _speeds(assessment.checks)


def _utilisations(checks: Sequence[Check], firsts: Firsts) -> Iterator[Figure]:
    judged = [check for check in checks if check.utilisation is not None]
    if not judged:
        return
    rows = [(component, list(group)) for component, group in groupby(judged, key=lambda one: one.component)]
    over = sum(check.outcome == "finding" for check in judged)
    columns = 1 if len(rows) <= _TALLEST else 2
    tall = -(-len(rows) // columns)
    paper = Paper(
        "utilisations",
        "How much of each limit is used",
        f"{len(judged)} checks of {len(rows)} components; {over} beyond their limit.",
        columns * _COLUMN,
        _TOP + tall * _ROW + _FOOT,
    )
    for column in range(columns):
        left, here = column * _COLUMN, rows[column * tall : (column + 1) * tall]
        _grid(paper, left, _TOP + len(here) * _ROW)
        for number, (component, group) in enumerate(here):
            _row(paper, component, group, firsts, (left, _TOP + (number + 0.5) * _ROW))
    yield Figure(
        paper.name,
        "",
        "How much of each limit is used, all on one page",
        "One row a component, one point a check: a round point holds, a square is a finding, a diamond is a hold. The "
        "heavy line is the limit; what lies beyond one and a half times the limit stands at the right edge. Each point "
        "leads to its sheet, but for those whose sheet is that of a part alike.",
        paper.markup(),
    )


def _grid(paper: Paper, left: float, foot: float) -> None:
    """The upright lines of one column, with what share of the limit they stand for."""
    for tenth in range(0, 16, 5):
        x = left + _place(tenth / 10)
        paper.line((x, _TOP - 6), (x, foot + 6), "limit" if tenth == 10 else "grid")
        for y in (_TOP - 14, foot + 22):
            paper.text((x, y), f"{tenth / 10:g}" if tenth else "0", "figure", "middle")
    paper.text((left + _place(0.75), foot + 38), "of the limit", "quiet", "middle")


def _place(utilisation: float) -> float:
    """How far from the edge of a column a share of the limit stands."""
    return _LABELS + 14 + min(max(utilisation, 0.0), _MOST) / _MOST * (_COLUMN - _LABELS - 14 - _EDGE)


def _row(paper: Paper, component: str, group: Sequence[Check], firsts: Firsts, at: Point) -> None:
    left, y = at
    paper.text((left + _LABELS, y + SIZE / 3), shortened(component, _LABELS - 4), "word", "end")
    paper.line((left + _place(0), y), (left + _place(_MOST), y), "row")
    plain = {left + _place(check.utilisation or 0.0) for check in group if check.order in firsts}
    for x in sorted(plain):
        paper.circle((x, y), _POINT, "point")
    linked = (check for check in group if check.order not in firsts)
    for check in sorted(linked, key=lambda one: one.outcome == "finding"):  # what is wrong lies on top
        used = check.utilisation or 0.0
        point = _point(check, left + _place(used), y)
        paper.linked(sheet_anchor(check), f"{component} {check.rule.name}: {share_of_limit(used)}", [point])


def _point(check: Check, x: float, y: float) -> svg.Element:
    ((x, y),) = rounded([(x, y)])
    if check.outcome != "finding":
        return svg.Circle(cx=x, cy=y, r=_POINT, class_=["point"])
    if check.grade is Grade.HOLD:
        r = _POINT + 2
        return svg.Polygon(
            points=placed([(x, y - r), (x + r, y), (x, y + r), (x - r, y)]), class_=["point", "hold"]
        )
    return svg.Rect(x=x - _POINT, y=y - _POINT, width=2 * _POINT, height=2 * _POINT, class_=["point", "bad"])


def _speeds(checks: Sequence[Check]) -> Iterator[Figure]:
    """Speeds that are held to a greatest one: those of steam, and those far below them of parts that rub or strike."""
    found = [(check, *values) for check in checks if (values := compared(check, "≤", "m/s"))]
    most = max((limit for _, _, limit in found), default=0.0)
    fast = [held for held in found if held[2] >= most * _SLOW]
    slow = [held for held in found if held[2] < most * _SLOW]
    yield from _speed_figure("speeds", "Speeds along the path of the steam", fast)
    yield from _speed_figure("slow-speeds", "Speeds of parts that rub or strike", slow)


def _speed_figure(name: str, heading: str, found: Sequence[tuple[Check, float, float]]) -> Iterator[Figure]:
    if not found:
        return
    rows = [_speed(*held) for held in found]
    labels = min(420.0, max(wide(row.label) for row in rows) + 12)
    about = "; ".join(f"{row.label}: {row.says}" for row in rows)
    unit = "m/s; the upright mark is the greatest allowed"
    paper = chart(name, heading, about, rows, unit, labels=labels)
    says = "From the sheets, at the governing load case."
    yield Figure(
        paper.name,
        "",
        heading,
        says,
        paper.markup(),
        tuple((row.label, row.says) for row in rows),
        ("where", "speed"),
    )


def _speed(check: Check, found: float, limit: float) -> Bar:
    ink = "bad" if check.outcome == "finding" else "bar"
    label = f"{check.component}, {check.rule.name.split('.')[-1].replace('-', ' ')}"
    says = f"{amount(found, 'm/s')}, at most {amount(limit, 'm/s')}"
    return Bar(label, 0.0, found, says, ink, ((limit, "limit"),), sheet_anchor(check))
