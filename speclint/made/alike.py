"""Whether parts made to one spec may stand in the place of another: both are drawn with the same sizes and words."""

from __future__ import annotations

from speclint.quantities import Measure
from speclint.specs import SIGNED, Component, Link, Stated, is_own_place, leaves

#: What names a spec, or tells of it in words, and says nothing of the part.
_OF_THE_SPEC = SIGNED | {"id", "title", "notes"}


def interchangeable(one: Component, other: Component) -> bool:
    """Whether two specs state the same, but for their names and for what each states of its own place."""
    return type(one) is type(other) and (one.id == other.id or _drawn(one) == _drawn(other))


def _drawn(part: Component) -> dict[str, object]:
    found: dict[str, object] = {}
    for leaf in leaves(part):
        if leaf.key in _OF_THE_SPEC or is_own_place(type(part), leaf.key.replace("[", ".").replace("]", "")):
            continue
        value = leaf.value
        if isinstance(value, Measure):
            found[leaf.key] = (value.low, value.high, value.tolerance_class)
        elif isinstance(value, Stated):
            found[leaf.key] = value.value
        elif isinstance(value, Link):
            found[leaf.key] = value.id
    return found
