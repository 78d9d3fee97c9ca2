"""Which figures of a spec are given, and which sizes bear a load."""

from __future__ import annotations

from typing import Annotated

from speclint.specs import GIVEN, NO_LESS, NOT_STATED, Force, Length, SpecTable, given_keys, no_less_keys


class _Journal(SpecTable):
    """A journal.

    Fields:
        diameter: of it
        load: on it
    """

    diameter: Annotated[Length, NO_LESS] = NOT_STATED
    load: Annotated[Force, GIVEN] = NOT_STATED


class _Axle(SpecTable):
    """An axle.

    Fields:
        length: of it
        pull: on it
        journals: by name
        spare: more of them
    """

    length: Length = NOT_STATED
    pull: Annotated[Force, GIVEN] = NOT_STATED
    journals: dict[str, _Journal] = {}
    spare: tuple[_Journal, ...] = ()


def test_keys_are_found_down_to_the_innermost_table() -> None:
    axle = _Axle(journals={"left": _Journal()}, spare=(_Journal(),))
    assert given_keys(axle) == {"pull", "journals.left.load", "spare[0].load"}
    assert no_less_keys(axle) == {"journals.left.diameter", "spare[0].diameter"}
