"""Which checks the remedies of a finding could spoil, and which findings one remedy is to clear."""

from __future__ import annotations

from collections.abc import Collection, Hashable, Sequence

from speclint.checking.check_result import Check
from speclint.checking.remedy import Remedy, Sought
from speclint.errors import Location, replace

#: A file and a key of it: the place of a value on a drawing, of whatever part it is there.
Place = tuple[str, str]


def fails_too(one: Check, found: Check) -> bool:
    """Whether a check is the same rule failing on another part."""
    return one.outcome == "finding" and one.rule.name == found.rule.name and one.component != found.component


class Spoiling:
    """The checks that remedies could spoil: those that hold, by the places of the values that they took.

    Beside them stand the findings of one rule on several parts, which a change of a line that they share is to clear.

    Of parts alike one stands for all: a value is moved on the drawing, and what rests on the same values holds or
    fails alike. ``alike`` tells of a finding which others share its remedies.
    """

    def __init__(self, checks: Sequence[Check]) -> None:
        self._took: dict[tuple[str, str], list[Check]] = {}
        self._parts = {one.component for one in checks}
        self._rests: dict[tuple[str, str], Hashable] = {}
        self._lines: dict[tuple[str, str], dict[Place, list[int]]] = {}
        for one in checks:
            if one.outcome in ("conforms", "finding") and not one.rule.reviews:
                lines = self._lines[one.order] = _lines_by_place(one)
                for place in lines:
                    self._took.setdefault(place, []).append(one)

    def by(self, found: Check) -> list[tuple[Check, frozenset[Place]]]:
        """Those that took a value which the finding took, with the places of such values."""
        own = _lines_by_place(found).keys()
        among = {
            one.order: one
            for place in own
            for one in self._took.get(place, ())
            if one.outcome == "conforms" or fails_too(one, found)
        }
        standing: dict[Hashable, tuple[Check, frozenset[Place]]] = {}
        for order, one in sorted(among.items()):
            lines = self._lines[order]
            shared = frozenset(lines.keys() & own)
            drawn = frozenset([(place, *lines[place]) for place in shared])
            same = (self._rests_on(one), drawn) if one.outcome == "conforms" else order
            standing.setdefault(same, (one, shared))
        return list(standing.values())

    def _rests_on(self, one: Check) -> Hashable:
        """What a check was made of, without the ids of parts."""
        if one.order not in self._rests:
            values = tuple(value for value in one.rests_on.values() if value not in self._parts)
            self._rests[one.order] = (one.rule.name, one.case, one.utilisation, values)
        return self._rests[one.order]

    @staticmethod
    def alike(found: Check) -> Hashable:
        """The same for findings of parts alike that took their values from the same places of one drawing."""
        drawn = tuple((step.where.file, step.where.line, step.where.key) for step in found.steps)
        places = found.judgement.places if found.judgement else ()
        return (found.alike, drawn) if found.alike and not places else found.order


def brief(one: Check, places: Collection[Place]) -> Check:
    """A check with its working at some places alone."""
    steps = [step for step in one.steps if (step.where.file, step.where.key) in places]
    return replace(one, steps=tuple(steps))


def _lines_by_place(one: Check) -> dict[Place, list[int]]:
    """Where a check took values: the lines by the place, as the parts of one file may state one key on several."""
    lines: dict[Place, list[int]] = {}
    for step in one.steps:
        at = step.where
        if at.key:
            lines.setdefault((at.file, at.key), []).append(at.line)
    return lines


def of_part_alike(sought: Sought, found: Check) -> Sought:
    """What the search came to as that of a finding alike on another part: the same places of the drawing."""
    return replace(sought, remedies=tuple(_as_of(one, found.component) for one in sought.remedies))


def _as_of(remedy: Remedy, part: str) -> Remedy:
    where = remedy.where
    return replace(remedy, where=Location(where.file, where.line, where.key, where.part and part))
