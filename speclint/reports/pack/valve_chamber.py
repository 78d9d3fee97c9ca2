"""What stands round a valve: the metal of the block at its seats, its cage, its spindle in its guide, and the steam."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from speclint.checking import Assessment
from speclint.reports.pack.figures import followed, known_of, millimetres, said, word
from speclint.reports.pack.paper import Paper, Point, hatched
from speclint.reports.pack.printed import words
from speclint.specs import CylinderBlock, PoppetValve, SeatBore, ValveCage, ValveSeat, ValveSpindle

_PLATE = 6.0  # mm, the plate of a cage as drawn: no spec states it
_BEYOND = 14.0  # mm of the spindle drawn beyond its guide, up to where it is broken off
_STEAM = {"inlet": ("live steam", "to the cylinder"), "exhaust": ("to the exhaust", "from the cylinder")}


class Surroundings(Struct, frozen=True):
    """What is stated round a valve, in mm: heights count upwards from the upper seat's plane."""

    valve: PoppetValve
    bores: tuple[tuple[SeatBore, ValveSeat, float], ...]
    cage: ValveCage | None
    spindle: ValveSpindle | None
    apart: float

    @property
    def highest(self) -> float:
        """How far up anything of it reaches."""
        ends = [0.0]
        if (end := self.cage_end) is not None:
            ends.append(end + _PLATE)
        if (guide := self.guide) is not None:
            ends.append(guide[1] + _BEYOND)
        return max(ends)

    @property
    def widest(self) -> float:
        """How far out from the axis anything of it reaches."""
        outs = [
            (millimetres(bore.diameter) or 0.0) / 2 + (millimetres(bore.wall) or 0.0)
            for bore, *_ in self.bores
        ]
        cage = millimetres(self.cage.outside_diameter) if self.cage else None
        return max([0.0, *outs, (cage or 0.0) / 2])

    @property
    def cage_end(self) -> float | None:
        """The inside of the cage's end: the plane of the seat, from which it is stated, is that of the lower beat."""
        end = millimetres(self.cage.end_at) if self.cage is not None else None
        return None if end is None else end - self.apart

    @property
    def guide(self) -> tuple[float, float] | None:
        """The ends of the guide, where it stands on the side of the lift."""
        if self.spindle is None:
            return None
        start, long = millimetres(self.spindle.guide_from_seat), millimetres(self.spindle.guide_length)
        return None if start is None or long is None else (start, start + long)

    @property
    def says(self) -> Iterator[str]:
        """What must be known of how it is drawn."""
        if self.bores:
            yield "Hatched wide, the least metal of the block round each seat."
        if self.guide is not None:
            yield "The guide is drawn on the side of the lift, from the upper seat on: no spec says where."
        if self.cage_end is not None:
            yield "No spec states how thick the cage is."

    @property
    def rows(self) -> Iterator[tuple[str, str, str]]:
        """Its rows of the table."""
        for bore, seat, _ in self.bores:
            sizes = said(bore.diameter), said(bore.depth), said(bore.wall)
            yield "", f"bore of the block, {word(seat.in_bore)}", words("Ø {}, {} deep, metal {}", *sizes)
        if self.spindle is not None:
            one = self.spindle
            sizes = said(one.diameter), said(one.guide_bore), said(one.guide_length)
            yield "4", one.id, words("Ø {} in a guide of {}, {} long", *sizes)
        if self.cage is not None:
            cage = self.cage
            ends = said(cage.outside_diameter), said(cage.end_at)
            yield "5", cage.id, words("Ø {} outside, its end {} from the seat", *ends)

    def draw(self, paper: Paper, origin: Point, scale: float) -> None:
        """All of it, in half section to the right of the axis."""
        x, zero = origin
        for bore, _, deep in self.bores:
            _metal(paper, bore, (x, zero + deep * scale), scale)
        if self.cage is not None and self.cage_end is not None:
            self._cage(paper, self.cage, self.cage_end, origin, scale)
        if self.spindle is not None:
            self._spindle(paper, self.spindle, origin, scale)
        self._steam(paper, origin, scale)

    def _cage(self, paper: Paper, cage: ValveCage, end: float, origin: Point, scale: float) -> None:
        """The end plate and the wall of the cage, down to the upper seat."""
        (x, zero), out = origin, (millimetres(cage.outside_diameter) or 0.0) / 2
        if not out:
            return
        top = zero - (end + _PLATE) * scale
        hole = (millimetres(self.spindle.diameter) or 0.0) / 2 if self.spindle else 0.0
        hatched(paper, (x + hole * scale, top), (out - hole) * scale, _PLATE * scale, pitch=5, rising=False)
        wall = (x + (out - _PLATE) * scale, top + _PLATE * scale)
        paper.box(wall, _PLATE * scale, end * scale, "ghost")
        at = (x + (out - _PLATE / 2) * scale, top + _PLATE * scale / 2)
        paper.balloon((at[0] + 46, at[1] - 14), at, 5)

    def _spindle(self, paper: Paper, spindle: ValveSpindle, origin: Point, scale: float) -> None:
        """Half of the spindle, from within the valve to beyond its guide, and the guide."""
        (x, zero), half = origin, (millimetres(spindle.diameter) or 0.0) / 2
        if not half:
            return
        end = self.highest if self.guide is not None else (millimetres(self.valve.height) or 0.0)
        top, foot = zero - end * scale, zero + self.apart * 0.5 * scale
        paper.box((x, top), half * scale, foot - top, "stud")
        paper.line((x - 4, top), (x + half * scale + 4, top), "erased")
        if self.guide is not None:
            low, high = self.guide
            outside = (millimetres(spindle.guide_outside) or 0.0) / 2
            if outside > half:
                corner = (x + half * scale, zero - high * scale)
                wide, tall = (outside - half) * scale, (high - low) * scale
                hatched(paper, corner, wide, tall, pitch=5, rising=True)
        at = (x + half * scale / 2, top + 14)
        paper.balloon((at[0] + 60, at[1]), at, 4)

    def _steam(self, paper: Paper, origin: Point, scale: float) -> None:
        """What steam is between the beats and beyond them, in words."""
        around, within = _STEAM.get(word(self.valve.serves), ("", ""))
        if not around or not self.bores:
            return
        between = word(self.valve.supply_acts) == "between the beats"
        supply, other = (around, within) if word(self.valve.serves) == "inlet" else (within, around)
        middle, beyond = (supply, other) if between else (other, supply)
        x, zero = origin
        out = x + self.widest * scale + 12
        paper.text((out, zero + self.apart * 0.62 * scale), middle, "quiet")
        paper.text((out, zero - 0.5 * max(self.highest * 0.3, 20.0) * scale), beyond, "quiet")


def _metal(paper: Paper, bore: SeatBore, at: Point, scale: float) -> None:
    """The metal of the block round a seat, from its bore out, as deep as the bore."""
    inner, wall = (millimetres(bore.diameter) or 0.0) / 2, millimetres(bore.wall)
    deep = millimetres(bore.depth)
    if inner and wall and deep:
        hatched(paper, (at[0] + inner * scale, at[1]), wall * scale, deep * scale, pitch=11, rising=False)


def surroundings_of(
    assessment: Assessment, valve: PoppetValve, apart: float, seats: Sequence[object]
) -> Surroundings:
    """What the specs state round a valve whose seats are given from the upper to the lower."""
    bores = []
    for seat, deep in zip(seats, (0.0, apart), strict=True):
        block = followed(assessment, seat.pressed_into) if isinstance(seat, ValveSeat) else None
        if isinstance(seat, ValveSeat) and isinstance(block, CylinderBlock):
            bore = block.seat_bores.get(word(seat.in_bore))
            if bore is not None:
                bores.append((bore, seat, deep))
    cages = (one for one in known_of(assessment, ValveCage) if followed(assessment, one.surrounds) is valve)
    spindles = (one for one in known_of(assessment, ValveSpindle) if followed(assessment, one.moves) is valve)
    return Surroundings(valve, tuple(bores), next(cages, None), next(spindles, None), apart)
