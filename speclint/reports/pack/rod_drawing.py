"""A piston rod with its weakened sections, and the mean stress at each against the greatest that is allowed."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

import svg
from msgspec import Struct

from speclint.checking import Assessment, Check
from speclint.errors import NotKnown
from speclint.handbook.threads import thread
from speclint.quantities import Measure
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.figures import Figure, millimetres, said, specs_of, word
from speclint.reports.pack.paper import Paper, axis_marks, hatching, title_at
from speclint.reports.pack.printed import Quantity, judged, of_step, on_sheet, shown, words
from speclint.specs import PistonRod, RodSection

_WIDTH, _AXIS, _HALF = 760.0, 120.0, 62.0
_LEFT, _RIGHT, _LONG = 90.0, 690.0, 110.0
_STRESSES, _TALL = 250.0, 130.0
_RULE = "rod.tension"
_PLAIN = "plain length"
_PLACES = {"piston end": 0, "between the ends": 1, "crosshead end": 2}
_SAYS = (
    "Above, the rod, diameters to one scale, its length broken. Below, from the sheet of {}, {}, the mean stress at "
    "each section: filled where the rod is pulled, open where it is pushed; the red line is the greatest allowed."
)


class _Section(Struct, frozen=True):
    """A section by name: where along the rod it is drawn, its size there, and its stresses."""

    name: str
    middle: float
    size: float
    section: RodSection | None
    pulled: Quantity | None
    pushed: Quantity | None


def rod_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each rod whose tension is judged."""
    checks = {one.component: one for one in assessment.checks if one.rule.name == _RULE and judged(one)}
    for rod in specs_of(assessment, PistonRod):
        if isinstance(rod.diameter, Measure) and (check := checks.get(rod.id)) is not None:
            yield _figure(rod, rod.diameter, check)


def _size(section: RodSection, otherwise: float) -> float:
    """The diameter of a section: of a thread its nominal one."""
    try:
        return thread(word(section.thread)).nominal * 1e3 if word(section.thread) else otherwise
    except NotKnown:
        return otherwise


def _sections(rod: PistonRod, diameter: float, check: Check) -> list[_Section]:
    """The sections from the piston's end to the crosshead's, those of one end side by side, and the plain length."""
    middle = (_LEFT + _RIGHT) / 2
    found = [_section(_PLAIN, middle, diameter, None, check)]
    for place, number in _PLACES.items():
        here = [(name, one) for name, one in rod.sections.items() if word(one.at) == place]
        for step, (name, one) in enumerate(here):
            own = millimetres(one.diameter) or _size(one, diameter)
            ends = (
                _LEFT + _LONG / 2 + step * _LONG,
                middle + (step + 1) * _LONG,
                _RIGHT - _LONG / 2 - step * _LONG,
            )
            found.append(_section(name, ends[number], own, one, check))
    return sorted(found, key=lambda one: one.middle)


def _section(name: str, middle: float, size: float, section: RodSection | None, check: Check) -> _Section:
    pulled, pushed = on_sheet(check, f"σ_{name}"), on_sheet(check, f"σ_c,{name}")
    return _Section(name, middle, size, section, pulled, pushed)


def _figure(rod: PistonRod, diameter: Measure, check: Check) -> Figure:
    sections = _sections(rod, diameter.nominal * 1e3, check)
    rows = tuple(_rows(rod, sections, check))
    paper = Paper(
        f"drawing-{rod.id}",
        f"Sections of {rod.id}",
        "; ".join(f"{what}: {size}" for what, size in rows),
        _WIDTH,
        _STRESSES + _TALL + 64,
    )
    largest = max(
        (millimetres(one.section.larger_diameter) or 0.0 if one.section else 0.0 for one in sections),
        default=0.0,
    )
    scale = 2 * _HALF / max(largest, *(one.size for one in sections))
    _rod(paper, diameter.nominal * 1e3, sections, scale)
    _stresses(paper, sections, check)
    heading = f"{rod.id}: its sections, and the stress at each"
    says = _SAYS.format(_RULE, check.case or "as drawn")
    return Figure.of(paper, rod.id, heading, says, rows, ("what", "size"))


def _rod(paper: Paper, diameter: float, sections: Sequence[_Section], scale: float) -> None:
    """The plain length between the ends, the weakened sections in section, and the break."""
    half = diameter / 2 * scale
    ends = [one for one in sections if one.section is not None]
    start = max((one.middle + _LONG / 2 for one in ends if one.middle < _WIDTH / 2), default=_LEFT)
    end = min((one.middle - _LONG / 2 for one in ends if one.middle > _WIDTH / 2), default=_RIGHT)
    paper.box((start, _AXIS - half), end - start, 2 * half, "stud")
    for number, one in enumerate(sections, 1):
        if one.section is not None:
            own = one.size / 2 * scale
            corner = (one.middle - _LONG / 2, _AXIS - own)
            paper.box(corner, _LONG, 2 * own, "metal")
            hatching(paper, corner, _LONG, 2 * own, pitch=9, rising=True)
            _larger(paper, one, scale)
        paper.numbered((one.middle, _AXIS - _HALF - 24), number)
        paper.line((one.middle, _AXIS - _HALF - 13), (one.middle, _AXIS - one.size / 2 * scale), "thin")
        paper.text((one.middle, _AXIS + _HALF + 22), one.name, "word", "middle")
    x = _WIDTH / 2 + 60
    for by in (-5, 5):
        paper.path([(x + by - 4, _AXIS - half - 6), (x + by + 4, _AXIS + half + 6)], "erased")
        paper.path([(x + by - 4, _AXIS - half - 6), (x + by + 4, _AXIS + half + 6)], "thin")
    paper.line((_LEFT - 40, _AXIS), (_RIGHT + 40, _AXIS), "axis")


def _larger(paper: Paper, one: _Section, scale: float) -> None:
    """What a shoulder runs up to, at the end of the rod."""
    larger = millimetres(one.section.larger_diameter) if one.section is not None else None
    if larger:
        left = one.middle > _WIDTH / 2
        x = one.middle + _LONG / 2 if left else one.middle - _LONG / 2 - 26
        paper.box((x, _AXIS - larger / 2 * scale), 26, larger * scale, "stud")


def _stresses(paper: Paper, sections: Sequence[_Section], check: Check) -> None:
    """A pair of bars beneath each section, with the line of what is allowed."""
    held = judged(check)
    assert held is not None  # as was asked
    limit = _limit(check)
    known = [one for section in sections for one in (section.pulled, section.pushed) if one is not None]
    foot, most = _STRESSES + _TALL, 1.15 * max(one.in_unit("MPa") for one in (*known, limit))

    def height(value: float) -> float:
        return foot - value / most * _TALL

    marks = axis_marks(0.0, most, "MPa", 4)
    for number, value in marks:
        paper.line((_LEFT - 30, height(value)), (_RIGHT + 30, height(value)), "grid")
        paper.mark("y", number, height(value), (_LEFT - 38, height(value) + 4), "end")
    x = title_at(20, _LEFT - 38, (number for number, _ in marks))
    paper.text((x, _STRESSES + _TALL / 2), words("mean stress, {MPa}"), "quiet", "middle", turn=-90)
    for number, one in enumerate(sections, 1):
        for side, stress in ((-20.0, one.pulled), (2.0, one.pushed)):
            if stress is not None and stress.value > 0:
                _bar(
                    paper, check, stress, (one.middle + side, foot), height, pushed=side > 0, most=limit.value
                )
        paper.numbered((one.middle, foot + 16), number)
    paper.line(
        (_LEFT - 30, height(limit.in_unit("MPa"))), (_RIGHT + 30, height(limit.in_unit("MPa"))), "limit"
    )
    paper.place(limit, "MPa", "y", height(limit.in_unit("MPa")))
    paper.line((_LEFT - 30, foot), (_RIGHT + 30, foot), "edge")


def _bar(
    paper: Paper,
    check: Check,
    stress: Quantity,
    at: tuple[float, float],
    height: Callable[[float], float],
    *,
    pushed: bool,
    most: float,
) -> None:
    (x, foot), top = at, height(stress.in_unit("MPa"))
    ink = "hole" if pushed else "bar"
    if stress.value > most:
        ink = "bad"
    bar = svg.Rect(x=round(x, 2), y=round(top, 2), width=18, height=round(foot - top, 2), class_=[ink])
    paper.linked(sheet_anchor(check), words("{}: {} {MPa}", check.rule.name, shown(stress, "MPa", 1)), [bar])
    paper.place(stress, "MPa", "y", top)
    paper.text(
        (x + 9, top - 5), words("{}", shown(stress, "MPa", 1)), "figure", "end" if not pushed else "start"
    )


def _limit(check: Check) -> Quantity:
    """The greatest mean stress, which is what the sheet judges, or what it holds the others against."""
    held = judged(check)
    assert held is not None  # as was asked
    found = [at for at, step in enumerate(check.steps) if step.kind == "limit" and step.unit == "Pa"]
    return of_step(check, found[0]) if found else held[1]


def _rows(rod: PistonRod, sections: Sequence[_Section], check: Check) -> Iterator[tuple[str, str]]:
    yield "diameter in the packing", said(rod.diameter)
    for one in sections:
        if one.section is not None:
            size: str = word(one.section.thread) or said(one.section.diameter)
            yield f"{one.name}, {word(one.section.form) or 'form not stated'}", size
        factor = on_sheet(check, f"n_{one.name}")
        if one.pulled is not None:
            yield f"{one.name}, pulled", words("{} {MPa}", shown(one.pulled, "MPa", 1))
        if one.pushed is not None and one.pushed.value > 0:
            yield f"{one.name}, pushed", words("{} {MPa}", shown(one.pushed, "MPa", 1))
        if factor is not None:
            yield f"{one.name}, factor against fatigue", words("{}", shown(factor, "", 2))
    yield "greatest mean stress allowed", words("{} {MPa}", shown(_limit(check), "MPa"))
