"""Parts that are alike are examined alike."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import Component, bare_words
from speclint_release.inputs.examinations import no_examination


@rule(
    "like.examined-alike",
    title="Of parts that are alike, of one metal and for one pressure, none asks for no examination where another asks "
    "for one, and those of one size, or one the mirror of the other, ask for the same",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="what cracks on the left cracks on the right: an examination that one of the two is spared was forgotten there",
    leaves_out="which of two examinations is right; what is asked of parts of unlike sizes, mirrors apart; parts that "
    "both ask for none (release.pressure-part and release.safety-part ask for one where they must); words that mean "
    "the same and are written otherwise, about which a query asks",
    against=(),
    edition=2,
)
def examined_alike(component: Component, sheet: Sheet) -> Judgement:
    """Every part that is like this one, its mirror, or stated with it for each place, of its metal and pressure."""
    others = [one for one in sheet.parts_alike(component) if _of_one_need(component, one, sheet)]
    if not others:
        raise sheet.not_applicable("no part alike is of its metal and for its pressure")
    own = _asked(component, sheet)
    return sheet.each(others, lambda other: _judged(component, own, other, sheet))


def _of_one_need(component: Component, other: Component, sheet: Sheet) -> bool:
    """Whether two parts are of one metal and designed for one pressure, or neither states any."""
    metals = {sheet.said(f"material of {one.id}", one.material) for one in (component, other)}
    pressures = {
        sheet.take_nominal(f"p of {one.id}", one.design_pressure)
        if sheet.is_stated(f"design pressure of {one.id}", one.design_pressure)
        else None
        for one in (component, other)
    }
    return len(metals) == len(pressures) == 1


def _asked(part: Component, sheet: Sheet) -> str | None:
    """The examination that a part asks for; None where it asks for none."""
    how: str | None = sheet.said(f"examination of {part.id}", part.examination)
    return None if how is None or no_examination(how) else how


def _judged(component: Component, own: str | None, other: Component, sheet: Sheet) -> Judgement:
    theirs = _asked(other, sheet)
    named = f"{other.id} ({other.where.file})"
    if theirs is None or (own is not None and bare_words(own) == bare_words(theirs)):
        return sheet.states(True, f"{named} asks for no other examination")
    if own is None:
        says = f"no examination is asked for, and {named} is alike and asks for: {theirs}"
        return sheet.states(False, says, where=component.where)
    if not _of_each_hand(component, other, sheet) and sheet.sizes_apart(component, other):
        return sheet.states(True, f"{named} is of other sizes, and is examined in its own way")
    says = f"examination is {own}, and of {named}, which is alike: {theirs}"
    return sheet.states(False, says, where=component.examination.where).graded(Grade.QUERY)


def _of_each_hand(component: Component, other: Component, sheet: Sheet) -> bool:
    """Whether one of two parts is the mirror of the other: a size of its own makes no other work of it."""
    mirrored = {sheet.said(f"mirror of {one.id}", one.mirror_of) for one in (component, other)}
    return not mirrored.isdisjoint({component.id, other.id})


RULES = (examined_alike,)
