"""Limits that a test sets for a rule of hold grade: with grounds, and by a reviewer who is competent for the family."""

from __future__ import annotations


def accepted(value: str) -> str:
    """The value of a limit as the settings have it where somebody answers for it."""
    return f'{{ value = "{value}", grounds = "the test asks for it", accepted_by = "T. Ester" }}'


def own_limit(rule: str, family: str, **values: str) -> str:
    """The lines of the settings that set limits of a rule, by name; what is no name in Python stands in a mapping."""
    lines = "".join(f'"{name}" = {accepted(value)}\n' for name, value in values.items())
    return f'\n[reviewers."T. Ester"]\ncompetent_for = ["{family}"]\n[limits."{rule}"]\n{lines}'
