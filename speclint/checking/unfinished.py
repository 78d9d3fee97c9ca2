"""What is still to be drawn and to be stated: one list for each block of a draft, in the order of the places.

What the lists need of a spec is in the index, so that none is read for them.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from speclint.checking.assessment import Assessment
from speclint.checking.check_result import Check
from speclint.repository import Design
from speclint.rules import PlaceSeen
from speclint.specs import Duty

_DUTY = frozenset({Duty.kind})


class Unfinished(Struct, frozen=True):
    """What a block, an engine or a duty still lacks while it is a draft.

    ``places`` counts those that its parts have, ``to_draw`` names the empty ones. ``to_state`` are the values that
    checks wanted and did not find, by component: its keys in the order of their names.
    """

    under: str
    places: int
    to_draw: tuple[PlaceSeen, ...]
    to_state: tuple[tuple[str, tuple[str, ...]], ...]

    @property
    def filled(self) -> int:
        """How many of its places are filled."""
        return self.places - len(self.to_draw)

    @property
    def values(self) -> int:
        """How many values are not stated so far."""
        return sum(len(keys) for _, keys in self.to_state)

    @property
    def says(self) -> str:
        """The list in words, counted: what is to be drawn, and how many values of which components.

        >>> place = PlaceSeen("cylinder liner (bore left)", False)
        >>> one = Unfinished("block", 3, (place,), (("rod", ("diameter", "mass")),))
        >>> print(one.says)
        block: 3 places, 2 filled, 1 to be drawn: cylinder liner (bore left); 2 values to be stated
        """
        drawn = ", ".join(one.called for one in self.to_draw)
        said = [f"{_counted(self.places, 'place')}, {self.filled} filled"] if self.places else []
        if drawn:
            said[0] += f", {len(self.to_draw)} to be drawn: {drawn}"
        if self.values:
            said.append(f"{_counted(self.values, 'value')} to be stated")
        return f"{self.under}: {'; '.join(said)}"


def _counted(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


def still_to_be_drawn(assessment: Assessment) -> tuple[Unfinished, ...]:
    """The list of each block and engine of a draft; nothing at any other stage, where findings say it.

    What a duty does not state, temperatures above all, is asked for once, in a list of the duty's own: many blocks and
    parts see one duty.
    """
    design, settings = assessment.design, assessment.settings
    if design is None or settings is None or settings.stage != "draft":
        return ()
    places = _by_block((check for check in assessment.checks if check.places), design)
    wanting = _by_block((check for check in assessment.checks if check.outcome == "not assessed"), design)
    lists = [
        _of_block(name, places.get(name, []), wanting.get(name, []), design) for name in {**places, **wanting}
    ]
    lists += _of_duties([check for some in wanting.values() for check in some], design)
    return tuple(sorted((one for one in lists if one.to_draw or one.to_state), key=lambda one: one.under))


def _by_block(checks: Iterable[Check], design: Design) -> dict[str, list[Check]]:
    found: dict[str, list[Check]] = {}
    under: dict[str, str] = {}
    entries = design.index.entries
    for check in checks:
        name = check.component
        if name not in under:
            is_component = name in entries and entries[name].is_component
            under[name] = design.index.listed_under(name)[0] if is_component else name
        found.setdefault(under[name], []).append(check)
    return found


def _of_block(name: str, placed: list[Check], wanting: list[Check], design: Design) -> Unfinished:
    ordered = sorted(placed, key=lambda check: (check.rule.row, check.order))
    seen = [place for check in ordered for place in check.places]
    keys = _wanted(wanting, design)
    to_state = tuple((part, tuple(sorted(keys[part]))) for part in sorted(keys) if not _is_duty(part, design))
    return Unfinished(name, len(seen), tuple(one for one in seen if not one.filled), to_state)


def _of_duties(wanting: list[Check], design: Design) -> list[Unfinished]:
    """What each duty does not state, once for all parts that see it; a temperature once for all parts of a kind."""
    keys = _wanted(wanting, design)
    return [
        Unfinished(name, 0, (), ((name, tuple(sorted({_by_kind(key, design) for key in keys[name]}))),))
        for name in sorted(keys)
        if _is_duty(name, design)
    ]


def _is_duty(name: str, design: Design) -> bool:
    entry = design.index.entries.get(name)
    return entry is not None and entry.is_one_of(_DUTY)


def _by_kind(key: str, design: Design) -> str:
    """The key of a temperature under the kind of its part, which stands for all parts of that kind."""
    case, mark, name = key.partition(".temperatures.")
    part = design.index.entries.get(name)
    return f"{case}{mark}{part.kind}" if part is not None else key


def _wanted(wanting: list[Check], design: Design) -> dict[str, set[str]]:
    """The keys that checks want, by the spec that is to state them."""
    keys: dict[str, set[str]] = {}
    for check in wanting:
        for where in check.unstated:
            keys.setdefault(design.owner(where), set()).add(where.key)
    return keys
