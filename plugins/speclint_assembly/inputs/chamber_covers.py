"""The covers over the chambers of valves, by the word of their kind."""

from __future__ import annotations

from collections.abc import Callable

from speclint.specs import Component, PoppetValve

_KIND = ("chamber-cover",)


def covers_over(
    valve: PoppetValve, belonging_to: Callable[[Component, type[Component]], tuple[Component, ...]]
) -> tuple[Component, ...]:
    """The chamber covers that say that they are over a valve."""
    return tuple(part for part in belonging_to(valve, Component) if part.is_one_of(_KIND))


def is_chamber_cover(part: Component) -> bool:
    """Whether a part is a chamber cover."""
    return part.is_one_of(_KIND)
