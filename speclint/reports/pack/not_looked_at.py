"""The page of what nobody looked at: hazards that nothing judges, each gap, and what the rules leave out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from speclint.checking import STATES, Assessment, State, Unseen, unseen
from speclint.reports.unseen_listing import (
    HEADINGS,
    by_kind,
    hazards_counted,
    not_counted,
    partly,
    reasons,
    told,
)

Rows = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class NotLookedAt:
    """The sum in words, the table of hazards by state, the gaps under their headings, and what rules say of themselves.

    ``rows`` give a hazard and the number of each state, the sum last. ``lists`` are long, and folded on the screen.
    """

    says: str
    states: tuple[State, ...]
    rows: tuple[tuple[str, tuple[int, ...]], ...]
    gaps: tuple[tuple[str, Rows], ...]
    lists: tuple[tuple[str, Rows], ...]


def not_looked_at(assessment: Assessment) -> NotLookedAt:
    """What nobody looked at, of all that is reviewed."""
    found = unseen(assessment)
    rows: list[tuple[str, tuple[int, ...]]] = [
        (name, tuple(counted.values())) for name, counted in found.by_hazard().items()
    ]
    if rows:
        rows.append(("all", tuple(found.counted().values())))
    lists = (
        ("what the rules that apply leave out, in their own words", tuple(told(found.left_out))),
        ("checks that do not apply, by their reason", tuple(told(found.idle))),
    )
    return NotLookedAt(
        f"{hazards_counted(found)}; {found.counted()['judged']} judged.",
        STATES,
        tuple(rows),
        tuple(_gaps(found)),
        tuple((heading, listed) for heading, listed in lists if listed),
    )


def _gaps(found: Unseen) -> Iterator[tuple[str, Rows]]:
    """What nothing judges: by kind where no rule does, else by part with the reasons."""
    listed = (
        (HEADINGS["no rule"], tuple(by_kind(found, "no rule"))),
        (HEADINGS["not assessed"], tuple(reasons(found, "not assessed"))),
        (HEADINGS["not applicable"], tuple(reasons(found, "not applicable"))),
        ("Judged, with a check of the same hazard that could not be made", tuple(partly(found))),
        ("Not counted, or not judged at all", tuple(not_counted(found))),
    )
    yield from ((heading, rows) for heading, rows in listed if rows)
