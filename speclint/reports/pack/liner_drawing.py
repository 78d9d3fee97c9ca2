"""A liner in its block, in half section along the axis, and its wall at the new and at the last bore."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from speclint.assessment import Assessment
from speclint.reports.pack.figures import Figure, followed, millimetres, said, specs_of, word
from speclint.reports.pack.paper import Paper, hatched, hatching, niced
from speclint.specs import CylinderBlock, CylinderLiner

_WIDTH, _LEFT, _TOP = 900.0, 60.0, 46.0
_LONG = 620.0  # room for the length of the liner
_DETAIL = 150.0  # room for the wall in the detail


@dataclass(frozen=True, slots=True)
class _Sizes:
    """Nominal sizes in millimetres."""

    bore: float
    outside: float
    last: float
    length: float
    block_wall: float
    collar: float
    collar_thick: float


def liner_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each liner whose main sizes are stated."""
    for liner in specs_of(assessment, CylinderLiner):
        block = followed(assessment, liner.housed_in)
        sizes = _sizes(liner, block)
        if sizes is not None:
            yield _figure(liner, block, sizes)


def _sizes(liner: CylinderLiner, block: object) -> _Sizes | None:
    values = [millimetres(one) for one in (liner.bore, liner.outside_diameter, liner.length)]
    if any(value is None for value in values):
        return None
    bore, outside, length = (value or 0.0 for value in values)
    bores = block.bores if isinstance(block, CylinderBlock) else {}
    in_block = bores.get(word(liner.in_bore))
    return _Sizes(
        bore,
        outside,
        millimetres(liner.last_bore) or bore,
        length,
        (millimetres(in_block.wall) if in_block else None) or 0.0,
        millimetres(liner.collar.diameter) or outside,
        millimetres(liner.collar.thickness) or 0.0,
    )


def _figure(liner: CylinderLiner, block: object, sizes: _Sizes) -> Figure:
    scale = _LONG / (sizes.length + sizes.collar_thick)
    high = sizes.outside / 2 * scale + sizes.block_wall * scale
    paper = Paper(
        f"drawing-{liner.id}",
        f"Half section of {liner.id} in its block",
        f"Bore {said(liner.bore)}, outside {said(liner.outside_diameter)}, last bore {said(liner.last_bore)}, "
        f"length {said(liner.length)}.",
        _WIDTH,
        _TOP + high + 92,
    )
    axis = _TOP + high
    _section(paper, liner, sizes, scale, axis)
    _detail(paper, sizes, axis)
    paper.scale_bar((_LEFT, axis + 74), scale, niced(150 / scale))
    rows = (
        ("1", "new bore", said(liner.bore)),
        ("2", "last bore", said(liner.last_bore)),
        ("3", "outside diameter", said(liner.outside_diameter)),
        ("4", "wall when new", f"{(sizes.outside - sizes.bore) / 2:.2f} mm"),
        ("5", "wall at the last bore", f"{(sizes.outside - sizes.last) / 2:.2f} mm"),
        ("6", "wall of the block", f"{sizes.block_wall:g} mm" if sizes.block_wall else "not stated"),
        ("", "length from the collar's seat", said(liner.length)),
    )
    of = f" in {block.id}" if isinstance(block, CylinderBlock) else ""
    return Figure(
        paper.name,
        liner.id,
        f"{liner.id}{of}: wall at new and last bore",
        "Half section along the axis at nominal sizes; what may be bored out lies between the new and the last bore.",
        paper.markup(),
        rows,
        ("", "what", "size"),
    )


def _section(paper: Paper, liner: CylinderLiner, sizes: _Sizes, scale: float, axis: float) -> None:
    """The upper half: block above, liner below it, the axis at the foot."""
    left = _LEFT + sizes.collar_thick * scale
    right = left + sizes.length * scale
    outside, bore, last = (axis - size / 2 * scale for size in (sizes.outside, sizes.bore, sizes.last))
    collar = axis - sizes.collar / 2 * scale
    if sizes.block_wall:
        _block(paper, (_LEFT, left, right), (outside - sizes.block_wall * scale, collar, outside))
    if sizes.collar_thick:
        hatched(paper, (_LEFT, collar), left - _LEFT, bore - collar, pitch=6, rising=False)
    for start, end in _between_ports(liner, sizes.length):
        hatched(
            paper,
            (left + start * scale, outside),
            (end - start) * scale,
            bore - outside,
            pitch=6,
            rising=False,
        )
    paper.line((_LEFT, last), (right, last), "last")
    for end in (_LEFT, right):
        paper.line((end, bore), (end, axis), "edge")
    paper.line((_LEFT - 20, axis), (right + 20, axis), "axis")
    middle = (left + right) / 2
    paper.balloon((middle - 60, bore + 60), (middle - 60, bore), 1)
    paper.balloon((middle, bore + 60), (middle, last), 2)
    paper.balloon((middle + 60, bore + 60), (middle + 60, outside + 1), 3)
    if sizes.block_wall:
        at = outside - sizes.block_wall * scale / 2
        paper.balloon((left + 40, _TOP - 22), (left + 40, at), 6)
    paper.across((left, axis), (right, axis), f"{sizes.length:g}", 34)
    paper.text(
        ((_LEFT + right) / 2, axis - 12), f"collar at the left{_end(liner)}, axis below", "quiet", "middle"
    )


def _end(liner: CylinderLiner) -> str:
    end = word(liner.collar.end)
    return f" ({end} end)" if end else ""


def _block(paper: Paper, across: tuple[float, float, float], down: tuple[float, float, float]) -> None:
    """The wall of the block, with the recess in which the collar lies."""
    start, seat, end = across
    top, recess, bore = down
    recess = max(top + 1, recess)
    outline = [(start, top), (end, top), (end, bore), (seat, bore), (seat, recess), (start, recess)]
    paper.shape(outline, "metal")
    hatching(paper, (seat, top), end - seat, bore - top, pitch=11, rising=True)
    hatching(paper, (start, top), seat - start, recess - top, pitch=11, rising=True)


def _between_ports(liner: CylinderLiner, length: float) -> Iterator[tuple[float, float]]:
    """The stretches of wall that no port interrupts, from the collar's seat."""
    at = 0.0
    spans = []
    for port in liner.ports.values():
        middle, height = millimetres(port.from_collar), millimetres(port.height)
        if middle is not None and height is not None:
            spans.append((middle - height / 2, middle + height / 2))
    for start, end in sorted(spans):
        if start > at:
            yield at, start
        at = max(at, end)
    if at < length:
        yield at, length


def _detail(paper: Paper, sizes: _Sizes, axis: float) -> None:
    """The wall alone, enlarged: what is bored out is light, what stays is hatched."""
    wall, left_over = (sizes.outside - sizes.bore) / 2, (sizes.outside - sizes.last) / 2
    scale = _DETAIL / wall
    x, y = _LEFT + _LONG + 90, max(_TOP, axis - _DETAIL - 40)
    hatched(paper, (x, y), 70, left_over * scale, pitch=9, rising=False)
    paper.box((x, y + left_over * scale), 70, (wall - left_over) * scale, "removed")
    paper.text((x, y - 12), "wall, enlarged", "quiet")
    paper.balloon((x + 110, y + left_over * scale / 2), (x + 70, y + left_over * scale / 2), 5)
    paper.balloon((x - 34, y + wall * scale * 0.6), (x, y + wall * scale * 0.6), 4)
    paper.line((x - 6, y + left_over * scale), (x + 76, y + left_over * scale), "last")
