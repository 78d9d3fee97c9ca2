"""The sizes and the form that a drawing gives the shop, and those in which two parts differ."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TypeGuard

from msgspec import Struct

from speclint.errors import Location
from speclint.quantities import Measure
from speclint.specs.component import Component
from speclint.specs.drawing import as_filed
from speclint.specs.fields import NotStated, Stated
from speclint.specs.spec import Leaf, leaves
from speclint.specs.stated_values import as_written
from speclint.specs.taking_over import FieldTaken, fields_taken, is_on_no_drawing

#: What a shop makes a piece to, beside its metal and what is marked; a pressure, a load or a mass comes of it or of
#: where it runs.
_OF_A_SHAPE = frozenset({"length", "angle"})


class SizeApart(Struct, frozen=True):
    """A size, the metal or a word of the form in which two parts differ: its place in the first, both as written."""

    where: Location
    here: str
    there: str


#: The sizes of a part and its metal by key: where each is stated, what is compared, and the words.
Sizes = Mapping[str, tuple[Location, object, str]]


def sizes_made(part: Component) -> Sizes:
    """The lengths and angles that a part states for the shop, with their limits, its metal, and what is marked.

    What was measured or assumed is on no drawing, and is left out; so is an angle that changes with the hand, where the
    part states its hand: the drawing gives that of one hand. A finish or a class that is left out is listed
    as not stated.
    """
    one_hand = isinstance(part.hand, Stated)
    found: dict[str, tuple[Location, object, str]] = {}
    if isinstance(part.material, Stated):
        found["material"] = part.material.where, part.material.value, part.material.value
    for leaf in leaves(part):
        about, value = fields_taken(leaf.table)[leaf.field], leaf.value
        if isinstance(value, Stated) and about.made_so:
            made: object = as_filed(as_written(value)).replace("×", "x")
        elif _is_of_the_shop(value, about):
            made = value.nominal, value.low, value.high
        elif isinstance(value, NotStated) and about.done_or_not:
            made = None
        else:
            continue
        turned = one_hand and about.mirroring != "keep"
        if not turned and not _is_elsewhere(part, leaf):
            found[leaf.key] = value.where, made, "not stated" if made is None else as_written(value)
    return found


def sizes_apart(one: Sizes, other: Sizes) -> tuple[SizeApart, ...]:
    """The sizes that two parts both state, and in which they differ; and what of a finish one alone states."""
    return tuple(
        SizeApart(where, text, other[key][2])
        for key, (where, value, text) in one.items()
        if key in other and not _is_same(value, other[key][1])
    )


def _is_same(one: object, other: object) -> bool:
    """Whether two values are the same; a size by its limits, whether written out or by their class of ISO 286."""
    if isinstance(one, tuple) and isinstance(other, tuple):
        return all(math.isclose(a, b, rel_tol=1e-9, abs_tol=1e-12) for a, b in zip(one, other, strict=True))
    return one == other


def _is_of_the_shop(value: object, about: FieldTaken) -> TypeGuard[Measure]:
    """Whether a value is a quantity that a shop makes a piece to, as a drawing gives it."""
    return (
        isinstance(value, Measure)
        and value.provenance == "drawing"
        and (about.made_so or value.dimension in _OF_A_SHAPE)
    )


def _is_elsewhere(part: Component, leaf: Leaf) -> bool:
    """Whether a size is of the place of a part, or of how it is fitted and runs: itself, or a table that holds it."""
    own = fields_taken(leaf.table)[leaf.field]
    return own.own_place or own.as_fitted or is_on_no_drawing(type(part), leaf.key)
