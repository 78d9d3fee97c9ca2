"""What a spec states that is like another or its mirror: its place, what differs, its hand, and nothing twice."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import ways_to_blocks
from speclint.specs import Component, fields_taken
from speclint_release.inputs.safety import can_hurt
from speclint_release.sources import ISO_7200

#: Keys that name a part and its drawing: they may differ where the part does not.
_NAMES = frozenset({"title", "drawing", "revision"})


@rule(
    "like.place-stated",
    title="A part that is like another states itself where it sits and what it touches",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="two parts alike sit in two places: a place taken from the other would put both into one",
    leaves_out="whether the place is the right one, and a place that neither part states",
    against=(),
    edition=2,
)
def place_stated(component: Component, sheet: Sheet) -> Judgement:
    """Every key of a place that the other states and this does not."""
    taken = sheet.taken_over(component)
    if not taken.places:
        return sheet.states(True, f"it states every place that {taken.id} states")
    said = (
        f"{taken.id} states {', '.join(one.key for one in taken.places)}, which each part states for itself"
    )
    return sheet.states(False, f"not stated: {said}", where=taken.where)


@rule(
    "like.said-once",
    title="A part that is like another states only what differs, and its own place",
    on=Component,
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="a value written in two places is altered in one of them and forgotten in the other",
    leaves_out="values that neither file states, and words that mean the same and are written otherwise",
    against=(),
)
def said_once(component: Component, sheet: Sheet) -> Judgement:
    """Every key that both state with one value."""
    taken = sheet.taken_over(component)
    if not taken.said_twice:
        return sheet.states(True, "it states nothing twice")
    said = f"{', '.join(one.key for one in taken.said_twice)} as in {taken.id}: leave it out here"
    return sheet.states(False, f"said twice: {said}", where=taken.said_twice[0])


@rule(
    "like.material-explained",
    title="A pressure part or safety part that is like another is of its material, or its notes say why it is not",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="two parts that look alike and are of two metals are mistaken for each other in the store",
    leaves_out="whether the other material will do: that is for the rules of its strength",
    against=(),
    edition=2,
)
def material_explained(component: Component, sheet: Sheet) -> Judgement:
    """A note under material counts as a reason, or another note of the part's own that has this word."""
    taken = sheet.taken_over(component)
    other = next((one for one in taken.differs if one.where.key == "material"), None)
    if other is None:
        return sheet.states(True, f"it is of the material of {taken.id}")
    if not can_hurt(component, sheet):
        raise sheet.not_applicable("neither a pressure part nor a safety part")
    said = f"of {other.here}, and {taken.id} of {other.there}"
    if "material" in taken.notes.lower():
        return sheet.states(True, f"{said}; its notes say why")
    return sheet.states(False, f"{said}, without a word of why in [notes]", where=other.where)


@rule(
    "like.one-drawing",
    title="A part that is like another and has a drawing number of its own differs in something",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_7200.at("table 1, identifying and administrative data fields"), COMMON_PRACTICE],
    why="the shop makes what the number says: two numbers of one part are made twice",
    leaves_out="revisions of one number (release.one-drawing-one-part); sizes that differ under one number, as in a "
    "table on the drawing; values that are the same and written otherwise, such as 4 cm for 40 mm",
    against=(),
    edition=2,
)
def one_drawing(component: Component, sheet: Sheet) -> Judgement:
    """A mirrored part differs by its hand."""
    taken = sheet.taken_over(component)
    differs = {one.where.key: one for one in taken.differs}
    number = differs.get("drawing")
    if number is not None and not taken.mirrored and not differs.keys() - _NAMES:
        said = f"drawing {number.here} differs from {number.there} of {taken.id} in nothing but its place"
        return sheet.states(False, said, where=number.where)
    return sheet.states(True, "its number agrees with what differs")


@rule(
    "like.other-hand",
    title="A part that is the mirror of another is of the other hand",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a part made for the wrong side does not go on, and its holes are then drilled a second time",
    leaves_out="parts that have no hand, such as springs, fits and plans",
    against=(),
    edition=2,
)
def other_hand(component: Component, sheet: Sheet) -> Judgement:
    """The hand that the other states, turned, is taken over: one that is stated again must be the same."""
    taken = sheet.taken_over(component)
    if not taken.mirrored:
        raise sheet.not_applicable("it is like another, and no mirror of it")
    if not component.of_metal or fields_taken(type(component))["hand"].mirroring != "swap":
        raise sheet.not_applicable("a part of this kind has no hand")
    hand = sheet.read("hand", component.hand)
    wrong = next((one for one in taken.differs if one.where.key == "hand"), None)
    if wrong is not None and wrong.there == "not stated":
        raise sheet.not_assessed(f"the hand of {taken.id} is not stated", wrong.where)
    if wrong is None:
        return sheet.states(True, f"it is of the {hand} hand, and {taken.id} of the other")
    return sheet.states(False, f"it is of the {hand} hand, as {taken.id} is", where=wrong.where)


@rule(
    "part.hand-of-its-block",
    title="A part that states a hand is of the hand of the block that it is on, in or made into, itself or by way of "
    "other parts",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a pipe that was bent for the left-hand block meets no flange on the right",
    leaves_out="parts that state no hand, and those that lead to no block",
    against=(),
    edition=2,
)
def hand_of_its_block(component: Component, sheet: Sheet) -> Judgement:
    """The words of both; a block in the middle is of the hand to which it is made."""
    if fields_taken(type(component))["hand"].mirroring != "swap" or not sheet.is_stated(
        "hand", component.hand
    ):
        raise sheet.not_applicable("it states no hand")
    hand = sheet.read("hand", component.hand)
    blocks = {way.block.id: way.block for way in ways_to_blocks(component, sheet)}
    hands = {
        name: sheet.read(f"hand of {name}", block.hand)
        for name, block in blocks.items()
        if sheet.is_stated(f"hand of {name}", block.hand)
    }
    if not hands:
        raise sheet.not_applicable("it is on no block that states a hand")
    other = [f"{name} is of the {its} hand" for name, its in hands.items() if its != hand]
    says = f"made for the {hand} hand, and {' and '.join(other)}" if other else f"{', '.join(hands)}: {hand}"
    return sheet.states(not other, says, where=component.hand.where)


RULES = (place_stated, said_once, material_explained, one_drawing, other_hand, hand_of_its_block)
