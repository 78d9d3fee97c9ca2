"""A list for the wheel shop: each wheel, and how much of each limit it uses."""

from __future__ import annotations

from speclint import Assessment
from speclint.reports import visible


def write(assessment: Assessment) -> str:
    """One line for each check of a wheel."""
    lines = ["Wheels"]
    for check in assessment.checks:
        if check.rule.name.startswith("wheel."):
            used = "" if check.utilisation is None else f" {check.utilisation:.2f}"
            lines.append(f"{visible(check.component)}: {check.rule.name} {check.outcome}{used}")
    return "\n".join(lines) + "\n"
