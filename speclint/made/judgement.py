"""What becomes of a part as made: every rule of the part and of its mates, run on what was measured."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cached_property
from typing import Literal

from msgspec import Struct

from speclint.checking import Check, uses_more
from speclint.facts import Worn, wear_of
from speclint.made.dimensions import DimensionMade
from speclint.made.in_steam import InSteam
from speclint.specs import Component, MadePart

#: What becomes of a part: it is as drawn; a measurement proves nothing; it is out, and every rule that rests on what is
#: out conforms; such a rule fails, but as drawn or by the mates as made too; it is out, a rule fails by it, and taking
#: metal off clears that; it is out, a rule fails by it, and nothing that was tried clears it.
#: Where no rule fails by it and it is worn past a limit, that is told before it may be conceded; where no size is out,
#: and it was measured in steam outside its duty, that.
Outcome = Literal[
    "as drawn",
    "undecided",
    "outside its duty",
    "worn past its limit",
    "ready to concede",
    "held by other findings",
    "rework",
    "no rework found",
]


class Pair(Struct, frozen=True):
    """A check as drawn and as made.

    ``beside`` is the same check with the part as drawn beside its mates as made, where that had to be made to tell
    whose fault a failure is; None where it had not.
    """

    drawn: Check
    made: Check
    beside: Check | None = None

    @property
    def fails(self) -> bool:
        """Whether it stands in the way for the part as made, and did not for the part as drawn, or less."""
        return self._worse and (self.beside is None or worse(self.beside, self.made))

    @property
    def fails_by_mates(self) -> bool:
        """Whether it stands in the way for the mates as made, with the part as drawn no less."""
        return self._worse and not self.fails

    @property
    def open_as_drawn(self) -> bool:
        """Whether it stands in the way as made no more than it did as drawn: that is no fault of the part."""
        return self.made.stands_in_the_way is not None and not self._worse

    @property
    def failed_as_drawn(self) -> bool:
        """Whether it stood in the way as drawn, and no less gravely than as made, whatever is used of its limit."""
        was, now = self.drawn.stands_in_the_way, self.made.stands_in_the_way
        return was is not None and (now is None or was >= now)

    @property
    def _worse(self) -> bool:
        return worse(self.drawn, self.made)


def worse(before: Check, now: Check) -> bool:
    """Whether a check stands in the way now and did not before, or does so more gravely or by more."""
    grade, was = now.stands_in_the_way, before.stands_in_the_way
    if grade is None:
        return False
    if was is None or grade > was:
        return True
    return uses_more(before.judgement, now.judgement)


def _share(check: Check) -> tuple[float, float] | None:
    """What is used of the limit, and by how much it is exceeded; None where no numbers are compared."""
    return None if check.utilisation is None else (check.utilisation, check.beyond)


class Change(Struct, frozen=True):
    """A size that is machined, or made to match: of which spec, under which key, as it is and as it is to be."""

    spec: str
    key: str
    now: str
    then: str


class Rework(Struct, frozen=True):
    """What clears every rule that fails on a part as made; proved by running all of them again.

    ``how`` says whether the part is machined to its drawing, or only until no rule fails, or whether its mate, which is
    still to be made, is made to match.
    """

    how: Literal["machine to the drawing", "machine until it conforms", "make the mate to match"]
    changes: tuple[Change, ...]


class PartMade(Struct, frozen=True, dict=True):
    """A part as made, judged.

    ``drawn`` is the component that it was made to, None where that cannot be read. ``beside`` are the parts as made
    that stood in the places of its mates. ``pairs`` are the checks that consulted the part, as drawn and as made.
    """

    made: MadePart
    drawn: Component | None
    dimensions: tuple[DimensionMade, ...] = ()
    beside: tuple[str, ...] = ()
    pairs: tuple[Pair, ...] = ()
    reworks: tuple[Rework, ...] = ()
    in_steam: tuple[InSteam, ...] = ()

    @cached_property
    def worn(self) -> tuple[Worn, ...]:
        """The wear of each size that was measured on two days or more."""
        return () if self.drawn is None else tuple(wear_of(self.made, self.drawn))

    @property
    def failing(self) -> tuple[Check, ...]:
        """The checks that fail as made, and did not as drawn, or less."""
        return tuple(pair.made for pair in self.pairs if pair.fails)

    @property
    def fails_by_mates(self) -> tuple[Check, ...]:
        """The checks that fail by what was made of its mates, and would with the part as drawn too."""
        return tuple(pair.made for pair in self.pairs if pair.fails_by_mates)

    @property
    def open_as_drawn(self) -> tuple[Check, ...]:
        """The checks that stand in the way of the drawing too."""
        return tuple(pair.made for pair in self.pairs if pair.open_as_drawn)

    @property
    def departures(self) -> tuple[DimensionMade, ...]:
        """The dimensions that are out."""
        return tuple(one for one in self.dimensions if one.verdict == "out")

    @property
    def outside_duty(self) -> tuple[InSteam, ...]:
        """What was measured in steam and is proved to lie outside what the duty assumes."""
        return tuple(one for one in self.in_steam if one.verdict == "out")

    @property
    def margins(self) -> tuple[Pair, ...]:
        """The checks that took a dimension which is not in, and use more or less of their limit than as drawn.

        Those with the least left come first.
        """
        found = (
            pair
            for pair in self._resting_on("out", "undecided")
            if _share(pair.made) is not None and _share(pair.made) != _share(pair.drawn)
        )
        return tuple(sorted(found, key=lambda pair: (-(pair.made.utilisation or 0.0), pair.made.order)))

    def _resting_on(self, *verdicts: str) -> Iterator[Pair]:
        """The checks that took a dimension of one of some verdicts."""
        keys = {one.key for one in self.dimensions if one.verdict in verdicts}
        file = self.made.where.file
        for pair in self.pairs:
            if any(step.where.file == file and step.where.key in keys for step in pair.made.steps):
                yield pair

    @property
    def outcome(self) -> Outcome:
        """What becomes of the part."""
        if self.failing and (self.departures or not self.outside_duty):
            if self.reworks:
                return "rework"
            by_it = any(pair.fails and not pair.failed_as_drawn for pair in self.pairs)
            return "no rework found" if by_it else "held by other findings"
        if any(one.past for one in self.worn):
            return "worn past its limit"
        if self.departures:
            held = any(pair.made.stands_in_the_way is not None for pair in self._resting_on("out"))
            return "held by other findings" if held else "ready to concede"
        if self.outside_duty:
            return "outside its duty"
        verdicts = [*(one.verdict for one in self.dimensions), *(one.verdict for one in self.in_steam)]
        return "undecided" if "undecided" in verdicts else "as drawn"


class Judged(Struct, frozen=True):
    """All parts as made that were judged, in the order of their ids, and by which decision rule."""

    parts: tuple[PartMade, ...]
    decision: str
    certificate_strengths: bool

    def of(self, outcome: Outcome) -> Sequence[PartMade]:
        """The parts of one outcome."""
        return [one for one in self.parts if one.outcome == outcome]
