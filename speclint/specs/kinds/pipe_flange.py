"""A flange on a steam pipe or a passage."""

from __future__ import annotations

from typing import ClassVar

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Length, LinkTo


class PipeFlange(Component):
    """A flange on a steam pipe or a passage, bolted to its mating flange.

    Fields:
        of: the pipe or other part that carries the flange.
        outside_diameter: of the flange.
        bore: of the flange.
        thickness: of the flange under the nuts.
    """

    kind: ClassVar[str] = "pipe-flange"
    called: ClassVar[str] = "pipe flange"

    of: LinkTo[Component] = NOT_STATED
    outside_diameter: Length = NOT_STATED
    bore: Length = NOT_STATED
    thickness: Length = NOT_STATED
