"""How grave a finding is at each stage of a design: a draft has gaps, what is released has none."""

from __future__ import annotations

from speclint.facts.concern import holds_pressure
from speclint.rules import Grade, Judgement, Sheet
from speclint.specs import Component


def graded_by_stage(
    judged: Judgement, sheet: Sheet, *, draft: Grade, for_review: Grade, released: Grade
) -> Judgement:
    """A judgement with the grade that its finding has at the stage which the settings of the repository state."""
    grades = {"draft": draft, "for-review": for_review, "released": released}
    return judged.graded(grades[sheet.setting("stage")])


def graded_as_assembly(judged: Judgement, part: Component, sheet: Sheet) -> Judgement:
    """A finding that a part cannot be put in: a nonconformity; released, a hold where the part holds pressure."""
    if sheet.setting("stage") != "released":
        return judged
    return judged.graded(Grade.HOLD if holds_pressure(part, sheet) else Grade.NONCONFORMITY)
