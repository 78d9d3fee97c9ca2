"""The rows of a comparison of two states: specs and values, concessions that lapsed, margins; for every form of it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.checking import named
from speclint.register import Comparison
from speclint.reports.comparison_page import alike, changed_alike, figures_of, margin_said

NOT_STATED = "not stated"


def spec_rows(found: Comparison) -> Iterator[tuple[str, str, str, str, str]]:
    """What was done to which spec, and for a changed value its key, as it was and as it is; specs alike together."""
    yield from (("added", name, "", "", "") for name in found.added)
    yield from (("removed", name, "", "", "") for name in found.removed)
    yield from (("renamed", name, "id", was, name) for was, name in sorted(found.renamed.items()))
    for names, values in changed_alike(found):
        for one in values:
            yield "changed", named(names), one.key, one.was or NOT_STATED, one.now or NOT_STATED


def lapsed_rows(found: Comparison) -> Iterator[tuple[str, str, str, str, str]]:
    """Each concession that holds no longer: number, component, rule, how it stands and why."""
    for one in found.lapsed:
        entry = one.concession
        yield entry.number, one.component, entry.rule, one.state, "; ".join(one.reasons)


def margin_rows(found: Comparison) -> Iterator[tuple[str, str, str, str]]:
    """Used of each limit that moved before, now and the difference, with component and rule; the worst change first."""
    for one, others in alike(found, found.moved):
        yield (*figures_of(one), margin_said(one, others))
