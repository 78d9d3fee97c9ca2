"""All utilisations on one page, and the speeds of the steam along its path."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from html import escape
from itertools import groupby

import svg

from speclint.checking import Assessment, Check
from speclint.reports.pack.anchors import sheet_anchor, sheets_anchor
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.figures import Figure, compared
from speclint.reports.pack.paper import SIZE, Paper, Point, placed, rounded, shortened, wide
from speclint.reports.pack.printed import OnSheet, Quantity, as_on_sheet, judged, words
from speclint.reports.phrases import share_of_limit
from speclint.reports.printable import visible
from speclint.rules import Grade

_COLUMN, _LABELS, _TOP, _ROW, _FOOT = 500.0, 230.0, 40.0, 16.0, 44.0
_TALLEST = (
    40  # rows beyond which they stand in two columns, so that they fill a page of A4 and can be read on it
)
_MOST = 1.5  # beyond one and a half times the limit a point stands at the edge
_EDGE = 52.0  # room at the right for what has no number
_POINT = 4
_APART = 8.0  # points of checks that conform are drawn no closer than this: they would cover one another
_SMALL = 1.2  # names are of small letters: so many more go into the room than of others
_SLOW = 0.2  # speeds held to less than a fifth of the greatest limit have a chart of their own


def overview_figures(assessment: Assessment) -> Iterator[Figure]:
    """The page of all utilisations, then the speeds of the steam."""
    yield from _utilisations(assessment.checks)
    yield from _speeds(assessment.checks)


def _is_shown(check: Check) -> bool:
    """What has a number, and what is wrong or open without one."""
    return check.utilisation is not None or check.outcome in ("finding", "not assessed")


def _utilisations(checks: Sequence[Check]) -> Iterator[Figure]:
    judged = [check for check in checks if _is_shown(check)]
    if not judged:
        return
    rows = _of_parts_alike(judged)
    parts = len({check.component for check in judged})
    over = sum(check.outcome == "finding" for check in judged)
    columns = 1 if len(rows) <= _TALLEST else 2
    tall = -(-len(rows) // columns)
    paper = Paper(
        "utilisations",
        "How much of each limit is used",
        f"{len(judged)} checks of {parts} components; {over} findings.",
        columns * _COLUMN,
        _TOP + tall * _ROW + _FOOT,
    )
    for column in range(columns):
        left, here = column * _COLUMN, rows[column * tall : (column + 1) * tall]
        _grid(paper, column, left, _TOP + len(here) * _ROW)
        for number, (components, group) in enumerate(here):
            at = (left, _TOP + (number + 0.5) * _ROW)
            _row(paper, components, at)
            _conforming(paper, f"x{column}", group, at)
            _others(paper, f"x{column}", group, at)
    yield Figure.of(
        paper,
        "",
        "How much of each limit is used, all on one page",
        "One row a component, or several whose checks come out alike; a point for each check: a round point conforms, "
        "a square is a finding, a diamond is a hold, a ring is not assessed. The heavy line is the limit; what lies "
        "beyond one and a half times the limit stands at that edge, what is wrong or not assessed without a number "
        "beyond it, under “none”. A name leads to the sheets of the part, each finding to its own. Checks that conform "
        "with nearly the same share of their limit are one point.",
    )


def _of_parts_alike(judged: Sequence[Check]) -> list[tuple[list[str], list[Check]]]:
    """The checks of each row: of a component, or of the first of several of one kind with the same marks."""
    rows: dict[Hashable, tuple[list[str], list[Check]]] = {}
    for component, group in groupby(judged, key=lambda one: one.component):
        checks = list(group)
        marks = frozenset((one.rule.name, one.outcome, one.grade, one.utilisation) for one in checks)
        rows.setdefault((checks[0].kind, marks), ([], checks))[0].append(component)
    return list(rows.values())


def _grid(paper: Paper, column: int, left: float, foot: float) -> None:
    """The upright lines of one column, with what share of the limit they stand for."""
    for tenth in range(0, 16, 5):
        x = left + _place(tenth / 10)
        paper.line((x, _TOP - 6), (x, foot + 6), "limit" if tenth == 10 else "grid")
        for y in (_TOP - 14, foot + 22):
            paper.mark(f"x{column}", tenth / 10, x, (x, y))
    paper.text((left + _place(0.75), foot + 38), "of the limit", "quiet", "middle")
    paper.text((left + _numberless(0), _TOP - 14), "none", "quiet", "middle")


def _place(utilisation: float) -> float:
    """How far from the edge of a column a share of the limit stands."""
    return _LABELS + 14 + min(max(utilisation, 0.0), _MOST) / _MOST * (_COLUMN - _LABELS - 14 - _EDGE)


def _numberless(number: int) -> float:
    """How far from the edge of a column those stand that have no number, one beside the other."""
    return _COLUMN - 24.0 + 10.0 * min(number, 2)


def _row(paper: Paper, components: Sequence[str], at: Point) -> None:
    """The name of a component, which leads to its sheets, with how many others stand in its row; and its line."""
    left, y = at
    alike = f" and {len(components) - 1} alike" if len(components) > 1 else ""
    others = [svg.Title(text=escape(visible(", ".join(components))))] if alike else []
    said = shortened(components[0], _LABELS * _SMALL - wide(alike)) + alike
    paper.named(*([said] if alike else []))
    name = svg.Text(
        x=round(left + _LABELS),
        y=round(y + SIZE / 3, 2),
        text=said,
        class_=["word"],
        text_anchor="end",
    )
    paper.role = "group"  # what leads elsewhere must be within reach of a screen reader
    paper.marks.append(svg.A(href=f"#{sheets_anchor(components[0])}", elements=[*others, name]))
    paper.line((left + _place(0), y), (left + _place(_MOST), y), "row")


def _conforming(paper: Paper, axis: str, group: Sequence[Check], at: Point) -> None:
    """The points of checks that conform, none of them hidden by another; that nearest to the limit is kept."""
    last, points = None, list[svg.Element]()
    found = [(check.utilisation, check) for check in group if check.outcome == "conforms"]
    for used, check in sorted(
        ((used, check) for used, check in found if used is not None), key=lambda one: -one[0]
    ):
        x = at[0] + _place(used)
        if last is None or last - x >= _APART:
            ((across, down),) = rounded([(round(x, 1), at[1])])
            points.append(svg.Circle(cx=across, cy=down, r=_POINT))
            _note(paper, axis, check, x)
            last = x
    if points:
        paper.marks.append(svg.G(elements=points, class_=["point"]))


def _others(paper: Paper, axis: str, group: Sequence[Check], at: Point) -> None:
    """The marks of findings, and of what is not assessed: on top of the others, each with its sheet."""
    numberless = 0
    for check in group:
        if check.outcome == "conforms":
            continue
        used = check.utilisation
        x = at[0] + (_place(used) if used is not None else _numberless(numberless))
        numberless += used is None
        _note(paper, axis, check, x)
        says = (
            f"{check.component} {check.rule.name}: {check.outcome if used is None else share_of_limit(used)}"
        )
        paper.linked(sheet_anchor(check), says, [_point(check, x, at[1])])


def _note(paper: Paper, axis: str, check: Check, x: float) -> None:
    """Note what is drawn, where it is not at the edge."""
    if check.utilisation is not None and 0 <= check.utilisation <= _MOST:
        origin = OnSheet(check.component, check.rule.name, "utilisation")
        paper.place(Quantity(check.utilisation, origin), "", axis, x)


def _point(check: Check, x: float, y: float) -> svg.Element:
    """The mark of what does not conform: a ring where it is not assessed."""
    ((x, y),) = rounded([(x, y)])
    if check.outcome != "finding":
        return svg.Circle(cx=x, cy=y, r=_POINT, class_=["balloon"])
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
    unit = "{m/s}; the upright mark is the greatest allowed"
    paper = chart(name, heading, about, rows, unit, labels=labels)
    yield Figure.of(
        paper,
        "",
        heading,
        "From the sheets, at the governing load case.",
        ((row.label, row.says) for row in rows),
        ("where", "speed"),
    )


def _speed(check: Check, found: float, limit: float) -> Bar:
    ink = "bad" if check.outcome == "finding" else "bar"
    label = f"{check.component}, {check.rule.name.split('.')[-1].replace('-', ' ')}"
    held = judged(check)
    assert held is not None  # as both were compared
    says = words("{} {m/s}, at most {} {m/s}", *(as_on_sheet(one, "m/s") for one in held))
    of = tuple((one, "m/s", 1) for one in held)
    return Bar(label, 0.0, found, says, ink, ((limit, "limit"),), sheet_anchor(check), of)
