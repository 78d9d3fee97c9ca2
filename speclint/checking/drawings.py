"""The drawings that a run looked at, and which of them somebody must read again."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.checking.assessment import Assessment
from speclint.repository import DrawingState
from speclint.specs import Component


def drawings_checked(assessment: Assessment) -> tuple[DrawingState, ...]:
    """How the drawing of each component stands of which a rule asked: no file is read that no rule asked for."""
    asked = {
        word for check in assessment.checks for sort, word in check.consulted.asked if sort == "drawing file"
    }
    return tuple(one for one in drawings_named(assessment) if one.component in asked) if asked else ()


def drawings_named(assessment: Assessment) -> Iterator[DrawingState]:
    """How the drawing of each selected component stands that names a file of it, in the order of their ids."""
    design, context = assessment.design, assessment.context
    if design is None or context is None:
        return
    for name in design.part_names():
        part = design.specs[name] if design.index.entries[name].drawing_file is not None else None
        state = context.drawing(part) if isinstance(part, Component) else None
        if state is not None:
            yield state
