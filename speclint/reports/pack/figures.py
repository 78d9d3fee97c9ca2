"""One figure of the pack: a drawing, what it shows, and a table that says it all in words and numbers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeVar

from speclint.assessment import Assessment
from speclint.quantities import Measure
from speclint.specs.component import Spec
from speclint.specs.words import Link, NotStated, Stated
from speclint.systems import amount_in

S = TypeVar("S", bound=Spec)


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing as SVG, its heading, what it shows, and the rows of the table beside it."""

    name: str
    component: str
    heading: str
    says: str
    drawing: str
    rows: tuple[tuple[str, ...], ...] = ()
    columns: tuple[str, ...] = ()


def millimetres(value: object) -> float | None:
    """A stated length at its nominal, in millimetres; None where it is not stated."""
    return value.nominal * 1e3 if isinstance(value, Measure) else None


def said(value: object) -> str:
    """A stated quantity as the drawing has it, or that it is not stated."""
    if isinstance(value, Measure):
        return value.text or amount_in("as written", value.nominal, "m")
    return "not stated" if isinstance(value, NotStated) else str(value)


def word(value: object) -> str:
    """A stated word, or nothing."""
    return str(value.value) if isinstance(value, Stated) else ""


def followed(assessment: Assessment, link: object) -> Spec | None:
    """The spec that a link leads to."""
    design = assessment.design
    return design.follow(link) if design is not None and isinstance(link, Link) else None


def specs_of(assessment: Assessment, kind: type[S]) -> Iterator[S]:
    """The selected specs of a kind, in the order of their ids."""
    for part in assessment.design.parts() if assessment.design else ():
        if isinstance(part, kind):
            yield part
