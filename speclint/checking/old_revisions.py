"""The parts as made that were made to an old revision of their drawing, among what a run looked at."""

from __future__ import annotations

from speclint.checking.assessment import Assessment

_RULE, _WORD = "made.revision", "made-part"


def made_to_old_revision(assessment: Assessment) -> tuple[str, ...]:
    """Their ids, conceded or not."""
    return tuple(
        one.component
        for one in assessment.checks
        if one.kind == _WORD and one.rule.name == _RULE and one.outcome == "finding"
    )
