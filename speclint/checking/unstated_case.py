"""What a rule is given in place of a load case that no duty states: it ends the rule when it is first asked."""

from __future__ import annotations

from copy import copy
from typing import Any

from speclint.rules import NotAssessed
from speclint.specs import LoadCase


class UnstatedCase(LoadCase):
    """A load case of which nothing is known, not even whether there is a duty.

    A rule that does not concern a part says so before it asks for anything of the case, so that an axle needs no
    steam invented for it. Whatever is asked raises what an assessment needs.
    """

    def __init__(self, wanting: NotAssessed) -> None:
        # not validated: nothing of it can be read, not even by its own validators
        object.__setattr__(self, "_wanting", wanting)

    def __getattribute__(self, name: str) -> Any:
        if name.startswith("_"):
            return object.__getattribute__(self, name)
        wanting: NotAssessed = object.__getattribute__(self, "_wanting")
        raise copy(wanting)
