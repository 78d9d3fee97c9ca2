"""A list of steps, and whether some of them come before others."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from speclint import Grade, Judgement, Sheet
from speclint.facts import Made, MakingStep, graded_by_stage, places_of, steps_of

#: To what a finding on the order of welds, heat and tests is deferred.
DEFERS = "the local code for pressure parts and a competent person decide"
WELDS = ("weld", "weld lugs and bosses", "weld ribs and covers", "weld repair")
RELIEF = ("stress relieve",)
#: Why nothing is said of the order of a step that is missing: one lack is one finding.
TOLD = 'the list has no "{}", of which making.steps-complete tells'
Words = Sequence[str]
Steps = Sequence[MakingStep]


def listed(part: Made, sheet: Sheet) -> tuple[MakingStep, ...]:
    """The whole list in which a part is made.

    :raises NotAssessed: where no list is stated.
    """
    steps = steps_of(part, sheet)
    if not steps:
        raise sheet.not_assessed(f"making.steps is not stated in {part.where.file}", part.making.where)
    return steps


def by_stage(judged: Judgement, sheet: Sheet, *, grave: bool = False) -> Judgement:
    """A finding on the making: an observation of a draft; released, a hold where it is grave."""
    released = Grade.HOLD if grave else Grade.NONCONFORMITY
    return graded_by_stage(
        judged, sheet, draft=Grade.OBSERVATION, for_review=Grade.NONCONFORMITY, released=released
    )


def follow(steps: Steps, first: Words, then: Words, sheet: Sheet) -> Judgement:
    """That the last step of some words comes before the first of others; where the list has both.

    :raises NotApplicable: where the list has not both.
    """
    early, late = places_of(first, steps), places_of(then, steps)
    if not early or not late:
        raise sheet.not_applicable(f"the list has not both {' or '.join(first)} and {' or '.join(then)}")
    return _said(steps, early[-1], late[0], sheet)


def precede(steps: Steps, first: Words, then: Words, sheet: Sheet, told: Collection[str] = ()) -> Judgement:
    """As ``follow``; that the first are missing where the list has the others is a finding.

    ``told`` are steps of which making.steps-complete tells where they are missing: one lack is one finding.

    :raises NotApplicable: where the list has none of the others.
    """
    late = places_of(then, steps)
    if late and not places_of(first, steps):
        if not set(first).isdisjoint(told):
            return left_to_the_list(first[0], sheet)
        wanted = " or ".join(f'"{word}"' for word in first)
        return sheet.states(
            False, f'no {wanted} before "{steps[late[0]].written}"', where=steps[late[0]].where
        )
    return follow(steps, first, then, sheet)


def place_of(written: str, steps: Steps) -> int | None:
    """Where in a list a step stands, by its word with its number; None where it does not."""
    return next((place for place, step in enumerate(steps) if step.written == written), None)


def left_to_the_list(word: str, sheet: Sheet) -> Judgement:
    """What is said of a step that is missing, where making.steps-complete tells of it."""
    return sheet.states(True, TOLD.format(word))


def goes_in_before(written: str, then: Words, steps: Steps, sheet: Sheet) -> Judgement:
    """That the step at which a part of a block goes in comes before every step of some words.

    Each such part implies its step. The list has one of these words.
    """
    at, late = place_of(written, steps), places_of(then, steps)
    return left_to_the_list(written, sheet) if at is None else _said(steps, at, late[0], sheet)


def goes_in_after(who: str, written: str, first: Words, steps: Steps, sheet: Sheet) -> Judgement | None:
    """That the step at which a part goes in comes after the last of some words; None where the list has not both."""
    at, early = place_of(written, steps), places_of(first, steps)
    if at is None or not early:
        return None
    holds = early[-1] < at
    order = "after" if holds else "not after"
    last = steps[early[-1]].written
    says = f'{who} goes in at step {at + 1}, "{written}", {order} step {early[-1] + 1}, "{last}"'
    return sheet.states(holds, says, where=steps[at].where)


def in_chain(steps: Steps, chain: Sequence[Words], sheet: Sheet) -> Judgement:
    """That of several steps each that is in the list comes before all later ones.

    :raises NotApplicable: where the list has fewer than two of them.
    """
    pairs = [(first, then) for place, first in enumerate(chain) for then in chain[place + 1 :]]
    return sheet.each(pairs, lambda pair: follow(steps, *pair, sheet))


def _said(steps: Steps, early: int, late: int, sheet: Sheet) -> Judgement:
    holds = early < late
    order = "before" if holds else "after" if late < early else "no earlier than"
    says = (
        f'step {early + 1}, "{steps[early].written}", comes {order} step {late + 1}, "{steps[late].written}"'
    )
    return sheet.states(holds, says, where=steps[early].where)
