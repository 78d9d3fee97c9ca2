"""What a page shows of a check: the keys that it took, as specs write them, and what it says."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from speclint.checking import Check
from speclint.errors import DesignError
from speclint.families.excerpts import ExcerptLine, excerpt
from speclint.repository import Change, DraftedDesign, inline
from speclint.specs import Component, Spec
from speclint.testing.taken_values import Taken, taken_by

#: Lines of other parts that a page shows beside those of the component itself: more are counted.
MOST = 24


def result_of(done: Check) -> str:
    """What a check says where it conforms: on one line, with what is used of its limit."""
    said = " ".join(done.says.split())
    return said if done.utilisation is None else f"{said}; {done.utilisation:.0%} of the limit used"


def finding_of(done: Check) -> str:
    """What a finding says, as a page names it."""
    return " ".join(done.actual.split())


def holds_of(done: Check, state: DraftedDesign, changes: tuple[Change, ...]) -> str:
    """The excerpt of what a check took: its component first, then what is changed, then the other parts."""
    by_part: dict[str, dict[str, ExcerptLine]] = {done.component: {}}
    for part in dict.fromkeys(one.component for one in changes):
        by_part.setdefault(part, {})
    for one in taken_by(done, state.design):
        if one.stated and (line := written(one, state)) is not None:
            by_part.setdefault(one.spec, {})[line.key] = line
    kept, left = _cut(by_part, done.component, {(one.component, one.key) for one in changes})
    blocks = [excerpt(_called(state, part), lines.values()) for part, lines in kept.items() if lines]
    if not kept[done.component]:
        blocks.insert(0, f"# {_called(state, done.component)}\n")
    if left:
        values, parts = sum(left.values()), len(left)
        blocks.append(
            f"# and {values} value{'s'[: values > 1]} of {parts} part{'s'[: parts > 1]} beside these\n"
        )
    return "\n".join(blocks)


def _cut(
    by_part: Mapping[str, Mapping[str, ExcerptLine]], own: str, changed: set[tuple[str, str]]
) -> tuple[dict[str, dict[str, ExcerptLine]], dict[str, int]]:
    """The lines that are shown, and how many are left out of each part: what is changed always stands."""
    kept: dict[str, dict[str, ExcerptLine]] = {}
    left: dict[str, int] = {}
    room = MOST
    for part, lines in by_part.items():
        kept[part] = {}
        room = room if part != own else MOST * 2
        for key, line in lines.items():
            if room > 0 or (part, key) in changed:
                kept[part][key] = line
            else:
                left[part] = left.get(part, 0) + 1
            room -= 1
        room = MOST if part == own else room
    return kept, left


def _called(state: DraftedDesign, part: str) -> str:
    spec = state.design.specs.get(part)
    if spec is None:
        return part
    article = "an" if spec.called[:1] in "aeiou" else "a"
    return f"{part}, {article} {spec.called}" if isinstance(spec, Component) else f"{part}, {spec.kind}"


def written(one: Taken, state: DraftedDesign) -> ExcerptLine | None:
    """A value that a check took, as its spec writes it; of a list the whole list. None where it is worked elsewhere."""
    try:
        raw, key = state.raw_at(one.spec, one.key)
    except DesignError:
        return None
    return ExcerptLine(key, inline(raw))


def places_of(done: Check, state: DraftedDesign) -> Iterator[Taken]:
    """What a check rests on, stated or not, each place once."""
    seen = set[tuple[str, str]]()
    for one in taken_by(done, state.design):
        if (one.spec, one.key) not in seen:
            seen.add((one.spec, one.key))
            yield one


def kind_of(state: DraftedDesign, name: str) -> type[Spec]:
    """The kind of a spec."""
    return type(state.design.specs[name])
