"""One figure of the pack: a drawing, what it shows, and a table that says it all in words and numbers."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import TypeVar

from msgspec import Struct, field

from speclint.checking import Assessment, Check, once_more
from speclint.quantities import Measure
from speclint.reports.pack.paper import Paper
from speclint.reports.pack.printed import Held, quoted
from speclint.rules import Sheet
from speclint.specs import Component, Dimension, Link, LoadCase, NotStated, Spec, Stated

S = TypeVar("S", bound=Spec)
T = TypeVar("T")


class Figure(Struct, frozen=True):
    """A drawing as SVG, its heading, what it shows, and the rows of the table beside it."""

    name: str
    component: str
    heading: str
    says: str
    drawing: str
    rows: tuple[tuple[str, ...], ...] = ()
    columns: tuple[str, ...] = ()
    held: Held = field(default_factory=Held)

    @classmethod
    def of(
        cls,
        paper: Paper,
        component: str,
        heading: str,
        says: str,
        rows: Iterable[tuple[str, ...]] = (),
        columns: tuple[str, ...] = (),
    ) -> Figure:
        """The figure that a paper holds, with all that a test can hold it against."""
        return cls(paper.name, component, heading, says, paper.markup(), tuple(rows), columns, paper.held())


def compared(check: Check, sign: str, unit: str) -> tuple[float, float] | None:
    """What a check judged and its limit, in SI, where it held one against the other by a sign and in a unit."""
    judgement = check.judgement
    if judgement is None or judgement.found is None or judgement.limit is None or judgement.compared != sign:
        return None
    found, limit = judgement.found, judgement.limit
    return (found.value, limit.value) if found.unit == limit.unit == unit else None


def taken_again(
    assessment: Assessment, check: Check, work: Callable[[Component, LoadCase, Sheet], T]
) -> T | None:
    """What a check rests on, taken once more for a drawing that shows a curve of which its sheet has one number.

    ``work`` is given component, load case and a sheet of the check's rule, and takes sizes as they are drawn. None
    where it cannot be taken.
    """
    return once_more(check, assessment.context, work) if assessment.context is not None else None


def millimetres(value: object) -> float | None:
    """A stated length at its nominal, in millimetres; None where it is not stated."""
    return value.nominal * 1e3 if isinstance(value, Measure) else None


def said(value: object) -> str:
    """A stated quantity as the drawing has it, or that it is not stated."""
    if isinstance(value, Measure):
        return quoted(value)
    return "not stated" if isinstance(value, NotStated) else str(value)


def word(value: object) -> str:
    """A stated word, or nothing."""
    return str(value.value) if isinstance(value, Stated) else ""


def followed(assessment: Assessment, link: object) -> Spec | None:
    """The spec that a link leads to."""
    design = assessment.design
    return design.follow(link) if design is not None and isinstance(link, Link) else None


def dimension_of(assessment: Assessment, table: Dimension) -> Measure | None:
    """The length that a table states itself, or points at in another spec; None where it cannot be found."""
    if isinstance(table.size, Measure):
        return table.size
    spec = followed(assessment, table.of)
    try:
        found = spec.under(word(table.dimension)) if spec is not None else None
    except LookupError:
        return None
    return found if isinstance(found, Measure) else None


def specs_of(assessment: Assessment, kind: type[S]) -> Iterator[S]:
    """The selected specs of a kind, in the order of their ids."""
    for part in assessment.design.parts() if assessment.design else ():
        if isinstance(part, kind):
            yield part


def known_of(assessment: Assessment, kind: type[S]) -> Iterator[S]:
    """Every spec of a kind that the repository holds, selected or not, in the order of their ids."""
    specs = assessment.design.specs if assessment.design else {}
    for _, spec in sorted(specs.items()):
        if isinstance(spec, kind):
            yield spec
