"""The names of places in the document, the same for the same design each time."""

from __future__ import annotations

import hashlib
import re
from functools import cache

from speclint.checking import Check

_PLAIN = re.compile(r"^[a-z0-9][a-z0-9.-]*$")


@cache
def slug(text: str) -> str:
    """A name that is safe in a link: the text itself where it is plain, else a digest of it."""
    return (
        text if _PLAIN.match(text) else f"x{hashlib.sha256(text.encode('utf-8', 'replace')).hexdigest()[:12]}"
    )


def sheet_anchor(check: Check) -> str:
    """The place of a check's sheet."""
    return sheet_anchor_of(check.component, check.rule.name)


def sheet_anchor_of(component: str, rule: str) -> str:
    """The place of the sheet of a rule on a component."""
    return f"sheet.{slug(component)}.{slug(rule)}"


def sheets_anchor(component: str) -> str:
    """The place of a component's sheets."""
    return f"sheets.{slug(component)}"


def finding_anchor(check: Check) -> str:
    """The place of a finding."""
    return f"finding.{slug(check.component)}.{slug(check.rule.name)}"


def component_anchor(component: str) -> str:
    """The place of a component's findings."""
    return f"component.{slug(component)}"


def source_anchor(number: int) -> str:
    """The place of a source in the list of all sources."""
    return f"source.{number}"
