"""The drawing of a part in a few words, as the head of what is reported of the part names it."""

from __future__ import annotations

from speclint.specs import Component, Spec, Stated


def drawing_named(spec: Spec) -> str:
    """The number of a drawing with its revision, and which item of it the part is; "" where no number is stated."""
    if not isinstance(spec.drawing, Stated):
        return ""
    words = [f"drawing {spec.drawing.value}"]
    if isinstance(spec.revision, Stated):
        words.append(f"rev. {spec.revision.value}")
    if isinstance(spec, Component) and isinstance(spec.item, Stated):
        words.append(f"item {spec.item.value}")
    return " ".join(words)
