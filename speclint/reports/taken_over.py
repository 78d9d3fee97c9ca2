"""What a part takes over from another, in words: of which it is like or the mirror, and in what it differs."""

from __future__ import annotations

from speclint.checking import Assessment
from speclint.specs import Difference


def said_of_like(assessment: Assessment, component: str) -> str:
    """Which other a component is like, and what differs; "" for one that states everything itself."""
    design = assessment.design
    spec = design.specs.get(component) if design else None
    taken = spec.taken_over if spec else None
    if design is None or taken is None:
        return ""
    what = "mirror of" if taken.mirrored else "like"
    differs = "; ".join(_difference(one) for one in taken.differs) or "nothing but its place"
    return f"{what} {taken.id} ({design.files.get(taken.id, '')}); differs in {differs}"


def _difference(one: Difference) -> str:
    return f"{one.where.key}: {one.here} (line {one.where.line}), there {one.there}"
