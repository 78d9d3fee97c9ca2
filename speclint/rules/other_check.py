"""How a check of another part came out, as a rule that reviews is told."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct

if TYPE_CHECKING:
    from collections.abc import Callable


class OtherCheck(Struct, frozen=True):
    """The rule and the part of a check, its outcome, what it says, and the share of its limit that is used.

    ``used`` is None where the rule compares no number.
    """

    rule: str
    part: str
    outcome: str
    says: str
    used: float | None = None

    @property
    def briefly(self) -> str:
        """The outcome, with what is used of the limit."""
        return self.outcome if self.used is None else f"{self.outcome}, {self.used:.2f} of its limit"


if TYPE_CHECKING:
    #: Makes the check of a component, by its id, by the rule of a name; or says why there is none.
    MakeCheck = Callable[[str, str], OtherCheck | str]


def no_other(_component: str, _rule: str) -> OtherCheck | str:
    """Where nothing can make a check of another part."""
    return "no other check can be made here"
