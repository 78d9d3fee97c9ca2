"""One end of a cylinder put together, enlarged: cover, studs, gasket, liner, block, and piston at its dead centre."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from speclint.checking import Assessment
from speclint.quantities import Measure
from speclint.reports.pack.cylinder_sizes import Cover, Cylinder, cylinders_of
from speclint.reports.pack.figures import Figure, followed, known_of, millimetres, said, word
from speclint.reports.pack.paper import Paper, Point, hatched
from speclint.reports.pack.printed import Quantity, shown, stated, words
from speclint.specs import CylinderEnd, Piston

_LEFT, _TOP, _LONG, _TALL = 70.0, 60.0, 640.0, 430.0
_INTO, _BELOW = 215.0, 95.0  # mm of the bore, and of the radius below it, that are drawn
_SAYS = (
    "Upper half of the section, enlarged, the piston at its dead centre, nominal sizes ({mm}), cold. What goes on is "
    "broken off. In thin broken line what must be there, though no spec gives its size."
)


class _End(Struct, frozen=True):
    """One end: its cover, the piston, and how places along the axis and out from it stand on the paper."""

    cylinder: Cylinder
    cover: Cover
    end: CylinderEnd | None
    piston: Piston | None
    scale: float
    first: float
    highest: float

    def at(self, along: float, out: float) -> Point:
        """A place: ``along`` counts from the inner face of the cover into the bore, ``out`` from the axis."""
        return _LEFT + (along - self.first) * self.scale, _TOP + (self.highest - out) * self.scale

    def inward(self, along: float) -> float:
        """A place along the cylinder as one counted from the inner face of the cover into the bore."""
        return (self.cover.inner - along) * self.cover.out

    def metal(
        self, paper: Paper, start: float, low: float, end: float, high: float, *, pitch: float, rising: bool
    ) -> None:
        """A rectangle in section between two places."""
        start, end = max(min(start, end), self.first), min(max(start, end), _INTO)
        low = max(low, self.lowest)
        if end > start and high > low:
            corner = self.at(start, high)
            hatched(
                paper,
                corner,
                (end - start) * self.scale,
                (high - low) * self.scale,
                pitch=pitch,
                rising=rising,
            )

    def wall(
        self, paper: Paper, start: float, low: float, high: float, *, pitch: float, rising: bool
    ) -> None:
        """A wall from a place on into the bore, with the ports that the upper half of the section meets."""
        ports = sorted(
            (min(ends), max(ends))
            for one in self.cylinder.openings
            if one.above and (ends := (self.inward(one.start), self.inward(one.end)))
        )
        for first, last in ports:
            if first > start:
                self.metal(paper, start, low, first, high, pitch=pitch, rising=rising)
            start = max(start, last)
        if start < _INTO:
            self.metal(paper, start, low, _INTO, high, pitch=pitch, rising=rising)

    @property
    def lowest(self) -> float:
        """The least radius that is drawn."""
        return self.cylinder.bore / 2 - _BELOW


def end_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each cover of each cylinder."""
    for cylinder in cylinders_of(assessment):
        pistons = (
            one for one in known_of(assessment, Piston) if followed(assessment, one.runs_in) is cylinder.liner
        )
        piston = next(pistons, None)
        for cover in cylinder.covers:
            ends = cylinder.block.ends.values() if cylinder.block is not None else ()
            own = [one for one in ends if millimetres(one.face_from_seat) == cover.inner]
            yield _figure(_end(cylinder, cover, own[0] if own else None, piston))


def _end(cylinder: Cylinder, cover: Cover, end: CylinderEnd | None, piston: Piston | None) -> _End:
    outer = cover.inner + cover.out * cover.thick
    if cover.joint is not None:
        nut = cover.studs.nut_high + cover.studs.size / 2 if cover.studs else 0.0
        outer = cover.joint + cover.out * (cover.flange + nut)
    first = min((cover.inner - outer) * cover.out, -cover.thick) - 12.0
    body = cylinder.block_bore / 2 + (cylinder.wall or 0.0)
    highest = max(cover.outside / 2 if cover.joint is not None else 0.0, cylinder.collar / 2, body) + 22.0
    scale = min(_LONG / (_INTO - first), _TALL / (highest - cylinder.bore / 2 + _BELOW))
    return _End(cylinder, cover, end, piston, scale, first, highest)


def _figure(end: _End) -> Figure:
    cylinder, cover = end.cylinder, end.cover
    rows = tuple(_rows(end))
    foot = end.at(0.0, end.lowest)[1]
    paper = Paper(
        f"end-{cover.spec.id}",
        f"End of {cylinder.liner.id} with {cover.spec.id}",
        "; ".join(f"{what}: {size}" for _, what, size in rows),
        end.at(_INTO, 0.0)[0] + 60,
        foot + 110,
    )
    _block(paper, end)
    _liner(paper, end)
    _cover(paper, end)
    _studs(paper, end)
    _piston(paper, end)
    _sizes(paper, end, foot)
    _numbers(paper, end)
    paper.line((_LEFT - 10, foot), (end.at(_INTO, 0.0)[0] + 10, foot), "fine")
    paper.scale_bar((_LEFT, foot + 84), end.scale, 80 / end.scale)
    heading = f"{cover.spec.id} on {cylinder.liner.id}: the end of the cylinder put together"
    return Figure.of(paper, cover.spec.id, heading, words(_SAYS), rows, ("", "what", "size"))


def _block(paper: Paper, end: _End) -> None:
    """The wall of the block, with the recess of the collar where it is at this end."""
    cylinder, cover = end.cylinder, end.cover
    if cylinder.wall is None:
        return
    bore, outer = cylinder.block_bore / 2, cylinder.block_bore / 2 + cylinder.wall
    if cover.out < 0:
        seat, face = end.inward(0.0), end.inward(-cylinder.recess_deep)
        end.wall(paper, seat, bore, outer, pitch=11, rising=True)
        end.metal(paper, face, max(cylinder.recess / 2, bore), seat, outer, pitch=11, rising=True)
    else:
        end.wall(paper, end.inward(cylinder.block_length), bore, outer, pitch=11, rising=True)


def _liner(paper: Paper, end: _End) -> None:
    """The liner with its collar, or its free end."""
    cylinder, bore = end.cylinder, end.cylinder.bore / 2
    if end.cover.out < 0:
        seat = end.inward(0.0)
        if cylinder.collar_thick:
            collar = end.inward(-cylinder.collar_thick)
            end.metal(paper, collar, bore, seat, cylinder.collar / 2, pitch=6, rising=False)
        end.wall(paper, seat, bore, cylinder.outside / 2, pitch=6, rising=False)
    else:
        end.metal(
            paper, end.inward(cylinder.length), bore, _INTO, cylinder.outside / 2, pitch=6, rising=False
        )


def _cover(paper: Paper, end: _End) -> None:
    """Plate and flange, and in thin broken line what joins them; the gasket as a heavy line."""
    cover = end.cover
    end.metal(paper, -cover.thick, max(cover.hole / 2, end.lowest), 0.0, cover.bore / 2, pitch=8, rising=True)
    if cover.joint is None:
        return
    joint = end.inward(cover.joint)
    end.metal(paper, joint - cover.flange, cover.bore / 2, joint, cover.outside / 2, pitch=8, rising=True)
    if joint < -cover.thick:  # flange and plate do not overlap along the axis
        wide = (-cover.thick - joint) * end.scale
        paper.box(end.at(joint, cover.bore / 2), wide, cover.flange * end.scale, "ghost")
    ring = cover.studs.joint.gasket if cover.studs is not None else None
    outside, inside = (
        (millimetres(ring.outside), millimetres(ring.inside)) if ring is not None else (None, None)
    )
    if outside and inside:
        paper.line(end.at(joint, inside / 2), end.at(joint, outside / 2), "land")


def _studs(paper: Paper, end: _End) -> None:
    """A stud with its hole and nut."""
    cover, studs = end.cover, end.cover.studs
    if cover.joint is None or studs is None:
        return
    joint, radius = end.inward(cover.joint), studs.circle / 2
    nut = joint - cover.flange - studs.nut_high

    def box(start: float, stop: float, size: float, ink: str) -> None:
        paper.box(end.at(start, radius + size / 2), (stop - start) * end.scale, size * end.scale, ink)

    if studs.edge is not None:  # the boss of the block into which it is screwed
        box(joint, joint + studs.depth, 2 * studs.edge, "ghost")
    box(joint - cover.flange, joint, studs.hole, "bore")
    box(nut - studs.size / 2, joint + studs.depth, studs.size, "stud")
    if studs.nut and studs.nut_high:
        box(nut, joint - cover.flange, studs.nut, "stud")
    paper.line(end.at(nut - studs.size / 2 - 6, radius), end.at(joint + studs.depth + 6, radius), "axis")


def _piston(paper: Paper, end: _End) -> None:
    """The rim of the piston at its dead centre with its grooves, counted from its front face."""
    piston, clearance = end.piston, _clearance(end)
    size = millimetres(piston.diameter) if piston is not None else None
    long = millimetres(piston.length) if piston is not None else None
    if piston is None or clearance is None or not size or not long:
        return
    start = clearance.in_unit("mm")
    end.metal(paper, start, end.lowest, start + long, size / 2, pitch=14, rising=False)
    for groove in piston.grooves.values():
        at, wide, deep = (millimetres(one) for one in (groove.at, groove.width, groove.depth))
        if at and wide and deep:
            place = at if end.cover.out < 0 else long - at - wide
            if start + place + wide < _INTO:
                paper.box(end.at(start + place, size / 2), wide * end.scale, deep * end.scale, "bore")


def _clearance(end: _End) -> Quantity | None:
    clearance = end.end.clearance if end.end is not None else None
    return stated(clearance) if isinstance(clearance, Measure) else None


def _sizes(paper: Paper, end: _End, foot: float) -> None:
    """The clearance of the piston, the thickness of the cover, and half of the bore."""
    found: list[tuple[float, Quantity, str]] = []
    clearance, thick = _clearance(end), end.cover.spec.thickness
    if clearance is not None and end.piston is not None:
        found.append((0.0, clearance, "{} clearance"))
    if isinstance(thick, Measure):
        found.append((-end.cover.thick, stated(thick), "{}"))
    for number, (start, size, says) in enumerate(found):
        y = foot + 26 + 24 * number
        left, right = (end.at(along, 0.0)[0] for along in (start, start + size.in_unit("mm")))
        paper.across((left, foot + 2), (right, foot + 2), words(says, shown(size, "mm")), y - foot, size)


def _numbers(paper: Paper, end: _End) -> None:
    """The numbers of the parts, as the table explains them."""
    cylinder, cover = end.cylinder, end.cover
    along = _INTO * 0.86
    places: list[tuple[float, float, float]] = [(along, (cylinder.bore + cylinder.outside) / 4, 26.0)]
    if cylinder.wall is not None:
        places.append((along, cylinder.block_bore / 2 + cylinder.wall / 2, 60.0))
    places.append((-cover.thick / 2, cover.bore / 2 - 22, 0.0))
    for number, (across, out, up) in enumerate(places, 1):
        x, y = end.at(across, out)
        if up:
            paper.balloon((x + 44, y - up * 0.4), (x, y), number)
        else:
            paper.balloon((_LEFT - 34, y + 24), (x, y), number)
    if cover.studs is not None and cover.joint is not None:
        joint = end.inward(cover.joint)
        x, y = end.at(joint - cover.flange - cover.studs.nut_high / 2, cover.studs.circle / 2)
        paper.balloon((x - 30, y - 34), (x, y), 4)
    clearance, size = _clearance(end), millimetres(end.piston.diameter) if end.piston is not None else None
    if clearance is not None and size:
        x, y = end.at(clearance.in_unit("mm") + 30, size / 2 - 55)
        paper.balloon((x + 40, y + 16), (x, y), 5)


def _rows(end: _End) -> Iterator[tuple[str, str, str]]:
    cylinder, cover = end.cylinder, end.cover
    liner = cylinder.liner
    yield "1", liner.id, words("bore {}, outside {}", said(liner.bore), said(liner.outside_diameter))
    if cylinder.block is not None:
        yield "2", cylinder.block.id, words("bored {}", said(cylinder.bored.diameter))
    sizes = said(cover.spec.thickness), said(cover.spec.flange_thickness)
    yield "3", cover.spec.id, words("{} thick, flange {}", *sizes)
    for name, port in cylinder.liner.ports.items():
        yield (
            "",
            f"port {name}",
            words("{} from the collar's seat, {} high", said(port.from_collar), said(port.height)),
        )
    if isinstance(spigot := cover.spec.spigot_diameter, Measure):
        yield "", "spigot", words("Ø {} in the {}", said(spigot), word(cover.spec.spigot_enters) or "opening")
    if cover.studs is not None:
        joint = cover.studs.joint
        yield (
            "4" if cover.joint is not None else "",
            joint.id,
            words("{} on Ø {}", word(joint.thread), said(joint.circle)),
        )
        yield (
            "",
            "gasket",
            words("{} outside, {} thick", said(joint.gasket.outside), said(joint.gasket.thickness)),
        )
    if end.piston is not None:
        yield "5", end.piston.id, words("Ø {}, {} long", said(end.piston.diameter), said(end.piston.length))
    yield from _clearance_rows(end.end)


def _clearance_rows(end: CylinderEnd | None) -> Sequence[tuple[str, str, str]]:
    return (("", "clearance at the dead centre, cold", said(end.clearance)),) if end is not None else ()
