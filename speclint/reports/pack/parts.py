"""A component of the document with what belongs to it: its figures, its findings and its sheets."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import groupby

from msgspec import Struct

from speclint.checking import Assessment, Check
from speclint.errors import replace
from speclint.reports.drawing_named import drawing_named
from speclint.reports.pack.anchors import component_anchor, sheets_anchor
from speclint.reports.pack.drawn_once import ShownFigure
from speclint.reports.pack.same_working import Firsts, SameAs, same_as
from speclint.reports.pack.shown_sheets import Sheets, ShownSheet
from speclint.reports.taken_over import said_of_like
from speclint.rules import Grade
from speclint.specs import Spec, Stated


class Placed(Struct, frozen=True):
    """A figure with its number in the document."""

    number: int
    shown: ShownFigure


class Part(Struct, frozen=True):
    """A component, and the checks for which sheets of parts alike stand.

    ``held`` says that a hold is on it, or looks at a figure of it.
    """

    name: str
    described: str
    drawing: str
    file: str
    sheets: tuple[ShownSheet, ...]
    same_as: tuple[SameAs, ...] = ()
    figures: tuple[Placed, ...] = ()
    held: bool = False

    @property
    def anchor(self) -> str:
        """Where it begins."""
        return component_anchor(self.name)

    @property
    def sheets_anchor(self) -> str:
        """Where its sheets begin."""
        return sheets_anchor(self.name)

    @property
    def findings(self) -> list[ShownSheet]:
        """The sheets of its findings; those of parts alike stand under the first of these parts."""
        return [one for one in self.sheets if one.check.outcome == "finding"]

    @property
    def waiting(self) -> list[ShownSheet]:
        """The sheets of its checks that were not assessed."""
        return [one for one in self.sheets if one.check.outcome == "not assessed"]

    @property
    def conforming(self) -> list[tuple[str, list[ShownSheet]]]:
        """The sheets of its checks that conform, by the family of their rules."""
        found = sorted(
            (one for one in self.sheets if one.check.outcome == "conforms"),
            key=lambda one: one.check.rule.family,
        )
        return [(name, list(group)) for name, group in groupby(found, key=lambda one: one.check.rule.family)]

    @property
    def conforms(self) -> int:
        """How many sheets are of checks that conform."""
        return sum(one.check.outcome == "conforms" for one in self.sheets)

    @property
    def families(self) -> list[str]:
        """The families whose checks have the same figures as those of other parts."""
        return sorted({family for one in self.same_as for family in one.families})

    @property
    def alone(self) -> bool:
        """Whether it has something of its own to show: else it is told among the parts alike."""
        return bool(self.sheets or self.figures)


def parts_of(
    assessment: Assessment,
    checks: Sequence[Check],
    sheets: Sheets,
    firsts: Firsts,
    on_progress: Callable[[str], None],
) -> Iterator[Part]:
    """The components of some checks, without their figures."""
    design = assessment.design
    for component, group in groupby(checks, key=lambda check: check.component):
        on_progress(f"sheets of {component}")
        own = list(group)
        shown = [sheets.of(check) for check in own if check.order not in firsts]
        shown.sort(
            key=lambda one: (-(one.check.grade or 0), -(one.check.utilisation or 0.0), one.check.rule.name)
        )
        spec = design.specs.get(component) if design else None
        said = "; ".join(filter(None, (_called(spec), said_of_like(assessment, component))))
        file = design.files.get(component, "") if design else ""
        yield Part(
            component,
            said,
            drawing_named(spec) if spec else "",
            file,
            tuple(shown),
            tuple(same_as(own, firsts)),
        )


def _called(spec: Spec | None) -> str:
    if spec is None:
        return ""
    return str(spec.title.value) if isinstance(spec.title, Stated) else spec.called or spec.kind


def with_figures(parts: Iterable[Part], figures: Sequence[ShownFigure]) -> tuple[Part, ...]:
    """The parts, each with the figures that show it; a component that only a figure names becomes a part too."""
    by_name = {part.name: part for part in parts}
    by_part: dict[str, list[ShownFigure]] = {}
    for one in figures:
        if one.figure.component:
            by_part.setdefault(one.figure.component, []).append(one)
    held = {
        name for part in by_name.values() for one in part.findings if _is_hold(one) for name in _names(one)
    }
    number = 0
    placed: list[Part] = []
    for name in sorted(by_name.keys() | by_part.keys()):
        own = by_part.get(name, [])
        part = by_name.get(name) or Part(name, "", "", "", ())
        seen = {name, *(other for one in own for other in one.others)}
        numbered = tuple(Placed(number + place, one) for place, one in enumerate(own, 1))
        number += len(own)
        looked_at = bool(own) and not held.isdisjoint(seen)
        placed.append(replace(part, figures=numbered, held=looked_at or any(map(_is_hold, part.findings))))
    return tuple(placed)


def figures_of_all(parts: Iterable[Part], figures: Iterable[ShownFigure]) -> tuple[Placed, ...]:
    """The figures of the whole design, numbered after those of the parts."""
    last = sum(len(part.figures) for part in parts)
    of_all = (one for one in figures if not one.figure.component)
    return tuple(Placed(last + place, one) for place, one in enumerate(of_all, 1))


def figures_by_name(parts: Iterable[Part]) -> Mapping[str, tuple[Placed, ...]]:
    """The figures that show each component, those of parts alike among them."""
    found: dict[str, tuple[Placed, ...]] = {}
    for part in parts:
        for one in part.figures:
            for name in (part.name, *one.shown.others):
                found[name] = (*found.get(name, ()), one)
    return found


def _is_hold(sheet: ShownSheet) -> bool:
    return sheet.check.outcome == "finding" and sheet.check.grade is Grade.HOLD


def _names(sheet: ShownSheet) -> tuple[str, ...]:
    return tuple(check.component for check in sheet.alike.checks)
