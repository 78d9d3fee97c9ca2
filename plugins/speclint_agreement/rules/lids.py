"""The hole of a cover: the spindle that goes through it, and what stands round it or on the cover."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import FIRST_PRINCIPLES, Grade, Pair, Rule, Sheet, agreement, worked
from speclint.equations import Metres
from speclint.specs import Borne, ChamberCover, CylinderCover, ValveSpindle
from speclint_agreement.formulae.lids import with_play


def _holes(cover: ChamberCover, sheet: Sheet) -> Iterator[Pair]:
    """The hole of the cover against each part of the spindle that goes through it.

    The valve lifts towards the cover. Where steam on the end of its spindle pushes it open, the spindle leaves on that
    side and wants a hole, also of a cover that says it has none (a hole of 0 mm). Where it pushes it shut, the spindle
    leaves on the other side, and a cover without a hole is right. A cover that says nothing of a hole is asked for it.
    """
    if not sheet.is_stated("valve under it", cover.over):
        return
    stated = sheet.is_stated("hole", cover.central_hole)
    blind = not stated or sheet.take_nominal("d_h", cover.central_hole) == 0
    for spindle in sheet.belonging_to(sheet.follow(cover.over), ValveSpindle):
        if blind and _leaves_below(spindle, sheet, asked=stated):
            continue
        guide = spindle.guide_bore, spindle.diameter
        guided = all(sheet.is_stated(f"guide or size of {spindle.id}", one) for one in guide)
        for name, size in (
            ("seal diameter", spindle.seal_diameter),
            ("gear end diameter", spindle.gear_end_diameter),
        ):
            if sheet.is_stated(f"{name} of {spindle.id}", size):
                d = _with_play(spindle, sheet.take("d_s", size), sheet) if guided else 0.0
                least = worked(d, size, *guide)
                sheet.take_nominal("d_h", cover.central_hole)  # asked for: no other place gives it
                yield Pair(cover.central_hole, least if guided else size, "at least", name=name)


def _leaves_below(spindle: ValveSpindle, sheet: Sheet, *, asked: bool) -> bool:
    """Whether a spindle leaves on the side away from the cover; ``asked`` where it must say so."""
    name = f"how {spindle.id} is pushed"
    if asked:
        return sheet.read(name, spindle.pushed) == "shut"
    return sheet.said(name, spindle.pushed) == "shut"


def _with_play(spindle: ValveSpindle, d_s: Metres, sheet: Sheet) -> Metres:
    """What a part of a spindle takes up where the spindle lies aside by the least play that its guide leaves it."""
    (bore, _), (_, thick) = (
        sheet.take_limits("D_g", spindle.guide_bore),
        sheet.take_limits("d", spindle.diameter),
    )
    return sheet.work("d_p", with_play, d_s=d_s, D_g=bore, d=thick)


def _stands(cover: ChamberCover | CylinderCover, sheet: Sheet) -> Iterator[Pair]:
    """The hole of the cover against the circle on which each thing bears that stands on it.

    And the circle of a spring against the housing round it; and on a cover over a valve the valve that a spring shuts,
    or whose lift a stop ends, against that valve.
    """
    for name, one in cover.bears.items():
        if isinstance(cover, ChamberCover) and sheet.is_stated("valve under it", cover.over):
            yield from _of_its_valve(name, one, cover, sheet)
        if not sheet.is_stated(f"circle of {name}", one.across):
            continue
        sheet.take_nominal("d_h", cover.central_hole)  # asked for: no other place gives it
        yield Pair(cover.central_hole, one.across, "at most", name=name)
        if sheet.is_stated(f"spring of {name}", one.spring):
            spring = sheet.follow(one.spring)
            if sheet.is_stated(f"housing of {spring.id}", spring.housing):
                yield Pair(one.across, spring.housing, "at most", name=f"{name} in its housing")


def _of_its_valve(name: str, one: Borne, cover: ChamberCover, sheet: Sheet) -> Iterator[Pair]:
    """The valve of a spring or a stop on the cover against the valve under it: its load is that of the other else."""
    under = worked(sheet.follow(cover.over).id, cover.over)
    if sheet.is_stated(f"spring of {name}", one.spring):
        spring = sheet.follow(one.spring)
        if sheet.is_stated(f"valve of {spring.id}", spring.closes):
            closed = worked(sheet.follow(spring.closes).id, spring.closes, one.spring)
            yield Pair(closed, under, name=f"{name} of its valve")
    if sheet.is_stated(f"stop of {name}", one.stop):
        stopped = worked(sheet.follow(one.stop).id, one.stop)
        yield Pair(stopped, under, name=f"{name} of its valve")


hole_for_spindle: Rule = agreement(
    "cover.hole-for-spindle",
    title="The central hole of a cover over a valve is at least as wide as the spindle's seal diameter and gear end "
    "diameter, each plus the least play of the spindle in its guide",
    on=ChamberCover,
    pairs=_holes,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a spindle that binds in the cover holds its valve open, or the cover goes on over no spindle at all",
    leaves_out="wear of the guide, and cover and spindle of metals that grow otherwise than those of the guide; what a "
    "hole is for where the spindle leaves on the other side; a box for its seal",
    cites=[FIRST_PRINCIPLES],
    edition=4,
    against=(),
    against_on={"valve-spindle": ("seize",)},
)

stands_beside_hole: Rule = agreement(
    "cover.hole-under-what-bears",
    title="The central hole of a cover is no wider than the circle on which each spring, stop or jack bears, nor that "
    "of a spring wider than its housing; springs and stops are those of the valve under it",
    on=(ChamberCover, CylinderCover),
    pairs=_stands,
    within="",
    grade=Grade.NONCONFORMITY,
    why="what has no metal under it falls through, and the spring that was to shut the valve pushes on nothing; a "
    "load said to bear further out is judged to bend the cover less than it does",
    leaves_out="how wide the ring of metal is on which it bears; what states no circle, and springs that state no "
    "housing; a cover that names no valve under it",
    edition=4,
    against=(),
)

RULES = (hole_for_spindle, stands_beside_hole)
