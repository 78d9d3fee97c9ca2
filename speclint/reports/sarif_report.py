"""The findings in SARIF 2.1.0, the OASIS standard by which editors and forges read results of checks.

A finding is a result of kind ``fail``; hold and nonconformity have the level ``error``, query ``warning``,
observation ``note``. A safety check that is not assessed counts as a hold and is a result of kind ``fail``
too; any other check not assessed is of kind ``open``. What could not be read or run, or is a name not known, is a
notification of the invocation; a family that the settings leave out, or a file passed over, is one of its
configuration. A concession is an external suppression: accepted while it holds, rejected once it does not.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterable, Iterator, Sequence
from importlib.metadata import version
from typing import Any
from urllib.parse import quote

from speclint.checking import Alike, Assessment, Check, Sought, Waiting
from speclint.errors import Complaint, Location
from speclint.reports.accepted import Standings, standings_of, with_concessions
from speclint.reports.complaints_listing import said_of_waiting
from speclint.reports.phrases import left_out, passed_over, said_of_none, said_of_remedy, verdict
from speclint.reports.printable import json_text, visible
from speclint.rules import Grade, Rule

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
_BASE = "REPOSITORY"
_LEVELS = {
    Grade.HOLD: "error",
    Grade.NONCONFORMITY: "error",
    Grade.QUERY: "warning",
    Grade.OBSERVATION: "note",
}


def write(assessment: Assessment) -> str:
    """The log, the same to the byte for the same design, rules and versions."""
    return json_text(log(assessment), levels=4)  # down to each result of the run


def log(assessment: Assessment) -> dict[str, Any]:
    """The log as plain data."""
    shown = [check for check in assessment.checks if check.outcome in ("finding", "not assessed")]
    rules = sorted({check.rule.name: check.rule for check in shown}.values(), key=lambda rule: rule.name)
    numbers = {rule.name: number for number, rule in enumerate(rules)}
    conceded = standings_of(assessment)
    run = {
        "tool": {"driver": _driver(rules), "extensions": _families(assessment)},
        "invocations": [_invocation(assessment)],
        "originalUriBaseIds": {_BASE: {"description": {"text": "the folder that holds speclint.toml"}}},
        "results": [
            _result(assessment, alike, numbers[alike.first.rule.name], conceded)
            for alike in with_concessions(shown, conceded)
        ],
    }
    return {"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}


def _driver(rules: Sequence[Rule]) -> dict[str, Any]:
    return {
        "name": "speclint",
        "version": version("speclint"),
        "rules": [_descriptor(rule) for rule in rules],
    }


def _families(assessment: Assessment) -> list[dict[str, Any]]:
    return [{"name": family.name, "version": family.version} for family in assessment.loaded.families]


def _descriptor(rule: Rule) -> dict[str, Any]:
    sources = "; ".join(str(source) for source in rule.cites)
    help_text = f"Not covered: {rule.leaves_out.rstrip('.')}. Sources: {sources}."
    return {
        "id": rule.name,
        "shortDescription": _message(rule.title),
        "fullDescription": _message(rule.why),
        "help": _message(help_text),
        "defaultConfiguration": {"level": _LEVELS[rule.grade]},
        "properties": {
            "family": rule.family,
            "grade": rule.grade.word,
            "gravest": rule.gravest.word,
            "edition": rule.edition,
            "sources": [str(source) for source in rule.cites],
        },
    }


def _message(text: str) -> dict[str, str]:
    """A message of plain text: what the standard would read as a link or a placeholder is escaped."""
    shown = visible(text).replace("\\", "\\\\").replace("[", "\\[").replace("]", "\\]")
    return {"text": shown.replace("{", "{{").replace("}", "}}")}


def _invocation(assessment: Assessment) -> dict[str, Any]:
    unread = [_unread(one, assessment.waits.of(one)) for one in assessment.complaints]
    unknown = [{**_unread(one.complaint, one), "level": "warning"} for one in assessment.waits.names]
    broken = [_not_run(check) for check in assessment.checks if check.could_not_run]
    notes = [_note(said) for said in _notes(assessment)]
    notes += [{**_unread(note, None), "level": "note"} for note in assessment.old_keys]
    return {
        "executionSuccessful": not unread and not broken,
        "exitCode": assessment.exit_code,
        "toolExecutionNotifications": [*unread, *broken, *unknown],
        **({"toolConfigurationNotifications": notes} if notes else {}),
    }


def _notes(assessment: Assessment) -> Iterator[str]:
    """What was not looked at: families left out, files passed over, or the whole."""
    if said := left_out(assessment):
        yield said
    for why, files in passed_over(assessment):
        yield f"passed over: {files}: {why}"
    if assessment.nothing_checked:
        yield verdict(assessment)


def _note(text: str) -> dict[str, Any]:
    return {"level": "warning", "message": _message(text)}


def _unread(complaint: Complaint, waiting: Waiting | None) -> dict[str, Any]:
    said = {"read": complaint.read, "write": complaint.write, "waiting:": said_of_waiting(waiting)}
    text = "; ".join([complaint.message, *(f"{word} {text}" for word, text in said.items() if text)])
    return {"level": "error", "message": _message(text), "locations": [_location(complaint.where)]}


def _not_run(check: Check) -> dict[str, Any]:
    text = f"{check.rule.name} could not be run on {check.component}: {check.could_not_run}"
    return {
        "level": "error",
        "message": _message(text),
        "locations": [_location(check.where, check.component)],
    }


def _location(where: Location, component: str = "") -> dict[str, Any]:
    physical: dict[str, Any] = {
        "artifactLocation": {"uri": quote(os.fsencode(where.file)), "uriBaseId": _BASE}
    }
    if where.line:
        physical["region"] = {"startLine": where.line}
    location: dict[str, Any] = {"physicalLocation": physical} if where.file else {}
    names = [name for name in (component, where.key) if name]
    if names:
        location["logicalLocations"] = [{"fullyQualifiedName": visible(" ".join(names)), "kind": "member"}]
    return location


def _result(assessment: Assessment, alike: Alike, number: int, conceded: Standings) -> dict[str, Any]:
    check = alike.first
    counts = check.stands_in_the_way
    result: dict[str, Any] = {
        "ruleId": check.rule.name,
        "ruleIndex": number,
        "kind": "open" if counts is None else "fail",
        "level": "none" if counts is None else _LEVELS[counts],
        "message": _message("; ".join(filter(None, (_said(check), alike.said)))),
        "locations": [_location(one.where, one.component) for one in alike.checks],
        "fingerprints": {"componentAndRule/v1": _identity(check)},
        "partialFingerprints": {"restsOn/v1": check.fingerprint},
        "properties": {**_properties(check), **({"alike": check.alike} if alike.others else {})},
    }
    sought = assessment.sought(check) or Sought()
    if sought.remedies:
        result["properties"]["remedies"] = _shown(said_of_remedy(assessment, one) for one in sought.remedies)
    if none := said_of_none(sought):
        result["properties"]["noRemedy"] = visible(none)
    standing = conceded.get((check.component, check.rule.name))
    if standing is not None:
        grounds = "; ".join((standing.concession.grounds, *standing.reasons))
        result["suppressions"] = [
            {
                "kind": "external",
                "status": "accepted" if standing.holds else "rejected",
                "justification": visible(f"{standing.concession.number}, {standing.state}: {grounds}"),
            }
        ]
    return result


def _said(check: Check) -> str:
    if check.outcome == "finding":
        when = "; ".join(part for part in (check.case, ", ".join(check.at_worst)) if part)
        return f"{check.component}: {check.actual}" + (f" ({when})" if when else "")
    return f"{check.component}: not assessed; needs {'; '.join(check.missing) or check.says}"


def _identity(check: Check) -> str:
    """A digest that stays while the design changes: which rule on which component."""
    return hashlib.sha256(
        f"{check.rule.name}\0{check.component}".encode("utf-8", "backslashreplace")
    ).hexdigest()


def _properties(check: Check) -> dict[str, Any]:
    used = check.utilisation
    properties: dict[str, Any] = {
        "component": visible(check.component),
        "outcome": check.outcome,
        "grade": check.grade.word if check.grade else None,
        "utilisation": used if used is not None and used != float("inf") else None,
        "case": check.case or None,
        "governing": _shown(check.governing),
        "missing": _shown(check.missing),
    }
    return {name: value for name, value in properties.items() if value not in (None, [])}


def _shown(texts: Iterable[str]) -> list[str]:
    return [visible(text) for text in texts]
