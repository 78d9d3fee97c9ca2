"""What a change did, between two states of a design, as one JSON document, schema ``speclint.comparison/1``."""

from __future__ import annotations

import math
from typing import Any

from speclint.checking import CheckSeen, MarginChange
from speclint.register import Comparison, Standing, StateOfDesign
from speclint.reports.published import published_schema

SCHEMA = "speclint.comparison/1"
_FIGURES = 10  # significant figures kept; further ones only show rounding of the arithmetic


def comparison_schema() -> str:
    """The JSON Schema of the document, published with the package."""
    return published_schema(SCHEMA)


def comparison_data(found: Comparison) -> dict[str, Any]:
    """The document as plain data: every check, whether it came out otherwise or not."""
    return {
        "schema": SCHEMA,
        "old": _state(found.old),
        "new": _state(found.new),
        "specs": {
            "added": list(found.added),
            "removed": list(found.removed),
            "renamed": dict(sorted(found.renamed.items())),
            "changed": {
                name: [{"key": one.key, "was": one.was or None, "now": one.now or None} for one in values]
                for name, values in found.changed.items()
            },
        },
        "basis": list(found.basis),
        "editions": {rule: {"was": was, "now": now} for rule, (was, now) in sorted(found.editions.items())},
        "margins": [_margin(one) for one in found.margins],
        "concessions_lapsed": [_concession(one) for one in found.lapsed],
        "not_compared": list(found.not_compared),
        "exit": found.exit_code,
    }


def _state(state: StateOfDesign) -> dict[str, Any]:
    complaints = state.assessment.complaints if state.assessment else ()
    return {
        "called": state.called,
        "specs": len(state.assessment.design.specs) if state.assessment and state.assessment.design else None,
        "not_read": [str(one) for one in complaints],
    }


def _margin(one: MarginChange) -> dict[str, Any]:
    return {
        "component": one.component,
        "rule": one.rule,
        "change": "new"
        if one.is_new
        else "cleared"
        if one.is_cleared
        else "moved"
        if one.is_change
        else "none",
        "cause": one.cause or None,
        "by": _finite(one.by),
        "was": _seen(one.was),
        "now": _seen(one.now),
    }


def _seen(one: CheckSeen | None) -> dict[str, Any] | None:
    if one is None:
        return None
    return {
        "component": one.component,
        "edition": one.edition,
        "outcome": one.outcome,
        "grade": one.grade.word if one.grade is not None else None,
        "utilisation": _finite(one.utilisation),
        "no_margin": one.utilisation == math.inf,
        "says": one.says,
    }


def _concession(one: Standing) -> dict[str, Any]:
    return {
        "number": one.concession.number,
        "component": one.component,
        "rule": one.concession.rule,
        "state": one.state,
        "reasons": list(one.reasons),
    }


def _finite(value: float | None) -> float | None:
    return None if value is None or not math.isfinite(value) else float(f"{value:.{_FIGURES}g}")
