"""The kinds as a link names them: at run time their words alone, so that a spec of one kind imports no other.

A kind's module takes the class of a kind that it links to from here: ``LinkTo[CylinderBlock]``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from speclint.specs import *  # noqa: F403
else:
    from speclint.specs.by_word import kind_by_word

    __getattr__ = kind_by_word
