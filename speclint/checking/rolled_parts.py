"""Whether a size is the thickness of rolled plate."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from speclint.errors import NotKnown
from speclint.quantities import Measure
from speclint.rules import Context
from speclint.specs import Spec, SpecTable, Stated

#: Keys of a thickness that is as thick as the plate, where nothing says that it was machined from a thicker one.
_FINISHED = ("thickness", "flange_thickness", "wall")
#: Keys of the thickness as rolled.
_AS_ROLLED = ("as_made", "rolled_thickness")


def is_of_plate(component: Spec, key: str, context: Context) -> bool:
    """Whether the size under a key is a thickness of plate as rolled: by its name, and by the material next to it.

    A thickness beside which another is stated as rolled is machined, and may be any.
    """
    *_, last = key.split(".")
    if last not in (*_FINISHED, *_AS_ROLLED):
        return False
    tables = list(_tables(component, key))
    if last in _FINISHED and any(isinstance(getattr(tables[-1], one, None), Measure) for one in _AS_ROLLED):
        return False
    stated = (getattr(one, "material", None) for one in reversed(tables))
    called = next((one.value for one in stated if isinstance(one, Stated)), "")
    try:
        material = context.material(called)
    except NotKnown:
        return False
    return "plate" in (*material.name.split("-"), *material.title.split())


def _tables(component: Spec, key: str) -> Iterator[SpecTable]:
    """The component and the tables within it on the way to a key."""
    value: Any = component
    for part in key.split("."):
        if isinstance(value, SpecTable):
            yield value
            value = getattr(value, part, None)
        elif isinstance(value, dict):
            value = value.get(part)
        else:
            return
