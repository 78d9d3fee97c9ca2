"""A remedy: the change of one stated value that would clear a finding; and what the search for one came to."""

from __future__ import annotations

import math
from collections.abc import Callable

from msgspec import Struct

from speclint.errors import Location
from speclint.quantities import amount


class Remedy(Struct, frozen=True):
    """One stated value, and what it would have to be for the rule to hold: in SI units, or a word.

    ``spoils`` are the rules that hold now and would not hold then. ``written`` is how the spec has it, and ``instead``
    how it would be written, in the step of the drawing office, or exactly where that is too coarse; both "" where the
    number alone is known. ``by`` is how far a size or its limits move where the values do not tell: of a size with
    limits or a class that stays, and of a thread. ``short_of`` are parts that read the same line of a drawing and fail
    the rule with the change, too.
    """

    where: Location
    name: str
    now: float | str | bool
    then: float | str | bool
    unit: str
    written_in: str
    utilisation: float | None
    spoils: tuple[str, ...] = ()
    written: str = ""
    instead: str = ""
    exact: bool = False
    by: float = 0.0
    short_of: tuple[str, ...] = ()

    @property
    def change(self) -> float:
        """The change as a share of the present value; nothing for a word that is no size."""
        if self.by:
            return abs(self.by)
        if isinstance(self.now, str | bool) or isinstance(self.then, str | bool):
            return 0.0
        return abs(self.then - self.now) / abs(self.now) if self.now else math.inf

    def __str__(self) -> str:
        return self.said(amount)

    def said(self, write: Callable[[float, str, str], str]) -> str:
        """The change in words, its amounts written by a function of SI value, SI unit and the unit of the spec.

        What a spec would state is in its own unit; the amounts stand beside it where they are in another.
        """
        change = (
            f"{self.name} from {self._shown(self.written, self.now)} to {self._then()}{self._beside(write)}"
        )
        if self.short_of:
            change = f"{change}, which leaves {' and '.join(self.short_of)} of the same line failing"
        if self.spoils:
            return f"{change}, but then {', '.join(self.spoils)} would not hold"
        return f"{change}, all else equal"

    def _then(self) -> str:
        return f"{'exactly ' if self.exact else ''}{self._shown(self.instead, self.then)}"

    def _beside(self, write: Callable[[float, str, str], str]) -> str:
        if isinstance(self.now, str | bool) or isinstance(self.then, str | bool):
            return ""
        texts = [
            write(one, self.unit, self.written_in) for one in (self.now, self.then, self.then - self.now)
        ]
        if texts[1] == amount(self.then, self.unit, self.written_in):
            return ""
        return f" (limits moved by {texts[2]})" if self.by else f" ({texts[0]} to {texts[1]})"

    def _shown(self, text: str, value: float | str | bool) -> str:
        if text:
            return text
        if isinstance(value, bool):
            return "true" if value else "false"
        return f'"{value}"' if isinstance(value, str) else amount(value, self.unit, self.written_in)


class Sought(Struct, frozen=True):
    """What the search for remedies of a finding came to; nothing in it where none was to be sought.

    Where it found none, ``in_vain`` are the values of which no change that is within reach clears the finding, and
    ``not_tried`` those on which a long calculation rests, that each trial would repeat; both by name.
    """

    remedies: tuple[Remedy, ...] = ()
    in_vain: tuple[str, ...] = ()
    not_tried: tuple[str, ...] = ()
