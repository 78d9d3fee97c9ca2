"""How the checks of each component came out, as rules that review them are told."""

from __future__ import annotations

from collections.abc import Iterable

from speclint.checking.check_result import Check
from speclint.rules import Context, Grade


def remember(component: str, checks: Iterable[Check], context: Context) -> None:
    """Keep how the checks of a component came out, for the rules that review them; or that they wait for a file."""
    plain = [one for one in checks if not one.rule.reviews]
    if context.outcomes is not None:
        context.outcomes[component] = {
            one.rule.name: "waiting" if one.outcome == "not assessed" and one.unread else one.outcome
            for one in plain
        }
        context.assumed_by_holds[component] = tuple(
            one.rule.name for one in plain if one.assumed and one.rule.gravest is Grade.HOLD
        )
