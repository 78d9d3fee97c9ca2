"""What may be written in speclint.toml beside what its schema says: families, grades, and the limits of rules."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from speclint.rules import Grade

if TYPE_CHECKING:
    from speclint.families import Loaded
    from speclint.rules import Limit

_OF_FAMILIES = frozenset({"required", "leave_out", "competent_for"})


def names_of_settings(loaded: Loaded, path: Sequence[str]) -> Iterator[tuple[str, str]]:
    """The words that a list may hold, or the value of a limit, each with what is said of it.

    ``loaded`` is all that is installed, also the families that the settings leave out.
    """
    match path:
        case (_, *_, key, _) if key in _OF_FAMILIES:
            yield from ((family.name, "a family of rules") for family in loaded.families)
        case ("concessions", "signed", _):
            yield from ((grade.word, "a grade whose concessions are signed") for grade in Grade)
        case ("limits", rule, name):
            yield from (
                (one.default, f"as {rule} has it") for one in limits_of(loaded, rule) if one.name == name
            )


def limits_of(loaded: Loaded, rule: str) -> Sequence[Limit]:
    """The limits of a rule by its name; none where no rule is called so."""
    return next((one.limits for one in loaded.rules if one.name == rule), ())


def tables_of_limits(loaded: Loaded) -> Iterator[tuple[str, str]]:
    """The header of the table for the limits of each rule that declares one, and what they are."""
    for rule in loaded.rules:
        if rule.limits:
            yield f'limits."{rule.name}"', "; ".join(f"{one.name} = {one.default}" for one in rule.limits)
