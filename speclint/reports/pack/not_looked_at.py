"""The page of what nobody looked at: hazards that nothing judges, each gap, and what the rules leave out."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

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


class NotLookedAt(Struct, frozen=True):
    """The sum in words, the table of hazards by state, the gaps under their headings, and what rules say of themselves.

    ``rows`` give a hazard and the number of each state, the sum last. ``lists`` are long, and folded on the screen.
    """

    says: str
    states: tuple[State, ...]
    rows: tuple[tuple[str, tuple[int, ...]], ...]
    gaps: tuple[tuple[str, Rows], ...]
    lists: tuple[tuple[str, Rows], ...]


def not_looked_at(assessment: Assessment) -> NotLookedAt:
    """What nobody looked at, of all that is reviewed; checks that do not apply are listed by the command alone."""
    found = unseen(assessment)
    rows: list[tuple[str, tuple[int, ...]]] = [
        (name, tuple(counted.values())) for name, counted in found.by_hazard().items()
    ]
    if rows:
        rows.append(("all", tuple(found.counted().values())))
    lists = (
        *_by_part(found),
        ("what the rules that apply leave out, in their own words", tuple(told(found.left_out))),
    )
    return NotLookedAt(
        f"{hazards_counted(found)}; {found.counted()['judged']} judged.",
        STATES,
        tuple(rows),
        tuple(_by_kind(found)),
        tuple((heading, listed) for heading, listed in lists if listed),
    )


def _by_kind(found: Unseen) -> Iterator[tuple[str, Rows]]:
    """What no rule guards against, and what could not be judged."""
    listed = (
        (HEADINGS["no rule"], tuple(by_kind(found, "no rule"))),
        (HEADINGS["not assessed"], tuple(reasons(found, "not assessed"))),
    )
    yield from ((heading, rows) for heading, rows in listed if rows)


def _by_part(found: Unseen) -> Iterator[tuple[str, Rows]]:
    """What else nothing judges, with the reasons: folded on the screen and not printed; the command lists it too."""
    yield HEADINGS["not applicable"], tuple(reasons(found, "not applicable"))
    yield "Judged, with a check of the same hazard that could not be made", tuple(partly(found))
    yield "Not counted, or not judged at all", tuple(not_counted(found))
