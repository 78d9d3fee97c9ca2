"""Whether parts made to one spec may stand in the place of another: both are drawn with the same sizes and words."""

from __future__ import annotations

from speclint.quantities import Measure
from speclint.specs import SIGNED, Component, Link, Stated, is_own_place, leaves

#: What names a spec, or tells of it in words, and says nothing of the part.
_OF_THE_SPEC = SIGNED | {"id", "title", "notes"}
#: The pipes that bring oil to a part are of its place.
_OF_THE_PLACE = "lubrication."


def differences(one: Component, other: Component) -> tuple[str, ...]:
    """The keys that two specs state otherwise, but for their names and for what each states of its own place.

    Parts made to them are interchangeable where there is none.
    """
    if type(one) is not type(other):
        return ("kind",)
    here, there = _drawn(one), _drawn(other)
    return tuple(key for key in {**here, **there} if here.get(key) != there.get(key))


def _drawn(part: Component) -> dict[str, object]:
    found: dict[str, object] = {}
    for leaf in leaves(part):
        if leaf.key in _OF_THE_SPEC or leaf.key.startswith(_OF_THE_PLACE):
            continue
        if is_own_place(type(part), leaf.key.replace("[", ".").replace("]", "")):
            continue
        value = leaf.value
        if isinstance(value, Measure):
            found[leaf.key] = (value.low, value.high, value.tolerance_class)
        elif isinstance(value, Stated):
            found[leaf.key] = value.value
        elif isinstance(value, Link):
            found[leaf.key] = value.id
    return found
