"""For what life a part is made: by its duty, else as its own spec states."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import Component, NotStated, Stated

if TYPE_CHECKING:
    from speclint.specs import Life


def lives_of(part: Component, sheet: Sheet) -> Iterator[Life]:
    """The life by the duty of a part, where it has a duty."""
    duty = sheet.duty_of(part)
    if duty is not None:
        yield duty.life


def distance_of_life(part: Component, stated: Measure | NotStated, sheet: Sheet) -> Measure | NotStated:
    """The distance that the engine runs in its life, to be taken: by the duty, else as the part states."""
    for life in lives_of(part, sheet):
        if sheet.is_stated("distance of its life", life.distance):
            return life.distance
    return stated


def starts_of_life(part: Component, stated: Stated[int] | NotStated, sheet: Sheet) -> Stated[int] | NotStated:
    """How often steam is raised in the life of a part, to be counted: by the duty, else as the part states."""
    for life in lives_of(part, sheet):
        if sheet.is_stated("starts of its life", life.starts):
            return life.starts
    return stated
