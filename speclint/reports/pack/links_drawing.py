"""The links of a part: the parts that it names, and those that name it, since what changes on it they feel."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from speclint.checking import Assessment
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.paper import SIZE, Paper, shortened, wide
from speclint.repository import Design
from speclint.rules import Grade
from speclint.specs import Link, Spec

_WIDE, _BOX, _PITCH, _TOP, _FOOT = 780.0, 232.0, 46.0, 44.0, 18.0
_HIGH = 36.0  # of the box of a part: its id, and under it the keys of the links
_MOST = 10  # boxes on one side; the table has the others
_SAYS = (
    "In the middle the part; on the left the parts whose specs name it, on the right those that it names, each with "
    "the keys of the links; of more than ten on one side the table has the rest. Its findings, and a change of it, "
    "concern them first."
)
_COLUMNS = ("part", "how it is joined", "by the keys")


class _Joined(Struct, frozen=True):
    """A part at the other end of some links, and the keys that state them."""

    part: str
    keys: tuple[str, ...]


def links_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each part with a hold that is linked to another."""
    design = assessment.design
    if design is None:
        return
    held = {one.component for one in assessment.checks if one.grade is Grade.HOLD}
    for name in sorted(held & design.specs.keys()):
        naming, named = links_to(design, design.specs[name]), links_from(design, design.specs[name])
        if naming or named:
            yield _figure(name, naming, named)


def links_from(design: Design, spec: Spec) -> tuple[_Joined, ...]:
    """The parts that a spec names, in the order of their ids."""
    found: dict[str, list[str]] = defaultdict(list)
    for key, value in spec.at_keys():
        if isinstance(value, Link) and value.id in design.specs:
            found[value.id].append(key)
    return _in_order(found)


def links_to(design: Design, spec: Spec) -> tuple[_Joined, ...]:
    """The parts whose specs name one, in the order of their ids."""
    found: dict[str, list[str]] = defaultdict(list)
    for part in design.linking_to(spec):
        for key, value in part.at_keys():
            if isinstance(value, Link) and value.id == spec.id:
                found[part.id].append(key)
    return _in_order(found)


def _in_order(found: Mapping[str, Sequence[str]]) -> tuple[_Joined, ...]:
    return tuple(_Joined(part, tuple(keys)) for part, keys in sorted(found.items()))


def _figure(name: str, naming: Sequence[_Joined], named: Sequence[_Joined]) -> Figure:
    rows = [(one.part, "names it", ", ".join(one.keys)) for one in naming[_MOST:]]
    rows += [(one.part, "is named by it", ", ".join(one.keys)) for one in named[_MOST:]]
    most = max(len(_shown(side)) + (len(side) > _MOST) for side in (naming, named))
    paper = Paper(
        f"links-{name}",
        f"Links of {name}",
        f"named by {_listed(naming)}; names {_listed(named)}",
        _WIDE,
        _TOP + max(most, 1) * _PITCH + _FOOT,
    )
    paper.named(
        *(text for row in rows for text in row), *(key for one in (*naming, *named) for key in one.keys)
    )
    middle = _TOP + (max(most, 1) - 1) * _PITCH / 2
    x = (_WIDE - _BOX) / 2
    _side(paper, naming, 0.0, (x, middle), heading="parts that name it")
    _side(paper, named, _WIDE - _BOX, (x + _BOX, middle), heading="parts that it names")
    paper.box((x, middle), _BOX, _HIGH, "blank")
    paper.text((_WIDE / 2, middle + 23), _fitting(paper, name), "word", "middle")
    return Figure.of(paper, name, f"Links of {name}", _SAYS, rows, _COLUMNS)


def _listed(side: Sequence[_Joined]) -> str:
    return ", ".join(one.part for one in side) or "none"


def _shown(side: Sequence[_Joined]) -> Sequence[_Joined]:
    return side[:_MOST]


def _side(
    paper: Paper,
    side: Sequence[_Joined],
    x: float,
    part: tuple[float, float],
    *,
    heading: str,
) -> None:
    """The parts of one side, each with a line to the part."""
    paper.text((x, 20), heading, "quiet")
    at = part[0], part[1] + _HIGH / 2
    for number, one in enumerate(_shown(side)):
        y = _TOP + number * _PITCH
        edge = x + _BOX if x < part[0] else x
        paper.line((edge, y + _HIGH / 2), at, "thin")
        paper.box((x, y), _BOX, _HIGH, "blank")
        paper.text((x + 8, y + 15), _fitting(paper, one.part))
        paper.text((x + 8, y + 30), _fitting(paper, ", ".join(one.keys)), "quiet")
    if len(side) > _MOST:
        more = f"and {len(side) - _MOST} more: see the table"
        paper.named(more)
        paper.text((x + 8, _TOP + _MOST * _PITCH + 15), more, "quiet")


def _fitting(paper: Paper, text: str) -> str:
    """A text as it fits a box."""
    fits = text if wide(text) <= _BOX - 16 else shortened(text, _BOX - 16, SIZE)
    paper.named(fits)
    return fits
