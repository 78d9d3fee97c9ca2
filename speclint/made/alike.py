"""A part in the place of another spec than its own: it keeps what its own drawing states, and takes the place's links.

Whether it does there is for the rules to say. It cannot be tried where the two drawings differ in what joins them to
other parts, in what is of one hand, or in a table that holds a place, for then nobody knows what it would be there.
"""

from __future__ import annotations

from typing import Any

from speclint.quantities import Measure
from speclint.specs import OF_THE_DRAWING, SIGNED, Component, Link, Stated, fields_taken, is_own_place, leaves

#: What names a spec or its drawing, or tells of them in words, and says nothing of the part.
_OF_THE_SPEC = (
    SIGNED
    | OF_THE_DRAWING
    | {"id", "notes", "drawing", "drawing_file", "revision", "issues", "like", "mirror_of"}
)
#: The pipes that bring oil to a part are of its place.
_OF_THE_PLACE = ("lubrication",)


def differences(own: Component, place: Component) -> tuple[str, ...]:
    """The keys in which a part made to one spec differs from one made to another, but for what is of the place."""
    here, there = _drawn(own), _drawn(place)
    return tuple(key for key in {**here, **there} if here.get(key) != there.get(key))


def hindrances(own: Component, place: Component) -> tuple[str, ...]:
    """The keys for which a part made to one spec cannot be tried in the place of another; none where it can."""
    if type(own) is not type(place):
        return ("kind",)
    differing = dict.fromkeys(key.partition(".")[0].partition("[")[0] for key in differences(own, place))
    about = fields_taken(type(place))
    return tuple(
        name
        for name in differing
        if name not in about
        or about[name].mirroring != "keep"
        or any(map(_joins, (own, place), (name, name)))
    )


def in_place(own: Component, place: Component) -> Component:
    """A part with what its own drawing states, in the place of another spec; there must be no hindrance."""
    differing = {key.partition(".")[0].partition("[")[0] for key in differences(own, place)}
    return place.model_copy(update={name: getattr(own, name) for name in sorted(differing)})


def _joins(part: Component, name: str) -> bool:
    """Whether a field holds a link, or a place that each part states for itself."""
    prefix = (f"{name}.", f"{name}[")
    found = [one for one in leaves(part) if one.key == name or one.key.startswith(prefix)]
    return any(isinstance(one.value, Link) or _is_of_place(part, one.key) for one in found)


def _is_of_place(part: Component, key: str) -> bool:
    return is_own_place(type(part), key.replace("[", ".").replace("]", ""))


def _drawn(part: Component) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for leaf in leaves(part):
        first = leaf.key.partition(".")[0]
        if first in _OF_THE_SPEC or first in _OF_THE_PLACE or _is_of_place(part, leaf.key):
            continue
        value = leaf.value
        if isinstance(value, Measure):
            found[leaf.key] = (value.low, value.high, value.tolerance_class)
        elif isinstance(value, Stated):
            found[leaf.key] = value.value
        elif isinstance(value, Link):
            found[leaf.key] = value.id
    return found
