"""The component that an id names, or why there is none."""

from __future__ import annotations

from collections.abc import Iterable

from speclint.errors import DesignError, one_of
from speclint.repository.design import Design
from speclint.specs import Component


def component_called(name: str, design: Design) -> Component:
    """The component of an id.

    :raises DesignError: where the id is that of another spec, or of one that could not be read, or there is none.
    """
    part = design.specs.get(name)
    if isinstance(part, Component):
        return part
    if part is not None:
        raise DesignError(f"{name} is of the kind {part.kind}, which is no component")
    if name in design.files:
        raise DesignError(f"{name} could not be read: speclint check says why")
    raise no_component_called(name, design.part_names())


def no_component_called(name: str, known: Iterable[str]) -> DesignError:
    """Why nothing is said of an id that no component has, with the one that may be meant."""
    return DesignError(f"no component is called {name}; write {one_of(name, known)}")
