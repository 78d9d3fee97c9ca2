"""Names among the temperatures of a duty for which nothing in the repository asks: a slip, most likely."""

from __future__ import annotations

from collections.abc import Iterator, Set as AbstractSet
from typing import TYPE_CHECKING

from speclint.errors import Complaint, Location, nearest_few, shortened
from speclint.repository import Design, text_read_again
from speclint.specs import Duty, WrittenTie

if TYPE_CHECKING:
    from speclint.checking.assessment import Assessment

#: A part without a spec of its own, whose temperature rules ask for by this name.
_CONNECTING_ROD = "connecting-rod"
#: How a check that took a temperature of a duty says so.
_MARK = "temperature of "
_SAID = "no part and no kind has this name, and nothing asks for a temperature of it"


def stray_temperatures(assessment: Assessment) -> tuple[Complaint, ...]:
    """A note for each such name, once for each duty, with the nearest names that are known.

    Of a whole repository alone, where every check was made that may ask for one. In a draft a name may be that of a
    part still to be drawn: there only one that is nearly another is told.
    """
    design, settings = assessment.design, assessment.settings
    if design is None or settings is None or not design.selected >= set(design.specs):
        return ()
    known = {
        *design.files,
        *assessment.loaded.kinds,
        *(word for one in design.index.entries.values() for word in one.words),
        _CONNECTING_ROD,
    }
    strange = {name: where for name, where in _named(design) if name[1] not in known}
    if not strange:
        return ()
    asked = _asked_for(assessment, {name for _, name in strange})
    told = []
    for (_, name), where in strange.items():
        near = nearest_few(name, sorted(known))
        if name not in asked and (near or settings.stage != "draft"):
            write = " or ".join(f'"{one}"' for one in near)
            told.append(Complaint(where, _SAID, f'"{shortened(name)}"', write))
    return tuple(told)


def _named(design: Design) -> Iterator[tuple[tuple[str, str], Location]]:
    """The duty and the name of each temperature that it states itself, but of those that another is tied to."""
    for duty in _duties(design):
        ties = [one for case in duty.cases.values() for one in case.temperatures.values()]
        bases = {one.base for one in ties if isinstance(one, WrittenTie)}
        found: dict[str, Location] = {}
        for case in duty.cases.values():
            for name, value in case.temperatures.items():
                if name not in bases and value.where.file == design.files[duty.id]:
                    found.setdefault(name, value.where)
        yield from (((duty.id, name), where) for name, where in found.items())


def _asked_for(assessment: Assessment, names: AbstractSet[str]) -> set[str]:
    """Which of some names a check took, or a spec that is no duty states as a word: the mean of a frame, a pad."""
    taken = (words for check in assessment.checks for words in check.rests_on if _MARK in words)
    asked = {words.partition(_MARK)[2].partition(" ")[0] for words in taken}
    left, design = names - asked, assessment.design
    if left and design is not None:
        of_duties = {design.files[one.id] for one in _duties(design)}
        for file in sorted({*design.files.values()} - of_duties):
            text = text_read_again(assessment.root / file)
            asked |= {name for name in left if f'"{name}"' in text or f"'{name}'" in text}
    return asked


def _duties(design: Design) -> Iterator[Duty]:
    for name, entry in design.index.entries.items():
        spec = design.specs.get(name) if entry.kind == Duty.kind else None
        if isinstance(spec, Duty):
            yield spec
