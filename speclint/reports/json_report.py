"""The assessment as one JSON document, schema ``speclint.result/1``."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator
from typing import Any

from speclint.checking import (
    Assessment,
    Check,
    DesignChanges,
    Remedy,
    State,
    Waiting,
    counts_hazards,
    drawings_checked,
    known_faults,
    still_to_be_drawn,
    unseen,
)
from speclint.errors import Complaint, Location
from speclint.quantities import displayed
from speclint.reports.phrases import said_of_remedy
from speclint.reports.printable import json_text
from speclint.reports.published import published_schema
from speclint.rules import Amount, Judgement, Series, Step

SCHEMA = "speclint.result/1"
_FIGURES = 10  # significant figures kept; further ones only show rounding of the arithmetic


def schema() -> str:
    """The JSON Schema of the document, published with the package."""
    return published_schema(SCHEMA)


def write(assessment: Assessment) -> str:
    """The document, the same to the byte for the same design, rules and versions."""
    return json_text(document(assessment))


def document(assessment: Assessment) -> dict[str, Any]:
    """The document as plain data."""
    return {
        "schema": SCHEMA,
        "families": [
            {"name": family.name, "version": family.version} for family in assessment.loaded.families
        ],
        **({"left_out": list(left_out)} if (left_out := assessment.loaded.left_out) else {}),
        "checks": [_in_its_group(assessment, check, alike) for check, alike in _of_groups(assessment)],
        "complaints": [_waited_for(one, assessment.waits.of(one)) for one in assessment.complaints],
        **({"names_not_known": names} if (names := _names_not_known(assessment)) else {}),
        **({"like": like} if (like := list(_like(assessment))) else {}),
        **({"changes": changes_data(assessment.changes)} if assessment.changes else {}),
        **({"passed_over": passed_over_data(assessment)} if assessment.passed_over else {}),
        **({"old_keys": old_keys_data(assessment)} if assessment.old_keys else {}),
        **({"still_to_be_drawn": lists} if (lists := unfinished_data(assessment)) else {}),
        **({"known_faults": faults} if (faults := _known_faults(assessment)) else {}),
        **({"hazards": hazards} if (hazards := _hazards(assessment)) else {}),
        **({"drawings": drawings} if (drawings := _drawings(assessment)) else {}),
        "summary": {
            "specs": len(assessment.design.specs) if assessment.design else 0,
            "checks": assessment.counted(),
            "findings": assessment.graded(),
            "findings_once": assessment.graded_once(),
            "exit_at": assessment.exit_at.word,
        },
        "exit": assessment.exit_code,
    }


def _known_faults(assessment: Assessment) -> dict[str, list[str]]:
    """The known faults by how they stand; nothing where there are none."""
    faults = known_faults(assessment)
    if not faults.count:
        return {}
    return {"settled": list(faults.settled), "waiting": list(faults.waiting), "open": list(faults.open)}


def _hazards(assessment: Assessment) -> dict[State, int]:
    """How many hazards of the parts stand each way; nothing where none is known, or not all was checked."""
    if not counts_hazards(assessment):
        return {}
    found = unseen(assessment)
    return dict(found.counted()) if found.hazards else {}


def _drawings(assessment: Assessment) -> list[dict[str, str]]:
    """How each drawing of which a rule asked stands; nothing where no spec names a file."""
    return [
        {"component": one.component, "file": one.file, "stands": one.word, "says": one.says}
        for one in drawings_checked(assessment)
    ]


def _like(assessment: Assessment) -> Iterator[dict[str, Any]]:
    """Of each part that is like another, or the mirror of it: that, and what differs, as written."""
    design = assessment.design
    for name in sorted(design.selected) if design else ():
        spec = design.specs.get(name) if design else None
        taken = spec.taken_over if spec else None
        if taken is not None:
            differs = [{**_where(one.where), "here": one.here, "there": one.there} for one in taken.differs]
            yield {"component": name, "of": taken.id, "mirrored": taken.mirrored, "differs": differs}


def _of_groups(assessment: Assessment) -> Iterator[tuple[Check, str]]:
    """Each check, and the name of its group where other parts have the same; "" where none has."""
    sizes = Counter(check.alike for check in assessment.checks)
    for check in assessment.checks:
        yield check, check.alike if check.alike and sizes[check.alike] > 1 else ""


def _in_its_group(assessment: Assessment, check: Check, alike: str) -> dict[str, Any]:
    data = check_as_data(check)
    if alike:
        data["alike"] = alike
    sought = assessment.sought(check)
    if sought is not None:
        data["remedies"] = [_remedy(one, said_of_remedy(assessment, one)) for one in sought.remedies]
        data["tried_in_vain"], data["not_tried"] = list(sought.in_vain), list(sought.not_tried)
    return data


def _remedy(remedy: Remedy, says: str) -> dict[str, Any]:
    """The change of one value: as the spec has it and as it would be written; null where only words are known."""
    return {
        "says": says,
        "name": remedy.name,
        "where": _where(remedy.where),
        "written": remedy.written or None,
        "instead": remedy.instead or None,
        "exact": remedy.exact,
        "utilisation": _finite(remedy.utilisation),
        "spoils": list(remedy.spoils),
        "short_of": list(remedy.short_of),
    }


def passed_over_data(assessment: Assessment) -> list[dict[str, str]]:
    """The TOML files that were not read as specs, each with the reason."""
    return [{"file": one.file, "why": one.why} for one in assessment.passed_over]


def changes_data(changes: DesignChanges) -> dict[str, Any]:
    """What changed since a revision: specs, values as written, and what came and went among the findings."""
    return {
        "since": changes.since,
        "added": list(changes.added),
        "removed": list(changes.removed),
        "changed": {
            name: [{"key": one.key, "was": one.was or None, "now": one.now or None} for one in values]
            for name, values in changes.changed.items()
        },
        "new": [check_as_data(one) for one in changes.new],
        "cleared": [check_as_data(one) for one in changes.cleared],
    }


def unfinished_data(assessment: Assessment) -> list[dict[str, Any]]:
    """What is still to be drawn and to be stated in a draft, for each block."""
    return [
        {
            "under": one.under,
            "places": one.places,
            "filled": one.filled,
            "to_draw": [{"what": place.called, "where": _where(place.where)} for place in one.to_draw],
            "to_state": {component: list(keys) for component, keys in one.to_state},
        }
        for one in still_to_be_drawn(assessment)
    ]


def old_keys_data(assessment: Assessment) -> list[dict[str, Any]]:
    """The old keys that specs state, each with its place and what is written now."""
    return [_complaint(note) for note in assessment.old_keys]


def check_as_data(check: Check) -> dict[str, Any]:
    """One check as plain data; values in the units a sheet would write, utilisation null where there is none."""
    judgement = check.judgement
    return {
        "component": check.component,
        "kind": check.kind,
        "rule": check.rule.name,
        "family": check.rule.family,
        "edition": check.rule.edition,
        "outcome": check.outcome,
        "grade": check.grade.word if check.grade else None,
        "utilisation": _finite(check.utilisation),
        "found": _amount(judgement.found) if judgement else None,
        "limit": _amount(judgement.limit) if judgement else None,
        "statement": check.rule.title,
        "says": check.says,
        "actual": check.actual,
        "case": check.case or None,
        "governing": list(check.governing),
        "at_worst": list(check.at_worst),
        "where": _where(check.where),
        "fingerprint": check.fingerprint,
        "missing": list(check.missing),
        "failing": [_failing(one) for one in check.failing],
        "proofs": {case or "always": proof.method for case, proof in check.proofs.items()},
        "could_not_run": check.could_not_run or None,
        "sources": [str(source) for source in check.rule.cites],
        "steps": [_step(step) for step in check.steps],
    }


def _failing(part: Judgement) -> dict[str, Any]:
    """One comparison that fails, at its own worst corner."""
    return {
        "of": part.of,
        "says": part.says,
        "utilisation": _finite(part.utilisation),
        "found": _amount(part.found),
        "limit": _amount(part.limit),
    }


def _step(step: Step) -> dict[str, Any]:
    value, unit = _shown(step.value, step.unit, step.written_in)
    return {
        "kind": step.kind,
        "symbol": step.symbol,
        "name": step.name,
        "expression": step.expression,
        "numbers": step.numbers,
        "value": value,
        "unit": unit,
        "note": step.note,
        "source": str(step.source) if step.source else "",
        "where": _where(step.where) if step.where.file else None,
        **({"series": [_series(one) for one in step.series]} if step.series else {}),
    }


def _series(series: Series) -> dict[str, Any]:
    """The series recorded along a scan, in SI units; null where the quantity has no meaning."""
    values = [_finite(value) for value in series.values]
    return {"symbol": series.symbol, "name": series.name, "unit": series.unit, "values": values}


def _amount(amount: Amount | None) -> dict[str, Any] | None:
    if amount is None:
        return None
    value, unit = _shown(amount.value, amount.unit, amount.written_in)
    return {"value": value, "unit": unit}


def _shown(value: float | str | bool, unit: str, written_in: str) -> tuple[float | str | bool | None, str]:
    if isinstance(value, str | bool):
        return value, unit
    shown, shown_unit = displayed(float(value), unit, written_in)
    return _finite(shown), shown_unit


def _finite(value: float | None) -> float | None:
    if value is None or not math.isfinite(value):
        return None
    return float(f"{value:.{_FIGURES}g}")


def _where(where: Location) -> dict[str, Any]:
    return {"file": where.file, "line": where.line, "key": where.key}


def _names_not_known(assessment: Assessment) -> list[dict[str, Any]]:
    return [_waited_for(one.complaint, one) for one in assessment.waits.names]


def _waited_for(complaint: Complaint, waiting: Waiting | None) -> dict[str, Any]:
    """A complaint, with how many checks of how many parts wait for it, where some do."""
    told = _complaint(complaint)
    if waiting and waiting.checks:
        told["waiting"] = {"checks": len(waiting.checks), "parts": waiting.parts}
    return told


def _complaint(complaint: Complaint) -> dict[str, Any]:
    return {
        **_where(complaint.where),
        "message": complaint.message,
        "read": complaint.read,
        "write": complaint.write,
    }
