"""A flat cover in half section: its plate, flange, studs and gasket, and how thick its sheet says that it must be."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from speclint.checking import Assessment, Check
from speclint.quantities import Measure
from speclint.reports.pack.figures import Figure, followed, known_of, millimetres, said, specs_of, word
from speclint.reports.pack.paper import Paper, hatched
from speclint.reports.pack.printed import Quantity, judged, on_sheet, shown, stated, words, worked
from speclint.reports.pack.valve_drawing import half
from speclint.specs import BoltedJoint, ChamberCover, CylinderCover

_AXIS, _TOP, _ROOM = 90.0, 60.0, 500.0
_ROW = 24.0
_RULE = "cover.thickness"
_SAYS = (
    "Half section, nominal sizes ({mm}), the steam beneath; the outer faces of plate and flange are drawn flush, as "
    "no spec places one from the other. The red line is how thick the plate must be by the sheet of {}, {}; the chain "
    "line the circle up to which the steam presses on it."
)

Cover = CylinderCover | ChamberCover


class _Sized(Struct, frozen=True):
    """A cover with its joint and its check."""

    spec: Cover
    thick: Measure
    outside: Measure
    joint: BoltedJoint | None
    check: Check


def cover_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each flat cover whose thickness is judged."""
    checks = {one.component: one for one in assessment.checks if one.rule.name == _RULE and judged(one)}
    held = ((followed(assessment, one.holds), one) for one in known_of(assessment, BoltedJoint))
    joints = {part.id: joint for part, joint in held if part is not None}
    covers: list[Cover] = [*specs_of(assessment, CylinderCover), *specs_of(assessment, ChamberCover)]
    for cover in covers:
        thick, outside, check = cover.thickness, cover.outside_diameter, checks.get(cover.id)
        flat = word(cover.form) == "flat"
        if flat and isinstance(thick, Measure) and isinstance(outside, Measure) and check is not None:
            yield _figure(_Sized(cover, thick, outside, joints.get(cover.id), check))


def _figure(cover: _Sized) -> Figure:
    spec, radius = cover.spec, cover.outside.nominal * 1e3 / 2
    scale = _ROOM / radius
    lines = _lines(cover)
    foot = _TOP + cover.thick.nominal * 1e3 * scale
    rows = tuple(_rows(cover))
    paper = Paper(
        f"drawing-{spec.id}",
        f"Half section of {spec.id}",
        "; ".join(f"{what}: {size}" for what, size in rows),
        _AXIS + _ROOM + 110,
        foot + _ROW * (len(lines) + 1) + 44,
    )
    _metal(paper, cover, scale)
    _joint(paper, cover, scale)
    _thicknesses(paper, cover, scale)
    paper.line((_AXIS, _TOP - 34), (_AXIS, foot + _ROW * len(lines) + 20), "axis")
    for number, (size, says) in enumerate(lines):
        y, end = foot + _ROW * (number + 1) + 8, _AXIS + size.in_unit("mm") / 2 * scale
        paper.line((end, foot + 4), (end, y + 4), "fine")
        paper.dimension((_AXIS, y), (end, y), worked(half, whole=size))
        paper.text((_AXIS + 8, y - 4), words(f"Ø {{}} {says}", shown(size, "mm")), "figure")
    paper.scale_bar((_AXIS, paper.height - 18), scale, 120 / scale)
    heading = f"{spec.id}: half section, and the thickness that it needs"
    says = words(_SAYS, _RULE, cover.check.case or "as drawn")
    return Figure.of(paper, spec.id, heading, says, rows, ("what", "size"))


def _lines(cover: _Sized) -> list[tuple[Quantity, str]]:
    """The diameters, the least first: of them those that are stated, and the circle of the pressure by the sheet."""
    spec, joint = cover.spec, cover.joint
    found: list[tuple[object, str]] = [(spec.central_hole, "hole"), (cover.outside, "outside")]
    if isinstance(spec, CylinderCover):
        found.append((spec.spigot_diameter, "spigot"))
    else:
        found.append((spec.bore, "bore of the chamber"))
    if joint is not None:
        found.append((joint.circle, "studs"))
    lines = [(stated(one), says) for one, says in found if isinstance(one, Measure) and one.nominal > 0]
    return sorted([*lines, (_pressed(cover), "pressure")], key=lambda one: one[0].value)


def _pressed(cover: _Sized) -> Quantity:
    """The circle within which the steam presses, which every judged thickness of a cover rests on."""
    circle = on_sheet(cover.check, "G")
    assert circle is not None  # as it was judged
    return circle


def _spigot(cover: _Sized) -> float:
    """Half of what goes into the opening [mm]: beyond it the flange lies on the block."""
    spec = cover.spec
    stated_size = spec.spigot_diameter if isinstance(spec, CylinderCover) else spec.bore
    return (millimetres(stated_size) or cover.outside.nominal * 1e3) / 2


def _metal(paper: Paper, cover: _Sized, scale: float) -> None:
    """Plate and flange, flush outside; the hole for rod or spindle left free."""
    thick, outer = cover.thick.nominal * 1e3, cover.outside.nominal * 1e3 / 2
    hole, spigot = (millimetres(cover.spec.central_hole) or 0.0) / 2, _spigot(cover)
    flange = millimetres(cover.spec.flange_thickness) or thick
    hatched(paper, (_AXIS + hole * scale, _TOP), (spigot - hole) * scale, thick * scale, pitch=9, rising=True)
    if outer > spigot:
        corner = (_AXIS + spigot * scale, _TOP)
        hatched(paper, corner, (outer - spigot) * scale, flange * scale, pitch=9, rising=True)


def _joint(paper: Paper, cover: _Sized, scale: float) -> None:
    """The hole and the stud through the flange, and the gasket beneath it."""
    joint = cover.joint
    flange = millimetres(cover.spec.flange_thickness) or cover.thick.nominal * 1e3
    if joint is None:
        return
    circle, hole = millimetres(joint.circle), millimetres(joint.hole)
    if circle and hole:
        x = _AXIS + circle / 2 * scale
        paper.box((x - hole / 2 * scale, _TOP), hole * scale, flange * scale, "bore")
        paper.line((x, _TOP - 14), (x, _TOP + flange * scale + 14), "axis")
    for ring in (joint.gasket, joint.ground_face):
        outside, inside = millimetres(ring.outside), millimetres(ring.inside)
        if outside and inside:
            y = _TOP + flange * scale
            paper.line((_AXIS + inside / 2 * scale, y), (_AXIS + outside / 2 * scale, y), "land")


def _thicknesses(paper: Paper, cover: _Sized, scale: float) -> None:
    """The thickness of plate and flange as dimensions, and the line of what is needed."""
    held, circle = judged(cover.check), _pressed(cover)
    assert held is not None  # as was asked
    own, needed = stated(cover.thick), held[1]
    x = _AXIS - 22
    paper.line((x - 6, _TOP), (_AXIS, _TOP), "fine")
    paper.upright((x, _TOP), (x, _TOP + own.in_unit("mm") * scale), words("{}", shown(own, "mm")), own)
    end = circle.in_unit("mm") / 2
    y = _TOP + needed.in_unit("mm") * scale
    paper.line((_AXIS, y), (_AXIS + end * scale, y), "last")
    across = _AXIS + (millimetres(cover.spec.central_hole) or 0.0) / 2 * scale + 40
    paper.dimension((across, _TOP), (across, y), needed)
    paper.text((across + 6, _TOP - 8), words("needs {}", shown(needed, "mm", 1)), "figure")
    flange = cover.spec.flange_thickness
    if isinstance(flange, Measure):
        right = _AXIS + _ROOM + 16
        paper.dimension((right, _TOP), (right, _TOP + stated(flange).in_unit("mm") * scale), stated(flange))
        paper.text((right + 6, _TOP + 14), words("{}", shown(stated(flange), "mm")), "figure")
    below = _TOP + own.in_unit("mm") * scale + 8
    paper.line((_AXIS + end * scale, _TOP - 20), (_AXIS + end * scale, below), "axis")


def _rows(cover: _Sized) -> Iterator[tuple[str, str]]:
    held = judged(cover.check)
    assert held is not None  # as was asked
    yield "thickness", said(cover.thick)
    found = [shown(one, "mm", 2) for one in held]
    yield "as its sheet has it", words("{} {mm}, at least {} {mm}", *found)
    yield "flange", said(cover.spec.flange_thickness)
    yield from _diameter_rows(_lines(cover))


def _diameter_rows(lines: Sequence[tuple[Quantity, str]]) -> Iterator[tuple[str, str]]:
    for size, says in lines:
        yield f"diameter, {says}", words("{} {mm}", shown(size, "mm", 1))
