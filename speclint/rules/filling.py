"""Places that a design has for parts: each is filled once, or closed on purpose, or still to be drawn.

A place is an entry of a table of a spec (a bore, an end, a pad) or is implied by a part (a rod implies a crosshead). A
family declares which places an owner has and what fills each; the rule made of the declaration judges them by the
stage of the design. While it is a draft an empty place is no finding: it stands in the list of what is still to be
drawn. A place that is filled twice, or by the wrong part, is told at every stage, with both files, however many parts
it still wants.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Literal

from msgspec import Struct

from speclint.equations import COMMON_PRACTICE, Source
from speclint.errors import NOWHERE, Location
from speclint.rules.definition import Rule, rule
from speclint.rules.grade import Grade
from speclint.rules.judgement import Judgement
from speclint.rules.placing import not_read
from speclint.rules.sheet import Sheet
from speclint.specs import Component, Spec

#: How grave an empty place is: it can hurt somebody, it is a part missing, a part bought or a plan missing, or a plan
#: without which nothing may be released.
Gravity = Literal["hold", "part", "plan", "plan to hold"]

_EMPTY = {
    "hold": (Grade.HOLD, Grade.HOLD),
    "part": (Grade.NONCONFORMITY, Grade.NONCONFORMITY),
    "plan": (Grade.OBSERVATION, Grade.NONCONFORMITY),
    "plan to hold": (Grade.OBSERVATION, Grade.HOLD),
}


class ToFill(Struct, frozen=True):
    """One place and the parts that are found in it.

    ``name`` says which place it is, such as "bore left", ``wants`` what fills it, such as "cylinder liner".
    ``least`` and ``most`` are how many may; a ``most`` of 0 sets no limit. ``wrong`` says what is wrong with the part
    that fills it, such as its end. ``where`` is looked at when the place is empty.
    """

    name: str
    wants: str
    fillers: Sequence[Spec | str] = ()
    least: int = 1
    most: int = 1
    wrong: str = ""
    where: Location = NOWHERE

    def at(self, owner: Component) -> Location:
        """Where to look for the place: where it is stated, else the spec of its owner."""
        return self.where if self.where.file else owner.where

    @property
    def filled(self) -> bool:
        """Whether as many parts as are wanted are there."""
        return len(self.fillers) >= self.least

    @property
    def can_be_judged(self) -> bool:
        """Whether no part that is still to be drawn could change what is said of it: it is filled, or it is wrong."""
        return self.filled or bool(self.wrong)

    @property
    def too_many(self) -> bool:
        """Whether more parts are there than the place takes."""
        return bool(self.most) and len(self.fillers) > self.most


def filled_once(
    name: str,
    *,
    on: type[Component] | Sequence[type[Component]],
    places: Callable[..., Iterable[ToFill]],
    row: int,
    gravity: Gravity,
    title: str,
    why: str,
    leaves_out: str,
    cites: Sequence[Source] = (COMMON_PRACTICE,),
    edition: int = 1,
) -> Rule:
    """The rule that every place of one sort is filled once, by the part that belongs there.

    ``places`` gives the places of a component, from the component and its sheet; its docstring says how they are known.
    ``row`` orders the places in the list of what is still to be drawn. ``gravity`` says how grave an empty place is.
    To ``leaves_out`` is added who decides. That a part is there guards against no hazard: its own rules do.
    """

    def judged(component: Component, sheet: Sheet) -> Judgement:
        return _judged(tuple(places(component, sheet)), component, gravity, sheet)

    judged.__doc__ = places.__doc__
    lost, released = _EMPTY[gravity]
    return rule(
        name,
        title=title,
        on=on,
        grade=max(lost, Grade.NONCONFORMITY),
        gravest=max(lost, released, Grade.NONCONFORMITY),
        cites=cites,
        why=why,
        leaves_out=f"{leaves_out}; whether a place may be left empty, the local code and a competent person decide",
        edition=edition,
        row=row,
        against=(),
    )(judged)


def _judged(found: tuple[ToFill, ...], owner: Component, gravity: Gravity, sheet: Sheet) -> Judgement:
    if not found:
        raise sheet.not_applicable("it has no such place")
    stage, unread = sheet.setting("stage"), sheet.unread_fillers()
    if unread:
        found = tuple(one for one in found if one.can_be_judged)
        if not found:
            sheet.require_read(unread)
    for one in found:
        sheet.note_place(f"{one.wants} ({one.name})", filled=one.filled, where=one.at(owner))
    judged = [_of_place(one, owner, _grades(gravity, stage), sheet) for one in found]
    empty = [one for one in found if not one.filled]
    if empty and stage == "draft":
        wrong = [
            part for one, part in zip(found, judged, strict=True) if one.can_be_judged and not part.holds
        ]
        if not wrong:
            raise sheet.not_applicable(
                f"a draft: {len(empty)} still to be drawn, listed under {sheet.listed_under()}"
            )
        judged = wrong
    return sheet.worst(*judged) if not unread else sheet.each([*judged, *unread], _beside_unread)


def _beside_unread(item: object) -> Judgement:
    """A judgement as it is; of a file that could not be read, that a place was not judged for it."""
    if isinstance(item, Judgement):
        return item
    raise not_read((str(item),))


def _grades(gravity: Gravity, stage: str) -> tuple[Grade, Grade]:
    """The grade of an empty place, and of one that is wrongly filled."""
    for_review, released = _EMPTY[gravity]
    wrong = Grade.HOLD if gravity == "hold" else Grade.NONCONFORMITY
    return (released if stage == "released" else for_review), wrong


def _of_place(one: ToFill, owner: Component, grades: tuple[Grade, Grade], sheet: Sheet) -> Judgement:
    lost, wrong = grades
    where = one.at(owner)
    names = [_named(part) for part in one.fillers]
    if one.too_many:
        times = "twice" if len(names) == 2 else f"{len(names)} times"
        judged = sheet.states(
            False, f"{one.name} is filled {times} ({one.wants}): {', '.join(names)}"
        ).graded(wrong)
        where = _place_of(one.fillers[-1], where)
    elif one.wrong:
        judged = sheet.states(False, f"{one.name}: {one.wrong}").graded(wrong)
        where = _place_of(one.fillers[0], where) if one.fillers else where
    elif not one.filled:
        of = f"{len(names)} of {one.least} are there" if names else "none is there"
        judged = sheet.states(False, f"{one.name} wants {_article(one.wants)} {one.wants}: {of}").graded(lost)
    else:
        judged = sheet.states(True, f"{one.name}: {', '.join(names) or 'none is wanted'}")
    return judged.pointing_at(where).of_item(one.name)


def _article(wants: str) -> str:
    return "an" if wants[:1].lower() in "aeiou" else "a"


def _named(part: Spec | str) -> str:
    return part if isinstance(part, str) else f"{part.id} ({part.where.file})"


def _place_of(part: Spec | str, otherwise: Location) -> Location:
    return otherwise if isinstance(part, str) else part.where
