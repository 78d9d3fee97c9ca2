"""Parts that belong to nothing, and drawing numbers that stand on unlike parts, or on parts of unlike sizes."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import COMMON_PRACTICE, Grade, Judgement, NotKnown, Sheet, rule
from speclint.facts import holds_pressure, is_safety_part
from speclint.specs import Component, SizeApart, as_item

#: Features of a block: they stand on its drawing, and are no pieces.
_FEATURES = ("steam-passage", "partition")
_BLANKS = ("casting", "weldment")
#: What a part belongs to in the end.
_WHOLES = ("engine", "cylinder-block")
#: How pieces are put together: the same studs may stand on other circles, and their drawing says nothing of that.
_JOINTS = ("bolted-joint", "frame-fastening")
#: Of several pieces, and made to a drawing of its own.
_SETS = ("driving-axle",)
_SHOWN = 3
#: How the key of a thread ends.
_THREAD = "thread"
#: The class of general tolerances of a part, and how one that it leaves out is listed.
_CLASS, _NOT_STATED = "general_tolerance", "not stated"


@rule(
    "release.belongs-somewhere",
    title="A chain of links joins every part to an engine or a block, and something uses every duty and outline",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a part that belongs to nothing is judged beside nothing, and is made for nothing",
    leaves_out="a part that is like another and does not state its own place (like.place-stated); materials of the "
    "repository that nothing is made of",
    against=(),
    edition=2,
)
def belongs(component: Component, sheet: Sheet) -> Judgement:
    """Links are followed either way; an engine also answers for what nothing of the repository uses."""
    grade = Grade.OBSERVATION if sheet.setting("stage") == "draft" else Grade.NONCONFORMITY
    if component.is_one_of(("engine",)):
        return _nothing_left_over(sheet).graded(grade)
    if component.is_one_of(("cylinder-block",)):
        return sheet.states(True, "a block belongs to itself: engine.blocks-named asks for its engine")
    joined = sheet.joined_to(component, *_WHOLES)
    if not joined and _base(component, sheet) != component.id and sheet.taken_over(component).places:
        raise sheet.not_applicable("it does not state its own place: like.place-stated tells of it")
    says = f"{'a' if joined else 'no'} chain of links joins it to an engine or a block"
    return sheet.states(joined, says, where=component.where).graded(grade)


def _nothing_left_over(sheet: Sheet) -> Judgement:
    unused = sheet.left_over()
    if not unused:
        return sheet.states(True, "something uses every duty and outline of the repository")
    named = ", ".join(f"{one.called} {one.id} ({one.where.file})" for one in unused)
    return sheet.states(False, f"nothing uses {named}", where=unused[0].where)


@rule(
    "release.one-drawing-one-part",
    title="One drawing number stands on one part, in one revision",
    on=Component,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    edition=6,
    cites=[COMMON_PRACTICE],
    why="the shop makes what the number says: of two parts under one number it makes the wrong one",
    leaves_out="drawings that are in no spec; a part of the other hand on the number of the first, where both state "
    "their hand; which of two parts keeps the number, a competent person decides",
    against=(),
)
def one_part(component: Component, sheet: Sheet) -> Judgement:
    """Every other component of the number: a plan and a feature may share it, a part only one that it is like."""
    if not sheet.is_stated("drawing", component.drawing):
        raise sheet.not_applicable("no drawing number is stated (release.identity)")
    others = sheet.sharing_drawing(component)
    if not others:
        return sheet.states(True, f"no other part is on drawing {sheet.read('drawing', component.drawing)}")
    of_one = component, *others
    return sheet.each(others, lambda other: _together(component, other, of_one, sheet))


def _together(component: Component, other: Component, of_one: Sequence[Component], sheet: Sheet) -> Judgement:
    named = f"{other.id} ({other.where.file})"
    where = component.drawing.where
    both = component, other
    if any(one.is_one_of(_FEATURES) for one in both):
        return _of_one_revision(component, other, Grade.NONCONFORMITY, sheet)
    grade = _grade(both, sheet)
    judged = _of_one_revision(component, other, grade, sheet)
    if not judged.holds:
        return judged
    blank, other_blank = (one.is_one_of(_BLANKS) for one in both)
    if blank != other_blank:
        says = f"{named} has the number of this one: a blank has its own, or that of the part with a suffix"
        return sheet.states(False, says, where=where).graded(Grade.OBSERVATION)
    pieces = blank or all(one.of_metal for one in both)
    if not pieces or any(_alike((component, one), sheet) and _alike((one, other), sheet) for one in of_one):
        return sheet.states(True, f"{named} may be on the same drawing")
    says = f"{named} is on the same drawing, and neither is stated to be like the other"
    return sheet.states(False, says, where=where).graded(grade)


def _of_one_revision(component: Component, other: Component, grade: Grade, sheet: Sheet) -> Judgement:
    named = f"{other.id} ({other.where.file})"
    stated = [sheet.is_stated(f"revision of {one.id}", one.revision) for one in (component, other)]
    if not all(stated):
        return sheet.states(True, f"{named} is on the same drawing; the revision of one is not stated")
    own, theirs = (sheet.read(f"revision of {one.id}", one.revision) for one in (component, other))
    says = f"{named} is on the same drawing" + (
        "" if own == theirs else f" in revision {theirs}, this one in {own}"
    )
    return sheet.states(own == theirs, says, where=component.revision.where).graded(grade)


def _grade(both: tuple[Component, Component], sheet: Sheet) -> Grade:
    """A hold in a release where either part holds pressure, or can hurt someone."""
    grave = sheet.setting("stage") == "released" and any(
        is_safety_part(one, sheet) or holds_pressure(one, sheet) for one in both
    )
    return Grade.HOLD if grave else Grade.NONCONFORMITY


def _alike(both: tuple[Component, Component], sheet: Sheet) -> bool:
    """Whether one part is like the other, or both like a third; or the mirror of it; or both stand in one file."""
    if both[0].where.file == both[1].where.file:
        return True  # several parts of one spec: each
    own, theirs = (_base(one, sheet) for one in both)
    return own == theirs


def _base(part: Component, sheet: Sheet) -> str:
    """The id of the part that a part is like, or the mirror of; its own where it is neither."""
    like = sheet.said(f"like of {part.id}", part.like)
    return like or sheet.said(f"mirror of {part.id}", part.mirror_of) or part.id


@rule(
    "release.items-of-one-drawing",
    title="Parts of one kind on one drawing that differ in a size, a number, their metal, form, such as the law of "
    "a cam, or a treatment, such as shot peening or hardness, are different items of it",
    on=Component,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="the shop makes what the number says: of two sizes under one number it makes both parts to one of them",
    leaves_out="whether the table of the drawing has that item, with these sizes; what only one part states beside a "
    "finish, a skin and a general tolerance; sizes and words that are set or worn where it is fitted; how it is "
    "locked; studs and bolts of joints; which is right, a competent person decides",
    against=(),
    edition=6,
)
def items(component: Component, sheet: Sheet) -> Judgement:
    """Lengths and angles with their limits, the material, and what a field marks as given to the shop, as a number.

    Parts that differ must each state their ``item``. A thread is the same with its coarse pitch and without.
    """
    if not sheet.is_stated("drawing", component.drawing):
        raise sheet.not_applicable("no drawing number is stated (release.identity)")
    if not _is_made(component):
        raise sheet.not_applicable("no piece is made to its drawing by itself")
    others = [one for one in sheet.sharing_drawing(component) if one.kind == component.kind]
    if not others:
        return sheet.states(
            True, f"no other part of its kind is on drawing {sheet.read('drawing', component.drawing)}"
        )
    return sheet.each(others, lambda other: _told_apart(component, other, sheet))


def _is_made(component: Component) -> bool:
    return (component.of_metal and not component.is_one_of(_JOINTS)) or component.is_one_of(
        (*_SETS, *_BLANKS)
    )


def _told_apart(component: Component, other: Component, sheet: Sheet) -> Judgement:
    named = f"{other.id} ({other.where.file})"
    apart = [
        one
        for one in sheet.sizes_apart(component, other)
        if not _is_general(one, sheet) and not _is_one_thread(one)
    ]
    if not apart:
        return sheet.states(True, f"{named} on the same drawing is made alike")
    own = sheet.said(f"item of {component.id}", component.item)
    theirs = sheet.said(f"item of {other.id}", other.item)
    if own and theirs and as_item(own) != as_item(theirs):
        return sheet.states(True, f"{named} is item {theirs} of the drawing, and this is item {own}")
    sizes = ", ".join(f"{one.where.key} {one.here}, there {one.there}" for one in apart[:_SHOWN])
    more = f" and {len(apart) - _SHOWN} more" if len(apart) > _SHOWN else ""
    says = f"{named} is on the same drawing and differs in {sizes}{more}; {_items(own, theirs)}"
    return sheet.states(False, says, where=apart[0].where).graded(_grade((component, other), sheet))


def _is_general(apart: SizeApart, sheet: Sheet) -> bool:
    """Whether a class of general tolerances that one part alone states is that of all drawings of the works."""
    grade = sheet.setting("general geometry")
    if apart.where.key != _CLASS or not grade:
        return False
    own, other = apart.here, apart.there
    return (own == _NOT_STATED and other.endswith(grade)) or (other == _NOT_STATED and own.endswith(grade))


def _is_one_thread(apart: SizeApart) -> bool:
    """Whether two words name one thread of the standard: M24 is M24x3, whose pitch is the coarse one of ISO 261."""
    if not apart.where.key.endswith(_THREAD):
        return False
    from speclint.handbook.threads import thread  # only where two parts on one drawing differ in a thread

    try:
        return thread(apart.here).name == thread(apart.there).name
    except NotKnown:  # a word that no table lists is another than its neighbour
        return False


def _items(own: str | None, theirs: str | None) -> str:
    if own and theirs:
        return f"both are item {own}"
    if own or theirs:
        return f"only {'this' if own else 'the other'} says which item of the drawing it is"
    return "neither says which item of the drawing it is"


RULES = (belongs, one_part, items)
