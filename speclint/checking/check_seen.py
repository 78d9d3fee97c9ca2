"""A check as a comparison sees it: made in this run, or as the report of an earlier one has it."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from speclint.checking.check_result import Check
from speclint.errors import TableError, replace
from speclint.repository import read_regular
from speclint.rules import Context, Grade
from speclint.specs import Component

_SCHEMA = "speclint.result/1"
#: Bytes of a report: common practice, room for some hundred thousand checks with their steps.
LARGEST_REPORT = 1_000_000_000


@dataclass(frozen=True, slots=True)
class CheckSeen:
    """How a rule came out on a component.

    ``utilisation`` is what is used of the limit; None where the rule compares no numbers or was not assessed. ``grade``
    is that at which it stands in the way; None where it does not. ``says`` is the result in words, ``check`` the check
    itself where it was made in this run, and ``context`` what it was made in.
    """

    component: str
    rule: str
    edition: int
    outcome: str
    grade: Grade | None
    utilisation: float | None
    says: str
    fingerprint: str
    check: Check | None = field(default=None, repr=False, compare=False)
    context: Context | None = field(default=None, repr=False, compare=False)

    @property
    def order(self) -> tuple[str, str]:
        """Sorts by component and rule."""
        return self.component, self.rule

    @property
    def graded(self) -> str:
        """What it is in a word: its grade where it stands in the way, else its outcome."""
        if self.grade is None:
            return self.outcome
        return self.grade.word if self.outcome == "finding" else f"{self.grade.word}, not assessed"

    def at_edition(self, edition: int) -> str:
        """The fingerprint that it would have by another edition of its rule, for which it is made again; "" where it
        was not made in this run, so that nobody can tell."""
        part = self.context.design.specs.get(self.component) if self.context is not None else None
        if self.check is None or self.context is None or not isinstance(part, Component):
            return ""
        from speclint.checking.rule_run import check  # only where an edition is another

        return check(replace(self.check.rule, edition=edition), part, self.context).fingerprint


def seen(check: Check, context: Context | None = None) -> CheckSeen:
    """A check of this run; with what it was made in it can be told whether the edition of its rule alone is another."""
    return CheckSeen(
        check.component,
        check.rule.name,
        check.rule.edition,
        check.outcome,
        check.stands_in_the_way,
        check.utilisation,
        check.actual,
        check.fingerprint,
        check,
        context,
    )


def checks_of_report(file: Path) -> tuple[CheckSeen, ...]:
    """The checks that a report of ``speclint check --as json`` has.

    :raises TableError: for a file that cannot be read, or is no such report.
    """
    try:
        data = json.loads(read_regular(file, LARGEST_REPORT))
    except OSError as problem:
        raise TableError(f"{file}: it cannot be read: {problem.strerror or problem}") from problem
    except (ValueError, RecursionError) as problem:
        raise TableError(f"{file}: this is no JSON: {problem}") from problem
    if not isinstance(data, dict) or data.get("schema") != _SCHEMA:
        raise TableError(f"{file}: this is no report of speclint check --as json ({_SCHEMA})")
    try:
        return tuple(_read(one) for one in data["checks"])
    except (KeyError, TypeError, ValueError, AttributeError) as problem:
        raise TableError(f"{file}: a check of the report cannot be read: {problem!r}") from problem


def _read(data: Mapping[str, Any]) -> CheckSeen:
    used, outcome = data["utilisation"], str(data["outcome"])
    if used is None and data["found"] is not None:
        used = math.inf  # which JSON cannot write
    grade = Grade[data["grade"].upper()] if data["grade"] and outcome in ("finding", "not assessed") else None
    return CheckSeen(
        str(data["component"]),
        str(data["rule"]),
        int(data["edition"]),
        outcome,
        grade,
        None if used is None else float(used),
        str(data["actual"]),
        str(data["fingerprint"]),
    )
