"""Whether a rule still holds in other surroundings, and where it does not. Nothing is written down."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from typing import Literal

from speclint.checking.check_result import Check
from speclint.checking.corner_runs import CornerRun, Sides
from speclint.checking.failing_corner import failing_corner
from speclint.checking.load_case import case_of
from speclint.checking.one_corner import ending_at, in_time
from speclint.checking.proof import Ranges
from speclint.checking.severity import HOLDS
from speclint.checking.time_limit import Overrun
from speclint.families import Guard
from speclint.rules import (
    Context,
    KnownRanges,
    NotAssessed,
    NotEnclosed,
    OverBox,
    Rule,
    RuleEnded,
    at_corners,
    over_box,
)
from speclint.specs import CaseName, Component


def still_conforms(found: Check, component: Component, context: Context) -> bool:
    """Whether a check that conforms would still do so in slightly other surroundings. Nothing is written down."""
    return where_it_fails(found.rule, component, context, found.corners) is None


def where_it_fails(
    rule: Rule, component: Component, context: Context, known: Mapping[str, Sides]
) -> tuple[str, Sides] | None:
    """A load case and a corner where a rule does not hold; None where it conforms.

    Of each load case one corner is ``known`` that is likely to fail: it is tried first. A rule that raises does not
    conform, as for a check. Nothing is written down.
    """
    context.begin()
    ranks: dict[int, tuple[str, Sides]] = {}
    try:
        with Guard(rule.family), in_time(rule, component, context):
            for name in rule.cases or ("",):
                met = _failing_in(rule, component, name, context, known.get(name, {}))
                ranks.setdefault(met.severity[0], (name, met.corner.met))
                if max(ranks) > HOLDS:
                    break
    except (KeyboardInterrupt, Overrun):
        raise
    except BaseException:
        return "", {}
    return None if max(ranks) == HOLDS else ranks[max(ranks)]


def _failing_in(
    rule: Rule, component: Component, name: CaseName | Literal[""], context: Context, known: Sides
) -> CornerRun:
    """The first corner found in one load case where a rule does not hold; one where it does if there is none."""
    case = case_of(rule, component, name, context) if name else None
    ranges = KnownRanges()

    def boxed(sides: Sides, within: Ranges) -> OverBox | RuleEnded:
        if isinstance(case, NotAssessed):
            raise NotEnclosed("the load case is not stated")
        return over_box(rule, component, case, context, sides, within, ranges)

    together = None if isinstance(case, NotAssessed) else partial(at_corners, rule, component, case, context)
    return failing_corner(partial(ending_at, rule, component, case, context), rule, boxed, known, together)
