"""Every figure of the pack: those of speclint itself in the order in which a reviewer looks at them, then families'."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.checking import Assessment
from speclint.errors import FamilyError
from speclint.families import FamilyFailed, FigureMaker, call
from speclint.quantities import System
from speclint.reports.pack.drawn_units import drawn_in
from speclint.reports.pack.figures import Figure
from speclint.reports.phrases import units_asked

_OWN = "speclint"


def figures(assessment: Assessment, system: System = "as written") -> Iterator[Figure]:
    """The figures in the units of a system, else in those that the works chose, those of the whole design first.

    They are metric where a maker knows no other.

    :raises FamilyError: where a family's maker fails, or hands over what is no figure or has a name that is taken.
    """
    drawn: dict[str, str] = {}
    chosen = units_asked(assessment, system)
    for family, maker in assessment.loaded.drawings:
        with drawn_in(chosen if maker.in_chosen_units else "as written"):
            made = _made(family, maker, assessment)
        for figure in made:
            if figure.name in drawn:
                raise FamilyError(
                    f"family {family}: a figure {figure.name} is drawn by {drawn[figure.name]} already"
                )
            drawn[figure.name] = family
            yield figure


def _made(family: str, maker: FigureMaker, assessment: Assessment) -> list[Figure]:
    if family == _OWN:
        return list(maker.make(assessment))
    try:
        made = call(family, lambda: list(maker.make(assessment)))
    except FamilyFailed as problem:  # as for a hook: what a family hands over is whole or refused
        raise FamilyError(f"family {family}: the drawing {maker.name} raised {problem}") from problem
    for one in made:
        if not isinstance(one, Figure):
            raise FamilyError(
                f"family {family}: the drawing {maker.name} is a {type(one).__name__}, not a Figure"
            )
    return made
