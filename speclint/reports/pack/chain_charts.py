"""Dimension chains: each link in its turn, and the gap that they leave enlarged, with what each adds to its spread."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial

import svg
from msgspec import Struct

from speclint.checking import Assessment, Check
from speclint.quantities import Measure
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.figures import Figure, dimension_of, said, specs_of, word
from speclint.reports.pack.paper import Paper, axis_marks, hatched, shortened, wide
from speclint.reports.pack.printed import Quantity, Words, joined, judged, shown, stated, words, worked
from speclint.specs import ChainLink, DimensionChain

_WIDTH, _LABELS, _TOP, _ROW = 900.0, 210.0, 18.0, 26.0
_LEFT, _RIGHT = 230.0, 590.0  # where bars begin and end; beyond them are the sizes in words
_WORDS = _RIGHT + 14
_BREAK = 66.0  # for the axis of the links, and the word over the gap
_FOOT = 44.0
_SHARE = 0.08  # of the width of an axis, beyond the least and the greatest of what is drawn
_FAR = 10.0  # a limit so many times the spread of the gap away from it stands in words alone
_HOT = "chain.worst-case-hot"
_SAYS = (
    "Above, the links to one scale, each beginning where the last one ended. Below, the gap that they leave, enlarged "
    "to a scale of its own: hatched from its least to its greatest with every link at its worst, the red lines the "
    "limits that the chain sets it; then how far each link moves it between its limits, the greatest first."
)


class Linked(Struct, frozen=True):
    """A link with the size that it names."""

    name: str
    link: ChainLink
    size: Measure

    @property
    def lever(self) -> float:
        """What the gap gains when the link grows by one: negative where the link narrows it."""
        size = self.link.lever.nominal if isinstance(self.link.lever, Measure) else 1.0
        return size if word(self.link.direction) == "widens" else -size

    @property
    def said(self) -> Words:
        """Its size and its sense in words."""
        lever = self.link.lever
        share = words(", {} of it", said(lever)) if isinstance(lever, Measure) else ""
        return words(
            "{} by {}{}", word(self.link.direction) or "direction not stated", said(self.size), share
        )

    def end(self, *, greatest: bool) -> Quantity:
        """The limit of its size at which the gap is the greatest, or the least."""
        return stated(self.size, "high" if (self.lever > 0) is greatest else "low")

    @property
    def moves(self) -> Quantity:
        """How far the gap moves when it goes from one limit to the other."""
        return worked(
            partial(moved, self.lever), low=stated(self.size, "low"), high=stated(self.size, "high")
        )


def moved(lever: float, low: float, high: float) -> float:
    """How far a gap moves when a link goes from one limit to the other."""
    return abs(lever) * (high - low)


def gap(levers: Sequence[float], **sizes: float) -> float:
    """The gap that links leave, each as ``x0``, ``x1`` … with its lever."""
    return sum(lever * sizes[f"x{number}"] for number, lever in enumerate(levers))


def gap_of(links: Sequence[Linked], *, greatest: bool) -> Quantity:
    """The gap with each link at its worst."""
    ends = {f"x{number}": one.end(greatest=greatest) for number, one in enumerate(links)}
    return worked(partial(gap, tuple(one.lever for one in links)), **ends)


def chain_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each chain whose links can all be found."""
    hot = {one.component: one for one in assessment.checks if one.rule.name == _HOT and judged(one)}
    for chain in specs_of(assessment, DimensionChain):
        found = [(name, link, dimension_of(assessment, link)) for name, link in chain.chain.items()]
        links = [Linked(name, link, one) for name, link, one in found if one is not None]
        if links and len(links) == len(found):
            yield _figure(chain, links, hot.get(chain.id))


def _figure(chain: DimensionChain, links: list[Linked], hot: Check | None) -> Figure:
    least, most = (gap_of(links, greatest=greatest) for greatest in (False, True))
    says = words("{} to {} {mm}", *(shown(one, "mm", 3) for one in (least, most)))
    rows: list[tuple[str, ...]] = [(one.name, one.said, _between("{} {mm}", one.moves)) for one in links]
    rows.append(("gap, cold", says, _between("{} {mm}", worked(partial(moved, 1.0), low=least, high=most))))
    if hot is not None:
        rows.append((f"gap hot, {hot.case or 'at its worst'}", _hot_words(hot), ""))
    moving = sorted((one for one in links if one.moves.value > 0), key=lambda one: -one.moves.value)
    below = 1 + (hot is not None) + len(moving)
    paper = Paper(
        f"chain-{chain.id}",
        f"Chain of {chain.id}",
        "; ".join(f"{what}: {size}" for what, size, _ in rows),
        max(_WIDTH, _WORDS + max(wide(size) for _, size, _ in rows) + 8),
        _TOP + (len(links) + below) * _ROW + _BREAK + _FOOT,
    )
    _links(paper, links)
    _enlarged(paper, chain, (least, most), moving, hot, _TOP + len(links) * _ROW + _BREAK)
    return Figure.of(
        paper,
        chain.id,
        f"{chain.id}: the links and the gap that they leave",
        joined(
            " ",
            [
                _SAYS,
                words("Required cold: at least {}, at most {}.", said(chain.least), said(chain.greatest)),
            ],
        ),
        rows,
        ("link", "size", "moves the gap by"),
    )


def _between(template: str, quantity: Quantity) -> Words:
    return words(template, shown(quantity, "mm", 3))


def _hot_words(hot: Check) -> Words:
    held = judged(hot)
    assert held is not None  # as was asked
    sign = hot.judgement.compared if hot.judgement else ""
    return words("{} {mm}, needs {} {} {mm}", shown(held[0], "mm", 3), sign, shown(held[1], "mm", 3))


def _axis(ends: Sequence[float]) -> tuple[float, float]:
    low, high = min(ends), max(ends)
    room = (high - low) * _SHARE or 0.5
    return low - room, high + room


def _placing(ends: tuple[float, float]) -> Callable[[float], float]:
    low, high = ends
    return lambda value: _LEFT + (value - low) / (high - low) * (_RIGHT - _LEFT)


def _scale(paper: Paper, axis: str, ends: tuple[float, float], top: float, foot: float) -> None:
    """Upright lines at round numbers, with the numbers beneath."""
    place = _placing(ends)
    for number, value in axis_marks(*ends, "mm", 4):
        paper.line((place(value), top), (place(value), foot + 5), "grid")
        paper.mark(axis, number, place(value), (place(value), foot + 18))


def _row(paper: Paper, number: int, top: float, label: str, says: str) -> float:
    """The words of a row; returns the height of its middle."""
    middle = top + (number + 0.5) * _ROW
    paper.text((_LABELS, middle + 4), shortened(label, _LABELS), "word", "end")
    paper.text((_WORDS, middle + 4), says, "figure")
    return middle


def _links(paper: Paper, links: Sequence[Linked]) -> None:
    """Each link as a bar, from where the last one ended."""
    along = [0.0]
    for one in links:
        along.append(along[-1] + one.lever * one.size.nominal * 1e3)
    ends = _axis(along)
    place, foot = _placing(ends), _TOP + len(links) * _ROW
    _scale(paper, "x links", ends, _TOP, foot)
    for number, one in enumerate(links):
        middle = _row(paper, number, _TOP, one.name, one.said)
        start, end = sorted((place(along[number]), place(along[number + 1])))
        paper.box((start, middle - 6), end - start, 12, "shaft" if one.lever > 0 else "hole")
        if number + 1 < len(links):
            x = place(along[number + 1])
            paper.line((x, middle), (x, middle + _ROW), "thin")
    paper.text(
        ((_LEFT + _RIGHT) / 2, foot + 34), words("{mm} from where the chain begins"), "quiet", "middle"
    )


def _enlarged(
    paper: Paper,
    chain: DimensionChain,
    gaps: tuple[Quantity, Quantity],
    moving: Sequence[Linked],
    hot: Check | None,
    top: float,
) -> None:
    """The gap in a scale of its own: cold and hot, and what moves it."""
    held = judged(hot) if hot is not None else None
    low, high = (one.in_unit("mm") for one in gaps)
    limits = [stated(one) for one in (chain.least, chain.greatest) if isinstance(one, Measure)]
    far = _FAR * max(high - low, 1e-3)
    near = [one for one in limits if low - far <= one.in_unit("mm") <= high + far]
    hots = [one for one in held or () if low - far <= one.in_unit("mm") <= high + far]
    ends = _axis([low, high, *(one.in_unit("mm") for one in (*near, *hots))])
    place, rows = _placing(ends), 1 + (hot is not None) + len(moving)
    foot = top + rows * _ROW
    _scale(paper, "x gap", ends, top, foot)
    middle = _row(paper, 0, top, "gap, cold", words("{} to {} {mm}", *(shown(one, "mm", 3) for one in gaps)))
    hatched(paper, (place(low), middle - 7), max(place(high) - place(low), 1.5), 14, pitch=5, rising=True)
    for one in gaps:
        paper.place(one, "mm", "x gap", place(one.in_unit("mm")))
    for one in near:
        _limit(paper, one, place, middle)
    if hot is not None and held is not None:
        label = f"hot, {hot.case}" if hot.case else "hot"
        middle = _row(paper, 1, top, label, _hot_words(hot))
        if held[1] in hots:
            _limit(paper, held[1], place, middle)
        if held[0] in hots:
            _hot(paper, hot, held[0], place(held[0].in_unit("mm")), middle)
    at = low
    for number, link in enumerate(moving, rows - len(moving)):
        middle = _row(paper, number, top, f"by {link.name}", _between("{} {mm}", link.moves))
        by = link.moves.in_unit("mm")
        paper.box(
            (place(at), middle - 5), place(at + by) - place(at), 10, "shaft" if link.lever > 0 else "hole"
        )
        at += by
        if number + 1 < rows:
            paper.line((place(at), middle), (place(at), middle + _ROW), "thin")
    paper.text(((_LEFT + _RIGHT) / 2, foot + 34), words("{mm}, the gap enlarged"), "quiet", "middle")


def _limit(paper: Paper, of: Quantity, place: Callable[[float], float], middle: float) -> None:
    x = place(of.in_unit("mm"))
    paper.line((x, middle - 11), (x, middle + 11), "limit")
    paper.place(of, "mm", "x gap", x)


def _hot(paper: Paper, hot: Check, found: Quantity, x: float, middle: float) -> None:
    """What the sheet judges hot; the mark leads to the sheet."""
    paper.place(found, "mm", "x gap", x)
    ink = "bad" if hot.outcome == "finding" else "hot"
    mark = svg.Rect(x=round(x - 3, 2), y=round(middle - 7, 2), width=6, height=14, class_=[ink])
    paper.linked(sheet_anchor(hot), f"{hot.rule.name}: {hot.outcome}", [mark])
